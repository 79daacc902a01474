"""One surface drawn with its tile: every tile and cut, soft joints, lines to snap, courses along both sides."""

from itertools import pairwise, product

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import PITCH_MM, add_chain
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text, hatch
from firstcourse.drawings.on_paper import OnPaper, fitting_scale
from firstcourse.geometry import bounds
from firstcourse.plan import Opening, Plan, Surface
from firstcourse.units import TICKS_PER_MM, format_length

_SCALES = {"inch": (4, 6, 8, 12, 16, 24, 32, 48, 96, 192), "mm": (5, 10, 20, 25, 50, 100, 200)}
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
    return _Sheet(plan, surface, room).drawn()


class _Sheet(OnPaper):
    """Draws a tiled surface by itself."""

    def __init__(self, plan: Plan, surface: Surface, room: XY) -> None:
        box = bounds(surface.outline)
        scale = fitting_scale(box, room, _SCALES[plan.job.tape.value])
        super().__init__(plan, surface, box, scale, f"{surface.title or surface.id}: tile")

    def drawn(self) -> Drawing:
        drawing, surface = self.drawing, self.surface
        drawing.polys.append(Poly("outline", self.ring(surface.outline)))
        for tile in surface.tiles:
            ring = self.ring(tile.outline)
            drawing.polys.append(Poly("tile", ring, tile.id))
            drawing.polys += [Poly("tile", self.ring(hole), tile.id) for hole in tile.holes]
            if not tile.whole:
                drawing.lines += hatch(Polygon(ring, [self.ring(hole) for hole in tile.holes]), _HATCH_MM)
        for opening in surface.openings:
            self._opening(opening)
        for joint in surface.soft_joints:
            points = [self.at(point) for point in joint.line]
            drawing.lines += [Line("soft", a, b) for a, b in pairwise(points)]
        for area in surface.tiled:
            for snap in area.lines:
                drawing.lines.append(Line("snap", self.at(snap.line[0]), self.at(snap.line[1])))
        self._marks()
        self.name_corners()
        self._chains()
        return drawing

    def _opening(self, opening: Opening) -> None:
        if opening.outline is not None:
            self.drawing.polys.append(Poly("opening", self.ring(opening.outline), opening.id))
            u0, v0, u1, v1 = bounds(opening.outline)
            spot = self.at(((u0 + u1) // 2, (v0 + v1) // 2))
        else:
            assert opening.centre is not None and opening.diameter is not None
            spot = self.at(opening.centre)
            radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
            self.drawing.circles.append(Circle("opening", spot, radius))
            spot = (spot[0], spot[1] + radius + 2.4)
        others = tuple((spot[0], spot[1] + k * 3.4) for k in (-1, 1, -2, 2, -3, 3))
        self.drawing.place(Text(spot, opening.id, _LABEL_MM, bold=True), try_also=others)

    def _marks(self) -> None:
        for tile in self.surface.tiles:
            if not tile.mark:
                continue
            shape = Polygon(self.ring(tile.outline))
            # A notched piece may have its middle in the notch; then its roomiest place will do.
            spots = (shapely.centroid(shape), shapely.Point(shapely.maximum_inscribed_circle(shape).coords[0]))
            for middle, upright in product(spots, (False, True)):
                text = Text((middle.x, middle.y), tile.mark, _LABEL_MM, upright=upright)
                if shape.contains(shapely.box(*text.box)) and self.drawing.place(text):
                    break

    def _chains(self) -> None:
        for axis in (0, 1):
            origin, end = self.box[axis], self.box[axis + 2]
            edges = sorted(self._edges(axis))
            room = int(self.at((end, end))[axis] / PITCH_MM) - 2
            step = -(-len(edges) // max(min(_MOST_FIGURES, room), 1))
            marks = sorted({origin, end, *edges[::step]})
            add_chain(
                self.drawing,
                [(self.at((mark, mark))[axis], self.length(mark - origin)) for mark in marks],
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
