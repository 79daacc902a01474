"""From a job and its survey to the judgement whether frame, panels and surfaces will carry tile."""

import math
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

from firstcourse.errors import InputValueError, RuleNotFoundError
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.job import (
    BoardedFloor,
    BoardedWall,
    FloorFraming,
    Job,
    JoistCut,
    Joists,
    Panels,
    Room,
    WallFraming,
    WallStuds,
    problems_placed,
    read_job,
)
from firstcourse.plan import HeightMark, Stock, StructureSheet, Surface, SurfaceKind
from firstcourse.planning.layers import floor_layers, laid_tile
from firstcourse.planning.sheets import allowed_stock, job_stock
from firstcourse.planning.structure import keyed_workings, structure_sheets
from firstcourse.planning.surfaces import exposed_surfaces, judge_surface
from firstcourse.rules import Override, RuleSet, load_rules
from firstcourse.suitability import (
    Cut,
    ExposedSurface,
    Finish,
    FloorInput,
    JudgeInput,
    Panel,
    PointLoad,
    Remedy,
    SteelStud,
    Studs,
    WallInput,
    judge,
    lumber,
)
from firstcourse.suitability.joists import SisterPart
from firstcourse.suitability.panels import thickness_in
from firstcourse.survey import SurveyResult, survey_job
from firstcourse.units import TICKS_PER_INCH, to_inches
from firstcourse.workings import Working

_ORDER = {Severity.STOP: 0, Severity.FIX: 1, Severity.NOTE: 2}
_CAUTIONS = ("safety.caution.structure", "safety.caution.engineer")
_WHOLE_JOB = "whole job"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobJudgement:
    """What was judged of a job, and how.

    Attributes:
        job: The job's name.
        practice: Whose rules apply.
        date: Day for which they are read, ISO 8601.
        judged: Places of which frame or exposure was judged.
        findings: Worst first; what was not judged and the engineer's boundary last.
        workings: `suitability.<surface id>.<number>` to the working of a check, in the order of the checks.
        remedies: Each failing floor's place with its computed options, best first.
        structures: The sheets of every frame that was judged.
        cautions: What stands on every page that shows a structural result.
        heights: Surface id to its readings for flatness, each with what to do there.
    """

    job: str
    practice: str
    date: str
    judged: tuple[str, ...]
    findings: tuple[Finding, ...]
    workings: dict[str, Working]
    remedies: tuple[tuple[str, tuple[Remedy, ...]], ...]
    structures: tuple[StructureSheet, ...]
    cautions: tuple[str, ...]
    heights: dict[str, tuple[HeightMark, ...]]


@dataclass(slots=True)
class _Asked:
    """What one surface gives to be judged, what it leaves out, and what was taken for it."""

    floors: tuple[FloorInput, ...] = ()
    walls: tuple[WallInput, ...] = ()
    surfaces: tuple[ExposedSurface, ...] = ()
    missing: tuple[str, ...] = ()
    notes: tuple[Finding, ...] = ()


def judge_file(path: Path) -> JobJudgement:
    """Read a job document and judge it.

    Raises:
        JobError: The document or its readings cannot be used.
        InputValueError: A rule is overridden that does not exist.
    """
    job = read_job(path)
    overrides = tuple(Override(rule=c.rule, value=c.value, reason=c.reason) for c in job.rules)
    rules = load_rules(job.date, job.practice, overrides)
    with problems_placed(path):
        return judge_job(job, survey_job(job, rules), rules)


