"""Which shifts of a pattern can be best, and which of equally good ones comes first. Lengths are millimetres."""

from collections.abc import Sequence
from itertools import product

import numpy as np

from firstcourse.tiles.alike import ALIKE_MM
from firstcourse.tiles.area_edges import EdgeLine
from firstcourse.tiles.edges import StartCosts
from firstcourse.tiles.lay import Array
from firstcourse.tiles.model import XY, RepeatCell, TileArea
from firstcourse.units import TICKS_PER_MM

APART_SHARE = 0.25
"""Two starts are really different when they lie apart by this share of a tile and joint, or more."""
NUM_STARTS = 3
_MOST_PAIRED = 150
"""Critical shifts of one axis up to which every pair's midpoint is judged, not only those of neighbours."""
_GRID = 20
_MOST_PLACES = 8
"""Edges each way whose crossings are tried with every corner of the pattern."""
_CLOSE = 1e-9
SAME_COST = 1e-3
"""Costs that differ by less are the same but for whole ticks."""


def critical_shifts(
    cell: RepeatCell,
    field: TileArea,
    edges: Sequence[EdgeLine],
    wanted: Sequence[float],
    axis: int,
    costs: StartCosts,
    step: float,
) -> Array:
    """Every shift along an axis that can be best, whole ticks within one step from the low side [mm].

    Args:
        cell: The repeat.
        field: The area.
        edges: Its edges square to the axis.
        wanted: Places along the axis that are best met by a joint [mm].
        axis: 0 for shifts to the right, 1 for shifts upwards.
        costs: What a sliver is.
        step: Distance of the pattern's rows across the axis [mm].
    """
    base = field.area.bounds[axis]
    unsure = field.uncertainty
    found = set[float]()
    for low, high in _reaches(cell, axis):
        width = high - low
        # Where no edge decides, a tile stands in the middle.
        found.add(round(_middle(field)[axis] - (low + high) / 2 - base, 6) % step)
        half = costs.half * width
        turns = [
            depth + error
            for depth in (0.0, min(costs.least_cut, costs.least_share * width), half, width)
            for error in ((-unsure, 0.0, unsure) if unsure else (0.0,))
        ]
        for edge in edges:
            for place in {edge.a[axis], edge.b[axis]}:
                found |= {
                    round((place + depth - high if edge.inward[axis] > 0 else place - low - depth) - base, 6)
                    % step
                    for depth in turns
                }
        for place in wanted:
            found |= {round(place - low - base, 6) % step, round(place - high - base, 6) % step}
    critical = np.array(sorted(found))
    if len(critical) <= _MOST_PAIRED:
        middles = np.add.outer(critical, critical).ravel() / 2
    else:
        middles = (critical + np.append(critical[1:], critical[0] + step)) / 2
    level = np.array(_equally_poor(cell, edges, axis, costs, unsure, step)) - base
    every = np.concatenate((critical, middles % step, (middles + step / 2) % step, level % step)) + base
    ticks = every * TICKS_PER_MM
    return np.unique(np.concatenate((np.floor(ticks + 1e-4), np.ceil(ticks - 1e-4)))) / TICKS_PER_MM


