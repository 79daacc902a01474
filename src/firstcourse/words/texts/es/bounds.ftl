# Not reviewed by a native setter yet.
# How few sheets are possible, and how little they can cost.

bounds-sheets = Menos hojas de { THING($at) } para estas piezas
    .formula = ningún corte de estas piezas necesita menos hojas
    .source = { bounds-proofs }
    .name-proof = argumento
    .value-proof = { WORD($proof) }
    .result = { bounds-fewest }
    .argument-1 = La cota vale para las piezas de este acomodo; otras juntas podrían necesitar menos.

bounds-proofs = área, funciones duales factibles, precios de patrones; todo de memoria
bounds-fewest = { $result } { $result ->
        [one] hoja
       *[other] hojas
    }

bounds-cost = Menor costo de todas las hojas para estas piezas
    .formula = ningún corte de estas piezas cuesta menos
    .source = { bounds-proofs }
    .value-cost = { NUMBER_OF($cost, decimals: 2) } { WORD($currency) }
    .name-proof = argumento
    .value-proof = { WORD($proof) }
    .unsaid-currency = -
    .result = { NUMBER_OF($result, decimals: 2) } { WORD($currency) }

bounds-every_layout = Menos hojas de { THING($at) }{ EACH("bounds-and", $also, between: "") } en todo acomodo que permiten las reglas
    .formula = (base por cubrir − lo más que pueden tomar las holguras − sobrantes guardados) / área de una hoja, redondeado hacia arriba
    .source = área de base y holguras; deducido de las reglas del libro
    .unsaid-surfaces = -
    .name-board = panel al menos
    .name-narrowest = panel más angosto
    .unsaid-most_on = -
    .unsaid-courses = -
    .unsaid-alone = -
    .unsaid-pair = -
    .unsaid-staggered = -
    .unsaid-offcuts = -
    .name-kept = sobrantes guardados
    .name-new = de hojas nuevas
    .unsaid-kinds = -
    .unsaid-largest = -
    .value-sheets = { FIGURES($sheets, decimals: 2) }
    .unsaid-open = -
    .unsaid-one_fewer = -
    .result = { bounds-fewest }
    .argument-1 = Sea cual sea el acomodo, los paneles y las juntas entre ellos tienen que cubrir { FIGURES($ground) } de { SURFACES($surfaces) }; lo que queda abierto y las holguras en los bordes no entran en eso.
    .argument-2 = Una junta es una holgura de { TAPE($seam, feet: "no") } y no lleva panel. Pero ningún panel es más angosto que { TAPE($narrowest, feet: "no") }, así que solo caben unas cuantas juntas. Con las que hay entre hiladas cubren { LESS($ground, $board) } a lo más; donde caben más es en { PLACE($most_on) }: { $courses ->
            [one] { $courses } hilada
           *[other] { $courses } hiladas
        } de hasta { $alone ->
            [one] { $alone } junta
           *[other] { $alone } juntas
        } cada una{ $staggered ->
            [yes] , { $pair } en dos vecinas, pues las juntas van alternadas
           *[no] {""}
        }.
    .argument-3 = Así todo acomodo lleva { FIGURES($ground) } − { LESS($ground, $board) } = { FIGURES($board) } de panel o más.{ $offcuts ->
            [yes] {" "}Los sobrantes guardados tienen { FIGURES($kept) }, así que las hojas nuevas tienen que dar { LESS($board, $kept) }.
           *[no] {""}
        }
    .argument-4 = { $kinds ->
            [one] Una hoja tiene
           *[other] De { THING($largest) }, la hoja más grande que se puede usar aquí, una tiene
        } { FIGURES($sheet) }: son { FIGURES($sheets, decimals: 2) } hojas, y por lo tanto { bounds-fewest } al menos.
    .argument-5 = Este plan compra { $used }{ $open ->
            [0] : ningún acomodo que cumpla las reglas puede con menos.
           *[other] . Si algún otro acomodo puede con { bounds-fewer } no se sabe: la búsqueda no encontró ninguno, y nada de lo dicho aquí lo descarta.
        }

bounds-and = {" "}y { THING($one) }
bounds-fewer = { $open ->
        [1] { $result }
       *[other] { $result } a { $one_fewer }
    }

bounds-every_layout_by_cost = { bounds-every_layout }
    .formula = { bounds-every_layout.formula }
    .source = { bounds-every_layout.source }
    .unsaid-surfaces = -
    .name-board = { bounds-every_layout.name-board }
    .name-narrowest = { bounds-every_layout.name-narrowest }
    .unsaid-most_on = -
    .unsaid-courses = -
    .unsaid-alone = -
    .unsaid-pair = -
    .unsaid-staggered = -
    .unsaid-offcuts = -
    .name-kept = { bounds-every_layout.name-kept }
    .name-new = { bounds-every_layout.name-new }
    .unsaid-price = -
    .unsaid-named = -
    .unsaid-best = -
    .unsaid-best_numbers = -
    .value-cost = { NUMBER_OF($cost, decimals: 2) } { WORD($currency) }
    .name-least_cost = menor costo
    .value-least_cost = { NUMBER_OF($least_cost, decimals: 2) } { WORD($currency) }
    .unsaid-over = -
    .unsaid-cheapest = -
    .unsaid-currency = -
    .result = { bounds-fewest }
    .argument-1 = { bounds-every_layout.argument-1 }
    .argument-2 = { bounds-every_layout.argument-2 }
    .argument-3 = { bounds-every_layout.argument-3 }
    .argument-4 = Eso puede salir de { EACH("bounds-offer", $offered, $sheet, $price, last: "and") }. Las hojas más baratas con tanto en ellas { $named ->
            [yes] son { EACH("bounds-mix", $best_numbers, $best, last: "and") }, por
           *[no] cuestan al menos
        } { NUMBER_OF($least_cost, decimals: 2) } { WORD($currency) }.
    .argument-5 = Las hojas de este plan cuestan { NUMBER_OF($cost, decimals: 2) }{ $cheapest ->
            [yes] : ningún acomodo que cumpla las reglas cuesta menos.
           *[no] , que son { NUMBER_OF($over, decimals: 2) } más. Si algún otro acomodo cuesta menos no se sabe: la búsqueda no encontró ninguno, y nada de lo dicho aquí lo descarta.
        }

bounds-offer = { THING($one) } ({ FIGURES($two) }, { NUMBER_OF($three, decimals: 2) })
bounds-mix = { $one } × { THING($two) }
