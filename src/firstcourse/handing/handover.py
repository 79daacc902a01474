"""A handover as values: what the plan asks to be proved, and what is recorded of it; nothing is taken as done."""

import hashlib
from collections.abc import Iterator, Sequence
from typing import Literal

from firstcourse.handing.record import Flood, Record
from firstcourse.plan import Frozen, OpeningKind, Plan, Surface

ProofKind = Literal["framing", "members", "fasteners", "tape", "membrane", "flood_test", "drain_test"]
_HOUR_S = 3600


class KeptPhoto(Frozen):
    """A photo as it is kept: its name in the file, and the SHA-256 of what is kept."""

    name: str
    digest: str


class Asked(Frozen):
    """Something that the plan asks to be proved.

    Attributes:
        at: A room, or a surface.
        state: `held` where a record says so, `failed` where the last one (of one day the last
            that is listed) says otherwise, `missing` without any.
        hours: That water must stand in a flood test; None where nothing is asked.
    """

    what: ProofKind
    at: str
    state: Literal["held", "failed", "missing"]
    hours: float | None = None


class Handover(Frozen):
    """What is handed over.

    Attributes:
        plan: SHA-256 of plan.json.
        photos: As they are kept, in the order of the record's.
        changes: SHA-256 of changes.json; empty where there is none.
    """

    format: Literal["firstcourse-handover"] = "firstcourse-handover"
    version: Literal[1] = 1
    plan: str
    record: Record
    photos: tuple[KeptPhoto, ...]
    asked: tuple[Asked, ...]
    changes: str = ""


def handed_over(
    plan: Plan, document: str, record: Record, photos: Sequence[bytes], changes: bytes = b""
) -> Handover:
    """What is handed over.

    Args:
        plan: A verified plan.
        document: Its plan.json.
        record: What was recorded.
        photos: As they are kept, in the order of the record's.
        changes: A changes.json; empty where there is none.
    """
    return Handover(
        plan=hashlib.sha256(document.encode()).hexdigest(),
        record=record,
        photos=tuple(
            KeptPhoto(name=f"photo-{number:03d}.jpg", digest=hashlib.sha256(one).hexdigest())
            for number, one in enumerate(photos, start=1)
        ),
        asked=tuple(
            Asked(what=what, at=at, hours=hours, state=_state(what, at, hours, record))
            for what, at, hours in _asked(plan)
        ),
        changes=hashlib.sha256(changes).hexdigest() if changes else "",
    )


def _asked(plan: Plan) -> Iterator[tuple[ProofKind, str, float | None]]:
    for room in dict.fromkeys(one.room for one in plan.surfaces):
        own = [one for one in plan.surfaces if one.room == room]
        if any(one.supports for one in own):
            yield "framing", room, None
        if any(support.added for one in own for support in one.supports):
            yield "members", room, None
        if any(one.fall for one in own) or any(
            opening.kind in (OpeningKind.DRAIN, OpeningKind.PIPE, OpeningKind.VALVE)
            for one in own
            for opening in one.openings
        ):
            yield "drain_test", room, None
        for one in own:
            yield from _of_surface(one)


def _of_surface(one: Surface) -> Iterator[tuple[ProofKind, str, float | None]]:
    if any(board.fasteners for board in one.boards if not board.fixed):
        yield "fasteners", one.id, None
    if any(seam.tape for seam in one.seams) and any(not board.fixed for board in one.boards):
        yield "tape", one.id, None
    if one.membrane:
        yield "membrane", one.id, None
    if one.fall is not None:
        yield "flood_test", one.id, one.fall.flood_test.hours


def _state(what: ProofKind, at: str, hours: float | None, record: Record) -> Literal["held", "failed", "missing"]:
    if what == "flood_test":
        tests = [one for one in record.tests if one.at == at]
        if not tests:
            return "missing"
        return "held" if _held(sorted(tests, key=lambda one: one.ends)[-1], hours) else "failed"
    checks = [one for one in record.checks if (one.what, one.at) == (what, at)]
    if not checks:
        return "missing"
    return "held" if sorted(checks, key=lambda one: one.on)[-1].holds else "failed"


def _held(test: Flood, hours: float | None) -> bool:
    """Water stood as long as asked and did not sink."""
    stood = (test.ends - test.starts).total_seconds() / _HOUR_S
    return stood >= (hours or 0.0) and test.end_level >= test.start_level
