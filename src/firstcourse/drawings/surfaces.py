"""One surface drawn: boards with marks and sizes, seams, framing, openings, fasteners, running dimensions.

Running dimensions are read as a tape is laid: every figure is measured from the surface's left end or its foot.
"""

from collections.abc import Iterator
from itertools import pairwise

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import FIGURE_MM, PITCH_MM, add_chain
from firstcourse.drawings.doors import with_doors
from firstcourse.drawings.face import text_width
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text, hatch
from firstcourse.drawings.on_paper import LABEL_MM, Box, OnPaper, fitted
from firstcourse.geometry import Ring, bounds
from firstcourse.plan import Board, Opening, Plan, Support, Surface, SurfaceKind, fill_name
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import length

_SCALES = {"inch": (8, 12, 16, 24, 32, 48, 64, 96, 192), "mm": (10, 20, 25, 30, 40, 50, 75, 100, 200)}
_MARK_MM = 4.6
_SMALL_MARK_MM = 2.6
"""Height of a board's mark at small scales, where the usual one does not fit on it [mm]."""
_CROSS_MM, _SMALL_CROSS_MM = 0.7, 0.35
"""Half the width of a fastener's cross, usually and at small scales [mm]."""
_OPEN_HATCH_MM, _FILL_HATCH_MM, _UP_HATCH_MM = 4.0, 1.2, 9.0
_ROUND_CHAIN_MM = 34.0
"""What names and the figures of the other side take of a drawing's room beside a chain [mm]."""
_BESIDE = 150 * TICKS_PER_MM
"""So much of a wall is drawn beside the part that is boarded [ticks]."""
_LEFT_OUT = 450 * TICKS_PER_MM
"""A bare end of a wall is left out of the drawing where it is longer than this [ticks]."""


