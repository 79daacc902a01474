"""How far joists may span, derived again: the span at which each of bending, shear and live deflection is full."""

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import Derived, Number, inches, word
from firstcourse.verify.formulas.joists import Joist, bears_in_bending


def longest(rules: RuleSet, joist: Joist, divisor: float) -> tuple[dict[str, float], str]:
    """Longest spans by bending, shear and live deflection [in], and which is the least.

    Loads on parts stand where they do most, and all of them may stand against one support.
    """
    spans = {"live_deflection": (joist.ei / (joist.by_load[0].deflection * joist.w_live * divisor)) ** (1 / 3)}
    if (sawn := joist.wood) is not None:
        moment = bears_in_bending(rules, joist, sawn) * joist.width * sawn.depth**2 / 6
        spans["bending"] = _span_of(joist, moment)
        capacity = sawn.fv * rules.number("lumber.duration.floor") * joist.width * sawn.depth * 2 / 3
        left = capacity + joist.w * sawn.depth - sum(part.pounds for part in joist.parts)
        spans["shear"] = max(left, 0.0) / joist.even("shear")
    return spans, min(spans, key=lambda one: spans[one])


def _span_of(joist: Joist, moment: float) -> float:
    """Span whose greatest moment is this, by halving: the even load and each part in the middle [in]."""

    def of(span: float) -> float:
        return joist.even("moment") * span**2 + sum(
            part.pounds / part.length * min(part.length, span) * (2 * span - min(part.length, span)) / 8
            for part in joist.parts
        )

    low, high = 0.0, 1.0
    while of(high) < moment:
        high *= 2
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if of(middle) < moment else (low, middle)
    return high


def longest_line(rules: RuleSet, joist: Joist, divisor: float) -> Derived:
    """How far the joists may span."""
    spans, governs = longest(rules, joist, divisor)
    return Derived(
        formula="frames-longest_span",
        inputs={
            "span": inches(joist.found.span),
            "dead": Number(joist.dead, "psf"),
            **{key: inches(span) for key, span in spans.items()},
            "governs": word(governs),
        },
        result=inches(spans[governs]),
    )
