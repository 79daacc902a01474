# Heights of finished surfaces, and what meets them.

height-doorway_step = { PLACE($at) }: step between the floors
    .formula = sum of the layers - height of the other floor
    .source = layers and heights as entered
    .name-this_floor = this floor
    .value-this_floor = { FIGURES($this_floor) } over the structure
    .name-other_floor = other floor
    .value-other_floor = { FIGURES($other_floor) } over the structure
    .value-profile = { $profile ->
        [bevelled_reducer] bevelled reducer at least { UP($long) } long (1 in { $slope })
        [ramped_threshold] ramped threshold at least { UP($long) } long (1 in { $slope })
       *[straight_edge_trim] none, or a straight edge trim
    }
    .unsaid-long = -
    .unsaid-slope = -
    .name-under_door = gap under the door
    .value-under_door = { FIGURES($under_door) }
    .result = { FIGURES($result, sign: "yes") }

height-layer = { $layer ->
        [board_mortar] mortar under the boards
        [heating] mortar round the heating
        [mortar_bed] mortar bed
        [mortar] mortar under the tile
        [tile] tile
       *[board] board
    }

height-verdict = { $holds ->
        [yes] holds
       *[no] DOES NOT HOLD
    }

height-build_up = { PLACE($at) }: height of the finished surface over its structure
    .formula = sum of the layers, from below
    .source = layers as entered; mortar as combed and beaten in
    .columns = layer thick
    .row-name = { height-layer }
    .row-value = { FIGURES($thick) }
    .result = { FIGURES($result) }, on the tape { TAPE($result) }

height-mass = { PLACE($at) }: mass of the layers
    .formula = sum of thickness × density; times the area for the whole
    .source = densities as entered, or the rule book's (rules mass.*, boards.density, bedding.mortar.density)
    .columns = layer thick density mass
    .row-name = { height-layer }
    .row-value = { FIGURES($thick) } × { FIGURES($density) } = { FIGURES($mass) }
    .value-area = { FIGURES($area) }
    .name-whole = whole surface
    .value-whole = { FIGURES($whole, decimals: 0) }

height-backing = { PLACE($at) }: tiling on { WORD($backing) }
    .formula = tile + mortar + grout
    .unsaid-backing = -
    .unsaid-holds = -
    .name-tiling = tile and mortar
    .value-grout = { PLAIN($grout) }
    .value-limit = at most { PLAIN($limit) }: { height-verdict }
