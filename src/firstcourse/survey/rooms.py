"""A job's rooms: adjusted outlines, findings on the readings, and every surface to be boarded."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import LEAST_AREA2, Point, area2, counter_clockwise, is_simple, to_shapely
from firstcourse.job import Job, Room, TiledShower
from firstcourse.plan import Door, Opening, Surface
from firstcourse.reuse import ONCE, Steps
from firstcourse.rules import RuleSet
from firstcourse.survey.advice import UnfixedError
from firstcourse.survey.contradictions import refuse_contradicted, refuse_far_off, refuse_unsettled
from firstcourse.survey.doors import boarded_over, doors_of
from firstcourse.survey.flats import ceiling_surface, floor_joists, floor_openings, floor_surface
from firstcourse.survey.near_walls import near_walls
from firstcourse.survey.network import Adjustment, adjust
from firstcourse.survey.on_framing import on_framing
from firstcourse.survey.room import RoomSurvey, room_workings
from firstcourse.survey.shapes import Reading
from firstcourse.survey.showers import SurveyedShower, shower_of
from firstcourse.survey.standing import near_walls_of_standing
from firstcourse.survey.walls import niches_at_ends, wall_surface
from firstcourse.units import (
    Tape,
    ceil_to,
    ticks_from_mm,
    ticks_from_mm_ceil,
    to_mm,
)
from firstcourse.values import Name, Word, just, length, measure, most
from firstcourse.workings import Working, by_id


@dataclass(frozen=True, slots=True, kw_only=True)
class SurveyResult:
    """All rooms and surfaces of a job, and what the survey has to say.

    Attributes:
        surfaces: What is to be boarded.
        workings: Id, such as `survey-area@hall bath`, to the working of a headline number.
        showers: Shower floors on a bed of their own; they are tiled, not boarded.
        doors: Of every room, by what its floor and its walls say.
    """

    rooms: tuple[RoomSurvey, ...]
    surfaces: tuple[Surface, ...]
    findings: tuple[Finding, ...]
    workings: dict[str, Working]
    showers: tuple[SurveyedShower, ...] = ()
    doors: tuple[Door, ...] = ()


def survey_job(job: Job, rules: RuleSet, *, steps: Steps = ONCE, only: str = "") -> SurveyResult:
    """Adjust every room's readings and unfold its surfaces.

    Args:
        job: The job.
        rules: Rules in force.
        steps: Adjusts the readings, or reuses what came of the same.
        only: Id of the surface that alone is unfolded, without anything said; every surface where empty.

    Raises:
        JobError: Readings that do not fix a room, or things that lie outside it once it is adjusted.
    """
    rooms: list[RoomSurvey] = []
    surfaces: list[Surface] = []
    showers: list[SurveyedShower] = []
    doors: list[Door] = []
    findings: list[Finding] = []
    problems: list[InputProblem] = []
    for index, room in enumerate(job.rooms):
        try:
            survey = steps.do(survey_room, _as_taped(room), job.tape, rules)
            rooms.append(survey)
            shower = None
            if room.floor is not None and room.floor.shower is not None:
                shower = _shower(room, room.floor.shower, survey, job, rules)
                showers.append(shower)
            unfolded = _surfaces(room, survey, job, rules, shower, only)
            surfaces += unfolded
            if not only:
                doors += doors_of(room, survey.plan)
                findings += _findings(room, survey, job.tape, rules)
                findings += _findings_of_things(room, survey, unfolded, shower, job.tape, rules)
        except InputValueError as error:
            within = "diagonals" if isinstance(error, UnfixedError) else error.field
            field = f"rooms[{index + 1}]" + (f".{within}" if within else "")
            problems.append(
                InputProblem(file="job", line=0, column=0, field=f"{field} ({room.name})", message=str(error))
            )
    if problems:
        raise JobError(tuple(problems))
    return SurveyResult(
        rooms=tuple(rooms),
        surfaces=tuple(surfaces),
        findings=tuple(findings),
        workings=by_id(working for room in rooms for working in room_workings(room)),
        showers=tuple(showers),
        doors=tuple(doors),
    )


def _as_taped(room: Room) -> Room:
    """A room with nothing in it: its readings are the same whatever stands there."""
    return room.model_copy(update={"floor": None, "walls": (), "ceiling": None, "benches": ()})


def survey_room(room: Room, tape: Tape, rules: RuleSet) -> RoomSurvey:
    """Adjust one room's readings.

    Raises:
        InputValueError: The readings do not fix the room, or one of them is far from what the others say.
    """
    sigma = rules.ticks("tape.precision.inch" if tape is Tape.INCH else "tape.precision.mm")
    readings = [
        Reading(one=pair.split("-")[0], other=pair.split("-")[1], length_mm=to_mm(length), sigma_mm=to_mm(sigma))
        for pair, length in {**room.sides, **room.diagonals}.items()
    ]
    limit = rules.number("survey.blunder.limit")
    refuse_contradicted(readings, tuple(room.sides), tape)
    adjustment = adjust(room.corners, readings, limit=limit)
    refuse_unsettled(readings, adjustment, tuple(room.sides), tape)
    refuse_far_off(room.corners, readings, adjustment, tuple(room.sides), tape, limit=limit)
    points = {name: (ticks_from_mm(at[0]), ticks_from_mm(at[1])) for name, at in adjustment.corners_mm.items()}
    squared = _squared([points[name] for name in room.corners], tape.graduation)
    left, lower = min(u for u, _ in squared), min(v for _, v in squared)
    plan, adjusted = (
        {name: (u - left, v - lower) for name, (u, v) in zip(room.corners, at, strict=True)}
        for at in (squared, points.values())
    )
    outline = counter_clockwise(tuple(plan[name] for name in room.corners))
    if not is_simple(outline) or area2(outline) < LEAST_AREA2:
        raise InputValueError(
            "the adjusted outline crosses itself; check the order of the corners and the readings"
        )
    return RoomSurvey(
        name=room.name,
        corners=room.corners,
        adjustment=adjustment,
        plan=plan,
        adjusted=adjusted,
        outline=outline,
        taped_to=room.taped_to or "",
    )


def _squared(points: list[Point], graduation: int) -> list[Point]:
    """Draw sides that leave an axis by less than a graduation along it: no tape could show the difference."""
    flat = [list(point) for point in points]
    count = len(points)
    for axis in (0, 1):
        groups: list[list[int]] = [[0]]
        for index in range(1, count):
            near = abs(points[index][axis] - points[index - 1][axis]) < graduation
            if near and abs(points[index][axis] - points[groups[-1][0]][axis]) < graduation:
                groups[-1].append(index)
            else:
                groups.append([index])
        first, last = groups[0], groups[-1]
        if len(groups) > 1 and all(
            abs(points[i][axis] - points[j][axis]) < graduation for i in first for j in last
        ):
            groups = [last + first, *groups[1:-1]]
        for group in groups:
            value = round(sum(points[index][axis] for index in group) / len(group))
            for index in group:
                flat[index][axis] = value
    return [(u, v) for u, v in flat]


def _surfaces(
    room: Room, survey: RoomSurvey, job: Job, rules: RuleSet, shower: SurveyedShower | None, only: str
) -> list[Surface]:
    surfaces = []
    tray = shower.tray if shower is not None else None
    if room.floor is not None and only in ("", f"{room.name}/floor") and not _fills(tray, survey):
        surfaces.append(floor_surface(room, room.floor, survey.plan, rules, tray=tray))
    for wall in room.walls:
        if only not in ("", f"{room.name}/wall/{wall.wall}"):
            continue
        left, right = wall.wall.split("-")
        length_mm = _distance_mm(survey.adjustment, left, right)
        surfaces.append(wall_surface(room, wall, ticks_from_mm(length_mm), job.tape, rules))
    if room.ceiling is not None and only in ("", f"{room.name}/ceiling"):
        surfaces.append(ceiling_surface(room, room.ceiling, survey.plan, rules))
    return surfaces


def _shower(room: Room, asked: TiledShower, survey: RoomSurvey, job: Job, rules: RuleSet) -> SurveyedShower:
    """A room's shower floor; where it takes the whole floor it has what stands there, such as a closet flange."""
    shower = shower_of(room, asked, survey.plan, rules, job.tape)
    if not _fills(shower.tray, survey):
        return shower
    assert room.floor is not None
    placed = floor_openings(room, room.floor, survey.plan, rules)
    surface = shower.surface.model_copy(update={"openings": (*shower.surface.openings, *placed)})
    return replace(shower, surface=surface)


