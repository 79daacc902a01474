"""What must be said of a room's readings: those likely wrong, corners that nothing checks, and corners unsure.

How much each reading is checked is computed from all corners at once, none of them held, and how sure a corner is
with the first held: both from the corners as adjusted, which are proved to lie where the readings put them.
Whether another shape has the same readings is not searched for.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import Any

import numpy as np
import shapely
from shapely import LineString, Point, Polygon

from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.survey import adjusted_corners, taped
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.told import ticks_of
from firstcourse.verify.verdict import Objection

CODES = ("SUR-101", "SUR-102", "SUR-103", "SUR-111")
_CODE = "VER-911"
_UNCHECKED = 1e-6
_ALIKE = 0.97
_SEEN_MM = 0.005
"""Corners are whole ticks in the plan; readings were adjusted finer than that."""
_NEAR = 1e-4
_GRAZE_MM = 15.0
"""A line that passes a corner this near may touch it [mm]."""
_CHI_95 = math.sqrt(5.991)
type Floats = np.ndarray[Any, np.dtype[np.float64]]


@dataclass(frozen=True)
class Net:
    """The readings of one room over its adjusted corners [mm]."""

    names: tuple[str, ...]
    at: Floats
    read: Mapping[str, float]
    sigma: float

    def row(self, pair: str) -> Floats:
        """How much a distance changes with each coordinate."""
        one, other = (self.names.index(name) for name in pair.split("-"))
        way = self.at[other] - self.at[one]
        found = np.zeros((len(self.names), 2))
        found[other] = way / max(float(np.hypot(*way)), 1e-9)
        found[one] = -found[other]
        return found.reshape(-1)

    @cached_property
    def rows(self) -> Floats:
        """Those of all readings."""
        return np.array([self.row(pair) for pair in self.read])

    @cached_property
    def checked(self) -> dict[str, float]:
        """Of each reading, how much of it the others check: 0 for nothing, up to 1."""
        taken = np.diag(self.rows @ np.linalg.pinv(self.rows, rcond=1e-9))
        return {
            pair: 0.0 if 1 - own <= _UNCHECKED else float(1 - own)
            for pair, own in zip(self.read, taken, strict=True)
        }

    @property
    def spare(self) -> int:
        """Readings beyond those that the room needs."""
        return len(self.read) - (2 * len(self.names) - 3)

    @property
    def loose(self) -> list[str]:
        """Corners none of whose readings anything checks."""
        return [
            name
            for name in self.names
            if all(by == 0.0 for pair, by in self.checked.items() if name in pair.split("-"))
        ]

    def off(self, pair: str) -> float:
        """Taped less adjusted [mm]."""
        one, other = (self.at[self.names.index(name)] for name in pair.split("-"))
        return self.read[pair] - float(np.hypot(*(other - one)))

    def unsure(self, more: str = "") -> dict[str, float]:
        """How far off each corner may lie, 95 times in 100, with one reading more where one is named [mm]."""
        rows = np.vstack([self.rows, self.row(more)]) if more else self.rows
        held = [column for column in range(2 * len(self.names)) if column not in (0, 1, 3)]
        within = np.linalg.inv(rows[:, held].T @ rows[:, held]) * self.sigma**2
        found = {}
        for number, name in enumerate(self.names):
            own = [held.index(column) for column in (2 * number, 2 * number + 1) if column in held]
            part = within[np.ix_(own, own)]
            found[name] = _CHI_95 * math.sqrt(max(float(np.linalg.eigvalsh(part)[-1]), 0.0)) if own else 0.0
        return found

    @cached_property
    def open(self) -> tuple[set[str], set[str]]:
        """Pairs of corners that nothing is taped between: those that surely see each other, and those that may."""
        room = Polygon(self.at)
        # A line that passes the end of a wall this near touches its corner.
        ends = shapely.union_all([Point(at).buffer(2 * _GRAZE_MM) for at in self.at])
        walls = [LineString(side).difference(ends) for side in zip(self.at, np.roll(self.at, -1, 0), strict=True)]
        taken = {frozenset(pair.split("-")) for pair in self.read}
        surely, may = set[str](), set[str]()
        for one, other in combinations(self.names, 2):
            if frozenset((one, other)) in taken:
                continue
            line = LineString([self.at[self.names.index(name)] for name in (one, other)])
            if room.buffer(1e-3).covers(line):
                surely.add(f"{one}-{other}")
            if not any(wall.intersects(line) for wall in walls):
                may.add(f"{one}-{other}")
        return surely, may


def check_readings(plan: Document) -> Iterator[Objection]:
    """Object to what is said of a room's readings and is not so, and to what must be said and is not."""
    rooms = {room.text("name"): room for room in plan.job.nodes("rooms", ()) if "corners" in room.value}
    told: dict[tuple[str, str], list[Said]] = {}
    for one in plan.findings:
        if one.code in CODES:
            told.setdefault((one.code, one.place), []).append(one)
    for (code, place), found in told.items():
        if place not in rooms or len(found) > 1:
            yield Objection(_CODE, place, f"has {code} said of it twice, or is no room")
    for name, room in rooms.items():
        net = _net(room, plan)
        if net is None:
            continue
        mine = {code: next(iter(told.get((code, name), [])), None) for code in CODES}
        checks = (_wrong, _loose, _ambiguous, _unsure)
        for (code, said), check in zip(mine.items(), checks, strict=True):
            if not check(net, said, plan):
                yield Objection(_CODE, name, f"{code} is not told, or is not as its readings are")


