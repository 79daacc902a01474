"""`firstcourse explain`: why so many sheets, and what if."""

from pathlib import Path
from typing import TYPE_CHECKING

from firstcourse.cli.output import exit_code, print_json, progress
from firstcourse.cli.plan import Effort
from firstcourse.tongues import Tongue
from firstcourse.units import counted
from firstcourse.words import Speaker

if TYPE_CHECKING:
    from firstcourse.app.summaries import Explanation, Outcome, StockWhy
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
    from firstcourse.app.session import open_job
    from firstcourse.app.summaries import explanation_summary
    from firstcourse.words import speaker_for

    done = open_job(job, tongue=tongue or "").explain(effort=effort, what_if=what_if, on_step=progress)
    plan = done.result.plan
    if json:
        print_json(explanation_summary(done))
        return exit_code(plan.findings)
    print(f"{plan.job.name}: why {counted(done.outcome.sheets, 'sheets')}?")
    speaker = speaker_for(plan)
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
            f"{part.name} {percent}%{' kept' if part.kept else ''}"
            for part, percent in zip(sheet.parts, sheet.percents, strict=False)
        )
        source = "" if sheet.source == "new" else f" (kept offcut {sheet.source})"
        print(f"    {sheet.id:4} |{bar}|  {parts}{source}")
    print("    # becomes boards, o is kept, . is waste")


def _print_alternatives(done: "Explanation", speaker: Speaker, currency: str) -> None:
    tape = speaker.tape
    print("\nWHAT IF? Each is planned and verified in full; ranked by sheets, cost, cuts, mass")
    print(f"    {'sheets':>6} {'cost':>10} {'cuts':>5} {'mass':>9} {'heaviest':>9} {'to add':>7}")
    print(f"    {_row(done.outcome, tape)}  {speaker.statement(done.outcome.what)}")
    for number, outcome in enumerate(done.alternatives, start=1):
        what = speaker.statement(outcome.what)
        if outcome.failed:
            why = speaker.say(f"{what}: {' '.join(outcome.failed.split())}")
            print(f"{number:2}. {'cannot be planned':52}  {why}")
            continue
        same = "" if _differs(outcome, done.outcome) else " (no difference)"
        stop = "stops" if outcome.stops == 1 else "stop"
        stops = f" ({counted(outcome.stops, 'findings')} {stop} the work)" if outcome.stops else ""
        print(f"{number:2}. {_row(outcome, tape)}  {speaker.say(what)}{same}{stops}")
    print(f"cost: {currency or 'money'} for the sheets alone; ~ taken by area where the job gives no price.")
    print("mass: all sheets to buy; heaviest: the heaviest piece; to add: framing members the plan asks for.")


def _row(outcome: "Outcome", tape: "Tape") -> str:
    from firstcourse.app.telling import mass_text

    cost = "-" if outcome.cost is None else f"{'~' if outcome.cost_by_area else ''}{outcome.cost:.2f}"
    mass, heaviest = mass_text(outcome.mass_kg, tape), mass_text(outcome.heaviest_kg, tape)
    return f"{outcome.sheets:>6} {cost:>10} {outcome.cuts:>5} {mass:>9} {heaviest:>9} {outcome.members:>7}"


def _differs(outcome: "Outcome", plan: "Outcome") -> bool:
    def figures(of: "Outcome") -> tuple[object, ...]:
        return of.by_stock, of.cost, of.cuts, of.heaviest_kg, of.members

    return figures(outcome) != figures(plan)
