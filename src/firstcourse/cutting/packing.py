"""Packing by edge-to-edge cuts: each blank takes the corner of a free rectangle, two cuts set it free.

A sheet is a record of placements. Its free rectangles and its cuts follow from them, so the cuts always
replay.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from firstcourse.cutting.model import Blank, CannotCutError, CutLine, CutPart, CutSheet


@dataclass(frozen=True, slots=True)
class Room:
    """Something to cut from: a stock's sheet, or the kept rectangle `kept` of it at no cost."""

    stock: str
    kept: str | None
    w: int
    h: int
    cost: int
    may_turn: bool
    least_cut: int = 0

    def holds(self, blank: Blank) -> bool:
        """Whether a blank is allowed on this and fits it."""
        if self.stock not in blank.allowed:
            return False
        turns = blank.may_turn and self.may_turn
        return (blank.w <= self.w and blank.h <= self.h) or (turns and blank.h <= self.w and blank.w <= self.h)


@dataclass(frozen=True, slots=True)
class Manner:
    """How a packing chooses: the order of blanks, which free rectangle, and which way to cut first."""

    order: Literal["area", "long", "high", "wide"]
    fit: Literal["area", "short"]
    split: Literal["short", "long", "x", "y"]


ORDERS: tuple[Literal["area", "long", "high", "wide"], ...] = ("area", "long", "high", "wide")
SPLITS: tuple[Literal["short", "long", "x", "y"], ...] = ("short", "long", "x", "y")
MANNERS = tuple(Manner(order, fit, split) for split in SPLITS for order in ORDERS for fit in ("area", "short"))


@dataclass(slots=True)
class Filling:
    """A sheet being filled. `free` holds (part name, x, y, w, h) of what is left; `thin` counts thin cuts."""

    room: Room
    free: list[tuple[str, int, int, int, int]] = field(default_factory=list)
    cuts: list[CutLine] = field(default_factory=list)
    placed: list[tuple[str, int, int, bool, Blank]] = field(default_factory=list)
    thin: int = 0

    def __post_init__(self) -> None:
        self.free.append(("", 0, 0, self.room.w, self.room.h))

    @classmethod
    def of(cls, sheet: CutSheet, room: Room, blanks: Mapping[str, Blank]) -> "Filling":
        """A finished sheet, to be filled further or packed again; `blanks` by id."""
        filling = cls(room, cuts=list(sheet.cuts), thin=thin_strips(sheet, room.least_cut))
        filling.free = [(part.name, *part.at, *part.size) for part in sheet.parts if part.blank is None]
        filling.placed = [
            (part.name, *part.at, part.turned, blanks[part.blank])
            for part in sheet.parts
            if part.blank is not None
        ]
        return filling

    @property
    def filled(self) -> int:
        """Area of the blanks."""
        return sum(blank.w * blank.h for *_, blank in self.placed)

    @property
    def largest_left(self) -> int:
        """Area of the largest free rectangle."""
        return max((w * h for *_, w, h in self.free), default=0)

    def best_place(self, blank: Blank, fit: str) -> tuple[int, int, int, bool] | None:
        """Best free rectangle as (waste, second waste, index, turned), least first; None where none holds it."""
        if self.room.stock not in blank.allowed:
            return None
        bw, bh = blank.w, blank.h
        turns = blank.may_turn and self.room.may_turn and bw != bh
        covers, by_area = bw * bh, fit == "area"
        best: tuple[int, int, int, bool] | None = None
        for index, (_, _, _, w, h) in enumerate(self.free):
            upright, turned = bw <= w and bh <= h, turns and bh <= w and bw <= h
            if not upright and not turned:
                continue
            area = w * h - covers
            if by_area and best is not None and area > best[0]:
                continue
            # Both ways waste the same area, so the one that leaves the shorter rest is better; upright at a tie.
            short = min(w - bw, h - bh) if upright else min(w - bh, h - bw)
            if upright and turned:
                other = min(w - bh, h - bw)
                short, turned = min(short, other), other < short
            found = (area, short, index, turned) if by_area else (short, area, index, turned)
            if best is None or found < best:
                best = found
        return best

    def place(self, blank: Blank, index: int, turned: bool, split: str) -> None:
        """Put a blank in the lower left corner of free rectangle `index` and cut it out."""
        name, x, y, w, h = self.free.pop(index)
        bw, bh = (blank.h, blank.w) if turned else (blank.w, blank.h)
        right, above = w - bw, h - bh
        across = split == "x" or (split == "short" and right < above) or (split == "long" and right >= above)
        for along in ("x", "y") if across else ("y", "x"):
            if along == "x" and above:
                self.thin += above < self.room.least_cut
                self.cuts.append(CutLine(name, "x", bh, (name + "a", name + "b")))
                self.free.append((name + "b", x, y + bh, w, above))
                name, h = name + "a", bh
            elif along == "y" and right:
                self.thin += right < self.room.least_cut
                self.cuts.append(CutLine(name, "y", bw, (name + "a", name + "b")))
                self.free.append((name + "b", x + bw, y, right, h))
                name, w = name + "a", bw
        self.placed.append((name, x, y, turned, blank))

    def sheet(self) -> CutSheet:
        """The finished sheet, its largest free rectangle marked to be kept."""
        largest = max(self.free, key=lambda free: (free[3] * free[4], free[0]), default=None)
        parts = [
            CutPart(name, (x, y), (blank.h, blank.w) if turned else (blank.w, blank.h), blank.id, turned)
            for name, x, y, turned, blank in self.placed
        ]
        parts += [
            CutPart(name, (x, y), (w, h), keep=(name, x, y, w, h) == largest) for name, x, y, w, h in self.free
        ]
        room = self.room
        parts.sort(key=lambda part: part.name)
        return CutSheet(room.stock, room.kept, room.w, room.h, tuple(self.cuts), tuple(parts))


