"""The panel between joists: its span rating, bending, the uniform load, and a concentrated load at mid-bay.

A panel bends and bears by its span rating: as entered, else the least that is sold in its thickness. Backer board
counts as no stiffness. Layers act together only where they are glued and screwed.

Where a panel's own rating spans the joists, deflection between them is advice beside it: the rating was earned by
tests of whole panels, and no calculation on a strip of one may overrule it.
"""

from dataclasses import dataclass
from fractions import Fraction

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import Check, deflection_check, deflection_text, length_check, quantity
from firstcourse.workings import Working

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
    rule = f"panel.{what}." + rating.replace(" ", "_").replace("/", "_")
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
    values = {"s": f"{spacing_in:g} in", "layers": rated_layers(rules, panel)}
    strip, load = rules.number("panel.strip"), rules.number("panel.load.point")
    layers = _stiffness_step(rules, panel, stiffness)
    wide = stiffness * strip / IN_PER_FT
    per_inch = load_psf * IN_PER_FT / SQ_IN_PER_SQ_FT
    point = point_deflection_in(rules, stiffness, spacing_in)
    even = uniform_deflection_in(rules, stiffness, spacing_in, load_psf)
    thickest = max(panel.layers, key=thickness_in)
    spans = spacing_in <= _longest(rules, panel)
    return (
        _rating(rules, panel, spacing_in),
        _bending(rules, panel, spacing_in, per_inch),
        deflection_check(
            rules,
            name="panel under uniform load",
            title="Deflection between joists under uniform load",
            formula="Δ = 5 w s⁴ / (384 EI)",
            rule="panel.deflection.uniform",
            span_in=spacing_in,
            deflection_in=even,
            values={**values, "w": f"{load_psf:.1f} psf, live and dead"},
            advised=spans and load_psf <= rules.number("panel.rated_load"),
            steps=(
                layers,
                f"Δ = 5 × {per_inch:.3f} lb/in × {spacing_in:g}⁴ / (384 × {stiffness:,.0f}) "
                f"= {deflection_text(even, 5)} in",
                f"s / Δ = {spacing_in:g} / {deflection_text(even, 5)} = {spacing_in / even:.0f}",
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
            advised=spans,
            steps=(
                layers,
                f"Δ = {rules.number('panel.coefficient.point'):g} × {load:g} × {spacing_in:g}³ / {wide:,.0f} "
                f"= {deflection_text(point)} in",
                f"s / Δ = {spacing_in:g} / {deflection_text(point)} = {spacing_in / point:.1f}",
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


def rated_layers(rules: RuleSet, panel: Panel) -> str:
    """The layers with their ratings, such as `23/32 in (24 oc) + 19/32 in (20 oc)`."""
    ratings = panel_ratings(rules, panel)
    return " + ".join(f"{layer} in ({rating})" for layer, rating in zip(panel.layers, ratings, strict=True))


def _rating(rules: RuleSet, panel: Panel, spacing_in: float) -> Check:
    """Joists no farther apart than the panel is rated for on floors."""
    longest = _longest(rules, panel)
    rating = next(one for one in panel_ratings(rules, panel) if rated(rules, one, "span") == longest)
    source = rules.entry("panel.span." + rating.replace(" ", "_").replace("/", "_"))
    taken = "as entered" if panel.ratings else "the least sold in its thickness; read the stamp and enter it"
    return Check(
        name="panel span rating",
        found=spacing_in,
        limit=longest,
        at_least=False,
        unit="in",
        rule=source.id,
        source=source.cited,
        working=Working(
            title="Joist spacing against the panel's span rating",
            formula="joist spacing ≤ the floor span of the panel's rating",
            values={"layers": rated_layers(rules, panel), "rating": f"{rating}, {taken}"},
            result=f"{spacing_in:g}",
            unit="in",
            source=source.cited,
        ),
    )


def _bending(rules: RuleSet, panel: Panel, spacing_in: float, per_inch: float) -> Check:
    """Bending of one foot of width under uniform load, as a simple span; loose layers add up."""
    ratings = panel_ratings(rules, panel)
    capacities = [rated(rules, rating, "fbs") for rating in ratings]
    moment = per_inch * spacing_in**2 / 8
    entry = rules.entry("panel.fbs." + ratings[0].replace(" ", "_").replace("/", "_"))
    parts = " + ".join(f"{capacity:,.0f}" for capacity in capacities)
    return Check(
        name="panel bending",
        found=moment,
        limit=sum(capacities),
        at_least=False,
        unit="lb·in",
        rule=entry.id,
        source=entry.cited,
        working=Working(
            title="Bending of the panel between joists, one foot of width",
            formula="M = w s² / 8 ≤ the bending capacity of each layer, added",
            values={"s": f"{spacing_in:g} in", "layers": rated_layers(rules, panel)},
            steps=(
                f"M = {per_inch:.3f} lb/in × {spacing_in:g}² / 8 = {moment:,.0f} lb·in",
                f"Fb S = {parts} = {sum(capacities):,.0f} lb·in",
            ),
            result=quantity(moment, ""),
            unit="lb·in",
            source=entry.cited,
        ),
    )


def _stiffness_step(rules: RuleSet, panel: Panel, stiffness: float) -> str:
    parts = " + ".join(f"{one:,.0f}" for one in _stiffnesses(rules, panel))
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
