# Not reviewed by a native setter yet.
# Frames of floors, walls and ceilings: what was found, and every check of it.

# What is checked, as it stands in lists and verdicts.
frames-check = { $one ->
        [dead_load] carga muerta
        [joist_spacing] separación de viguetas
        [ceiling_joist_spacing] separación de viguetas de techo
        [bending] flexión
        [shear] cortante
        [bearing] apoyo
        [bearing_length] largo de apoyo
        [live_deflection_finish] deflexión por carga viva (acabado)
        [live_deflection_code] deflexión por carga viva (código)
        [total_deflection] deflexión total
        [mean_dead_load] carga muerta media de una vigueta
        [panel_rating] clasificación de claro del tablero
        [panel_bending] flexión del tablero
        [panel_uniform] tablero bajo carga uniforme
        [panel_point] tablero bajo carga puntual
        [panel_thickest] capa de tablero más gruesa
        [stud_spacing] separación de montantes
        [stud_stiffness_tile] rigidez de montantes (azulejo)
        [stud_stiffness_code] rigidez de montantes (código)
       *[steel_thickness] espesor del acero
    }
frames-check_holds = cumple
frames-check_fails = NO CUMPLE
frames-check_advised = aconsejado, no se cumple

# What loads are of.
frames-of = { $one ->
        [joists] viguetas
        [panel] tablero
        [planks] tablas
        [membrane] membrana
        [levelling_compound] nivelador
        [ceiling_above] viguetas y techo sencillo
        [floor_above] piso de arriba
        [floor_layers] capas del piso
        [board_mortar] mortero bajo los paneles
        [board] panel
        [heating] mortero alrededor de la calefacción
        [mortar_bed] cama de mortero
        [mortar] mortero bajo el azulejo
        [tile] azulejo
        [bed] cama
        [kerb] bordillo
        [filled_tub] tina llena
        [frame] armazón
        [body] cuerpo
       *[thing] cosa
    }
frames-row = { frames-of } { FIGURES($two) }
frames-mass_row = { frames-of } { FIGURES($two) }, { FIGURES($three) }
frames-of_two = { INCH_POUND($one, decimals: 2) }
frames-of_whole = { INCH_POUND($one, decimals: 0) }
frames-solid_step = { frames-of }: { INCH_POUND($two, decimals: 3) } × { INCH_POUND($three, decimals: 2) } lb por pie cúbico = { INCH_POUND($four, decimals: 1) } lb
frames-area_step = { frames-of }: { INCH_POUND($two, decimals: 2) } / { INCH_POUND($four, decimals: 3) } = { INCH_POUND($three, decimals: 2) } psf

# The data sheet.
frames-facts = encontrado o dado
    .named = -
    .name-use = uso
    .value-use = { $use ->
        [sleeping] recámara
       *[living] estancia, baño
    }
    .name-above = arriba
    .value-above = { $above ->
        [above_attic] ático sin bodega
        [above_attic_storage] ático con bodega limitada
       *[above_floor] un piso de estancias
    }
    .name-span = claro libre, de cara a cara
    .value-span = { SPAN($span) }
    .name-height = altura libre
    .value-height = { SPACED($height) }
    .name-spacing = { $kind ->
        [wall] montantes, de centro a centro
       *[floor] viguetas, de centro a centro
    }
    .value-spacing = { SPACED($spacing) }
    .name-unbroken = continuas sobre un apoyo
    .value-unbroken = otros claros sin saber
    .name-run = continuas sobre claros de
    .value-run = { EACH("frames-span", $run, between: " + ") }
    .name-size = { $kind ->
        [wall] montantes
       *[floor] viguetas
    }
    .value-size-with-plies = { $size }, { SPACED($width) } × { SPACED($depth) }, { $plies } juntas
    .value-size = { $size }
    .name-each = viguetas
    .value-each = de ingeniería o acero, { $plies } juntas, EI { INCH_POUND($each, millions: "yes") } lb·in² cada una según su fabricante
    .name-species = especie, grado
    .value-species = { frames-lumber.species }, { frames-lumber.grade }
    .name-e = valores de diseño
    .value-e-with-fb = Fb { FIGURES($fb) }, CF { NUMBER_OF($size_factor) }, Fv { FIGURES($fv) }, Fcp { FIGURES($fc_perp) }, E { FIGURES($e) } ({ SOURCE($values) })
    .value-e = E { FIGURES($e) }
    .name-web = montantes
    .value-web-with-steel = acero, alma { SPACED($web) }
    .value-web = acero, alma { SPACED($web) }, solo calibre: mils sin saber
    .name-steel = espesor
    .value-steel = { PLAIN($steel) }
    .name-flange = patines
    .value-flange = { SPACED($flange) }
    .name-inertia = I según el fabricante
    .value-inertia = { NUMBER_OF($inertia) } in⁴
    .name-bearing = apoyo en los extremos
    .value-bearing = { SPACED($bearing) }
    .name-layers = tablero sobre las viguetas
    .value-layers = { EACH("frames-layer", $layers, $ratings, between: " + ") }, { $glued ->
        [yes] pegado y atornillado
       *[no] sin pegar
    }
    .name-panel = espesor total de tablero
    .value-panel = { THICK($panel) }
    .name-finish = acabado
    .value-finish = azulejo { $finish ->
        [stone] de piedra
       *[ceramic] cerámico
    }
    .name-live = carga viva
    .value-live = { PLAIN($live) }
    .name-dead = carga muerta
    .value-dead = { FIGURES($dead) }, capas abajo
    .name-areas = carga muerta en partes
    .value-areas = { EACH("frames-area_fact", $areas, $area_loads, $area_sizes, between: "; ") }
    .name-points = cargas permanentes en una vigueta
    .value-points = { EACH("frames-point_fact", $points, $points_at, between: "; ") }
    .name-cuts = cortes en las viguetas
    .value-cuts = { EACH("frames-cut_fact", $cuts, $cut_sizes, $cut_places, between: "; ") }
    .name-sister = gemela
    .value-sister = una segunda pieza en el { PERCENT($sister) } medio del claro
