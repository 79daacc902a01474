# Not reviewed by a native setter yet.
# Heights of finished surfaces, and what meets them.

height-doorway_step = { PLACE($at) }: escalón entre los pisos
    .formula = suma de las capas - altura del otro piso
    .source = capas y alturas como se dieron
    .name-this_floor = este piso
    .value-this_floor = { FIGURES($this_floor) } sobre la estructura
    .name-other_floor = el otro piso
    .value-other_floor = { FIGURES($other_floor) } sobre la estructura
    .value-profile = { $profile ->
        [bevelled_reducer] reductor biselado de al menos { UP($long) } de largo (1 en { $slope })
        [ramped_threshold] umbral en rampa de al menos { UP($long) } de largo (1 en { $slope })
       *[straight_edge_trim] ninguno, o un perfil de canto recto
    }
    .unsaid-long = -
    .unsaid-slope = -
    .name-under_door = holgura bajo la puerta
    .value-under_door = { FIGURES($under_door) }
    .result = { FIGURES($result, sign: "yes") }

height-layer = { $layer ->
        [board_mortar] mortero bajo los paneles
        [heating] mortero alrededor de la calefacción
        [mortar_bed] cama de mortero
        [mortar] mortero bajo el azulejo
        [tile] azulejo
       *[board] panel
    }

height-verdict = { $holds ->
        [yes] cumple
       *[no] NO CUMPLE
    }

height-build_up = { PLACE($at) }: altura de la superficie terminada sobre su estructura
    .formula = suma de las capas, desde abajo
    .source = capas como se dieron; mortero peinado y asentado
    .columns = layer thick
    .row-name = { height-layer }
    .row-value = { FIGURES($thick) }
    .result = { FIGURES($result) }, en la cinta { TAPE($result) }

height-mass = { PLACE($at) }: masa de las capas
    .formula = suma de espesor × densidad; por el área para el total
    .source = densidades como se dieron, o las del libro de reglas (reglas mass.*, boards.density, bedding.mortar.density)
    .columns = layer thick density mass
    .row-name = { height-layer }
    .row-value = { FIGURES($thick) } × { FIGURES($density) } = { FIGURES($mass) }
    .value-area = { FIGURES($area) }
    .name-whole = toda la superficie
    .value-whole = { FIGURES($whole, decimals: 0) }

height-backing = { PLACE($at) }: azulejado sobre { WORD($backing) }
    .formula = azulejo + mortero + boquilla
    .unsaid-backing = -
    .unsaid-holds = -
    .name-tiling = azulejo y mortero
    .value-grout = { PLAIN($grout) }
    .value-limit = a lo más { PLAIN($limit) }: { height-verdict }
