"""What a judged floor carries beside its layers and its shower: each weighs what the job or the rules make it."""

from collections.abc import Iterator

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.derived import close
from firstcourse.verify.formulas.flattening import FLOOR_WAYS, litres_of, ways
from firstcourse.verify.formulas.parts import boarded_m2, part_of
from firstcourse.verify.formulas.readings import readings_of
from firstcourse.verify.frame_fields import Frame
from firstcourse.verify.load_fields import AreaLoad
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_CODE = "VER-923"
_PSF_PER_KG_M2 = 0.204816
_NEAR = 0.002
"""Outlines are rounded to ticks."""


def check_load_masses(plan: Document) -> Iterator[Objection]:
    """Object to what lies or stands on a judged floor and weighs other than the job or the rules make it."""
    rooms = {room.text("name"): room for room in plan.job.nodes("rooms", ())}
    for frame in plan.frames:
        room = rooms.get(frame.surface.partition("/floor")[0])
        if frame.kind != "floor" or room is None:
            continue
        wanted, told = list(_over_all(plan, frame, room.part("floor"))), list(frame.loads.other)
        named = [of for of, _ in wanted] == [of for of, _ in told]
        if not named or not all(close(mine[1], own[1]) for mine, own in zip(told, wanted, strict=True)):
            yield Objection(_CODE, frame.surface, f"carries {told} all over, not {wanted}")
        for area in frame.loads.areas:
            if not _weighs(area, room, plan.rules):
                yield Objection(_CODE, frame.surface, f"{area.of}: weighs other than it is made of")


def _over_all(plan: Document, frame: Frame, floor: Node) -> Iterator[tuple[str, float]]:
    """Lasting loads over the whole floor beside its layers [psf]."""
    rules, planks = plan.rules, floor.part("planks")
    if planks.value:
        yield "planks", planks.length("thickness") / TICKS_PER_INCH * rules.number("mass.panel")
    if floor.part("exposure").flag("membrane", False):
        yield "membrane", rules.number("mass.membrane") * _PSF_PER_KG_M2
    part = part_of(plan, frame.surface)
    read = None if part is None else readings_of(part, rules)
    if part is None or read is None:
        return
    # Of the ways to flatten it the one that takes most, as the setter may choose any.
    filled = [litres_of(plan, part, read, way)[0] for way in ways(plan, part, read) if way.name in FLOOR_WAYS]
    litres = max(filled, default=0.0)
    if litres > 0:
        mass = litres * rules.number("mass.levelling") / 1000 / boarded_m2(part.surface)
        yield "levelling_compound", mass * _PSF_PER_KG_M2


def _weighs(area: AreaLoad, room: Node, rules: RuleSet) -> bool:
    """Whether a kerb or a bench is of the body that the job gives it, or of the one that is taken."""
    rows = {row.of: row for row in area.rows}
    if area.kind == "kerb":
        kerb = room.part("floor").part("shower").part("kerb")
        density = rules.number("mass.kerb_framed" if kerb.text("body", "") == "framed" else "mass.kerb")
        solid = rows.get("kerb")
        return _is_assumed(area, kerb) and solid is not None and solid.density == density and len(rows) == 1
    bench = next(
        (one for one in room.nodes("benches", ()) if area.of == f"{room.text('name')}/bench/{one.text('id')}"),
        None,
    )
    if area.kind != "bench" or bench is None:
        return area.kind != "bench"
    body, solid = bench.text("body", ""), rows.get("body")
    if not _is_assumed(area, bench):
        return False
    if body == "hung":
        return not rows
    if body == "framed":
        frame = rows.get("frame")
        right = rules.number("mass.bench_framed") / _PSF_PER_KG_M2 * area.area
        return solid is None and frame is not None and close(frame.kg, right, _NEAR)
    litres = area.area * bench.length("height") / TICKS_PER_MM
    density = rules.number("mass.kerb")
    return solid is not None and close(solid.litres or 0.0, litres, _NEAR) and solid.density == density


def _is_assumed(area: AreaLoad, given: Node) -> bool:
    """Whether it is told that its body was taken, just where the job does not say it."""
    return area.assumed == ("" if "body" in given.value else "mass.kerb")
