"""Sheets of judged frames: facts, lines, verdicts and remedies follow from what was found; none is hidden."""

from collections.abc import Iterator, Sequence
from itertools import zip_longest

from firstcourse.errors import FirstcourseError
from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import RATIO, Derived, Number, Wanted, agrees, inches, shown, word
from firstcourse.verify.formulas.derived import ref as ref_of
from firstcourse.verify.formulas.frames import Sheet, sheet
from firstcourse.verify.formulas.remedies import options
from firstcourse.verify.frame_fields import Frame, Line
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.verdict import Objection

_M_PER_MM = 0.001


def check_frames(plan: Document) -> Iterator[Objection]:
    """Object to a sheet that says other than what was found makes of it."""
    surfaces = {surface.id for surface in plan.surfaces}
    for frame in plan.frames:
        if frame.surface not in surfaces:
            yield Objection("VER-911", frame.surface, "is judged and is no surface of this plan")
        yield from _masses(frame)
        yield from _told(frame, plan)
        try:
            found, remedies = derived_sheet(plan, frame), options(plan.rules, frame)
        except (FirstcourseError, LookupError, ValueError, ArithmeticError) as error:
            yield Objection("VER-918", frame.surface, f"cannot be judged again: {error}")
            continue
        yield from _facts(frame, found, plan.rules)
        yield from _lines(frame, found.lines, plan)
        yield from _remedies(frame, [option.derived(number) for number, option in enumerate(remedies, 1)], plan)


def derived_sheet(plan: Document, frame: Frame) -> Sheet:
    """The sheet of a frame; of joists that carry alike, the one that the plan names."""
    named = {
        working.formula: working.inputs["joist"]
        for working in (plan.workings.get(line.working) for line in frame.lines)
        if working is not None and "joist" in working.inputs
    }
    return sheet(plan.rules, frame, named)


def _facts(frame: Frame, right: Sheet, rules: RuleSet) -> Iterator[Objection]:
    for name in sorted(frame.facts.keys() | right.facts.keys()):
        given, wanted = frame.facts.get(name), right.facts.get(name)
        if name not in frame.facts or name not in right.facts or not agrees(given, wanted):
            yield Objection("VER-916", frame.surface, f"{name}: {given} found, which is {shown(wanted)}")
    if not agrees(frame.assumed, list(_assumed(frame, rules))):
        yield Objection("VER-916", frame.surface, "takes for granted what it does not, or leaves some of it out")
    if frame.unjudged != list(_unjudged(frame)):
        yield Objection("VER-916", frame.surface, "leaves open what it does not, or says too little of it")


def _assumed(frame: Frame, rules: RuleSet) -> Iterator[Wanted]:
    """What is taken because it is not known, or by rule."""
    found = frame.found
    unknown = [key for key in ("species", "grade") if found.size and getattr(found, key) == "unknown"]
    lowest = [_taken("lumber_lowest", unknown=word("both" if len(unknown) > 1 else unknown[0]))] if unknown else []
    if frame.kind == "wall":
        yield _taken("lateral_load", load=Number(rules.number("wall.load.lateral"), "psf"))
        yield _taken("stud_alone")
        yield from lowest
        if not found.size:
            yield _taken("flanges", width=inches(found.flange or rules.number("wall.steel.flange")))
        return
    if frame.kind == "ceiling":
        yield _taken("brittle_finish")
        yield from lowest
        return
    yield _taken("joists_weigh", load=Number(rules.number("mass.joists"), "psf"))
    yield _taken("no_stiffness")
    yield from lowest
    for area in frame.loads.areas:
        if area.assumed:
            entry = rules.entry(area.assumed)
            yield _taken("load_taken", of=ref_of(area.of), load=Number(rules.number(entry.id), entry.unit))
    if any(area.kind == "tub" for area in frame.loads.areas):
        yield _taken("tub_water")
    if any(part.start is None for part in frame.loads.joists):
        yield _taken("parts_do_most")
    if found.unbroken and not found.run:
        yield _taken("other_spans")


def _taken(code: str, **values: Wanted) -> dict[str, Wanted]:
    return {"code": f"frames-{code}", "values": values}


