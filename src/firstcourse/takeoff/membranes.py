"""What waterproofing and the beds of shower floors take: sheet, liquid, liner, band, corners, collars, mortar."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from firstcourse.plan import Fall, Pack
from firstcourse.rules import RuleSet
from firstcourse.showers import Developed, square
from firstcourse.takeoff.items import (
    BED_MORTAR,
    DRAIN_FLANGE,
    INSIDE_CORNERS,
    LINER,
    LIQUID_MEMBRANE,
    OUTSIDE_CORNERS,
    SEALING_BAND,
    SHEET_MEMBRANE,
    collars_of,
)
from firstcourse.takeoff.lines import Line, line, running
from firstcourse.units import Tape, to_mm
from firstcourse.values import Measure, Ref, Value, length, measure
from firstcourse.workings import Working

_LITRES_PER_M3 = 1000.0


def membranes(developed: Sequence[Developed], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    """Lines to buy of all membranes, each with its working; empty without one.

    Args:
        developed: Membranes as laid out.
        rules: Rules in force.
        tape: Tape of the job; a liner is cut off its roll by the foot or metre.
    """
    yield from _sheet([item for item in developed if item.kind == "sheet"], rules)
    yield from _liquid([item for item in developed if item.kind == "liquid"], rules)
    yield from _liner([item for item in developed if item.kind == "liner"], rules, tape)
    yield from _band([item for item in developed if item.band], rules)
    yield from _pieces(INSIDE_CORNERS, {item.surface: item.inside for item in developed})
    yield from _pieces(OUTSIDE_CORNERS, {item.surface: item.outside for item in developed})
    holes = Counter((opening.kind.value, item.surface) for item in developed for opening in item.collars)
    for kind in sorted({kind for kind, _ in holes}):
        item = DRAIN_FLANGE if kind == "drain" else collars_of(kind)
        yield from _pieces(item, {surface: number for (one, surface), number in holes.items() if one == kind})


def bed_mortar(falls: Sequence[tuple[str, Fall]], rules: RuleSet) -> Iterator[Line]:
    """Mortar of beds and pre-slopes, by bags.

    Args:
        falls: Each shower floor's id, and how it falls.
        rules: Rules in force.
    """
    litres = math.fsum(fall.bed_litres + fall.pre_slope_litres for _, fall in falls)
    if not litres:
        return
    inputs: dict[str, Value] = {
        "surface": tuple(Ref(ref=name) for name, _ in falls),
        "bed": tuple(measure(fall.bed_litres, "l") for _, fall in falls),
        "lined": tuple(fall.pre_slope > 0 for _, fall in falls),
        "slope": tuple(measure(fall.pre_slope_litres, "l") for _, fall in falls),
    }
    yield line(
        BED_MORTAR,
        need := measure(litres / _LITRES_PER_M3, "m3"),
        Pack(kind="bag", size=measure(rules.number("fall.bed.bag_yield") / _LITRES_PER_M3).value, unit="m3"),
        _working(BED_MORTAR, inputs, need, "fall.bed.bag_yield"),
        share=rules.number("fall.bed.waste"),
    )


def _working(item: str, inputs: Mapping[str, Value], need: Measure, rule: str = "") -> Working:
    formula = f"quantities-{item.partition('/')[0]}"
    return Working(formula=formula, at=(item,), inputs=dict(inputs), result=need, rule=rule)


def _surfaces(items: Sequence[Developed]) -> tuple[Ref, ...]:
    return tuple(Ref(ref=item.surface) for item in items)


def _sheet(items: Sequence[Developed], rules: RuleSet) -> Iterator[Line]:
    if not items:
        return
    roll = to_mm(rules.ticks("water.sheet.width")) * to_mm(rules.ticks("water.sheet.length")) / 1e6
    inputs: dict[str, Value] = {
        "surface": _surfaces(items),
        "area": tuple(square(item.area) for item in items),
        "laps": tuple(square(item.laps) for item in items),
    }
    yield line(
        SHEET_MEMBRANE,
        need := square(math.fsum(item.area + item.laps for item in items)),
        Pack(kind="roll", size=square(roll).value, unit="m2"),
        _working(SHEET_MEMBRANE, inputs, need),
        share=rules.number("water.waste"),
    )


def _liquid(items: Sequence[Developed], rules: RuleSet) -> Iterator[Line]:
    if not items:
        return
    wet = rules.number("water.liquid.wet")
    inputs: dict[str, Value] = {
        "surface": _surfaces(items),
        "area": tuple(square(item.area) for item in items),
        "wet": measure(wet, "mm"),
        "spread": measure(wet, "l/m2"),
    }
    yield line(
        LIQUID_MEMBRANE,
        need := measure(math.fsum(item.area for item in items) * wet, "l"),
        Pack(kind="pail", size=rules.number("water.liquid.pail"), unit="l"),
        _working(LIQUID_MEMBRANE, inputs, need),
        share=rules.number("water.waste"),
    )


def _liner(items: Sequence[Developed], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    if not items:
        return
    inputs: dict[str, Value] = {
        "surface": _surfaces(items),
        "strips": tuple(item.strips[0] for item in items),
        "long": tuple(measure(item.strips[1], "mm") for item in items),
        "wide": length(rules.ticks("water.liner.width")),
    }
    yield line(
        LINER,
        need := measure(math.fsum(item.strips[0] * item.strips[1] for item in items), "mm"),
        running(tape).model_copy(update={"kind": "off_roll", "width": rules.ticks("water.liner.width")}),
        _working(LINER, inputs, need),
    )


def _band(items: Sequence[Developed], rules: RuleSet) -> Iterator[Line]:
    if not items:
        return
    inputs: dict[str, Value] = {
        "surface": _surfaces(items),
        "band": tuple(measure(item.band, "mm") for item in items),
    }
    yield line(
        SEALING_BAND,
        need := measure(math.fsum(item.band for item in items), "mm"),
        Pack(kind="roll", size=to_mm(rules.ticks("water.band.length")), unit="mm"),
        _working(SEALING_BAND, inputs, need),
        share=rules.number("water.waste"),
    )


def _pieces(item: str, by_surface: Mapping[str, int]) -> Iterator[Line]:
    counted = {surface: number for surface, number in by_surface.items() if number}
    if counted:
        need = measure(sum(counted.values()), "piece")
        inputs: dict[str, Value] = {
            "surface": tuple(Ref(ref=surface) for surface in counted),
            "number": tuple(counted.values()),
        }
        yield line(item, need, Pack(kind="piece", size=1, unit="piece"), _working(item, inputs, need))
