"""Studs behind tile: sideways stiffness of the stud alone, steel thickness, tiling mass against the backing."""

import math
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability import beams
from firstcourse.suitability.checks import Check, deflection_check, deflection_text, length_check, stiffness_text
from firstcourse.suitability.lumber import Lumber
from firstcourse.workings import Working

SQ_IN_PER_SQ_FT = 144
IN_PER_MIL = 0.001


@dataclass(frozen=True, slots=True, kw_only=True)
class SteelStud:
    """A cold-formed stud.

    Attributes:
        depth_in: Depth of the web [in].
        mils: Thickness of the steel [1/1000 in]; None where only a gauge number is known.
        flange_in: Width of the flanges [in]; the rule book's where not given.
        second_moment_in4: From the maker's table [in⁴]; the gross section is taken where not given.
    """

    depth_in: float
    mils: float | None = None
    flange_in: float | None = None
    second_moment_in4: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Studs:
    """The studs of one wall.

    Attributes:
        height_in: Clear height between plates [in].
        spacing_in: Centre to centre [in].
        wood: Design values of wood studs.
        steel: Or the steel stud.
    """

    height_in: float
    spacing_in: float
    wood: Lumber | None = None
    steel: SteelStud | None = None

    def __post_init__(self) -> None:
        for name in ("height_in", "spacing_in"):
            if not 0 < getattr(self, name) < math.inf:
                raise InputValueError(f"studs: '{name}' must be more than zero and finite: {getattr(self, name)}")
        if (self.wood is None) == (self.steel is None):
            raise InputValueError("studs: give either wood or steel")


def channel_second_moment(depth: float, flange: float, thickness: float) -> float:
    """Second moment of area of a plain channel about its strong axis, without lips and with square corners [in⁴].

    Args:
        depth: Of the web, outside [in].
        flange: Width of a flange, outside [in].
        thickness: Of the steel [in].
    """
    web = thickness * (depth - 2 * thickness) ** 3 / 12
    return web + 2 * flange * thickness * ((depth - thickness) / 2) ** 2


def stud_stiffness(rules: RuleSet, studs: Studs) -> float | None:
    """EI of one stud alone [lb·in²]; None where the steel's thickness is not known."""
    if studs.wood is not None:
        return studs.wood.e_psi * beams.second_moment(studs.wood.width_in, studs.wood.depth_in)
    steel = studs.steel
    if steel is None:
        return None
    inertia = steel.second_moment_in4
    if inertia is None:
        if steel.mils is None:
            return None
        thickness = steel.mils * IN_PER_MIL
        flange = rules.number("wall.steel.flange") if steel.flange_in is None else steel.flange_in
        inertia = channel_second_moment(steel.depth_in, flange, thickness)
    return rules.number("wall.steel.e") * inertia


def check_studs(rules: RuleSet, studs: Studs) -> tuple[Check, ...]:
    """Stiffness against tile practice and code, spacing, and steel thickness where it is known."""
    checks = [
        length_check(
            rules,
            name="stud spacing",
            title="Stud spacing",
            found=studs.spacing_in,
            rule="framing.stud_spacing.max",
            at_least=False,
        )
    ]
    stiffness = stud_stiffness(rules, studs)
    if stiffness is not None:
        checks += [
            _stiff(rules, studs, stiffness, rule) for rule in ("wall.deflection.tile", "wall.deflection.code")
        ]
    if studs.steel is not None and studs.steel.mils is not None:
        checks.append(
            length_check(
                rules,
                name="steel thickness",
                title="Steel thickness",
                found=studs.steel.mils,
                rule="wall.steel.min",
                unit="mil",
            )
        )
    return tuple(checks)


def _stiff(rules: RuleSet, studs: Studs, stiffness: float, rule: str) -> Check:
    lateral = rules.number("wall.load.lateral")
    load = lateral * studs.spacing_in / SQ_IN_PER_SQ_FT
    deflection = beams.uniform_deflection(load, studs.height_in, stiffness)
    argument: tuple[str, ...] = ()
    if studs.steel is not None and studs.steel.second_moment_in4 is None:
        argument = ("Gross section of the steel, lips and buckling left out; the maker's table governs.",)
    return deflection_check(
        rules,
        name=f"stud stiffness ({'code' if rule.endswith('.code') else 'tile'})",
        title="Sideways deflection of a stud alone",
        formula="Δ = 5 w H⁴ / (384 EI)",
        rule=rule,
        span_in=studs.height_in,
        deflection_in=deflection,
        values={"H": f"{studs.height_in:g} in", "spacing": f"{studs.spacing_in:g} in"},
        steps=(
            f"w = {lateral:g} psf × {studs.spacing_in:g} in / {SQ_IN_PER_SQ_FT} = {load:.4f} lb/in",
            _stiffness_step(rules, studs, stiffness),
            f"Δ = 5 × {load:.4f} × {studs.height_in:g}⁴ / (384 × {stiffness_text(stiffness)}) "
            f"= {deflection_text(deflection)} in",
            f"H / Δ = {studs.height_in:g} / {deflection_text(deflection)} = {studs.height_in / deflection:.1f}",
        ),
        letter="H",
        argument=argument,
    )


def _stiffness_step(rules: RuleSet, studs: Studs, stiffness: float) -> str:
    if studs.wood is not None:
        wood = studs.wood
        return (
            f"EI = E b d³ / 12 = {wood.e_psi:,.0f} × {wood.width_in:g} × {wood.depth_in:g}³ / 12 "
            f"= {stiffness_text(stiffness)} lb·in²"
        )
    modulus, steel = rules.number("wall.steel.e"), studs.steel
    if steel is not None and steel.second_moment_in4 is None:
        return (
            "I = t (d - 2t)³ / 12 + 2 b t ((d - t) / 2)², EI = "
            f"{modulus:,.0f} psi × {stiffness / modulus:.4f} in⁴ = {stiffness_text(stiffness)} lb·in²"
        )
    return f"EI = {modulus:,.0f} psi × {stiffness / modulus:.4f} in⁴ = {stiffness_text(stiffness)} lb·in²"


def check_backing_mass(rules: RuleSet, backing: str, mass_kg_m2: float) -> Check | None:
    """Tiling mass against what the backing carries; None where no rule of this practice speaks of the backing.

    Args:
        rules: The rule book.
        backing: Such as `plasterboard` or `plaster`.
        mass_kg_m2: Tile, mortar and grout [kg/m²].
    """
    rule = f"wall.mass.{backing}"
    if not rules.has(rule):
        return None
    limit = rules.entry(rule)
    return Check(
        name="tiling mass",
        found=mass_kg_m2,
        limit=rules.number(rule),
        at_least=False,
        unit="kg/m²",
        rule=rule,
        source=limit.cited,
        working=Working(
            title="Tiling mass on the backing",
            formula="tile + mortar + grout",
            result=f"{mass_kg_m2:.1f}",
            unit="kg/m²",
            source=limit.cited,
        ),
    )
