"""A number with its formula, the values put in, and its result."""

from collections.abc import Iterable

from pydantic import BaseModel, ConfigDict, Field

from firstcourse.values import Limit, Measure, Value, Word


class Working(BaseModel):
    """How one headline number came about, so that anyone can redo it by hand.

    Attributes:
        formula: Id of the formula; its words, its source and the names of its inputs stand in the message files.
        at: What it is about, by reference, the place first.
        inputs: What is put in and what comes out on the way, by name, in order.
        result: What it comes to.
        limit: What is allowed of it; None where nothing limits it.
        rule: Rule id of the limit or of what the formula rests on; empty when no rule speaks.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    formula: str
    at: tuple[str, ...] = Field(min_length=1)
    inputs: dict[str, Value] = {}
    result: Measure | Word | int
    limit: Limit | None = None
    rule: str = ""

    @property
    def id(self) -> str:
        """Key in the plan: formula and what it is about, as `height-doorway_step@bath/floor/door/hall`."""
        return f"{self.formula}@{'+'.join(self.at)}"


def by_id(workings: Iterable[Working]) -> dict[str, Working]:
    """Workings under their keys in the plan.

    Raises:
        ValueError: Two have one key, so that one of them would be lost.
    """
    found: dict[str, Working] = {}
    for working in workings:
        if working.id in found:
            raise ValueError(f"two workings are {working.id}")
        found[working.id] = working
    return found
