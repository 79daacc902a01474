# Not reviewed by a native setter yet.
# What stands on drawings, and what drawings are called.

drawings-caption = { $title }, escala 1:{ $scale }
drawings-title =
    .cut = azulejo cortado { $name }
    .piece = pieza { $name }
    .sheet = hoja { $name }
    .unfolded = { $name }: abatido

drawings-part = { $number }: { $kept ->
    [yes] guardar
   *[no] { $board }
}
drawings-hole = agujero de { $size }
drawings-fall = { $fall } { $tape ->
    [mm] mm/m
   *[inch] in/ft
}
drawings-barred = SIN FIJACIONES: { $why }
drawings-door = { $name }, { $size }
