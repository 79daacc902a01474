"""How a pattern meets the edges of an area: the width of the cuts there, and what errors of the room do to them.

The width of a cut is measured square to the edge it is cut along: from the edge to the far side of the tile. A
corner triangle of a diagonal pattern is thus as wide as it is high above the wall, and half a tile there is a tile
cut from corner to corner.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from firstcourse.rules import RuleSet
from firstcourse.tiles.alike import ALIKE_MM
from firstcourse.tiles.area_edges import EdgeLine, facing
from firstcourse.tiles.lay import CUT_MM, Array, origins
from firstcourse.tiles.model import XY, RepeatCell
from firstcourse.units import to_mm

_FINEST_SHARE = 1 / 24
"""Rows of a pattern that stand closer across an axis than this share of a tile meet edges in every way."""
_LEVEL_SHARE = 0.25
"""An edge out of level or plumb by less than this share of a tile is still taken for level or upright."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StartCosts:
    """What a start is judged by; see the rules `tiling.start` of the same names.

    Attributes:
        half: Smallest cut wanted, share of the tile.
        least_cut: Below this a cut is a sliver [mm].
        least_share: The same of a small tile, share of the tile.
        shortest_edge: Shorter edges do not count [mm].
        more_cuts: So many more tiles are cut to be rid of a sliver.
        joint_takes: So much wider than planned a soft joint may come out before tile is set in its place [mm].
    """

    half: float
    least_cut: float
    least_share: float
    shortest_edge: float
    more_cuts: int
    joint_takes: float
    sliver: float
    sure: float
    poorest: float
    poor: float
    wanted: float
    uneven: float
    cuts: float
    tight: float


