"""Proof of a plan that lies in a file, whoever made it."""

from dataclasses import dataclass, replace
from pathlib import Path

from firstcourse.app.files import PRICE, Disk, Files, plan_place
from firstcourse.errors import InputValueError
from firstcourse.plan import Plan
from firstcourse.verify import Objection, Verdict, verify_price, verify_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """What came of proving a plan again.

    Attributes:
        file: The plan.json that was read.
        verdict: Every objection found, those to its price too.
        price: The price.json of that plan, where one lies in the folder.
    """

    file: Path
    verdict: Verdict
    price: Path | None = None


def prove(path: Path | str, *, files: Files | None = None) -> Proof:
    """Prove a plan again from its plan.json alone, and its price where a price.json lies in its folder.

    Args:
        path: A plan.json, or the folder it lies in.
        files: Where it is read from; the disk of this machine where not given.

    Raises:
        InputValueError: The file cannot be read.
    """
    files, path = Disk() if files is None else files, Path(path)
    text = files.read_plan(path)
    verdict = verify_text(text)
    price = files.read_beside(path, PRICE) if verdict.readable else None
    if price is None:
        return Proof(file=plan_place(path), verdict=verdict)
    objections = (*verdict.objections, *verify_price(text, price))
    return Proof(file=plan_place(path), verdict=replace(verdict, objections=objections), price=path / PRICE)


def proven_plan(path: Path | str, *, files: Files | None = None) -> Plan:
    """A plan read from its plan.json, proved again first.

    Args:
        path: A plan.json, or the folder it lies in.
        files: Where it is read from; the disk of this machine where not given.

    Raises:
        InputValueError: The file cannot be read, is no plan, or does not verify.
    """
    text = (Disk() if files is None else files).read_plan(Path(path))
    objections = verify_text(text).objections
    if objections:
        first = objections[0]
        raise InputValueError(
            f"{plan_place(Path(path))}: does not verify ({first.code} {first.where}: {first.message}); plan again"
        )
    return Plan.model_validate_json(text)


@dataclass(frozen=True, slots=True, kw_only=True)
class ProofSummary:
    """What came of proving a plan again: whether every claim holds, and what else to know, see `Verdict`."""

    verified: bool
    objections: tuple[Objection, ...]
    changes: tuple[str, ...]
    stops: tuple[str, ...]
    same_way: tuple[str, ...]


def proof_summary(verdict: Verdict) -> ProofSummary:
    """A verdict as it is shown.

    Args:
        verdict: What the verifier says.
    """
    return ProofSummary(
        verified=verdict.verified,
        objections=verdict.objections,
        changes=verdict.changes,
        stops=verdict.stops,
        same_way=verdict.same_way,
    )
