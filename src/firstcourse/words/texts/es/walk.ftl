# Por el cuarto con la cinta. Sin revisar por un instalador de lengua materna.

walk-length = { $length }

walk-begin =
    .title = Por el cuarto
    .room = ¿Cómo se llama el cuarto?
    .plain = Cuatro paredes, casi a escuadra
    .long_feet = Largo aproximado, en pies
    .wide_feet = Ancho aproximado, en pies
    .long_metres = Largo aproximado, en metros
    .wide_metres = Ancho aproximado, en metros
    .start_plain = Empezar a medir
    .other = Más de cuatro esquinas
    .note = Párese adentro y camine a lo largo de las paredes hacia la derecha. De cada pared diga más o menos cuánto mide y luego hacia dónde dobla.
    .about_feet = Más o menos cuánto mide esta pared, en pies
    .about_metres = Más o menos cuánto mide esta pared, en metros
    .start = Ya volví al principio: empezar a medir
    .back = Una pared atrás
    .taped = { $count ->
        [one] { $count } distancia medida
       *[other] { $count } distancias medidas
    }

walk-turn =
    .by90 = luego a la derecha
    .byleft90 = luego a la izquierda
    .by45 = luego media derecha
    .byleft45 = luego media izquierda

walk-tape =
    .feet = pies
    .inches = pulgadas
    .sixteenths = y de pulgada
    .mm = milímetros
    .next = sigue
    .back = borrar

walk-ask =
    .tape = Mida { $pair }
    .read = Eso marca la cinta
    .skip = Ahora no se puede medir

walk-answer =
    .closes = { $pair } mide { $length } y cierra a menos de { $off }.
    .noted = { $pair } mide { $length }.

walk-why =
    .side = { $pair } es un lado que todavía no se ha medido.
    .fixes = Sin { $pair } el cuarto todavía puede ladearse.
    .settles = Dos cuartos tienen estas medidas; { $pair } dice cuál es.
    .surer = { $pair } asegura más la esquina menos segura.
    .checks = { $pair } comprueba esquinas que nada comprueba todavía.
    .contradicts = Ningún cuarto tiene estas medidas. Vuelva a medir { $pair }; si está bien, revise las demás.
    .again = Vuelva a medir { $pair }.
    .long = { $pair } parece { $by } más largo de lo debido. Vuelva a medirlo.
    .short = { $pair } parece { $by } más corto de lo debido. Vuelva a medirlo.
    .among = Una de { $among } está mal. Si es { $pair }, por { $by }. Vuelva a medirla.

walk-stands =
    .sure = Cada esquina es segura a menos de { $within } y está comprobada. Con eso basta para planear.
    .within = Hasta ahora cada esquina es segura a menos de { $within }.
    .nothing_left = Ya no queda nada que medir que la asegure más.
    .write = Ponerlo en el trabajo

walk-taped =
    .title = Medido hasta ahora
    .pair = Esquinas
    .length = Marca
    .off = Se aparta
    .unchecked = sin comprobar
    .again = Otra vez
    .again_of = Medir { $pair } otra vez
    .skipped = Sin medir
    .unskip = { $pair } sí se puede medir
    .drop = Dejar este cuarto

walk-done =
    .title = { $room }: ¿qué se hace aquí?
    .where = ¿Dónde va?
    .new = Un cuarto nuevo
    .place = En lugar de { $room }, con todo lo que se dice de él
    .readings = Medidas nuevas de { $room }; lo demás queda
    .height = ¿Qué altura tienen las paredes? Déjelo vacío si la altura queda igual.
    .boarded = ¿Qué lleva paneles, además de las paredes de una tina?
    .floor = El piso
    .wall = Pared { $side }
    .studs_inch = Montantes, en pulgadas
    .studs_mm = Montantes, en milímetros
    .spacing = De centro a centro
    .first = { $side }: el primero desde { $corner }
    .write = Ponerlo en el trabajo

# Un solo formulario para una tina y lo que va con ella.
walk-bath =
    .title = ¿Qué hay en él?
    .tub = Una tina de pared a pared
    .usual_inch = En pulgadas. Lo que aparece aquí es lo usual; compárelo con el cuarto.
    .usual_mm = En milímetros. Lo que aparece aquí es lo usual; compárelo con el cuarto.
    .tub_side = Está a lo largo de la pared
    .tub_out = Borde del frente desde esa pared
    .tub_rim = Orilla sobre el piso
    .tub_top = Paneles hasta
    .tub_reach = Paneles de los extremos salen
    .membrane = Sobre los paneles va una membrana impermeable
    .pipes = ¿Dónde están la válvula, la salida y la cabeza de regadera?
    .pipes_left = En la pared de su extremo izquierdo
    .pipes_right = En la pared de su extremo derecho
    .pipes_none = En otro lugar, o no hay
    .pipes_spout = Salida sobre el piso
    .pipes_valve = Válvula sobre el piso
    .pipes_head = Cabeza de regadera sobre el piso
    .niche = Un nicho en la pared larga
    .niche_left = Desde la esquina izquierda
    .niche_bottom = Sobre el piso
    .niche_width = Ancho
    .niche_height = Alto
    .closet = Una brida de inodoro en el piso
    .closet_side = Medida desde la pared
    .closet_left = Centro desde su esquina izquierda
    .closet_out = Centro hacia afuera
