# How flat, plumb and level a surface is, what flattens it, and what may be used on it.

ground-verdict = { $verdict ->
        [holds] holds
        [holds_for_its_length] holds for its own length
        [cannot_tell] cannot tell
       *[fails] DOES NOT HOLD
    }

ground-held = { $holds ->
        [yes] holds
       *[no] DOES NOT HOLD
    }

ground-spot =
    .string = left { TAPE($one) }
    .out = left { TAPE($one) } out { TAPE($two) }
    .up = left { TAPE($one) } up { TAPE($two) }

ground-place = { $way ->
        [string] left { TAPE($left) }
        [out] left { TAPE($left) } out { TAPE($on) }
       *[up] left { TAPE($left) } up { TAPE($on) }
    }

ground-mark = { $do ->
        [leave] leave
        [fill] fill { TAPE($by) }
        [grind] grind { TAPE($by) }
        [shim] shim { TAPE($by) }
       *[plane_off] plane off { TAPE($by) }
    }

ground-gaps = { PLACE($at) }: gaps under a straightedge
    .formula = each gap against the limit of the straightedge's length
    .columns = place gap reach allowed verdict
    .row-name = { $row }. { $place }
    .row-value = { TAPE($gap) } under { TAPE($reach) }, at most { TAPE($allowed) }: { ground-verdict }
    .result = { TAPE($result) } at most

ground-straightedge = { PLACE($at) }: worst gap under a straightedge of { TAPE($reach) }
    .formula = largest distance of a reading from the chord between two others
    .name-reach = straightedge
    .unsaid-way = -
    .name-left = too far from others for it
    .value-left = { $way ->
        [string] { EACH("ground-spot.string", $left, $on) }
        [out] { EACH("ground-spot.out", $left, $on) }
       *[up] { EACH("ground-spot.up", $left, $on) }
    }
    .unsaid-on = -
    .unsaid-verdict = -
    .name-zone = known
    .value-zone = all readings lie between two parallel planes { FIGURES($zone) } apart
    .value-limit = at most { FINE($limit) }: { ground-verdict }
    .result = { $verdict ->
        [cannot_tell] cannot tell
       *[other] { FIGURES($result) }
    }
    .argument-1 = What lies between the readings is not seen.

ground-map = { PLACE($at) }: highs and lows against the best { $way ->
        [string] line
       *[other] plane
    }
    .formula = height = level + slope along × left + slope across × out, least sum of squares
    .source = least squares; least zone (Chebyshev) by linear programming
    .unsaid-way = -
    .name-slope_along = slope along
    .value-slope_along = { FIGURES($slope_along, decimals: 3) }
    .name-slope_across = slope across
    .value-slope_across = { FIGURES($slope_across, decimals: 3) }
    .columns = left on height off
    .row-name = { $way ->
        [string] along the string
        [out] { TAPE($on) } out
       *[up] { TAPE($on) } up
    }
    .row-value = { TAPE($off, sign: "yes") } at { TAPE($left) }
    .result = { FIGURES($result) } between the closest two parallel planes that hold every reading

ground-patch = { PLACE($at) }: fill every low spot to the plane through the highest ones
    .formula = volume = mean depth × area, by the trapezoidal rule over the readings; bags = volume / yield, rounded up
    .name-mean = mean depth
    .value-mean = { FIGURES($mean) }, { $weights ->
        [grid] by grid: corners a quarter, edges a half of the field about them
       *[triangles] by triangles between the spots
    }
    .unsaid-weights = -
    .value-area = { FIGURES($area) }
    .value-yield = { PLAIN($yield) } a bag
    .unsaid-way = -
    .columns = left on do by
    .row-name = { ground-place }
    .row-value = { $do ->
        [leave] -
        [fill] fill { TAPE($by) }
       *[grind] grind { TAPE($by) }
    }
    .result = { FIGURES($result, decimals: 1) }
    .argument-1 = Beyond the outermost readings the mean depth is taken.

ground-level_out = { PLACE($at) }: pour self-levelling compound over the whole floor, level
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

