"""Numbers that findings tell of how steep shower floors are, and of benches: each is what the plan comes to."""

from collections.abc import Iterator, Mapping

from firstcourse.geometry import sides
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fall_geometry import NEAR, SAME
from firstcourse.verify.structure import Document, Said, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-769"
_ROUNDED = 0.5
"""Lengths that are the same but for what reading them from millimetres takes [ticks]."""
_FACES = ("front", "left end", "right end")
_Row = tuple[str, float | None, float, float]
"""What is told, as it is told, as it is, and how far these may differ."""


def check_fall_findings(plan: Document) -> Iterator[Objection]:
    """Object to a finding on what falls that tells another number than the plan holds or comes to."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    for said in plan.findings:
        for what, told, right, slack in _rows(said, by_id, plan):
            if told is None or not abs(told - right) <= slack:
                yield Objection(_CODE, said.place, f"has another {what} than {said.code} tells")


def _rows(said: Said, by_id: Mapping[str, Surface], plan: Document) -> Iterator[_Row]:
    if said.code == "TIL-125":
        yield from _of_bench(said, by_id)
    else:
        floor = by_id.get(said.place)
        if floor is not None and floor.fall is not None:
            yield from _of_floor(said, floor.fall, plan)


def _of_bench(said: Said, by_id: Mapping[str, Surface]) -> Iterator[_Row]:
    """Lowest and highest place of the floor along the faces that are named."""
    given = said.values.get("faces")
    named = [one.get("word") for one in given if isinstance(one, Mapping)] if isinstance(given, list) else []
    faces = [by_id[f"{said.place}/{name}"] for name in _FACES if f"{said.place}/{name}" in by_id]
    feet = [v for face in faces if face.id.rpartition("/")[2].replace(" ", "_") in named for v in _foot(face)]
    yield "lowest place of the floor along it", _one(said, "low"), min(feet, default=-1), _ROUNDED
    yield "highest place of the floor along it", _one(said, "high"), max(feet, default=-1), _ROUNDED


def _foot(face: Surface) -> Iterator[int]:
    for ((_, low), (_, high)), kind in zip(sides(face.outline), face.sides, strict=True):
        if kind == "foot":
            yield from (low, high)


def _of_floor(said: Said, fall: Fall, plan: Document) -> Iterator[_Row]:
    rules = plan.rules
    if said.code == "FAL-103" and rules.has("fall.max"):
        most = rules.number("fall.max")
        yield "steepest plane", said.amount, fall.greatest_fall, SAME
        yield "greatest fall", said.allowed, most, SAME
        if min(fall.least_plane_fall, fall.greatest_fall) > 0:
            needed = fall.rise * rules.number("fall.min") / fall.least_plane_fall
            yield "rise that is needed", _one(said, "needed"), needed, NEAR
            yield "rise that is allowed", _one(said, "allowed"), fall.rise * most / fall.greatest_fall, NEAR
    elif said.code == "FAL-104":
        yield "least fall on the way of the water", said.amount, fall.least_fall, SAME
        yield "least fall", said.allowed, rules.number("fall.min"), SAME


def _one(said: Said, name: str) -> float | None:
    """A single length among a finding's values [ticks]; None where it is not one."""
    found = said.lengths(name)
    return found[0] if len(found) == 1 else None
