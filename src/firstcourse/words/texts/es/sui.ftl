# Not reviewed by a native setter yet.
# Whether frame, panel and surface will carry tile, and what the layers do to heights.

# What to do that several findings have in common.
sui-remedies =
    .engineer_holds = Primero un ingeniero; luego, según el cálculo, esta revisión cumple: { EACH("sui-measure", $alone, between: ". O: ") }.
    .engineer_none = Primero un ingeniero: ninguna medida sola hace que esta revisión cumpla.
    .whole_holds = Todo ({ WORD($kind) }) pasa con: { EACH("sui-measure", $whole, between: "; ") }.
    .whole_none = Nada de lo calculado aquí hace que todo ({ WORD($kind) }) pase: que lo diseñe un ingeniero con licencia.
    .longest = Estas viguetas lo cargan en { DOWN($longest, feet: "no") } a lo más (rige { WORD($governs) }).
    .add_member = Antes de poner paneles agregue una pieza ({ WORD($member) }) en cada claro más ancho, para que ninguna quede a más de { SPACED($limit) }, y délas (framing, members).
    .lighter = Use azulejo más ligero.
    .screw = Atornille cada tabla a cada vigueta que cruza, con { $screws ->
        [two] dos tornillos
        [three] tres tornillos
       *[by_width] dos tornillos, o tres donde es más ancha que { THICK($wide) }
    }, y quite lo que esté abarquillado, rajado o podrido.
    .ask = Pregunte a { $named ->
        [yes] { $who }
       *[no] un ingeniero estructural con licencia
    }.
    .screw_layers = Atornille bien las capas; un tablero más rígido, o viguetas más juntas, lo disminuye.
    .second_layer = Una segunda capa de { THICK($layer) }, atornillada a la primera, lo lleva a { $gained }, { $keeps ->
        [yes] que cumple
       *[no] aún sin cumplir
    }.
    .use = Use { LIST($fit, between: " o ") }.
    .use_board = Use { EACH("sui-board", $fit, $standards, $known, between: " o ") }.
    .none_known = El libro de reglas no tiene ninguno para esta zona: pregunte a su fabricante.
    .no_board = El libro de reglas no tiene panel para esta zona: pregunte por escrito al fabricante del panel.
    .leave_out = Quite el retardador de atrás.

sui-measure = { $one ->
        [sister_full] Refuerce cada vigueta con otra gemela en todo su largo
        [sister_part] Refuerce cada vigueta con otra gemela en la parte media de su claro
        [mid_support] Cargue las viguetas a medio claro en una viga con postes
        [added_joists] Agregue una vigueta a la mitad entre las que hay
        [second_layer] Agregue una segunda capa de tablero, atornillada a la primera
        [thinner_bed] Pegue sobre panel en capa delgada en lugar de cama de mortero
        [other_finish] Escoja azulejo cerámico en lugar de piedra
        [blocking] Agregue bloqueo entre las viguetas (reparte cargas y las afirma, pero aquí no se cuenta como rigidez)
        [added_studs] Agregue un montante a la mitad entre los que hay
        [deeper_studs] Use montantes del siguiente peralte
        [thicker_steel] Use montantes del siguiente espesor de acero
        [ceiling_sister] Refuerce cada vigueta de techo con otra gemela en todo su largo
        [ceiling_joists] Agregue una vigueta a la mitad entre las que tiene el techo
       *[ceiling_support] Cargue las viguetas de techo a medio claro en una viga arriba o una pared abajo
    }

sui-board = { WORD($one) }{ $three ->
        [yes] {" "}({ $two })
       *[no] {""}
    }

# Joists.

SUI-101 = La separación de viguetas no cumple.
    .measured = { SPACED($measured, $limit) }
    .limit = a lo más { SPACED($limit) }

SUI-102 = La carga muerta no cumple.
    .measured = { PLAIN($measured) }
    .limit = a lo más { PLAIN($limit) }

