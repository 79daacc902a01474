# A building of many rooms.

building-title = Building: { $job }
building-cost = What the phases cost
building-cost_heads =
    .stock = sheets
    .phases = by phases
    .heap = as one heap
    .saved = heap saves
building-compared = Sheets are shared within a phase, and kept pieces go on to later phases. As one heap all rooms would be cut at once: its figures are to compare. A minus says that the phases took fewer.
building-not_compared = Sheets are shared within a phase, and kept pieces go on to later phases. It was not compared with one heap.
building-phases = Phases in their order
building-phases_heads =
    .phase = phase
    .sheets = new sheets
    .rooms = rooms
    .used = kept pieces used
    .rack = pieces kept after it
building-delivery = To order for { $name }
building-delivery_heads =
    .item = item
    .packs = packs
    .note = note
building-over = more than one lot holds: ask before ordering
building-rooms = Rooms by floor
building-rooms_heads =
    .floor = floor
    .room = room
    .type = type
    .phase = phase
building-alike = Rooms taped the same
building-alike_heads =
    .type = type
    .rooms = rooms
    .differs = taped otherwise than the type
building-planning = Planning { $name ->
    [heap] all rooms as one heap, to compare
   *[other] phase { $name }
}
