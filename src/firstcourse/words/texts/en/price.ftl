# Order, hours and price.

price-title = Order and price: { $job }, by { $book }, in { $currency }
price-invented = Rates of work in this price book are invented, for an example: do not price by them.
price-incomplete = Something has no price or no rate: the total leaves it out, see above.
price-order = To order from { $supplier }
price-order_heads =
    .item = item
    .need = drawings + breakage + spares
    .packs = packs
    .each = each
    .cost = cost
    .notes = notes
price-need = { $exact } + { $breakage } + { $spares }
price-packs = { $packs } × { $holds }
price-thumb = by rule of thumb { $straight } straight, { $diagonal } diagonal (common practice)
price-one_lot = one lot, one delivery
price-cuts = Cut from stock lengths
price-cut_heads =
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
    .amount = amount
    .rate = hours each
    .source = source
    .hours = hours
    .each = an hour
    .cost = cost
price-task = { $task }
price-rate = { $rate } ± { $spread } ({ $jobs ->
        [0] no finished job behind it
        [one] { $jobs } finished job
       *[other] { $jobs } finished jobs
    })
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
