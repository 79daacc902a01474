# Not reviewed by a native setter yet.
# What the taped readings prove, and what stands where.

SUR-101 = { $single ->
        [yes] Esta lectura es probablemente la equivocada: { EACH("sur-suspect", $readings, $errors, $longer) }.
       *[no] Las lecturas se contradicen, y cualquiera de estas puede ser la equivocada: { EACH("sur-suspect", $readings, $errors, $longer) }.
    }
    .measured = residuo normalizado { FIGURES($measured, decimals: 1) }
    .limit = a lo más { FIGURES($limit) }
    .again = Mida { $readings } otra vez antes de comprar nada.
    .again_and_more = Mida { LIST($readings, last: "or") } otra vez; si no cambian, una diagonal más dice cuál está mal.

sur-suspect = { $one } unos { $two } de { $three ->
        [yes] más
       *[no] menos
    }

SUR-102 = { $nothing ->
        [yes] Nada comprueba este cuarto: hay apenas las lecturas que lo fijan:
       *[no] Nada comprueba { $count ->
            [one] la esquina
           *[other] las esquinas
        } { $corners }:
    } una lectura equivocada no se vería.
    .tape = Mida también { $readings }.
    .sides_again = Mida otra vez cada uno de sus lados.

SUR-103 = Dos formas distintas caben igual de bien en estas lecturas; { $mirrored ->
        [yes] son imágenes de espejo, con { SUR-103.corners } de un lado de { $line } o del otro.
       *[no] difieren en { SUR-103.corners }.
    }
    .corners = { $count ->
        [one] la esquina
       *[other] las esquinas
    } { $corners }
    .tape = Mida también { $reading }: es la que más difiere entre las dos.
    .sides_again = Ninguna distancia entre dos esquinas las distingue: revise el orden de las esquinas y mida otra vez cada lado.

SUR-104 = La pared se inclina hacia { $inwards ->
        [yes] adentro
       *[no] afuera
    } en su altura.
    .see_judgement = La revisión dice qué calzar, y qué hace con el traslape de la tina y los cortes de esquina.

SUR-105 = Los lados se midieron hasta un acabado, y los paneles van sobre los montantes: el cuarto será más grande por lo que se quite de las paredes.
    .price_only = Tome este plan solo para cotizar.
    .tape_studs = Mida otra vez entre montantes descubiertos antes de cortar nada.

SUR-106 = Según las medidas, { WORD($thing) } no terminaría en esta pared; se toma como si estuviera contra ella.
    .tape_gap = Si de veras está separado de la pared, mida la holgura: lo que es más ancho que el límite se dibuja como es.

SUR-107 = Entre { WORD($thing) } y esta pared queda una holgura demasiado angosta para un piso.
    .tape_again = Mídalo otra vez: dé left, out y su medida de modo que termine en la pared, o más lejos.

SUR-108 = { CAPITAL(WORD($thing)) }: está sobre una pieza del armazón ({ WORD($member) }).
    .move = Muévalo { $over ->
        [wall] { $ways ->
            [both] { $forth } a la derecha o { $back } a la izquierda
            [forth] { $forth } a la derecha
           *[back] { $back } a la izquierda
        }
       *[floor] { $ways ->
            [both] { $forth } alejándolo de { $also } o { $back } hacia { $also }
            [forth] { $forth } alejándolo de { $also }
           *[back] { $back } hacia { $also }
        }
    }, o ponga un cabezal para cortar la pieza ({ WORD($member) }).
    .no_bay = No hay claro en el que quepa: ponga un cabezal para cortar la pieza ({ WORD($member) }).
    .licensed = Cortar o cabecear una pieza del armazón ({ WORD($member) }) es estructura: primero deciden el código local y una persona con licencia, y ninguna tubería la mueve sino quien tiene licencia para eso.

SUR-109 = Hay paneles planeados a través del vano '{ $also }', del que solo habla el piso.
    .measured = de { $left } a { $right } a lo largo de la pared
    .enter_in_wall = Póngalo también entre los vanos de la pared (kind: door), con bottom y height, o limite los paneles de la pared a un lado de él.

SUR-111 = { $also } no es lo bastante segura para cortar por ella: líneas que se cruzan en ángulo muy abierto la dejan suelta.
    .measured = dentro de { UP($measured) }
    .limit = dentro de { $limit }
    .tape = Mida también { $reading }: de todas las esquinas que se ven entre sí es la que más ayuda.

SUR-112 = Aquí no se clava ni se taladra nada: { $why }.
    .measured = de { $left } a { $right } a lo largo de la pared, de { $bottom } a { $top } de altura
    .mark = Márquelo en los montantes antes de que los paneles lo tapen. El plan no pone ahí ninguna fijación.
