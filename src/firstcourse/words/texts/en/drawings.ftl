# What stands on drawings, and what drawings are called.

drawings-caption = { $title }, scale 1:{ $scale }
drawings-title =
    .cut = cut tile { $name }
    .piece = piece { $name }
    .sheet = sheet { $name }
    .unfolded = { $name }: unfolded

drawings-part = { $number }: { $kept ->
    [yes] keep
   *[no] { $board }
}
drawings-hole = hole { $size } wide
drawings-fall = { $fall } { $tape ->
    [mm] mm/m
   *[inch] in/ft
}
drawings-barred = NO FASTENERS: { $why }
drawings-door = { $name }, { $size }
