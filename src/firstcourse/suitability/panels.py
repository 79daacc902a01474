"""The panel between joists: a concentrated load at mid-bay, and the uniform load.

Backer board counts as no stiffness. Layers act together only where they are glued and screwed.
"""

from dataclasses import dataclass
from fractions import Fraction

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import Check, sourced
from firstcourse.workings import Working

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
    """
    stiffness = panel_stiffness(rules, panel)
    values = {"s": f"{spacing_in:g} in", "EI": f"{stiffness:,.0f} lb·in²/ft", "layers": " + ".join(panel.layers)}
    point = point_deflection_in(rules, stiffness, spacing_in)
    even = uniform_deflection_in(rules, stiffness, spacing_in, load_psf)
    thickest = max(panel.layers, key=thickness_in)
    point_rule, even_rule = rules.entry("panel.deflection.point"), rules.entry("panel.deflection.uniform")
    layer_rule = rules.entry("panel.layer.min")
    return (
        Check(
            name="panel under a point load",
            found=spacing_in / point,
            limit=rules.number(point_rule.id),
            at_least=True,
            unit="L/x",
            rule=point_rule.id,
            source=sourced(point_rule),
            working=Working(
                title="Deflection between joists under a point load",
                formula="Δ = c P s³ / EI",
                values={
                    **values,
                    "c": f"{rules.number('panel.coefficient.point'):g}",
                    "P": f"{rules.number('panel.load.point'):g} lb",
                    "deflection": f"{point:.4f} in",
                },
                result=f"L/{int(spacing_in / point)}",
                unit="",
                source=sourced(point_rule),
                argument=("Backer board, mortar and tile are counted as no stiffness.",),
            ),
        ),
        Check(
            name="panel under uniform load",
            found=spacing_in / even,
            limit=rules.number(even_rule.id),
            at_least=True,
            unit="L/x",
            rule=even_rule.id,
            source=sourced(even_rule),
            working=Working(
                title="Deflection between joists under uniform load",
                formula="Δ = 5 w s⁴ / (384 EI)",
                values={**values, "w": f"{load_psf:.1f} psf", "deflection": f"{even:.4f} in"},
                result=f"L/{int(spacing_in / even)}",
                unit="",
                source=sourced(even_rule),
            ),
        ),
        Check(
            name="thickest panel layer",
            found=thickness_in(thickest),
            limit=rules.number(layer_rule.id),
            at_least=True,
            unit="in",
            rule=layer_rule.id,
            source=sourced(layer_rule),
            working=Working(
                title="Thickest panel layer",
                formula="as found",
                result=thickest,
                unit="in",
                source=sourced(layer_rule),
            ),
        ),
    )
