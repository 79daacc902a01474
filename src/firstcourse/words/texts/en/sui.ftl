# Whether frame, panel and surface will carry tile, and what the layers do to heights.

SUI-601 = From the other floor into this room one steps { $up ->
        [yes] up
       *[no] down
    } here.
    .profile = Take a bevelled reducer at least { UP($long) } long (1 in { $slope }).

SUI-602 = { SUI-601 }
    .profile = Take a ramped threshold at least { UP($long) } long (1 in { $slope }), or layers { UP($over) } { $up ->
        [yes] thinner
       *[no] thicker
    } in all.

SUI-603 = The door will { $drags ->
        [yes] drag on
       *[no] not open over
    } the finished floor.
    .cut = Cut { UP($off) } off the door before laying.
