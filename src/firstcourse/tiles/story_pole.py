"""Story poles: courses, openings and ends as marks on a stick, one for each wall and run.

The stick is held to the line that crosses its run, a level line up a wall, since a floor may be out of level where
a level line is not; every mark has its distance from the stick's own end, which is its lowest mark. Surfaces whose
whole courses lie alike share one stick.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from firstcourse.geometry import bounds, sides
from firstcourse.plan import SAME, Mark, Segment, Surface, SurfaceKind, Tile, TileStock
from firstcourse.plan.read_off import has_courses
from firstcourse.rules import RuleSet
from firstcourse.tiles.pole_steps import PoleStep, pole_step
from firstcourse.tiles.tile_rows import rows_of


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """A place to mark along a run: where on the surface [ticks], what it is, and of tile whether it is cut."""

    at: int
    to: str
    tile: bool = False
    cut: bool = False
    every: int = 1
    stock: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """All places of one surface along one axis, and where the line lies that the stick is held to [ticks]."""

    surface: Surface
    axis: int
    control: int
    places: tuple[_Place, ...]

    @property
    def alike(self) -> tuple[object, ...]:
        """What surfaces must share to share a stick: all whole courses, from the line; cuts may differ."""
        whole = tuple((p.at - self.control, p.stock, p.every) for p in self.places if p.tile and not p.cut)
        return self.surface.kind is SurfaceKind.WALL, self.axis, has_courses(self.surface), whole


def pole_marks(
    surfaces: Sequence[Surface], stock: Mapping[str, TileStock], rules: RuleSet
) -> dict[str, tuple[Mark, ...]]:
    """The marks of the poles of all surfaces: sticks up walls are counted first, then along them, then others.

    Args:
        surfaces: With their tiles and with their lines among their marks.
        stock: Tiles by id, for those that come on sheets.
        rules: How near marks of mosaic may stand.

    Returns:
        None for a surface without tile or without lines to snap, as within a niche, and where the pattern runs
        askew: there the lines are enough.
    """
    found: dict[tuple[object, ...], list[_Run]] = {}
    runs = [run for surface in surfaces for run in _runs(surface, stock, rules)]
    for run in sorted(runs, key=lambda run: (run.surface.kind is not SurfaceKind.WALL, run.axis == 0)):
        found.setdefault(run.alike, []).append(run)
    marks: dict[str, tuple[Mark, ...]] = {}
    for number, alike in enumerate(found.values(), start=1):
        lowest = min(place.at - run.control for run in alike for place in run.places)
        for run in alike:
            mine = tuple(_marks(run, f"pole/{number}", run.control + lowest))
            marks[run.surface.id] = (*marks.get(run.surface.id, ()), *mine)
    return marks


def _marks(run: _Run, pole: str, end: int) -> Iterator[Mark]:
    left, lower, right, upper = bounds(run.surface.outline)
    for place in run.places:
        across: Segment = (
            ((left, place.at), (right, place.at)) if run.axis else ((place.at, lower), (place.at, upper))
        )
        yield Mark(
            kind="pole",
            line=across,
            from_=pole,
            distance=place.at - end,
            to=place.to,
            cut=place.cut,
            every=place.every,
            stock=place.stock,
        )


def _runs(surface: Surface, stock: Mapping[str, TileStock], rules: RuleSet) -> Iterator[_Run]:
    lines = [mark.line for mark in surface.marks if mark.kind in ("first_course", "plumb", "snap")]
    upright = next((line for line in lines if line[0][0] == line[1][0]), None)
    level = next((line for line in lines if line[0][1] == line[1][1]), None)
    if upright is None or level is None or not all(_has_level_side(tile) for tile in surface.tiles):
        return
    names = ("level", "plumb") if surface.kind is SurfaceKind.WALL else ("second", "first")
    for axis, run, control in ((1, upright, level), (0, level, upright)):
        near, far = run[0][axis], run[1][axis]
        tiles = list(_tiles(surface, axis, run, pole_step(surface, axis, stock, rules)))
        drawn = (*tiles, *_openings(surface, axis))
        # Courses that the plumb line does not pass, such as those beside a tub's leg, are on its stick too.
        along = [place.at for place in tiles] if axis == 1 and has_courses(surface) else []
        low, high = min((near, *along)), max((far, *along))
        places = [
            _Place(at=near, to=f"{surface.id}/line/{names[axis]}/start"),
            *(place for place in drawn if low <= place.at <= high),
            _Place(at=control[0][axis], to=f"{surface.id}/line/{names[1 - axis]}"),
            _Place(at=far, to=f"{surface.id}/line/{names[axis]}/end"),
        ]
        order = sorted(range(len(places)), key=lambda index: (places[index].at, index))
        yield _Run(
            surface=surface,
            axis=axis,
            control=control[0][axis],
            places=tuple(places[index] for index in order),
        )


def _has_level_side(tile: Tile) -> bool:
    """Whether a side lies level or upright, so that a mark can stand for it."""
    return any(min(abs(b[0] - a[0]), abs(b[1] - a[1])) <= SAME for a, b in sides(tile.laid or tile.outline))


def _tiles(surface: Surface, axis: int, run: Segment, step: PoleStep) -> Iterator[_Place]:
    """Lower or left edges of the tiles along a run, or of sheets of mosaic, and the far edge of the last."""
    rows = rows_of(_along(surface, axis, run), axis)
    if not rows:
        return
    several = len({tile.stock for tile in surface.tiles}) > 1
    near, far = ("low", "high") if axis else ("left", "right")
    last = max((tile for row in rows for tile in row.tiles), key=lambda tile: bounds(tile.outline)[axis + 2])
    before: int | None = None
    for row in step.marked(rows):
        if before is not None and abs(row.at - before) <= SAME:
            continue
        before = row.at
        first = next(tile for tile in row.tiles if bounds(tile.outline)[axis] == row.at)
        yield _Place(
            at=row.at,
            to=f"{first.id}/{near}",
            tile=True,
            cut=row.is_cut(axis),
            every=step.every,
            stock=" and ".join(sorted({tile.stock for tile in row.tiles})) if several else "",
        )
    end = bounds(last.outline)[axis + 2]
    whole = any(tile.whole for row in rows for tile in row.tiles if bounds(tile.outline)[axis + 2] == end)
    yield _Place(at=end, to=f"{last.id}/{far}", tile=True, cut=not whole, every=step.every)


def _along(surface: Surface, axis: int, run: Segment) -> Sequence[Tile]:
    """Tiles that a run passes; up a wall with courses all of them, since they run on beside a niche."""
    if axis == 1 and has_courses(surface):
        return surface.tiles
    at, joint = run[0][1 - axis], surface.tiled[0].joint
    found = []
    for tile in surface.tiles:
        box = bounds(tile.laid or tile.outline)
        if box[1 - axis] - joint <= at < box[3 - axis] - SAME:
            found.append(tile)
    return found


def _openings(surface: Surface, axis: int) -> Iterator[_Place]:
    ends = ("low", "high") if axis else ("left", "right")
    for opening in surface.openings:
        base = f"{surface.id}/opening/{opening.id}"
        if opening.outline is not None:
            box = bounds(opening.outline)
            yield _Place(at=box[axis], to=f"{base}/{ends[0]}")
            yield _Place(at=box[axis + 2], to=f"{base}/{ends[1]}")
        elif opening.centre is not None:
            yield _Place(at=opening.centre[axis], to=f"{base}/centre")
