# Not reviewed by a native setter yet.
# Shower floors: how their rise, bed and levels came about, and what is set, tested and written down on site.

showers-rise = { PLACE($at) }, subida de la coladera al punto más alto
    .formula = pendiente x recorrido, la mínima en el camino más largo y la máxima en el más corto
    .source = { SOURCE($rules) }
    .name-least = pendiente mínima
    .value-least = { FALL($least) }
    .name-rise_planes = subida que la cumple en los planos
    .value-rise_planes = { FINE($rise_planes) }
    .name-rise_valleys = subida que la cumple también en los valles
    .value-rise_valleys = { $rise_valleys ->
        [no_limit] ninguna sirve
       *[other] { FINE($rise_valleys) }
    }
    .name-least_plane = pendiente mínima de un plano
    .value-least_plane = { FALL($least_plane) }
    .name-least_flow = pendiente mínima en el camino del agua
    .value-least_flow = { FALL($least_flow) }
    .name-steepest = pendiente máxima
    .value-steepest = { FALL($steepest) }
    .name-greatest = pendiente máxima permitida
    .value-greatest = { FALL($greatest) }
    .name-rise_allowed = subida que permite
    .value-rise_allowed = { FINE($rise_allowed) }
    .unsaid-rules = -
    .result = { FINE($result) }
    .argument-1 = El punto más alto se sube a la siguiente marca de la cinta donde los límites dejan lugar.

showers-bed = { PLACE($at) }, cama
    .formula = { $membrane ->
        [liner] cama = área x espesor; pendiente = área x su espesor + volumen de las caídas
       *[other] área x espesor mínimo + volumen de las caídas
    }
    .source = volumen exacto de planos: área de cada uno x altura en su centro de área
    .unsaid-membrane = -
    .name-falls = volumen entre el nivel de la coladera y los planos
    .value-falls = { BULK($falls) }
    .name-bed = cama, espesor mínimo
    .name-slope = pendiente bajo la membrana, espesor mínimo
    .name-slope_volume = pendiente bajo la membrana
    .value-slope_volume = { BULK($slope_volume) }
    .result = { BULK($result) }
    .argument-1 = No se descuenta el cuerpo de la coladera.

showers-largest_tile = { PLACE($at) }, azulejo más grande que sigue las pendientes sin cortar
    .formula = { $by_rule ->
        [yes] 4 x ceja / quiebre de pendiente, y no más de lo que permite la regla
       *[no] 4 x ceja / quiebre de pendiente
    }
    .name-step = ceja permitida
    .value-step = { FINE($step) }
    .name-turn = quiebre de pendiente más fuerte en un doblez
    .value-turn = { FIGURES($turn, decimals: 4) }
    .unsaid-by_rule = -
    .argument-1 = Un azulejo plano de lado s sobre un doblez de quiebre t se separa de los planos s t / 4: su flecha.

showers-drain_on_bed = { PLACE($at) }, altura de la tapa de la coladera sobre los tableros
    .formula = cama y pendiente en la coladera + mortero + azulejo
    .source = alturas de este plan; mortero peinado
    .name-room_floor = piso terminado del cuarto sobre los tableros
    .value-room_floor = { FINE($room_floor) }
    .name-under = cama y pendiente en la coladera
    .name-mortar = mortero bajo el azulejo
    .value-mortar = { FINE($mortar) }
    .value-tile = { FINE($tile) }
    .result = { FINE($result) }
    .argument-1 = Las alturas en paredes y bancas son sobre los mismos tableros, o losa.

showers-drain_by_entry = { PLACE($at) }, altura de la tapa de la coladera sobre los tableros
    .formula = piso terminado del cuarto - subida en la entrada, que queda a nivel con él
    .source = alturas de este plan; mortero peinado
    .name-room_floor = piso terminado del cuarto sobre los tableros
    .value-room_floor = { FINE($room_floor) }
    .name-entry = subida en la entrada
    .value-entry = { FINE($entry) }
    .result = { FINE($result) }
    .argument-1 = Las alturas en paredes y bancas son sobre los mismos tableros, o losa.

showers-recess = { PLACE($at) }, rebaje que necesita una regadera sin bordillo
    .formula = subida en la entrada + cama y pendiente en la coladera + mortero + azulejo
    .source = alturas de este plan; mortero peinado
    .name-entry = subida en la entrada
    .value-entry = { FINE($entry) }
    .name-under = cama y pendiente en la coladera
    .name-mortar = mortero bajo el azulejo
    .value-mortar = { FINE($mortar) }
    .value-tile = { FINE($tile) }
    .argument-1 = Medido del piso terminado del cuarto hasta donde se asienta la cama.

showers-drop = { PLACE($at) }: caída mínima de su tapa
    .formula = fondo x pendiente mínima
    .name-least = pendiente mínima
    .value-least = { FALL($least) }
    .name-greatest = pendiente máxima
    .value-greatest = { FALL($greatest) }
    .name-most = caída máxima
    .value-most = { FINE($most) }
    .result = { FINE($result) }

showers-level_corner = { $before ->
    [same] esquina de { $after }
   *[other] esquina de { $before } y { $after }
}
showers-level_side = en { $side }
showers-level_drain = tapa de la coladera
showers-level_valley_end = fin de un valle
showers-level_valley = valle, a { $along } del punto { $low } hacia { $high }

showers-flood_record = Qué se anota de la prueba de inundación
    .plug = Tapón o globo de prueba puesto en la coladera abajo de los agujeros de drenaje
    .mark = Marca del agua en { $dam ->
        [yes] el dique
       *[no] el bordillo
    }, { $depth } sobre la membrana donde esté más alta a lo largo del umbral y las paredes
    .deep = Queda { $at_drain } de hondo sobre la membrana en la coladera
    .filled = Fecha y hora de llenado, nivel en la marca
    .room = Temperatura del cuarto, sol o corriente de aire sobre el agua
    .level = Nivel después de { PLAIN($hours) }, y la pérdida
    .beside = Techo de abajo y cara exterior de las paredes: seco, húmedo o mojado
    .drained = Tapón fuera, piso vacío sin charcos
    .signed = Probado por, visto por
