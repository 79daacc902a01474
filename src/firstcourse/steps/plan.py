"""The steps of a plan in order: survey, judgement, boards and cutting, fasteners, quantities, verification."""

import hashlib
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from firstcourse.boards import area_working, cut_as, fasten, filled_ground
from firstcourse.details import return_boards, returns_findings, with_return_boards
from firstcourse.errors import PlanRefusedError
from firstcourse.findings import Finding
from firstcourse.job import Job, Site, job_values
from firstcourse.layers import surface_layers
from firstcourse.plan import Given, JobStamp, Plan, RuleOverride, SiteStamp, Stock, Surface, SurfaceKind, sealed
from firstcourse.pricing import cost_working, price
from firstcourse.reuse import ONCE, Kept, Steps
from firstcourse.rules import RuleSet, load_rules
from firstcourse.schedule import schedule
from firstcourse.share import Share, in_turn
from firstcourse.sheets import (
    Shared,
    Surfaced,
    allowed_stock,
    board,
    bounded_again,
    by_plain_practice,
    demand,
    every_layout,
    factory_edges_kept,
    job_stock,
    layout_bounds,
    named_as_before,
    plan_sheets,
    seams_shifted,
    sheet_counts,
    thin_cuts,
    with_done,
    with_factory_edges,
)
from firstcourse.showers import shower_floors
from firstcourse.steps.judging import judge_job
from firstcourse.steps.marking import marked
from firstcourse.steps.rule_notes import borrowed_values, changes_not_asked, rule_notes
from firstcourse.steps.tile import tile_job
from firstcourse.steps.too_many import Ahead, refuse_too_many_boards, refuse_too_many_tiles, work_ahead
from firstcourse.steps.waterproofing import waterproof
from firstcourse.survey import benches_at_walls, survey_job
from firstcourse.takeoff import count, count_tiles
from firstcourse.tongues import ENGLISH
from firstcourse.verify import verify_text
from firstcourse.workings import Working, by_id

