"""Judges the shifts of one repeat over one area, and finds the cheapest."""

import math
from collections.abc import Mapping, Sequence

import numpy as np
from shapely import Point

from firstcourse.errors import InputValueError
from firstcourse.tiles.area_edges import EdgeLine, facing, lines
from firstcourse.tiles.cut_measures import Cut, is_sliver, line_of, measured_cuts
from firstcourse.tiles.edges import (
    Met,
    StartCosts,
    crossed,
    extent,
    group_cost,
    is_level,
    met_by_rows,
    met_by_tiles,
    spacing,
)
from firstcourse.tiles.lay import Array, lay_field
from firstcourse.tiles.model import XY, RepeatCell, Start, TileArea
from firstcourse.tiles.start_facts import Along, StartFacts
from firstcourse.tiles.start_shifts import (
    APART_SHARE,
    NUM_STARTS,
    SAME_COST,
    apart,
    away,
    critical_shifts,
    different,
    finer,
    home,
    ranked,
    ranked_along,
    rows_apart,
    scattered_shifts,
)
from firstcourse.units import TICKS_PER_MM

_MOST_KEPT = 24
"""Best shifts of one axis that are judged together with those of the other where oblique edges tie them."""
_ROUNDS, _REFINED = 5, 6
_MOST_LAID = 24
"""Where the cheapest start leaves a sliver, so many others are laid in search of one that leaves none."""
_BESIDE_MM = 30.0
"""Tile that is cut round a thing lies no further off it: a joint lies between [mm]."""
_SAME_MM = 0.01
"""Patterns that lie apart by less are one [mm]."""


