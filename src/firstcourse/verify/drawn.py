"""What drawings and papers tell beside boards and tile: names, flatness readings, lines to snap, edges shown."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence

import numpy as np

from firstcourse.geometry.polygon import Point
from firstcourse.units import TICKS_PER_MM, Tape, format_length
from firstcourse.verify.drawn_fields import Reading
from firstcourse.verify.printed import prints, ticks_per_running
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.tile_needs import shown_edges
from firstcourse.verify.verdict import Objection

_NEAR = 4.0
"""What rounding the ends of a line can move it by [ticks]."""
_COURSES = 4
"""How many courses beyond those laid a line to snap may be taken from."""
_UP = ("fill", "shim")
_DOWN = ("grind", "plane off")


def check_drawn(plan: Document) -> Iterator[Objection]:
    """Object to names given twice, and to readings, lines and lengths that do not agree with what is drawn."""
    yield from _names(plan)
    for surface in plan.surfaces:
        yield from _readings(surface)
        yield from _lines(surface)
        yield from _measures(surface, plan)
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


def _lines(surface: Surface) -> Iterator[Objection]:
    """A line to snap runs along edges of tile, or in the middle of joints between them, over all its length."""
    for area in surface.tiled:
        if not area.lines:
            continue
        ends = np.array(
            [point for tile in surface.tiles for point in (tile.laid or tile.outline)], dtype=float
        ).reshape(-1, 2)
        # A line that slants through crossings passes the corners there by half a joint times the root of two.
        for line, _ in area.lines:
            reach = area.joint * math.sqrt(0.5) + _NEAR
            if not _runs_along(line, ends, reach) and not _repeats(line, ends, area.steps, reach):
                yield Objection("VER-711", surface.id, "has a line to snap on which no tile is set")


def _runs_along(line: tuple[Point, Point], ends: np.ndarray, reach: float) -> bool:
    (au, av), (bu, bv) = line
    length = math.dist((au, av), (bu, bv))
    along = ((ends[:, 0] - au) * (bu - au) + (ends[:, 1] - av) * (bv - av)) / length
    across = np.abs((ends[:, 0] - au) * (bv - av) - (ends[:, 1] - av) * (bu - au)) / length
    beside = along[across <= reach]
    # Where only a tile or two lie along a line, one half of it may have none.
    return bool(beside.size) and (beside.max() - beside.min() >= 0.4 * length or beside.size < 6)


def _repeats(
    line: tuple[Point, Point], ends: np.ndarray, steps: tuple[tuple[float, float], ...], reach: float
) -> bool:
    """Whether a line would run along tile of a course that the room is too small to show."""
    if len(steps) != 2:
        return False
    (au, av), (bu, bv) = line
    length = math.dist((au, av), (bu, bv))
    # Square to the line, so that moves along it count for nothing.
    square = np.array([bv - av, au - bu]) / length
    by = [float(np.dot(step, square)) * TICKS_PER_MM for step in steps]
    courses = range(-_COURSES, _COURSES + 1)
    moves = np.array([one * by[0] + other * by[1] for one in courses for other in courses])
    across = (ends - (au, av)) @ square
    return bool((np.abs(across[:, None] + moves[None, :]) <= reach).any())


def _measures(surface: Surface, plan: Document) -> Iterator[Objection]:
    """On a wall with square edges both lines are measured from where they begin."""
    corners = surface.outline
    square = len(corners) == 4 and len({u for u, _ in corners}) == 2 and len({v for _, v in corners}) == 2
    standing = any(opening.kind in ("tub", "tray", "cabinet", "column") for opening in surface.openings)
    if surface.kind != "wall" or not square or standing:
        return
    for area in surface.tiled:
        if len(area.lines) != 2 or not area.lines[0][1].startswith("level"):
            continue
        (level, level_words), (plumb, plumb_words) = area.lines
        for distance, words in (
            (level[0][1] - plumb[0][1], level_words),
            (plumb[0][0] - level[0][0], plumb_words),
        ):
            if format_length(distance, plan.tape) not in words:
                yield Objection(
                    "VER-711", surface.id, f"has a line {distance / TICKS_PER_MM:.1f} mm off, not as it is told"
                )


def _reads(text: str, length: int, tape: Tape) -> bool:
    """Whether a text is a length as it is told along a run: metres to two places, or as an inch tape has it."""
    if tape is Tape.MM:
        return prints(text, length / ticks_per_running(tape))
    return text == format_length(length, tape)


def _shown(plan: Document) -> Iterator[Objection]:
    """Edges that show are told for every surface that has some, with their length."""
    for surface in plan.surfaces:
        length = sum(shown_edges(surface))
        told = [
            said for said in plan.findings if said.code == "TIL-107" and said.where in (surface.id, surface.title)
        ]
        if length and not any(_reads(said.measured, length, plan.tape) for said in told):
            yield Objection(
                "VER-904",
                surface.id,
                f"shows {format_length(length, plan.tape)} of tile edges, and nothing tells of them so",
            )
    for said in plan.findings:
        if said.rule and said.rule not in plan.rules.entries:
            yield Objection("VER-904", said.where, f"is held to {said.rule}, which is no rule of this plan")
