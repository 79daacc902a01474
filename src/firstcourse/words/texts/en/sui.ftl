# Whether frame, panel and surface will carry tile, and what the layers do to heights.

# What to do that several findings have in common.
sui-remedies =
    .engineer_holds = An engineer first, then by computation this check holds: { EACH("sui-measure", $alone, between: ". Or: ") }.
    .engineer_none = An engineer first: no single measure makes this check hold.
    .whole_holds = The whole { WORD($kind) } passes with: { EACH("sui-measure", $whole, between: "; ") }.
    .whole_none = Nothing computed here makes the whole { WORD($kind) } pass: for design by a licensed engineer.
    .longest = These joists carry it over { DOWN($longest, feet: "no") } at most ({ WORD($governs) } governs).
    .add_member = Before boarding add a { WORD($member) } in each bay that is wider, so that none stand farther apart than { SPACED($limit) }, and enter them (framing, members).
    .lighter = Take lighter tile.
    .screw = Screw every plank down to every joist it crosses, with { $screws ->
        [two] two screws
        [three] three screws
       *[by_width] two screws, or three where it is wider than { THICK($wide) }
    }, and take up what is cupped, split or rotten.
    .ask = Ask { $named ->
        [yes] { $who }
       *[no] a licensed structural engineer
    }.
    .screw_layers = Screw the layers down well; a stiffer panel, or joists closer together, lessens it.
    .second_layer = A second layer of { THICK($layer) }, screwed to the first, makes it { $gained }, { $keeps ->
        [yes] which keeps it
       *[no] still short of it
    }.
    .use = Use { LIST($fit, between: " or ") }.
    .use_board = Use { EACH("sui-board", $fit, $standards, $known, between: " or ") }.
    .none_known = The rule book has none for this zone: ask its maker.
    .no_board = The rule book has no board for this zone: ask the board maker in writing.
    .leave_out = Leave out the retarder behind.

sui-measure = { $one ->
        [sister_full] Sister each joist over its whole length
        [sister_part] Sister each joist over the middle of its span
        [mid_support] Carry the joists at mid-span on a beam and posts
        [added_joists] Add a joist midway between the present ones
        [second_layer] Add a second panel layer, screwed to the first
        [thinner_bed] Set on board in a thin bed instead of a mortar bed
        [other_finish] Choose ceramic tile instead of stone
        [blocking] Add blocking between the joists (it spreads loads and steadies joists, but is counted as no stiffness here)
        [added_studs] Add a stud midway between the present ones
        [deeper_studs] Take studs of the next depth
        [thicker_steel] Take studs of the next thicker steel
        [ceiling_sister] Sister each ceiling joist over its whole length
        [ceiling_joists] Add a joist midway between the ceiling's present ones
       *[ceiling_support] Carry the ceiling joists at mid-span on a beam above or a wall below
    }

sui-board = { WORD($one) }{ $three ->
        [yes] {" "}({ $two })
       *[no] {""}
    }

# Joists.

SUI-101 = Joist spacing does not hold.
    .measured = { SPACED($measured, $limit) }
    .limit = at most { SPACED($limit) }

SUI-102 = Dead load does not hold.
    .measured = { PLAIN($measured) }
    .limit = at most { PLAIN($limit) }

SUI-103 = Bending does not hold.

SUI-104 = Shear does not hold.

SUI-105 = Bearing does not hold.

SUI-106 = Bearing length does not hold.
    .measured = { SPACED($measured, $limit) }
    .limit = at least { SPACED($limit) }

SUI-107 = Live deflection (finish) does not hold.

SUI-108 = Total deflection does not hold.

SUI-109 = Live deflection (code) does not hold.

SUI-110 = { $unknown ->
        [both] Species and grade
        [species] Species
       *[grade] Grade
    } unknown: the lowest of each design value in the rule book is taken.
    .stamp = Read the grade stamp on the joists and enter it.

SUI-111 = Only stiffness is judged for joists given by EI: not bending, shear, bearing, holes or deflection from shear.
    .tables = Hold the loads against the joist maker's tables.

SUI-112 = Ceiling joist spacing does not hold.
    .measured = { SPACED($measured, $limit) }
    .limit = at most { SPACED($limit) }

SUI-113 = The code's span tables hold no such load; this floor is judged by its joists' design values instead.
    .measured = { PLAIN($measured) }
    .limit = at most { PLAIN($limit) }
    .confirm = Have the building office or a licensed engineer confirm the floor with this sheet.

