"""How few sheets any layout the rules allow could take: surfaces as ground for courses, sheets shared or not."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import product
from math import ceil, gcd, prod
from typing import NamedTuple

import shapely

from firstcourse.boards import board_region, limits_of, runs_along
from firstcourse.cutting import GapGround, Gaps, Span, StockSize, most_gaps
from firstcourse.findings import Finding
from firstcourse.geometry import axis_near, bounds, sides
from firstcourse.job import Job
from firstcourse.plan import FieldBound, LayoutBound, SideKind, Stock, SupportKind, Surface
from firstcourse.rules import RuleSet
from firstcourse.sheets.cut import kept_sizes, stock_sizes
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.values import Measure, Ref, Value, currency_of, length, measure, money
from firstcourse.workings import Working

MOST_MIXES = 50_000
"""With more ways to mix sheets than this, their cost is bounded by area at the best rate alone."""
_SQ_TICKS = TICKS_PER_MM**2
_ROUNDING = 2
"""Ticks by which rounding may move an edge."""


class Shared(NamedTuple):
    """A boarded surface and the sheets it may be boarded with."""

    surface: Surface
    stock: tuple[Stock, ...]


def layout_bounds(
    shared: Sequence[Shared],
    stock: Sequence[Stock],
    used: dict[str, int],
    findings: Sequence[Finding],
    job: Job,
    rules: RuleSet,
) -> tuple[LayoutBound, ...]:
    """Bound the sheets and their cost over every layout, for each set of surfaces that can share sheets.

    What is up already takes no sheet: the ground is what it leaves.

    What holds: boards lie in courses, along or across; they and the gaps between them cover the ground; none is
    narrower than the rule asks, or than the narrowest of this plan; joints that need a member lie on one that is
    there or that the plan adds; joints of neighbouring courses are staggered, unless the plan says that they
    cannot be. All else that the rules ask is left out, which only lowers the bound.

    Args:
        shared: Boarded surfaces; those without boards count nothing.
        stock: All sheets of the job.
        used: Sheets bought, by stock.
        findings: On the boards of these surfaces.
        job: For its tape, prices and offcuts.
        rules: Rules in force.
    """
    found = []
    for names in _sets(shared):
        own = [item for item in stock if item.id in names]
        members = [
            item
            for item in shared
            if any(not board.fixed for board in item.surface.boards) and {s.id for s in item.stock} <= names
        ]
        most = max(max(item.size) for item in own)
        fields = tuple(field_bound(item.surface, most, findings, rules, job.tape) for item in members)
        if not fields:
            continue
        kept = kept_sizes(own, job)
        rest = sum(field.least for field in fields) * _SQ_TICKS - sum(k.w * k.h for k in kept)
        largest = max(item.size[0] * item.size[1] for item in own)
        bought = sum(used.get(item.id, 0) for item in own)
        fewest = max(0, -(-rest // largest))
        cost = least_cost = None
        if all(item.price for item in stock):
            sizes = stock_sizes(own, stock)
            cost = sum(size.cost * used.get(size.id, 0) for size in sizes) / 100
            least_cost = least_price(rest, sizes)[0] / 100
        found.append(
            LayoutBound(
                stocks=tuple(item.id for item in own),
                surfaces=fields,
                kept=_up(sum(k.w * k.h for k in kept)),
                used=bought,
                lower_bound=fewest,
                proven=bought == fewest,
                cost=cost,
                least_cost=least_cost,
            )
        )
    return tuple(found)


def field_bound(
    surface: Surface, most: int, findings: Sequence[Finding], rules: RuleSet, tape: Tape
) -> FieldBound:
    """The least area of board that one surface takes.

    Ground that is no rectangle is taken as part of the rectangle round it. A gap beside ground that stays open
    bounds no board; so ground within a gap's width of it is not counted as covered at all, and joints on both
    sides of an opening need no stagger. Nor is ground counted that the widest gap at a wall may leave open.

    Args:
        surface: With its boards, and the members that are there or added.
        most: Longest side of any sheet [ticks].
        findings: On its boards.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.
    """
    region, _ = board_region(surface, rules, tape.graduation)
    limits = limits_of(rules, tape.graduation)
    left, lower, right, upper = (round(side) for side in region.bounds)
    box = shapely.box(left, lower, right, upper)
    left_to_do = [bounds(board.outline) for board in surface.boards if not board.fixed]
    narrowest = min(min(c - a, d - b) for a, b, c, d in left_to_do)
    side = min(limits.least_piece, narrowest)
    laid = _laid(surface)
    whole = nearly_rectangle(region, side) and nearly_rectangle(laid, side)
    open_ground = shapely.make_valid(box.difference(region))
    covered = region if whole else region.difference(open_ground.buffer(limits.gap, join_style="mitre"))
    # What is filled beside boards, and where nothing lies on either side of a joint, no layout has to cover.
    covered = covered.intersection(laid).difference(_may_stay_open(surface, rules))
    relaxed = {f.code for f in findings if f.at[0] == surface.id} & {"BRD-201", "BRD-202"}
    stagger = limits.stagger if whole and not relaxed else 0
    along_u, along_v = (_places(surface, across, rules, limits.gap) for across in ("v", "u"))

    def gaps(length: int, across: int, breaks: tuple[Span, ...], joints: tuple[Span, ...]) -> Gaps:
        return most_gaps(
            GapGround(
                length=length,
                across=across,
                gap=limits.gap,
                least=side,
                most=most,
                breaks=breaks,
                joints=joints,
                stagger=stagger,
            )
        )

    # Where gaps at walls give, boards reach farther, and a seam may stand farther out.
    give = rules.ticks("boards.gap.perimeter") - rules.ticks("boards.gap.perimeter.least")
    wall = bounds(surface.outline)
    left, lower = max(left - give, wall[0]), max(lower - give, wall[1])
    right, upper = min(right + give, wall[2]), min(upper + give, wall[3])
    ways = (
        gaps(right - left, upper - lower, _moved(along_u, -left), _moved(along_v, -lower)),
        gaps(upper - lower, right - left, _moved(along_v, -lower), _moved(along_u, -left)),
    )
    largest = max(ways, key=lambda way: way.area)
    ground, taken = int(covered.area) // _SQ_TICKS, _up(largest.area)
    return FieldBound(
        surface=surface.id,
        covered=ground,
        gaps=min(taken, ground),
        least=max(0, ground - taken),
        side=side,
        courses=largest.courses,
        alone=largest.alone,
        pair=largest.pair,
    )


def _may_stay_open(surface: Surface, rules: RuleSet) -> shapely.Geometry:
    """Ground along walls and ceilings that boards may leave open where that saves a cut too thin to snap."""
    most = rules.ticks("boards.gap.perimeter.most")
    return shapely.union_all(
        [
            shapely.LineString([a, b]).buffer(most, cap_style="square")
            for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
            if side.kind is SideKind.PERIMETER and axis_near(a, b)
        ]
    )


def _laid(surface: Surface) -> shapely.Geometry:
    """What boards and the seams between them cover, without the slits that rounding leaves."""
    shapes = [shapely.Polygon(board.outline, board.holes) for board in surface.boards]
    shapes += [
        shapely.LineString(seam.line).buffer(seam.width / 2, cap_style="flat", join_style="mitre")
        for seam in surface.seams
    ]
    joined = shapely.union_all(shapes)
    return joined.buffer(_ROUNDING, join_style="mitre").buffer(-_ROUNDING, join_style="mitre")


def nearly_rectangle(region: shapely.Geometry, side: int) -> bool:
    """Whether a region has no recess, and every side slopes by less than the least board is wide.

    Then each joint runs the whole height of its course, as in a rectangle.
    """
    left, lower, right, upper = region.bounds
    if right - left <= 2 * side or upper - lower <= 2 * side:
        inner = shapely.box(left, lower, right, upper)
    else:
        inner = shapely.box(left + side, lower + side, right - side, upper - side)
    convex = region.convex_hull.area - region.area < _ROUNDING * region.length
    return bool(convex and region.buffer(_ROUNDING).covers(inner))


def _places(surface: Surface, axis: str, rules: RuleSet, gap: int) -> tuple[Span, ...]:
    """Where a gap that runs along `axis` may start: anywhere, or where a member carries both boards."""
    across = 0 if axis == "v" else 1
    _, _, right, upper = bounds(surface.outline)
    carried = any(support.kind is SupportKind.PANEL for support in surface.supports)
    if surface.framing_axis != axis or carried:
        return ((0, max(right, upper)),)
    faces: list[Span] = []
    boxes = [bounds(support.outline) for support in surface.supports if runs_along(support, surface)]
    for start, end in sorted((box[across], box[across + 2]) for box in boxes):
        if faces and start <= faces[-1][1] + 2 * _ROUNDING:
            faces[-1] = (faces[-1][0], max(end, faces[-1][1]))
        else:
            faces.append((start, end))
    bearing = rules.ticks("boards.bearing.min") - _ROUNDING
    return tuple(
        (start + bearing, end - bearing - gap) for start, end in faces if end - start >= 2 * bearing + gap
    )


def _moved(places: tuple[Span, ...], by: int) -> tuple[Span, ...]:
    return tuple((start + by, end + by) for start, end in places)


def least_price(area: int, sizes: Sequence[StockSize]) -> tuple[int, dict[str, int]]:
    """The least that sheets of this area together can cost, and how many of each that is.

    Args:
        area: To be cut, kept offcuts taken off [ticks²].
        sizes: Sheets that can be bought, with their cost.

    Returns:
        The cost in hundredths, and sheets by stock; none are named where too many mixes would have to be tried.
    """
    if area <= 0:
        return 0, {}
    *others, best = sorted(sizes, key=lambda s: Fraction(s.w * s.h, s.cost))
    step = gcd(*(size.cost for size in sizes))
    most = [-(-area // (size.w * size.h)) for size in others]
    if prod(number + 1 for number in most) > MOST_MIXES:
        return ceil(Fraction(area * best.cost, best.w * best.h) / step) * step, {}
    found = []
    for mix in product(*(range(number + 1) for number in most)):
        rest = area - sum(n * size.w * size.h for n, size in zip(mix, others, strict=True))
        cost = sum(n * size.cost for n, size in zip(mix, others, strict=True))
        last = max(0, -(-rest // (best.w * best.h)))
        found.append((cost + best.cost * last, (*mix, last)))
    cost, numbers = min(found)
    return cost, {size.id: n for n, size in zip(numbers, (*others, best), strict=True) if n}


def _sets(shared: Sequence[Shared]) -> list[set[str]]:
    """Stocks in sets of which no surface may be boarded with more than one."""
    sets: list[set[str]] = []
    for item in shared:
        names = {sheet.id for sheet in item.stock}
        for other in [entry for entry in sets if entry & names]:
            sets.remove(other)
            names |= other
        if names:
            sets.append(names)
    return sets


def _up(area: int) -> int:
    return -(-area // _SQ_TICKS)


def every_layout(bound: LayoutBound, stock: Sequence[Stock], job: Job, rules: RuleSet) -> Working:
    """A bound with what it rests on, for an argument that needs no knowledge of the method.

    Where different sheets with prices serve the same surfaces, money decides; else the number of sheets does.
    """
    own = [item for item in stock if item.id in bound.stocks]
    by_cost = len(own) > 1 and bound.least_cost is not None
    rest = max(0, sum(field.least for field in bound.surfaces) - bound.kept)
    return Working(
        formula="bounds-every_layout_by_cost" if by_cost else "bounds-every_layout",
        at=tuple(f"stock/{name}" for name in bound.stocks),
        inputs={
            **_ground(bound, rest, job, rules),
            **(_by_cost if by_cost else _by_number)(bound, rest, own, stock, job),
        },
        result=bound.lower_bound,
    )


def _ground(bound: LayoutBound, rest: int, job: Job, rules: RuleSet) -> dict[str, Value]:
    fields = bound.surfaces
    worst = max(fields, key=lambda field: field.gaps)
    return {
        "surfaces": tuple(Ref(ref=field.surface) for field in fields),
        "ground": _square(sum(field.covered for field in fields)),
        "board": _square(sum(field.least for field in fields)),
        "seam": length(limits_of(rules, job.tape.graduation).gap),
        "narrowest": length(min(field.side for field in fields)),
        "most_on": Ref(ref=worst.surface),
        "courses": worst.courses,
        "alone": worst.alone,
        "pair": worst.pair,
        "staggered": worst.pair < 2 * worst.alone,
        "offcuts": bound.kept > 0,
        "kept": _square(bound.kept),
        "new": _square(rest),
        "used": bound.used,
    }


def _by_number(
    bound: LayoutBound, rest: int, own: Sequence[Stock], stock: Sequence[Stock], job: Job
) -> dict[str, Value]:
    """What the last steps of the argument need where sheets are counted."""
    large = max(own, key=lambda item: item.size[0] * item.size[1])
    sheet = large.size[0] * large.size[1] / _SQ_TICKS
    return {
        "kinds": len(own),
        "largest": Ref(ref=f"stock/{large.id}"),
        "sheet": _square(sheet),
        "sheets": measure(rest / sheet),
        "open": bound.used - bound.lower_bound,
        "one_fewer": bound.used - 1,
    }


def _by_cost(
    bound: LayoutBound, rest: int, own: Sequence[Stock], stock: Sequence[Stock], job: Job
) -> dict[str, Value]:
    """What they need where different sheets serve the same boards, so that money decides."""
    cost, least = bound.cost or 0.0, bound.least_cost or 0.0
    _, mix = least_price(rest * _SQ_TICKS, stock_sizes(own, stock))
    return {
        "offered": tuple(Ref(ref=f"stock/{item.id}") for item in own),
        "sheet": tuple(_square(prod(item.size) / _SQ_TICKS) for item in own),
        "price": tuple(money(item.price or 0.0) for item in own),
        "named": bool(mix),
        "best": tuple(Ref(ref=f"stock/{name}") for name in mix),
        "best_numbers": tuple(mix.values()),
        "cost": money(cost),
        "least_cost": money(least),
        "over": money(cost - least),
        "cheapest": cost == least,
        "currency": currency_of(job.currency),
    }


def _square(square_mm: float) -> Measure:
    return measure(square_mm / 1e6, "m2")
