"""What waterproofing and the beds of shower floors take: sheet, liquid, liner, band, corners, collars, mortar."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from firstcourse.plan import Fall, Quantity
from firstcourse.quantities.items import (
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
from firstcourse.quantities.printed_lines import printed_line as line
from firstcourse.rules import RuleSet
from firstcourse.tiling.developed import Developed
from firstcourse.tiling.words import litres_text
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, to_mm
from firstcourse.workings import Working

_MM_PER_FOOT = TICKS_PER_FOOT / TICKS_PER_MM
_FT2_PER_M2 = (1000 / _MM_PER_FOOT) ** 2
_LITRES_PER_CUBIC_FOOT = (_MM_PER_FOOT / 100) ** 3
Line = tuple[Quantity, Working]


def membranes(developed: Sequence[Developed], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    """Lines to buy of all membranes, each with its working; empty without one."""
    yield from _sheet([item for item in developed if item.kind == "sheet"], rules, tape)
    yield from _liquid([item for item in developed if item.kind == "liquid"], rules)
    yield from _liner([item for item in developed if item.kind == "liner"], rules, tape)
    yield from _band(developed, rules, tape)
    for name, counted in (
        (INSIDE_CORNERS, {item.surface: item.inside for item in developed}),
        (OUTSIDE_CORNERS, {item.surface: item.outside for item in developed}),
    ):
        if sum(counted.values()):
            yield _pieces(name, name.replace("_", " "), counted)
    holes = Counter((opening.kind.value, item.surface) for item in developed for opening in item.collars)
    for kind in sorted({kind for kind, _ in holes}):
        counted = {surface: number for (one, surface), number in holes.items() if one == kind}
        if kind == "drain":
            yield _pieces(DRAIN_FLANGE, "drain flanges", counted)
        else:
            yield _pieces(collars_of(kind), f"{kind} collars", counted)


def bed_mortar(falls: Sequence[tuple[str, Fall]], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    """Mortar of beds and pre-slopes, by bags.

    Args:
        falls: Each shower floor's id, and how it falls.
        rules: Rules in force.
        tape: Tape of the job.
    """
    litres = math.fsum(fall.bed_litres + fall.pre_slope_litres for _, fall in falls)
    if not litres:
        return
    metric = tape is Tape.MM
    unit, per = ("l", 1.0) if metric else ("cu ft", _LITRES_PER_CUBIC_FOOT)
    entry = rules.entry("fall.bed.bag_yield")
    one = rules.number(entry.id) / per
    values = {}
    for name, fall in falls:
        values[f"{name}: bed"] = litres_text(fall.bed_litres, tape)
        if fall.pre_slope:
            values[f"{name}: slope under the liner"] = litres_text(fall.pre_slope_litres, tape)
    yield line(
        BED_MORTAR,
        round(litres / per, 4),
        unit,
        kind="bag",
        kept_as=("m3", per / 1000),
        share=rules.number("fall.bed.waste"),
        pack=one,
        pack_name=f"bag that makes {one:.3g} {unit}",
        spare="lost in buckets and on tools",
        base=Working(
            title="Mortar of beds and slopes",
            formula="bed + slope under a liner, floor by floor",
            values=values,
            result=f"{litres / per:.2f}",
            unit=unit,
            source=f"drawings; yield of a bag: {entry.cited or 'house assumption'}",
        ),
    )


def _area(m2: float, tape: Tape) -> tuple[float, str]:
    return (round(m2, 4), "m²") if tape is Tape.MM else (round(m2 * _FT2_PER_M2, 4), "sq ft")


def _length(mm: float, tape: Tape) -> tuple[float, str]:
    return (round(mm / 1000, 4), "m") if tape is Tape.MM else (round(mm / _MM_PER_FOOT, 4), "ft")


def _sheet(items: Sequence[Developed], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    if not items:
        return
    exact, unit = _area(math.fsum(item.area + item.laps for item in items), tape)
    roll_m2 = to_mm(rules.ticks("water.sheet.width")) * to_mm(rules.ticks("water.sheet.length")) / 1e6
    roll, _ = _area(roll_m2, tape)
    yield line(
        SHEET_MEMBRANE,
        exact,
        unit,
        kind="roll",
        share=rules.number("water.waste"),
        pack=roll,
        pack_name=f"roll of {roll:.0f} {unit}",
        spare="ends and mistakes",
        base=_sum("Sheet membrane with its laps", items, exact, unit),
    )


def _sum(title: str, items: Sequence[Developed], exact: float, unit: str) -> Working:
    return Working(
        title=title,
        formula="area + laps, surface by surface",
        values={item.surface: f"{item.area:.3f} + {item.laps:.3f} m2" for item in items},
        result=f"{exact:.2f}",
        unit=unit,
        source="drawings",
    )


def _liquid(items: Sequence[Developed], rules: RuleSet) -> Iterator[Line]:
    if not items:
        return
    area = math.fsum(item.area for item in items)
    wet, pail = rules.number("water.liquid.wet"), rules.number("water.liquid.pail")
    yield line(
        LIQUID_MEMBRANE,
        round(area * wet, 3),
        "l",
        kind="pail",
        share=rules.number("water.waste"),
        pack=pail,
        pack_name=f"pail of {pail:g} l",
        spare="left in pails and rollers",
        base=Working(
            title="Liquid membrane, all coats",
            formula="area x thickness as put on wet",
            values={
                **{item.surface: f"{item.area:.3f} m2" for item in items},
                "thickness wet": f"{wet:g} mm, which is {wet:g} l/m2",
            },
            result=f"{area * wet:.2f}",
            unit="l",
            source="drawings; thickness: the maker's sheet governs",
        ),
    )


def _liner(items: Sequence[Developed], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    if not items:
        return
    exact, unit = _length(math.fsum(item.strips[0] * item.strips[1] for item in items), tape)
    width, width_unit = _length(to_mm(rules.ticks("water.liner.width")), tape)
    yield line(
        LINER,
        exact,
        unit,
        kind="off_roll",
        width=rules.ticks("water.liner.width"),
        share=0.0,
        pack=1.0,
        pack_name=f"{unit} off a roll {width:g} {width_unit} wide",
        spare="added",
        base=Working(
            title="Liner, cut to length off its roll",
            formula="strips x length, upturns on both sides counted in",
            values={item.surface: f"{item.strips[0]} x {item.strips[1]:.0f} mm" for item in items},
            result=f"{exact:.2f}",
            unit=unit,
            source="drawings",
        ),
    )


def _band(items: Sequence[Developed], rules: RuleSet, tape: Tape) -> Iterator[Line]:
    total = math.fsum(item.band for item in items)
    if not total:
        return
    exact, unit = _length(total, tape)
    roll, _ = _length(to_mm(rules.ticks("water.band.length")), tape)
    yield line(
        SEALING_BAND,
        exact,
        unit,
        kind="roll",
        share=rules.number("water.waste"),
        pack=roll,
        pack_name=f"roll of {roll:g} {unit}",
        spare="laps and ends",
        base=Working(
            title="Sealing band at changes of plane",
            formula="perimeter of floors + corners of walls + ends of kerbs + niches, windows and benches",
            values={item.surface: f"{item.band:.0f} mm" for item in items if item.band},
            result=f"{exact:.2f}",
            unit=unit,
            source="drawings",
        ),
    )


def _pieces(name: str, called: str, counted: dict[str, int]) -> Line:
    number = sum(counted.values())
    return line(
        name,
        number,
        "pieces",
        kind="piece",
        share=0.0,
        pack=1.0,
        pack_name="piece",
        spare="spare",
        base=Working(
            title=f"Waterproofing: {called}",
            formula="counted surface by surface",
            values={surface: str(count) for surface, count in counted.items() if count},
            result=str(number),
            unit="pieces",
            source="drawings",
        ),
    )
