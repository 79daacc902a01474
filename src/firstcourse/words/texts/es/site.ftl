# Not reviewed by a native setter yet.
# What the pages for the work on site say.

site-work =
    .title = En obra
    .unplanned = Todavía no hay plan. Aquí se marcan los paneles, cortes y azulejos de un plan.
    .plan = Al plan
    .old = Este es el trabajo del plan número { $planned }; el trabajo va en el número { $head } y todavía no está planeado.
    .all = Todas las partes
    .before = Parte anterior
    .next = Parte siguiente

site-tick =
    .tiles = Azulejos puestos
    .keep = Guardar lo escrito
    .up = puesto en el plan
    .inch = por ejemplo 11-13/16"
    .mm = por ejemplo 300 mm

site-clash =
    .title = Dos dicen cosas distintas
    .about = Vea en obra cómo está y oprima lo que es cierto.
    .yes = Hecho
    .no = Sin hacer
    .blank = { $value }
    .empty = Nada
    .by = { $who }, { $when }
    .short = Dos dicen cosas distintas

site-elsewhere =
    .title = Puesto según un plan anterior
    .about = Esto se marcó en un plan anterior, y el plan de ahora lo tiene en otro lugar o no lo tiene. Vea dónde está.
    .plan = plan número { $revision }

site-left =
    .title = Planear lo que falta
    .about = { $count ->
        [0] Ningún panel se ha marcado como puesto desde este plan.
        [one] { $count } panel se ha marcado como puesto desde este plan. Se queda donde está; lo demás se planea de nuevo a su alrededor.
       *[other] { $count } paneles se han marcado como puestos desde este plan. Se quedan donde están; lo demás se planea de nuevo a su alrededor.
    }
    .plan = Planear lo que falta
    .up = Puestos, se quedan
    .stay = Por poner, igual que antes
    .moved = Por poner, movidos
    .new = Nuevos
    .gone = Ya no están
    .cuts = Cortes
    .sheets = Hojas de { $stock }, con las ya cortadas
    .marks = Marcas por hacer
    .counts = { $came } nuevas, { $went } ya no están, { $changed } cambiadas, { $stay } como antes
    .whole = Toda la diferencia
    .unplanned = Lo hecho está escrito en el trabajo. El plan de lo que falta no está.

site-phone =
    .kept = Todo está guardado.
    .waits = { $count } en espera en este teléfono; se mandan cuando haya red.
    .lost = Este teléfono no guarda nada por sí mismo: espere hasta que diga que todo está guardado.
    .refused = No se aceptó: { $why }
    .leave = Dejarlo fuera
    .others = { $count } en espera en este teléfono de otra cuenta; entre con ella para mandarlos.
    .bare = Sin scripts, cada marca se manda de una vez y necesita la red.

site-fault =
    .replanned = Entre tanto se planeó de nuevo. Vea la parte otra vez y márquelo de nuevo.

site-photos =
    .title = Fotos
    .open = Fotos de obra
    .all = Todas las fotos
    .choose = ¿Dónde es? Cada foto se marca en el dibujo de una superficie.
    .tap = Toque el dibujo donde se toma la foto, o mueva los controles.
    .across = De izquierda a derecha
    .up = De abajo hacia arriba
    .stage = Etapa del trabajo
    .note = Qué se ve
    .photo = Foto
    .stripped = Se guarda solo lo que se ve: el lugar, la hora y el teléfono se quitan del archivo. JPEG, PNG o WebP, 12 MB como máximo.
    .add = Guardar la foto
    .drop = Quitar
    .drop_of = Quitar la foto { $number }

site-stage =
    .found = Como se encontró
    .frame = Estructura
    .boards = Paneles
    .water = Agua
    .tile = Azulejo
    .done = Terminado

site-client =
    .title = ¿Así debe quedar?
    .about = Lo que usted aprueba es este plan y ningún otro: si se planea de nuevo, se le pregunta de nuevo.
    .said = Lo que dice el cliente
    .room = { $room } desplegado: el piso con las paredes abatidas
    .soft = Juntas flexibles
    .trims = Perfil de borde
    .name = Su nombre
    .sign = Firme aquí con el dedo
    .sign_again = Firmar de nuevo
    .words = Qué está mal, o qué más hay que decir
    .approve = Apruebo este plan
    .wrong = Algo está mal
    .approved = { $name } aprueba
    .objects = { $name }: algo está mal
    .of = { $when }, plan número { $revision }
    .earlier = un plan anterior al que se muestra
    .signature_of = Firma de { $name }
    .replanned = Entre tanto se planeó de nuevo. Vea el plan como está ahora y conteste de nuevo.
    .name_missing = Escriba su nombre, con 80 letras como máximo.
    .words_missing = Escriba qué está mal, con 2,000 letras como máximo.
    .signature_wrong = La firma no se puede leer. Firme de nuevo, o escriba solo su nombre.

site-along =
    .title = Sin red
    .bare = Las páginas, hojas de cortes y dibujos de este trabajo se pueden guardar en este teléfono.
    .take = Llevarlo conmigo
    .going = Guardando: { $count }
    .taken = Todas las páginas de este plan están en este teléfono. Lo que marque sin red se manda cuando haya.
    .older = En este teléfono está un plan anterior. Lléveselo de nuevo.
    .failed = No se pudo guardar todo. Pruebe otra vez donde haya mejor red.
    .unsafe = Un navegador solo guarda páginas de direcciones que empiezan con https, o de 127.0.0.1. Inicie Firstcourse con un certificado para llevarse trabajos.
    .leave = Ya no guardarlo

site-file =
    .title = De un juego de obra en un teléfono
    .file = El archivo de marcas que guardó
    .send = Recibirlo