SUI-114 = What { THING($also) } weighs is not known; the joists are judged with it at { FIGURES($weight, decimals: 0) }.
    .enter = { $what ->
        [tub] Enter what it weighs filled (openings, weight).
        [kerb] Say what it is built of (shower, kerb, body: solid or framed).
       *[bench] Say what it is built as (benches, body: solid, framed or hung).
    }

SUI-115 = Cannot tell if this framing carries the boards: it runs more than { FIGURES($limit, decimals: 0) } off the way they are laid, so no edge runs along a member.
    .measured = { FIGURES($measured, decimals: 0) } off square{ $several ->
        [yes] ; { TAPE($apart) } apart, which is { TAPE($shorter_way) } and { TAPE($longer_way) } along the edges of boards
       *[no] {""}
    }
    .limit = at most { FIGURES($limit, decimals: 0) } off square
    .battens = Screw battens across it, square to the room, and enter them as the framing; or ask the board's maker or an engineer. Boards drawn here are only an estimate of sheets.

SUI-120 = { CAPITAL(WORD($cut)) } { $number }, { $what ->
        [hole_share] diameter
        [hole_edge] distance to an edge or another cut
        [notch_length_share] length
        [notch_clear_share] reach from the nearer support
        [notch_thick] thickness of the joist where it is stretched
       *[notch_depth_share] depth
    }: breaks the code's limit.
    .measured = { SPACED($measured, $limit) }
    .limit = { $what ->
        [hole_edge] at least { SPACED($limit) }
       *[notch_depth_share] at most { FIGURES($limit, decimals: 2) }
    }
    .design = For design by a licensed engineer; a cut joist is not judged by this check alone.

SUI-121 = A cut in an engineered joist is judged only by its maker.
    .ask_maker = Ask the joist maker or an engineer in writing.

SUI-130 = A slab, by its entry: nothing bends between joists, so neither frame nor panel is judged. What counts is how flat and how dry it is, its cracks and its joints.
    .enter = Enter { LIST($wanted) }.

# What lies on the joists.

SUI-201 = Panel under a point load{ $advised ->
        [yes] : the panel's span rating allows these joists; the limit is advice for tile.
       *[no] {" "}does not hold.
    }

SUI-202 = Panel under uniform load{ $advised ->
        [yes] : the panel's span rating allows these joists; the limit is advice for tile.
       *[no] {" "}does not hold.
    }

SUI-203 = Thickest panel layer does not hold.
    .measured = { THICK($measured) }
    .limit = at least { THICK($limit) }

SUI-204 = A panel layer of { THICK($measured) } counts as { THICK($counted) }, the next thinner one in the rule book.
    .measured = {""}
    .stamp = Read the span rating on its stamp and enter it (panels, ratings).

SUI-205 = Panel span rating does not hold.
    .measured = { SPACED($measured, $limit) }
    .limit = at most { SPACED($limit) }

SUI-206 = Panel bending does not hold.
    .measured = { FIGURES($measured, decimals: 0) }
    .limit = at most { FIGURES($limit, decimals: 0) }

SUI-207 = Nothing is set straight onto planks, neither boards nor tile: { $why }.
    .measured = no panel over the planks
    .limit = a panel of at least { THICK($limit) }
    .panel_over = Then screw a panel of that thickness or more to them, its long side across them and its joints off theirs, and enter it (panels); or take the planks up and lay panels on the joists.

SUI-208 = The panel over the planks is too thin to carry tile.
    .measured = { THICK($measured) }
    .limit = at least { THICK($limit) }
    .thicker = Then lay a thicker panel, or a second layer as thick as the limit.

SUI-209 = { $known ->
        [yes] { CAPITAL(WORD($deck)) }
       *[no] A panel of a kind that is not told
    }: too thin for the joists' spacing.
    .measured = { THICK($measured) }, joists { SPACED($spacing) } apart
    .limit = { $too_far ->
        [yes] joists at most { SPACED($limit) } apart
       *[no] at least { THICK($limit) } for joists up to { SPACED($up_to) } apart
    }
    .thicker = Set joists or blocking between, or take it up and lay what is thick enough.{ $known ->
        [yes] {""}
       *[no] {" "}Say what the panels are (panels, material): plywood may be thinner.
    } Joists are structure: local code and a licensed person decide first.

SUI-210 = { SUI-209 }
    .measured = { SUI-209.measured }
    .limit = { SUI-209.limit }
    .thicker = { SUI-209.thicker }

