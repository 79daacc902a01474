"""A surface on paper: at which scale it fits, where its points lie, and the names of its corners."""

from collections.abc import Sequence

import shapely
from shapely import Polygon

from firstcourse.drawings.model import XY, Drawing, Text
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, format_length

Box = tuple[int, int, int, int]
_CHAIN_ROOM_MM = 34.0
_CORNER_MM, _OFF_MM = 4.0, 3.2


def fitting_scale(box: Box, room: XY, scales: Sequence[int]) -> int:
    """The largest scale at which a box fits with its running dimensions, else the smallest there is.

    Args:
        box: Left, lower, right, upper [ticks].
        room: Width and height on paper [mm].
        scales: Usual scales, the largest drawing first.
    """
    wide, high = (box[2] - box[0]) / TICKS_PER_MM, (box[3] - box[1]) / TICKS_PER_MM
    fits = (
        one for one in scales if wide / one + _CHAIN_ROOM_MM <= room[0] and high / one + _CHAIN_ROOM_MM <= room[1]
    )
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

    def ring(self, ring: Ring) -> tuple[XY, ...]:
        """A ring of the surface on paper [mm]."""
        return tuple(self.at(point) for point in ring)

    def length(self, ticks: int) -> str:
        """A length as the tape of the job reads it."""
        return format_length(ticks, self.plan.job.tape)

    def name_corners(self) -> None:
        """Name the corners of the room: above the ends of a wall, round a floor or ceiling."""
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
            return
        middle = shapely.centroid(Polygon(self.ring(surface.outline)))
        for name, point in zip(names, surface.outline, strict=True):
            x, y = self.at(point)
            dx, dy = (_OFF_MM if one > other else -_OFF_MM for one, other in ((x, middle.x), (y, middle.y)))
            self.drawing.place(
                Text((x + dx, y + dy), name, _CORNER_MM, bold=True), try_also=((x - dx, y - dy), (x + 2 * dx, y))
            )
