"""Joists over their whole length: bending, shear, bearing, deflection under live and total load.

Sawn joists are judged in strength and stiffness; engineered and steel ones, given by their EI, in stiffness alone.
A run over several supports is judged by its own coefficients where every span is known. Where only the longest is,
its moment and deflection count as those of a simple span, which is never less, and shear and the middle reaction
are raised, since there a simple span would be too kind.

References:
    AWC National Design Specification for Wood Construction; AWC span tables for joists and rafters.
"""

import math
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability import beams
from firstcourse.suitability.checks import stiffness_text
from firstcourse.suitability.continuous import Coefficients, all_loaded, worst_pattern
from firstcourse.suitability.loads import PartLoad
from firstcourse.suitability.lumber import Lumber
from firstcourse.workings import Working

SQ_IN_PER_SQ_FT = 144
MOST_SPANS = 6
SIMPLE = Coefficients(moment=1 / 8, shear=1 / 2, reaction=1 / 2, deflection=5 / 384)
# Two equal spans, uniform load: end shear 5/8 wL beside the middle support, whose reaction is 5/4 wL.
UNKNOWN_RUN = Coefficients(moment=1 / 8, shear=5 / 8, reaction=5 / 4, deflection=5 / 384)
CODE_LIMIT = "floor.deflection.live_code"
TOTAL_LIMIT = "floor.deflection.total"


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
    """A joist over its whole length, not just under the tile.

    Attributes:
        span_in: Longest clear span, face to face of supports [in].
        spacing_in: Centre to centre [in].
        live_psf: Live load [psf].
        dead_psf: Dead load of all layers and the joist [psf].
        wood: Design values; None for an engineered joist given by `stiffness`.
        stiffness: EI of an engineered or steel joist [lb·in²].
        plies: How many members side by side.
        continuous: Whether it runs unbroken over a support, its other spans not known.
        run_in: Every span in order where all are known, the longest being `span_in` [in]; empty otherwise.
        bearing_in: Length of bearing at the ends [in]; None where not known.
        parts: Lasting loads on parts of the floor, as far as this joist carries them.
    """

    span_in: float
    spacing_in: float
    live_psf: float
    dead_psf: float
    wood: Lumber | None = None
    stiffness: float | None = None
    plies: int = 1
    continuous: bool = False
    run_in: tuple[float, ...] = ()
    bearing_in: float | None = None
    points: tuple[PointLoad, ...] = ()
    parts: tuple[PartLoad, ...] = ()
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
        if self.plies < 1:
            raise InputValueError("joist: plies count from one")
        if self.run_in and (max(self.run_in) != self.span_in or min(self.run_in) <= 0):
            raise InputValueError(f"joist: the longest span of the run must be 'span_in', {self.span_in:g}")
        if len(self.run_in) > MOST_SPANS:
            raise InputValueError(f"joist: a run of more than {MOST_SPANS} spans is not judged")
        if self.bearing_in is not None and self.bearing_in <= 0:
            raise InputValueError(f"joist: 'bearing_in' must be more than zero: {self.bearing_in}")
        if self.sister is not None and not 0 < self.sister.share < 1:
            raise InputValueError(
                f"joist: a part sister covers more than none and less than all: {self.sister.share}"
            )
        if any(not 0 < point.at_in < self.span_in or point.load_lb < 0 for point in self.points):
            raise InputValueError("joist: a point load must stand within the span and press down")
        for part in self.parts:
            if part.load_lb < 0 or part.length_in <= 0 or part.width_in <= 0:
                raise InputValueError(f"joist: the load of '{part.name}' must press down on a length and a width")
            if part.start_in is not None and not 0 <= part.start_in <= self.span_in - part.length_in + 1e-6:
                raise InputValueError(f"joist: '{part.name}' must stand within the span")

    @property
    def ei(self) -> float:
        """Bending stiffness of all plies [lb·in²]."""
        if self.wood is None:
            return (self.stiffness or 0) * self.plies
        return self.wood.e_psi * beams.second_moment(self.wood.width_in * self.plies, self.wood.depth_in)

    @property
    def over_supports(self) -> bool:
        """Whether it runs unbroken over a support between its ends."""
        return self.continuous or len(self.run_in) > 1

    @property
    def under_dead(self) -> Coefficients:
        """Coefficients of a load on every span."""
        if len(self.run_in) > 1:
            return all_loaded(self.run_in)
        return UNKNOWN_RUN if self.continuous else SIMPLE

    @property
    def under_live(self) -> Coefficients:
        """Coefficients of a load on the spans where it does most."""
        return worst_pattern(self.run_in) if len(self.run_in) > 1 else self.under_dead

    @property
    def live_line(self) -> float:
        """Live load along one joist [lb/in]."""
        return self.line_load(self.live_psf)

    @property
    def dead_line(self) -> float:
        """Dead load along one joist [lb/in]."""
        return self.line_load(self.dead_psf)

    def line_load(self, psf: float) -> float:
        """An area load as a load along one joist [lb/in]."""
        return psf * self.spacing_in / SQ_IN_PER_SQ_FT

    def combined(self, effect: str) -> float:
        """Live and dead load times their coefficients of `moment`, `shear` or `reaction` [lb/in].

        The greatest of each are added wherever they stand, so that it is never less than the true one.
        """
        live, dead = getattr(self.under_live, effect), getattr(self.under_dead, effect)
        return float(live * self.live_line + dead * self.dead_line)

    def deflection(self, *, live: bool) -> float:
        """Deflection under live load, or under dead load without point loads, for the longest span [in]."""
        load, by = (self.live_line, self.under_live) if live else (self.dead_line, self.under_dead)
        if self.sister is not None:
            return beams.stepped_uniform_deflection(load, self.span_in, self.ei, 2 * self.ei, self.sister.share)
        return by.deflection * load * self.span_in**4 / self.ei

    def point_deflection(self) -> float:
        """Midspan deflection of a simple span under the lasting point loads, the part sister left out [in]."""
        return sum(beams.point_deflection(p.load_lb, p.at_in, self.span_in, self.ei) for p in self.points)

    def part_moment(self, part: PartLoad) -> float:
        """Greatest moment of a load on a part of a simple span, where it does most if its place is not known."""
        return beams.part_moment(part.line, *part.on(self.span_in), self.span_in)

    def part_end(self, part: PartLoad) -> float:
        """Greatest end force of a load on a part of the span [lb]; over supports all of it is taken."""
        if self.over_supports:
            return part.load_lb
        start, length = part.on(self.span_in)
        if part.start_in is None:
            start = 0.0
        at_start = beams.part_reaction(part.line, start, length, self.span_in)
        return max(at_start, part.line * length - at_start)

    def part_deflection(self, part: PartLoad) -> float:
        """Midspan deflection of a simple span under a load on a part of it, a part sister left out [in]."""
        return beams.part_deflection(part.line, *part.on(self.span_in), self.span_in, self.ei)


