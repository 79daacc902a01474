"""From a job and its survey to the judgement whether frame, panels and surfaces will carry tile."""

from dataclasses import dataclass, field, replace

from firstcourse.errors import InputValueError, RuleNotFoundError
from firstcourse.findings import Finding, Severity
from firstcourse.frames import (
    NO_FRAME_RULES,
    FloorGround,
    Remedy,
    asked_frame,
    judge,
    judge_askew,
    remedy_workings,
    structure_sheet,
)
from firstcourse.grounds import (
    SurfaceSide,
    boarded_m2,
    exposed_surfaces,
    judge_exposure,
    judge_steam_room,
    judge_surface,
)
from firstcourse.job import (
    BoardedCeiling,
    BoardedFloor,
    BoardedWall,
    Exposure,
    Job,
    Room,
)
from firstcourse.plan import HeightMark, Stock, StructureSheet, Surface, SurfaceKind
from firstcourse.rules import RuleSet, load_rules
from firstcourse.sheets import allowed_stock, job_stock
from firstcourse.showers import judge_bed_floor, shower_floors
from firstcourse.steps.rule_notes import borrowed_values, rule_notes
from firstcourse.survey import SurveyResult, benches_at_walls, survey_job
from firstcourse.units import Tape
from firstcourse.values import Name, Word
from firstcourse.workings import Working, by_id

_ORDER = {Severity.STOP: 0, Severity.FIX: 1, Severity.NOTE: 2}
_CAUTIONS = ("safety.caution.structure", "safety.caution.engineer")
_WHOLE_JOB = ("job",)
_BED = "made_by_bed"
"""What stands for the flatness of a floor whose heights the bed of its shower makes."""
_MM_PER_IN = 25.4


@dataclass(frozen=True, slots=True, kw_only=True)
class JobJudgement:
    """What was judged of a job, and how.

    Attributes:
        job: The job's name.
        practice: Whose rules apply.
        date: Day for which they are read, ISO 8601.
        tape: Of the job.
        judged: Places of which frame or exposure was judged.
        findings: Worst first; what was not judged and the engineer's boundary last.
        workings: By their keys.
        remedies: Each failing place, by reference, with its computed options, best first.
        structures: The sheets of every frame that was judged.
        cautions: What stands on every page that shows a structural result.
        heights: Surface id to its readings for flatness, each with what to do there.
        changes: Rules that the job sets otherwise than the book.
        sources: By rule id, its source as printed.
    """

    job: str
    practice: str
    date: str
    tape: Tape
    tongue: str
    judged: tuple[str, ...]
    findings: tuple[Finding, ...]
    workings: dict[str, Working]
    remedies: tuple[tuple[str, tuple[Remedy, ...]], ...]
    structures: tuple[StructureSheet, ...]
    cautions: tuple[str, ...]
    heights: dict[str, tuple[HeightMark, ...]]
    changes: tuple[str, ...] = ()
    sources: dict[str, str] = field(default_factory=dict)


