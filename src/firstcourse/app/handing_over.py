"""A plan's folder and what was recorded on site, made into one file for keeping and a short one for the owner."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from firstcourse.app.files import PLAN, Disk, Files
from firstcourse.app.photo import MOST_BYTES, read_photo
from firstcourse.errors import InputValueError, PlanRefusedError
from firstcourse.files import read_file
from firstcourse.handing import LARGEST_RECORD, Handover, handed_over, read_record
from firstcourse.papers.handover import handover_lines, handover_page, handover_paper
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.papers import Paper
from firstcourse.placed import refused
from firstcourse.plan import Plan
from firstcourse.verify import verify_handover, verify_text
from firstcourse.words import speaker_for

HANDOVER, CHANGES = "handover.json", "changes.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class HandoverFile:
    """A handover with all that lies within its file.

    Attributes:
        files: By name: plan.json, handover.json, changes.json where there is one, photos.
    """

    plan: Plan
    handover: Handover
    files: dict[str, bytes]


def make_handover(
    folder: Path | str, proof: Path | str, *, tongue: str = "", files: Files | None = None
) -> HandoverFile:
    """Hold what was recorded against what a plan asks for.

    Args:
        folder: A plan's folder, or its plan.json.
        proof: What was recorded (YAML or JSON), see docs/concepts/handover.md; photos lie beside it.
        tongue: What is printed is written in it; the plan's own where not given.
        files: Where the plan is read from; the disk of this machine where not given.

    Raises:
        JobError: What was recorded cannot be used; with line and column.
        InputValueError: The plan or a photo cannot be read, or the plan does not verify.
        PlanRefusedError: The handover does not verify; this is our fault.
    """
    files, folder, proof = Disk() if files is None else files, Path(folder), Path(proof)
    document = files.read_plan(folder)
    if objections := verify_text(document).objections:
        raise InputValueError(f"{folder}: the plan does not verify: {objections[0].code} {objections[0].message}")
    plan = Plan.model_validate_json(document)
    if tongue:
        plan = plan.model_copy(update={"job": plan.job.model_copy(update={"tongue": tongue})})
    try:
        data = read_file(proof, most_bytes=LARGEST_RECORD, what="a record of proof")
    except InputValueError as error:
        raise refused(str(proof), str(error)) from None
    places = dict.fromkeys(name for one in plan.surfaces for name in (one.room, one.id))
    record = read_record(data, str(proof), tuple(places))
    photos = [_photo(proof.parent, one.file) for one in record.photos]
    changes = (files.read_beside(folder, CHANGES) or "").encode()
    made = handed_over(plan, document, record, photos, changes)
    text = made.model_dump_json(indent=1) + "\n"
    if objected := verify_handover(document, text):
        raise PlanRefusedError(tuple(f"{one.code} {one.where}: {one.message}" for one in objected))
    within = {PLAN: document.encode(), HANDOVER: text.encode(), **({CHANGES: changes} if changes else {})}
    named = zip(made.photos, photos, strict=True)
    return HandoverFile(plan=plan, handover=made, files=within | {one.name: photo for one, photo in named})


def _photo(folder: Path, name: str) -> bytes:
    path = Path(name)
    if path.is_absolute() or ".." in path.parts:
        raise InputValueError(f"{name}: a photo lies beside the record or in a folder there; copy it there")
    try:
        return read_photo(read_file(folder / path, most_bytes=MOST_BYTES, what="a photo")).content
    except InputValueError as error:
        raise InputValueError(f"{folder / path}: {error}") from None


def handover_papers(made: HandoverFile) -> Iterator[Paper]:
    """The handover as values, all of it as PDF/A-3b, and the owner's short one, on both paper sizes."""
    speaker = speaker_for(made.plan)
    yield Paper(HANDOVER, made.files[HANDOVER])
    for full, name in ((True, "handover"), (False, "owner")):
        for size in PAGE_SIZES:
            page = handover_paper(size, made.plan, made.handover, made.files, speaker, full=full)
            yield Paper(f"{name}-{size}.pdf", page)


def write_handover(made: HandoverFile, folder: Path | str, *, files: Files | None = None) -> tuple[Path, ...]:
    """Write a handover's papers into a folder, all or none; other files there stay.

    Raises:
        InputValueError: A name that is needed is taken by a file or a folder.
        OSError: The disk refuses.
    """
    return (Disk() if files is None else files).write_folder(handover_papers(made), Path(folder), record=False)


def handover_text(made: HandoverFile) -> tuple[str, ...]:
    """What is proved and what has no record, as lines of text."""
    return tuple(handover_lines(handover_page(made.plan, made.handover, speaker_for(made.plan), full=True)))
