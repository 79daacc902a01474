# Shower floors: how their rise, bed and levels came about, and what is set, tested and written down on site.

showers-rise = { PLACE($at) }, rise from the drain to the highest point
    .formula = fall x run, least over the longest way and greatest over the shortest
    .source = { SOURCE($rules) }
    .name-least = least fall
    .value-least = { FALL($least) }
    .name-rise_planes = rise that keeps it on the planes
    .value-rise_planes = { FINE($rise_planes) }
    .name-rise_valleys = rise that keeps it in the valleys too
    .value-rise_valleys = { $rise_valleys ->
        [no_limit] no rise does
       *[other] { FINE($rise_valleys) }
    }
    .name-least_plane = least fall of a plane
    .value-least_plane = { FALL($least_plane) }
    .name-least_flow = least fall on the way of the water
    .value-least_flow = { FALL($least_flow) }
    .name-steepest = greatest fall
    .value-steepest = { FALL($steepest) }
    .name-greatest = greatest fall allowed
    .value-greatest = { FALL($greatest) }
    .name-rise_allowed = rise that it allows
    .value-rise_allowed = { FINE($rise_allowed) }
    .unsaid-rules = -
    .result = { FINE($result) }
    .argument-1 = The highest point is raised to the tape's next mark where the limits leave room.

showers-bed = { PLACE($at) }, bed
    .formula = { $membrane ->
        [liner] bed = area x thickness; slope = area x its thickness + volume of the falls
       *[other] area x least thickness + volume of the falls
    }
    .source = exact volume of flat planes: area of each x height at its centre of area
    .unsaid-membrane = -
    .name-falls = volume between the drain's level and the planes
    .value-falls = { BULK($falls) }
    .name-bed = bed, least thickness
    .name-slope = slope under the liner, least thickness
    .name-slope_volume = slope under the liner
    .value-slope_volume = { BULK($slope_volume) }
    .result = { BULK($result) }
    .argument-1 = The drain's body is not taken off.

showers-largest_tile = { PLACE($at) }, largest tile that follows the falls uncut
    .formula = { $by_rule ->
        [yes] 4 x step / turn of slope, and not more than the rule allows
       *[no] 4 x step / turn of slope
    }
    .name-step = step allowed
    .value-step = { FINE($step) }
    .name-turn = sharpest turn of slope at a fold
    .value-turn = { FIGURES($turn, decimals: 4) }
    .unsaid-by_rule = -
    .argument-1 = A flat tile of side s across a fold of turn t leaves the planes by s t / 4: its sagitta.

showers-drain_on_bed = { PLACE($at) }, height of the drain's top over the panels
    .formula = bed and slope at the drain + mortar + tile
    .source = heights of this plan; mortar as combed
    .name-room_floor = room's finished floor over the panels
    .value-room_floor = { FINE($room_floor) }
    .name-under = bed and slope at the drain
    .name-mortar = mortar under the tile
    .value-mortar = { FINE($mortar) }
    .value-tile = { FINE($tile) }
    .result = { FINE($result) }
    .argument-1 = Heights on walls and benches are over the same panels, or slab.

showers-drain_by_entry = { PLACE($at) }, height of the drain's top over the panels
    .formula = room's finished floor - rise at the entry, which lies level with it
    .source = heights of this plan; mortar as combed
    .name-room_floor = room's finished floor over the panels
    .value-room_floor = { FINE($room_floor) }
    .name-entry = rise at the entry
    .value-entry = { FINE($entry) }
    .result = { FINE($result) }
    .argument-1 = Heights on walls and benches are over the same panels, or slab.

showers-recess = { PLACE($at) }, recess that a shower without a kerb needs
    .formula = rise at the entry + bed and slope at the drain + mortar + tile
    .source = heights of this plan; mortar as combed
    .name-entry = rise at the entry
    .value-entry = { FINE($entry) }
    .name-under = bed and slope at the drain
    .name-mortar = mortar under the tile
    .value-mortar = { FINE($mortar) }
    .value-tile = { FINE($tile) }
    .argument-1 = Measured from the room's finished floor down to what the bed stands on.

showers-drop = { PLACE($at) }: least drop of its top
    .formula = depth x least fall
    .name-least = least fall
    .value-least = { FALL($least) }
    .name-greatest = greatest fall
    .value-greatest = { FALL($greatest) }
    .name-most = greatest drop
    .value-most = { FINE($most) }
    .result = { FINE($result) }

showers-level_corner = { $before ->
    [same] corner of the { $after }
   *[other] corner of { $before } and { $after }
}
showers-level_side = at { $side }
showers-level_drain = top of the drain
showers-level_valley_end = end of a valley
showers-level_valley = valley, { $along } from point { $low } towards { $high }

showers-flood_record = What is written down of the flood test
    .plug = Plug or test ball set in the drain below the weep holes
    .mark = Water mark on { $dam ->
        [yes] the dam
       *[no] the kerb
    }, { $depth } over the membrane where it is highest along the threshold and the walls
    .deep = It stands { $at_drain } deep over the membrane at the drain
    .filled = Date and time of filling, level at the mark
    .room = Temperature of the room, sunlight or draught on the water
    .level = Level after { PLAIN($hours) }, and the loss
    .beside = Ceiling below and outer face of the walls: dry, damp or wet
    .drained = Plug taken out, floor drained without puddles
    .signed = Tested by, seen by
