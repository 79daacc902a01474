# Not reviewed by a native setter yet.
# Order, hours and price.

price-title = Pedido y precio: { $job }, según { $book }, en { $currency }
price-invented = Las horas por unidad de esta lista son inventadas, para un ejemplo: no cotice con ellas.
price-incomplete = Algo no tiene precio u horas: el total lo deja fuera, vea arriba.
price-order = Para pedir a { $supplier }
price-order_heads =
    .item = artículo
    .need = dibujos + roturas + reserva
    .packs = paquetes
    .each = cada uno
    .cost = costo
    .notes = notas
price-need = { $exact } + { $breakage } + { $spares }
price-packs = { $packs } × { $holds }
price-thumb = a ojo { $straight } derecho, { $diagonal } en diagonal (práctica común)
price-one_lot = un solo lote, una sola entrega
price-cuts = Cortes de tramos enteros
price-cut_heads =
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
    .amount = cantidad
    .rate = horas cada uno
    .source = fuente
    .hours = horas
    .each = la hora
    .cost = costo
price-task = { $task }
price-rate = { $rate } ± { $spread } ({ $jobs ->
        [0] ningún trabajo terminado detrás
        [one] { $jobs } trabajo terminado
       *[other] { $jobs } trabajos terminados
    })
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
