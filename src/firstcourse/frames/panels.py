"""The panel between joists: its span rating, bending, the uniform load, and a concentrated load at mid-bay.

A panel bends and bears by its span rating: as entered, else the least that is sold in its thickness. Backer board
counts as no stiffness. Layers act together only where they are glued and screwed.

Where a panel's own rating spans the joists, deflection between them is advice beside it: the rating was earned by
tests of whole panels, and no calculation on a strip of one may overrule it.
"""

from dataclasses import dataclass
from fractions import Fraction

from firstcourse.errors import InputValueError
from firstcourse.frames.checks import Check, as_found, deflection_check
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Value, length_in, measure

SQ_IN_PER_SQ_FT = 144
IN_PER_FT = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """The structural layers on the joists.

    Attributes:
        layers: Thickness of each layer in inches as sold, such as `23/32`, from below.
        glued_and_screwed: Whether the layers are glued and screwed to each other.
        ratings: Span rating of each layer by its stamp, such as `24 oc` or `48/24`; where empty the least that
            its thickness is sold with.
        true_in: Thickness of each layer as it is, for mass and height [in]; as sold where empty.
    """

    layers: tuple[str, ...]
    glued_and_screwed: bool = False
    ratings: tuple[str, ...] = ()
    true_in: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        for name in ("ratings", "true_in"):
            if getattr(self, name) and len(getattr(self, name)) != len(self.layers):
                raise InputValueError(f"panels: give one of '{name}' for each layer")

    @property
    def thickness_in(self) -> float:
        """Thickness of all layers [in]."""
        return sum(self.true_in) if self.true_in else sum(thickness_in(layer) for layer in self.layers)


def panel_ratings(rules: RuleSet, panel: Panel) -> tuple[str, ...]:
    """Span rating of each layer.

    Raises:
        InputValueError: The rule book knows no rating of a thickness.
    """
    return panel.ratings or tuple(_usual_rating(rules, layer) for layer in panel.layers)


def _usual_rating(rules: RuleSet, thickness: str) -> str:
    rule = "panel.rating." + thickness.replace("-", "_").replace("/", "_")
    if not rules.has(rule):
        known = ", ".join(
            name.removeprefix("panel.rating.").replace("_", "/") for name in rules.ids("panel.rating.")
        )
        raise InputValueError(
            f"no span rating for a panel of '{thickness}' in; enter its rating, or a thickness of {known}"
        )
    return rules.text(rule)


def rated(rules: RuleSet, rating: str, what: str) -> float:
    """A value of a span rating: `ei` [lb·in² per foot of width], `fbs` [lb·in per foot] or `span` [in].

    Raises:
        InputValueError: The rule book has no such rating.
    """
    rule = _rule_of(rating, what)
    if not rules.has(rule):
        raise InputValueError(f"no span rating '{rating}' in the rule book; it has such as 24 oc and 48/24")
    return rules.number(rule)


def _longest(rules: RuleSet, panel: Panel) -> float:
    return max(rated(rules, rating, "span") for rating in panel_ratings(rules, panel))


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
    each = _stiffnesses(rules, panel)
    loose = sum(each)
    if not panel.glued_and_screwed or len(panel.layers) == 1:
        return loose
    thick = [thickness_in(layer) for layer in panel.layers]
    solid = min(ei / own**3 for ei, own in zip(each, thick, strict=True)) * sum(thick) ** 3
    return loose + rules.number("panel.composite.share") * max(solid - loose, 0)


