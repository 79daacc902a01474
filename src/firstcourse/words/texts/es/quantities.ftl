# Not reviewed by a native setter yet.
# What is to be bought: things, the units they are counted in, and how they are sold.

quantities-item-stock = hojas { $name }
quantities-item-tile_stock = azulejos { $name }
quantities-item-added = por agregar: { $name }
quantities-item-backer_rod = cordón de respaldo { $rod }
quantities-item-collars = collarines de { $name }
quantities-item-fasteners = fijaciones
quantities-item-bedding_mortar = mortero de asiento
quantities-item-seam_tape = cinta para juntas
quantities-item-sealant = sellador
quantities-item-board_strips = tiras de panel
quantities-item-tile_mortar = mortero para azulejo
quantities-item-large_tile_mortar = mortero para azulejo grande
quantities-item-grout = boquilla
quantities-item-joint_sealant = sellador de juntas
quantities-item-bond_breaker = cinta antiadherente
quantities-item-edge_trim = perfil de borde
quantities-item-spacers = separadores
quantities-item-sheet_membrane = membrana en lámina
quantities-item-liquid_membrane = membrana líquida
quantities-item-liner = membrana de plato
quantities-item-sealing_band = banda de sellado
quantities-item-inside_corners = esquinas interiores
quantities-item-outside_corners = esquinas exteriores
quantities-item-drain_flanges = bridas de coladera
quantities-item-bed_mortar = mortero de cama

quantities-unit-sheet = { $number ->
    [one] hoja
   *[other] hojas
}
quantities-unit-fastener = { $number ->
    [one] fijación
   *[other] fijaciones
}
quantities-unit-tile = { $number ->
    [one] azulejo
   *[other] azulejos
}
quantities-unit-chip = { $number ->
    [one] pieza de mosaico
   *[other] piezas de mosaico
}
quantities-unit-spacer = { $number ->
    [one] separador
   *[other] separadores
}
quantities-unit-piece = { $number ->
    [one] pieza
   *[other] piezas
}

quantities-pack-sheet = { $of ->
    [chip] malla de { $size } piezas
   *[other] hoja
}
quantities-pack-box = { $of ->
    [chip] caja de { $sheets } { $sheets ->
        [one] hoja
       *[other] hojas
    } de { $each } piezas
   *[other] caja de { $size } { $size ->
        [1] pieza
       *[other] piezas
    }
}
quantities-pack-piece = pieza
quantities-pack-pack = paquete de { $size }
quantities-pack-bag = { $of ->
    [m3] saco que rinde { $size }
   *[other] saco de { $size }
}
quantities-pack-roll = rollo de { $size }
quantities-pack-coil = rollo de { $size }
quantities-pack-length = tramo de { $size }
quantities-pack-cartridge = cartucho de { $size }
quantities-pack-pail = cubeta de { $size }
quantities-pack-running = { $unit } lineal
quantities-pack-off_roll = { $unit } de un rollo de { $wide } de ancho

# How each number came about. What all lines of the list say alike:

quantities-shared =
    .name-exact = necesidad exacta
    .value-exact = { NEED($exact, decimals: 3) }
    .unsaid-share = -
    .value-spare = { PLAIN($share) } = { NEED($spare) }
    .name-spare = margen
    .value-pack = { PACK($pack, $sold) }
    .unsaid-sold = -
    .name-packs = empaques por comprar
    .result = { NEED($result) }
    .source = dibujos

quantities-sheets = Hojas nuevas de { NAME($at) }
    .formula = número de hojas nuevas en las hojas de cortes
    .name-offcuts = sobrantes guardados que se usan
    .name-fewest = las menos que necesita cualquier plan
    .name-filled = área de piezas entre área comprada
    .value-filled = { FIGURES($filled) }
    .source = hojas de cortes
    .argument-1 = No se agrega margen: la rotura la juzga el azulejero.

quantities-fasteners = Fijaciones: { $fastener }
    .formula = fijaciones de pisos + fijaciones de paredes y techos
    .unsaid-fastener = -
    .name-walls = paredes y techos
    .name-spare = de más por las pasadas o caídas
    .source = { SOURCE($rule) }

