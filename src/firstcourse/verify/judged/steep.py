"""What may be told of floors that fall too steeply, too little or nowhere, and of the drains that would do better.

Where another drain would lie is searched for by the plan; here it is held that what is told of it is complete and
can be so, not that it is the best.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from shapely import LineString, Point

from firstcourse.geometry.polygon import sides
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_given import shower_of
from firstcourse.verify.falls import stands_at
from firstcourse.verify.formulas.derived import Number, agrees, word
from firstcourse.verify.judged.asked import CODE, NOTE, STOP
from firstcourse.verify.structure import Document, Said, Surface
from firstcourse.verify.verdict import Objection

_WAYS = ("move_drain", "square", "linear", "no_linear")
_TELLS = {
    "move_drain": ("along", "out"),
    "square": ("low", "high"),
    "linear": ("wall", "rises"),
    "no_linear": (),
    "part": (),
    "nearer": (),
    "longer_or_level": ("along", "out"),
}
"""What each remedy tells."""
_NEAR_MM = 0.01


def check_steep(plan: Document) -> Iterator[Objection]:
    """Object to a finding on how a floor falls whose form, remedies or places cannot be."""
    floors = {surface.id: surface for surface in plan.surfaces if shower_of(surface, plan) is not None}
    for said in plan.findings:
        if said.code not in ("FAL-101", "FAL-102", "FAL-103", "FAL-104"):
            continue
        floor = floors.get(said.place)
        if floor is None or len(said.at) != 1 or not _may_be(said, floor, plan.rules):
            yield Objection(CODE, said.place, f"{said.code} is told, and is not so")


def _may_be(said: Said, floor: Surface, rules: RuleSet) -> bool:
    fall, values, ways = floor.fall, said.values, said.remedies
    bare = (said.rule, said.measured, said.limit) == ("", None, None)
    if said.code == "FAL-101":
        wayed = ways in (("move_drain",), ("part",)) and _told(values, ways, ())
        return fall is None and said.severity == STOP and bare and wayed
    if fall is None:
        return False
    if said.code == "FAL-102":
        whole = ways == ("longer_or_level",) and _told(values, ways, ())
        return said.severity == STOP and bare and whole and stands_at(fall) is not None
    sense, rule = ("most", "fall.max") if said.code == "FAL-103" else ("least", "fall.min")
    if (said.rule, said.limit is not None and said.limit.get("sense")) != (rule, sense):
        return False
    units = [{} if each is None else each for each in (said.measured, said.limit)]
    if any(one.get("unit") != "" for one in units) or not _linear(values, ways, floor, rules):
        return False
    if said.code == "FAL-104":
        drains = (("nearer", "linear"), ("nearer", "no_linear"))
        return said.severity == NOTE and ways in drains and _told(values, ways, ())
    ordered = [way for way in _WAYS if way in ways] == list(ways) and ways[-1:] in (("linear",), ("no_linear",))
    first = bool(ways) and values.get("first") == word(ways[0])
    return said.severity == STOP and ordered and first and _told(values, ways, ("needed", "allowed", "first"))


def _told(values: Mapping[str, Any], ways: tuple[str, ...], besides: tuple[str, ...]) -> bool:
    """Whether just that is told which the remedies tell, each place and height a length."""
    names = {name for way in ways for name in _TELLS[way]} | set(besides)
    lengths = names - {"wall", "first"}
    columns = [values.get(name) for name in ("along", "out") if name in names]
    even = len({len(one) if isinstance(one, list) else 0 for one in columns}) <= 1
    return values.keys() == names and even and all(_is_long(values[name]) for name in lengths)


def _is_long(given: Any) -> bool:
    if isinstance(given, list):
        return bool(given) and all(map(_is_long, given))
    return isinstance(given, dict) and given.get("unit") == "mm" and isinstance(given.get("value"), int | float)


def _linear(values: Mapping[str, Any], ways: tuple[str, ...], floor: Surface, rules: RuleSet) -> bool:
    """Whether a drain along the wall that is named rises as far as is told: to the farthest corner from it."""
    if any(way not in _TELLS for way in ways):
        return False
    if "linear" not in ways:
        return True
    named = values.get("wall")
    wall = str(named.get("ref", "")) if isinstance(named, dict) else ""
    for line, met in zip(sides(floor.outline), floor.met, strict=True):
        if wall == met and met.startswith(f"{floor.room}/wall/"):
            (a, b), far = line, 0.0
            for at in floor.outline:
                # The plane runs on beyond the ends of the drain.
                whole = LineString([(2 * a[0] - b[0], 2 * a[1] - b[1]), (2 * b[0] - a[0], 2 * b[1] - a[1])])
                far = max(far, whole.distance(Point(at)))
            rises = Number(far / TICKS_PER_MM * rules.number("fall.min"), "mm")
            if agrees(values.get("rises"), rises, _NEAR_MM):
                return True
    return False
