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

# How each number came about. What all lines of the list say alike:

quantities-shared =
    .name-exact = exact need
    .value-exact = { NEED($exact, decimals: 3) }
    .unsaid-share = -
    .value-spare = { PLAIN($share) } = { NEED($spare) }
    .name-spare = allowance
    .value-pack = { PACK($pack, $sold) }
    .unsaid-sold = -
    .name-packs = packs to buy
    .result = { NEED($result) }
    .source = drawings

quantities-sheets = New sheets of { NAME($at) }
    .formula = number of new sheets on the cut tickets
    .name-offcuts = kept offcuts used
    .name-fewest = fewest that any plan needs
    .name-filled = area of pieces over area bought
    .value-filled = { FIGURES($filled) }
    .source = cut tickets
    .argument-1 = No allowance is added: breakage is for the setter to judge.

quantities-fasteners = Fasteners: { $fastener }
    .formula = fasteners of floors + fasteners of walls and ceilings
    .unsaid-fastener = -
    .name-walls = walls and ceilings
    .name-spare = spare for those overdriven or dropped
    .source = { SOURCE($rule) }

quantities-bedding_mortar = Dry mortar under floor boards and in seams
    .formula = (area x w x d x sin(angle) / (w + land) + seam volume + strips filled) x density x (1 - water share)
    .value-area = { FIGURES($area, decimals: 2) }
    .value-w = { FINE($w) }
    .value-d = { FINE($d) }
    .value-land = { FINE($land) }
    .value-angle = { PLAIN($angle) }
    .name-mean = mean thickness
    .value-mean = { FINE($mean) }
    .name-under = volume under boards
    .name-seams = seam volume
    .value-seams = { FIGURES($seams, decimals: 3) }
    .name-strips = strips filled
    .value-strips = { FIGURES($strips, decimals: 3) }
    .name-water = water share
    .name-spare = lost in buckets and on tools
    .result = { FIGURES($result, decimals: 1) }
    .source = ridge geometry; density and water share: { SOURCE($rule) }
    .argument-1 = Seam volume is each seam's length x width x the thickness of the boards beside it.

quantities-seam_tape = Tape over seams and inside corners
    .formula = length of seams + length of inside corners + length of edges of windows' returns
    .value-seams = { NEED($seams) }
    .name-corners = inside corners
    .value-corners = { NEED($corners) }
    .name-returns = edges of windows' returns
    .value-returns = { NEED($returns) }
    .name-width = tape width
    .value-width = { FINE($width) }
    .name-spare = lost at ends and laps
    .source = { SOURCE($rule) }
    .argument-1 = Inside corners: wall to wall over the height that both are boarded, wall to ceiling along the top.

quantities-sealant = Sealant in the gaps at the foot
    .formula = length x width x depth
    .value-length = { NEED($length) }
    .value-width = { FINE($width) }
    .value-depth = { FINE($depth) }
    .name-spare = lost in nozzle and tooling
    .source = { SOURCE($rule) }

quantities-added = Members to add: { WORD($kind) }
    .formula = sum of the lengths of the members marked as added
    .unsaid-kind = -
    .name-number = members
    .argument-1 = Cut from the lengths at hand; no length of stock is assumed.

quantities-board_strips = Strips of board to rip
    .formula = sum of the lengths of the strips that are filled with board
    .name-number = strips
    .argument-1 = Ripped from what is left of the sheets; none is bought for them.

quantities-sheet_mass = Mass of one sheet of { NAME($at) }
    .formula = width x height x thickness x density
    .value-size = { LIST($size, between: " x ") }
    .value-thickness = { FINE($thickness) }
    .unsaid-entered = -
    .result = { FIGURES($result, decimals: 1) }
    .source = { $entered ->
        [yes] the sheet as given in the job
       *[no] { SOURCE($rule) }
    }

quantities-boards_mass = Mass of all boards to carry and set
    .formula = sum of each board's area over its sheet's area, times the sheet's mass
    .result = { FIGURES($result, decimals: 1) }

