# Not reviewed by a native setter yet.
# The site pack: cover, surfaces, tickets, lists.

sitepack-name = juego de obra

sitepack-site =
    .client = Cliente
    .setter = Azulejero
    .address = Dirección
    .starts = Empieza
    .phone = Teléfono
    .ends = Termina

# How many sheets of a stock, and what is known of that number.
sitepack-sheets = hojas de { $stock }
    .fewest = { $used } (ningún acomodo que cumpla las reglas lleva menos)
    .fewest_of_these = { $used } (estos paneles no llevan menos; con otras juntas podrían ser menos)
    .at_least = { $used } (al menos { $least })
    .used = { $used }
sitepack-reused = sobrantes guardados que se usan
sitepack-up = paneles ya puestos, que se quedan como están
sitepack-boards = paneles
sitepack-cuts = cortes de borde a borde
sitepack-fasteners = fijaciones
sitepack-tiles = azulejos
    .found = { $whole } enteros, { $cut } { $cut ->
        [one] pieza cortada
       *[other] piezas cortadas
    }
sitepack-cost = costo de { $what ->
    [sheets] las hojas
   *[tiles] los azulejos
}

sitepack-more = { $count } más por corregir están en “{ sitepack-labels.more_fixes }”, al final.

sitepack-labels =
    .looked_by = Revisado por:
    .date = fecha:
    .scale = escala { $scale }
    .measured = Medido: { $text }.
    .do = Haga:
    .note = Para saber
    .more_fixes = Más por corregir de paso
    .about = Juego de obra. Lo que se queda en la oficina está en el juego de oficina. Este español aún no lo ha revisado un azulejero que lo hable de nacimiento.
    .stop = Detiene el trabajo
    .fix = Por corregir de paso
    .packs = Juegos de los cuartos
    .packs_about = Cada cuarto tiene su juego de obra y su juego de oficina en su carpeta; este tiene lo que todos los cuartos comparten. Una hoja que comparten varios cuartos se corta con el primero de ellos.
    .room = cuarto
    .folder = carpeta
    .boards = paneles
    .sheets_there = hojas que se cortan ahí
    .elsewhere = Se corta con otros cuartos
    .sheet = hoja
    .in_pack_of = en el juego de
    .before = Antes de que nadie empiece
    .drawings = Cómo leer los dibujos
    .key_open = queda abierto: ventana, nicho, lo que está ahí
    .key_cut = azulejo cortado; en una hoja de cortes: se guarda para después
    .key_waste = desperdicio
    .key_soft = junta flexible: sellador, sin boquilla
    .key_fasteners = fijaciones
    .key_added = pieza de madera por agregar
    .key_framing = armazón
    .key_line = línea que se tira
    .key_up = panel ya puesto: se queda
    .drawings_about = Cada superficie está dibujada desde dentro del cuarto. Las cifras al pie y a la izquierda son corridas: cada una se mide desde el extremo izquierdo o desde el pie; en pisos y techos, desde el borde inferior del dibujo.
    .contents = En este juego
    .unfolded = Escala { $scale }. El piso visto desde arriba, sus paredes abatidas sobre su pie y vistas desde dentro; muestra { $shows }. Punteado: el resto de una pared.
    .where = dónde
    .tile = azulejo
    .pattern = patrón
    .joint = junta
    .agreed = De acuerdo como está dibujado:
    .name = Nombre
    .signature = Firma del cliente
    .day = Fecha
    .board = panel
    .size = medida
    .fasteners = fijaciones
    .from_left = desde la izquierda
    .heights = En cada lectura: cuánto queda la superficie arriba (+) o abajo (-) de su mejor plano, y debajo lo que hay que hacer ahí con el primer remedio que cumple. Los volúmenes, los sacos y las otras maneras están en el juego de oficina.
    .softs = Juntas flexibles
    .softs_about = : sin boquilla, con sellador
    .chips = Piezas de mosaico por cortar
    .chips_about = , según dónde van: tienda las mallas en seco, márquelas y corte sobre la malla
    .checks = Paneles: revise esto antes de que el azulejo los cubra
    .tickets = Hojas de cortes
    .tickets_about = Marque y quiebre de borde a borde en orden, con la cara hacia arriba. En cada renglón: la parte que se corta; a qué distancia de su borde inferior o de su borde izquierdo; luego lo que queda abajo o a la izquierda | arriba o a la derecha del corte. Las partes se numeran como van saliendo.
    .second = Segundos cortes
    .second_about = Sesgos, muescas y agujeros, después de quebrar la parte; vistos por la cara, cifras desde su esquina inferior izquierda. Punteado: la parte.
    .slight = Sesgos leves
    .slight_about = No más de dos marcas de la cinta en todo el panel: quítelo con la escofina donde tenga que entrar. Borde inferior | superior, borde izquierdo | derecho.
    .lower_upper = inferior | superior
    .left_right = izquierdo | derecho
    .falls = Escala { $scale }. Las flechas apuntan hacia abajo en cada plano, con su pendiente; las líneas gruesas quebradas son valles, las delgadas son lomos. Las alturas son sobre la tapa de la coladera.
    .height = altura
    .found = encontrado
    .flood = Tarjeta de la prueba de inundación
    .water = Impermeabilización
    .water_by = Revisado antes del azulejo:
    .poles = Reglas de hiladas
    .poles_about = Un palo liso para cada lista. Enganche la cinta en su punta y marque los bordes inferiores o izquierdos a estas medidas. Ponga la marca en letra gruesa en su línea de la pared o del piso; la punta del palo no tiene que tocar nada.
    .mark = marca
    .from_end = desde la punta
    .saw = Cortes de azulejo
    .saw_about = Las letras son las de los dibujos. Lo que está en la lista se corta a la medida en su lugar: cortes rectos, medidos ahí. Lo que está dibujado tiene una muesca, un agujero o un sesgo y se ve por la cara; los bordes gruesos son los del azulejo, los delgados se cortan; las cifras corren desde la esquina inferior izquierda de cada pieza.
    .shopping = Para comprar
    .buy = comprar
    .what_pack = qué, empaque
    .need = se necesita

# What a room's drawing shows.
sitepack-shows = { $tiled ->
    [yes] azulejo donde lo hay, paneles en lo demás
   *[no] paneles
}
