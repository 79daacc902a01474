"""One surface drawn with its tile: every tile and cut, soft joints, lines to snap, courses along both sides."""

from collections.abc import Iterator
from itertools import pairwise

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import PITCH_MM, add_chain
from firstcourse.drawings.doors import with_doors
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text, hatch
from firstcourse.drawings.mosaic import mosaics, sheet_rings
from firstcourse.drawings.on_paper import LABEL_MM, Box, OnPaper, fitted
from firstcourse.geometry import Ring, bounds, sides
from firstcourse.plan import Opening, Plan, Surface, Zone
from firstcourse.units import TICKS_PER_MM

_SCALES = {"inch": (4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 192), "mm": (5, 10, 20, 25, 50, 75, 100, 200)}
_LEVEL = TICKS_PER_MM // 20
"""Sides that rise by less are level [ticks]."""
_HATCH_MM = 3.0
_MOST_FIGURES = 24
"""More running figures than this along one side are not read; every second, third, ... course is figured then."""


def draw_tiling(plan: Plan, surface: Surface, *, room: XY = (182.0, 160.0), from_scale: int = 1) -> Drawing:
    """Draw a tiled surface at the largest usual scale that fits.

    Cut tiles are hatched and carry the mark that the cut list names. Chips of mosaic are drawn faintly within the
    outlines of their sheets. Running figures are those of the surface's story poles; where it has none, the lower
    edge of the courses from the foot and the left edge of the tiles in the lowest course from the left end.

    Args:
        plan: For the tape of the job.
        surface: What to draw.
        room: Width and height on paper, running dimensions included [mm].
        from_scale: No larger than at one to this.
    """
    box = with_doors(plan, surface, bounds(surface.outline))
    scales = tuple(scale for scale in _SCALES[plan.job.tape.value] if scale >= from_scale)
    return fitted(scales, box, room, lambda scale: _Sheet(plan, surface, box, scale, room).drawn())


