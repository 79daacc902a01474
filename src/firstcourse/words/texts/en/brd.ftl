# Boards: what carries them, where their seams and cuts fall, and what stays bare between them.

BRD-101 = Board edges here have no member behind them as framed: { $count ->
        [one] { $count } member is
       *[other] { $count } members are
    } to be added.
    .measured = { $uprights ->
        [0] { BRD-101.levels }
       *[other] { BRD-101.uprights }{ $levels ->
            [0] {""}
           *[other] ; { BRD-101.levels }
        }
    }
    .uprights = { $uprights ->
        [one] centre
       *[other] centres
    } from the left edge: { EACH("brd-upright", $upright_at, $upright_from, $upright_to) }
    .levels = { $levels ->
        [one] centre
       *[other] centres
    } from the bottom edge: { EACH("brd-level", $level_at, $level_from, $level_to) }
    .add = Before boarding add { $count ->
        [one] it
       *[other] them
    } ({ WORD($kind) }), where the drawing of the boards shows heavy broken lines.

brd-upright = { $one } (from { $two } to { $three } off the bottom edge)
brd-level = { $one } (from { $two } to { $three } off the left edge)

BRD-102 = A board edge bears too little, and members beside it leave no room for another.
    .measured = { $left } from the left, { $lower } up, to { $right }, { $upper }
    .pack_out = Pack out the nearest member until the edge lies on wood, or move the member.

BRD-103 = This board is up, and an edge of it has too little behind it as the framing was found.
    .measured = { BRD-102.measured }
    .block = Screw blocking to the framing so that it lies half behind this edge, from the open side while there is one, and fasten the board to it along the edge. What cannot be reached from there asks for the board to come down.

BRD-104 = Two boards that are up stand otherwise apart than asked.
    .open = Open the joint to its width with a saw blade or a rasp, the silica in the dust taken at the blade and a mask on; then fill and tape it like the others.
    .fill = Fill the joint with mortar as deep as the board in two passes, and tape over it.

BRD-105 = This board is up, and stands nearer to what bounds it than asked.
    .trim = Trim it where it stands until the gap is there, the silica in the dust taken at the blade and a mask on.

BRD-201 = End joints stand closer than asked.
    .other_size = Use another sheet size here, or accept the joints and tape them with care.

BRD-202 = Four boards meet at a point.
    .other_size = { BRD-201.other_size }

BRD-203 = A seam stands closer to a panel joint than asked.
    .measured = seam at { $measured } { $upright ->
        [yes] from the left
       *[no] up
    }
    .shift_joint = Shift the panel joint, add a layer, or use a sheet of another size.

BRD-204 = A board is narrower than the least piece; no better seam was found.
    .both_edges = Handle it with care and fasten it along both long edges.

BRD-205 = A limb of the board is narrower than asked; no seam that avoids it was found.
    .measured = { $wide } x { $high }
    .cut_off = Cut the limb off, and set it as a strip of its own, bedded in mortar on a member.

BRD-206 = Cuts here take off less than can be scored and snapped.
    .measured = { EACH("brd-strip", $widths, $boards, $sheets) }
    .break_off = Score along a straightedge several times and break the strip off with pliers, or plane, rasp or saw it off.
    .dust = The dust holds silica: outdoors or taken at the blade, a mask on.

brd-strip = { $one } off { $two } ({ $three })

BRD-207 = A board keeps the sheet's edge, and has less gap at the wall than usual.
    .cut_nothing = Set it with this gap in place of { $usual }; cut nothing off.

BRD-208 = A board is cut back to more gap at the wall than usual: so the cut can be snapped.
    .wider_gap = Cut it to its size and set it with this gap, not { $usual }; fill and tape the gap like the others.

BRD-301 = No board can be laid here: nothing is left inside the gaps, or no sheet may be used.
    .check = Check the outline and the openings, and name a sheet for this surface.

BRD-302 = This floor is a slab, by its entry, and gets no boards: tile goes on the concrete, or on the membrane or uncoupling layer that its cracks, joints and damp ask for.
    .read_heights = Read its heights and its moisture and enter them; fill what is low, and take off what mortar does not hold on, wet or with extraction for the silica in the dust.
    .carry_joints = Carry its joints up through the tile (tiling, soft_joints).
    .enter_framing = If it is no slab, enter its framing; if it is to be boarded all the same, say how (boards_on_slab).

BRD-303 = A strip of ground{ $neighbours ->
        [0] {""}
       *[other] {" "}beside { LIST($beside) }
    } is too narrow for a limb of a board.
    .measured = { $measured } x { $long }, from { $left } from the left, { $lower } up
    .mortar = Fill it with mortar as deep as the board, and tape over it.
    .board = Rip a strip of board from an offcut, bed it in mortar on a member put behind it, and tape its edges.
