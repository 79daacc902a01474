"""What the papers say of a tiled surface: its pattern, how many tiles, its smallest cut, its soft joints."""

import math
from collections.abc import Iterable
from itertools import pairwise

from firstcourse.plan import Plan, SoftJoint, StartPoint, Surface, TiledArea
from firstcourse.tiling.words import cut_text
from firstcourse.units import Tape, format_length, one_or_more
from firstcourse.values import Ref, Statement, Word, length, statement
from firstcourse.words import speaker_for


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
    speaker, tape = speaker_for(plan), plan.job.tape
    found: dict[tuple[str, int], int] = {}
    for surface in surfaces:
        for joint in surface.soft_joints:
            long = sum(math.dist(a, b) for a, b in pairwise(joint.line))
            why = speaker.statement(_soft_joint(plan, surface, joint))
            found[why, joint.width] = found.get((why, joint.width), 0) + round(long)
    return [
        f"{why}: {format_length(width, tape)} wide, {format_length(long, tape)}"
        for (why, width), long in found.items()
    ]


def _soft_joint(plan: Plan, surface: Surface, joint: SoftJoint) -> Statement:
    """Why a joint is left free to move, and how it lies to the grout joints."""
    if joint.place == "edge":
        return statement(f"tiles-soft_{joint.why}", at=Ref(ref=joint.at))
    spacing = plan.workings[f"tiles-soft_joints@{surface.id}"].inputs["spacing"]
    trimmed = joint.width > surface.tiled[0].joint
    return statement(
        "tiles-soft_across",
        why=Word(word=joint.why),
        spacing=spacing,
        how=Word(word="cut" if joint.cut else "trimmed" if trimmed else "joint"),
        width=length(joint.width),
    )
