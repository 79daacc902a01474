"""Floor joists by the simple-span method: bending, shear, bearing, deflection under live and total load.

Continuous joists are judged on their longest span as a simple one, which is never less than the true moment or
deflection; shear and the middle reaction are raised, since there a simple span would be too kind.

References:
    AWC National Design Specification for Wood Construction; AWC span tables for joists and rafters.
"""

import math
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability import beams
from firstcourse.suitability.checks import Check, sourced
from firstcourse.suitability.lumber import Lumber
from firstcourse.workings import Working

SQ_IN_PER_SQ_FT = 144
# Two equal spans, uniform load: end shear 5/8 wL beside the middle support, whose reaction is 5/4 wL.
CONTINUOUS_SHEAR = 0.625
CONTINUOUS_REACTION = 1.25
CODE_LIMIT = "floor.deflection.live_code"


@dataclass(frozen=True, slots=True, kw_only=True)
class PointLoad:
    """A lasting load on one joist, such as a filled tub's foot.

    Attributes:
        load_lb: Load on this joist [lb].
        at_in: From one support [in].
    """

    load_lb: float
    at_in: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SisterPart:
    """A second ply over the middle of the span.

    Attributes:
        share: Part of the span it covers, centred, 0 to 1.
    """

    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Joist:
    """A floor joist over its whole length, not just under the tile.

    Attributes:
        span_in: Longest clear span, face to face of supports [in].
        spacing_in: Centre to centre [in].
        live_psf: Live load [psf].
        dead_psf: Dead load of all layers and the joist [psf].
        wood: Design values; None for an engineered joist given by `stiffness`.
        stiffness: EI of an engineered or steel joist [lb·in²].
        plies: How many members side by side.
        spans: How many spans the joist runs over without a joint.
        bearing_in: Length of bearing at the ends [in]; None where not known.
    """

    span_in: float
    spacing_in: float
    live_psf: float
    dead_psf: float
    wood: Lumber | None = None
    stiffness: float | None = None
    plies: int = 1
    spans: int = 1
    bearing_in: float | None = None
    points: tuple[PointLoad, ...] = ()
    sister: SisterPart | None = None

    def __post_init__(self) -> None:
        for name in ("span_in", "spacing_in", "live_psf"):
            value = getattr(self, name)
            if not 0 < value < math.inf:
                raise InputValueError(f"joist: '{name}' must be more than zero and finite: {value}")
        if not 0 <= self.dead_psf < math.inf:
            raise InputValueError(f"joist: 'dead_psf' must be zero or more and finite: {self.dead_psf}")
        if (self.wood is None) == (self.stiffness is None):
            raise InputValueError("joist: give either its lumber or its EI")
        if self.stiffness is not None and not 0 < self.stiffness < math.inf:
            raise InputValueError(f"joist: 'stiffness' must be more than zero and finite: {self.stiffness}")
        if self.plies < 1 or self.spans < 1:
            raise InputValueError("joist: plies and spans count from one")
        if self.bearing_in is not None and self.bearing_in <= 0:
            raise InputValueError(f"joist: 'bearing_in' must be more than zero: {self.bearing_in}")
        if self.sister is not None and not 0 < self.sister.share < 1:
            raise InputValueError(
                f"joist: a part sister covers more than none and less than all: {self.sister.share}"
            )
        if any(not 0 < point.at_in < self.span_in or point.load_lb < 0 for point in self.points):
            raise InputValueError("joist: a point load must stand within the span and press down")

    @property
    def ei(self) -> float:
        """Bending stiffness of all plies [lb·in²]."""
        if self.wood is None:
            return (self.stiffness or 0) * self.plies
        return self.wood.e_psi * beams.second_moment(self.wood.width_in * self.plies, self.wood.depth_in)

    def line_load(self, psf: float) -> float:
        """An area load as a load along one joist [lb/in]."""
        return psf * self.spacing_in / SQ_IN_PER_SQ_FT

    def deflection(self, psf: float) -> float:
        """Midspan deflection under an area load [in]."""
        load = self.line_load(psf)
        if self.sister is None:
            return beams.uniform_deflection(load, self.span_in, self.ei)
        return beams.stepped_uniform_deflection(load, self.span_in, self.ei, 2 * self.ei, self.sister.share)

    def point_deflection(self) -> float:
        """Midspan deflection under the lasting point loads, the part sister left out [in]."""
        return sum(beams.point_deflection(p.load_lb, p.at_in, self.span_in, self.ei) for p in self.points)


def allowable_bending_psi(rules: RuleSet, wood: Lumber, spacing_in: float) -> float:
    """Bending value with the factors for duration, size and repetition [psi].

    References:
        NDS 4.3.
    """
    repeated = spacing_in <= rules.number("lumber.repetitive_spacing")
    factor = rules.number("lumber.repetitive_factor") if repeated else 1.0
    return wood.fb_psi * wood.size_factor * factor * rules.number("lumber.duration.floor")