def judge_alone(job: Job) -> JobJudgement:
    """Judge a job by itself, before it is planned; with it what it rests on of other practices and changes.

    Args:
        job: The job document.

    Raises:
        JobError: The readings do not fix a room.
        InputValueError: A rule is overridden that does not exist.
    """
    rules = load_rules(job.date, job.practice, job.overrides())
    survey = survey_job(job, rules)
    done = judge_job(benches_at_walls(job, survey.rooms, rules), survey, rules)
    told = borrowed_values(rule_notes(rules), job.practice)
    return replace(done, findings=(*done.findings, *told), changes=rules.changes(), sources=rules.sources())


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
    # A shower that takes a whole floor stands for it: nothing is boarded there, but the frame carries its bed.
    surfaces = {f"{shower.surface.room}/floor": shower.surface for shower in survey.showers}
    surfaces |= {surface.id: surface for surface in survey.surfaces}
    taped = {room.name: room for room in survey.rooms}
    showers = {shower.surface.room: shower for shower in survey.showers}
    bedded = _bedded(job, survey, stock, rules)
    judged: list[str] = []
    findings: list[Finding] = []
    workings: dict[str, Working] = {}
    remedies: list[tuple[str, tuple[Remedy, ...]]] = []
    structures: list[StructureSheet] = []
    heights: dict[str, tuple[HeightMark, ...]] = {}
    for room in job.rooms:
        untold: dict[tuple[str, ...], list[str]] = {}
        for name in _surface_ids(room):
            surface = surfaces[name]
            place = _place(surface)
            where = f"{room.name}, {place}"
            findings += judge_askew(surface)
            usable = allowed_stock(surface, stock)
            try:
                exposure = _exposure(room, surface)
                exposed = () if exposure is None else exposed_surfaces(job, room, surface, exposure, usable)
                bed = surface.id != name
                if not bed:
                    side = judge_surface(job, room, taped[room.name], surface, usable, rules)
                elif (fall := bedded[room.name].fall) is not None:
                    side = judge_bed_floor(room, fall, taped[room.name].plan, surface.id, rules, job.tape)
                else:
                    side = SurfaceSide()
                ground = FloorGround(
                    plan=taped[room.name].plan,
                    shower=showers.get(room.name),
                    bedded=bedded.get(room.name),
                    all_bed=bed,
                    filled_l=side.filled_l,
                    filled_m2=boarded_m2(surface),
                )
                frame = asked_frame(job, room, surface, usable, rules, ground)
                done = judge(frame.inputs, rules)
                materials = [finding for each in exposed for finding in judge_exposure(rules, each)]
            except (InputValueError, RuleNotFoundError) as error:
                findings.append(_unjudgeable(surface.id, error))
                continue
            missing = (*frame.missing, *(("wants_exposure",) if exposure is None else ()), *side.missing)
            for wanted in (missing, (_BED,) if bed else ()):
                if wanted:
                    untold.setdefault(wanted, []).append(surface.id)
            if frame.judged or exposed or side.judged:
                judged.append(where)
            findings += [*frame.notes, *done.findings, *materials, *side.findings]
            remedies += done.remedies
            ranked = [working for each in done.remedies for working in remedy_workings(*each)]
            structures += [structure_sheet(member, ranked) for member in done.members]
            workings |= by_id((*done.workings, *ranked, *side.workings))
            if side.heights:
                heights[surface.id] = side.heights
            if side.remedies:
                remedies.append((f"{surface.id}/flatness", side.remedies))
                workings |= by_id(remedy_workings(surface.id, side.remedies, "ground-remedy"))
        findings += judge_steam_room(job, room, taped[room.name], rules)
        findings += [_untold(room.name, refs, wanted) for wanted, refs in untold.items()]
    return JobJudgement(
        job=job.name,
        practice=job.practice,
        date=job.date.isoformat(),
        tape=job.tape,
        tongue=job.tongue,
        judged=tuple(judged),
        findings=_ordered(findings),
        workings=workings,
        remedies=tuple(remedies),
        structures=tuple(structures),
        cautions=tuple(rules.text(rule) for rule in _CAUTIONS),
        heights=heights,
    )


def _bedded(
    job: Job, survey: SurveyResult, stock: dict[SurfaceKind, tuple[Stock, ...]], rules: RuleSet
) -> dict[str, Surface]:
    """Shower floors with their falls and layers, by their rooms: those on joists, or that take a whole room."""
    boarded = {surface.id for surface in survey.surfaces}
    needed = {
        room.name
        for room in job.rooms
        if room.floor is not None and (room.floor.joists is not None or f"{room.name}/floor" not in boarded)
    }
    if all(shower.surface.room not in needed for shower in survey.showers):
        return {}
    floors = shower_floors(job, survey, survey.surfaces, stock, rules).surfaces
    return {floor.room: floor for floor in floors}


def _surface_ids(room: Room) -> tuple[str, ...]:
    floor = (f"{room.name}/floor",) if room.floor is not None else ()
    ceiling = (f"{room.name}/ceiling",) if room.ceiling is not None else ()
    return (*floor, *(f"{room.name}/wall/{wall.wall}" for wall in room.walls), *ceiling)


def _place(surface: Surface) -> str:
    return f"wall {'-'.join(surface.corners)}" if surface.kind is SurfaceKind.WALL else surface.kind.value


def _exposure(room: Room, surface: Surface) -> Exposure | None:
    part: BoardedFloor | BoardedWall | BoardedCeiling | None
    if surface.kind is SurfaceKind.WALL:
        part = next(wall for wall in room.walls if wall.wall == "-".join(surface.corners))
    else:
        part = room.floor if surface.kind is SurfaceKind.FLOOR else room.ceiling
    return None if part is None else part.exposure


def _untold(room: str, refs: list[str], wanted: tuple[str, ...]) -> Finding:
    """That surfaces are not judged because the job or the rule book leaves something out, and what to do."""
    remedies = []
    if NO_FRAME_RULES in wanted:
        remedies.append("engineer")
    if set(wanted) - {NO_FRAME_RULES, _BED}:
        remedies.append("enter")
    return Finding(
        code="SUI-910",
        severity=Severity.NOTE,
        at=(room, *refs),
        remedies=tuple(remedies),
        values={"wanted": tuple(Word(word=name) for name in wanted)},
    )


def _unjudgeable(ref: str, error: Exception) -> Finding:
    return Finding(
        code="SUI-902",
        severity=Severity.STOP,
        at=(ref,),
        remedies=("correct",),
        values={"why": Name(name=str(error).rstrip("."))},
    )


def _ordered(findings: list[Finding]) -> tuple[Finding, ...]:
    """Worst first, each once; what holds for the whole job, the engineer's boundary, stands last."""
    once = dict.fromkeys(findings)
    return tuple(sorted(once, key=lambda finding: (_ORDER[finding.severity], finding.at == _WHOLE_JOB)))
