# What the pages in a browser say.

web-name = Firstcourse
web-skip = To the page
web-leave = Leave

# The stages of a job, as marks on a story pole.
web-pole = Stages of the job
    .walk = Taping
    .room = Surfaces
    .job = Plan
    .site = On site
    .document = Document
    .revisions = Saved before

web-newer = A newer plan is there.
    .show = Show it

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
    .begin = A new job has a small room in it as an example.
    .tape = Tape your room
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

web-clash =
    .title = Whose value?
    .why = { $who } saved the same meanwhile, but otherwise. Nothing of yours is saved yet.
    .changes = See what { $who } changed
    .mine = Mine:
    .theirs = From { $who }:
    .before = Before:
    .whole = The whole document
    .save = Save so

web-revisions =
    .title = Saved before
    .saved = { $when }, { $who }
    .changes = What number { $number } changed
    .from = From number
    .to = to number
    .compare = Show the difference
    .planned = planned
    .meanwhile = { $who } has saved this job meanwhile. Nothing was changed back; look at the list and choose again.
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
    .document = Document
    .plan = Plan
    .unplanned = Plan both numbers to see what changed in the plan.
    .what = What
    .came = came
    .went = went
    .changed = changed
    .stay = as before
    .boards = boards
    .pieces = pieces
    .sheets = sheets
    .cuts = cuts
    .tiles = tiles
    .marks = marks
    .found = New findings
    .gone = Findings that are gone
    .none = The two are the same.

web-fault =
    .title = This did not work
    .wrong = Firstcourse does not understand what was asked.
    .refused = The form was too old. Go back, load the page again, and send it once more.
    .missing = There is nothing here, or nothing for you.
    .large = This is too large.
    .often = Too many wrong tries. Wait ten minutes.
    .ours = This is our fault. What you typed before is saved; please keep the job document, it shows how to fix it.

web-sign_in =
    .title = Sign in
    .name = Name
    .password = Password
    .wrong = Name or password is wrong.
    .code = I was given a code

web-account =
    .title = Account of { $name }
    .tongue = What are the pages written in?
    .any = What the browser asks for
    .save = Save
    .phone = Another device of yours, such as a phone, comes in by a code.
    .code = A code for another device
    .old = The password until now
    .new = The new password
    .note = At least 12 characters. Several words that go together nowhere are good.
    .set = Set the password
    .wrong = The password until now is wrong. Nothing is changed.
    .sessions = Where you are signed in
    .seen = Last seen { $when }
    .began = Signed in { $when }
    .this = This browser
    .end = Sign it out
    .end_of = Sign the browser out that came in { $when }
    .leave = Sign out on every device

web-people =
    .title = People
    .closed = closed
    .code = A code for { $name }
    .close = Close the account of { $name }
    .open = Open the account of { $name } again
    .new = Somebody new
    .role = What may they do?
    .make = Make the account

web-role =
    .owner = Owner: all jobs and all people
    .setter = Setter: own jobs and those that are shared

web-code =
    .title = A code for { $name }
    .how = Read the picture with a phone, or open { $address }/enter and type the code.
    .picture = The code as a picture for a phone
    .once = It is shown this once only. Whoever has it comes in.
    .on = Go on

web-share =
    .title = Who works on it
    .who = These may work on the job, beside the owners
    .save = Save
    .nobody = There is no other account yet.

web-links =
    .title = For the client
    .what = Whoever has such a code sees the client's page of this job and nothing else.
    .look = See the client's page
    .client = Client
    .ends = Ends { $when }
    .end = End it now
    .for = For whom?
    .make = Make a code

web-client =
    .none = There is no plan to show yet.

# What the terminal says where it is started.
web-terminal =
    .answers = Firstcourse answers on { $address } (end it with Ctrl-C).
    .link = Open this link once; the code behind the # signs you in and ends after ten minutes:
    .phone = A phone on the same network comes here:

# Pieces of sheets that are kept from job to job.
web-rack =
    .title = The rack
    .what = Pieces of board that earlier jobs left over. Whoever works here sees and uses them all.
    .none = Nothing lies here.
    .from = From
    .throw = { $label } was thrown away
    .more = One more piece
    .board = Which sheet was it cut from?
    .kind = Board family
    .put = Put it on the rack
    .job_title = Left-over pieces
    .left = What this plan says to keep
    .write = Once a piece is cut, write its new number on it as the rack shows it.
    .nothing_left = Nothing more of this plan is to be kept.
    .planned_again = The job was planned again meanwhile; look at what is left over now.
    .put_there = { $count ->
        [one] One piece of this plan was put on the rack.
       *[other] { $count } pieces of this plan were put on the rack.
    }
    .used = From the rack for this job
    .used_none = This job uses no piece from the rack.
    .back = Put { $label } back
    .offered = Pieces on the rack that fit
    .offered_note = What is ticked is used up first, and is on the rack no more.
    .gone = A piece that was ticked lies on the rack no more, or fits no sheet of this job; choose again.
