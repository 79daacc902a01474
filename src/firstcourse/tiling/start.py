"""Where a pattern starts: the best place, and two that are really different, each with what it trades.

Along each axis of the surface only some shifts can be best: where a tile's edge meets an edge of the area, where a
cut crosses a threshold, and midway between two such shifts, where two cuts are even. Between them the cost runs
straight. All of them are judged, so for level, upright and half-turned patterns the pick is the best there is.
Other patterns meet an edge in every way at once; they are judged at the shifts where a corner of a tile meets a
corner of the area, on a fixed grid, and more closely where it was best.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.tiling.edges import (
    Line,
    Met,
    StartCosts,
    crossed,
    cut_widths,
    extent,
    facing,
    group_cost,
    is_level,
    lines,
    met_by_rows,
    met_by_tiles,
    spacing,
    start_costs,
)
from firstcourse.tiling.lay import Array, lay
from firstcourse.tiling.model import XY, Field, RepeatCell, Start
from firstcourse.units import TICKS_PER_MM

_MOST_PAIRED = 150
"""Critical shifts of one axis up to which every pair's midpoint is judged, not only those of neighbours."""
_MOST_KEPT = 24
"""Best shifts of one axis that are judged together with those of the other where oblique edges tie them."""
_GRID = 20
_ROUNDS, _REFINED = 5, 6
_APART_SHARE = 0.25
"""Two starts are really different when they lie apart by this share of a tile and joint, or more."""
_NUM_STARTS = 3
_CLOSE = 1e-9
_EVEN_SHARE = 0.02
"""Cuts that differ by less than this share of a tile look even."""
_TOLD_MM = 1.0
"""Differences below this are not worth a word [mm]."""


def find_starts(
    cell: RepeatCell, field: Field, rules: RuleSet, *, level: float | None = None
) -> tuple[Start, ...]:
    """The best start and up to two different ones, best first.

    Args:
        cell: The repeat.
        field: The area with its edges.
        rules: What a sliver is, and what a start is judged by.
        level: Height of a course that the walls beside this one keep too, for a pattern of level courses [mm].

    Returns:
        At least one start; their shifts are whole ticks.

    Raises:
        InputValueError: The area is empty.
    """
    search = _Search(cell=cell, field=field, costs=start_costs(rules), level=level)
    shifts, penalties = search.candidates()
    chosen = _different(shifts, penalties, search.period())
    found = [search.start(shift) for shift in chosen]
    return tuple(
        _worded(start, _praise(facts) if rank == 0 else _trade(facts, found[0][1]))
        for rank, (start, facts) in enumerate(found)
    )


def common_level(walls: Sequence[tuple[RepeatCell, Field]], rules: RuleSet) -> float | None:
    """The height of a course that is best for several walls together, so that joints run on round their corners.

    Args:
        walls: Repeat and area of each wall; heights count from one level for all.
        rules: What a sliver is, and what a start is judged by.

    Returns:
        A height that starts a course [mm]; None where the walls' courses are not alike.
    """
    searches = [_Search(cell=cell, field=field, costs=start_costs(rules)) for cell, field in walls]
    steps = {search.course_step() for search in searches}
    step = next(iter(steps), None)
    if len(steps) != 1 or step is None:
        return None
    levels = np.unique(np.concatenate([search.critical_levels() for search in searches]))
    cost = np.sum([search.cost_of_levels(levels) for search in searches], axis=0)
    return float(levels[np.argmin(np.round(cost, 9))])


