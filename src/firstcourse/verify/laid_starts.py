"""What each start that is told would bring, the one used and others: its tiles laid on the ground again."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from shapely import LineString

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.repeats import EXACT, Laid, Repeat, how_near, repeat_of
from firstcourse.verify.start_fields import Start
from firstcourse.verify.starts import EQUAL, Cut, area_edges, cuts_of, lies_along, places_of
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.thin_pieces import depth_of, soft_edges
from firstcourse.verify.verdict import Objection

_CODE = "VER-724"
_CUT = 0.005 * TICKS_PER_MM
_SHARE = 1e-6
"""Shares are kept to six places."""
_OPPOSITE = -0.99
_MET = 1e-3
"""Nearer to each other edges meet: they end on the same tick [ticks]."""
type Point2 = tuple[float, float]


def check_laid_starts(plan: Document) -> Iterator[Objection]:
    """Object to what is told of a start and is not so of the tiles that it lays."""
    for surface in plan.surfaces:
        # Ground that is closed up over bands, and that within a border, is not kept in the plan.
        if len(surface.tiled) != 1 or not surface.tiles or any(tile.fixed for tile in surface.tiles):
            continue
        area = surface.tiled[0]
        repeat = repeat_of(area, plan.tile_stock)
        if repeat is not None:
            ground = Ground(surface, repeat, plan)
            for number, start in enumerate(area.starts):
                name = f"{surface.id}, start {number + 1}"
                yield from (Objection(_CODE, name, said) for said in ground.wrong(start))


@dataclass(frozen=True)
class Ground:
    """The ground of one surface, and the pattern that is laid on it."""

    surface: Surface
    repeat: Repeat
    plan: Document

    @property
    def rules(self) -> RuleSet:
        """The rules in force."""
        return self.plan.rules

    @cached_property
    def shortest(self) -> float:
        """Edges shorter than this do not count [ticks]."""
        return self.rules.ticks("tiling.start.shortest_edge")

    @cached_property
    def near(self) -> float:
        """How exactly a width is known [ticks]."""
        return how_near(self.surface, self.repeat)

    @cached_property
    def edges(self) -> list[tuple[LineString, str, bool]]:
        """Edges of the area, each with the side it runs along, and whether it bounds an opening within."""
        return list(area_edges(self.surface, self.shortest))

    @cached_property
    def soft(self) -> list[tuple[Point2, Point2]]:
        """Edges along which a joint takes the place of thin pieces."""
        return soft_edges(self.surface, self.plan)

    def lay(self, start: Start) -> list[Laid]:
        """Its tiles, but the pieces whose place a joint takes."""
        takes = self.rules.ticks("tiling.start.joint_takes")
        return [
            tile
            for tile in self.repeat.lay(self.surface.tiled[0].shape, start.origin)
            if tile.whole or not any(depth_of(tile, edge) <= takes + EQUAL for edge in self.soft)
        ]

    def wrong(self, told: Start) -> Iterator[str]:
        """What is told of a start and is not so."""
        cut = [tile for tile in self.lay(told) if not tile.whole]
        if len({tile.laid for tile in cut}) != told.cut_tiles:
            yield f"cuts {len({tile.laid for tile in cut})} tiles, and {told.cut_tiles} are told"
        of_tile = [(tile, list(cuts_of(tile, self.shortest))) for tile in cut]
        widths = [
            min((one.width for one in cuts), default=min(map(math.dist, tile.laid, tile.laid[1:])))
            for tile, cuts in of_tile
        ]
        if not self.is_floor(told.smallest_cut, min(widths, default=0.0)):
            yield f"has a cut of {min(widths, default=0.0) / TICKS_PER_MM:.2f} mm, and another is told"
        yield from self._poorest(told, of_tile)
        yield from self._along(told, list(chain.from_iterable(cuts for _, cuts in of_tile)))

    def is_floor(self, said: int, width: float) -> bool:
        """Whether a width is told as it is, rounded down."""
        return math.floor(width - self.near) <= said <= math.floor(width + self.near)

    def _poorest(self, told: Start, of_tile: Sequence[tuple[Laid, list[Cut]]]) -> Iterator[str]:
        """Whether a cut is a sliver or under half a tile, and where the poorest of these is."""
        half, least = self.rules.number("tiling.start.half"), self.rules.ticks("tiling.start.least_cut")
        share = self.rules.number("tiling.start.least_share")
        every = [(tile, cut) for tile, cuts in of_tile for cut in cuts]
        slivers = [
            (min(least, share * cut.whole) - _CUT - cut.width, cut)
            for tile, cut in every
            if not cut.askew or self._stands(tile, cut)
        ]
        short = [(half * cut.whole - cut.width, cut) for _, cut in every]
        for name, said, found in (("a sliver", told.sliver, slivers), ("under half", told.under_half, short)):
            surely = any(by > self.near for by, _ in found)
            may = surely or (self.near > EXACT and any(by > -self.near for by, _ in found))
            if not (surely <= said <= may):
                yield f"{'has no' if said else 'has a'} cut that is {name}, and the other is told"
        if not told.sliver and not told.under_half:
            return
        # What rounding may make poor or not may be told, and need not be; just half a tile is not poor.
        least_by = self.near if self.near == EXACT else -self.near
        poor = [(by, cut) for by, cut in (slivers if told.sliver else short) if by > least_by]
        most = min((cut.width for by, cut in poor if by > self.near), default=math.inf) + 1 + self.near
        edges = [(line, side) for line, side, _ in self.edges]
        places = {place for _, cut in poor if cut.width <= most for place in places_of(self.surface, cut, edges)}
        if told.narrowest_at not in places:
            yield f"has its poorest cut at {' or '.join(sorted(places))}, not at '{told.narrowest_at}'"

    def _stands(self, tile: Laid, cut: Cut) -> bool:
        """Whether a tile askew stands beside the edge it is cut along, not beyond its end."""
        middle = (
            sum(u for u, _ in tile.laid) / len(tile.laid),
            sum(v for _, v in tile.laid) / len(tile.laid),
        )
        for line, _, _ in self.edges:
            if lies_along(cut, line):
                (a, b), (c, d) = line.coords
                along = (middle[0] - a) * (c - a) + (middle[1] - b) * (d - b)
                return bool(0 <= along <= line.length**2)
        return False

    def _along(self, told: Start, cuts: Sequence[Cut]) -> Iterator[str]:
        """The narrowest cut along each edge: of each side, and how alike those of opposite edges are."""
        narrowest = [
            min((cut for cut in cuts if lies_along(cut, line)), key=lambda cut: cut.width, default=None)
            for line, _, _ in self.edges
        ]
        by_side: dict[str, float | None] = {}
        for (_, side, _), cut in zip(self.edges, narrowest, strict=True):
            if side:
                width = None if cut is None else cut.width
                known = [one for one in (by_side.get(side), width) if one is not None]
                by_side[side] = min(known, default=None)
        said = [edge.at for edge in told.edges]
        one = len(self.surface.tiled[0].shape.geoms) == 1
        if not (_is_turn(said, list(by_side)) if one else sorted(said) == sorted(by_side)):
            yield "tells cuts along other sides than its area has"
            return
        for edge in told.edges:
            width = by_side[edge.at]
            share = 1.0 if width is None else width / self.repeat.widest
            if (
                (edge.width is None) != (width is None)
                or (width is not None and edge.width is not None and not self.is_floor(edge.width, width))
                or abs(edge.share - share) > _SHARE + self.near / self.repeat.widest
            ):
                yield f"tells another cut along {edge.at} than it brings"
        kept = [1.0 if cut is None else cut.width / cut.whole for cut in narrowest]
        pairs = [abs(kept[one] - kept[other]) for one, other in self.facing()]
        # Of a pair each cut has two ends, each known so exactly.
        off = _SHARE + 4 * self.near / min(self.repeat.extent(0), self.repeat.extent(1))
        if (told.uneven is None) == bool(pairs) or (
            told.uneven is not None and abs(told.uneven - max(pairs)) > off
        ):
            yield f"tells that opposite cuts differ by {told.uneven}, which comes to {max(pairs, default=None)}"

    def facing(self) -> Iterator[tuple[int, int]]:
        """Each edge with that of its kind which it faces along the longest stretch, the nearest of these."""
        groups = [self.repeat.level_to(line) for line, _, _ in self.edges]
        for number, (line, _, hole) in enumerate(self.edges):
            (a, b), (c, d) = line.coords
            way = ((c - a) / line.length, (d - b) / line.length)
            best: tuple[float, float, int] | None = None
            for other, (beside, _, of_hole) in enumerate(self.edges):
                (e, f), (g, h) = beside.coords
                if of_hole != hole or groups[other] != groups[number]:
                    continue
                if ((g - e) * way[0] + (h - f) * way[1]) / beside.length > _OPPOSITE:
                    continue
                away = way[0] * (f - b) - way[1] * (e - a)
                spans = [sorted(u * way[0] + v * way[1] for u, v in one.coords) for one in (line, beside)]
                shared = min(spans[0][1], spans[1][1]) - max(spans[0][0], spans[1][0])
                found = (round(shared / TICKS_PER_MM, 3), abs(away))
                # Edges that meet in a sharp corner do not face each other.
                across = (away < 0) == hole and abs(away) > _MET
                if across and shared > 0 and (best is None or found > best[:2]):
                    best = (*found, other)
            if best is not None:
                yield number, best[2]


def _is_turn(said: list[str], found: list[str]) -> bool:
    """Whether sides are told in their order round the area, from whichever on."""
    turns = [found[number:] + found[:number] for number in range(max(1, len(found)))]
    return said in turns
