"""A kept plan as its page shows it."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.app import PlanSummary, kept_plan, summarize
from firstcourse.web.asking import Ask
from firstcourse.words import SaidFinding, alike_together, speaker_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """Something to buy, in words."""

    count: int
    item: str
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceCard:
    """One surface of a plan.

    Attributes:
        tiled: That it has tile to be drawn.
    """

    id: str
    title: str
    boards: int
    tiled: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownPlan:
    """A plan in a reader's words.

    Attributes:
        revision: The one that is planned.
        papers: Names of the papers that are kept, packs first.
    """

    revision: int
    summary: PlanSummary
    findings: Sequence[SaidFinding]
    surfaces: Sequence[SurfaceCard]
    to_buy: Sequence[Bought]
    papers: Sequence[str]


def shown_plan(ask: Ask, revision: int | None = None) -> ShownPlan | None:
    """The newest plan of a job, or that of a revision; None where there is none."""
    jobs, number = ask.house.jobs, ask.job.planned if revision is None else revision
    kept = jobs.plan(ask.job.id, number) if number else None
    if kept is None:
        return None
    result = kept_plan(kept.document, kept.beside)
    if result is None:
        return None
    speaker = speaker_for(result.plan, tongue=ask.tongue)
    names = jobs.paper_names(ask.job.id, number)
    summary = summarize(result)
    said = [(one, speaker.quantity(one)) for one in summary.quantities if one.buy]
    return ShownPlan(
        revision=number,
        summary=summary,
        findings=alike_together(speaker.findings(result.plan.findings)),
        surfaces=tuple(
            SurfaceCard(
                id=one.id,
                title=speaker.words(speaker.title(one)),
                boards=len(one.boards),
                tiled=bool(one.tiles),
            )
            for one in result.plan.surfaces
        ),
        to_buy=tuple(
            Bought(count=one.buy, item=speaker.words(words.item), unit=words.pack) for one, words in said
        ),
        papers=sorted(names, key=lambda name: (not name.endswith(".pdf"), "/" in name, name)),
    )
