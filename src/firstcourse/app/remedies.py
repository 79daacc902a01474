"""Findings whose remedy is a plain change of the job document, and that change."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from firstcourse.app.fields import SurfaceField, checked
from firstcourse.app.session import Session
from firstcourse.findings import Finding
from firstcourse.job import FieldValue, WallBlocking, edited_text, exact_length
from firstcourse.plan import Support, SupportKind, Surface
from firstcourse.units import ticks_from_mm
from firstcourse.values import Measure


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What would be written into the document.

    Attributes:
        what: `courses` puts a niche onto the courses, `members` notes members that were asked for and are in now.
        sets: Field to value; a list's next item is named by its number.
    """

    what: Literal["courses", "members"]
    sets: tuple[tuple[str, FieldValue], ...]


def change_for(finding: Finding, surface: Surface, where: SurfaceField, session: Session) -> Change | None:
    """The change that a finding's remedy asks for; None where none can be made in the document alone.

    Args:
        finding: What was found.
        surface: The surface it is about, as planned.
        where: The same in the document.
        session: The document that was planned.
    """
    if finding.code == "TIL-122" and "set" in finding.remedies:
        return _onto_courses(finding, where, session)
    if finding.code == "BRD-101" and finding.at[0] == surface.id and where.part == "wall":
        return _members(surface, where, session)
    return None


def with_change(session: Session, change: Change) -> Session:
    """The document with a change made.

    Raises:
        JobError: It would say something a job cannot say.
    """
    text = session.text
    for field, value in change.sets:
        text = edited_text(text, field, value, name=session.name)
    return checked(text, session)


def _onto_courses(finding: Finding, where: SurfaceField, session: Session) -> Change | None:
    name = finding.at[0].rpartition("/opening/")[2]
    number = next((i for i, one in enumerate(where.said.openings, start=1) if one.id == name), 0)
    sill, height = (finding.values.get(key) for key in ("better_sill", "better_height"))
    if not number or not isinstance(sill, Measure) or not isinstance(height, Measure):
        return None
    tape, base = session.job.tape, f"{where.field}.openings[{number}]"
    told = [exact_length(ticks_from_mm(one.value), tape) for one in (sill, height)]
    return Change(what="courses", sets=((f"{base}.bottom", told[0]), (f"{base}.height", told[1])))


def _members(surface: Surface, where: SurfaceField, session: Session) -> Change | None:
    added = [one for one in surface.supports if one.added]
    studs = [one for one in added if one.kind is SupportKind.STUD]
    blocks = [one for one in added if one.kind is SupportKind.BLOCKING]
    if not added or len(studs) + len(blocks) != len(added):
        return None
    sets: list[tuple[str, FieldValue]] = []
    listed: Sequence[WallBlocking] = getattr(where.said, "blocking", ())
    sets += _appended(
        f"{where.field}.blocking",
        len(listed),
        "blocking" in where.said.model_fields_set,
        [_blocking(one, session) for one in blocks],
    )
    framing = where.said.framing
    members = () if framing is None else framing.members
    there = framing is not None and "members" in framing.model_fields_set
    sets += _appended(
        f"{where.field}.framing.members", len(members), there, [_stud(one, session) for one in studs]
    )
    return Change(what="members", sets=tuple(sets))


def _appended(field: str, count: int, there: bool, items: Sequence[FieldValue]) -> list[tuple[str, FieldValue]]:
    if not items:
        return []
    if not there:
        return [(field, list(items))]
    return [(f"{field}[{count + number}]", item) for number, item in enumerate(items, start=1)]


def _blocking(one: Support, session: Session) -> FieldValue:
    us, vs = ([point[axis] for point in one.outline] for axis in (0, 1))
    tape = session.job.tape
    values = {"at": (min(vs) + max(vs)) // 2, "left": min(us), "right": max(us), "width": max(vs) - min(vs)}
    return {name: exact_length(value, tape) for name, value in values.items()}


def _stud(one: Support, session: Session) -> FieldValue:
    us = [point[0] for point in one.outline]
    tape = session.job.tape
    return {
        "at": exact_length((min(us) + max(us)) // 2, tape),
        "width": exact_length(max(us) - min(us), tape),
    }