SUI-103 = La flexión no cumple.

SUI-104 = El cortante no cumple.

SUI-105 = El apoyo no cumple.

SUI-106 = El largo de apoyo no cumple.
    .measured = { SPACED($measured, $limit) }
    .limit = al menos { SPACED($limit) }

SUI-107 = La deflexión por carga viva (acabado) no cumple.

SUI-108 = La deflexión total no cumple.

SUI-109 = La deflexión por carga viva (código) no cumple.

SUI-110 = { $unknown ->
        [both] Especie y grado
        [species] Especie
       *[grade] Grado
    } sin saber: se toma el menor de cada valor de diseño del libro de reglas.
    .stamp = Lea el sello de grado en las viguetas y délo.

SUI-111 = De viguetas dadas por EI solo se revisa la rigidez: no la flexión, el cortante, el apoyo, los agujeros ni la deflexión por cortante.
    .tables = Compare las cargas con las tablas del fabricante de las viguetas.

SUI-112 = La separación de viguetas de techo no cumple.
    .measured = { SPACED($measured, $limit) }
    .limit = a lo más { SPACED($limit) }

SUI-113 = Las tablas de claros del código no tienen una carga así; este piso se revisa por los valores de diseño de sus viguetas.
    .measured = { PLAIN($measured) }
    .limit = a lo más { PLAIN($limit) }
    .confirm = Que la oficina de construcción o un ingeniero con licencia confirme el piso con esta hoja.

SUI-114 = No se sabe cuánto pesa { THING($also) }; las viguetas se revisan con { FIGURES($weight, decimals: 0) }.
    .enter = { $what ->
        [tub] Dé lo que pesa llena (openings, weight).
        [kerb] Diga de qué está hecho (shower, kerb, body: solid o framed).
       *[bench] Diga cómo está hecha (benches, body: solid, framed o hung).
    }

SUI-115 = No se sabe si este armazón carga los paneles: corre más de { FIGURES($limit, decimals: 0) } desviado de como van, así que ningún borde corre a lo largo de una pieza.
    .measured = { FIGURES($measured, decimals: 0) } fuera de escuadra{ $several ->
        [yes] ; a { TAPE($apart) }, que son { TAPE($shorter_way) } y { TAPE($longer_way) } a lo largo de los bordes de los paneles
       *[no] {""}
    }
    .limit = a lo más { FIGURES($limit, decimals: 0) } fuera de escuadra
    .battens = Atornille listones atravesados, a escuadra con el cuarto, y délos como armazón; o pregunte al fabricante del panel o a un ingeniero. Los paneles dibujados aquí son solo una estimación de hojas.

SUI-120 = { CAPITAL(WORD($cut)) } { $number }, { $what ->
        [hole_share] diámetro
        [hole_edge] distancia a un borde o a otro corte
        [notch_length_share] largo
        [notch_clear_share] alcance desde el apoyo más cercano
        [notch_thick] espesor de la vigueta donde trabaja a tensión
       *[notch_depth_share] hondo
    }: pasa el límite del código.
    .measured = { SPACED($measured, $limit) }
    .limit = { $what ->
        [hole_edge] al menos { SPACED($limit) }
       *[notch_depth_share] a lo más { FIGURES($limit, decimals: 2) }
    }
    .design = Que lo diseñe un ingeniero con licencia; una vigueta cortada no se juzga solo con esta revisión.

SUI-121 = Un corte en una vigueta de ingeniería solo lo juzga su fabricante.
    .ask_maker = Pregunte por escrito al fabricante de la vigueta o a un ingeniero.

SUI-130 = Una losa, según lo dado: nada se flexiona entre viguetas, así que no se revisan ni armazón ni tablero. Cuentan qué tan plana y qué tan seca está, sus grietas y sus juntas.
    .enter = Dé { LIST($wanted) }.

# What lies on the joists.

