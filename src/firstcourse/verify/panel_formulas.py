"""Panels judged again by their span ratings: spacing, bending, and deflection between joists."""

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from firstcourse.rules import RuleSet
from firstcourse.verify.frame_fields import Frame, Line
from firstcourse.verify.printed import first_number
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_LAYER = re.compile(r"(?P<thickness>[\d/-]+) in \((?P<rating>\d+(?: oc|/\d+))\)")
_NEAR = 0.01
"""Loads are printed to three figures; each may move a result by so much."""
_HALF_MARK = 1 / 32
_MEAN = "mean dead load of a joist"
"""Beside design values that hold, the reach of the code's tables is advice."""
_EVEN, _POINT = "panel under uniform load", "panel under a point load"


def check_panel_lines(
    frame: Frame, lines: Mapping[str, Line], plan: Document, more: float = 0.0
) -> Iterator[Objection]:
    """Object to a panel's line that its layers, spacing and loads do not bear out, and to a limit as advice."""
    facts = dict(frame.facts)
    layers = [
        (found["thickness"], found["rating"]) for found in _LAYER.finditer(facts.get("panel on the joists", ""))
    ]
    spacing, live, dead = (
        first_number(facts.get(name, "")) for name in ("joists, centre to centre", "live load", "dead load")
    )
    allowed = frozenset({_MEAN})
    if layers and spacing and live is not None and dead is not None:
        try:
            psf = live + dead + more
            found, longest = _found(layers, facts, spacing, psf, plan.rules)
        except (KeyError, LookupError, ValueError, ZeroDivisionError) as error:
            yield Objection("VER-918", frame.where, f"its panel cannot be judged again: {error}")
            return
        if spacing <= longest:
            rated = psf <= plan.rules.number("panel.rated_load")
            allowed |= {_POINT, _EVEN} if rated else {_POINT}
        for name, (value, limit) in found.items():
            yield from _line(frame, lines.get(name), name, value, limit)
    for line in frame.lines:
        if line.advised and line.name not in allowed:
            yield Objection("VER-918", frame.where, f"{line.name}: is said to be advice, and is a limit")


def _line(frame: Frame, line: Line | None, name: str, value: float, limit: float | None) -> Iterator[Objection]:
    if line is None:
        yield Objection("VER-918", frame.where, f"{name}: is not on the sheet")
        return
    said = first_number(line.text)
    loss = _HALF_MARK if name == "panel span rating" else 1.0
    if said is not None and abs(said - value) > _NEAR * value + loss:
        yield Objection("VER-918", frame.where, f"{name}: {line.text} said, {value:.4g} by its facts")
    if limit is not None and (line.limit is None or abs(line.limit - limit) > _NEAR * limit):
        yield Objection(
            "VER-918", frame.where, f"{name}: held against {line.limit_text}, its ratings give {limit:g}"
        )


def _found(
    layers: list[tuple[str, str]], facts: Mapping[str, str], spacing: float, psf: float, rules: RuleSet
) -> tuple[dict[str, tuple[float, float | None]], float]:
    """Value and limit of each line, and the widest spacing that the ratings span [in]."""
    ei, fbs, spans = ([_rated(rules, rating, what) for _, rating in layers] for what in ("ei", "fbs", "span"))
    stiffness = sum(ei)
    if len(layers) > 1 and facts["panel on the joists"].endswith(", glued and screwed"):
        thick = [_inches(name) for name, _ in layers]
        solid = min(one / own**3 for one, own in zip(ei, thick, strict=True)) * sum(thick) ** 3
        stiffness += rules.number("panel.composite.share") * max(solid - stiffness, 0)
    per_inch = psf * 12 / 144
    even = rules.number("panel.coefficient.uniform") * per_inch * spacing**4 / stiffness
    wide = stiffness * rules.number("panel.strip") / 12
    point = rules.number("panel.coefficient.point") * rules.number("panel.load.point") * spacing**3 / wide
    return {
        "panel span rating": (spacing, max(spans)),
        "panel bending": (per_inch * spacing**2 / 8, sum(fbs)),
        "panel under uniform load": (spacing / even, rules.number("panel.deflection.uniform")),
        "panel under a point load": (spacing / point, rules.number("panel.deflection.point")),
    }, max(spans)


def _rated(rules: RuleSet, rating: str, what: str) -> float:
    return rules.number(f"panel.{what}." + rating.replace(" ", "_").replace("/", "_"))


def _inches(thickness: str) -> float:
    whole, _, part = thickness.rpartition("-")
    return float(Fraction(part)) + (int(whole) if whole else 0)
