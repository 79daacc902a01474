"""What changed between two plans, as values: what came, what went, what is another, and what stayed as it was."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from firstcourse.findings import Finding
from firstcourse.plan import Board, Cut, Mark, Piece, Plan, Quantity, Sheet, Tile
from firstcourse.steps import PlanResult


@dataclass(frozen=True, slots=True, kw_only=True)
class Was[Value]:
    """One thing before and after."""

    before: Value
    after: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes[Value]:
    """What became of one kind of thing.

    Attributes:
        added: By name, those that only the later plan has.
        removed: By name, those that only the earlier plan has.
        changed: By name, those that both have, each otherwise.
        stay: Names of those that are the same in both.
    """

    added: Mapping[str, Value]
    removed: Mapping[str, Value]
    changed: Mapping[str, Was[Value]]
    stay: tuple[str, ...]

    def __bool__(self) -> bool:
        return bool(self.added or self.removed or self.changed)


@dataclass(frozen=True, slots=True, kw_only=True)
class Replanned:
    """What became of the boards, for who has some of them up already.

    Attributes:
        up: Boards that are up in the later plan.
        stay: Boards to be set of the same place and size in both.
        moved: Boards to be set that have another place or size, or are up no more.
        new: Boards that only the later plan has.
        gone: Boards that only the earlier plan has.
        sheets: New sheets in all by stock: those cut up before the plan and those it buys.
        cuts: Cuts that each plan asks for.
    """

    up: tuple[str, ...]
    stay: tuple[str, ...]
    moved: tuple[str, ...]
    new: tuple[str, ...]
    gone: tuple[str, ...]
    sheets: Was[Mapping[str, int]]
    cuts: Was[int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """The difference of two plans; lengths of its values are ticks of 1/640 mm.

    Attributes:
        boards: By id.
        pieces: By id.
        sheets: By id, without their cuts.
        cuts: By the id of the part that is cut.
        tiles: By surface and id.
        marks: By surface, what they stand for and where they are measured from; alike ones are numbered.
        quantities: By what is bought.
        findings: By code and place; alike ones are numbered.
        replanned: The boards once more: which are up, which stay, and what they take in all.
    """

    boards: Changes[Board]
    pieces: Changes[Piece]
    sheets: Changes[Sheet]
    cuts: Changes[Cut]
    tiles: Changes[Tile]
    marks: Changes[Mark]
    quantities: Changes[Quantity]
    findings: Changes[Finding]
    replanned: Replanned

    def __bool__(self) -> bool:
        kinds = (self.boards, self.pieces, self.sheets, self.cuts, self.tiles, self.marks)
        return any(kinds) or bool(self.quantities) or bool(self.findings)


def difference(earlier: PlanResult, later: PlanResult) -> Difference:
    """What changed from one plan to another.

    Args:
        earlier: A plan.
        later: Another, as a rule of the same job.
    """
    before, after = earlier.plan, later.plan
    return Difference(
        boards=_changes(_boards(before), _boards(after)),
        pieces=_changes({one.id: one for one in before.pieces}, {one.id: one for one in after.pieces}),
        sheets=_changes(_sheets(before), _sheets(after)),
        cuts=_changes(_cuts(before), _cuts(after)),
        tiles=_changes(_tiles(before), _tiles(after)),
        marks=_changes(_marks(before), _marks(after)),
        quantities=_changes(_quantities(before), _quantities(after)),
        findings=_changes(_findings(before), _findings(after)),
        replanned=_replanned(before, after),
    )


def _replanned(before: Plan, after: Plan) -> Replanned:
    was, now = _boards(before), _boards(after)
    to_set = {name: board for name, board in now.items() if not board.fixed}
    same = {
        name
        for name, board in to_set.items()
        if name in was
        and not was[name].fixed
        and (board.outline, board.holes) == (was[name].outline, was[name].holes)
    }
    return Replanned(
        up=tuple(name for name, board in now.items() if board.fixed),
        stay=tuple(name for name in to_set if name in same),
        moved=tuple(name for name in to_set if name in was and name not in same),
        new=tuple(name for name in to_set if name not in was),
        gone=tuple(name for name in was if name not in now),
        sheets=Was(before=_sheets_in_all(before), after=_sheets_in_all(after)),
        cuts=Was(before=len(_cuts(before)), after=len(_cuts(after))),
    )


def _sheets_in_all(plan: Plan) -> dict[str, int]:
    """New sheets by stock: those cut up before, as the job says, and those that are bought."""
    cut_up: Mapping[str, int] = plan.given.job.get("done", {}).get("sheets", {})
    return {item.id: cut_up.get(item.id, 0) + _bought(plan, item.id) for item in plan.stock}


def _bought(plan: Plan, stock: str) -> int:
    return plan.counts[stock].used if stock in plan.counts else 0


def _changes[Value](before: Mapping[str, Value], after: Mapping[str, Value]) -> Changes[Value]:
    both = [name for name in after if name in before]
    return Changes(
        added={name: value for name, value in after.items() if name not in before},
        removed={name: value for name, value in before.items() if name not in after},
        changed={
            name: Was(before=before[name], after=after[name]) for name in both if before[name] != after[name]
        },
        stay=tuple(name for name in both if before[name] == after[name]),
    )


def _boards(plan: Plan) -> dict[str, Board]:
    return {board.id: board for surface in plan.surfaces for board in surface.boards}


def _sheets(plan: Plan) -> dict[str, Sheet]:
    return {sheet.id: sheet.model_copy(update={"cuts": ()}) for sheet in plan.sheets}


def _cuts(plan: Plan) -> dict[str, Cut]:
    return {cut.of: cut for sheet in plan.sheets for cut in sheet.cuts}


def _tiles(plan: Plan) -> dict[str, Tile]:
    return {f"{surface.id} {tile.id}": tile for surface in plan.surfaces for tile in surface.tiles}


def _marks(plan: Plan) -> dict[str, Mark]:
    return _named(
        (f"{surface.id} {mark.kind} {mark.to} from {mark.from_}", mark)
        for surface in plan.surfaces
        for mark in surface.marks
    )


def _quantities(plan: Plan) -> dict[str, Quantity]:
    return _named((quantity.item, quantity) for quantity in plan.quantities)


def _findings(plan: Plan) -> dict[str, Finding]:
    return _named((f"{finding.code} {' '.join(finding.at)}", finding) for finding in plan.findings)


def _named[Value](values: Iterable[tuple[str, Value]]) -> dict[str, Value]:
    """By name; from the second of a name on with its number."""
    seen: Counter[str] = Counter()
    named = {}
    for name, value in values:
        seen[name] += 1
        named[name if seen[name] == 1 else f"{name} ({seen[name]})"] = value
    return named
