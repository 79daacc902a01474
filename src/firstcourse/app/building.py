"""A building planned phase by phase, proved, and written."""

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from firstcourse.app.files import PLAN, Disk, Files
from firstcourse.app.kept import kept_plan
from firstcourse.app.session import Session
from firstcourse.building import (
    LARGEST_BYTES,
    Building,
    BuildingPlan,
    building_document,
    plan_building,
    read_building,
)
from firstcourse.errors import InputProblem, InputValueError, JobError, PlanRefusedError
from firstcourse.files import read_file, utf8_text
from firstcourse.job import Job, job_text
from firstcourse.papers.building_page import building_page, building_paper
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.papers import Paper
from firstcourse.share import Share
from firstcourse.steps import PlanResult
from firstcourse.verify import Objection as Objection
from firstcourse.verify.building import HEAP, verify_building
from firstcourse.version import __version__
from firstcourse.words import Speaker, speaker_for

BUILDING = "building.json"
PHASES, WHOLE = "phases", "heap"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedBuilding:
    """A verified building.

    Attributes:
        plan: What is planned.
        document: Its building.json.
        phases: By phase its job and its plan.
        heap: The same of all rooms as one, where that was compared.
    """

    plan: BuildingPlan
    document: str
    phases: dict[str, tuple[Job, PlanResult]]
    heap: tuple[Job, PlanResult] | None

    @property
    def speaker(self) -> Speaker:
        """In whose words and units it is told."""
        return speaker_for(next(iter(self.phases.values()))[1].plan)

    def page(self, speaker: Speaker) -> dict[str, Any]:
        """Title and tables, as the paper prints them."""
        return building_page(self.plan, {name: made.plan for name, (_, made) in self.phases.items()}, speaker)


def open_building(path: Path | str) -> Building:
    """Read a building document.

    Args:
        path: YAML or JSON, see docs/concepts/building.md.

    Raises:
        JobError: It cannot be read, or says what a building cannot say; with line and column.
    """
    try:
        text = utf8_text(read_file(Path(path), most_bytes=LARGEST_BYTES, what="a building document"))
    except InputValueError as error:
        raise JobError((InputProblem(file=str(path), line=0, column=0, field="", message=str(error)),)) from None
    return read_building(text, str(path))


def planned_building(
    building: Building,
    *,
    effort: int = 1,
    heap: bool = True,
    keep: Path | None = None,
    share: Share | None = None,
    on_phase: Callable[[str], None] = lambda _name: None,
) -> PlannedBuilding:
    """Plan a building phase by phase, and prove what comes of it.

    Args:
        building: The building.
        effort: How long to look for fewer sheets, 0 to 3.
        heap: Whether all rooms are planned as one too, to compare.
        keep: A folder in which the plan of each phase is kept as soon as it is made, so that a run that is stopped
            goes on there.
        share: How the rooms of a plan are shared out; to this machine's processors where not given.
        on_phase: Told the name of each phase before it is planned, nothing for all rooms as one.

    Raises:
        JobError: The readings of a room do not fix it.
        PlanRefusedError: The building does not verify; this is our fault.
        OSError: Nothing can be kept in the folder.
    """

    def made(name: str, job: Job) -> PlanResult:
        text = job_text(job)
        file = None if keep is None else keep / f"{_key(text, effort)}.json"
        found = None if file is None else _found(file)
        if found is not None:
            return found
        on_phase(name)
        result = Session(text, name=f"phase {name}" if name else "all rooms", share=share).plan(effort=effort)
        if file is not None:
            _keep(file, result)
        return result

    plan, phases, whole = plan_building(building, made, heap=heap)
    document = building_document(plan)
    plans = {name: result.document for name, (_, result) in phases.items()}
    plans |= {} if whole is None else {HEAP: whole[1].document}
    objections = verify_building(document, plans)
    if objections:
        raise PlanRefusedError(tuple(f"{one.code} {one.where}: {one.message}" for one in objections))
    return PlannedBuilding(plan=plan, document=document, phases=phases, heap=whole)


def building_papers(made: PlannedBuilding, folder: Path | str, *, files: Files | None = None) -> tuple[Path, ...]:
    """Write a building's building.json, its page on both paper sizes, and each phase's job and plan.

    Args:
        made: A building.
        folder: Made where it is not there; files of others in it stay.
        files: Where they go; the disk of this machine where not given.

    Raises:
        InputValueError: A name that is needed is taken by a file or a folder.
        OSError: The disk refuses.
    """
    return (Disk() if files is None else files).write_folder(_papers(made), Path(folder), record=True)


def prove_building(folder: Path) -> tuple[Objection, ...] | None:
    """Prove a building again from its folder; None where no building lies there.

    Args:
        folder: Where building.json, the phases' plans and perhaps the heap's lie.

    Raises:
        InputValueError: A file cannot be read.
    """
    files = Disk()
    document = files.read_beside(folder, BUILDING)
    if document is None:
        return None
    places = {} if not (folder / WHOLE / PLAN).is_file() else {HEAP: folder / WHOLE}
    if (folder / PHASES).is_dir():
        places |= {place.name: place for place in sorted((folder / PHASES).iterdir()) if (place / PLAN).is_file()}
    return verify_building(document, {name: files.read_plan(place) for name, place in places.items()})


def _papers(made: PlannedBuilding) -> Iterator[Paper]:
    yield Paper(BUILDING, made.document.encode())
    speaker = made.speaker
    plans = {name: result.plan for name, (_, result) in made.phases.items()}
    for size in PAGE_SIZES:
        yield Paper(f"building-{size}.pdf", building_paper(size, made.plan, plans, speaker))
    for name, (job, result) in made.phases.items():
        yield Paper(f"{PHASES}/{name}/job.yaml", job_text(job).encode())
        yield Paper(f"{PHASES}/{name}/{PLAN}", result.document.encode())
    if made.heap is not None:
        yield Paper(f"{WHOLE}/{PLAN}", made.heap[1].document.encode())


def _key(text: str, effort: int) -> str:
    return sha256(f"{__version__} {effort}\n{text}".encode()).hexdigest()


def _found(file: Path) -> PlanResult | None:
    """A plan that was kept; None where none was, or not wholly."""
    try:
        kept = json.loads(file.read_text(encoding="utf-8"))
        if kept["digest"] != sha256((kept["document"] + kept["beside"]).encode()).hexdigest():
            return None
        return kept_plan(kept["document"], kept["beside"])
    except (OSError, ValueError, KeyError, TypeError):
        return None


def _keep(file: Path, result: PlanResult) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    beside = json.dumps({"practice": result.practice, "changes": list(result.changes)})
    digest = sha256((result.document + beside).encode()).hexdigest()
    kept = {"digest": digest, "document": result.document, "beside": beside}
    Disk().write_over(file, json.dumps(kept))
