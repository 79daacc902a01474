"""What stands on a floor or against a wall and ends near another wall: it is taken to stand at that wall."""

from collections.abc import Iterator, Mapping

from firstcourse.findings import Finding
from firstcourse.geometry import Point, is_simple, sides
from firstcourse.job import Job, Room, TiledBench
from firstcourse.rules import RuleSet
from firstcourse.survey.flats import STANDING, frames_of, opening_ring_of
from firstcourse.survey.near_walls import DOUBT, TOUCH, gaps_beside, near_walls, stood, walls_of
from firstcourse.survey.room import RoomSurvey
from firstcourse.units import Tape
from firstcourse.values import Name

_AT_WALL = 2
"""Rounding of a corner on a wall askew to the axes [ticks]."""


def near_walls_of_standing(room: Room, plan: Mapping[str, Point], tape: Tape, rules: RuleSet) -> Iterator[Finding]:
    """How far tubs, trays, cabinets and benches were moved to walls, and gaps beside them too narrow for a floor.

    Args:
        room: What the job says.
        plan: The room's adjusted corners.
        tape: What moves by less than a mark of it is not told.
        rules: The rules in force.
    """
    walls, frames = walls_of(room, plan), frames_of(room, plan)
    for opening in room.floor.openings if room.floor is not None else ():
        if opening.kind not in STANDING or opening.diameter is not None:
            continue
        ring = opening_ring_of(opening, frames[opening.side or ""])
        if not is_simple(ring):
            continue
        found, moved = stood(ring, walls, rules.ticks(TOUCH))
        free = [
            (a, b) for a, b in sides(found) if not any(max(wall.off(a), wall.off(b)) <= _AT_WALL for wall in walls)
        ]
        beside = gaps_beside(free, walls, rules.ticks(DOUBT))
        yield from near_walls(Name(name=opening.id), room.name, (moved, beside), tape, rules)
    for bench in room.benches:
        _, moved = bench_at_walls(bench, room, plan, rules)
        yield from near_walls(Name(name=bench.id), room.name, (moved, {}), tape, rules)


def benches_at_walls(job: Job, rooms: tuple[RoomSurvey, ...], rules: RuleSet) -> Job:
    """The job with every bench that ends near a wall ending at it.

    Args:
        job: As entered.
        rooms: Its adjusted rooms, in its order.
        rules: The rules in force.
    """
    return job.model_copy(
        update={
            "rooms": tuple(
                room.model_copy(
                    update={
                        "benches": tuple(
                            bench_at_walls(bench, room, taped.plan, rules)[0] for bench in room.benches
                        )
                    }
                )
                for room, taped in zip(job.rooms, rooms, strict=True)
            )
        }
    )


def bench_at_walls(
    bench: TiledBench, room: Room, plan: Mapping[str, Point], rules: RuleSet
) -> tuple[TiledBench, dict[str, int]]:
    """A bench that ends at the walls it comes near, and by wall how far its end was moved [ticks]."""
    frame = frames_of(room, plan)[bench.wall]
    box = frame.box(bench.left, 0, bench.left + bench.width, bench.depth)
    found, _ = stood(box, walls_of(room, plan), rules.ticks(TOUCH))
    line = next(wall for wall in walls_of(room, plan) if wall.name == bench.wall)
    at = [round(frame.along(point)) for point in found if line.off(point) <= _AT_WALL]
    left, right = min(at), max(at)
    names = list(room.side_pairs())
    here = names.index(bench.wall)
    ends = (
        (names[here - 1], abs(left - bench.left)),
        (names[(here + 1) % len(names)], abs(right - bench.left - bench.width)),
    )
    moved = {name: by for name, by in ends if by}
    return bench.model_copy(update={"left": left, "width": right - left}), moved
