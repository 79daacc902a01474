# Not reviewed by a native setter yet.
# Tile: how its joints, beds, soft joints and cuts came about, and what is said of soft joints and starts.

tiles-joint = Junta de { THING($also) }
    .formula = la más ancha de las que pide cada regla, y no menos que esa la del propio trabajo
    .name-on = puesto en
    .value-on = { WORD($on) }
    .name-narrowest = junta más angosta en cualquier caso
    .value-narrowest = { FINE($narrowest) }
    .name-stone = piedra natural en pared
    .value-stone = { FINE($stone) }
    .name-small = azulejo chico
    .value-small = { FINE($small) }
    .name-large = azulejo grande
    .value-large = { FINE($large) }
    .name-by_spread = variación de tamaño x factor
    .value-by_spread = { FINE($by_spread) }
    .name-by_usual_spread = variación de tamaño no medida, supuesta x factor
    .value-by_usual_spread = { FINE($by_usual_spread) }
    .name-in_offset = azulejo largo trabado, más alabeo del borde
    .value-in_offset = { FINE($in_offset) }
    .name-spread = variación de tamaño
    .value-spread = { FINE($spread) }, por { NUMBER_OF($factor) }
    .unsaid-factor = -
    .name-warpage = alabeo del borde
    .value-warpage = { FINE($warpage) }
    .name-own = la junta del propio trabajo
    .value-own = { $own ->
        [none] no se da
       *[other] { FINE($own) }
    }
    .value-least = { FINE($least) }
    .unsaid-rules = -
    .source = { SOURCE($rules) }
    .result = { FINE($result) }

tiles-offset = Corrimiento de hiladas de { THING($also) }
    .formula = el menor de corrimiento y 1 - corrimiento, contra el límite donde es largo el lado que se corre
    .name-part = corrimiento
    .value-part = { $part }/{ $of }
    .unsaid-of = -
    .name-side = lado que se corre
    .name-long = es largo arriba de

tiles-lippage = Ceja permitida en juntas de { THING($also) }
    .formula = { $added ->
        [yes] tolerancia por junta + alabeo medido
       *[no] tolerancia por junta
    }
    .value-joint = { FINE($joint) }
    .name-by_joint = ceja antes del alabeo
    .value-by_joint = { FINE($by_joint) }
    .unsaid-added = -
    .name-warpage = alabeo del borde medido
    .value-warpage = { FINE($warpage) }
    .name-bow = ceja que hace el puro alabeo, 4 x corrimiento x (1 - corrimiento) x alabeo: un borde alabeado tomado como parábola
    .value-bow = { FINE($bow) }
    .unsaid-rules = -
    .source = { SOURCE($rules) }
    .result = { FINE($result) }

tiles-mortar = Mortero bajo { THING($also) } en { PLACE($at) }
    .formula = { $entered ->
        [yes] como se dio
       *[no] sección del cordón x sen(ángulo) / (w + separación) + untado del reverso
    }
    .unsaid-entered = -
    .name-width = llana
    .value-width = diente de { FINE($width) } x { FINE($depth) }, { WORD($shape) }
    .unsaid-depth = -
    .unsaid-shape = -
    .value-land = { FINE($land) }
    .value-angle = { FIGURES($angle, decimals: 0) }
    .value-combed = { FINE($combed) }
    .name-back = untado del reverso
    .value-back = { $back ->
        [none] ninguno
       *[other] { FINE($back) }
    }
    .name-contact = contacto deseado
    .value-contact = { FIGURES($contact, decimals: 0) }
    .unsaid-notch = -
    .source = geometría del cordón; contacto: { SOURCE($rule) }; diente: { SOURCE($notch) }
    .result = { FINE($result) }

tiles-soft_joints = Juntas flexibles de { PLACE($at) }
    .formula = bordes y cambios de plano + vanos de puerta + juntas de abajo + campo, partes no más largas que la separación
    .value-spacing = { RUN($spacing) }
    .name-edge = ancho en los bordes
    .value-edge = { FINE($edge) }
    .name-width = ancho en el campo
    .value-width = { FINE($width) }
    .name-ways = a través del campo
    .value-ways = { EACH("tiles-across", $ways, $across, $extents) }
    .unsaid-across = -
    .unsaid-extents = -
    .unsaid-rules = -
    .source = { SOURCE($rules) }
    .result = { $result } juntas

tiles-across = { $two ->
        [0] ninguna
       *[other] { $two }
    } { $one } en { $three }

tiles-cut = Azulejos enteros que se cortan, { THING($at) }
    .formula = cada pieza cortada del primer azulejo en que cabe, primero la mayor, un corte de sierra entre piezas
    .name-pieces = piezas cortadas
    .name-kerf = corte de la sierra
    .value-kerf = { FINE($kerf) }
    .name-fewest = los menos que necesita cualquier corte
    .result = { $result } azulejos

tiles-kerb_face = Altura de la cara exterior del bordillo, { PLACE($at) }
    .formula = coladera + bordillo + caída de su tapa - azulejo de su tapa - piso del cuarto
    .name-drain = tapa de la coladera sobre los tableros
    .value-drain = { FINE($drain) }
    .name-kerb = tapa del bordillo sobre la coladera
    .value-kerb = { FINE($kerb) }
    .name-fall = caída de su tapa
    .value-fall = { FINE($fall) }
    .name-tile = azulejo y mortero en su tapa
    .value-tile = { FINE($tile) }
    .name-floor = piso terminado del cuarto sobre los tableros
    .value-floor = { FINE($floor) }
    .source = alturas de este plan
    .argument-1 = La cara se asienta en el piso terminado del cuarto y termina bajo el azulejo de la tapa.
    .result = { FINE($result) }

