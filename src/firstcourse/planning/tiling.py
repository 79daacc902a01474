"""Tile every surface that the job asks for: joint, area, start, tiles, soft joints, and the source of each cut."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

import shapely
from shapely import MultiLineString, Polygon

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.findings import Finding
from firstcourse.geometry.polygon import Ring, area2, as_ring, clockwise, counter_clockwise
from firstcourse.job import ChosenTile, Job, TileExposure
from firstcourse.plan import (
    Segment,
    SnapLine,
    SoftJoint,
    StartPoint,
    Stock,
    Surface,
    SurfaceKind,
    Tile,
    TiledArea,
    TileStock,
)
from firstcourse.planning.tile_ground import (
    ToTile,
    depth_before,
    joints_listed_elsewhere,
    lines_over,
    surfaces_to_tile,
)
from firstcourse.rules import RuleSet
from firstcourse.survey import SurveyResult
from firstcourse.tiling.bands import Band, Laying, with_bands
from firstcourse.tiling.field import areas, tiled_field
from firstcourse.tiling.joints import tile_joint
from firstcourse.tiling.lay import lay
from firstcourse.tiling.lines import joint_lines
from firstcourse.tiling.model import XY, LaidTile, Start
from firstcourse.tiling.niches import niche_findings
from firstcourse.tiling.patterns import repeat_cell
from firstcourse.tiling.setting import setting_bed
from firstcourse.tiling.sharing import share
from firstcourse.tiling.slivers import sliver_findings
from firstcourse.tiling.snap_lines import snap_lines
from firstcourse.tiling.soft_joints import DOORWAY, Exposure, field_spacing, soft_joints
from firstcourse.tiling.start import common_level, find_starts, judge_start
from firstcourse.units import ticks_from_mm, ticks_from_mm_floor, to_mm
from firstcourse.workings import Working

_LETTERS = "abcdefghijkmnpqrstuvwxyz"
"""Marks of cut tiles; without l and o, which read as figures."""
_COURSED = ("stacked", "running")
"""Patterns of level courses."""
_MOVES_LIKE: dict[TileExposure, Exposure] = {
    "interior": "dry",
    "slab": "slab",
    "sun": "moist",
    "heat": "moist",
    "moist": "moist",
    "exterior": "exterior",
}
"""Direct sun, warm floors and moisture ask for soft joints alike."""
_ALIKE_TICKS = 1016
"""Cut pieces whose sides differ by less than this are one line of the cut list [ticks]: a sixteenth of an inch."""
_ALIKE_TICKS2 = 640 * 640 * 400


@dataclass(frozen=True, slots=True, kw_only=True)
class TiledJob:
    """All surfaces with their tile, and what the tiling has to say."""

    surfaces: tuple[Surface, ...]
    stock: tuple[TileStock, ...] = ()
    findings: tuple[Finding, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Laid:
    """A surface's tile before it is known what each cut comes from."""

    surface: Surface
    tiled: tuple[TiledArea, ...]
    tiles: tuple[LaidTile, ...]
    soft_joints: tuple[SoftJoint, ...]
    findings: tuple[Finding, ...]
    workings: dict[str, Working]


