"""A lower bound on sheets over every layout the rules allow, not only the layouts a search tried.

However boards are laid, they cover a field but for the gaps between them. Boards cannot be smaller than allowed,
so there can only be so many courses, and so many breaks in each; and where breaks of neighbouring courses keep a
distance at least as great as the least board, those of two neighbouring courses together are no more than one
course alone could have. The least area of all boards, in sheets and rounded up, is the bound.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.cutting.model import Bound, StockSize


@dataclass(frozen=True)
class Region:
    """A rectangle filled by courses of rectangular boards, one way round.

    Attributes:
        length: Of every course, from the first board's start to the last one's end.
        across: Of all courses together.
        gap: Between boards and between courses.
        least: Least side of a board.
        most: Greatest height of a course.
        stagger: Least distance between breaks of neighbouring courses.
        starts: Where the gap of a break may start, measured along the course; None if anywhere.
    """

    length: int
    across: int
    gap: int
    least: int
    most: int
    stagger: int
    starts: tuple[int, ...] | None = None

    def most_breaks(self, distance: int) -> int:
        """Most breaks with this distance between them and the least board at both ends."""
        last = self.length - self.gap - self.least
        if self.starts is None:
            return max(0, (last - self.least) // distance + 1) if last >= self.least else 0
        count, at = 0, self.least
        for start in sorted(self.starts):
            if at <= start <= last:
                count, at = count + 1, start + distance
        return count


def least_over_layouts(fields: Sequence[Sequence[Region]], stock: StockSize) -> Bound:
    """Fewest sheets that the boards of all fields take, however they are laid and cut.

    Args:
        fields: For each field the regions it may be taken as.
        stock: The sheet.

    Returns:
        The bound in sheets, proven by area.

    Example:
        >>> floor = Region(length=100, across=36, gap=2, least=10, most=36, stagger=10)
        >>> least_over_layouts([[floor], [floor]], StockSize("s", 60, 36, 1)).value
        3
    """
    area = sum(min(least_area(region) for region in ways) for ways in fields)
    return Bound(-(-area // (stock.w * stock.h)), "area")


def least_area(region: Region) -> int:
    """Least area that the boards of a region have together."""
    import numpy as np

    from firstcourse.cutting import kernels

    alone = region.most_breaks(region.least + region.gap)
    both = 2 * alone
    if region.stagger > 0:
        both = min(both, region.most_breaks(min(region.stagger, region.least + region.gap)))
    room = np.zeros((region.across + 1, alone + 1), np.int64)
    area: int = kernels.least_area(
        region.length, region.across, region.gap, region.least, region.most, alone, both, room
    )
    return area


Span = tuple[int, int]


@dataclass(frozen=True, kw_only=True)
class GapGround:
    """A rectangle that courses are laid over, with the places where gaps may start.

    Attributes:
        length: Along the courses.
        across: Over all courses.
        gap: Between boards and between courses.
        least: Least side of a board.
        most: Greatest height of a course.
        breaks: Where a gap across a course may start, as (from, to) along it.
        joints: Where a gap between courses may start, as (from, to) across them.
        stagger: Least distance between breaks of neighbouring courses; 0 where nothing is asked.
    """

    length: int
    across: int
    gap: int
    least: int
    most: int
    breaks: tuple[Span, ...]
    joints: tuple[Span, ...]
    stagger: int = 0


@dataclass(frozen=True, kw_only=True)
class Gaps:
    """The most area that gaps between boards can take.

    Attributes:
        courses: So many it takes for that.
        alone: Most breaks of one course.
        pair: Most breaks of two neighbouring courses together.
    """

    area: int
    courses: int
    alone: int
    pair: int


def most_gaps(ground: GapGround) -> Gaps:
    """The most area of gaps in any stack of courses, in closed form; no less than what `least_area` leaves out.

    With `e` breaks more in a pair than in one course alone, every course may have `e`, and those of a set of which
    no two are neighbours up to `alone`. At least every second course is outside that set, none of them lower than
    the least board, and those within are no higher than the highest.

    Example:
        >>> anywhere = ((0, 100),)
        >>> floor = Ground(length=100, across=36, gap=2, least=10, most=36, breaks=anywhere, joints=anywhere)
        >>> most_gaps(floor)
        Gaps(area=912, courses=3, alone=7, pair=14)
    """
    distance = ground.least + ground.gap
    alone = _most_starts(ground.breaks, ground.length, ground, distance)
    pair = 2 * alone
    if ground.stagger > 0:
        pair = min(pair, _most_starts(ground.breaks, ground.length, ground, min(ground.stagger, distance)))
    each, more = pair - alone, 2 * alone - pair
    best = Gaps(area=0, courses=1, alone=alone, pair=pair)
    for courses in range(1, _most_starts(ground.joints, ground.across, ground, distance) + 2):
        high = ground.across - ground.gap * (courses - 1)
        if high > courses * ground.most:
            continue
        few = max(courses // 2 * ground.least, high - (courses + 1) // 2 * ground.most)
        breaks = each * high + more * (high - few)
        area = ground.gap * (ground.length * (courses - 1) + breaks)
        if area > best.area:
            best = Gaps(area=area, courses=courses, alone=alone, pair=pair)
    return best


def _most_starts(places: Sequence[Span], length: int, ground: GapGround, distance: int) -> int:
    """Most starts of gaps at these places, a least board at both ends and this distance between."""
    count, at, end = 0, ground.least, length - ground.gap - ground.least
    for first, last in sorted(places):
        start, stop = max(first, at), min(last, end)
        if start <= stop:
            more = (stop - start) // distance + 1
            count, at = count + more, start + more * distance
    return count
