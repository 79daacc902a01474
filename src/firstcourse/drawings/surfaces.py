"""One surface drawn: boards with marks and sizes, seams, framing, openings, fasteners, running dimensions.

Running dimensions are read as a tape is laid: every figure is measured from the surface's left end or its foot.
"""

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import FIGURE_MM, add_chain
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text, hatch
from firstcourse.drawings.on_paper import OnPaper, fitting_scale
from firstcourse.geometry import bounds
from firstcourse.plan import Board, Opening, Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM

_SCALES = {"inch": (8, 12, 16, 24, 32, 48, 96, 192), "mm": (10, 20, 25, 50, 100, 200)}
_MARK_MM, _LABEL_MM = 4.2, 2.6
_CROSS_MM = 0.7
_BESIDE_WALL_MM, _BESIDE_FLOOR_MM = 28.0, 33.0
"""Room that heights take at the left, and on a floor the names of its corners on both sides [mm]."""


def draw_surface(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw a boarded surface at the largest usual scale that fits.

    Args:
        plan: For the tape of the job.
        surface: What to draw.
        room: Width and height on paper, running dimensions included [mm].
    """
    return _Sheet(plan, surface, room).drawn()


def draw_heights(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw where a surface was read for flatness: how far off its best plane, and what to do there.

    Args:
        plan: For the tape of the job.
        surface: One with readings.
        room: Width and height on paper, running dimensions included [mm].
    """
    drawing = _Heights(plan, surface, room).drawn()
    drawing.title += ": highs and lows"
    return drawing


class _Sheet(OnPaper):
    """Draws a boarded surface within its whole wall, floor or ceiling."""

    def __init__(self, plan: Plan, surface: Surface, room: XY) -> None:
        box = bounds(surface.extent or surface.outline)
        beside = _BESIDE_WALL_MM if surface.kind is SurfaceKind.WALL else _BESIDE_FLOOR_MM
        scale = fitting_scale(box, room, _SCALES[plan.job.tape.value], beside=beside)
        super().__init__(plan, surface, box, scale, surface.title or surface.id)

    def drawn(self) -> Drawing:
        surface, drawing = self.surface, self.drawing
        if surface.extent and surface.extent != surface.outline:
            drawing.polys.append(Poly("extent", self.ring(surface.extent)))
        drawing.polys.append(Poly("outline", self.ring(surface.outline)))
        for support in surface.supports:
            if support.kind != "panel":
                drawing.polys.append(
                    Poly("added" if support.added else "framing", self.ring(support.outline), support.id)
                )
        for a, b in surface.panel_joints:
            drawing.lines.append(Line("panel", self.at(a), self.at(b)))
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
                drawing.place(Text(self.at(((u0 + u1) // 2, (v0 + v1) // 2)), "add", _LABEL_MM, bold=True))
        self.name_corners()
        self._chain_across()
        self._chain_up()
        return drawing

    def _opening(self, opening: Opening) -> None:
        if opening.centre is not None and opening.diameter is not None:
            radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
            centre = self.at(opening.centre)
            self.drawing.circles.append(Circle("opening", centre, radius))
            for du, dv in ((radius + 1, 0.0), (0.0, radius + 1)):
                self.drawing.lines.append(
                    Line("hatch", (centre[0] - du, centre[1] - dv), (centre[0] + du, centre[1] + dv))
                )
            return
        assert opening.outline is not None
        ring = self.ring(opening.outline)
        self.drawing.polys.append(Poly("opening", ring, opening.id))
        # What stays open is told by hatching, not by colour.
        self.drawing.lines += hatch(Polygon(ring), 4.0)

    def _opening_label(self, opening: Opening) -> None:
        if opening.outline is not None:
            u0, v0, u1, v1 = bounds(opening.outline)
            spot = self.at(((u0 + u1) // 2, (v0 + v1) // 2))
            step = 3.4
        else:
            assert opening.centre is not None and opening.diameter is not None
            spot = self.at(opening.centre)
            step = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale + 2.4
            spot = (spot[0], spot[1] + step)
        others = tuple((spot[0], spot[1] + k * 3.4) for k in (-1, 1, -2, 2, -3, 3, 4, 5))
        self.drawing.place(Text(spot, opening.id, _LABEL_MM), try_also=others)

    def _board(self, board: Board) -> None:
        self.drawing.polys.append(Poly("board", self.ring(board.outline), board.mark))
        for hole in board.holes:
            self.drawing.polys.append(Poly("board", self.ring(hole), board.mark))
        for fastener in board.fasteners:
            x, y = self.at(fastener)
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
        x, y = self.at((round(middle.x), round(middle.y)))
        u0, v0, u1, v1 = bounds(board.outline)
        # The table beside the drawing lists every size; on the drawing stands what fits inside its board.
        size = f"{self.length(u1 - u0)} × {self.length(v1 - v0)}"
        inner = Polygon(self.ring(board.outline), [self.ring(hole) for hole in board.holes])
        near = tuple((x, y + k * 5.0) for k in (1, -1, 2, -2, 3, -3))
        beside = tuple((x + k * 6.0, y) for k in (1, -1, 2, -2))
        x, y = self.drawing.place_within(
            inner, Text((x, y), board.mark, _MARK_MM, bold=True), try_also=(*near, *beside)
        )
        for spot in ((x, y - 4.6), (x, y + 4.6), (x, y - 9.2), (x, y + 9.2)):
            text = Text(spot, size, FIGURE_MM)
            if inner.contains(shapely.box(*text.box)) and self.drawing.place(text):
                return
        for spot in ((x, y - 4.6 - len(size) * FIGURE_MM * 0.28), (x + 5.0, y), (x - 5.0, y)):
            text = Text(spot, size, FIGURE_MM, upright=True)
            if inner.contains(shapely.box(*text.box)) and self.drawing.place(text):
                return

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
            [(self.at((mark, mark))[along], self.length(mark - origin)) for mark in sorted(marks)],
            along=along,
            off=self.names_room,
        )


class _Heights(_Sheet):
    """Draws a surface's readings in place of its boards; running dimensions lead to the readings."""

    def drawn(self) -> Drawing:
        surface, drawing = self.surface, self.drawing
        drawing.polys.append(Poly("outline", self.ring(surface.outline)))
        for opening in surface.openings:
            self._opening(opening)
        for mark in surface.heights:
            x, y = self.at(mark.at)
            drawing.circles.append(Circle("fastener", (x, y), _CROSS_MM))
            off = self.length(mark.off)
            text = off if off.startswith(("-", "0")) else f"+{off}"
            drawing.place(Text((x, y + 2.8), text, FIGURE_MM, bold=True))
            if mark.do:
                words = mark.do if mark.do == "leave" else f"{mark.do} {self.length(mark.by)}"
                drawing.place(Text((x, y - 2.8), words, FIGURE_MM))
        self.name_corners()
        self._chain({mark.at[0] for mark in surface.heights} | {self.box[0], self.box[2]}, along=0)
        self._chain({mark.at[1] for mark in surface.heights} | {self.box[1], self.box[3]}, along=1)
        return drawing
