"""What an unsure survey does to the cuts of each start, and which edges of niches and windows it lays on joints.

Recomputed the same way as it was planned: along an edge that lies level or upright the rows of the pattern are
judged, whether a tile of each row stands there or not, and along others the very tiles beside it.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from shapely import LineString

from firstcourse.geometry import sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.findings.readings import how_unsure
from firstcourse.verify.repeats import Repeat, how_near, repeat_of
from firstcourse.verify.start_fields import Start
from firstcourse.verify.starts import area_edges
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-725"
_CUT = 0.005 * TICKS_PER_MM
_PARALLEL = 1e-6 * TICKS_PER_MM
_JUST = (0.0, 1e-3, -1e-3)
"""What lies on a threshold may be taken either way, by as much [ticks]."""
type Point2 = tuple[float, float]


def check_start_play(plan: Document) -> Iterator[Objection]:
    """Object to what is told of a start in the worst room that the survey allows, and is not so."""
    for surface in plan.surfaces:
        if len(surface.tiled) != 1 or not surface.tiles or any(tile.fixed for tile in surface.tiles):
            continue
        area = surface.tiled[0]
        repeat, unsure = repeat_of(area, plan.tile_stock), how_unsure(surface.room, plan)
        if repeat is None:
            continue
        for number, start in enumerate(area.starts):
            where = f"{surface.id}, start {number + 1}"
            found = [Play(surface, repeat, plan, unsure, start.origin, just) for just in _JUST]
            yield from (Objection(_CODE, where, said) for said in _wrong(start, found, unsure))


def _wrong(told: Start, found: list["Play"], unsure: float) -> Iterator[str]:
    if told.unsure != (unsure > 0):
        yield f"is told to stand in a room that is {'not ' * (not told.unsure)}unsure"
    if not any(one.may_sliver == told.may_sliver for one in found):
        yield "tells whether a sliver may stand in the worst room, and it is otherwise"
    for name, said, widths in (
        ("a narrowest cut in the worst room", told.sure_cut, [one.sure_cut for one in found]),
        ("play until a cut is a sliver", told.slack, [one.slack for one in found]),
    ):
        if not any(math.floor(one - found[0].near) <= said <= math.floor(one + found[0].near) for one in widths):
            yield f"tells {name} of {said / TICKS_PER_MM:.2f} mm, which comes to {widths[0] / TICKS_PER_MM:.2f} mm"
    if not any((told.wanted, told.on_joints) == one.joints for one in found):
        yield f"tells {told.on_joints} of {told.wanted} edges on joints, which are {found[0].joints}"


@dataclass(frozen=True)
class _Row:
    """A tile, or a row of them, beside an edge: how far it reaches inwards from it, and its width [ticks]."""

    depth: float
    width: float
    out: float = 0.0


@dataclass(frozen=True)
class Play:
    """One start in a room that may differ from its survey; thresholds are moved by `just` [ticks]."""

    surface: Surface
    repeat: Repeat
    plan: Document
    unsure: float
    origin: Point2
    just: float

    @cached_property
    def near(self) -> float:
        """How exactly a width is known [ticks]."""
        return how_near(self.surface, self.repeat)

    @cached_property
    def edges(self) -> list[tuple[LineString, bool]]:
        """Edges that count, and whether tile ends there where the setter ends it."""
        shortest = self.plan.rules.ticks("tiling.start.shortest_edge")
        free = {
            f"{self.surface.id}/side/{number}"
            for number, _ in enumerate(sides(self.surface.outline))
            if self.surface.sides[number] == "free"
        }
        return [(line, side in free) for line, side, _ in area_edges(self.surface, shortest)]

    def least(self, row: _Row) -> float:
        """Width below which a cut is a sliver."""
        rules = self.plan.rules
        return min(
            float(rules.ticks("tiling.start.least_cut")), rules.number("tiling.start.least_share") * row.width
        )

    def rows(self, line: LineString, unsure: float) -> list[_Row]:
        """What stands beside an edge, as far as it counts where the edge may lie elsewhere by so much."""
        axis = self.repeat.level_to(line)
        return self._tiles(line, unsure) if axis is None else self._levels(line, axis)

    def _levels(self, line: LineString, axis: int) -> list[_Row]:
        """Rows of the pattern square to an axis; those far in and far out change nothing."""
        (a, b), (c, d) = line.coords
        ends = (a, c) if axis == 0 else (b, d)
        inward = -(d - b) if axis == 0 else c - a
        along = [point[axis] for point in self.repeat.ring]
        middle, spacing = sum(ends) / 2, self.repeat.spacing(axis)
        assert spacing is not None
        reach = self.origin[axis] + max(along) - middle if inward > 0 else middle - self.origin[axis] - min(along)
        width, out = max(along) - min(along), abs(ends[0] - ends[1]) / 2
        first = math.floor((reach + self.unsure + out) / spacing) + 2
        number = math.ceil((width + 2 * (self.unsure + out)) / spacing) + 4
        return [_Row(reach + (index - first) * spacing, width, out) for index in range(number + 2)]

    def _tiles(self, line: LineString, unsure: float) -> list[_Row]:
        """The very tiles beside an edge: of those askew to it the ones whose middle is beside it."""
        ends, ring = np.array(line.coords), np.array(self.repeat.ring)
        way = (ends[1] - ends[0]) / line.length
        inward = np.array((-way[1], way[0]))
        across, along = ring @ inward, ring @ way
        width, margin = float(np.ptp(across)), unsure + float(np.ptp(across)) / 2
        square = bool((np.abs(np.diff(np.append(across, across[0]))) < _PARALLEL).any())
        half = float(np.ptp(along)) / 2 if square else 0.0
        shared = min(self.plan.rules.ticks("tiling.start.shortest_edge"), half * 2 / 3)
        box = (*(ends.min(axis=0) - margin), *(ends.max(axis=0) + margin))
        origins = self.repeat.origins(box, self.origin) - ends[0]
        depth, middle = origins @ inward + across.max(), origins @ way + along.mean()
        common = np.minimum(middle + half, line.length) - np.maximum(middle - half, 0.0)
        met = (common >= shared + self.just) & (depth > -margin) & (depth < width + margin)
        return [_Row(float(one), width) for one in depth[met]]

    @cached_property
    def worst(self) -> list[list[tuple[float, float]]]:
        """Of each edge the widths of its cuts in the worst room, each with that below which it is a sliver."""
        takes = self.plan.rules.ticks("tiling.start.joint_takes")
        every = []
        for line, free in self.edges:
            unsure, found = 0.0 if free else self.unsure, list[tuple[float, float]]()
            for row in self.rows(line, unsure):
                low, high = row.depth - row.out, row.depth + row.out
                # Where the room comes out larger no strip is set beyond the last whole tile: the joint is wider.
                begins = _CUT if high > _CUT + self.just else _CUT + takes
                if high + unsure > begins + self.just and low - unsure < row.width - _CUT + self.just:
                    found.append((max(low - unsure, 0.0), self.least(row)))
            every.append(found)
        return every

    @cached_property
    def sure_cut(self) -> float:
        """The narrowest cut in the worst room; an edge without one has a whole tile [ticks]."""
        return min(
            (
                min((width for width, _ in found), default=self._across(line))
                for (line, _), found in zip(self.edges, self.worst, strict=True)
            ),
            default=0.0,
        )

    def _across(self, line: LineString) -> float:
        axis = self.repeat.level_to(line)
        if axis is not None:
            return self.repeat.extent(axis)
        (a, b), (c, d) = line.coords
        reach = [((c - a) * v - (d - b) * u) / line.length for u, v in self.repeat.ring]
        return float(max(reach) - min(reach))

    @cached_property
    def may_sliver(self) -> bool:
        """Whether a sliver may stand in the worst room."""
        return any(width < least - _CUT + self.just for found in self.worst for width, least in found)

    @cached_property
    def slack(self) -> float:
        """How far the nearest edge may move either way before a sliver stands there [ticks]."""
        found = []
        for line, free in self.edges:
            widest = self._across(line)
            plays = [] if free else [self._play(row) for row in self.rows(line, 0.0)]
            found.append(min(max(min(plays, default=widest), 0.0), widest))
        return min(found, default=0.0)

    def _play(self, row: _Row) -> float:
        low, high = row.depth - row.out, row.depth + row.out
        return low - self.least(row) if high > _CUT + self.just else -high

    @cached_property
    def joints(self) -> tuple[int, int]:
        """How many edges of niches and windows can lie on a joint, and how many of them do."""
        lines = {
            (axis, at)
            for opening in self.surface.openings
            if opening.kind in ("niche", "window") and opening.outline is not None
            for axis in (0, 1)
            for at in (min(p[axis] for p in opening.outline), max(p[axis] for p in opening.outline))
        }
        if self.repeat.rows is None:
            return 0, 0
        can = [
            (axis, at)
            for axis, at in lines
            if not all(self._crossed(axis, at, at - point[axis]) for point in self.repeat.ring)
        ]
        return len(can), sum(not self._crossed(axis, at, self.origin[axis]) for axis, at in can)

    def _crossed(self, axis: int, at: float, origin: float) -> bool:
        """Whether a tile of some row lies across a line square to an axis."""
        assert self.repeat.rows is not None
        step, width = self.repeat.rows[axis], self.repeat.extent(axis)
        behind = (at - origin - min(point[axis] for point in self.repeat.ring)) % step
        return any(
            _CUT + self.just < behind + number * step < width - _CUT + self.just
            for number in range(math.ceil(width / step))
        )