def bending_factors(rules: RuleSet, wood: Lumber, spacing_in: float) -> tuple[float, float, float]:
    """Factors on bending for duration (CD), size (CF) and repetition (Cr)."""
    repeated = spacing_in <= rules.number("lumber.repetitive_spacing")
    factor = rules.number("lumber.repetitive_factor") if repeated else 1.0
    return rules.number("lumber.duration.floor"), wood.size_factor, factor


def allowable_bending_psi(rules: RuleSet, wood: Lumber, spacing_in: float) -> float:
    """Bending value with the factors for duration, size and repetition [psi].

    References:
        NDS 4.3.
    """
    return wood.fb_psi * math.prod(bending_factors(rules, wood, spacing_in))


def max_span_in(rules: RuleSet, joist: Joist, divisor: float) -> tuple[float, str]:
    """Longest clear span that holds in bending, shear and live deflection, and which of them governs.

    Args:
        rules: The rule book.
        joist: The joist; its own span counts only as the scale of its run. Point loads are left out, and loads on
            parts of the floor stand where they do most.
        divisor: Span over live-load deflection that must be kept.

    Returns:
        The span [in] and `bending`, `shear` or `live deflection`.
    """
    by = joist.under_live.deflection
    spans = {"live deflection": (joist.ei / (by * joist.live_line * divisor)) ** (1 / 3)}
    if (wood := joist.wood) is not None:
        width = wood.width_in * joist.plies
        allowed = allowable_bending_psi(rules, wood, joist.spacing_in)
        modulus = beams.section_modulus(width, wood.depth_in)
        spans["bending"] = _bending_span(joist, allowed * modulus)
        fv = wood.fv_psi * rules.number("lumber.duration.floor")
        total = joist.live_line + joist.dead_line
        # All of a load on a part may stand against one support.
        left = fv * width * wood.depth_in / 1.5 + total * wood.depth_in - sum(part.load_lb for part in joist.parts)
        spans["shear"] = max(left, 0.0) / joist.combined("shear")
    governs = min(spans, key=lambda name: spans[name])
    return spans[governs], governs


