# The unfolded room, and a surface to work on.

unfold-room =
    .picture = The room unfolded: its floor with the walls folded out
    .how = The floor with its walls folded out. Tap a surface to work on it.
    .not_planned = It is not planned as it stands.
    .choices = Sheets, tile and framing
    .document = Edit anything else

unfold-part =
    .wall = Wall
    .floor = Floor
    .ceiling = Ceiling

unfold-surface =
    .picture = Drawing of this surface
    .moves = move it with the arrow keys, Shift for far
    .drag = Drag what is open or stands here; it is saved when you let go.
    .keys = Enter saves it here, Escape puts it back.
    .printed = The drawing as printed

unfold-layer =
    .title = What to show
    .framing = framing
    .boards = boards and seams
    .tile = tile
    .soft = soft joints
    .water = water
    .heights = heights
    .pole = story pole
    .show = Show

unfold-foot =
    .sheets = sheets, whole job
    .boards = boards here
    .tiles = cut tiles here
    .smallest = smallest cut
    .proof = this drawing
    .verified = verified
    .not_proved = not proved yet

unfold-things =
    .title = Open or standing here
    .points = Its shape is given corner by corner; change it in the document.
    .from_side = Measured from wall { $side }.
    .save = Save
    .remove = Take { $name } out
    .new = One more
    .round = A round hole has a diameter; anything else a width and a height or depth.
    .add = Add it

unfold-field =
    .kind = What is it?
    .id = What do you call it?
    .side = Measured from wall
    .left = From the left
    .bottom = Up from the floor
    .out = Out from the wall
    .centre_left = Centre from the left
    .centre_bottom = Centre up from the floor
    .centre_out = Centre out from the wall
    .width = Width
    .height = Height
    .depth = Depth
    .diameter = Diameter

unfold-kind =
    .niche = niche
    .window = window
    .pipe = pipe
    .valve = valve
    .box = box
    .door = door
    .drain = drain
    .flange = closet flange
    .tub = tub
    .tray = tray
    .cabinet = cabinet
    .column = column
    .other = other

unfold-snap =
    .on = On:
    .edge = edge
    .centre = centre
    .corner_u = end of the surface
    .corner_v = top or foot of the surface
    .course = course

unfold-flag =
    .measured = Measured:
    .limit = Limit:
    .source = Source:

unfold-remedy =
    .courses = Put it onto the courses
    .members = These members are in now: note them
    .none = No entry on this page does that; it is work on site, or a change in the document.

unfold-start =
    .title = Where the tile starts
    .locked = The start is locked.
    .free = Find the start anew
    .used = In the plan
    .lock = Lock this start
    .cuts = { $count ->
        [one] { $count } cut tile, smallest { $smallest }
       *[other] { $count } cut tiles, smallest { $smallest }
    }
    .narrowest = Narrowest at { $where }
    .joints = { $count } of { $of } edges of niches and windows on a joint
    .sliver = One cut is a sliver
    .under_half = A cut along an edge is under half a tile
    .may_sliver = A sliver may stand if the room is as far off as its readings allow

unfold-mark =
    .title = Story pole
    .height = From its end
    .what = Mark
    .course = foot of a course
    .top = head of the last course
    .level = level line
    .end = end of the pole
    .low = lower edge
    .high = upper edge
    .cut = cut

unfold-choices =
    .title = Sheets, tile and framing
    .inches = A number without a unit is inches: 35 1/2. Feet and inches work too: 5' 3-1/2".
    .mm = A number without a unit is millimeters.
    .sheets = Sheets of board that you buy
    .new_sheet = One more sheet
    .tiles = Tile that was chosen
    .new_tile = One more tile
    .surfaces = Which surface gets which tile
    .tile_first = A tile that is new above can be chosen here once it is saved.
    .joists = Joists under this floor. Leave the lengths empty on a concrete slab.
    .save = Save

unfold-choice =
    .id = What you call it
    .width = Width
    .length = Length
    .height = Height
    .thickness = Thickness
    .joint = Grout joint
    .tile = Tile
    .no_tile = No tile
    .pattern = Pattern
    .parallel_to = They run along wall
    .spacing = Centre to centre
    .first = First one's centre from that wall

unfold-pattern =
    .stacked = stacked
    .running = running bond
    .diagonal = diagonal
    .herringbone = herringbone
    .double_herringbone = double herringbone
    .basket_weave = basket weave
    .hexagon = hexagon
    .repeat = a repeat of your own
