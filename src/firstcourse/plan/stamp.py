"""What a plan was made from: the job, and the rules that it rests on."""

from firstcourse.plan.base import Frozen
from firstcourse.plan.site import SiteStamp
from firstcourse.tongues import ENGLISH, Tongue
from firstcourse.units import Tape


class RuleOverride(Frozen):
    """A rule's value set by the job, with the reason that papers print."""

    rule: str
    value: float | str | bool
    unit: str = ""
    reason: str


class RuleNote(Frozen):
    """A rule the plan rests on, as the papers print it.

    Attributes:
        source: Where the value comes from and the place in it, as printed: how that was read stands with it.
        taken_from: Practice it is borrowed from, for want of a value of the job's own; else empty.
        read: `first_hand`, `quoted` or `memory`: how its source was read; empty where it has none.
        converted: The value as its source has it, where it is rounded into another unit; else empty.
        override: The job's reason where it sets the value; else empty.
    """

    id: str
    value: str
    unit: str
    basis: str
    source: str
    taken_from: str = ""
    read: str = ""
    converted: str = ""
    override: str = ""


class JobStamp(Frozen):
    """Which job and which rules made this plan.

    Attributes:
        digest: SHA-256 of the job document and the rule book.
        practice: Rule set, such as `us`.
        date: Date the rules are read for, ISO 8601.
        tongue: What the papers are written in.
        site: What stands on the cover.
    """

    name: str
    digest: str
    practice: str = "us"
    date: str = ""
    tape: Tape = Tape.INCH
    tongue: Tongue = ENGLISH
    currency: str = ""
    effort: int = 1
    overrides: tuple[RuleOverride, ...] = ()
    site: SiteStamp = SiteStamp()
