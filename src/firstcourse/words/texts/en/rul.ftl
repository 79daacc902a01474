# The rule book: what is borrowed, and changes that change nothing.

RUL-101 = { $borrowed } of the { $asked } values behind this plan { $borrowed ->
        [one] is
       *[other] are
    } of { $source } practice: the rule book has none of { $own } practice for them.
    .measured = { $borrowed } of { $asked }
    .check = Check them against the standards and makers' sheets that govern here. `firstcourse rules --practice { $practice }` marks them, and a plan lists them under Rules and sources; a job sets its own under `rules`, with its reason.

RUL-102 = The job changes { $also }, and nothing in this plan asks for it.
    .take_out = Take the change out, or see whether another rule is meant.
