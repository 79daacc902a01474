"""Choose each surface's courses and seams by what all surfaces together cost to cut."""

from collections.abc import Sequence
from typing import NamedTuple

from firstcourse.boards import (
    SurfaceLayout,
    layout_alternatives,
    least_board_area,
    least_disturbed,
    practice_layout,
)
from firstcourse.cutting import CannotCutError, CutSheet, CuttingPlan
from firstcourse.job import Job
from firstcourse.plan import Piece, Stock
from firstcourse.reuse import ONCE, Kept, Steps
from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.share import Share, in_turn
from firstcourse.sheets.cut import about_cut, cut_pieces, kept_sizes, kept_to_cut, sizes_to_cut, stock_sizes
from firstcourse.sheets.finished import Finished, best_together, finished_layouts
from firstcourse.sheets.together import Laid, Surfaced, Way, chosen_together, ways
from firstcourse.sheets.weighing import Rough, Value, least_cost, rough_value, value_of
from firstcourse.units import Tape

_LEAST_CUT = "boards.cut.least"


class Boarded(NamedTuple):
    """The layouts of all surfaces, in their order, how their pieces are cut, and plain practice for comparison."""

    layouts: tuple[SurfaceLayout, ...]
    cutting: CuttingPlan
    practice: tuple[SurfaceLayout, ...]


class _Best(NamedTuple):
    value: Value
    layouts: tuple[SurfaceLayout, ...]
    cutting: CuttingPlan


class _Room(NamedTuple):
    """One room by itself: the best by level of effort, the findings it may not exceed, and plain practice."""

    best: list[_Best]
    faults: int
    practice: list[SurfaceLayout]


type _Task = tuple[list[Surfaced], bool]
"""The surfaces of a room, and whether it is the first."""


def board(
    surfaces: tuple[Surfaced, ...],
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    *,
    effort: int,
    share: Share = in_turn,
    steps: Steps = ONCE,
) -> Boarded:
    """The layouts that are cut at least cost, starting from each surface's own best.

    Plain practice is weighed as well, in each room and over all of them. A layout that relaxes a rule, or asks for
    more members than the surface's own best, is not. Seams are chosen room by room, so that the work grows with
    the number of rooms and no faster; then all rooms share sheets. The work is counted, so the choice is the same
    everywhere, and every level of effort begins with the work of the level below and keeps what was best.

    Args:
        surfaces: All surfaces of the job.
        stock: All sheets of the job.
        job: For its tape and its offcuts.
        rules: Rules in force.
        effort: Level 0 to 3.
        share: How rooms are shared out; the choice does not depend on it.
        steps: Does what is done for each room and surface, or reuses it.
    """
    rooms: dict[str, list[Surfaced]] = {}
    for item in surfaces:
        rooms.setdefault(item.surface.room, []).append(item)
    # Processes need not be sent what only this one reads.
    common = job.model_copy(update={"rooms": (), "tiles": (), "repeats": (), "done": None})
    tasks = [(members, not number) for number, members in enumerate(rooms.values())]
    only = len(tasks) == 1
    found = _rooms(tasks, stock, common, rules, effort, only, share=share, steps=steps)
    by_surface = {layout.surface_id: layout for room in found for layout in room.practice}
    practice = tuple(by_surface[item.surface.id] for item in surfaces)
    if only:
        return Boarded(found[0].best[-1].layouts, found[0].best[-1].cutting, practice)
    best: _Best | None = None
    for level in range(effort + 1):
        shared = _shared(surfaces, found, stock, job, rules, level)
        shared = _or_practice(surfaces, practice, shared, stock, job, rules, level)
        best = shared if best is None else min(best, shared, key=lambda found: found.value)
    assert best is not None
    return Boarded(best.layouts, best.cutting, practice)


