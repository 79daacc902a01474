# What the taped readings prove, and what stands where.

SUR-101 = { $single ->
        [yes] This reading is the likely wrong one: { EACH("sur-suspect", $readings, $errors, $longer) }.
       *[no] The readings contradict each other, and any one of these may be the wrong one: { EACH("sur-suspect", $readings, $errors, $longer) }.
    }
    .measured = standardised residual { FIGURES($measured, decimals: 1) }
    .limit = at most { FIGURES($limit) }
    .again = Measure { $readings } again before anything is bought.
    .again_and_more = Measure { LIST($readings, last: "or") } again; where they stand, one more diagonal tells which is wrong.

sur-suspect = { $one } about { $two } too { $three ->
        [yes] long
       *[no] short
    }

SUR-102 = { $nothing ->
        [yes] Nothing checks this room: there are just as many readings as fix it:
       *[no] Nothing checks { $count ->
            [one] corner
           *[other] corners
        } { $corners }:
    } a misread tape would go unseen.
    .tape = Tape { $readings } as well.
    .sides_again = Tape each of its sides again.

SUR-103 = Two different shapes fit these readings equally well; { $mirrored ->
        [yes] they are mirror images with { SUR-103.corners } on the one side of { $line } or on the other.
       *[no] they differ at { SUR-103.corners }.
    }
    .corners = { $count ->
        [one] corner
       *[other] corners
    } { $corners }
    .tape = Tape { $reading } as well: it differs most between the two.
    .sides_again = No distance between two corners tells them apart: check the order of the corners, and tape each side again.

SUR-104 = The wall leans { $inwards ->
        [yes] in
       *[no] out
    } over its height.
    .see_judgement = The judgement says what to fur, and what it does to tub lap and corner cuts.

SUR-105 = The sides are taped to a finish, and boards stand on studs: the room will be larger by what comes off the walls.
    .price_only = Take this plan for pricing only.
    .tape_studs = Tape again between bare studs before anything is cut.

SUR-106 = As taped the { WORD($thing) } would not end at this wall; it is taken to stand at it.
    .tape_gap = If it does stand off the wall, tape the gap: what is wider than the limit is drawn as it is.

SUR-107 = Between the { WORD($thing) } and this wall lies a gap too narrow for a floor.
    .tape_again = Tape it again: enter left, out and its size so that it ends at the wall, or farther off.

SUR-108 = The { WORD($thing) } stands on a { WORD($member) }.
    .move = Move it { $over ->
        [wall] { $ways ->
            [both] { $forth } to the right or { $back } to the left
            [forth] { $forth } to the right
           *[back] { $back } to the left
        }
       *[floor] { $ways ->
            [both] { $forth } away from { $also } or { $back } towards { $also }
            [forth] { $forth } away from { $also }
           *[back] { $back } towards { $also }
        }
    }, or head the { WORD($member) } off.
    .no_bay = There is no bay it fits into: head the { WORD($member) } off.
    .licensed = Cutting or heading off a { WORD($member) } is structure: local code and a licensed person decide first, and no pipe is moved but by whoever is licensed for it.

SUR-109 = Boards are planned across the doorway '{ $also }', which only the floor tells of.
    .measured = from { $left } to { $right } along the wall
    .enter_in_wall = Enter it among the wall's openings as well (kind: door), with bottom and height, or limit the wall's boards to one side of it.

SUR-111 = { $also } is not sure enough to cut to: lines that meet at a flat angle leave it loose.
    .measured = within { UP($measured) }
    .limit = within { $limit }
    .tape = Tape { $reading } as well: of all corners that see each other it helps most.

SUR-112 = Nothing may be driven or drilled here: { $why }.
    .measured = from { $left } to { $right } along the wall, from { $bottom } to { $top } up
    .mark = Mark it on the studs before boards hide it. The plan sets no fastener there.