tiles-sill = Altura de la repisa, { PLACE($at) }
    .formula = borde del frente de los paneles + azulejo y mortero; en el marco, además la caída
    .name-front = borde del frente de los paneles
    .value-front = { FINE($front) }
    .name-fall = caída hacia el frente
    .value-fall = { FINE($fall) }
    .name-tile = azulejo y mortero encima
    .value-tile = { FINE($tile) }
    .name-at_frame = terminado en el marco
    .value-at_frame = { FINE($at_frame) }
    .source = alturas de este plan, sobre los tableros o la losa desde donde se miden las paredes
    .result = { FINE($result) }

tiles-soft_plane = { THING($at) }: cambio de plano o de material
tiles-soft_restrained = { THING($at) }: topa con lo que lo sujeta
tiles-soft_across = { $why ->
        [field] campo, a lo más a { RUN($spacing) }
       *[other] { WORD($why) }
    }; { $how ->
        [cut] los azulejos que quedan encima se cortan a lo largo de ella
        [trimmed] en una junta, los azulejos de al lado recortados para dejar { FINE($width) }
       *[joint] en una junta
    }

# What is said of tile on papers: patterns, counts, cuts, where else it could start.

tiles-pattern = { $angle ->
    [0] { $name }
   *[other] { $name }, girado { $angle } grados
}
tiles-no_cut = sin cortes
tiles-found = { $whole } enteros, { $cut } { $cut ->
    [one] pieza cortada
   *[other] piezas cortadas
}; corte menor { $smallest }
tiles-soft = { $why }: { $width } de ancho, { $length }

tiles-facts =
    .tile = Azulejo
    .pattern = Patrón
    .joint = Junta
    .tiles = Azulejos

# Sizes of what is cut to fit, and one from the least to the greatest.
tiles-about = unos { $size }
tiles-span = { $least } a { $most }

# What tile is cut along, several places joined.
tiles-along = { $one } y { $two }
tiles-in_field = en el campo
tiles-place =
    .next_field = campo vecino
    .corner_of_border = esquina de la orilla
    .edge_of_border = borde de la orilla
    .edge_of_band = borde de la franja
    .lower_edge = borde inferior
    .upper_edge = borde superior
    .left_edge = borde izquierdo
    .right_edge = borde derecho
    .valleys = valles
    .ridges = lomos
    .soft_joint = junta flexible
    .field = campo
    .band = franja
    .border = orilla

# Where tile starts, and where it could start instead.
tiles-start = { $number ->
    [0] usado
   *[other] en cambio { $number }
}
tiles-smallest_cut = { CUT($width) }

# What speaks for a start and against it.

tiles-start_because = { $why ->
    [round_corners] las hiladas siguen a la vuelta de las esquinas
    [host_joints] siguen las juntas de la pared
    [no_sliver] con las juntas de la pared quedaría una tira angosta
    [courses_below] conserva las hiladas de abajo
    [field_joints] conserva las juntas del campo
   *[both_corners] igual desde las dos esquinas
}
tiles-start_given = como se dio: { $said }
tiles-start_cuts = { $cuts ->
    [none] no se corta ningún azulejo
    [over_half] ningún corte en un borde baja de medio azulejo
    [under_half] algunos cortes{ $named ->
        [yes] {" "}en { THING($at) }
       *[no] {""}
    } bajan de medio azulejo, ninguno es una tira angosta
   *[sliver] un corte{ $named ->
        [yes] {" "}en { THING($at) }
       *[no] {""}
    } es una tira angosta
}
tiles-start_even = los cortes de lados opuestos son parejos
tiles-start_joints = { $number } de { $of } bordes de nichos y ventanas caen en juntas
tiles-start_sure = { $sure ->
    [no] dentro del error del levantamiento puede salir una tira angosta
    [cut] vale para todo cuarto que permite el levantamiento: en ninguno baja un corte de borde de { DOWN($cut) }
   *[yes] vale para todo cuarto que permite el levantamiento
}
tiles-start_for = a favor: { $said }
tiles-start_against = en contra: { $said }
tiles-start_alike = muy parecido al escogido, con las juntas en otro lugar
tiles-start_little = el corte menor es un poco más angosto
tiles-start_fewer = { $number } { $number ->
    [one] azulejo
   *[other] azulejos
} { $turned ->
    [yes] más
   *[no] menos
} por cortar
tiles-start_wider = el corte menor es más { $turned ->
    [yes] angosto
   *[no] ancho
}
tiles-start_no_sliver = { $turned ->
    [yes] una tira angosta
   *[no] ninguna tira angosta
}
tiles-start_no_under_half = cortes { $turned ->
    [yes] menores de
   *[no] todos mayores de
} medio azulejo
tiles-start_edge = { $how ->
    [none] { $turned ->
        [yes] cortes
       *[no] sin cortes
    } en { THING($at) }
   *[wider] cortes en { THING($at) } más { $turned ->
        [yes] angostos
       *[no] anchos
    }
}
tiles-start_more_even = los cortes de lados opuestos son { $turned ->
    [yes] menos
   *[no] más
} parejos
tiles-start_more_joints = { $number } { $number ->
    [one] borde
   *[other] bordes
} de nichos y ventanas { $turned ->
    [yes] menos
   *[no] más
} en juntas
tiles-start_slack = aguanta { $turned ->
    [yes] menos
   *[no] más
} error del cuarto
tiles-start_surer = cortes más { $turned ->
    [yes] angostos
   *[no] anchos
} si el levantamiento está mal
