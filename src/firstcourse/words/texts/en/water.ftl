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

# What stands on the page of waterproofing.

water-kind =
    .liquid = liquid membrane on the boards
    .sheet = sheet membrane on the ground of the tile
    .liner = liner under the bed, on its slope

water-row =
    .where = where
    .in_all = in all, laid flat
    .flange = flange at { $name }
    .collar = collar at { $name }
    .no_fastener = no fastener

water-heights = from { $low } to { $high } over the floor
water-zone = from { $low } to { $high }: { $why }
water-centre = centre { $left } from the left, { $up } up the drawing
water-lap = Seams lap { $lap } at least, the upper sheet over the lower.
water-coat = Liquid membrane goes on { $coat } thick while wet, all coats together; measure it with a gauge.
water-order = Corners first, then collars, then faces; sealing band lies in every corner and change of plane.
water-whole = Nothing is driven through the membrane; what was is taken out and patched before tile.
