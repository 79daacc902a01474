# What is wrong with prices and hours.

PRI-101 = The price of { $supplier } for this held until { $until }: it is stale on the day of the plan.
    .where = { THING($at) }
    .ask = Ask { $by } again; the quote is of { $quoted }.

PRI-102 = The price book has no price for this, so the total leaves it out.
    .where = { THING($at) }
    .price = Add a price with who quoted it, when, and until when it holds.

PRI-103 = The price book has no rate or no price of an hour for the task { $task }, so the total leaves it out.
    .rate = Add hours for one unit of it, with their source, or hours that you kept on finished jobs.

PRI-104 = A whole sheet does not go round the turn of the stair on either edge.
    .where = sheets { $at }
    .cut = Cut the sheets before they go up, or bring them in another way.
