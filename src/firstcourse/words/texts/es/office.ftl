# Not reviewed by a native setter yet.
# The office pack.

office-name = juego de oficina

office-labels =
    .about = Juego de oficina: por qué el juego de obra es como es, y en qué se apoya. Este español aún no lo ha revisado un azulejero que lo hable de nacimiento.
    .contents = En este juego:
    .findings = Hallazgos
    .nothing = No se encontró nada que las reglas objeten.
    .nothing_beside = Nada además de lo que está bajo “¿Aguanta el azulejo?”.
    .measured = Medido: { $text }.
    .limit = Límite: { $text }.
    .do = Haga: { $text }
    .bars = Cada barra es una hoja, o un sobrante guardado de un trabajo anterior, tan larga como su área: los paneles que da, por sus marcas en los dibujos, lo que se guarda y lo que es desperdicio. Cómo van en la hoja está en las hojas de cortes. Las frases bajo las barras dicen, paso a paso, por qué no alcanzan menos hojas, o qué no se sabe.
    .becomes = se vuelve panel
    .kept = se guarda para el próximo trabajo
    .waste = es desperdicio
    .decides = Qué decide entre planes
    .decides_about = De dos planes que cumplen las reglas se toma el mejor: decide el primer renglón en que difieren.
    .better = es mejor donde
    .counts = cómo cuenta
    .by_rule = lo fija la regla
    .because = así porque
    .starts = Dónde podría empezar el azulejo
    .starts_about = El arranque que se usa, y qué cambiarían otros. “El cuarto puede diferir” es cuánto puede diferir el cuarto de su levantamiento antes de que el corte menor baje del de la regla.
    .start = arranque
    .smallest = corte menor
    .cut_tiles = azulejos cortados
    .may_differ = el cuarto puede diferir
    .workings = Cálculos
    .source = Fuente: { $text }
    .rules = Reglas y fuentes
    .set = Fijado por este trabajo
    .rule = regla
    .value = valor
    .reason = razón
    .borrowed = No son de la práctica { $practice }: revise antes de usar
    .borrowed_about = El libro de reglas no tiene valor de la práctica { $practice } para estas y toma los de la práctica US.
    .source_head = fuente
    .house = Supuestos de la casa
    .published = Publicado y práctica común
    .rules_values = reglas y sus valores
