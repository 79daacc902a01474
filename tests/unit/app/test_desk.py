"""The planning desk: of one job the newest request wins, work stops when it is told to, and faults are told."""

from collections.abc import Callable, Iterator
from time import monotonic, sleep

import pytest

from firstcourse.app.desk import Desk, Shelf, Standing, State
from firstcourse.app.desk_worker import Made, Paper, Task
from firstcourse.app.kept import kept_plan
from firstcourse.app.new_jobs import new_job_text
from firstcourse.app.session import Session

TEXT = new_job_text(name="Bath", practice="uk", tape="mm", tongue="en")


class Kept(Shelf):
    def __init__(self) -> None:
        self.plans: list[tuple[str, int, Made]] = []
        self.papers: list[str] = []

    def planned(self, job: str, revision: int, made: Made) -> None:
        self.plans.append((job, revision, made))

    def printed(self, job: str, revision: int, paper: Paper) -> None:
        self.papers.append(paper.name)


@pytest.fixture
def shelf() -> Kept:
    return Kept()


@pytest.fixture
def desk(shelf: Kept) -> Iterator[Desk]:
    opened = Desk(shelf)
    yield opened
    opened.close()


def waited(desk: Desk, job: str, fits: Callable[[Standing], bool]) -> Standing:
    end = monotonic() + 120
    while monotonic() < end:
        standing = desk.standing(job)
        if standing is not None and fits(standing):
            return standing
        sleep(0.05)
    raise AssertionError(f"still {desk.standing(job)}")


def test_the_newest_request_is_planned_as_a_session_plans_it_and_the_one_before_is_not(
    desk: Desk, shelf: Kept
) -> None:
    desk.ask("a", 1, Task(text=TEXT, name="Bath", effort=0))
    waited(desk, "a", lambda one: one.state is State.PLANNING)
    desk.ask("a", 2, Task(text=TEXT.replace("2400 mm", "2300 mm"), name="Bath", effort=0))
    desk.ask("a", 3, Task(text=TEXT, name="Bath", effort=0))
    waited(desk, "a", lambda one: one.state.over or bool(shelf.papers))
    desk.stop("a")  # the other papers are made in other tests
    done = waited(desk, "a", lambda one: one.state.over)
    assert (done.state, done.revision) == (State.STOPPED, 3)
    assert done.steps == ("survey", "judgement", "boards", "fasteners", "proof", "papers")
    ((job, revision, made),) = shelf.plans
    assert (job, revision) == ("a", 3) and made.document == Session(TEXT).plan(effort=0).document
    kept = kept_plan(made.document, made.beside)
    assert kept is not None and kept.document == made.document
    assert kept_plan(made.document.replace('"surfaces"', '"areas"', 1), made.beside) is None
    assert shelf.papers[0] == "plan.json"


def test_work_is_stopped_and_the_desk_goes_on(desk: Desk, shelf: Kept) -> None:
    desk.ask("a", 1, Task(text=TEXT, name="Bath"))
    desk.ask("b", 1, Task(text="name: [", name="b.yaml"))
    waited(desk, "a", lambda one: one.state is State.PLANNING)
    desk.stop("a")
    assert waited(desk, "a", lambda one: one.state.over).state is State.STOPPED
    failed = waited(desk, "b", lambda one: one.state.over)
    assert failed.state is State.FAILED and "b.yaml:" in failed.fault and not failed.ours
    assert shelf.plans == []


def test_what_waits_is_dropped_when_it_is_stopped(desk: Desk) -> None:
    desk.ask("a", 1, Task(text=TEXT, name="Bath"))
    desk.ask("b", 1, Task(text=TEXT, name="Bath"))
    desk.stop("b")
    standing = desk.standing("b")
    assert standing is not None and standing.state is State.STOPPED


def test_a_process_that_is_ended_from_outside_is_told_as_our_fault(desk: Desk) -> None:
    from multiprocessing import active_children

    before = set(active_children())
    desk.ask("a", 1, Task(text=TEXT, name="Bath"))
    waited(desk, "a", lambda one: bool(one.steps))
    (process,) = set(active_children()) - before
    process.kill()
    failed = waited(desk, "a", lambda one: one.state.over)
    assert failed.state is State.FAILED and failed.ours and "ended from outside" in failed.fault
