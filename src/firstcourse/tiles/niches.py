"""Niches that could meet the courses: where a niche that is not built yet should go."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.plan import Opening, OpeningKind, Surface
from firstcourse.units import Tape, ticks_from_mm, to_mm
from firstcourse.values import length


def niche_findings(
    surface: Surface, pitch_mm: float, joint_mm: float, fields_mm: Sequence[tuple[float, float]], tape: Tape
) -> Iterator[Finding]:
    """Tell where each niche would begin and end on a course joint of level courses.

    A niche meets the courses where its sill lies on the top edge of one course and its head on the lower edge of
    another: then no tile beside it is notched at either.

    Args:
        surface: The wall with its niches.
        pitch_mm: A course and its joint [mm].
        joint_mm: Width of the joints [mm].
        fields_mm: Where each field of level courses begins, and the lower edge of any of its courses, from the
            foot up: those above a band lie otherwise than those below it [mm].
        tape: What is off by less than a mark of it is not told.
    """
    pitch, joint = ticks_from_mm(pitch_mm), ticks_from_mm(joint_mm)
    for opening in surface.openings:
        if opening.kind is not OpeningKind.NICHE or opening.outline is None or not fields_mm:
            continue
        _, bottom, _, top = bounds(opening.outline)
        below = [level for foot, level in fields_mm if foot <= to_mm(bottom)]
        level = ticks_from_mm(below[-1] if below else fields_mm[0][1])
        sill = _nearest(bottom + joint, level, pitch) - joint
        head = max(_nearest(top, level, pitch), sill + joint + pitch)
        if max(abs(sill - bottom), abs(head - top)) >= tape.graduation:
            yield _finding(surface, opening, (bottom, top), (sill, head), (head - sill - joint) // pitch)


def _nearest(place: int, level: int, pitch: int) -> int:
    return level + round((place - level) / pitch) * pitch


def _finding(
    surface: Surface, opening: Opening, now: tuple[int, int], better: tuple[int, int], courses: int
) -> Finding:
    return Finding(
        code="TIL-122",
        severity=Severity.NOTE,
        at=(f"{surface.id}/opening/{opening.id}",),
        remedies=("set",),
        values={
            "sill": length(now[0]),
            "head": length(now[1]),
            "better_sill": length(better[0]),
            "better_height": length(better[1] - better[0]),
            "courses": courses,
        },
    )
