"""Straight beams: section values, moments, reactions and deflections, in any one consistent set of units.

Inches, pounds and psi, or millimetres, newtons and N/mm2, serve alike; no number of a trade or code is in here.

References:
    Textbook beam formulas.
"""


def section_modulus(width: float, depth: float) -> float:
    """Section modulus of a rectangle about its strong axis [length³].

    Example:
        >>> round(section_modulus(1.5, 9.25), 2)
        21.39
    """
    return width * depth**2 / 6


def second_moment(width: float, depth: float) -> float:
    """Second moment of area of a rectangle about its strong axis [length⁴]."""
    return width * depth**3 / 12


def uniform_deflection(load: float, span: float, stiffness: float) -> float:
    """Midspan deflection of a simple span under `load` per length; `stiffness` is EI."""
    return 5 * load * span**4 / (384 * stiffness)


def point_moment(load: float, at: float, span: float) -> float:
    """Moment under a point load `at` a distance from one support of a simple span."""
    return load * at * (span - at) / span


def point_deflection(load: float, at: float, span: float, stiffness: float) -> float:
    """Midspan deflection of a simple span under a point load; `stiffness` is EI."""
    near = min(at, span - at)
    return load * near * (3 * span**2 - 4 * near**2) / (48 * stiffness)


def part_reaction(load: float, start: float, length: float, span: float) -> float:
    """Reaction at the support that `start` is measured from, under `load` per length on a part of a span."""
    return load * length * (span - start - length / 2) / span


def part_moment(load: float, start: float, length: float, span: float) -> float:
    """Greatest moment under `load` per length over a part of a simple span.

    Example:
        >>> part_moment(1.0, 0.0, 10.0, 10.0)
        12.5
    """
    reaction = part_reaction(load, start, length, span)
    return reaction * start + reaction**2 / (2 * load) if load else 0.0


def part_deflection(load: float, start: float, length: float, span: float, stiffness: float) -> float:
    """Midspan deflection under `load` per length over a part of a simple span; `stiffness` is EI.

    The influence of a point load on midspan, added up along the part from either support to midspan.
    """
    from_left = part_integral(min(start + length, span / 2), span) - part_integral(min(start, span / 2), span)
    right = span - start
    from_right = part_integral(min(right, span / 2), span) - part_integral(min(right - length, span / 2), span)
    return load * (from_left + from_right) / stiffness


def part_integral(to: float, span: float) -> float:
    """Integral of x (3 L² - 4 x²) / 48 from a support to `to`, midspan at most [length⁴]."""
    return to**2 * (1.5 * span**2 - to**2) / 48


def stepped_uniform_deflection(
    load: float, span: float, stiffness_ends: float, stiffness_middle: float, share: float
) -> float:
    """Midspan deflection of a simple span whose middle part is stiffer; `share` of the span, centred.

    Virtual work: twice the integral of M(x)·x/2 over EI from the support to midspan.
    """
    end = stepped_integral(load, span, span * (1 - share) / 2)
    return 2 * (end / stiffness_ends + (stepped_integral(load, span, span / 2) - end) / stiffness_middle)


def stepped_integral(load: float, span: float, to: float) -> float:
    """Integral of M(x)·x/2 from a support of a simple span under `load` per length [load · length³]."""
    return load / 4 * (span * to**3 / 3 - to**4 / 4)
