"""Where to break and how to cut, chosen together: annealing over break patterns, each packed by a fast packer.

Whole layouts are packed first; then a sheet is taken away, and parts of layout and cutting are done again until
what was on it lies elsewhere.

A field is to be filled with courses. Each course runs from its first break position to its last; where else it is
broken is free within the rules, and so is which arrangement of courses is taken. Every interval between two
neighbouring breaks needs known blanks. The choice buys the fewest sheets, then has the fewest blanks,
then the fewest cuts.

How a caller uses it: for each surface build one `Field`; for each way to divide the surface into courses one
`Arrangement`; for each course one `Course` whose breaks are the places where a seam may run (its middle, on a
common scale for all courses of the arrangement) and whose intervals give the blanks, in whole units, of the boards
between two such seams. Intervals that are no legal board (too long, too short, a seam in a forbidden place) are
simply left out. Surfaces that may be divided alike get the same `like`. Equal courses should be one object: it is
laid out in memory once. `Choice.picks` then names the arrangement and the breaks of each field, from which the
caller builds its boards again; blank ids `field#course.interval.number` (all from 0) tie them to the parts of
`Choice.sheets`. Which stocks a field may be cut from is said by each arrangement, so that arrangements made for
sheets of different sizes stand beside each other. A caller that knows how little any legal layout costs passes it
as `bound`: the search stops there and `Choice.proven` says so.
"""

from collections.abc import Sequence
from itertools import pairwise
from math import gcd, log
from typing import TYPE_CHECKING, Any

from firstcourse.cutting.choices import Choice, ChoiceField, Course, Pick, Size
from firstcourse.cutting.laid import Laid, laid
from firstcourse.cutting.model import Blank, CannotCutError, KeptSize, StockSize
from firstcourse.cutting.packing import Room
from firstcourse.cutting.room_ways import room_table, rooms_of
from firstcourse.errors import InputValueError

if TYPE_CHECKING:
    from firstcourse.cutting.kernels import Ints


RUNS = (1, 2, 8, 24)
"""Runs by effort; a level does all runs of the levels below first, so it never ends worse."""
STEPS = (1_000, 20_000, 20_000, 20_000)
"""Packings tried in each run, by effort."""
PARTS = (0, 25_000, 100_000, 200_000)
"""Steps of each run that lay and cut again a part, to do without a sheet, by effort."""
TRIMS = (2_000, 25_000, 100_000, 300_000)
"""Such steps to make fewer boards and cuts, by effort."""
HEAT, WEIGHTS = (30_000, 2_000), (1_000_000, 1_000_000, 0, 4_000)
"""Packing whole layouts: first and last temperature; objective per sheet, for the load of the emptiest, per cut
and per blank."""
PART_HEATS = ((20_000, 4_000), (40_000, 2_000))
"""Doing without a sheet: first and last temperature, taking turns from run to run. Rooms that must fill their
sheets to the last strip come out in the cooler runs, those with few candidates in the hotter."""
PART_WEIGHTS = (1_000_000, 10_000, 0, 4_000, 300_000)
"""Doing without a sheet: objective for a sheet's area that fits nowhere, per blank of it, per cut, per blank, and
for the squares of the largest rests."""
TRIM_HEAT, TRIM_WEIGHTS = (30_000, 1_000), (1_000_000, 1_000_000, 10_000, 20_000, 0)
"""Making fewer boards, then fewer cuts: what fits nowhere is worth more than any board."""
STARTS, START_TRIMS = (0, 1, 1, 6), (0, 25_000, 100_000, 100_000)
"""By effort, how many more layouts of the same cost are made from new to make fewer boards and cuts in; steps for
each."""
WORTHWHILE, MOST_TRIMS = 10, (1, 6, 6, 6)
"""Fewer are sought again while a round takes away one board or cut in so many; by effort, so often at most."""
FULL_WORK = 24
"""Sheets up to which all steps are done. Laying a part again takes about as much longer as there are more sheets,
packing whole layouts as the square of that: so many fewer are done, and the work of a level has an end."""
LEAST_STEPS = 500
"""Steps that are done however many sheets there are."""
MOST_ROOMS = 60
"""Stocks and kept rectangles together: one bit of a number each."""


