# Not reviewed by a native setter yet.
# Order, hours and price.

price-title = Pedido y precio: { $job }, según { $book }, en { $currency }
price-invented = Los precios y tiempos de esta lista son inventados, para un ejemplo: no pida ni cotice con ellos.
price-incomplete = Algo no tiene precio u horas: el total lo deja fuera, vea arriba.
price-order = Para pedir a { $supplier }
price-order_heads =
    .item = artículo
    .exact = en los dibujos
    .breakage = roturas
    .spares = reserva
    .packs = paquetes
    .each = cada uno
    .cost = costo
price-supply_title = Pedido: { $job }
price-open = Para pedir, falta decidir a quién
price-supply_heads =
    .item = artículo
    .exact = en los dibujos
    .breakage = roturas
    .spares = reserva
    .packs = paquetes
price-packs = { $packs } × { $holds }
price-thumb = a ojo { $straight } derecho, { $diagonal } en diagonal (práctica común)
price-one_lot = un solo lote, una sola entrega
price-cuts = Cortes de tramos enteros
price-cuts_heads =
    .item = artículo
    .length = tramo
    .pieces = piezas
    .least = mínimo
price-least = no menos de { $number }
price-length = { $length }
price-carried = Para cargar
price-mass = El pedido pesa { $kg }.
price-unknown = Sin contar esto, porque nadie dio su peso: { $items }.
price-trips = { $trips } { $trips ->
        [one] viaje
       *[other] viajes
    }, { $steps } escalones con carga.
price-waste = Desperdicio { $kg }, { $litres } l macizos; amontonado ocupa más.
price-away = Se va en { $number } { $by ->
        [skip] { $number ->
            [one] contenedor
           *[other] contenedores
        }
       *[bag] { $number ->
            [one] bolsa
           *[other] bolsas
        }
    }.
price-hours = Horas
price-hours_heads =
    .task = tarea
    .amount = cuánto
    .rate = minutos por unidad
    .jobs = trabajos terminados
    .basis = el dato es
    .hours = horas
    .each = la hora
    .cost = costo
price-sources = Datos: { $sources }. Los minutos llevan la dispersión de un trabajo más; trabajos terminados son aquellos cuyas horas movieron el dato.
price-task-set_up_room = preparar el cuarto
price-task-protect_and_clean = proteger y limpiar
price-task-set_board_floor = poner paneles en pisos
price-task-set_board_wall = poner paneles en paredes
price-task-set_board_other = poner paneles en otros lugares
price-task-fasten = poner fijaciones
price-task-cut_board = marcar y quebrar paneles
price-task-cut_board_hole = agujeros en paneles
price-task-cut_board_notch = muescas en paneles
price-task-mix = mezclar mortero y boquilla
price-task-tape_seams = encintar juntas
price-task-trowel = peinar mortero
price-task-grout_joints = boquillar
price-task-seal_joints = sellar juntas flexibles
price-task-carry = cargar material
price-task-cut_tile_straight = cortes rectos de azulejo
price-task-cut_tile_slanted = cortes inclinados de azulejo
price-task-cut_tile_notch = muescas en azulejo
price-task-cut_tile_hole = agujeros en azulejo
price-task-set_tile_floor = pegar azulejo en pisos
price-task-set_tile_wall = pegar azulejo en paredes
price-task-set_tile_other = pegar azulejo en otros lugares
price-task-set_large_tile_floor = pegar azulejo grande en pisos
price-task-set_large_tile_wall = pegar azulejo grande en paredes
price-task-set_large_tile_other = pegar azulejo grande en otros lugares
price-task-set_mosaic_floor = pegar mosaico en pisos
price-task-set_mosaic_wall = pegar mosaico en paredes
price-task-set_mosaic_other = pegar mosaico en otros lugares
price-unit-room = { $number ->
        [one] cuarto
       *[other] cuartos
    }
price-unit-board = { $number ->
        [one] panel
       *[other] paneles
    }
price-unit-fastener = { $number ->
        [one] fijación
       *[other] fijaciones
    }
price-unit-hole = { $number ->
        [one] agujero
       *[other] agujeros
    }
price-unit-notch = { $number ->
        [one] muesca
       *[other] muescas
    }
price-unit-tile = { $number ->
        [one] pieza
       *[other] piezas
    }
price-basis-yours = suya
price-basis-common_practice = práctica común
price-basis-published = publicada
price-basis-invented = inventada
price-working = Cómo se llega al total
price-working_heads =
    .step = paso
    .how = cómo
    .amount = importe

price-materials = Materiales
    .formula = paquetes × precio de cada uno
price-deliveries = Entregas
    .formula = una de cada proveedor que la cobra
price-labour = Mano de obra
    .formula = horas × precio de la hora
price-hire = Renta de equipo
    .formula = días × precio del día
price-disposal = Retiro de desperdicio
    .formula = contenedores o bolsas × precio de cada uno
price-direct = Costo directo
    .formula = { $materials } + { $deliveries } + { $labour } + { $hire } + { $disposal }
price-risk = Riesgo: { $of }
    .formula = { $cost } × { $percent } % de probabilidad
price-contingency = Apartado para riesgos
    .formula = suma de los riesgos
price-overhead = Gastos generales
    .formula = ({ $direct } + { $contingency }) × { $percent } %
price-cost = Costo
    .formula = { $direct } + { $contingency } + { $overhead }
price-before_tax = Precio antes de impuestos
    .formula = { $of ->
            [margin] { $cost } / (1 − { $percent } %), margen sobre el precio
            [mark_up] { $cost } × (1 + { $percent } %), recargo sobre el costo
           *[none] solo el costo, sin utilidad
        }; margen { $margin } % del precio = recargo { $mark_up } % sobre el costo; redondeado una vez, medio centavo hacia arriba
price-tax = { $of ->
        [sales_tax-materials] Impuesto de venta sobre materiales
        [sales_tax-labour] Impuesto de venta sobre mano de obra
        [sales_tax-price] Impuesto de venta
        [vat-price] IVA
        [gst-price] GST
       *[other] Impuesto ({ $of })
    }
    .formula = { $base } × { $percent } %, tasa que usted anotó; redondeado una vez, medio centavo hacia arriba
price-total = Total
    .formula = { $price } + { $tax }