SUI-201 = Tablero bajo carga puntual{ $advised ->
        [yes] : la clasificación de claro del tablero permite estas viguetas; el límite es un consejo para azulejo.
       *[no] {" "}no cumple.
    }

SUI-202 = Tablero bajo carga uniforme{ $advised ->
        [yes] : la clasificación de claro del tablero permite estas viguetas; el límite es un consejo para azulejo.
       *[no] {" "}no cumple.
    }

SUI-203 = La capa de tablero más gruesa no cumple.
    .measured = { THICK($measured) }
    .limit = al menos { THICK($limit) }

SUI-204 = Una capa de tablero de { THICK($measured) } cuenta como { THICK($counted) }, la siguiente más delgada del libro de reglas.
    .measured = {""}
    .stamp = Lea la clasificación de claro en su sello y déla (panels, ratings).

SUI-205 = La clasificación de claro del tablero no cumple.
    .measured = { SPACED($measured, $limit) }
    .limit = a lo más { SPACED($limit) }

SUI-206 = La flexión del tablero no cumple.
    .measured = { FIGURES($measured, decimals: 0) }
    .limit = a lo más { FIGURES($limit, decimals: 0) }

SUI-207 = Nada va directo sobre tablas, ni paneles ni azulejo: { $why }.
    .measured = sin tablero sobre las tablas
    .limit = un tablero de al menos { THICK($limit) }
    .panel_over = Luego atornille a ellas un tablero de ese espesor o más, su lado largo atravesado y sus juntas fuera de las de ellas, y délo (panels); o levante las tablas y ponga tableros sobre las viguetas.

SUI-208 = El tablero sobre las tablas es demasiado delgado para cargar azulejo.
    .measured = { THICK($measured) }
    .limit = al menos { THICK($limit) }
    .thicker = Luego ponga un tablero más grueso, o una segunda capa tan gruesa como el límite.

SUI-209 = { $known ->
        [yes] { CAPITAL(WORD($deck)) }
       *[no] Un tablero de clase que no se dice
    }: demasiado delgado para la separación de las viguetas.
    .measured = { THICK($measured) }, viguetas a { SPACED($spacing) }
    .limit = { $too_far ->
        [yes] viguetas a lo más a { SPACED($limit) }
       *[no] al menos { THICK($limit) } para viguetas hasta a { SPACED($up_to) }
    }
    .thicker = Ponga viguetas o bloqueo en medio, o levántelo y ponga algo bastante grueso.{ $known ->
        [yes] {""}
       *[no] {" "}Diga qué son los tableros (panels, material): el triplay puede ser más delgado.
    } Las viguetas son estructura: primero deciden el código local y una persona con licencia.

SUI-210 = { SUI-209 }
    .measured = { SUI-209.measured }
    .limit = { SUI-209.limit }
    .thicker = { SUI-209.thicker }

SUI-211 = Las tablas cuentan como masa, no como rigidez, donde se revisa el tablero sobre ellas.
    .joints = Deje las juntas del tablero fuera de las de las tablas, y sus tornillos fuera de las viguetas.

SUI-212 = No se sabe si { WORD($deck) } de { THICK($thickness) } carga azulejo sobre viguetas a { SPACED($spacing) }: el libro de reglas no tiene cifra para eso en la práctica { WORD($practice) }.

# Studs, and what hangs on boards.

SUI-301 = La separación de montantes no cumple.
    .measured = { SPACED($measured, $limit) }
    .limit = a lo más { SPACED($limit) }

SUI-302 = La rigidez de los montantes ({ $by }) no cumple.

SUI-303 = El espesor del acero no cumple.

SUI-304 = El azulejado es demasiado pesado para { WORD($backing) }.
    .thinner = Use azulejo más delgado, o un panel cuyo fabricante le permita cargar más.

SUI-305 = Azulejo chico tan pesado sobre { WORD($backing) } pide una cama maciza.
    .limit = { $limit }, { PLAIN($share) } de lo que carga { WORD($backing) }
    .butter = Peine y unte de modo que ningún cordón quede abierto detrás del azulejo.

