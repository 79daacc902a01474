"""What drawings and papers tell beside boards and tile: names, flatness readings, edges shown."""

from collections import Counter
from collections.abc import Iterator, Sequence

import numpy as np

from firstcourse.units import TICKS_PER_MM, format_length, to_mm
from firstcourse.verify.drawn_fields import Reading
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.tile_needs import shown_edges
from firstcourse.verify.verdict import Objection

_UP = ("fill", "shim")
_DOWN = ("grind", "plane off")


def check_drawn(plan: Document) -> Iterator[Objection]:
    """Object to names given twice, and to readings and lengths that do not agree with what is drawn."""
    yield from _names(plan)
    for surface in plan.surfaces:
        yield from _readings(surface)
    yield from _shown(plan)


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


def _readings(surface: Surface) -> Iterator[Objection]:
    """Heights over the best plane have no slope left in them, and what is done there goes the way it says."""
    found = surface.readings
    if not found:
        return
    spots = np.array([[one.at[0], one.at[1], TICKS_PER_MM * 1000] for one in found], dtype=float)
    off = np.array([one.off for one in found], dtype=float)
    plane, *_ = np.linalg.lstsq(spots, off, rcond=1e-9)
    if float(np.abs(spots @ plane).max()) > 2.0:
        yield Objection("VER-771", surface.id, "has readings that are not taken from their best plane")
    for one in found:
        if (one.by > 0) != (one.do in (*_UP, *_DOWN)) or one.by < 0:
            yield Objection("VER-771", surface.id, f"is to {one.do or 'stay'} by {one.by / TICKS_PER_MM:.2f} mm")
    yield from _made_flat(surface, found)


def _made_flat(surface: Surface, found: tuple[Reading, ...]) -> Iterator[Objection]:
    """Of two spots, the one that stands lower is never filled less, unless the floor is made level besides."""
    moved = [(one.off, one.by if one.do in _UP else -one.by) for one in found if one.do]
    if any(change < 0 for _, change in moved) and any(change > 0 for _, change in moved):
        low = min(moved)
        if low[1] < 0:
            yield Objection("VER-771", surface.id, "is ground where it lies lowest")


def _shown(plan: Document) -> Iterator[Objection]:
    """Edges that show are told for every surface that has some, with their length."""
    for surface in plan.surfaces:
        length = sum(shown_edges(surface))
        told = [said.amount for said in plan.findings if said.code == "TIL-107" and said.place == surface.id]
        if length and told != [to_mm(length)]:
            yield Objection(
                "VER-716",
                surface.id,
                f"shows {format_length(length, plan.tape)} of tile edges, and nothing tells of them so",
            )
    for said in plan.findings:
        if said.rule and not plan.rules.has(said.rule):
            yield Objection("VER-904", said.place, f"is held to {said.rule}, which is no rule of this plan")