def choose(
    fields: Sequence[ChoiceField],
    stock: Sequence[StockSize],
    kept: Sequence[KeptSize] = (),
    *,
    effort: int = 1,
    bound: int = 0,
    patience: int = 1,
) -> Choice:
    """Choose arrangement and breaks of every field so that all blanks come from the cheapest sheets.

    Args:
        fields: Ids must be distinct.
        stock: Sheets that can be bought in any number; ids must be distinct.
        kept: Rectangles at hand, used where that helps.
        effort: Level 0 to 3, counted in packings and so the same on every machine; more is never worse.
        bound: The least that any legal layout costs, if known.
        patience: How many times longer than usual each run goes on doing without a sheet, and how many times
            as many starts are made to spare blanks and cuts.

    Returns:
        The best choice found: least cost, then fewest blanks, then fewest cuts.

    Raises:
        InputValueError: If there are no fields or stocks, a field has no arrangement, there are too many stocks
            and kept rectangles, the effort is outside 0 to 3, or the patience is below 1.
        CannotCutError: If no legal pattern of breaks was found whose blanks fit the sheet.

    Example:
        >>> course = Course((0, 20, 40), ((0, 1, ((20, 30),)), (1, 2, ((20, 30),)), (0, 2, ((40, 30),))))
        >>> choice = choose([Field("f", (Arrangement((course,), 10),))], [StockSize("s", 60, 36, 1)], bound=1)
        >>> len(choice.sheets), choice.picks[0].breaks
        (1, ((0, 2),))
    """
    if not 0 <= effort < len(RUNS):
        raise InputValueError(f"'effort' must be 0 to {len(RUNS) - 1}: {effort}")
    if patience < 1:
        raise InputValueError(f"'patience' must be at least 1: {patience}")
    if not fields or len({field.id for field in fields}) != len(fields):
        raise InputValueError("'fields' must not be empty and have distinct ids")
    for field in fields:
        if not field.arrangements:
            raise InputValueError(f"field '{field.id}' has no arrangement")
    if not stock or len(stock) + len(kept) > MOST_ROOMS:
        raise InputValueError(f"'stock' must not be empty and with 'kept' have at most {MOST_ROOMS} entries")
    search = _Search(fields, stock, kept)
    sheets = bound // max(1, min(size.cost for size in stock))

    def steps(number: int, power: int = 1) -> int:
        """So many of the steps as there are sheets for."""
        share = min(1.0, FULL_WORK / max(1, sheets)) ** power
        return max(min(number, LEAST_STEPS), int(number * share))

    for level in range(effort + 1):
        whole, parts = steps(STEPS[level], 2), patience * steps(PARTS[level])
        for _ in range(RUNS[level]):
            if search.cost <= bound and search.best is not None:
                break
            search.run(whole, parts, bound)
            search.go_on(parts, bound)
        search.trim(steps(TRIMS[level]), MOST_TRIMS[level])
        for _ in range(patience * STARTS[level]):
            search.start_again(whole, parts, steps(START_TRIMS[level]), MOST_TRIMS[level], bound)
    return search.choice(bound)


State = tuple["Ints", "Ints", "Ints", "Ints", "Ints"]
"""Arrangement and breaks of every field, manner of packing, sheets to buy; as `kernels.anneal` has them."""


