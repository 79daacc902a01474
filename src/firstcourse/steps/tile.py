"""Tile every surface that the job asks for: courses that walls share, the tile bought, what each cut is from."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from firstcourse.details import Linings, linings_of
from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.findings import Finding
from firstcourse.job import ChosenTile, Job, Tiling
from firstcourse.layers import laid_size, tile_layers, tiling_tile
from firstcourse.plan import (
    Stock,
    Surface,
    SurfaceKind,
    SurfaceLayer,
    TileStock,
)
from firstcourse.reuse import ONCE, Steps
from firstcourse.rules import RuleSet
from firstcourse.survey import SurveyResult
from firstcourse.tiles import (
    LaidSurface,
    Snapped,
    SurfaceTiler,
    ToTile,
    as_laid,
    common_level,
    cut_from,
    depth_before,
    lines_over,
    surfaces_to_tile,
    upright_findings,
    with_marks,
)
from firstcourse.units import to_mm
from firstcourse.workings import Working, by_id


@dataclass(frozen=True, slots=True, kw_only=True)
class TiledJob:
    """All surfaces with their tile, and what the tiling has to say.

    Attributes:
        snapped: By surface the pattern that its lines are snapped for.
    """

    surfaces: tuple[Surface, ...]
    snapped: Mapping[str, Snapped] = field(default_factory=dict)
    stock: tuple[TileStock, ...] = ()
    findings: tuple[Finding, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)


def tile_job(
    job: Job,
    survey: SurveyResult,
    surfaces: Sequence[Surface],
    stock: Mapping[SurfaceKind, tuple[Stock, ...]],
    rules: RuleSet,
    *,
    steps: Steps = ONCE,
    cuts: bool = True,
) -> TiledJob:
    """Tile the surfaces of a job.

    Args:
        job: The job.
        survey: For how sure the rooms' corners are.
        surfaces: Boarded surfaces, and others that take tile.
        stock: Sheets by what they serve.
        rules: Rules in force.
        steps: Does what is done for each surface, or reuses it.
        cuts: Whether to say what each piece is cut from, and to mark the pieces.

    Raises:
        JobError: A pattern that the tile cannot make, more tiles than any job has, or a joint past its room.
    """
    asked = {item.surface_id: item for item in surfaces_to_tile(job)}
    unsure = {room.name: max(room.adjustment.uncertainty_mm.values(), default=0.0) for room in survey.rooms}
    plans = {room.name: room.plan for room in survey.rooms}
    linings = linings_of(job, survey, surfaces, stock, rules)
    parts = {line.lining.surface.id: line for line in linings.lines}
    asked |= {name: line.item for name, line in parts.items()}
    surfaces = (
        *(_with_linings(surface, linings, asked) for surface in surfaces),
        *(line.lining.surface for line in linings.lines),
    )
    tilers: dict[str, SurfaceTiler] = {}
    laid: dict[str, LaidSurface] = {}
    problems: list[InputProblem] = []
    for surface in surfaces:
        item = asked.get(surface.id)
        if item is None:
            continue
        try:
            line = parts.get(surface.id)
            if line is None:
                reaching = _reaching(surface, surfaces)
                before = depth_before(surface, item.room, stock[SurfaceKind.WALL], job, rules, reaching)
            else:
                before = line.lining.before
            over = lines_over(item, surface, plans[surface.room], rules, job.tape)
            tilers[surface.id] = SurfaceTiler(
                surface, item, job, rules, before, over, unsure[surface.room], line, steps=steps
            )
        except InputValueError as error:
            problems.append(_problem(item, error))
        except JobError as error:
            problems += error.problems
    levels = _levels(tuple(tilers.values()), rules)
    for name, tiler in tilers.items():
        try:
            part = parts.get(name)
            laid[name] = tiler.laid(levels.get(name), None if part is None else tilers.get(part.follows))
        except InputValueError as error:
            problems.append(_problem(tiler.item, error))
    if problems:
        raise JobError(tuple(problems))
    used = {name for found in laid.values() for area in found.tiled for name in area.tiles}
    joints = {name: area.joint for found in laid.values() for area in found.tiled for name in area.tiles}
    chosen = tuple(_stock(tile, joints[tile.id]) for tile in job.tiles if tile.id in used)
    placed = {name: found.tiles for name, found in laid.items()}
    cut, shared = cut_from(placed, chosen, rules) if cuts else (as_laid(placed), ())
    known = {item.id: item for item in chosen}
    tiled = tuple(
        _marked(
            surface.model_copy(
                update={
                    "tiles": cut[surface.id],
                    "tiled": laid[surface.id].tiled,
                    "soft_joints": laid[surface.id].soft_joints,
                    "tile_exposure": asked[surface.id].exposure,
                    "layers": _lining_layers(job, asked[surface.id], rules)
                    if surface.id in parts
                    else surface.layers,
                }
            ),
            known,
            rules,
            steps,
            cuts=cuts,
        )
        if surface.id in laid
        else surface
        for surface in surfaces
    )
    return TiledJob(
        surfaces=tiled,
        snapped={name: found.snapped for name, found in laid.items() if found.snapped is not None},
        stock=chosen,
        findings=tuple(
            dict.fromkeys(
                [
                    *upright_findings(job.tiles, _tilings(surfaces, asked)),
                    *linings.findings,
                    *(finding for found in laid.values() for finding in found.findings),
                ]
            )
        ),
        workings=by_id(
            (*(working for found in laid.values() for working in found.workings), *linings.workings, *shared)
        ),
    )


def _marked(
    surface: Surface, known: Mapping[str, TileStock], rules: RuleSet, steps: Steps, *, cuts: bool
) -> Surface:
    """A surface with the marks of its cut tiles; what each is cut from, which walls share, changes none."""
    if not cuts:
        return surface
    bare = tuple(tile.model_copy(update={"from_": "", "cut": ()}) for tile in surface.tiles)
    marked = steps.do(with_marks, surface.model_copy(update={"tiles": bare}), known, rules)
    tiles = tuple(
        tile.model_copy(update={"fit": found.fit, "mark": found.mark})
        for tile, found in zip(surface.tiles, marked.tiles, strict=True)
    )
    return surface.model_copy(update={"tiles": tiles})


def _with_linings(surface: Surface, linings: Linings, asked: Mapping[str, ToTile]) -> Surface:
    """A surface with the names of its linings and with what stands before it."""
    own = tuple(line.lining.surface.id for line in linings.lines if line.lining.surface.part_of == surface.id)
    taken = linings.taken.get(surface.id, ()) if surface.id in asked else ()
    return surface.model_copy(update={"linings": own, "not_tiled": taken})


def _lining_layers(job: Job, item: ToTile, rules: RuleSet) -> tuple[SurfaceLayer, ...]:
    tile = tiling_tile(job, item.tiling)
    return () if tile is None else tile_layers(tile, rules)


def _tilings(surfaces: Sequence[Surface], asked: Mapping[str, ToTile]) -> list[tuple[str, Tiling]]:
    """How each surface of its own is tiled; those that line it lie as it does."""
    return [
        (surface.id, asked[surface.id].tiling)
        for surface in surfaces
        if surface.id in asked and not surface.part_of
    ]


def _reaching(floor: Surface, surfaces: Sequence[Surface]) -> frozenset[str]:
    """Walls of which a floor takes up the lower part, so that its tile ends at their boards."""
    return frozenset(
        "-".join(wall.corners) for wall in surfaces if any(zone.why == floor.id for zone in wall.not_tiled)
    )


def _problem(item: ToTile, error: InputValueError) -> InputProblem:
    return InputProblem(file="job", line=0, column=0, field=item.field, message=str(error))


def _levels(tilers: Sequence[SurfaceTiler], rules: RuleSet) -> dict[str, float]:
    """The level of a course by surface, where several walls of a room keep the same courses."""
    alike: dict[tuple[object, ...], list[SurfaceTiler]] = {}
    for tiler in tilers:
        # A wall that leaves nothing to tile is refused by itself, in words of its own.
        if tiler.courses is not None and not tiler.searched.area.is_empty:
            alike.setdefault(tiler.courses, []).append(tiler)
    found: dict[str, float] = {}
    for walls in alike.values():
        over = [to_mm(wall.surface.datum) for wall in walls]
        level = (
            common_level([(wall.cell, wall.searched) for wall in walls], rules, over=over)
            if len(walls) > 1
            else None
        )
        if level is not None:
            found |= {wall.surface.id: level - above for wall, above in zip(walls, over, strict=True)}
    return found


def _stock(tile: ChosenTile, joint: int) -> TileStock:
    return TileStock(
        id=tile.id,
        size=laid_size(tile),
        thickness=tile.thickness,
        kind=tile.kind,
        shape=tile.shape,
        edges=tile.edges,
        joint=joint,
        directional=tile.directional,
        sheet=tile.sheet,
        per_box=tile.per_box,
        price=tile.price,
        wet_friction=tile.wet_friction,
    )
