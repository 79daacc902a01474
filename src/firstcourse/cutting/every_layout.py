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


def argument(fields: Sequence[Sequence[Region]], stock: StockSize, sheets: int) -> tuple[str, ...]:
    """Why no layout takes fewer sheets than the bound, and what is open where a plan takes more, in sentences.

    Args:
        fields: For each field the regions it may be taken as.
        stock: The sheet.
        sheets: How many the plan takes.

    Example:
        >>> floor = Region(length=100, across=36, gap=2, least=10, most=36, stagger=10)
        >>> for sentence in argument([[floor], [floor]], StockSize("s", 60, 36, 1), 4):
        ...     print(sentence)
        The fields measure 7200 together, which is 3.33 sheets of 60 x 36.
        No board is smaller than 10, so gaps of 2 between boards take no more than 1456 of that.
        Every layout cuts at least 5744 from sheets, which is 2.66 of them: 3 or more.
        The plan takes 4. With 3, all but 736 of 6480 would have to become boards; nothing proves that cannot be.
    """
    sheet = stock.w * stock.h
    whole = least = 0
    for ways in fields:
        area, region = min(((least_area(region), region) for region in ways), key=lambda found: found[0])
        whole, least = whole + region.length * region.across, least + area
    bound = -(-least // sheet)
    smallest = min(region.least for ways in fields for region in ways)
    gap = max(region.gap for ways in fields for region in ways)
    found = [
        f"The fields measure {whole} together, which is {whole / sheet:.2f} sheets of {stock.w} x {stock.h}.",
        f"No board is smaller than {smallest}, so gaps of {gap} between boards take no more than {whole - least}"
        " of that.",
        f"Every layout cuts at least {least} from sheets, which is {least / sheet:.2f} of them: {bound} or more.",
    ]
    if sheets > bound:
        few = sheets - 1
        found.append(
            f"The plan takes {sheets}. With {few}, all but {few * sheet - least} of {few * sheet} would have to"
            " become boards; nothing proves that cannot be."
        )
    else:
        found.append(f"The plan takes {sheets}: no plan takes fewer.")
    return tuple(found)


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