def draw_surface(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw a boarded surface at the largest usual scale that fits.

    Args:
        plan: For the tape of the job.
        surface: What to draw.
        room: Width and height on paper, running dimensions included [mm].
    """
    box = with_doors(plan, surface, drawn_box(surface))
    return fitted(
        _SCALES[plan.job.tape.value], box, room, lambda scale: _Sheet(plan, surface, box, scale, room).drawn()
    )


def draw_heights(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw where a surface was read for flatness: how far off its best plane, and what to do there.

    Args:
        plan: For the tape of the job.
        surface: One with readings.
        room: Width and height on paper, running dimensions included [mm].
    """
    box = bounds(surface.extent or surface.outline)
    scales = _SCALES[plan.job.tape.value]
    return fitted(scales, box, room, lambda scale: _Heights(plan, surface, box, scale, room).drawn())


def drawn_box(surface: Surface) -> Box:
    """What of a surface is drawn: all of it, but of a wall no long bare ends [ticks]."""
    whole = bounds(surface.extent or surface.outline)
    if surface.kind is not SurfaceKind.WALL:
        return whole
    part = bounds(surface.outline)
    left = part[0] - _BESIDE if part[0] - whole[0] > _LEFT_OUT else whole[0]
    right = part[2] + _BESIDE if whole[2] - part[2] > _LEFT_OUT else whole[2]
    return left, whole[1], right, whole[3]


class _Sheet(OnPaper):
    """Draws a boarded surface within its whole wall, floor or ceiling."""

    title = "papers-title"

    def __init__(self, plan: Plan, surface: Surface, box: Box, scale: int, room: XY) -> None:
        super().__init__(plan, surface, box, scale, self.title, room)
        self.origin = bounds(surface.extent or surface.outline)[:2]

    def drawn(self) -> Drawing:
        surface, drawing = self.surface, self.drawing
        if surface.extent and surface.extent != surface.outline:
            self._whole(surface.extent)
        self.draw_outline()
        for support in surface.supports:
            if support.kind != "panel":
                for part in self._in_view(support.outline):
                    drawing.polys.append(Poly("added" if support.added else "framing", part, support.id))
        for a, b in surface.panel_joints:
            drawing.lines.append(Line("panel", self.at(a), self.at(b)))
        for opening in surface.openings:
            self._opening(opening)
        for fill in surface.fills:
            for part in self._in_view(fill.outline):
                drawing.polys.append(Poly("cut", part, fill.id))
                drawing.lines += hatch(Polygon(part), _FILL_HATCH_MM)
        for board in surface.boards:
            self._board(board)
        kept_out = self.keep_out(surface.no_fastener_zones)
        self._chain_across()
        self._chain_up()
        self.start_texts()
        self.name_corners()
        self.name_zones(kept_out)
        size = self._mark_size()
        for board in surface.boards:
            self._mark(board, size)
        for opening in surface.openings:
            self._opening_label(opening)
        self.name_doors()
        for support in surface.supports:
            if support.added:
                self._added(support)
        for fill in surface.fills:
            for part in self._in_view(fill.outline):
                middle = Polygon(part).representative_point()
                label = Text((middle.x, middle.y), fill_name(fill), LABEL_MM, upright=_is_upright(part))
                self.placer.put(label, aside=True)
        return drawing

    def _whole(self, extent: Ring) -> None:
        """The rest of the wall, as far as it is drawn."""
        view = shapely.box(*self.at(self.box[:2]), *self.at(self.box[2:]))
        edge = shapely.LinearRing(self.ring(extent)).intersection(view.buffer(1e-6))
        for part in shapely.get_parts(shapely.line_merge(edge)):
            if isinstance(part, shapely.LineString):
                spots = [(x, y) for x, y in part.coords]
                self.drawing.lines += [Line("extent", a, b) for a, b in pairwise(spots)]

    def _in_view(self, ring: Ring) -> Iterator[tuple[XY, ...]]:
        """The parts of an outline that are drawn."""
        if self.box == bounds(self.surface.extent or self.surface.outline):
            yield self.ring(ring)
            return
        view = shapely.box(*self.at(self.box[:2]), *self.at(self.box[2:]))
        for part in shapely.get_parts(Polygon(self.ring(ring)).intersection(view)):
            if isinstance(part, Polygon) and not part.is_empty:
                yield tuple((x, y) for x, y in part.exterior.coords[:-1])

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
        self.drawing.lines += hatch(Polygon(ring), _OPEN_HATCH_MM, falling=True)

    def _opening_label(self, opening: Opening) -> None:
        if opening.outline is not None:
            shape = Polygon(self.ring(opening.outline))
            middle = shape.representative_point()
            label = Text((middle.x, middle.y), opening.id, LABEL_MM)
            self.placer.put(label, within=shape, upright_too=True, aside=True)
            return
        assert opening.centre is not None and opening.diameter is not None
        x, y = self.at(opening.centre)
        radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
        self.placer.put(Text((x, y + radius + 2.2), opening.id, LABEL_MM), reach=6.0, aside=True)

    def _added(self, support: Support) -> None:
        for part in self._in_view(support.outline):
            middle = Polygon(part).representative_point()
            label = Text((middle.x, middle.y), "add", LABEL_MM, bold=True, upright=_is_upright(part))
            self.placer.put(label, aside=True)

    def _board(self, board: Board) -> None:
        self.drawing.polys.append(Poly("board", self.ring(board.outline), board.mark))
        for hole in board.holes:
            self.drawing.polys.append(Poly("board", self.ring(hole), board.mark))
        if board.fixed:
            # What is up already is told by wide hatching, and by a word under its mark.
            shape = Polygon(self.ring(board.outline), [self.ring(hole) for hole in board.holes])
            self.drawing.lines += hatch(shape, _UP_HATCH_MM)
        arm = _SMALL_CROSS_MM if self.coarse else _CROSS_MM
        for fastener in board.fasteners:
            x, y = self.at(fastener)
            self.drawing.lines.append(Line("fastener", (x - arm, y - arm), (x + arm, y + arm)))
            self.drawing.lines.append(Line("fastener", (x - arm, y + arm), (x + arm, y - arm)))

    def _mark_size(self) -> float:
        """One height for all marks [mm]: a small one at small scales where the usual one fits on few boards."""
        boards = self.surface.boards
        per = TICKS_PER_MM * self.drawing.scale
        fits = [
            text_width(board.mark, _MARK_MM, bold=True) + 1.0 <= max(u1 - u0, v1 - v0) / per
            for board in boards
            for u0, v0, u1, v1 in (bounds(board.outline),)
        ]
        return _SMALL_MARK_MM if self.coarse and 2 * sum(fits) < len(boards) else _MARK_MM

    def _mark(self, board: Board, size: float) -> None:
        """The board's mark, and its size where there is room; the table beside the drawing lists every size."""
        inner = Polygon(self.ring(board.outline), [self.ring(hole) for hole in board.holes])
        middle = inner.centroid if inner.contains(inner.centroid) else inner.representative_point()
        mark = Text((middle.x, middle.y), board.mark, size, bold=True)
        stands = self.placer.put(mark, within=inner, upright_too=True, aside=True)
        if self.coarse or stands is None or not inner.contains(shapely.Point(stands.at)):
            return
        u0, v0, u1, v1 = bounds(board.outline)
        size_of = f"{self.length(u1 - u0)} × {self.length(v1 - v0)}"
        about = self.speaker.text("boards-standing") if board.fixed else size_of
        below = (stands.at[0], stands.at[1] - size)
        self.placer.put(Text(below, about, FIGURE_MM), within=inner, upright_too=True)

    def _chain_across(self) -> None:
        """Vertical board edges from the left end, read upright below the drawing."""
        edges = {edge for board in self.surface.boards for edge in bounds(board.outline)[::2]}
        self._chain(edges | self._ends(0), along=0)

    def _chain_up(self) -> None:
        """Horizontal board edges from the foot, read level to the left of the drawing."""
        edges = {edge for board in self.surface.boards for edge in bounds(board.outline)[1::2]}
        self._chain(edges | self._ends(1), along=1)

    def _ends(self, axis: int) -> set[int]:
        """The surface's own ends, as far as they are drawn."""
        whole = bounds(self.surface.extent or self.surface.outline)
        return {self.box[side] for side in (axis, axis + 2) if self.box[side] == whole[side]}

    def _chain(self, marks: set[int], *, along: int) -> None:
        origin = self.origin[along]
        most = int((self.room[along] - _ROUND_CHAIN_MM) / PITCH_MM)
        if self.coarse:
            # Both edges of a seam are one place there; figures of both would run on past the surface.
            most = min(most, int((self.at(self.box[2:])[along]) / PITCH_MM) + 1)
        add_chain(
            self.drawing,
            [(self.at((mark, mark))[along], self.length(mark - origin)) for mark in _thinned(marks, most)],
            along=along,
            off=self.names_room,
        )


def _thinned(marks: set[int], most: int) -> list[int]:
    """Marks in order, so many that their figures fit: what lies closest behind another goes first, ends stay.

    Smaller scales would not help: figures need the same room at each. Every board's place is in its list.
    """
    kept = sorted(marks)
    while len(kept) > max(most, 2):
        closest = min(range(1, len(kept) - 1), key=lambda index: kept[index] - kept[index - 1])
        del kept[closest]
    return kept


class _Heights(_Sheet):
    """Draws a surface's readings in place of its boards; running dimensions lead to the readings."""

    title = "papers-title-heights"

    def drawn(self) -> Drawing:
        surface, drawing = self.surface, self.drawing
        self.draw_outline()
        for opening in surface.openings:
            self._opening(opening)
        for mark in surface.heights:
            drawing.circles.append(Circle("fastener", self.at(mark.at), _CROSS_MM))
        self._chain({mark.at[0] for mark in surface.heights} | {self.box[0], self.box[2]}, along=0)
        self._chain({mark.at[1] for mark in surface.heights} | {self.box[1], self.box[3]}, along=1)
        self.start_texts()
        self.name_corners()
        for mark in surface.heights:
            x, y = self.at(mark.at)
            off = self.length(mark.off)
            text = off if off.startswith(("-", "0")) else f"+{off}"
            self.placer.put(Text((x, y + 2.8), text, FIGURE_MM, bold=True), aside=True)
            if mark.do:
                words = self.speaker.text("ground-mark", do=mark.do, by=length(mark.by))
                self.placer.put(Text((x, y - 2.8), words, FIGURE_MM), aside=True)
        self.name_doors()
        return drawing


def _is_upright(points: tuple[XY, ...]) -> bool:
    x0, y0, x1, y1 = Polygon(points).bounds
    return bool(y1 - y0 > x1 - x0)
