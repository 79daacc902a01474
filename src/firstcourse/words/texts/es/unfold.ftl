# Not reviewed by a native setter yet.
# El cuarto desplegado, y una superficie para trabajar en ella.

unfold-room =
    .picture = El cuarto desplegado: su piso con las paredes abatidas
    .how = El piso con sus paredes abatidas. Toque una superficie para trabajar en ella.
    .not_planned = Así como está todavía no tiene plan.
    .choices = Hojas, azulejo y armazón
    .document = Cambiar cualquier otra cosa

unfold-part =
    .wall = Pared
    .floor = Piso
    .ceiling = Techo

unfold-surface =
    .picture = Dibujo de esta superficie
    .moves = muévalo con las flechas, con Mayús más lejos
    .drag = Arrastre lo que está abierto o parado aquí; se guarda al soltarlo.
    .keys = Enter lo guarda aquí, Escape lo regresa.
    .printed = El dibujo como se imprime

unfold-layer =
    .title = Qué mostrar
    .framing = armazón
    .boards = paneles y juntas entre paneles
    .tile = azulejo
    .soft = juntas flexibles
    .water = agua
    .heights = alturas
    .pole = regla de hiladas
    .show = Mostrar

unfold-foot =
    .sheets = hojas, todo el trabajo
    .boards = paneles aquí
    .tiles = azulejos cortados aquí
    .smallest = corte más chico
    .proof = este dibujo
    .verified = verificado
    .not_proved = sin comprobar todavía

unfold-things =
    .title = Abierto o parado aquí
    .points = Su forma se da esquina por esquina; cámbiela en el documento.
    .from_side = Medido desde la pared { $side }.
    .save = Guardar
    .remove = Quitar { $name }
    .new = Uno más
    .round = Un hueco redondo tiene diámetro; lo demás, ancho y alto o fondo.
    .add = Agregarlo

unfold-field =
    .kind = ¿Qué es?
    .id = ¿Cómo lo llama?
    .side = Medido desde la pared
    .left = Desde la izquierda
    .bottom = Arriba del piso
    .out = Desde la pared hacia adentro
    .centre_left = Centro desde la izquierda
    .centre_bottom = Centro arriba del piso
    .centre_out = Centro desde la pared
    .width = Ancho
    .height = Alto
    .depth = Fondo
    .diameter = Diámetro

unfold-kind =
    .niche = nicho
    .window = ventana
    .pipe = tubo
    .valve = válvula
    .box = caja
    .door = puerta
    .drain = coladera
    .flange = brida del inodoro
    .tub = tina
    .tray = plato de ducha
    .cabinet = gabinete
    .column = columna
    .other = otro

unfold-snap =
    .on = En:
    .edge = borde
    .centre = centro
    .corner_u = extremo de la superficie
    .corner_v = arriba o pie de la superficie
    .course = hilada

unfold-flag =
    .measured = Medido:
    .limit = Límite:
    .source = Fuente:

unfold-remedy =
    .courses = Ponerlo en las hiladas
    .members = Estas piezas ya están puestas: anotarlas
    .none = Ningún dato de esta página lo hace; es trabajo en la obra, o un cambio en el documento.

unfold-start =
    .title = Dónde empieza el azulejo
    .locked = El inicio está fijo.
    .free = Buscar el inicio de nuevo
    .used = En el plan
    .lock = Fijar este inicio
    .cuts = { $count ->
        [one] { $count } azulejo cortado, el más chico { $smallest }
       *[other] { $count } azulejos cortados, el más chico { $smallest }
    }
    .narrowest = Lo más angosto en { $where }
    .joints = { $count } de { $of } bordes de nichos y ventanas en una junta
    .sliver = Un corte es una tira angosta
    .under_half = Un corte en un borde es menos de medio azulejo
    .may_sliver = Puede quedar una tira angosta si el cuarto difiere tanto como permiten sus medidas

unfold-mark =
    .title = Regla de hiladas
    .height = Desde su extremo
    .what = Marca
    .course = pie de una hilada
    .top = cabeza de la última hilada
    .level = línea de nivel
    .end = extremo de la regla
    .low = borde de abajo
    .high = borde de arriba
    .cut = cortado

unfold-choices =
    .title = Hojas, azulejo y armazón
    .inches = Un número sin unidad son pulgadas: 35 1/2. También sirven pies y pulgadas: 5' 3-1/2".
    .mm = Un número sin unidad son milímetros.
    .sheets = Hojas de panel que compra
    .new_sheet = Una hoja más
    .tiles = Azulejo elegido
    .new_tile = Un azulejo más
    .surfaces = Qué azulejo lleva cada superficie
    .tile_first = Un azulejo nuevo se puede elegir aquí después de guardarlo.
    .joists = Viguetas bajo este piso. En losa de concreto deje vacías las medidas.
    .save = Guardar

unfold-choice =
    .id = Cómo lo llama
    .width = Ancho
    .length = Largo
    .height = Alto
    .thickness = Espesor
    .joint = Junta de boquilla
    .tile = Azulejo
    .no_tile = Sin azulejo
    .pattern = Patrón
    .parallel_to = Corren a lo largo de la pared
    .spacing = De centro a centro
    .first = Centro de la primera desde esa pared

unfold-pattern =
    .stacked = recto
    .running = a media junta
    .diagonal = en diagonal
    .herringbone = espiga
    .double_herringbone = espiga doble
    .basket_weave = canasta
    .hexagon = hexágono
    .repeat = una repetición propia
