"""Studs behind tile: sideways stiffness of the stud alone, steel thickness, tiling mass against the backing."""

import math
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.frames import beams
from firstcourse.frames.checks import Check, as_found, deflection_check
from firstcourse.frames.lumber import Lumber
from firstcourse.rules import RuleSet
from firstcourse.values import Value, Word, length_in, measure

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
        inertia = channel_second_moment(steel.depth_in, flange_in(rules, steel), thickness)
    return rules.number("wall.steel.e") * inertia


def check_studs(rules: RuleSet, studs: Studs) -> tuple[Check, ...]:
    """Stiffness against tile practice and code, spacing, and steel thickness where it is known."""
    checks = [as_found(rules, "stud_spacing", studs.spacing_in, "framing.stud_spacing.max", at_least=False)]
    stiffness = stud_stiffness(rules, studs)
    if stiffness is not None:
        checks += [
            _stiff(rules, studs, stiffness, rule) for rule in ("wall.deflection.tile", "wall.deflection.code")
        ]
    if studs.steel is not None and studs.steel.mils is not None:
        checks.append(as_found(rules, "steel_thickness", studs.steel.mils, "wall.steel.min", unit="mil"))
    return tuple(checks)


def _stiff(rules: RuleSet, studs: Studs, stiffness: float, rule: str) -> Check:
    lateral = rules.number("wall.load.lateral")
    load, by = lateral * studs.spacing_in / SQ_IN_PER_SQ_FT, rule.rpartition(".")[2]
    return deflection_check(
        rules,
        name=f"stud_stiffness_{by}",
        rule=rule,
        span_in=studs.height_in,
        deflection_in=beams.uniform_deflection(load, studs.height_in, stiffness),
        inputs={
            "by": Word(word=by),
            "height": length_in(studs.height_in),
            "spacing": length_in(studs.spacing_in),
            "load": measure(lateral, "psf"),
            "w": measure(load, "lb/in"),
            **_stiff_inputs(rules, studs, stiffness),
            "ei": measure(stiffness, "lb·in²"),
        },
        formula="stud_stiffness",
        also=(f"rule/{rule}",),
    )


def _stiff_inputs(rules: RuleSet, studs: Studs, stiffness: float) -> dict[str, Value]:
    if studs.wood is not None:
        wood = studs.wood
        return {
            "e": measure(wood.e_psi, "psi"),
            "width": length_in(wood.width_in),
            "depth": length_in(wood.depth_in),
        }
    modulus, steel = rules.number("wall.steel.e"), studs.steel
    inertia: dict[str, Value] = {
        "steel_e": measure(modulus, "psi"),
        "inertia": measure(stiffness / modulus, "in⁴"),
    }
    if steel is None or steel.second_moment_in4 is not None or steel.mils is None:
        return inertia
    return {
        "web": length_in(steel.depth_in),
        "flange": length_in(flange_in(rules, steel)),
        "steel": length_in(steel.mils * IN_PER_MIL),
        **inertia,
    }


def flange_in(rules: RuleSet, steel: SteelStud) -> float:
    """Width of a steel stud's flanges, the rule book's where it is not known [in]."""
    return rules.number("wall.steel.flange") if steel.flange_in is None else steel.flange_in


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
    return Check(
        name="tiling_mass", found=mass_kg_m2, limit=rules.number(rule), at_least=False, unit="kg/m²", rule=rule
    )
