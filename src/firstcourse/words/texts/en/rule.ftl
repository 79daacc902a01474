# Texts that are values of rules, word for word as the rule book has them; another tongue says the same.

rule-texts =
    .silica = Score and snap outdoors or with extraction; no power saw or grinder on board indoors, outdoors one with dust collection only; saw tile wet; wet or HEPA vacuum, never sweep dry. Local rules on silica dust govern.
    .old_layers = Old floor, wall and pipe layers may hold asbestos or lead: have them sampled before strip-out and follow local law.
    .electricity = Isolate circuits and shut off water before cutting or fastening near boxes, cables and pipes; wiring is licensed work.
    .structure = Framing is taken as found. Damaged, notched or doubtful members are for a licensed engineer before boarding.
    .lifting = A sheet heavier than the plan says one person may lift is carried by two; measure the way in before you buy long ones.
    .engineer = This is a setter's check of members as entered, not a design. For design by a licensed engineer where a member is cut, notched, damaged or unknown, where loads exceed the tables, and before any member is added or altered.
    .backer_screw_inch = 1-1/4 in corrosion-resistant backer-board screw
    .backer_screw_mm = 32 mm corrosion-resistant backer-board screw