def tile_job(
    job: Job,
    survey: SurveyResult,
    surfaces: Sequence[Surface],
    stock: Mapping[SurfaceKind, tuple[Stock, ...]],
    rules: RuleSet,
) -> TiledJob:
    """Tile the surfaces of a job.

    Args:
        job: The job.
        survey: For how sure the rooms' corners are.
        surfaces: Boarded surfaces, and others that take tile.
        stock: Sheets by what they serve.
        rules: Rules in force.

    Raises:
        JobError: A pattern that the tile cannot make, or more tiles than any job has.
    """
    asked = {item.surface_id: item for item in surfaces_to_tile(job)}
    unsure = {room.name: max(room.adjustment.uncertainty_mm.values(), default=0.0) for room in survey.rooms}
    plans = {room.name: room.plan for room in survey.rooms}
    tilers: dict[str, _Tiler] = {}
    laid: dict[str, _Laid] = {}
    problems: list[InputProblem] = []
    for surface in surfaces:
        item = asked.get(surface.id)
        if item is None:
            continue
        try:
            before = depth_before(surface, item.room, stock[SurfaceKind.WALL], job.tiles, rules)
            over = lines_over(item, surface, plans[surface.room])
            tilers[surface.id] = _Tiler(surface, item, job, rules, before, over, unsure[surface.room])
        except InputValueError as error:
            problems.append(_problem(item, error))
    levels = _levels(tuple(tilers.values()), rules)
    for name, tiler in tilers.items():
        try:
            laid[name] = tiler.laid(levels.get(name))
        except InputValueError as error:
            problems.append(_problem(tiler.item, error))
    if problems:
        raise JobError(tuple(problems))
    used = {name for found in laid.values() for area in found.tiled for name in area.tiles}
    joints = {name: area.joint for found in laid.values() for area in found.tiled for name in area.tiles}
    chosen = tuple(_stock(tile, joints[tile.id]) for tile in job.tiles if tile.id in used)
    cut, shared = _cut_from(tuple(laid.values()), chosen, rules)
    return TiledJob(
        surfaces=tuple(
            surface.model_copy(
                update={
                    "tiles": cut[surface.id],
                    "tiled": laid[surface.id].tiled,
                    "soft_joints": laid[surface.id].soft_joints,
                    "tile_exposure": asked[surface.id].exposure,
                }
            )
            if surface.id in laid
            else surface
            for surface in surfaces
        ),
        stock=chosen,
        findings=tuple(dict.fromkeys(finding for found in laid.values() for finding in found.findings)),
        workings={key: working for found in laid.values() for key, working in found.workings.items()} | shared,
    )