def judge_start(cell: RepeatCell, field: Field, shift: XY, rules: RuleSet) -> Start:
    """A start that is given: what it brings.

    Args:
        cell: The repeat.
        field: The area with its edges.
        shift: Where the repeat's origin lies [mm].
        rules: What a sliver is, and what a start is judged by.

    Raises:
        InputValueError: The area is empty.
    """
    start, facts = _Search(cell=cell, field=field, costs=start_costs(rules)).start(shift)
    return _worded(start, f"as given: {_praise(facts)}")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Facts:
    """What a start brings, as its words tell it.

    Attributes:
        short: How far the poorest cut falls short of what is wanted, as surveyed; 0 to 1.
        sliver: A sliver stands there as surveyed.
        may_sliver: One may stand there in a room that the survey allows.
        uneven: Greatest difference of cuts on opposite sides, share of a tile; None where nothing faces.
        where: The side of the narrowest cut, in words; empty where none is narrower than wanted.
        on_joints: Wanted lines that lie on joints.
        poor: Label of every edge, and how poor the narrowest cut there is times its weight.
    """

    cut_tiles: int
    smallest_cut: float
    slack: float
    short: float
    sliver: bool
    may_sliver: bool
    uneven: float | None
    where: str
    on_joints: int
    num_wanted: int
    unsure: bool
    poor: tuple[tuple[str, float], ...]