def _fills(tray: Opening | None, survey: RoomSurvey) -> bool:
    """Whether a shower floor takes the whole room, so that nothing is left to board."""
    if tray is None or tray.outline is None:
        return False
    left = to_shapely(survey.outline).difference(to_shapely(tray.outline))
    return bool(left.area < LEAST_AREA2)


def _distance_mm(adjustment: Adjustment, one: str, other: str) -> float:
    a, b = adjustment.corners_mm[one], adjustment.corners_mm[other]
    return float(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5)


def _findings(room: Room, survey: RoomSurvey, tape: Tape, rules: RuleSet) -> list[Finding]:
    found = [*_kept_out(room), *_blunders(room, survey.adjustment, rules)]
    found += _unchecked(room, survey.adjustment)
    if room.taped_to == "finish" and room.walls:
        found.append(
            Finding(code="SUR-105", severity=Severity.FIX, at=(room.name,), remedies=("price_only", "tape_studs"))
        )
    found += _unsure(room, survey.adjustment, tape, rules)
    limit = rules.entry("survey.plumb.note")
    for pair, lean in room.plumb.items():
        if abs(lean) > rules.ticks(limit.id):
            found.append(
                limit.found(
                    "SUR-104",
                    Severity.NOTE,
                    f"{room.name}/wall/{pair}",
                    measured=length(abs(lean)),
                    limit=just(length(rules.ticks(limit.id))),
                    remedies=("see_judgement",),
                    inwards=lean > 0,
                )
            )
    return found