SUI-211 = Planks count as mass, not as stiffness, where the panel over them is judged.
    .joints = Keep the panel's joints off the planks', and its screws out of the joists.

SUI-212 = Cannot tell if { WORD($deck) } of { THICK($thickness) } carry tile on joists { SPACED($spacing) } apart: the rule book has no figure for them in { WORD($practice) } practice.

# Studs, and what hangs on boards.

SUI-301 = Stud spacing does not hold.
    .measured = { SPACED($measured, $limit) }
    .limit = at most { SPACED($limit) }

SUI-302 = Stud stiffness ({ $by }) does not hold.

SUI-303 = Steel thickness does not hold.

SUI-304 = The tiling is too heavy for { WORD($backing) }.
    .thinner = Take thinner tile, or a board whose maker lets it carry more.

SUI-305 = Small tile this heavy on { WORD($backing) } wants a solid bed.
    .limit = { $limit }, { PLAIN($share) } of what { WORD($backing) } carries
    .butter = Comb and butter so that no ridge stays open behind the tile.

SUI-310 = A gauge number means several steel thicknesses, so stiffness is not judged: 20 gauge is { $gauge }.
    .measured = gauge only
    .stamp = Read the thickness in mils off the stud's stamp, or ask the supplier, and enter it.

# How flat, plumb and level a surface is.

SUI-401 = { $laid ->
        [yes] Not flat enough for this tile under a straightedge; place: { $place }.
       *[no] Flatness, { WORD($edge) } straightedge: not flat enough for this tile.{ $handed_over ->
            [yes] {" "}It was rightly handed over as flat to { PLAIN($accepted) }; tile asks more.
           *[no] {""}
        }
    }
    .measured = { $laid ->
        [yes] { TAPE($measured) } under { TAPE($reach) }
       *[no] { BESIDE($measured, $limit) }
    }
    .limit = at most { FINE($limit) }
    .fill_or_grind = Fill or grind there; readings on a grid give the volume, the bags and the shims. { $caution }
    .ways = By computation: { $floor ->
        [yes] { EACH("sui-fill", $names, $litres, $bags, $deep, $off, between: ". Or: ") }
       *[no] { EACH("sui-straighten", $names, $studs, $deep, between: ". Or: ") }
    }.
    .with_care = { $caution }
    .rebuild = No single measure makes it flat: rebuild the worst part, or choose smaller tile.

SUI-402 = { SUI-401 }
    .measured = { SUI-401.measured }
    .limit = { SUI-401.limit }
    .fill_or_grind = { SUI-401.fill_or_grind }
    .ways = { SUI-401.ways }
    .with_care = { SUI-401.with_care }
    .rebuild = { SUI-401.rebuild }

sui-fill = { $one ->
        [smaller_tile] Choose a tile under the large-tile edge
        [patch] Fill every low spot to the plane through the highest ones: { sui-fill.much }
        [level_out] Pour self-levelling compound over the whole floor, level: { sui-fill.much }
       *[grind] Grind the high spots and fill the low ones to one plane: { sui-fill.much }, up to { TAPE($five) } ground off
    }
    .much = { FIGURES($two, decimals: 1) }, { $three } { $three ->
        [one] bag
       *[other] bags
    }, up to { TAPE($four) } deep

sui-straighten = { $one ->
        [shim] Shim the studs out to the proudest
       *[plane_down] Plane the proud studs down to the deepest
    }: { $two } { $two ->
        [one] stud
       *[other] studs
    }, up to { TAPE($three) }

SUI-403 = Against the best plane, { $high ->
        [yes] highest { sui-place.highs }{ $low ->
            [yes] ; lowest { sui-place.lows }
           *[no] {""}
        }
       *[no] lowest { sui-place.lows }
    }.
    .grind = Grind or plane the highest first; fill what is then still low. { $caution }
    .studs = The working lists every stud with what to shim or plane off.

sui-place =
    .highs = { $way ->
        [string] { EACH("sui-off.string", $high_off, $high_left, $high_on) }
        [out] { EACH("sui-off.out", $high_off, $high_left, $high_on) }
       *[up] { EACH("sui-off.up", $high_off, $high_left, $high_on) }
    }
    .lows = { $way ->
        [string] { EACH("sui-off.string", $low_off, $low_left, $low_on) }
        [out] { EACH("sui-off.out", $low_off, $low_left, $low_on) }
       *[up] { EACH("sui-off.up", $low_off, $low_left, $low_on) }
    }
    .unseen = { $way ->
        [string] { EACH("sui-spot.string", $left, $on) }
        [out] { EACH("sui-spot.out", $left, $on) }
       *[up] { EACH("sui-spot.up", $left, $on) }
    }

