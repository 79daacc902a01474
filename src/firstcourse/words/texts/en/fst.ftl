# Fasteners: where one cannot be set as asked.

FST-101 = The board bears too little on { $member } to take a fastener off its edge.
    .blocking = Add blocking beside the member so that the board's edge has wood behind it.

FST-102 = Fasteners cannot be set close enough together{ $named ->
        [yes] {" "}along { $member }
       *[no] {""}
    }.
    .blocking_or_seam = Add blocking beside the place that cannot be fastened, or move the seam.

FST-103 = The board is too small to keep fasteners off its corners; they keep off its edges only.
    .pilot_holes = Drill pilot holes before driving, or join this board with its neighbour.

FST-104 = The board has no place for a fastener: too narrow, in a zone, or no member behind it.
    .blocking = Add blocking behind the board, or join it with its neighbour.

FST-105 = Part of an edge lies farther from any fastener than asked.
    .bed_or_blocking = Bed this edge in mortar on the member, or add blocking that a fastener reaches.

FST-106 = Backer screws do not hold in concrete, and these boards lie on a slab.
    .concrete_fasteners = Take fasteners made for concrete, and drill for them clear of heating pipes, cables and tendons, with extraction for the silica in the dust;
    .no_holes = through a membrane that keeps water or damp off none goes.

FST-107 = Nothing may be driven into a member behind this board, so it spans the bays beside it.
    .measured = { $members }
    .member_each_side = Fix a member on each side of the zone, clear of what runs there, and enter it.
