# How boards cover a surface, and what holds them.

boards-area = Area of { PLACE($at) } covered with board
    .formula = sum of the boards' areas, holes taken off
    .source = coordinate method
    .result = { FIGURES($result, decimals: 2) }

boards-fasteners = Fasteners of { PLACE($at) }
    .formula = sum of the fasteners of the boards
    .name-edge = from edges
    .name-corner = from corners
    .unsaid-of = -
    .name-each = each board
    .value-each = { EACH("boards-fastened", $of, $each) }
    .result = { $result } { $result ->
        [one] fastener
       *[other] fasteners
    }

boards-fastened = { $one } { $two }

boards-practice = Sheets of { THING($at) } by plain practice
    .formula = full sheets from the lower left corner, the rest cut from what is left
    .source = common practice
    .unsaid-keeps = -
    .unsaid-faults = -
    .unsaid-numbers = -
    .result = { $result } { $result ->
        [one] sheet
       *[other] sheets
    }
    .argument-1 = { $keeps ->
            [yes] -
           *[no] Plain practice does not keep all rules here: { EACH("boards-fault", $numbers, $faults) }.
        }

boards-fault = { $two ->
        [BRD-101] { $one ->
            [one] { $one } member
           *[other] { $one } members
        } to add behind seams that this plan does not need (boards.bearing.min)
        [BRD-201] { $one ->
            [one] { $one } end joint closer than asked
           *[other] { $one } end joints closer than asked
        } (boards.stagger.end_joints)
        [BRD-202] { $one ->
            [one] { $one } place where four boards meet
           *[other] { $one } places where four boards meet
        } (boards.stagger.end_joints)
        [BRD-203] { $one ->
            [one] { $one } seam too close to a panel joint
           *[other] { $one } seams too close to a panel joint
        } (boards.offset.panel_joints)
        [BRD-204] { $one ->
            [one] { $one } board narrower than the least piece
           *[other] { $one } boards narrower than the least piece
        } (boards.piece.min)
        [BRD-205] { $one ->
            [one] { $one } limb narrower than asked
           *[other] { $one } limbs narrower than asked
        } (boards.limb.min)
       *[BRD-301] { $one ->
            [one] { $one } surface that no sheet may board
           *[other] { $one } surfaces that no sheet may board
        }
    }

# What is looked at before tile covers the boards.
boards-checks =
    .mortar = Floor boards lie in fresh mortar, combed with a { $notch } notch; none lies dry.
    .gaps = Gaps: { $gaps }; no board touches its neighbour.
    .edge_kept = Boards that the findings name keep the sheet's edge, and have the gap told there: { $least } at least.
    .cut_back = Boards that the findings name are cut back from the wall, and have the gap told there: { $most } at most.
    .foot = At floor, tub, tray and kerb { $gap } stays open and is filled with sealant, { $depth } deep; no mortar is in it.
    .fasteners = Fasteners are { $type }s at most { $spacing } apart, { $edge } or more from edges and { $corner } from corners; heads flush, none through the face.
    .zones = No fastener is in the zones that the drawings and the list of waterproofing name.
    .members = The members that the drawings show with heavy broken lines are in.
    .tape = Every seam and inside corner is filled and taped, { $tape } tape bedded in mortar.
boards-gap =
    .between = { $gap } between boards
    .perimeter = { $gap } at walls and ceiling
    .opening = { $gap } round openings
boards-spacing = { $surfaces ->
    [floor] { $floor } on floors
    [wall] { $wall } on walls and ceilings
   *[both] { $floor } on floors and { $wall } on walls and ceilings
}

# The page of a boarded surface.
boards-up = { $wall ->
    [yes] from the foot
   *[no] from the lower edge
}
boards-off_drawing = { $count ->
    [one] Corner { $one } is off the drawing. Figures run from corner { $first }.
   *[other] Corner { $one } is off the drawing; Corner { $two } is off the drawing. Figures run from corner { $first }.
}
# A board that is up already: under its mark and in the list, and the key of the hatching.
boards-standing = up
boards-kept = Hatched wide and called up: { $marks } { $count ->
    [one] is up already and stays as it is; nothing is cut for it.
   *[other] are up already and stay as they are; nothing is cut for them.
}
boards-many = At this scale marks cover some fasteners; the list has their number.
