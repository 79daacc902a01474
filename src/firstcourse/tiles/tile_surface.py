"""Tile one surface: joint, area, start, tiles, bands and border, soft joints, and lines to snap."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely
from shapely import MultiLineString, Polygon

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding
from firstcourse.job import ChosenTile, Job, TileBand, TileExposure, Tiling
from firstcourse.layers import longest_side
from firstcourse.plan import (
    Segment,
    SoftJoint,
    SoftWhy,
    StartWhy,
    Surface,
    SurfaceKind,
    TiledArea,
)
from firstcourse.reuse import ONCE, Steps
from firstcourse.rules import RuleSet
from firstcourse.tiles.bands import Band, Laying, course_level, with_bands, without_bands
from firstcourse.tiles.borders import Border, Bordered, with_border
from firstcourse.tiles.field import STANDING, areas, tiled_field
from firstcourse.tiles.joints import tile_joint
from firstcourse.tiles.lay import CUT_MM, lay
from firstcourse.tiles.lined import ToLine
from firstcourse.tiles.lines import joint_lines
from firstcourse.tiles.model import XY, LaidTile, Start, TileArea
from firstcourse.tiles.movement import Exposure, field_spacing
from firstcourse.tiles.niches import niche_findings
from firstcourse.tiles.patterns import COURSED, EVEN_MM, repeat_cell
from firstcourse.tiles.setting import SettingBed, setting_bed
from firstcourse.tiles.slivers import sliver_findings, thin_pieces
from firstcourse.tiles.snap_lines import Snapped, snapped_area
from firstcourse.tiles.soft_joints import DOORWAY, soft_joints, with_cuts
from firstcourse.tiles.start import find_starts, judge_start
from firstcourse.tiles.start_points import start_point
from firstcourse.tiles.tile_ground import ToTile, joints_listed_elsewhere
from firstcourse.units import ticks_from_mm, to_mm
from firstcourse.workings import Working

_MOVES_LIKE: dict[TileExposure, Exposure] = {
    "interior": "dry",
    "slab": "slab",
    "sun": "moist",
    "heat": "moist",
    "moist": "moist",
    "exterior": "exterior",
}
"""Direct sun, warm floors and moisture ask for soft joints alike."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidSurface:
    """A surface's tile before it is known what each cut comes from.

    Attributes:
        snapped: The pattern that its lines are snapped for; None where it follows the lines of another surface.
    """

    surface: Surface
    tiled: tuple[TiledArea, ...]
    tiles: tuple[LaidTile, ...]
    snapped: Snapped | None
    soft_joints: tuple[SoftJoint, ...]
    findings: tuple[Finding, ...]
    workings: tuple[Working, ...]


