"""Loads on a part of a joist's span: each effect as a line of a sheet that can be done again by hand."""

from firstcourse.suitability import beams
from firstcourse.suitability.checks import deflection_text, stiffness_text
from firstcourse.suitability.joists import Joist
from firstcourse.suitability.loads import PartLoad


def part_moment_step(joist: Joist, part: PartLoad) -> str:
    """The greatest moment of a load on a part of the span."""
    span, (start, length) = joist.span_in, part.on(joist.span_in)
    moment = joist.part_moment(part)
    if part.start_in is None:
        return (
            f"+ {part.name}, {length:g} in of it in the middle: w c (2 L - c) / 8 = {part.line:.4f} × "
            f"{length:g} × (2 × {span:g} - {length:g}) / 8 = {moment:,.0f} lb·in"
        )
    reaction = beams.part_reaction(part.line, start, length, span)
    return (
        f"+ {part.name}, from {start:g} to {start + length:g} in: R a + R² / (2 w), R = w c (L - a - c / 2) / L = "
        f"{reaction:.2f} lb: {reaction:.2f} × {start:g} + {reaction:.2f}² / (2 × {part.line:.4f}) = "
        f"{moment:,.0f} lb·in"
    )


def part_end_step(joist: Joist, part: PartLoad) -> str:
    """The greatest end force of a load on a part of the span."""
    span, (start, length) = joist.span_in, part.on(joist.span_in)
    force = joist.part_end(part)
    if joist.over_supports:
        return f"{part.name}: all of it, the joist running over supports, {force:,.1f} lb"
    if part.start_in is None:
        return (
            f"{part.name}, against a support: w c (1 - c / (2 L)) = {part.line:.4f} × {length:g} × "
            f"(1 - {length:g} / (2 × {span:g})) = {force:,.1f} lb"
        )
    middle = max(span - start - length / 2, start + length / 2)
    return (
        f"{part.name}, at the support that is nearer: w c × {middle:g} / L = {part.line:.4f} × {length:g} × "
        f"{middle:g} / {span:g} = {force:,.1f} lb"
    )


def part_deflection_step(joist: Joist, part: PartLoad) -> str:
    """The midspan deflection of a load on a part of the span."""
    span, (start, length) = joist.span_in, part.on(joist.span_in)
    result, stiffness = joist.part_deflection(part), stiffness_text(joist.ei)
    if part.start_in is None:
        return (
            f"{part.name}, in the middle: Δ = w c (8 L³ - 4 L c² + c³) / (384 EI) = {part.line:.4f} × "
            f"{length:g} × (8 × {span:g}³ - 4 × {span:g} × {length:g}² + {length:g}³) / "
            f"(384 × {stiffness}) = {deflection_text(result)} in"
        )
    half, right = span / 2, span - start
    ends = [min(start + length, half), min(start, half), min(right, half), min(right - length, half)]
    sums = [beams.part_integral(end, span) for end in ends]
    return (
        f"{part.name}: Δ = w (G1 - G2 + G3 - G4) / EI, G = x² (1.5 L² - x²) / 48 at x = "
        f"{', '.join(f'{end:g}' for end in ends)} in: {part.line:.4f} × ({sums[0]:,.0f} - {sums[1]:,.0f} + "
        f"{sums[2]:,.0f} - {sums[3]:,.0f}) / {stiffness} = {deflection_text(result)} in"
    )
