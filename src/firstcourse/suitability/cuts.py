"""Notches and holes in sawn joists against the code's limits."""

import math
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import Check, length_check
from firstcourse.units import inches_beside
from firstcourse.workings import Working

KINDS = ("notch", "end_notch", "hole")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A notch or hole found in a joist.

    Attributes:
        kind: `notch`, `end_notch` or `hole`.
        size_in: Depth of the notch, or diameter of the hole [in].
        at_in: Its centre from the nearer support [in].
        length_in: Length of a notch along the joist [in].
        edge_in: Hole: least distance to the joist's edge or to another cut [in].
        in_bottom: The notch is in the bottom of the joist, which is stretched.
    """

    kind: str
    size_in: float
    at_in: float
    length_in: float = 0.0
    edge_in: float = math.inf
    in_bottom: bool = False


def cut_checks(
    rules: RuleSet, width_in: float, depth_in: float, span_in: float, cut: Cut, name: str
) -> tuple[Check, ...]:
    """Every limit that the code sets for a notch or hole.

    A notch said to be at the end that lies further from its support than the joist is deep counts as any other.

    Args:
        rules: The rule book.
        width_in: Thickness of one joist [in].
        depth_in: Depth of the joist [in].
        span_in: Clear span [in].
        cut: The notch or hole.
        name: What the cut is called, such as `notch 1`.

    Raises:
        InputValueError: The kind of cut is not known.

    References:
        International Residential Code, R502.8.1.
    """
    if cut.kind not in KINDS:
        raise InputValueError(f"a cut in a joist is a notch, an end_notch or a hole, not '{cut.kind}'")

    def share(what: str, found: float, rule: str, *, of: float = depth_in, symbol: str = "d") -> Check:
        limit = rules.number(rule) * of
        return Check(
            name=f"{name}, {what}",
            found=found,
            limit=limit,
            at_least=False,
            unit="in",
            rule=rule,
            source=rules.entry(rule).cited,
            working=Working(
                title=f"{name[0].upper()}{name[1:]}, {what}",
                formula=f"at most {rules.number(rule):.4g} {symbol}",
                steps=(f"{rules.number(rule):.4g} × {of:g} in = {limit:.2f} in",),
                result=inches_beside(found, limit),
                unit="in",
                source=rules.entry(rule).cited,
            ),
        )

    if cut.kind == "hole":
        what = "distance to an edge or another cut"
        title = f"{name[0].upper()}{name[1:]}, {what}"
        return (
            share("diameter", cut.size_in, "joist.hole.share"),
            length_check(rules, name=f"{name}, {what}", title=title, found=cut.edge_in, rule="joist.hole.edge"),
        )
    if cut.kind == "end_notch" and cut.at_in <= depth_in * rules.number("joist.notch.end_reach"):
        return (share("depth", cut.size_in, "joist.notch.end_share"),)
    # Its end nearer to midspan counts: a notch that reaches into the middle third lies in it.
    reach = min(cut.at_in, span_in - cut.at_in) + cut.length_in / 2
    checks = [
        share("depth", cut.size_in, "joist.notch.depth_share"),
        share("length", cut.length_in, "joist.notch.length_share"),
        share("reach from the nearer support", reach, "joist.notch.clear_share", of=span_in, symbol="L"),
    ]
    if cut.in_bottom:
        what = "thickness of the joist where it is stretched"
        checks.append(
            length_check(
                rules,
                name=f"{name}, {what}",
                title=f"{name[0].upper()}{name[1:]}, {what}",
                found=width_in,
                rule="joist.notch.thick",
                at_least=False,
            )
        )
    return tuple(checks)
