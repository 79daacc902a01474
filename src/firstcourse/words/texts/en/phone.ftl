# The pack on a phone.

phone-page =
    .about = Works without a network. What you tick and write stays on this phone until you save it as a file and send it back.
    .save = Save what was ticked
    .save_short = Save
    .saved = Saved as { $file }. Send this file back to whoever planned the job.
    .nothing = Nothing is ticked or written yet.
    .kept = Kept on this phone
    .lost = This phone keeps nothing: save before you close the page.
    .wrong = This is no length. Write it like { $example }.
    .tap_tiles = Enlarge the drawing and tap each tile as it is set.
    .tiles_set = Tiles set
    .enlarge = Enlarge: { $shows }
    .larger = Larger
    .smaller = Smaller
    .close = Close
    .drawing = Drawing
    .parts = Parts of the pack

# The parts of the pack, in the bar at its foot.
phone-group =
    .first = First
    .boards = Boards
    .cuts = Cuts
    .falls = Water
    .tile = Tile
    .buy = To buy
    .found = On site

phone-first =
    .stop = Stops the work
    .fix = To fix on the way
    .note = To know
    .before = Before anyone starts
phone-measured = Measured: { $text }.

phone-board =
    .left = from the left
    .up = up
    .fasteners = fasteners
phone-sheet = Sheet { $sheet }
phone-second = Second cuts of { $board }
phone-done = cut, holes and notches too
phone-flood = { $surface }: flood test
phone-water = { $surface }: waterproofing
phone-saw = { $surface }: cuts at the saw
phone-pole = Story pole: { $pole }
phone-need = needed { $need }
phone-found = What is otherwise on site
phone-found_about = Measure the tile that was delivered, and write down what stands elsewhere than drawn.

phone-entry =
    .stud = A stud or joist that stands elsewhere: which, and where
    .course = The first course really stands so high over the floor
    .found = Found
    .flood_start = Filled on, at
    .flood_level = Level at the mark when filled
    .flood_end = Read on, at
    .flood_end_level = Level at the mark then
    .tile_width = { $tile }, as delivered: width
    .tile_height = { $tile }, as delivered: height
    .tile_thickness = { $tile }, as delivered: thickness
    .other = { $room }: anything else
