# Frames of floors, walls and ceilings: what was found, and every check of it.

# What is checked, as it stands in lists and verdicts.
frames-check = { $one ->
        [dead_load] dead load
        [joist_spacing] joist spacing
        [ceiling_joist_spacing] ceiling joist spacing
        [bending] bending
        [shear] shear
        [bearing] bearing
        [bearing_length] bearing length
        [live_deflection_finish] live deflection (finish)
        [live_deflection_code] live deflection (code)
        [total_deflection] total deflection
        [mean_dead_load] mean dead load of a joist
        [panel_rating] panel span rating
        [panel_bending] panel bending
        [panel_uniform] panel under uniform load
        [panel_point] panel under a point load
        [panel_thickest] thickest panel layer
        [stud_spacing] stud spacing
        [stud_stiffness_tile] stud stiffness (tile)
        [stud_stiffness_code] stud stiffness (code)
       *[steel_thickness] steel thickness
    }
frames-check_holds = holds
frames-check_fails = DOES NOT HOLD
frames-check_advised = advised, not kept

# What loads are of.
frames-of = { $one ->
        [joists] joists
        [panel] panel
        [planks] planks
        [membrane] membrane
        [levelling_compound] levelling compound
        [ceiling_above] joists and plain ceiling
        [floor_above] floor above
        [floor_layers] layers of the floor
        [board_mortar] mortar under the boards
        [board] board
        [heating] mortar round the heating
        [mortar_bed] mortar bed
        [mortar] mortar under the tile
        [tile] tile
        [bed] bed
        [kerb] kerb
        [filled_tub] filled tub
        [frame] frame
        [body] body
       *[thing] thing
    }
frames-row = { frames-of } { FIGURES($two) }
frames-mass_row = { frames-of } { FIGURES($two) }, { FIGURES($three) }
frames-of_two = { INCH_POUND($one, decimals: 2) }
frames-of_whole = { INCH_POUND($one, decimals: 0) }
frames-solid_step = { frames-of }: { INCH_POUND($two, decimals: 3) } × { INCH_POUND($three, decimals: 2) } lb for a cubic foot = { INCH_POUND($four, decimals: 1) } lb
frames-area_step = { frames-of }: { INCH_POUND($two, decimals: 2) } / { INCH_POUND($four, decimals: 3) } = { INCH_POUND($three, decimals: 2) } psf

# The data sheet.
frames-facts = found or entered
    .named = -
    .name-use = use
    .value-use = { $use ->
        [sleeping] sleeping room
       *[living] living room, bath
    }
    .name-above = above
    .value-above = { $above ->
        [above_attic] attic without storage
        [above_attic_storage] attic with limited storage
       *[above_floor] a floor of living rooms
    }
    .name-span = clear span, face to face
    .value-span = { SPAN($span) }
    .name-height = clear height
    .value-height = { SPACED($height) }
    .name-spacing = { $kind ->
        [wall] studs, centre to centre
       *[floor] joists, centre to centre
    }
    .value-spacing = { SPACED($spacing) }
    .name-unbroken = unbroken over a support
    .value-unbroken = other spans not known
    .name-run = unbroken over spans of
    .value-run = { EACH("frames-span", $run, between: " + ") }
    .name-size = { $kind ->
        [wall] studs
       *[floor] joists
    }
    .value-size-with-plies = { $size }, { SPACED($width) } × { SPACED($depth) }, { $plies } side by side
    .value-size = { $size }
    .name-each = joists
    .value-each = engineered or steel, { $plies } side by side, EI { INCH_POUND($each, millions: "yes") } lb·in² each by their maker
    .name-species = species, grade
    .value-species = { frames-lumber.species }, { frames-lumber.grade }
    .name-e = design values
    .value-e-with-fb = Fb { FIGURES($fb) }, CF { NUMBER_OF($size_factor) }, Fv { FIGURES($fv) }, Fcp { FIGURES($fc_perp) }, E { FIGURES($e) } ({ SOURCE($values) })
    .value-e = E { FIGURES($e) }
    .name-web = studs
    .value-web-with-steel = steel, web { SPACED($web) }
    .value-web = steel, web { SPACED($web) }, gauge only: mils not known
    .name-steel = thickness
    .value-steel = { PLAIN($steel) }
    .name-flange = flanges
    .value-flange = { SPACED($flange) }
    .name-inertia = I by the maker
    .value-inertia = { NUMBER_OF($inertia) } in⁴
    .name-bearing = bearing at the ends
    .value-bearing = { SPACED($bearing) }
    .name-layers = panel on the joists
    .value-layers = { EACH("frames-layer", $layers, $ratings, between: " + ") }, { $glued ->
        [yes] glued and screwed
       *[no] not glued
    }
    .name-panel = panel thickness in all
    .value-panel = { THICK($panel) }
    .name-finish = finish
    .value-finish = { $finish ->
        [stone] stone
       *[ceramic] ceramic
    } tile
    .name-live = live load
    .value-live = { PLAIN($live) }
    .name-dead = dead load
    .value-dead = { FIGURES($dead) }, layers below
    .name-areas = dead load on parts
    .value-areas = { EACH("frames-area_fact", $areas, $area_loads, $area_sizes, between: "; ") }
    .name-points = lasting loads on one joist
    .value-points = { EACH("frames-point_fact", $points, $points_at, between: "; ") }
    .name-cuts = cuts in the joists
    .value-cuts = { EACH("frames-cut_fact", $cuts, $cut_sizes, $cut_places, between: "; ") }
    .name-sister = sister
    .value-sister = a second ply over the middle { PERCENT($sister) } of the span