SUI-310 = Un número de calibre quiere decir varios espesores de acero, así que no se revisa la rigidez: calibre 20 es { $gauge }.
    .measured = solo calibre
    .stamp = Lea el espesor en mils en el sello del montante, o pregunte al proveedor, y délo.

# How flat, plumb and level a surface is.

SUI-401 = { $laid ->
        [yes] No es bastante plano para este azulejo bajo una regla; lugar: { $place }.
       *[no] Planitud, regla { WORD($edge) }: no es bastante plano para este azulejo.{ $handed_over ->
            [yes] {" "}Se entregó correctamente como plano a { PLAIN($accepted) }; el azulejo pide más.
           *[no] {""}
        }
    }
    .measured = { $laid ->
        [yes] { TAPE($measured) } bajo { TAPE($reach) }
       *[no] { BESIDE($measured, $limit) }
    }
    .limit = a lo más { FINE($limit) }
    .fill_or_grind = Llene o desbaste ahí; lecturas en cuadrícula dan el volumen, los sacos y las calzas. { $caution }
    .ways = Según el cálculo: { $floor ->
        [yes] { EACH("sui-fill", $names, $litres, $bags, $deep, $off, between: ". O: ") }
       *[no] { EACH("sui-straighten", $names, $studs, $deep, between: ". O: ") }
    }.
    .with_care = { $caution }
    .rebuild = Ninguna medida sola lo deja plano: rehaga la peor parte, o escoja azulejo más chico.

SUI-402 = { SUI-401 }
    .measured = { SUI-401.measured }
    .limit = { SUI-401.limit }
    .fill_or_grind = { SUI-401.fill_or_grind }
    .ways = { SUI-401.ways }
    .with_care = { SUI-401.with_care }
    .rebuild = { SUI-401.rebuild }

sui-fill = { $one ->
        [smaller_tile] Escoja un azulejo de lado menor que el de azulejo grande
        [patch] Llene cada bajo hasta el plano que pasa por los más altos: { sui-fill.much }
        [level_out] Vacíe nivelador en todo el piso, a nivel: { sui-fill.much }
       *[grind] Desbaste los altos y llene los bajos a un solo plano: { sui-fill.much }, hasta { TAPE($five) } desbastados
    }
    .much = { FIGURES($two, decimals: 1) }, { $three } { $three ->
        [one] saco
       *[other] sacos
    }, hasta { TAPE($four) } de hondo

sui-straighten = { $one ->
        [shim] Calce los montantes hasta el más salido
       *[plane_down] Cepille los montantes salidos hasta el más hundido
    }: { $two } { $two ->
        [one] montante
       *[other] montantes
    }, hasta { TAPE($three) }

SUI-403 = Contra el mejor plano, { $high ->
        [yes] lo más alto { sui-place.highs }{ $low ->
            [yes] ; lo más bajo { sui-place.lows }
           *[no] {""}
        }
       *[no] lo más bajo { sui-place.lows }
    }.
    .grind = Desbaste o cepille primero lo más alto; llene lo que después siga bajo. { $caution }
    .studs = El cálculo lista cada montante con lo que hay que calzar o cepillar.

sui-place =
    .highs = { $way ->
        [string] { EACH("sui-off.string", $high_off, $high_left, $high_on) }
        [out] { EACH("sui-off.out", $high_off, $high_left, $high_on) }
       *[up] { EACH("sui-off.up", $high_off, $high_left, $high_on) }
    }
    .lows = { $way ->
        [string] { EACH("sui-off.string", $low_off, $low_left, $low_on) }
        [out] { EACH("sui-off.out", $low_off, $low_left, $low_on) }
       *[up] { EACH("sui-off.up", $low_off, $low_left, $low_on) }
    }
    .unseen = { $way ->
        [string] { EACH("sui-spot.string", $left, $on) }
        [out] { EACH("sui-spot.out", $left, $on) }
       *[up] { EACH("sui-spot.up", $left, $on) }
    }

