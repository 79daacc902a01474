"""Where the tile of walls begins: on the finished floors under them, nothing set behind bed or floor tile."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby, pairwise

import shapely

from firstcourse.details.footings import SHOWER_FLOOR, Floors
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds, from_shapely, to_shapely
from firstcourse.job import Room
from firstcourse.plan import Surface, Zone
from firstcourse.rules import RuleSet
from firstcourse.survey import SideFrame
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.values import Ref, length, most

_ROUNDED = 4
_NO_FLOOR = TICKS_PER_MM
"""A strip along a wall up to this wide is no floor of its own [ticks]."""
Spot = tuple[float, float]


def tiled_floors(room: Room, floors: Floors | None) -> Floors | None:
    """The floors of a room as far as it is known how high their finish lies; None where it is of none."""
    if floors is None or room.floor is None:
        return None
    shower = room.floor.shower
    if shower is not None and shower.tiling is None:
        floors = replace(floors, fall=None)
    # Beside a shower floor the plan says how high the room's floor lies, be it tiled or not.
    told = room.floor.tiling is not None or room.floor.tile is not None or floors.fall is not None
    return floors if told else replace(floors, room=0)


def foot_at(wall: Surface, u: float) -> float:
    """Height of the floor's panels at a place along a wall, over the lower end of its foot [ticks]."""
    (left, low), (right, high) = (wall.extent or wall.outline)[:2]
    return low + (high - low) * (u - left) / (right - left)


def out_of_level(walls: Sequence[Surface], tape: Tape) -> bool:
    """Whether the feet of a room's boarded walls differ by a graduation of the tape or more."""
    feet = [wall.datum + v for wall in walls for _, v in (wall.extent or wall.outline)[:2]]
    return bool(feet) and max(feet) - min(feet) >= tape.graduation


def left_on_boards(wall: Surface) -> Finding:
    """That tile of a wall begins at its boards, as its shower floor is planned from panels that lie level."""
    feet = (wall.extent or wall.outline)[:2]
    return Finding(
        code="TIL-132",
        severity=Severity.FIX,
        at=(wall.id,),
        remedies=("level_or_hold",),
        values={
            "corners": tuple(Ref(ref=f"{wall.id}/corner/{corner}") for corner in wall.corners),
            "heights": tuple(length(wall.datum + v) for _, v in feet),
        },
    )


def floor_zones(wall: Surface, frame: SideFrame, floors: Floors) -> Iterator[Zone]:
    """What floors take up of a wall above the foot of its boards, one zone for each floor.

    Args:
        wall: The boarded wall.
        frame: The wall on the drawing of the floor.
        floors: The finished floors of its room.
    """
    left, low, right, _ = bounds(wall.outline)
    foot = floors.under(frame.at(left, 0), frame.at(right, 0))
    pieces = list(zip(pairwise(foot.points), foot.on, strict=True))
    for on, tops in _without_slivers(
        [(on, [piece for piece, _ in group]) for on, group in groupby(pieces, key=lambda item: item[1])]
    ):
        # Floors stand on the panels, which the wall's foot follows.
        tops = [(left + u, v + foot_at(wall, left + u)) for u, v in tops]
        under = min(low, *(v for _, v in tops)) - 1
        ring = [(tops[0][0], under), *tops, (tops[-1][0], under)]
        above = shapely.Polygon(ring).intersection(to_shapely(wall.outline))
        for outline, _ in from_shapely(above) if above.area > 0 else ():
            wide = bounds(outline)[2] - bounds(outline)[0]
            if shapely.Polygon(outline).area > _ROUNDED * wide:
                yield Zone(outline=outline, why=f"{wall.room}/{on}")


def _without_slivers(groups: list[tuple[str, list[tuple[Spot, Spot]]]]) -> Iterator[tuple[str, list[Spot]]]:
    """The top of each floor along the wall; what is too narrow to be one is left to the floor beside it.

    As taped a shower may end a hair before the corner: no floor lies in such a strip.
    """
    wide: list[tuple[str, list[Spot]]] = []
    begun = None
    for on, pieces in groups:
        ends = [piece for piece in pieces if piece[1][0] - piece[0][0] > _ROUNDED]
        start, end = pieces[0][0][0], pieces[-1][1][0]
        if not ends:
            continue
        if end - start > _NO_FLOOR:
            tops = [ends[0][0], *(spot for _, spot in ends)]
            wide.append((on, tops if begun is None else [(begun, tops[0][1]), *tops]))
            begun = None
        elif wide:
            tops = wide[-1][1]
            tops.append((end, tops[-1][1]))
        elif begun is None:
            begun = start
    yield from wide


def short_of_floor(
    wall: Surface, frame: SideFrame, floors: Floors, rules: RuleSet, tape: Tape
) -> Iterator[Finding]:
    """That a wall's boards, and with them its tile, end so high that ground stays bare over a shower floor.

    Args:
        wall: The boarded wall.
        frame: The wall on the drawing of the floor.
        floors: The finished floors of its room.
        rules: Rules in force.
        tape: Tape of the job.
    """
    left, low, right, _ = bounds(wall.outline)
    foot = floors.under(frame.at(left, 0), frame.at(right, 0))
    there = [
        height
        for piece, on in zip(pairwise(foot.points), foot.on, strict=True)
        for _, height in piece
        if on == SHOWER_FLOOR
    ]
    entry = rules.entry("tile.movement.width_wall")
    joint = rules.ticks(entry.id)
    gap = low - min(there, default=low)
    if gap > joint + tape.graduation:
        yield entry.found(
            "TIL-127",
            Severity.FIX,
            wall.id,
            measured=length(gap),
            limit=most(length(joint)),
            remedies=("reach_down",),
            down_to=length(low - gap),
        )
