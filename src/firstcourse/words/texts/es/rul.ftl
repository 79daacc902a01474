# Not reviewed by a native setter yet.
# The rule book: what is borrowed, and changes that change nothing.

RUL-101 = { $borrowed } de los { $asked } valores en que se apoya este plan { $borrowed ->
        [one] es
       *[other] son
    } de la práctica { $source }: el libro de reglas no tiene ninguno de la práctica { $own } para ellos.
    .measured = { $borrowed } de { $asked }
    .check = Compárelos con las normas y las fichas de fabricante que rigen aquí. `firstcourse rules --practice { $practice }` los marca, y el plan los lista bajo Reglas y fuentes; un trabajo da los suyos bajo `rules`, con su razón.

RUL-102 = El trabajo cambia { $also }, y nada en este plan lo pregunta.
    .take_out = Quite el cambio, o vea si se quería otra regla.
