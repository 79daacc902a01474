"""Run many jobs cheaply: one process loads and tries everything once, then a copy of it is forked for each job."""

import gc
import os
import resource
import select
import signal
import sys
import tempfile
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass

import firstcourse.app.papers
import firstcourse.app.session
import firstcourse.cli.plan  # noqa: F401  # what the command loads, once and not in each copy
from firstcourse.drawings import draw_surface, draw_tiling, to_dxf, to_svg
from firstcourse.errors import JobError, PlanRefusedError
from firstcourse.job import read_job_text
from firstcourse.papers import pages
from firstcourse.papers.office_pack import office_data
from firstcourse.papers.site_pack import pack_data
from firstcourse.papers.workbook import workbook
from firstcourse.steps import plan_job

MOST_CPU_S, MOST_MEMORY_KB = 60, 1_500_000
LONGEST_S = 400
"""A job that has not ended by then waits for something that never comes; the machine may be shared."""


def warm_up(documents: Iterable[str]) -> None:
    """Plan documents in this process, so that copies of it have all code compiled, all rules and fonts loaded.

    Nothing is printed to pages here: the page maker's threads would be missing from the copies.

    Args:
        documents: Jobs; those that are refused are passed over.
    """
    for document in documents:
        try:
            plan = plan_job(read_job_text(document), effort=0).plan
        except (JobError, PlanRefusedError):
            continue
        pack_data(plan), office_data(plan), workbook(plan)
        for surface in plan.surfaces[:1]:
            drawing = draw_tiling(plan, surface) if surface.tiled else draw_surface(plan, surface)
            to_svg(drawing), to_dxf(drawing)
    pages._compiler()  # loads the fonts
    # What is loaded is not looked through for garbage again, in any copy: that would copy its memory too.
    gc.collect()
    gc.freeze()


@dataclass(frozen=True, slots=True, kw_only=True)
class Ended:
    """How a copy ended.

    Attributes:
        code: Its exit code; negative a signal that ended it.
        said: What it answered.
        cpu: Processor time it took, with what it started [s].
        memory: Most memory it held, with what it shares with this process [kB].
        hung: Whether it was ended as it took too long.
    """

    code: int
    said: str
    cpu: float
    memory: int
    hung: bool


def apart(work: Callable[[str], tuple[int, str]]) -> Ended:
    """Do something in a copy of this process, with a folder of its own that is gone afterwards.

    Args:
        work: Given the folder; returns an exit code and an answer of at most 60,000 bytes.
    """
    sys.stdout.flush()
    reader, writer = os.pipe()
    with tempfile.TemporaryDirectory() as folder:
        child = os.fork()
        if child == 0:
            os.close(reader)
            signal.signal(signal.SIGXCPU, signal.SIG_DFL)
            resource.setrlimit(resource.RLIMIT_CPU, (MOST_CPU_S, MOST_CPU_S + 1))
            try:
                code, said = work(folder)
            except BaseException as error:
                code, said = 70, f"escaped: {type(error).__name__}: {error}"
            os.write(writer, said.encode(errors="replace")[:60_000])
            os._exit(code)
        os.close(writer)
        hung = not _answered(reader, child)
        with os.fdopen(reader, "rb") as pipe:
            said = pipe.read().decode(errors="replace")
        _, status, used = os.wait4(child, 0)
    return Ended(
        code=os.waitstatus_to_exitcode(status),
        said=said,
        cpu=used.ru_utime + used.ru_stime,
        memory=used.ru_maxrss,
        hung=hung,
    )


def _answered(reader: int, child: int) -> bool:
    """Wait for an answer or the end; where neither comes, or memory runs away, end it and say no."""
    until = time.monotonic() + LONGEST_S
    while time.monotonic() < until:
        if select.select([reader], [], [], 1.0)[0]:
            return True
        if _memory(child) > 2 * MOST_MEMORY_KB:
            break
    os.kill(child, signal.SIGKILL)
    return False


def _memory(process: int) -> int:
    """Memory a process holds now [kB]."""
    with open(f"/proc/{process}/statm") as file:
        return int(file.read().split()[1]) * (os.sysconf("SC_PAGE_SIZE") // 1024)