sui-off =
    .string = { TAPE($one, sign: "yes") } a { TAPE($two) } de la izquierda
    .out = { TAPE($one, sign: "yes") } a { TAPE($two) } de la izquierda y { TAPE($three) } hacia afuera
    .up = { TAPE($one, sign: "yes") } a { TAPE($two) } de la izquierda y { TAPE($three) } de altura

sui-spot =
    .string = a { TAPE($one) } de la izquierda
    .out = a { TAPE($one) } de la izquierda y { TAPE($two) } hacia afuera
    .up = a { TAPE($one) } de la izquierda y { TAPE($two) } de altura

SUI-404 = { $laid ->
        [yes] Las reglas puestas no alcanzan a decir qué tan plano es bajo { TAPE($reach) }.
       *[no] Las lecturas quedan demasiado separadas para decir qué tan plano es bajo { TAPE($reach) }{ $everywhere ->
            [yes] {""}
           *[no] {" "}en { sui-place.unseen }{ $more ->
                [0] {""}
               *[other] {" "}y { $more } más
            }
        }.
    }
    .measured = { $laid ->
        [yes] { TAPE($measured) } bajo { TAPE($longest) }
       *[no] todas las lecturas entre dos planos paralelos a { FIGURES($measured) }
    }
    .limit = a lo más { TAPE($limit) } bajo { TAPE($reach) }
    .lay = Ponga una regla de { TAPE($reach) } y dé los huecos.
    .lay_or_read = Ponga una regla de { TAPE($reach) } donde se ve peor y dé los huecos, o tome lecturas otra vez, a { TAPE($half) } o más cerca.

SUI-411 = La pared se inclina hacia { $inwards ->
        [yes] adentro
       *[no] afuera
    } del cuarto en su altura.
    .measured = { TAPE($measured) } en { TAPE($height) }
    .limit = a lo más { TAPE($limit) } en esa altura
    .fur = Suplemente los montantes con tiras sesgadas, { UP($foot) } en el borde de panel más bajo y { UP($top) } en el más alto.

SUI-412 = Si se deja así, el azulejo se inclina { $inwards ->
        [yes] sobre
       *[no] hacia atrás de
    } { WORD($over) }: arriba queda { TAPE($measured) } { $inwards ->
        [yes] más cerca
       *[no] más atrás
    } que en el borde, y un cancel a plomo muestra una rendija que se abre otro tanto. Puesta a plomo, paneles y azulejo cubren { TAPE($furred) } más del borde.
    .measured = { TAPE($measured) } en { TAPE($tiled) } de azulejo
    .fur_and_lap = Suplemente antes de poner los paneles, y vea que aún traslapen la ceja que tienen enfrente.
    .fur_top = Suplemente la parte alta antes de poner los paneles; el traslape en el borde casi no cambia.

SUI-413 = En { THING($corner) }, { THING($wall) } se inclina hacia { $inwards ->
        [yes] adentro
       *[no] afuera
    }, así que el último corte aquí se hace más { $wider ->
        [yes] ancho
       *[no] angosto
    } hacia arriba.
    .measured = { TAPE($measured) } en { TAPE($tiled) } de azulejo
    .limit = a lo más { TAPE($limit) } antes de que se note
    .fur = Suplemente { THING($wall) } hasta dejarla a plomo, o deje ancho el corte y mídalo al pie y arriba.

SUI-414 = El piso sube de { THING($low) } a { THING($high) }: una primera hilada a nivel se corta { TAPE($measured) } más alta en { THING($low) } que en { THING($high) }.
    .limit = a lo más { TAPE($limit) } antes de que se note
    .level = Nivele el piso, o empiece de una línea a nivel y trace la hilada más baja, de al menos medio azulejo de alto.

# Materials in their places, water and damp.

