# Not reviewed by a native setter yet.
# What is wrong with prices and hours.

PRI-101 = El precio de { $supplier } para esto valía hasta el { $until }: está vencido el día del plan.
    .where = { THING($at) }
    .ask = Pregunte otra vez a { $by }; la cotización es del { $quoted }.

PRI-102 = La lista de precios no tiene precio para esto; el total lo deja fuera.
    .where = { THING($at) }
    .price = Agregue un precio con quién lo cotizó, cuándo y hasta cuándo vale.

PRI-103 = La lista de precios no tiene horas por unidad o precio de la hora para la tarea { $task }; el total la deja fuera.
    .rate = Agregue las horas de una unidad, con su fuente, o las horas que anotó en trabajos terminados.

PRI-104 = Una hoja entera no pasa la vuelta de la escalera sobre ninguno de sus cantos.
    .where = hojas { $at }
    .cut = Corte las hojas antes de subirlas, o métalas por otro lado.
