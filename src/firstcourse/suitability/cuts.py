"""Notches and holes in sawn joists against the code's limits."""

import math
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet

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


@dataclass(frozen=True, slots=True, kw_only=True)
class CutProblem:
    """What the code forbids about a cut.

    Attributes:
        what: In words, with the value found and the limit.
        rule: Id of the rule that sets the limit.
    """

    what: str
    rule: str


def cut_problems(
    rules: RuleSet, width_in: float, depth_in: float, span_in: float, cut: Cut
) -> tuple[CutProblem, ...]:
    """What the code forbids about a notch or hole; empty where it may stay.

    A notch said to be at the end that lies further from its support than the joist is deep counts as any other.

    Args:
        rules: The rule book.
        width_in: Thickness of one joist [in].
        depth_in: Depth of the joist [in].
        span_in: Clear span [in].
        cut: The notch or hole.

    Raises:
        InputValueError: The kind of cut is not known.

    References:
        International Residential Code, R502.8.1.
    """
    if cut.kind not in KINDS:
        raise InputValueError(f"a cut in a joist is a notch, an end_notch or a hole, not '{cut.kind}'")
    if cut.kind == "hole":
        return _hole(rules, depth_in, cut)
    at_end = cut.kind == "end_notch" and cut.at_in <= depth_in * rules.number("joist.notch.end_reach")
    return _end_notch(rules, depth_in, cut) if at_end else _notch(rules, width_in, depth_in, span_in, cut)


def _hole(rules: RuleSet, depth_in: float, cut: Cut) -> tuple[CutProblem, ...]:
    problems = []
    largest, edge = depth_in * rules.number("joist.hole.share"), rules.number("joist.hole.edge")
    if cut.size_in > largest:
        what = f"hole of {cut.size_in:g} in is wider than {largest:.2f} in, a third of the depth"
        problems.append(CutProblem(what=what, rule="joist.hole.share"))
    if cut.edge_in < edge:
        what = f"hole lies {cut.edge_in:g} in from an edge or another cut, less than {edge:g} in"
        problems.append(CutProblem(what=what, rule="joist.hole.edge"))
    return tuple(problems)


def _end_notch(rules: RuleSet, depth_in: float, cut: Cut) -> tuple[CutProblem, ...]:
    deepest = depth_in * rules.number("joist.notch.end_share")
    if cut.size_in <= deepest:
        return ()
    what = f"notch of {cut.size_in:g} in at the end is deeper than {deepest:.2f} in, a quarter of the depth"
    return (CutProblem(what=what, rule="joist.notch.end_share"),)


def _notch(rules: RuleSet, width_in: float, depth_in: float, span_in: float, cut: Cut) -> tuple[CutProblem, ...]:
    problems = []
    deepest = depth_in * rules.number("joist.notch.depth_share")
    longest = depth_in * rules.number("joist.notch.length_share")
    clear = span_in * rules.number("joist.notch.clear_share")
    if cut.size_in > deepest:
        what = f"notch of {cut.size_in:g} in is deeper than {deepest:.2f} in, a sixth of the depth"
        problems.append(CutProblem(what=what, rule="joist.notch.depth_share"))
    if cut.length_in > longest:
        what = f"notch of {cut.length_in:g} in is longer than {longest:.2f} in, a third of the depth"
        problems.append(CutProblem(what=what, rule="joist.notch.length_share"))
    # Its nearer end counts: a notch that reaches into the middle third lies in it.
    if clear < cut.at_in + cut.length_in / 2 and cut.at_in - cut.length_in / 2 < span_in - clear:
        problems.append(
            CutProblem(what="notch lies in the middle third of the span", rule="joist.notch.clear_share")
        )
    if cut.in_bottom and width_in >= rules.number("joist.notch.thick"):
        what = f"notch in the bottom of a joist {width_in:g} in thick, away from its ends"
        problems.append(CutProblem(what=what, rule="joist.notch.thick"))
    return tuple(problems)