quantities-lifting = What one person may lift, held so
    .formula = RWL = LC × HM × VM × DM × AM × FM × CM, the lesser of picking up and setting down
    .value-reach = { TAPE($reach, feet: "no") }
    .name-low = hands low
    .value-low = { TAPE($low, feet: "no") }
    .name-high = hands high
    .value-high = { TAPE($high, feet: "no") }
    .value-turn = { FIGURES($turn, decimals: 0) }
    .name-rate = lifts a minute
    .value-HM = { FIGURES($HM, decimals: 3) }
    .value-VM = { FIGURES($VM, decimals: 3) }
    .value-DM = { FIGURES($DM, decimals: 3) }
    .value-AM = { FIGURES($AM, decimals: 3) }
    .value-FM = { FIGURES($FM, decimals: 3) }
    .value-CM = { FIGURES($CM, decimals: 3) }
    .result = { FIGURES($result, decimals: 1) }
    .source = { SOURCE($rule) }; FM: { SOURCE("safety.lift.frequency.0_2") }; CM: { SOURCE("safety.lift.grip.poor") }; how it is held: as the job says, else assumed
    .argument-1 = The equation is of one person; two who lift together each take half.

quantities-tiles = Tiles of { NAME($at) }
    .formula = tiles set whole + whole tiles that cut ones come from
    .name-whole = set whole
    .name-cut = set cut
    .name-from_whole = whole tiles cut
    .name-on_sheet = pieces on a sheet
    .value-on_sheet = { $on_sheet ->
        [1] -
       *[other] { $on_sheet }
    }
    .unsaid-sheets = -
    .name-spare = breakage in handling and cutting
    .value-pack = { PACK($pack, $sold, $sheets) }
    .unsaid-spares = -
    .name-kept = kept for repairs
    .value-kept = { PLAIN($spares) } = { NEED($kept) }
    .name-left = left over beyond that
    .value-left = { NEED($left) }
    .unsaid-straight_share = -
    .unsaid-by_thumb_straight = -
    .unsaid-diagonal_share = -
    .unsaid-by_thumb_diagonal = -
    .argument-1 = All boxes of one tile come from one lot; write its number down when they arrive.
    .argument-2 = By a rule of thumb on the area it would be { $by_thumb_straight } with { PLAIN($straight_share) } for a straight layout, { $by_thumb_diagonal } with { PLAIN($diagonal_share) } for a diagonal one.

quantities-tile_mortar = { $large ->
        [yes] Dry mortar for large and heavy tile
       *[no] Dry mortar under tile
    }
    .formula = (area x combed + tile faces x back-butter) x density x (1 - water share)
    .unsaid-large = -
    .columns = surface tile area thick backed faces back notch_wide notch_deep notch
    .row-name = { PLACE($surface) }, { NAME($tile) }
    .row-value = { FIGURES($area) } x { FINE($thick) }{ $backed ->
        [yes] {" "}+ { FIGURES($faces) } x { FINE($back) }
       *[no] {""}
    }; { FINE($notch_wide) } x { FINE($notch_deep) } { WORD($notch) } notch
    .name-buttered = back-butter
    .name-water = water share
    .name-spare = lost in buckets and on tools
    .result = { FIGURES($result, decimals: 1) }
    .source = ridge geometry; density and water share: { SOURCE($rule) }
    .argument-1 = The ground's own unevenness is not in it; filling is counted where levels were taken.

quantities-grout = Grout by the joints that are drawn
    .formula = (area - tile faces - soft joints) x tile thickness x density
    .columns = surface tile area faces soft deep
    .row-name = { PLACE($surface) }, { NAME($tile) }
    .row-value = ({ FIGURES($area) } - { FIGURES($faces) } - { FIGURES($soft) }) x { FINE($deep) }
    .value-volume = { FIGURES($volume, decimals: 3) }
    .name-handbook = handbook formula
    .name-spare = lost in buckets and on tools
    .result = { FIGURES($result, decimals: 1) }
    .source = drawings; density: { SOURCE($rule) }
    .argument-1 = The handbook formula is (A + B) / (A x B) x joint x depth x density x area; it counts each crossing of joints twice, so it comes out a little high, most of all for mosaic.