frames-span = { SPACED($one) }
frames-layer = { $one } in ({ $two })
frames-area_fact = { THING($one) } { FIGURES($two, decimals: 1) } en { FIGURES($three, decimals: 1) }
frames-point_fact = { PLAIN($one) } a { SPACED($two) } de un extremo
frames-cut_fact = { WORD($one) } { SPACED($two) }, a { SPACED($three) } del apoyo más cercano
frames-lumber = madera
    .species = { $species ->
        [species_dfl] Douglas fir-larch
        [species_hf] hem-fir
        [species_spf] spruce-pine-fir
        [species_sp] southern pine
       *[unknown] especie sin saber
    }
    .grade = { $grade ->
        [grade_ss] Select Structural
        [grade_no1] No. 1
        [grade_no2] No. 2
        [grade_no3] No. 3
        [grade_stud] Stud
        [grade_construction] Construction
        [grade_standard] Standard
        [grade_utility] Utility
       *[unknown] grado sin saber
    }

# Assumed.
frames-joists_weigh = Las viguetas y el techo de abajo pesan { PLAIN($load) } además de tablero y capas.
frames-no_stiffness = Paneles, mortero y azulejo agregan masa y ninguna rigidez.
frames-lumber_lowest = { $unknown ->
        [both] Especie y grado
        [species] Especie
       *[grade] Grado
    } sin saber: se toma el menor de cada valor de diseño del libro de reglas.
frames-load_taken = { CAPITAL(THING($of)) }: se toman { PLAIN($load) }, pues el trabajo no lo dice.
frames-tub_water = El agua de una tina se cuenta con las cargas permanentes, además de toda la carga viva.
frames-parts_do_most = Las cargas en partes del piso están donde más pesan a lo largo de las viguetas.
frames-other_spans = Otros claros de las viguetas continuas no se saben: se cuentan como claro simple.
frames-brittle_finish = El azulejo cuenta como acabado quebradizo.
frames-lateral_load = Carga lateral { PLAIN($load) }.
frames-stud_alone = El montante solo: los paneles no agregan rigidez.
frames-flanges = Patines { SPACED($width) }; sección sin labios, completa.

# Left open.
frames-walls_on_floor = Paredes que se apoyan en el piso, y lo que cuelga de ellas.
frames-beams = Vigas, postes, colgantes y zapatas que cargan las viguetas.
frames-vibration = Vibración; pudrición, rajaduras e insectos.
frames-bearing_not_known = El apoyo en los extremos, cuyo largo no se dio.
frames-ei_strength = Resistencia a flexión, cortante y apoyo, atiesadores, agujeros y deflexión por cortante de viguetas dadas por EI: las tablas de su fabricante.
frames-hanging_mass = Cuánta masa pueden sostener paneles y fijaciones arriba: no hay límite publicado para esta práctica; pregunte al fabricante del panel.
frames-ceiling_beams = Vigas, colgantes y soleras que cargan las viguetas.
frames-wall_loads = Carga de arriba sobre los montantes; viento; fijación de las soleras.

frames-question = { $holds ->
        [yes] Todas las revisiones ({ WORD($kind) }) cumplen como se dio. Favor de confirmar piezas, apoyos y cargas como se encontraron, y lo que está bajo supuesto y queda abierto.
       *[no] Como se dio ({ WORD($kind) }) no cumple en { $failing }. Favor de diseñar lo que haga que cargue las capas de abajo dentro de los límites de la hoja de cálculo, o de confirmarlo como está.
    }

