"""Doorways that tile runs through and joints below it, placed on their surface and held to its room."""

from collections.abc import Iterator, Mapping

from shapely import LineString, get_coordinates
from shapely import Point as ShapelyPoint

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.geometry import Point, Ring, to_shapely
from firstcourse.job import SoftJointOver
from firstcourse.plan import Segment, SoftWhy, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.survey import frames_of
from firstcourse.tiles.tile_ground import ToTile
from firstcourse.units import Tape, format_length

_CODES: Mapping[str, SoftWhy] = {
    "doorway": "doorway",
    "structural joint": "structural_joint",
    "control joint": "control_joint",
    "change of backing": "change_of_backing",
}
"""What lies at a joint, by the job's words for it."""


def lines_over(
    item: ToTile, surface: Surface, plan: Mapping[str, Point], rules: RuleSet, tape: Tape
) -> tuple[tuple[Segment, SoftWhy], ...]:
    """Doorways the tile runs through and joints below it, on the surface, each with what lies there [ticks].

    Args:
        item: The tiling with its soft joints.
        surface: The surface.
        plan: The room's adjusted corners.
        rules: For how far past a wall an end may be measured and still be taken to end at it.
        tape: Tape of the job.

    Raises:
        InputValueError: A line that does not cross the surface.
        JobError: Ends that lie past the room or the wall, each with where its line meets the edge.
    """
    area = to_shapely(surface.outline)
    whole, name = _whole(surface, plan)
    found: list[tuple[Segment, SoftWhy]] = []
    problems: list[InputProblem] = []
    for number, joint in enumerate(item.tiling.soft_joints, start=1):
        line = _placed(joint, item, surface, plan)
        if LineString(line).intersection(area).length == 0:
            raise InputValueError(f"soft_joints[{number}] ({joint.over}) misses the surface; check its ends")
        for end, beyond, meets in _past(line, whole, rules.ticks("tiling.joint.touch")):
            problems.append(
                InputProblem(
                    file="job",
                    line=0,
                    column=0,
                    field=f"{item.field}.soft_joints[{number}].ends[{end + 1}]",
                    message=f"{_read(joint.ends[end], tape)} lies {format_length(beyond, tape)} past the {name}, "
                    f"so the {joint.over}'s joint cannot run there; end it at "
                    f"{_read(_between(joint, meets), tape)}, where it meets the edge",
                )
            )
        found.append((line, _CODES[joint.over]))
    if problems:
        raise JobError(tuple(problems))
    return tuple(found)


def _whole(surface: Surface, plan: Mapping[str, Point]) -> tuple[Ring, str]:
    """The whole wall, or on a floor or ceiling the room, of which the surface may be a part."""
    if surface.kind is SurfaceKind.WALL:
        return surface.extent or surface.outline, "wall"
    ring = tuple(plan.values())
    return (_seen_from_below(ring, plan) if surface.kind is SurfaceKind.CEILING else ring), "room"


def _placed(joint: SoftJointOver, item: ToTile, surface: Surface, plan: Mapping[str, Point]) -> Segment:
    one, other = joint.ends
    if surface.kind is not SurfaceKind.WALL:
        frame = frames_of(item.room, plan)[joint.side or ""]
        one, other = frame.at(*one), frame.at(*other)
        if surface.kind is SurfaceKind.CEILING:
            one, other = _seen_from_below((one, other), plan)
    return one, other


def _seen_from_below(ring: Ring, plan: Mapping[str, Point]) -> Ring:
    width = max(u for u, _ in plan.values())
    return tuple((width - u, v) for u, v in ring)


def _past(line: Segment, whole: Ring, touch: int) -> Iterator[tuple[int, int, float]]:
    """Ends that lie past the whole: which, by how much [ticks], and where the line meets the edge as a share."""
    shape, drawn = to_shapely(whole), LineString(line)
    met = sorted(drawn.project(ShapelyPoint(at)) for at in get_coordinates(drawn.intersection(shape)))
    for number, meets in enumerate((met[0], met[-1])):
        beyond = round(shape.distance(ShapelyPoint(line[number])))
        if beyond > touch:
            yield number, beyond, meets / drawn.length


def _between(joint: SoftJointOver, share: float) -> tuple[int, int]:
    (a, b), (c, d) = joint.ends
    return round(a + (c - a) * share), round(b + (d - b) * share)


def _read(at: tuple[int, int], tape: Tape) -> str:
    return f"[{', '.join(format_length(length, tape) for length in at)}]"
