# Not reviewed by a native setter yet.
# Fasteners: where one cannot be set as asked.

FST-101 = El panel apoya en { $member } muy poco para tomar una fijación fuera de su borde.
    .blocking = Agregue bloqueo junto a la pieza para que el borde del panel tenga madera detrás.

FST-102 = Las fijaciones no se pueden poner lo bastante juntas{ $named ->
        [yes] {" "}a lo largo de { $member }
       *[no] {""}
    }.
    .blocking_or_seam = Agregue bloqueo junto al lugar que no se puede fijar, o mueva la junta.

FST-103 = El panel es demasiado chico para alejar las fijaciones de sus esquinas; solo se alejan de sus bordes.
    .pilot_holes = Haga agujeros guía antes de atornillar, o una este panel con el vecino.

FST-104 = El panel no tiene lugar para una fijación: muy angosto, en una zona, o sin armazón detrás.
    .blocking = Agregue bloqueo detrás del panel, o únalo con el vecino.

FST-105 = Parte de un borde queda más lejos de una fijación de lo pedido.
    .bed_or_blocking = Asiente este borde en mortero sobre el armazón, o agregue bloqueo que una fijación alcance.

FST-106 = Los tornillos para panel no agarran en concreto, y estos paneles van sobre una losa.
    .concrete_fasteners = Use fijaciones hechas para concreto, y taladre lejos de tubos de calefacción, cables y tensores, con aspiración por la sílice del polvo;
    .no_holes = ninguna pasa por una membrana que detiene agua o humedad.

FST-107 = No se puede clavar nada en una pieza del armazón detrás de este panel, así que salva los claros a su lado.
    .measured = { $members }
    .member_each_side = Ponga una pieza a cada lado de la zona, libre de lo que pasa por ahí, y délas en el trabajo.