SUI-501 = { CAPITAL(WORD($board)) } no puede ir en una zona { WORD($zone) }{ $because ->
        [yes] : { $why }
       *[no] {""}
    }{ $unlisted ->
        [yes] , y el código residencial no lo admite bajo azulejo mojado desde { NUMBER_OF($year) }
       *[no] {""}
    }.
    .measured = { WORD($zone) }
    .limit = zonas: { $zones }

SUI-502 = { $membrane ->
        [yes] Membrana en la cara
       *[no] La cara recubierta del panel
    } y retardador atrás encierran humedad en el panel.
    .measured = { PLAIN($measured) } barreras
    .limit = exactamente { PLAIN($limit) }
    .one_barrier = Quite el retardador de atrás: sin plástico, y con el papel del aislante cortado.
    .outer_wall = Que la barrera de la pared la ponga quien responde por la pared exterior.

SUI-503 = El agua que pasa azulejo y panel llega al armazón.
    .measured = sin barrera
    .limit = exactamente { PLAIN($limit) }
    .membrane = Ponga una membrana en la cara del panel.

SUI-504 = En vapor solo una membrana en la cara mantiene el vapor fuera del panel.
    .measured = sin membrana en la cara
    .limit = membrana en la cara
    .membrane = Ponga la membrana en la cara y quite el retardador de atrás.

SUI-505 = El armazón está demasiado mojado: se encogerá detrás del azulejo.
    .measured = { PLAIN($measured) }
    .limit = a lo más { PLAIN($limit) }
    .dry = Déjelo secar y mida otra vez antes de poner paneles.

SUI-507 = Cerca de calor { WORD($board) } por sí solo no protege: la madera detrás se calienta igual.
    .clearances = Guarde las distancias del fabricante del aparato y del código local contra incendios.

SUI-508 = { CAPITAL(WORD($board)) } nunca va sobre un retardador de vapor: lo que entra no se puede secar.
    .measured = retardador atrás
    .limit = ninguno

SUI-509 = Esta membrana no detiene lo que aquí debe: { $material ->
        [crack_isolation] membrana antigrietas (ANSI A118.12), que no detiene agua
        [low_perm] membrana impermeable adherida de baja permeancia (ANSI A118.10, a lo más 0.5 perm por ASTM E96 método E)
       *[waterproof] membrana impermeable adherida (ANSI A118.10)
    }.
    .measured = { WORD($material) } en una zona { WORD($zone) }
    .limit = { $steam ->
        [yes] a lo más { PLAIN($limit) }
       *[no] zonas: { $zones }
    }

SUI-510 = Nada se pega sobre { WORD($over) }: { $why }.
    .measured = { WORD($over) }
    .take_out = Quítelo hasta tableros o losa sanos antes de poner paneles.

SUI-511 = Este mortero no dura aquí: { $material ->
        [epoxy] mortero epóxico (ANSI A118.3; EN 12004 R2)
        [improved] thinset modificado mejorado (ANSI A118.15; EN 12004 C2 S1)
        [modified] thinset modificado (ANSI A118.4; EN 12004 C2)
        [organic_adhesive] adhesivo orgánico (mastique, ANSI A136.1)
       *[unmodified] thinset sin modificar (ANSI A118.1; EN 12004 C1)
    }.
    .measured = { WORD($material) } en una zona { WORD($zone) }
    .limit = zonas: { $zones }

SUI-512 = Esta fijación no dura aquí: { $material ->
        [backer_screw] tornillo para panel de respaldo, resistente a la corrosión
        [drywall_screw] tornillo para tablarroca, que se oxida en mortero y se descabeza
        [roofing_nail] clavo para techo galvanizado por inmersión
        [stainless] tornillo de acero inoxidable
       *[staple] grapa, que agarra muy poco
    }.
    .measured = { WORD($material) } en una zona { WORD($zone) }
    .limit = zonas: { $zones }

