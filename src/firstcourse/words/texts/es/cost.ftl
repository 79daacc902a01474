# Not reviewed by a native setter yet.
# What is paid for what is bought, as far as the job gives prices.

cost-sheets = Costo de las hojas por comprar
    .formula = empaques × precio de cada uno
    .source = precios del trabajo
    .name-of = cada uno
    .value-of = { EACH("cost-line", $packs, $of, $price) }
    .unsaid-packs = -
    .unsaid-price = -
    .unsaid-complete = -
    .unsaid-unpriced = -
    .unsaid-currency = -
    .result = { NUMBER_OF($result, decimals: 2) } { WORD($currency) }
    .argument-1 = { $complete ->
            [yes] -
           *[no] No se da precio de { LIST($unpriced) }: queda fuera.
        }

cost-tiles = Costo de los azulejos por comprar
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

cost-line = { $one } × { THING($two) } a { NUMBER_OF($three, decimals: 2) }