frames-span = { SPACED($one) }
frames-layer = { $one } in ({ $two })
frames-area_fact = { THING($one) } { FIGURES($two, decimals: 1) } over { FIGURES($three, decimals: 1) }
frames-point_fact = { PLAIN($one) } at { SPACED($two) } from an end
frames-cut_fact = { WORD($one) } { SPACED($two) }, { SPACED($three) } from the nearer support
frames-lumber = lumber
    .species = { $species ->
        [species_dfl] Douglas fir-larch
        [species_hf] hem-fir
        [species_spf] spruce-pine-fir
        [species_sp] southern pine
       *[unknown] species not known
    }
    .grade = { $grade ->
        [grade_ss] Select Structural
        [grade_no1] No. 1
        [grade_no2] No. 2
        [grade_no3] No. 3
        [grade_stud] Stud
        [grade_construction] Construction
        [grade_standard] Standard
        [grade_utility] Utility
       *[unknown] grade not known
    }

# Assumed.
frames-joists_weigh = Joists and ceiling below weigh { PLAIN($load) } beside panel and layers.
frames-no_stiffness = Boards, mortar and tile add mass and no stiffness.
frames-lumber_lowest = { $unknown ->
        [both] Species and grade
        [species] Species
       *[grade] Grade
    } unknown: the lowest of each design value in the rule book is taken.
frames-load_taken = { CAPITAL(THING($of)) }: { PLAIN($load) } taken, for the job does not say.
frames-tub_water = A tub's water is counted with the lasting loads, beside the full live load.
frames-parts_do_most = Loads on parts of the floor stand where they do most along the joists.
frames-other_spans = Other spans of the unbroken joists are not known: counted as a simple span.
frames-brittle_finish = Tile counts as a brittle finish.
frames-lateral_load = Sideways load { PLAIN($load) }.
frames-stud_alone = The stud alone: boards add no stiffness.
frames-flanges = Flanges { SPACED($width) }; section without lips, whole.

# Left open.
frames-walls_on_floor = Walls that stand on the floor, and what hangs on them.
frames-beams = Beams, posts, hangers and footings that carry the joists.
frames-vibration = Vibration; rot, splits and insects.
frames-bearing_not_known = Bearing at the supports, whose length was not entered.
frames-ei_strength = Bending, shear and bearing strength, web stiffeners, holes and deflection from shear of joists given by EI: their maker's tables.
frames-hanging_mass = How much mass boards and fasteners may hang overhead: no limit is published for this practice; ask the board's maker.
frames-ceiling_beams = Beams, hangers and plates that carry the joists.
frames-wall_loads = Load from above on the studs; wind; fastening of the plates.

frames-question = { $holds ->
        [yes] Every check of this { WORD($kind) } holds as entered. Please confirm members, supports and loads as found, and what stands under assumed and left open.
       *[no] As entered this { WORD($kind) } does not hold in { $failing }. Please design what makes it carry the layers below within the limits of the calculation sheet, or confirm it as it is.
    }

# Loads.
frames-dead_load = Dead load of the floor
    .named = -
    .formula = sum of the layers, each thickness × density
    .source = panel and joists: { SOURCE("mass.panel") }; layers as entered; limit: { SOURCE($rule) }
    .name-loads = made of
    .value-loads = { EACH("frames-row", $of, $loads, between: ", ") }
    .step-1 = { EACH("frames-of_two", $loads, between: " + ") } = { INCH_POUND($result, decimals: 2) } psf

frames-ceiling_dead_load = Dead load of the ceiling
    .named = -
    .formula = table's dead load + each layer's thickness × density
    .source = { SOURCE($rule) }; layers as entered
    .name-loads = made of
    .value-loads = { frames-dead_load.value-loads }
    .step-1 = { frames-dead_load.step-1 }

