# Tile: its joints and beds, where cuts fall, and what lies beside it.

TIL-101 = The joint wanted for tile { $tile } is narrower than this tile allows.
    .measured = { FINE($measured) }
    .limit = at least { FINE($limit) }
    .closer_in_size = The plan uses the least joint allowed; a narrower one needs tiles closer to one size.

TIL-102 = The size spread of tile { $tile } is not measured; the joint is wide enough for { FINE($spread) }.
    .limit = joint at least { NUMBER_OF($limit) } x the spread
    .measure = Measure ten tiles from several boxes and give size_spread; the joint may then be narrower.

TIL-103 = Tile { $tile } is too long for courses shifted by { $offset } of a tile.
    .measured = { FIGURES($measured, decimals: 0) } of { $long }
    .limit = at most { FIGURES($limit, decimals: 0) }
    .third = Shift courses by a third at most, or have a mock-up approved before you order.

TIL-104 = The bow of tile { $tile } alone makes a larger step than is allowed at this shift.
    .measured = { FINE($measured) }
    .limit = at most { FINE($limit) }
    .shift_less = Shift the courses less or stack them, or ask for flatter tiles.

TIL-105 = { $entered ->
        [yes] The job gives
       *[no] The trowel leaves
    } too { $thin ->
        [yes] little
       *[no] much
    } mortar under the tile.
    .measured = { FINE($measured) }
    .limit = { $thin ->
        [yes] at least
       *[no] at most
    } { FINE($limit) }
    .thicker = { $entered ->
        [yes] Give it thicker: take
       *[no] Take
    } a larger notch or hold the trowel steeper.
    .thinner = { $entered ->
        [yes] Give it thinner: take
       *[no] Take
    } a smaller notch.

TIL-106 = Comb with a { FINE($width) } x { FINE($depth) } { WORD($shape) } notch{ $buttered ->
        [yes] {" "}and { FINE($back) } on the back of the tile
       *[no] {""}
    }; lift tiles early on and look at the mortar.
    .limit = contact at least { FIGURES($limit, decimals: 0) } of the back
    .lift = Lift { $sample } tiles; where contact falls short, butter the backs.

TIL-108 = This floor is walked on wet; ask for the slip class of tile { $tile }.
    .limit = { $scale ->
        [friction] wet dynamic friction
       *[pendulum] wet pendulum value
    } at least { NUMBER_OF($limit) }
    .data_sheet = See it on the tile's data sheet; for bare feet and showers ask for more than the least.

TIL-110 = A soft joint ({ WORD($why) }) finds no straight grout joint in this pattern, so tiles are cut along it.
    .cut_clean = Cut both sides clean along a straightedge, or choose a pattern with straight joints.

TIL-111 = Soft joints come out wider than sealant should fill.
    .measured = { FINE($measured) }
    .limit = at most { FINE($limit) }
    .closer = Place soft joints closer together, so that each has less to take.

TIL-121 = A cut{ $named ->
        [yes] {" "}at { THING($edge) }
       *[no] {""}
    } is a sliver. { $why ->
        [given] The start that the job gives asks for it.
        [cuts_more] The start without one, instead { $instead }, cuts { $more } more tiles; up to { $most_more } more are taken to be rid of it.
        [many_ways] The pattern meets its edges in many ways at once: every start leaves narrow cuts along some edge.
       *[none_without] Of { $tried } starts tried none is without one: what a start gains at one edge, another loses.
    }
    .measured = { $smallest ->
        [yes] smallest cut
       *[no] the sliver
    } { CUT($measured) }
    .limit = { $limit }, of a small tile { FIGURES($share, decimals: 0) } of it
    .given = Leave out the start to have the best one found.
    .cuts_more = Give that start in the job if the other cuts matter less.
    .many_ways = Hide them under trim, cabinet or door, or frame the field with a border of straight tiles.
    .none_without = Another joint, another size of tile or a moved opening would take it away; see the alternatives.

