# Not reviewed by a native setter yet.
# How boards cover a surface, and what holds them.

boards-area = Área de { PLACE($at) } cubierta con panel
    .formula = suma de las áreas de los paneles, menos los agujeros
    .source = método de coordenadas
    .result = { FIGURES($result, decimals: 2) }

boards-fasteners = Fijaciones de { PLACE($at) }
    .formula = suma de las fijaciones de los paneles
    .name-edge = desde los bordes
    .name-corner = desde las esquinas
    .unsaid-of = -
    .name-each = cada panel
    .value-each = { EACH("boards-fastened", $of, $each) }
    .result = { $result } { $result ->
        [one] fijación
       *[other] fijaciones
    }

boards-fastened = { $one } { $two }

boards-practice = Hojas de { THING($at) } por la práctica usual
    .formula = hojas enteras desde la esquina inferior izquierda, lo demás cortado de lo que sobra
    .source = práctica común
    .unsaid-keeps = -
    .unsaid-faults = -
    .unsaid-numbers = -
    .result = { $result } { $result ->
        [one] hoja
       *[other] hojas
    }
    .argument-1 = { $keeps ->
            [yes] -
           *[no] La práctica usual no cumple aquí todas las reglas: { EACH("boards-fault", $numbers, $faults) }.
        }

boards-fault = { $two ->
        [BRD-101] { $one ->
            [one] { $one } pieza
           *[other] { $one } piezas
        } por agregar detrás de juntas que este plan no necesita (boards.bearing.min)
        [BRD-201] { $one ->
            [one] { $one } junta de extremo más cerca de lo pedido
           *[other] { $one } juntas de extremo más cerca de lo pedido
        } (boards.stagger.end_joints)
        [BRD-202] { $one ->
            [one] { $one } lugar donde se juntan cuatro paneles
           *[other] { $one } lugares donde se juntan cuatro paneles
        } (boards.stagger.end_joints)
        [BRD-203] { $one ->
            [one] { $one } junta demasiado cerca de una junta de tablero
           *[other] { $one } juntas demasiado cerca de una junta de tablero
        } (boards.offset.panel_joints)
        [BRD-204] { $one ->
            [one] { $one } panel más angosto que la pieza mínima
           *[other] { $one } paneles más angostos que la pieza mínima
        } (boards.piece.min)
        [BRD-205] { $one ->
            [one] { $one } brazo más angosto de lo pedido
           *[other] { $one } brazos más angostos de lo pedido
        } (boards.limb.min)
       *[BRD-301] { $one ->
            [one] { $one } superficie que ninguna hoja puede cubrir
           *[other] { $one } superficies que ninguna hoja puede cubrir
        }
    }

# What is looked at before tile covers the boards.
boards-checks =
    .mortar = Los paneles de piso van en mortero fresco, peinado con diente de { $notch }; ninguno va en seco.
    .gaps = Holguras: { $gaps }; ningún panel toca al vecino.
    .edge_kept = Los paneles que nombran los hallazgos conservan el borde de la hoja y tienen la holgura que ahí se dice: al menos { $least }.
    .cut_back = Los paneles que nombran los hallazgos se cortan separados de la pared y tienen la holgura que ahí se dice: a lo más { $most }.
    .foot = En piso, tina, plato y bordillo quedan abiertos { $gap } y se llenan con sellador, { $depth } de hondo; ahí no hay mortero.
    .fasteners = Fijaciones ({ $type }) a lo más a { $spacing } una de otra, a { $edge } o más de los bordes y { $corner } de las esquinas; cabezas al ras, ninguna atraviesa la cara.
    .zones = No hay fijaciones en las zonas que nombran los dibujos y la lista de impermeabilización.
    .members = Están puestas las piezas que los dibujos muestran con líneas gruesas quebradas.
    .tape = Cada junta y esquina interior va llena y encintada, cinta de { $tape } asentada en mortero.
boards-gap =
    .between = { $gap } entre paneles
    .perimeter = { $gap } en paredes y techo
    .opening = { $gap } alrededor de los vanos
boards-spacing = { $surfaces ->
    [floor] { $floor } en pisos
    [wall] { $wall } en paredes y techos
   *[both] { $floor } en pisos y { $wall } en paredes y techos
}

# The page of a boarded surface.
boards-up = { $wall ->
    [yes] desde el pie
   *[no] desde el borde inferior
}
boards-off_drawing = { $count ->
    [one] La esquina { $one } queda fuera del dibujo. Las cifras corren desde la esquina { $first }.
   *[other] La esquina { $one } queda fuera del dibujo; la esquina { $two } queda fuera del dibujo. Las cifras corren desde la esquina { $first }.
}
# A board that is up already: under its mark and in the list, and the key of the hatching.
boards-standing = puesto
boards-kept = Con rayado ancho y la palabra puesto: { $marks } { $count ->
    [one] ya está en su lugar y se queda como está; para él no se corta nada.
   *[other] ya están en su lugar y se quedan como están; para ellos no se corta nada.
}
boards-many = A esta escala las marcas tapan algunas fijaciones; la lista da su número.