quantities-joint_sealant = Sealant in soft joints
    .formula = sum of length x width x depth
    .columns = wide deep rod on_rod along
    .row-name = { FINE($wide) } wide, { FINE($deep) } deep, { $on_rod ->
        [yes] on rod { FINE($rod) }
       *[no] on tape
    }
    .row-value = { NEED($along) }
    .unsaid-square_to = -
    .name-spare = lost in nozzle and tooling
    .source = { SOURCE($rule) }
    .argument-1 = As deep as wide, above { FINE($square_to) } half as deep; where no rod fits behind it, on tape.

quantities-backer_rod = Backer rod { FINE($rod) }
    .formula = length of soft joints with room for it
    .unsaid-rod = -
    .name-over = diameter over width
    .name-spare = lost at ends
    .source = { SOURCE($rule) }

quantities-bond_breaker = Bond-breaker tape at the bottom of soft joints
    .formula = length of soft joints too shallow for rod
    .name-spare = lost at ends
    .source = { SOURCE($rule) }

quantities-edge_trim = Edge trim where tile stops in the open and round niches and windows
    .formula = sum of edges; cut from stock lengths, longest first, each from the first that has room
    .columns = surface edge
    .row-name = { PLACE($surface) }
    .row-value = { TAPE($edge) }
    .name-stock = stock length
    .argument-1 = Edges longer than a stock length are joined; corners are mitred or take corner pieces.

quantities-spacers = Spacers
    .formula = one at each meeting of joints: one meeting for each tile of a straight layout, two in bond
    .columns = surface crossings
    .row-name = { PLACE($surface) }
    .row-value = { $crossings }
    .name-each = spacers at each
    .source = { SOURCE($rule) }
    .argument-1 = They can be used again once the mortar holds, so half will often do.

quantities-cuts = Cuts in tile { NAME($at) }
    .formula = sum of the sawn edges of every cut tile
    .name-tiles = cut tiles
    .columns = kinds lengths in
    .row-name = { WORD($kinds) }
    .row-value = { NEED($lengths) } in { $in } { $in ->
        [one] tile
       *[other] tiles
    }
    .argument-1 = A cut between two pieces of one tile is counted for both; the true length is a little less.

quantities-sheet_membrane = Sheet membrane with its laps
    .formula = area + laps, surface by surface
    .columns = surface area laps
    .row-name = { PLACE($surface) }
    .row-value = { FIGURES($area) } + { FIGURES($laps) }
    .name-spare = ends and mistakes

quantities-liquid_membrane = Liquid membrane, all coats
    .formula = area x thickness as put on wet
    .columns = surface area
    .row-name = { PLACE($surface) }
    .row-value = { FIGURES($area) }
    .name-wet = thickness wet
    .value-wet = { FINE($wet) }, which is { FIGURES($spread, decimals: 2) }
    .unsaid-spread = -
    .name-spare = left in pails and rollers
    .source = drawings; thickness: the maker's sheet governs

quantities-liner = Liner, cut to length off its roll
    .formula = strips x length, upturns on both sides counted in
    .columns = surface strips long
    .row-name = { PLACE($surface) }
    .row-value = { $strips } x { $long }
    .name-spare = added
    .value-pack = cut off a roll { $wide } wide
    .unsaid-wide = -

quantities-sealing_band = Sealing band at changes of plane
    .formula = perimeter of floors + corners of walls + ends of kerbs + niches, windows and benches
    .columns = surface band
    .row-name = { PLACE($surface) }
    .row-value = { RUN($band) }
    .name-spare = laps and ends

quantities-inside_corners = Waterproofing: inside corners
    .formula = counted surface by surface
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-outside_corners = Waterproofing: outside corners
    .formula = counted surface by surface
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-drain_flanges = Waterproofing: drain flanges
    .formula = counted surface by surface
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-collars = Waterproofing: { NAME($at) } collars
    .formula = counted surface by surface
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-bed_mortar = Mortar of beds and slopes
    .formula = bed + slope under a liner, floor by floor
    .columns = surface bed lined slope
    .row-name = { PLACE($surface) }
    .row-value = { BULK($bed) }{ $lined ->
        [yes] {" "}+ { BULK($slope) } under the liner
       *[no] {""}
    }
    .name-spare = lost in buckets and on tools
    .source = drawings; yield of a bag: { SOURCE($rule) }
