# What is bought and carried.

QTY-101 = One whole sheet is more than one person may lift with the hands { $reach } out.
    .where = sheets { $at }
    .two = Carry it between two, { $half } each; or score and snap it where it lies.

QTY-102 = One whole sheet is more than two people may lift with the hands { $reach } out.
    .where = sheets { $at }
    .cart = Score and snap it where it lies, bring it in on a cart and stand it up between three, or buy smaller sheets.
