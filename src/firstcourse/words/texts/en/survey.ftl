# What readings of a room prove.

survey-area = Floor area of { PLACE($at) }
    .formula = half the sum of u1 × v2 - u2 × v1 along the outline
    .source = coordinate method, any surveying textbook
    .columns = corner u v
    .row-name = { THING($corner) }
    .row-value = { TAPE($u) }, { TAPE($v) }
    .result = { FIGURES($result) }

survey-checks = Readings of { PLACE($at) } beyond those needed
    .formula = readings - (2 × corners - 3)
    .source = weighted least squares; Chandra, Surveying: Problem Solving, chapter 5
    .unsaid-needed = -
    .unsaid-changed = -
    .unsaid-by = -
    .name-taped_to = taped to
    .value-taped_to = { $taped_to ->
        [studs] bare studs, walls that stay to their face
        [finish] the finish that was still on the walls
       *[untold] bare studs, walls that stay to their face (taken so, the job does not say)
    }
    .argument-1 = { $needed } distances fix the shape of { $corners } corners.
    .argument-2 = The adjustment changes { $changed } the most, by { FIGURES($by, decimals: 2) }.
    .result = { $result } { $result ->
        [one] reading
       *[other] readings
    }

survey-square = How far corners of { PLACE($at) } are moved so that its sides are drawn square
    .formula = drawn - adjusted; sides less than a graduation of the tape off square only
    .source = house assumption: no tape shows less than its graduation
    .columns = corner u v moved
    .row-name = { THING($corner) }
    .row-value = { FIGURES($moved, up: "yes") }
    .result = { FIGURES($result, up: "yes") } at most
