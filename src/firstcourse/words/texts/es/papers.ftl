# Not reviewed by a native setter yet.
# What stands round the pages of every pack.

papers-frame =
    .head = { $job }: { $pack }
    .plan = plan { $digest }
    .caution = Cuidado.
    .rules = Reglas: { $practice }, { $date }
    .page = página { $page } de { $pages }
    .drawing = dibujo a { $scale }

papers-title = { $surface }
papers-title-boards = { $surface }: paneles
papers-title-tile = { $surface }: azulejo
papers-title-heights = { $surface }: altos y bajos
papers-title-falls = { $surface }: pendientes

# Where a sheet comes from.
papers-source = { $offcut ->
    [no] hoja nueva
   *[other] sobrante guardado { $offcut }
}

# How bad a finding is.
papers-severity =
    .stop = detener
    .fix = corregir
    .note = nota