frames-area_load = Dead load, { THING($also) }
    .named = -
    .formula = structure + what stands there, each by its mass / area
    .source-with-assumed = { SOURCE($rule) }; { SOURCE($assumed) }; volumes and layers of this plan
    .source = { SOURCE($rule) }; volumes and layers of this plan
    .name-area = area
    .value-area = { FIGURES($area) }
    .name-loads = under it
    .value-loads = { frames-dead_load.value-loads }
    .name-rows = what stands there
    .value-rows = { EACH("frames-mass_row", $rows, $mass, $psf, between: "; ") }
    .step-1-with-solid = { EACH("frames-solid_step", $solid, $volume, $density, $solid_mass, between: "\u000A") }
    .step-2-with-rows = { EACH("frames-area_step", $rows, $mass, $psf, $area, between: "\u000A") }
    .step-3-with-rows = { EACH("frames-of_two", $loads, between: " + ") } + { EACH("frames-of_two", $psf, between: " + ") } = { INCH_POUND($result, decimals: 2) } psf
    .step-3 = { frames-dead_load.step-1 }

frames-joist_share = Loads on parts of the floor that joist { $joist } carries, the most of any
    .named = -
    .formula = the strip half-way to each neighbour × (load there - layers of the floor)
    .source = where each stands on the plan, and the joists as entered
    .name-spacing = spacing
    .value-spacing = { SPACED($spacing) }
    .step-1-with-part_start = { EACH("frames-share_from", $parts, $part_width, $part_length, $part_load, $part_line, $part_start, between: "\u000A") }
    .step-1 = { EACH("frames-share", $parts, $part_width, $part_length, $part_load, $part_line, between: "\u000A") }
    .step-2 = { EACH("frames-of_two", $part_load, between: " + ") } = { INCH_POUND($result, decimals: 2) } lb
frames-share = { THING($one) }, { INCH_POUND($two, decimals: 2) } in wide and { INCH_POUND($three) } in long: { INCH_POUND($four, decimals: 2) } / { INCH_POUND($three) } = { INCH_POUND($five, decimals: 4) } lb/in
frames-share_from = { THING($one) }, { INCH_POUND($two, decimals: 2) } in wide and { INCH_POUND($three) } in long from { INCH_POUND($six) } in: { INCH_POUND($four, decimals: 2) } / { INCH_POUND($three) } = { INCH_POUND($five, decimals: 4) } lb/in

frames-mean_dead_load = Mean dead load along joist { $joist }, with what is built on a part of the floor
    .named = -
    .formula = load of the whole floor + what stands on this joist / (span × spacing)
    .name-load = on this joist
    .value-load = { FIGURES($load, decimals: 1) }
    .name-span = L
    .value-span = { SPACED($span) }
    .step-1 = span × spacing = { INCH_POUND($span) } × { INCH_POUND($spacing) } / 144 = { INCH_POUND($area, decimals: 3) } sq ft
    .step-2 = { INCH_POUND($even, decimals: 2) } + { INCH_POUND($load, decimals: 2) } / { INCH_POUND($area, decimals: 3) } = { INCH_POUND($result, decimals: 2) } psf

# Lengths as found.
frames-joist_spacing = Joist spacing
    .formula = as found
    .result = { SPACED($result, $limit) }
    .value-limit = at most { SPACED($limit) }
frames-ceiling_joist_spacing = Spacing of the ceiling joists
    .formula = as found
    .result = { SPACED($result, $limit) }
    .value-limit = at most { SPACED($limit) }
frames-stud_spacing = Stud spacing
    .formula = as found
    .result = { SPACED($result, $limit) }
    .value-limit = at most { SPACED($limit) }
frames-bearing_length = Bearing length
    .formula = as found
    .result = { SPACED($result, $limit) }
    .value-limit = at least { SPACED($limit) }
frames-panel_thickest = Thickest panel layer
    .formula = as found
    .result = { THICK($result) }
    .value-limit = at least { THICK($limit) }
frames-steel_thickness = Steel thickness
    .formula = as found
    .result = { PLAIN($result) }
    .value-limit = at least { PLAIN($limit) }

