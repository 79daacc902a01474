"""What is shown of each result first: frozen values, the same for terminal, screens and JSON."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from firstcourse.findings import Finding
from firstcourse.frames import Remedy
from firstcourse.plan import Quantity, StructureSheet
from firstcourse.steps import Explanation as Explanation
from firstcourse.steps import JobJudgement, PlanResult
from firstcourse.steps import Outcome as Outcome
from firstcourse.survey import RoomReport, SurveyResult, report
from firstcourse.takeoff import Reason, beside_practice
from firstcourse.takeoff import StockWhy as StockWhy
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class StockUse:
    """Sheets of one stock.

    Attributes:
        id: The stock.
        used: Sheets that are cut.
        lower_bound: Fewest that the pieces can be cut from.
        proven: That these boards take no fewer.
        fewest: That no layout that keeps the rules takes fewer.
        practice: Sheets that plain practice would have bought; None where it is told for several stocks together.
    """

    id: str
    used: int
    lower_bound: int
    proven: bool
    fewest: bool
    practice: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSummary:
    """The figures that a setter asks for first.

    Attributes:
        job: The job's name.
        digest: SHA-256 of job and rules.
        changes: Rules that the job sets otherwise than the book, each as `rule value (reason)`.
        boards: Those to be set; what is up already is not counted.
        sheets: New ones.
        offcuts_used: Kept offcuts that are cut.
        whole: Whole tiles.
        cut: Cut tiles.
        practice: What plain practice would have bought where several stocks serve.
        files: Those written.
    """

    job: str
    digest: str
    changes: tuple[str, ...]
    boards: int
    sheets: int
    offcuts_used: int
    cuts: int
    fasteners: int
    whole: int
    cut: int
    stock: tuple[StockUse, ...]
    practice: tuple[Reason, ...]
    quantities: tuple[Quantity, ...]
    findings: tuple[Finding, ...]
    files: tuple[Path, ...] = ()


def summarize(result: PlanResult, files: Sequence[Path] = ()) -> PlanSummary:
    """The key figures of a plan.

    Args:
        result: A verified plan.
        files: Those written of it.
    """
    plan = result.plan
    together = {name: said for name in plan.counts if (said := beside_practice(plan, name))}
    practice: list[Reason] = []
    for said in together.values():
        practice += [one for one in said if one not in practice]
    boards = [board for surface in plan.surfaces for board in surface.boards if not board.fixed]
    return PlanSummary(
        job=plan.job.name,
        digest=plan.job.digest,
        changes=result.changes,
        boards=len(boards),
        sheets=sum(sheet.source == "new" for sheet in plan.sheets),
        offcuts_used=sum(sheet.source != "new" for sheet in plan.sheets),
        cuts=sum(len(sheet.cuts) for sheet in plan.sheets),
        fasteners=sum(len(board.fasteners) for board in boards),
        whole=sum(tile.whole for surface in plan.surfaces for tile in surface.tiles),
        cut=sum(not tile.whole for surface in plan.surfaces for tile in surface.tiles),
        stock=tuple(
            StockUse(
                id=name,
                used=found.used,
                lower_bound=found.lower_bound,
                proven=found.proven,
                fewest=any(bound.proven and bound.stocks == (name,) for bound in plan.bounds),
                practice=None if name in together else result.practice.get(name, 0),
            )
            for name, found in plan.counts.items()
        ),
        practice=tuple(practice),
        quantities=plan.quantities,
        findings=plan.findings,
        files=tuple(files),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RemedyFacts:
    """One remedy as computed: what it costs in height [in], material and labour [h], both relative.

    Attributes:
        measures: What it is made of, as rule-book names.
        still_failing: Checks that fail even so.
    """

    measures: tuple[str, ...]
    passes: bool
    height_in: float
    material: float
    labour_h: float
    still_failing: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceRemedies:
    """The remedies of one place, best first."""

    where: str
    options: tuple[RemedyFacts, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgementSummary:
    """What was judged of a job, as `JobJudgement` has it, and the files written."""

    job: str
    judged: tuple[str, ...]
    findings: tuple[Finding, ...]
    remedies: tuple[PlaceRemedies, ...]
    workings: dict[str, Working]
    structures: tuple[StructureSheet, ...]
    cautions: tuple[str, ...]
    changes: tuple[str, ...]
    files: tuple[Path, ...] = ()


def judgement_summary(done: JobJudgement, files: Sequence[Path] = ()) -> JudgementSummary:
    """A judgement as it is shown.

    Args:
        done: What was judged.
        files: Those written of it.
    """
    return JudgementSummary(
        job=done.job,
        judged=done.judged,
        findings=done.findings,
        remedies=tuple(
            PlaceRemedies(where=where, options=tuple(map(_remedy, options))) for where, options in done.remedies
        ),
        workings=done.workings,
        structures=done.structures,
        cautions=done.cautions,
        changes=done.changes,
        files=tuple(files),
    )


def _remedy(option: Remedy) -> RemedyFacts:
    return RemedyFacts(
        measures=option.names,
        passes=option.passes,
        height_in=round(option.height_in, 6),
        material=option.material,
        labour_h=option.labour_h,
        still_failing=option.still_failing,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SurveySummary:
    """The adjusted rooms, and what their readings prove."""

    rooms: tuple[RoomReport, ...]
    findings: tuple[Finding, ...]


def survey_summary(done: SurveyResult) -> SurveySummary:
    """A survey as it is shown.

    Args:
        done: The adjusted readings.
    """
    return SurveySummary(rooms=tuple(map(report, done.rooms)), findings=done.findings)


@dataclass(frozen=True, slots=True, kw_only=True)
class ExplanationSummary:
    """Why a plan takes what it takes, and its alternatives, best first."""

    job: str
    digest: str
    why: tuple[StockWhy, ...]
    plan: Outcome
    alternatives: tuple[Outcome, ...]


def explanation_summary(done: Explanation) -> ExplanationSummary:
    """An explanation as it is shown.

    Args:
        done: The plan with its alternatives.
    """
    stamp = done.result.plan.job
    return ExplanationSummary(
        job=stamp.name, digest=stamp.digest, why=done.why, plan=done.outcome, alternatives=done.alternatives
    )
