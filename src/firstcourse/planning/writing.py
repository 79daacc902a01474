"""Write a verified plan and its papers: all made first, then moved in, and what is out of date taken away."""

from collections.abc import Iterable
from itertools import chain
from pathlib import Path

from firstcourse.documents.judgement_pack import judgement_pack
from firstcourse.documents.pages import PAGE_SIZES
from firstcourse.documents.papers import Paper, all_papers
from firstcourse.planning.folder_swap import folder_set
from firstcourse.planning.judging import JobJudgement
from firstcourse.planning.steps import PlanResult

PLAN = "plan.json"


def write_plan(result: PlanResult, folder: Path, *, poles: bool = False) -> tuple[Path, ...]:
    """Write a plan and all its papers into a folder.

    Args:
        result: A plan that has been verified.
        folder: Made where it is not there.
        poles: Print story poles at full size too.

    Returns:
        The files written, plan.json first.

    Raises:
        InputValueError: A name that we need is taken by a file or a folder.
        OSError: The disk refuses.
    """
    first = Paper(PLAN, result.document.encode())
    return write_files(chain([first], all_papers(result.plan, poles=poles)), folder)


def write_judgement(judgement: JobJudgement, folder: Path) -> tuple[Path, ...]:
    """Write a judgement's sheets into a folder, on both paper sizes; files that stand there stay.

    Args:
        judgement: What was judged of a job.
        folder: Made where it is not there.

    Returns:
        The files written.

    Raises:
        OSError: The disk refuses.
    """
    sheets = (
        Paper(
            f"judgement-{paper}.pdf",
            judgement_pack(
                paper,
                job=judgement.job,
                date=judgement.date,
                practice=judgement.practice,
                tape=judgement.tape,
                structures=judgement.structures,
                findings=judgement.findings,
                workings=judgement.workings,
                cautions=judgement.cautions,
            ),
        )
        for paper in PAGE_SIZES
    )
    return write_files(sheets, folder, record=False)


def write_files(papers: Iterable[Paper], folder: Path, *, record: bool = True) -> tuple[Path, ...]:
    """Write files into a folder; until all of them are on the disk, nothing that stands there is touched.

    Each is written as it comes, so that no two need to be in memory at a time.

    Args:
        papers: Names within the folder, each once, with their content.
        folder: Made where it is not there.
        record: Whether these are all we keep there: files that we wrote there before, that nobody has changed
            since and that are not written again are then removed. Otherwise all files that stand there stay.

    Returns:
        The files written, in the order given.

    Raises:
        InputValueError: A name that we need is taken by a file or a folder.
        OSError: The disk refuses.
    """
    with folder_set(folder, record=record) as files:
        for paper in papers:
            files.add(paper.name, paper.content)
    return tuple(folder / name for name in files.names)
