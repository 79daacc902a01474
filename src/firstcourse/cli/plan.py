"""`firstcourse plan`: boards, cuts and fasteners, verified, with all papers."""

from pathlib import Path
from typing import Annotated, Literal

from cyclopts import Parameter, validators

from firstcourse.cli.output import exit_code, print_findings, print_json, progress

Effort = Annotated[int, Parameter(validator=validators.Number(gte=0, lte=3))]
Paper = Literal["letter", "a4", "both", "none"]


def plan(job: Path, /, *, out: Path, effort: Effort = 1, paper: Paper = "both", json: bool = False) -> int:
    """Plan boards, cuts and fasteners; verify the plan; write plan.json and the papers.

    Ends with 1 when a finding stops the work; the plan is written all the same, so that it can be read.

    Args:
        job: The job document (YAML or JSON).
        out: Folder to write into; it is made where it is not there.
        effort: How long to look for fewer sheets: 0 at once, 1 as usual, 3 longest. Counted in steps, not seconds.
        paper: Which site pack to print: letter, a4, both, or none for plan.json alone.
        json: Print the summary for another program to read.
    """
    from firstcourse.planning import plan_file, summarize
    from firstcourse.planning.writing import write_plan

    result = plan_file(job, effort=effort, on_step=progress)
    progress("papers")
    files = write_plan(result, out, paper=paper)
    summary = summarize(result)
    if json:
        print_json({**summary, "files": [str(file) for file in files]})
    else:
        print_summary(summary, out)
        print_findings(result.plan.findings)
    return exit_code(result.plan.findings)


def print_summary(summary: dict[str, object], out: Path) -> None:
    """Print what the plan buys and where its papers lie."""
    print(f"{summary['job']}: {summary['boards']} boards from {summary['sheets']} sheets, "
          f"{summary['cuts']} cuts, {summary['fasteners']} fasteners; verified")  # fmt: skip
    stock = summary["stock"]
    assert isinstance(stock, list)
    for row in stock:
        proof = "no plan needs fewer" if row["proven"] else f"at least {row['lower_bound']} in any plan"
        print(f"  {row['id']}: {row['used']} sheets ({proof}; plain practice {row['practice']})")
    print(f"Look at {out / 'site-pack-letter.pdf'} first; plan.json holds everything as data.")