class _Search:
    """Judges the shifts of one repeat over one area."""

    def __init__(self, *, cell: RepeatCell, field: Field, costs: StartCosts, level: float | None = None) -> None:
        if field.area.is_empty:
            raise InputValueError("no area is left for tile beside openings and joints; leave this tiling out")
        self.cell, self.field, self.costs, self.level = cell, field, costs, level
        self.edges = lines(field, costs.shortest_edge)
        along, up = spacing(cell, 0), spacing(cell, 1)
        self.steps = None if along is None or up is None else (along, up)
        self.by_axis: tuple[tuple[Line, ...], tuple[Line, ...]] = ((), ())
        if self.steps is not None:
            self.by_axis = (
                tuple(edge for edge in self.edges if is_level(edge, cell, 0)),
                tuple(edge for edge in self.edges if is_level(edge, cell, 1)),
            )
        straight = {*self.by_axis[0], *self.by_axis[1]}
        self.oblique = tuple(edge for edge in self.edges if edge not in straight)
        asked = sorted({(0 if axis == "v" else 1, place) for axis, place in field.wanted})
        self.wanted = tuple((axis, place) for axis, place in asked if self._can_be_met(axis, place))

    def period(self) -> Array:
        """Steps after which the cost comes again, one per row [mm]."""
        if self.steps is not None:
            return np.diag(self.steps)
        return np.array((self.cell.step_a, self.cell.step_b))

    def course_step(self) -> float | None:
        """Height of a course and its joint; None where the pattern has no level courses [mm]."""
        return None if self.steps is None else round(self.steps[1], 6)

    def critical_levels(self) -> Array:
        """Every height of a course that can be best, within one step from the datum [mm]."""
        assert self.steps is not None
        step = self.steps[1]
        levels = np.round(self._critical(1, step) % step * TICKS_PER_MM) / TICKS_PER_MM
        return np.unique(levels % step)

    def cost_of_levels(self, levels: Array) -> Array:
        """Cost of each height of a course, shape (levels,)."""
        return self._of_axis(1, levels)

    def penalties(self, shifts: Array) -> Array:
        """Cost of each shift, shape (shifts,)."""
        total = self._of_edges(self.oblique, self._met_by_tiles(shifts, self.field.uncertainty), len(shifts))
        if self.steps is not None:
            total = total + self._of_axis(0, shifts[:, 0]) + self._of_axis(1, shifts[:, 1])
        return total

    def candidates(self) -> tuple[Array, Array]:
        """Shifts worth judging, best first, with their costs."""
        if self.steps is not None:
            across, up = self._best_of_axis(0), self._best_of_axis(1)
            shifts = np.array([(x, y) for x in across for y in up])
            penalties = self.penalties(shifts)
        else:
            shifts = self._scattered()
            penalties = self.penalties(shifts)
            for level in range(1, _ROUNDS + 1):
                best = shifts[np.lexsort((shifts[:, 0], shifts[:, 1], np.round(penalties, 9)))[:_REFINED]]
                near = [(i, j) for i in (-1, 0, 1) for j in (-1, 0, 1) if i or j]
                moves = np.array(near) / (_GRID * 2**level) @ self.period()
                finer = self._home((best[:, None] + moves[None]).reshape(-1, 2))
                shifts, penalties = np.vstack((shifts, finer)), np.concatenate((penalties, self.penalties(finer)))
        order = np.lexsort((shifts[:, 0], shifts[:, 1], np.round(penalties, 9)))
        return shifts[order], penalties[order]

    def start(self, shift: XY) -> tuple[Start, _Facts]:
        """One start judged, its words still to be found."""
        tiles = lay(self.cell, shift, self.field.area)
        whole = {tile.laid for tile in tiles if tile.whole}
        num_cut = len({tile.laid for tile in tiles} - whole)
        widths = cut_widths(tiles, self.costs.shortest_edge)
        at = np.array([shift])
        safe, bare = self._every(at, self.field.uncertainty), self._every(at, 0.0)
        kept = dict(zip(self.edges, (float(one.kept[0]) for one in bare), strict=True))
        pairs = [
            abs(kept[edges[first]] - kept[edges[second]])
            for edges in (*self.by_axis, self.oblique)
            for first, second, _share in facing(edges)
        ]
        facts = _Facts(
            cut_tiles=num_cut,
            smallest_cut=min(widths, default=0.0),
            slack=min((float(one.slack[0]) for one in bare), default=0.0),
            short=max((float(one.poor[0]) for one in bare), default=0.0),
            sliver=any(bool(one.sliver[0]) for one in bare),
            may_sliver=any(bool(one.sliver[0]) for one in safe),
            uneven=max(pairs, default=None),
            where=self._where(bare),
            on_joints=sum(not self._crossed(axis, place, at[:, axis])[0] for axis, place in self.wanted),
            num_wanted=len(self.wanted),
            unsure=self.field.uncertainty > 0,
            poor=tuple(
                (edge.label, edge.weight * float(one.poor[0])) for edge, one in zip(self.edges, bare, strict=True)
            ),
        )
        start = Start(
            shift=shift,
            smallest_cut=facts.smallest_cut,
            slack=facts.slack,
            cut_tiles=num_cut,
            whole_tiles=len(whole),
            penalty=float(self.penalties(at)[0]),
            words="",
            sliver=facts.sliver,
            poorest=facts.where,
        )
        return start, facts

    def _where(self, bare: Sequence[Met]) -> str:
        poorest, edge = max(
            ((float(one.poor[0]), edge) for edge, one in zip(self.edges, bare, strict=True)),
            key=lambda item: round(item[0], 6),
            default=(0.0, None),
        )
        if edge is None or poorest == 0:
            return ""
        return f" at {edge.label}" if edge.label else " at an opening" if edge.hole else ""

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

    def _of_edges(self, edges: Sequence[Line], mets: Sequence[Met], num: int) -> Array:
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
        assert self.steps is not None
        step = self.steps[axis]
        if axis == 1 and self.level is not None:
            return [self.level]
        at = self._critical(axis, step)
        cost = np.round(self._of_axis(axis, at), 9)
        if self.oblique:
            return _apart(at, cost, step, step / _MOST_KEPT, _MOST_KEPT)
        return _apart(at, cost, step, step * _APART_SHARE, 2 * _NUM_STARTS)

    def _can_be_met(self, axis: int, place: float) -> bool:
        """Whether some shift brings a joint there; upright lines cross tiles in some course of a running bond."""
        if self.steps is None:
            return False
        ends = {point[axis] for piece in self.cell.pieces for point in piece.ring}
        return not self._crossed(axis, place, place - np.array(sorted(ends))).all()

    def _critical(self, axis: int, step: float) -> Array:
        """Every shift along an axis that can be best, whole ticks within one step from the low side [mm]."""
        base = self.field.area.bounds[axis]
        unsure = self.field.uncertainty
        found = {0.0}
        for piece in self.cell.pieces:
            low, high = min(point[axis] for point in piece.ring), max(point[axis] for point in piece.ring)
            width = high - low
            half = self.costs.half * width
            turns = [
                depth + error
                for depth in (0.0, min(self.costs.least_cut, self.costs.least_share * width), half, width)
                for error in ((-unsure, 0.0, unsure) if unsure else (0.0,))
            ]
            for edge in self.by_axis[axis]:
                for place in {edge.a[axis], edge.b[axis]}:
                    found |= {
                        round((place + depth - high if edge.inward[axis] > 0 else place - low - depth) - base, 6)
                        % step
                        for depth in turns
                    }
            for on, place in self.wanted:
                if on == axis:
                    found |= {round(place - low - base, 6) % step, round(place - high - base, 6) % step}
        critical = np.array(sorted(found))
        if len(critical) <= _MOST_PAIRED:
            middles = np.add.outer(critical, critical).ravel() / 2
        else:
            middles = (critical + np.append(critical[1:], critical[0] + step)) / 2
        level = np.array(self._equally_poor(axis, step)) - base
        every = np.concatenate((critical, middles % step, (middles + step / 2) % step, level % step)) + base
        ticks = every * TICKS_PER_MM
        return np.unique(np.concatenate((np.floor(ticks + 1e-4), np.ceil(ticks - 1e-4)))) / TICKS_PER_MM

    def _equally_poor(self, axis: int, step: float) -> list[float]:
        """Shifts where cuts at two edges are equally poor, each by the weight of its edge [mm]."""
        # How poor a cut is falls to 0 at a shift, and runs there with a slope.
        runs = [
            (place, sign * edge.weight / half)
            for edge in self.by_axis[axis]
            for piece in self.cell.pieces
            for low, high in (
                (min(point[axis] for point in piece.ring), max(point[axis] for point in piece.ring)),
            )
            for half in (self.costs.half * (high - low),)
            for sign in ((1,) if edge.inward[axis] > 0 else (-1,))
            for at in {edge.a[axis], edge.b[axis]}
            for place in (at + sign * (half + self.field.uncertainty) - (high if sign > 0 else low),)
        ]
        return [
            (slope * place - other * (beside + number * step)) / (slope - other)
            for index, (place, slope) in enumerate(runs)
            for beside, other in runs[:index]
            if abs(slope - other) > _CLOSE
            for number in range(-2, 3)
        ]

    def _scattered(self) -> Array:
        """A grid over one repeat, and where a corner of a piece meets a crossing of edges of the area."""
        i, j = np.meshgrid(np.arange(_GRID), np.arange(_GRID), indexing="ij")
        shifts = [np.column_stack((i.ravel(), j.ravel())) / _GRID @ self.period()]
        longest = sorted(self.edges, key=lambda edge: (-round(edge.share * edge.weight, 6), edge.a, edge.b))
        upright = sorted({edge.a[0] for edge in longest if edge.a[0] == edge.b[0]})[:8]
        level = sorted({edge.a[1] for edge in longest if edge.a[1] == edge.b[1]})[:8]
        corners = np.array([(x, y) for x in upright for y in level])
        if len(corners):
            for piece in self.cell.pieces:
                shifts += [corners - point for point in np.array(piece.ring)]
        return self._home(np.vstack(shifts))

    def _home(self, shifts: Array) -> Array:
        """The same patterns, their origin in the repeat at the area's lower left and on whole ticks."""
        low = np.array(self.field.area.bounds[:2])
        period = self.period()
        parts = np.round((shifts - low) @ np.linalg.inv(period), 9) % 1.0
        return np.asarray(np.round((parts @ period + low) * TICKS_PER_MM) / TICKS_PER_MM)


