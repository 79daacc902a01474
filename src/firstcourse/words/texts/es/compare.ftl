# Not reviewed by a native setter yet.
# Alternativas de un trabajo, una al lado de otra.

compare-title = Alternativas: { $job }
compare-as_it_is = como está
compare-figure = lo que lleva
compare-sheets = hojas nuevas
compare-cuts = cortes en las hojas
compare-tile_cuts = azulejos por cortar
compare-all_cuts = cortes en hojas y azulejo
compare-smallest_cut = corte de azulejo más angosto
compare-waste = desperdicio de hojas
compare-mass = peso de paneles, azulejo y su mortero
compare-height = mayor altura sobre un piso
compare-hours = horas
compare-cost = costo con impuesto, { $currency }
compare-days = días, del primero al último
compare-length = { TAPE($length) }
compare-much = { FIGURES($much, decimals: 1) }
compare-best =
    .cheapest = La más barata
    .lightest = La más ligera
    .quickest_days = Menos días
    .quickest_hours = Menos horas
    .fewest_cuts = Menos cortes
    .least_waste = Menos desperdicio de hojas
compare-is_best = { $what }: { $who }
compare-beaten = { $name } queda superada: en nada es mejor y en algo es peor que { $by }.
compare-stopped = { $name }: hay hallazgos que detienen el trabajo ({ $codes }); por eso no es la mejor en nada.
compare-incomplete = * Algo no tiene precio o rendimiento: horas y costo no lo incluyen y no se comparan.
compare-problem = { $name } no se puede planear: { $why }
compare-chart = Cuál cuesta menos, cuál corta menos (lleno: no superada)
compare-changed = Lo que cada una cambia en el trabajo
