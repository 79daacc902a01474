"""One surface drawn: boards with marks and sizes, seams, framing, openings, fasteners, running dimensions.

Running dimensions are read as a tape is laid: every figure is measured from the surface's left end or its foot.
"""

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import FIGURE_MM, add_chain
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text, hatch
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import Board, Opening, Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, format_length

_SCALES = {"inch": (8, 12, 16, 24, 32, 48, 96, 192), "mm": (10, 20, 25, 50, 100, 200)}
_MARK_MM, _LABEL_MM = 4.2, 2.6
_CROSS_MM = 0.7
_CHAIN_ROOM_MM = 34.0


def draw_surface(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw a boarded surface at the largest usual scale that fits.

    Args:
        plan: For the tape of the job.
        surface: What to draw.
        room: Width and height on paper, running dimensions included [mm].
    """
    return _Sheet(plan, surface, _scale(plan, surface, room)).drawn()


def draw_heights(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw where a surface was read for flatness: how far off its best plane, and what to do there.

    Args:
        plan: For the tape of the job.
        surface: One with readings.
        room: Width and height on paper, running dimensions included [mm].
    """
    drawing = _Heights(plan, surface, _scale(plan, surface, room)).drawn()
    drawing.title += ": highs and lows"
    return drawing


def _scale(plan: Plan, surface: Surface, room: XY) -> int:
    left, lower, right, upper = bounds(surface.extent or surface.outline)
    wide, high = (right - left) / TICKS_PER_MM, (upper - lower) / TICKS_PER_MM
    scales = _SCALES[plan.job.tape.value]
    return next(
        (
            one
            for one in scales
            if wide / one + _CHAIN_ROOM_MM <= room[0] and high / one + _CHAIN_ROOM_MM <= room[1]
        ),
        scales[-1],
    )


class _Sheet:
    """Draws one surface; paper coordinates have the extent's lower left corner as origin."""

    def __init__(self, plan: Plan, surface: Surface, scale: int) -> None:
        self.plan, self.surface = plan, surface
        self.box = bounds(surface.extent or surface.outline)
        self.drawing = Drawing(title=surface.title or surface.id, scale=scale)

    def drawn(self) -> Drawing:
        surface, drawing = self.surface, self.drawing
        if surface.extent and surface.extent != surface.outline:
            drawing.polys.append(Poly("extent", self._ring(surface.extent)))
        drawing.polys.append(Poly("outline", self._ring(surface.outline)))
        for support in surface.supports:
            if support.kind != "panel":
                drawing.polys.append(
                    Poly("added" if support.added else "framing", self._ring(support.outline), support.id)
                )
        for a, b in surface.panel_joints:
            drawing.lines.append(Line("panel", self._at(a), self._at(b)))
        for opening in surface.openings:
            self._opening(opening)
        for board in surface.boards:
            self._board(board)
        for board in surface.boards:
            self._mark(board)
        for opening in surface.openings:
            self._opening_label(opening)
        for support in surface.supports:
            if support.added:
                u0, v0, u1, v1 = bounds(support.outline)
                drawing.place(Text(self._at(((u0 + u1) // 2, (v0 + v1) // 2)), "add", _LABEL_MM, bold=True))
        self._corners()
        self._chain_across()
        self._chain_up()
        return drawing

    def _at(self, point: tuple[int, int]) -> XY:
        return (
            (point[0] - self.box[0]) / TICKS_PER_MM / self.drawing.scale,
            (point[1] - self.box[1]) / TICKS_PER_MM / self.drawing.scale,
        )

    def _ring(self, ring: Ring) -> tuple[XY, ...]:
        return tuple(self._at(point) for point in ring)

    def _length(self, ticks: int) -> str:
        return format_length(ticks, self.plan.job.tape)

    def _opening(self, opening: Opening) -> None:
        if opening.centre is not None and opening.diameter is not None:
            radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
            centre = self._at(opening.centre)
            self.drawing.circles.append(Circle("opening", centre, radius))
            for du, dv in ((radius + 1, 0.0), (0.0, radius + 1)):
                self.drawing.lines.append(
                    Line("hatch", (centre[0] - du, centre[1] - dv), (centre[0] + du, centre[1] + dv))
                )
            return
        assert opening.outline is not None
        ring = self._ring(opening.outline)
        self.drawing.polys.append(Poly("opening", ring, opening.id))
        # What stays open is told by hatching, not by colour.
        self.drawing.lines += hatch(Polygon(ring), 4.0)

    def _opening_label(self, opening: Opening) -> None:
        if opening.outline is not None:
            u0, v0, u1, v1 = bounds(opening.outline)
            spot = self._at(((u0 + u1) // 2, (v0 + v1) // 2))
            step = 3.4
        else:
            assert opening.centre is not None and opening.diameter is not None
            spot = self._at(opening.centre)
            step = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale + 2.4
            spot = (spot[0], spot[1] + step)
        others = tuple((spot[0], spot[1] + k * 3.4) for k in (-1, 1, -2, 2, -3, 3, 4, 5))
        self.drawing.place(Text(spot, opening.id, _LABEL_MM), try_also=others)

    def _board(self, board: Board) -> None:
        self.drawing.polys.append(Poly("board", self._ring(board.outline), board.mark))
        for hole in board.holes:
            self.drawing.polys.append(Poly("board", self._ring(hole), board.mark))
        for fastener in board.fasteners:
            x, y = self._at(fastener)
            self.drawing.lines.append(
                Line("fastener", (x - _CROSS_MM, y - _CROSS_MM), (x + _CROSS_MM, y + _CROSS_MM))
            )
            self.drawing.lines.append(
                Line("fastener", (x - _CROSS_MM, y + _CROSS_MM), (x + _CROSS_MM, y - _CROSS_MM))
            )

    def _mark(self, board: Board) -> None:
        shape = Polygon(board.outline, board.holes)
        middle = shapely.centroid(shape)
        if not shape.contains(middle):
            middle = shapely.point_on_surface(shape)
        x, y = self._at((round(middle.x), round(middle.y)))
        u0, v0, u1, v1 = bounds(board.outline)
        # The table beside the drawing lists every size; on the drawing stands what fits inside its board.
        size = f"{self._length(u1 - u0)} × {self._length(v1 - v0)}"
        near = tuple((x, y + k * 5.0) for k in (1, -1, 2, -2, 3, -3))
        self.drawing.place(Text((x, y), board.mark, _MARK_MM, bold=True), try_also=near)
        inner = shapely.box(*self._at((u0, v0)), *self._at((u1, v1)))
        for spot in ((x, y - 4.6), (x, y + 4.6), (x, y - 9.2), (x, y + 9.2)):
            text = Text(spot, size, FIGURE_MM)
            if inner.contains(shapely.box(*text.box)) and self.drawing.place(text):
                return
        for spot in ((x, y - 4.6 - len(size) * FIGURE_MM * 0.28), (x + 5.0, y), (x - 5.0, y)):
            text = Text(spot, size, FIGURE_MM, upright=True)
            if inner.contains(shapely.box(*text.box)) and self.drawing.place(text):
                return

    def _corners(self) -> None:
        surface = self.surface
        if surface.kind is SurfaceKind.WALL and len(surface.corners) == 2:
            right, top = self._at((self.box[2], self.box[3]))
            self.drawing.texts.append(Text((0.0, top + 4.0), surface.corners[0], 4.5, bold=True))
            self.drawing.texts.append(Text((right, top + 4.0), surface.corners[1], 4.5, bold=True))
            return
        names = tuple(reversed(surface.corners))
        if surface.kind is SurfaceKind.CEILING:
            names = tuple(reversed(names))
        if len(names) != len(surface.outline):
            return
        middle = shapely.centroid(Polygon(self._ring(surface.outline)))
        for name, point in zip(names, surface.outline, strict=True):
            x, y = self._at(point)
            dx = 3.2 if x > middle.x else -3.2
            dy = 3.2 if y > middle.y else -3.2
            self.drawing.place(
                Text((x + dx, y + dy), name, 4.0, bold=True), try_also=((x - dx, y - dy), (x + 2 * dx, y))
            )

    def _chain_across(self) -> None:
        """Vertical board edges from the left end, read upright below the drawing."""
        edges = {edge for board in self.surface.boards for edge in bounds(board.outline)[::2]}
        self._chain(edges | {self.box[0], self.box[2]}, along=0)

    def _chain_up(self) -> None:
        """Horizontal board edges from the foot, read level to the left of the drawing."""
        edges = {edge for board in self.surface.boards for edge in bounds(board.outline)[1::2]}
        self._chain(edges | {self.box[1], self.box[3]}, along=1)

    def _chain(self, marks: set[int], *, along: int) -> None:
        origin = self.box[along]
        add_chain(
            self.drawing,
            [(self._at((mark, mark))[along], self._length(mark - origin)) for mark in sorted(marks)],
            along=along,
        )


class _Heights(_Sheet):
    """Draws a surface's readings in place of its boards; running dimensions lead to the readings."""

    def drawn(self) -> Drawing:
        surface, drawing = self.surface, self.drawing
        drawing.polys.append(Poly("outline", self._ring(surface.outline)))
        for opening in surface.openings:
            self._opening(opening)
        for mark in surface.heights:
            x, y = self._at(mark.at)
            drawing.circles.append(Circle("fastener", (x, y), _CROSS_MM))
            off = self._length(mark.off)
            text = off if off.startswith(("-", "0")) else f"+{off}"
            drawing.place(Text((x, y + 2.8), text, FIGURE_MM, bold=True))
            if mark.do:
                words = mark.do if mark.do == "leave" else f"{mark.do} {self._length(mark.by)}"
                drawing.place(Text((x, y - 2.8), words, FIGURE_MM))
        self._corners()
        self._chain({mark.at[0] for mark in surface.heights} | {self.box[0], self.box[2]}, along=0)
        self._chain({mark.at[1] for mark in surface.heights} | {self.box[1], self.box[3]}, along=1)
        return drawing
