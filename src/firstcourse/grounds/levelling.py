"""Filling a floor: volume from depths, bags, and the ways to flatten it, each judged again.

Works in mm and litres; heights are positive towards the tile.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.frames import Remedy
from firstcourse.grounds.flatness import (
    MM_PER_IN,
    SAME_MM,
    Plane,
    Spot,
    Tolerance,
    judge_flatness,
    least_zone,
    tolerance_for,
)
from firstcourse.rules import RuleSet
from firstcourse.values import Name, measure


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """One way to flatten a floor.

    Attributes:
        remedy: What to do and whether the floor then passes; material is in bags.
        depths_mm: What each spot gains, in the order of the readings; less than nothing is ground off [mm].
        volume_l: What is filled over the whole floor [l].
        bags: Whole bags of compound.
        weights: How the mean depth was taken: by a `grid`, by `triangles`, or `none` where nothing is filled.
    """

    remedy: Remedy
    depths_mm: tuple[float, ...]
    volume_l: float
    bags: int
    weights: str


def mean_depth_mm(spots: Sequence[Spot], depths_mm: Sequence[float]) -> tuple[float, str]:
    """Mean depth over what the spots span, and how it was weighed: `grid` or `triangles`.

    Spots on a full grid are weighed by half the distances to their neighbours each way; others by the triangles
    between them.

    Raises:
        InputValueError: All spots lie on one line.
    """
    across = sorted({s.u_mm for s in spots})
    up = sorted({s.v_mm for s in spots})
    if len(across) > 1 and len(up) > 1 and len({(s.u_mm, s.v_mm) for s in spots}) == len(across) * len(up):
        share_u, share_v = _shares(across), _shares(up)
        weights = [share_u[s.u_mm] * share_v[s.v_mm] for s in spots]
        # A spot read twice counts once, as the mean of its readings.
        return (
            sum(w * d for w, d in zip(weights, depths_mm, strict=True)) / sum(weights),
            "grid",
        )
    return _triangles(spots, depths_mm), "triangles"


def _shares(places: Sequence[float]) -> dict[float, float]:
    return {
        place: (places[min(i + 1, len(places) - 1)] - places[max(i - 1, 0)]) / 2 for i, place in enumerate(places)
    }


def _triangles(spots: Sequence[Spot], depths_mm: Sequence[float]) -> float:
    from shapely import MultiPoint, delaunay_triangles

    depth_at: dict[tuple[float, float], list[float]] = {}
    for spot, depth in zip(spots, depths_mm, strict=True):
        depth_at.setdefault((spot.u_mm, spot.v_mm), []).append(depth)
    total, volume = 0.0, 0.0
    for triangle in delaunay_triangles(MultiPoint(list(depth_at))).geoms:
        corners = [depth_at[u, v] for u, v in list(triangle.exterior.coords)[:3]]
        total += triangle.area
        volume += triangle.area * sum(sum(each) / len(each) for each in corners) / 3
    if total == 0:
        raise InputValueError("all spot levels lie on one line; take some beside it")
    return volume / total


def fill_bags(rules: RuleSet, volume_l: float) -> int:
    """Whole bags of levelling compound for a volume."""
    return math.ceil(round(volume_l / rules.number("surface.fill.yield"), 9))


def floor_fillings(
    rules: RuleSet, spots: tuple[Spot, ...], tolerance: Tolerance, area_m2: float
) -> tuple[Filling, ...]:
    """Ways to flatten a floor that does not keep its tolerance, each judged again; least height and bags first.

    Args:
        rules: The rule book.
        spots: The readings.
        tolerance: What the tile wants.
        area_m2: Of the floor that is boarded; beyond the spots the mean depth is taken [m²].
    """
    zone, width = least_zone(spots)
    off = tuple(s.height_mm - zone.height_at(s.u_mm, s.v_mm) for s in spots)
    over = max(off)
    most = rules.number("surface.grind.max") * MM_PER_IN
    highest = max(s.height_mm for s in spots)
    least = rules.number("surface.fill.least") * MM_PER_IN
    ways = [
        (
            "patch",
            tuple(over - each for each in off),
            0.0,
            rules.number("remedy.patch.labour") * area_m2,
        ),
        (
            "level_out",
            tuple(highest + least - s.height_mm for s in spots),
            least,
            rules.number("remedy.level_out.labour") * area_m2,
        ),
    ]
    if width > 0:
        plane_up = max(0.0, over - most)
        ground = tuple(plane_up - each for each in off)
        highs = sum(depth < -0.01 for depth in ground)
        ways.append(
            (
                "grind",
                ground,
                0.0,
                rules.number("remedy.patch.labour") * area_m2 + rules.number("remedy.grind.labour") * highs,
            )
        )
    found = [_filling(rules, spots, tolerance, area_m2, *way) for way in ways]
    if tolerance.large:
        found.append(_smaller_tile(rules, spots))
    return tuple(
        sorted(
            found,
            key=lambda each: (
                not each.remedy.passes,
                each.remedy.height_in,
                each.remedy.material,
                each.remedy.labour_h,
                each.remedy.names,
            ),
        )
    )


def failing_names(spots: tuple[Spot, ...], tolerance: Tolerance, *, string: bool = False) -> tuple[str, ...]:
    """The straightedges that find these spots uneven, by code."""
    found = judge_flatness(spots, tolerance, string=string)
    rows = (("long", found.worst_long_mm, tolerance.long_mm), ("short", found.worst_short_mm, tolerance.short_mm))
    return tuple(f"{name}_straightedge" for name, worst, limit in rows if worst > limit + SAME_MM)


def moved(spots: Sequence[Spot], depths_mm: Sequence[float]) -> tuple[Spot, ...]:
    """The spots with something added to their heights [mm]."""
    return tuple(
        Spot(u_mm=s.u_mm, v_mm=s.v_mm, height_mm=s.height_mm + depth)
        for s, depth in zip(spots, depths_mm, strict=True)
    )


def on_plane(spots: Sequence[Spot], plane: Plane) -> tuple[float, ...]:
    """How far each spot stands over a plane [mm]."""
    return tuple(s.height_mm - plane.height_at(s.u_mm, s.v_mm) for s in spots)


def _filling(
    rules: RuleSet,
    spots: tuple[Spot, ...],
    tolerance: Tolerance,
    area_m2: float,
    name: str,
    depths: tuple[float, ...],
    height_mm: float,
    labour: float,
) -> Filling:
    mean, how = mean_depth_mm(spots, tuple(max(0.0, depth) for depth in depths))
    volume = mean * area_m2
    bags = fill_bags(rules, volume)
    failing = failing_names(moved(spots, depths), tolerance)
    return Filling(
        remedy=Remedy(
            names=(name,),
            passes=not failing,
            height_in=height_mm / MM_PER_IN,
            material=float(bags),
            labour_h=round(labour, 2),
            still_failing=failing,
            checks=(),
            values={
                "litres": measure(volume, "l"),
                "bags": bags,
                "deep": measure(max(depths), "mm"),
                "off": measure(max(0.0, -min(depths)), "mm"),
                **({"caution": Name(name=rules.text("safety.grinding"))} if name == "grind" else {}),
            },
        ),
        depths_mm=depths,
        volume_l=volume,
        bags=bags,
        weights=how,
    )


def _smaller_tile(rules: RuleSet, spots: tuple[Spot, ...]) -> Filling:
    edge = rules.number("surface.large_tile") * MM_PER_IN
    failing = failing_names(spots, tolerance_for(rules, edge - MM_PER_IN))
    return Filling(
        remedy=Remedy(
            names=("smaller_tile",),
            passes=not failing,
            height_in=0.0,
            material=rules.number("remedy.smaller_tile.material"),
            labour_h=rules.number("remedy.smaller_tile.labour"),
            still_failing=failing,
            checks=(),
        ),
        depths_mm=tuple(0.0 for _spot in spots),
        volume_l=0.0,
        bags=0,
        weights="none",
    )
