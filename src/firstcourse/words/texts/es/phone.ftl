# Not reviewed by a native setter yet.
# The pack on a phone.

phone-page =
    .about = Funciona sin red. Lo que marque y escriba se queda en este teléfono hasta que lo guarde en un archivo y lo mande de vuelta.
    .save = Guardar lo marcado
    .save_short = Guardar
    .saved = Guardado como { $file }. Mande este archivo a quien hizo el plan.
    .nothing = Todavía no hay nada marcado ni escrito.
    .kept = Guardado en este teléfono
    .lost = Este teléfono no guarda nada: guarde el archivo antes de cerrar la página.
    .wrong = Esto no es una medida. Escríbala como { $example }.
    .tap_tiles = Amplíe el dibujo y toque cada azulejo cuando esté puesto.
    .tiles_set = Azulejos puestos
    .enlarge = Ampliar: { $shows }
    .larger = Más grande
    .smaller = Más chico
    .close = Cerrar
    .drawing = Dibujo
    .parts = Partes del juego

# The parts of the pack, in the bar at its foot.
phone-group =
    .first = Primero
    .boards = Paneles
    .cuts = Cortes
    .falls = Agua
    .tile = Azulejo
    .buy = Comprar
    .found = En obra

phone-first =
    .stop = Detiene el trabajo
    .fix = Por corregir de paso
    .note = Para saber
    .before = Antes de que nadie empiece
phone-measured = Medido: { $text }.

phone-board =
    .left = desde la izquierda
    .up = hacia arriba
    .fasteners = fijaciones
phone-sheet = Hoja { $sheet }
phone-second = Segundos cortes de { $board }
phone-done = cortado, también agujeros y muescas
phone-flood = { $surface }: prueba de inundación
phone-water = { $surface }: impermeabilización
phone-saw = { $surface }: cortes en la sierra
phone-pole = Regla de hiladas: { $pole }
phone-need = se necesita { $need }
phone-found = Lo que está distinto en obra
phone-found_about = Mida el azulejo que llegó y apunte lo que está en otro lugar que en el dibujo.

phone-entry =
    .stud = Un montante o una vigueta que está en otro lugar: cuál y dónde
    .course = La primera hilada quedó en realidad a esta altura sobre el piso
    .found = Encontrado
    .flood_start = Llenado el día, a las
    .flood_level = Nivel en la marca al llenar
    .flood_end = Leído el día, a las
    .flood_end_level = Nivel en la marca entonces
    .tile_width = { $tile }, como llegó: ancho
    .tile_height = { $tile }, como llegó: alto
    .tile_thickness = { $tile }, como llegó: grueso
    .other = { $room }: cualquier otra cosa
