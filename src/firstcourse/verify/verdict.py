"""What the verifier says about a plan."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Objection:
    """One claim of a plan that does not hold.

    Attributes:
        code: `VER-` and a number whose first digit names the family: 0 form, 1 coverage, 2 the calendar, 3 seams,
            4 fasteners, 5 cutting, 6 counts, 7 tiles and falls, 8 quantities, 9 findings and workings,
            from 950 on orders and prices, from 970 on proposals, from 980 on comparisons of plans.
        where: Id of the surface, board, sheet or field concerned.
        message: What does not hold, in one sentence.
    """

    code: str
    where: str
    message: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """Every objection found; a plan without any is verified.

    Attributes:
        stops: Findings of the plan that stop the work, each as `code place`: a plan may be consistent, every claim
            in it proven, and yet say that the work must stop.
        same_way: What was recomputed the same way as it was planned, by code, which proves that the plan is as it
            was made, not that the way is right: `judgement`, findings taken from the rule book; `corners`, what is
            moved to stand at a wall; `play`, cuts of a start in the worst room that the survey allows.
        tongue: What the plan's papers are written in.
        changes: Rules that the plan's job sets otherwise than the book, each as `rule value (reason)`.
    """

    objections: tuple[Objection, ...]
    changes: tuple[str, ...] = ()
    stops: tuple[str, ...] = ()
    same_way: tuple[str, ...] = ()
    tongue: str = "en"

    @property
    def readable(self) -> bool:
        """Whether the document is a plan at all, sound or not."""
        return all(objection.code != "VER-001" for objection in self.objections)

    @property
    def verified(self) -> bool:
        """Whether every claim holds."""
        return not self.objections