# Joists.
frames-joist_section = Loads along one joist, section and stiffness
    .named = -
    .formula = w = load × spacing; S = b d² / 6; I = b d³ / 12
    .name-span = L
    .value-span = { SPACED($span) }
    .name-spacing = spacing
    .value-spacing = { SPACED($spacing) }
    .name-size = joist
    .value-size = { $size } { frames-lumber.species }, { frames-lumber.grade }
    .name-plies = plies
    .name-run = spans in order
    .value-run = { EACH("frames-span", $run, between: " + ") }
    .step-1 = w_live = { INCH_POUND($live) } psf × { INCH_POUND($spacing) } in / 144 = { INCH_POUND($w_live, decimals: 3) } lb/in
    .step-2 = w_dead = { INCH_POUND($dead, decimals: 2) } psf × { INCH_POUND($spacing) } in / 144 = { INCH_POUND($w_dead, decimals: 3) } lb/in
    .step-3 = S = b d² / 6 = { INCH_POUND($width) } × { INCH_POUND($depth) }² / 6 = { INCH_POUND($modulus, decimals: 3) } in³
    .step-4 = I = b d³ / 12 = { INCH_POUND($width) } × { INCH_POUND($depth) }³ / 12 = { INCH_POUND($inertia, decimals: 2) } in⁴
    .step-5 = EI = { INCH_POUND($e, decimals: 0) } psi × { INCH_POUND($inertia, decimals: 2) } in⁴ = { INCH_POUND($ei, millions: "yes") } lb·in²
    .argument-1-with-run = Coefficients by the theorem of three moments, live load where it does most / dead load everywhere: moment { INCH_POUND($moment, decimals: 4, between: " / ") }, shear { INCH_POUND($shear, decimals: 4, between: " / ") }, reaction { INCH_POUND($reaction, decimals: 4, between: " / ") }, deflection { INCH_POUND($deflection, decimals: 5, between: " / ") } (as a share of the span it lies in).
    .argument-1-with-moment = The joist runs over a support, its other spans not known: moment and deflection as of a simple span, shear and reaction as beside the middle support of two equal spans (5/8 and 5/4).

frames-joist_stiffness = Loads along one joist, section and stiffness
    .named = -
    .formula = w = load × spacing
    .source = EI as entered from the joist's maker
    .name-span = L
    .value-span = { SPACED($span) }
    .name-spacing = spacing
    .value-spacing = { SPACED($spacing) }
    .name-run = spans in order
    .value-run = { EACH("frames-span", $run, between: " + ") }
    .step-1 = { frames-joist_section.step-1 }
    .step-2 = { frames-joist_section.step-2 }
    .step-3 = EI = { INCH_POUND($each, millions: "yes") } lb·in² as entered from the maker × { $plies } = { INCH_POUND($ei, millions: "yes") } lb·in²
    .argument-1-with-run = { frames-joist_section.argument-1-with-run }
    .argument-1-with-moment = { frames-joist_section.argument-1-with-moment }

frames-bending = Bending stress
    .title-with-joist = Bending stress, joist { $joist }
    .named = -
    .formula = fb = M / S ≤ Fb' = Fb · CD · CF · Cr
    .step-1-with-c = M = { INCH_POUND($c) } w L² = { INCH_POUND($c) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) }² = { INCH_POUND($uniform, decimals: 0) } lb·in
    .step-1 = M = (c_live w_live + c_dead w_dead) L² = ({ INCH_POUND($c_live, decimals: 4) } × { INCH_POUND($w_live, decimals: 3) } + { INCH_POUND($c_dead, decimals: 4) } × { INCH_POUND($w_dead, decimals: 3) }) × { INCH_POUND($span) }² = { INCH_POUND($uniform, decimals: 0) } lb·in
    .step-2-with-points = { EACH("frames-point_moment", $points, $points_at, $span, $points_moment, between: "\u000A") }
    .step-3-with-part_start = { EACH("frames-part_moment_from", $parts, $part_line, $part_length, $part_start, $part_moment, between: "\u000A") }
    .step-3-with-parts = { EACH("frames-part_moment", $parts, $part_line, $part_length, $span, $part_moment, between: "\u000A") }
    .step-4-with-points = { frames-all_moments }
    .step-4-with-parts = { frames-all_moments }
    .step-5-with-sister = over the sister: fb = M / 2 S = { INCH_POUND($moment, decimals: 0) } / (2 × { INCH_POUND($modulus, decimals: 3) }) = { INCH_POUND($over_sister, decimals: 0) } psi
    .step-5 = fb = M / S = { INCH_POUND($moment, decimals: 0) } / { INCH_POUND($modulus, decimals: 3) } = { INCH_POUND($result, decimals: 0) } psi
    .step-6-with-sister = at its end, { INCH_POUND($sister_end, decimals: 1) } in from the support: M = w x (L - x) / 2 + the loads beside it = { INCH_POUND($end_moment, decimals: 0) } lb·in; fb = { INCH_POUND($end_moment, decimals: 0) } / { INCH_POUND($modulus, decimals: 3) } = { INCH_POUND($at_end, decimals: 0) } psi
    .step-7 = Fb' = Fb CD CF Cr = { INCH_POUND($value) } × { INCH_POUND($duration) } × { INCH_POUND($size_factor) } × { INCH_POUND($repetition) } = { INCH_POUND($limit, decimals: 0) } psi
