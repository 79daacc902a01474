"""Proof of a plan that lies in a file, whoever made it."""

from dataclasses import dataclass
from pathlib import Path

from firstcourse.app.files import Disk, Files, plan_place
from firstcourse.verify import Objection, Verdict, verify_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """What came of proving a plan again.

    Attributes:
        file: The plan.json that was read.
        verdict: Every objection found.
    """

    file: Path
    verdict: Verdict


def prove(path: Path | str, *, files: Files | None = None) -> Proof:
    """Prove a plan again from its plan.json alone.

    Args:
        path: A plan.json, or the folder it lies in.
        files: Where it is read from; the disk of this machine where not given.

    Raises:
        InputValueError: The file cannot be read.
    """
    text = (Disk() if files is None else files).read_plan(Path(path))
    return Proof(file=plan_place(Path(path)), verdict=verify_text(text))


@dataclass(frozen=True, slots=True, kw_only=True)
class ProofSummary:
    """What came of proving a plan again: whether every claim holds, and what else to know."""

    verified: bool
    objections: tuple[Objection, ...]
    changes: tuple[str, ...]
    stops: tuple[str, ...]


def proof_summary(verdict: Verdict) -> ProofSummary:
    """A verdict as it is shown.

    Args:
        verdict: What the verifier says.
    """
    return ProofSummary(
        verified=verdict.verified, objections=verdict.objections, changes=verdict.changes, stops=verdict.stops
    )