SUI-513 = { $known ->
        [yes] { CAPITAL(WORD($class)) }
       *[no] muy absorbente
    }: esa clase de azulejo no dura en { $floor ->
        [yes] un piso
       *[no] una superficie
    } en una zona { WORD($zone) }.
    .measured = absorción de agua de { PLAIN($measured) }
    .limit = { EACH("sui-class", $fit, $shares) }
    .denser = Escoja azulejo que absorba menos agua.

sui-class = { WORD($one) } (a lo más { PLAIN($two) })

SUI-514 = El mortero ({ WORD($mortar) }) no agarra en azulejo que no absorbe agua.
    .measured = { WORD($mortar) }
    .limit = { $bonding }
    .use_mortar = Use mortero { LIST($bonding, between: " o ") }.

SUI-515 = El azulejo es demasiado resbaloso para un piso que se pisa mojado.
    .more_grip = Escoja azulejo con más agarre; llegar apenas al límite no prueba que sirva para regaderas.

SUI-516 = La losa está húmeda: las membranas y morteros con polímero pueden soltarse, y suben sales a las juntas.
    .measured = { PLAIN($measured) } de humedad relativa
    .limit = a lo más { PLAIN($limit) } de humedad relativa
    .dry = Déjela secar y mida otra vez, o ponga una membrana contra humedad cuyo fabricante permita esta lectura.

SUI-517 = La losa suelta mucha humedad: las membranas y morteros con polímero pueden soltarse.
    .measured = { PLAIN($measured) } en 24 h
    .limit = a lo más { PLAIN($limit) } en 24 h
    .dry = Mida la humedad dentro de la losa, o ponga una membrana contra humedad cuyo fabricante permita esta lectura.

SUI-518 = El libro de reglas no tiene límite para esta lectura de humedad en la práctica '{ $practice }'.
    .measured = { PLAIN($measured) }{ $reading ->
        [slab_humidity] {" "}de humedad relativa
        [slab_emission] {" "}en 24 h
       *[wood] {""}
    }
    .ask_makers = Pregunte a los fabricantes de membrana y mortero qué permiten.

SUI-519 = En esta práctica ya no se azuleja directo en paredes sobre { WORD($board) }.
    .measured = { WORD($board) }
    .limit = un panel de respaldo

# Heights: doorways, fittings, falls.

SUI-601 = Del otro piso a este cuarto hay aquí un escalón { $up ->
        [yes] hacia arriba
       *[no] hacia abajo
    }.
    .profile = Use un reductor biselado de al menos { UP($long) } de largo (1 en { $slope }).

SUI-602 = { SUI-601 }
    .profile = Use un umbral en rampa de al menos { UP($long) } de largo (1 en { $slope }), o capas { UP($over) } más { $up ->
        [yes] delgadas
       *[no] gruesas
    } en total.

SUI-603 = La puerta { $drags ->
        [yes] rozará en
       *[no] no abrirá sobre
    } el piso terminado.
    .cut = Corte { UP($off) } de la puerta antes de azulejar.

SUI-604 = { CAPITAL(THING($also)) } termina { $above ->
        [yes] demasiado arriba de
       *[no] abajo de
    } el piso terminado.
    .measured = { TAPE($measured) } { $above ->
        [yes] arriba
       *[no] abajo de
    }
    .limit = 0 a { TAPE($limit) } arriba
    .lower = Que un plomero la baje { UP($by) } o más.
    .rings = Agregue anillos de extensión de { UP($by) } a { TAPE($at_most) } en total; dos anillos de cera no son un anillo.
    .bring_up = Que un plomero la suba de { UP($by) } a { TAPE($at_most) }.

SUI-605 = La pared terminada queda { $beyond ->
        [yes] más allá
       *[no] más acá
    } del margen de { THING($also) }.
    .measured = { TAPE($measured) }{ $furred ->
        [yes] , con { TAPE($furring) } de suplemento
       *[no] {""}
    }
    .limit = de { TAPE($from) } a { TAPE($to) } desde las caras de los montantes
    .move = Que la muevan hacia { $beyond ->
        [yes] afuera
       *[no] atrás
    } { UP($by) } o más antes de poner paneles.