def judge_job(job: Job, survey: SurveyResult, rules: RuleSet) -> JobJudgement:
    """Judge every surface of a job as far as the job says what it is made of.

    Args:
        job: The job document.
        survey: Its adjusted rooms and surfaces.
        rules: The rules in force.

    Returns:
        The judgement. Where a surface says too little a note tells what was not judged; what the rule book cannot
        judge stops the work rather than passing.
    """
    stock = job_stock(job, rules)
    surfaces = {surface.id: surface for surface in survey.surfaces}
    taped = {room.name: room for room in survey.rooms}
    judged: list[str] = []
    findings: list[Finding] = []
    workings: dict[str, Working] = {}
    remedies: list[tuple[str, tuple[Remedy, ...]]] = []
    structures: list[StructureSheet] = []
    heights: dict[str, tuple[HeightMark, ...]] = {}
    for room in job.rooms:
        untold = []
        for name in _surface_ids(room):
            surface = surfaces[name]
            place = _place(surface)
            where = f"{room.name}, {place}"
            usable = allowed_stock(surface, stock)
            try:
                asked = _asked(job, room, surface, where, usable, rules)
                inputs = JudgeInput(floors=asked.floors, walls=asked.walls, surfaces=asked.surfaces)
                done = judge(inputs, rules)
                side = judge_surface(job, room, taped[room.name], surface, where, usable, rules)
            except (InputValueError, RuleNotFoundError) as error:
                findings.append(_unjudgeable(where, error))
                continue
            if asked.missing or side.missing:
                untold.append(f"{place} ({', '.join((*asked.missing, *side.missing))})")
            if asked.floors or asked.walls or asked.surfaces or side.judged:
                judged.append(where)
            findings += [*asked.notes, *done.findings, *side.findings]
            workings |= keyed_workings(surface.id, done.members)
            for _place_of, options in done.remedies:
                remedies.append((where, options))
                workings[f"suitability.{surface.id}.remedies"] = _remedies_working(where, options)
            ranked = f"suitability.{surface.id}.remedies" if done.remedies else ""
            structures += structure_sheets(surface, done.members, ranked)
            workings |= {f"suitability.{surface.id}.{name}": working for name, working in side.workings.items()}
            if side.heights:
                heights[surface.id] = side.heights
            if side.remedies:
                flattened = f"{where}: flatness"
                remedies.append((flattened, side.remedies))
                workings[f"suitability.{surface.id}.flatness.remedies"] = _remedies_working(
                    flattened, side.remedies
                )
        if untold:
            findings.append(_untold(room.name, untold))
    return JobJudgement(
        job=job.name,
        practice=job.practice,
        date=job.date.isoformat(),
        judged=tuple(judged),
        findings=_ordered(findings),
        workings=workings,
        remedies=tuple(remedies),
        structures=tuple(structures),
        cautions=tuple(rules.text(rule) for rule in _CAUTIONS),
        heights=heights,
    )


def _surface_ids(room: Room) -> tuple[str, ...]:
    floor = (f"{room.name}/floor",) if room.floor is not None else ()
    ceiling = (f"{room.name}/ceiling",) if room.ceiling is not None else ()
    return (*floor, *(f"{room.name}/wall/{wall.wall}" for wall in room.walls), *ceiling)


def _place(surface: Surface) -> str:
    return f"wall {'-'.join(surface.corners)}" if surface.kind is SurfaceKind.WALL else surface.kind.value


def _asked(job: Job, room: Room, surface: Surface, where: str, stock: tuple[Stock, ...], rules: RuleSet) -> _Asked:
    if surface.kind is SurfaceKind.FLOOR and room.floor is not None:
        asked, exposure = _floor(job, room.floor, where, stock, rules), room.floor.exposure
    elif surface.kind is SurfaceKind.WALL:
        wall = next(wall for wall in room.walls if wall.wall == "-".join(surface.corners))
        asked, exposure = _wall(wall, surface, where, rules), wall.exposure
    else:
        asked = _Asked(missing=("its frame is not judged here",))
        exposure = room.ceiling.exposure if room.ceiling is not None else None
    if exposure is None:
        asked.missing = (*asked.missing, "exposure")
    else:
        asked.surfaces = exposed_surfaces(job, room, surface, exposure, where, stock)
    return asked


def _wall(wall: BoardedWall, surface: Surface, where: str, rules: RuleSet) -> _Asked:
    spacing = _spacing(wall.framing)
    if wall.studs is None or spacing is None:
        return _Asked(missing=("studs",) if wall.studs is None else ("spacing of the studs",))
    _, low, _, high = bounds(surface.extent or surface.outline)
    return _Asked(
        walls=(WallInput(where=where, studs=_studs(wall.studs, high - low, spacing, rules)),),
    )


def _studs(studs: WallStuds, wall_height: int, spacing: int, rules: RuleSet) -> Studs:
    height, apart = to_inches(studs.height or wall_height), to_inches(spacing)
    if studs.steel is not None:
        steel = SteelStud(depth_in=to_inches(studs.steel), mils=studs.mils)
        return Studs(height_in=height, spacing_in=apart, steel=steel)
    return Studs(
        height_in=height, spacing_in=apart, wood=lumber(rules, studs.size or "", studs.species, studs.grade)
    )


def _floor(job: Job, floor: BoardedFloor, where: str, stock: tuple[Stock, ...], rules: RuleSet) -> _Asked:
    spacing = None if floor.framing is None else _spacing(floor.framing)
    tile = laid_tile(job, floor)
    wanted = (
        ("spacing of the joists", spacing),
        ("joists", floor.joists),
        ("panels", floor.panels),
        ("tile", tile),
    )
    if spacing is None or floor.joists is None or floor.panels is None or tile is None:
        return _Asked(missing=tuple(name for name, value in wanted if value is None))
    joists = floor.joists
    panel, notes = _panel(floor.panels, where, rules)
    return _Asked(
        floors=(
            FloorInput(
                where=where,
                span_in=to_inches(joists.span),
                spacing_in=to_inches(spacing),
                panel=panel,
                layers=floor_layers(tile, floor.tile, stock, rules),
                finish=Finish.STONE if tile.stone else Finish.CERAMIC,
                size=joists.size,
                species=joists.species,
                grade=joists.grade,
                stiffness=joists.ei_lb_in2,
                plies=2 if joists.sistered == "full" else 1,
                continuous=joists.continuous,
                bearing_in=_inches(joists.bearing),
                points=tuple(PointLoad(load_lb=load.load_lb, at_in=to_inches(load.at)) for load in joists.loads),
                cuts=tuple(_cut(cut) for cut in joists.cuts),
                sister=_part_sister(joists, rules),
            ),
        ),
        notes=notes,
    )