def _rooms(
    tasks: Sequence[_Task],
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    effort: int,
    only: bool,
    *,
    share: Share,
    steps: Steps,
) -> list[_Room]:
    """Every room by itself; those that are not kept are shared out."""
    keys = [steps.key(_board_task, task, stock, job, rules, effort, only) for task in tasks]
    kept = {key: found.value for key in keys if (found := steps.kept(key, rules)) is not None}
    left = [(key, task) for key, task in zip(keys, tasks, strict=True) if key not in kept]
    given = (stock, job, rules, effort, only, steps)
    made = share(_board_task, [task for _, task in left], *given, ready=_warm if effort else None)
    for (key, _), (room, asked) in zip(left, made, strict=True):
        rules.asked.update(entry.id for entry in asked)
        steps.keep(key, Kept(room, asked))
    again = iter(room for room, _ in made)
    return [kept[key] if key in kept else next(again) for key in keys]


def _warm() -> None:
    """Load the kernels once, not in each process."""
    from firstcourse.boards import warm as warm_strips
    from firstcourse.cutting import warm

    warm()
    warm_strips()


def _shared(
    surfaces: tuple[Surfaced, ...],
    found: list[_Room],
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    level: int,
) -> _Best:
    """What was found room by room, all rooms sharing sheets."""
    layouts = {layout.surface_id: layout for room in found for layout in room.best[level].layouts}
    ordered = tuple(layouts[item.surface.id] for item in surfaces)
    sheets = [sheet for room in found for sheet in room.best[level].cutting.sheets]
    return _weighed(surfaces, ordered, sheets, stock, job, rules, level)


def _weighed(
    surfaces: Sequence[Surfaced],
    layouts: tuple[SurfaceLayout, ...],
    sheets: Sequence[CutSheet],
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    level: int,
) -> _Best:
    pieces, allowed = demand(surfaces, layouts)
    cutting = cut_pieces(
        pieces, allowed, stock, job, effort=level, known=sheets, least_cut=rules.ticks(_LEAST_CUT)
    )
    return _Best(value_of(cutting, layouts, stock, rules), layouts, cutting)


def _or_practice(
    surfaces: tuple[Surfaced, ...],
    practice: Sequence[SurfaceLayout],
    found: _Best,
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    level: int,
) -> _Best:
    """What was found, with plain practice where rooms that share its offcuts come out cheaper than by themselves.

    A surface whose practice breaks more rules than its layout keeps the layout.
    """
    layouts, sheets, cheaper = list(found.layouts), list(found.cutting.sheets), False
    for members in _sharing(list(surfaces)):
        items = [surfaces[number] for number in members]
        cost = _cost_of(items, found.cutting, stock)
        tried = [_cleaner(practice[number], layouts[number]) for number in members]
        if cost <= _least(items, stock, job, rules) or tried == [layouts[number] for number in members]:
            continue
        pieces, allowed = demand(items, tried)
        try:
            cutting = cut_pieces(
                pieces, allowed, stock, job, effort=0, limit=cost - 1, least_cut=rules.ticks(_LEAST_CUT)
            )
        except CannotCutError:
            continue
        if cutting.cost >= cost:
            continue
        before = {piece.id for number in members for piece in layouts[number].pieces}
        sheets = [sheet for sheet in sheets if not any(part.blank in before for part in sheet.parts)]
        sheets += cutting.sheets
        for number, layout in zip(members, tried, strict=True):
            layouts[number] = layout
        cheaper = True
    if not cheaper:
        return found
    mixed = _weighed(surfaces, tuple(layouts), sheets, stock, job, rules, level)
    return min(found, mixed, key=lambda found: found.value)


def _cleaner(practice: SurfaceLayout, own: SurfaceLayout) -> SurfaceLayout:
    return practice if practice.faults <= own.faults and not own.settled else own


def demand(
    surfaces: Sequence[Surfaced], layouts: Sequence[SurfaceLayout]
) -> tuple[list[Piece], dict[str, tuple[Stock, ...]]]:
    """All pieces, and by piece id the sheets its surface may be boarded with."""
    pieces = [piece for layout in layouts for piece in layout.pieces]
    allowed = {
        piece.id: item.stock for item, layout in zip(surfaces, layouts, strict=True) for piece in layout.pieces
    }
    return pieces, allowed


def _board_task(
    task: _Task,
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    effort: int,
    only: bool,
    steps: Steps,
) -> tuple[_Room, tuple[RuleEntry, ...]]:
    """One room, with the rules it asked for, for a process of its own keeps a record of its own.

    An offcut is there once, so only the first may plan on it. All may when sheets are shared.
    """
    surfaces, is_first = task
    if not is_first:
        job = job.model_copy(update={"offcuts": ()})
    own = rules.apart()
    room = _board_room(surfaces, stock, job, own, effort, only=only, steps=steps)
    return room, own.noted()


