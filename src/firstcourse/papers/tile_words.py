"""What the papers say of a tiled surface: its pattern, how many tiles, its smallest cut, its soft joints."""

import math
from collections.abc import Iterable
from itertools import pairwise

from firstcourse.plan import Plan, SoftJoint, StartPoint, Surface, TiledArea
from firstcourse.units import format_length
from firstcourse.values import Ref, Statement, Word, length, statement
from firstcourse.words import Speaker


def pattern_words(area: TiledArea, speaker: Speaker, *, turned: bool = True) -> str:
    """An area's pattern as the papers call it, and how far it is turned."""
    return named_pattern(area.pattern, area.angle if turned else 0, speaker)


def named_pattern(pattern: str, angle: int, speaker: Speaker) -> str:
    """A pattern by its code, and how far it is turned [degrees]."""
    return speaker.text("tiles-pattern", name=speaker.word(pattern), angle=angle)


def smallest_cut(start: StartPoint, speaker: Speaker) -> str:
    """The smallest cut that a start leaves."""
    if not start.cut_tiles:
        return speaker.text("tiles-no_cut")
    return speaker.text("tiles-smallest_cut", width=length(start.smallest_cut))


def tiles_words(surface: Surface, speaker: Speaker) -> str:
    """How many tiles a surface has, and its smallest cut."""
    whole = sum(tile.whole for tile in surface.tiles)
    smallest = smallest_cut(surface.tiled[0].starts[0], speaker)
    return speaker.text("tiles-found", whole=whole, cut=len(surface.tiles) - whole, smallest=smallest)


def soft_rows(plan: Plan, surfaces: Iterable[Surface], speaker: Speaker) -> list[str]:
    """The soft joints of surfaces that are told together: where, how wide, and how long in all."""
    found: dict[tuple[str, int], int] = {}
    for surface in surfaces:
        for joint in surface.soft_joints:
            long = sum(math.dist(a, b) for a, b in pairwise(joint.line))
            why = speaker.statement(_soft_joint(plan, surface, joint))
            found[why, joint.width] = found.get((why, joint.width), 0) + round(long)
    return [
        speaker.text("tiles-soft", why=why, width=length(width), length=format_length(long, speaker.tape))
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
