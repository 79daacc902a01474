"""One surface drawn with its tile: every tile and cut, soft joints, lines to snap, courses along both sides."""

from itertools import pairwise, product

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import PITCH_MM, add_chain
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text, hatch
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import Opening, Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, format_length

_SCALES = {"inch": (4, 6, 8, 12, 16, 24, 32, 48, 96, 192), "mm": (5, 10, 20, 25, 50, 100, 200)}
_CHAIN_ROOM_MM = 34.0
_LABEL_MM = 2.6
_HATCH_MM = 3.0
_MOST_FIGURES = 24
"""More running figures than this along one side are not read; every second, third, ... course is figured then."""


def draw_tiling(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0)) -> Drawing:
    """Draw a tiled surface at the largest usual scale that fits.

    Cut tiles are hatched and carry the mark that the cut list names. Running figures give the lower edge of the
    courses from the foot and the left edge of the tiles in the lowest course from the left end.

    Args:
        plan: For the tape of the job.
        surface: What to draw.
        room: Width and height on paper, running dimensions included [mm].
    """
    left, lower, right, upper = bounds(surface.outline)
    wide, high = (right - left) / TICKS_PER_MM, (upper - lower) / TICKS_PER_MM
    scales = _SCALES[plan.job.tape.value]
    fits = (
        one for one in scales
        if wide / one + _CHAIN_ROOM_MM <= room[0] and high / one + _CHAIN_ROOM_MM <= room[1]
    )  # fmt: skip
    return _Sheet(plan, surface, next(fits, scales[-1])).drawn()


class _Sheet:
    """Draws one surface; paper coordinates have the outline's lower left corner as origin."""

    def __init__(self, plan: Plan, surface: Surface, scale: int) -> None:
        self.plan, self.surface = plan, surface
        self.box = bounds(surface.outline)
        self.drawing = Drawing(title=f"{surface.title or surface.id}: tile", scale=scale)

    def drawn(self) -> Drawing:
        drawing, surface = self.drawing, self.surface
        drawing.polys.append(Poly("outline", self._ring(surface.outline)))
        for tile in surface.tiles:
            ring = self._ring(tile.outline)
            drawing.polys.append(Poly("tile", ring, tile.id))
            drawing.polys += [Poly("tile", self._ring(hole), tile.id) for hole in tile.holes]
            if not tile.whole:
                drawing.lines += hatch(Polygon(ring, [self._ring(hole) for hole in tile.holes]), _HATCH_MM)
        for opening in surface.openings:
            self._opening(opening)
        for joint in surface.soft_joints:
            points = [self._at(point) for point in joint.line]
            drawing.lines += [Line("soft", a, b) for a, b in pairwise(points)]
        for area in surface.tiled:
            for snap in area.lines:
                drawing.lines.append(Line("snap", self._at(snap.line[0]), self._at(snap.line[1])))
        self._marks()
        self._corners()
        self._chains()
        return drawing

    def _at(self, point: tuple[int, int]) -> XY:
        per = TICKS_PER_MM * self.drawing.scale
        return (point[0] - self.box[0]) / per, (point[1] - self.box[1]) / per

    def _ring(self, ring: Ring) -> tuple[XY, ...]:
        return tuple(self._at(point) for point in ring)

    def _opening(self, opening: Opening) -> None:
        if opening.outline is not None:
            self.drawing.polys.append(Poly("opening", self._ring(opening.outline), opening.id))
            u0, v0, u1, v1 = bounds(opening.outline)
            spot = self._at(((u0 + u1) // 2, (v0 + v1) // 2))
        else:
            assert opening.centre is not None and opening.diameter is not None
            spot = self._at(opening.centre)
            radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
            self.drawing.circles.append(Circle("opening", spot, radius))
            spot = (spot[0], spot[1] + radius + 2.4)
        others = tuple((spot[0], spot[1] + k * 3.4) for k in (-1, 1, -2, 2, -3, 3))
        self.drawing.place(Text(spot, opening.id, _LABEL_MM, bold=True), try_also=others)

    def _marks(self) -> None:
        for tile in self.surface.tiles:
            if not tile.mark:
                continue
            shape = Polygon(self._ring(tile.outline))
            # A notched piece may have its middle in the notch; then its roomiest place will do.
            spots = (shapely.centroid(shape), shapely.Point(shapely.maximum_inscribed_circle(shape).coords[0]))
            for middle, upright in product(spots, (False, True)):
                text = Text((middle.x, middle.y), tile.mark, _LABEL_MM, upright=upright)
                if shape.contains(shapely.box(*text.box)) and self.drawing.place(text):
                    break

    def _corners(self) -> None:
        surface = self.surface
        if surface.kind is SurfaceKind.WALL and len(surface.corners) == 2:
            right, top = self._at((self.box[2], self.box[3]))
            outer = bounds(surface.extent or surface.outline)
            ends = ((0.0, surface.corners[0], self.box[0] == outer[0]),
                    (right, surface.corners[1], self.box[2] == outer[2]))  # fmt: skip
            self.drawing.texts += [
                Text((x, top + 4.0), name, 4.5, bold=True) for x, name, at_end in ends if at_end
            ]
            return
        names = surface.corners if surface.kind is SurfaceKind.CEILING else tuple(reversed(surface.corners))
        if len(names) != len(surface.outline):
            return
        middle = shapely.centroid(Polygon(self._ring(surface.outline)))
        for name, point in zip(names, surface.outline, strict=True):
            x, y = self._at(point)
            dx, dy = 3.2 if x > middle.x else -3.2, 3.2 if y > middle.y else -3.2
            self.drawing.place(
                Text((x + dx, y + dy), name, 4.0, bold=True), try_also=((x - dx, y - dy), (x + 2 * dx, y))
            )

    def _chains(self) -> None:
        for axis in (0, 1):
            origin, end = self.box[axis], self.box[axis + 2]
            edges = sorted(self._edges(axis))
            room = int(self._at((end, end))[axis] / PITCH_MM) - 2
            step = -(-len(edges) // max(min(_MOST_FIGURES, room), 1))
            marks = sorted({origin, end, *edges[::step]})
            add_chain(
                self.drawing,
                [(self._at((mark, mark))[axis], self._length(mark - origin)) for mark in marks],
                along=axis,
            )

    def _edges(self, axis: int) -> set[int]:
        """Left edges of the lowest course, or lower edges of the tiles that stand farthest left."""
        boxes = [bounds(tile.outline) for tile in self.surface.tiles]
        if not boxes:
            return set()
        near = min(box[1 - axis] for box in boxes)
        depth = min(box[3 - axis] - box[1 - axis] for box in boxes)
        return {box[axis] for box in boxes if box[1 - axis] <= near + depth // 2}

    def _length(self, ticks: int) -> str:
        return format_length(ticks, self.plan.job.tape)


def cut_rows(plan: Plan, surface: Surface) -> list[list[str]]:
    """The cut list of a surface: mark, how many, size, of which tile."""
    rows: dict[str, list[str]] = {}
    counted: dict[str, int] = {}
    for tile in surface.tiles:
        if not tile.mark:
            continue
        counted[tile.mark] = counted.get(tile.mark, 0) + 1
        u0, v0, u1, v1 = bounds(tile.cut or tile.outline)
        size = " × ".join(format_length(side, plan.job.tape, feet=False) for side in (u1 - u0, v1 - v0))
        rows.setdefault(tile.mark, [tile.mark, "", size, tile.stock])
    return [[mark, str(counted[mark]), *row[2:]] for mark, row in rows.items()]
