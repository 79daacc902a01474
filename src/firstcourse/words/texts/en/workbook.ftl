# The spreadsheet: names of its sheets, headings of their columns, and what stands in them.

workbook-foot = plan { $digest }
workbook-page = page { $page } of { $pages }

workbook-pieces = Boards and pieces
    .mark = mark
    .surface = surface
    .stock = stock
    .cut_from = cut from
    .width = width
    .height = height
    .width_mm = width, mm
    .height_mm = height, mm
    .holes = holes
    .taper = taper
    .notch = notch
    .fasteners = fasteners

workbook-cuts = Sheets and cuts
    .sheet = sheet
    .stock = stock
    .source = source
    .size = size
    .cut = cut
    .cut_part = cut part
    .line_runs = line runs
    .distance = distance
    .distance_mm = distance, mm
    .from_the_part_s = from the part's
    .gives_at_that_edge = gives, at that edge
    .gives_beyond_the_line = gives, beyond the line

workbook-tile_cuts = Tile cuts
    .mark = mark
    .surface = surface
    .cut = cut
    .number = number
    .where = where
    .tile = tile
    .size = size
    .width_mm = width, mm
    .to_mm = to, mm
    .height_mm = height, mm
    .up_to_mm = up to, mm
    .from_tiles = from tiles
    .shares_them_with = shares them with

workbook-shopping = Shopping
    .item = item
    .need = need
    .unit = unit
    .buy = buy
    .pack = pack
    .price_of_one = price of one, { $currency }
    .cost = cost, { $currency }
    .working = working

workbook-findings = Findings
    .severity = severity
    .code = code
    .where = where
    .message = message
    .measured = measured
    .limit = limit
    .do = do
    .rule = rule
    .source = source

workbook-workings = Workings
    .id = id
    .title = title
    .formula = formula
    .values = values
    .result = result
    .unit = unit
    .source = source
    .argument = argument

workbook-rules = Rules
    .rule = rule
    .value = value
    .basis = basis
    .source = source
    .check_taken_from = check: taken from

workbook-part = { $sheet }, part { $part }
workbook-up = already up
workbook-source = { $source ->
    [new] new sheet
   *[other] kept offcut { $offcut }
}
workbook-sheet = sheet
workbook-cut =
    .across = across
    .lower = lower edge
    .up = up
    .left = left edge
    .none = no cut
workbook-given =
    .again = { $part }: cut again
    .piece = { $part }: piece { $mark }
    .turned = { $part }: piece { $mark }, lies turned by a quarter
    .keep = { $part }: keep, { $size }
workbook-kind_of = { $mark } of { $surface }
workbook-fit = { $fit ->
    [yes] to fit
   *[no] as drawn
}
workbook-money = money
workbook-total = cost of what has a price
workbook-short = { $formula }
    = { $result }; see { workbook-workings }, { $name }
workbook-practice = { $practice } practice
workbook-basis =
    .code = code
    .common_practice = common practice
    .handbook = handbook
    .house_assumption = house assumption
    .standard = standard
    .textbook = textbook
