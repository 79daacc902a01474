# Not reviewed by a native setter yet.
# Membranes, laid out flat.

water-face = { PLACE($at) }, membrana extendida
    .formula = cara + forros de nichos y ventanas, más traslapes
    .source = dibujos
    .unsaid-kind = -
    .name-bare = cara sin vanos
    .name-niches = nichos: fondos y costados
    .name-windows = ventanas: costados hasta el marco
    .value-strips = { $strips } de { $long }, traslapes { $lap }
    .unsaid-long = -
    .unsaid-lap = -
    .name-band = banda de sellado
    .name-inside = esquinas interiores
    .name-outside = esquinas exteriores
    .argument-1 = Los nichos se forran completos, para que la membrana no termine sino en su borde superior.

water-floor = { PLACE($at) }, membrana extendida
    .formula = { $kind ->
        [liner] piso por sus planos + bordillo + subidas, más traslapes
       *[other] piso por sus planos + bordillo, más traslapes
    }
    .source = { $kind ->
        [liner] dibujos; subida: { SOURCE($rule) }
       *[other] dibujos
    }
    .unsaid-kind = -
    .name-planes = piso por sus planos
    .name-kerb_long = sobre el bordillo
    .value-kerb_long = { $kerb_long } x { $kerb_girth }
    .unsaid-kerb_girth = -
    .name-outer = su cara exterior, sobre los paneles de afuera
    .name-kerb_corners = alrededor de las esquinas del bordillo
    .name-walls_long = paredes arriba
    .value-walls_long = { EACH("water-upturn", $walls_long, $walls_high, between: " + ") }
    .unsaid-walls_high = -
    .name-over_threshold = termina sobre el umbral terminado
    .value-over_threshold = { FINE($over_threshold) }
    .value-strips = { $strips } de { $long }, traslapes { $lap }
    .unsaid-long = -
    .unsaid-lap = -
    .name-band = banda de sellado
    .name-inside = esquinas interiores
    .name-outside = esquinas exteriores
    .argument-1 = Un bordillo se cubre hasta el piso que tiene enfrente, para que la membrana no termine sino en su borde superior.

water-upturn = { $one } x { $two }

water-bench = { PLACE($at) }, membrana extendida
    .formula = ancho x alto, más traslapes
    .source = dibujos
    .unsaid-kind = -
    .name-across = cara
    .value-across = { $across } x { $high }
    .unsaid-high = -
    .value-strips = { $strips } de { $long }, traslapes { $lap }
    .unsaid-long = -
    .unsaid-lap = -
    .name-band = banda de sellado
    .name-inside = esquinas interiores
    .name-outside = esquinas exteriores
    .argument-1 = Detrás y debajo de ella la pared y el piso conservan la suya.

# What stands on the page of waterproofing.

water-kind =
    .liquid = membrana líquida sobre los paneles
    .sheet = membrana en lámina sobre la base del azulejo
    .liner = membrana bajo la cama, sobre su pendiente

water-row =
    .where = dónde
    .in_all = en total, extendida
    .flange = brida en { $name }
    .collar = collarín en { $name }
    .no_fastener = sin fijaciones

water-heights = de { $low } a { $high } sobre el piso
water-zone = de { $low } a { $high }: { $why }
water-centre = centro a { $left } desde la izquierda, { $up } hacia arriba del dibujo
water-lap = Las uniones traslapan al menos { $lap }, la lámina de arriba sobre la de abajo.
water-coat = La membrana líquida lleva { $coat } de espesor en fresco, todas las manos juntas; mídalo con un calibrador.
water-order = Primero las esquinas, luego los collarines, luego las caras; en cada esquina y cambio de plano va banda de sellado.
water-whole = Nada se clava a través de la membrana; lo que se clavó se saca y se parcha antes del azulejo.
