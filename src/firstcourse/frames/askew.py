"""Framing that runs too far off square for boards laid square to the room."""

import math
from itertools import pairwise

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.plan import SupportKind, Surface
from firstcourse.values import Value, length, measure, most

_MOST_ASKEW = 10
"""How far off square framing still counts as square; common practice [degrees]."""


def judge_askew(surface: Surface) -> tuple[Finding, ...]:
    """That nothing tells what carries boards on framing that runs along neither axis of their surface.

    No edge of such a board runs along a member. Members that stand d apart, turned by an angle from the way of an
    edge, cross that edge every d / sin(angle).

    Args:
        surface: A surface to be boarded, with its framing.

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
    run = math.dist((au, av), (bu, bv))
    across = sorted((v * (bu - au) - u * (bv - av)) / run for u, v in middles)
    values: dict[str, Value] = {"several": len(across) > 1}
    if len(across) > 1:
        apart = max(after - before for before, after in pairwise(across))
        shorter, longer = sorted(apart / part for part in (math.sin(angle), math.cos(angle)))
        values |= {"apart": length(apart), "shorter_way": length(shorter), "longer_way": length(longer)}
    return (
        Finding(
            code="SUI-115",
            severity=Severity.STOP,
            at=(surface.id,),
            measured=measure(math.degrees(min(angle, math.pi / 2 - angle)), "deg"),
            limit=most(measure(_MOST_ASKEW, "deg")),
            remedies=("battens",),
            values=values,
        ),
    )
