"""How a shower floor falls to its drain, as the plan holds it."""

from typing import Literal

from firstcourse.plan.base import Frozen, Point, Ring, Segment, Ticks


class FallPlane(Frozen):
    """One flat part of a floor that falls to a drain.

    Attributes:
        ring: Its outline, counter-clockwise.
        heights: Height over the top of the drain, at each point of the ring.
        gradient: Rise along u and v, each over run.
    """

    ring: Ring
    heights: tuple[Ticks, ...]
    gradient: tuple[float, float]


class LevelPoint(Frozen):
    """A point whose height is set, and checked on site.

    Points are numbered from 1: those of the perimeter in order, then those in valleys.

    Attributes:
        height: Over the top of the drain.
        kind: A corner of the perimeter, a point on one of its sides, an end of a drain, another end of a valley,
            or a point between the ends of a valley.
        sides: Sides of the outline that it lies on, by their place there: at a corner the one before it first.
        between: Of a point between the ends of a valley, the numbers of the points at these, the lower end first.
        along: How far it lies from the first of them.
    """

    at: Point
    height: Ticks
    kind: Literal["corner", "side", "drain", "valley_end", "valley"]
    sides: tuple[int, ...] = ()
    between: tuple[int, int] | None = None
    along: Ticks | None = None


class FloodTest(Frozen):
    """What a shower floor is filled to before it is tiled.

    Attributes:
        hours: How long the water stands.
        level: The water's level over the top of the finished drain, marked on kerb or dam.
        depth: How deep it stands over the membrane at the membrane's highest place, as it does at the threshold.
        litres: Water that it takes.
        kg: Mass of that water.
        dam: A dam across the opening is needed, as no kerb holds the water so high.
    """

    hours: float
    level: Ticks
    depth: Ticks | None = None
    litres: float
    kg: float
    dam: bool = False


class Fall(Frozen):
    """How a floor falls to its drain; heights are over the top of the drain, falls are rise over run.

    Attributes:
        drain: One point, or the two ends of a linear drain.
        layout: `level` has a level perimeter, `square` planes of one fall square to the walls, `single` planes
            that fall straight to the line of a linear drain.
        planes: They cover the floor and meet without a step.
        valleys: Lines in which water gathers, lower end first; larger tile is cut along them.
        ridges: Lines that water leaves, lower end first.
        levels: Every corner of the perimeter and every point where planes meet on it, in order.
        valley_levels: Ends of valleys that the perimeter's points do not mark, the drain among them, and points
            between their ends; in the level check table they follow `levels`.
        rise: Height of the highest point.
        least_fall: Least fall on the way of the water, valleys counted in.
        least_plane_fall: Least fall of any plane, square to its level lines.
        greatest_fall: Greatest fall of any plane.
        bed: Least thickness of the bed; over a liner it is as thick everywhere.
        bed_litres: Volume of the bed.
        pre_slope: Least thickness of the slope under a liner; 0 without one.
        pre_slope_litres: Its volume.
        kerb: Top of the finished kerb over the drain; None without a kerb.
        kerb_width: Width of the kerb's top; None without a kerb.
        drain_height: Height of the top of the drain over the panels (or slab) that the heights of the room's walls
            are over; None in plans made before it was kept.
        room_floor: Height of the room's finished floor over the same; None where the shower takes the whole floor.
        threshold: Height over the drain of the lowest floor beyond a doorway, where the shower takes the whole
            floor and no kerb stands there; None otherwise.
        recess: Depth that a shower without a kerb needs below the room's finished floor; None with a kerb.
        largest_tile: Side of the largest tile that follows the planes uncut; None where any does.
        tile_step: Step allowed between tiles, which sets the largest tile; None where any tile follows.
        membrane: `liner`, `sheet` or `liquid`.
        membrane_below: How far it lies below the finished floor: tile and mortar, over a liner the bed too.
        upturn_top: Height over the drain at which the membrane ends on the walls, by the finished threshold.
        flood_test: What to fill it to before it is tiled.
    """

    drain: tuple[Point, ...]
    layout: Literal["level", "square", "single"]
    planes: tuple[FallPlane, ...]
    valleys: tuple[Segment, ...] = ()
    ridges: tuple[Segment, ...] = ()
    levels: tuple[LevelPoint, ...]
    valley_levels: tuple[LevelPoint, ...] = ()
    rise: Ticks
    least_fall: float
    least_plane_fall: float
    greatest_fall: float
    bed: Ticks
    bed_litres: float
    pre_slope: Ticks = 0
    pre_slope_litres: float = 0.0
    kerb: Ticks | None = None
    kerb_width: Ticks | None = None
    drain_height: Ticks | None = None
    room_floor: Ticks | None = None
    threshold: Ticks | None = None
    recess: Ticks | None = None
    largest_tile: Ticks | None = None
    tile_step: Ticks | None = None
    membrane: Literal["liner", "sheet", "liquid"]
    membrane_below: Ticks = 0
    upturn_top: Ticks | None = None
    flood_test: FloodTest