def start_costs(rules: RuleSet) -> StartCosts:
    """The costs as the rule book has them."""

    def cost(name: str) -> float:
        return rules.number(f"tiling.start.cost.{name}")

    return StartCosts(
        half=rules.number("tiling.start.half"),
        least_cut=to_mm(rules.ticks("tiling.start.least_cut")),
        least_share=rules.number("tiling.start.least_share"),
        shortest_edge=to_mm(rules.ticks("tiling.start.shortest_edge")),
        more_cuts=round(rules.number("tiling.start.more_cuts")),
        joint_takes=to_mm(rules.ticks("tiling.start.joint_takes")),
        sliver=cost("sliver"),
        sure=cost("sure"),
        poorest=cost("poorest"),
        poor=cost("poor"),
        wanted=cost("wanted"),
        uneven=cost("uneven"),
        cuts=cost("cuts"),
        tight=cost("tight"),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """How an edge is met, for each of several shifts; arrays of shape (shifts,).

    Attributes:
        poor: How far the narrowest cut falls short of what is wanted in the worst room that the survey allows; 0
            where it does not, 1 where nothing may be left.
        sliver: Whether a sliver may stand there.
        short: How far the narrowest cut as surveyed falls short of the least, 0 to 1; 0 where none is a sliver.
        slack: How far the edge may move either way before one does [mm].
        kept: Narrowest cut as surveyed, share of the widest tile; 1 where none is cut.
        cuts: Tiles that are cut, share of those that a line across the pattern meets.
        sure: Narrowest cut in the worst room that the survey allows; the widest tile where none is cut [mm].
    """

    poor: Array
    sliver: Array
    short: Array
    slack: Array
    kept: Array
    cuts: Array
    sure: Array


def met(
    depth: Array,
    width: Array,
    seen: Array | bool,
    *,
    out: float,
    unsure: float,
    usual: float,
    costs: StartCosts,
    widest: float,
    joint: float | None = None,
) -> Met:
    """Judge an edge by how deep each tile near it lies within the area.

    Args:
        depth: How far each tile reaches inwards from the edge, below 0 where it lies beyond, shape (shifts, tiles)
            [mm].
        width: Each tile's width square to the edge, uncut, shape (tiles,) [mm].
        seen: Which tiles the edge meets, shape (shifts, tiles).
        out: How far the edge leaves its middle line either way [mm].
        unsure: How far the edge may lie elsewhere than surveyed [mm].
        usual: How many tiles a line like the edge crosses.
        costs: What a sliver is.
        widest: Width of the pattern's widest tile; where no tile is near nothing comes nearer than that [mm].
        joint: The pattern's joint where the edge is free, so that tile ends there or is cut [mm]; None elsewhere.
    """
    low, high = depth - out, depth + out
    cut = seen & (high > CUT_MM) & (low < width - CUT_MM)
    # Where the room comes out a little larger no strip is set beyond the last whole tile: the joint is wider.
    begins = np.where(high > CUT_MM, CUT_MM, CUT_MM + costs.joint_takes)
    may = seen & (high + unsure > begins) & (low - unsure < width - CUT_MM)
    safe = np.maximum(low - unsure, 0.0)
    half = costs.half * width
    least = np.minimum(costs.least_cut, costs.least_share * width)
    slack = np.where(high > CUT_MM, low - least, 0.0 - high)
    widest = float(width.max()) if width.size else widest
    # Where the next tile would begin less than a joint beyond a free edge, this one ends short of it.
    short_of = False if joint is None else seen & (low <= CUT_MM) & (low + joint > CUT_MM)
    return Met(
        poor=np.where(may | short_of, np.maximum(1.0 - safe / half, 0.0), 0.0).max(axis=1, initial=0.0),
        sliver=(may & (safe < least - CUT_MM)).any(axis=1),
        short=np.where(cut, 1.0 - np.clip(low / least, 0.0, 1.0), 0.0).max(axis=1, initial=0.0),
        slack=np.clip(np.where(seen, slack, widest).min(axis=1, initial=widest), 0.0, widest) + 0.0,
        kept=np.where(cut, np.clip(low / widest, 0.0, 1.0), 1.0).min(axis=1, initial=1.0),
        cuts=cut.sum(axis=1) / usual,
        sure=np.where(may, safe, widest).min(axis=1, initial=widest),
    )


def spacing(cell: RepeatCell, axis: int) -> float | None:
    """Distance of the rows of a pattern across an axis [mm]; None where they come too close to be told apart."""
    a, b = sorted((abs(cell.step_a[axis]), abs(cell.step_b[axis])), reverse=True)
    while b > 1e-3:
        a, b = b, abs(a - round(a / b) * b)
    least = min(extent(piece.ring, axis) for piece in cell.pieces)
    return a if a > least * _FINEST_SHARE else None


def extent(ring: Sequence[XY], axis: int) -> float:
    """Width of a piece along an axis [mm]."""
    return max(point[axis] for point in ring) - min(point[axis] for point in ring)


def is_level(line: EdgeLine, cell: RepeatCell, axis: int) -> bool:
    """Whether an edge runs square to an axis, but for a taper that is small beside a tile."""
    rise = abs(line.a[axis] - line.b[axis])
    least = min(extent(piece.ring, axis) for piece in cell.pieces)
    return abs(line.inward[axis]) > 0.9 and rise <= _LEVEL_SHARE * least


def met_by_rows(
    line: EdgeLine, cell: RepeatCell, axis: int, step: float, at: Array, *, unsure: float, costs: StartCosts
) -> Met:
    """How an edge square to an axis is met when the pattern is shifted along the axis.

    The edge is judged as if it met every row of the pattern, which a long one does.

    Args:
        line: The edge.
        cell: The repeat.
        axis: 0 for an upright edge, 1 for a level one.
        step: Distance of the rows across the axis, see `spacing` [mm].
        at: Shifts, shape (shifts,) [mm].
        unsure: How far the edge may lie elsewhere than surveyed [mm].
        costs: What a sliver is.
    """
    unsure = 0.0 if line.free else unsure
    middle, out = (line.a[axis] + line.b[axis]) / 2, abs(line.a[axis] - line.b[axis]) / 2
    depths, extents = [], []
    for piece in cell.pieces:
        width = extent(piece.ring, axis)
        if line.inward[axis] > 0:
            reach = at + max(point[axis] for point in piece.ring) - middle
        else:
            reach = middle - at - min(point[axis] for point in piece.ring)
        first = reach - step * np.ceil((reach + unsure + out) / step)
        for number in range(math.ceil((width + 2 * (unsure + out)) / step) + 2):
            depths.append(first + number * step)
            extents.append(width)
    usual = sum(extent(piece.ring, axis) for piece in cell.pieces) / step
    widths = np.array(extents)
    joint = cell.joint if line.free else None
    found = met(
        np.stack(depths, axis=1),
        widths,
        True,
        out=out,
        unsure=unsure,
        usual=usual,
        costs=costs,
        widest=float(widths.max()),
        joint=joint,
    )
    return _stays(found, widths) if line.free else found


def _stays(found: Met, widths: Array) -> Met:
    """How an edge is met that no error of the survey moves."""
    return replace(found, slack=np.full(len(found.slack), float(widths.max(initial=0.0))))


def met_by_tiles(line: EdgeLine, cell: RepeatCell, shifts: Array, *, unsure: float, costs: StartCosts) -> Met:
    """How an edge of any direction is met by the very tiles beside it.

    A tile that lies square to the edge stands beside it when they share a length of `shortest_edge`, of a small
    tile a third of its side; one that lies askew when its middle does, as beyond the end it shows but a corner.

    Args:
        line: The edge.
        cell: The repeat.
        shifts: Where the repeat's origin lies, shape (shifts, 2) [mm].
        unsure: How far the edge may lie elsewhere than surveyed [mm].
        costs: What a sliver is.
    """
    unsure = 0.0 if line.free else unsure
    inward = np.array(line.inward)
    along = np.array((inward[1], -inward[0]))
    ends = np.array((line.a, line.b))
    rings = [np.array(piece.ring) for piece in cell.pieces]
    across = [ring @ inward for ring in rings]
    widths = np.array([np.ptp(reach) for reach in across])
    margin = unsure + widths.max() / 2
    low = ends.min(axis=0) - shifts.max(axis=0) - margin
    high = ends.max(axis=0) - shifts.min(axis=0) + margin
    every = [point for piece in cell.pieces for point in piece.ring]
    moves = origins(cell, every, (0.0, 0.0), (*low, *high)) - line.a
    depth = (moves @ inward)[:, None] + np.array([reach.max() for reach in across])
    alongs = [ring @ along for ring in rings]
    square = [bool((np.abs(np.diff(np.append(reach, reach[0]))) < ALIKE_MM).any()) for reach in across]
    middles = np.array([reach.mean() for reach in alongs])
    halves = np.array([np.ptp(reach) / 2 if fits else 0.0 for reach, fits in zip(alongs, square, strict=True)])
    shared = np.minimum(costs.shortest_edge, halves * 2 / 3)
    middle = (moves @ along)[:, None] + middles
    inwards, alongs_by = shifts @ inward, shifts @ along
    # Pieces that for every shift lie clear of the edge need no judging.
    near = (depth + inwards.max() > -margin) & (depth + inwards.min() < widths + margin)
    near &= (middle + alongs_by.max() >= -halves) & (middle + alongs_by.min() <= line.length + halves)
    width = np.broadcast_to(widths, near.shape)[near]
    half = np.broadcast_to(halves, near.shape)[near]
    beside = middle[near] + alongs_by[:, None]
    common = np.minimum(beside + half, line.length) - np.maximum(beside - half, 0.0)
    cross = cell.step_a[0] * cell.step_b[1] - cell.step_a[1] * cell.step_b[0]
    found = met(
        depth[near] + inwards[:, None],
        width,
        common >= np.broadcast_to(shared, near.shape)[near],
        out=0.0,
        unsure=unsure,
        usual=max(float(widths.sum()) * line.length / abs(cross), 1.0),
        costs=costs,
        widest=float(widths.max()),
        joint=cell.joint if line.free else None,
    )
    return _stays(found, widths) if line.free else found


def crossed(cell: RepeatCell, axis: int, step: float, place: float, at: Array) -> Array:
    """Whether some tile lies across a line square to an axis, shape (shifts,).

    Args:
        cell: The repeat.
        axis: 0 for an upright line, 1 for a level one.
        step: Distance of the rows across the axis, see `spacing` [mm].
        place: Where the line runs [mm].
        at: Shifts along the axis, shape (shifts,) [mm].
    """
    found = np.zeros(len(at), dtype=bool)
    for piece in cell.pieces:
        width = extent(piece.ring, axis)
        behind = (place - at - min(point[axis] for point in piece.ring)) % step
        for number in range(math.ceil(width / step)):
            depth = behind + number * step
            found |= (depth > CUT_MM) & (depth < width - CUT_MM)
    return found


def group_cost(edges: Sequence[EdgeLine], mets: Sequence[Met], costs: StartCosts, num: int) -> Array:
    """What the cuts along some edges cost, shape (num,)."""
    if not edges:
        return np.zeros(num)
    share = np.array([edge.share for edge in edges])[:, None]
    weight = np.array([edge.weight for edge in edges])[:, None]
    poor = weight * np.stack([one.poor for one in mets])
    total = costs.sliver * (share * weight * np.stack([one.sliver for one in mets])).sum(axis=0)
    total += costs.sure * (share * weight * np.stack([one.short for one in mets])).sum(axis=0)
    total += costs.poorest * poor.max(axis=0) + costs.poor * (share * poor).sum(axis=0)
    total += costs.cuts * (share * np.stack([one.cuts for one in mets])).sum(axis=0)
    for first, second, part in facing(edges):
        total += costs.uneven * part * np.abs(mets[first].kept - mets[second].kept)
    return np.asarray(total)
