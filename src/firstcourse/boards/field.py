"""One surface made ready for courses: the region boards may cover, the tape grid, what carries a seam.

Courses always run along u here. For courses that run along v the whole surface is seen transposed (u and v change
places), and what is laid is transposed back.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import NamedTuple

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.boards.limbs import (
    Barred,
    SideOfGround,
    barred_by,
    end_joints_barred,
    narrow_parts,
    upright_sides,
)
from firstcourse.boards.strips import Box, Strip, Trapezoid
from firstcourse.geometry import LEAST_AREA2, Grid, Point, Ring, as_ring, bounds, circle_ring, grown, inset
from firstcourse.plan import Opening, OpeningKind, SideKind, Support, SupportKind, Surface, opening_ring
from firstcourse.rules import RuleSet

FRAMED = frozenset({OpeningKind.WINDOW, OpeningKind.DOOR, OpeningKind.NICHE})
SEALED = frozenset({OpeningKind.TUB, OpeningKind.TRAY})
_GAP_RULE = {SideKind.PERIMETER: "boards.gap.perimeter", SideKind.FOOT: "boards.gap.foot"}


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardLimits:
    """The rules that a layout keeps [ticks]."""

    gap: int
    stagger: int
    least_piece: int
    bearing: int
    panel_offset: int
    corner_clear: int
    limb: int
    short_seam: int
    graduation: int


class Band(NamedTuple):
    """A stretch along v over which a region is one rectangle [ticks]."""

    lower: float
    upper: float
    left: int
    right: int


@dataclass(frozen=True, kw_only=True)
class BoardField:
    """A surface, transposed where courses run along v.

    Attributes:
        region: What boards may cover, perimeter and opening gaps taken off; a shapely area in ticks.
        bands: Where the region is one rectangle from side to side, lowest first.
        corners: Corners of framed openings, which seams keep clear of.
        upright: Sides of the ground that run along v; a seam close beside one leaves a narrow limb.
        level: The same along u, with u and v changed.
        carriers: Faces of the members that seams along v must be centred on; None where any place carries.
        row_carriers: The same for joints between courses, which run along u.
        cross: Faces of plates and other members that run across the framing.
        barred: Places along u that seams keep off (panel joints with their offset), as (from, to).
        row_barred: Places along v that course joints keep off.
        up: Boxes of the boards that are up already: the region leaves them out, end joints stagger with theirs.
        extent: Box of the whole surface.
        loose: 0 keeps every rule; 1 allows seams that need an added member; 2 also seams near panel joints; 3 also
            seams that leave narrow limbs or run at corners of openings.
    """

    region: shapely.Geometry
    bands: tuple[Band, ...]
    grid: Grid
    limits: BoardLimits
    corners: tuple[Point, ...]
    upright: tuple[SideOfGround, ...]
    level: tuple[SideOfGround, ...]
    carriers: tuple[tuple[int, int, int, int], ...] | None
    row_carriers: tuple[tuple[int, int, int, int], ...] | None
    cross: tuple[tuple[int, int, int, int], ...]
    barred: tuple[tuple[int, int], ...]
    row_barred: tuple[tuple[int, int], ...]
    up: tuple[Box, ...] = ()
    extent: Box = (0, 0, 0, 0)
    loose: int = 0

    @cached_property
    def box(self) -> tuple[int, int, int, int]:
        """Bounds of the region [ticks]; empty regions have none."""
        left, lower, right, upper = self.region.bounds
        return round(left), round(lower), round(right), round(upper)

    def sides_between(self, lower: float, upper: float) -> tuple[int, int] | None:
        """Left and right side where the region is one rectangle from `lower` to `upper`, else None [ticks]."""
        for band in self.bands:
            if band.lower <= lower and upper <= band.upper:
                return band.left, band.right
        return None

    def limbs_barred(self, span: tuple[int, int]) -> tuple[Barred, ...]:
        """Where no seam of a course may begin: it would leave a narrow limb, or run at an opening's corner."""
        if self.loose == 3:
            return ()
        (lower, upper), gap, clear = span, self.limits.gap, self.limits.corner_clear
        corners = {(u - gap - clear, u + clear) for u, v in self.corners if lower - clear < v < upper + clear}
        beside = end_joints_barred(self.up, self.extent, self.limits.stagger, gap, self.limits.graduation, span)
        return tuple(sorted({*barred_by(self.upright, gap, self.limits.limb, span), *corners, *beside}))

    @cached_property
    def row_limbs_barred(self) -> tuple[Barred, ...]:
        """The same for joints between courses."""
        if self.loose == 3:
            return ()
        gap, clear = self.limits.gap, self.limits.corner_clear
        corners = {(v - gap - clear, v + clear) for _, v in self.corners}
        return tuple(sorted({*barred_by(self.level, gap, self.limits.limb, None), *corners}))

    @cached_property
    def borne_throughout(self) -> bool:
        """Whether a seam wherever allowed is borne over all its height, at whatever height its course lies."""
        _, lower, _, upper = self.box
        return self.carriers is None or (
            not self.loose and all(low <= lower and high >= upper for _, low, _, high in self.carriers)
        )


