# Not reviewed by a native setter yet.
# Texts that are values of rules, word for word as the rule book has them; another tongue says the same.

rule-texts =
    .silica = Marque y quiebre afuera o con aspiración; adentro nada de sierra eléctrica ni esmeril sobre el panel, afuera solo con colector de polvo; corte el azulejo en mojado; aspire en mojado o con HEPA, nunca barra en seco. Rigen las reglas locales sobre polvo de sílice.
    .old_layers = Las capas viejas de piso, pared y tubería pueden tener asbesto o plomo: mándelas analizar antes de demoler y siga la ley local.
    .electricity = Corte los circuitos y cierre el agua antes de cortar o clavar cerca de cajas, cables y tubos; el cableado es trabajo con licencia.
    .structure = El armazón se toma como se encontró. Piezas dañadas, con muescas o dudosas son asunto de un ingeniero con licencia antes de poner paneles.
    .lifting = Una hoja más pesada de lo que según el plan levanta una persona la llevan dos; mida la entrada antes de comprar hojas largas.
    .engineer = Esto es la revisión de un azulejero con las piezas como se dieron, no un diseño. El diseño toca a un ingeniero con licencia donde una pieza esté cortada, con muescas, dañada o sea desconocida, donde las cargas pasen de las tablas, y antes de agregar o cambiar cualquier pieza.
    .backer_screw_inch = tornillo para panel de respaldo de 1-1/4 in, resistente a la corrosión
    .backer_screw_mm = tornillo para panel de respaldo de 32 mm, resistente a la corrosión
