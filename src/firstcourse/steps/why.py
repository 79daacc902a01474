"""Why a plan buys what it buys, and what would come of other sheets, framing or more search."""

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import product
from typing import Literal, NamedTuple

from firstcourse.errors import FirstcourseError
from firstcourse.job import BoardedCeiling, BoardedWall, Job, Member, Room, SheetStock, WallBlocking
from firstcourse.layers import board_family
from firstcourse.plan import Plan, Stock, SurfaceKind
from firstcourse.reuse import ONCE, Steps
from firstcourse.rules import RuleSet, load_rules
from firstcourse.sheets import job_stock
from firstcourse.steps.plan import PlanResult, plan_job
from firstcourse.survey import placed_members
from firstcourse.takeoff import StockWhy, why_sheets
from firstcourse.units import TICKS_PER_MM, parse_length
from firstcourse.values import Ref, Statement, length, statement

MOST_WALLS_APART = 6
"""With more regularly framed walls than this their studs are only moved together."""
HIGHEST_EFFORT = 3

Kind = Literal["plan", "stock", "size", "blocking", "stud", "effort"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a plan takes: the plan as it is, or with one thing changed.

    Attributes:
        what: What is changed.
        sheets: Sheets to buy.
        by_stock: The same, stock by stock.
        cost: Of these sheets in the job's currency; None where a price is missing.
        cost_by_area: A price was not given and is taken in proportion to the area of the sheet it replaces.
        mass_kg: Of these sheets.
        heaviest_kg: Of the heaviest piece.
        members: Framing members to add.
        stops: Findings that stop the work.
        failed: Why it cannot be planned at all; empty where it can.
    """

    kind: Kind
    what: Statement
    sheets: int = 0
    by_stock: tuple[tuple[str, int], ...] = ()
    cost: float | None = None
    cost_by_area: bool = False
    cuts: int = 0
    mass_kg: float = 0.0
    heaviest_kg: float = 0.0
    members: int = 0
    stops: int = 0
    failed: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """A plan, why it is so, and its alternatives.

    Attributes:
        outcome: Of the plan itself.
        alternatives: Best first: by what stops the work, sheets, cost, cuts, mass; then those that cannot be
            planned.
    """

    result: PlanResult
    why: tuple[StockWhy, ...]
    outcome: Outcome
    alternatives: tuple[Outcome, ...]


class Change(NamedTuple):
    """One thing changed: the job to plan instead, and how long to search."""

    kind: Kind
    what: Statement
    job: Job
    effort: int
    cost_by_area: bool = False


def explain_job(
    job: Job,
    *,
    effort: int = 1,
    what_if: bool = True,
    steps: Steps = ONCE,
    on_step: Callable[[str], None] = lambda _text: None,
) -> Explanation:
    """Plan a job, say why it takes so many sheets, and plan its alternatives.

    Args:
        job: The job document.
        effort: Level 0 to 3, for the plan and for all alternatives but the one with more effort.
        what_if: Whether to plan alternatives at all; each is a whole plan, verified like any other.
        steps: Does the steps of all these plans, or reuses them.
        on_step: Told the name of each step as it begins.

    Raises:
        JobError: The readings do not fix a room.
        InputValueError: A rule is overridden that does not exist.
        PlanRefusedError: The plan does not verify.
    """
    result = plan_job(job, effort=effort, steps=steps, on_step=on_step)
    outcomes = []
    asked = list(changes(job, result.plan, effort=effort)) if what_if else []
    for number, change in enumerate(asked, start=1):
        on_step(f"what if {number} of {len(asked)}")
        outcomes.append(_tried(change, steps))
    return Explanation(
        result=result,
        why=why_sheets(result.plan),
        outcome=_outcome(Change("plan", statement("why-as_it_is"), job, effort), result.plan),
        alternatives=tuple(sorted(outcomes, key=_rank)),
    )


def _rank(outcome: Outcome) -> tuple[bool, int, int, float, int, float]:
    """What ranks outcomes; those alike stay in the order of the changes."""
    cost = math.inf if outcome.cost is None else outcome.cost
    return bool(outcome.failed), outcome.stops, outcome.sheets, cost, outcome.cuts, outcome.mass_kg


def _tried(change: Change, steps: Steps) -> Outcome:
    try:
        return _outcome(change, plan_job(change.job, effort=change.effort, steps=steps).plan)
    except FirstcourseError as error:
        return Outcome(kind=change.kind, what=change.what, failed=str(error))


def _outcome(change: Change, plan: Plan) -> Outcome:
    stock = {item.id: item for item in plan.stock}
    used = {name: count.used for name, count in plan.counts.items() if count.used}
    prices = [stock[name].price for name in used]
    cost = None
    if None not in prices:
        cost = round(sum(number * (stock[name].price or 0) for name, number in used.items()), 2)
    up = {board.piece for surface in plan.surfaces for board in surface.boards if board.fixed}
    return Outcome(
        kind=change.kind,
        what=change.what,
        sheets=sum(used.values()),
        by_stock=tuple(used.items()),
        cost=cost,
        cost_by_area=change.cost_by_area,
        cuts=sum(len(sheet.cuts) for sheet in plan.sheets),
        mass_kg=math.fsum(number * _kg(plan, stock[name], stock[name].size) for name, number in used.items()),
        heaviest_kg=max(
            (_kg(plan, stock[piece.stock], piece.blank) for piece in plan.pieces if piece.id not in up),
            default=0.0,
        ),
        members=sum(support.added for surface in plan.surfaces for support in surface.supports),
        stops=sum(finding.severity == "stop" for finding in plan.findings),
    )


def _density(plan: Plan, stock: Stock) -> float:
    if stock.density_kg_m3 is not None:
        return stock.density_kg_m3
    values = {rule.id: rule.value for rule in plan.rules}
    return float(values.get(f"mass.board.{board_family(stock.kind)}", values["boards.density"]))


def _kg(plan: Plan, stock: Stock, size: tuple[int, int]) -> float:
    return math.prod(side / TICKS_PER_MM / 1000 for side in (*size, stock.thickness)) * _density(plan, stock)


def changes(job: Job, plan: Plan, *, effort: int) -> Iterator[Change]:
    """Every alternative worth planning, one thing changed in each.

    Args:
        job: The job document.
        plan: Its plan.
        effort: Level the plan was made with.
    """
    rules = load_rules(job.date, job.practice, job.overrides())
    listed = _listed(job, rules)
    yield from _one_stock(listed, plan, effort)
    yield from _other_sizes(listed, plan, rules, effort)
    yield from _blocking(job, plan, rules, effort)
    yield from _studs(job, effort)
    yield from _ceilings(job, plan, rules, effort)
    if effort < HIGHEST_EFFORT:
        yield Change("effort", statement("why-longer", effort=effort + 1), job, effort + 1)


def _listed(job: Job, rules: RuleSet) -> Job:
    """The job with the rule book's sheets written out, where it names none itself."""
    if job.stock:
        return job
    by_kind = job_stock(job, rules)
    found = {stock.id: stock for kind in SurfaceKind for stock in by_kind[kind]}
    stocks = tuple(
        SheetStock.model_validate(
            {
                "id": name,
                "size": stock.size,
                "thickness": stock.thickness,
                "kind": stock.kind,
                "for": tuple(kind for kind in SurfaceKind if stock in by_kind[kind]),
            }
        )
        for name, stock in found.items()
    )
    return job.model_copy(update={"stock": stocks})


def _kinds(stock: SheetStock) -> frozenset[SurfaceKind]:
    return frozenset(stock.used_for or SurfaceKind)


def _one_stock(job: Job, plan: Plan, effort: int) -> Iterator[Change]:
    """Each stock alone on the surfaces it may serve, where others may serve them too."""
    boarded = {surface.kind for surface in plan.surfaces}
    for only in job.stock:
        mine = _kinds(only) & boarded
        others = []
        for stock in job.stock:
            left = _kinds(stock) - mine
            if stock.id == only.id:
                others.append(stock)
            elif left & boarded:
                kept = tuple(kind for kind in SurfaceKind if kind in left)
                others.append(stock.model_copy(update={"used_for": kept}))
        gone = [stock.id for stock in job.stock if _kinds(stock) & mine and stock.id != only.id]
        if not mine or not gone:
            continue
        ids = {stock.id for stock in others}
        offcuts = tuple(offcut for offcut in job.offcuts if offcut.stock in ids)
        changed = job.model_copy(update={"stock": tuple(others), "offcuts": offcuts})
        without = tuple(Ref(ref=f"stock/{name}") for name in gone)
        what = statement("why-one_stock", only=Ref(ref=f"stock/{only.id}"), without=without)
        yield Change("stock", what, changed, effort)


def _other_sizes(job: Job, plan: Plan, rules: RuleSet, effort: int) -> Iterator[Change]:
    """Each stock that is cut, in every other usual size; its price goes with its area."""
    usual = [
        (parse_length(width), parse_length(length))
        for width, length in (text.split("x") for text in rules.text("boards.sheet.standard_sizes").split(";"))
    ]
    cut = {sheet.stock for sheet in plan.sheets}
    for stock, size in product(job.stock, usual):
        there = {tuple(sorted(s.size)) for s in job.stock if _kinds(s) & _kinds(stock)}
        if stock.id not in cut or tuple(sorted(size)) in there:
            continue
        ratio = size[0] * size[1] / (stock.size[0] * stock.size[1])
        price = None if stock.price is None else round(stock.price * ratio, 2)
        other = stock.model_copy(update={"size": size, "price": price})
        stocks = tuple(other if s.id == stock.id else s for s in job.stock)
        what = statement(
            "why-other_size", stock=Ref(ref=f"stock/{stock.id}"), wide=length(size[0]), long=length(size[1])
        )
        yield Change("size", what, job.model_copy(update={"stock": stocks}), effort, price is not None)


def _blocking(job: Job, plan: Plan, rules: RuleSet, effort: int) -> Iterator[Change]:
    """One more row of blocking in every wall, one sheet's width or length above the foot of its boards."""
    gap, least = rules.ticks("boards.gap.between"), rules.ticks("boards.piece.min")
    for side in _sheet_sides(plan, SurfaceKind.WALL):

        def add(room: Room, wall: BoardedWall, side: int = side) -> BoardedWall:
            foot = 0 if wall.foot == "none" else rules.ticks("boards.gap.foot")
            at = (wall.boards.bottom or 0) + foot + side + gap // 2
            right = wall.boards.right or room.sides[wall.wall] - gap
            top = wall.boards.top or min((room.height or right, *room.heights.values()))
            if at + least > top:
                return wall
            row = WallBlocking(at=at, left=wall.boards.left or 0, right=right)
            return wall.model_copy(update={"blocking": (*wall.blocking, row)})

        changed = _with_walls(job, add)
        if changed != job:
            yield Change("blocking", statement("why-row_of_blocking", above=length(side)), changed, effort)


def _studs(job: Job, effort: int) -> Iterator[Change]:
    """The studs of regularly framed walls moved by half their spacing: wall by wall, and all together."""
    regular = [
        (room.name, wall.wall) for room in job.rooms for wall in room.walls if wall.framing.spacing is not None
    ]
    groups = [[place] for place in regular] if len(regular) <= MOST_WALLS_APART else []
    if len(regular) != 1:
        groups.append(regular)
    for group in groups:

        def move(room: Room, wall: BoardedWall, group: list[tuple[str, str]] = group) -> BoardedWall:
            return _half_a_spacing_on(wall) if (room.name, wall.wall) in group else wall

        if group:
            walls = tuple(Ref(ref=f"{room}/wall/{wall}") for room, wall in group)
            what = statement("why-studs_moved", number=len(walls), walls=walls)
            yield Change("stud", what, _with_walls(job, move), effort)


def _ceilings(job: Job, plan: Plan, rules: RuleSet, effort: int) -> Iterator[Change]:
    """Ceiling joists moved by half their spacing, and one more of them one sheet's width or length from its side.

    Floors have no such alternative: their boards lie on panels, which carry an edge anywhere.
    """
    moved = _with_ceilings(job, lambda room, ceiling: _half_a_spacing_on(ceiling))
    if moved != job:
        yield Change("stud", statement("why-joists_moved"), moved, effort)
    edge, gap = rules.ticks("boards.gap.perimeter"), rules.ticks("boards.gap.between")
    least = rules.ticks("boards.piece.min")
    for side in _sheet_sides(plan, SurfaceKind.CEILING):

        def add(room: Room, ceiling: BoardedCeiling, side: int = side) -> BoardedCeiling:
            framing, at = ceiling.framing, edge + side + gap // 2
            sides = [length for pair, length in room.sides.items() if pair != framing.parallel_to]
            # In other rooms joists may lie behind the side they are measured from.
            if len(room.corners) != 4 or at + least > min(sides):
                return ceiling
            regular: Iterable[int] = ()
            if framing.spacing is not None and framing.first is not None:
                regular = range(framing.first, max(sides), framing.spacing)
            width = framing.width or rules.ticks("framing.joist_width")
            places = placed_members(framing.members, regular, width)
            if any(abs(other - at) < (width + its) // 2 for other, its in places):
                return ceiling
            found = tuple(Member(at=other, width=its) for other, its in places)
            changed = {"spacing": None, "first": None, "members": (*found, Member(at=at))}
            return ceiling.model_copy(update={"framing": framing.model_copy(update=changed)})

        changed = _with_ceilings(job, add)
        if changed != job:
            yield Change("blocking", statement("why-one_more_joist", off=length(side)), changed, effort)


def _half_a_spacing_on[Framed: (BoardedWall, BoardedCeiling)](framed: Framed) -> Framed:
    """With its members half their spacing farther on; as it is where they are not regular."""
    framing = framed.framing
    if framing.spacing is None or framing.first is None:
        return framed
    first = (framing.first + framing.spacing // 2) % framing.spacing
    return framed.model_copy(update={"framing": framing.model_copy(update={"first": first})})


def _sheet_sides(plan: Plan, kind: SurfaceKind) -> list[int]:
    """Widths and lengths of the sheets that boards of one kind of surface come from, shortest first [ticks]."""
    sizes = {stock.id: stock.size for stock in plan.stock}
    boards = {board.id for surface in plan.surfaces if surface.kind is kind for board in surface.boards}
    return sorted({side for piece in plan.pieces if piece.board in boards for side in sizes[piece.stock]})


def _with_ceilings(job: Job, change: Callable[[Room, BoardedCeiling], BoardedCeiling]) -> Job:
    rooms = tuple(
        room if room.ceiling is None else room.model_copy(update={"ceiling": change(room, room.ceiling)})
        for room in job.rooms
    )
    return job.model_copy(update={"rooms": rooms})


def _with_walls(job: Job, change: Callable[[Room, BoardedWall], BoardedWall]) -> Job:
    rooms = tuple(
        room.model_copy(update={"walls": tuple(change(room, wall) for wall in room.walls)}) for room in job.rooms
    )
    return job.model_copy(update={"rooms": rooms})
