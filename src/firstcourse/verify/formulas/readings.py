"""Readings for flatness as the job gives them: what straightedges see over them, their planes, what is allowed."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations

import numpy as np

from firstcourse.rules import RuleSet
from firstcourse.verify.fields import FieldError
from firstcourse.verify.formulas.parts import Part, length_mm

MM_PER_IN = 25.4
SAME_MM = 1e-6
_MOST = 120
_BESIDE_MM = 25.0
"""Readings this near a straightedge lie under it [mm]."""


@dataclass(frozen=True, slots=True)
class Spot:
    """One reading: along the surface, out on a floor or up on a wall, and how far towards the tile [mm]."""

    left: float
    on: float
    height: float


@dataclass(frozen=True, slots=True)
class Edge:
    """A straightedge: its length and what it allows [mm], its rule and its code."""

    name: str
    reach: float
    allowed: float
    rule: str


@dataclass(frozen=True, slots=True)
class Readings:
    """All readings of one surface.

    Attributes:
        way: How they lie: `string` along one string, `out` on a floor, `up` on a wall.
        edges: The straightedges that its tile is judged by, the long one first.
        large: Whether its tile counts as large.
    """

    spots: tuple[Spot, ...]
    way: str
    edges: tuple[Edge, ...]
    large: bool

    @property
    def uneven(self) -> list[str]:
        """Straightedges that find more than they allow, by code."""
        return [edge.name for edge in self.edges if seen_under(self.spots, edge)[0] > edge.allowed + SAME_MM]

    def moved(self, changes: Sequence[float]) -> "Readings":
        """The same with something added at each [mm]."""
        spots = zip(self.spots, changes, strict=True)
        return replace(self, spots=tuple(replace(spot, height=spot.height + by) for spot, by in spots))


def readings_of(part: Part, rules: RuleSet) -> Readings | None:
    """The readings of a floor or wall; None where none were taken or no tile says how flat it must be."""
    if part.edge_mm is None or part.surface.kind == "ceiling":
        return None
    large = is_large(part.edge_mm, rules)
    if part.surface.kind == "floor":
        rows = part.given.nodes("spots", ())
        spots = [Spot(length_mm(row, "left"), length_mm(row, "out"), length_mm(row, "height")) for row in rows]
        way = "out"
    else:
        rows = part.given.nodes("faces", ())
        heights = heights_of(part) or [0.0]
        spots = [
            Spot(length_mm(row, "at"), up, length_mm(row, "face")) for row, up in zip(rows, heights, strict=False)
        ]
        one_string = max(heights) - min(heights) <= rules.number("surface.string.reach") * MM_PER_IN
        way = "string" if one_string else "up"
        spots = [replace(spot, on=0.0) for spot in spots] if one_string else spots
    if len(spots) > _MOST:
        raise FieldError(part.given.where, f"has more than {_MOST} readings")
    return Readings(tuple(spots), way, edges_for(rules, large=large), large) if spots else None


def heights_of(part: Part) -> list[float]:
    """Heights of a wall's readings above the floor; nothing where a string was read [mm]."""
    return [length_mm(row, "up") if "up" in row.value else 0.0 for row in part.given.nodes("faces", ())]


def is_large(edge_mm: float, rules: RuleSet) -> bool:
    """Whether a tile of a longest edge counts as large; where a practice has one tolerance for all, none does."""
    return _by_size(rules) and edge_mm >= rules.number("surface.large_tile") * MM_PER_IN


def edges_for(rules: RuleSet, *, large: bool) -> tuple[Edge, ...]:
    """The straightedges of a practice: two by the size of the tile, or one over the finished tile."""
    if not _by_size(rules):
        rule = "surface.finished.flatness"
        return (Edge("long_straightedge", rules.number("surface.finished.reach"), rules.number(rule), rule),)
    size = "large" if large else "small"
    rows = (
        ("long", "surface.flatness.long_reach", f"surface.flatness.{size}_long"),
        ("short", f"surface.flatness.{size}_reach", f"surface.flatness.{size}_short"),
    )
    return tuple(
        Edge(f"{name}_straightedge", rules.number(reach) * MM_PER_IN, rules.number(rule) * MM_PER_IN, rule)
        for name, reach, rule in rows
    )


def _by_size(rules: RuleSet) -> bool:
    return rules.has("surface.flatness.long_reach") or not rules.has("surface.finished.flatness")


@lru_cache(maxsize=64)
def seen_under(spots: tuple[Spot, ...], edge: Edge) -> tuple[float, tuple[int, ...]]:
    """The widest gap under a straightedge from one reading to another [mm], and the readings it never meets."""
    worst = 0.0
    met: set[int] = set()
    at = np.array([(spot.left, spot.on, spot.height) for spot in spots])
    for one, other in combinations(range(len(spots)), 2):
        span = at[other, :2] - at[one, :2]
        long = math.hypot(*span)
        if not 0 < long <= edge.reach + SAME_MM:
            continue
        ahead = at[:, :2] - at[one, :2]
        along, aside = ahead @ span / long, np.abs(ahead[:, 0] * span[1] - ahead[:, 1] * span[0]) / long
        under = np.flatnonzero((along > SAME_MM) & (along < long - SAME_MM) & (aside <= _BESIDE_MM))
        if len(under):
            chord = at[one, 2] + (at[other, 2] - at[one, 2]) * along[under] / long
            worst = max(worst, float(np.abs(at[under, 2] - chord).max()))
            met |= {one, other, *under.tolist()}
    return round(worst, 6), tuple(place for place in range(len(spots)) if place not in met)


def best_plane(readings: Readings) -> tuple[float, float, list[float]]:
    """Slopes along and across of the plane of least squares, and each reading's height over it [mm]."""
    columns = np.array([[1.0, spot.left / 1000, spot.on / 1000] for spot in readings.spots])
    heights = np.array([spot.height for spot in readings.spots])
    used = 2 if readings.way == "string" else 3
    found, *_ = np.linalg.lstsq(columns[:, :used], heights, rcond=None)
    off = heights - columns[:, :used] @ found
    return float(found[1]), float(found[2]) if used > 2 else 0.0, [float(each) for each in off]


def narrowest(readings: Readings, marks: Sequence[tuple[float, float]] = ()) -> float | None:
    """How far apart the closest two parallel planes are that hold every reading [mm].

    Args:
        readings: The readings.
        marks: For each reading between what its height over the middle plane must lie; any where none are given.

    Returns:
        None where no plane has it so.
    """
    from scipy.optimize import linprog

    ones = [[1.0, spot.left / 1000, spot.on / 1000] for spot in readings.spots]
    heights = [spot.height for spot in readings.spots]
    rows = [[*row, -1.0] for row in ones] + [[-value for value in row] + [-1.0] for row in ones]
    sides = heights + [-height for height in heights]
    for row, height, (low, high) in zip(ones, heights, marks, strict=False):
        rows += [[*row, 0.0], [*(-value for value in row), 0.0]]
        sides += [height - low, high - height]
    free = (None, None)
    found = linprog([0, 0, 0, 1], A_ub=rows, b_ub=sides, bounds=[free, free, free, (0, None)], method="highs")
    return 2 * float(found.fun) if found.success else None
