# Shower floors: how they fall, what holds their water, and how large they are.

FAL-101 = Part of the shower floor lies round a corner from its drain, and water would stand there.
    .move_drain = Move the drain to { $along } along and { $out } out: from there every side is seen.
    .part = No single drain sees the whole floor: part it by a ridge and give each part a drain of its own.

FAL-102 = Water stands at { EACH("fal-spot", $along, $out, last: "and") }, where the planes lead it.
    .longer_or_level = Take a drain as long as the floor is wide, or falls: level, whose planes reach every side.

fal-spot = { $one } along and { $two } out

FAL-103 = No rise does: the longest plane needs { $needed }, and the shortest allows { $allowed }.
    .measured = { FALL($measured) }
    .limit = at most { FALL($limit) }
    .move_drain = Move the drain to { $along } along and { $out } out.
    .square = { $first ->
        [square] With
       *[other] Or: with
    } falls: square the perimeter rises from { $low } to { $high } and the first course is cut to it.
    .linear = { $first ->
        [linear] {""}
       *[other] {"Or: "}
    }{ fal-linear }
    .no_linear = { fal-no_linear }

FAL-104 = The planes keep the least fall; their valleys cannot without too steep a plane.
    .measured = { FALL($measured) }
    .limit = at least { FALL($limit) }
    .nearer = A drain nearer to the middle steepens them.
    .linear = { fal-linear }
    .no_linear = { fal-no_linear }

fal-linear = A linear drain along the whole of { $wall } takes one plane that rises { $rises }.
fal-no_linear = No wall is free for a linear drain that the whole floor falls to in one plane.

FAL-201 = The kerb is too { $low ->
        [yes] low
       *[no] high
    } over the drain.
    .raise = Raise its finished top to { UP($limit) }.
    .lower = Lower its finished top to { DOWN($limit) }.

FAL-202 = The floor rises as high as the kerb, which then holds no water.
    .measured = kerb { $measured }, floor up to { $rise }
    .limit = kerb above the floor
    .raise_or_nearer = Raise the kerb above { UP($above) } over the drain, or bring the drain nearer.

FAL-203 = The recess is too shallow for falls, bed and tile of a shower without a kerb.
    .deepen = Deepen it by { UP($deeper) } where the frame allows, bring the drain nearer to the entry (the rise there is { $rise }), thin the bed, or build a kerb.

FAL-204 = { $doorway ->
        [yes] The shower floor is not level along this doorway, so the step to the floor beyond changes.
       *[no] The open side is not level, so that the room's floor steps down along it.
    }
    .measured = { $low } to { $high } over the { $doorway ->
        [yes] panels
       *[no] drain
    }
    .limit = level
    .turn_or_level = Turn a linear drain parallel to the { $doorway ->
        [yes] doorway
       *[no] open side
    }, or take falls: level.

FAL-205 = The floor beyond this doorway lies lower than the shower floor here, so that water runs out.
    .measured = shower floor up to { $measured } over the panels
    .limit = { $limit }, the floor beyond
    .deeper_or_kerb = Let the bed in { UP($lower) } deeper, thin it, bring the drain nearer to the doorway, or stand a kerb in it and enter that.

FAL-211 = The shower's finished floor is too small.
    .measured = { AREA($measured) }
    .limit = at least { AREA($limit) }
    .move = Move the kerb out or a wall back.

FAL-212 = The shower is too narrow inside its finished walls.
    .move = Move the kerb out or a wall back.
    .move_or_larger = Move the kerb out or a wall back; a larger shower may be narrower one way.

FAL-213 = The opening one walks in by is too narrow.
    .widen = Widen the opening of the screen or wall.

FAL-221 = The { $at } { $steep ->
        [yes] falls too steeply
       *[no] does not shed water
    }.
    .measured = { FALL($measured) }
    .limit = { $steep ->
        [yes] at most
       *[no] at least
    } { FALL($limit) }
    .drop = Let it drop by { EACH("fal-drop", $drops, last: "to") } over { $depth }, towards the drain.

fal-drop = { FINE($one) }

FAL-301 = Tile { $tile } is too large to lie across the folds of the falls.
    .cut_or_choose = Cut it along the valleys, choose a smaller tile, or take a linear drain with one plane.
