# The pages of the judgement: verdicts, calculation sheets, data sheets for an engineer.

judged-fails = does not hold: { $checks }
judged-holds = { $count ->
    [one] the frame's one check holds
   *[other] all { $count } checks of the frame hold
}
judged-open = { $verdict }; see { $codes }
judged-name = judgement

judged-labels =
    .head = judgement before anything is bought; rules { $practice }, { $date }
    .caution = Caution.
    .page = page { $page } of { $pages }
    .summary = Will it carry tile
    .place = place
    .judgement = judgement
    .measured = Measured: { $text }.
    .limit = Limit: { $text }.
    .do = Do: { $text }
    .remedies = Remedies: { $text }
    .remedies_about = Each was put through every check again. Ranked by height, then material, then labour, in relative figures: a help to choose, not a price.
    .what = what to do
    .result = result
    .sheet = Calculation sheet: { $text }
    .what_how = what and how
    .result_limit = result and limit
    .source = Source: { $text }
    .engineer = Data sheet for an engineer
    .stamp = { $date }, practice { $practice }
    .entered = found or entered
    .checked = checked, see the sheet
    .found = found
    .limit_head = limit
    .fails = FAILS
    .layers = Layers, from the structure outwards
    .layer = layer
    .thickness = thickness
    .density = density
    .mass = mass
    .all_layers = all layers
    .assumed = Assumed
    .open = Left open
    .question = Question
    .answer = Answer
    .answer_drawings = Answer and drawings
    .licence = Name and licence
    .signature = Date and signature