ground-grind = { PLACE($at) }: grind the high spots and fill the low ones to one plane
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

ground-shim = { PLACE($at) }: shim the studs out to the proudest
    .formula = plane of the least zone, moved to the proudest (or deepest) stud, less each reading
    .source = least zone (Chebyshev) by linear programming; whole graduations of the tape
    .unsaid-way = -
    .columns = left on do by
    .row-name = stud at { TAPE($left) }
    .row-value = { ground-mark }{ $way ->
        [string] {""}
       *[other] {" "}at { TAPE($on) } up
    }
    .unsaid-failing = -
    .unsaid-passes = -
    .result = { TAPE($result) } at most
    .argument-1 = { $passes ->
        [yes] -
       *[no] Does not pass: { $failing }.
    }

ground-plane_down = { PLACE($at) }: plane the proud studs down to the deepest
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

ground-packing = { PLACE($at) }: what each stud gets so that the wall is plumb and straight
    .formula = furring at that height + shim of that stud, less the least of all
    .source = lean and readings as entered; whole graduations of the tape
    .columns = left foot top
    .row-name = stud at { TAPE($left) }
    .row-value = foot { TAPE($foot) }, top { TAPE($top) }
    .result = { TAPE($result) } at most

ground-plumb = { PLACE($at) }: lean over its height
    .formula = lean ≤ limit × height / reach; furring at a height = lean less what the wall leans there
    .value-lean = { FIGURES($lean, sign: "yes") } over { TAPE($height) }
    .unsaid-height = -
    .name-foot = furring at the lowest board edge
    .value-foot = { FIGURES($foot) }
    .name-top = furring at the highest board edge
    .value-top = { FIGURES($top) }
    .unsaid-holds = -
    .value-limit = { FIGURES($limit, decimals: 3) }: { ground-held }
    .result = { FIGURES($result) }

ground-taper = { PLACE($at) }: taper of the last cut in { THING($also) }
    .formula = lean of the other wall × tiled height / its height / sin(corner angle)
    .unsaid-wall = -
    .name-lean = lean of { THING($wall) }
    .value-lean = { FIGURES($lean, sign: "yes") }
    .name-height = its height
    .name-tiled = tiled height
    .name-angle = corner angle
    .value-angle = { FIGURES($angle) }
    .unsaid-wider = -
    .value-limit = { FIGURES($limit, decimals: 3) }
    .result = { FIGURES($result) } { $wider ->
        [yes] wider
       *[no] narrower
    } at the top

ground-materials = { PLACE($at) }: what may be used in a { WORD($result) } zone
    .formula = every material of the rule book whose zones name this one
    .source = rules exposure.*, each with its source; `firstcourse rules` lists them
    .value-boards = { EACH("ground-board", $boards, $standards, $known) }
    .unsaid-standards = -
    .unsaid-known = -
    .name-barrier = vapour barrier
    .value-barrier = { $barrier ->
        [at_most_one] at most one; no membrane needed
        [on_face] exactly one, on the face
       *[either_side] exactly one: on the face, or behind the boards
    }
    .name-tiles = tile classes
    .result = { WORD($result) } zone

ground-board = { WORD($one) }{ $three ->
        [yes] {" "}({ $two })
       *[no] {""}
    }

ground-remedy = { EACH("sui-fill", $measures) }
    .title-with-caution = { EACH("sui-fill", $measures, $litres, $bags, $deep, $off) }. { $caution }
    .title-with-litres = { EACH("sui-fill", $measures, $litres, $bags, $deep, $off) }
    .title-with-studs = { EACH("sui-straighten", $measures, $studs, $deep) }
    .named = -
    .formula = ranked by height, then material, then labour, in relative figures
    .source = house assumption (rules remedy.*); a help to choose, not a price
    .name-height = height
    .value-height = { SPACED($height) }
    .name-material = material
    .value-material = { PLAIN($material) }
    .name-labour = labour
    .value-labour = { PLAIN($labour) }
    .name-failing = still failing
    .result = { $result ->
        [passes] passes
       *[fails] fails
    }