quantities-bedding_mortar = Mortero seco bajo paneles de piso y en juntas
    .formula = (área x w x d x sen(ángulo) / (w + separación) + volumen de juntas + tiras llenas) x densidad x (1 - parte de agua)
    .value-area = { FIGURES($area, decimals: 2) }
    .value-w = { FINE($w) }
    .value-d = { FINE($d) }
    .value-land = { FINE($land) }
    .value-angle = { PLAIN($angle) }
    .name-mean = espesor medio
    .value-mean = { FINE($mean) }
    .name-under = volumen bajo paneles
    .name-seams = volumen de juntas
    .value-seams = { FIGURES($seams, decimals: 3) }
    .name-strips = tiras llenas
    .value-strips = { FIGURES($strips, decimals: 3) }
    .name-water = parte de agua
    .name-spare = perdido en cubetas y herramientas
    .result = { FIGURES($result, decimals: 1) }
    .source = geometría del cordón; densidad y parte de agua: { SOURCE($rule) }
    .argument-1 = El volumen de juntas es largo x ancho de cada junta x el espesor de los paneles a su lado.

quantities-seam_tape = Cinta sobre juntas y esquinas interiores
    .formula = largo de juntas + largo de esquinas interiores + largo de bordes en costados de ventanas
    .value-seams = { NEED($seams) }
    .name-corners = esquinas interiores
    .value-corners = { NEED($corners) }
    .name-returns = bordes en costados de ventanas
    .value-returns = { NEED($returns) }
    .name-width = ancho de la cinta
    .value-width = { FINE($width) }
    .name-spare = perdido en puntas y traslapes
    .source = { SOURCE($rule) }
    .argument-1 = Esquinas interiores: pared con pared en la altura en que las dos llevan panel, pared con techo a lo largo de arriba.

quantities-sealant = Sellador en las holguras del pie
    .formula = largo x ancho x hondo
    .value-length = { NEED($length) }
    .value-width = { FINE($width) }
    .value-depth = { FINE($depth) }
    .name-spare = perdido en boquilla del cartucho y alisado
    .source = { SOURCE($rule) }

quantities-added = Piezas de armazón por agregar: { WORD($kind) }
    .formula = suma de los largos de las piezas marcadas por agregar
    .unsaid-kind = -
    .name-number = piezas
    .argument-1 = Se cortan de los tramos a la mano; no se supone largo de compra.

quantities-board_strips = Tiras de panel por cortar
    .formula = suma de los largos de las tiras que se llenan con panel
    .name-number = tiras
    .argument-1 = Se cortan de lo que sobra de las hojas; no se compra nada para ellas.

quantities-sheet_mass = Masa de una hoja de { NAME($at) }
    .formula = ancho x alto x espesor x densidad
    .value-size = { LIST($size, between: " x ") }
    .value-thickness = { FINE($thickness) }
    .unsaid-entered = -
    .result = { FIGURES($result, decimals: 1) }
    .source = { $entered ->
        [yes] la hoja como la da el trabajo
       *[no] { SOURCE($rule) }
    }

quantities-boards_mass = Masa de todos los paneles por cargar y poner
    .formula = suma del área de cada panel entre el área de su hoja, por la masa de la hoja
    .result = { FIGURES($result, decimals: 1) }

quantities-lifting = Lo que una persona puede levantar, así tomado
    .formula = RWL = LC × HM × VM × DM × AM × FM × CM, el menor de levantar y bajar
    .value-reach = { TAPE($reach, feet: "no") }
    .name-low = manos abajo
    .value-low = { TAPE($low, feet: "no") }
    .name-high = manos arriba
    .value-high = { TAPE($high, feet: "no") }
    .value-turn = { FIGURES($turn, decimals: 0) }
    .name-rate = levantadas por minuto
    .value-HM = { FIGURES($HM, decimals: 3) }
    .value-VM = { FIGURES($VM, decimals: 3) }
    .value-DM = { FIGURES($DM, decimals: 3) }
    .value-AM = { FIGURES($AM, decimals: 3) }
    .value-FM = { FIGURES($FM, decimals: 3) }
    .value-CM = { FIGURES($CM, decimals: 3) }
    .result = { FIGURES($result, decimals: 1) }
    .source = { SOURCE($rule) }; FM: { SOURCE("safety.lift.frequency.0_2") }; CM: { SOURCE("safety.lift.grip.poor") }; cómo se toma: como dice el trabajo, si no supuesto
    .argument-1 = La ecuación es de una persona; dos que levantan juntas toman la mitad cada una.