sui-off =
    .string = { TAPE($one, sign: "yes") } at left { TAPE($two) }
    .out = { TAPE($one, sign: "yes") } at left { TAPE($two) } out { TAPE($three) }
    .up = { TAPE($one, sign: "yes") } at left { TAPE($two) } up { TAPE($three) }

sui-spot =
    .string = left { TAPE($one) }
    .out = left { TAPE($one) } out { TAPE($two) }
    .up = left { TAPE($one) } up { TAPE($two) }

SUI-404 = { $laid ->
        [yes] The straightedges laid cannot tell how flat it is under { TAPE($reach) }.
       *[no] The readings stand too far apart to tell how flat it is under { TAPE($reach) }{ $everywhere ->
            [yes] {""}
           *[no] {" "}at { sui-place.unseen }{ $more ->
                [0] {""}
               *[other] {" "}and { $more } more
            }
        }.
    }
    .measured = { $laid ->
        [yes] { TAPE($measured) } under { TAPE($longest) }
       *[no] all readings between two parallel planes { FIGURES($measured) } apart
    }
    .limit = at most { TAPE($limit) } under { TAPE($reach) }
    .lay = Lay a straightedge of { TAPE($reach) } and enter the gaps.
    .lay_or_read = Lay a straightedge of { TAPE($reach) } where it looks worst and enter the gaps, or read again, at { TAPE($half) } apart or closer.

SUI-411 = The wall leans { $inwards ->
        [yes] into
       *[no] out of
    } the room over its height.
    .measured = { TAPE($measured) } over { TAPE($height) }
    .limit = at most { TAPE($limit) } over that height
    .fur = Fur the studs out with tapered strips, { UP($foot) } at the lowest board edge and { UP($top) } at the highest.

SUI-412 = Left as it is, the tile leans { $inwards ->
        [yes] over
       *[no] back from
    } the { WORD($over) }: at its top it stands { TAPE($measured) } { $inwards ->
        [yes] nearer
       *[no] farther back
    } than at the rim, and a plumb screen shows a gap that tapers by as much. Made plumb, boards and tile cover { TAPE($furred) } more of the rim.
    .measured = { TAPE($measured) } over { TAPE($tiled) } of tile
    .fur_and_lap = Fur before the boards go on, and see that they still lap the flange in front of it.
    .fur_top = Fur the top out before the boards go on; the lap at the rim hardly changes.

SUI-413 = In { THING($corner) } { THING($wall) } leans { $inwards ->
        [yes] in
       *[no] out
    }, so the last cut here gets { $wider ->
        [yes] wider
       *[no] narrower
    } towards the top.
    .measured = { TAPE($measured) } over { TAPE($tiled) } of tile
    .limit = at most { TAPE($limit) } before it shows
    .fur = Fur { THING($wall) } plumb, or keep the cut wide and measure it at its foot and its top.

SUI-414 = The floor rises from { THING($low) } to { THING($high) }: a level first course is cut { TAPE($measured) } higher at { THING($low) } than at { THING($high) }.
    .limit = at most { TAPE($limit) } before it shows
    .level = Level the floor, or start from a level line and scribe the lowest course, at least half a tile high.

# Materials in their places, water and damp.

SUI-501 = { CAPITAL(WORD($board)) } may not stand in a { WORD($zone) } zone{ $because ->
        [yes] : { $why }
       *[no] {""}
    }{ $unlisted ->
        [yes] , and the residential code has not listed it for wet tile since { NUMBER_OF($year) }
       *[no] {""}
    }.
    .measured = { WORD($zone) }
    .limit = zones: { $zones }

SUI-502 = { $membrane ->
        [yes] Membrane on the face
       *[no] The coated face of the board
    } and retarder behind trap moisture in the board.
    .measured = { PLAIN($measured) } barriers
    .limit = exactly { PLAIN($limit) }
    .one_barrier = Leave out the retarder behind: no plastic sheet, and facings of the insulation slashed.
    .outer_wall = Have the wall's barrier placed by whoever answers for the outer wall.

SUI-503 = Water that passes tile and board reaches the framing.
    .measured = no barrier
    .limit = exactly { PLAIN($limit) }
    .membrane = Put a membrane on the face of the board.

