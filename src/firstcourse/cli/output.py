"""What several commands print alike."""

import json
import sys
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from time import monotonic
from typing import Annotated

from cyclopts import Parameter, Token

from firstcourse.findings import Finding, Severity
from firstcourse.units import printable
from firstcourse.words import Speaker, alike_together

_ORDER = (Severity.STOP, Severity.FIX, Severity.NOTE)


def progress(text: str) -> None:
    """Say on stderr what is being done, so that stdout stays for the answer."""
    if sys.stderr.isatty():
        print(f"  {text}", file=sys.stderr)


def progress_told(*, always: bool) -> Callable[[str], None]:
    """Says on stderr what is being done and how many seconds after the start; to a terminal, or always."""
    began = monotonic()

    def told(text: str) -> None:
        if always or sys.stderr.isatty():
            print(f"{monotonic() - began:6.1f} s  {text}", file=sys.stderr, flush=True)

    return told


def _named(_wanted: object, tokens: Sequence[Token]) -> Path:
    if not tokens[0].value.strip():
        raise ValueError("no folder is named; give one such as --out plan, or --out . for this one")
    return Path(tokens[0].value)


OutFolder = Annotated[Path, Parameter(converter=_named)]
"""A folder to write into; an empty name is refused, not taken for the working folder."""


def print_json(value: object) -> None:
    """Print a result for another program to read."""
    from firstcourse.app import json_value

    text = json.dumps(json_value(value), indent=2, ensure_ascii=False)
    # What a terminal would obey is escaped the way JSON has it; the rest stays readable.
    print("".join(sign if printable(sign) == sign else json.dumps(sign)[1:-1] for sign in text))


def print_findings(findings: Iterable[Finding], speaker: Speaker) -> None:
    """Print findings by severity, the worst first; what is said of several places is printed once."""
    listed = alike_together(speaker.findings(findings))
    for severity in _ORDER:
        chosen = [finding for finding in listed if finding.severity is severity]
        if not chosen:
            continue
        print(f"\n{speaker.text(f'cli-{severity.value}')}")
        for finding in chosen:
            print(f"  {finding.code}  {speaker.say(f'{finding.where}: {finding.message}')}")
            for label, text in (
                ("measured", finding.measured),
                ("limit", finding.limit),
                ("rule", finding.rule),
                ("source", finding.source),
                ("do", finding.remedy),
            ):
                if text:
                    said = text if label in ("rule", "source") else speaker.say(text)
                    print(f"      {speaker.text('cli-finding', label, text=said)}")


def print_changes(changes: Iterable[str], speaker: Speaker) -> None:
    """Print the rules that a job sets otherwise than the book, each with its value and reason."""
    for change in changes:
        print(f"  {speaker.text('cli-changed', change=change)}")


def exit_code(findings: Iterable[Finding]) -> int:
    """1 where a finding stops the work, else 0."""
    return int(any(finding.severity is Severity.STOP for finding in findings))
