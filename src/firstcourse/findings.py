"""Coded findings about a job: what is wrong or worth knowing, how bad, and what mends it."""

from enum import StrEnum

from pydantic import BaseModel, ConfigDict


class Severity(StrEnum):
    """How much a finding holds up the work."""

    STOP = "stop"
    FIX = "fix"
    NOTE = "note"


class Finding(BaseModel):
    """One coded statement about the job.

    Attributes:
        code: Room prefix and number, such as `BRD-101`; stable between versions.
        severity: `stop` halts the work, `fix` must be mended on the way, `note` informs.
        where: The place in words a setter uses.
        measured: What was found, with unit; empty when nothing was measured.
        limit: What the rule allows, with unit; empty when there is no limit.
        rule: Rule id in the rule book; empty when no rule speaks.
        source: Where the rule comes from, or `common practice`.
        remedy: What to do, in one or two sentences.
        message: What is wrong, in one sentence.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    code: str
    severity: Severity
    where: str
    message: str
    measured: str = ""
    limit: str = ""
    rule: str = ""
    source: str = ""
    remedy: str = ""
