"""What keeps water in, counted again: what membranes take, by the surface, and the beds of shower floors."""

import math
from collections.abc import Iterator

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape
from firstcourse.verify.covered import all_covered
from firstcourse.verify.needs import Need
from firstcourse.verify.structure import Document

_TICKS_PER_M = 1000 * TICKS_PER_MM
_MM_PER_FT = TICKS_PER_FOOT / TICKS_PER_MM
_LITRES_PER_CUBIC_FOOT = (_MM_PER_FT / 100) ** 3
_SQ_FT_PER_M2 = (1000 / _MM_PER_FT) ** 2


def water_needs(plan: Document) -> Iterator[Need]:
    """Everything that membranes and the beds of shower floors take."""
    rules, tape = plan.rules, plan.tape
    covered = list(all_covered(plan))
    sheet = [one for one in covered if one.kind == "sheet"]
    if sheet:
        yield _sheet(math.fsum(one.area + one.laps for one in sheet), rules, tape)
    liquid = [one for one in covered if one.kind == "liquid"]
    if liquid:
        pail, wet = rules.number("water.liquid.pail"), rules.number("water.liquid.wet")
        yield Need(
            item="liquid_membrane",
            exact=math.fsum(one.area for one in liquid) * wet,
            places=3,
            unit="l",
            share=rules.number("water.waste"),
            pack=pail,
            kind="pail",
            pack_name=f"pail of {pail:g} l",
            shown={one.surface: one.area for one in liquid},
        )
    liner = [one for one in covered if one.kind == "liner"]
    if liner:
        exact, unit = _running(math.fsum(one.strips[0] * one.strips[1] for one in liner), tape)
        width, _ = _running(rules.ticks("water.liner.width") / TICKS_PER_MM, tape)
        yield Need(
            item="liner",
            exact=exact,
            places=4,
            unit=unit,
            kind="off_roll",
            width=rules.ticks("water.liner.width"),
            pack_name=f"{unit} off a roll {round(width, 4):g} {unit} wide",
            said={one.surface: f"{one.strips[0]} x {one.strips[1]:.0f} mm" for one in liner},
        )
    band = math.fsum(one.band for one in covered)
    if band:
        exact, unit = _running(band / TICKS_PER_MM, tape)
        roll, _ = _running(rules.ticks("water.band.length") / TICKS_PER_MM, tape)
        yield Need(
            item="sealing_band",
            exact=exact,
            places=4,
            unit=unit,
            share=rules.number("water.waste"),
            pack=round(roll, 4),
            kind="roll",
            pack_name=f"roll of {round(roll, 4):g} {unit}",
            shown={one.surface: one.band / TICKS_PER_MM for one in covered if one.band},
        )
    yield from _counted("inside_corners", {one.surface: one.inside for one in covered})
    yield from _counted("outside_corners", {one.surface: one.outside for one in covered})
    for kind in sorted({opening.kind for one in covered for opening in one.collars}):
        name = "drain_flanges" if kind == "drain" else f"collars/{kind}"
        holes = {one.surface: [opening for opening in one.collars if opening.kind == kind] for one in covered}
        yield from _counted(name, {surface: len(found) for surface, found in holes.items()})
    yield from _bed(plan)


def _sheet(m2: float, rules: RuleSet, tape: Tape) -> Need:
    metric = tape is Tape.MM
    scale, unit = (1.0, "m²") if metric else (_SQ_FT_PER_M2, "sq ft")
    roll = round(rules.ticks("water.sheet.width") * rules.ticks("water.sheet.length") / _TICKS_PER_M**2 * scale, 4)
    return Need(
        item="sheet_membrane",
        exact=m2 * scale,
        places=4,
        unit=unit,
        share=rules.number("water.waste"),
        pack=roll,
        kind="roll",
        pack_name=f"roll of {roll:.0f} {unit}",
    )


def _running(mm: float, tape: Tape) -> tuple[float, str]:
    return (mm / 1000, "m") if tape is Tape.MM else (mm / _MM_PER_FT, "ft")


def _counted(name: str, by_surface: dict[str, int]) -> Iterator[Need]:
    number = sum(by_surface.values())
    if number:
        yield Need(
            item=name,
            exact=number,
            places=0,
            unit="pieces",
            kind="piece",
            pack_name="piece",
            shown={surface: count for surface, count in by_surface.items() if count},
        )


def _bed(plan: Document) -> Iterator[Need]:
    falls = [surface.fall for surface in plan.surfaces if surface.fall is not None]
    litres = math.fsum(fall.bed_litres + fall.pre_slope_litres for fall in falls)
    if not litres:
        return
    per, unit = (1.0, "l") if plan.tape is Tape.MM else (_LITRES_PER_CUBIC_FOOT, "cu ft")
    one = plan.rules.number("fall.bed.bag_yield") / per
    yield Need(
        item="bed_mortar",
        exact=litres / per,
        places=4,
        unit=unit,
        share=plan.rules.number("fall.bed.waste"),
        pack=one,
        kept_as=("m3", per / 1000),
        kind="bag",
        pack_name=f"bag that makes {one:.3g} {unit}",
    )