class _Search:
    """The arrays a kernel works on and the best state so far."""

    def __init__(
        self, fields: Sequence[ChoiceField], stock: Sequence[StockSize], kept: Sequence[KeptSize]
    ) -> None:
        import numpy as np

        from firstcourse.cutting import kernels

        self.fields, self.rooms = fields, rooms_of(stock, kept)
        self.num_kept = len(kept)
        self.tables, self.least, per_field, self.unit = _tables(fields, self.rooms)
        self.most = sum(per_field)
        courses = max(len(a.courses) for field in fields for a in field.arrangements)
        breaks = max(len(c.breaks) for field in fields for a in field.arrangements for c in a.courses)
        self.shape = (len(fields), courses, breaks)
        self.seed: Ints = np.array([1], np.int64)
        self.chance: Ints = np.array(
            [round(-1024 * log((i + 0.5) / kernels.CHANCES)) for i in range(kernels.CHANCES)], np.int64
        )
        self.table = room_table(self.rooms, self.unit)
        self.best: Laid | None = None
        self.cost = self.cuts = self.blanks = -1
        self.num_runs = 0

    def _empty(self) -> State:
        import numpy as np

        return (
            np.zeros(self.shape[0], np.int64),
            np.zeros(self.shape, np.int64),
            np.zeros(self.shape[:2], np.int64),
            np.array([0, int(self.num_kept > 0)], np.int64),
            np.full(self.most + 1, self.num_kept, np.int64),
        )

    def run(self, steps: int, parts: int, bound: int) -> None:
        """Pack whole layouts, from a new one on; then do without a sheet as often as that succeeds."""
        self._take(self._found(steps, parts, bound))

    def _found(self, steps: int, parts: int, bound: int) -> Laid:
        import numpy as np

        from firstcourse.cutting import kernels

        state = self._empty()
        ordinary = min(room.cost for room in self.rooms[self.num_kept :])
        _, cost, _, _ = kernels.anneal(
            self.tables, self.table, self.num_kept, ordinary, self.least, *state, self.seed, steps, *HEAT,
            np.array(WEIGHTS, np.int64), bound, self.chance, self.most,
        )  # fmt: skip
        if cost < 0:
            raise CannotCutError(self.fields[0].id)
        found = laid(state, self.tables, self.table, self.num_kept, self.least, self.most)
        found = self._with_fewer(found, parts, bound, PART_HEATS[self.num_runs % len(PART_HEATS)])
        self.num_runs += 1
        return found

    def go_on(self, parts: int, bound: int) -> None:
        """Do without a sheet of the best found so far, at the temperatures whose turn is next."""
        if self.best is not None:
            self._take(self._with_fewer(self.best, parts, bound, PART_HEATS[self.num_runs % len(PART_HEATS)]))

    def _with_fewer(self, found: Laid, parts: int, bound: int, heat: tuple[int, int]) -> Laid:
        """The same with a sheet less, as often as that succeeds."""
        while parts and found.cost(self.table) > bound:
            fewer = found.without_emptiest(self.table, self.num_kept)
            if fewer is None or not self._relay(fewer, parts, heat, PART_WEIGHTS):
                break
            found = fewer
        return found

    def _relay(self, state: Laid, steps: int, heat: tuple[int, int], weights: tuple[int, ...]) -> bool:
        import numpy as np

        from firstcourse.cutting import relaying

        empty: bool = relaying.relay(
            self.tables, self.table, self.least, *state, self.seed, steps, *heat, np.array(weights, np.int64),
            self.chance,
        )  # fmt: skip
        return empty

    def _take(self, state: Laid) -> None:
        found = (state.cost(self.table), state.num_blanks, state.num_cuts)
        if self.best is None or found < (self.cost, self.blanks, self.cuts):
            self.cost, self.blanks, self.cuts = found
            self.best = state

    def trim(self, steps: int, rounds: int) -> None:
        """Make fewer blanks and cuts in the same sheets; many small blanks at first may take several rounds."""
        if self.best is not None:
            self._take(self._trimmed(self.best, steps, rounds))

    def start_again(self, steps: int, parts: int, trims: int, rounds: int, bound: int) -> None:
        """From a new layout come to the same cost or less and make fewer there: few come out of any one start."""
        if self.best is not None:
            found = self._found(steps, parts, bound)
            if found.cost(self.table) <= self.cost:
                self._take(self._trimmed(found, trims, rounds))

    def _trimmed(self, best: Laid, steps: int, rounds: int) -> Laid:
        # Its numbers are drawn apart, so that what is spared here never changes the sheets of a later run.
        drawn = self.seed.copy()
        for _ in range(rounds):
            before = best.num_blanks + best.num_cuts
            state = best.copy()
            self._relay(state, steps, TRIM_HEAT, TRIM_WEIGHTS)
            if (state.num_blanks, state.num_cuts) < (best.num_blanks, best.num_cuts):
                best = state
            if (before - best.num_blanks - best.num_cuts) * WORTHWHILE <= before:
                break
        self.seed[:] = drawn
        return best

    def choice(self, bound: int) -> Choice:
        """The best state as a value."""
        if self.best is None:
            raise CannotCutError(self.fields[0].id)
        every = tuple(dict.fromkeys(room.stock for room in self.rooms))
        picks = []
        blanks: dict[tuple[int, int, int, int], Blank] = {}
        for f, field in enumerate(self.fields):
            number = int(self.best.arrangement[f] - self.tables[0][f])
            courses = field.arrangements[number].courses
            stocks = field.arrangements[number].stocks or every
            breaks = tuple(
                tuple(self.best.chosen[f, c, : int(self.best.num_chosen[f, c])].tolist())
                for c in range(len(courses))
            )
            picks.append(Pick(field.id, number, breaks))
            for c, course in enumerate(courses):
                sizes = {(i, j): found for i, j, found in course.intervals}
                for interval, pair in enumerate(pairwise(breaks[c])):
                    for n, (w, h) in enumerate(sizes[pair]):
                        blanks[f, c, interval, n] = Blank(f"{field.id}#{c}.{interval}.{n}", w, h, stocks)
        sheets = [filling.sheet() for filling in self.best.fillings(blanks, self.rooms)]
        return Choice(tuple(picks), tuple(sheets), self.cost, bound)


