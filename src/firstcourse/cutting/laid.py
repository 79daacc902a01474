"""A layout with its cutting, in the arrays that `relaying` works on: which blank lies where on which sheet."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from firstcourse.cutting.model import Blank
from firstcourse.cutting.packing import Filling, Room

if TYPE_CHECKING:
    from firstcourse.cutting.kernels import Ints


HOPEFUL = 1.02
"""A layout of so many times the area of the sheets left may still be laid again with less."""


class Laid(NamedTuple):
    """A state of `relaying.relay`; it changes in place.

    Attributes:
        arrangement: Arrangement of every field.
        chosen: Breaks of every course.
        num_chosen: How many.
        room_of: Room of every sheet.
        items: The blanks, by slot.
        place: By slot, where it lies on its sheet.
        member: By sheet, its slots in the order of packing; the last line is the heap of what fits nowhere.
        num_member: By sheet, how many.
        cuts: By sheet, the number of cuts.
    """

    arrangement: "Ints"
    chosen: "Ints"
    num_chosen: "Ints"
    room_of: "Ints"
    items: "Ints"
    place: "Ints"
    member: "Ints"
    num_member: "Ints"
    cuts: "Ints"

    def copy(self) -> "Laid":
        """The same, to be changed."""
        return Laid(*(part.copy() for part in self))

    @property
    def num_cuts(self) -> int:
        """Cuts over all sheets."""
        return int(self.cuts.sum())

    @property
    def num_blanks(self) -> int:
        """Blanks over all sheets."""
        return int(self.num_member.sum())

    def cost(self, rooms: "Ints") -> int:
        """Of all sheets.

        Args:
            rooms: As `kernels.pack` has them.
        """
        return int(rooms[self.room_of, 3].sum())

    def without_emptiest(self, rooms: "Ints", num_kept: int) -> "Laid | None":
        """The same without the sheet bought that holds least, its blanks in the heap; None if that is hopeless."""
        import numpy as np

        best: tuple[int, int] | None = None
        blanks = room_left = 0
        for sheet, room in enumerate(self.room_of.tolist()):
            slots = self.member[sheet, : self.num_member[sheet]]
            held = int((self.items[slots, 0] * self.items[slots, 1]).sum())
            blanks, room_left = blanks + held, room_left + int(rooms[room, 0] * rooms[room, 1])
            if room >= num_kept and (best is None or (held, sheet) < best):
                best = (held, sheet)
        if best is None:
            return None
        gone = best[1]
        room_left -= int(rooms[self.room_of[gone], 0] * rooms[self.room_of[gone], 1])
        if blanks > room_left * HOPEFUL:
            return None
        stay = [sheet for sheet in range(len(self.room_of)) if sheet != gone]
        return Laid(
            self.arrangement.copy(), self.chosen.copy(), self.num_chosen.copy(), self.room_of[stay],
            self.items.copy(), self.place.copy(), self.member[[*stay, gone]], self.num_member[[*stay, gone]],
            np.append(self.cuts[stay], 0),
        )  # fmt: skip

    def fillings(self, blanks: dict[tuple[int, int, int, int], Blank], rooms: Sequence[Room]) -> list[Filling]:
        """The sheets that hold anything, cut as recorded.

        Args:
            blanks: By number of field, course, interval, and blank in it.
            rooms: What `room_of` numbers.
        """
        found = []
        for sheet, room in enumerate(self.room_of.tolist()):
            filling = Filling(rooms[room])
            for slot in self.member[sheet, : self.num_member[sheet]].tolist():
                _, _, _, field, course, cell = self.items[slot].tolist()
                x, y, turned, across, _, _ = self.place[slot].tolist()
                blank = blanks[field, course, cell // 1024, cell % 1024]
                unit = blank.w // int(self.items[slot, 0])
                index = next(i for i, free in enumerate(filling.free) if free[1:3] == (x * unit, y * unit))
                filling.place(blank, index, bool(turned), "x" if across else "y")
            if filling.placed:
                found.append(filling)
        return found


def laid(
    state: Sequence["Ints"], tables: Sequence[Any], rooms: "Ints", num_kept: int, least: int, most: int
) -> Laid:
    """A state of `kernels.anneal`, packed.

    Args:
        state: Arrangement, breaks, how many of them, manner of packing, sheets to buy.
        tables: The arrays that describe the fields.
        rooms: As `kernels.pack` has them.
        num_kept: So many of them are kept rectangles.
        least: Least side of any blank.
        most: Most blanks any state has.
    """
    import numpy as np

    from firstcourse.cutting import kernels

    arrangement, chosen, num_chosen, manner, buy = (part.copy() for part in state)
    course_first, allowed, kind, break_first = tables[2], tables[4], tables[5], tables[6]
    cell_first, blank_first, blank_num, blank_w, blank_h = tables[8:]
    items = np.zeros((most, 6), np.int64)
    num = 0
    for field, a in enumerate(arrangement.tolist()):
        for course in range(int(course_first[a + 1] - course_first[a])):
            k = kind[course_first[a] + course]
            breaks = break_first[k + 1] - break_first[k]
            for i in range(int(num_chosen[field, course]) - 1):
                cell = cell_first[k] + chosen[field, course, i] * breaks + chosen[field, course, i + 1]
                for n in range(int(blank_num[cell])):
                    blank = blank_first[cell] + n
                    items[num] = (blank_w[blank], blank_h[blank], allowed[a], field, course, n + 1024 * i)
                    num += 1
    w, h, mask = (np.ascontiguousarray(items[:, column]) for column in range(3))
    room_of, placed = np.zeros(most + num_kept, np.int64), np.zeros((most, 8), np.int64)
    sheets, _, _ = kernels.pack(
        w, h, mask, num, rooms, num_kept, manner[1], buy, least, manner[0], np.zeros(most, np.int64),
        np.zeros(most, np.int64), np.zeros((2 * most + num_kept + 2, 5), np.int64),
        np.zeros(most + num_kept, np.int64), room_of, placed,
    )  # fmt: skip
    place, member = np.zeros((most, 6), np.int64), np.zeros((sheets + 1, most), np.int64)
    num_member, cuts = np.zeros(sheets + 1, np.int64), np.zeros(sheets + 1, np.int64)
    for slot, sheet, x, y, turned, across, wide, high in placed[:num].tolist():
        place[slot] = (x, y, turned, across, wide, high)
        member[sheet, num_member[sheet]] = slot
        num_member[sheet] += 1
        bw, bh = (h[slot], w[slot]) if turned else (w[slot], h[slot])
        cuts[sheet] += int(wide > bw) + int(high > bh)
    return Laid(arrangement, chosen, num_chosen, room_of[:sheets].copy(), items, place, member, num_member, cuts)
