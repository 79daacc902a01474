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
from firstcourse.frames import beams
from firstcourse.frames.continuous import Coefficients, all_loaded, worst_pattern
from firstcourse.frames.loads import PartLoad
from firstcourse.frames.lumber import Lumber
from firstcourse.rules import RuleSet

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
                raise InputValueError(f"joist: the load of '{part.of}' must press down on a length and a width")
            if part.start_in is not None and not 0 <= part.start_in <= self.span_in - part.length_in + 1e-6:
                raise InputValueError(f"joist: '{part.of}' must stand within the span")
        if len({part.start_in is None for part in self.parts}) > 1:
            raise InputValueError("joist: where loads on parts stand is known of all or of none")

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


def max_spans_in(rules: RuleSet, joist: Joist, divisor: float) -> dict[str, float]:
    """Longest clear spans that hold in bending, in shear and in live deflection.

    Args:
        rules: The rule book.
        joist: The joist; its own span counts only as the scale of its run. Point loads are left out, and loads on
            parts of the floor stand where they do most.
        divisor: Span over live-load deflection that must be kept.

    Returns:
        Spans [in] by `bending`, `shear` and `live_deflection`.
    """
    by = joist.under_live.deflection
    spans = {"live_deflection": (joist.ei / (by * joist.live_line * divisor)) ** (1 / 3)}
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
    return spans


def governing(spans: dict[str, float]) -> str:
    """Which of `max_spans_in` governs: the least."""
    return min(spans, key=lambda name: spans[name])


def _bending_span(joist: Joist, moment: float) -> float:
    """Longest span whose moment is no more than a given one: k L² + Σ w c (2 L - c) / 8, solved for L [in].

    What is longer than that lies on all of the span.
    """
    even, parts = joist.combined("moment"), list(joist.parts)
    while True:
        slope = sum(part.load_lb for part in parts) / 4
        rest = moment + sum(part.load_lb * part.length_in for part in parts) / 8
        span = (math.sqrt(slope**2 + 4 * even * rest) - slope) / (2 * even)
        longer = [part for part in parts if part.length_in > span]
        if not longer:
            return span
        even += sum(part.line for part in longer) / 8
        parts = [part for part in parts if part not in longer]
