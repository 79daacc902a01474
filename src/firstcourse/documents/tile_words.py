"""What the papers say of a tiled surface: its pattern, how many tiles, its smallest cut, its soft joints."""

import re
from collections.abc import Iterable

from firstcourse.plan import Plan, StartPoint, Surface, TiledArea
from firstcourse.tiling.words import cut_text
from firstcourse.units import Tape, format_length, one_or_more


def pattern_words(area: TiledArea) -> str:
    """An area's pattern as the papers call it."""
    name = area.pattern.replace("_", " ")
    return f"{name}, turned {area.angle} degrees" if area.angle else name


def smallest_cut(start: StartPoint, tape: Tape) -> str:
    """The smallest cut that a start leaves."""
    return cut_text(start.smallest_cut, tape) if start.cut_tiles else "no cut"


def tiles_words(surface: Surface, tape: Tape) -> str:
    """How many tiles a surface has, and its smallest cut."""
    whole = sum(tile.whole for tile in surface.tiles)
    cut = len(surface.tiles) - whole
    smallest = smallest_cut(surface.tiled[0].starts[0], tape)
    return f"{whole} whole, {cut} cut {one_or_more(cut, 'pieces')}; smallest cut {smallest}"


def soft_rows(plan: Plan, surfaces: Iterable[Surface]) -> list[str]:
    """The soft joints of surfaces that are told together: where, how wide, and how long in all."""
    found: dict[tuple[str, int], int] = {}
    for surface in surfaces:
        for joint in surface.soft_joints:
            length = sum(
                ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
                for a, b in zip(joint.line[:-1], joint.line[1:], strict=True)
            )
            # What is called by its kind, such as a tub named tub, is told by one word.
            why = re.sub(r"^(\w+) \1\b", r"\1", joint.why)
            found[why, joint.width] = found.get((why, joint.width), 0) + round(length)
    tape = plan.job.tape
    return [
        f"{why}: {format_length(width, tape)} wide, {format_length(length, tape)}"
        for (why, width), length in found.items()
    ]