class Search:
    """Judges the shifts of one repeat over one area.

    Args:
        cell: The repeat.
        field: The area with its edges.
        costs: What a start is judged by.
        level: Height of a course that the start must keep [mm].

    Raises:
        InputValueError: The area is empty.
    """

    def __init__(
        self, *, cell: RepeatCell, field: TileArea, costs: StartCosts, level: float | None = None
    ) -> None:
        if field.area.is_empty:
            raise InputValueError("no area is left for tile beside openings and joints; leave this tiling out")
        self.cell, self.field, self.costs, self.level = cell, field, costs, level
        self.edges = lines(field, costs.shortest_edge)
        along, up = spacing(cell, 0), spacing(cell, 1)
        self.steps = None if along is None or up is None else (along, up)
        self.by_axis: tuple[tuple[EdgeLine, ...], tuple[EdgeLine, ...]] = ((), ())
        if self.steps is not None:
            self.by_axis = (
                tuple(edge for edge in self.edges if is_level(edge, cell, 0)),
                tuple(edge for edge in self.edges if is_level(edge, cell, 1)),
            )
        straight = {*self.by_axis[0], *self.by_axis[1]}
        self.oblique = tuple(edge for edge in self.edges if edge not in straight)
        asked = sorted({(0 if axis == "v" else 1, place) for axis, place in field.wanted})
        self.wanted = tuple((axis, place) for axis, place in asked if self._can_be_met(axis, place))

    @property
    def exact(self) -> bool:
        """Whether every start that can be best is judged."""
        return self.steps is not None and not self.oblique

    def course_step(self) -> float | None:
        """Height of a course and its joint; None where the pattern has no level courses [mm]."""
        return None if self.steps is None else round(self.steps[1], 6)

    def critical_levels(self) -> Array:
        """Every height of a course that can be best, within one step from the datum [mm]."""
        assert self.steps is not None
        step = self.steps[1]
        levels = np.round(self._critical(1) % step * TICKS_PER_MM) / TICKS_PER_MM
        return np.unique(levels % step)

    def slivers_of_levels(self, levels: Array) -> Array:
        """Whether a course at each height leaves a sliver along a level edge, as surveyed, shape (levels,)."""
        mets = self._met_by_rows(1, levels, 0.0)
        return np.stack([one.sliver for one in mets]).any(axis=0) if mets else np.zeros(len(levels), bool)

    def cost_of_levels(self, levels: Array) -> Array:
        """Cost of each height of a course, shape (levels,)."""
        return self._of_axis(1, levels)

    def penalties(self, shifts: Array) -> Array:
        """Cost of each shift, shape (shifts,)."""
        total = self._of_edges(self.oblique, self._met_by_tiles(shifts, self.field.uncertainty), len(shifts))
        if self.steps is not None:
            total = total + self._of_axis(0, shifts[:, 0]) + self._of_axis(1, shifts[:, 1])
        return total

    def best(self) -> tuple[list[XY], int]:
        """The best shift and up to two different ones, best first, and how many were laid to be rid of a sliver.

        The cheapest is the best, unless its tiles leave a sliver and one of those laid leaves none at few more
        cuts; then the cheapest of these is. One that leaves none at more cuts is among the others.
        """
        shifts = self._candidates()
        chosen: list[XY] = []
        for shift in different(shifts, self._period(), square=self.steps is not None, most=3 * NUM_STARTS):
            row = self._row(shift)
            if len(chosen) < NUM_STARTS and all(away(row, one, self.cell) > _SAME_MM for one in chosen):
                chosen.append(row)
        cuts, has_sliver = self._cuts(chosen[0])
        if not has_sliver:
            return chosen, 1
        first: XY | None = None
        other: XY | None = None
        num_laid = 1
        for shift in self._to_lay(chosen, shifts):
            num_laid += 1
            more, has_sliver = self._cuts(shift)
            if not has_sliver and more <= cuts + self.costs.more_cuts:
                first = shift
                break
            other = other or (None if has_sliver else shift)
        if first is not None:
            rest = [one for one in chosen if away(first, one, self.cell) > _SAME_MM]
            return [first, *rest[: NUM_STARTS - 1]], num_laid
        if other is not None and all(away(other, one, self.cell) > _SAME_MM for one in chosen):
            chosen = [*chosen[: NUM_STARTS - 1], other]
        return chosen, num_laid

    def _to_lay(self, chosen: Sequence[XY], shifts: Array) -> list[XY]:
        """The starts worth laying, to see whether they leave a sliver: those judged to leave none come first."""
        judged = self._has_sliver(shifts)
        order = np.concatenate((np.flatnonzero(~judged), np.flatnonzero(judged)))[:_MOST_LAID]
        found = list(chosen[1:])
        for x, y in shifts[order].tolist():
            row = self._row((x, y))
            if all(away(row, one, self.cell) > _SAME_MM for one in (chosen[0], *found)):
                found.append(row)
        return found

    def _cuts(self, shift: XY) -> tuple[int, bool]:
        """How many tiles a start cuts, and whether one of the cuts is a sliver."""
        tiles = lay_field(self.cell, shift, self.field)
        whole = {tile.laid for tile in tiles if tile.whole}
        found = measured_cuts(tiles, self.costs.shortest_edge)
        has_sliver = any(self._is_sliver(cut, line_of(cut, self.edges)) for cut in found)
        return len({tile.laid for tile in tiles} - whole), has_sliver

    def _is_sliver(self, cut: Cut, line: EdgeLine | None) -> bool:
        return is_sliver(cut, line, self.costs.least_cut, self.costs.least_share)

    def start(self, shift: XY) -> Start:
        """One start judged."""
        tiles = lay_field(self.cell, shift, self.field)
        whole = {tile.laid for tile in tiles if tile.whole}
        num_cut = len({tile.laid for tile in tiles} - whole)
        found = measured_cuts(tiles, self.costs.shortest_edge)
        on = [line_of(cut, self.edges) for cut in found]
        slivers = [number for number, cut in enumerate(found) if self._is_sliver(cut, on[number])]
        short = [
            # Of just half a tile, floating point must not decide.
            0.0 if cut.edge is None else max(round(1.0 - cut.width / (self.costs.half * cut.whole), 6), 0.0)
            for cut in found
        ]
        by_line: dict[EdgeLine, Cut] = {}
        for cut, line in zip(found, on, strict=True):
            if line is not None and (line not in by_line or cut.width < by_line[line].width):
                by_line[line] = cut
        poorest = min(
            slivers or [number for number, by in enumerate(short) if by > 0],
            key=lambda number: (round(found[number].width, 3), round(-short[number], 6)),
            default=None,
        )
        at = np.array([shift])
        safe, bare = self._every(at, self.field.uncertainty), self._every(at, 0.0)
        kept = {line: cut.width / cut.whole for line, cut in by_line.items()}
        pairs = [
            abs(kept.get(edges[first], 1.0) - kept.get(edges[second], 1.0))
            for edges in (*self.by_axis, self.oblique)
            for first, second, _share in facing(edges)
        ]
        facts = StartFacts(
            short=max(short, default=0.0),
            may_sliver=any(bool(one.sliver[0]) for one in safe),
            uneven=max(pairs, default=None),
            on_joints=sum(not self._crossed(axis, place, at[:, axis])[0] for axis, place in self.wanted),
            num_wanted=len(self.wanted),
            unsure=self.field.uncertainty > 0,
            along=self._along(by_line),
        )
        return Start(
            shift=shift,
            smallest_cut=min((cut.width for cut in found), default=0.0),
            sure_cut=min((float(one.sure[0]) for one in safe), default=0.0),
            slack=min((float(one.slack[0]) for one in bare), default=0.0),
            cut_tiles=num_cut,
            whole_tiles=len(whole),
            penalty=float(self.penalties(at)[0]),
            facts=facts,
            sliver=bool(slivers),
            narrowest=min((found[number].width for number in slivers), default=0.0),
            poorest="" if poorest is None else self._where(on[poorest]),
            exact=self.exact,
        )

    def _where(self, edge: EdgeLine | None) -> str:
        """What a tile is cut along, by reference: a side, else what lies nearest within the area or before it."""
        if edge is None or edge.side or not self.field.things:
            return "" if edge is None else edge.side
        middle = Point((edge.a[0] + edge.b[0]) / 2, (edge.a[1] + edge.b[1]) / 2)
        off, name = min((round(shape.distance(middle), 6), ref) for ref, shape in self.field.things)
        return name if off <= _BESIDE_MM else ""

    def _along(self, by_line: Mapping[EdgeLine, Cut]) -> tuple[Along, ...]:
        """The narrowest cut along each side, in order of the edges."""
        found: dict[str, Along] = {}
        widest = max(max(extent(piece.ring, axis) for axis in (0, 1)) for piece in self.cell.pieces)
        for line in self.edges:
            cut = by_line.get(line)
            one = Along(
                side=line.side,
                weight=line.weight,
                width=None if cut is None else cut.width,
                share=1.0 if cut is None else cut.width / widest,
            )
            if line.side and (line.side not in found or one.share < found[line.side].share):
                found[line.side] = one
        return tuple(found.values())

    def _candidates(self) -> Array:
        """Shifts worth judging, best first."""
        if self.steps is not None:
            across, up = self._best_of_axis(0), self._best_of_axis(1)
            shifts = np.array([(x, y) for x in across for y in up])
            if self.oblique:
                # Edges askew tell patterns apart whose rows lie alike.
                shifts = np.vstack([rows_apart(shift, self.cell, self.steps) for shift in shifts.tolist()])
            penalties = self.penalties(shifts)
        else:
            period = self._period()
            shifts = home(scattered_shifts(self.cell, self.field, self.edges), period, self.field)
            penalties = self.penalties(shifts)
            for level in range(1, _ROUNDS + 1):
                best = shifts[self._ranked(shifts, penalties)[:_REFINED]]
                near = home(finer(best, self.cell, level), period, self.field)
                shifts, penalties = np.vstack((shifts, near)), np.concatenate((penalties, self.penalties(near)))
        return np.asarray(shifts[self._ranked(shifts, penalties)])

    def _ranked(self, shifts: Array, penalties: Array) -> Array:
        return ranked(shifts, penalties, self.cell, self._period(), self.field)

    def _row(self, shift: XY) -> XY:
        """Of the patterns whose rows meet the edges alike, the one whose very tiles meet them best."""
        if self.steps is None or self.oblique:
            return shift
        alike = [(x, y) for x in self._as_good(0, shift[0]) for y in self._as_good(1, shift[1])]
        rows = np.vstack([rows_apart(one, self.cell, self.steps) for one in alike])
        if len(rows) == 1:
            return shift
        cost = self._of_edges(self.edges, [self._met_by_tile(edge, rows) for edge in self.edges], len(rows))
        steps = np.array((self.cell.step_a, self.cell.step_b))
        first = rows[ranked(rows, cost, self.cell, steps, self.field)[0]]
        return float(first[0]), float(first[1])

    def _as_good(self, axis: int, at: float) -> list[float]:
        """A shift along an axis, and those parts of a step on that are as good, as in a basket weave."""
        assert self.steps is not None
        if axis == 1 and self.level is not None:
            return [at]
        parts = np.round((at + np.arange(4) * self.steps[axis] / 4) * TICKS_PER_MM) / TICKS_PER_MM
        cost = self._of_axis(axis, parts)
        return [float(part) for part in parts[np.abs(cost - cost[0]) < SAME_COST]]

    def _period(self) -> Array:
        """Steps after which the cost comes again, one per row [mm]."""
        if self.steps is not None:
            return np.diag(self.steps)
        return np.array((self.cell.step_a, self.cell.step_b))

    def _has_sliver(self, shifts: Array) -> Array:
        """Whether each shift leaves a sliver along some edge, as surveyed, shape (shifts,)."""
        return np.stack([one.sliver for one in self._every(shifts, 0.0)] or [np.zeros(len(shifts), bool)]).any(
            axis=0
        )

    def _every(self, at: Array, unsure: float) -> list[Met]:
        mets = dict(zip(self.oblique, self._met_by_tiles(at, unsure), strict=True))
        for axis in (0, 1):
            mets |= dict(zip(self.by_axis[axis], self._met_by_rows(axis, at[:, axis], unsure), strict=True))
        return [mets[edge] for edge in self.edges]

    def _met_by_rows(self, axis: int, at: Array, unsure: float) -> list[Met]:
        if self.steps is None:
            return []
        return [
            met_by_rows(edge, self.cell, axis, self.steps[axis], at, unsure=unsure, costs=self.costs)
            for edge in self.by_axis[axis]
        ]

    def _met_by_tiles(self, shifts: Array, unsure: float) -> list[Met]:
        return [met_by_tiles(edge, self.cell, shifts, unsure=unsure, costs=self.costs) for edge in self.oblique]

    def _met_by_tile(self, edge: EdgeLine, shifts: Array) -> Met:
        return met_by_tiles(edge, self.cell, shifts, unsure=self.field.uncertainty, costs=self.costs)

    def _of_edges(self, edges: Sequence[EdgeLine], mets: Sequence[Met], num: int) -> Array:
        total = group_cost(edges, mets, self.costs, num)
        if mets:
            small = min(min(extent(piece.ring, 0), extent(piece.ring, 1)) for piece in self.cell.pieces)
            slack = np.stack([one.slack for one in mets]).min(axis=0) / (self.costs.half * small)
            total = total + self.costs.tight * (1.0 - np.minimum(slack, 1.0))
        return total

    def _of_axis(self, axis: int, at: Array) -> Array:
        total = self._of_edges(self.by_axis[axis], self._met_by_rows(axis, at, self.field.uncertainty), len(at))
        for on, place in self.wanted:
            if on == axis:
                total = total + self.costs.wanted / len(self.wanted) * self._crossed(axis, place, at)
        return total

    def _crossed(self, axis: int, place: float, at: Array) -> Array:
        assert self.steps is not None
        return crossed(self.cell, axis, self.steps[axis], place, at)

    def _best_of_axis(self, axis: int) -> list[float]:
        """The best shifts along an axis, and the best of those that leave no sliver there."""
        assert self.steps is not None
        step = self.steps[axis]
        if axis == 1 and self.level is not None:
            return [self.level]
        at = self._critical(axis)
        cost = np.round(self._of_axis(axis, at), 9)
        order = ranked_along(axis, at, cost, self.cell, step, self.field)
        if self.oblique:
            alike = len(rows_apart((0.0, 0.0), self.cell, self.steps))
            most = max(round(_MOST_KEPT / math.sqrt(alike)), 2 * NUM_STARTS)
            found = apart(at, cost, order, step, step / most, most)
        else:
            found = apart(at, cost, order, step, step * APART_SHARE, 2 * NUM_STARTS)
        mets = self._met_by_rows(axis, at, 0.0)
        sliver = np.stack([one.sliver for one in mets]).any(axis=0) if mets else np.zeros(len(at), bool)
        without = next((float(at[index]) for index in order if not sliver[index]), None)
        return found if without is None or without in found else [*found, without]

    def _critical(self, axis: int) -> Array:
        assert self.steps is not None
        wanted = [place for on, place in self.wanted if on == axis]
        return critical_shifts(
            self.cell, self.field, self.by_axis[axis], wanted, axis, self.costs, self.steps[axis]
        )

    def _can_be_met(self, axis: int, place: float) -> bool:
        """Whether some shift brings a joint there; upright lines cross tiles in some course of a running bond."""
        if self.steps is None:
            return False
        ends = {point[axis] for piece in self.cell.pieces for point in piece.ring}
        return not self._crossed(axis, place, place - np.array(sorted(ends))).all()