SUI-504 = In steam only a membrane on the face keeps vapour out of the board.
    .measured = no membrane on the face
    .limit = membrane on the face
    .membrane = Put the membrane on the face and leave out the retarder behind.

SUI-505 = The framing is too wet: it will shrink behind the tile.
    .measured = { PLAIN($measured) }
    .limit = at most { PLAIN($limit) }
    .dry = Let it dry and measure again before boarding.

SUI-507 = Near heat { WORD($board) } shields nothing by itself: wood behind it still gets hot.
    .clearances = Keep the clearances of the appliance's maker and of the local fire code.

SUI-508 = { CAPITAL(WORD($board)) } never stands over a vapour retarder: what gets in cannot dry out.
    .measured = retarder behind
    .limit = none

SUI-509 = This membrane does not keep out what it must here: { $material ->
        [crack_isolation] crack isolation membrane (ANSI A118.12), which holds no water
        [low_perm] bonded waterproof membrane of low permeance (ANSI A118.10, at most 0.5 perm by ASTM E96 method E)
       *[waterproof] bonded waterproof membrane (ANSI A118.10)
    }.
    .measured = { WORD($material) } in a { WORD($zone) } zone
    .limit = { $steam ->
        [yes] at most { PLAIN($limit) }
       *[no] zones: { $zones }
    }

SUI-510 = Nothing is set onto { WORD($over) }: { $why }.
    .measured = { WORD($over) }
    .take_out = Take it out down to sound panels or slab before boarding.

SUI-511 = This mortar does not last here: { $material ->
        [epoxy] epoxy mortar (ANSI A118.3; EN 12004 R2)
        [improved] improved modified dry-set mortar (ANSI A118.15; EN 12004 C2 S1)
        [modified] modified dry-set mortar (ANSI A118.4; EN 12004 C2)
        [organic_adhesive] organic adhesive (mastic, ANSI A136.1)
       *[unmodified] unmodified dry-set mortar (ANSI A118.1; EN 12004 C1)
    }.
    .measured = { WORD($material) } in a { WORD($zone) } zone
    .limit = zones: { $zones }

SUI-512 = This fastener does not last here: { $material ->
        [backer_screw] corrosion-resistant backer-board screw
        [drywall_screw] plasterboard screw, which rusts in mortar and whose head snaps
        [roofing_nail] hot-dipped galvanised roofing nail
        [stainless] stainless steel screw
       *[staple] staple, which holds too little
    }.
    .measured = { WORD($material) } in a { WORD($zone) } zone
    .limit = zones: { $zones }

SUI-513 = { $known ->
        [yes] { CAPITAL(WORD($class)) }
       *[no] Very absorbent
    } tile does not last on { $floor ->
        [yes] a floor
       *[no] a surface
    } in a { WORD($zone) } zone.
    .measured = { PLAIN($measured) } water absorption
    .limit = { EACH("sui-class", $fit, $shares) }
    .denser = Choose tile that takes up less water.

sui-class = { WORD($one) } (at most { PLAIN($two) })

SUI-514 = { CAPITAL(WORD($mortar)) } mortar does not bond tile that takes up no water.
    .measured = { WORD($mortar) }
    .limit = { $bonding }
    .use_mortar = Use { LIST($bonding, between: " or ") } mortar.

SUI-515 = The tile is too slippery for a floor that is walked on wet.
    .more_grip = Choose tile with more grip; reaching the limit alone does not prove it fit for showers.

SUI-516 = The slab is damp: membranes and polymer mortars on it may let go, and salts rise into the joints.
    .measured = { PLAIN($measured) } relative humidity
    .limit = at most { PLAIN($limit) } relative humidity
    .dry = Let it dry and measure again, or lay a moisture membrane whose maker allows this reading.

SUI-517 = The slab gives off much moisture: membranes and polymer mortars on it may let go.
    .measured = { PLAIN($measured) } in 24 h
    .limit = at most { PLAIN($limit) } in 24 h
    .dry = Measure the humidity inside the slab, or lay a moisture membrane whose maker allows this reading.

SUI-518 = The rule book has no limit for this moisture reading in practice '{ $practice }'.
    .measured = { PLAIN($measured) }{ $reading ->
        [slab_humidity] {" "}relative humidity
        [slab_emission] {" "}in 24 h
       *[wood] {""}
    }
    .ask_makers = Ask the makers of membrane and mortar what they allow.