# Loads.
frames-dead_load = Carga muerta del piso
    .named = -
    .formula = suma de las capas, cada una espesor × densidad
    .source = tablero y viguetas: { SOURCE("mass.panel") }; capas como se dieron; límite: { SOURCE($rule) }
    .name-loads = hecha de
    .value-loads = { EACH("frames-row", $of, $loads, between: ", ") }
    .step-1 = { EACH("frames-of_two", $loads, between: " + ") } = { INCH_POUND($result, decimals: 2) } psf

frames-ceiling_dead_load = Carga muerta del techo
    .named = -
    .formula = carga muerta de la tabla + espesor × densidad de cada capa
    .source = { SOURCE($rule) }; capas como se dieron
    .name-loads = hecha de
    .value-loads = { frames-dead_load.value-loads }
    .step-1 = { frames-dead_load.step-1 }

frames-area_load = Carga muerta, { THING($also) }
    .named = -
    .formula = estructura + lo que está ahí, cada cosa por su masa / área
    .source-with-assumed = { SOURCE($rule) }; { SOURCE($assumed) }; volúmenes y capas de este plan
    .source = { SOURCE($rule) }; volúmenes y capas de este plan
    .name-area = área
    .value-area = { FIGURES($area) }
    .name-loads = debajo
    .value-loads = { frames-dead_load.value-loads }
    .name-rows = lo que está ahí
    .value-rows = { EACH("frames-mass_row", $rows, $mass, $psf, between: "; ") }
    .step-1-with-solid = { EACH("frames-solid_step", $solid, $volume, $density, $solid_mass, between: "\u000A") }
    .step-2-with-rows = { EACH("frames-area_step", $rows, $mass, $psf, $area, between: "\u000A") }
    .step-3-with-rows = { EACH("frames-of_two", $loads, between: " + ") } + { EACH("frames-of_two", $psf, between: " + ") } = { INCH_POUND($result, decimals: 2) } psf
    .step-3 = { frames-dead_load.step-1 }

frames-joist_share = Cargas en partes del piso que carga la vigueta { $joist }, la que más
    .named = -
    .formula = la franja hasta la mitad de cada vecina × (carga ahí - capas del piso)
    .source = dónde está cada una en el plan, y las viguetas como se dieron
    .name-spacing = separación
    .value-spacing = { SPACED($spacing) }
    .step-1-with-part_start = { EACH("frames-share_from", $parts, $part_width, $part_length, $part_load, $part_line, $part_start, between: "\u000A") }
    .step-1 = { EACH("frames-share", $parts, $part_width, $part_length, $part_load, $part_line, between: "\u000A") }
    .step-2 = { EACH("frames-of_two", $part_load, between: " + ") } = { INCH_POUND($result, decimals: 2) } lb
frames-share = { THING($one) }, { INCH_POUND($two, decimals: 2) } in de ancho y { INCH_POUND($three) } in de largo: { INCH_POUND($four, decimals: 2) } / { INCH_POUND($three) } = { INCH_POUND($five, decimals: 4) } lb/in
frames-share_from = { THING($one) }, { INCH_POUND($two, decimals: 2) } in de ancho y { INCH_POUND($three) } in de largo desde { INCH_POUND($six) } in: { INCH_POUND($four, decimals: 2) } / { INCH_POUND($three) } = { INCH_POUND($five, decimals: 4) } lb/in

frames-mean_dead_load = Carga muerta media a lo largo de la vigueta { $joist }, con lo construido en una parte del piso
    .named = -
    .formula = carga de todo el piso + lo que está en esta vigueta / (claro × separación)
    .name-load = en esta vigueta
    .value-load = { FIGURES($load, decimals: 1) }
    .name-span = L
    .value-span = { SPACED($span) }
    .step-1 = claro × separación = { INCH_POUND($span) } × { INCH_POUND($spacing) } / 144 = { INCH_POUND($area, decimals: 3) } sq ft
    .step-2 = { INCH_POUND($even, decimals: 2) } + { INCH_POUND($load, decimals: 2) } / { INCH_POUND($area, decimals: 3) } = { INCH_POUND($result, decimals: 2) } psf

# Lengths as found.
frames-joist_spacing = Separación de viguetas
    .formula = como se encontró
    .result = { SPACED($result, $limit) }
    .value-limit = a lo más { SPACED($limit) }
frames-ceiling_joist_spacing = Separación de las viguetas de techo
    .formula = como se encontró
    .result = { SPACED($result, $limit) }
    .value-limit = a lo más { SPACED($limit) }
frames-stud_spacing = Separación de montantes
    .formula = como se encontró
    .result = { SPACED($result, $limit) }
    .value-limit = a lo más { SPACED($limit) }
frames-bearing_length = Largo de apoyo
    .formula = como se encontró
    .result = { SPACED($result, $limit) }
    .value-limit = al menos { SPACED($limit) }
frames-panel_thickest = Capa de tablero más gruesa
    .formula = como se encontró
    .result = { THICK($result) }
    .value-limit = al menos { THICK($limit) }
