"""Tubs and trays come in one piece: neither a corner of the walls nor another thing can stand in them."""

from collections.abc import Sequence
from itertools import combinations

import shapely
from shapely import LineString, Point, Polygon

from firstcourse.errors import InputValueError
from firstcourse.geometry import sides, to_shapely
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import Opening, OpeningKind
from firstcourse.rules import RuleSet
from firstcourse.survey.near_walls import DOUBT, TOUCH

_WHOLE = frozenset({OpeningKind.TUB, OpeningKind.TRAY})
"""What is made in a factory and set whole."""
_BESIDE = frozenset({*_WHOLE, OpeningKind.CABINET, OpeningKind.COLUMN})
"""What cannot stand where a tub or tray stands."""
_PAST = frozenset({*_WHOLE, OpeningKind.CABINET})


def refuse_cut(opening: Opening, asked: Ring, area: Polygon, rules: RuleSet, field: str) -> None:
    """Refuse a thing that the walls would cut into one that cannot stand there; what leans on a wall stands at it.

    Args:
        opening: As it ends at the walls.
        asked: Its outline before that.
        area: The room's floor.
        rules: Rules in force.
        field: Where it stands in its room of the job document.

    Raises:
        InputValueError: One of its sides lies past a wall, or a corner of the walls reaches into a tub or tray.
    """
    if opening.kind not in _PAST or opening.outline is None:
        return
    past = max(LineString(side).distance(area) for side in sides(asked))
    past = max([past, *(Point(at).distance(area) / 2 for at in asked if opening.kind in _WHOLE)])
    if past > rules.ticks(DOUBT):
        raise InputValueError(
            f"{opening.kind} '{opening.id}' reaches farther through a wall than one out of square explains; "
            "check its size, side, left and out",
            field=field,
        )
    if opening.kind not in _WHOLE:
        return
    stands = to_shapely(opening.outline)
    cut = to_shapely(asked).intersection(stands.convex_hull).difference(stands)
    if _is_thick(cut, rules.ticks(TOUCH)):
        raise InputValueError(
            f"a corner of the walls stands in {opening.kind} '{opening.id}', which is made in one piece; "
            "check its size, side, left and out, and the room's readings",
            field=field,
        )


def refuse_in_one_place(openings: Sequence[Opening], rules: RuleSet, fields: Sequence[str]) -> None:
    """Refuse a tub or tray where another, a cabinet or a column stands too.

    Args:
        openings: Of one floor.
        rules: Rules in force.
        fields: Where each stands in its room of the job document.

    Raises:
        InputValueError: Naming both, at the later one.
    """
    standing = [
        (opening, field, _shape(opening))
        for opening, field in zip(openings, fields, strict=True)
        if opening.kind in _BESIDE
    ]
    for (one, _, first), (other, field, second) in combinations(standing, 2):
        if {one.kind, other.kind} & _WHOLE and _is_thick(first.intersection(second), rules.ticks(TOUCH)):
            raise InputValueError(
                f"{other.kind} '{other.id}' stands where {one.kind} '{one.id}' stands; "
                "check side, left, out and size of both",
                field=field,
            )


def _shape(opening: Opening) -> shapely.Geometry:
    if opening.outline is not None:
        return to_shapely(opening.outline)
    assert opening.centre is not None and opening.diameter is not None
    return Point(opening.centre).buffer(opening.diameter / 2)


def _is_thick(shape: shapely.Geometry, width: int) -> bool:
    """Whether a shape is wider than so much somewhere; what is less is how a thing is taped."""
    return not shape.buffer(-width / 2).is_empty
