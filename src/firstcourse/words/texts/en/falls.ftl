# The page of a floor that falls, and the flood test on it.

falls-fact =
    .rise = highest point over the drain
    .least = least fall on the water's way
    .greatest = greatest fall of a plane
    .bed = bed
    .pre_slope = slope under the liner
    .drain = top of the drain over the panels
    .room_floor = room's finished floor over the panels
    .kerb = top of the kerb over the drain
    .upturn = liner ends on the walls, over the drain
    .recess = recess below the room's floor
    .largest_tile = largest tile that follows uncut

falls-bed = { $thick } at least, { $volume } { $tape ->
    [mm] l
   *[inch] cu ft
}
falls-slope = { $fall } { $tape ->
    [mm] mm per m
   *[inch] in per ft
}, { $ratio ->
    [0] none
   *[other] 1 in { $ratio }
}
falls-water = { $volume } { $tape ->
    [mm] l
   *[inch] gal
}, { $mass } { $tape ->
    [mm] kg
   *[inch] lb
}
falls-flood = Before tile: fill until it stands { $deep } deep over the membrane at the threshold, and wherever the membrane is highest ({ $water }), and leave it for { $hours } { $hours ->
    [one] hour
   *[other] hours
}.{ $dam ->
    [yes] {" "}A dam across the opening is needed.
   *[no] {""}
}