def limits_of(rules: RuleSet, graduation: int) -> BoardLimits:
    """The rules that a layout keeps."""
    return BoardLimits(
        gap=-(-rules.ticks("boards.gap.between") // graduation) * graduation,
        stagger=rules.ticks("boards.stagger.end_joints"),
        least_piece=rules.ticks("boards.piece.min"),
        bearing=rules.ticks("boards.bearing.min"),
        panel_offset=rules.ticks("boards.offset.panel_joints"),
        corner_clear=rules.ticks("boards.seam.opening_corner_clear"),
        limb=rules.ticks("boards.limb.min"),
        # Between the corners of a shorter one no fastener has its place.
        short_seam=2 * rules.ticks("fastening.corner.min") + 2 * graduation,
        graduation=graduation,
    )


def side_gaps(surface: Surface, rules: RuleSet) -> tuple[int, ...]:
    """The gap asked along each side of the outline [ticks]."""
    return tuple(rules.ticks(_GAP_RULE[side.kind]) if side.kind in _GAP_RULE else 0 for side in surface.sides)


def board_region(surface: Surface, rules: RuleSet, graduation: int) -> tuple[shapely.Geometry, Grid]:
    """What boards may cover on a surface, and the grid of tape marks its edges lie on."""
    ground = _ground_of(surface, rules, graduation)
    return ground.region, ground.grid


def _ground_of(surface: Surface, rules: RuleSet, graduation: int) -> "_Ground":
    holes = tuple(
        _Hole(opening_ring(opening), opening.centre, opening.diameter, opening_gap(opening, rules))
        for opening in surface.openings
    )
    limb, between = rules.ticks("boards.limb.min"), rules.ticks("boards.gap.between")
    # What is up already is ground no more, nor is the gap round it.
    holes += tuple(_Hole(board.outline, None, None, between) for board in surface.boards if board.fixed)
    return _region(surface.outline, side_gaps(surface, rules), holes, limb, between, graduation)


class _Hole(NamedTuple):
    """An opening's outline, its circle where it is round, and the gap round it [ticks]."""

    ring: Ring
    centre: Point | None
    diameter: int | None
    gap: int


@dataclass(frozen=True)
class _Ground:
    """What boards may cover of a surface, its grid, and both as they are with u and v changed."""

    region: shapely.Geometry
    grid: Grid
    rounds: tuple[tuple[Point, int], ...]
    limb: int

    @cached_property
    def upright(self) -> tuple[SideOfGround, ...]:
        return upright_sides(self.region, self.rounds, self.limb)

    @cached_property
    def bands(self) -> tuple[Band, ...]:
        return _bands(self.transposed.region)

    @cached_property
    def transposed(self) -> "_Ground":
        region = shapely.transform(self.region, lambda points: points[:, ::-1])
        u, v = self.grid.origin
        rounds = tuple(((v, u), radius) for (u, v), radius in self.rounds)
        return _Ground(region, Grid(origin=(v, u), graduation=self.grid.graduation), rounds, self.limb)


def _bands(turned: shapely.Geometry) -> tuple[Band, ...]:
    """The bands of a region, from the region with u and v changed.

    A band ends one tick short of ground that reaches out farther to a side: a course that ended there would touch
    it.
    """
    parts = shapely.get_parts(turned).tolist()
    slabs = Strip(parts).slabs if all(isinstance(part, Polygon) for part in parts) else []
    found: list[Band] = []
    for number, slab in enumerate(slabs):
        if len(slab) != 1:
            continue
        lower, upper, left, other_left, right, other_right = slab[0]
        if left != other_left or right != other_right or left != round(left) or right != round(right):
            continue
        if number and _reaches_out(slabs[number - 1], left, right):
            lower += 1
        if number + 1 < len(slabs) and _reaches_out(slabs[number + 1], left, right):
            upper -= 1
        band = Band(lower, upper, round(left), round(right))
        if found and found[-1][1:] == (lower, *band[2:]):
            band = band._replace(lower=found.pop().lower)
        found.append(band)
    return tuple(found)


def _reaches_out(slab: list[Trapezoid], left: float, right: float) -> bool:
    return any(
        min(shape.lower_left, shape.lower_right) < left or max(shape.upper_left, shape.upper_right) > right
        for shape in slab
    )


def opening_gap(opening: Opening, rules: RuleSet) -> int:
    """The gap asked round an opening [ticks]."""
    return rules.ticks("boards.gap.foot" if opening.kind in SEALED else "boards.gap.opening")


@lru_cache(maxsize=1024)
def _region(
    outline: Ring, gaps: tuple[int, ...], openings: tuple[_Hole, ...], limb: int, between: int, graduation: int
) -> _Ground:
    # Each surface is asked for many times: by direction, by sheet, for every layout built, and with all rooms.
    loose = inset(outline, gaps, Grid(origin=(0, 0), graduation=1))
    left, lower, _, _ = loose.bounds if not loose.is_empty else (0, 0, 0, 0)
    grid = Grid(origin=(round(left), round(lower)), graduation=graduation)
    region = inset(outline, gaps, grid)
    holes = []
    for ring, centre, diameter, gap in openings:
        if centre is not None and diameter is not None:
            holes.append(Polygon(circle_ring(centre, -(-diameter // 2) + gap, excess=graduation)))
        else:
            holes.append(grown(ring, gap, grid))
    if holes:
        region = region.difference(unary_union(holes))
    rounds = tuple((o.centre, -(-o.diameter // 2) + o.gap) for o in openings if o.centre and o.diameter)
    return _Ground(_parted(_without_slivers(region, limb), between), grid, rounds, limb)


def _parted(region: shapely.Geometry, gap: int) -> shapely.Geometry:
    """The region, its parts a gap apart: a corner of an opening that just reaches a side parts boards by less."""
    parts = list(shapely.get_parts(region))
    for index, part in enumerate(parts):
        near = [other for other in parts[:index] if other.distance(part) < gap]
        if near:
            reach = unary_union(near).buffer(gap + 1, join_style="mitre")
            parts[index] = shapely.set_precision(part.difference(reach), 1.0)
    return unary_union(parts) if len(parts) > 1 else region


def _without_slivers(region: shapely.Geometry, width: int) -> shapely.Geometry:
    """The region less its strips narrower than `width`, such as between a wall and a tray that stands askew to it.

    No board reaches in there: it is filled. Tips of acute corners are no strips, and stay.
    """
    specks = [part for part in shapely.get_parts(region) if 2 * part.area < LEAST_AREA2]
    if specks:
        # Where strips along sides meet, rounding leaves slivers without area out beyond the gap.
        region = shapely.union_all([part for part in shapely.get_parts(region) if 2 * part.area >= LEAST_AREA2])
    strips = narrow_parts(region, width)
    return shapely.set_precision(region.difference(unary_union(strips)), 1.0) if strips else region


class _Same[Thing]:
    """Equal only to what wraps the same object: comparing whole surfaces would take longer than the work saved."""

    def __init__(self, thing: Thing) -> None:
        self.thing = thing

    def __hash__(self) -> int:
        return id(self.thing)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.thing is self.thing


def field_of(surface: Surface, rules: RuleSet, graduation: int, *, along_v: bool) -> BoardField:
    """Make a surface ready for courses along u, or along v by transposing it."""
    return _field_of(_Same(surface), _Same(rules), graduation, along_v=along_v)


@lru_cache(maxsize=64)
def _field_of(of: _Same[Surface], by: _Same[RuleSet], graduation: int, *, along_v: bool) -> BoardField:
    surface, rules = of.thing, by.thing
    ground = _ground_of(surface, rules, graduation)
    limits = limits_of(rules, graduation)
    carried_everywhere = any(support.kind is SupportKind.PANEL for support in surface.supports)
    boxes = tuple(_straight(support, surface) for support in surface.supports if runs_along(support, surface))
    cross = tuple(bounds(support.outline) for support in surface.supports if not runs_along(support, surface))
    seams_need = surface.framing_axis == ("u" if along_v else "v") and not carried_everywhere
    rows_need = surface.framing_axis == ("v" if along_v else "u") and not carried_everywhere
    barred: list[tuple[int, int]] = []
    row_barred: list[tuple[int, int]] = []
    for (au, av), (bu, bv) in surface.panel_joints:
        if along_v:
            au, av, bu, bv = av, au, bv, bu
        if au == bu:
            barred.append((au - limits.panel_offset, au + limits.panel_offset))
        if av == bv:
            row_barred.append((av - limits.panel_offset, av + limits.panel_offset))
    corners = tuple(
        (v, u) if along_v else (u, v)
        for opening in surface.openings
        if opening.kind in FRAMED
        for u, v in opening_ring(opening)
    )
    level = ground.upright if along_v else ground.transposed.upright
    up = [bounds(board.outline) for board in surface.boards if board.fixed]
    extent = bounds(surface.outline)
    if along_v:
        ground = ground.transposed
        boxes = tuple((lower, left, upper, right) for left, lower, right, upper in boxes)
        cross = tuple((lower, left, upper, right) for left, lower, right, upper in cross)
        up = [(lower, left, upper, right) for left, lower, right, upper in up]
        extent = (extent[1], extent[0], extent[3], extent[2])
    return BoardField(
        region=ground.region,
        bands=ground.bands,
        grid=ground.grid,
        limits=limits,
        corners=corners,
        upright=ground.upright,
        level=level,
        carriers=boxes if seams_need else None,
        row_carriers=boxes if rows_need else None,
        cross=cross,
        barred=tuple(sorted(barred)),
        row_barred=tuple(sorted(row_barred)),
        up=tuple(up),
        extent=extent,
    )


def transposed(ring: Ring) -> Ring:
    """The ring with u and v changed, counter-clockwise kept."""
    return as_ring(tuple((v, u) for u, v in reversed(ring)))


def _straight(support: Support, surface: Surface) -> tuple[int, int, int, int]:
    """The box that a member covers from end to end: a seam runs along an axis, a member a little askew does not.

    One so far askew that nothing runs along it from end to end has its middle line, too narrow for any seam.
    """
    across = 0 if surface.framing_axis == "v" else 1
    by_height = sorted(support.outline, key=lambda point: point[1 - across])
    ends = [sorted(point[across] for point in end) for end in (by_height[:2], by_height[-2:])]
    near, far = max(end[0] for end in ends), min(end[1] for end in ends)
    if near > far:
        near = far = (near + far) // 2
    low, high = by_height[0][1 - across], by_height[-1][1 - across]
    return (near, low, far, high) if across == 0 else (low, near, high, far)


def runs_along(support: Support, surface: Surface) -> bool:
    """Whether a member runs the way the framing does (plates and cross blocking do not)."""
    left, lower, right, upper = bounds(support.outline)
    return (upper - lower >= right - left) == (surface.framing_axis == "v")
