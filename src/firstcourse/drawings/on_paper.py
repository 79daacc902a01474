"""A surface on paper: at which scale it fits, where its points lie, and the names of its corners."""

import math
from collections.abc import Callable, Iterable, Sequence

import shapely
from shapely import Polygon

from firstcourse.drawings.doors import (
    door_layer,
    door_ring,
    door_words,
    doors_of_floor,
    doors_of_wall,
    draw_outline,
)
from firstcourse.drawings.model import XY, Drawing, Poly, Text, hatch
from firstcourse.drawings.model import Box as PaperBox
from firstcourse.drawings.placing import Placer
from firstcourse.geometry import Ring, bounds, sides
from firstcourse.plan import Plan, Surface, SurfaceKind, Zone
from firstcourse.units import TICKS_PER_MM, format_length
from firstcourse.words import Speaker, speaker_for, why_barred

Box = tuple[int, int, int, int]
LABEL_MM = 2.7
"""Height of the type of small labels [mm]."""
_NAMES_MM = 4.0
"""How much farther off running dimensions stand where corners are named round the surface [mm]."""
_SIDE_MM, _INSIDE_MM, _BETWEEN_MM = 2.7, 2.8, 1.9
_CORNER_MM, _OFF_MM = 4.2, 3.4
_KEEP_OUT_MM = 3.0
COARSE = 48
"""From one to this on, fasteners 200 mm apart stand as close as letters are high."""
_LEAST = 100
"""A drawing so many times smaller than the smallest usual scale holds nothing but texts: it is given as it is."""
_NAMES_ROUND_MM = 7.0
"""Room for the names of corners beside and above a drawing, however tight its page is [mm]."""
_EDGE_MM = 2.0
"""What a drawing leaves free of the room it is given: the margin of its picture on both sides [mm]."""


def fitted(scales: Sequence[int], box: Box, room: XY, build: Callable[[int], Drawing]) -> Drawing:
    """The drawing at the largest usual scale at which all of it lies within the room.

    Args:
        scales: Usual scales, the largest drawing first.
        box: Left, lower, right, upper of what is drawn to scale [ticks].
        room: Width and height on paper for all that is drawn, figures and names included [mm].
        build: Draws at a scale.

    Returns:
        Where even the smallest usual scale is too large, a drawing at a smaller one: nothing leaves the page.
    """
    wide, high = (box[2] - box[0]) / TICKS_PER_MM, (box[3] - box[1]) / TICKS_PER_MM
    scale = next((one for one in scales if wide / one <= room[0] and high / one <= room[1]), scales[-1])
    while True:
        drawing = build(scale)
        left, lower, right, upper = drawing.box
        fits = right - left + _EDGE_MM <= room[0] and upper - lower + _EDGE_MM <= room[1]
        if fits or scale > _LEAST * scales[-1]:
            return drawing
        scale = next((one for one in scales if one > scale), scale * 2)


def titled(speaker: Speaker, title: str, scale: int) -> Drawing:
    """A drawing with nothing on it, called so in the reader's words."""
    said = speaker.words(title)
    return Drawing(title=said, scale=scale, caption=speaker.text("drawings-caption", title=said, scale=scale))


