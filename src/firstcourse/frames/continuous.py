"""Joists that run unbroken over several supports: coefficients of moment, shear, reaction and deflection.

References:
    Clapeyron's theorem of three moments. For equal spans it gives the coefficients of published beam diagrams.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import product

STATIONS = 400
"""Points along a span at which deflection is looked at; the greatest is then found to a part in ten thousand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coefficients:
    """Greatest effects of a uniform load `w` on members of stiffness `EI`, by the longest span `L`.

    Attributes:
        moment: Of w·L², sagging or hogging.
        shear: Of w·L.
        reaction: Of w·L, at any support.
        deflection: Of w·L³/EI: the deflection as a share of the span that it lies in.
    """

    moment: float
    shear: float
    reaction: float
    deflection: float


@cache
def all_loaded(spans: tuple[float, ...]) -> Coefficients:
    """Every span loaded alike, as by dead load.

    Args:
        spans: Every span in order, in any unit of length.

    Example:
        >>> round(all_loaded((10.0, 10.0)).moment, 4)
        0.125
    """
    return of_loads(spans, (1.0,) * len(spans))


@cache
def worst_pattern(spans: tuple[float, ...]) -> Coefficients:
    """Live load on whichever spans make each effect greatest.

    Args:
        spans: Every span in order, in any unit of length.
    """
    found = [of_loads(spans, loads) for loads in product((0.0, 1.0), repeat=len(spans)) if any(loads)]
    return Coefficients(
        moment=max(one.moment for one in found),
        shear=max(one.shear for one in found),
        reaction=max(one.reaction for one in found),
        deflection=max(one.deflection for one in found),
    )


def of_loads(spans: tuple[float, ...], loads: tuple[float, ...]) -> Coefficients:
    """Some spans loaded.

    Args:
        spans: Every span in order, in any unit of length.
        loads: Share of the load on each span, 0 or 1.
    """
    longest = max(spans)
    at = _support_moments(spans, loads)
    moment, shear, deflection = max(abs(value) for value in at), 0.0, 0.0
    reactions = [0.0] * (len(spans) + 1)
    for number, (span, load) in enumerate(zip(spans, loads, strict=True)):
        left, right = at[number], at[number + 1]
        begin = load * span / 2 + (right - left) / span
        end = load * span - begin
        reactions[number] += begin
        reactions[number + 1] += end
        shear = max(shear, abs(begin), abs(end))
        if load and 0 < begin / load < span:
            moment = max(moment, abs(left + begin**2 / (2 * load)))
        deflection = max(deflection, max(_deflections(span, load, left, right)) / span)
    return Coefficients(
        moment=moment / longest**2,
        shear=shear / longest,
        reaction=max(reactions) / longest,
        deflection=deflection / longest**3,
    )


def _deflections(span: float, load: float, left: float, right: float) -> Iterator[float]:
    """Downward deflection at stations along a span, times EI; sagging moments are plus."""
    for station in range(STATIONS + 1):
        x = span * station / STATIONS
        yield (
            load * x * (span**3 - 2 * span * x**2 + x**3) / 24
            + left * x * (span - x) * (2 * span - x) / (6 * span)
            + right * x * (span - x) * (span + x) / (6 * span)
        )


def _support_moments(spans: tuple[float, ...], loads: tuple[float, ...]) -> list[float]:
    """Moments over the supports, zero at both ends, by the theorem of three moments; sagging is plus."""
    inner = len(spans) - 1
    if inner == 0:
        return [0.0, 0.0]
    diagonal = [2 * (spans[i] + spans[i + 1]) for i in range(inner)]
    given = [-(loads[i] * spans[i] ** 3 + loads[i + 1] * spans[i + 1] ** 3) / 4 for i in range(inner)]
    for i in range(1, inner):
        share = spans[i] / diagonal[i - 1]
        diagonal[i] -= share * spans[i]
        given[i] -= share * given[i - 1]
    moments = [0.0] * (inner + 2)
    for i in reversed(range(inner)):
        moments[i + 1] = (given[i] - spans[i + 1] * moments[i + 2]) / diagonal[i]
    return moments
