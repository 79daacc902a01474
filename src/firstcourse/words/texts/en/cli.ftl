# What the terminal says.

cli-stop = STOPS THE WORK
cli-fix = TO FIX ON THE WAY
cli-note = TO KNOW

# A line under a finding.
cli-finding =
    .measured = measured: { $text }
    .limit = limit: { $text }
    .rule = rule: { $text }
    .source = source: { $text }
    .do = do: { $text }

# A rule that the job sets, its value and why.
cli-changed = changed for this job: { $change }

# Before boards and tile are laid out: about how much that is.
cli-ahead = to lay out: { $surfaces } { $surfaces ->
    [one] surface
   *[other] surfaces
}, about { $boards } { $boards ->
    [one] board
   *[other] boards
} and { $tiles } { $tiles ->
    [one] tile
   *[other] tiles
}

cli-stopped = the work is stopped: { $what }
cli-same_way = recomputed the same way as planned: { $what ->
    [judgement] findings of the judgement, taken from the rule book
    [corners] what is moved to stand at a wall
   *[play] how far cuts may shrink where the room differs from its survey
}
cli-priced = { $file }: checked too, against the price book in it
cli-verified = { $file }: consistent, verified
cli-objections = { $file }: { $count } { $count ->
    [one] objection
   *[other] objections
}

# The summary of a plan in ten lines.
cli-plan = { $job }: { $boards } { $boards ->
    [one] board
   *[other] boards
} from { $sheets } { $sheets ->
    [one] sheet
   *[other] sheets
}, { $cuts } { $cuts ->
    [one] cut
   *[other] cuts
}, { $fasteners } { $fasteners ->
    [one] fastener
   *[other] fasteners
}
cli-sheets = Sheets: { $sheets }
cli-proof = { $known ->
    [fewest] no layout that keeps the rules takes fewer
    [proven] these boards take no fewer; with other seams fewer may do
   *[least] at least { $least }
}
cli-practice = plain practice { $count }
cli-tile = Tile: { $whole } whole, { $cut } cut.
cli-to_buy = To buy beside the sheets: { $things }{ $more ->
    [0] {""}
   *[other] {" "}and { $more } more
}
cli-changes = Changed for this job: { $change }{ $others ->
    [0] {""}
    [one] ; and { $others } more rule
   *[other] ; and { $others } more rules
}
cli-urgent = { $severity ->
    [stop] STOPS THE WORK
   *[fix] To fix
} { $code }  { $where }: { $message }
cli-urgent_do = Do: { $remedy }
cli-more = { $count } more to fix{ $stops ->
    [0] {""}
   *[other] , { $stops } of them stop the work
}
cli-nothing = Nothing stops the work.
cli-notes = To know: { $count } { $count ->
    [one] note
   *[other] notes
} in the site pack.
cli-look = Look at { $letter } first (or { $a4 }): { $rooms ->
    [yes] what all rooms share; each room has its packs in { $folder }.
   *[no] all drawings, lists and findings.
}
cli-why = Why, workings and sources: { $office }; lists: { $lists }; `{ $verify }` proves again that the plan is consistent.

# Why so many sheets, and what if.
cli-explain = { $job }: why { $count } { $count ->
    [one] sheet
   *[other] sheets
}?
cli-share = { $part } { $percent }%{ $kept ->
    [yes] {" "}kept
   *[no] {""}
}
cli-offcut = { $sheet } (kept offcut { $source })
cli-bars = # becomes boards, o is kept, . is waste
cli-what_if = WHAT IF? Each is planned and verified in full; ranked by sheets, cost, cuts, mass
cli-column =
    .sheets = sheets
    .cost = cost
    .cuts = cuts
    .mass = mass
    .heaviest = heaviest
    .members = to add
cli-not_planned = cannot be planned
cli-no_difference = { $what } (no difference)
cli-stops = { $what } ({ $count } { $count ->
    [one] finding stops
   *[other] findings stop
} the work)
cli-cost = cost: { $currency } for the sheets alone; ~ taken by area where the job gives no price.
cli-mass = mass: all sheets to buy; heaviest: the heaviest piece; to add: framing members the plan asks for.
cli-money = money

# What is judged before anything is bought.
cli-judged = { $job }: judged { $what ->
    [0] nothing
   *[other] { $what }
}
cli-remedies = REMEDIES FOR { $where }: each computed through every check; ranked by height, material, labour{ $engineer ->
    [yes] ; an engineer first
   *[no] {""}
}
cli-caution = CAUTION: { $text }
cli-written = written: { $file }

# What was written into a job.
cli-done = { $file }: { $count } { $count ->
        [one] board is
       *[other] boards are
    } up, { $offcuts } { $offcuts ->
        [one] offcut is
       *[other] offcuts are
    } at hand. Enter what was found, then plan again.

# What the readings of a room prove: its line, two tables and what stands between them.
cli-survey =
    .room = { $room }: { $corners } corners, { $readings } readings, { $more } more than needed; floor { $floor }
    .corner = corner
    .right = to the right
    .up = up (floor plan, lower left is 0)
    .within = sure within (95 %)
    .held = held
    .taped_to = taped to: { $taped_to ->
        [studs] bare studs, walls that stay to their face
        [finish] the finish that was still on the walls
       *[untold] bare studs, walls that stay to their face (taken so, the job does not say)
    }
    .as_adjusted = drawn as adjusted
    .squared = drawn square where a side is less than { $mark } off it: { $corner } moves the most, by { $by }
    .reading = reading
    .taped = taped
    .adjusted = adjusted
    .off = off by
    .unchecked = nothing checks it
