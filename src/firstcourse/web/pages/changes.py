"""What changed between two plans, in a reader's words."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.app import PlanResult, kept_plan
from firstcourse.app.difference import difference
from firstcourse.web.asking import Ask
from firstcourse.words import SaidFinding, Speaker, speaker_for

_KINDS = ("boards", "pieces", "sheets", "cuts", "tiles", "marks")


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """How many of one kind came, went, are others and stay."""

    kind: str
    came: int
    went: int
    changed: int
    stay: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Buying:
    """Something to buy that is bought in another number."""

    item: str
    before: int
    after: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanChanges:
    """The difference of two plans."""

    counts: Sequence[Count]
    buying: Sequence[Buying]
    came: Sequence[SaidFinding]
    went: Sequence[SaidFinding]


def plan_changes(ask: Ask, earlier: int, later: int) -> PlanChanges | None:
    """The difference of the plans of two revisions; None where one of them is not planned."""
    before, after = _plan(ask, earlier), _plan(ask, later)
    if before is None or after is None:
        return None
    found = difference(before, after)
    old, new = (speaker_for(one.plan, tongue=ask.tongue) for one in (before, after))
    counts = []
    for kind in _KINDS:
        of = getattr(found, kind)
        count = Count(
            kind=kind, came=len(of.added), went=len(of.removed), changed=len(of.changed), stay=len(of.stay)
        )
        counts.append(count)
    changed = [one for one in found.quantities.changed.values() if one.before.buy != one.after.buy]
    buying = [
        *(Buying(item=_item(new, one.after), before=one.before.buy, after=one.after.buy) for one in changed),
        *(Buying(item=_item(new, one), before=0, after=one.buy) for one in found.quantities.added.values()),
        *(Buying(item=_item(old, one), before=one.buy, after=0) for one in found.quantities.removed.values()),
    ]
    return PlanChanges(
        counts=counts,
        buying=buying,
        came=new.findings(found.findings.added.values()),
        went=old.findings(found.findings.removed.values()),
    )


def _plan(ask: Ask, revision: int) -> PlanResult | None:
    kept = ask.house.jobs.plan(ask.job.id, revision)
    return None if kept is None else kept_plan(kept.document, kept.beside)


def _item(speaker: Speaker, quantity: object) -> str:
    return speaker.words(speaker.quantity(quantity).item)  # type: ignore[arg-type]
