# What the pages for the work on site say.

site-work =
    .title = On site
    .unplanned = There is no plan yet. What is ticked here are the boards, cuts and tiles of a plan.
    .plan = To the plan
    .old = This is the work of plan number { $planned }; the job stands at number { $head } and is not planned yet.
    .all = All parts
    .before = Part before
    .next = Next part

site-tick =
    .tiles = Tiles set
    .keep = Keep what is written
    .up = up in the plan
    .inch = such as 11-13/16"
    .mm = such as 300 mm

site-clash =
    .title = Two say different things
    .about = Look at it on site, then press what is so.
    .yes = Done
    .no = Not done
    .blank = { $value }
    .empty = Nothing there
    .by = { $who }, { $when }
    .short = Two say different things

site-elsewhere =
    .title = Set by an earlier plan
    .about = This was ticked on an earlier plan, and the plan of now has it in another place or not at all. Look where it stands.
    .plan = plan number { $revision }

site-left =
    .title = Plan what is left
    .about = { $count ->
        [0] No board is ticked as set since this was planned.
        [one] { $count } board is ticked as set since this was planned. It stays where it is; the rest is planned anew round it.
       *[other] { $count } boards are ticked as set since this was planned. They stay where they are; the rest is planned anew round them.
    }
    .plan = Plan what is left
    .up = Up, and stay
    .stay = To set, as before
    .moved = To set, moved
    .new = New
    .gone = Gone
    .cuts = Cuts
    .sheets = Sheets of { $stock }, cut up ones included
    .marks = Marks to make
    .counts = { $came } new, { $went } gone, { $changed } changed, { $stay } as before
    .whole = The whole difference
    .unplanned = What is done is written into the job. The plan of what is left is not there.

site-phone =
    .kept = All is kept.
    .waits = { $count } waiting on this phone; they are sent when there is a network.
    .lost = This phone keeps nothing by itself: wait until it says that all is kept.
    .refused = Not taken: { $why }
    .leave = Leave it out
    .others = { $count } waiting on this phone from another account; sign in with it to send them.
    .bare = Without scripts each tick is sent at once and needs the network.

site-fault =
    .replanned = It was planned again meanwhile. Look at the part once more, and enter it again.

site-photos =
    .title = Photos
    .open = Photos from site
    .all = All photos
    .choose = Where is it? Each photo is pinned to the drawing of a surface.
    .tap = Tap the drawing where the photo is taken, or move the sliders.
    .across = From left to right
    .up = From the bottom up
    .stage = Stage of the work
    .note = What is to be seen
    .photo = Photo
    .stripped = Kept is only what is seen: the place, the time and the phone are taken out of the file. JPEG, PNG or WebP, 12 MB at most.
    .add = Keep the photo
    .drop = Take away
    .drop_of = Take photo { $number } away

site-stage =
    .found = As found
    .frame = Frame
    .boards = Boards
    .water = Water
    .tile = Tile
    .done = Done

site-client =
    .title = Is this how it is to be?
    .about = What you approve is this plan and no other: if it is planned again, you are asked again.
    .said = What the client says
    .room = { $room } unfolded: the floor with the walls folded out
    .soft = Soft joints
    .trims = Edge trim
    .name = Your name
    .sign = Sign here with your finger
    .sign_again = Sign again
    .words = What is wrong, or what else is to be said
    .approve = I approve this plan
    .wrong = Something is wrong
    .approved = { $name } approves
    .objects = { $name }: something is wrong
    .of = { $when }, plan number { $revision }
    .earlier = an earlier plan than the one shown
    .signature_of = Signature of { $name }
    .replanned = It was planned again meanwhile. Look at the plan as it is now, and answer again.
    .name_missing = Type your name, in 80 letters at most.
    .words_missing = Write what is wrong, in 2,000 letters at most.
    .signature_wrong = The signature cannot be read. Sign again, or type your name alone.

site-along =
    .title = Without a network
    .bare = The pages, tickets and drawings of this job can be kept on this phone.
    .take = Take it along
    .going = Being kept: { $count }
    .taken = All pages of this plan are on this phone. What is ticked without a network is sent when there is one.
    .older = An earlier plan is on this phone. Take it along again.
    .failed = Not all could be kept. Try again where the network is better.
    .unsafe = A browser keeps pages only of addresses that begin with https, or of 127.0.0.1. Start Firstcourse with a certificate to take jobs along.
    .leave = Keep it no longer

site-file =
    .title = From a pack on a phone
    .file = The file of ticks that it saved
    .send = Take it in
