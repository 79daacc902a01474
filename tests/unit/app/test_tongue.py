"""The tongue of a job is in its stamp alone; nothing derived depends on it, and no unknown one is taken."""

import pytest

from firstcourse.app.session import Session
from firstcourse.errors import JobError
from firstcourse.job import Site
from firstcourse.steps import plan as steps
from firstcourse.tongues import ENGLISH, TONGUES
from firstcourse.words import Speaker, speaker_for
from firstcourse.words.messages import Messages

JOB = """\
name: small
date: 2026-11-25
stock: [{id: board, size: [36 in, 60 in], thickness: 1/4 in}]
rooms:
  - name: wc
    corners: [A, B, C, D]
    sides: {A-B: 36 in, B-C: 48 in, C-D: 36 in, D-A: 48 in}
    diagonals: {A-C: 60 in, B-D: 60 in}
    taped_to: studs
    height: 8'
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
"""


def test_an_unknown_tongue_is_refused_with_those_there_are() -> None:
    with pytest.raises(JobError, match="tongue"):
        Session(f"tongue: xx\n{JOB}")


def test_a_job_says_nothing_of_it_and_means_english() -> None:
    assert Session(JOB).job.tongue == ENGLISH


def test_what_is_asked_for_stands_over_what_the_document_says() -> None:
    session = Session(JOB, tongue="xx")
    assert session.job.tongue == "xx"
    session.edit("name", "other")
    assert (session.job.name, session.job.tongue) == ("other", "xx")


def test_only_the_stamp_has_it(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = []
    derived = steps._derived
    monkeypatch.setattr(
        steps, "_derived", lambda job, *args, **kwargs: asked.append(job) or derived(job, *args, **kwargs)
    )
    plan = Session(JOB, tongue=TONGUES[-1]).plan(effort=0).plan
    assert plan.job.tongue == TONGUES[-1]
    assert [(job.tongue, job.name, job.site) for job in asked] == [(ENGLISH, "", Site())]
    assert speaker_for(plan).tongue == TONGUES[-1]


def test_the_reader_may_ask_for_another() -> None:
    plan = Session(JOB).plan(effort=0).plan
    assert speaker_for(plan, tongue=TONGUES[-1]).tongue == TONGUES[-1]


@pytest.mark.parametrize("tongue", TONGUES)
def test_every_tongue_has_its_folder(tongue: str) -> None:
    assert Messages(tongue, "us", {}).tongue == tongue
    assert Speaker("us", Session(JOB).job.tape, tongue=tongue).tongue == tongue
