# What the pages in a browser say.

web-name = Firstcourse
web-skip = To the page
web-leave = Leave

# The stages of a job, as marks on a story pole.
web-pole = Stages of the job
    .job = Plan
    .document = Document
    .revisions = Saved before

web-enter =
    .title = Come in
    .code = Code
    .note = It stands on the terminal that Firstcourse was started on, or on the paper you were given. Capitals and dashes don't matter.
    .enter = Come in
    .wrong = This code is wrong, was used already, or is too old.
    .lost = Is there no code any more?
    .again = Show a new one on the terminal
    .sent = A new code stands on the terminal.

web-jobs =
    .title = Jobs
    .archived = Put away
    .new = New job
    .none = There is no job here yet.
    .saved = Saved { $when } by { $who }, number { $number }
    .planned = { $state ->
        [none] Not planned yet
        [now] Planned as it stands
       *[before] Planned as number { $planned } was; number { $head } is not planned yet
    }
    .upload = A job document from a file
    .send = Send

web-new =
    .title = New job
    .name = What is it called?
    .practice = Whose rules?
    .tape = Which tape is in your hand?
    .tongue = What are the papers written in?
    .make = Make the job

web-practice =
    .us = United States
    .uk = United Kingdom
    .au = Australia
web-tape =
    .inch = Inches
    .mm = Millimeters
web-tongue =
    .en = English
    .es = Español

web-plan =
    .title = The plan
    .make = Plan it
    .again = Plan it again
    .stop = Stop
    .old = This is the plan of number { $planned }; the job stands at number { $head } now.
    .proof = Verified: each number of this plan was derived again from the plan alone (number { $revision }).

web-state =
    .waiting = Waits for its turn
    .planning = Being planned
    .papers = Planned and verified; the papers are being made
    .done = Planned
    .failed = It cannot be planned
    .stopped = Stopped

web-step =
    .survey = The readings
    .judgement = Frame, panels and surfaces
    .boards = Boards and cuts
    .fasteners = Fasteners and quantities
    .proof = The proof
    .papers = The papers

web-figures =
    .title = Figures
    .boards = boards
    .sheets = sheets to buy
    .cuts = cuts
    .fasteners = fasteners
    .whole = whole tiles
    .cut = cut tiles

web-findings =
    .title = Findings
    .stop = Stops the work
    .fix = To fix on the way
    .note = To know
    .do = Do: { $remedy }

web-surfaces =
    .title = Surfaces
    .boards = Its boards
    .tile = Its tile
    .alt = Drawing of { $surface } with its measures

web-buy =
    .title = To buy
    .count = Count
    .item = What
    .pack = Sold as

web-papers =
    .title = Papers
    .none = The papers are made again when the job is planned.

web-more =
    .title = More
    .download = Fetch the job document
    .copy = Copy the job
    .archive = Put the job away
    .back = Take the job out again

web-document =
    .title = Job document
    .field = Field
    .field_note = As messages name it, lists counted from 1: rooms[1].walls[2].openings[1].left
    .value = Its value
    .set = Save this field
    .text = The whole document
    .save = Save the document
    .upload = Another document in its place
    .send = Send
    .meanwhile = { $who } has saved this job meanwhile. Nothing of yours is saved yet. Look at what changed, then save again.

web-revisions =
    .title = Saved before
    .saved = { $when }, { $who }
    .changes = What number { $number } changed
    .undo = Back to number { $number }

web-kind =
    .new = Made
    .edit = Changed { $about }
    .document = Document changed
    .upload = Document sent
    .copy = Copied
    .undo = Back to number { $about }

web-difference =
    .title = From number { $earlier } to number { $later }
    .none = The two are the same.

web-fault =
    .title = This did not work
    .wrong = Firstcourse does not understand what was asked.
    .refused = The form was too old. Go back, load the page again, and send it once more.
    .missing = There is nothing here, or nothing for you.
    .large = This is too large.
    .often = Too many wrong tries. Wait ten minutes.
    .ours = This is our fault. What you typed before is saved; please keep the job document, it shows how to fix it.
