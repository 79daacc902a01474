# A building of many rooms.

building-title = Edificio: { $job }
building-cost = Lo que cuestan las fases
building-cost_heads =
    .stock = placas
    .phases = por fases
    .heap = todo junto
    .saved = junto ahorra
building-compared = Las placas se comparten dentro de una fase, y los trozos guardados pasan a fases posteriores. Todo junto, se cortarían todos los cuartos a la vez: esas cifras son para comparar. Un menos dice que las fases necesitaron menos.
building-not_compared = Las placas se comparten dentro de una fase, y los trozos guardados pasan a fases posteriores. No se comparó con todo junto.
building-phases = Fases en su orden
building-phases_heads =
    .phase = fase
    .sheets = placas nuevas
    .rooms = cuartos
    .used = trozos usados
    .rack = trozos guardados después
building-delivery = Para pedir: { $name }
building-delivery_heads =
    .item = artículo
    .packs = paquetes
    .note = nota
building-over = más de lo que hay en un lote: pregunte antes de pedir
building-rooms = Cuartos por piso
building-rooms_heads =
    .floor = piso
    .room = cuarto
    .type = tipo
    .phase = fase
building-alike = Cuartos con las mismas medidas
building-alike_heads =
    .type = tipo
    .rooms = cuartos
    .differs = medido distinto que el tipo
building-planning = Planificando { $name ->
    [heap] todos los cuartos juntos, para comparar
   *[other] la fase { $name }
}
