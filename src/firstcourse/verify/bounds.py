"""The bound over every layout, measured again from the boards, seams and members of the plan.

What boards and seams cover is the ground that any layout has to cover; the coverage checks prove that nothing else
is bare. From its extent, the least board and the places of members follows how many gaps there can be at most.
"""

from collections import Counter
from collections.abc import Iterator
from itertools import product
from math import ceil, gcd, inf, isclose, prod
from typing import NamedTuple

import shapely
from shapely import Point, Polygon
from shapely.ops import unary_union

from firstcourse.geometry import axis_near, bounds, sides
from firstcourse.units import TICKS_PER_MM, ceil_to
from firstcourse.verify.bound_fields import FieldBound, LayoutBound
from firstcourse.verify.coverage import board_hole, seam_band
from firstcourse.verify.structure import Board, Document, Surface
from firstcourse.verify.verdict import Objection

_SQ = TICKS_PER_MM**2
_NEAR = 4
"""Rounding of edges [ticks]."""
_NOISE = 50
"""What rounding of edges adds to an area, for each metre of its outline [mm²]."""

_LEAST_MONEY = 0.0005
"""Costs that differ by less are one: prices have cents."""
_MOST_MIXES = 50_000

Span = tuple[int, int]
Box = tuple[int, int, int, int]


def check_bounds(plan: Document) -> Iterator[Objection]:
    """Object to a bound over every layout that the plan itself does not bear out."""
    listed = Counter(field.surface for bound in plan.bounds for field in bound.surfaces)
    for name, times in sorted(listed.items()):
        if times > 1:
            yield Objection("VER-604", name, "is counted twice in the bounds over every layout")
    surfaces = {surface.id: surface for surface in plan.surfaces}
    for bound in plan.bounds:
        if not bound.stocks or not set(bound.stocks) <= set(plan.stock):
            yield Objection("VER-604", bound.where, "bounds stocks that the plan does not have")
            continue
        for field in bound.surfaces:
            if field.surface not in surfaces or not _left(surfaces[field.surface]):
                yield Objection("VER-604", field.surface, "is bounded, but is no boarded surface of the plan")
            else:
                yield from _field(field, surfaces[field.surface], bound, plan)
        yield from _sheets(bound, plan)


def _left(surface: Surface) -> list[Board]:
    """The boards that are still to be set: what is up takes no sheet."""
    return [board for board in surface.boards if not board.fixed]


