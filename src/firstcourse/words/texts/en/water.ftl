# Membranes, laid out flat.

water-face = { PLACE($at) }, membrane laid out flat
    .formula = face + linings of niches and windows, laps on top
    .source = drawings
    .unsaid-kind = -
    .name-bare = face without openings
    .name-niches = niches: backs and returns
    .name-windows = windows: returns to the frame
    .value-strips = { $strips } of { $long }, laps { $lap }
    .unsaid-long = -
    .unsaid-lap = -
    .name-band = sealing band
    .name-inside = inside corners
    .name-outside = outside corners
    .argument-1 = Niches are lined through, so that the membrane has no end but its top.

water-floor = { PLACE($at) }, membrane laid out flat
    .formula = { $kind ->
        [liner] floor along its planes + kerb + upturns, laps on top
       *[other] floor along its planes + kerb, laps on top
    }
    .source = { $kind ->
        [liner] drawings; upturn: { SOURCE($rule) }
       *[other] drawings
    }
    .unsaid-kind = -
    .name-planes = floor along its planes
    .name-kerb_long = over the kerb
    .value-kerb_long = { $kerb_long } x { $kerb_girth }
    .unsaid-kerb_girth = -
    .name-outer = its outer face, over the boards outside
    .name-kerb_corners = round the kerb's corners
    .name-walls_long = up the walls
    .value-walls_long = { EACH("water-upturn", $walls_long, $walls_high, between: " + ") }
    .unsaid-walls_high = -
    .name-over_threshold = ends over the finished threshold
    .value-over_threshold = { FINE($over_threshold) }
    .value-strips = { $strips } of { $long }, laps { $lap }
    .unsaid-long = -
    .unsaid-lap = -
    .name-band = sealing band
    .name-inside = inside corners
    .name-outside = outside corners
    .argument-1 = A kerb is covered down to the floor before it, so that the membrane has no end but its top.

water-upturn = { $one } x { $two }

water-bench = { PLACE($at) }, membrane laid out flat
    .formula = across x high, laps on top
    .source = drawings
    .unsaid-kind = -
    .name-across = face
    .value-across = { $across } x { $high }
    .unsaid-high = -
    .value-strips = { $strips } of { $long }, laps { $lap }
    .unsaid-long = -
    .unsaid-lap = -
    .name-band = sealing band
    .name-inside = inside corners
    .name-outside = outside corners
    .argument-1 = Behind and below it walls and floor keep their own.
