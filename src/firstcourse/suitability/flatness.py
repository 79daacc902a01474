"""Flatness of a surface from spot levels or straightedge readings: best plane, highs and lows, grinding, filling.

Works in mm; heights are positive towards the tile.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet

MM_PER_IN = 25.4
MOST_SPOTS = 120
# Spots this near a straightedge's line lie under it.
EDGE_WIDTH_MM = 25.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """One level reading.

    Attributes:
        u_mm, v_mm: Where on the surface [mm].
        height_mm: Height towards the tile over any datum [mm].
    """

    u_mm: float
    v_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """height = level_mm + slope_u · u + slope_v · v."""

    level_mm: float
    slope_u: float
    slope_v: float

    def height_at(self, u_mm: float, v_mm: float) -> float:
        """Height of the plane [mm]."""
        return self.level_mm + self.slope_u * u_mm + self.slope_v * v_mm

    @property
    def slope(self) -> float:
        """Steepest slope, rise over run."""
        return math.hypot(self.slope_u, self.slope_v)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tolerance:
    """How flat a surface must be for one tile.

    Attributes:
        long_mm: Most deviation under the long straightedge [mm].
        long_reach_mm: Its length [mm].
        short_mm: Most deviation under the short straightedge [mm].
        short_reach_mm: Its length [mm].
        large: Whether the tile counts as large.
    """

    long_mm: float
    long_reach_mm: float
    short_mm: float
    short_reach_mm: float
    large: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Flatness:
    """What the spot levels say.

    Attributes:
        deviations_mm: Height of each spot over the best plane, in the order given [mm].
        worst_long_mm: Worst deviation under any straightedge up to the long one [mm].
        worst_short_mm: The same up to the short one [mm].
        passes: Whether both keep the tolerance.
        grind: Indexes of spots higher over the plane than half the long tolerance, highest first.
    """

    plane: Plane
    deviations_mm: tuple[float, ...]
    worst_long_mm: float
    worst_short_mm: float
    tolerance: Tolerance
    passes: bool
    grind: tuple[int, ...]


def tolerance_for(rules: RuleSet, largest_edge_mm: float) -> Tolerance:
    """The flatness a tile wants, by its longest edge [mm]."""
    large = largest_edge_mm >= rules.number("surface.large_tile") * MM_PER_IN
    size = "large" if large else "small"
    return Tolerance(
        long_mm=rules.number(f"surface.flatness.{size}_long") * MM_PER_IN,
        long_reach_mm=rules.number("surface.flatness.long_reach") * MM_PER_IN,
        short_mm=rules.number(f"surface.flatness.{size}_short") * MM_PER_IN,
        short_reach_mm=rules.number(f"surface.flatness.{size}_reach") * MM_PER_IN,
        large=large,
    )


def straightedge_passes(tolerance: Tolerance, long_mm: float, short_mm: float | None) -> bool:
    """Whether gaps found under the long and the short straightedge keep the tolerance [mm]."""
    return long_mm <= tolerance.long_mm and (short_mm is None or short_mm <= tolerance.short_mm)


def best_plane(spots: Sequence[Spot]) -> Plane:
    """The plane with the least sum of squared height differences.

    Raises:
        InputValueError: Fewer than three spots, or all on one line.
    """
    if len(spots) < 3:
        raise InputValueError(f"a plane needs three spot levels or more, not {len(spots)}")
    n = len(spots)
    mu, mv = sum(s.u_mm for s in spots) / n, sum(s.v_mm for s in spots) / n
    mh = sum(s.height_mm for s in spots) / n
    uu = sum((s.u_mm - mu) ** 2 for s in spots)
    vv = sum((s.v_mm - mv) ** 2 for s in spots)
    uv = sum((s.u_mm - mu) * (s.v_mm - mv) for s in spots)
    uh = sum((s.u_mm - mu) * (s.height_mm - mh) for s in spots)
    vh = sum((s.v_mm - mv) * (s.height_mm - mh) for s in spots)
    determinant = uu * vv - uv * uv
    if determinant <= 1e-9 * (uu + vv) ** 2:
        raise InputValueError("all spot levels lie on one line; take some beside it")
    slope_u, slope_v = (uh * vv - vh * uv) / determinant, (vh * uu - uh * uv) / determinant
    return Plane(level_mm=mh - slope_u * mu - slope_v * mv, slope_u=slope_u, slope_v=slope_v)


@lru_cache(maxsize=64)
def judge_flatness(spots: tuple[Spot, ...], tolerance: Tolerance) -> Flatness:
    """Lay straightedges over every pair of spots, and the best plane through all.

    Between two spots, the gap under (or the hump over) their chord at any spot beneath it is a deviation. Spots
    are samples: what lies between them is not seen.
    """
    if len(spots) > MOST_SPOTS:
        raise InputValueError(f"{len(spots)} spot levels are more than {MOST_SPOTS}; judge the surface in parts")
    plane = best_plane(spots)
    deviations = tuple(s.height_mm - plane.height_at(s.u_mm, s.v_mm) for s in spots)
    worst_long, worst_short = 0.0, 0.0
    for i, one in enumerate(spots):
        for other in spots[i + 1 :]:
            du, dv = other.u_mm - one.u_mm, other.v_mm - one.v_mm
            length = math.hypot(du, dv)
            if not 0 < length <= tolerance.long_reach_mm:
                continue
            for spot in spots:
                pu, pv = spot.u_mm - one.u_mm, spot.v_mm - one.v_mm
                along = (pu * du + pv * dv) / length
                if not 0 < along < length or abs(pu * dv - pv * du) / length > EDGE_WIDTH_MM:
                    continue
                chord = one.height_mm + (other.height_mm - one.height_mm) * along / length
                gap = abs(spot.height_mm - chord)
                worst_long = max(worst_long, gap)
                if length <= tolerance.short_reach_mm:
                    worst_short = max(worst_short, gap)
    highs = sorted(
        (i for i, d in enumerate(deviations) if d > tolerance.long_mm / 2), key=lambda i: -deviations[i]
    )
    return Flatness(
        plane=plane,
        deviations_mm=deviations,
        worst_long_mm=worst_long,
        worst_short_mm=worst_short,
        tolerance=tolerance,
        passes=straightedge_passes(tolerance, worst_long, worst_short),
        grind=tuple(highs),
    )


def fill_volume_l(depths_mm: Sequence[Sequence[float]], spacing_mm: float) -> float:
    """Volume to fill from a square grid of depths, corners a quarter, edges a half [l].

    Args:
        depths_mm: Rows of depths, at least 2 x 2 [mm].
        spacing_mm: Grid spacing [mm].
    """
    if len(depths_mm) < 2 or len(depths_mm[0]) < 2 or any(len(row) != len(depths_mm[0]) for row in depths_mm):
        raise InputValueError("depths need two rows and two columns or more, all rows of one length")
    last_row, last_column = len(depths_mm) - 1, len(depths_mm[0]) - 1
    weighted = sum(
        depth * (0.5 if i in (0, last_row) else 1) * (0.5 if j in (0, last_column) else 1)
        for i, row in enumerate(depths_mm)
        for j, depth in enumerate(row)
    )
    return weighted * spacing_mm**2 / 1e6


def fill_bags(rules: RuleSet, volume_l: float) -> int:
    """Whole bags of levelling compound for a volume."""
    return math.ceil(round(volume_l / rules.number("surface.fill.yield"), 9))


def stud_corrections_mm(
    faces_mm: Sequence[float], positions_mm: Sequence[float], *, plane_down: bool
) -> tuple[float, ...]:
    """What to shim (positive) or plane off (negative) each stud so that all faces lie in one straight line [mm].

    The line is the best one through the faces, moved out to the proudest stud (shim only) or in to the deepest
    (plane down only).

    Args:
        faces_mm: How far each stud's face stands towards the tile [mm].
        positions_mm: Where each stud stands along the wall [mm].
        plane_down: Plane the proud studs down instead of shimming the others out.
    """
    n = len(faces_mm)
    if n < 2 or len(positions_mm) != n:
        raise InputValueError("corrections need two studs or more, each with its face and position")
    mean_x, mean_y = sum(positions_mm) / n, sum(faces_mm) / n
    spread = sum((x - mean_x) ** 2 for x in positions_mm)
    if spread == 0:
        raise InputValueError("all studs are at one position")
    slope = sum((x - mean_x) * (y - mean_y) for x, y in zip(positions_mm, faces_mm, strict=True)) / spread
    off = [y - mean_y - slope * (x - mean_x) for x, y in zip(positions_mm, faces_mm, strict=True)]
    line = min(off) if plane_down else max(off)
    return tuple(line - each for each in off)