quantities-tiles = Azulejos de { NAME($at) }
    .formula = azulejos puestos enteros + azulejos enteros de los que salen los cortados
    .name-whole = puestos enteros
    .name-cut = puestos cortados
    .name-from_whole = enteros que se cortan
    .name-on_sheet = piezas por malla
    .value-on_sheet = { $on_sheet ->
        [1] -
       *[other] { $on_sheet }
    }
    .unsaid-sheets = -
    .name-spare = rotura al manejar y cortar
    .value-pack = { PACK($pack, $sold, $sheets) }
    .unsaid-spares = -
    .name-kept = se guardan para reparaciones
    .value-kept = { PLAIN($spares) } = { NEED($kept) }
    .name-left = sobran además
    .value-left = { NEED($left) }
    .unsaid-straight_share = -
    .unsaid-by_thumb_straight = -
    .unsaid-diagonal_share = -
    .unsaid-by_thumb_diagonal = -
    .argument-1 = Todas las cajas de un azulejo vienen de un mismo lote; anote su número cuando lleguen.
    .argument-2 = Por la regla usual sobre el área serían { $by_thumb_straight } con { PLAIN($straight_share) } para un acomodo recto, { $by_thumb_diagonal } con { PLAIN($diagonal_share) } para uno diagonal.

quantities-tile_mortar = { $large ->
        [yes] Mortero seco para azulejo grande y pesado
       *[no] Mortero seco bajo azulejo
    }
    .formula = (área x peinado + caras de azulejo x untado del reverso) x densidad x (1 - parte de agua)
    .unsaid-large = -
    .columns = surface tile area thick backed faces back notch_wide notch_deep notch
    .row-name = { PLACE($surface) }, { NAME($tile) }
    .row-value = { FIGURES($area) } x { FINE($thick) }{ $backed ->
        [yes] {" "}+ { FIGURES($faces) } x { FINE($back) }
       *[no] {""}
    }; diente de { FINE($notch_wide) } x { FINE($notch_deep) }, { WORD($notch) }
    .name-buttered = untado del reverso
    .name-water = parte de agua
    .name-spare = perdido en cubetas y herramientas
    .result = { FIGURES($result, decimals: 1) }
    .source = geometría del cordón; densidad y parte de agua: { SOURCE($rule) }
    .argument-1 = No incluye lo disparejo de la base; el relleno se cuenta donde se tomaron niveles.

quantities-grout = Boquilla por las juntas dibujadas
    .formula = (área - caras de azulejo - juntas flexibles) x espesor del azulejo x densidad
    .columns = surface tile area faces soft deep
    .row-name = { PLACE($surface) }, { NAME($tile) }
    .row-value = ({ FIGURES($area) } - { FIGURES($faces) } - { FIGURES($soft) }) x { FINE($deep) }
    .value-volume = { FIGURES($volume, decimals: 3) }
    .name-handbook = fórmula de manual
    .name-spare = perdido en cubetas y herramientas
    .result = { FIGURES($result, decimals: 1) }
    .source = dibujos; densidad: { SOURCE($rule) }
    .argument-1 = La fórmula de manual es (A + B) / (A x B) x junta x hondo x densidad x área; cuenta dos veces cada cruce de juntas, así que sale un poco alta, sobre todo en mosaico.

quantities-joint_sealant = Sellador en juntas flexibles
    .formula = suma de largo x ancho x hondo
    .columns = wide deep rod on_rod along
    .row-name = { FINE($wide) } de ancho, { FINE($deep) } de hondo, { $on_rod ->
        [yes] sobre cordón { FINE($rod) }
       *[no] sobre cinta
    }
    .row-value = { NEED($along) }
    .unsaid-square_to = -
    .name-spare = perdido en boquilla del cartucho y alisado
    .source = { SOURCE($rule) }
    .argument-1 = Tan hondo como ancho, arriba de { FINE($square_to) } la mitad de hondo; donde no cabe cordón detrás, sobre cinta.