SUI-519 = { CAPITAL(WORD($board)) } is no longer tiled directly on walls in this practice.
    .measured = { WORD($board) }
    .limit = a backer board

# Heights: doorways, fittings, falls.

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

SUI-604 = The { THING($also) } ends { $above ->
        [yes] too far above
       *[no] below
    } the finished floor.
    .measured = { TAPE($measured) } { $above ->
        [yes] above
       *[no] below
    }
    .limit = 0 to { TAPE($limit) } above
    .lower = Have a plumber lower it by { UP($by) } or more.
    .rings = Add extension rings of { UP($by) } to { TAPE($at_most) } in all; two wax rings are no ring.
    .bring_up = Have a plumber bring it up by { UP($by) } to { TAPE($at_most) }.

SUI-605 = The finished wall ends { $beyond ->
        [yes] beyond
       *[no] short of
    } the window of { THING($also) }.
    .measured = { TAPE($measured) }{ $furred ->
        [yes] , { TAPE($furring) } of furring with it
       *[no] {""}
    }
    .limit = { TAPE($from) } to { TAPE($to) } from the studs' faces
    .move = Have it moved { $beyond ->
        [yes] out
       *[no] back
    } by { UP($by) } or more before boarding.

SUI-606 = The edge trim ends { $above ->
        [yes] above
       *[no] below
    } the tile.
    .limit = { TAPE($limit) } (tile and bond coat), { TAPE($give) } either way
    .trim = Take trim of { TAPE($limit) }.

SUI-607 = The { THING($also) } ends { $below ->
        [yes] too far below the finished floor.
       *[no] above the finished floor: water stands round it.
    }
    .measured = { TAPE($measured) } { $below ->
        [yes] below
       *[no] above
    }
    .limit = 0 to { TAPE($limit) } below
    .raise = Raise its rim by { UP($by) } to { TAPE($measured) } with an extension.
    .lower = Lower its rim by { UP($measured) }.

SUI-608 = The depth window of { THING($also) } is met only with the wall furred plumb.
    .measured = { SUI-605.measured }
    .limit = { SUI-605.limit }
    .fur = Fur the wall as its own finding says, or have the valve moved.

SUI-610 = This steam room's ceiling { $known ->
        [yes] is
       *[no] may be
    } too level: what condenses there must run to a wall, or it drips on who sits below.
    .measured = { $known ->
        [yes] { $level ->
            [yes] level
           *[no] { FALL($measured) }
        }
       *[no] {""}
    }
    .limit = at least { FALL($limit) }
    .heights = Give its height at each corner.
    .frame = Frame it to fall { UP($down) } over the { TAPE($run) } from wall to wall, or half of that from its middle to both sides, before it is boarded; away from the door and from seats.

SUI-611 = Walls of this room are in steam, which rises; nothing says that the ceiling keeps it in.
    .measured = { $told ->
        [yes] zone: { WORD($zone) }
       *[no] no exposure given
    }
    .limit = a membrane of at most { PLAIN($limit) } on its face
    .exposure = Give the ceiling an exposure with zone: steam, membrane: yes and membrane_kind: low_perm, or have whoever closes it do the same.

# What was not judged, and by whom else.

SUI-900 = { RULE($caution) }

SUI-901 = Cannot tell if this frame carries tile: the rule book has { $partly ->
        [yes] no value of { $missing }
       *[no] no loads and design values
    } of { WORD($practice) } practice on { $day }. Spacing, panels, flatness, materials, moisture and build-up are judged as far as it has their rules.
    .carries = Ask { $named ->
        [yes] { $who }
       *[no] a structural engineer
    } if this carries the weight of what is laid here{ $bends ->
        [yes] , and bends no more than 1/{ NUMBER_OF($divisor) } of its span under { $floor ->
            [yes] live load
           *[no] its load
        }{ $borrowed ->
            [yes] {" "}(the limit of { WORD($lender) } practice)
           *[no] {""}
        }
       *[no] {""}
    }.
    .usual = Under other finishes a floor there may bend { NUMBER_OF($usual) } of its span.

SUI-902 = Not judged: { $why }.
    .correct = Correct the entry, or have an engineer judge it by the local code.

SUI-910 = Not judged: { LIST($also) } ({ $wanted }).
    .engineer = Have an engineer, or who is licensed for it, confirm the frames by the local code.
    .enter = Enter what stands in brackets, and `firstcourse judge` says if they will carry tile.
