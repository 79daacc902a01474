# How few sheets are possible, and how little they can cost.

bounds-sheets = Fewest sheets of { THING($at) } for these pieces
    .formula = no cutting of these pieces needs fewer sheets
    .source = { bounds-proofs }
    .name-proof = argument
    .value-proof = { WORD($proof) }
    .result = { bounds-fewest }
    .argument-1 = The bound holds for the pieces of this layout; other seams could need fewer.

bounds-proofs = area, dual feasible functions, prices of patterns; all from memory
bounds-fewest = { $result } { $result ->
        [one] sheet
       *[other] sheets
    }

bounds-cost = Least cost of all sheets for these pieces
    .formula = no cutting of these pieces costs less
    .source = { bounds-proofs }
    .value-cost = { NUMBER_OF($cost, decimals: 2) } { WORD($currency) }
    .name-proof = argument
    .value-proof = { WORD($proof) }
    .unsaid-currency = -
    .result = { NUMBER_OF($result, decimals: 2) } { WORD($currency) }

bounds-every_layout = Fewest sheets of { THING($at) }{ EACH("bounds-and", $also, between: "") } over every layout the rules allow
    .formula = (ground to cover − the most that gaps can take − kept offcuts) / area of a sheet, rounded up
    .source = area of ground and gaps; derived from the rules of the rule book
    .unsaid-surfaces = -
    .name-board = board at least
    .name-narrowest = narrowest board
    .unsaid-most_on = -
    .unsaid-courses = -
    .unsaid-alone = -
    .unsaid-pair = -
    .unsaid-staggered = -
    .unsaid-offcuts = -
    .name-kept = kept offcuts
    .name-new = from new sheets
    .unsaid-kinds = -
    .unsaid-largest = -
    .value-sheets = { FIGURES($sheets, decimals: 2) }
    .unsaid-open = -
    .unsaid-one_fewer = -
    .result = { bounds-fewest }
    .argument-1 = Whatever the layout, boards and the seams between them have to cover { FIGURES($ground) } of { SURFACES($surfaces) }; what stays open and the gaps along the edges are not in that.
    .argument-2 = A seam is a gap of { TAPE($seam, feet: "no") } and takes no board. But no board is narrower than { TAPE($narrowest, feet: "no") }, so there is room for only so many seams. With those between courses they cover { LESS($ground, $board) } at most; { PLACE($most_on) } has room for the most: { $courses ->
            [one] { $courses } course
           *[other] { $courses } courses
        } of up to { $alone ->
            [one] { $alone } seam
           *[other] { $alone } seams
        } each{ $staggered ->
            [yes] , { $pair } in two neighbouring ones as seams are staggered
           *[no] {""}
        }.
    .argument-3 = So every layout takes { FIGURES($ground) } − { LESS($ground, $board) } = { FIGURES($board) } of board or more.{ $offcuts ->
            [yes] {" "}Kept offcuts hold { FIGURES($kept) }, so new sheets have to give { LESS($board, $kept) }.
           *[no] {""}
        }
    .argument-4 = { $kinds ->
            [one] A sheet has
           *[other] Of { THING($largest) }, the largest sheet that may be used here, one has
        } { FIGURES($sheet) }: that is { FIGURES($sheets, decimals: 2) } sheets, and so { bounds-fewest } at least.
    .argument-5 = This plan buys { $used }{ $open ->
            [0] : no layout that keeps the rules can do with fewer.
           *[other] . Whether some other layout can do with { bounds-fewer } is not known: the search found none, and nothing said here rules it out.
        }

bounds-and = {" "}and { THING($one) }
bounds-fewer = { $open ->
        [1] { $result }
       *[other] { $result } to { $one_fewer }
    }

bounds-every_layout_by_cost = { bounds-every_layout }
    .formula = { bounds-every_layout.formula }
    .source = { bounds-every_layout.source }
    .unsaid-surfaces = -
    .name-board = { bounds-every_layout.name-board }
    .name-narrowest = { bounds-every_layout.name-narrowest }
    .unsaid-most_on = -
    .unsaid-courses = -
    .unsaid-alone = -
    .unsaid-pair = -
    .unsaid-staggered = -
    .unsaid-offcuts = -
    .name-kept = { bounds-every_layout.name-kept }
    .name-new = { bounds-every_layout.name-new }
    .unsaid-price = -
    .unsaid-named = -
    .unsaid-best = -
    .unsaid-best_numbers = -
    .value-cost = { NUMBER_OF($cost, decimals: 2) } { WORD($currency) }
    .name-least_cost = least cost
    .value-least_cost = { NUMBER_OF($least_cost, decimals: 2) } { WORD($currency) }
    .unsaid-over = -
    .unsaid-cheapest = -
    .unsaid-currency = -
    .result = { bounds-fewest }
    .argument-1 = { bounds-every_layout.argument-1 }
    .argument-2 = { bounds-every_layout.argument-2 }
    .argument-3 = { bounds-every_layout.argument-3 }
    .argument-4 = That may come from { EACH("bounds-offer", $offered, $sheet, $price, last: "and") }. The cheapest sheets with so much in them { $named ->
            [yes] are { EACH("bounds-mix", $best_numbers, $best, last: "and") }, for
           *[no] cost at least
        } { NUMBER_OF($least_cost, decimals: 2) } { WORD($currency) }.
    .argument-5 = The sheets of this plan cost { NUMBER_OF($cost, decimals: 2) }{ $cheapest ->
            [yes] : no layout that keeps the rules costs less.
           *[no] , which is { NUMBER_OF($over, decimals: 2) } more. Whether some other layout costs less is not known: the search found none, and nothing said here rules it out.
        }

bounds-offer = { THING($one) } ({ FIGURES($two) }, { NUMBER_OF($three, decimals: 2) })
bounds-mix = { $one } × { THING($two) }
