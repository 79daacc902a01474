"""What membranes and the beds of shower floors take, counted again surface by surface."""

import math
from collections.abc import Iterator, Mapping

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, to_mm
from firstcourse.verify.covered import Covered, all_covered
from firstcourse.verify.formulas.proving import ref
from firstcourse.verify.formulas.wanted import Listed, length, measure
from firstcourse.verify.shopping_fields import Given
from firstcourse.verify.structure import Document

_TICKS_PER_M = 1000 * TICKS_PER_MM
_LITRES_PER_M3 = 1000.0


def water_lines(plan: Document) -> Iterator[Listed]:
    """Everything that membranes and the beds of shower floors take."""
    rules, covered = plan.rules, list(all_covered(plan))
    yield from _sheet([one for one in covered if one.kind == "sheet"], rules)
    yield from _liquid([one for one in covered if one.kind == "liquid"], rules)
    yield from _liner([one for one in covered if one.kind == "liner"], rules, plan.tape)
    yield from _band([one for one in covered if one.band], rules)
    yield from _pieces("inside_corners", {one.surface: one.inside for one in covered})
    yield from _pieces("outside_corners", {one.surface: one.outside for one in covered})
    for kind in sorted({opening.kind for one in covered for opening in one.collars}):
        holes = {one.surface: [opening for opening in one.collars if opening.kind == kind] for one in covered}
        item = "drain_flanges" if kind == "drain" else f"collars/{kind}"
        yield from _pieces(item, {surface: len(found) for surface, found in holes.items()})
    yield from _bed(plan)


def _surfaces(covered: list[Covered]) -> list[Given]:
    return [ref(one.surface) for one in covered]


def _sheet(covered: list[Covered], rules: RuleSet) -> Iterator[Listed]:
    if covered:
        yield Listed(
            item="sheet_membrane",
            exact=math.fsum(one.area + one.laps for one in covered),
            unit="m2",
            kind="roll",
            size=rules.ticks("water.sheet.width") * rules.ticks("water.sheet.length") / _TICKS_PER_M**2,
            share=rules.number("water.waste"),
            formula="quantities-sheet_membrane",
            inputs={
                "surface": _surfaces(covered),
                "area": [measure(one.area, "m2") for one in covered],
                "laps": [measure(one.laps, "m2") for one in covered],
            },
        )


def _liquid(covered: list[Covered], rules: RuleSet) -> Iterator[Listed]:
    wet = rules.number("water.liquid.wet") if covered else 0.0
    if covered:
        yield Listed(
            item="liquid_membrane",
            exact=math.fsum(one.area for one in covered) * wet,
            unit="l",
            kind="pail",
            size=rules.number("water.liquid.pail"),
            share=rules.number("water.waste"),
            formula="quantities-liquid_membrane",
            inputs={
                "surface": _surfaces(covered),
                "area": [measure(one.area, "m2") for one in covered],
                "wet": measure(wet, "mm"),
                "spread": measure(wet, "l/m2"),
            },
        )


def _liner(covered: list[Covered], rules: RuleSet, tape: Tape) -> Iterator[Listed]:
    if covered:
        yield Listed(
            item="liner",
            exact=math.fsum(one.strips[0] * one.strips[1] for one in covered),
            unit="mm",
            kind="off_roll",
            size=1000.0 if tape is Tape.MM else TICKS_PER_FOOT / TICKS_PER_MM,
            width=rules.ticks("water.liner.width"),
            formula="quantities-liner",
            inputs={
                "surface": _surfaces(covered),
                "strips": [one.strips[0] for one in covered],
                "long": [measure(one.strips[1], "mm") for one in covered],
                "wide": length(rules.ticks("water.liner.width")),
            },
        )


def _band(covered: list[Covered], rules: RuleSet) -> Iterator[Listed]:
    if covered:
        yield Listed(
            item="sealing_band",
            exact=math.fsum(one.band for one in covered) / TICKS_PER_MM,
            unit="mm",
            kind="roll",
            size=to_mm(rules.ticks("water.band.length")),
            share=rules.number("water.waste"),
            formula="quantities-sealing_band",
            inputs={"surface": _surfaces(covered), "band": [length(one.band) for one in covered]},
        )


def _pieces(item: str, by_surface: Mapping[str, int]) -> Iterator[Listed]:
    counted = {surface: number for surface, number in by_surface.items() if number}
    if counted:
        yield Listed(
            item=item,
            exact=float(sum(counted.values())),
            unit="piece",
            kind="piece",
            size=1.0,
            formula=f"quantities-{item.partition('/')[0]}",
            inputs={"surface": [ref(surface) for surface in counted], "number": list(counted.values())},
        )


def _bed(plan: Document) -> Iterator[Listed]:
    falls = {surface.id: surface.fall for surface in plan.surfaces if surface.fall is not None}
    litres = math.fsum(fall.bed_litres + fall.pre_slope_litres for fall in falls.values())
    if litres:
        yield Listed(
            item="bed_mortar",
            exact=litres / _LITRES_PER_M3,
            unit="m3",
            kind="bag",
            size=plan.rules.number("fall.bed.bag_yield") / _LITRES_PER_M3,
            share=plan.rules.number("fall.bed.waste"),
            formula="quantities-bed_mortar",
            inputs={
                "surface": [ref(floor) for floor in falls],
                "bed": [measure(fall.bed_litres, "l") for fall in falls.values()],
                "lined": [fall.pre_slope > 0 for fall in falls.values()],
                "slope": [measure(fall.pre_slope_litres, "l") for fall in falls.values()],
            },
            rule="fall.bed.bag_yield",
        )