def max_span_in(rules: RuleSet, joist: Joist, divisor: float) -> tuple[float, str]:
    """Longest clear span that holds in bending, shear and live deflection, and which of them governs.

    Args:
        rules: The rule book.
        joist: The joist; its own span and point loads are left out.
        divisor: Span over live-load deflection that must be kept.

    Returns:
        The span [in] and `bending`, `shear` or `live deflection`.
    """
    live, total = joist.line_load(joist.live_psf), joist.line_load(joist.live_psf + joist.dead_psf)
    spans = {"live deflection": (384 * joist.ei / (5 * live * divisor)) ** (1 / 3)}
    if (wood := joist.wood) is not None:
        width = wood.width_in * joist.plies
        allowed = allowable_bending_psi(rules, wood, joist.spacing_in)
        spans["bending"] = math.sqrt(8 * allowed * beams.section_modulus(width, wood.depth_in) / total)
        fv = wood.fv_psi * rules.number("lumber.duration.floor")
        spans["shear"] = 2 * (fv * width * wood.depth_in / 1.5 / total + wood.depth_in)
    governs = min(spans, key=lambda name: spans[name])
    return spans[governs], governs


def check_joist(rules: RuleSet, joist: Joist, limit_rules: tuple[str, ...]) -> tuple[Check, ...]:
    """Every check of one joist, each with its working.

    Args:
        rules: The rule book.
        joist: The joist.
        limit_rules: Ids of the live-deflection limits to hold against, the finish's and the code's.

    Returns:
        Strength checks where design values are known, then live deflection against each limit, then total.
    """
    strength = () if joist.wood is None else _strength(rules, joist, joist.wood)
    live = tuple(_live(rules, joist, rule) for rule in dict.fromkeys(limit_rules))
    return (*strength, *live, _total(rules, joist))


def _strength(rules: RuleSet, joist: Joist, wood: Lumber) -> tuple[Check, ...]:
    load = joist.line_load(joist.live_psf + joist.dead_psf)
    width, depth, span = wood.width_in * joist.plies, wood.depth_in, joist.span_in
    # The greatest of each load's moments are added wherever they stand: never less than the true one.
    moment = beams.uniform_moment(load, span) + sum(
        beams.point_moment(p.load_lb, p.at_in, span) for p in joist.points
    )
    modulus = beams.section_modulus(width, depth)
    allowed = allowable_bending_psi(rules, wood, joist.spacing_in)
    stress = moment / modulus
    if joist.sister is not None:
        middle = stress / 2
        end = span * (1 - joist.sister.share) / 2
        at_end = (
            load * end * (span - end) / 2 + sum(beams.point_moment(p.load_lb, p.at_in, span) for p in joist.points)
        ) / modulus
        stress = max(middle, at_end)
    shear_share = 0.5 if joist.spans == 1 else CONTINUOUS_SHEAR
    ends = sum(p.load_lb * max(p.at_in, span - p.at_in) / span for p in joist.points)
    shear = load * max(shear_share * span - depth, 0) + ends
    shear_stress = 1.5 * shear / (width * depth)
    shear_allowed = wood.fv_psi * rules.number("lumber.duration.floor")
    checks = [
        Check(
            name="bending",
            found=stress,
            limit=allowed,
            at_least=False,
            unit="psi",
            rule="",
            source=wood.source,
            working=Working(
                title="Bending stress",
                formula="fb = (w L² / 8 + Σ P a b / L) / S ≤ Fb · CD · CF · Cr",
                values={
                    "w": f"{load:.3f} lb/in",
                    "L": f"{span:g} in",
                    "S": f"{modulus:.2f} in³",
                    "Fb": f"{wood.fb_psi:g} psi",
                    "CF": f"{wood.size_factor:g}",
                    "point loads": f"{sum(p.load_lb for p in joist.points):g} lb",
                    "Fb'": f"{allowed:.0f} psi",
                },
                result=f"{stress:.0f}",
                unit="psi",
                source=wood.source,
                argument=("A part sister is checked at its own ends too.",) if joist.sister else (),
            ),
        ),
        Check(
            name="shear",
            found=shear_stress,
            limit=shear_allowed,
            at_least=False,
            unit="psi",
            rule="",
            source=wood.source,
            working=Working(
                title="Shear stress",
                formula="fv = 1.5 V / (b d), V at a joist's depth from the support",
                values={"V": f"{shear:.0f} lb", "b": f"{width:g} in", "d": f"{depth:g} in"},
                result=f"{shear_stress:.0f}",
                unit="psi",
                source=wood.source,
            ),
        ),
    ]
    if joist.bearing_in is not None:
        reaction = load * span / 2 * (1 if joist.spans == 1 else 2 * CONTINUOUS_REACTION) + ends
        pressure = reaction / (width * joist.bearing_in)
        checks.append(
            Check(
                name="bearing",
                found=pressure,
                limit=wood.fc_perp_psi,
                at_least=False,
                unit="psi",
                rule="",
                source=wood.source,
                working=Working(
                    title="Bearing pressure",
                    formula="fc = R / (b · bearing)",
                    values={
                        "R": f"{reaction:.0f} lb",
                        "b": f"{width:g} in",
                        "bearing": f"{joist.bearing_in:g} in",
                    },
                    result=f"{pressure:.0f}",
                    unit="psi",
                    source=wood.source,
                ),
            )
        )
        least = rules.entry("floor.bearing.min")
        checks.append(
            Check(
                name="bearing length",
                found=joist.bearing_in,
                limit=rules.number(least.id),
                at_least=True,
                unit="in",
                rule=least.id,
                source=sourced(least),
                working=Working(
                    title="Bearing length",
                    formula="as found",
                    result=f"{joist.bearing_in:g}",
                    unit="in",
                    source=sourced(least),
                ),
            )
        )
    return tuple(checks)