frames-all_moments = M = { INCH_POUND($moment, decimals: 0) } lb·in, the greatest of each added
frames-point_moment = + P a (L - a) / L = { INCH_POUND($one) } × { INCH_POUND($two) } × ({ INCH_POUND($three) } - { INCH_POUND($two) }) / { INCH_POUND($three) } = { INCH_POUND($four, decimals: 0) } lb·in
frames-part_moment = + { THING($one) }, { INCH_POUND($three) } in of it in the middle: w c (2 L - c) / 8 = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × (2 × { INCH_POUND($four) } - { INCH_POUND($three) }) / 8 = { INCH_POUND($five, decimals: 0) } lb·in
frames-part_moment_from = + { THING($one) }, { INCH_POUND($three) } in of it from { INCH_POUND($four) } in, w = { INCH_POUND($two, decimals: 4) } lb/in: R a + R² / (2 w), R = w c (L - a - c / 2) / L, = { INCH_POUND($five, decimals: 0) } lb·in

frames-shear = Shear stress
    .title-with-joist = Shear stress, joist { $joist }
    .named = -
    .formula = fv = 1.5 V / (b d) ≤ Fv' = Fv · CD, V at a joist's depth from the support
    .step-1-with-c = V = { INCH_POUND($c) } w L = { INCH_POUND($c) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) } = { INCH_POUND($at_support, decimals: 0) } lb at the support
    .step-1 = V = (c_live w_live + c_dead w_dead) L = ({ INCH_POUND($c_live, decimals: 4) } × { INCH_POUND($w_live, decimals: 3) } + { INCH_POUND($c_dead, decimals: 4) } × { INCH_POUND($w_dead, decimals: 3) }) × { INCH_POUND($span) } = { INCH_POUND($at_support, decimals: 0) } lb at the support
    .step-2-with-points = { frames-ends.points }
    .step-3-with-part_lever = { frames-ends.placed }
    .step-3-with-part_against = { frames-ends.against }
    .step-3-with-parts = { frames-ends.whole }
    .step-4-with-ends = less w d = { INCH_POUND($w, decimals: 3) } × { INCH_POUND($depth) }, plus these { INCH_POUND($ends, decimals: 0) } lb: V = { INCH_POUND($force, decimals: 1) } lb
    .step-4 = less w d = { INCH_POUND($w, decimals: 3) } × { INCH_POUND($depth) }: V = { INCH_POUND($force, decimals: 1) } lb
    .step-5 = fv = 1.5 V / (b d) = 1.5 × { INCH_POUND($force, decimals: 1) } / ({ INCH_POUND($width) } × { INCH_POUND($depth) }) = { INCH_POUND($result, decimals: 0) } psi
    .step-6 = Fv' = Fv CD = { INCH_POUND($value) } × { INCH_POUND($duration) } = { INCH_POUND($limit, decimals: 0) } psi

frames-ends = forces at an end
    .points = { EACH("frames-point_end", $points, $points_at, $points_end, between: "\u000A") }
    .placed = { EACH("frames-part_placed", $parts, $part_line, $part_length, $part_lever, $span, $part_end, between: "\u000A") }
    .against = { EACH("frames-part_against", $parts, $part_against, $part_length, $span, $part_end, between: "\u000A") }
    .whole = { EACH("frames-part_whole", $parts, $part_end, between: "\u000A") }
frames-point_end = point load of { INCH_POUND($one) } lb at { INCH_POUND($two) } in: at most { INCH_POUND($three, decimals: 1) } lb at an end
frames-part_placed = { THING($one) }, at the support that is nearer: w c × { INCH_POUND($four) } / L = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × { INCH_POUND($four) } / { INCH_POUND($five) } = { INCH_POUND($six, decimals: 1) } lb
frames-part_against = { THING($one) }, against a support: w c (1 - c / (2 L)) = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × (1 - { INCH_POUND($three) } / (2 × { INCH_POUND($four) })) = { INCH_POUND($five, decimals: 1) } lb
frames-part_whole = { THING($one) }: all of it, the joist running over supports, { INCH_POUND($two, decimals: 1) } lb

