# Not reviewed by a native setter yet.
# How flat, plumb and level a surface is, what flattens it, and what may be used on it.

ground-verdict = { $verdict ->
        [holds] cumple
        [holds_for_its_length] cumple en su propio largo
        [cannot_tell] no se sabe
       *[fails] NO CUMPLE
    }

ground-held = { $holds ->
        [yes] cumple
       *[no] NO CUMPLE
    }

ground-spot =
    .string = a { TAPE($one) } de la izquierda
    .out = a { TAPE($one) } de la izquierda y { TAPE($two) } hacia afuera
    .up = a { TAPE($one) } de la izquierda y { TAPE($two) } de altura

ground-place = { $way ->
        [string] a { TAPE($left) } de la izquierda
        [out] a { TAPE($left) } de la izquierda y { TAPE($on) } hacia afuera
       *[up] a { TAPE($left) } de la izquierda y { TAPE($on) } de altura
    }

ground-mark = { $do ->
        [leave] dejar
        [fill] llenar { TAPE($by) }
        [grind] desbastar { TAPE($by) }
        [shim] calzar { TAPE($by) }
       *[plane_off] cepillar { TAPE($by) }
    }

ground-gaps = { PLACE($at) }: huecos bajo una regla
    .formula = cada hueco contra el límite del largo de la regla
    .columns = place gap reach allowed verdict
    .row-name = { $row }. { $place }
    .row-value = { TAPE($gap) } bajo { TAPE($reach) }, a lo más { TAPE($allowed) }: { ground-verdict }
    .result = { TAPE($result) } a lo más

ground-straightedge = { PLACE($at) }: el peor hueco bajo una regla de { TAPE($reach) }
    .formula = mayor distancia de una lectura a la cuerda entre otras dos
    .name-reach = regla
    .unsaid-way = -
    .name-left = demasiado lejos de otras para ella
    .value-left = { $way ->
        [string] { EACH("ground-spot.string", $left, $on) }
        [out] { EACH("ground-spot.out", $left, $on) }
       *[up] { EACH("ground-spot.up", $left, $on) }
    }
    .unsaid-on = -
    .unsaid-verdict = -
    .name-zone = se sabe
    .value-zone = todas las lecturas quedan entre dos planos paralelos a { FIGURES($zone) }
    .value-limit = a lo más { FINE($limit) }: { ground-verdict }
    .result = { $verdict ->
        [cannot_tell] no se sabe
       *[other] { FIGURES($result) }
    }
    .argument-1 = Lo que hay entre las lecturas no se ve.

ground-map = { PLACE($at) }: altos y bajos contra { $way ->
        [string] la mejor línea
       *[other] el mejor plano
    }
    .formula = altura = nivel + pendiente a lo largo × izquierda + pendiente a lo ancho × afuera, menor suma de cuadrados
    .source = mínimos cuadrados; zona mínima (Chebyshev) por programación lineal
    .unsaid-way = -
    .name-slope_along = pendiente a lo largo
    .value-slope_along = { FIGURES($slope_along, decimals: 3) }
    .name-slope_across = pendiente a lo ancho
    .value-slope_across = { FIGURES($slope_across, decimals: 3) }
    .columns = left on height off
    .row-name = { $way ->
        [string] a lo largo del hilo
        [out] { TAPE($on) } hacia afuera
       *[up] { TAPE($on) } de altura
    }
    .row-value = { TAPE($off, sign: "yes") } en { TAPE($left) }
    .result = { FIGURES($result) } entre los dos planos paralelos más juntos que abarcan todas las lecturas

ground-patch = { PLACE($at) }: llenar cada bajo hasta el plano que pasa por los más altos
    .formula = volumen = hondo medio × área, por la regla del trapecio sobre las lecturas; sacos = volumen / rendimiento, redondeado hacia arriba
    .name-mean = hondo medio
    .value-mean = { FIGURES($mean) }, { $weights ->
        [grid] por cuadrícula: esquinas un cuarto, bordes la mitad del campo a su alrededor
       *[triangles] por triángulos entre los puntos
    }
    .unsaid-weights = -
    .value-area = { FIGURES($area) }
    .value-yield = { PLAIN($yield) } por saco
    .unsaid-way = -
    .columns = left on do by
    .row-name = { ground-place }
    .row-value = { $do ->
        [leave] -
        [fill] llenar { TAPE($by) }
       *[grind] desbastar { TAPE($by) }
    }
    .result = { FIGURES($result, decimals: 1) }
    .argument-1 = Más allá de las lecturas de orilla se toma el hondo medio.

ground-level_out = { PLACE($at) }: vaciar nivelador en todo el piso, a nivel
    .formula = { ground-patch.formula }
    .name-mean = { ground-patch.name-mean }
    .value-mean = { ground-patch.value-mean }
    .unsaid-weights = -
    .value-area = { ground-patch.value-area }
    .value-yield = { ground-patch.value-yield }
    .unsaid-way = -
    .columns = { ground-patch.columns }
    .row-name = { ground-patch.row-name }
    .row-value = { ground-patch.row-value }
    .result = { ground-patch.result }
    .argument-1 = { ground-patch.argument-1 }