def scattered_shifts(cell: RepeatCell, field: TileArea, edges: Sequence[EdgeLine]) -> Array:
    """A grid that brings every piece to the middle, and where a corner of a piece meets a crossing of edges."""
    number = max(_GRID // round(np.sqrt(len(cell.pieces))), 1)
    i, j = np.meshgrid(np.arange(number), np.arange(number), indexing="ij")
    grid = np.column_stack((i.ravel(), j.ravel())) / number @ np.array((cell.step_a, cell.step_b))
    shifts = [_middle(field) - centre + grid for centre in _centres(cell)]
    longest = sorted(edges, key=lambda edge: (-round(edge.share * edge.weight, 6), edge.a, edge.b))
    upright = list(dict.fromkeys(edge.a[0] for edge in longest if edge.a[0] == edge.b[0]))[:_MOST_PLACES]
    level = list(dict.fromkeys(edge.a[1] for edge in longest if edge.a[1] == edge.b[1]))[:_MOST_PLACES]
    corners = np.array([(x, y) for x in upright for y in level])
    if len(corners):
        shifts += [corners - point for piece in cell.pieces for point in np.array(piece.ring)]
    return np.vstack(shifts)


def finer(best: Array, cell: RepeatCell, level: int) -> Array:
    """Eight shifts round each of the best ones, half as far off with each level."""
    reach = np.sqrt(abs(np.linalg.det(np.array((cell.step_a, cell.step_b))))) / (_GRID * 2**level)
    moves = np.array([move for move in product((-1, 0, 1), repeat=2) if any(move)]) * reach
    return np.asarray((best[:, None] + moves[None]).reshape(-1, 2))


def home(shifts: Array, period: Array, field: TileArea) -> Array:
    """The same patterns, their origin in the repeat at the area's lower left and on whole ticks."""
    low = np.array(field.area.bounds[:2])
    parts = np.round((shifts - low) @ np.linalg.inv(period), 9) % 1.0
    return np.asarray(np.round((parts @ period + low) * TICKS_PER_MM) / TICKS_PER_MM)


def ranked(shifts: Array, penalties: Array, cell: RepeatCell, period: Array, field: TileArea) -> Array:
    """Order of shifts from the cheapest; of equally good ones the one that centres a tile best comes first."""
    off = [_off(shifts, point, cell, period) for point in (_centroid(field), _middle(field))]
    return np.lexsort((shifts[:, 0], shifts[:, 1], off[1], off[0], np.round(penalties, 9)))


def ranked_along(axis: int, at: Array, cost: Array, cell: RepeatCell, step: float, field: TileArea) -> list[int]:
    """The same along one axis."""
    beyond = [
        (at[:, None] + _centres(cell)[None, :, axis] - point[axis]) % step
        for point in (_centroid(field), _middle(field))
    ]
    off = [np.round(np.minimum(one, step - one).min(axis=1), 6) for one in beyond]
    return [int(index) for index in np.lexsort((at, off[1], off[0], np.round(cost, 9)))]


def apart(at: Array, cost: Array, order: Sequence[int], step: float, least: float, most: int) -> list[float]:
    """The cheapest shifts along an axis that lie `least` apart, each cheapest thereabouts, in a given order.

    Args:
        at: Shifts, shape (shifts,).
        cost: What each costs, shape (shifts,).
        order: Their numbers, best first.
        step: Distance after which the pattern's rows come again.
        least: How far apart they lie at least.
        most: How many are wanted; where fewer are cheapest thereabouts, at least `NUM_STARTS`.
    """
    kept: list[float] = []
    free = np.ones(len(at), dtype=bool)
    for number, only_lowest in ((most, True), (NUM_STARTS, False)):
        for index in order:
            if len(kept) >= number:
                break
            if not free[index]:
                continue
            off = np.abs(at - at[index])
            off = np.minimum(off, step - off)
            if only_lowest and (cost[off < least / 2 - ALIKE_MM] < cost[index]).any():
                continue
            kept.append(float(at[index]))
            free &= off >= least - ALIKE_MM
    return kept


def different(shifts: Array, period: Array, *, square: bool, most: int) -> list[XY]:
    """The first shifts that leave really different rooms.

    Args:
        shifts: In order of preference.
        period: Steps after which the pattern's cost comes again, one per row [mm].
        square: The period's steps lie along the axes, so that each axis is compared by itself.
        most: How many are wanted.
    """
    turn = np.linalg.inv(period)
    shortest = min(float(np.hypot(*move)) for move in _neighbours(period) if np.hypot(*move) > ALIKE_MM)
    chosen: list[XY] = []
    for shift in shifts.tolist():
        moves = [np.array(shift) - one for one in chosen]
        if square:
            parts = [np.abs(move @ turn) % 1.0 for move in moves]
            fits = all(float(np.minimum(part, 1.0 - part).max()) >= APART_SHARE - _CLOSE for part in parts)
        else:
            fits = all(_least(move[None], period)[0] >= APART_SHARE * shortest - ALIKE_MM for move in moves)
        if fits:
            chosen.append((shift[0] + 0.0, shift[1] + 0.0))
        if len(chosen) == most:
            break
    return chosen


def away(one: XY, other: XY, cell: RepeatCell) -> float:
    """How far two shifts lie apart but for whole steps of the pattern [mm]."""
    period = np.array((cell.step_a, cell.step_b))
    return float(_least(np.array(one)[None] - np.array(other)[None], period)[0])


def rows_apart(shift: XY, cell: RepeatCell, steps: tuple[float, float]) -> Array:
    """Every pattern whose rows keep their places while the tiles in them change theirs, as in a running bond."""
    (ax, ay), (bx, by) = cell.step_a, cell.step_b
    number = max(round(abs(ax * by - ay * bx) / (steps[0] * steps[1])), 1)
    ticks = np.round((shift[0] + np.arange(number) * steps[0]) * TICKS_PER_MM) / TICKS_PER_MM
    return np.column_stack((ticks, np.full(number, shift[1])))


def _equally_poor(
    cell: RepeatCell, edges: Sequence[EdgeLine], axis: int, costs: StartCosts, unsure: float, step: float
) -> list[float]:
    """Shifts where cuts at two edges are equally poor, each by the weight of its edge [mm]."""
    # How poor a cut is falls to 0 at a shift, and runs there with a slope.
    runs = [
        (place, sign * edge.weight / half)
        for edge in edges
        for low, high in _reaches(cell, axis)
        for half in (costs.half * (high - low),)
        for sign in ((1,) if edge.inward[axis] > 0 else (-1,))
        for at in {edge.a[axis], edge.b[axis]}
        for place in (at + sign * (half + (0.0 if edge.free else unsure)) - (high if sign > 0 else low),)
    ]
    return [
        (slope * place - other * (beside + number * step)) / (slope - other)
        for index, (place, slope) in enumerate(runs)
        for beside, other in runs[:index]
        if abs(slope - other) > _CLOSE
        for number in range(-2, 3)
    ]


def _reaches(cell: RepeatCell, axis: int) -> list[tuple[float, float]]:
    reaches = [[point[axis] for point in piece.ring] for piece in cell.pieces]
    return [(min(reach), max(reach)) for reach in reaches]


def _centres(cell: RepeatCell) -> Array:
    return np.array([np.mean(piece.ring, axis=0) for piece in cell.pieces])


def _centroid(field: TileArea) -> Array:
    return np.array((field.area.centroid.x, field.area.centroid.y))


def _middle(field: TileArea) -> Array:
    left, lower, right, upper = field.area.bounds
    return np.array(((left + right) / 2, (lower + upper) / 2))


def _off(shifts: Array, point: Array, cell: RepeatCell, period: Array) -> Array:
    """How far the nearest piece's middle lies off a point, for each shift."""
    every = [_least(shifts + centre - point, period) for centre in _centres(cell)]
    return np.asarray(np.round(np.stack(every).min(axis=0), 6))


def _least(moves: Array, period: Array) -> Array:
    """Length of each move but for whole steps of a pattern, shape (moves,) [mm]."""
    rest = moves @ np.linalg.inv(period)
    rest = (rest - np.round(rest)) @ period
    return np.asarray(np.linalg.norm(rest[:, None] + _neighbours(period)[None], axis=2).min(axis=1))


def _neighbours(period: Array) -> Array:
    return np.array(list(product((-2, -1, 0, 1, 2), repeat=2))) @ period
