"""Where a pattern starts: the best place, and two that are really different, each with what it trades.

Along each axis of the surface only some shifts can be best: where a tile's edge meets an edge of the area, where a
cut crosses a threshold, and midway between two such shifts, where two cuts are even. Between them the cost runs
straight. All of them are judged, so for level, upright and half-turned patterns the cheapest is the best there is.
It is the pick, unless the tiles it lays have a sliver among them and another start, at few more cuts, has none.
Other patterns meet an edge in every way at once; they are judged at the shifts where a corner of a tile meets a
corner of the area, on a fixed grid, and more closely where it was best.

A mirrored room gets the mirrored plan and the mirrored alternatives, joint for joint, when its pattern is mirrored
too; see `handedness`.
Most patterns are their own mirror image. A running bond by a share of the tile other than half
climbs to one hand, and a herringbone along the walls runs to one: the job says to which, by an offset of 1/3 or
2/3, by an angle of 0 or 90, and that is kept. Walls whose courses run on round the corners keep one level, and are
mirrored to left and right alone.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from firstcourse.rules import RuleSet
from firstcourse.tiles.edges import start_costs
from firstcourse.tiles.handedness import at_corner, one_hand
from firstcourse.tiles.model import XY, RepeatCell, Start, TileArea
from firstcourse.tiles.start_search import Search


def find_starts(
    cell: RepeatCell, field: TileArea, rules: RuleSet, *, level: float | None = None
) -> tuple[Start, ...]:
    """The best start and up to two different ones, best first.

    Args:
        cell: The repeat.
        field: The area with its edges.
        rules: What a sliver is, and what a start is judged by.
        level: Height of a course that the walls beside this one keep too, for a pattern of level courses [mm].

    Returns:
        At least one start; their shifts are whole ticks where the steps of the pattern are.

    Raises:
        InputValueError: The area is empty.
    """
    search = Search(cell=cell, field=field, costs=start_costs(rules), level=level)
    hand = one_hand(cell, field, level)
    same = Search(cell=hand.cell, field=hand.field, costs=start_costs(rules), level=hand.level)
    best, num_laid = same.best()
    shifts = [at_corner(cell, field, hand.in_room(shift), level) for shift in best]
    found = [search.start(shift) for shift in shifts]
    return tuple(
        replace(start, num_laid=num_laid, why="other" if rank else "best") for rank, start in enumerate(found)
    )


def common_level(
    walls: Sequence[tuple[RepeatCell, TileArea]], rules: RuleSet, *, over: Sequence[float]
) -> float | None:
    """The height of a course that is best for several walls together, so that joints run on round their corners.

    It is the cheapest of those that leave a sliver on the fewest walls.

    Args:
        walls: Repeat and area of each wall.
        rules: What a sliver is, and what a start is judged by.
        over: How far that from which heights of each wall count lies over one level for all [mm].

    Returns:
        A height over that level that starts a course [mm]; None where the walls' courses are not alike.
    """
    searches = [Search(cell=cell, field=field, costs=start_costs(rules)) for cell, field in walls]
    steps = {search.course_step() for search in searches}
    step = next(iter(steps), None)
    if len(steps) != 1 or step is None:
        return None
    each = list(zip(searches, over, strict=True))
    levels = np.unique(np.concatenate([(search.critical_levels() + above) % step for search, above in each]))
    cost = np.sum([search.cost_of_levels((levels - above) % step) for search, above in each], axis=0)
    slivers = np.sum([search.slivers_of_levels((levels - above) % step) for search, above in each], axis=0)
    return float(levels[np.lexsort((np.round(cost, 9), slivers))[0]])


def judge_start(cell: RepeatCell, field: TileArea, shift: XY, rules: RuleSet) -> Start:
    """A start that is given: what it brings.

    Args:
        cell: The repeat.
        field: The area with its edges.
        shift: Where the repeat's origin lies [mm].
        rules: What a sliver is, and what a start is judged by.

    Raises:
        InputValueError: The area is empty.
    """
    return replace(Search(cell=cell, field=field, costs=start_costs(rules)).start(shift), why="given")
