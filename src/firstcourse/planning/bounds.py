"""How few sheets any layout the rules allow could take: surfaces as ground for courses, sheets shared or not."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import product
from math import ceil, gcd, prod
from typing import NamedTuple

import shapely

from firstcourse.boards.field import board_region, limits_of, runs_along
from firstcourse.cutting import StockSize
from firstcourse.cutting.every_layout import Gaps, Ground, Span, most_gaps
from firstcourse.findings import Finding
from firstcourse.geometry import axis_near, bounds, sides
from firstcourse.job import Job
from firstcourse.plan import FieldBound, LayoutBound, SideKind, Stock, SupportKind, Surface
from firstcourse.planning.sheets import kept_sizes, stock_sizes
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape, format_length
from firstcourse.workings import Working

MOST_MIXES = 50_000
"""With more ways to mix sheets than this, their cost is bounded by area at the best rate alone."""
_SQ_TICKS = TICKS_PER_MM**2
_SQ_MM_PER_SQ_FT = 92_903.04
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
        members = [item for item in shared if item.surface.boards and {s.id for s in item.stock} <= names]
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
    narrowest = min(min(c - a, d - b) for a, b, c, d in (bounds(board.outline) for board in surface.boards))
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
            Ground(
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


def bound_workings(
    bounded: Sequence[LayoutBound], surfaces: Sequence[Surface], stock: Sequence[Stock], job: Job, rules: RuleSet
) -> dict[str, Working]:
    """Each bound with its argument in sentences that need no knowledge of the method."""
    titles = {surface.id: surface.title or surface.id for surface in surfaces}
    return {
        bound_key(bound): Working(
            title=f"Fewest sheets of {' and '.join(bound.stocks)} over every layout the rules allow",
            formula="(ground to cover − the most that gaps can take − kept offcuts) / area of a sheet, rounded up",
            values=_values(bound, stock, job.tape),
            result=str(bound.lower_bound),
            unit="sheets",
            source="area of ground and gaps; derived from the rules of the rule book",
            argument=tuple(_argument(bound, titles, stock, job, rules)),
        )
        for bound in bounded
    }


def bound_key(bound: LayoutBound) -> str:
    """The name of a bound's working."""
    return f"every layout {', '.join(bound.stocks)}"


def _values(bound: LayoutBound, stock: Sequence[Stock], tape: Tape) -> dict[str, str]:
    sheet = max(item.size[0] * item.size[1] for item in stock if item.id in bound.stocks)
    ground, least = (sum(getattr(f, name) for f in bound.surfaces) for name in ("covered", "least"))
    return {
        "ground": _area_text(ground, tape),
        "gaps": _difference(ground, least, tape),
        "kept offcuts": _area_text(bound.kept, tape),
        "sheet": _area_text(sheet / _SQ_TICKS, tape),
        "used": str(bound.used),
    }


def _argument(
    bound: LayoutBound, titles: dict[str, str], stock: Sequence[Stock], job: Job, rules: RuleSet
) -> list[str]:
    tape, fields = job.tape, bound.surfaces
    ground, least = sum(f.covered for f in fields), sum(f.least for f in fields)
    worst = max(fields, key=lambda field: field.gaps)
    side = format_length(min(field.side for field in fields), tape, feet=False)
    gap = format_length(limits_of(rules, tape.graduation).gap, tape, feet=False)
    staggered = (
        f", {worst.pair} in two neighbouring ones as seams are staggered" if worst.pair < 2 * worst.alone else ""
    )
    many = f"{_number(worst.courses, 'course')} of up to {_number(worst.alone, 'seam')} each{staggered}"
    taken = _difference(ground, least, tape)
    rest = max(0, least - bound.kept)
    return [
        f"Whatever the layout, boards and the seams between them have to cover {_area_text(ground, tape)} of "
        f"{_listed([titles[field.surface] for field in fields])}; what stays open and the gaps along the edges "
        "are not in that.",
        f"A seam is a gap of {gap} and takes no board. But no board is narrower than {side}, so there is room for "
        f"only so many seams. With those between courses they cover {taken} at most; "
        + (
            f"{titles[worst.surface]} would have {many}."
            if len(fields) == 1
            else f"{titles[worst.surface]} has room for the most: {many}."
        ),
        f"So every layout takes {_area_text(ground, tape)} − {taken} = {_area_text(least, tape)} of board or more."
        + (
            f" Kept offcuts hold {_area_text(bound.kept, tape)}, so new sheets have to give "
            f"{_difference(least, bound.kept, tape) if rest else _area_text(0, tape)}."
            if bound.kept
            else ""
        ),
        *(_by_cost if len(bound.stocks) > 1 and bound.least_cost is not None else _by_number)(
            bound, rest, stock, job
        ),
    ]


