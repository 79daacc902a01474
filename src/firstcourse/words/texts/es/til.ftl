# Not reviewed by a native setter yet.
# Tile: its joints and beds, where cuts fall, and what lies beside it.

TIL-101 = La junta deseada para el azulejo { $tile } es más angosta de lo que este azulejo permite.
    .measured = { FINE($measured) }
    .limit = al menos { FINE($limit) }
    .closer_in_size = El plan usa la junta mínima permitida; una más angosta pide azulejos más parejos de medida.

TIL-102 = No está medida la variación de tamaño del azulejo { $tile }; la junta alcanza para { FINE($spread) }.
    .limit = junta de al menos { NUMBER_OF($limit) } x la variación
    .measure = Mida diez azulejos de varias cajas y dé size_spread; entonces la junta puede ser más angosta.

TIL-103 = El azulejo { $tile } es demasiado largo para hiladas corridas { $offset } de azulejo.
    .measured = { FIGURES($measured, decimals: 0) } de { $long }
    .limit = a lo más { FIGURES($limit, decimals: 0) }
    .third = Corra las hiladas a lo más un tercio, o pida aprobar una muestra antes de comprar.

TIL-104 = El puro alabeo del azulejo { $tile } hace con este corrimiento una ceja mayor que la permitida.
    .measured = { FINE($measured) }
    .limit = a lo más { FINE($limit) }
    .shift_less = Corra menos las hiladas o póngalas alineadas, o pida azulejos más planos.

TIL-105 = { $entered ->
        [yes] El trabajo da
       *[no] La llana deja
    } { $thin ->
        [yes] muy poco
       *[no] demasiado
    } mortero bajo el azulejo.
    .measured = { FINE($measured) }
    .limit = { $thin ->
        [yes] al menos
       *[no] a lo más
    } { FINE($limit) }
    .thicker = { $entered ->
        [yes] Délo más grueso: tome
       *[no] Tome
    } un diente mayor o lleve la llana más parada.
    .thinner = { $entered ->
        [yes] Délo más delgado: tome
       *[no] Tome
    } un diente menor.

TIL-106 = Peine con llana de { FINE($width) } x { FINE($depth) } de diente { WORD($shape) }{ $buttered ->
        [yes] {" "}y { FINE($back) } en el reverso del azulejo
       *[no] {""}
    }; levante azulejos al principio y mire el mortero.
    .limit = contacto de al menos { FIGURES($limit, decimals: 0) } del reverso
    .lift = Levante { $sample } azulejos; donde falte contacto, unte el reverso.

TIL-108 = Este piso se pisa mojado; pregunte la clase antideslizante del azulejo { $tile }.
    .limit = { $scale ->
        [friction] fricción dinámica en mojado de
       *[pendulum] valor de péndulo en mojado de
    } al menos { NUMBER_OF($limit) }
    .data_sheet = Véala en la ficha del azulejo; para pies descalzos y regaderas pida más que el mínimo.

TIL-110 = Una junta flexible ({ WORD($why) }) no encuentra una junta recta en este patrón, así que se cortan azulejos a lo largo de ella.
    .cut_clean = Corte limpios los dos lados con una regla, o escoja un patrón con juntas rectas.

TIL-111 = Las juntas flexibles salen más anchas de lo que el sellador debe llenar.
    .measured = { FINE($measured) }
    .limit = a lo más { FINE($limit) }
    .closer = Ponga las juntas flexibles más cerca unas de otras, para que cada una tome menos.

TIL-121 = Un corte{ $named ->
        [yes] {" "}en { THING($edge) }
       *[no] {""}
    } es una tira angosta. { $why ->
        [given] El arranque que da el trabajo lo pide.
        [cuts_more] El arranque que no la tiene, { $instead } en su lugar, corta { $more } azulejos más; se aceptan hasta { $most_more } más por librarse de ella.
        [many_ways] El patrón llega a sus bordes de muchas maneras a la vez: todo arranque deja cortes angostos en algún borde.
       *[none_without] De { $tried } arranques probados ninguno se libra de ella: lo que un arranque gana en un borde lo pierde en otro.
    }
    .measured = { $smallest ->
        [yes] corte menor
       *[no] la tira
    } { CUT($measured) }
    .limit = { $limit }, de un azulejo chico { FIGURES($share, decimals: 0) } de él
    .given = Quite el arranque para tener el mejor que se encuentre.
    .cuts_more = Dé ese arranque en el trabajo si los demás cortes importan menos.
    .many_ways = Escóndalos bajo un perfil, mueble o puerta, o enmarque el campo con una orilla de azulejos rectos.
    .none_without = Otra junta, otra medida de azulejo o un vano movido la quitaría; vea las alternativas.

