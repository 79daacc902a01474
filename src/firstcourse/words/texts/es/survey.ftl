# Not reviewed by a native setter yet.
# What readings of a room prove.

survey-area = Área de piso de { PLACE($at) }
    .formula = la mitad de la suma de u1 × v2 - u2 × v1 a lo largo del contorno
    .source = método de coordenadas, cualquier libro de topografía
    .columns = corner u v
    .row-name = { THING($corner) }
    .row-value = { TAPE($u) }, { TAPE($v) }
    .result = { FIGURES($result) }

survey-checks = Lecturas de { PLACE($at) } además de las necesarias
    .formula = lecturas - (2 × esquinas - 3)
    .source = mínimos cuadrados ponderados; Chandra, Surveying: Problem Solving, chapter 5
    .unsaid-needed = -
    .unsaid-changed = -
    .unsaid-by = -
    .name-taped_to = medido hasta
    .value-taped_to = { $taped_to ->
        [studs] montantes descubiertos, las paredes que se quedan hasta su cara
        [finish] el acabado que aún estaba en las paredes
       *[untold] montantes descubiertos, las paredes que se quedan hasta su cara (así se toma, el trabajo no lo dice)
    }
    .argument-1 = { $needed } distancias fijan la forma de { $corners } esquinas.
    .argument-2 = El ajuste cambia más { $changed }, en { FIGURES($by, decimals: 2) }.
    .result = { $result } { $result ->
        [one] lectura
       *[other] lecturas
    }

survey-square = Cuánto se mueven las esquinas de { PLACE($at) } para dibujar sus lados a escuadra
    .formula = dibujado - ajustado; solo lados fuera de escuadra menos de una marca de la cinta
    .source = supuesto de la casa: ninguna cinta muestra menos que su marca
    .columns = corner u v moved
    .row-name = { THING($corner) }
    .row-value = { FIGURES($moved, up: "yes") }
    .result = { FIGURES($result, up: "yes") } a lo más
