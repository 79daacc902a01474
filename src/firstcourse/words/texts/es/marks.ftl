# Not reviewed by a native setter yet.
# Lines to snap, start marks and story poles.

# A line with what is measured to it.
marks-line = { $line }: { $found }.
marks-both = { $one }, y { $two }
marks-square = Revise la escuadra: desde su cruce { $first } por la primera línea y { $second } por la segunda; las dos marcas quedan a { $across } una de otra.

marks-named =
    .first_course = Línea a nivel, borde inferior de la hilada entera más baja
    .plumb = Línea a plomo, borde de un azulejo cerca del centro
    .first_up = Primera línea, hacia arriba del dibujo
    .first_across = Primera línea, a lo ancho del dibujo
    .first_slanting = Primera línea, inclinada
    .second_up = Segunda línea, hacia arriba del dibujo
    .second_across = Segunda línea, a lo ancho del dibujo
    .second_slanting = Segunda línea, inclinada

# What is measured: a length from something.
marks-found =
    .above = { $spot } { $length } arriba de { $from }
    .below = { $spot } { $length } abajo de { $from }
    .plumb = { $spot } { $length } desde { $from }
    .open = en lo abierto { $length } desde { $from }
    .along = a lo largo de { $at } { $length } desde { $from }
    .beside = junto a { $at } { $length } desde { $from }

# Where along a line it is measured: at one of its ends, or so far from it.
marks-spot = { $far ->
    [0] en el { $end ->
        [left_end] extremo izquierdo
        [right_end] extremo derecho
        [foot] pie
       *[top] tope
    }
   *[other] a { $far } del { $end ->
        [left_end] extremo izquierdo
        [right_end] extremo derecho
        [foot] pie
       *[top] tope
    },
}

# The first joint of a face each way.
marks-start = { $way ->
    [up] Hacia arriba
    [down] Hacia abajo
   *[across] A lo ancho
} hasta { $to ->
    [row] el borde de la única hilera
    [joint] la primera junta
   *[point] el primer punto
}
marks-start_found = { $several ->
    [no] { $lengths } desde { $from }
    [level] { $lengths } desde { $from }, en su extremo izquierdo y derecho
   *[upright] { $lengths } desde { $from }, en su extremo inferior y superior
}
marks-lengths = { $one } y { $two }

# What is measured from, as one calls it who stands before the surface.
marks-thing =
    .opening = { $name }
    .floor = el piso antes de su azulejo
    .bed = la cama de la regadera antes de su azulejo
    .bench = { $name }
    .part = { $name }
    .tile = el azulejo de { $name }
    .under_top = su borde superior, antes de poner la tapa
    .boards = los paneles de { $name }
    .edge = { $name }
    .lower = el borde inferior de los paneles
    .upper = el borde superior de los paneles
    .left = el borde izquierdo de los paneles
    .right = el borde derecho de los paneles
    .corner_face = la cara en { $name }
    .wall_face = la cara de { $name }

# A mark of a story pole.
marks-place =
    .line_first = primera línea
    .line_second = segunda línea
    .line_level = línea a nivel
    .line_plumb = línea a plomo
    .opening_centre = { $name }, centro
    .opening_low = { $name }, borde inferior
    .opening_high = { $name }, borde superior
    .opening_left = { $name }, borde izquierdo
    .opening_right = { $name }, borde derecho
    .end_of_last_course = fin de la última hilada
    .end_of_last_row = fin de la última hilera
    .end_of_sheet = fin de la malla { $number }
    .end_of_course = fin de la hilada { $number }
    .end_of_row = fin de la hilera { $number }
    .end_of_tile = fin del azulejo { $number }
    .sheet = malla { $number }
    .course = hilada { $number }
    .row = hilera { $number }
    .tile = azulejo { $number }
    .cut = corte
    .first_line_lower = primera línea, extremo inferior
    .first_line_upper = primera línea, extremo superior
    .second_line_left = segunda línea, extremo izquierdo
    .second_line_right = segunda línea, extremo derecho
    .foot = pie
    .top = tope
    .left_end = extremo izquierdo
    .right_end = extremo derecho

# Which rows a pole shows, with the sum.
marks-step = una { $what ->
    [course] hilada
   *[row] hilera
} de cada { $every ->
    [2] dos
    [3] tres
   *[other] { $every }
}: { $every } x { $one } = { $total }

# What a pole serves, and which way it lies.
marks-way =
    .up = hacia arriba
    .along = a lo largo
    .first = por la primera línea
    .second = por la segunda línea
marks-walls = { $room }: paredes { $names } y { $last }
marks-places = { $one } y { $two }
