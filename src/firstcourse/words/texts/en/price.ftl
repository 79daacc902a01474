# Order, hours and price.

price-title = Order and price: { $job }, by { $book }, in { $currency }
price-invented = Prices and rates in this book are invented, for an example: do not order or price by them.
price-incomplete = Something has no price or no rate: the total leaves it out, see above.
price-order = To order from { $supplier }
price-order_heads =
    .item = item
    .exact = in the drawings
    .breakage = breaks
    .spares = spares
    .packs = packs
    .each = each
    .cost = cost
price-supply_title = Order: { $job }
price-open = To order, from whom is open
price-supply_heads =
    .item = item
    .exact = in the drawings
    .breakage = breaks
    .spares = spares
    .packs = packs
price-packs = { $packs } × { $holds }
price-thumb = by rule of thumb { $straight } straight, { $diagonal } diagonal (common practice)
price-one_lot = one lot, one delivery
price-cuts = Cut from stock lengths
price-cuts_heads =
    .item = item
    .length = length
    .pieces = pieces
    .least = bound
price-least = no fewer than { $number }
price-length = { $length }
price-carried = To carry
price-mass = The order weighs { $kg }.
price-unknown = Not in that, as nobody gave its mass: { $items }.
price-trips = { $trips } { $trips ->
        [one] trip
       *[other] trips
    }, { $steps } steps of stair with a load.
price-waste = Waste { $kg }, { $litres } l solid; heaped it takes more room.
price-away = It goes in { $number } { $by ->
        [skip] { $number ->
            [one] skip
           *[other] skips
        }
       *[bag] { $number ->
            [one] bag
           *[other] bags
        }
    }.
price-hours = Hours
price-hours_heads =
    .task = task
    .amount = how much
    .rate = minutes for one
    .jobs = finished jobs
    .basis = rate is
    .hours = hours
    .each = an hour
    .cost = cost
price-sources = Rates: { $sources }. Minutes are given with the spread of one more job; finished jobs are those whose hours moved the rate.
price-task-set_up_room = set up in the room
price-task-protect_and_clean = protect and clean
price-task-set_board_floor = set boards on floors
price-task-set_board_wall = set boards on walls
price-task-set_board_other = set boards elsewhere
price-task-fasten = drive fasteners
price-task-cut_board = score and snap boards
price-task-cut_board_hole = holes in boards
price-task-cut_board_notch = notches in boards
price-task-mix = mix mortar and grout
price-task-tape_seams = tape seams
price-task-trowel = comb mortar
price-task-grout_joints = grout
price-task-seal_joints = seal soft joints
price-task-carry = carry material
price-task-cut_tile_straight = straight cuts in tile
price-task-cut_tile_slanted = slanted cuts in tile
price-task-cut_tile_notch = notches in tile
price-task-cut_tile_hole = holes in tile
price-task-set_tile_floor = set tile on floors
price-task-set_tile_wall = set tile on walls
price-task-set_tile_other = set tile elsewhere
price-task-set_large_tile_floor = set large tile on floors
price-task-set_large_tile_wall = set large tile on walls
price-task-set_large_tile_other = set large tile elsewhere
price-task-set_mosaic_floor = set mosaic on floors
price-task-set_mosaic_wall = set mosaic on walls
price-task-set_mosaic_other = set mosaic elsewhere
price-unit-room = { $number ->
        [one] room
       *[other] rooms
    }
price-unit-board = { $number ->
        [one] board
       *[other] boards
    }
price-unit-fastener = { $number ->
        [one] fastener
       *[other] fasteners
    }
price-unit-hole = { $number ->
        [one] hole
       *[other] holes
    }
price-unit-notch = { $number ->
        [one] notch
       *[other] notches
    }
price-unit-tile = { $number ->
        [one] piece
       *[other] pieces
    }
price-basis-yours = yours
price-basis-common_practice = common practice
price-basis-published = published
price-basis-invented = invented
price-working = How the total comes about
price-working_heads =
    .step = step
    .how = how
    .amount = amount

price-materials = Materials
    .formula = packs × price of each
price-deliveries = Deliveries
    .formula = one from each supplier that takes money for it
price-labour = Labour
    .formula = hours × price of an hour
price-hire = Hire
    .formula = days × price of a day
price-disposal = Disposal
    .formula = skips or bags × price of each
price-direct = Direct cost
    .formula = { $materials } + { $deliveries } + { $labour } + { $hire } + { $disposal }
price-risk = Risk: { $of }
    .formula = { $cost } × { $percent } % likely
price-contingency = Set aside for risks
    .formula = sum of the risks
price-overhead = Overhead
    .formula = ({ $direct } + { $contingency }) × { $percent } %
price-cost = Cost
    .formula = { $direct } + { $contingency } + { $overhead }
price-before_tax = Price before tax
    .formula = { $of ->
            [margin] { $cost } / (1 − { $percent } %), a margin on the price
            [mark_up] { $cost } × (1 + { $percent } %), a mark-up on the cost
           *[none] the cost alone, no profit asked
        }; margin { $margin } % of the price = mark-up { $mark_up } % on the cost; rounded once, half a cent up
price-tax = { $of ->
        [sales_tax-materials] Sales tax on materials
        [sales_tax-labour] Sales tax on labour
        [sales_tax-price] Sales tax
        [vat-price] VAT
        [gst-price] GST
       *[other] Tax ({ $of })
    }
    .formula = { $base } × { $percent } %, your own entry; rounded once, half a cent up
price-total = Total
    .formula = { $price } + { $tax }