def _unjudged(frame: Frame) -> Iterator[str]:
    found = frame.found
    if frame.kind == "wall":
        yield "wall_loads"
        return
    yield from (
        ("walls_on_floor", "beams", "vibration") if frame.kind == "floor" else ("hanging_mass", "ceiling_beams")
    )
    if frame.kind == "floor" and found.bearing is None:
        yield "bearing_not_known"
    if not found.size:
        yield "ei_strength"


def _lines(frame: Frame, wanted: Sequence[Derived], plan: Document) -> Iterator[Objection]:
    """Each line is one that the frame must have, in order, says what its working says, and holds as that does."""
    for line, derived in zip_longest(frame.lines, wanted):
        if line is None or derived is None or line.working != derived.key(frame.surface):
            yield Objection("VER-917", frame.surface, "has other lines on its sheet than its frame asks for")
            return
        working = plan.workings.get(line.working)
        if working is None:
            yield Objection("VER-902", frame.surface, f"working '{line.working}' does not exist")
            continue
        yield from derived.differs(working)
        if (line.found, line.limit, line.name) != (working.found, working.limit, derived.name):
            yield Objection(
                "VER-915", frame.surface, f"{line.working}: says otherwise on the sheet than worked out"
            )
        if line.holds is not derived.holds:
            yield Objection("VER-912", frame.surface, f"{line.working}: whether it holds is said otherwise")
        if line.advised is not derived.advised:
            yield Objection(
                "VER-918", frame.surface, f"{line.working}: is said to be advice or a limit, and is not"
            )


def _remedies(frame: Frame, wanted: Sequence[Derived], plan: Document) -> Iterator[Objection]:
    """Every remedy, the best first."""
    for name, derived in zip_longest(frame.remedies, wanted):
        if name is None or derived is None or name != derived.key(frame.surface):
            yield Objection("VER-917", frame.surface, "names other remedies than there are, or not the best first")
            return
        working = plan.workings.get(name)
        if working is None:
            yield Objection("VER-902", frame.surface, f"working '{name}' does not exist")
        else:
            yield from derived.differs(working)


def _told(frame: Frame, plan: Document) -> Iterator[Objection]:
    """Every line that does not hold is told in a finding, with what was found and what is allowed.

    A value held against two limits, that of the tile and that of the code, is told by the one that asks more.
    """
    here = [said for said in plan.findings if said.place == frame.surface]
    asked: dict[str, float] = {}
    for line in frame.lines:
        if any(_tells(said, line) for said in here if said.severity != "note"):
            asked[_formula(line)] = max(_ratio(line), asked.get(_formula(line), 0.0))
    for line in frame.lines:
        if line.holds or line.limit is None:
            continue
        beside = 0 < _ratio(line) <= asked.get(_formula(line), 0.0)
        if not beside and not any(_tells(said, line) for said in here if line.advised or said.severity != "note"):
            yield Objection("VER-913", frame.surface, f"{line.name}: does not hold, and no finding tells of it so")


def _formula(line: Line) -> str:
    return line.working.partition("@")[0]


def _ratio(line: Line) -> float:
    """What is asked of a span over its deflection; nothing of what is no such ratio."""
    return float(line.limit["value"]) if line.limit is not None and line.limit.get("unit") == RATIO else 0.0


def _tells(said: Said, line: Line) -> bool:
    """Whether a finding says what a line found and what is allowed there."""
    return line.limit is not None and (said.measured, said.limit) == (line.found, line.limit)


def _masses(frame: Frame) -> Iterator[Objection]:
    each = [layer.thickness * _M_PER_MM * layer.density for layer in frame.layers]
    for layer, mass in zip(frame.layers, each, strict=True):
        if not agrees({"value": layer.mass}, Number(mass)):
            yield Objection("VER-914", frame.surface, f"{layer.of} weighs {mass:.1f} kg/m², not {layer.mass:g}")
    if frame.mass is not None if not each else not agrees(frame.mass, Number(sum(each), "kg/m2")):
        yield Objection("VER-914", frame.surface, f"layers weigh {sum(each):.1f} kg/m², not {frame.mass}")