class OnPaper:
    """One surface drawn; paper coordinates have the lower left corner of its box as origin.

    Its title is a message that takes the surface's name.

    Attributes:
        room: Width and height on paper for the whole drawing [mm].
        placer: Finds room for texts; there is one once all lines and running dimensions are drawn.
    """

    placer: Placer

    def __init__(self, plan: Plan, surface: Surface, box: Box, scale: int, title: str, room: XY) -> None:
        self.plan, self.surface, self.box, self.room = plan, surface, box, room
        self.speaker = speaker_for(plan)
        self.words = self.speaker.words
        self.drawing = titled(self.speaker, self.speaker.text(title, surface=self.speaker.title(surface)), scale)

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
    def coarse(self) -> bool:
        """Whether the scale is so small that a board holds no text between its fasteners."""
        return self.drawing.scale >= COARSE

    @property
    def names_room(self) -> float:
        """How much farther off running dimensions must stand for the names of corners [mm]."""
        return 0.0 if self.surface.kind is SurfaceKind.WALL else _NAMES_MM

    def draw_outline(self) -> None:
        """Draw the surface's outline with the doors in it, and the doors in its wall beside it."""
        draw_outline(self.drawing, self.plan, self.surface, self.at)
        for door in doors_of_wall(self.plan, self.surface):
            ring = self.ring(door_ring(door, self.surface))
            self.drawing.polys.append(Poly(door_layer(door), ring, door.id))

    def name_doors(self) -> None:
        """Name each door: on its wall, and with its width beside the gap in a floor's line."""
        for door in doors_of_wall(self.plan, self.surface):
            shape = Polygon(self.ring(door_ring(door, self.surface)))
            words = door_words(door, self.speaker)
            label = Text((shape.centroid.x, shape.centroid.y), words, LABEL_MM)
            self.placer.put(label, within=shape, upright_too=True, aside=True)
        for door in doors_of_floor(self.plan, self.surface):
            (ax, ay), (bx, by) = (self.at(end) for end in door.line)
            across = (bx - ax) / math.dist((ax, ay), (bx, by)), (by - ay) / math.dist((ax, ay), (bx, by))
            # Out of the room, between the jambs; it lies to the right of the way from the left end to the right.
            spot = (ax + bx) / 2 - across[1] * _BETWEEN_MM, (ay + by) / 2 + across[0] * _BETWEEN_MM
            words = self.speaker.text("drawings-door", name=door.id, size=self.length(door.width))
            label = Text(spot, words, LABEL_MM, upright=abs(across[1]) > abs(across[0]))
            self.placer.put(label, reach=8.0, aside=True)

    def keep_out(self, zones: Iterable[Zone]) -> list[tuple[str, Polygon]]:
        """Draw zones where nothing may be driven, hatched both ways; gives each part with what to write on it."""
        whole, named = Polygon(self.ring(self.surface.outline)), []
        for zone in zones:
            shape = Polygon(self.ring(zone.outline)).intersection(whole)
            why = why_barred(zone, self.speaker)
            for part in shapely.get_parts(shape):
                if isinstance(part, Polygon) and not part.is_empty:
                    self.drawing.polys.append(Poly("keepout", tuple(part.exterior.coords)[:-1], why))
                    self.drawing.lines += hatch(part, _KEEP_OUT_MM) + hatch(part, _KEEP_OUT_MM, falling=True)
                    named.append((self.speaker.text("drawings-barred", why=why) if zone.found else why, part))
        return named

    def name_zones(self, named: Iterable[tuple[str, Polygon]]) -> None:
        """Write on each zone what may not be done there."""
        for name, part in named:
            middle = part.representative_point()
            label = Text((middle.x, middle.y), name, LABEL_MM, bold=True)
            self.placer.put(label, within=part, upright_too=True, aside=True)

    def start_texts(self) -> None:
        """Make room for texts round all that is drawn so far."""
        self.placer = Placer(self.drawing, page_round(self.drawing, self.room), dense=self.coarse)

    def name_sides(self) -> None:
        """Name each side, just inside it, where no corners are named that tell the sides apart."""
        shape = Polygon(self.ring(self.surface.outline))
        for (a, b), side in zip(sides(self.surface.outline), self.surface.sides, strict=True):
            if not side.meets:
                continue
            label = self.words(self.speaker.edge(side))
            (ax, ay), (bx, by) = self.at(a), self.at(b)
            length = math.dist((ax, ay), (bx, by))
            inwards = (-(by - ay) / length, (bx - ax) / length)
            upright = abs(by - ay) > abs(bx - ax)
            spot = (ax + bx) / 2 + inwards[0] * _INSIDE_MM, (ay + by) / 2 + inwards[1] * _INSIDE_MM
            strip = shapely.LineString([(ax, ay), (bx, by)]).buffer(3 * _INSIDE_MM).intersection(shape)
            self.placer.put(Text(spot, label, _SIDE_MM, bold=True, upright=upright), within=strip)

    def name_corners(self) -> None:
        """Name the corners of the room above a wall or round a floor; the sides where no corners are known."""
        surface = self.surface
        if surface.kind is SurfaceKind.WALL and len(surface.corners) == 2:
            right, top = self.at((self.box[2], self.box[3]))
            whole = bounds(surface.extent or surface.outline)
            # Where only a part of the wall is drawn, its end may be no corner.
            ends = ((0.0, 0, self.box[0] == whole[0]), (right, 1, self.box[2] == whole[2]))
            for x, index, is_end in ends:
                if is_end:
                    corner = Text((x, top + 4.0), surface.corners[index], _CORNER_MM, bold=True)
                    self.placer.put(corner, aside=True)
            return
        names = surface.corners if surface.kind is SurfaceKind.CEILING else tuple(reversed(surface.corners))
        if len(names) != len(surface.outline):
            self.name_sides()
            return
        shape = Polygon(self.ring(surface.outline))
        middle = shapely.centroid(shape)
        for name, point in zip(names, surface.outline, strict=True):
            x, y = self.at(point)
            dx, dy = (_OFF_MM if one > other else -_OFF_MM for one, other in ((x, middle.x), (y, middle.y)))
            spots = [(x + sx * dx, y + sy * dy) for sx, sy in ((1, 1), (1, -1), (-1, 1), (-1, -1))]
            # Outside the room, beside its corner.
            outside = [
                spot for spot in spots if not shape.intersects(shapely.Point(spot).buffer(_CORNER_MM * 0.45))
            ]
            self.placer.put(Text((outside or spots)[0], name, _CORNER_MM, bold=True), reach=6.0, aside=True)


def page_round(drawing: Drawing, room: XY) -> PaperBox:
    """What may be written on: the drawing's own box, and to the right and above what its room leaves free."""
    left, lower, right, upper = drawing.box
    return (
        left,
        lower,
        max(right + _NAMES_ROUND_MM, left + room[0] - _EDGE_MM),
        max(upper + _NAMES_ROUND_MM, lower + room[1] - _EDGE_MM),
    )
