# Tile: how its joints, beds, soft joints and cuts came about, and what is said of soft joints and starts.

tiles-joint = Grout joint of { THING($also) }
    .formula = the widest of what each rule asks, and not less than that the job's own
    .name-on = laid on
    .value-on = { WORD($on) }
    .name-narrowest = narrowest joint in any case
    .value-narrowest = { FINE($narrowest) }
    .name-stone = natural stone on a wall
    .value-stone = { FINE($stone) }
    .name-small = small tile
    .value-small = { FINE($small) }
    .name-large = large tile
    .value-large = { FINE($large) }
    .name-by_spread = size spread x factor
    .value-by_spread = { FINE($by_spread) }
    .name-by_usual_spread = size spread not measured, taken x factor
    .value-by_usual_spread = { FINE($by_usual_spread) }
    .name-in_offset = long tile in offset, plus edge warpage
    .value-in_offset = { FINE($in_offset) }
    .name-spread = size spread
    .value-spread = { FINE($spread) }, times { NUMBER_OF($factor) }
    .unsaid-factor = -
    .name-warpage = edge warpage
    .value-warpage = { FINE($warpage) }
    .name-own = the job's own joint
    .value-own = { $own ->
        [none] none given
       *[other] { FINE($own) }
    }
    .value-least = { FINE($least) }
    .unsaid-rules = -
    .source = { SOURCE($rules) }
    .result = { FINE($result) }

tiles-offset = Shift of courses of { THING($also) }
    .formula = smaller of shift and 1 - shift, against the limit where the shifted side is long
    .name-part = shift
    .value-part = { $part }/{ $of }
    .unsaid-of = -
    .name-side = side that is shifted
    .name-long = long above

tiles-lippage = Step allowed at joints of { THING($also) }
    .formula = { $added ->
        [yes] allowance by joint + warpage measured
       *[no] allowance by joint
    }
    .value-joint = { FINE($joint) }
    .name-by_joint = step before warpage
    .value-by_joint = { FINE($by_joint) }
    .unsaid-added = -
    .name-warpage = edge warpage measured
    .value-warpage = { FINE($warpage) }
    .name-bow = step that the bow alone makes, 4 x shift x (1 - shift) x warpage: a bowed edge taken as a parabola
    .value-bow = { FINE($bow) }
    .unsaid-rules = -
    .source = { SOURCE($rules) }
    .result = { FINE($result) }

tiles-mortar = Mortar under { THING($also) } on { PLACE($at) }
    .formula = { $entered ->
        [yes] as entered
       *[no] ridge section x sin(angle) / (w + land) + back-butter
    }
    .unsaid-entered = -
    .name-width = trowel
    .value-width = { FINE($width) } x { FINE($depth) } { WORD($shape) } notch
    .unsaid-depth = -
    .unsaid-shape = -
    .value-land = { FINE($land) }
    .value-angle = { FIGURES($angle, decimals: 0) }
    .value-combed = { FINE($combed) }
    .name-back = back-butter
    .value-back = { $back ->
        [none] none
       *[other] { FINE($back) }
    }
    .name-contact = contact wanted
    .value-contact = { FIGURES($contact, decimals: 0) }
    .unsaid-notch = -
    .source = ridge geometry; contact: { SOURCE($rule) }; notch: { SOURCE($notch) }
    .result = { FINE($result) }

tiles-soft_joints = Soft joints of { PLACE($at) }
    .formula = edges and changes of plane + doorways + joints below + field, parts no longer than the spacing
    .value-spacing = { RUN($spacing) }
    .name-edge = width at edges
    .value-edge = { FINE($edge) }
    .name-width = width in the field
    .value-width = { FINE($width) }
    .name-ways = across the field
    .value-ways = { EACH("tiles-across", $ways, $across, $extents) }
    .unsaid-across = -
    .unsaid-extents = -
    .unsaid-rules = -
    .source = { SOURCE($rules) }
    .result = { $result } joints

tiles-across = { $two ->
        [0] none
       *[other] { $two }
    } { $one } in { $three }

tiles-cut = Whole tiles that are cut, { THING($at) }
    .formula = each cut piece from the first tile it fits in, largest first, a saw's cut between pieces
    .name-pieces = cut pieces
    .name-kerf = saw's cut
    .value-kerf = { FINE($kerf) }
    .name-fewest = fewest that any cutting needs
    .result = { $result } tiles

tiles-kerb_face = Height of the kerb's outer face, { PLACE($at) }
    .formula = drain + kerb + fall of its top - tile on its top - room's floor
    .name-drain = top of the drain over the panels
    .value-drain = { FINE($drain) }
    .name-kerb = top of the kerb over the drain
    .value-kerb = { FINE($kerb) }
    .name-fall = fall of its top
    .value-fall = { FINE($fall) }
    .name-tile = tile and mortar on its top
    .value-tile = { FINE($tile) }
    .name-floor = room's finished floor over the panels
    .value-floor = { FINE($floor) }
    .source = heights of this plan
    .argument-1 = The face stands on the room's finished floor and ends under the tile of the top.
    .result = { FINE($result) }

