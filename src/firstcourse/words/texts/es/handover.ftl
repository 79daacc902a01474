# Not reviewed by a native setter yet.
# What is handed over when a job is done.

handover-labels =
    .title = Archivo de entrega
    .owner_title = Su azulejo nuevo: lo que debe saber
    .missing = Sin registro, o no aprobado
    .missing_about = El plan pide esto y nadie registró que se aprobó. No se da por hecho.
    .proved = Revisado antes de cubrirse
    .tests = Pruebas de inundación
    .batches = Lotes usados
    .colors = Colores
    .spares = Material de repuesto
    .changes = Cambios
    .care = Cuidado
    .cautions = Tome en cuenta
    .photos = Fotos
handover-about = { $full ->
        [yes] Entregado el { $on }. Este archivo contiene el plan y cada foto como datos; abra sus adjuntos para leerlos.
       *[no] Entregado el { $on }. Guárdelo con los papeles de la casa; el archivo de entrega tiene los detalles.
    }
handover-invented = Ejemplo: los nombres y las fechas son inventados.
handover-missing = { $place }: { $what }, { $state ->
        [failed] registrado como no aprobado
       *[missing] sin registro
    }
handover-what =
    .framing = estructura antes de cubrirse
    .members = madera agregada
    .fasteners = fijaciones de los paneles
    .tape = cinta en las juntas entre paneles
    .membrane = impermeabilización
    .flood_test = prueba de inundación
    .drain_test = prueba de coladera y tubos
    .tile = azulejo
    .end = terminado
handover-proof_heads =
    .place = Lugar
    .what = Qué
    .on = Fecha
    .who = Por
handover-test_heads =
    .place = Lugar
    .starts = Desde
    .start_level = Nivel
    .ends = Hasta
    .end_level = Nivel
    .who = Por
    .held = Nivel
handover-held = { $holds ->
        [yes] no bajó
       *[no] bajó
    }
handover-level = { $level }
handover-batch_heads =
    .item = Qué
    .lot = Lote
handover-color_heads =
    .of = Qué
    .color = Color
    .place = Lugar
handover-of =
    .grout = Boquilla
    .sealant = Sellador
handover-spare_heads =
    .item = Qué
    .amount = Cuánto
    .where = Dónde está
handover-changes = Lo que se cambió durante el trabajo está en este archivo como changes.json.
handover-care =
    .clean = Limpie con limpiador neutro y agua; sin ácido, y sin cloro en boquilla o piedra.
    .sealant = Revise una vez al año el sellador flexible en esquinas y alrededor de tina, coladera y llaves. Donde se agriete o se despegue, córtelo y póngalo nuevo.
    .air = Deje secar el cuarto después de cada baño; deje prendido el extractor.
    .drain = Mantenga limpia la coladera.
    .damage = Haga reparar pronto un azulejo roto, una junta abierta o una llave floja: el agua detrás del azulejo daña sin que se vea.
handover-cautions =
    .drill = No taladre pisos de regadera, bordillos ni bancas: la impermeabilización está justo debajo del azulejo. En otros lugares pregunte primero por dónde van tubos y cables.
    .dust = Cortar o pulir azulejo hace polvo que daña los pulmones.
    .work = Deje la plomería, la electricidad y los cambios a lo que sostiene la casa a personas con licencia según el código local.