def _apart(at: Array, cost: Array, step: float, least: float, most: int) -> list[float]:
    """The cheapest shifts along an axis that lie `least` apart, each cheapest thereabouts, cheapest first."""
    kept: list[float] = []
    free = np.ones(len(at), dtype=bool)
    order = np.lexsort((at, cost)).tolist()
    for number, only_lowest in ((most, True), (_NUM_STARTS, False)):
        for index in order:
            if len(kept) >= number:
                break
            if not free[index]:
                continue
            away = np.abs(at - at[index])
            away = np.minimum(away, step - away)
            if only_lowest and (cost[away < least / 2] < cost[index]).any():
                continue
            kept.append(float(at[index]))
            free &= away >= least
    return kept


def _different(shifts: Array, penalties: Array, period: Array) -> list[XY]:
    """The cheapest shifts that leave really different rooms, cheapest first."""
    turn = np.linalg.inv(period)
    chosen: list[XY] = []
    for shift in shifts[np.argsort(np.round(penalties, 9), kind="stable")].tolist():
        parts = [np.abs((np.array(shift) - one) @ turn) % 1.0 for one in chosen]
        if all(float(np.minimum(part, 1.0 - part).max()) >= _APART_SHARE - _CLOSE for part in parts):
            chosen.append((shift[0] + 0.0, shift[1] + 0.0))
        if len(chosen) == _NUM_STARTS:
            break
    return chosen