frames-steel_thickness = Espesor del acero
    .formula = como se encontró
    .result = { PLAIN($result) }
    .value-limit = al menos { PLAIN($limit) }

# Joists.
frames-joist_section = Cargas a lo largo de una vigueta, sección y rigidez
    .named = -
    .formula = w = carga × separación; S = b d² / 6; I = b d³ / 12
    .name-span = L
    .value-span = { SPACED($span) }
    .name-spacing = separación
    .value-spacing = { SPACED($spacing) }
    .name-size = vigueta
    .value-size = { $size } { frames-lumber.species }, { frames-lumber.grade }
    .name-plies = piezas juntas
    .name-run = claros en orden
    .value-run = { EACH("frames-span", $run, between: " + ") }
    .step-1 = w_live = { INCH_POUND($live) } psf × { INCH_POUND($spacing) } in / 144 = { INCH_POUND($w_live, decimals: 3) } lb/in
    .step-2 = w_dead = { INCH_POUND($dead, decimals: 2) } psf × { INCH_POUND($spacing) } in / 144 = { INCH_POUND($w_dead, decimals: 3) } lb/in
    .step-3 = S = b d² / 6 = { INCH_POUND($width) } × { INCH_POUND($depth) }² / 6 = { INCH_POUND($modulus, decimals: 3) } in³
    .step-4 = I = b d³ / 12 = { INCH_POUND($width) } × { INCH_POUND($depth) }³ / 12 = { INCH_POUND($inertia, decimals: 2) } in⁴
    .step-5 = EI = { INCH_POUND($e, decimals: 0) } psi × { INCH_POUND($inertia, decimals: 2) } in⁴ = { INCH_POUND($ei, millions: "yes") } lb·in²
    .argument-1-with-run = Coeficientes por el teorema de los tres momentos, carga viva donde más pesa / carga muerta en todo: momento { INCH_POUND($moment, decimals: 4, between: " / ") }, cortante { INCH_POUND($shear, decimals: 4, between: " / ") }, reacción { INCH_POUND($reaction, decimals: 4, between: " / ") }, deflexión { INCH_POUND($deflection, decimals: 5, between: " / ") } (como parte del claro en que está).
    .argument-1-with-moment = La vigueta pasa sobre un apoyo, sus otros claros sin saber: momento y deflexión como de un claro simple, cortante y reacción como junto al apoyo central de dos claros iguales (5/8 y 5/4).

frames-joist_stiffness = Cargas a lo largo de una vigueta, sección y rigidez
    .named = -
    .formula = w = carga × separación
    .source = EI como se dio del fabricante de la vigueta
    .name-span = L
    .value-span = { SPACED($span) }
    .name-spacing = separación
    .value-spacing = { SPACED($spacing) }
    .name-run = claros en orden
    .value-run = { EACH("frames-span", $run, between: " + ") }
    .step-1 = { frames-joist_section.step-1 }
    .step-2 = { frames-joist_section.step-2 }
    .step-3 = EI = { INCH_POUND($each, millions: "yes") } lb·in² como se dio del fabricante × { $plies } = { INCH_POUND($ei, millions: "yes") } lb·in²
    .argument-1-with-run = { frames-joist_section.argument-1-with-run }
    .argument-1-with-moment = { frames-joist_section.argument-1-with-moment }

frames-bending = Esfuerzo de flexión
    .title-with-joist = Esfuerzo de flexión, vigueta { $joist }
    .named = -
    .formula = fb = M / S ≤ Fb' = Fb · CD · CF · Cr
    .step-1-with-c = M = { INCH_POUND($c) } w L² = { INCH_POUND($c) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) }² = { INCH_POUND($uniform, decimals: 0) } lb·in
    .step-1 = M = (c_live w_live + c_dead w_dead) L² = ({ INCH_POUND($c_live, decimals: 4) } × { INCH_POUND($w_live, decimals: 3) } + { INCH_POUND($c_dead, decimals: 4) } × { INCH_POUND($w_dead, decimals: 3) }) × { INCH_POUND($span) }² = { INCH_POUND($uniform, decimals: 0) } lb·in
    .step-2-with-points = { EACH("frames-point_moment", $points, $points_at, $span, $points_moment, between: "\u000A") }
    .step-3-with-part_start = { EACH("frames-part_moment_from", $parts, $part_line, $part_length, $part_start, $part_moment, between: "\u000A") }
    .step-3-with-parts = { EACH("frames-part_moment", $parts, $part_line, $part_length, $span, $part_moment, between: "\u000A") }
    .step-4-with-points = { frames-all_moments }
    .step-4-with-parts = { frames-all_moments }
    .step-5-with-sister = sobre la gemela: fb = M / 2 S = { INCH_POUND($moment, decimals: 0) } / (2 × { INCH_POUND($modulus, decimals: 3) }) = { INCH_POUND($over_sister, decimals: 0) } psi
    .step-5 = fb = M / S = { INCH_POUND($moment, decimals: 0) } / { INCH_POUND($modulus, decimals: 3) } = { INCH_POUND($result, decimals: 0) } psi
    .step-6-with-sister = en su extremo, a { INCH_POUND($sister_end, decimals: 1) } in del apoyo: M = w x (L - x) / 2 + las cargas a su lado = { INCH_POUND($end_moment, decimals: 0) } lb·in; fb = { INCH_POUND($end_moment, decimals: 0) } / { INCH_POUND($modulus, decimals: 3) } = { INCH_POUND($at_end, decimals: 0) } psi
    .step-7 = Fb' = Fb CD CF Cr = { INCH_POUND($value) } × { INCH_POUND($duration) } × { INCH_POUND($size_factor) } × { INCH_POUND($repetition) } = { INCH_POUND($limit, decimals: 0) } psi