TIL-122 = El nicho no empieza ni termina en juntas de hilada, así que los azulejos a su lado llevan muesca.
    .measured = repisa a { $sill }, cabezal a { $head }
    .limit = un número entero de hiladas
    .set = Si aún no está hecho, ponga su repisa a { $better_sill } y hágalo de { $better_height } de alto: { $courses } { $courses ->
        [one] hilada
       *[other] hiladas
    }. Sus costados quedan donde están.

TIL-124 = El agua de { WORD($what) } escurre por su borde del frente.
    .measured = el frente { FINE($measured) } más bajo que atrás
    .limit = al menos { FINE($limit) }{ $bounded ->
        [yes] , a lo más { FINE($most) }
       *[no] {""}
    }
    .set = Ponga su frente { FINE($limit) } más bajo.
    .check = Revíselo con un nivel antes de poner el azulejo.

TIL-125 = El piso no está a nivel a lo largo de { LIST($faces) }.
    .measured = de { $low } a { $high } sobre los tableros
    .scribe = Ponga a nivel la hilada más baja desde el punto más bajo del piso, y trace cada uno de sus azulejos contra el piso, menos la junta.

TIL-126 = El azulejo de su frente iba a empezar dentro del piso; empieza sobre el piso terminado.
    .limit = { $limit } sobre los tableros
    .leave_out = Quite bottom, o haga que empiece más arriba.

TIL-127 = Los paneles y el azulejo de esta pared terminan arriba del piso de la regadera: entre ellos queda base descubierta.
    .measured = { $measured } arriba del piso terminado
    .limit = la junta de ahí, { TAPE($limit) }
    .reach_down = Hágalos bajar hasta { DOWN($down_to) } sobre los tableros o más abajo.

TIL-128 = La banca está sobre la coladera.
    .move_or_hang = Mueva una de las dos, o cuelgue la banca sobre la coladera y dé como bottom la altura a la que empieza el azulejo de su frente.

TIL-129 = El azulejo se dio más alto que ancho, así que va parado en { LIST($surfaces) }. ¿Debe ir parado?
    .measured = { TAPE($width, feet: "no") } x { TAPE($height, feet: "no") }, ancho por alto
    .say = Si debe ir acostado, dé su medida como { TAPE($height, feet: "no") } x { TAPE($width, feet: "no") }; si debe ir parado, dé upright: true.

TIL-130 = La ventana está en una pared mojada, y nada dice qué tan metida está: su repisa, sus costados, su perfil y la membrana hacia su vano no están planeados.
    .give_returns = Dé a la ventana returns: con su profundidad desde la cara de los paneles hasta el marco, y tiled: no donde no llevan azulejo.

TIL-131 = La repisa, el cabezal y los costados de la ventana { $boarded ->
        [yes] llevan panel antes de impermeabilizarse y azulejarse: el vano que se dio está entre las caras de esos paneles, y el armazón los carga por los cuatro lados
       *[no] son demasiado angostos para paneles que agarren, así que no se planea ninguno
    }.
    .measured = { $boarded ->
        [yes] armazón a { TAPE($wide, feet: "no") } x { TAPE($high, feet: "no") }
       *[no] { TAPE($measured, feet: "no") } de ancho
    }
    .mortar_or_foam = Llénelos con mortero sobre malla, o pegue ahí tiras de panel de espuma, e impermeabilícelos con la pared.
    .check_framing = Revise el armazón del vano antes de cortar paneles; fije las tiras a él y calce la repisa a su pendiente.

TIL-132 = El piso está fuera de nivel, y el piso de regadera junto a esta pared se planea desde tableros a nivel: el azulejo de la pared empieza al pie de sus paneles, no en el piso terminado.
    .measured = { EACH("til-foot", $heights, $corners) } sobre la esquina más baja
    .level_or_hold = Nivele los tableros y quite levels, o ajuste en obra la hilada más baja a los pisos terminados.

til-foot = { $one } en { $two }

TIL-107 = Aquí se ven bordes del azulejo; escoja un perfil, o azulejo con borde acabado.
    .measured = { RUN($measured) }
    .limit = perfil de unos { FINE($high) } de alto
    .trim = Tome un perfil tan alto como azulejo y mortero juntos; póngalo con el azulejo, no después.

TIL-134 = En esta superficie no se miden dos líneas a escuadra: se alcanza muy poco de su borde.
    .carry = Pase una línea a nivel desde una superficie vecina, saque otra a escuadra, presente en seco la primera hilera entre las dos y marque dónde empieza.

TIL-133 = En un borde que corre sesgado respecto a las hileras, { $number } { $number ->
        [one] pieza es demasiado delgada
       *[other] piezas son demasiado delgadas
    } para pegarse; ahí terminan azulejos enteros.
    .measured = junta de hasta { TAPE($measured) } de ancho
    .limit = se pega una pieza más ancha que { TAPE($limit) }
    .spread = Llénela como la junta flexible de la que es parte, o reparta la diferencia en las últimas juntas donde se vería.
