"""Findings on shower floors: each that the plan and the job ask for is there, and none besides."""

from collections import Counter
from collections.abc import Iterator

from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fall_geometry import open_heights
from firstcourse.verify.fall_given import drop_of, shelves_of, shower_of, tile_of
from firstcourse.verify.fall_rise import Rise
from firstcourse.verify.fields import Node
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_EVEN = 1e-6
"""Share by which a fall may miss its limit: what rounding leaves."""
_FALLS = {"flow": "", "planes": "FAL-104", "none": "FAL-103"}
"""By where the least fall is kept, what is to be said of it."""
_PROVED = frozenset({
    "FAL-103", "FAL-104", "FAL-201", "FAL-202", "FAL-203", "FAL-204", "FAL-213", "FAL-221", "FAL-301",
})  # fmt: skip
_Asked = tuple[str, tuple[str, ...]]


def check_falls_told(plan: Document) -> Iterator[Objection]:
    """Object to a finding that is missing, and to one that nothing asks for."""
    asked = Counter(_asked(plan))
    # That a doorway is not level is told of the doorway.
    told = Counter(
        (one.code, one.at) for one in plan.findings if one.code in _PROVED and "/door/" not in one.place
    )
    for code, at in asked - told:
        yield Objection("VER-759", at[0], f"asks for {code} of {' and '.join(at)}, and no finding says so")
    for code, at in told - asked:
        yield Objection("VER-759", at[0], f"has {code} said of {' and '.join(at)}, and nothing asks for it")


def _asked(plan: Document) -> Iterator[_Asked]:
    for surface in plan.surfaces:
        shower = shower_of(surface, plan)
        if shower is None:
            continue
        if surface.fall is not None:
            for code in _of_floor(surface, surface.fall, shower, plan):
                yield code, (surface.id,)
            yield from _of_shelves(surface, shower, plan)


def _of_floor(surface: Surface, fall: Fall, shower: Node, plan: Document) -> Iterator[str]:
    rules, tile = plan.rules, tile_of(shower, plan)
    if code := _FALLS[Rise.of(fall, rules).kept]:
        yield code
    if fall.kerb is None:
        there = shower.distance("recess") if "recess" in shower.value else 0
        if there < (fall.recess or 0):
            yield "FAL-203"
        heights = open_heights(surface, fall)
        if heights and max(heights) - min(heights) > plan.tape.graduation:
            yield "FAL-204"
    else:
        low = rules.has("shower.kerb.min") and fall.kerb < rules.ticks("shower.kerb.min")
        high = rules.has("shower.kerb.max") and fall.kerb > rules.ticks("shower.kerb.max")
        yield from ["FAL-201"] * (low + high)
        if fall.kerb <= fall.rise:
            yield "FAL-202"
        kerb = shower.part("kerb")
        if "entry" in kerb.value and rules.has("shower.entry.min"):
            yield from ["FAL-213"] * (kerb.length("entry") < rules.ticks("shower.entry.min"))
    if fall.largest_tile is not None and tile is not None and max(tile.size("size")) > fall.largest_tile:
        yield "FAL-301"


def _of_shelves(surface: Surface, shower: Node, plan: Document) -> Iterator[_Asked]:
    rules = plan.rules
    for ref, shelf in shelves_of(surface, shower).items():
        drop = drop_of(shelf)
        if drop is None:
            continue
        steep = rules.has("fall.shelf.max") and drop > rules.number("fall.shelf.max") * (1 + _EVEN)
        if steep or drop < rules.number("fall.shelf.min") * (1 - _EVEN):
            yield "FAL-221", (ref,)