frames-all_moments = M = { INCH_POUND($moment, decimals: 0) } lb·in, sumando lo mayor de cada una
frames-point_moment = + P a (L - a) / L = { INCH_POUND($one) } × { INCH_POUND($two) } × ({ INCH_POUND($three) } - { INCH_POUND($two) }) / { INCH_POUND($three) } = { INCH_POUND($four, decimals: 0) } lb·in
frames-part_moment = + { THING($one) }, { INCH_POUND($three) } in de ella en medio: w c (2 L - c) / 8 = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × (2 × { INCH_POUND($four) } - { INCH_POUND($three) }) / 8 = { INCH_POUND($five, decimals: 0) } lb·in
frames-part_moment_from = + { THING($one) }, { INCH_POUND($three) } in de ella desde { INCH_POUND($four) } in, w = { INCH_POUND($two, decimals: 4) } lb/in: R a + R² / (2 w), R = w c (L - a - c / 2) / L, = { INCH_POUND($five, decimals: 0) } lb·in

frames-shear = Esfuerzo cortante
    .title-with-joist = Esfuerzo cortante, vigueta { $joist }
    .named = -
    .formula = fv = 1.5 V / (b d) ≤ Fv' = Fv · CD, V a un peralte del apoyo
    .step-1-with-c = V = { INCH_POUND($c) } w L = { INCH_POUND($c) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) } = { INCH_POUND($at_support, decimals: 0) } lb en el apoyo
    .step-1 = V = (c_live w_live + c_dead w_dead) L = ({ INCH_POUND($c_live, decimals: 4) } × { INCH_POUND($w_live, decimals: 3) } + { INCH_POUND($c_dead, decimals: 4) } × { INCH_POUND($w_dead, decimals: 3) }) × { INCH_POUND($span) } = { INCH_POUND($at_support, decimals: 0) } lb en el apoyo
    .step-2-with-points = { frames-ends.points }
    .step-3-with-part_lever = { frames-ends.placed }
    .step-3-with-part_against = { frames-ends.against }
    .step-3-with-parts = { frames-ends.whole }
    .step-4-with-ends = menos w d = { INCH_POUND($w, decimals: 3) } × { INCH_POUND($depth) }, más estas { INCH_POUND($ends, decimals: 0) } lb: V = { INCH_POUND($force, decimals: 1) } lb
    .step-4 = menos w d = { INCH_POUND($w, decimals: 3) } × { INCH_POUND($depth) }: V = { INCH_POUND($force, decimals: 1) } lb
    .step-5 = fv = 1.5 V / (b d) = 1.5 × { INCH_POUND($force, decimals: 1) } / ({ INCH_POUND($width) } × { INCH_POUND($depth) }) = { INCH_POUND($result, decimals: 0) } psi
    .step-6 = Fv' = Fv CD = { INCH_POUND($value) } × { INCH_POUND($duration) } = { INCH_POUND($limit, decimals: 0) } psi

frames-ends = fuerzas en un extremo
    .points = { EACH("frames-point_end", $points, $points_at, $points_end, between: "\u000A") }
    .placed = { EACH("frames-part_placed", $parts, $part_line, $part_length, $part_lever, $span, $part_end, between: "\u000A") }
    .against = { EACH("frames-part_against", $parts, $part_against, $part_length, $span, $part_end, between: "\u000A") }
    .whole = { EACH("frames-part_whole", $parts, $part_end, between: "\u000A") }
frames-point_end = carga puntual de { INCH_POUND($one) } lb a { INCH_POUND($two) } in: a lo más { INCH_POUND($three, decimals: 1) } lb en un extremo
frames-part_placed = { THING($one) }, en el apoyo más cercano: w c × { INCH_POUND($four) } / L = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × { INCH_POUND($four) } / { INCH_POUND($five) } = { INCH_POUND($six, decimals: 1) } lb
frames-part_against = { THING($one) }, contra un apoyo: w c (1 - c / (2 L)) = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × (1 - { INCH_POUND($three) } / (2 × { INCH_POUND($four) })) = { INCH_POUND($five, decimals: 1) } lb
frames-part_whole = { THING($one) }: toda, pues la vigueta pasa sobre apoyos, { INCH_POUND($two, decimals: 1) } lb

