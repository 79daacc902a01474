"""Lines with what finds them: a measurement near each of their ends, and the marks of the plan they give."""

import math
from collections.abc import Callable, Iterator, Sequence

from firstcourse.plan import Mark, MarkKind
from firstcourse.tiles.mark_ground import SAME_MM, GroundLine, MarkGround, Measured, in_ticks
from firstcourse.tiles.model import XY

# Places along half a line at which something to measure from is looked for.
_LOOKS = 8


def line_marks(
    kind: MarkKind, line: tuple[tuple[int, int], tuple[int, int]], measured: Sequence[Measured], to: str
) -> Iterator[Mark]:
    """One mark for each measurement of a line.

    Args:
        kind: Of the marks.
        line: Its ends [ticks].
        measured: What finds it.
        to: What it stands for.
    """
    for one in measured:
        start, end = in_ticks(one.start), in_ticks(one.end)
        yield Mark(
            kind=kind, line=line, from_=one.ref, distance=round(math.dist(start, end)), to=to, at=one.at,
            measure=(start, end),
        )  # fmt: skip


def risen(ground: MarkGround, line: GroundLine) -> tuple[Measured, ...]:
    """Near both ends of a level line from below, else from above."""
    return near_both_ends(line, (lambda at: ground.rise(at, down=False), lambda at: ground.rise(at, down=True)))


def beside(ground: MarkGround, line: GroundLine) -> tuple[Measured, ...]:
    """Near both ends of a plumb line from the left, else from the right."""
    return near_both_ends(
        line, (lambda at: ground.beside(at, back=False), lambda at: ground.beside(at, back=True))
    )


def near_both_ends(line: GroundLine, ways: Sequence[Callable[[XY], Measured | None]]) -> tuple[Measured, ...]:
    """A measurement near each end of a line, or farther in where nothing can be touched; the first way first."""
    found = []
    for end, far in ((line.a, line.b), (line.b, line.a)):
        # A hair inside, since the edge there may lean.
        hair = 10 * SAME_MM / math.dist(end, far)
        shares = [max(step / (2 * _LOOKS), hair) for step in range(_LOOKS)]
        spots = [(end[0] + (far[0] - end[0]) * share, end[1] + (far[1] - end[1]) * share) for share in shares]
        near = _LOOKS // 2
        looked = (way(spot) for part in (spots[:near], spots[near:]) for way in ways for spot in part)
        first = next((measured for measured in looked if measured is not None), None)
        if first is not None:
            found.append(first)
    return tuple(dict.fromkeys(found))