_LEAN_JUDGED = {"SUI-411", "SUI-412"}
"""A wall out of plumb, as the judgement tells it."""
_LETTER = {SurfaceKind.FLOOR: "F", SurfaceKind.WALL: "W", SurfaceKind.CEILING: "C", SurfaceKind.COUNTER: "T"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanResult:
    """A verified plan, its document, and what is told beside it.

    Attributes:
        practice: Sheets by stock that plain practice would have bought.
        changes: Rules that the job sets otherwise than the book, each as `rule value (reason)`.
    """

    plan: Plan
    document: str
    practice: dict[str, int]
    changes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Derived:
    """A plan without its stamp, and what plain practice would have bought."""

    plan: Plan
    practice: dict[str, int]


def plan_job(
    job: Job,
    *,
    effort: int = 1,
    share: Share = in_turn,
    steps: Steps = ONCE,
    on_step: Callable[[str], None] = lambda _text: None,
    on_ahead: Callable[[Ahead], None] = lambda _ahead: None,
) -> PlanResult:
    """Plan a job.

    Args:
        job: The job document.
        effort: Level 0 to 3, counted in solver work.
        share: How rooms are shared out; the plan does not depend on it.
        steps: Does the steps, or reuses them; the plan does not depend on it.
        on_step: Told the name of each step as it begins.
        on_ahead: Told about how much there is to lay out, before that begins; nothing where all is reused.

    Raises:
        JobError: The readings do not fix a room.
        InputValueError: A rule is overridden that does not exist.
        PlanRefusedError: The plan does not verify.
    """
    rules = load_rules(job.date, job.practice, job.overrides())
    # Nothing but the stamp depends on what the job is called, where it is and what its papers are written in.
    nameless = job.model_copy(update={"name": "", "site": Site(), "tongue": ENGLISH})
    key = steps.key(_derived, nameless, effort, rules.digest())
    found = steps.kept(key, None)
    derived: _Derived = (
        _derived(nameless, rules, effort, share=share, steps=steps, on_step=on_step, on_ahead=on_ahead)
        if found is None
        else found.value
    )
    stamp = _stamp(job, rules, effort)
    plan = derived.plan.model_copy(update={"job": stamp, "given": sealed(job_values(job), derived.plan.rules)})
    document = plan.model_dump_json(by_alias=True, indent=1) + "\n"
    unnamed = {"name": "", "digest": "", "site": SiteStamp(), "tongue": ENGLISH}
    proven = steps.key(verify_text, key, stamp.model_copy(update=unnamed))
    if steps.kept(proven, None) is None:
        on_step("verification")
        verdict = verify_text(document, do=steps.do)
        if verdict.objections:
            raise PlanRefusedError(tuple(f"{o.code} {o.where}: {o.message}" for o in verdict.objections))
        steps.keep(key, Kept(derived, ()))
        steps.keep(proven, Kept(True, ()))
    return PlanResult(plan=plan, document=document, practice=derived.practice, changes=rules.changes())


def _derived(
    job: Job,
    rules: RuleSet,
    effort: int,
    *,
    share: Share,
    steps: Steps,
    on_step: Callable[[str], None],
    on_ahead: Callable[[Ahead], None],
) -> _Derived:
    """All of a plan but its stamp."""
    on_step("survey")
    survey = survey_job(job, rules, steps=steps)
    job = benches_at_walls(job, survey.rooms, rules)
    by_kind = job_stock(job, rules)
    stock = tuple({item.id: item for kind in SurfaceKind for item in by_kind[kind]}.values())
    surfaces = with_done(_marked(survey.surfaces, by_kind, rules), stock, job)
    refuse_too_many_boards(surfaces, job)
    refuse_too_many_tiles(surfaces, job, rules)
    on_ahead(work_ahead(surfaces, job))
    on_step("judgement")
    judgement = judge_job(job, survey, rules)
    on_step("boards and cutting")
    layouts, cutting, by_practice = board(surfaces, stock, job, rules, effort=effort, share=share, steps=steps)
    layouts, cutting = seams_shifted(surfaces, layouts, cutting, stock, job, rules, effort=effort)
    before = layouts
    layouts, cut_sheets = factory_edges_kept(
        [item.surface for item in surfaces], layouts, cutting.sheets, rules, job.tape
    )
    if layouts != before:
        cutting = replace(cutting, sheets=cut_sheets)
        cutting = bounded_again(cutting, *demand(surfaces, layouts), stock, job, effort=effort)
    layouts, cut_sheets = named_as_before(surfaces, layouts, cut_sheets, rules)
    sheets = plan_sheets(cut_sheets, stock, job, rules)
    counts, bounds = sheet_counts(cutting, stock, job)
    place = {part.piece: (sheet, part) for sheet in sheets for part in sheet.parts if part.piece}
    pieces = tuple(
        piece
        for item, layout in zip(surfaces, layouts, strict=True)
        for piece in (
            *(piece.model_copy(update={"stock": place[piece.id][0].stock}) for piece in layout.pieces),
            *(cut_as(one.board, one.stock, job.tape) for one in item.up),
        )
    )
    on_step("fasteners and quantities")
    findings: list[Finding] = [*_not_judged(survey.findings, judgement.findings), *judgement.findings]
    workings: dict[str, Working] = {**survey.workings, **judgement.workings}
    worked = list(bounds)
    stock_of = {piece.id: piece.stock for piece in pieces}
    done: list[Surface] = []
    rooms = {room.name: room for room in job.rooms}
    for item, layout in zip(surfaces, layouts, strict=True):
        boarded = item.surface.model_copy(
            update={
                "boards": tuple(
                    board if board.fixed else with_factory_edges(board, *place[board.piece], job.tape.graduation)
                    for board in layout.boards
                ),
                "seams": layout.seams,
                "supports": (*item.surface.supports, *layout.added_supports),
                "heights": judgement.heights.get(item.surface.id, ()),
                "layers": surface_layers(job, rooms[item.surface.room], item.surface, item.stock, rules),
            }
        )
        fills, bare = steps.do(filled_ground, boarded, rules, job.tape)
        fastened = steps.do(fasten, boarded, rules, job.tape)
        done.append(boarded.model_copy(update={"boards": fastened.boards, "fills": fills}))
        findings += [
            *layout.findings,
            *bare,
            *fastened.findings,
            *returns_findings(item.surface, item.stock, rules),
        ]
        if boarded.boards:
            worked.append(area_working(boarded, stock_of))
        if fastened.working is not None:
            worked.append(fastened.working)
    findings += thin_cuts(sheets, done, rules)
    bounded = layout_bounds(
        [Shared(surface, item.stock) for surface, item in zip(done, surfaces, strict=True)],
        stock,
        {name: found.used for name, found in counts.items()},
        [finding for layout in layouts for finding in layout.findings],
        job,
        rules,
    )
    worked += [every_layout(bound, stock, job, rules) for bound in bounded]
    falls = shower_floors(job, survey, done, by_kind, rules)
    findings += falls.findings
    workings |= by_id(falls.workings)
    tiled = tile_job(job, survey, (*done, *falls.surfaces), by_kind, rules, steps=steps)
    tiled = marked(tiled, pieces, stock, rules, job.tape)
    findings += tiled.findings
    workings |= tiled.workings
    needed = count(tuple(done), pieces, sheets, stock, counts, rules, job.tape)
    tile_needed = count_tiles(tiled.surfaces, tiled.stock, rules, job.tape)
    water = waterproof(job, survey, done, falls.surfaces, rules, tiled=tiled.surfaces)
    findings += [*needed.findings, *tile_needed.findings, *water.findings]
    workings |= needed.workings | tile_needed.workings | by_id(water.workings)
    proofed = tuple(
        surface.model_copy(update={"membrane": water.kinds.get(surface.id, "")}) for surface in tiled.surfaces
    )
    practice, compared = by_plain_practice(surfaces, by_practice, layouts, stock, counts, job)
    worked += compared
    for what, priced in (
        ("sheets", price(needed.quantities, stock)),
        ("tiles", price(tile_needed.quantities, (), tiled.stock)),
    ):
        paid = cost_working(what, priced, job.currency)
        worked += [paid] if paid is not None else []
    workings |= by_id(worked)
    calendar = (
        None if job.schedule is None else schedule(proofed, tiled.stock, workings.keys(), job.schedule, rules)
    )
    # Every pack prints them, whatever else it needs.
    list(rules.under("safety.caution."))
    notes = rule_notes(rules)
    findings += [*borrowed_values(notes, job.practice), *changes_not_asked(rules, notes)]
    plan = Plan(
        # Stamped afterwards: what a job changes is asked for there, and by nothing else where it does nothing.
        job=JobStamp(name="", digest=""),
        surfaces=proofed,
        doors=survey.doors,
        pieces=pieces,
        sheets=sheets,
        stock=stock,
        tile_stock=tiled.stock,
        counts=counts,
        bounds=bounded,
        findings=tuple(findings),
        quantities=(*needed.quantities, *tile_needed.quantities, *water.quantities),
        workings=workings,
        structures=judgement.structures,
        schedule=calendar,
        given=Given(rules=notes),
    )
    return _Derived(plan=plan, practice=practice)


def _not_judged(surveyed: Sequence[Finding], judged: Sequence[Finding]) -> list[Finding]:
    """What the survey found, without leans that the judgement tells of, and says what to do about."""
    told = {finding.at[0] for finding in judged if finding.code in _LEAN_JUDGED}
    return [finding for finding in surveyed if finding.code != "SUR-104" or finding.at[0] not in told]


def _marked(
    surfaces: tuple[Surface, ...], by_kind: dict[SurfaceKind, tuple[Stock, ...]], rules: RuleSet
) -> tuple[Surfaced, ...]:
    """What is boarded with its mark and sheets; returns of windows come last, so that others keep their marks."""
    seen: Counter[str] = Counter()
    marked = []
    whole = [
        (with_return_boards(surface, stock, rules), stock)
        for surface in surfaces
        for stock in (allowed_stock(surface, by_kind),)
    ]
    returns = [strip for surface, stock in whole for strip in return_boards(surface, stock, rules)]
    for surface, stock in (*whole, *returns):
        letter = _LETTER[surface.kind]
        seen[letter] += 1
        marked.append(Surfaced(surface, f"{letter}{seen[letter]}", stock))
    return tuple(marked)


def _stamp(job: Job, rules: RuleSet, effort: int) -> JobStamp:
    # A job in which nothing is done yet, or scheduled, has the digest that it had before jobs could say so.
    unsaid = {name for name in ("done", "schedule") if getattr(job, name) is None} or None
    text = job.model_dump_json(by_alias=True, exclude=unsaid) + rules.digest()
    return JobStamp(
        name=job.name,
        digest=hashlib.sha256(text.encode()).hexdigest(),
        practice=job.practice,
        date=job.date.isoformat(),
        tape=job.tape,
        tongue=job.tongue,
        currency=job.currency,
        effort=effort,
        site=SiteStamp(
            **{name: "" if value is None else str(value) for name, value in job.site.model_dump().items()}
        ),
        overrides=tuple(
            RuleOverride(
                rule=change.rule,
                value=rules.entry(change.rule).value,
                unit=rules.entry(change.rule).unit,
                reason=change.reason,
            )
            for change in job.overrides()
        ),
    )
