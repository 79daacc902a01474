# What is handed over when a job is done.

handover-labels =
    .title = Handover file
    .owner_title = Your new tile: what to know
    .missing = No record, or not passed
    .missing_about = The plan asks for these, and nobody has recorded that they passed. They are not taken as done.
    .proved = Looked over before it was covered
    .tests = Flood tests
    .batches = Batches used
    .colors = Colors
    .spares = Spare material
    .changes = Changes
    .care = Care
    .cautions = Please note
    .photos = Photos
handover-about = { $full ->
        [yes] Handed over on { $on }. This file holds the plan and every photo as data; open its attachments to read them.
       *[no] Handed over on { $on }. Keep this with the papers of the house; the handover file has the details.
    }
handover-invented = Example: names and dates are invented.
handover-missing = { $place }: { $what }, { $state ->
        [failed] recorded as not passed
       *[missing] no record
    }
handover-what =
    .framing = framing before it was covered
    .members = added wood
    .fasteners = board fasteners
    .tape = tape over board joints
    .membrane = waterproofing
    .flood_test = flood test
    .drain_test = drain and pipe test
    .tile = tile
    .end = finished
handover-proof_heads =
    .place = Place
    .what = What
    .on = Date
    .who = By
handover-test_heads =
    .place = Place
    .starts = From
    .start_level = Level
    .ends = To
    .end_level = Level
    .who = By
    .held = Level
handover-held = { $holds ->
        [yes] did not sink
       *[no] sank
    }
handover-level = { $level }
handover-batch_heads =
    .item = What
    .lot = Batch
handover-color_heads =
    .of = What
    .color = Color
    .place = Place
handover-of =
    .grout = Grout
    .sealant = Sealant
handover-spare_heads =
    .item = What
    .amount = How much
    .where = Where it is
handover-changes = What was changed during the work lies in this file as changes.json.
handover-care =
    .clean = Clean with a neutral cleaner and water; no acid, no bleach on grout or stone.
    .sealant = Look once a year at the flexible sealant in corners and round tub, drain and fittings. Where it cracks or comes off, cut it out and renew it.
    .air = Let the room dry after each shower; leave the fan on.
    .drain = Keep the drain clean.
    .damage = Have a cracked tile, an open joint or a loose fitting repaired soon: water behind tile does its harm unseen.
handover-cautions =
    .drill = Do not drill into shower floors, curbs and benches: the waterproofing lies right under the tile. Elsewhere ask first where pipes and cables run.
    .dust = Cutting or grinding tile makes dust that harms lungs.
    .work = Leave plumbing, wiring and changes to what carries the house to licensed people under local code.