tiles-sill = Height of the sill, { PLACE($at) }
    .formula = front edge of the boards + tile and mortar; at the frame the fall besides
    .name-front = front edge of the boards
    .value-front = { FINE($front) }
    .name-fall = fall to the front
    .value-fall = { FINE($fall) }
    .name-tile = tile and mortar on it
    .value-tile = { FINE($tile) }
    .name-at_frame = finished at the frame
    .value-at_frame = { FINE($at_frame) }
    .source = heights of this plan, over the panels or slab that walls are measured from
    .result = { FINE($result) }

tiles-soft_plane = { THING($at) }: change of plane or material
tiles-soft_restrained = { THING($at) }: meets what restrains it
tiles-soft_across = { $why ->
        [field] field, at most { RUN($spacing) } apart
       *[other] { WORD($why) }
    }; { $how ->
        [cut] tiles that lie across it are cut along it
        [trimmed] on a grout joint, tiles beside it trimmed to leave { FINE($width) }
       *[joint] on a grout joint
    }

# What is said of tile on papers: patterns, counts, cuts, where else it could start.

tiles-pattern = { $angle ->
    [0] { $name }
   *[other] { $name }, turned { $angle } degrees
}
tiles-no_cut = no cut
tiles-found = { $whole } whole, { $cut } cut { $cut ->
    [one] piece
   *[other] pieces
}; smallest cut { $smallest }
tiles-soft = { $why }: { $width } wide, { $length }

tiles-facts =
    .tile = Tile
    .pattern = Pattern
    .joint = Grout joint
    .tiles = Tiles

# Sizes of what is cut to fit, and one from the least to the greatest.
tiles-about = about { $size }
tiles-span = { $least } to { $most }

# What tile is cut along, several places joined.
tiles-along = { $one } and { $two }
tiles-in_field = in the field
tiles-place =
    .next_field = next field
    .corner_of_border = corner of the border
    .edge_of_border = edge of the border
    .edge_of_band = edge of the band
    .lower_edge = lower edge
    .upper_edge = upper edge
    .left_edge = left edge
    .right_edge = right edge
    .valleys = valleys
    .ridges = ridges
    .soft_joint = soft joint
    .field = field
    .band = band
    .border = border

# Where tile starts, and where it could start instead.
tiles-start = { $number ->
    [0] used
   *[other] instead { $number }
}
tiles-smallest_cut = { CUT($width) }

# What speaks for a start and against it.

tiles-start_because = { $why ->
    [round_corners] courses run on round the corners
    [host_joints] joints of the wall run on
    [no_sliver] on the joints of the wall there would be a sliver
    [courses_below] keeps the courses below
    [field_joints] keeps the joints of the field
   *[both_corners] alike from both corners
}
tiles-start_given = as given: { $said }
tiles-start_cuts = { $cuts ->
    [none] no tile is cut
    [over_half] no cut along an edge is under half a tile
    [under_half] some cuts{ $named ->
        [yes] {" "}at { THING($at) }
       *[no] {""}
    } are under half a tile, none is a sliver
   *[sliver] a cut{ $named ->
        [yes] {" "}at { THING($at) }
       *[no] {""}
    } is a sliver
}
tiles-start_even = cuts on opposite sides are even
tiles-start_joints = { $number } of { $of } edges of niches and windows lie on joints
tiles-start_sure = { $sure ->
    [no] within the survey's error a sliver may appear
    [cut] holds for every room that the survey allows: no cut along an edge is under { DOWN($cut) } in any of them
   *[yes] holds for every room that the survey allows
}
tiles-start_for = for it: { $said }
tiles-start_against = against it: { $said }
tiles-start_alike = much like the pick, with the joints elsewhere
tiles-start_little = the smallest cut is a little narrower
tiles-start_fewer = { $number } { $turned ->
    [yes] more
   *[no] fewer
} { $number ->
    [one] tile
   *[other] tiles
} to cut
tiles-start_wider = the smallest cut is { $turned ->
    [yes] narrower
   *[no] wider
}
tiles-start_no_sliver = { $turned ->
    [yes] a sliver
   *[no] no sliver
}
tiles-start_no_under_half = cuts { $turned ->
    [yes] under
   *[no] all over
} half a tile
tiles-start_edge = { $how ->
    [none] { $turned ->
        [yes] cuts
       *[no] no cuts
    } at { THING($at) }
   *[wider] cuts at { THING($at) } { $turned ->
        [yes] narrower
       *[no] wider
    }
}
tiles-start_more_even = cuts on opposite sides are { $turned ->
    [yes] less
   *[no] more
} even
tiles-start_more_joints = { $number } { $turned ->
    [yes] fewer
   *[no] more
} { $number ->
    [one] edge
   *[other] edges
} of niches and windows on joints
tiles-start_slack = stands { $turned ->
    [yes] less
   *[no] more
} error of the room
tiles-start_surer = { $turned ->
    [yes] narrower
   *[no] wider
} cuts if the survey is off