def _board_room(
    surfaces: list[Surfaced],
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    effort: int,
    *,
    only: bool,
    steps: Steps,
) -> _Room:
    """The best by level of effort: of all sheets, and of each of those that could stand alone.

    So one sheet more to choose from never costs more. What was found for one alone is bounded again for all: fewer
    may do where others serve too. Bounds of a room that is not the only one are not asked for.
    """
    room = _search(surfaces, stock, job, rules, effort, only=only, steps=steps)
    best = room.best
    shared = [item.stock for item in surfaces if len(item.stock) > 1]
    for sheet in stock:
        if any(sheet in sheets for sheets in shared):
            alone = [item._replace(stock=(sheet,)) if sheet in item.stock else item for item in surfaces]
            if _least_of_all(alone, stock, job, rules) >= best[-1].value.cost:
                continue
            found = _search(alone, stock, job, rules, effort, only=only, steps=steps)
            if found.faults <= room.faults:
                best = [min(pair, key=lambda found: found.value) for pair in zip(best, found.best, strict=True)]
    if only:
        best = [
            kept
            if kept is own
            else _weighed(surfaces, kept.layouts, kept.cutting.sheets, stock, job, rules, level)
            for level, (kept, own) in enumerate(zip(best, room.best, strict=True))
        ]
    return room._replace(best=best)


def _search(
    surfaces: list[Surfaced],
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    effort: int,
    *,
    only: bool,
    steps: Steps,
) -> _Room:
    """The best by level; no layout weighed exceeds the findings on the surfaces' own best layouts."""
    laid_out = [steps.do(_laid_out, item, job.tape, rules) for item in surfaces]
    practice = [its_practice for its_practice, _ in laid_out]
    finished = [layouts for _, layouts in laid_out]

    def weighed(laid: Laid, level: int) -> _Best:
        pieces, allowed = demand(surfaces, laid.layouts)
        cutting = steps.do(
            cut_pieces,
            pieces,
            allowed,
            stock,
            job,
            effort=level,
            known=laid.sheets,
            prove=only,
            least_cut=rules.ticks(_LEAST_CUT),
        )
        return _Best(value_of(cutting, laid.layouts, stock, rules), laid.layouts, cutting)

    best = weighed(Laid(tuple(layouts.usual[0] for layouts in finished), ()), 0)
    for number in range(1, max(len(layouts.usual) for layouts in finished)):
        tried = tuple(layouts.usual[min(number, len(layouts.usual) - 1)] for layouts in finished)
        best = min(best, weighed(Laid(tried, ()), 0), key=lambda found: found.value)
    sets = _sharing(surfaces)
    least = [_least([surfaces[number] for number in members], stock, job, rules) for members in sets]

    def unsettled(found: _Best) -> list[list[int]]:
        """The sets that may yet be cut from fewer sheets, or be of fewer boards."""
        return [
            members
            for members, bound in zip(sets, least, strict=True)
            if _cost_of([surfaces[number] for number in members], found.cutting, stock) > bound
            or any(len(found.layouts[number].boards) > finished[number].fewest_boards for number in members)
        ]

    mixed = list(best.layouts)
    for members in unsettled(best):
        items = [surfaces[number] for number in members]

        def value(layouts: Sequence[SurfaceLayout], items: list[Surfaced] = items) -> Rough:
            return rough_value(*about_cut(*demand(items, layouts), stock, job), layouts, rules)

        together = best_together(
            [finished[number] for number in members], [best.layouts[number] for number in members], value
        )
        for number, layout in zip(members, together, strict=True):
            mixed[number] = layout
    if tuple(mixed) != best.layouts:
        best = min(best, weighed(Laid(tuple(mixed), ()), 0), key=lambda found: found.value)
    by_level = [best]
    open_ways: dict[int, list[Way]] = {}
    for level in range(1, effort + 1):
        still_open = unsettled(best)
        for number in (number for members in still_open for number in members if number not in open_ways):
            # The search begins with the first.
            begun = [best.layouts[number], *finished[number].usual]
            open_ways[number] = ways(
                surfaces[number],
                [layout for n, layout in enumerate(begun) if not any(layout is other for other in begun[:n])],
                job,
                rules,
            )
        laid = _together(surfaces, still_open, open_ways, best, stock, job, rules, level) if still_open else None
        again = laid or Laid(best.layouts, best.cutting.sheets)
        best = min(best, weighed(again, level), key=lambda found: found.value)
        by_level.append(best)
    broken = sum(layouts.usual[0].faults for layouts in finished)
    return _Room(by_level, broken, practice)


