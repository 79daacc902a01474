# What is to be bought: things, the units they are counted in, and how they are sold.

quantities-item-stock = sheets { $name }
quantities-item-tile_stock = tiles { $name }
quantities-item-added = added { $name }
quantities-item-backer_rod = backer rod { $rod }
quantities-item-collars = { $name } collars
quantities-item-fasteners = fasteners
quantities-item-bedding_mortar = bedding mortar
quantities-item-seam_tape = seam tape
quantities-item-sealant = sealant
quantities-item-board_strips = board strips
quantities-item-tile_mortar = tile mortar
quantities-item-large_tile_mortar = large-tile mortar
quantities-item-grout = grout
quantities-item-joint_sealant = joint sealant
quantities-item-bond_breaker = bond-breaker tape
quantities-item-edge_trim = edge trim
quantities-item-spacers = spacers
quantities-item-sheet_membrane = sheet membrane
quantities-item-liquid_membrane = liquid membrane
quantities-item-liner = shower liner
quantities-item-sealing_band = sealing band
quantities-item-inside_corners = inside corners
quantities-item-outside_corners = outside corners
quantities-item-drain_flanges = drain flanges
quantities-item-bed_mortar = bed mortar

quantities-unit-sheet = { $number ->
    [one] sheet
   *[other] sheets
}
quantities-unit-fastener = { $number ->
    [one] fastener
   *[other] fasteners
}
quantities-unit-tile = { $number ->
    [one] tile
   *[other] tiles
}
quantities-unit-chip = { $number ->
    [one] chip
   *[other] chips
}
quantities-unit-spacer = { $number ->
    [one] spacer
   *[other] spacers
}
quantities-unit-piece = { $number ->
    [one] piece
   *[other] pieces
}

quantities-pack-sheet = { $of ->
    [chip] sheet of { $size } chips
   *[other] sheet
}
quantities-pack-box = { $of ->
    [chip] box of { $sheets } { $sheets ->
        [one] sheet
       *[other] sheets
    } of { $each } chips
   *[other] box of { $size } { $size ->
        [1] piece
       *[other] pieces
    }
}
quantities-pack-piece = piece
quantities-pack-pack = pack of { $size }
quantities-pack-bag = { $of ->
    [m3] bag that makes { $size }
   *[other] bag of { $size }
}
quantities-pack-roll = roll of { $size }
quantities-pack-coil = coil of { $size }
quantities-pack-length = length of { $size }
quantities-pack-cartridge = cartridge of { $size }
quantities-pack-pail = pail of { $size }
quantities-pack-running = running { $unit }
quantities-pack-off_roll = { $unit } off a roll { $wide } wide
