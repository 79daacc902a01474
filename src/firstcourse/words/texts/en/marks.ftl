# Lines to snap, start marks and story poles.

# A line with what is measured to it.
marks-line = { $line }: { $found }.
marks-both = { $one }, and { $two }
marks-square = Square check: from their crossing { $first } along the first line and { $second } along the second; the two marks lie { $across } apart.

marks-named =
    .first_course = Level line, lower edge of the lowest whole course
    .plumb = Plumb line, edge of a tile near the middle
    .first_up = First line, up the drawing
    .first_across = First line, across the drawing
    .first_slanting = First line, slanting
    .second_up = Second line, up the drawing
    .second_across = Second line, across the drawing
    .second_slanting = Second line, slanting

# What is measured: a length from something.
marks-found =
    .above = { $spot } { $length } above { $from }
    .below = { $spot } { $length } below { $from }
    .plumb = { $spot } { $length } from { $from }
    .open = in the open { $length } from { $from }
    .along = along { $at } { $length } from { $from }
    .beside = beside { $at } { $length } from { $from }

# Where along a line it is measured: at one of its ends, or so far from it.
marks-spot = { $far ->
    [0] at the { $end ->
        [left_end] left end
        [right_end] right end
        [foot] foot
       *[top] top
    }
   *[other] at { $far } from the { $end ->
        [left_end] left end
        [right_end] right end
        [foot] foot
       *[top] top
    },
}

# The first joint of a face each way.
marks-start = { $way ->
    [up] Up
    [down] Down
   *[across] Across
} to { $to ->
    [row] the edge of the only row
    [joint] the first joint
   *[point] the first point
}
marks-start_found = { $several ->
    [no] { $lengths } from { $from }
    [level] { $lengths } from { $from }, at its left and right end
   *[upright] { $lengths } from { $from }, at its lower and upper end
}
marks-lengths = { $one } and { $two }

# What is measured from, as one calls it who stands before the surface.
marks-thing =
    .opening = the { $name }
    .floor = the floor before its tile
    .bed = the shower's bed before its tile
    .bench = the { $name }
    .part = the { $name }
    .tile = the tile of the { $name }
    .under_top = its upper edge, before the top is set
    .boards = the boards of { $name }
    .edge = the { $name }
    .lower = the boards' lower edge
    .upper = the boards' upper edge
    .left = the boards' left edge
    .right = the boards' right edge
    .corner_face = the face in { $name }
    .wall_face = the face of { $name }

# A mark of a story pole.
marks-place =
    .line_first = first line
    .line_second = second line
    .line_level = level line
    .line_plumb = plumb line
    .opening_centre = { $name }, centre
    .opening_low = { $name }, lower edge
    .opening_high = { $name }, upper edge
    .opening_left = { $name }, left edge
    .opening_right = { $name }, right edge
    .end_of_last_course = end of the last course
    .end_of_last_row = end of the last row
    .end_of_sheet = end of sheet { $number }
    .end_of_course = end of course { $number }
    .end_of_row = end of row { $number }
    .end_of_tile = end of tile { $number }
    .sheet = sheet { $number }
    .course = course { $number }
    .row = row { $number }
    .tile = tile { $number }
    .cut = cut
    .first_line_lower = first line, lower end
    .first_line_upper = first line, upper end
    .second_line_left = second line, left end
    .second_line_right = second line, right end
    .foot = foot
    .top = top
    .left_end = left end
    .right_end = right end

# Which rows a pole shows, with the sum.
marks-step = every { $every }{ $every ->
    [2] nd
    [3] rd
   *[other] th
} { $what ->
    [course] course
   *[row] row
}: { $every } x { $one } = { $total }

# What a pole serves, and which way it lies.
marks-way =
    .up = up
    .along = along
    .first = along the first line
    .second = along the second line
marks-walls = { $room }: walls { $names } and { $last }
marks-places = { $one } and { $two }
