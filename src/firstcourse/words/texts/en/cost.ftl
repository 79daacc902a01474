# What is paid for what is bought, as far as the job gives prices.

cost-sheets = Cost of the sheets to buy
    .formula = packs × price of each
    .source = prices from the job
    .name-of = each
    .value-of = { EACH("cost-line", $packs, $of, $price) }
    .unsaid-packs = -
    .unsaid-price = -
    .unsaid-complete = -
    .unsaid-unpriced = -
    .unsaid-currency = -
    .result = { NUMBER_OF($result, decimals: 2) } { WORD($currency) }
    .argument-1 = { $complete ->
            [yes] -
           *[no] No price is given for { LIST($unpriced) }: left out.
        }

cost-tiles = Cost of the tiles to buy
    .formula = { cost-sheets.formula }
    .source = { cost-sheets.source }
    .name-of = { cost-sheets.name-of }
    .value-of = { cost-sheets.value-of }
    .unsaid-packs = -
    .unsaid-price = -
    .unsaid-complete = -
    .unsaid-unpriced = -
    .unsaid-currency = -
    .result = { cost-sheets.result }
    .argument-1 = { cost-sheets.argument-1 }

cost-line = { $one } × { THING($two) } at { NUMBER_OF($three, decimals: 2) }
