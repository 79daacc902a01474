"""A surface on paper: at which scale it fits, where its points lie, and the names of its corners."""

import math
from collections.abc import Sequence

import shapely
from shapely import Polygon

from firstcourse.drawings.model import XY, Drawing, Text
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import Ring, sides
from firstcourse.plan import Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, format_length

Box = tuple[int, int, int, int]
_CHAIN_ROOM_MM = 36.0
_NAMES_MM = 4.0
"""How much farther off running dimensions stand where corners are named round the surface [mm]."""
_SIDE_MM, _INSIDE_MM = 2.6, 2.6
_CORNER_MM, _OFF_MM = 4.0, 3.2


def fitting_scale(box: Box, room: XY, scales: Sequence[int], *, beside: float = _CHAIN_ROOM_MM) -> int:
    """The largest scale at which a box fits with its running dimensions, else the smallest there is.

    Args:
        box: Left, lower, right, upper [ticks].
        room: Width and height on paper [mm].
        scales: Usual scales, the largest drawing first.
        beside: Room that figures and names take at the left and right [mm].
    """
    wide, high = (box[2] - box[0]) / TICKS_PER_MM, (box[3] - box[1]) / TICKS_PER_MM
    fits = (one for one in scales if wide / one + beside <= room[0] and high / one + _CHAIN_ROOM_MM <= room[1])
    return next(fits, scales[-1])


class OnPaper:
    """One surface drawn; paper coordinates have the lower left corner of its box as origin."""

    def __init__(self, plan: Plan, surface: Surface, box: Box, scale: int, title: str) -> None:
        self.plan, self.surface, self.box = plan, surface, box
        self.drawing = Drawing(title=title, scale=scale)

    def at(self, point: tuple[int, int]) -> XY:
        """A point of the surface on paper [mm]."""
        per = TICKS_PER_MM * self.drawing.scale
        return (point[0] - self.box[0]) / per, (point[1] - self.box[1]) / per

    def at_mm(self, point: XY) -> XY:
        """A point of the surface given in millimetres, on paper [mm]."""
        scale = self.drawing.scale
        return (point[0] - self.box[0] / TICKS_PER_MM) / scale, (point[1] - self.box[1] / TICKS_PER_MM) / scale

    def ring(self, ring: Ring) -> tuple[XY, ...]:
        """A ring of the surface on paper [mm]."""
        return tuple(self.at(point) for point in ring)

    def length(self, ticks: int) -> str:
        """A length as the tape of the job reads it."""
        return format_length(ticks, self.plan.job.tape)

    @property
    def names_room(self) -> float:
        """How much farther off running dimensions must stand for the names of corners [mm]."""
        return 0.0 if self.surface.kind is SurfaceKind.WALL else _NAMES_MM

    def name_sides(self) -> None:
        """Name each side, just inside it, where no corners are named that tell the sides apart."""
        shape = Polygon(self.ring(self.surface.outline))
        for (a, b), side in zip(sides(self.surface.outline), self.surface.sides, strict=True):
            (ax, ay), (bx, by) = self.at(a), self.at(b)
            length = math.dist((ax, ay), (bx, by))
            inwards = (-(by - ay) / length, (bx - ax) / length)
            upright = abs(by - ay) > abs(bx - ax)
            spots = tuple(
                (ax + (bx - ax) * share + inwards[0] * far, ay + (by - ay) * share + inwards[1] * far)
                for far in (_INSIDE_MM, 2 * _INSIDE_MM)
                for share in (0.5, 0.35, 0.65)
            )
            fitting = [
                spot
                for spot in spots
                if side.label
                and shape.contains(shapely.box(*Text(spot, side.label, _SIDE_MM, upright=upright).box))
            ]
            if fitting:
                first, *others = fitting
                text = Text(first, side.label, _SIDE_MM, bold=True, upright=upright)
                self.drawing.place(text, try_also=tuple(others))

    def name_corners(self) -> None:
        """Name the corners of the room above a wall or round a floor; the sides where no corners are known."""
        surface = self.surface
        if surface.kind is SurfaceKind.WALL and len(surface.corners) == 2:
            right, top = self.at((self.box[2], self.box[3]))
            whole = bounds(surface.extent or surface.outline)
            # Where only a part of the wall is drawn, its end may be no corner.
            ends = ((0.0, 0, self.box[0] == whole[0]), (right, 1, self.box[2] == whole[2]))
            self.drawing.texts += [
                Text((x, top + 4.0), surface.corners[index], 4.5, bold=True) for x, index, is_end in ends if is_end
            ]
            return
        names = surface.corners if surface.kind is SurfaceKind.CEILING else tuple(reversed(surface.corners))
        if len(names) != len(surface.outline):
            self.name_sides()
            return
        middle = shapely.centroid(Polygon(self.ring(surface.outline)))
        for name, point in zip(names, surface.outline, strict=True):
            x, y = self.at(point)
            dx, dy = (_OFF_MM if one > other else -_OFF_MM for one, other in ((x, middle.x), (y, middle.y)))
            self.drawing.place(
                Text((x + dx, y + dy), name, _CORNER_MM, bold=True), try_also=((x - dx, y - dy), (x + 2 * dx, y))
            )