def _live(rules: RuleSet, joist: Joist, rule: str) -> Check:
    limit = rules.entry(rule)
    deflection = joist.deflection(joist.live_psf)
    return Check(
        name=f"live deflection ({'code' if rule == CODE_LIMIT else 'finish'})",
        found=joist.span_in / deflection,
        limit=rules.number(rule),
        at_least=True,
        unit="L/x",
        rule=rule,
        source=sourced(limit),
        working=Working(
            title="Live-load deflection",
            formula=_formula(joist, "w_live"),
            values={
                **_values(joist),
                "w_live": f"{joist.line_load(joist.live_psf):.3f} lb/in",
                "deflection": f"{deflection:.3f} in",
            },
            result=f"L/{int(joist.span_in / deflection)}",
            unit="",
            source=sourced(limit),
        ),
    )


def _total(rules: RuleSet, joist: Joist) -> Check:
    limit = rules.entry("floor.deflection.total")
    dead = joist.deflection(joist.dead_psf) + joist.point_deflection()
    total = joist.deflection(joist.live_psf) + dead
    creep = joist.deflection(joist.live_psf) + rules.number("lumber.creep_factor") * dead
    return Check(
        name="total deflection",
        found=joist.span_in / total,
        limit=rules.number(limit.id),
        at_least=True,
        unit="L/x",
        rule=limit.id,
        source=sourced(limit),
        working=Working(
            title="Deflection under live and dead load",
            formula=_formula(joist, "w_total") + " + point loads",
            values={
                **_values(joist),
                "w_total": f"{joist.line_load(joist.live_psf + joist.dead_psf):.3f} lb/in",
                "deflection": f"{total:.3f} in",
            },
            result=f"L/{int(joist.span_in / total)}",
            unit="",
            source=sourced(limit),
            argument=(f"With creep of the dead load in the long term: {creep:.3f} in.",),
        ),
    )


def _formula(joist: Joist, load: str) -> str:
    if joist.sister is None:
        return f"Δ = 5 {load} L⁴ / (384 E I)"
    return (
        f"Δ = 2 ∫ M x / (2 E I) dx to midspan, EI doubled over the middle {joist.sister.share:.0%}, under {load}"
    )


def _values(joist: Joist) -> dict[str, str]:
    return {"L": f"{joist.span_in:g} in", "spacing": f"{joist.spacing_in:g} in", "EI": f"{joist.ei:.4g} lb·in²"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A notch or hole found in a joist.

    Attributes:
        kind: `notch`, `end_notch` or `hole`.
        size_in: Depth of the notch, or diameter of the hole [in].
        at_in: Its centre from the nearer support [in].
        length_in: Length of a notch along the joist [in].
        edge_in: Hole: least distance to the joist's edge or to another cut [in].
    """

    kind: str
    size_in: float
    at_in: float
    length_in: float = 0.0
    edge_in: float = math.inf


def cut_problems(rules: RuleSet, depth_in: float, span_in: float, cut: Cut) -> tuple[str, ...]:
    """What the code forbids about a notch or hole; empty where it may stay.

    Args:
        rules: The rule book.
        depth_in: Depth of the joist [in].
        span_in: Clear span [in].
        cut: The notch or hole.
    """
    problems = []
    if cut.kind == "hole":
        largest = depth_in * rules.number("joist.hole.share")
        if cut.size_in > largest:
            problems.append(f"hole of {cut.size_in:g} in is wider than {largest:.2f} in")
        if cut.edge_in < rules.number("joist.hole.edge"):
            problems.append(f"hole lies {cut.edge_in:g} in from an edge or another cut")
    elif cut.kind in ("notch", "end_notch"):
        share = "joist.notch.end_share" if cut.kind == "end_notch" else "joist.notch.depth_share"
        deepest = depth_in * rules.number(share)
        if cut.size_in > deepest:
            problems.append(f"notch of {cut.size_in:g} in is deeper than {deepest:.2f} in")
        if cut.kind == "notch":
            if span_in / 3 < cut.at_in < span_in * 2 / 3:
                problems.append("notch lies in the middle third of the span")
            longest = depth_in * rules.number("joist.notch.length_share")
            if cut.length_in > longest:
                problems.append(f"notch of {cut.length_in:g} in is longer than {longest:.2f} in")
    else:
        raise InputValueError(f"a cut in a joist is a notch, an end_notch or a hole, not '{cut.kind}'")
    return tuple(problems)