TIL-122 = The niche does not begin and end on course joints, so tiles beside it are notched.
    .measured = sill at { $sill }, head at { $head }
    .limit = a whole number of courses
    .set = If it is not built yet, set its sill at { $better_sill } and make it { $better_height } high: { $courses } { $courses ->
        [one] course
       *[other] courses
    }. Its sides stay where they are.

TIL-124 = The { WORD($what) } sheds water over its front edge.
    .measured = front { FINE($measured) } lower than the back
    .limit = at least { FINE($limit) }{ $bounded ->
        [yes] , at most { FINE($most) }
       *[no] {""}
    }
    .set = Set its front { FINE($limit) } lower.
    .check = Check it with a level before the tile goes on.

TIL-125 = The floor does not lie level along its { LIST($faces) }.
    .measured = { $low } to { $high } over the panels
    .scribe = Level the lowest course from the lowest point of the floor, and scribe each of its tiles to the floor, less the joint.

TIL-126 = The tile of its front was to begin within the floor; it begins on the finished floor.
    .limit = { $limit } over the panels
    .leave_out = Leave out bottom, or let it begin higher.

TIL-127 = Boards and tile of this wall end above the shower floor: ground stays bare between them.
    .measured = { $measured } above the finished floor
    .limit = the joint there, { TAPE($limit) }
    .reach_down = Let them reach down to { DOWN($down_to) } over the panels or lower.

TIL-128 = The bench stands on the drain.
    .move_or_hang = Move one of them, or let the bench hang over the drain and give as bottom the height at which the tile of its front begins.

TIL-129 = The tile is entered higher than wide, so it stands upright on { LIST($surfaces) }. Is it to stand?
    .measured = { TAPE($width, feet: "no") } x { TAPE($height, feet: "no") }, width by height
    .say = If it is to lie, give its size as { TAPE($height, feet: "no") } x { TAPE($width, feet: "no") }; if it is to stand, give it upright: true.

TIL-130 = The window stands in a wet wall, and nothing says how deep it is set back: its sill, returns, trim and the membrane into its opening are not planned.
    .give_returns = Give the window returns: with their depth from the face of the boards to the window's frame, and tiled: no where they bear no tile.

TIL-131 = Sill, head and sides of the window are { $boarded ->
        [yes] boarded before they are waterproofed and tiled: the opening as entered lies between the faces of these boards, and framing carries them on all four sides
       *[no] too narrow for boards that hold, so none are planned
    }.
    .measured = { $boarded ->
        [yes] framing { TAPE($wide, feet: "no") } x { TAPE($high, feet: "no") } apart
       *[no] { TAPE($measured, feet: "no") } wide
    }
    .mortar_or_foam = Fill them with mortar over lath, or bond strips of a foam board there, and waterproof them with the wall.
    .check_framing = Check the framing of the opening before boards are cut; fasten the strips to it, and pack the sill to its fall.

TIL-132 = The floor is out of level, and the shower floor beside this wall is planned from level panels: tile of the wall begins at the foot of its boards, not on the finished floor.
    .measured = { EACH("til-foot", $heights, $corners) } over the lowest corner
    .level_or_hold = Level the panels and leave out levels, or hold the lowest course to the finished floors on site.

til-foot = { $one } at { $two }

TIL-107 = Edges of tile show here; choose trim, or tile with a finished edge.
    .measured = { RUN($measured) }
    .limit = trim about { FINE($high) } high
    .trim = Take trim as high as tile and mortar together; set it with the tile, not after.

TIL-134 = No two lines at right angles are measured on this surface: too little of its edge can be touched.
    .carry = Carry a level line over from a neighbouring surface, square a second one to it, lay the first row dry between them and mark where it begins.

TIL-133 = At an edge that runs askew to the rows { $number } { $number ->
        [one] piece is
       *[other] pieces are
    } too thin to set; whole tiles end there.
    .measured = joint up to { TAPE($measured) } wide
    .limit = a piece wider than { TAPE($limit) } is set
    .spread = Fill it as the soft joint it is part of, or spread the difference over the last joints where it would be seen.
