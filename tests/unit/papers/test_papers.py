"""Every paper has a name of its own that stays within the plan's folder."""

from pathlib import PurePosixPath

from firstcourse.papers.papers import WORKBOOK, all_papers
from firstcourse.plan import JobStamp, Plan

EMPTY = Plan(job=JobStamp(name="empty", digest="0" * 64, date="2026-11-25"))


def test_papers_have_names_of_their_own_within_the_folder() -> None:
    names = [paper.name for paper in all_papers(EMPTY)]
    assert WORKBOOK in names
    assert len({name.casefold() for name in names}) == len(names)
    for name in names:
        path = PurePosixPath(name)
        assert not path.is_absolute() and ".." not in path.parts
        assert name.casefold() != "plan.json"
