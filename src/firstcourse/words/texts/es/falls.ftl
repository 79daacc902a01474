# Not reviewed by a native setter yet.
# The page of a floor that falls, and the flood test on it.

falls-fact =
    .rise = punto más alto sobre la coladera
    .least = pendiente mínima en el camino del agua
    .greatest = pendiente máxima de un plano
    .bed = cama
    .pre_slope = pendiente bajo la membrana
    .drain = tapa de la coladera sobre los tableros
    .room_floor = piso terminado del cuarto sobre los tableros
    .kerb = tapa del bordillo sobre la coladera
    .upturn = la membrana termina en las paredes, sobre la coladera
    .recess = rebaje bajo el piso del cuarto
    .largest_tile = azulejo más grande que la sigue sin cortar

falls-bed = { $thick } al menos, { $volume } { $tape ->
    [mm] l
   *[inch] cu ft
}
falls-slope = { $fall } { $tape ->
    [mm] mm por m
   *[inch] in por ft
}, { $ratio ->
    [0] ninguna
   *[other] 1 en { $ratio }
}
falls-water = { $volume } { $tape ->
    [mm] l
   *[inch] gal
}, { $mass } { $tape ->
    [mm] kg
   *[inch] lb
}
falls-flood = Antes del azulejo: llene hasta que haya { $deep } de agua sobre la membrana en el umbral, y donde la membrana esté más alta ({ $water }), y déjela { $hours } { $hours ->
    [one] hora
   *[other] horas
}.{ $dam ->
    [yes] {" "}Hace falta un dique a través de la entrada.
   *[no] {""}
}
