"""Notches and holes in joists held against the code's limits again."""

from collections.abc import Iterator

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_INCH
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, inches, word
from firstcourse.verify.formulas.lumber import Wood
from firstcourse.verify.frame_fields import CutFound, Found


def cut_lines(rules: RuleSet, found: Found, sawn: Wood | None, cut: CutFound, number: int) -> Iterator[Derived]:
    """Each limit of a notch or hole in a sawn joist; engineered ones are their maker's."""
    if sawn is None:
        return

    def line(size: float, rule: str, limit: float, *, at_least: bool = False, **inputs: Wanted) -> Derived:
        what = rule.removeprefix("joist.").replace(".", "_")
        return Derived(
            formula="frames-cut_share" if inputs else "frames-cut_as_found",
            also=(f"cut/{number}", f"rule/{rule}"),
            name=what,
            inputs={"kind": word(cut.kind), "number": number, "what": word(what), **inputs},
            result=inches(size),
            limit=inches(limit),
            at_least=at_least,
            rule=rule,
        )

    def share(size: float, rule: str, whole: float, called: str = "depth") -> Derived:
        part = rules.number(rule)
        return line(size, rule, part * whole, share=Number(part), of=word(called), whole=inches(whole))

    depth = sawn.depth
    if cut.kind == "hole":
        yield share(cut.size, "joist.hole.share", depth)
        edge = rules.ticks("joist.hole.edge") / TICKS_PER_INCH
        yield line(float("inf") if cut.edge is None else cut.edge, "joist.hole.edge", edge, at_least=True)
    elif cut.kind == "end_notch" and cut.place <= depth * rules.number("joist.notch.end_reach"):
        yield share(cut.size, "joist.notch.end_share", depth)
    else:
        yield share(cut.size, "joist.notch.depth_share", depth)
        yield share(cut.length, "joist.notch.length_share", depth)
        reach = min(cut.place, found.span - cut.place) + cut.length / 2
        yield share(reach, "joist.notch.clear_share", found.span, "span")
        if cut.in_bottom:
            yield line(sawn.width, "joist.notch.thick", rules.ticks("joist.notch.thick") / TICKS_PER_INCH)


def cut_facts(cuts: tuple[CutFound, ...]) -> dict[str, Wanted]:
    """Cuts as they stand among the facts."""
    if not cuts:
        return {}
    return {
        "cuts": [word(cut.kind) for cut in cuts],
        "cut_sizes": [inches(cut.size) for cut in cuts],
        "cut_places": [inches(cut.place) for cut in cuts],
        "cut_lengths": [inches(cut.length) for cut in cuts],
        "cut_edges": [word("none") if cut.edge is None else inches(cut.edge) for cut in cuts],
        "cut_bottoms": [cut.in_bottom for cut in cuts],
    }
