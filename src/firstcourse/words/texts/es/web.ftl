# Not reviewed by a native setter yet.

web-name = Firstcourse
web-skip = Ir a la página
web-leave = Salir

# The stages of a job, as marks on a story pole.
web-pole = Etapas del trabajo
    .job = Plan
    .document = Documento
    .revisions = Guardado antes

web-enter =
    .title = Entrar
    .code = Código
    .note = Está en la terminal donde se inició Firstcourse, o en el papel que le dieron. Las mayúsculas y los guiones no importan.
    .enter = Entrar
    .wrong = Este código es incorrecto, ya se usó o es demasiado viejo.
    .lost = ¿Ya no hay código?
    .again = Mostrar uno nuevo en la terminal
    .sent = Hay un código nuevo en la terminal.

web-jobs =
    .title = Trabajos
    .archived = Archivados
    .new = Trabajo nuevo
    .none = Todavía no hay ningún trabajo aquí.
    .saved = Guardado { $when } por { $who }, número { $number }
    .planned = { $state ->
        [none] Todavía sin plan
        [now] Con plan tal como está
       *[before] Con plan del número { $planned }; el número { $head } todavía no tiene plan
    }
    .upload = Un documento de trabajo desde un archivo
    .send = Enviar

web-new =
    .title = Trabajo nuevo
    .name = ¿Cómo se llama?
    .practice = ¿Las reglas de quién?
    .tape = ¿Qué cinta métrica tiene en la mano?
    .tongue = ¿En qué idioma van los papeles?
    .make = Crear el trabajo

web-practice =
    .us = Estados Unidos
    .uk = Reino Unido
    .au = Australia
web-tape =
    .inch = Pulgadas
    .mm = Milímetros
web-tongue =
    .en = English
    .es = Español

web-plan =
    .title = El plan
    .make = Planear
    .again = Planear otra vez
    .stop = Detener
    .old = Este es el plan del número { $planned }; el trabajo ya está en el número { $head }.
    .proof = Verificado: cada número de este plan se obtuvo otra vez a partir del plan solo (número { $revision }).

web-state =
    .waiting = Espera su turno
    .planning = Se está planeando
    .papers = Planeado y verificado; se están haciendo los papeles
    .done = Planeado
    .failed = No se puede planear
    .stopped = Detenido

web-step =
    .survey = Las medidas
    .judgement = Estructura, tableros y superficies
    .boards = Paneles y cortes
    .fasteners = Fijaciones y cantidades
    .proof = La comprobación
    .papers = Los papeles

web-figures =
    .title = Cifras
    .boards = paneles
    .sheets = hojas por comprar
    .cuts = cortes
    .fasteners = fijaciones
    .whole = azulejos enteros
    .cut = azulejos cortados

web-findings =
    .title = Hallazgos
    .stop = Detiene el trabajo
    .fix = Por corregir en el camino
    .note = Para saber
    .do = Haga: { $remedy }

web-surfaces =
    .title = Superficies
    .boards = Sus paneles
    .tile = Sus azulejos
    .alt = Dibujo de { $surface } con sus medidas

web-buy =
    .title = Por comprar
    .count = Cantidad
    .item = Qué
    .pack = Se vende en

web-papers =
    .title = Papeles
    .none = Los papeles se hacen otra vez cuando se planea el trabajo.

web-more =
    .title = Más
    .download = Bajar el documento de trabajo
    .copy = Copiar el trabajo
    .archive = Archivar el trabajo
    .back = Sacar el trabajo del archivo

web-document =
    .title = Documento de trabajo
    .field = Campo
    .field_note = Como lo nombran los mensajes, las listas se cuentan desde 1: rooms[1].walls[2].openings[1].left
    .value = Su valor
    .set = Guardar este campo
    .text = El documento entero
    .save = Guardar el documento
    .upload = Otro documento en su lugar
    .send = Enviar
    .meanwhile = { $who } guardó este trabajo mientras tanto. Lo de usted todavía no está guardado. Vea qué cambió y guarde otra vez.

web-revisions =
    .title = Guardado antes
    .saved = { $when }, { $who }
    .changes = Qué cambió el número { $number }
    .undo = Volver al número { $number }

web-kind =
    .new = Creado
    .edit = Cambió { $about }
    .document = Documento cambiado
    .upload = Documento enviado
    .copy = Copiado
    .undo = De vuelta al número { $about }

web-difference =
    .title = Del número { $earlier } al número { $later }
    .none = Los dos son iguales.

web-fault =
    .title = Esto no funcionó
    .wrong = Firstcourse no entiende lo que se pidió.
    .refused = El formulario era demasiado viejo. Regrese, cargue la página otra vez y envíelo de nuevo.
    .missing = Aquí no hay nada, o nada para usted.
    .large = Esto es demasiado grande.
    .often = Demasiados intentos incorrectos. Espere diez minutos.
    .ours = Es culpa nuestra. Lo que escribió antes está guardado; conserve el documento de trabajo, muestra cómo arreglarlo.
