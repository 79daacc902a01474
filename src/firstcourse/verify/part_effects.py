"""Effects of loads on parts of a simple span, joist by joist, by formulas of the verifier's own."""

from collections.abc import Iterator, Sequence

from firstcourse.verify.load_fields import JoistLoad

_STEPS = 400
"""Slices of a load whose place is known, each taken as a point load for the deflection."""

type Effects = tuple[float, float, float]
"""Greatest moment [lb·in], greatest end force [lb], midspan deflection times EI [lb·in³]."""


def part_effects(parts: Sequence[JoistLoad], span: float, *, unbroken: bool = False) -> Iterator[Effects]:
    """The effects on each joist, the greatest of each part added.

    Args:
        parts: Loads on parts of joists.
        span: Of the joists [in].
        unbroken: They run over a support, to which all of each load may go.
    """
    for joist in sorted({part.joist for part in parts}):
        each = [_effects(part, span) for part in parts if part.joist == joist]
        ends = sum(part.pounds for part in parts if part.joist == joist)
        yield (
            sum(one[0] for one in each),
            ends if unbroken else sum(one[1] for one in each),
            sum(one[2] for one in each),
        )


def _effects(part: JoistLoad, span: float) -> Effects:
    line, length = part.pounds / part.length, min(part.length, span)
    if part.start is None:
        moment = line * length * (2 * span - length) / 8
        sag = line * length * (8 * span**3 - 4 * span * length**2 + length**3) / 384
        return moment, line * length * (1 - length / (2 * span)), sag
    middle = part.start + length / 2
    left = line * length * (span - middle) / span
    at = part.start + (left / line if line else 0.0)
    moment = left * at - line * (at - part.start) ** 2 / 2
    sag = 0.0
    for number in range(_STEPS):
        place = part.start + length * (number + 0.5) / _STEPS
        near = min(place, span - place)
        sag += line * length / _STEPS * near * (3 * span**2 - 4 * near**2) / 48
    return moment, max(left, line * length - left), sag
