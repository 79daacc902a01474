"""Framing that runs too far off square for boards laid square to the room."""

import math
from itertools import pairwise

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.plan import SupportKind, Surface
from firstcourse.units import Tape, format_length


def judge_askew(surface: Surface, tape: Tape) -> tuple[Finding, ...]:
    """That nothing tells what carries boards on framing that runs along neither axis of their surface.

    No edge of such a board runs along a member. Members that stand d apart, turned by an angle from the way of an
    edge, cross that edge every d / sin(angle).

    Args:
        surface: A surface to be boarded, with its framing.
        tape: Tape of the job, in whose unit the ways are told.

    Returns:
        One finding that stops, with the turn and both ways; none where the framing runs along an axis, or panels
        carry the boards.
    """
    if surface.framing_axis or not surface.supports or surface.slab:
        return ()
    if any(support.kind is SupportKind.PANEL for support in surface.supports):
        return ()
    lines = [max(sides(support.outline), key=lambda side: math.dist(*side)) for support in surface.supports]
    (au, av), (bu, bv) = max(lines, key=lambda side: math.dist(*side))
    angle = math.atan2(abs(bv - av), abs(bu - au))
    middles = [(sum(u for u, _ in s.outline) / 4, sum(v for _, v in s.outline) / 4) for s in surface.supports]
    length = math.dist((au, av), (bu, bv))
    across = sorted((v * (bu - au) - u * (bv - av)) / length for u, v in middles)
    measured = f"{math.degrees(min(angle, math.pi / 2 - angle)):.0f}° off square"
    if len(across) > 1:
        apart = max(after - before for before, after in pairwise(across))
        ways = " and ".join(
            format_length(round(apart / part), tape) for part in sorted((math.sin(angle), math.cos(angle)))
        )
        measured += f"; {format_length(round(apart), tape)} apart, which is {ways} along the edges of boards"
    return (
        Finding(
            code="SUI-115",
            severity=Severity.STOP,
            where=surface.title or surface.id,
            message="Cannot tell if this framing carries the boards: it runs more than 10° off the way they are "
            "laid, so no edge runs along a member.",
            measured=measured,
            limit="at most 10° off square",
            source="common practice",
            remedy="Screw battens across it, square to the room, and enter them as the framing; or ask the "
            "board's maker or an engineer. Boards drawn here are only an estimate of sheets.",
        ),
    )
