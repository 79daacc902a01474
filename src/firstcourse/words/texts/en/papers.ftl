# What stands round the pages of every pack.

papers-frame =
    .head = { $job }: { $pack }
    .plan = plan { $digest }
    .caution = Caution.
    .rules = Rules: { $practice }, { $date }
    .page = page { $page } of { $pages }
    .drawing = drawing at { $scale }

papers-title = { $surface }
papers-title-boards = { $surface }: boards
papers-title-tile = { $surface }: tile
papers-title-heights = { $surface }: highs and lows
papers-title-falls = { $surface }: falls

# Where a sheet comes from.
papers-source = { $offcut ->
    [no] new sheet
   *[other] kept offcut { $offcut }
}

# How bad a finding is.
papers-severity =
    .stop = stop
    .fix = fix
    .note = note
