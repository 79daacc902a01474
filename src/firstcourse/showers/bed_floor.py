"""What meets a shower floor that takes a whole room: doorways, and rims of flanges and drains, by its falls."""

from collections.abc import Iterator, Mapping

from firstcourse.details import Floors
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import Point
from firstcourse.grounds import Doorway, Fitting, SurfaceSide, judge_doorway, judge_drain, judge_flange
from firstcourse.job import DoorStep, Room
from firstcourse.layers import Layer
from firstcourse.plan import Fall, OpeningKind
from firstcourse.rules import RuleSet
from firstcourse.survey import frames_of
from firstcourse.units import Tape, to_inches
from firstcourse.values import length, most


def judge_bed_floor(
    room: Room, fall: Fall, plan: Mapping[str, Point], ref: str, rules: RuleSet, tape: Tape
) -> SurfaceSide:
    """Judge doorways and rims of a floor that is all shower, each by the height of the falls where it is.

    Args:
        room: The room.
        fall: How its floor falls.
        plan: The room's adjusted corners.
        ref: Reference to the shower floor.
        rules: Rules in force.
        tape: Tape of the job.
    """
    done = SurfaceSide()
    assert room.floor is not None and fall.drain_height is not None
    floors = Floors(room=fall.drain_height + fall.rise, fall=fall)
    for door in room.floor.doorways:
        low, high = _along(door, room, plan, floors, fall)
        doorway = Doorway(
            ref=f"{room.name}/floor/door/{door.id}",
            other_floor_in=to_inches(door.other_floor),
            door_underside_in=None if door.door_underside is None else to_inches(door.door_underside),
        )
        findings, working = judge_doorway(rules, (_falls(high),), doorway, tape)
        done.findings += (*findings, *_holds(door, doorway.ref, (low, high), fall, tape))
        done.workings += (working,)
        done.judged = True
    for rim, kind, height in _rims(room, plan, floors, fall):
        judge = judge_drain if kind is OpeningKind.DRAIN else judge_flange
        done.findings += judge(rules, (_falls(height),), ref, rim)
        done.judged = True
    return done


def _falls(height: int) -> Layer:
    """All that lies on the panels, as one layer; its mass is the frame's matter."""
    return Layer(name="bed, mortar and tile", thickness_in=to_inches(height), density_kg_m3=0.0)


def _along(door: DoorStep, room: Room, plan: Mapping[str, Point], floors: Floors, fall: Fall) -> tuple[int, int]:
    """Lowest and highest place of the floor at a doorway; of its whole edge where it is not said where that is."""
    assert fall.drain_height is not None
    if door.wall is None:
        heights = [fall.drain_height + level.height for level in fall.levels]
        return min(heights), max(heights)
    frame = frames_of(room, plan)[door.wall]
    left = door.left or 0
    right = round(frame.length) if door.width is None else left + door.width
    foot = floors.under(frame.at(left, 0), frame.at(right, 0))
    return foot.lowest, foot.highest


def _holds(door: DoorStep, ref: str, span: tuple[int, int], fall: Fall, tape: Tape) -> Iterator[Finding]:
    """Whether the water stays in, as a kerb would keep it: the floor beyond lies no lower than this one's edge."""
    low, high = span
    if fall.kerb is None and high - door.other_floor > tape.graduation // 2:
        yield Finding(
            code="FAL-205",
            severity=Severity.STOP,
            at=(ref,),
            measured=length(high),
            limit=most(length(door.other_floor)),
            remedies=("deeper_or_kerb",),
            values={"lower": length(high - door.other_floor)},
        )
    if door.wall is not None and high - low > tape.graduation:
        yield Finding(
            code="FAL-204",
            severity=Severity.FIX,
            at=(ref,),
            measured=length(high - low),
            remedies=("turn_or_level",),
            values={"doorway": True, "low": length(low), "high": length(high)},
        )


def _rims(
    room: Room, plan: Mapping[str, Point], floors: Floors, fall: Fall
) -> Iterator[tuple[Fitting, OpeningKind, int]]:
    """Flanges and drains of which the job gives the top, each with the height of the floor where it stands."""
    assert room.floor is not None and fall.drain_height is not None
    frames = frames_of(room, plan)
    flanges = []
    for opening in room.floor.openings:
        if (
            opening.kind not in (OpeningKind.FLANGE, OpeningKind.DRAIN)
            or opening.left is None
            or opening.out is None
        ):
            continue
        at = frames[opening.side or ""].at(
            opening.left + (opening.width or 0) // 2, opening.out + (opening.depth or 0) // 2
        )
        height = floors.height(at)
        if opening.kind is OpeningKind.FLANGE:
            flanges.append(height)
        if opening.top is not None:
            yield (
                Fitting(ref=f"{room.name}/floor/opening/{opening.id}", top_in=to_inches(opening.top)),
                opening.kind,
                height,
            )
    if room.floor.flange_top is not None:
        # One that is not placed stands near a wall, where the floor is highest.
        height = flanges[0] if len(flanges) == 1 else fall.drain_height + fall.rise
        yield (
            Fitting(ref=f"{room.name}/floor/flange", top_in=to_inches(room.floor.flange_top)),
            OpeningKind.FLANGE,
            height,
        )
