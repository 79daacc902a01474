"""Beams over several supports by their slopes there, and what stands on parts of one span."""

from collections.abc import Sequence
from functools import cache
from itertools import pairwise, product
from typing import NamedTuple

import numpy as np

from firstcourse.verify.load_fields import JoistLoad

_STATIONS = 400
"""Places along a span at which the deflection of a run is looked at, as its sheet says."""


class Effects(NamedTuple):
    """Greatest effects of an even load by the longest span: see `by_load`."""

    moment: float
    shear: float
    reaction: float
    deflection: float


ONE_SPAN = Effects(0.125, 0.5, 0.5, 5 / 384)
BESIDE_A_SUPPORT = Effects(0.125, 0.625, 1.25, 5 / 384)
"""Of an unbroken joist whose other spans are not known, beside the middle support of two equal spans."""


def by_load(run: Sequence[float], *, unbroken: bool) -> tuple[Effects, Effects]:
    """Effects of live load, on whichever spans it does most, and of dead load, on every span.

    Moment by w L², shear and reaction by w L, deflection as a share of the span it lies in by w L³ / EI.
    """
    if len(run) > 1:
        return _worst(tuple(run)), _of(tuple(run), (1,) * len(run))
    one = BESIDE_A_SUPPORT if unbroken else ONE_SPAN
    return one, one


@cache
def _worst(run: tuple[float, ...]) -> Effects:
    each = [_of(run, loaded) for loaded in product((0, 1), repeat=len(run)) if any(loaded)]
    return Effects(*(max(column) for column in zip(*each, strict=True)))


@cache
def _of(run: tuple[float, ...], loaded: tuple[int, ...]) -> Effects:
    """Under unit load on some spans: slopes at the supports from the balance of moments there, EI being one."""
    count = len(run)
    stiffness, fixed = np.zeros((count + 1, count + 1)), np.zeros(count + 1)
    for at, (span, load) in enumerate(zip(run, loaded, strict=True)):
        stiffness[at : at + 2, at : at + 2] += np.array(((4, 2), (2, 4))) / span
        fixed[at : at + 2] += np.array((-1, 1)) * load * span**2 / 12
    slopes = np.linalg.solve(stiffness, -fixed)
    longest, reactions = max(run), np.zeros(count + 1)
    moment = shear = deflection = 0.0
    for at, (span, load) in enumerate(zip(run, loaded, strict=True)):
        near, far = slopes[at], slopes[at + 1]
        # Sagging moments at both ends of the span.
        left = 2 / span * (2 * near + far) - load * span**2 / 12
        right = -(2 / span * (near + 2 * far) + load * span**2 / 12)
        begin = load * span / 2 + (right - left) / span
        reactions[at] += begin
        reactions[at + 1] += load * span - begin
        shear = max(shear, abs(begin), abs(load * span - begin))
        peak = left + begin**2 / (2 * load) if load and 0 < begin < span * load else 0.0
        moment = max(moment, abs(left), abs(right), abs(peak))
        x = np.linspace(0, span, _STATIONS + 1)
        # From the slope at the near support, downward: y'' = -M.
        sag = near * x - left * x**2 / 2 - begin * x**3 / 6 + load * x**4 / 24
        deflection = max(deflection, float(sag.max()) / span)
    return Effects(
        float(moment) / longest**2,
        float(shear) / longest,
        float(reactions.max()) / longest,
        deflection / longest**3,
    )


class PartEffects(NamedTuple):
    """Of a load on a part of a simple span: its line load, length and start there, and its effects.

    Moment [lb·in], end force [lb], deflection at midspan times EI [lb·in³]; the lever of the end force [in].
    """

    line: float
    length: float
    start: float
    moment: float
    end: float
    sag: float
    lever: float


def part_effects(part: JoistLoad, span: float) -> PartEffects:
    """Effects of a load on a part of a simple span; where its place is not known, each where it is greatest."""
    line, length = part.pounds / part.length, min(part.length, span)
    start = (span - length) / 2 if part.start is None else part.start
    middle = start + length / 2
    lever = max(middle, span - middle) if part.start is not None else span - length / 2
    left = line * length * (span - middle) / span
    # Shear is nothing where the load to the left balances the reaction.
    moment = left * (start + left / line / 2) if line else 0.0
    ends = sorted({start, min(max(span / 2, start), start + length), start + length})
    sag = sum(_integral(a, b, span) for a, b in pairwise(ends))
    return PartEffects(line, length, start, moment, line * length * lever / span, line * sag, lever)


def _integral(a: float, b: float, span: float) -> float:
    """Of what a unit load bends midspan, over places on one half of the span; Simpson's rule, exact for cubics."""
    return (b - a) / 6 * (bends(a, span) + 4 * bends((a + b) / 2, span) + bends(b, span))


def bends(at: float, span: float) -> float:
    """How far midspan goes under a unit load at a place, times EI."""
    near = min(at, span - at)
    return near * (3 * span**2 - 4 * near**2) / 48