class _Tiler:
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
        over: tuple[tuple[Segment, str], ...],
        unsure_mm: float,
    ) -> None:
        self.surface, self.item, self.tiling, self.job, self.rules = surface, item, item.tiling, job, rules
        self.before, self.over = before, over
        self.tiles = {tile.id: tile for tile in job.tiles}
        self.findings: list[Finding] = []
        self.workings: dict[str, Working] = {}
        self.chosen = self._chosen()
        self.joint = max(self._joint(tile) for tile in self.chosen)
        self.spacing = field_spacing(
            surface.kind,
            rules,
            exposure=_MOVES_LIKE[item.exposure],
            joint=self.joint,
            yearly_range_f=item.room.yearly_range_f or 0,
        )
        self.edge = self.spacing.width
        whole = tiled_field(
            surface,
            edge_joint=self.edge,
            before=before,
            seen_first=self.tiling.seen_first,
            uncertainty_mm=unsure_mm,
            rules=rules,
        )
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
        if self.surface.kind is not SurfaceKind.WALL or self.tiling.start is not None:
            return None
        return self.surface.room, self.tiling.tile, self.tiling.pattern, self.tiling.angle, self.joint

    def laid(self, level: float | None) -> _Laid:
        """The surface's tile, its courses at a level that other walls keep too [mm]."""
        surface, rules = self.surface, self.rules
        starts = self._starts(level)
        main = Laying(cell=self.cell, shift=starts[0].shift, area=self.field.area)
        layings = self._banded(main, to_mm(self.joint))
        soft = soft_joints(
            surface,
            self.whole,
            joint_lines(self.cell, starts[0].shift),
            self.spacing,
            edge=self.edge,
            joint=self.joint,
            tape=self.job.tape,
            before=self.before,
            doorways=tuple(line for line, over in self.over if over == DOORWAY),
            over=tuple((line, over) for line, over in self.over if over != DOORWAY),
            on_neighbour=joints_listed_elsewhere(surface, self.item.room),
        )
        where = surface.title or surface.id
        self.findings += sliver_findings(
            starts, self.cell, where, self.tiling.start is not None, self.job.tape, rules
        )
        if surface.kind is SurfaceKind.WALL and self.tiling.pattern in _COURSED and self.tiling.angle == 0:
            pitch = self.cell.step_b[1]
            self.findings += niche_findings(surface, pitch, self.cell.joint, starts[0].shift[1], self.job.tape)
        for tile in self.chosen:
            bed = setting_bed(tile, rules, kind=surface.kind, tape=self.job.tape, where=where)
            self.findings += bed.findings
            self.workings[f"mortar {tile.id} {surface.id}"] = bed.working
        return _Laid(
            surface=surface,
            tiled=tuple(
                self._area(
                    laying, self.joint, starts if index == 0 else (), self._lines(main) if index == 0 else ()
                )
                for index, laying in enumerate(layings)
            ),
            tiles=tuple(tile for laying in layings for tile in lay(laying.cell, laying.shift, laying.area)),
            soft_joints=soft.joints,
            findings=(*self.findings, *soft.findings),
            workings={**self.workings, **soft.workings},
        )

    def _chosen(self) -> tuple[ChosenTile, ...]:
        if self.tiling.tile is not None:
            return (self.tiles[self.tiling.tile],)
        repeat = next(item for item in self.job.repeats if item.id == self.tiling.repeat)
        return tuple(self.tiles[name] for name in dict.fromkeys(piece.tile for piece in repeat.pieces))

    def _joint(self, tile: ChosenTile) -> int:
        choice = tile_joint(
            tile,
            self.tiling,
            self.rules,
            kind=self.surface.kind,
            tape=self.job.tape,
            where=f"{self.surface.title or self.surface.id}, tile {tile.id}",
        )
        self.findings += choice.findings
        self.workings |= choice.workings
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
            return (judge_start(self.cell, self.field, (to_mm(given.left), to_mm(given.up)), self.rules),)
        starts = find_starts(self.cell, self.field, self.rules, level=level)
        if level is None:
            return starts
        words = f"{starts[0].words}; courses run on round the corners"
        return (replace(starts[0], words=words), *starts[1:])

    def _banded(self, main: Laying, joint_mm: float) -> tuple[Laying, ...]:
        bands = [
            Band(
                cell=repeat_cell("stacked", (self.tiles[band.tile],), joint_mm),
                bottom=to_mm(band.bottom),
                courses=band.courses,
            )
            for band in self.tiling.bands
        ]
        return with_bands(main, bands)

    def _lines(self, main: Laying) -> tuple[SnapLine, ...]:
        return snap_lines(self.surface, main.area, main.cell, main.shift, before=self.before, tape=self.job.tape)

    def _area(self, laying: Laying, joint: int, starts: Sequence[Start], lines: tuple[SnapLine, ...]) -> TiledArea:
        return TiledArea(
            pattern=self.tiling.pattern,
            tiles=tuple(dict.fromkeys(piece.tile for piece in laying.cell.pieces)),
            area=areas(laying.area),
            joint=joint,
            angle=self.tiling.angle,
            step_a=_rounded(laying.cell.step_a),
            step_b=_rounded(laying.cell.step_b),
            starts=tuple(
                StartPoint(
                    origin=(ticks_from_mm(start.shift[0]), ticks_from_mm(start.shift[1])),
                    smallest_cut=ticks_from_mm(start.smallest_cut),
                    cut_tiles=start.cut_tiles,
                    slack=ticks_from_mm_floor(max(start.slack, 0.0)),
                    words=start.words,
                )
                for start in starts or (_continued(laying.shift),)
            ),
            lines=lines,
        )


def _problem(item: ToTile, error: InputValueError) -> InputProblem:
    return InputProblem(file="job", line=0, column=0, field=item.field, message=str(error))


def _levels(tilers: Sequence[_Tiler], rules: RuleSet) -> dict[str, float]:
    """The level of a course by surface, where several walls of a room keep the same courses."""
    alike: dict[tuple[object, ...], list[_Tiler]] = {}
    for tiler in tilers:
        if tiler.courses is not None:
            alike.setdefault(tiler.courses, []).append(tiler)
    found: dict[str, float] = {}
    for walls in alike.values():
        level = common_level([(wall.cell, wall.field) for wall in walls], rules) if len(walls) > 1 else None
        if level is not None:
            found |= {wall.surface.id: level for wall in walls}
    return found


def _continued(shift: XY) -> Start:
    words = "continues the courses below"
    return Start(shift=shift, smallest_cut=0, slack=0, cut_tiles=0, whole_tiles=0, penalty=0, words=words)


