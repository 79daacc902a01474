"""The panel between joists: a concentrated load at mid-bay, and the uniform load.

Backer board counts as no stiffness. Layers act together only where they are glued and screwed.
"""

from dataclasses import dataclass
from fractions import Fraction

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import Check, deflection_check, length_check

SQ_IN_PER_SQ_FT = 144
IN_PER_FT = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """The structural layers on the joists.

    Attributes:
        layers: Thickness of each layer in inches as sold, such as `23/32`, from below.
        glued_and_screwed: Whether the layers are glued and screwed to each other.
    """

    layers: tuple[str, ...]
    glued_and_screwed: bool = False


def layer_stiffness(rules: RuleSet, thickness: str) -> float:
    """Bending stiffness of one layer, strength axis across the joists [lb·in² per foot of width].

    Raises:
        InputValueError: The rule book has no such thickness.
    """
    rule = "panel.ei." + thickness.replace("-", "_").replace("/", "_")
    if rule not in rules.entries:
        known = ", ".join(
            entry.id.removeprefix("panel.ei.").replace("_", "/") for entry in rules.under("panel.ei.")
        )
        raise InputValueError(f"no panel stiffness for '{thickness}' in; the rule book has {known}")
    return rules.number(rule)


def thickness_in(thickness: str) -> float:
    """Thickness such as `1-1/8` or `23/32` [in]."""
    try:
        whole, _, part = thickness.rpartition("-")
        return float(Fraction(part) + (int(whole) if whole else 0))
    except (ValueError, ZeroDivisionError):
        raise InputValueError(f"'{thickness}' is not a panel thickness such as 23/32 or 1-1/8") from None


def panel_stiffness(rules: RuleSet, panel: Panel) -> float:
    """Bending stiffness of all layers [lb·in² per foot of width].

    Loose layers add up. Glued and screwed layers gain the rule book's share of what one solid panel of the whole
    thickness would have over loose ones, made of the least stiff layer's material.
    """
    if not panel.layers:
        raise InputValueError("a floor on joists needs at least one panel layer")
    loose = sum(layer_stiffness(rules, layer) for layer in panel.layers)
    if not panel.glued_and_screwed or len(panel.layers) == 1:
        return loose
    whole = sum(thickness_in(layer) for layer in panel.layers)
    solid = min(layer_stiffness(rules, layer) / thickness_in(layer) ** 3 for layer in panel.layers) * whole**3
    return loose + rules.number("panel.composite.share") * max(solid - loose, 0)


def point_deflection_in(rules: RuleSet, stiffness: float, spacing_in: float) -> float:
    """Deflection under the concentrated load at mid-bay, a strip of panel over two equal spans [in]."""
    strip = rules.number("panel.strip") / IN_PER_FT
    load = rules.number("panel.load.point")
    return rules.number("panel.coefficient.point") * load * spacing_in**3 / (stiffness * strip)


def uniform_deflection_in(rules: RuleSet, stiffness: float, spacing_in: float, load_psf: float) -> float:
    """Deflection between joists under a uniform load, taken as a simple span [in]."""
    load = load_psf * IN_PER_FT / SQ_IN_PER_SQ_FT
    return rules.number("panel.coefficient.uniform") * load * spacing_in**4 / stiffness


def check_panel(rules: RuleSet, panel: Panel, spacing_in: float, load_psf: float) -> tuple[Check, ...]:
    """The checks of the panel between joists.

    Args:
        rules: The rule book.
        panel: The layers.
        spacing_in: Joist spacing [in].
        load_psf: Live and dead load [psf].

    Returns:
        Uniform load, point load, thickest layer.
    """
    stiffness = panel_stiffness(rules, panel)
    values = {"s": f"{spacing_in:g} in", "layers": " + ".join(panel.layers)}
    strip, load = rules.number("panel.strip"), rules.number("panel.load.point")
    layers = _stiffness_step(rules, panel, stiffness)
    wide = stiffness * strip / IN_PER_FT
    per_inch = load_psf * IN_PER_FT / SQ_IN_PER_SQ_FT
    point = point_deflection_in(rules, stiffness, spacing_in)
    even = uniform_deflection_in(rules, stiffness, spacing_in, load_psf)
    thickest = max(panel.layers, key=thickness_in)
    return (
        deflection_check(
            rules,
            name="panel under uniform load",
            title="Deflection between joists under uniform load",
            formula="Δ = 5 w s⁴ / (384 EI)",
            rule="panel.deflection.uniform",
            span_in=spacing_in,
            deflection_in=even,
            values={**values, "w": f"{load_psf:.1f} psf, live and dead"},
            steps=(
                layers,
                f"Δ = 5 × {per_inch:.3f} lb/in × {spacing_in:g}⁴ / (384 × {stiffness:,.0f}) = {even:.5f} in",
                f"s / Δ = {spacing_in:g} / {even:.5f} = {spacing_in / even:.0f}",
            ),
        ),
        deflection_check(
            rules,
            name="panel under a point load",
            title="Deflection between joists under a point load",
            formula="Δ = c P s³ / EI, over two equal spans, P at the middle of one, carried by a strip",
            rule="panel.deflection.point",
            span_in=spacing_in,
            deflection_in=point,
            values={
                **values,
                "c": f"{rules.number('panel.coefficient.point'):g}",
                "P": f"{load:g} lb",
                "strip": f"{strip:g} in",
            },
            steps=(
                layers,
                f"Δ = {rules.number('panel.coefficient.point'):g} × {load:g} × {spacing_in:g}³ / {wide:,.0f} "
                f"= {point:.4f} in",
                f"s / Δ = {spacing_in:g} / {point:.4f} = {spacing_in / point:.1f}",
            ),
            argument=("Backer board, mortar and tile are counted as no stiffness.",),
        ),
        length_check(
            rules,
            name="thickest panel layer",
            title="Thickest panel layer",
            found=thickness_in(thickest),
            rule="panel.layer.min",
        ),
    )


def _stiffness_step(rules: RuleSet, panel: Panel, stiffness: float) -> str:
    parts = " + ".join(f"{layer_stiffness(rules, layer):,.0f}" for layer in panel.layers)
    if panel.glued_and_screwed and len(panel.layers) > 1:
        share = rules.number("panel.composite.share")
        return (
            f"EI = {parts} loose, plus {share:g} of what one solid panel would gain (glued and screwed) "
            f"= {stiffness:,.0f} lb·in² for one foot"
        )
    if len(panel.layers) == 1:
        return f"EI = {stiffness:,.0f} lb·in² for one foot"
    return (
        f"EI = {parts} = {stiffness:,.0f} lb·in² for one foot; not glued, so no layer helps the other in bending"
    )