class _Sheet(OnPaper):
    """Draws a tiled surface by itself."""

    def __init__(self, plan: Plan, surface: Surface, box: Box, scale: int, room: XY) -> None:
        super().__init__(plan, surface, box, scale, "papers-title-tile", room)
        self.mosaics = mosaics(plan)

    def drawn(self) -> Drawing:
        drawing, surface = self.drawing, self.surface
        self.draw_outline()
        for tile in surface.tiles:
            ring = self.ring(tile.outline)
            layer = "chip" if tile.stock in self.mosaics else "tile"
            drawing.polys.append(Poly(layer, ring, tile.id))
            drawing.polys += [Poly(layer, self.ring(hole), tile.id) for hole in tile.holes]
            if not tile.whole and layer == "tile":
                drawing.lines += hatch(Polygon(ring, [self.ring(hole) for hole in tile.holes]), _HATCH_MM)
        for mosaic in sheet_rings(surface, self.mosaics):
            drawing.polys.append(Poly("sheet", tuple(self.at_mm(point) for point in mosaic)))
        for opening in surface.openings:
            self._opening(opening)
        standing = [part for zone in surface.not_tiled for part in self._standing(zone)]
        kept_out = self.keep_out(zone for zone in surface.no_fastener_zones if zone.found)
        for joint in surface.soft_joints:
            points = [self.at(point) for point in joint.line]
            drawing.lines += [Line("soft", a, b) for a, b in pairwise(points)]
        snapped = (mark.line for mark in surface.marks if mark.kind not in ("square", "pole"))
        for one, other in dict.fromkeys(snapped):
            drawing.lines.append(Line("snap", self.at(one), self.at(other)))
        self._chains()
        self.start_texts()
        self.name_corners()
        for opening in surface.openings:
            self._opening_label(opening)
        self.name_doors()
        self.name_zones([*kept_out, *standing])
        self._marks()
        return drawing

    def _standing(self, zone: Zone) -> Iterator[tuple[str, Polygon]]:
        """What stands before the surface, as far as it lies on it, with its name."""
        shape = Polygon(self.ring(self.surface.outline)).intersection(Polygon(self.ring(zone.outline)))
        name = self.words(self.speaker.thing(zone.why))
        for part in shapely.get_parts(shape):
            if isinstance(part, Polygon) and not part.is_empty:
                self.drawing.polys.append(Poly("opening", tuple(part.exterior.coords)[:-1], name))
                yield name, part

    def _opening(self, opening: Opening) -> None:
        if opening.outline is not None:
            self.drawing.polys.append(Poly("opening", self.ring(opening.outline), opening.id))
            return
        assert opening.centre is not None and opening.diameter is not None
        radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
        self.drawing.circles.append(Circle("opening", self.at(opening.centre), radius))

    def _opening_label(self, opening: Opening) -> None:
        if opening.outline is not None:
            shape = Polygon(self.ring(opening.outline))
            middle = shape.representative_point()
            label = Text((middle.x, middle.y), opening.id, LABEL_MM, bold=True)
            self.placer.put(label, within=shape, upright_too=True, aside=True)
            return
        assert opening.centre is not None and opening.diameter is not None
        x, y = self.at(opening.centre)
        radius = opening.diameter / 2 / TICKS_PER_MM / self.drawing.scale
        self.placer.put(Text((x, y + radius + 2.2), opening.id, LABEL_MM, bold=True), reach=6.0, aside=True)

    def _marks(self) -> None:
        """Each cut tile's mark, where the tile has room for it; one that has room nowhere stands aside, once."""
        aside: dict[str, Polygon] = {}
        shown: set[str] = set()
        for tile in self.surface.tiles:
            if not tile.mark or tile.stock in self.mosaics:
                continue
            shape = Polygon(self.ring(tile.outline), [self.ring(hole) for hole in tile.holes])
            middle = shape.centroid if shape.contains(shape.centroid) else shape.representative_point()
            mark = Text((middle.x, middle.y), tile.mark, LABEL_MM)
            if self.placer.put(mark, within=shape, upright_too=True) is not None:
                shown.add(tile.mark)
            else:
                aside.setdefault(tile.mark, shape)
        for name, shape in aside.items():
            if name not in shown:
                middle = shape.representative_point()
                self.placer.put(Text((middle.x, middle.y), name, LABEL_MM), reach=1.0, aside=True)

    def _chains(self) -> None:
        for axis in (0, 1):
            places = self._figures(axis)
            inner = sorted(places)[1:-1]
            end = self.box[axis + 2]
            room = int(self.at((end, end))[axis] / PITCH_MM) - 2
            step = max(1, -(-len(inner) // max(min(_MOST_FIGURES, room), 1)))
            shown = sorted({*sorted(places)[:1], *inner[::step], *sorted(places)[-1:]})
            add_chain(
                self.drawing,
                [(self.at((place, place))[axis], self.length(places[place])) for place in shown],
                along=axis,
                off=self.names_room,
            )

    def _figures(self, axis: int) -> dict[int, int]:
        """Places along a side with what the tape reads there [ticks]: as the surface's story pole has them."""
        poles = [
            mark for mark in self.surface.marks if mark.kind == "pole" and mark.line[0][axis] == mark.line[1][axis]
        ]
        if not poles:
            whole = bounds(self.surface.outline)
            origin, end = whole[axis], whole[axis + 2]
            return {place: place - origin for place in {origin, end, *self._edges(axis)}}
        opening = f"{self.surface.id}/opening/"
        return {mark.line[0][axis]: mark.distance for mark in poles if not mark.to.startswith(opening)}

    def _edges(self, axis: int) -> set[int]:
        """Left edges of the lowest course, or lower edges of the tiles that stand farthest left.

        Where tiles lie askew their corners are no figures to set by: then those of the surface and its openings.
        """
        rings = [tile.laid or tile.outline for tile in self.surface.tiles]
        if not all(_is_level(ring) for ring in rings):
            outlines = (opening.outline for opening in self.surface.openings if opening.outline is not None)
            return {point[axis] for ring in (self.surface.outline, *outlines) for point in ring}
        boxes = [bounds(tile.outline) for tile in self.surface.tiles]
        if not boxes:
            return set()
        near = min(box[1 - axis] for box in boxes)
        depth = min(box[3 - axis] - box[1 - axis] for box in boxes)
        return {box[axis] for box in boxes if box[1 - axis] <= near + depth // 2}


def _is_level(ring: Ring) -> bool:
    """Whether every side of a tile runs along an axis of the surface, but for rounding."""
    return all(min(abs(b[0] - a[0]), abs(b[1] - a[1])) <= _LEVEL for a, b in sides(ring))