def _rounded(step: XY) -> XY:
    return round(step[0], 6), round(step[1], 6)


def _stock(tile: ChosenTile, joint: int) -> TileStock:
    # A hexagon is laid as a regular one, whatever was measured across its corners.
    across = round(tile.size[0] * 2 / math.sqrt(3)) if tile.shape == "hexagon" else tile.size[1]
    return TileStock(
        id=tile.id,
        size=(tile.size[0], across),
        thickness=tile.thickness,
        kind=tile.kind,
        shape=tile.shape,
        edges=tile.edges,
        joint=joint,
        directional=tile.directional,
        sheet=tile.sheet,
        per_box=tile.per_box,
        price=tile.price,
    )


def _ticks(points: Sequence[XY]) -> Ring:
    return as_ring((ticks_from_mm(x), ticks_from_mm(y)) for x, y in points)


def _cut_from(
    laid: Sequence[_Laid], stock: Sequence[TileStock], rules: RuleSet
) -> tuple[dict[str, tuple[Tile, ...]], dict[str, Working]]:
    """Every surface's tiles with the whole tile each cut comes from; all surfaces of the job share tiles."""
    kerf_mm = to_mm(rules.ticks("tiling.kerf"))
    places: dict[tuple[str, int], tuple[str, Ring]] = {}
    workings: dict[str, Working] = {}
    for item in stock:
        cut = [
            (found.surface.id, index, tile)
            for found in laid
            for index, tile in enumerate(found.tiles)
            if tile.tile == item.id and not tile.whole
        ]
        shared = share(
            [tile for _, _, tile in cut],
            (to_mm(item.size[0]), to_mm(item.size[1])),
            kerf=kerf_mm,
            hexagon=item.shape == "hexagon",
            directional=item.directional,
        )
        for (surface_id, index, _), place in zip(cut, shared.places, strict=True):
            places[surface_id, index] = (f"{item.id} {place.source}", counter_clockwise(_ticks(place.outline)))
        workings[f"cut tiles {item.id}"] = Working(
            title=f"Whole tiles of {item.id} that are cut",
            formula="each cut piece from the first tile it fits in, largest first, a saw's cut between pieces",
            values={
                "cut pieces": str(len(cut)),
                "saw's cut": f"{kerf_mm:.2f} mm",
                "fewest that any cutting needs": str(shared.lower_bound),
            },
            result=str(shared.sources),
            unit="tiles",
            source=rules.entry("tiling.kerf").source,
        )
    return {found.surface.id: _placed(found, places) for found in laid}, workings


def _placed(found: _Laid, places: Mapping[tuple[str, int], tuple[str, Ring]]) -> tuple[Tile, ...]:
    marks: dict[tuple[object, ...], str] = {}
    tiles = []
    for index, tile in enumerate(found.tiles):
        source, cut = places.get((found.surface.id, index), ("", ()))
        outline = counter_clockwise(_ticks(list(tile.shape.exterior.coords)[:-1]))
        mark = ""
        if not tile.whole:
            alike = (tile.tile, abs(area2(outline)) // _ALIKE_TICKS2, *_sides(outline))
            mark = marks.setdefault(alike, _letters(len(marks)))
        tiles.append(
            Tile(
                id=f"{found.surface.id}/tile {index + 1}",
                outline=outline,
                holes=tuple(clockwise(_ticks(list(hole.coords)[:-1])) for hole in tile.shape.interiors),
                whole=tile.whole,
                from_=source,
                stock=tile.tile,
                laid=() if tile.whole else counter_clockwise(_ticks(tile.laid)),
                cut=cut,
                mark=mark,
            )
        )
    return tuple(tiles)


def _sides(ring: Ring) -> tuple[int, ...]:
    """Lengths of an outline's sides in sixteenths of an inch or so, the longest first: alike for pieces alike."""
    lengths = (math.hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(ring, ring[1:] + ring[:1], strict=True))
    return tuple(sorted((round(length / _ALIKE_TICKS) for length in lengths), reverse=True))


def _letters(number: int) -> str:
    """a, b, ... z, aa, ab, ..."""
    text = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        text = _LETTERS[rest] + text
    return text
