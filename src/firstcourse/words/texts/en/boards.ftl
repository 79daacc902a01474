# How boards cover a surface, and what holds them.

boards-area = Area of { PLACE($at) } covered with board
    .formula = sum of the boards' areas, holes taken off
    .source = coordinate method
    .result = { FIGURES($result, decimals: 2) }

boards-fasteners = Fasteners of { PLACE($at) }
    .formula = sum of the fasteners of the boards
    .name-edge = from edges
    .name-corner = from corners
    .unsaid-of = -
    .name-each = each board
    .value-each = { EACH("boards-fastened", $of, $each) }
    .result = { $result } { $result ->
        [one] fastener
       *[other] fasteners
    }

boards-fastened = { $one } { $two }