frames-bearing = Presión de apoyo
    .title-with-joist = Presión de apoyo, vigueta { $joist }
    .named = -
    .formula = fc = R / (b · apoyo) ≤ Fcp
    .step-1-with-c = R = { INCH_POUND($c) } w L = { INCH_POUND($c) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) } = { INCH_POUND($uniform, decimals: 0) } lb
    .step-1 = R = (c_live w_live + c_dead w_dead) L = ({ INCH_POUND($c_live, decimals: 4) } × { INCH_POUND($w_live, decimals: 3) } + { INCH_POUND($c_dead, decimals: 4) } × { INCH_POUND($w_dead, decimals: 3) }) × { INCH_POUND($span) } = { INCH_POUND($uniform, decimals: 0) } lb
    .step-2-with-points = { frames-ends.points }
    .step-3-with-part_lever = { frames-ends.placed }
    .step-3-with-part_against = { frames-ends.against }
    .step-3-with-parts = { frames-ends.whole }
    .step-4-with-ends = con estas { INCH_POUND($ends, decimals: 0) } lb: R = { INCH_POUND($force, decimals: 1) } lb
    .step-5 = fc = R / (b × apoyo) = { INCH_POUND($force, decimals: 1) } / ({ INCH_POUND($width) } × { INCH_POUND($bearing) }) = { INCH_POUND($result, decimals: 0) } psi

frames-live_deflection = Deflexión por carga viva ({ $by })
    .named = -
    .formula-with-sister = { frames-bent.formula-with-sister }
    .formula = { frames-bent.formula }
    .name-span = L
    .value-span = { SPACED($span) }
    .step-1-with-sister = { frames-bent.g }
    .step-2-with-sister = Δ = { frames-bent.beside } = { INCH_POUND($deflection, figures: 4) } in
    .step-2 = Δ = { frames-bent.plain } = { INCH_POUND($deflection, figures: 4) } in
    .step-3 = L / Δ = { INCH_POUND($span) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }

frames-total_deflection = Deflexión por carga viva y muerta
    .title-with-joist = Deflexión por carga viva y muerta, vigueta { $joist }
    .named = -
    .formula-with-sister = { frames-bent.formula-with-sister }, viva + muerta + otras cargas
    .formula = { frames-bent.formula }, viva + muerta + otras cargas
    .name-span = L
    .value-span = { SPACED($span) }
    .step-1 = viva: Δ = { INCH_POUND($live, figures: 4) } in, como arriba
    .step-2-with-sister = muerta: { frames-bent.g }
    .step-3-with-sister = muerta: Δ = { frames-bent.beside } = { INCH_POUND($dead, figures: 4) } in
    .step-3 = muerta: Δ = { frames-bent.plain } = { INCH_POUND($dead, figures: 4) } in
    .step-4-with-points = cargas puntuales: Σ P a (3 L² - 4 a²) / (48 EI), a desde el apoyo más cercano = { INCH_POUND($points_deflection, figures: 4) } in
    .step-5-with-part_start = { EACH("frames-part_bent_from", $parts, $part_line, $part_length, $part_start, $part_deflection, between: "\u000A") }
    .step-5-with-parts = { EACH("frames-part_bent", $parts, $part_line, $part_length, $span, $ei, $part_deflection, between: "\u000A") }
    .step-6-with-points = { frames-bent.all }
    .step-6-with-parts = { frames-bent.all }
    .step-7 = L / Δ = { INCH_POUND($span) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }
    .argument-1 = Con la fluencia de la carga muerta a la larga, por { NUMBER_OF($creep) }: { FIGURES($in_time) }; aquí no se le pone límite.

frames-bent = cómo se flexionan las viguetas
    .formula-with-sister = Δ = 2 ∫ M (x / 2) / EI dx hasta medio claro, EI doble en el { PERCENT($sister) } medio
    .formula = Δ = c w L⁴ / EI; c = 5/384 en un claro
    .g = G = w (L x³ / 3 - x⁴ / 4) / 4, w = { INCH_POUND($w, decimals: 3) } lb/in: hasta el extremo de la gemela, x = { INCH_POUND($sister_end) } in, G1 = { INCH_POUND($to_end, decimals: 0) }; hasta medio claro, G2 = { INCH_POUND($to_middle, decimals: 0) }
    .beside = 2 (G1 / EI + (G2 - G1) / (2 EI)) = 2 × ({ INCH_POUND($to_end, decimals: 0) } + ({ INCH_POUND($to_middle, decimals: 0) } - { INCH_POUND($to_end, decimals: 0) }) / 2) / { INCH_POUND($ei, millions: "yes") }
    .plain = c w L⁴ / EI = { INCH_POUND($c, figures: 5) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) }⁴ / { INCH_POUND($ei, millions: "yes") }
    .all = Δ = { INCH_POUND($deflection, figures: 4) } in, sumando todo
