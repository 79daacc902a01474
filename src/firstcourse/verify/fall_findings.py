"""Numbers that findings tell of shower floors, kerbs and benches: each is what the plan comes to."""

from collections.abc import Iterator, Mapping
from itertools import zip_longest

from firstcourse.geometry import sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fall_geometry import NEAR, SAME, open_heights
from firstcourse.verify.fall_given import drop_of, shelves_of, shower_of, tile_of
from firstcourse.verify.floor_heights import kerb_drop
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
    elif said.code == "FAL-221":
        yield from _of_shelf(said, plan)
    else:
        floor = by_id.get(said.place)
        if floor is not None and floor.fall is not None:
            yield from _of_floor(said, floor, floor.fall, plan)


def _of_shelf(said: Said, plan: Document) -> Iterator[_Row]:
    """How a shelf falls over its depth, and how it may."""
    for surface in plan.surfaces:
        shower = shower_of(surface, plan)
        shelf = None if shower is None else shelves_of(surface, shower).get(said.place)
        fall = None if shelf is None else drop_of(shelf)
        if shelf is None or fall is None or not plan.rules.has(said.rule):
            continue
        depth = shelf.length("depth")
        drops = [kerb_drop(depth, plan)]
        if plan.rules.has("fall.shelf.max"):
            drops.append(round(depth * plan.rules.number("fall.shelf.max")))
        steep = plan.rules.has("fall.shelf.max") and fall > plan.rules.number("fall.shelf.max")
        yield "fall", said.amount, fall, SAME
        yield "limit of its fall", said.allowed, plan.rules.number(f"fall.shelf.{'max' if steep else 'min'}"), SAME
        yield "depth", _one(said, "depth"), depth, _ROUNDED
        for told, drop in zip_longest(said.lengths("drops"), drops):
            yield "drop", told, -1 if drop is None else drop, _ROUNDED


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


def _of_floor(said: Said, surface: Surface, fall: Fall, plan: Document) -> Iterator[_Row]:
    measured, limit, rules = _ticks(said.amount), _ticks(said.allowed), plan.rules
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
    elif said.code == "FAL-201" and fall.kerb is not None:
        yield "kerb", measured, fall.kerb, _ROUNDED
        if said.rule in ("shower.kerb.min", "shower.kerb.max") and rules.has(said.rule):
            yield "limit of its kerb", limit, rules.ticks(said.rule), _ROUNDED
    elif said.code == "FAL-202" and fall.kerb is not None:
        yield "kerb", measured, fall.kerb, _ROUNDED
        yield "rise", _one(said, "rise"), fall.rise, _ROUNDED
    elif said.code == "FAL-203" and fall.recess is not None:
        yield "recess that is needed", limit, fall.recess, _ROUNDED
        shower = shower_of(surface, plan)
        there = 0 if shower is None or "recess" not in shower.value else shower.distance("recess")
        yield "recess", measured, there, _ROUNDED
        yield "recess that is missing", _one(said, "deeper"), fall.recess - (measured or 0.0), _ROUNDED
    elif said.code == "FAL-204":
        heights = open_heights(surface, fall)
        yield "lowest place of its open side", _one(said, "low"), min(heights, default=0), _ROUNDED
        yield "highest place of its open side", _one(said, "high"), max(heights, default=0), _ROUNDED
    elif said.code == "FAL-213" and rules.has("shower.entry.min"):
        shower = shower_of(surface, plan)
        yield "entry", measured, -1 if shower is None else shower.part("kerb").length("entry"), _ROUNDED
        yield "least entry", limit, rules.ticks("shower.entry.min"), _ROUNDED
    elif said.code == "FAL-301" and fall.largest_tile is not None:
        shower = shower_of(surface, plan)
        tile = None if shower is None else tile_of(shower, plan)
        yield "tile", measured, -1 if tile is None else max(tile.size("size")), _ROUNDED
        yield "largest tile that follows its falls", limit, fall.largest_tile, _ROUNDED


def _ticks(mm: float | None) -> float | None:
    return None if mm is None else mm * TICKS_PER_MM


def _one(said: Said, name: str) -> float | None:
    """A single length among a finding's values [ticks]; None where it is not one."""
    found = said.lengths(name)
    return found[0] if len(found) == 1 else None