frames-bearing = Bearing pressure
    .title-with-joist = Bearing pressure, joist { $joist }
    .named = -
    .formula = fc = R / (b · bearing) ≤ Fcp
    .step-1-with-c = R = { INCH_POUND($c) } w L = { INCH_POUND($c) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) } = { INCH_POUND($uniform, decimals: 0) } lb
    .step-1 = R = (c_live w_live + c_dead w_dead) L = ({ INCH_POUND($c_live, decimals: 4) } × { INCH_POUND($w_live, decimals: 3) } + { INCH_POUND($c_dead, decimals: 4) } × { INCH_POUND($w_dead, decimals: 3) }) × { INCH_POUND($span) } = { INCH_POUND($uniform, decimals: 0) } lb
    .step-2-with-points = { frames-ends.points }
    .step-3-with-part_lever = { frames-ends.placed }
    .step-3-with-part_against = { frames-ends.against }
    .step-3-with-parts = { frames-ends.whole }
    .step-4-with-ends = with these { INCH_POUND($ends, decimals: 0) } lb: R = { INCH_POUND($force, decimals: 1) } lb
    .step-5 = fc = R / (b × bearing) = { INCH_POUND($force, decimals: 1) } / ({ INCH_POUND($width) } × { INCH_POUND($bearing) }) = { INCH_POUND($result, decimals: 0) } psi

frames-live_deflection = Live-load deflection ({ $by })
    .named = -
    .formula-with-sister = { frames-bent.formula-with-sister }
    .formula = { frames-bent.formula }
    .name-span = L
    .value-span = { SPACED($span) }
    .step-1-with-sister = { frames-bent.g }
    .step-2-with-sister = Δ = { frames-bent.beside } = { INCH_POUND($deflection, figures: 4) } in
    .step-2 = Δ = { frames-bent.plain } = { INCH_POUND($deflection, figures: 4) } in
    .step-3 = L / Δ = { INCH_POUND($span) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }

frames-total_deflection = Deflection under live and dead load
    .title-with-joist = Deflection under live and dead load, joist { $joist }
    .named = -
    .formula-with-sister = { frames-bent.formula-with-sister }, live + dead + further loads
    .formula = { frames-bent.formula }, live + dead + further loads
    .name-span = L
    .value-span = { SPACED($span) }
    .step-1 = live: Δ = { INCH_POUND($live, figures: 4) } in, as above
    .step-2-with-sister = dead: { frames-bent.g }
    .step-3-with-sister = dead: Δ = { frames-bent.beside } = { INCH_POUND($dead, figures: 4) } in
    .step-3 = dead: Δ = { frames-bent.plain } = { INCH_POUND($dead, figures: 4) } in
    .step-4-with-points = point loads: Σ P a (3 L² - 4 a²) / (48 EI), a from the nearer support = { INCH_POUND($points_deflection, figures: 4) } in
    .step-5-with-part_start = { EACH("frames-part_bent_from", $parts, $part_line, $part_length, $part_start, $part_deflection, between: "\u000A") }
    .step-5-with-parts = { EACH("frames-part_bent", $parts, $part_line, $part_length, $span, $ei, $part_deflection, between: "\u000A") }
    .step-6-with-points = { frames-bent.all }
    .step-6-with-parts = { frames-bent.all }
    .step-7 = L / Δ = { INCH_POUND($span) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }
    .argument-1 = With creep of the dead load in the long term, times { NUMBER_OF($creep) }: { FIGURES($in_time) }; no limit is set for it here.

frames-bent = how joists bend
    .formula-with-sister = Δ = 2 ∫ M (x / 2) / EI dx to midspan, EI doubled over the middle { PERCENT($sister) }
    .formula = Δ = c w L⁴ / EI; c = 5/384 over one span
    .g = G = w (L x³ / 3 - x⁴ / 4) / 4, w = { INCH_POUND($w, decimals: 3) } lb/in: to the sister's end, x = { INCH_POUND($sister_end) } in, G1 = { INCH_POUND($to_end, decimals: 0) }; to midspan, G2 = { INCH_POUND($to_middle, decimals: 0) }
    .beside = 2 (G1 / EI + (G2 - G1) / (2 EI)) = 2 × ({ INCH_POUND($to_end, decimals: 0) } + ({ INCH_POUND($to_middle, decimals: 0) } - { INCH_POUND($to_end, decimals: 0) }) / 2) / { INCH_POUND($ei, millions: "yes") }
    .plain = c w L⁴ / EI = { INCH_POUND($c, figures: 5) } × { INCH_POUND($w, decimals: 3) } × { INCH_POUND($span) }⁴ / { INCH_POUND($ei, millions: "yes") }
    .all = Δ = { INCH_POUND($deflection, figures: 4) } in, all added
