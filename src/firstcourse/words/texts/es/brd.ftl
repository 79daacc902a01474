# Not reviewed by a native setter yet.
# Boards: what carries them, where their seams and cuts fall, and what stays bare between them.

BRD-101 = Aquí hay bordes de panel sin armazón detrás: { $count ->
        [one] hay que agregar { $count } pieza
       *[other] hay que agregar { $count } piezas
    }.
    .measured = { $uprights ->
        [0] { BRD-101.levels }
       *[other] { BRD-101.uprights }{ $levels ->
            [0] {""}
           *[other] ; { BRD-101.levels }
        }
    }
    .uprights = { $uprights ->
        [one] centro
       *[other] centros
    } desde el borde izquierdo: { EACH("brd-upright", $upright_at, $upright_from, $upright_to) }
    .levels = { $levels ->
        [one] centro
       *[other] centros
    } desde el borde inferior: { EACH("brd-level", $level_at, $level_from, $level_to) }
    .add = Antes de poner paneles { $count ->
        [one] agréguela
       *[other] agréguelas
    } ({ WORD($kind) }), donde el dibujo de los paneles muestra líneas gruesas quebradas.

brd-upright = { $one } (de { $two } a { $three } desde el borde inferior)
brd-level = { $one } (de { $two } a { $three } desde el borde izquierdo)

BRD-102 = Un borde de panel apoya muy poco, y el armazón a su lado no deja lugar para otra pieza.
    .measured = { $left } desde la izquierda, { $lower } de altura, hasta { $right }, { $upper }
    .pack_out = Calce la pieza más cercana hasta que el borde quede sobre madera, o mueva la pieza.

BRD-103 = Este panel ya está puesto, y uno de sus bordes apoya muy poco en el armazón tal como se encontró.
    .measured = { BRD-102.measured }
    .block = Atornille un refuerzo al armazón de modo que quede a medias detrás de este borde, desde el lado abierto mientras lo haya, y fije el panel a él a lo largo del borde. Donde no se llega desde ahí, hay que bajar el panel.

BRD-104 = Dos paneles ya puestos no quedan separados como se pide.
    .open = Abra la junta a su ancho con hoja de sierra o escofina, con el polvo de sílice aspirado en la hoja y con mascarilla; luego rellénela y póngale cinta como a las demás.
    .fill = Rellene la junta con mortero hasta el espesor del panel en dos pasadas, y póngale cinta encima.

BRD-105 = Este panel ya está puesto, y queda más cerca de lo pedido de lo que lo limita.
    .trim = Recórtelo donde está hasta que quede la separación, con el polvo de sílice aspirado en la hoja y con mascarilla.

BRD-201 = Las juntas de extremo quedan más cerca de lo pedido.
    .other_size = Use aquí otra medida de hoja, o acepte las juntas y póngales cinta con cuidado.

BRD-202 = Cuatro paneles se juntan en un punto.
    .other_size = { BRD-201.other_size }

BRD-203 = Una junta entre paneles queda más cerca de una junta de tablero de lo pedido.
    .measured = junta a { $measured } { $upright ->
        [yes] desde la izquierda
       *[no] de altura
    }
    .shift_joint = Mueva la junta del tablero, agregue una capa, o use una hoja de otra medida.

BRD-204 = Un panel es más angosto que la pieza mínima; no se encontró mejor junta.
    .both_edges = Manéjelo con cuidado y fíjelo por sus dos bordes largos.

BRD-205 = Un brazo del panel es más angosto de lo pedido; no se encontró junta que lo evite.
    .measured = { $wide } x { $high }
    .cut_off = Corte el brazo y póngalo como tira aparte, asentada en mortero sobre una pieza del armazón.

BRD-206 = Aquí hay cortes que quitan menos de lo que se puede marcar y quebrar.
    .measured = { EACH("brd-strip", $widths, $boards, $sheets) }
    .break_off = Marque varias veces contra una regla y quiebre la tira con pinzas, o cepíllela, ráspela o córtela con sierra.
    .dust = El polvo tiene sílice: afuera o con aspiración en el disco, y con mascarilla.

brd-strip = { $one } de { $two } ({ $three })

BRD-207 = Un panel conserva el borde de la hoja y tiene en la pared menos holgura que la usual.
    .cut_nothing = Póngalo con esta holgura en lugar de { $usual }; no corte nada.

BRD-208 = Un panel se corta dejando en la pared más holgura que la usual: así el corte se puede quebrar.
    .wider_gap = Córtelo a su medida y póngalo con esta holgura, no { $usual }; llene y encinte la holgura como las demás.

BRD-301 = Aquí no se puede poner ningún panel: no queda nada dentro de las holguras, o no se puede usar ninguna hoja.
    .check = Revise el contorno y los vanos, y nombre una hoja para esta superficie.

BRD-302 = Según lo dado este piso es una losa y no lleva paneles: el azulejo va sobre el concreto, o sobre la membrana o capa de desacople que pidan sus grietas, juntas y humedad.
    .read_heights = Tome sus alturas y su humedad y délas; llene lo bajo, y quite lo que el mortero no agarra, en mojado o con aspiración por la sílice del polvo.
    .carry_joints = Suba sus juntas a través del azulejo (tiling, soft_joints).
    .enter_framing = Si no es losa, dé su armazón; si de todos modos lleva paneles, diga cómo (boards_on_slab).

BRD-303 = Una franja de base{ $neighbours ->
        [0] {""}
       *[other] {" "}junto a { LIST($beside) }
    } es demasiado angosta para un brazo de panel.
    .measured = { $measured } x { $long }, a { $left } desde la izquierda, { $lower } de altura
    .mortar = Llénela con mortero tan hondo como el panel, y encinte por encima.
    .board = Corte una tira de panel de un sobrante, asiéntela en mortero sobre una pieza puesta detrás, y encinte sus bordes.
