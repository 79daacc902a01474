# Not reviewed by a native setter yet.
# Why so many sheets and not fewer, and what would come of other sheets, framing or more search.

why-sheets = { $used ->
        [one] { $used } hoja
       *[other] { $used } hojas
    }
why-at_least = { $least ->
        [one] { $least } hoja
       *[other] { $least } hojas
    }
why-open = { $open ->
        [1] { $least }
       *[other] { $least } a { $one_fewer }
    }

why-nothing_bought = Los sobrantes guardados dan todas sus piezas: no se compra nada.
why-no_layout_fewer = { why-sheets }: ningún acomodo que cumpla las reglas lleva menos. Está probado.
why-these_boards = { why-sheets }. Donde quedan ahora las juntas, menos no pueden dar estos paneles: está probado.
why-other_seams = Con otras juntas, menos de { $least } es imposible; si alcanzan { why-open } no se sabe.
why-several_serve = { why-sheets }. Otras hojas del trabajo sirven para los mismos paneles, así que no hay un número mínimo de esta sola.
why-fewer_not_known = { why-sheets }. Menos de { $least } es imposible. Si alcanzan { why-open } no se sabe: la búsqueda no encontró manera, y ningún argumento lo descarta.
why-no_layout_cheaper = Ningún otro acomodo, con las juntas y hojas que sean, cuesta menos.
why-cheaper_not_known = Con otras juntas u hojas ningún acomodo cuesta menos de { NUMBER_OF($least, decimals: 2) }; estas hojas cuestan { NUMBER_OF($cost, decimals: 2) }, y si hay algo en medio no se sabe.

why-boards = Este plan tiene { $boards ->
        [one] { $boards } panel
       *[other] { $boards } paneles
    } de ella. Llevan { FIGURES($area) } de hoja, contando lo que luego les quitan sesgos, muescas y agujeros.
why-offcuts_give = Los sobrantes guardados dan { FIGURES($given) } de eso, y quedan { FIGURES($left) }.
why-area = Una hoja tiene { FIGURES($sheet) }. Si no se desperdiciara nada estos paneles llevarían { FIGURES($sheets, decimals: 2) } hojas, y no se puede comprar parte de una hoja: { why-at_least } al menos.
why-apart = De { $others ->
        [0] { LIST($boards) }
        [one] { LIST($boards, between: ", ") } y { $others } más
       *[other] { LIST($boards, between: ", ") } y { $others } más
    } no salen dos de una misma hoja, se giren como se giren{ $enough ->
        [yes] : { $number ->
            [one] { $number } hoja
           *[other] { $number } hojas
        } al menos.
       *[no] , así que cada uno de estos { $number } necesita la suya.
    }
why-weighed = { $proof ->
        [dual_functions] Pesando cada pieza por lo que echa a perder a su lado (si es más ancha que media hoja cuenta todo el ancho) se piden { why-at_least }.
        [pattern_prices] Ponga a cada panel un precio tal que ninguna hoja, se corte como se corte, rinda más de lo que vale una hoja: los paneles valen entonces { why-at_least } al menos.
       *[other] No solo cuenta el área: hacen falta { why-at_least } al menos.
    }

why-practice = { why-plain_practice } compra { $bought }: { $more ->
        [0] { $fewer ->
            [0] tantas como
           *[other] { $fewer } menos que
        }
       *[other] { $more } más que
    } este plan.
why-plain_practice = La práctica usual (hojas enteras desde una esquina, lo demás de lo que sobra)
why-beside_practice = { $named ->
        [yes] { why-plain_practice }
       *[no] La práctica usual
    } compra { $practice_kinds ->
        [0] ninguna
       *[other] { EACH("why-some", $practice_numbers, $practice_sheets, last: "and") }
    } para las mismas superficies{ $practice_priced ->
        [yes] {" "}({ NUMBER_OF($practice_cost, decimals: 2) } { WORD($currency) })
       *[no] {""}
    }; este plan compra { $plan_kinds ->
        [0] ninguna
       *[other] { EACH("why-some", $plan_numbers, $plan_sheets, last: "and") }
    }{ $plan_priced ->
        [yes] {" "}({ NUMBER_OF($plan_cost, decimals: 2) } { WORD($currency) })
       *[no] {""}
    }.
why-some = { $one } × { THING($two) }
why-least_cost = Todas las hojas del trabajo cuestan { NUMBER_OF($cost, decimals: 2) } { WORD($currency) } juntas{ $proven ->
        [yes] , y ningún corte de estas piezas cuesta menos: está probado.
       *[no] ; ningún corte de estas piezas cuesta menos de { NUMBER_OF($least, decimals: 2) }.
    }

why-waste = De todo lo que se corta, { $boards }% se vuelve panel y { $waste }% es desperdicio.
why-waste_and_kept = De todo lo que se corta, { $boards }% se vuelve panel, { $keep }% se guarda y { $waste }% es desperdicio. Por guardar: { EACH("why-part", $kept, $wide, $high) }.
why-part = { $one } ({ TAPE($two, feet: "no") } × { TAPE($three, feet: "no") })

why-as_it_is = el plan como está
why-one_stock = solo { THING($only) }, sin { LIST($without) }
why-other_size = { THING($stock) } en hojas de { TAPE($wide, feet: "no") } × { TAPE($long, feet: "no") }
why-row_of_blocking = una fila más de bloqueo, a { TAPE($above, feet: "no") } arriba del pie de los paneles
why-one_more_joist = una vigueta de techo más, a { TAPE($off, feet: "no") } del borde de los paneles
why-studs_moved = primer montante medio claro más allá en { $number ->
        [one] { PLACE($walls) }
       *[other] todas las paredes de armazón regular
    }
why-joists_moved = primera vigueta de techo medio claro más allá
why-longer = buscar más (esfuerzo { $effort })

# The page that shows it.
why-title = Por qué { $count } { $count ->
    [one] hoja
   *[other] hojas
}{ $reused ->
    [0] {""}
    [one] {" "}y { $reused } sobrante guardado que se usa
   *[other] {" "}y { $reused } sobrantes guardados que se usan
}
why-count =
    .practice = la práctica usual compra
    .used = este plan compra
    .least = estos paneles necesitan al menos
    .every_layout = cualquier otro acomodo necesita al menos
why-better =
    .cost = las hojas por comprar cuestan menos
    .boards = hay menos paneles
    .seam = hay menos junta que encintar
    .thin = menos cortes quitan menos de lo que se puede quebrar
    .cuts = hay menos cortes
    .offcut = se guarda más para el próximo trabajo
    .narrow = el panel más angosto es más ancho
    .heavy = el panel más pesado es más ligero
why-how =
    .cost = sin precios: tienen menos área
    .boards = cada uno se corta, se carga, se pone y se fija
    .thin = cada uno lleva escofina o sierra
    .cuts = de borde a borde, en todas las hojas
    .offcut = solo lo que mide { $least } o más en los dos sentidos, contado en pasos de { $step } de hoja
    .step = diferencias menores de { $step } no cuentan
    .any = cuenta cualquier diferencia
    .alone = trabaja una persona sola
    .two = no cuenta: trabajan dos personas
why-share = { $kept ->
    [yes] guardar { $part } { $percent }%
   *[no] { $part } { $percent }%
}
why-wasted = desperdicio { $percent }%
why-from_offcut = sobrante guardado { $source }
