"""Where the tile of a bench's front and ends begins: on the finished floor that lies under each."""

from collections.abc import Iterator, Mapping, Sequence

from firstcourse.details.floor_heights import room_floor
from firstcourse.details.footings import Floors, Foot, level_foot
from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.job import Job, Room, TiledBench
from firstcourse.plan import Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.survey import SideFrame, SurveyedShower
from firstcourse.units import Tape
from firstcourse.values import Word, least, length

_FACES = ("front", "left_end", "right_end")


def floors_of(
    job: Job,
    room: Room,
    showers: Sequence[SurveyedShower],
    surfaces: Mapping[str, Surface],
    stock: Mapping[SurfaceKind, tuple[Stock, ...]],
    rules: RuleSet,
) -> Floors | None:
    """The finished floors of a room; None where the job plans none.

    Args:
        job: The job.
        room: The room.
        showers: Shower floors as they lie in their rooms.
        surfaces: Boarded floors, and shower floors with their falls, by id.
        stock: Sheets by what they serve.
        rules: Rules in force.
    """
    own = room_floor(job, room, tuple(surfaces.values()), stock, rules)
    shower = next((one for one in showers if one.surface.room == room.name), None)
    fall = None if shower is None else surfaces[shower.surface.id].fall
    if shower is None or fall is None or fall.drain_height is None:
        return None if own is None else Floors(room=own)
    return Floors(
        # What is left over beside a shower that takes the whole floor is a crack at a wall.
        room=fall.drain_height + fall.rise if own is None else own,
        fall=fall,
        tray=shower.tray.outline or (),
        kerb=fall.kerb or 0,
    )


def bench_feet(
    asked: TiledBench, frame: SideFrame, floors: Floors | None, on_front: int
) -> tuple[Foot, Foot, Foot]:
    """Lower edges of a bench's front, left end and right end, each as seen from where it is tiled.

    Tile that is to begin above the floor begins there; what would begin within the floor begins on it.

    Args:
        asked: The bench.
        frame: Its wall, for places on the floor.
        floors: The finished floors of its room; None where they are not planned.
        on_front: Thickness of tile and bed on its front and ends [ticks].

    Raises:
        InputValueError: The floor lies as high as the bench.
    """
    runs = (asked.width, asked.depth, asked.depth)
    if floors is None:
        front, left_end, right_end = (level_foot(run, asked.bottom or 0) for run in runs)
        return front, left_end, right_end
    right, out = asked.left + asked.width, asked.depth + on_front
    left_face, right_face = max(0, asked.left - on_front), right + on_front
    lines = (
        ((asked.left, out), (right, out)),
        ((left_face, 0), (left_face, asked.depth)),
        ((right_face, asked.depth), (right_face, 0)),
    )
    found = []
    for (a, b), run in zip(lines, runs, strict=True):
        foot = floors.under(frame.at(*a), frame.at(*b))
        if asked.bottom is not None and asked.bottom >= foot.highest:
            foot = level_foot(run, asked.bottom)
        if foot.highest >= asked.height:
            raise InputValueError(f"'{asked.id}' ends below the finished floor; give its height over the panels")
        # A place on the drawing is rounded to ticks; the face keeps the length it was given.
        found.append(Foot(points=(*foot.points[:-1], (run, foot.points[-1][1])), on=foot.on))
    front, left_end, right_end = found
    return front, left_end, right_end


def feet_findings(
    asked: TiledBench, feet: Sequence[Foot], standing: Sequence[bool], ref: str, tape: Tape
) -> Iterator[Finding]:
    """That a face is to be cut to a floor that falls along it, and that one cannot begin within the floor.

    Args:
        asked: The bench.
        feet: Of front, left end and right end.
        standing: Which of these faces there are.
        ref: Its reference.
        tape: Tape of the job.
    """
    there = [(name, foot) for name, foot, stands in zip(_FACES, feet, standing, strict=True) if stands]
    sloped = [(name, foot) for name, foot in there if foot.highest - foot.lowest > tape.graduation // 2]
    if sloped:
        low, high = min(foot.lowest for _, foot in sloped), max(foot.highest for _, foot in sloped)
        yield Finding(
            code="TIL-125",
            severity=Severity.NOTE,
            at=(ref,),
            measured=length(high - low),
            remedies=("scribe",),
            values={
                "faces": tuple(Word(word=name) for name, _ in sloped),
                "low": length(low),
                "high": length(high),
            },
        )
    buried = [foot for _, foot in there if asked.bottom is not None and asked.bottom < foot.highest]
    if asked.bottom is not None and buried:
        yield Finding(
            code="TIL-126",
            severity=Severity.NOTE,
            at=(ref,),
            measured=length(asked.bottom),
            limit=least(length(max(foot.highest for foot in buried))),
            remedies=("leave_out",),
        )