def _tables(fields: Sequence[ChoiceField], rooms: Sequence[Room]) -> tuple[tuple[Any, ...], int, list[int], int]:
    """The arrays of `kernels`, the least side of any blank, the most blanks of each field, and the unit.

    Sides of blanks are divided by the greatest number that divides them all.
    """
    import numpy as np

    field_first, goes_with, course_first, stagger, allowed, kind = [0], [], [0], [], [], []
    break_first, cell_first = [0], [0]
    position: list[int] = []
    blank_first: list[int] = []
    blank_num: list[int] = []
    sizes: list[Size] = []
    kinds: dict[int, int] = {}
    likes: dict[str, int] = {}
    most_of_kind: list[int] = []
    per_field = []
    for number, field in enumerate(fields):
        goes_with.append(
            likes.setdefault(f"{field.like}/{len(field.arrangements)}" if field.like else f"#{number}", number)
        )
        for arrangement in field.arrangements:
            stagger.append(arrangement.stagger)
            allowed.append(
                sum(
                    (not arrangement.stocks or room.stock in arrangement.stocks) << bit
                    for bit, room in enumerate(rooms)
                )
            )
            for course in arrangement.courses:
                if id(course) not in kinds:
                    kinds[id(course)] = len(most_of_kind)
                    position += course.breaks
                    break_first.append(len(position))
                    num = len(course.breaks)
                    first, count = [0] * num * num, [-1] * num * num
                    for i, j, blanks in course.intervals:
                        first[i * num + j], count[i * num + j] = len(sizes), len(blanks)
                        sizes += blanks
                    blank_first += first
                    blank_num += count
                    cell_first.append(len(blank_first))
                    most_of_kind.append(_most_blanks(course))
                kind.append(kinds[id(course)])
            course_first.append(len(kind))
        field_first.append(len(stagger))
        per_field.append(
            max(sum(most_of_kind[kinds[id(course)]] for course in a.courses) for a in field.arrangements)
        )
    if not sizes:
        raise CannotCutError(fields[0].id)
    unit = gcd(*(side for size in sizes for side in size))
    lists = (field_first, goes_with, course_first, stagger, allowed, kind, break_first, position, cell_first,
             blank_first, blank_num, [w // unit for w, _ in sizes], [h // unit for _, h in sizes])  # fmt: skip
    return tuple(np.array(values, np.int64) for values in lists), min(map(min, sizes)) // unit, per_field, unit


def _most_blanks(course: Course) -> int:
    """Most blanks of any pattern of a course."""
    most = [-1] * len(course.breaks)
    most[0] = 0
    for i, j, blanks in sorted(course.intervals):
        if most[i] >= 0:
            most[j] = max(most[j], most[i] + len(blanks))
    return max(most[-1], 1)