def _stiffnesses(rules: RuleSet, panel: Panel) -> tuple[float, ...]:
    return tuple(rated(rules, rating, "ei") for rating in panel_ratings(rules, panel))


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
        Span rating, bending, uniform load, point load, thickest layer. Deflection under a point load is
        advice where the panel's own rating spans the joists, that under uniform load where it also stands for it.
    """
    stiffness = panel_stiffness(rules, panel)
    stiff = _stiff_inputs(rules, panel, spacing_in, stiffness)
    per_inch = load_psf * IN_PER_FT / SQ_IN_PER_SQ_FT
    spans = spacing_in <= _longest(rules, panel)
    strip = rules.number("panel.strip")
    return (
        _rating(rules, panel, spacing_in),
        _bending(rules, panel, spacing_in, per_inch),
        deflection_check(
            rules,
            name="panel_uniform",
            rule="panel.deflection.uniform",
            span_in=spacing_in,
            deflection_in=uniform_deflection_in(rules, stiffness, spacing_in, load_psf),
            inputs={
                **stiff,
                "load": measure(load_psf, "psf"),
                "c": measure(rules.number("panel.coefficient.uniform")),
                "w": measure(per_inch, "lb/in"),
            },
            advised=spans and load_psf <= rules.number("panel.rated_load"),
        ),
        deflection_check(
            rules,
            name="panel_point",
            rule="panel.deflection.point",
            span_in=spacing_in,
            deflection_in=point_deflection_in(rules, stiffness, spacing_in),
            inputs={
                **stiff,
                "c": measure(rules.number("panel.coefficient.point")),
                "load": measure(rules.number("panel.load.point"), "lb"),
                "strip": length_in(strip),
                "wide": measure(stiffness * strip / IN_PER_FT, "lb·in²"),
            },
            advised=spans,
        ),
        as_found(rules, "panel_thickest", max(map(thickness_in, panel.layers)), "panel.layer.min"),
    )


def panel_facts(rules: RuleSet, panel: Panel) -> dict[str, Value]:
    """The layers as sold, from below, and their span ratings, as a plan keeps them."""
    return {
        "layers": tuple(Name(name=layer) for layer in panel.layers),
        "ratings": tuple(Name(name=rating) for rating in panel_ratings(rules, panel)),
    }


def _stiff_inputs(rules: RuleSet, panel: Panel, spacing_in: float, stiffness: float) -> dict[str, Value]:
    """What the bending stiffness of one foot of all layers comes from."""
    each = _stiffnesses(rules, panel)
    found: dict[str, Value] = {
        "spacing": length_in(spacing_in),
        **panel_facts(rules, panel),
        "each": tuple(measure(one, "lb·in²") for one in each),
    }
    if len(panel.layers) > 1:
        share = rules.number("panel.composite.share") if panel.glued_and_screwed else 0.0
        found["glued_share" if panel.glued_and_screwed else "not_glued"] = measure(share)
    return {**found, "ei": measure(stiffness, "lb·in²")}


def _rating(rules: RuleSet, panel: Panel, spacing_in: float) -> Check:
    """Joists no farther apart than the panel is rated for on floors."""
    longest = _longest(rules, panel)
    rating = next(one for one in panel_ratings(rules, panel) if rated(rules, one, "span") == longest)
    return Check(
        name="panel_rating",
        found=spacing_in,
        limit=longest,
        at_least=False,
        unit="in",
        rule=_rule_of(rating, "span"),
        inputs={**panel_facts(rules, panel), "rating": Name(name=rating), "entered": bool(panel.ratings)},
    )


def _bending(rules: RuleSet, panel: Panel, spacing_in: float, per_inch: float) -> Check:
    """Bending of one foot of width under uniform load, as a simple span; loose layers add up."""
    ratings = panel_ratings(rules, panel)
    capacities = [rated(rules, rating, "fbs") for rating in ratings]
    return Check(
        name="panel_bending",
        found=per_inch * spacing_in**2 / 8,
        limit=sum(capacities),
        at_least=False,
        unit="lb·in",
        rule=_rule_of(ratings[0], "fbs"),
        inputs={
            "spacing": length_in(spacing_in),
            **panel_facts(rules, panel),
            "w": measure(per_inch, "lb/in"),
            "each": tuple(measure(capacity, "lb·in") for capacity in capacities),
        },
    )


def _rule_of(rating: str, what: str) -> str:
    return f"panel.{what}." + rating.replace(" ", "_").replace("/", "_")