ground-grind = { PLACE($at) }: desbastar los altos y llenar los bajos a un solo plano
    .formula = { ground-patch.formula }
    .name-mean = { ground-patch.name-mean }
    .value-mean = { ground-patch.value-mean }
    .unsaid-weights = -
    .value-area = { ground-patch.value-area }
    .value-yield = { ground-patch.value-yield }
    .unsaid-way = -
    .columns = { ground-patch.columns }
    .row-name = { ground-patch.row-name }
    .row-value = { ground-patch.row-value }
    .result = { ground-patch.result }
    .argument-1 = { ground-patch.argument-1 }
    .unsaid-caution = -
    .argument-2 = { $caution }

ground-shim = { PLACE($at) }: calzar los montantes hasta el más salido
    .formula = plano de la zona mínima, llevado al montante más salido (o más hundido), menos cada lectura
    .source = zona mínima (Chebyshev) por programación lineal; marcas enteras de la cinta
    .unsaid-way = -
    .columns = left on do by
    .row-name = montante en { TAPE($left) }
    .row-value = { ground-mark }{ $way ->
        [string] {""}
       *[other] {" "}at { TAPE($on) } up
    }
    .unsaid-failing = -
    .unsaid-passes = -
    .result = { TAPE($result) } a lo más
    .argument-1 = { $passes ->
        [yes] -
       *[no] No pasa: { $failing }.
    }

ground-plane_down = { PLACE($at) }: cepillar los montantes salidos hasta el más hundido
    .formula = { ground-shim.formula }
    .source = { ground-shim.source }
    .unsaid-way = -
    .columns = { ground-shim.columns }
    .row-name = { ground-shim.row-name }
    .row-value = { ground-shim.row-value }
    .unsaid-failing = -
    .unsaid-passes = -
    .result = { ground-shim.result }
    .argument-1 = { ground-shim.argument-1 }

ground-packing = { PLACE($at) }: lo que lleva cada montante para que la pared quede a plomo y derecha
    .formula = suplemento a esa altura + calza de ese montante, menos el menor de todos
    .source = desplome y lecturas como se dieron; marcas enteras de la cinta
    .columns = left foot top
    .row-name = montante en { TAPE($left) }
    .row-value = pie { TAPE($foot) }, tope { TAPE($top) }
    .result = { TAPE($result) } a lo más

ground-plumb = { PLACE($at) }: desplome en su altura
    .formula = desplome ≤ límite × altura / alcance; suplemento a una altura = desplome menos lo que la pared se inclina ahí
    .value-lean = { FIGURES($lean, sign: "yes") } en { TAPE($height) }
    .unsaid-height = -
    .name-foot = suplemento en el borde de panel más bajo
    .value-foot = { FIGURES($foot) }
    .name-top = suplemento en el borde de panel más alto
    .value-top = { FIGURES($top) }
    .unsaid-holds = -
    .value-limit = { FIGURES($limit, decimals: 3) }: { ground-held }
    .result = { FIGURES($result) }

ground-taper = { PLACE($at) }: sesgo del último corte en { THING($also) }
    .formula = desplome de la otra pared × altura azulejada / su altura / sen(ángulo de la esquina)
    .unsaid-wall = -
    .name-lean = desplome de { THING($wall) }
    .value-lean = { FIGURES($lean, sign: "yes") }
    .name-height = su altura
    .name-tiled = altura azulejada
    .name-angle = ángulo de la esquina
    .value-angle = { FIGURES($angle) }
    .unsaid-wider = -
    .value-limit = { FIGURES($limit, decimals: 3) }
    .result = { FIGURES($result) } { $wider ->
        [yes] más ancho
       *[no] más angosto
    } arriba

ground-materials = { PLACE($at) }: qué se puede usar en una zona { WORD($result) }
    .formula = todo material del libro de reglas cuyas zonas nombran esta
    .source = reglas exposure.*, cada una con su fuente; `firstcourse rules` las lista
    .value-boards = { EACH("ground-board", $boards, $standards, $known) }
    .unsaid-standards = -
    .unsaid-known = -
    .name-barrier = barrera de vapor
    .value-barrier = { $barrier ->
        [at_most_one] a lo más una; no hace falta membrana
        [on_face] exactamente una, en la cara
       *[either_side] exactamente una: en la cara, o detrás de los paneles
    }
    .name-tiles = clases de azulejo
    .result = zona { WORD($result) }

ground-board = { WORD($one) }{ $three ->
        [yes] {" "}({ $two })
       *[no] {""}
    }

ground-remedy = { EACH("sui-fill", $measures) }
    .title-with-caution = { EACH("sui-fill", $measures, $litres, $bags, $deep, $off) }. { $caution }
    .title-with-litres = { EACH("sui-fill", $measures, $litres, $bags, $deep, $off) }
    .title-with-studs = { EACH("sui-straighten", $measures, $studs, $deep) }
    .named = -
    .formula = en orden de altura, luego material, luego mano de obra, en cifras relativas
    .source = supuesto de la casa (reglas remedy.*); una ayuda para escoger, no un precio
    .name-height = altura
    .value-height = { SPACED($height) }
    .name-material = material
    .value-material = { PLAIN($material) }
    .name-labour = mano de obra
    .value-labour = { PLAIN($labour) }
    .name-failing = sigue sin cumplir
    .result = { $result ->
        [passes] pasa
       *[fails] no pasa
    }