def _findings_of_things(
    room: Room,
    survey: RoomSurvey,
    surfaces: Sequence[Surface],
    shower: SurveyedShower | None,
    tape: Tape,
    rules: RuleSet,
) -> list[Finding]:
    """On what stands in a room, is open in its surfaces or lies under them."""
    found: list[Finding] = []
    if shower is not None:
        found += near_walls(Word(word="shower_floor"), room.name, (shower.moved, shower.beside), tape, rules)
    found += near_walls_of_standing(room, survey.plan, tape, rules)
    for wall in room.walls:
        run = ticks_from_mm(_distance_mm(survey.adjustment, *wall.wall.split("-")))
        for name, moved in niches_at_ends(room, wall, run, tape, rules):
            found += near_walls(Name(name=name), room.name, (moved, {}), tape, rules)
    found += boarded_over(room)
    floors = () if shower is None else (shower.surface,)
    joists = () if room.floor is None else floor_joists(room, room.floor, survey.plan, rules)
    return [*found, *on_framing((*surfaces, *floors), joists, room, survey.plan, tape)]


def _kept_out(room: Room) -> Iterator[Finding]:
    """What the job says lies behind a wall, first of all: a screw through it hurts more than all else here."""
    for wall in room.walls:
        for zone in wall.no_fasteners:
            yield Finding(
                code="SUR-112",
                severity=Severity.FIX,
                at=(f"{room.name}/wall/{wall.wall}",),
                remedies=("mark",),
                values={
                    "why": Name(name=zone.why),
                    "left": length(zone.left),
                    "right": length(zone.right),
                    "bottom": length(zone.bottom),
                    "top": length(zone.top),
                },
            )


def _blunders(room: Room, adjustment: Adjustment, rules: RuleSet) -> list[Finding]:
    suspects = adjustment.suspects
    if not suspects:
        return []
    rule = rules.entry("survey.blunder.limit")
    single = len(suspects) == 1
    worst = suspects[0]
    return [
        rule.found(
            "SUR-101",
            Severity.STOP,
            room.name,
            measured=measure(worst.standardised or 0.0),
            limit=most(measure(rules.number(rule.id))),
            remedies=("again" if single else "again_and_more",),
            single=single,
            readings=tuple(Name(name=suspect.reading.name) for suspect in suspects),
            errors=tuple(length(ticks_from_mm(abs(suspect.error_mm or 0.0))) for suspect in suspects),
            longer=tuple((suspect.error_mm or 0) > 0 for suspect in suspects),
        )
    ]


def _unsure(room: Room, adjustment: Adjustment, tape: Tape, rules: RuleSet) -> list[Finding]:
    """A corner that the readings leave less sure than boards can be cut to, and the reading that helps most."""
    name, within_mm = max(adjustment.uncertainty_mm.items(), key=lambda item: item[1])
    rule = rules.entry("survey.corner.sure")
    within = ticks_from_mm_ceil(within_mm)
    if within <= rules.ticks(rule.id) or not adjustment.surest:
        return []
    return [
        rule.found(
            "SUR-111",
            Severity.FIX,
            room.name,
            f"{room.name}/corner/{name}",
            measured=length(ceil_to(within, tape.graduation)),
            limit=most(length(rules.ticks(rule.id))),
            remedies=("tape",),
            reading=Name(name=adjustment.surest),
        )
    ]


def _checking(loose: Sequence[str], in_sight: Sequence[str]) -> list[str]:
    """Distances that check corners nothing checks yet, each between two of them where it can be."""
    left, wanted = set(loose), []
    while left:
        pair = max(in_sight, key=lambda pair: len(left & {*pair.split("-")}), default="")
        if not left & {*pair.split("-")}:
            break
        wanted.append(pair)
        left -= {*pair.split("-")}
    return wanted


def _unchecked(room: Room, adjustment: Adjustment) -> list[Finding]:
    found = []
    loose = [
        corner
        for corner in room.corners
        if all(
            residual.redundancy == 0.0
            for residual in adjustment.residuals
            if corner in (residual.reading.one, residual.reading.other)
        )
    ]
    if loose:
        wanted = _checking(loose, adjustment.in_sight)
        nothing = adjustment.freedom == 0
        found.append(
            Finding(
                code="SUR-102",
                severity=Severity.FIX if nothing else Severity.NOTE,
                at=(room.name,),
                remedies=("tape" if wanted else "sides_again",),
                values={
                    "nothing": nothing,
                    "count": len(loose),
                    "corners": _names(loose),
                    "readings": _names(wanted),
                },
            )
        )
    if adjustment.ambiguous:
        found.append(
            Finding(
                code="SUR-103",
                severity=Severity.STOP,
                at=(room.name,),
                remedies=("tape" if adjustment.settled_by else "sides_again",),
                values={
                    "count": len(adjustment.differing),
                    "corners": _names(adjustment.differing),
                    "mirrored": bool(adjustment.mirrored_over),
                    "line": Name(name=adjustment.mirrored_over or ""),
                    "reading": Name(name=adjustment.settled_by or ""),
                },
            )
        )
    return found


def _names(names: Sequence[str]) -> tuple[Name, ...]:
    return tuple(Name(name=name) for name in names)
