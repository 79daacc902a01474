"""What would make a failing floor pass: each option is re-run through the same checks, then ranked.

Ranking is by height lost, then material, then labour, in the rule book's relative figures; it is a help to choose,
not a price.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from itertools import combinations

from firstcourse.frames.checks import Check
from firstcourse.frames.floors import Finish, FloorInput, check_floor
from firstcourse.frames.joists import MOST_SPANS, SisterPart
from firstcourse.frames.panels import Panel, panel_ratings, thickness_in
from firstcourse.layers import MORTAR_BED, TILE
from firstcourse.rules import RuleSet
from firstcourse.values import Value

MOST_MEASURES = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedy:
    """One option, computed.

    Attributes:
        names: The measures it is made of, as rule-book names.
        passes: Whether every check holds with it.
        height_in: Height it adds to the floor [in]; negative where it saves height.
        material: Relative material, for ranking.
        labour_h: Relative labour, for ranking [h].
        still_failing: Checks that fail even so, by code.
        checks: Every check of the floor with it.
        values: What else its words need, by name.
    """

    names: tuple[str, ...]
    passes: bool
    height_in: float
    material: float
    labour_h: float
    still_failing: tuple[str, ...]
    checks: tuple[Check, ...]
    values: Mapping[str, Value] = field(default_factory=dict)


def computed_remedies[Member](
    rules: RuleSet,
    member: Member,
    measures: Mapping[str, Callable[[RuleSet, Member], Member | None]],
    check: Callable[[RuleSet, Member], tuple[Check, ...]],
    height: Callable[[Member], float],
    pointless: Callable[[tuple[str, ...]], bool] = lambda _names: False,
) -> tuple[Remedy, ...]:
    """Single measures, and sets of two and three of which no smaller set is enough.

    Args:
        rules: The rule book.
        member: A floor, wall or ceiling as found.
        measures: Rule-book name to what it makes of the member; None where it cannot be taken.
        check: Every check of such a member.
        height: Height or depth that it takes up [in].
        pointless: Whether a set of measures is not worth trying.

    Returns:
        Those that pass first, by height lost, material and labour; then single measures that do not pass, so that
        it is seen what does not help. Empty where the member already passes.
    """
    if all(one.stands for one in check(rules, member)):
        return ()
    passing: list[Remedy] = []
    failing: list[Remedy] = []
    for count in range(1, MOST_MEASURES + 1):
        for names in combinations(measures, count):
            if any(set(enough.names) < set(names) for enough in passing) or (count > 1 and pointless(names)):
                continue
            changed: Member | None = member
            for name in names:
                changed = None if changed is None else measures[name](rules, changed)
            if changed is None:
                continue
            remedy = _remedy(rules, names, check(rules, changed), height(changed) - height(member))
            if remedy.passes:
                passing.append(remedy)
            elif count == 1:
                failing.append(remedy)
    return (*sorted(passing, key=_rank), *sorted(failing, key=_rank))


def floor_remedies(rules: RuleSet, floor: FloorInput) -> tuple[Remedy, ...]:
    """What would make a floor pass, as `computed_remedies` ranks it."""
    return computed_remedies(rules, floor, _MEASURES, check_floor, _height, _pointless)


def _pointless(names: tuple[str, ...]) -> bool:
    clashing = ({"sister_full", "sister_part"}, {"sister_part", "mid_support"})
    return "blocking" in names or any(both <= set(names) for both in clashing)


def _rank(remedy: Remedy) -> tuple[float, float, float, tuple[str, ...]]:
    # What floats leave of nothing is no height.
    return round(remedy.height_in, 9), remedy.material, remedy.labour_h, remedy.names


def _remedy(rules: RuleSet, names: tuple[str, ...], checks: tuple[Check, ...], height_in: float) -> Remedy:
    failing = tuple(check.name for check in checks if not check.stands)
    return Remedy(
        names=names,
        passes=not failing,
        height_in=height_in,
        material=sum(rules.number(f"remedy.{name}.material") for name in names),
        labour_h=sum(rules.number(f"remedy.{name}.labour") for name in names),
        still_failing=tuple(dict.fromkeys(failing)),
        checks=checks,
    )


def _height(floor: FloorInput) -> float:
    return floor.panel.thickness_in + sum(layer.thickness_in for layer in floor.layers)


def _sister_full(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    return replace(floor, plies=floor.plies * 2, sister=None) if floor.size else None


def _sister_part(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    if not floor.size or floor.sister is not None:
        return None
    return replace(floor, sister=SisterPart(share=rules.number("remedy.sister_part.share")))


def _mid_support(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    half = floor.span_in / 2
    # A load on the far half stands as far from its own outer support; one over the new support bends nothing.
    near = [replace(point, at_in=min(point.at_in, floor.span_in - point.at_in)) for point in floor.points]
    points = tuple(point for point in near if point.at_in < half)
    run = tuple(part for span in floor.run_in or (floor.span_in,) for part in (span / 2, span / 2))
    if len(run) > MOST_SPANS:
        return None
    # Joists whose other spans are not known stay so.
    known = () if floor.continuous and not floor.run_in else run
    # What stands on a part of the floor may then lie on either half.
    joists = tuple(
        replace(loads, parts=tuple(replace(part, start_in=None) for part in loads.parts)) for loads in floor.joists
    )
    return replace(floor, span_in=half, run_in=known, points=points, joists=joists, sister=None)


def _added_joists(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    half = floor.spacing_in / 2
    joists = tuple(
        replace(loads, parts=tuple(part.narrowed(half) for part in loads.parts)) for loads in floor.joists
    )
    return replace(floor, spacing_in=half, joists=joists)


def second_layer(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    """The floor with a second panel layer screwed to its only one; None where it has two already."""
    panel, added = floor.panel, rules.text("remedy.second_layer.thickness")
    if len(panel.layers) > 1:
        return None
    # The added layer is of the least rating of its thickness; the first keeps what was entered of it.
    own = (*panel_ratings(rules, panel), *panel_ratings(rules, Panel(layers=(added,))))
    thick = (panel.thickness_in, thickness_in(added))
    return replace(floor, panel=replace(panel, layers=(*panel.layers, added), ratings=own, true_in=thick))


def _thinner_bed(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    thin = rules.number("remedy.thinner_bed.thickness")
    layers = tuple(
        replace(layer, thickness_in=min(layer.thickness_in, thin)) if layer.name == MORTAR_BED else layer
        for layer in floor.layers
    )
    return None if layers == floor.layers else replace(floor, layers=layers)


def _other_finish(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    if floor.finish is not Finish.STONE:
        return None
    layers = tuple(
        replace(layer, density_kg_m3=rules.number("mass.tile")) if layer.name == TILE else layer
        for layer in floor.layers
    )
    return replace(floor, finish=Finish.CERAMIC, layers=layers)


def _blocking(rules: RuleSet, floor: FloorInput) -> FloorInput | None:
    return floor


_MEASURES: dict[str, Callable[[RuleSet, FloorInput], FloorInput | None]] = {
    "sister_full": _sister_full,
    "sister_part": _sister_part,
    "mid_support": _mid_support,
    "added_joists": _added_joists,
    "second_layer": second_layer,
    "thinner_bed": _thinner_bed,
    "other_finish": _other_finish,
    "blocking": _blocking,
}
