"""One surface's build-up: its layers and masses, and everything that must meet its finished height."""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.frames import Check, check_backing_mass
from firstcourse.grounds.doorways import Doorway, judge_doorway
from firstcourse.grounds.fittings import Fitting, ValveWindow, judge_drain, judge_flange, judge_trim, judge_valve
from firstcourse.layers import BOND_COAT, TILE, Layer, total_height_in, total_mass_kg_m2
from firstcourse.rules import RuleSet
from firstcourse.units import Tape
from firstcourse.values import Word, length_in, measure, most
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildUp:
    """A surface's layers over its structure and what they meet.

    Attributes:
        ref: Reference to the surface.
        tape: What cannot be read on it is level.
        layers: From below, by the names of `buildup`.
        area_m2: Of the part that is boarded [m²].
        backings: On a wall or ceiling, the board families it may be boarded with; their mass limits are judged.
        tile_area_m2: Face of one tile [m²]; None where not known.
        doorways, flanges, drains, valves: What the finished height must suit.
        trim_in: Height of an edge trim [in].
    """

    ref: str
    tape: Tape
    layers: tuple[Layer, ...]
    area_m2: float
    backings: tuple[str, ...] = ()
    tile_area_m2: float | None = None
    doorways: tuple[Doorway, ...] = ()
    flanges: tuple[Fitting, ...] = ()
    drains: tuple[Fitting, ...] = ()
    valves: tuple[ValveWindow, ...] = ()
    trim_in: float | None = None


def judge_build_up(rules: RuleSet, surface: BuildUp) -> tuple[tuple[Finding, ...], tuple[Working, ...]]:
    """Judge what meets the finished height, and the mass on the backing.

    Returns:
        Findings, and workings of the height, the mass and each doorway.
    """
    findings: list[Finding] = []
    workings = [_height(surface), _mass(surface)]
    for doorway in surface.doorways:
        found, working = judge_doorway(rules, surface.layers, doorway, surface.tape)
        findings += found
        workings.append(working)
    for flange in surface.flanges:
        findings += judge_flange(rules, surface.layers, surface.ref, flange)
    for drain in surface.drains:
        findings += judge_drain(rules, surface.layers, surface.ref, drain)
    for valve in surface.valves:
        findings += judge_valve(surface.layers, surface.ref, valve)
    if surface.trim_in is not None:
        findings += judge_trim(rules, surface.layers, surface.ref, surface.trim_in)
    for backing in surface.backings:
        findings += _backing(rules, surface, backing, workings)
    return tuple(findings), tuple(workings)


def tiling_mass_kg_m2(rules: RuleSet, layers: tuple[Layer, ...]) -> float:
    """Tile, the mortar under it and the grout [kg/m²]."""
    tiling = tuple(layer for layer in layers if layer.name in (TILE, BOND_COAT))
    return total_mass_kg_m2(tiling) + rules.number("mass.grout")


def _height(surface: BuildUp) -> Working:
    return Working(
        formula="height-build_up",
        at=(surface.ref,),
        inputs={
            "layer": tuple(Word(word=layer.of) for layer in surface.layers),
            "thick": tuple(length_in(layer.thickness_in) for layer in surface.layers),
        },
        result=length_in(total_height_in(surface.layers)),
    )


def _mass(surface: BuildUp) -> Working:
    each = total_mass_kg_m2(surface.layers)
    return Working(
        formula="height-mass",
        at=(surface.ref,),
        inputs={
            "layer": tuple(Word(word=layer.of) for layer in surface.layers),
            "thick": tuple(length_in(layer.thickness_in) for layer in surface.layers),
            "density": tuple(measure(layer.density_kg_m3, "kg/m3") for layer in surface.layers),
            "mass": tuple(measure(layer.mass_kg_m2, "kg/m2") for layer in surface.layers),
            "area": measure(surface.area_m2, "m2"),
            "whole": measure(each * surface.area_m2, "kg"),
        },
        result=measure(each, "kg/m2"),
    )


def _backing(rules: RuleSet, surface: BuildUp, backing: str, workings: list[Working]) -> list[Finding]:
    mass = tiling_mass_kg_m2(rules, surface.layers)
    check = check_backing_mass(rules, backing, mass)
    if check is None:
        return []
    grout = rules.number("mass.grout")
    workings.append(
        Working(
            formula="height-backing",
            at=(surface.ref, f"rule/{check.rule}"),
            inputs={
                "backing": Word(word=backing),
                "tiling": measure(mass - grout, "kg/m2"),
                "grout": measure(grout, "kg/m2"),
                "holds": check.holds,
            },
            result=measure(mass, "kg/m2"),
            limit=most(measure(check.limit, "kg/m2")),
            rule=check.rule,
        )
    )
    if not check.holds:
        return [too_heavy(surface.ref, backing, check, "thinner")]
    share = rules.find("wall.mass.solid_bed_share")
    if share is None or surface.tile_area_m2 is None:
        return []
    small = surface.tile_area_m2 < rules.number("tile.joint.small_area")
    allowed = check.limit * rules.number(share.id) / 100
    if not small or mass <= allowed:
        return []
    return [
        share.found(
            "SUI-305",
            Severity.NOTE,
            surface.ref,
            measured=check.measured,
            limit=most(measure(allowed, check.unit)),
            remedies=("butter",),
            backing=Word(word=backing),
            share=measure(rules.number(share.id), "%"),
        )
    ]


def too_heavy(ref: str, backing: str, check: Check, remedy: str) -> Finding:
    """Tiling heavier than what it hangs on carries."""
    return Finding(
        code="SUI-304",
        severity=Severity.STOP,
        at=(ref,),
        measured=check.measured,
        limit=check.allowed,
        rule=check.rule,
        remedies=(remedy,),
        values={"backing": Word(word=backing)},
    )
