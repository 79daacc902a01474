# The site pack: cover, surfaces, tickets, lists.

sitepack-name = site pack

sitepack-site =
    .client = Client
    .setter = Setter
    .address = Address
    .starts = Starts
    .phone = Phone
    .ends = Ends

# How many sheets of a stock, and what is known of that number.
sitepack-sheets = sheets of { $stock }
    .fewest = { $used } (no layout that keeps the rules takes fewer)
    .fewest_of_these = { $used } (these boards take no fewer; with other seams fewer may do)
    .at_least = { $used } (at least { $least })
    .used = { $used }
sitepack-reused = kept offcuts used up
sitepack-up = boards up already, kept as they are
sitepack-boards = boards
sitepack-cuts = cuts edge to edge
sitepack-fasteners = fasteners
sitepack-tiles = tiles
    .found = { $whole } whole, { $cut } cut { $cut ->
        [one] piece
       *[other] pieces
    }
sitepack-cost = cost of the { $what ->
    [sheets] sheets
   *[tiles] tiles
}

sitepack-more = { $count } more to fix stand under “{ sitepack-labels.more_fixes }”, at the end.

sitepack-labels =
    .looked_by = Looked at by:
    .date = date:
    .scale = scale { $scale }
    .measured = Measured: { $text }.
    .do = Do:
    .note = To know
    .more_fixes = More to fix on the way
    .about = Site pack. What stays in the office is in the office pack.
    .stop = Stops the work
    .fix = To fix on the way
    .packs = Packs of the rooms
    .packs_about = Each room has a site pack and an office pack of its own in its folder; this one has what all rooms share. A sheet that several rooms share is cut with the first of them.
    .room = room
    .folder = folder
    .boards = boards
    .sheets_there = sheets cut there
    .elsewhere = Cut with other rooms
    .sheet = sheet
    .in_pack_of = in the pack of
    .before = Before anyone starts
    .drawings = How to read the drawings
    .key_open = stays open: window, niche, what stands there
    .key_cut = cut tile; on a ticket: kept for later
    .key_waste = waste
    .key_soft = soft joint: sealant, no grout
    .key_fasteners = fasteners
    .key_added = member to add
    .key_framing = framing
    .key_line = line to snap
    .key_up = board that is up already: it stays
    .drawings_about = Every surface is drawn from inside the room. Figures along the foot and the left are running: each is measured from the left end or from the foot; on floors and ceilings from the lower edge of the drawing.
    .contents = In this pack
    .unfolded = Scale { $scale }. The floor from above, its walls folded out about their feet and seen from inside; it shows { $shows }. Dotted: the rest of a wall.
    .where = where
    .tile = tile
    .pattern = pattern
    .joint = joint
    .agreed = Agreed as drawn:
    .name = Name
    .signature = Signature of the client
    .day = Date
    .board = board
    .size = size
    .fasteners = fasteners
    .from_left = from the left
    .heights = At each reading: how far the surface stands over (+) or under (-) its best plane, and below it what to do there by the first remedy that passes. Volumes, bags and the other ways are in the office pack.
    .softs = Soft joints
    .softs_about = : no grout, sealant
    .chips = Chips of mosaic to cut
    .chips_about = , by where they lie: lay the sheets out dry, mark them and cut on the sheet
    .checks = Boards: look at these before tile covers them
    .tickets = Cut tickets
    .tickets_about = Score and snap from edge to edge in order, face up. Each line: the part that is cut; how far up from its lower edge or from its left edge; then what lies below or left | above or right of the cut. Parts are numbered as they come off.
    .second = Second cuts
    .second_about = Tapers, notches and holes, after the part is snapped off; seen face up, figures from its lower left corner. Dotted: the part.
    .slight = Slight tapers
    .slight_about = No more than two graduations over the board: take it off with the rasp where it has to fit. Lower | upper edge, left | right edge.
    .lower_upper = lower | upper
    .left_right = left | right
    .falls = Scale { $scale }. Arrows point down each plane, with its fall; heavy broken lines are valleys, thin ones ridges. Heights are over the top of the drain.
    .height = height
    .found = found
    .flood = Flood test card
    .water = Waterproofing
    .water_by = Looked at before tile:
    .poles = Story poles
    .poles_about = A plain stick for each list. Hook the tape on its end and mark lower or left edges at these lengths. Hold the mark in heavy type to its line on the wall or floor; the end of the stick need not touch anything.
    .mark = mark
    .from_end = from the end
    .saw = Tile cuts
    .saw_about = Letters are those on the drawings. What is listed is cut to fit where it goes: straight cuts, measured in place. What is drawn has a notch, a hole or a slant and is seen face up; heavy edges are the tile’s own, thin ones are cut; figures run from the lower left corner of each piece.
    .shopping = To buy
    .buy = buy
    .what_pack = what, pack
    .need = need

# What a room's drawing shows.
sitepack-shows = { $tiled ->
    [yes] tile where there is any, boards elsewhere
   *[no] boards
}