SUI-606 = El perfil de borde termina { $above ->
        [yes] arriba
       *[no] abajo de
    } del azulejo.
    .limit = { TAPE($limit) } (azulejo y mortero), { TAPE($give) } de más o de menos
    .trim = Use perfil de { TAPE($limit) }.

SUI-607 = The { THING($also) } ends { $below ->
        [yes] demasiado abajo del piso terminado.
       *[no] arriba del piso terminado: el agua se estanca a su alrededor.
    }
    .measured = { TAPE($measured) } { $below ->
        [yes] abajo de
       *[no] arriba
    }
    .limit = 0 a { TAPE($limit) } abajo
    .raise = Suba su borde de { UP($by) } a { TAPE($measured) } con una extensión.
    .lower = Baje su borde { UP($measured) }.

SUI-608 = El margen de profundidad de { THING($also) } solo se cumple con la pared suplementada a plomo.
    .measured = { SUI-605.measured }
    .limit = { SUI-605.limit }
    .fur = Suplemente la pared como dice su propio hallazgo, o que muevan la válvula.

SUI-610 = El techo de este cuarto de vapor { $known ->
        [yes] está
       *[no] puede estar
    } demasiado a nivel: lo que ahí se condensa debe correr a una pared, o gotea sobre quien está sentado abajo.
    .measured = { $known ->
        [yes] { $level ->
            [yes] a nivel
           *[no] { FALL($measured) }
        }
       *[no] {""}
    }
    .limit = al menos { FALL($limit) }
    .heights = Dé su altura en cada esquina.
    .frame = Arme su caída de { UP($down) } en los { TAPE($run) } de pared a pared, o la mitad de eso del centro a los dos lados, antes de poner paneles; alejándola de la puerta y de los asientos.

SUI-611 = Las paredes de este cuarto están en vapor, que sube; nada dice que el techo lo detenga.
    .measured = { $told ->
        [yes] zona: { WORD($zone) }
       *[no] no se dio exposure
    }
    .limit = una membrana de a lo más { PLAIN($limit) } en su cara
    .exposure = Dé al techo una exposure con zone: steam, membrane: yes y membrane_kind: low_perm, o que quien lo cierre haga lo mismo.

# What was not judged, and by whom else.

SUI-900 = { RULE($caution) }

SUI-901 = No se sabe si este armazón carga azulejo: el libro de reglas no tiene { $partly ->
        [yes] ningún valor de { $missing }
       *[no] cargas ni valores de diseño
    } de la práctica { WORD($practice) } el { $day }. Separación, tableros, planitud, materiales, humedad y capas se revisan hasta donde tiene sus reglas.
    .carries = Pregunte a { $named ->
        [yes] { $who }
       *[no] un ingeniero estructural
    } si esto carga el peso de lo que aquí se pone{ $bends ->
        [yes] , y no se flexiona más de 1/{ NUMBER_OF($divisor) } de su claro bajo { $floor ->
            [yes] carga viva
           *[no] su carga
        }{ $borrowed ->
            [yes] {" "}(el límite de la práctica { WORD($lender) })
           *[no] {""}
        }
       *[no] {""}
    }.
    .usual = Bajo otros acabados un piso ahí puede flexionarse { NUMBER_OF($usual) } de su claro.

SUI-902 = No revisado: { $why }.
    .correct = Corrija lo dado, o que un ingeniero lo revise según el código local.

SUI-910 = No revisado: { LIST($also) } ({ $wanted }).
    .engineer = Que un ingeniero, o quien tenga licencia, confirme los armazones según el código local.
    .enter = Dé lo que está entre paréntesis, y `firstcourse judge` dice si cargan azulejo.
