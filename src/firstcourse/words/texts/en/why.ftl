# Why so many sheets and not fewer, and what would come of other sheets, framing or more search.

why-sheets = { $used ->
        [one] { $used } sheet
       *[other] { $used } sheets
    }
why-at_least = { $least ->
        [one] { $least } sheet
       *[other] { $least } sheets
    }
why-open = { $open ->
        [1] { $least }
       *[other] { $least } to { $one_fewer }
    }

why-nothing_bought = Kept offcuts give every piece of it: nothing is bought.
why-no_layout_fewer = { why-sheets }: no layout that keeps the rules takes fewer. This is proven.
why-these_boards = { why-sheets }. Where the seams lie now, fewer cannot give these boards: that is proven.
why-other_seams = With other seams fewer than { $least } are impossible; whether { why-open } can do is not known.
why-several_serve = { why-sheets }. Other sheets of the job serve the same boards, so there is no fewest number of this one alone.
why-fewer_not_known = { why-sheets }. Fewer than { $least } are impossible. Whether { why-open } can do is not known: the search found no way, and no argument rules it out.
why-no_layout_cheaper = No other layout, whatever its seams and sheets, costs less.
why-cheaper_not_known = With other seams or sheets no layout costs less than { NUMBER_OF($least, decimals: 2) }; these sheets cost { NUMBER_OF($cost, decimals: 2) }, and whether anything between does is not known.

why-boards = This plan has { $boards ->
        [one] { $boards } board
       *[other] { $boards } boards
    } of it. They take { FIGURES($area) } of sheet, what tapers, notches and holes then take out of them included.
why-offcuts_give = Kept offcuts give { FIGURES($given) } of that, and { FIGURES($left) } is left.
why-area = One sheet has { FIGURES($sheet) }. If nothing were wasted these boards would take { FIGURES($sheets, decimals: 2) } sheets, and no part of a sheet can be bought: { why-at_least } at least.
why-apart = No two of { $others ->
        [0] { LIST($boards) }
        [one] { LIST($boards, between: ", ") } and { $others } other
       *[other] { LIST($boards, between: ", ") } and { $others } others
    } come out of one sheet, whichever way they are turned{ $enough ->
        [yes] : { $number ->
            [one] { $number } sheet
           *[other] { $number } sheets
        } at least.
       *[no] , so each of these { $number } needs its own.
    }
why-weighed = { $proof ->
        [dual_functions] Weighing each piece by what it spoils beside it (wider than half a sheet counts as the whole width) asks for { why-at_least }.
        [pattern_prices] Put a price on every board such that no sheet, however it is cut, yields more than one sheet's worth: the boards are then worth { why-at_least } at least.
       *[other] Area is not all that counts: { why-at_least } are needed at least.
    }

why-practice = { why-plain_practice } buys { $bought }: { $more ->
        [0] { $fewer ->
            [0] as many as
           *[other] { $fewer } fewer than
        }
       *[other] { $more } more than
    } this plan.
why-plain_practice = Plain practice (full sheets from a corner, the rest from what is left)
why-beside_practice = { $named ->
        [yes] { why-plain_practice }
       *[no] Plain practice
    } buys { $practice_kinds ->
        [0] none
       *[other] { EACH("why-some", $practice_numbers, $practice_sheets, last: "and") }
    } for the same surfaces{ $practice_priced ->
        [yes] {" "}({ NUMBER_OF($practice_cost, decimals: 2) } { WORD($currency) })
       *[no] {""}
    }; this plan buys { $plan_kinds ->
        [0] none
       *[other] { EACH("why-some", $plan_numbers, $plan_sheets, last: "and") }
    }{ $plan_priced ->
        [yes] {" "}({ NUMBER_OF($plan_cost, decimals: 2) } { WORD($currency) })
       *[no] {""}
    }.
why-some = { $one } × { THING($two) }
why-least_cost = All sheets of the job cost { NUMBER_OF($cost, decimals: 2) } { WORD($currency) } together{ $proven ->
        [yes] , and no cutting of these pieces costs less: this is proven.
       *[no] ; no cutting of these pieces costs less than { NUMBER_OF($least, decimals: 2) }.
    }

why-waste = Of all that is cut up, { $boards }% becomes boards and { $waste }% is waste.
why-waste_and_kept = Of all that is cut up, { $boards }% becomes boards, { $keep }% is kept and { $waste }% is waste. To keep: { EACH("why-part", $kept, $wide, $high) }.
why-part = { $one } ({ TAPE($two, feet: "no") } × { TAPE($three, feet: "no") })

why-as_it_is = the plan as it is
why-one_stock = only { THING($only) }, without { LIST($without) }
why-other_size = { THING($stock) } in sheets of { TAPE($wide, feet: "no") } × { TAPE($long, feet: "no") }
why-row_of_blocking = one more row of blocking, { TAPE($above, feet: "no") } above the foot of the boards
why-one_more_joist = one more ceiling joist, { TAPE($off, feet: "no") } from the edge of the boards
why-studs_moved = first stud half a spacing on in { $number ->
        [one] { PLACE($walls) }
       *[other] all regularly framed walls
    }
why-joists_moved = first ceiling joist half a spacing on
why-longer = search longer (effort { $effort })

# The page that shows it.
why-title = Why { $count } { $count ->
    [one] sheet
   *[other] sheets
}{ $reused ->
    [0] {""}
    [one] {" "}and { $reused } kept offcut used up
   *[other] {" "}and { $reused } kept offcuts used up
}
why-count =
    .practice = plain practice buys
    .used = this plan buys
    .least = these boards need at least
    .every_layout = any other layout needs at least
why-better =
    .cost = the sheets to buy cost less
    .boards = there are fewer boards
    .seam = there is less seam to tape
    .thin = fewer cuts take off less than can be snapped
    .cuts = there are fewer cuts
    .offcut = more is kept for the next job
    .narrow = the narrowest board is wider
    .heavy = the heaviest board is lighter
why-how =
    .cost = without prices: they have less area
    .boards = each is cut, carried, set and fastened
    .thin = each takes rasp or saw
    .cuts = edge to edge, over all sheets
    .offcut = only what is { $least } or more both ways, counted in steps of { $step } of a sheet
    .step = differences under { $step } do not count
    .any = any difference counts
    .alone = one person works alone
    .two = does not count: two people work
why-share = { $kept ->
    [yes] keep { $part } { $percent }%
   *[no] { $part } { $percent }%
}
why-wasted = waste { $percent }%
why-from_offcut = kept offcut { $source }
