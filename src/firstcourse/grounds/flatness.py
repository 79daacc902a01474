"""Flatness of a surface from spot levels, a straightedge or a string: best planes, highs and lows, the tolerance.

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
# Lengths that are equal on the tape may differ by this in binary figures.
SAME_MM = 1e-6


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
        short_reach_mm: Its length [mm]; the same as the long one's where the practice knows one straightedge.
        large: Whether the tile counts as large.
        long_rule, short_rule: Ids of the rules they come from.
    """

    long_mm: float
    long_reach_mm: float
    short_mm: float
    short_reach_mm: float
    large: bool
    long_rule: str
    short_rule: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Flatness:
    """What the spot levels say.

    Attributes:
        deviations_mm: Height of each spot over the best plane, in the order given [mm].
        worst_long_mm: Worst deviation under any straightedge up to the long one [mm].
        worst_short_mm: The same up to the short one [mm].
        passes: Whether both keep the tolerance, as far as they saw.
        long_seen: By reading, whether it lies under a long straightedge together with two others or more; of the
            rest the straightedge tells nothing.
        short_seen: The same of the short straightedge.
        grind: Indexes of spots higher over the plane than half the long tolerance, highest first.
    """

    plane: Plane
    deviations_mm: tuple[float, ...]
    worst_long_mm: float
    worst_short_mm: float
    tolerance: Tolerance
    passes: bool
    grind: tuple[int, ...]
    long_seen: tuple[bool, ...]
    short_seen: tuple[bool, ...]


def tolerance_for(rules: RuleSet, largest_edge_mm: float) -> Tolerance:
    """The flatness a tile wants, by its longest edge [mm].

    A practice with a tolerance for the finished tile alone asks it of the ground: a thin bed does not level.

    Raises:
        RuleNotFoundError: The practice has neither.
    """
    if not rules.has("surface.flatness.long_reach") and rules.has("surface.finished.flatness"):
        finished, reach = rules.number("surface.finished.flatness"), rules.number("surface.finished.reach")
        return Tolerance(
            long_mm=finished,
            long_reach_mm=reach,
            short_mm=finished,
            short_reach_mm=reach,
            large=False,
            long_rule="surface.finished.flatness",
            short_rule="surface.finished.flatness",
        )
    large = largest_edge_mm >= rules.number("surface.large_tile") * MM_PER_IN
    size = "large" if large else "small"
    long_rule, short_rule = f"surface.flatness.{size}_long", f"surface.flatness.{size}_short"
    return Tolerance(
        long_mm=rules.number(long_rule) * MM_PER_IN,
        long_reach_mm=rules.number("surface.flatness.long_reach") * MM_PER_IN,
        short_mm=rules.number(short_rule) * MM_PER_IN,
        short_reach_mm=rules.number(f"surface.flatness.{size}_reach") * MM_PER_IN,
        large=large,
        long_rule=long_rule,
        short_rule=short_rule,
    )


def straightedge_passes(tolerance: Tolerance, long_mm: float, short_mm: float | None) -> bool:
    """Whether gaps found under the long and the short straightedge keep the tolerance [mm]."""
    return long_mm <= tolerance.long_mm + SAME_MM and (
        short_mm is None or short_mm <= tolerance.short_mm + SAME_MM
    )


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


def best_line(spots: Sequence[Spot]) -> Plane:
    """The line with the least sum of squared distances from readings along one string, as a plane level in v.

    Raises:
        InputValueError: Fewer than two readings, or all at one place.
    """
    if len(spots) < 2:
        raise InputValueError(f"a string needs two readings or more, not {len(spots)}")
    n = len(spots)
    mu, mh = sum(s.u_mm for s in spots) / n, sum(s.height_mm for s in spots) / n
    spread = sum((s.u_mm - mu) ** 2 for s in spots)
    if spread == 0:
        raise InputValueError("all readings along the string are at one place")
    slope = sum((s.u_mm - mu) * (s.height_mm - mh) for s in spots) / spread
    return Plane(level_mm=mh - slope * mu, slope_u=slope, slope_v=0.0)


