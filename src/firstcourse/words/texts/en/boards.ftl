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