def _part_sister(joists: Joists, rules: RuleSet) -> SisterPart | None:
    return SisterPart(share=rules.number("remedy.sister_part.share")) if joists.sistered == "part" else None


def _cut(cut: JoistCut) -> Cut:
    return Cut(
        kind=cut.kind,
        size_in=to_inches(cut.size),
        at_in=to_inches(cut.at),
        length_in=to_inches(cut.length or 0),
        edge_in=math.inf if cut.edge is None else to_inches(cut.edge),
    )


def _spacing(framing: FloorFraming | WallFraming) -> int | None:
    """Centre to centre, of members as found the widest [ticks]; None where there are fewer than two."""
    if framing.spacing is not None:
        return framing.spacing
    places = sorted(member.at for member in framing.members)
    return max((after - before for before, after in pairwise(places)), default=None)


def _panel(panels: Panels, where: str, rules: RuleSet) -> tuple[Panel, tuple[Finding, ...]]:
    """The panel layers by the names the rule book has; a thickness between two of them counts as the thinner.

    Raises:
        InputValueError: A layer is thinner than all the rule book has.
    """
    known = sorted((_thickness(entry.id) for entry in rules.under("panel.ei.")), key=thickness_in)
    layers, notes = [], []
    for layer in panels.layers:
        exact = Fraction(layer, TICKS_PER_INCH)
        fitting = [name for name in known if thickness_in(name) <= exact]
        if known and not fitting:
            raise InputValueError(
                f"a panel layer of {float(exact):.3g} in is thinner than {known[0]} in, the least in the rule book"
            )
        # A practice without panel values is refused by the judgement itself, with the rule that is missing.
        name = fitting[-1] if fitting else str(exact)
        layers.append(name)
        if fitting and thickness_in(name) != exact:
            notes.append(
                Finding(
                    code="SUI-204",
                    severity=Severity.NOTE,
                    where=where,
                    message=f"A panel layer of {float(exact):.3g} in counts as {name} in, "
                    "the next thinner one in the rule book.",
                )
            )
    return Panel(layers=tuple(layers), glued_and_screwed=panels.glued_and_screwed), tuple(notes)


def _thickness(rule: str) -> str:
    """`panel.ei.1_1_8` as `1-1/8`."""
    *whole, top, bottom = rule.removeprefix("panel.ei.").split("_")
    return "-".join((*whole, f"{top}/{bottom}"))


def _inches(length: int | None) -> float | None:
    return None if length is None else to_inches(length)


def _remedies_working(where: str, options: tuple[Remedy, ...]) -> Working:
    return Working(
        title=f"{where}: remedies, each computed through every check",
        formula="ranked by height, then material, then labour, in relative figures",
        values={option.what.rstrip("."): remedy_text(option) for option in options},
        result=str(sum(option.passes for option in options)),
        unit="options that pass",
        source="house assumption (rules remedy.*); a help to choose, not a price",
    )


def remedy_text(option: Remedy) -> str:
    """What one option costs in height, material and labour, and what it leaves failing."""
    verdict = "passes" if option.passes else f"does not pass: {', '.join(option.still_failing)}"
    return (
        f"{verdict}; height {option.height_in:+.3g} in, material {option.material:g}, labour {option.labour_h:g}"
    )


def _untold(room: str, untold: list[str]) -> Finding:
    return Finding(
        code="SUI-910",
        severity=Severity.NOTE,
        where=room,
        message=f"Not judged: {'; '.join(untold)}.",
        remedy="Enter what stands in brackets, and `firstcourse judge` says whether they will carry tile.",
    )


def _unjudgeable(where: str, error: Exception) -> Finding:
    return Finding(
        code="SUI-902",
        severity=Severity.STOP,
        where=where,
        message=f"Not judged: {error}.".replace("..", "."),
        remedy="Mend the entry, or have an engineer judge it by the local code.",
    )


def _ordered(findings: list[Finding]) -> tuple[Finding, ...]:
    """Worst first, each once; what holds for the whole job, the engineer's boundary, stands last."""
    once = dict.fromkeys(findings)
    return tuple(sorted(once, key=lambda finding: (_ORDER[finding.severity], finding.where == _WHOLE_JOB)))