frames-part_bent = { THING($one) }, en medio: Δ = w c (8 L³ - 4 L c² + c³) / (384 EI) = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × (8 × { INCH_POUND($four) }³ - 4 × { INCH_POUND($four) } × { INCH_POUND($three) }² + { INCH_POUND($three) }³) / (384 × { INCH_POUND($five, millions: "yes") }) = { INCH_POUND($six, figures: 4) } in
frames-part_bent_from = { THING($one) }, w = { INCH_POUND($two, decimals: 4) } lb/in en { INCH_POUND($three) } in desde { INCH_POUND($four) } in: Δ = w (G1 - G2 + G3 - G4) / EI, G = x² (1.5 L² - x²) / 48 de cada apoyo al extremo lejano y cercano de la carga, medio claro a lo más: { INCH_POUND($five, figures: 4) } in

frames-longest_span = Claro más largo para estas viguetas y este acabado
    .named = -
    .formula = el menor de los claros que permiten flexión, cortante y deflexión por carga viva
    .source = como las revisiones de este piso
    .name-span = claro encontrado
    .value-span = { SPACED($span) }
    .name-dead = carga muerta
    .value-dead = { FIGURES($dead, decimals: 1) }
    .name-bending = flexión
    .value-bending = { frames-upto.bending }
    .name-shear = cortante
    .value-shear = { frames-upto.shear }
    .name-live_deflection = deflexión por carga viva
    .value-live_deflection = { frames-upto.live_deflection }
    .result = { FIGURES($result, decimals: 1) }
    .argument-1 = Rige { WORD($governs) }. No entran cargas puntuales ni una gemela parcial; lo que está en partes del piso está donde más pesa.
    .argument-2-with-bending = -
    .argument-2 = No entra la resistencia de viguetas dadas por EI.
frames-upto = hasta
    .bending = hasta { FIGURES($bending, decimals: 1) }
    .shear = hasta { FIGURES($shear, decimals: 1) }
    .live_deflection = hasta { FIGURES($live_deflection, decimals: 1) }

# Cuts in joists.
frames-cut_share = { CAPITAL(WORD($kind)) } { $number }, { frames-cut_what }
    .named = -
    .formula = a lo más { INCH_POUND($share, figures: 4) } { $of ->
        [span] L
       *[depth] d
    }
    .check = { WORD($kind) } { $number }, { frames-cut_what }
    .result = { SPACED($result, $limit) }
    .value-limit = a lo más { FIGURES($limit, decimals: 2) }
    .step-1 = { INCH_POUND($share, figures: 4) } × { INCH_POUND($whole) } in = { INCH_POUND($limit, decimals: 2) } in
frames-cut_as_found = { CAPITAL(WORD($kind)) } { $number }, { frames-cut_what }
    .named = -
    .formula = como se encontró
    .check = { frames-cut_share.check }
    .result = { SPACED($result, $limit) }
    .value-limit = { $what ->
        [hole_edge] al menos { SPACED($limit) }
       *[notch_thick] a lo más { SPACED($limit) }
    }
frames-cut_what = { $what ->
        [hole_share] diámetro
        [hole_edge] distancia a un borde o a otro corte
        [notch_length_share] largo
        [notch_clear_share] alcance desde el apoyo más cercano
        [notch_thick] espesor de la vigueta donde trabaja a tensión
       *[notch_depth_share] hondo
    }

# The panel between joists.
frames-panel_rating = Separación de viguetas contra la clasificación de claro del tablero
    .named = -
    .formula = separación de viguetas ≤ el claro de piso de la clasificación del tablero
    .name-layers = capas
    .value-layers = { frames-panel.layers }
    .name-rating = clasificación
    .value-rating = { $rating }, { $entered ->
        [yes] como se dio
       *[no] la menor que se vende en su espesor; lea el sello y déla
    }
    .result = { SPACED($result, $limit) }
    .value-limit = a lo más { SPACED($limit) }
frames-panel_bending = Flexión del tablero entre viguetas, un pie de ancho
    .named = -
    .formula = M = w s² / 8 ≤ la capacidad a flexión de cada capa, sumadas
    .name-spacing = s
    .value-spacing = { SPACED($spacing) }
    .name-layers = capas
    .value-layers = { frames-panel.layers }
    .step-1 = M = { INCH_POUND($w, decimals: 3) } lb/in × { INCH_POUND($spacing) }² / 8 = { INCH_POUND($result, decimals: 0) } lb·in
    .step-2 = Fb S = { EACH("frames-of_whole", $each, between: " + ") } = { INCH_POUND($limit, decimals: 0) } lb·in
    .result = { FIGURES($result, decimals: 0) }
    .value-limit = a lo más { FIGURES($limit, decimals: 0) }