def _laid_out(item: Surfaced, tape: Tape, rules: RuleSet) -> tuple[SurfaceLayout, Finished]:
    """One surface by plain practice, and the layouts that it may take."""
    practice = practice_layout(item.surface, item.stock, rules, tape, mark=item.mark)
    before = least_disturbed(item.surface, item.planned, item.stock, rules, tape) if item.planned else None
    stays = before is not None and not before.faults
    choices = () if stays else layout_alternatives(item.surface, item.stock, rules, tape)
    return practice, finished_layouts(item, choices, practice, tape, rules, before=before)


def _together(
    surfaces: list[Surfaced],
    sets: list[list[int]],
    open_ways: dict[int, list[Way]],
    best: _Best,
    stock: tuple[Stock, ...],
    job: Job,
    rules: RuleSet,
    level: int,
) -> Laid | None:
    """Seams and cuts chosen together for some sets of surfaces that share sheets; the others stay as they are."""
    layouts = dict(enumerate(best.layouts))
    chosen = {piece.id for members in sets for number in members for piece in layouts[number].pieces}
    sheets = [sheet for sheet in best.cutting.sheets if not any(part.blank in chosen for part in sheet.parts)]
    for members in sets:
        items = [surfaces[number] for number in members]
        used = [s for s in stock if any(s in item.stock for item in items)]
        laid = chosen_together(
            items,
            [open_ways[number] for number in members],
            sizes_to_cut(used, stock, job.tape),
            kept_to_cut(used, job),
            job,
            rules,
            effort=level,
            bound=_least(items, stock, job, rules),
        )
        for number, layout in zip(members, laid.layouts, strict=True):
            own = open_ways[number][0].layout
            if own is not None and layout.faults > own.faults:
                return None
            layouts[number] = layout
        sheets += laid.sheets
    return Laid(tuple(layouts[number] for number in range(len(surfaces))), tuple(sheets))


def _cost_of(items: list[Surfaced], cutting: CuttingPlan, stock: tuple[Stock, ...]) -> int:
    """What the sheets cost that some surfaces are cut from, where no others share them."""
    names = {sheet.id for item in items for sheet in item.stock}
    return sum(
        size.cost * cutting.counts[size.id].used
        for size in stock_sizes(stock, stock)
        if size.id in names and size.id in cutting.counts
    )


def _least_of_all(surfaces: list[Surfaced], stock: tuple[Stock, ...], job: Job, rules: RuleSet) -> int:
    return sum(
        _least([surfaces[number] for number in members], stock, job, rules) for members in _sharing(surfaces)
    )


def _least(items: list[Surfaced], stock: tuple[Stock, ...], job: Job, rules: RuleSet) -> int:
    """The least that any layout of surfaces that share sheets costs."""
    used = [s for s in stock if any(s in item.stock for item in items)]
    areas = [(least_board_area(item.surface, rules, job.tape), stock_sizes(item.stock, stock)) for item in items]
    return least_cost(areas, kept_sizes(used, job))


def _sharing(surfaces: list[Surfaced]) -> list[list[int]]:
    """The numbers of surfaces in sets that can share no sheet with another set."""
    sets: list[tuple[set[str], list[int]]] = []
    for number, item in enumerate(surfaces):
        names, members = {sheet.id for sheet in item.stock}, [number]
        for other in [entry for entry in sets if entry[0] & names]:
            sets.remove(other)
            names |= other[0]
            members += other[1]
        sets.append((names, sorted(members)))
    return sorted(members for names, members in sets if names)
