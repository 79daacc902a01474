"""What each sheet is used for: its pieces by their share, what is kept, and what is waste."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from firstcourse.plan import Part, Plan, Sheet
from firstcourse.values import Measure, Name, Statement, length, statement


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """One part of a sheet and its share of the sheet's area.

    Attributes:
        name: The board's mark, or the part's id where it is an offcut to keep.
        size: As cut, width and height.
        share: 0 to 1.
        kept: It is left over and large enough to keep.
    """

    name: str
    size: tuple[Measure, Measure]
    share: float
    kept: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFill:
    """What one sheet is used for.

    Attributes:
        source: `new`, or the name of the kept offcut it is.
        parts: Pieces by falling share, then offcuts to keep; what is missing to 1 is waste.
    """

    id: str
    source: str
    size: tuple[Measure, Measure]
    parts: tuple[Share, ...]

    @property
    def used(self) -> float:
        """Share that becomes boards."""
        return sum(part.share for part in self.parts if not part.kept)

    @property
    def kept(self) -> float:
        """Share that is kept."""
        return sum(part.share for part in self.parts if part.kept)

    @property
    def waste(self) -> float:
        """Share that is neither used nor kept."""
        return max(0.0, 1 - self.used - self.kept)

    @property
    def percents(self) -> tuple[int, ...]:
        """The shares of the parts, and last the waste, in whole percents that make 100."""
        return whole_percents([*(part.share for part in self.parts), self.waste])


def whole_percents(shares: Sequence[float]) -> tuple[int, ...]:
    """Shares that make 1 as whole percents that make 100: those cut off most are rounded up.

    Example:
        >>> whole_percents([0.913, 0.083, 0.004])
        (91, 8, 1)
    """
    found = [floor(100 * share) for share in shares]
    by_rest = sorted(range(len(found)), key=lambda n: (found[n] - 100 * shares[n], n))
    for n in by_rest[: max(0, 100 - sum(found))]:
        found[n] += 1
    return tuple(found)


def fill_of(plan: Plan, sheet: Sheet) -> SheetFill:
    """What one sheet of a plan is used for."""
    boards = marks_of(plan)
    whole = sheet.size[0] * sheet.size[1]

    def share(part: Part) -> Share:
        return Share(
            name=boards.get(part.piece or "", "") or part.piece or part.id,
            size=_size(part.size),
            share=part.size[0] * part.size[1] / whole,
            kept=part.piece is None,
        )

    shown = [share(part) for part in sheet.parts if part.piece is not None or part.keep]
    return SheetFill(
        id=sheet.id,
        source=sheet.source.removeprefix("offcut:"),
        size=_size(sheet.size),
        parts=tuple(sorted(shown, key=lambda part: (part.kept, -part.share, part.name))),
    )


def left_over(fills: tuple[SheetFill, ...], area: dict[str, int]) -> Statement:
    """Which shares of all that is cut up become boards, are kept and are waste.

    Args:
        fills: The sheets.
        area: Of each, by its id.
    """
    kept = [part for fill in fills for part in fill.parts if part.kept]
    whole = sum(area[fill.id] for fill in fills)
    used = sum(fill.used * area[fill.id] for fill in fills) / whole
    left = sum(fill.kept * area[fill.id] for fill in fills) / whole
    boards, keep, waste = whole_percents([used, left, max(0.0, 1 - used - left)])
    if not kept:
        return statement("why-waste", boards=boards, waste=waste)
    return statement(
        "why-waste_and_kept",
        boards=boards,
        keep=keep,
        waste=waste,
        kept=tuple(Name(name=part.name) for part in kept),
        wide=tuple(part.size[0] for part in kept),
        high=tuple(part.size[1] for part in kept),
    )


def marks_of(plan: Plan) -> dict[str, str]:
    """By piece, the mark of its board."""
    return {board.piece: board.mark for surface in plan.surfaces for board in surface.boards}


def _size(size: tuple[int, int]) -> tuple[Measure, Measure]:
    return length(size[0]), length(size[1])
