# Not reviewed by a native setter yet.
# The spreadsheet: names of its sheets, headings of their columns, and what stands in them.

workbook-foot = plan { $digest }
workbook-page = página { $page } de { $pages }

workbook-pieces = Paneles y piezas
    .mark = marca
    .surface = superficie
    .stock = material
    .cut_from = cortado de
    .width = ancho
    .height = alto
    .width_mm = ancho, mm
    .height_mm = alto, mm
    .holes = agujeros
    .taper = sesgo
    .notch = muesca
    .fasteners = fijaciones

workbook-cuts = Hojas y cortes
    .sheet = hoja
    .stock = material
    .source = origen
    .size = medida
    .cut = corte
    .cut_part = parte cortada
    .line_runs = la línea va
    .distance = distancia
    .distance_mm = distancia, mm
    .from_the_part_s = desde
    .gives_at_that_edge = da, en ese borde
    .gives_beyond_the_line = da, más allá de la línea

workbook-tile_cuts = Cortes de azulejo
    .mark = marca
    .surface = superficie
    .cut = corte
    .number = número
    .where = dónde
    .tile = azulejo
    .size = medida
    .width_mm = ancho, mm
    .to_mm = a, mm
    .height_mm = alto, mm
    .up_to_mm = hasta, mm
    .from_tiles = de azulejos
    .shares_them_with = los comparte con

workbook-shopping = Compras
    .item = artículo
    .need = se necesita
    .unit = unidad
    .buy = comprar
    .pack = empaque
    .price_of_one = precio de uno, { $currency }
    .cost = costo, { $currency }
    .working = cálculo

workbook-findings = Hallazgos
    .severity = gravedad
    .code = código
    .where = dónde
    .message = mensaje
    .measured = medido
    .limit = límite
    .do = haga
    .rule = regla
    .source = fuente

workbook-workings = Cálculos
    .id = id
    .title = título
    .formula = fórmula
    .values = valores
    .result = resultado
    .unit = unidad
    .source = fuente
    .argument = argumento

workbook-rules = Reglas
    .rule = regla
    .value = valor
    .basis = base
    .source = fuente
    .check_taken_from = revise: tomado de

workbook-part = { $sheet }, parte { $part }
workbook-up = ya puesto
workbook-source = { $source ->
    [new] hoja nueva
   *[other] sobrante guardado { $offcut }
}
workbook-sheet = hoja
workbook-cut =
    .across = a lo ancho
    .lower = borde inferior
    .up = hacia arriba
    .left = borde izquierdo
    .none = sin corte
workbook-given =
    .again = { $part }: cortar otra vez
    .piece = { $part }: pieza { $mark }
    .turned = { $part }: pieza { $mark }, va girada un cuarto
    .keep = { $part }: guardar, { $size }
workbook-kind_of = { $mark } de { $surface }
workbook-fit = { $fit ->
    [yes] a la medida
   *[no] como se dibuja
}
workbook-money = dinero
workbook-total = costo de lo que tiene precio
workbook-short = { $formula }
    = { $result }; vea { workbook-workings }, { $name }
workbook-practice = práctica { $practice }
workbook-basis =
    .code = código
    .common_practice = práctica común
    .handbook = manual
    .house_assumption = supuesto de la casa
    .standard = norma
    .textbook = libro de texto
