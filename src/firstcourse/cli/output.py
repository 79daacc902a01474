"""What several commands print alike."""

import json
import sys
from collections.abc import Iterable

from firstcourse.findings import Finding, Severity

_ORDER = (Severity.STOP, Severity.FIX, Severity.NOTE)
_HEADING = {
    Severity.STOP: "STOPS THE WORK",
    Severity.FIX: "TO MEND ON THE WAY",
    Severity.NOTE: "TO KNOW",
}


def progress(text: str) -> None:
    """Say on stderr what is being done, so that stdout stays for the answer."""
    if sys.stderr.isatty():
        print(f"  {text}", file=sys.stderr)


def print_json(value: object) -> None:
    """Print a value for another program to read."""
    print(json.dumps(value, indent=2, ensure_ascii=False))


def print_findings(findings: Iterable[Finding]) -> None:
    """Print findings by severity, the worst first."""
    listed = list(findings)
    for severity in _ORDER:
        chosen = [finding for finding in listed if finding.severity is severity]
        if not chosen:
            continue
        print(f"\n{_HEADING[severity]}")
        for finding in chosen:
            print(f"  {finding.code}  {finding.where}: {finding.message}")
            for label, text in (
                ("measured", finding.measured),
                ("limit", finding.limit),
                ("rule", finding.rule),
                ("source", finding.source),
                ("do", finding.remedy),
            ):
                if text:
                    print(f"      {label}: {text}")


def exit_code(findings: Iterable[Finding]) -> int:
    """1 where a finding stops the work, else 0."""
    return int(any(finding.severity is Severity.STOP for finding in findings))
