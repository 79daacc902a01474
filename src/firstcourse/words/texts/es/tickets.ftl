# Not reviewed by a native setter yet.
# Cut tickets: which part is cut where, and what becomes of the parts.

tickets-source = { $source ->
    [new] hoja nueva, { $stock }, { $size }
   *[other] sobrante guardado { $offcut }, { $stock }, { $size }
}
tickets-second = { $part }: luego los segundos cortes de { $board }
tickets-keep = { $part }: guardar, etiqueta { $size }
tickets-sheet = hoja
tickets-waste = desperdicio
tickets-cut = { $line ->
    [up] { $part }, { $at } hacia arriba
   *[left] { $part }, { $at } desde la izquierda
}
