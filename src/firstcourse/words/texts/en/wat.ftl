# Membranes: too low, missing, or pierced.

WAT-101 = The waterproof wall stops too low.
    .measured = { $measured } above the floor
    .higher = Board and tile it up to { TAPE($limit) } or higher.

WAT-102 = Nothing says that { $also } beside the shower floor is waterproof.
    .give_exposure = Give { $also } an exposure with zone: wet and membrane: yes.

WAT-103 = Fasteners of { $also } may pierce the membrane that runs up behind its boards.
    .measured = foot: { $foot }
    .limit = foot: tray or kerb
    .write_foot = Write foot: tray for { $also }, so that its lowest fasteners stay clear of the membrane.
