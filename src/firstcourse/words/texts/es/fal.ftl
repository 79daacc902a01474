# Not reviewed by a native setter yet.
# Shower floors: how they fall, what holds their water, and how large they are.

FAL-101 = Parte del piso de regadera queda a la vuelta de una esquina desde su coladera, y ahí se estancaría el agua.
    .move_drain = Mueva la coladera a { $along } a lo largo y { $out } hacia afuera: desde ahí se ven todos los lados.
    .part = Ninguna coladera sola ve todo el piso: divídalo con un lomo y dé a cada parte su propia coladera.

FAL-102 = El agua se estanca en { EACH("fal-spot", $along, $out, last: "and") }, a donde la llevan los planos.
    .longer_or_level = Use una coladera tan larga como ancho es el piso, o falls: level, cuyos planos llegan a todos los lados.

fal-spot = { $one } a lo largo y { $two } hacia afuera

FAL-103 = Ninguna altura sirve: el plano más largo necesita { $needed }, y el más corto permite { $allowed }.
    .measured = { FALL($measured) }
    .limit = a lo más { FALL($limit) }
    .move_drain = Mueva la coladera a { $along } a lo largo y { $out } hacia afuera.
    .square = { $first ->
        [square] Con
       *[other] O: con
    } falls: square el perímetro sube de { $low } a { $high } y la primera hilada se corta a eso.
    .linear = { $first ->
        [linear] {""}
       *[other] {"O: "}
    }{ fal-linear }
    .no_linear = { fal-no_linear }

FAL-104 = Los planos cumplen la pendiente mínima; sus valles no pueden sin un plano demasiado inclinado.
    .measured = { FALL($measured) }
    .limit = al menos { FALL($limit) }
    .nearer = Una coladera más cerca del centro los inclina más.
    .linear = { fal-linear }
    .no_linear = { fal-no_linear }

fal-linear = Una coladera lineal a todo lo largo de { $wall } lleva un solo plano que sube { $rises }.
fal-no_linear = Ninguna pared está libre para una coladera lineal a la que todo el piso caiga en un solo plano.

FAL-201 = El bordillo queda demasiado { $low ->
        [yes] bajo
       *[no] alto
    } sobre la coladera.
    .raise = Suba su tapa terminada a { UP($limit) }.
    .lower = Baje su tapa terminada a { DOWN($limit) }.

FAL-202 = El piso sube tan alto como el bordillo, que así no detiene agua.
    .measured = bordillo { $measured }, piso hasta { $rise }
    .limit = bordillo más alto que el piso
    .raise_or_nearer = Suba el bordillo a más de { UP($above) } sobre la coladera, o acerque la coladera.

FAL-203 = El rebaje es muy poco hondo para pendientes, cama y azulejo de una regadera sin bordillo.
    .deepen = Hágalo { UP($deeper) } más hondo donde el armazón lo permita, acerque la coladera a la entrada (ahí sube { $rise }), adelgace la cama, o haga un bordillo.

FAL-204 = { $doorway ->
        [yes] El piso de regadera no está a nivel a lo largo de este vano, así que cambia el escalón hacia el piso de afuera.
       *[no] El lado abierto no está a nivel, así que el piso del cuarto hace escalón a lo largo de él.
    }
    .measured = de { $low } a { $high } sobre { $doorway ->
        [yes] los tableros
       *[no] la coladera
    }
    .limit = a nivel
    .turn_or_level = Ponga una coladera lineal paralela { $doorway ->
        [yes] al vano
       *[no] al lado abierto
    }, o use falls: level.

FAL-205 = El piso al otro lado de este vano queda aquí más bajo que el piso de regadera, así que el agua se sale.
    .measured = piso de regadera hasta { $measured } sobre los tableros
    .limit = { $limit }, el piso del otro lado
    .deeper_or_kerb = Meta la cama { UP($lower) } más honda, adelgácela, acerque la coladera al vano, o ponga ahí un bordillo y délo.

FAL-211 = El piso terminado de la regadera es demasiado chico.
    .measured = { AREA($measured) }
    .limit = al menos { AREA($limit) }
    .move = Mueva el bordillo hacia afuera o una pared hacia atrás.

FAL-212 = La regadera es demasiado angosta entre sus paredes terminadas.
    .move = Mueva el bordillo hacia afuera o una pared hacia atrás.
    .move_or_larger = Mueva el bordillo hacia afuera o una pared hacia atrás; una regadera más grande puede ser más angosta en un sentido.

FAL-213 = El hueco por el que se entra es demasiado angosto.
    .widen = Ensanche el hueco del cancel o de la pared.

FAL-221 = { $at }: { $steep ->
        [yes] cae con demasiada pendiente
       *[no] no escurre el agua
    }.
    .measured = { FALL($measured) }
    .limit = { $steep ->
        [yes] a lo más
       *[no] al menos
    } { FALL($limit) }
    .drop = Déle una caída de { EACH("fal-drop", $drops, last: "to") } en { $depth }, hacia la coladera.

fal-drop = { FINE($one) }

FAL-301 = El azulejo { $tile } es demasiado grande para quedar sobre los quiebres de las pendientes.
    .cut_or_choose = Córtelo a lo largo de los valles, escoja un azulejo más chico, o use una coladera lineal con un solo plano.
