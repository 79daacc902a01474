"""Coded findings about a job: what is wrong or worth knowing, how bad, and what puts it right."""

from enum import StrEnum

from pydantic import BaseModel, ConfigDict, Field

from firstcourse.values import Limit, Measure, Value


class Severity(StrEnum):
    """How much a finding holds up the work."""

    STOP = "stop"
    FIX = "fix"
    NOTE = "note"


class Finding(BaseModel):
    """One coded statement about the job; what it says in words stands in the message files under its code.

    Attributes:
        code: Room prefix and number, such as `BRD-101`; stable between versions.
        severity: `stop` halts the work, `fix` must be put right on the way, `note` informs.
        at: What it is about, by reference, the place first.
        measured: What was found; None when nothing was measured.
        limit: What is allowed; None when there is no limit.
        rule: Rule id in the rule book; empty when no rule speaks.
        remedies: What to do, by code.
        values: What else its words need, by name.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    code: str
    severity: Severity
    at: tuple[str, ...] = Field(min_length=1)
    measured: Measure | None = None
    limit: Limit | None = None
    rule: str = ""
    remedies: tuple[str, ...] = ()
    values: dict[str, Value] = {}

    def __hash__(self) -> int:
        return hash((self.code, self.at, self.measured, self.limit, self.remedies))
