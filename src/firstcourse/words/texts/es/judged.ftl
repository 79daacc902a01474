# Not reviewed by a native setter yet.
# The pages of the judgement: verdicts, calculation sheets, data sheets for an engineer.

judged-fails = no cumple: { $checks }
judged-holds = { $count ->
    [one] cumple la única revisión del armazón
   *[other] cumplen las { $count } revisiones del armazón
}
judged-open = { $verdict }; vea { $codes }
judged-name = revisión

judged-labels =
    .head = revisión antes de comprar nada; reglas { $practice }, { $date }
    .caution = Cuidado.
    .page = página { $page } de { $pages }
    .summary = ¿Aguanta el azulejo?
    .place = lugar
    .judgement = revisión
    .measured = Medido: { $text }.
    .limit = Límite: { $text }.
    .do = Haga: { $text }
    .remedies = Remedios: { $text }
    .remedies_about = Cada uno pasó otra vez por todas las revisiones. En orden de altura, luego material, luego mano de obra, en cifras relativas: una ayuda para escoger, no un precio.
    .what = qué hacer
    .result = resultado
    .sheet = Hoja de cálculo: { $text }
    .what_how = qué y cómo
    .result_limit = resultado y límite
    .source = Fuente: { $text }
    .engineer = Hoja de datos para un ingeniero
    .stamp = { $date }, práctica { $practice }
    .entered = encontrado o dado
    .checked = revisado, vea la hoja
    .found = encontrado
    .limit_head = límite
    .fails = NO CUMPLE
    .layers = Capas, desde la estructura hacia afuera
    .layer = capa
    .thickness = espesor
    .density = densidad
    .mass = masa
    .all_layers = todas las capas
    .assumed = Supuesto
    .open = Queda abierto
    .question = Pregunta
    .answer = Respuesta
    .answer_drawings = Respuesta y dibujos
    .licence = Nombre y licencia
    .signature = Fecha y firma