quantities-backer_rod = Cordón de respaldo { FINE($rod) }
    .formula = largo de juntas flexibles con lugar para él
    .unsaid-rod = -
    .name-over = diámetro entre ancho
    .name-spare = perdido en puntas
    .source = { SOURCE($rule) }

quantities-bond_breaker = Cinta antiadherente al fondo de juntas flexibles
    .formula = largo de juntas flexibles sin hondo para cordón
    .name-spare = perdido en puntas
    .source = { SOURCE($rule) }

quantities-edge_trim = Perfil donde el azulejo termina a la vista y alrededor de nichos y ventanas
    .formula = suma de bordes; cortados de tramos de compra, primero el más largo, cada uno del primero en que cabe
    .columns = surface edge
    .row-name = { PLACE($surface) }
    .row-value = { TAPE($edge) }
    .name-stock = tramo de compra
    .argument-1 = Los bordes más largos que un tramo se unen; las esquinas van a inglete o con pieza de esquina.

quantities-spacers = Separadores
    .formula = uno en cada cruce de juntas: un cruce por azulejo en acomodo recto, dos en trabado
    .columns = surface crossings
    .row-name = { PLACE($surface) }
    .row-value = { $crossings }
    .name-each = separadores en cada uno
    .source = { SOURCE($rule) }
    .argument-1 = Se pueden usar otra vez cuando agarra el mortero, así que muchas veces basta la mitad.

quantities-cuts = Cortes en azulejo { NAME($at) }
    .formula = suma de los bordes aserrados de cada azulejo cortado
    .name-tiles = azulejos cortados
    .columns = kinds lengths in
    .row-name = { WORD($kinds) }
    .row-value = { NEED($lengths) } en { $in } { $in ->
        [one] azulejo
       *[other] azulejos
    }
    .argument-1 = Un corte entre dos piezas de un azulejo se cuenta en las dos; el largo verdadero es un poco menos.

quantities-sheet_membrane = Membrana en lámina con sus traslapes
    .formula = área + traslapes, superficie por superficie
    .columns = surface area laps
    .row-name = { PLACE($surface) }
    .row-value = { FIGURES($area) } + { FIGURES($laps) }
    .name-spare = puntas y errores

quantities-liquid_membrane = Membrana líquida, todas las manos
    .formula = área x espesor en fresco
    .columns = surface area
    .row-name = { PLACE($surface) }
    .row-value = { FIGURES($area) }
    .name-wet = espesor en fresco
    .value-wet = { FINE($wet) }, que son { FIGURES($spread, decimals: 2) }
    .unsaid-spread = -
    .name-spare = queda en cubetas y rodillos
    .source = dibujos; espesor: rige la ficha del fabricante

quantities-liner = Membrana de plato, cortada de su rollo
    .formula = tiras x largo, contando las subidas de los dos lados
    .columns = surface strips long
    .row-name = { PLACE($surface) }
    .row-value = { $strips } x { $long }
    .name-spare = agregado
    .value-pack = cortado de un rollo de { $wide } de ancho
    .unsaid-wide = -

quantities-sealing_band = Banda de sellado en cambios de plano
    .formula = perímetro de pisos + esquinas de paredes + puntas de bordillos + nichos, ventanas y bancas
    .columns = surface band
    .row-name = { PLACE($surface) }
    .row-value = { RUN($band) }
    .name-spare = traslapes y puntas

quantities-inside_corners = Impermeabilización: esquinas interiores
    .formula = contado superficie por superficie
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-outside_corners = Impermeabilización: esquinas exteriores
    .formula = contado superficie por superficie
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-drain_flanges = Impermeabilización: bridas de coladera
    .formula = contado superficie por superficie
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-collars = Impermeabilización: collarines de { NAME($at) }
    .formula = contado superficie por superficie
    .columns = surface number
    .row-name = { PLACE($surface) }
    .row-value = { $number }

quantities-bed_mortar = Mortero de camas y pendientes
    .formula = cama + pendiente bajo membrana, piso por piso
    .columns = surface bed lined slope
    .row-name = { PLACE($surface) }
    .row-value = { BULK($bed) }{ $lined ->
        [yes] {" "}+ { BULK($slope) } bajo la membrana
       *[no] {""}
    }
    .name-spare = perdido en cubetas y herramientas
    .source = dibujos; rendimiento de un saco: { SOURCE($rule) }
