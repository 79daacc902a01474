# Not reviewed by a native setter yet.
# Membranes: too low, missing, or pierced.

WAT-101 = La pared impermeable termina demasiado abajo.
    .measured = { $measured } arriba del piso
    .higher = Póngale panel y azulejo hasta { TAPE($limit) } o más arriba.

WAT-102 = Nada dice que { $also }, junto al piso de regadera, es impermeable.
    .give_exposure = Dé a { $also } una exposure con zone: wet y membrane: yes.

WAT-103 = Las fijaciones de { $also } pueden perforar la membrana que sube detrás de sus paneles.
    .measured = foot: { $foot }
    .limit = foot: tray o kerb
    .write_foot = Escriba foot: tray para { $also }, para que sus fijaciones más bajas no toquen la membrana.
