"""The layers over a structure: height at doorways and fittings, mass for each area."""

from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import sourced

PSF_PER_KG_M2 = 0.204816
M_PER_IN = 0.0254


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """One layer over the structure, bond coats included.

    Attributes:
        name: Such as `board`, `bond coat`, `tile`.
        thickness_in: As it ends up in place [in].
        density_kg_m3: For its mass [kg/m³].
    """

    name: str
    thickness_in: float
    density_kg_m3: float

    def __post_init__(self) -> None:
        if self.thickness_in < 0 or self.density_kg_m3 < 0:
            raise InputValueError(f"layer '{self.name}': thickness and density cannot be less than zero")

    @property
    def mass_kg_m2(self) -> float:
        """Mass for one square metre [kg/m²]."""
        return self.thickness_in * M_PER_IN * self.density_kg_m3

    @property
    def mass_psf(self) -> float:
        """Mass for one square foot [psf]."""
        return self.mass_kg_m2 * PSF_PER_KG_M2


@dataclass(frozen=True, slots=True, kw_only=True)
class Doorway:
    """Where the finished floor meets another.

    Attributes:
        name: Such as `door to hall`.
        other_floor_in: Height of the other finished floor over this room's structure [in].
        door_underside_in: Height of the door's underside over this room's structure [in]; None without a door.
    """

    name: str
    other_floor_in: float
    door_underside_in: float | None = None


def total_height_in(layers: tuple[Layer, ...]) -> float:
    """Height of all layers [in]."""
    return sum(layer.thickness_in for layer in layers)


def total_mass_psf(layers: tuple[Layer, ...]) -> float:
    """Mass of all layers [psf]."""
    return sum(layer.mass_psf for layer in layers)


def total_mass_kg_m2(layers: tuple[Layer, ...]) -> float:
    """Mass of all layers [kg/m²]."""
    return sum(layer.mass_kg_m2 for layer in layers)


def judge_doorway(rules: RuleSet, layers: tuple[Layer, ...], doorway: Doorway) -> tuple[Finding, ...]:
    """The step at a doorway and the gap under its door."""
    findings = []
    height = total_height_in(layers)
    step = round(abs(height - doorway.other_floor_in), 6)
    if "transition.vertical.max" in rules.entries and step > rules.number("transition.vertical.max"):
        bevel = step <= rules.number("transition.bevel.max")
        entry = rules.entry("transition.vertical.max" if bevel else "transition.bevel.max")
        findings.append(
            Finding(
                code="SUI-601" if bevel else "SUI-602",
                severity=Severity.NOTE if bevel else Severity.FIX,
                where=doorway.name,
                message=f"The finished floor steps {'up' if height > doorway.other_floor_in else 'down'} here.",
                measured=f"{step:.3g} in",
                limit=f"at most {rules.number(entry.id):g} in",
                rule=entry.id,
                source=sourced(entry),
                remedy="Bevel the edge." if bevel else "Use a ramped threshold or thinner layers.",
            )
        )
    if doorway.door_underside_in is not None:
        entry = rules.entry("door.clearance.min")
        gap = doorway.door_underside_in - height
        if gap < rules.number(entry.id):
            findings.append(
                Finding(
                    code="SUI-603",
                    severity=Severity.FIX,
                    where=doorway.name,
                    message="The door will "
                    + ("drag on" if gap > 0 else "not open over")
                    + " the finished floor.",
                    measured=f"{gap:.3g} in",
                    limit=f"at least {rules.number(entry.id):g} in",
                    rule=entry.id,
                    source=sourced(entry),
                    remedy=f"Cut {rules.number(entry.id) - gap:.3g} in off the door before laying.",
                )
            )
    return tuple(findings)


def judge_flange(rules: RuleSet, layers: tuple[Layer, ...], where: str, flange_in: float) -> tuple[Finding, ...]:
    """Whether a closet flange will stand on the finished floor; `flange_in` is its top over the structure [in]."""
    entry = rules.entry("flange.above.max")
    above = round(flange_in - total_height_in(layers), 6)
    if 0 <= above <= rules.number(entry.id):
        return ()
    return (
        Finding(
            code="SUI-604",
            severity=Severity.FIX,
            where=where,
            message=f"The closet flange ends {'above' if above > 0 else 'below'} the finished floor.",
            measured=f"{above:+.3g} in",
            limit=f"0 to {rules.number(entry.id):g} in above",
            rule=entry.id,
            source=sourced(entry),
            remedy="Have a plumber reset it." if above > 0 else f"Add a flange extension of {-above:.3g} in.",
        ),
    )


def judge_valve(where: str, layers: tuple[Layer, ...], least_in: float, most_in: float) -> tuple[Finding, ...]:
    """Whether the wall's layers end within a valve's depth window, given by its maker [in]."""
    height = total_height_in(layers)
    if least_in <= height <= most_in:
        return ()
    return (
        Finding(
            code="SUI-605",
            severity=Severity.FIX,
            where=where,
            message="The finished wall ends outside the valve's depth window.",
            measured=f"{height:.3g} in",
            limit=f"{least_in:g} to {most_in:g} in",
            source="the valve's sheet, as entered",
            remedy="Have the valve moved before boarding.",
        ),
    )


def judge_trim(rules: RuleSet, where: str, tile: Layer, bond_coat: Layer, trim_in: float) -> tuple[Finding, ...]:
    """Whether a trim profile's height suits tile and bond coat [in]."""
    entry = rules.entry("trim.height.tolerance")
    wanted = tile.thickness_in + bond_coat.thickness_in
    if abs(trim_in - wanted) <= rules.number(entry.id) + 1e-9:
        return ()
    return (
        Finding(
            code="SUI-606",
            severity=Severity.FIX,
            where=where,
            message="The trim does not end level with the tile.",
            measured=f"{trim_in:g} in",
            limit=f"{wanted:.3g} ± {rules.number(entry.id):g} in",
            rule=entry.id,
            source=sourced(entry),
            remedy=f"Take trim of about {wanted:.3g} in.",
        ),
    )