def least_zone(spots: Sequence[Spot], *, string: bool = False) -> tuple[Plane, float]:
    """The plane midway between the two closest parallel planes that hold every spot, and how far they are apart.

    Args:
        spots: Three spots or more that do not lie on one line; along a string two or more.
        string: The spots lie along one string; only its slope is sought.

    Returns:
        The plane (or for a string the line) and the width of the zone [mm].
    """
    from scipy.optimize import linprog

    # Metres keep the columns of one size.
    across = [(s.u_mm / 1000, 0.0 if string else s.v_mm / 1000) for s in spots]
    rows = [[1.0, u, v, -1.0] for u, v in across] + [[-1.0, -u, -v, -1.0] for u, v in across]
    sides = [s.height_mm for s in spots] + [-s.height_mm for s in spots]
    free = (None, None)
    found = linprog(
        [0, 0, 0, 1],
        A_ub=rows,
        b_ub=sides,
        bounds=[free, free, (0, 0) if string else free, (0, None)],
        method="highs-ds",
    )
    level, slope_u, slope_v, half = (float(value) for value in found.x)
    return Plane(level_mm=level, slope_u=slope_u / 1000, slope_v=slope_v / 1000), 2 * half


@lru_cache(maxsize=64)
def judge_flatness(spots: tuple[Spot, ...], tolerance: Tolerance, *, string: bool = False) -> Flatness:
    """Lay straightedges over every pair of spots, and the best plane through all.

    Between two spots, the gap under (or the hump over) their chord at any spot beneath it is a deviation. Spots
    are samples: what lies between them is not seen.

    Args:
        spots: The readings, at most 120.
        tolerance: What the tile wants.
        string: The readings lie along one string.

    Raises:
        InputValueError: Too many or too few readings.
    """
    if len(spots) > MOST_SPOTS:
        raise InputValueError(f"{len(spots)} spot levels are more than {MOST_SPOTS}; judge the surface in parts")
    plane = best_line(spots) if string else best_plane(spots)
    deviations = tuple(s.height_mm - plane.height_at(s.u_mm, s.v_mm) for s in spots)
    (worst_long, long_seen), (worst_short, short_seen) = _chords(spots, tolerance)
    # Sums of halves and slopes leave dust far below what a level shows.
    worst_long, worst_short = round(worst_long, 6), round(worst_short, 6)
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
        long_seen=long_seen,
        short_seen=short_seen,
    )


_Seen = tuple[float, tuple[bool, ...]]


def _chords(spots: tuple[Spot, ...], tolerance: Tolerance) -> tuple[_Seen, _Seen]:
    """Worst gap under the long and the short straightedge, each with the readings that lie at or under one."""
    import numpy as np

    u, v, h = (np.array([getattr(s, name) for s in spots]) for name in ("u_mm", "v_mm", "height_mm"))
    reaches = (tolerance.long_reach_mm, tolerance.short_reach_mm)
    worst, seen = [0.0, 0.0], [np.zeros(len(spots), dtype=bool), np.zeros(len(spots), dtype=bool)]
    for first in range(len(spots) - 1):
        du, dv = u[first + 1 :] - u[first], v[first + 1 :] - v[first]
        length = np.hypot(du, dv)
        use = (length > 0) & (length <= max(reaches) + SAME_MM)
        if not use.any():
            continue
        du, dv, length = du[use, None], dv[use, None], length[use, None]
        rise = (h[first + 1 :] - h[first])[use, None]
        along = ((u - u[first]) * du + (v - v[first]) * dv) / length
        aside = np.abs((u - u[first]) * dv - (v - v[first]) * du) / length
        under = (along > SAME_MM) & (along < length - SAME_MM) & (aside <= EDGE_WIDTH_MM)
        gaps = np.where(under, np.abs(h - h[first] - rise * along / length), 0.0)
        ends = np.arange(first + 1, len(spots))[use]
        for index, reach in enumerate(reaches):
            rows = (length[:, 0] <= reach + SAME_MM) & under.any(axis=1)
            if rows.any():
                worst[index] = max(worst[index], float(gaps[rows].max()))
                seen[index] |= under[rows].any(axis=0)
                seen[index][ends[rows]] = True
                seen[index][first] = True
    long, short = (
        (float(most), tuple(bool(each) for each in told)) for most, told in zip(worst, seen, strict=True)
    )
    return long, short
