# Not reviewed by a native setter yet.

web-name = Firstcourse
web-skip = Ir a la página
web-leave = Salir

# The stages of a job, as marks on a story pole.
web-pole = Etapas del trabajo
    .walk = Medir
    .room = Superficies
    .job = Plan
    .site = En obra
    .document = Documento
    .revisions = Guardado antes

web-newer = Hay un plan más nuevo.
    .show = Mostrarlo

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
    .begin = Un trabajo nuevo trae un cuarto pequeño de ejemplo.
    .tape = Medir su cuarto
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

web-clash =
    .title = ¿El valor de quién?
    .why = { $who } guardó lo mismo mientras tanto, pero distinto. Lo de usted todavía no está guardado.
    .changes = Ver qué cambió { $who }
    .mine = El mío:
    .theirs = El de { $who }:
    .before = Antes:
    .whole = El documento entero
    .save = Guardar así

web-revisions =
    .title = Guardado antes
    .saved = { $when }, { $who }
    .changes = Qué cambió el número { $number }
    .from = Del número
    .to = al número
    .compare = Mostrar la diferencia
    .planned = con plan
    .meanwhile = { $who } guardó este trabajo mientras tanto. No se regresó nada; vea la lista y elija otra vez.
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
    .document = Documento
    .plan = Plan
    .unplanned = Planee los dos números para ver qué cambió en el plan.
    .what = Qué
    .came = llegaron
    .went = se fueron
    .changed = cambiaron
    .stay = como antes
    .boards = paneles
    .pieces = piezas
    .sheets = hojas
    .cuts = cortes
    .tiles = azulejos
    .marks = marcas
    .found = Hallazgos nuevos
    .gone = Hallazgos que ya no están
    .none = Los dos son iguales.

web-fault =
    .title = Esto no funcionó
    .wrong = Firstcourse no entiende lo que se pidió.
    .refused = El formulario era demasiado viejo. Regrese, cargue la página otra vez y envíelo de nuevo.
    .missing = Aquí no hay nada, o nada para usted.
    .large = Esto es demasiado grande.
    .often = Demasiados intentos incorrectos. Espere diez minutos.
    .ours = Es culpa nuestra. Lo que escribió antes está guardado; conserve el documento de trabajo, muestra cómo arreglarlo.

web-sign_in =
    .title = Iniciar sesión
    .name = Nombre
    .password = Contraseña
    .wrong = El nombre o la contraseña es incorrecto.
    .code = Me dieron un código

web-account =
    .title = Cuenta de { $name }
    .tongue = ¿En qué idioma van las páginas?
    .any = El que pide el navegador
    .save = Guardar
    .phone = Otro aparato suyo, como un teléfono, entra con un código.
    .code = Un código para otro aparato
    .old = La contraseña de hasta ahora
    .new = La contraseña nueva
    .note = Al menos 12 caracteres. Sirven varias palabras que no van juntas en ningún lado.
    .set = Poner la contraseña
    .wrong = La contraseña de hasta ahora es incorrecta. No se cambió nada.
    .sessions = Dónde ha entrado usted
    .seen = Visto por última vez { $when }
    .began = Entró { $when }
    .this = Este navegador
    .end = Cerrar su sesión
    .end_of = Cerrar la sesión del navegador que entró { $when }
    .leave = Salir en todos los aparatos

web-people =
    .title = Personas
    .closed = cerrada
    .code = Un código para { $name }
    .close = Cerrar la cuenta de { $name }
    .open = Abrir otra vez la cuenta de { $name }
    .new = Alguien nuevo
    .role = ¿Qué puede hacer?
    .make = Crear la cuenta

web-role =
    .owner = Dueño: todos los trabajos y todas las personas
    .setter = Colocador: los trabajos propios y los compartidos

web-code =
    .title = Un código para { $name }
    .how = Lea la imagen con un teléfono, o abra { $address }/enter y escriba el código.
    .picture = El código como imagen para un teléfono
    .once = Se muestra solo esta vez. Quien lo tiene, entra.
    .on = Seguir

web-share =
    .title = Quién trabaja en él
    .who = Estas personas pueden trabajar en él, además de los dueños
    .save = Guardar
    .nobody = Todavía no hay otra cuenta.

web-links =
    .title = Para el cliente
    .what = Quien tiene este código ve la página del cliente de este trabajo y nada más.
    .look = Ver la página del cliente
    .client = Cliente
    .ends = Termina { $when }
    .end = Terminarlo ahora
    .for = ¿Para quién?
    .make = Crear un código

web-client =
    .none = Todavía no hay ningún plan que mostrar.

# What the terminal says where it is started.
web-terminal =
    .answers = Firstcourse responde en { $address } (termínelo con Ctrl-C).
    .link = Abra este enlace una vez; el código después de # lo deja entrar y termina a los diez minutos:
    .phone = Un teléfono en la misma red llega aquí:

# Pedazos de hoja que se guardan de un trabajo a otro.
web-rack =
    .title = El estante
    .what = Pedazos de panel que sobraron de otros trabajos. Quien trabaja aquí los ve y los usa todos.
    .none = No hay nada aquí.
    .from = De
    .throw = { $label } se tiró
    .more = Un pedazo más
    .board = ¿De qué hoja se cortó?
    .kind = Familia de panel
    .put = Ponerlo en el estante
    .job_title = Sobrantes
    .left = Lo que este plan dice guardar
    .write = Cuando un pedazo esté cortado, escriba en él su número nuevo como lo muestra el estante.
    .nothing_left = De este plan no queda nada más que guardar.
    .planned_again = El trabajo se planeó otra vez mientras tanto; mire lo que sobra ahora.
    .put_there = { $count ->
        [one] Un pedazo de este plan se puso en el estante.
       *[other] { $count } pedazos de este plan se pusieron en el estante.
    }
    .used = Del estante para este trabajo
    .used_none = Este trabajo no usa ningún pedazo del estante.
    .back = Devolver { $label }
    .offered = Pedazos del estante que sirven
    .offered_note = Lo marcado se usa primero y ya no queda en el estante.
    .gone = Un pedazo marcado ya no está en el estante, o no sirve para ninguna hoja de este trabajo; elija otra vez.
