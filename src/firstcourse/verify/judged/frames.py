"""What must be told of judged frames: limits that do not hold, what would do, cuts, and what was taken."""

from collections.abc import Iterator, Sequence

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_INCH
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, inches, name, word
from firstcourse.verify.formulas.frames import Sheet, ceiling_joist, sheet
from firstcourse.verify.formulas.longest import longest
from firstcourse.verify.formulas.panels import thickness
from firstcourse.verify.formulas.remedies import Option, options, second_layer
from firstcourse.verify.frame_fields import Frame
from firstcourse.verify.frames import derived_sheet
from firstcourse.verify.judged.asked import FIX, NOTE, STOP, Asked
from firstcourse.verify.structure import Document

_CODES = {
    "joist_spacing": "SUI-101",
    "dead_load": "SUI-102",
    "bending": "SUI-103",
    "shear": "SUI-104",
    "bearing": "SUI-105",
    "bearing_length": "SUI-106",
    "live_deflection_finish": "SUI-107",
    "live_deflection_code": "SUI-109",
    "total_deflection": "SUI-108",
    "mean_dead_load": "SUI-113",
    "panel_point": "SUI-201",
    "panel_uniform": "SUI-202",
    "panel_thickest": "SUI-203",
    "panel_rating": "SUI-205",
    "panel_bending": "SUI-206",
    "stud_spacing": "SUI-301",
    "stud_stiffness_tile": "SUI-302",
    "stud_stiffness_code": "SUI-302",
    "steel_thickness": "SUI-303",
    "ceiling_joist_spacing": "SUI-112",
}
CODES = frozenset((*_CODES.values(), "SUI-110", "SUI-111", "SUI-114", "SUI-120", "SUI-121", "SUI-310"))
_SPACINGS = {"wall": "stud", "floor": "joist", "ceiling": "ceiling_joist"}
_LIMITS = {
    "stud": "framing.stud_spacing.max",
    "joist": "framing.joist_spacing.max",
    "ceiling_joist": "ceiling.spacing.max",
}
_ON_THE_WAY = ("stud_spacing", "ceiling_joist_spacing")
"""One more member in each wide bay is set on the way."""
_BY = {"stud_stiffness_tile": "tile", "stud_stiffness_code": "code"}
_MAY_BE_ADVICE = ("panel_point", "panel_uniform")
_NAMES = {"floor": "floor", "ceiling": "ceiling", "wall": "frame"}
_OWN_MASS = ("tub", "kerb", "bench")
"""Of these the job may say what they weigh."""


def frame_asked(plan: Document, frame: Frame) -> Iterator[Asked]:
    """What must be told of one judged frame."""
    rules, found = plan.rules, derived_sheet(plan, frame)
    ways = options(rules, frame)
    for line in _failing(found):
        if line.advised:
            yield _advised(rules, frame, line)
            continue
        remedies, values = _advice(frame, line, ways)
        if frame.kind == "ceiling":
            joist = ceiling_joist(rules, frame)
            spans, governs = longest(rules, joist, rules.number("ceiling.deflection.live_brittle"))
            remedies, own = ("longest", *remedies), {"longest": inches(spans[governs]), "governs": word(governs)}
            values |= own
        yield failed(frame.surface, line, remedies, values)
    yield from _cuts(frame, found)
    yield from _taken(rules, frame)


def spacing_asked(rules: RuleSet, kind: str, ref: str, spacing: float, *, frames_known: bool) -> Iterator[Asked]:
    """What must be told of a spacing [in] of which nothing else is known of the members.

    Args:
        rules: The rule book.
        kind: Of the surface.
        ref: Reference to it.
        spacing: Widest centre to centre [in].
        frames_known: Whether the practice judges frames whole, so that joists too far apart stop the work.
    """
    member = _SPACINGS[kind]
    rule = _LIMITS[member]
    if not rules.has(rule):
        return
    allowed = inches(rules.ticks(rule) / TICKS_PER_INCH)
    check = f"{member}_spacing"
    line = Derived(formula=f"frames-{check}", name=check, result=inches(spacing), limit=allowed, rule=rule)
    if not line.holds:
        severity = "" if frames_known else FIX
        yield failed(ref, line, ("add_member",), {"member": word(member)}, severity)


