"""`firstcourse explain`: why so many sheets, and what if."""

from pathlib import Path
from typing import TYPE_CHECKING

from firstcourse.cli.output import exit_code, print_json, progress
from firstcourse.cli.plan import Effort
from firstcourse.tongues import Tongue
from firstcourse.words import Speaker

if TYPE_CHECKING:
    from firstcourse.app import Explanation, Outcome, StockWhy
    from firstcourse.units import Tape

BAR = 30
"""Characters that stand for a whole sheet."""


def explain(
    job: Path, /, *, effort: Effort = 1, what_if: bool = True, tongue: Tongue | None = None, json: bool = False
) -> int:
    """Say why the plan takes so many sheets and not fewer, and what other sheets or framing would bring.

    Every alternative is planned and verified in full, one thing changed in each: each stock alone, other usual
    sheet sizes, one more row of blocking in walls or one more joist in ceilings, studs or ceiling joists moved by
    half their spacing, a longer search. Floors lie on panels that carry a seam anywhere. Nothing is written. Ends
    with 1 when a finding stops the work.

    Args:
        job: The job document (YAML or JSON).
        effort: How long to look for fewer sheets: 0 at once, 1 as usual, 3 longest.
        what_if: Plan the alternatives; without them only the plan itself is explained.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print for another program to read.
    """
    from firstcourse.app import explanation_summary, open_job
    from firstcourse.words import speaker_for

    done = open_job(job, tongue=tongue or "").explain(effort=effort, what_if=what_if, on_step=progress)
    plan = done.result.plan
    if json:
        print_json(explanation_summary(done))
        return exit_code(plan.findings)
    speaker = speaker_for(plan)
    print(speaker.text("cli-explain", job=plan.job.name, count=done.outcome.sheets))
    for stock in done.why:
        _print_why(stock, speaker)
    if what_if:
        _print_alternatives(done, speaker, plan.job.currency)
    return exit_code(plan.findings)


def _print_why(stock: "StockWhy", speaker: Speaker) -> None:
    print(f"\n{stock.stock}: {speaker.say(' '.join(speaker.told(stock.answer)))}")
    for reason in speaker.told(stock.reasons):
        print(f"  - {speaker.say(reason)}")
    for sheet in stock.sheets:
        used, kept = round(BAR * sheet.used), round(BAR * sheet.kept)
        bar = ("#" * used + "o" * kept).ljust(BAR, ".")[:BAR]
        parts = ", ".join(
            speaker.text("cli-share", part=part.name, percent=percent, kept=part.kept)
            for part, percent in zip(sheet.parts, sheet.percents, strict=False)
        )
        told = parts if sheet.source == "new" else speaker.text("cli-offcut", sheet=parts, source=sheet.source)
        print(f"    {sheet.id:4} |{bar}|  {told}")
    print(f"    {speaker.text('cli-bars')}")


def _print_alternatives(done: "Explanation", speaker: Speaker, currency: str) -> None:
    tape = speaker.tape
    print(f"\n{speaker.text('cli-what_if')}")
    head = speaker.labels("cli-column")
    print(
        f"    {head['sheets']:>6} {head['cost']:>10} {head['cuts']:>5} {head['mass']:>9} {head['heaviest']:>9} "
        f"{head['members']:>7}"
    )
    print(f"    {_row(done.outcome, tape)}  {speaker.statement(done.outcome.what)}")
    for number, outcome in enumerate(done.alternatives, start=1):
        what = speaker.statement(outcome.what)
        if outcome.failed:
            why = speaker.say(f"{what}: {' '.join(outcome.failed.split())}")
            print(f"{number:2}. {speaker.text('cli-not_planned'):52}  {why}")
            continue
        told = speaker.say(what)
        if not _differs(outcome, done.outcome):
            told = speaker.text("cli-no_difference", what=told)
        if outcome.stops:
            told = speaker.text("cli-stops", what=told, count=outcome.stops)
        print(f"{number:2}. {_row(outcome, tape)}  {told}")
    print(speaker.text("cli-cost", currency=currency or speaker.text("cli-money")))
    print(speaker.text("cli-mass"))


def _row(outcome: "Outcome", tape: "Tape") -> str:
    from firstcourse.app import mass_text

    cost = "-" if outcome.cost is None else f"{'~' if outcome.cost_by_area else ''}{outcome.cost:.2f}"
    mass, heaviest = mass_text(outcome.mass_kg, tape), mass_text(outcome.heaviest_kg, tape)
    return f"{outcome.sheets:>6} {cost:>10} {outcome.cuts:>5} {mass:>9} {heaviest:>9} {outcome.members:>7}"


def _differs(outcome: "Outcome", plan: "Outcome") -> bool:
    def figures(of: "Outcome") -> tuple[object, ...]:
        return of.by_stock, of.cost, of.cuts, of.heaviest_kg, of.members

    return figures(outcome) != figures(plan)
