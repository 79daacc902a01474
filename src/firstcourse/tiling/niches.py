"""Niches that could meet the courses: where a niche that is not built yet should go."""

from collections.abc import Callable, Iterator

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.plan import Opening, OpeningKind, Surface
from firstcourse.units import Tape, format_length, ticks_from_mm, to_mm


def niche_findings(
    surface: Surface, pitch_mm: float, joint_mm: float, level_mm: Callable[[float], float], tape: Tape
) -> Iterator[Finding]:
    """Tell where each niche would begin and end on a course joint of level courses.

    A niche meets the courses where its sill lies on the top edge of one course and its head on the lower edge of
    another: then no tile beside it is notched at either.

    Args:
        surface: The wall with its niches.
        pitch_mm: A course and its joint [mm].
        joint_mm: Width of the joints [mm].
        level_mm: Lower edge of any of the courses at a height; courses above a band lie otherwise [mm].
        tape: Tape of the job.
    """
    pitch, joint = ticks_from_mm(pitch_mm), ticks_from_mm(joint_mm)
    for opening in surface.openings:
        if opening.kind is not OpeningKind.NICHE or opening.outline is None:
            continue
        _, bottom, _, top = bounds(opening.outline)
        level = ticks_from_mm(level_mm(to_mm(bottom)))
        sill = _nearest(bottom + joint, level, pitch) - joint
        head = max(_nearest(top, level, pitch), sill + joint + pitch)
        if max(abs(sill - bottom), abs(head - top)) >= tape.graduation:
            yield _finding(surface, opening, (bottom, top), (sill, head), (head - sill - joint) // pitch, tape)


def _nearest(place: int, level: int, pitch: int) -> int:
    return level + round((place - level) / pitch) * pitch


def _finding(
    surface: Surface, opening: Opening, now: tuple[int, int], better: tuple[int, int], courses: int, tape: Tape
) -> Finding:
    height = format_length(better[1] - better[0], tape)
    number = f"{courses} course{'s' * (courses > 1)}"
    return Finding(
        code="TIL-122",
        severity=Severity.NOTE,
        where=f"{surface.title or surface.id}, {opening.id}",
        message="The niche does not begin and end on course joints, so tiles beside it are notched.",
        measured=f"sill at {format_length(now[0], tape)}, head at {format_length(now[1], tape)}",
        limit="a whole number of courses",
        source="common practice",
        remedy=(
            f"If it is not built yet, set its sill at {format_length(better[0], tape)} and make it {height} high: "
            f"{number}. Its sides stay where they are."
        ),
    )
