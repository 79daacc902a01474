"""One surface's build-up: its layers and masses, and everything that must meet its finished height."""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import (
    BOND_COAT,
    TILE,
    Layer,
    height_figures,
    height_text,
    total_height_in,
    total_mass_kg_m2,
    total_mass_psf,
)
from firstcourse.suitability.checks import Check
from firstcourse.suitability.doorways import Doorway, judge_doorway
from firstcourse.suitability.fittings import (
    Fitting,
    ValveWindow,
    judge_drain,
    judge_flange,
    judge_trim,
    judge_valve,
)
from firstcourse.suitability.walls import check_backing_mass
from firstcourse.units import Tape, format_length, inches
from firstcourse.values import Word, measure, most
from firstcourse.workings import Working

LB_PER_KG = 2.2046226


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildUp:
    """A surface's layers over its structure and what they meet.

    Attributes:
        ref: Reference to the surface.
        where: The place in words.
        tape: What lengths are shown in.
        layers: From below, by the names of `buildup`.
        area_m2: Of the part that is boarded [m²].
        backings: On a wall or ceiling, the board families it may be boarded with; their mass limits are judged.
        tile_area_m2: Face of one tile [m²]; None where not known.
        doorways, flanges, drains, valves: What the finished height must suit.
        trim_in: Height of an edge trim [in].
    """

    ref: str
    where: str
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


def judge_build_up(rules: RuleSet, surface: BuildUp) -> tuple[tuple[Finding, ...], dict[str, Working]]:
    """Judge what meets the finished height, and the mass on the backing.

    Returns:
        Findings, and workings by a short name: layers, mass, each doorway.
    """
    findings: list[Finding] = []
    workings = {"buildup.height": _height(surface), "buildup.mass": _mass(surface)}
    for doorway in surface.doorways:
        found, working = judge_doorway(rules, surface.layers, doorway, surface.tape)
        findings += found
        workings[working.id] = working
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
    return tuple(findings), workings


def tiling_mass_kg_m2(rules: RuleSet, layers: tuple[Layer, ...]) -> float:
    """Tile, the mortar under it and the grout [kg/m²]."""
    tiling = tuple(layer for layer in layers if layer.name in (TILE, BOND_COAT))
    return total_mass_kg_m2(tiling) + rules.number("mass.grout")


def _height(surface: BuildUp) -> Working:
    total = total_height_in(surface.layers)
    figures, unit = height_figures(total, surface.tape)
    return Working(
        title=f"{surface.where}: height of the finished surface over its structure",
        formula="sum of the layers, from below",
        values={layer.name: height_text(layer.thickness_in, surface.tape) for layer in surface.layers},
        result=figures,
        unit=f"{unit}, on the tape {format_length(inches(total), surface.tape)}",
        source="layers as entered; mortar as combed and beaten in",
    )


def _mass(surface: BuildUp) -> Working:
    each = total_mass_kg_m2(surface.layers)
    whole = each * surface.area_m2
    inch = surface.tape is Tape.INCH
    return Working(
        title=f"{surface.where}: mass of the layers",
        formula="sum of thickness × density; times the area for the whole",
        values={
            **{
                layer.name: f"{height_text(layer.thickness_in, surface.tape)} × {layer.density_kg_m3:g} kg/m³ = "
                f"{layer.mass_kg_m2:.1f} kg/m²"
                for layer in surface.layers
            },
            **({"for one square foot": f"{total_mass_psf(surface.layers):.2f} lb"} if inch else {}),
            "area": f"{surface.area_m2:.2f} m²",
            "whole surface": f"{whole:.0f} kg" + (f", {whole * LB_PER_KG:.0f} lb" if inch else ""),
        },
        result=f"{each:.1f}",
        unit="kg/m²",
        source="densities as entered, or the rule book's (rules mass.*, boards.density, bedding.mortar.density)",
    )


def _backing(rules: RuleSet, surface: BuildUp, backing: str, workings: dict[str, Working]) -> list[Finding]:
    mass = tiling_mass_kg_m2(rules, surface.layers)
    check = check_backing_mass(rules, backing, mass)
    if check is None:
        return []
    name = backing.replace("_", " ")
    limit = f"{check.limit_text()}: {'holds' if check.holds else 'DOES NOT HOLD'}"
    workings[f"buildup.backing.{backing}"] = check.working.model_copy(
        update={
            "title": f"{surface.where}: tiling on {name}",
            "values": {
                "tile and mortar": f"{mass - rules.number('mass.grout'):.1f} kg/m²",
                "grout": f"{rules.number('mass.grout'):g} kg/m²",
                "limit": limit,
            },
        }
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