def _bending_span(joist: Joist, moment: float) -> float:
    """Longest span whose moment is no more than a given one: k L² + Σ w c (2 L - c) / 8, solved for L [in]."""
    even = joist.combined("moment")
    slope = sum(part.load_lb for part in joist.parts) / 4
    rest = moment + sum(part.load_lb * part.length_in for part in joist.parts) / 8
    span = (math.sqrt(slope**2 + 4 * even * rest) - slope) / (2 * even)
    if span < max((part.length_in for part in joist.parts), default=0.0):
        # Shorter than what stands on it: that lies on all of the span.
        span = math.sqrt(moment / (even + sum(part.line for part in joist.parts) / 8))
    return span


def section_working(joist: Joist) -> Working:
    """Loads along one joist, its section and stiffness: what every check of it starts from."""
    live, dead = joist.live_line, joist.dead_line
    steps = [
        f"w_live = {joist.live_psf:g} psf × {joist.spacing_in:g} in / {SQ_IN_PER_SQ_FT} = {live:.3f} lb/in",
        f"w_dead = {joist.dead_psf:.2f} psf × {joist.spacing_in:g} in / {SQ_IN_PER_SQ_FT} = {dead:.3f} lb/in",
    ]
    values = {"L": f"{joist.span_in:g} in", "spacing": f"{joist.spacing_in:g} in"}
    if (wood := joist.wood) is not None:
        width, depth = wood.width_in * joist.plies, wood.depth_in
        inertia = beams.second_moment(width, depth)
        steps += [
            f"S = b d² / 6 = {width:g} × {depth:g}² / 6 = {beams.section_modulus(width, depth):.3f} in³",
            f"I = b d³ / 12 = {width:g} × {depth:g}³ / 12 = {inertia:.2f} in⁴",
            f"EI = {wood.e_psi:,.0f} psi × {inertia:.2f} in⁴ = {stiffness_text(joist.ei)} lb·in²",
        ]
        values |= {"joist": wood.name, "plies": str(joist.plies)}
    else:
        steps.append(
            f"EI = {stiffness_text(joist.ei / joist.plies)} lb·in² as entered from the maker × {joist.plies} "
            f"= {stiffness_text(joist.ei)} lb·in²"
        )
    if joist.run_in:
        values["spans in order"] = " + ".join(f"{span:g}" for span in joist.run_in) + " in"
    return Working(
        title="Loads along one joist, section and stiffness",
        formula="w = load × spacing; S = b d² / 6; I = b d³ / 12",
        values=values,
        steps=tuple(steps),
        result=f"{live + dead:.3f}",
        unit="lb/in",
        source=wood.source if wood is not None else "EI as entered from the joist's maker",
        argument=_run_told(joist),
    )


def _run_told(joist: Joist) -> tuple[str, ...]:
    if len(joist.run_in) > 1:
        live, dead = joist.under_live, joist.under_dead
        return (
            f"Coefficients by the theorem of three moments, live load where it does most / dead load everywhere: "
            f"moment {live.moment:.4f} / {dead.moment:.4f}, shear {live.shear:.4f} / {dead.shear:.4f}, "
            f"reaction {live.reaction:.4f} / {dead.reaction:.4f}, "
            f"deflection {live.deflection:.5f} / {dead.deflection:.5f} (as a share of the span it lies in).",
        )
    if joist.continuous:
        return (
            "The joist runs over a support, its other spans not known: moment and deflection as of a simple span, "
            "shear and reaction as beside the middle support of two equal spans (5/8 and 5/4).",
        )
    return ()