def _worded(start: Start, words: str) -> Start:
    return replace(start, words=words)


def _praise(facts: _Facts) -> str:
    if facts.cut_tiles == 0:
        said = ["no tile is cut"]
    elif facts.short == 0:
        said = ["no cut along an edge is under half a tile"]
    elif not facts.sliver:
        said = [f"some cuts{facts.where} are under half a tile, none is a sliver"]
    else:
        said = [f"a cut{facts.where} is a sliver"]
    if facts.cut_tiles and facts.uneven is not None and facts.uneven <= _EVEN_SHARE:
        said.append("cuts on opposite sides are even")
    if facts.num_wanted:
        said.append(f"{facts.on_joints} of {facts.num_wanted} edges of niches and windows lie on joints")
    if facts.unsure and not facts.sliver:
        said.append(
            "within the survey's error a sliver may appear"
            if facts.may_sliver
            else "holds for every room that the survey allows"
        )
    return "; ".join(said)


def _trade(facts: _Facts, pick: _Facts) -> str:
    """What a start gives and takes beside the pick."""
    gains: list[str] = []
    losses: list[str] = []
    fewer = pick.cut_tiles - facts.cut_tiles
    if fewer:
        (gains if fewer > 0 else losses).append(f"{abs(fewer)} {'fewer' if fewer > 0 else 'more'} tiles to cut")
    if abs(facts.smallest_cut - pick.smallest_cut) > _TOLD_MM:
        wider = facts.smallest_cut > pick.smallest_cut
        (gains if wider else losses).append(f"the smallest cut is {'wider' if wider else 'narrower'}")
    if facts.sliver != pick.sliver:
        (losses if facts.sliver else gains).append("a sliver" if facts.sliver else "no sliver")
    elif (facts.short == 0) != (pick.short == 0):
        (gains if facts.short == 0 else losses).append(
            f"cuts {'all over' if facts.short == 0 else 'under'} half a tile"
        )
    change, at = max(
        (
            (other - one, label)
            for (label, one), (_label, other) in zip(pick.poor, facts.poor, strict=True)
            if label
        ),
        key=lambda item: (abs(round(item[0], 6)), item[1]),
        default=(0.0, ""),
    )
    if abs(change) > _EVEN_SHARE:
        (gains if change < 0 else losses).append(f"cuts at {at} {'wider' if change < 0 else 'narrower'}")
    if facts.uneven is not None and pick.uneven is not None and abs(facts.uneven - pick.uneven) > _EVEN_SHARE:
        (gains if facts.uneven < pick.uneven else losses).append(
            f"cuts on opposite sides are {'more' if facts.uneven < pick.uneven else 'less'} even"
        )
    more = facts.on_joints - pick.on_joints
    if more:
        (gains if more > 0 else losses).append(
            f"{abs(more)} {'more' if more > 0 else 'fewer'} edges of niches and windows on joints"
        )
    if abs(facts.slack - pick.slack) > _TOLD_MM:
        (gains if facts.slack > pick.slack else losses).append(
            f"stands {'more' if facts.slack > pick.slack else 'less'} error of the room"
        )
    said = [f"for it: {', '.join(gains)}"] if gains else []
    said += [f"against it: {', '.join(losses)}"] if losses else []
    return "; ".join(said) or "much like the pick, with the joints elsewhere"