frames-part_bent = { THING($one) }, in the middle: Δ = w c (8 L³ - 4 L c² + c³) / (384 EI) = { INCH_POUND($two, decimals: 4) } × { INCH_POUND($three) } × (8 × { INCH_POUND($four) }³ - 4 × { INCH_POUND($four) } × { INCH_POUND($three) }² + { INCH_POUND($three) }³) / (384 × { INCH_POUND($five, millions: "yes") }) = { INCH_POUND($six, figures: 4) } in
frames-part_bent_from = { THING($one) }, w = { INCH_POUND($two, decimals: 4) } lb/in over { INCH_POUND($three) } in from { INCH_POUND($four) } in: Δ = w (G1 - G2 + G3 - G4) / EI, G = x² (1.5 L² - x²) / 48 from each support to the load's far and near end, midspan at most: { INCH_POUND($five, figures: 4) } in

frames-longest_span = Longest span for these joists and this finish
    .named = -
    .formula = least of the spans that bending, shear and live deflection allow
    .source = as the checks of this floor
    .name-span = span found
    .value-span = { SPACED($span) }
    .name-dead = dead load
    .value-dead = { FIGURES($dead, decimals: 1) }
    .name-bending = bending
    .value-bending = { frames-upto.bending }
    .name-shear = shear
    .value-shear = { frames-upto.shear }
    .name-live_deflection = live deflection
    .value-live_deflection = { frames-upto.live_deflection }
    .result = { FIGURES($result, decimals: 1) }
    .argument-1 = { CAPITAL(WORD($governs)) } governs. Point loads and a part sister are left out; what stands on parts of the floor stands where it does most.
    .argument-2-with-bending = -
    .argument-2 = The strength of joists given by EI is left out.
frames-upto = up to
    .bending = up to { FIGURES($bending, decimals: 1) }
    .shear = up to { FIGURES($shear, decimals: 1) }
    .live_deflection = up to { FIGURES($live_deflection, decimals: 1) }

# Cuts in joists.
frames-cut_share = { CAPITAL(WORD($kind)) } { $number }, { frames-cut_what }
    .named = -
    .formula = at most { INCH_POUND($share, figures: 4) } { $of ->
        [span] L
       *[depth] d
    }
    .check = { WORD($kind) } { $number }, { frames-cut_what }
    .result = { SPACED($result, $limit) }
    .value-limit = at most { FIGURES($limit, decimals: 2) }
    .step-1 = { INCH_POUND($share, figures: 4) } × { INCH_POUND($whole) } in = { INCH_POUND($limit, decimals: 2) } in
frames-cut_as_found = { CAPITAL(WORD($kind)) } { $number }, { frames-cut_what }
    .named = -
    .formula = as found
    .check = { frames-cut_share.check }
    .result = { SPACED($result, $limit) }
    .value-limit = { $what ->
        [hole_edge] at least { SPACED($limit) }
       *[notch_thick] at most { SPACED($limit) }
    }
frames-cut_what = { $what ->
        [hole_share] diameter
        [hole_edge] distance to an edge or another cut
        [notch_length_share] length
        [notch_clear_share] reach from the nearer support
        [notch_thick] thickness of the joist where it is stretched
       *[notch_depth_share] depth
    }

# The panel between joists.
frames-panel_rating = Joist spacing against the panel's span rating
    .named = -
    .formula = joist spacing ≤ the floor span of the panel's rating
    .name-layers = layers
    .value-layers = { frames-panel.layers }
    .name-rating = rating
    .value-rating = { $rating }, { $entered ->
        [yes] as entered
       *[no] the least sold in its thickness; read the stamp and enter it
    }
    .result = { SPACED($result, $limit) }
    .value-limit = at most { SPACED($limit) }
frames-panel_bending = Bending of the panel between joists, one foot of width
    .named = -
    .formula = M = w s² / 8 ≤ the bending capacity of each layer, added
    .name-spacing = s
    .value-spacing = { SPACED($spacing) }
    .name-layers = layers
    .value-layers = { frames-panel.layers }
    .step-1 = M = { INCH_POUND($w, decimals: 3) } lb/in × { INCH_POUND($spacing) }² / 8 = { INCH_POUND($result, decimals: 0) } lb·in
    .step-2 = Fb S = { EACH("frames-of_whole", $each, between: " + ") } = { INCH_POUND($limit, decimals: 0) } lb·in
    .result = { FIGURES($result, decimals: 0) }
    .value-limit = at most { FIGURES($limit, decimals: 0) }
frames-panel_uniform = Deflection between joists under uniform load
    .named = -
    .formula = Δ = c w s⁴ / EI, c = 5/384
    .name-spacing = s
    .value-spacing = { SPACED($spacing) }
    .name-layers = layers
    .value-layers = { frames-panel.layers }
    .name-load = w
    .value-load = { FIGURES($load, decimals: 1) }, live and dead
    .step-1-with-glued_share = { frames-panel.glued }
    .step-1-with-not_glued = { frames-panel.loose }
    .step-1 = { frames-panel.single }
    .step-2 = Δ = { INCH_POUND($c, figures: 5) } × { INCH_POUND($w, decimals: 3) } lb/in × { INCH_POUND($spacing) }⁴ / { INCH_POUND($ei, decimals: 0) } = { INCH_POUND($deflection, figures: 4) } in
    .step-3 = s / Δ = { INCH_POUND($spacing) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 0) }
