"""Notches and holes in sawn joists against the code's limits."""

import math
from dataclasses import dataclass, replace

from firstcourse.errors import InputValueError
from firstcourse.frames.checks import Check, as_found
from firstcourse.rules import RuleSet
from firstcourse.values import Value, Word, length_in, measure

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
    rules: RuleSet, width_in: float, depth_in: float, span_in: float, cut: Cut, number: int
) -> tuple[Check, ...]:
    """Every limit that the code sets for a notch or hole.

    A notch said to be at the end that lies further from its support than the joist is deep counts as any other.

    Args:
        rules: The rule book.
        width_in: Thickness of one joist [in].
        depth_in: Depth of the joist [in].
        span_in: Clear span [in].
        cut: The notch or hole.
        number: Of this cut among the floor's, from one.

    Raises:
        InputValueError: The kind of cut is not known.

    References:
        International Residential Code, R502.8.1.
    """
    if cut.kind not in KINDS:
        raise InputValueError(f"a cut in a joist is a notch, an end_notch or a hole, not '{cut.kind}'")

    def named(check: Check, formula: str, **inputs: Value) -> Check:
        what = check.rule.removeprefix("joist.").replace(".", "_")
        named: dict[str, Value] = {"kind": Word(word=cut.kind), "number": number, "what": Word(word=what)}
        return replace(
            check, name=what, inputs=named | inputs, formula=formula, also=(f"cut/{number}", f"rule/{check.rule}")
        )

    def share(found: float, rule: str, of: str = "depth") -> Check:
        part, whole = rules.number(rule), depth_in if of == "depth" else span_in
        check = Check(name="", found=found, limit=part * whole, at_least=False, unit="in", rule=rule)
        return named(check, "cut_share", share=measure(part), of=Word(word=of), whole=length_in(whole))

    def plain(found: float, rule: str, *, at_least: bool) -> Check:
        return named(as_found(rules, "", found, rule, at_least=at_least), "cut_as_found")

    if cut.kind == "hole":
        return share(cut.size_in, "joist.hole.share"), plain(cut.edge_in, "joist.hole.edge", at_least=True)
    if cut.kind == "end_notch" and cut.at_in <= depth_in * rules.number("joist.notch.end_reach"):
        return (share(cut.size_in, "joist.notch.end_share"),)
    # Its end nearer to midspan counts: a notch that reaches into the middle third lies in it.
    reach = min(cut.at_in, span_in - cut.at_in) + cut.length_in / 2
    checks = [
        share(cut.size_in, "joist.notch.depth_share"),
        share(cut.length_in, "joist.notch.length_share"),
        share(reach, "joist.notch.clear_share", "span"),
    ]
    if cut.in_bottom:
        checks.append(plain(width_in, "joist.notch.thick", at_least=False))
    return tuple(checks)
