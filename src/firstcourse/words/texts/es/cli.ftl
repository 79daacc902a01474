# Not reviewed by a native setter yet.
# What the terminal says.

cli-stop = DETIENE EL TRABAJO
cli-fix = POR CORREGIR DE PASO
cli-note = PARA SABER

# A line under a finding.
cli-finding =
    .measured = medido: { $text }
    .limit = límite: { $text }
    .rule = regla: { $text }
    .source = fuente: { $text }
    .do = haga: { $text }

# A rule that the job sets, its value and why.
cli-changed = cambiado para este trabajo: { $change }

# Before boards and tile are laid out: about how much that is.
cli-ahead = por acomodar: { $surfaces } { $surfaces ->
    [one] superficie
   *[other] superficies
}, unos { $boards } { $boards ->
    [one] panel
   *[other] paneles
} y { $tiles } { $tiles ->
    [one] azulejo
   *[other] azulejos
}

cli-stopped = el trabajo está detenido: { $what }
cli-same_way = calculado de nuevo de la misma manera que en el plan: { $what ->
    [judgement] hallazgos del juicio, tomados del libro de reglas
    [corners] lo que se mueve para quedar junto a una pared
   *[play] cuánto pueden encoger los cortes donde el cuarto difiere de su medición
}
cli-priced = { $file }: revisado también, con la lista de precios que lleva dentro
cli-verified = { $file }: coherente, verificado
cli-objections = { $file }: { $count } { $count ->
    [one] objeción
   *[other] objeciones
}

# The summary of a plan in ten lines.
cli-plan = { $job }: { $boards } { $boards ->
    [one] panel
   *[other] paneles
} de { $sheets } { $sheets ->
    [one] hoja
   *[other] hojas
}, { $cuts } { $cuts ->
    [one] corte
   *[other] cortes
}, { $fasteners } { $fasteners ->
    [one] fijación
   *[other] fijaciones
}
cli-sheets = Hojas: { $sheets }
cli-proof = { $known ->
    [fewest] ningún acomodo que cumpla las reglas lleva menos
    [proven] estos paneles no llevan menos; con otras juntas podrían ser menos
   *[least] al menos { $least }
}
cli-practice = práctica usual { $count }
cli-tile = Azulejo: { $whole } enteros, { $cut } cortados.
cli-to_buy = Para comprar además de las hojas: { $things }{ $more ->
    [0] {""}
   *[other] {" "}y { $more } más
}
cli-changes = Cambiado para este trabajo: { $change }{ $others ->
    [0] {""}
    [one] ; y { $others } regla más
   *[other] ; y { $others } reglas más
}
cli-urgent = { $severity ->
    [stop] DETIENE EL TRABAJO
   *[fix] Por corregir
} { $code }  { $where }: { $message }
cli-urgent_do = Haga: { $remedy }
cli-more = { $count } más por corregir{ $stops ->
    [0] {""}
   *[other] , { $stops } de ellos detienen el trabajo
}
cli-nothing = Nada detiene el trabajo.
cli-notes = Para saber: { $count } { $count ->
    [one] nota
   *[other] notas
} en el juego de obra.
cli-look = Vea primero { $letter } (o { $a4 }): { $rooms ->
    [yes] lo que comparten todos los cuartos; cada cuarto tiene sus juegos en { $folder }.
   *[no] todos los dibujos, listas y hallazgos.
}
cli-why = Porqués, cálculos y fuentes: { $office }; listas: { $lists }; `{ $verify }` prueba otra vez que el plan es coherente.

# Why so many sheets, and what if.
cli-explain = { $job }: ¿por qué { $count } { $count ->
    [one] hoja
   *[other] hojas
}?
cli-share = { $part } { $percent }%{ $kept ->
    [yes] {" "}se guarda
   *[no] {""}
}
cli-offcut = { $sheet } (sobrante guardado { $source })
cli-bars = # se vuelve panel, o se guarda, . es desperdicio
cli-what_if = ¿Y SI…? Cada una se planea y verifica completa; en orden de hojas, costo, cortes, masa
cli-column =
    .sheets = hojas
    .cost = costo
    .cuts = cortes
    .mass = masa
    .heaviest = mayor
    .members = agregar
cli-not_planned = no se puede planear
cli-no_difference = { $what } (sin diferencia)
cli-stops = { $what } ({ $count } { $count ->
    [one] hallazgo detiene
   *[other] hallazgos detienen
} el trabajo)
cli-cost = costo: { $currency } solo por las hojas; ~ por área donde el trabajo no da precio.
cli-mass = masa: todas las hojas por comprar; mayor: la pieza más pesada; agregar: piezas de armazón que pide el plan.
cli-money = dinero

# What is judged before anything is bought.
cli-judged = { $job }: revisado { $what ->
    [0] nada
   *[other] { $what }
}
cli-remedies = REMEDIOS PARA { $where }: cada uno calculado con todas las revisiones; en orden de altura, material, mano de obra{ $engineer ->
    [yes] ; primero un ingeniero
   *[no] {""}
}
cli-caution = CUIDADO: { $text }
cli-written = escrito: { $file }

# What was written into a job.
cli-done = { $file }: { $count } { $count ->
        [one] panel puesto
       *[other] paneles puestos
    }, { $offcuts } { $offcuts ->
        [one] sobrante guardado
       *[other] sobrantes guardados
    }. Anote lo que se encontró y vuelva a planear.

# Qué prueban las lecturas de un cuarto: su línea, dos tablas y lo que va entre ellas.
cli-survey =
    .room = { $room }: { $corners } esquinas, { $readings } lecturas, { $more } más de las necesarias; piso { $floor }
    .corner = esquina
    .right = a la derecha
    .up = hacia arriba (plano del piso, 0 abajo a la izquierda)
    .within = segura dentro de (95 %)
    .held = fija
    .taped_to = medido hasta: { $taped_to ->
        [studs] montantes descubiertos, las paredes que se quedan hasta su cara
        [finish] el acabado que aún estaba en las paredes
       *[untold] montantes descubiertos, las paredes que se quedan hasta su cara (así se toma, el trabajo no lo dice)
    }
    .as_adjusted = dibujado como se ajustó
    .squared = dibujado a escuadra donde un lado está a menos de { $mark } de ella: { $corner } se mueve más, { $by }
    .reading = lectura
    .taped = medida
    .adjusted = ajustada
    .off = diferencia
    .unchecked = nada la comprueba