def _net(room: Node, plan: Document) -> Net | None:
    corners = adjusted_corners(plan, room.text("name"))
    names = tuple(str(corner) for corner, _ in room.rows("corners"))
    if set(names) != set(corners):
        return None
    at = np.array([corners[name] for name in names], dtype=float) / TICKS_PER_MM
    sigma = plan.rules.ticks(f"tape.precision.{'inch' if plan.tape is Tape.INCH else 'mm'}") / TICKS_PER_MM
    return Net(names, at, taped(room), sigma)


def how_unsure(room: str, plan: Document) -> float:
    """How far a room may differ from its survey, 95 times in 100 [ticks]; 0 where it has no corners."""
    given = next((one for one in plan.job.nodes("rooms", ()) if one.text("name") == room), None)
    net = None if given is None or "corners" not in given.value else _net(given, plan)
    return 0.0 if net is None else max(net.unsure().values()) * TICKS_PER_MM


def _names(given: Any) -> list[str]:
    found = given if isinstance(given, list) else []
    return [one.get("name", "") for one in found if isinstance(one, Mapping)]


def _form(said: Said, severity: str, rule: str, remedies: Sequence[str], keys: Sequence[str]) -> bool:
    """Whether a finding has this severity, rule, remedy and values of these names."""
    return (said.severity, said.rule, said.remedies, set(said.values)) == (
        severity, rule, tuple(remedies), set(keys),
    )  # fmt: skip


def _wrong(net: Net, said: Said | None, plan: Document) -> bool:
    """The readings most likely wrong, by how far each lies off for how well it is checked."""
    rule, found = "survey.blunder.limit", {}
    for pair, by in net.checked.items():
        if by:
            error = _SEEN_MM / (net.sigma * math.sqrt(by))
            found[pair] = (abs(net.off(pair)) / (net.sigma * math.sqrt(by)), error)
    worst = max((value for value, _ in found.values()), default=0.0)
    slack = max((error for value, error in found.values() if value >= _ALIKE * worst - error), default=0.0)
    limit = plan.rules.number(rule)
    if said is None:
        return worst - slack < limit
    named = _names(said.values.get("readings"))
    errors, longer = said.values.get("errors"), said.values.get("longer")
    must = {pair for pair, (value, error) in found.items() if value - error > _ALIKE * (worst + slack)}
    may = {pair for pair, (value, error) in found.items() if value + error > _ALIKE * (worst - slack)}
    single = len(named) == 1
    return (
        worst + slack >= limit
        and _form(said, "stop", rule, ["again" if single else "again_and_more"], _WRONG)
        and said.at == said.at[:1]
        and said.measured is not None
        and said.measured["unit"] == ""
        and abs(said.measured["value"] - worst) <= slack + _NEAR * worst
        and said.limit == {"value": limit, "unit": "", "sense": "most"}
        and said.values.get("single") is single
        and must <= set(named) <= may
        and len(set(named)) == len(named)
        and isinstance(errors, list)
        and isinstance(longer, list)
        and len(errors) == len(longer) == len(named)
        and all(_is_error(net, *row) for row in zip(named, errors, longer, strict=True))
    )


