"""Panels between joists derived again by their span ratings: spacing, bending, deflection, thickness."""

from collections.abc import Iterator
from fractions import Fraction

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, as_found, inches, name, ratio
from firstcourse.verify.frame_fields import Found

_IN_PER_FT, _SQ_IN_PER_SQ_FT = 12, 144


def usual_rating(rules: RuleSet, layer: str) -> str:
    """The least rating that a thickness is sold with."""
    return rules.text("panel.rating." + layer.replace("-", "_").replace("/", "_"))


def thickness(layer: str) -> float:
    """A thickness as sold, such as `1-1/8` [in].

    Raises:
        ValueError: It is none.
    """
    whole, _, part = layer.rpartition("-")
    return float(Fraction(part)) + (int(whole) if whole else 0)


def named(found: Found) -> dict[str, Wanted]:
    """Layers and ratings as they stand in the plan."""
    return {"layers": [name(one) for one in found.layers], "ratings": [name(one) for one in found.ratings]}


def panel_checks(rules: RuleSet, found: Found, load: float) -> Iterator[Derived]:
    """Every check of a panel.

    Args:
        rules: The rule book.
        found: Its layers and the joists' spacing.
        load: Live and dead load at their greatest [psf].
    """
    spacing = inches(found.spacing)
    spans, capacities, each = (
        [rules.number(_rule(what, rating)) for rating in found.ratings] for what in ("span", "fbs", "ei")
    )
    widest, w = max(spans), load * _IN_PER_FT / _SQ_IN_PER_SQ_FT
    by = found.ratings[spans.index(widest)]
    yield Derived(
        formula="frames-panel_rating",
        name="panel_rating",
        inputs={**named(found), "rating": name(by), "entered": found.entered},
        result=spacing,
        limit=inches(widest),
        rule=_rule("span", by),
    )
    yield Derived(
        formula="frames-panel_bending",
        name="panel_bending",
        inputs={
            "spacing": spacing,
            **named(found),
            "w": Number(w, "lb/in"),
            "each": [Number(one, "lb·in") for one in capacities],
        },
        result=Number(w * found.spacing**2 / 8, "lb·in"),
        limit=Number(sum(capacities), "lb·in"),
        rule=_rule("fbs", found.ratings[0]),
    )
    ei, stiff = _stiffness(rules, found, each)
    rated = found.spacing <= widest
    c = rules.number("panel.coefficient.uniform")
    yield ratio(
        rules,
        "panel_uniform",
        "panel.deflection.uniform",
        found.spacing,
        c * w * found.spacing**4 / ei,
        {"spacing": spacing, **stiff, "load": Number(load, "psf"), "c": Number(c), "w": Number(w, "lb/in")},
        advised=rated and load <= rules.number("panel.rated_load"),
    )
    c, point, strip = (rules.number(f"panel.{key}") for key in ("coefficient.point", "load.point", "strip"))
    wide = ei * strip / _IN_PER_FT
    yield ratio(
        rules,
        "panel_point",
        "panel.deflection.point",
        found.spacing,
        c * point * found.spacing**3 / wide,
        {
            "spacing": spacing,
            **stiff,
            "c": Number(c),
            "load": Number(point, "lb"),
            "strip": inches(strip),
            "wide": Number(wide, "lb·in²"),
        },
        advised=rated,
    )
    thickest = max(map(thickness, found.layers))
    yield as_found(rules, "panel_thickest", thickest, "panel.layer.min", at_least=True)


def _rule(what: str, rating: str) -> str:
    return f"panel.{what}." + rating.replace(" ", "_").replace("/", "_")


def _stiffness(rules: RuleSet, found: Found, each: list[float]) -> tuple[float, dict[str, Wanted]]:
    """EI of one foot of all layers, and what it comes from: glued layers gain a share of a solid panel's."""
    ei, inputs = sum(each), {**named(found), "each": [Number(one, "lb·in²") for one in each]}
    if len(each) > 1 and found.glued:
        share, thick = rules.number("panel.composite.share"), [thickness(layer) for layer in found.layers]
        solid = min(one / own**3 for one, own in zip(each, thick, strict=True)) * sum(thick) ** 3
        ei += share * max(solid - ei, 0.0)
        inputs["glued_share"] = Number(share)
    elif len(each) > 1:
        inputs["not_glued"] = Number(0.0)
    return ei, {**inputs, "ei": Number(ei, "lb·in²")}