frames-panel_uniform = Deflexión entre viguetas bajo carga uniforme
    .named = -
    .formula = Δ = c w s⁴ / EI, c = 5/384
    .name-spacing = s
    .value-spacing = { SPACED($spacing) }
    .name-layers = capas
    .value-layers = { frames-panel.layers }
    .name-load = w
    .value-load = { FIGURES($load, decimals: 1) }, viva y muerta
    .step-1-with-glued_share = { frames-panel.glued }
    .step-1-with-not_glued = { frames-panel.loose }
    .step-1 = { frames-panel.single }
    .step-2 = Δ = { INCH_POUND($c, figures: 5) } × { INCH_POUND($w, decimals: 3) } lb/in × { INCH_POUND($spacing) }⁴ / { INCH_POUND($ei, decimals: 0) } = { INCH_POUND($deflection, figures: 4) } in
    .step-3 = s / Δ = { INCH_POUND($spacing) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 0) }
frames-panel_point = Deflexión entre viguetas bajo carga puntual
    .named = -
    .formula = Δ = c P s³ / EI, en dos claros iguales, P en medio de uno, cargada por una franja
    .name-spacing = s
    .value-spacing = { SPACED($spacing) }
    .name-layers = capas
    .value-layers = { frames-panel.layers }
    .name-c = c
    .value-c = { PLAIN($c) }
    .name-load = P
    .value-load = { PLAIN($load) }
    .name-strip = franja
    .value-strip = { SPACED($strip) }
    .step-1-with-glued_share = { frames-panel.glued }
    .step-1-with-not_glued = { frames-panel.loose }
    .step-1 = { frames-panel.single }
    .step-2 = Δ = { INCH_POUND($c) } × { INCH_POUND($load) } × { INCH_POUND($spacing) }³ / { INCH_POUND($wide, decimals: 0) } = { INCH_POUND($deflection, figures: 4) } in
    .step-3 = s / Δ = { INCH_POUND($spacing) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }
    .argument-1 = Panel de respaldo, mortero y azulejo no se cuentan como rigidez.
frames-panel = rigidez de un tablero
    .layers = { EACH("frames-layer", $layers, $ratings, between: " + ") }
    .single = EI = { INCH_POUND($ei, decimals: 0) } lb·in² por un pie
    .loose = EI = { EACH("frames-of_whole", $each, between: " + ") } = { INCH_POUND($ei, decimals: 0) } lb·in² por un pie; sin pegar, así que ninguna capa ayuda a la otra en flexión
    .glued = EI = { EACH("frames-of_whole", $each, between: " + ") } sueltas, más { INCH_POUND($glued_share) } de lo que ganaría un tablero macizo (pegado y atornillado) = { INCH_POUND($ei, decimals: 0) } lb·in² por un pie

# Studs.
frames-stud_stiffness = Deflexión lateral de un montante solo ({ $by })
    .named = -
    .formula = Δ = 5 w H⁴ / (384 EI)
    .name-height = H
    .value-height = { SPACED($height) }
    .name-spacing = separación
    .value-spacing = { SPACED($spacing) }
    .step-1 = w = { INCH_POUND($load) } psf × { INCH_POUND($spacing) } in / 144 = { INCH_POUND($w, decimals: 4) } lb/in
    .step-2-with-e = EI = E b d³ / 12 = { INCH_POUND($e, decimals: 0) } × { INCH_POUND($width) } × { INCH_POUND($depth) }³ / 12 = { INCH_POUND($ei, millions: "yes") } lb·in²
    .step-2-with-web = I = t (d - 2 t)³ / 12 + 2 b t ((d - t) / 2)², d = { INCH_POUND($web) } in, b = { INCH_POUND($flange) } in, t = { INCH_POUND($steel) } in; EI = { INCH_POUND($steel_e, decimals: 0) } psi × { INCH_POUND($inertia, decimals: 4) } in⁴ = { INCH_POUND($ei, millions: "yes") } lb·in²
    .step-2 = EI = { INCH_POUND($steel_e, decimals: 0) } psi × { INCH_POUND($inertia, decimals: 4) } in⁴ = { INCH_POUND($ei, millions: "yes") } lb·in²
    .step-3 = Δ = 5 × { INCH_POUND($w, decimals: 4) } × { INCH_POUND($height) }⁴ / (384 × { INCH_POUND($ei, millions: "yes") }) = { INCH_POUND($deflection, figures: 4) } in
    .step-4 = H / Δ = { INCH_POUND($height) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }
    .argument-1-with-web = Sección bruta del acero, sin labios ni pandeo; rige la tabla del fabricante.

# What would make a frame pass.
frames-remedy = { EACH("sui-measure", $measures, between: "; ") }
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
    .value-failing = { EACH("frames-check", $failing, between: ", ") }
    .result = { $result ->
        [passes] pasa
       *[fails] no pasa
    }