class SurfaceTiler:
    """Tiles one surface.

    Raises:
        InputValueError: A pattern that the tile cannot make, or more tiles than any job has.
    """

    def __init__(
        self,
        surface: Surface,
        item: ToTile,
        job: Job,
        rules: RuleSet,
        before: tuple[int, ...],
        over: tuple[tuple[Segment, SoftWhy], ...],
        unsure_mm: float,
        line: ToLine | None = None,
        *,
        steps: Steps = ONCE,
    ) -> None:
        self.steps = steps
        self.surface, self.item, self.tiling, self.job, self.rules = surface, item, item.tiling, job, rules
        self.before, self.over, self.line = before, over, line
        self.shift: XY = (0.0, 0.0)
        self.tiles = {tile.id: tile for tile in job.tiles}
        self.findings: list[Finding] = []
        self.workings: list[Working] = []
        self.chosen = self._chosen()
        own = {tile.id: self.tiling for tile in self.chosen}
        beside = {name: tiling for name, tiling in self._laid_beside() if name not in own}
        self.others = tuple(self.tiles[name] for name in beside)
        self.joint = max(self._joint(self.tiles[name], tiling) for name, tiling in (own | beside).items())
        self.spacing = field_spacing(
            surface.kind,
            rules,
            exposure=_MOVES_LIKE[item.exposure],
            joint=self.joint,
            yearly_range_f=item.room.warmth_f or 0,
            mosaic=longest_side((*self.chosen, *self.others)) <= rules.ticks("tile.trowel.mosaic_side"),
        )
        self.edge = self.spacing.edge
        self.unsure = unsure_mm
        whole = self._tiled_field(surface)
        self.whole = whole.area.difference(self._folds())
        self.field = replace(whole, area=self.whole.difference(self._joints_below()))
        self.cell = repeat_cell(
            self.tiling.pattern,
            self.chosen,
            to_mm(self.joint),
            offset=self.tiling.offset,
            angle=self.tiling.angle,
            repeat=next((repeat for repeat in job.repeats if repeat.id == self.tiling.repeat), None),
        )
        self._refuse_too_many()
        self.border = self._bordered()
        if self.border is not None:
            self.field = replace(self.field, area=self.border.inside, edges=self.border.edges)
        self.bands = tuple(self._band(band) for band in self.tiling.bands)
        self.searched = without_bands(self.field, self.bands)

    def _tiled_field(self, surface: Surface) -> TileArea:
        return tiled_field(
            surface,
            edge_joint=self.edge,
            before=self.before,
            seen_first=self.tiling.seen_first,
            uncertainty_mm=self.unsure,
            rules=self.rules,
        )

    def _laid_beside(self) -> Iterator[tuple[str, Tiling]]:
        """Tiles of border and bands, each with the pattern it is laid in; of one in several bands the first."""
        if self.tiling.border is not None:
            yield self.tiling.border.tile, self.tiling.model_copy(update={"pattern": "stacked"})
        for band in reversed(self.tiling.bands):
            update = {"pattern": band.pattern, "offset": band.offset}
            yield band.tile, self.tiling.model_copy(update=update)

    def _bordered(self) -> Bordered | None:
        asked = self.tiling.border
        if asked is None:
            return None
        standing = tuple(opening for opening in self.surface.openings if opening.kind in STANDING)
        frame = self._tiled_field(self.surface.model_copy(update={"openings": standing}))
        cell = repeat_cell("stacked", (self.tiles[asked.tile],), to_mm(self.joint))
        most = asked.courses * cell.step_b[1] - cell.joint
        width = most if asked.width is None else to_mm(asked.width)
        if width > most + CUT_MM:
            raise InputValueError(
                f"the border is wider than {asked.courses} course(s) of '{asked.tile}'; give it more courses"
            )
        border = Border(cell=cell, width=width, distance=to_mm(asked.distance), corners=asked.corners)
        return with_border(self.field.area, frame.area, self.field.edges, border)

    def _band(self, asked: TileBand) -> Band:
        cell = repeat_cell(asked.pattern, (self.tiles[asked.tile],), to_mm(self.joint), offset=asked.offset)
        height = asked.courses * cell.step_b[1] - cell.joint if asked.height is None else to_mm(asked.height)
        return Band(cell=cell, bottom=to_mm(asked.bottom), height=height, pattern=asked.pattern)

    def _folds(self) -> shapely.Geometry:
        """A joint along every fold of a floor that falls, where the tile is too large to follow it [mm]."""
        fall = self.surface.fall
        largest = max(max(tile.size) for tile in self.chosen)
        if fall is None or fall.largest_tile is None or largest <= fall.largest_tile:
            return Polygon()
        lines = MultiLineString(
            [[(to_mm(u), to_mm(v)) for u, v in line] for line in (*fall.valleys, *fall.ridges)]
        )
        return lines.buffer(to_mm(self.joint) / 2, cap_style="flat")

    def _joints_below(self) -> shapely.Geometry:
        """What stays open over joints below, where tiles are cut; a doorway's joint moves to a grout joint."""
        lines = [[(to_mm(u), to_mm(v)) for u, v in line] for line, over in self.over if over != DOORWAY]
        return MultiLineString(lines).buffer(to_mm(self.spacing.width) / 2, cap_style="flat")

    @property
    def courses(self) -> tuple[object, ...] | None:
        """What walls must share for their courses to run on round the corner; None where nothing does."""
        if self.surface.kind is not SurfaceKind.WALL or self.tiling.start is not None or self.border is not None:
            return None
        if self.line is not None:
            return None
        return self.surface.room, self.tiling.tile, self.tiling.pattern, self.tiling.angle, self.joint

    def laid(self, level: float | None, host: "SurfaceTiler | None" = None) -> LaidSurface:
        """The surface's tile.

        Args:
            level: Height of a course that other walls keep too [mm].
            host: The wall, already laid, that the surface lines a niche of or stands before.
        """
        surface, rules = self.surface, self.rules
        starts = self._starts(level) if host is None else self._following(host)
        self.shift = starts[0].shift
        main = Laying(
            cell=self.cell,
            shift=starts[0].shift,
            area=self.field.area,
            pattern=self.tiling.pattern,
            angle=self.tiling.angle,
        )
        layings = self._layings(main)
        if self.line is None and all(laying.role == "band" for laying, _ in layings):
            raise InputValueError(
                f"the bands take up all that is tiled, and nothing is left for '{self.tiling.tile}'; "
                "make them lower, or lay their tile without bands"
            )
        lined = snapped_area([laying for laying, _ in layings])
        soft = soft_joints(
            surface,
            self.whole,
            joint_lines(self.cell, starts[0].shift),
            self.spacing,
            edge=self.edge,
            joint=self.joint,
            before=self.before,
            over=self.over,
            on_neighbour=joints_listed_elsewhere(surface, self.item.room)
            if self.line is None
            else self.line.lining.elsewhere,
        )
        self.findings += sliver_findings(starts, self.cell, surface.id, self.tiling.start is not None, rules)
        if surface.kind is SurfaceKind.WALL and self.tiling.pattern in COURSED and self.tiling.angle == 0:
            fields = [laying for laying, _ in layings if laying.role == "field"]
            self.findings += niche_findings(
                surface,
                self.cell.step_b[1],
                self.cell.joint,
                [(one.area.bounds[1], one.shift[1]) for one in fields],
                self.job.tape,
            )
        tiles = tuple(self._set(layings))
        for laying, _ in layings:
            bed = self._bed(laying)
            if self.line is None or self.line.leads:
                self.findings += [found for found in bed.findings if found not in self.findings]
            # The main pattern comes first: a band of the same tile lies in the same bed.
            if bed.working.id not in {working.id for working in self.workings}:
                self.workings.append(bed.working)
        laid = {f"tile_stock/{piece.tile}" for laying, _ in layings for piece in laying.cell.pieces}
        return LaidSurface(
            surface=surface,
            tiled=tuple(
                self._area(laying, starts if index == 0 else own) for index, (laying, own) in enumerate(layings)
            ),
            snapped=None if lined is None or self.line is not None else _snapped(layings[lined][0]),
            tiles=tiles,
            soft_joints=with_cuts(soft.joints, tiles),
            findings=(*self.findings, *soft.findings),
            workings=(*(one for one in self.workings if one.at[1] in laid), soft.working),
        )

    def _set(self, layings: Sequence[tuple[Laying, tuple[Start, ...]]]) -> Iterator[LaidTile]:
        """Every tile that is set, and a word on pieces whose place a soft joint takes."""
        soft = self.field.soft
        depths: list[float] = []
        for laying, _ in layings:
            for tile in lay(laying.cell, laying.shift, laying.area):
                depth = None if tile.whole else soft.depth(tile.shape)
                if depth is None or not soft.is_taken(depth):
                    yield tile
                else:
                    depths.append(depth)
        if depths:
            widest = self.edge + self.joint + ticks_from_mm(max(depths))
            self.findings.append(thin_pieces(len(depths), widest, self.surface.id, self.rules))

    def _chosen(self) -> tuple[ChosenTile, ...]:
        if self.tiling.tile is not None:
            return (self.tiles[self.tiling.tile],)
        repeat = next(item for item in self.job.repeats if item.id == self.tiling.repeat)
        return tuple(self.tiles[name] for name in dict.fromkeys(piece.tile for piece in repeat.pieces))

    def _joint(self, tile: ChosenTile, tiling: Tiling) -> int:
        choice = tile_joint(
            tile,
            tiling,
            self.rules,
            kind=self.surface.kind,
            tape=self.job.tape,
            surface=self.surface.id,
        )
        if self.line is None or self.line.leads:
            self.findings += choice.findings
        self.workings += choice.workings
        return choice.joint

    def _refuse_too_many(self) -> None:
        (ax, ay), (bx, by) = self.cell.step_a, self.cell.step_b
        number = self.field.area.area / abs(ax * by - ay * bx) * len(self.cell.pieces)
        most = self.rules.number("tiling.tiles.most")
        if number > most:
            raise InputValueError(
                f"about {number:.0f} tiles on one surface are more than {most:.0f}; check the tile's size"
            )

    def _starts(self, level: float | None) -> tuple[Start, ...]:
        given = self.tiling.start
        if given is not None:
            at = (to_mm(given.left), to_mm(given.up))
            return (judge_start(self.cell, self.searched, at, self.rules),)
        starts = self.steps.do(find_starts, self.cell, self.searched, self.rules, level=level)
        if level is None:
            return starts
        return (replace(starts[0], why="round_corners"), *starts[1:])

    def _following(self, host: "SurfaceTiler") -> tuple[Start, ...]:
        """Starts that keep the joints of the wall; its own best where none is to keep, or they leave a sliver."""
        free = self.steps.do(find_starts, self.cell, self.searched, self.rules)
        like = (self.tiling.tile, self.tiling.pattern, self.tiling.angle, self.joint)
        if like != (host.tiling.tile, host.tiling.pattern, host.tiling.angle, host.joint):
            return free
        middle = (self.surface.outline[0][1] + self.surface.outline[2][1]) / 2
        at = (host.shift[0], course_level(host.shift, host.bands, to_mm(round(middle))))
        name = self.line.lining.name if self.line is not None else ""
        if name != "back":
            if self.tiling.pattern not in COURSED or self.tiling.angle != 0:
                return free
            upright = self.surface.kind is SurfaceKind.WALL
            at = (free[0].shift[0], at[1]) if upright else (at[0], free[0].shift[1])
        tied = judge_start(self.cell, self.searched, at, self.rules)
        most = tied.cut_tiles + self.rules.number("tiling.start.more_cuts")
        without = next((one for one in free if not one.sliver and one.cut_tiles <= most), None)
        if tied.sliver and without is not None:
            first = replace(without, why="no_sliver")
            return (first, *(replace(one, why="other") for one in free if one is not without))
        others = [replace(one, why="other") for one in free if math.dist(one.shift, tied.shift) > CUT_MM]
        return (replace(tied, why="host_joints"), *others[:2])

    def _layings(self, main: Laying) -> list[tuple[Laying, tuple[Start, ...]]]:
        """Every pattern of the surface with its area and starts; the main one first."""
        found: list[tuple[Laying, tuple[Start, ...]]] = []
        for laying in with_bands(main, self.bands):
            if laying.role == "band":
                found.append(self._band_placed(laying, main))
            else:
                found.append((laying, _continued(laying, "courses_below")))
        if self.border is not None:
            if self.border.outside.area > 0:
                outside = replace(main, area=self.border.outside)
                found.append((outside, _continued(outside, "field_joints")))
            found += [(strip, _continued(strip, "both_corners")) for strip in self.border.strips]
        return found

    def _band_placed(self, band: Laying, main: Laying) -> tuple[Laying, tuple[Start, ...]]:
        """A band where it cuts best from end to end; where its tiles are as wide as the field's, on its joints."""
        if band.pattern in COURSED and abs(band.cell.step_a[0] - main.cell.step_a[0]) < EVEN_MM:
            return band, _continued(band, "field_joints")
        field = TileArea(area=band.area, edges=self.field.edges, uncertainty=self.field.uncertainty)
        level = band.shift[1] if band.pattern in COURSED else None
        starts = self.steps.do(find_starts, band.cell, field, self.rules, level=level)
        self.findings += sliver_findings(starts, band.cell, f"{self.surface.id}/band", False, self.rules)
        return replace(band, shift=starts[0].shift), starts

    def _bed(self, laying: Laying) -> SettingBed:
        """The one bed that the tiles of a pattern are set in, by the longest of them."""
        longest = max((self.tiles[piece.tile] for piece in laying.cell.pieces), key=lambda t: longest_side((t,)))
        return setting_bed(
            longest,
            self.rules,
            kind=self.surface.kind,
            surface=self.surface.id,
            entered=self.item.mortar if laying.role == "field" else None,
        )

    def _area(self, laying: Laying, starts: Sequence[Start]) -> TiledArea:
        bed = self._bed(laying)
        given = laying.role == "field" and self.item.mortar is not None
        return TiledArea(
            mortar=bed.thickness,
            trowel="" if given else bed.size,
            pattern=laying.pattern,
            tiles=tuple(dict.fromkeys(piece.tile for piece in laying.cell.pieces)),
            area=areas(laying.area),
            joint=self.joint,
            angle=laying.angle,
            step_a=_rounded(laying.cell.step_a),
            step_b=_rounded(laying.cell.step_b),
            role=laying.role,
            starts=tuple(map(start_point, starts)),
        )


def _snapped(laying: Laying) -> Snapped:
    return Snapped(area=laying.area, cell=laying.cell, shift=laying.shift)


def _continued(laying: Laying, why: StartWhy) -> tuple[Start, ...]:
    return (Start(shift=laying.shift, smallest_cut=0, slack=0, cut_tiles=0, whole_tiles=0, penalty=0, why=why),)


def _rounded(step: XY) -> XY:
    return round(step[0], 6), round(step[1], 6)
