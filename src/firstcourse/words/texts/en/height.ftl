# Heights of finished surfaces, and what meets them.

height-doorway_step = { PLACE($at) }: step between the floors
    .formula = sum of the layers - height of the other floor
    .source = layers and heights as entered
    .name-this_floor = this floor
    .value-this_floor = { FIGURES($this_floor) } over the structure
    .name-other_floor = other floor
    .value-other_floor = { FIGURES($other_floor) } over the structure
    .value-profile = { $profile ->
        [bevelled_reducer] bevelled reducer at least { UP($long) } long (1 in { $slope })
        [ramped_threshold] ramped threshold at least { UP($long) } long (1 in { $slope })
       *[straight_edge_trim] none, or a straight edge trim
    }
    .unsaid-long = -
    .unsaid-slope = -
    .name-under_door = gap under the door
    .value-under_door = { FIGURES($under_door) }
    .result = { FIGURES($result, sign: "yes") }