def _sheets(bound: LayoutBound, plan: Document) -> Iterator[Objection]:
    own = [sheet for sheet in plan.sheets if sheet.stock in bound.stocks]
    new = Counter(sheet.stock for sheet in own if sheet.source == "new")
    if bound.used != new.total():
        yield Objection("VER-605", bound.where, f"says {bound.used} sheets are used, {new.total()} are cut")
    offcuts = [
        offcut.size("size") for offcut in plan.job.nodes("offcuts", ()) if offcut.text("stock") in bound.stocks
    ]
    kept = -(-sum(w * h for w, h in offcuts) // _SQ)
    if bound.kept != kept:
        yield Objection("VER-605", bound.where, f"takes off {bound.kept} mm² of kept offcuts, the job has {kept}")
    rest = sum(field.least for field in bound.surfaces) - bound.kept
    largest = max(w * h for w, h in (plan.stock[name] for name in bound.stocks))
    fewest = max(0, -(-rest * _SQ // largest))
    if bound.lower_bound != fewest or fewest > bound.used:
        yield Objection("VER-606", bound.where, f"bounds the sheets by {bound.lower_bound}; area proves {fewest}")
    if bound.proven != (bound.lower_bound == bound.used):
        yield Objection("VER-607", bound.where, "is called proven where the bound is not met, or the reverse")
    yield from _cost(bound, rest, new, plan)


def _cost(bound: LayoutBound, rest: int, new: Counter[str], plan: Document) -> Iterator[Objection]:
    if bound.cost is None and bound.least_cost is None:
        if all(item.price for item in plan.shopping.sheet_stock.values()):
            yield Objection("VER-606", bound.where, "gives no cost, though every sheet has a price")
        return
    prices = {name: plan.shopping.sheet_stock[name].price for name in bound.stocks}
    known = {name: price for name, price in prices.items() if price is not None}
    if bound.cost is None or bound.least_cost is None or len(known) < len(prices):
        yield Objection("VER-606", bound.where, "gives a cost without every price, or half of it")
        return
    cost = sum(known[name] * number for name, number in new.items())
    if not isclose(cost, bound.cost, abs_tol=_LEAST_MONEY):
        yield Objection("VER-605", bound.where, f"says the sheets cost {bound.cost:.2f}; they cost {cost:.2f}")
    offers = [(plan.stock[name][0] * plan.stock[name][1] / _SQ, known[name]) for name in bound.stocks]
    least = _least_cost(float(rest), offers)
    if not isclose(bound.least_cost, least, abs_tol=_LEAST_MONEY) or bound.least_cost > bound.cost + _LEAST_MONEY:
        yield Objection("VER-606", bound.where, f"area does not prove a least cost of {bound.least_cost:.2f}")


def _least_cost(rest: float, offers: list[tuple[float, float]]) -> float:
    """The cheapest sheets of this area together; where there are too many mixes, at the best rate."""
    if rest <= 0:
        return 0.0
    *others, (area, price) = sorted(offers, key=lambda offer: offer[0] / offer[1] if offer[1] else inf)
    most = [int(-(-rest // size)) for size, _ in others]
    if prod(number + 1 for number in most) > _MOST_MIXES:
        step = gcd(*(round(100 * each) for _, each in offers)) or 1
        return ceil(100 * rest * price / area / step - 1e-9) * step / 100
    return min(
        sum(number * each for number, (_, each) in zip(mix, others, strict=True))
        + price * max(0, ceil((rest - sum(n * size for n, (size, _) in zip(mix, others, strict=True))) / area))
        for mix in product(*(range(number + 1) for number in most))
    )


def _field(field: FieldBound, surface: Surface, bound: LayoutBound, plan: Document) -> Iterator[Objection]:
    pieces = {piece.id: piece for piece in plan.pieces}
    boards = _left(surface)
    cut_from = {pieces[board.piece].stock for board in boards if board.piece in pieces}
    if not cut_from | set(surface.board_stock) <= set(bound.stocks):
        yield Objection("VER-604", surface.id, "may be boarded with sheets that its bound leaves out")
    rule = plan.rules.ticks("boards.piece.min")
    narrowest = min(min(c - a, d - b) for a, b, c, d in (bounds(board.outline) for board in boards))
    if field.side > min(rule, narrowest):
        yield Objection("VER-604", surface.id, "has narrower boards than its bound allows")
    gap = ceil_to(plan.rules.ticks("boards.gap.between"), plan.tape.graduation)
    bands = unary_union([seam_band(seam) for seam in surface.seams])
    up = _up_with_gaps(surface, gap, plan)
    laid = unary_union([*(board.shape for board in boards), bands]).difference(up)
    closed = laid.buffer(_NEAR, join_style="mitre").buffer(-_NEAR, join_style="mitre")
    whole = _nearly_rectangle(closed, field.side)
    within = shapely.box(*closed.bounds).buffer(-_NEAR, join_style="mitre")
    near_up = up.intersection(within).buffer(gap, join_style="mitre")
    beside = unary_union([_beside_openings(surface, closed, gap, plan), near_up])
    counted = closed if whole else closed.difference(beside)
    counted = counted.difference(_may_stay_open(surface, plan))
    noise = _NOISE * max(1.0, laid.length / TICKS_PER_MM / 1000)
    if not -noise - gap * laid.length / _SQ <= field.covered - counted.area / _SQ <= noise:
        yield Objection("VER-606", surface.id, "is said to have other ground to cover than is covered")
    if field.least != max(0, field.covered - field.gaps):
        yield Objection("VER-606", surface.id, "is said to take other board than ground less gaps")
    high = max(max(plan.stock[name]) for name in bound.stocks)
    yield from _gaps(field, surface, closed, (field.side, gap, high), plan, whole=whole, noise=noise)
    blanks = sum(pieces[b.piece].blank[0] * pieces[b.piece].blank[1] for b in boards if b.piece in pieces)
    if field.least * _SQ > blanks + noise * _SQ:
        yield Objection("VER-606", surface.id, "is said to take more board than this plan cuts for it")


def _up_with_gaps(surface: Surface, gap: int, plan: Document) -> shapely.Geometry:
    """The boards that are up, the joints between them and the gaps round them: ground that nothing else covers."""
    # Between two of them nothing is laid that is narrower than a limb.
    half = plan.rules.ticks("boards.limb.min") // 2 + gap
    up = unary_union([board.shape for board in surface.boards if board.fixed])
    joined = up.buffer(half, join_style="mitre").buffer(-half, join_style="mitre")
    return joined.buffer(plan.rules.ticks("boards.gap.between"), join_style="mitre")


def _may_stay_open(surface: Surface, plan: Document) -> shapely.Geometry:
    """Ground along walls that some layout may leave open: the widest gap there."""
    most = plan.rules.ticks("boards.gap.perimeter.most")
    return unary_union(
        [
            shapely.LineString([a, b]).buffer(most - _NEAR, cap_style="flat")
            for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True)
            if kind == "perimeter" and axis_near(a, b)
        ]
    )


def _beside_openings(surface: Surface, ground: shapely.Geometry, gap: int, plan: Document) -> shapely.Geometry:
    """Ground that a gap beside an opening may take without a board on its far side.

    What lies beyond the ground's extent is no opening in it: nothing is laid there.
    """
    within = shapely.box(*ground.bounds).buffer(-_NEAR, join_style="mitre")
    shapes = []
    for opening in surface.openings:
        depth = plan.rules.ticks("boards.gap.foot" if opening.kind in ("tub", "tray") else "boards.gap.opening")
        if opening.outline is not None:
            shape = board_hole(opening).buffer(depth)
        else:
            shape = Point(opening.centre).buffer(opening.diameter / 2 + depth)
        shapes.append(shape.intersection(within).buffer(gap))
    return unary_union(shapes)


def _nearly_rectangle(ground: shapely.Geometry, side: int) -> bool:
    left, lower, right, upper = ground.bounds
    short = right - left <= 2 * side or upper - lower <= 2 * side
    by = 0 if short else side
    inner = shapely.box(left + by, lower + by, right - by, upper - by)
    hollow = ground.convex_hull.area - ground.area
    return bool(hollow < 2 * _NEAR * ground.length and ground.buffer(_NEAR).covers(inner))


class _Way(NamedTuple):
    """Courses run one way: their length, all of them across, most of them, most breaks in one and in a pair."""

    length: int
    across: int
    courses: int
    alone: int
    pair: int

    def area(self, courses: int, alone: int, pair: int, sizes: tuple[int, int, int]) -> int:
        """What gaps take with so many courses and breaks [ticks²]."""
        side, gap, high = sizes
        boards = self.across - (courses - 1) * gap
        # Of two neighbours one has all its breaks at best; the other what the pair has left.
        low = max((courses // 2) * side, boards - (courses - courses // 2) * high)
        return gap * ((courses - 1) * self.length + alone * (boards - low) + (pair - alone) * low)

    def most(self, sizes: tuple[int, int, int]) -> int:
        """The most that gaps can take [ticks²]."""
        _, gap, high = sizes
        some = [num for num in range(1, self.courses + 1) if self.across - (num - 1) * gap <= num * high]
        return max((self.area(num, self.alone, self.pair, sizes) for num in some), default=0)


def _gaps(
    field: FieldBound,
    surface: Surface,
    ground: shapely.Geometry,
    sizes: tuple[int, int, int],
    plan: Document,
    *,
    whole: bool,
    noise: float,
) -> Iterator[Objection]:
    """The most that gaps can take, and so many courses and seams as take it.

    What is boarded and the surface's outline are the least and the most ground that it can be about, as boards may
    end a little before or beyond the usual gap.
    """
    relaxed = any(plan.says(surface, code=code) for code in ("BRD-201", "BRD-202"))
    stagger = plan.rules.ticks("boards.stagger.end_joints") if whole and not relaxed else 0
    slack = plan.rules.ticks("boards.gap.perimeter.most")
    outline = Polygon(surface.outline)
    boarded, least, most = (
        list(_ways(surface, box, sizes, apart, plan, near))
        for box, apart, near in (
            (_box(ground.bounds), stagger, 0),
            (_box(ground.bounds, -slack), stagger, 0),
            # Ground that is hardly a rectangle may be taken as none, where no stagger is counted on.
            (_box(outline.bounds), 0, _NEAR),
        )
    )
    gaps = max(way.most(sizes) for way in boarded) / _SQ
    if field.gaps < field.covered and field.gaps < gaps - noise:
        yield Objection("VER-606", surface.id, f"gaps could take {gaps:.0f} mm², not {field.gaps}")
    elif not any(_fits(field, low, top, sizes, noise) for low, top in zip(least, most, strict=True)):
        said = f"{field.courses} courses, {field.alone} seams, {field.pair} in two, {field.gaps} mm²"
        yield Objection("VER-606", surface.id, f"has no room for just so many gaps: {said}")


def _fits(field: FieldBound, low: _Way, top: _Way, sizes: tuple[int, int, int], noise: float) -> bool:
    if not (low.alone <= field.alone <= top.alone and low.pair <= field.pair <= top.pair):
        return False
    if not 1 <= field.courses <= top.courses:
        return False
    capped = field.gaps == field.covered
    told = [way.area(field.courses, field.alone, field.pair, sizes) / _SQ for way in (low, top)]
    return (capped or told[0] - noise <= field.gaps) and field.gaps <= told[1] + noise


def _ways(
    surface: Surface, box: Box, sizes: tuple[int, int, int], stagger: int, plan: Document, near: int
) -> Iterator[_Way]:
    """Courses along u and along v over a box; members carry so much nearer to their edges."""
    side, gap, _ = sizes
    left, lower, right, upper = box
    upright = _may_start(surface, "v", left, right, gap, plan, near)
    level = _may_start(surface, "u", lower, upper, gap, plan, near)
    for length, across, breaks, joints in (
        (right - left, upper - lower, upright, level),
        (upper - lower, right - left, level, upright),
    ):
        alone = _count(breaks, length, side, gap, side + gap)
        pair = 2 * alone
        if stagger:
            pair = min(pair, _count(breaks, length, side, gap, min(stagger, side + gap)))
        yield _Way(length, across, _count(joints, across, side, gap, side + gap) + 1, alone, pair)


def _box(found: tuple[float, float, float, float], by: int = 0) -> Box:
    left, lower, right, upper = (round(at) for at in found)
    return left - by, lower - by, right + by, upper + by


def _may_start(
    surface: Surface, axis: str, start: int, end: int, gap: int, plan: Document, near: int = 0
) -> list[Span]:
    """Where a gap along an axis may start, measured from `start`: anywhere, or where members carry both boards."""
    if surface.framing_axis != axis or surface.carried_everywhere:
        return [(0, end - start)]
    across = 0 if axis == "v" else 1
    bearing = plan.rules.ticks("boards.bearing.min") - near
    faces: list[list[int]] = []
    for box in sorted((bounds(support.outline) for support in surface.supports), key=lambda b: b[across]):
        if (box[3] - box[1] >= box[2] - box[0]) != (surface.framing_axis == "v"):
            continue
        if faces and box[across] <= faces[-1][1] + near:
            faces[-1][1] = max(faces[-1][1], box[across + 2])
        else:
            faces.append([box[across], box[across + 2]])
    spans = [(near + bearing - start, far - bearing - gap - start) for near, far in faces]
    return [span for span in spans if span[0] <= span[1]]


def _count(places: list[Span], length: int, side: int, gap: int, apart: int) -> int:
    """Most starts at these places, with a least board at both ends and so much from one to the next."""
    found, free = 0, side
    for first, last in places:
        at = max(first, free)
        while at <= min(last, length - gap - side):
            found, free = found + 1, at + apart
            at = free
    return found
