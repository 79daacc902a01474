# Cut tickets: which part is cut where, and what becomes of the parts.

tickets-source = { $source ->
    [new] new sheet, { $stock }, { $size }
   *[other] kept offcut { $offcut }, { $stock }, { $size }
}
tickets-second = { $part }: then second cuts of { $board }
tickets-keep = { $part }: keep, label { $size }
tickets-sheet = sheet
tickets-waste = waste
tickets-cut = { $line ->
    [up] { $part }, { $at } up
   *[left] { $part }, { $at } from left
}