def thin_strips(sheet: CutSheet, least: int) -> int:
    """How many cuts of a sheet leave a right or upper part narrower than `least`."""
    sizes = {"": (sheet.w, sheet.h)}
    found = 0
    for cut in sheet.cuts:
        w, h = sizes[cut.of]
        rest = (h if cut.along == "x" else w) - cut.at
        near, far = ((w, cut.at), (w, rest)) if cut.along == "x" else ((cut.at, h), (rest, h))
        sizes[cut.gives[0]], sizes[cut.gives[1]] = near, far
        found += rest < least
    return found


def in_order(blanks: Iterable[Blank], order: str) -> list[Blank]:
    """Blanks largest first in the sense of `order`; equal ones by id."""
    keys: dict[str, Callable[[Blank], tuple[int, int]]] = {
        "area": lambda b: (-b.w * b.h, -max(b.w, b.h)),
        "long": lambda b: (-max(b.w, b.h), -min(b.w, b.h)),
        "high": lambda b: (-b.h, -b.w),
        "wide": lambda b: (-b.w, -b.h),
    }
    key = keys[order]
    return sorted(blanks, key=lambda blank: (key(blank), blank.id))


def pack(
    blanks: Sequence[Blank], rooms: Sequence[Room], kept: Sequence[Room], manner: Manner,
    filled: Sequence[Filling] = (), limit: int | None = None,
) -> list[Filling]:  # fmt: skip
    """Pack blanks in the order given, each where it fits best, buying a sheet only when it fits nowhere.

    Args:
        blanks: In the order they are to be placed.
        rooms: Sheets that can be bought in any number.
        kept: Rectangles at hand, tried before any other.
        manner: Which free rectangle and which split; its order is the caller's business.
        filled: Sheets already begun; they are filled further in place.
        limit: What the sheets bought may cost; a packing that costs more is given up.

    Raises:
        CannotCutError: If a blank fits none of `rooms` nor what is left of the others, or for more than `limit`.
    """
    fillings = [*(Filling(room) for room in kept), *filled]
    largest = [filling.largest_left for filling in fillings]
    cost = 0
    for blank in blanks:
        covers = blank.w * blank.h
        best: tuple[bool, int, int, int, bool] | None = None
        where = -1
        for number, left in enumerate(largest):
            if left < covers:
                continue
            filling = fillings[number]
            place = filling.best_place(blank, manner.fit)
            if place is not None:
                found = (filling.room.kept is None, *place)
                if best is None or found < best:
                    best, where = found, number
        if best is None:
            holding = [room for room in rooms if room.holds(blank)]
            if not holding:
                raise CannotCutError(blank.id)
            # The cheapest by area, compared in whole numbers after scaling to a common denominator.
            room = min(holding, key=lambda room: (room.cost * 10**9 // (room.w * room.h), room.cost, room.stock))
            cost += room.cost
            filling = Filling(room)
            place = filling.best_place(blank, manner.fit)
            if place is None or (limit is not None and cost > limit):
                raise CannotCutError(blank.id)
            best, where = (True, *place), len(fillings)
            fillings.append(filling)
            largest.append(0)
        fillings[where].place(blank, best[3], best[4], manner.split)
        largest[where] = fillings[where].largest_left
    return [filling for filling in fillings if filling.placed]


def manners(blanks: Sequence[Blank], some: Sequence[Manner]) -> Iterator[tuple[list[Blank], Manner]]:
    """The blanks in the order of each of some manners; a manner that packs like one before it is left out."""
    ordered: dict[str, list[Blank]] = {}
    like: dict[str, str] = {}
    for manner in some:
        order = manner.order
        if order not in like:
            made = in_order(blanks, order)
            like[order] = next((name for name, known in ordered.items() if known == made), order)
            ordered[order] = made
        if like[order] == order:
            yield ordered[order], manner
