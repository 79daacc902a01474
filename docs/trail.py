"""Walk one reading from the tape to a cut ticket and one rule value to a finding: every stop, into trail.md.

    .venv/bin/python docs/trail.py

Each stop reads what really stands there in the first example's plan; `tests/unit/papers/test_trail.py` changes
the reading and the rule and holds that every stop changes with them.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from firstcourse.findings import Finding
from firstcourse.job import Job, read_job_text
from firstcourse.papers.ticket_pages import second_cuts
from firstcourse.plan import Plan
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.words import speaker_for

ROOT = Path(__file__).parents[1]
EXAMPLE = ROOT / "examples" / "tub-bathroom" / "job.yaml"
PAGE = ROOT / "docs" / "trail.md"
FLANGE, RULE, FINDING = "closet flange", "door.clearance.min", "SUI-603"


@dataclass(frozen=True)
class Walked:
    """A job as text, read, and planned."""

    text: str
    job: Job
    plan: Plan


@dataclass(frozen=True)
class Stop:
    """Where a value stands, in which room of the house, and what stands there."""

    where: str
    room: str
    value: Callable[[Walked], str]


def walked(text: str) -> Walked:
    """Read and plan a job."""
    job = read_job_text(text)
    return Walked(text, job, plan_job(job, effort=0).plan)


def _line(done: Walked) -> str:
    return next(line.strip() for line in done.text.splitlines() if FLANGE in line)


def _opening(done: Walked) -> str:
    floor = done.job.rooms[0].floor
    assert floor is not None
    return str(next(one.left for one in floor.openings if one.id == FLANGE))


def _placed(done: Walked) -> str:
    return str(next(one.centre for one in done.plan.surfaces[0].openings if one.id == FLANGE))


def _board(done: Walked) -> str:
    board = next(board for board in done.plan.surfaces[0].boards if board.holes)
    return f"{board.mark}: {board.holes[0][0]}, …"


def _piece(done: Walked) -> str:
    piece = next(piece for piece in done.plan.pieces if piece.holes and piece.board.startswith("hall bath/floor"))
    return f"{piece.id}: {piece.holes[0][0]}, …"


def _ticket(done: Walked) -> str:
    mark = next(board.mark for board in done.plan.surfaces[0].boards if board.holes)
    drawn = next(str(one) for row in second_cuts(done.plan) for one in row if mark in str(one))
    found = re.findall(r">([\d' /\-]+\")<", drawn)
    return f"{mark}: {', '.join(dict.fromkeys(found))}"


def _finding(plan: Plan) -> Finding:
    return next(finding for finding in plan.findings if finding.code == FINDING)


def _in_force(done: Walked) -> str:
    entry = load_rules(done.job.date, done.job.practice, done.job.overrides()).entry(RULE)
    return f"{entry.value} {entry.unit}, {entry.basis}"


def _asked(done: Walked) -> str:
    note = next(note for note in done.plan.given.rules if note.id == RULE)
    return f"{note.value} {note.unit}, {note.basis}"


def _limit(done: Walked) -> str:
    return str(_finding(done.plan).limit)


def _said(done: Walked) -> str:
    said = speaker_for(done.plan).finding(_finding(done.plan))
    return f"{said.message} Limit: {said.limit}. Do: {said.remedy}"


READING = (
    Stop("the job document, in the setter's words", "`examples/tub-bathroom/job.yaml`", _line),
    Stop("`Job.rooms[0].floor.openings[].left` [ticks]", "`job`", _opening),
    Stop("`Plan.surfaces[0].openings[].centre` [ticks], over the adjusted corners", "`survey`", _placed),
    Stop("`Plan.surfaces[0].boards[].holes`, in the floor's coordinates", "`boards`", _board),
    Stop("`Plan.pieces[].holes`, in the piece's own", "`boards`", _piece),
    Stop("the second cuts of the cut ticket, on the tape", "`papers`, by `words`", _ticket),
)
"""How far the closet flange lies along wall D-A, taped once."""
VALUE = (
    Stop("the rule in force on the job's day", "`rules`", _in_force),
    Stop("`Plan.given.rules[]`, as it was asked", "`steps`", _asked),
    Stop("`Plan.findings[].limit`", "`grounds`", _limit),
    Stop("the finding as said", "`words`", _said),
)
"""The least gap under a door."""


def page(done: Walked) -> str:
    """The page: both walks, stop by stop."""
    parts = [
        "# From the tape to a cut ticket, and from a rule to a finding\n",
        "Made by `.venv/bin/python docs/trail.py`. What stands in the last column is read at that stop of the",
        "first example's plan; a test changes the reading and the rule and holds that every stop follows.\n",
    ]
    for title, stops in ((f"One reading: where the {FLANGE} lies", READING), (f"One rule: `{RULE}`", VALUE)):
        parts += [f"## {title}\n", "| stop | stands in | room | value |", "|---|---|---|---|"]
        parts += [
            f"| {number} | {stop.where} | {stop.room} | {stop.value(done).replace('|', chr(92) + '|')} |"
            for number, stop in enumerate(stops, 1)
        ]
        parts.append("")
    return "\n".join(parts)


if __name__ == "__main__":
    PAGE.write_text(page(walked(EXAMPLE.read_text(encoding="utf-8"))), encoding="utf-8")
