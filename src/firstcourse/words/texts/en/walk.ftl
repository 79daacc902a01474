# Round the room with the tape.

walk-length = { $length }

walk-begin =
    .title = Round the room
    .room = What is the room called?
    .plain = Four walls, nearly square
    .long_feet = About how long, in feet
    .wide_feet = About how wide, in feet
    .long_metres = About how long, in meters
    .wide_metres = About how wide, in meters
    .start_plain = Start taping
    .other = More corners than four
    .note = Stand inside and walk along the walls to the right. For each wall say about how far it goes, then which way you turn.
    .about_feet = About how far along this wall, in feet
    .about_metres = About how far along this wall, in meters
    .start = That brings me back: start taping
    .back = One wall back
    .taped = { $count ->
        [one] { $count } distance taped
       *[other] { $count } distances taped
    }

walk-turn =
    .by90 = then right
    .byleft90 = then left
    .by45 = then half right
    .byleft45 = then half left

walk-tape =
    .feet = feet
    .inches = inches
    .sixteenths = and of an inch
    .mm = millimeters
    .next = next
    .back = back

walk-ask =
    .tape = Tape { $pair }
    .read = That is what it reads
    .skip = It can't be taped now

walk-answer =
    .closes = { $pair } is { $length } and closes within { $off }.
    .noted = { $pair } is { $length }.

walk-why =
    .side = { $pair } is a side that is not taped yet.
    .fixes = Without { $pair } the room can still lean.
    .settles = Two rooms have these readings; { $pair } tells which it is.
    .surer = { $pair } makes the least sure corner surest.
    .checks = { $pair } checks corners that nothing checks yet.
    .contradicts = No room has these readings. Tape { $pair } again; if it is right, look at the others.
    .again = Tape { $pair } again.
    .long = { $pair } looks { $by } too long. Tape it again.
    .short = { $pair } looks { $by } too short. Tape it again.
    .among = One of { $among } is wrong. If it is { $pair }, then by { $by }. Tape it again.

walk-stands =
    .sure = Each corner is sure within { $within }, and each is checked. That is enough to plan.
    .within = Each corner is sure within { $within } so far.
    .nothing_left = There is nothing left to tape that would make it surer.
    .write = Put it into the job

walk-taped =
    .title = Taped so far
    .pair = Corners
    .length = Reads
    .off = Off by
    .unchecked = not checked yet
    .again = Again
    .again_of = Tape { $pair } again
    .skipped = Left out
    .unskip = { $pair } can be taped after all
    .drop = Give this room up

walk-done =
    .title = { $room }: what is done here?
    .where = Where does it go?
    .new = A new room
    .place = In place of { $room }, with all that is said of it
    .readings = New readings of { $room }; all else there stays
    .height = How high are the walls? Leave it empty for a height that stays.
    .boarded = What gets boards, beside the walls of a tub?
    .floor = The floor
    .wall = Wall { $side }
    .studs_inch = Studs, in inches
    .studs_mm = Studs, in millimeters
    .spacing = From middle to middle
    .first = { $side }: first one from { $corner }
    .write = Put it into the job

# One form for a tub and what belongs to it.
walk-bath =
    .title = What stands in it?
    .tub = A tub from wall to wall
    .usual_inch = In inches. What stands here is usual; compare it with the room.
    .usual_mm = In millimeters. What stands here is usual; compare it with the room.
    .tub_side = It stands along wall
    .tub_out = Front edge from that wall
    .tub_rim = Rim above the floor
    .tub_top = Boards up to
    .tub_reach = Boards at its ends reach out
    .membrane = A waterproof membrane goes on the boards
    .pipes = Where are valve, spout and shower head?
    .pipes_left = In the wall at its left end
    .pipes_right = In the wall at its right end
    .pipes_none = Somewhere else, or there are none
    .pipes_spout = Spout above the floor
    .pipes_valve = Valve above the floor
    .pipes_head = Shower head above the floor
    .niche = A niche in the long wall
    .niche_left = From the left corner
    .niche_bottom = Above the floor
    .niche_width = Width
    .niche_height = Height
    .closet = A closet flange in the floor
    .closet_side = Measured from wall
    .closet_left = Middle from its left corner
    .closet_out = Middle out from it