def failed(
    ref: str, line: Derived, remedies: tuple[str, ...], values: dict[str, Wanted], severity: str = ""
) -> Asked:
    """A limit that does not hold."""
    by: dict[str, Wanted] = {"by": word(_BY[line.name])} if line.name in _BY else {}
    by |= {"advised": False} if line.name in _MAY_BE_ADVICE else {}
    return Asked(
        code=_CODES[line.name],
        severity=severity or (FIX if line.name in _ON_THE_WAY else STOP),
        at=(ref,),
        measured=line.result,
        limit=line.limit,
        sense="least" if line.at_least else "most",
        rule=line.rule,
        remedies=remedies,
        values=by | values,
    )


def _failing(found: Sheet) -> list[Derived]:
    """What does not hold; of one value held against several limits the one that asks most."""
    failing = [line for line in found.checks if not line.holds]
    sternest: dict[str, Derived] = {}
    for line in failing:
        now = sternest.get(line.formula)
        if now is None or _limit(line) > _limit(now):
            sternest[line.formula] = line
    return [line for line in failing if line is sternest[line.formula]]


def _limit(line: Derived) -> float:
    return line.limit.value if line.limit is not None else 0.0


def _advice(frame: Frame, line: Derived, ways: Sequence[Option]) -> tuple[tuple[str, ...], dict[str, Wanted]]:
    """What brings this value alone within its limit, and what makes all of the frame pass."""
    alone = [way.measures[0] for way in ways if len(way.measures) == 1 and line.name not in way.failing]
    whole = [way.measures for way in ways if not way.failing]
    values: dict[str, Wanted] = {"kind": word(_NAMES[frame.kind])}
    values |= {"alone": [word(one) for one in alone]} if alone else {}
    values |= {"whole": [word(one) for one in whole[0]]} if whole else {}
    return ("engineer_holds" if alone else "engineer_none", "whole_holds" if whole else "whole_none"), values


def _advised(rules: RuleSet, frame: Frame, line: Derived) -> Asked:
    """A limit that is advice: what a second layer gains, or that a permit office is to confirm the floor."""
    if line.name == "mean_dead_load":
        return failed(frame.surface, line, ("confirm",), {}, FIX)
    doubled, values, remedy = second_layer(rules, frame), dict[str, Wanted](advised=True), "screw_layers"
    if doubled is not None:
        gained = next(one for one in sheet(rules, doubled, {}).checks if one.name == line.name)
        remedy = "second_layer"
        layer = inches(thickness(doubled.found.layers[-1]))
        values |= {"layer": layer, "gained": gained.result, "keeps": gained.holds}
    return failed(frame.surface, line, (remedy,), values, NOTE)


def _cuts(frame: Frame, found: Sheet) -> Iterator[Asked]:
    """Notches and holes beyond the code's limits; those of engineered joists are their maker's to allow."""
    if frame.found.cuts and not frame.found.size:
        yield Asked(code="SUI-121", severity=STOP, at=(frame.surface,), remedies=("ask_maker",))
    for line in found.lines:
        if line.formula.startswith("frames-cut_") and not line.holds:
            yield Asked(
                code="SUI-120",
                severity=STOP,
                at=(frame.surface,),
                measured=line.result,
                limit=line.limit,
                sense="least" if line.at_least else "most",
                rule=line.rule,
                remedies=("design",),
                values={
                    "cut": line.inputs["kind"],
                    "number": line.inputs["number"],
                    "what": line.inputs["what"],
                },
            )


def _taken(rules: RuleSet, frame: Frame) -> Iterator[Asked]:
    """What was taken because the job does not say it."""
    found = frame.found
    if frame.kind == "wall":
        if not found.size and found.mils is None:
            yield Asked(
                code="SUI-310",
                severity=FIX,
                at=(frame.surface,),
                limit=Number(rules.number("wall.steel.min"), "mil"),
                sense="least",
                rule="wall.steel.min",
                remedies=("stamp",),
                values={"gauge": name(rules.text("wall.steel.gauge_20"))},
            )
        return
    unknown = [key for key in ("species", "grade") if getattr(found, key) == "unknown"]
    if not found.size:
        yield Asked(code="SUI-111", severity=NOTE, at=(frame.surface,), remedies=("tables",))
    elif unknown:
        values = {"unknown": word("both" if len(unknown) > 1 else unknown[0])}
        yield Asked(code="SUI-110", severity=NOTE, at=(frame.surface,), remedies=("stamp",), values=values)
    for area in frame.loads.areas:
        if area.assumed and area.kind in _OWN_MASS:
            yield Asked(
                code="SUI-114",
                severity=NOTE,
                at=(frame.surface, area.of),
                measured=Number(area.psf, "psf"),
                rule=area.assumed,
                remedies=("enter",),
                values={"weight": Number(area.kg, "kg"), "what": word(area.kind)},
            )
