"""A working with more values in one column than it has rows."""

from tamperings.tools import Plan, answered_by, working


@answered_by("VER-903", everywhere=False)
def give_a_corner_twice(plan: Plan) -> None:
    corners = working(plan, "survey-area")["inputs"]["corner"]
    corners.append(corners[-1])


@answered_by("VER-903", everywhere=False)
def give_a_place_too_many(plan: Plan) -> None:
    places = working(plan, "survey-square")["inputs"]["u"]
    places.append(places[-1])


@answered_by("VER-903", everywhere=False)
def fill_by_a_depth_too_many(plan: Plan) -> None:
    depths = working(plan, "ground-level_out")["inputs"]["by"]
    depths.append(depths[-1])
