"""What drawings and papers tell beside boards and tile: names, flatness readings, edges shown."""

from collections import Counter
from collections.abc import Iterator, Sequence

from firstcourse.geometry import Point, bounds
from firstcourse.units import TICKS_PER_MM, ticks_from_mm, to_mm
from firstcourse.verify.formulas.flattening import ways
from firstcourse.verify.formulas.parts import Part, parts
from firstcourse.verify.formulas.readings import Readings, best_plane, heights_of, readings_of
from firstcourse.verify.formulas.survey import drawn_corners
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_UP = ("fill", "shim")
_ROUNDED = 1
"""Heights are kept in whole ticks."""


def check_drawn(plan: Document) -> Iterator[Objection]:
    """Object to names given twice, and to readings and lengths that do not agree with what is drawn."""
    yield from _names(plan)
    yield from _readings(plan)
    yield from _held_to(plan)


def _names(plan: Document) -> Iterator[Objection]:
    boards = [board for surface in plan.surfaces for board in surface.boards]
    lists: list[tuple[str, Sequence[str]]] = [
        ("surface", [surface.id for surface in plan.surfaces]),
        ("stock", plan.shopping.stock_ids),
        ("tile", plan.shopping.tile_ids),
        ("sheet", [sheet.id for sheet in plan.sheets]),
        ("board's mark", [board.mark for board in boards if board.mark]),
        *((f"opening of {s.id}", [opening.id for opening in s.openings]) for s in plan.surfaces),
    ]
    for what, names in lists:
        for name in sorted(name for name, number in Counter(names).items() if number > 1):
            yield Objection("VER-509", name, f"names more than one {what}")


def _readings(plan: Document) -> Iterator[Objection]:
    """Readings stand where they were taken, as high over their best plane, with what flattens them best."""
    read = {part.ref: (part, readings_of(part, plan.rules)) for part in parts(plan)}
    for surface in plan.surfaces:
        part, taken = read.get(surface.id, (None, None))
        if part is None or taken is None or len(taken.spots) != len(surface.readings):
            if taken is not None or surface.readings:
                yield Objection("VER-771", surface.id, "shows other readings than were taken")
            continue
        _, _, off = best_plane(taken)
        best = next((way for way in ways(plan, part, taken) if not way.failing and any(way.changes)), None)
        changes = [0.0] * len(off) if best is None else list(best.changes)
        for mark, at, high, change in zip(surface.readings, _places(plan, part, taken), off, changes, strict=True):
            by = mark.by if mark.do in _UP else -mark.by
            if mark.at != at:
                yield Objection("VER-771", surface.id, "shows a reading elsewhere than it was taken")
            if abs(mark.off - high * TICKS_PER_MM) > _ROUNDED or abs(by - change * TICKS_PER_MM) > _ROUNDED:
                yield Objection("VER-771", surface.id, "shows a reading higher or lower, or otherwise flattened")
            if (mark.do == "") != (best is None) or (mark.by == 0) != (mark.do in ("", "leave")):
                yield Objection("VER-771", surface.id, f"is to {mark.do or 'stay'} by {to_mm(mark.by):.2f} mm")


def _places(plan: Document, part: Part, read: Readings) -> Iterator[Point]:
    """Where readings lie on the drawing; a string, whose height is not told, across the middle of the boards."""
    if part.surface.kind == "floor":
        first = next((str(name) for name, _ in part.room.rows("corners", ())), "")
        left, top = drawn_corners(plan, part.surface.room).get(first, (0, 0))
        for spot in read.spots:
            yield left + ticks_from_mm(spot.left), top - ticks_from_mm(spot.on)
        return
    _, low, _, high = bounds(part.surface.outline)
    for spot, up in zip(read.spots, heights_of(part), strict=True):
        yield ticks_from_mm(spot.left), ticks_from_mm(up) or (low + high) // 2


def _held_to(plan: Document) -> Iterator[Objection]:
    """Rules that findings are held to are rules of the plan."""
    for said in plan.findings:
        if said.rule and not plan.rules.has(said.rule):
            yield Objection("VER-904", said.place, f"is held to {said.rule}, which is no rule of this plan")