def _by_number(bound: LayoutBound, rest: int, stock: Sequence[Stock], job: Job) -> list[str]:
    """The last steps of the argument where sheets are counted."""
    own = [item for item in stock if item.id in bound.stocks]
    large = max(own, key=lambda item: item.size[0] * item.size[1])
    sheet = large.size[0] * large.size[1] / _SQ_TICKS
    has = "A sheet has" if len(own) == 1 else f"Of {large.id}, the largest sheet that may be used here, one has"
    said = [
        f"{has} {_area_text(sheet, job.tape)}: that is {rest / sheet:.2f} sheets, and so "
        f"{_number(bound.lower_bound, 'sheet')} at least."
    ]
    if bound.proven:
        return [*said, f"This plan buys {bound.used}: no layout that keeps the rules can do with fewer."]
    fewer = f"{bound.lower_bound}" + ("" if bound.used - bound.lower_bound == 1 else f" to {bound.used - 1}")
    return [
        *said,
        f"This plan buys {bound.used}. Whether some other layout can do with {fewer} is not known: the search "
        "found none, and nothing said here rules it out.",
    ]


def _by_cost(bound: LayoutBound, rest: int, stock: Sequence[Stock], job: Job) -> list[str]:
    """The last steps of the argument where different sheets serve the same boards, so that money decides."""
    own = [item for item in stock if item.id in bound.stocks]
    cost, least = bound.cost or 0.0, bound.least_cost or 0.0
    price, mix = least_price(rest * _SQ_TICKS, stock_sizes(own, stock))
    named = mix and price == round(least * 100)
    cheapest = f"are {_listed([f'{n} × {name}' for name, n in mix.items()])}, for" if named else "cost at least"
    offered = _listed(
        [f"{item.id} ({_area_text(prod(item.size) / _SQ_TICKS, job.tape)}, {item.price:.2f})" for item in own]
    )
    said = [
        f"That may come from {offered}. The cheapest sheets with so much in them {cheapest} "
        f"{least:.2f} {job.currency}".rstrip()
        + "."
    ]
    if cost == least:
        return [*said, f"The sheets of this plan cost {cost:.2f}: no layout that keeps the rules costs less."]
    return [
        *said,
        f"The sheets of this plan cost {cost:.2f}, which is {cost - least:.2f} more. Whether some other layout "
        "costs less is not known: the search found none, and nothing said here rules it out.",
    ]


def _difference(area: float, less: float, tape: Tape) -> str:
    """The difference of two areas [mm²] as they are printed, so that a reader who subtracts finds the same."""
    places = 1e3 if tape is Tape.MM else _SQ_MM_PER_SQ_FT / 100
    return _area_text((round(area / places) - round(less / places)) * places, tape)


def _number(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def _listed(names: Sequence[str]) -> str:
    if len(names) > 4:
        return f"{len(names)} surfaces"
    rooms = {name.partition(": ")[0] for name in names if ": " in name}
    if len(names) > 1 and len(rooms) == 1 and all(": " in name for name in names):
        room = rooms.pop()
        return f"{room}: {_listed([name.removeprefix(f'{room}: ') for name in names])}"
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _area_text(square_mm: float, tape: Tape) -> str:
    return f"{square_mm / 1e6:.3f} m²" if tape is Tape.MM else f"{square_mm / _SQ_MM_PER_SQ_FT:.2f} sq ft"