frames-panel_point = Deflection between joists under a point load
    .named = -
    .formula = Δ = c P s³ / EI, over two equal spans, P at the middle of one, carried by a strip
    .name-spacing = s
    .value-spacing = { SPACED($spacing) }
    .name-layers = layers
    .value-layers = { frames-panel.layers }
    .name-c = c
    .value-c = { PLAIN($c) }
    .name-load = P
    .value-load = { PLAIN($load) }
    .name-strip = strip
    .value-strip = { SPACED($strip) }
    .step-1-with-glued_share = { frames-panel.glued }
    .step-1-with-not_glued = { frames-panel.loose }
    .step-1 = { frames-panel.single }
    .step-2 = Δ = { INCH_POUND($c) } × { INCH_POUND($load) } × { INCH_POUND($spacing) }³ / { INCH_POUND($wide, decimals: 0) } = { INCH_POUND($deflection, figures: 4) } in
    .step-3 = s / Δ = { INCH_POUND($spacing) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }
    .argument-1 = Backer board, mortar and tile are counted as no stiffness.
frames-panel = stiffness of a panel
    .layers = { EACH("frames-layer", $layers, $ratings, between: " + ") }
    .single = EI = { INCH_POUND($ei, decimals: 0) } lb·in² for one foot
    .loose = EI = { EACH("frames-of_whole", $each, between: " + ") } = { INCH_POUND($ei, decimals: 0) } lb·in² for one foot; not glued, so no layer helps the other in bending
    .glued = EI = { EACH("frames-of_whole", $each, between: " + ") } loose, plus { INCH_POUND($glued_share) } of what one solid panel would gain (glued and screwed) = { INCH_POUND($ei, decimals: 0) } lb·in² for one foot

# Studs.
frames-stud_stiffness = Sideways deflection of a stud alone ({ $by })
    .named = -
    .formula = Δ = 5 w H⁴ / (384 EI)
    .name-height = H
    .value-height = { SPACED($height) }
    .name-spacing = spacing
    .value-spacing = { SPACED($spacing) }
    .step-1 = w = { INCH_POUND($load) } psf × { INCH_POUND($spacing) } in / 144 = { INCH_POUND($w, decimals: 4) } lb/in
    .step-2-with-e = EI = E b d³ / 12 = { INCH_POUND($e, decimals: 0) } × { INCH_POUND($width) } × { INCH_POUND($depth) }³ / 12 = { INCH_POUND($ei, millions: "yes") } lb·in²
    .step-2-with-web = I = t (d - 2 t)³ / 12 + 2 b t ((d - t) / 2)², d = { INCH_POUND($web) } in, b = { INCH_POUND($flange) } in, t = { INCH_POUND($steel) } in; EI = { INCH_POUND($steel_e, decimals: 0) } psi × { INCH_POUND($inertia, decimals: 4) } in⁴ = { INCH_POUND($ei, millions: "yes") } lb·in²
    .step-2 = EI = { INCH_POUND($steel_e, decimals: 0) } psi × { INCH_POUND($inertia, decimals: 4) } in⁴ = { INCH_POUND($ei, millions: "yes") } lb·in²
    .step-3 = Δ = 5 × { INCH_POUND($w, decimals: 4) } × { INCH_POUND($height) }⁴ / (384 × { INCH_POUND($ei, millions: "yes") }) = { INCH_POUND($deflection, figures: 4) } in
    .step-4 = H / Δ = { INCH_POUND($height) } / { INCH_POUND($deflection, figures: 4) } = { INCH_POUND($result, decimals: 1) }
    .argument-1-with-web = Gross section of the steel, lips and buckling left out; the maker's table governs.

# What would make a frame pass.
frames-remedy = { EACH("sui-measure", $measures, between: "; ") }
    .named = -
    .formula = ranked by height, then material, then labour, in relative figures
    .source = house assumption (rules remedy.*); a help to choose, not a price
    .name-height = height
    .value-height = { SPACED($height) }
    .name-material = material
    .value-material = { PLAIN($material) }
    .name-labour = labour
    .value-labour = { PLAIN($labour) }
    .name-failing = still failing
    .value-failing = { EACH("frames-check", $failing, between: ", ") }
    .result = { $result ->
        [passes] passes
       *[fails] fails
    }