_WRONG = ("single", "readings", "errors", "longer")


def _is_error(net: Net, pair: str, error: Any, longer: Any) -> bool:
    """Whether a reading is told to be off as it would be if it alone were wrong."""
    right = net.off(pair) / net.checked[pair]
    slack = (_SEEN_MM / net.checked[pair] + _NEAR * abs(right)) * TICKS_PER_MM + 1
    told = ticks_of(error)
    return (
        told is not None
        and error["unit"] == "mm"
        and abs(told - abs(right) * TICKS_PER_MM) <= slack
        and (longer is (right > 0))
    )


def _loose(net: Net, said: Said | None, plan: Document) -> bool:
    """Corners that nothing checks, and distances in sight that would check them."""
    del plan
    loose = net.loose
    if said is None or not loose:
        return said is None and not loose
    pairs, (surely, may) = _names(said.values.get("readings")), net.open
    checked = {end for pair in pairs for end in pair.split("-")}
    left = set(loose) - checked
    return (
        _form(said, "note" if net.spare else "fix", "", ["tape" if pairs else "sides_again"], _LOOSE)
        and said.at == said.at[:1]
        and said.measured is None
        and said.limit is None
        and said.values.get("nothing") is (net.spare == 0)
        and said.values.get("count") == len(loose)
        and said.values.get("corners") == [{"name": name} for name in loose]
        and len(set(pairs)) == len(pairs)
        and set(pairs) <= may
        and all({*pair.split("-")} & set(loose) for pair in pairs)
        and not any({*pair.split("-")} & left for pair in surely)
    )


_LOOSE = ("nothing", "count", "corners", "readings")


def _ambiguous(net: Net, said: Said | None, plan: Document) -> bool:
    """That another shape has the same readings: its form alone."""
    del plan
    if said is None:
        return True
    corners, line, reading = (said.values.get(name) for name in ("corners", "line", "reading"))
    ends = [one.get("name", "") if isinstance(one, Mapping) else "" for one in (line, reading)]
    known = {f"{one}-{other}" for one in net.names for other in net.names if one != other}
    return (
        _form(said, "stop", "", ["tape" if ends[1] else "sides_again"], _OTHER_SHAPE)
        and said.at == said.at[:1]
        and said.measured is None
        and said.limit is None
        and set(_names(corners)) <= set(net.names)
        and said.values.get("count") == len(_names(corners)) == len(corners or ())
        and said.values.get("mirrored") is bool(ends[0])
        and set(filter(None, ends)) <= known
    )


_OTHER_SHAPE = ("count", "corners", "mirrored", "line", "reading")


def _unsure(net: Net, said: Said | None, plan: Document) -> bool:
    """A corner less sure than boards can be cut to, and the distance that helps it most."""
    rule, found = "survey.corner.sure", net.unsure()
    limit, worst = plan.rules.ticks(rule), max(found.values())
    surely, may = net.open
    if said is None:
        return worst * TICKS_PER_MM * (1 - _NEAR) <= limit or not surely
    step = plan.tape.graduation
    right = {math.ceil(worst * TICKS_PER_MM * by / step) * step for by in (1 - _NEAR, 1, 1 + _NEAR)}
    reading = said.values.get("reading")
    pair = reading.get("name", "") if isinstance(reading, Mapping) else ""
    corner = said.at[1].rpartition("/")[2] if len(said.at) == 2 else ""
    return (
        worst * TICKS_PER_MM * (1 + _NEAR) + 1 > limit
        and _form(said, "fix", rule, ["tape"], ["reading"])
        and said.at[1:] == (f"{said.place}/corner/{corner}",)
        and found.get(corner, 0.0) >= worst * (1 - _NEAR)
        and ticks_of(said.measured) in right
        and said.limit == {"value": limit / TICKS_PER_MM, "unit": "mm", "sense": "most"}
        and pair in may
        and _after(net, pair) <= min((_after(net, one) for one in surely), default=math.inf) * (1 + _NEAR)
    )


def _after(net: Net, pair: str) -> float:
    return max(net.unsure(pair).values())
