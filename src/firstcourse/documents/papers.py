"""All papers of a plan, each under its name in the plan's folder."""

from typing import NamedTuple

from firstcourse.documents.workbook import workbook
from firstcourse.plan import Plan

WORKBOOK = "pieces-and-cuts.xlsx"


class Paper(NamedTuple):
    """A file to write.

    Attributes:
        name: Relative to the plan's folder, parted by `/`.
        content: The whole file.
    """

    name: str
    content: bytes


def all_papers(plan: Plan) -> tuple[Paper, ...]:
    """Every paper of a verified plan, in the order a setter needs them; the same plan gives the same bytes."""
    return (Paper(WORKBOOK, workbook(plan)),)
