"""What can go wrong: one base class, each error carrying its data as fields."""

from dataclasses import dataclass
from datetime import date


class FirstcourseError(Exception):
    """Base of every error this package raises on purpose."""


class InputValueError(FirstcourseError, ValueError):
    """A given value is outside what the calculation accepts.

    Attributes:
        field: Where it stands in its room of the job document, such as `floor.openings[2]`; empty if not known.
    """

    def __init__(self, message: str = "", *, field: str = "") -> None:
        self.field = field
        super().__init__(message)


@dataclass(frozen=True, slots=True, kw_only=True)
class InputProblem:
    """One thing wrong with an input file, placed so that it can be found and mended."""

    file: str
    line: int
    column: int
    field: str
    message: str

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}:{self.column}" if self.line else self.file
        return f"{place}: {self.field}: {self.message}" if self.field else f"{place}: {self.message}"


class JobError(FirstcourseError, ValueError):
    """A job document cannot be used; `problems` lists everything found wrong in one run."""

    def __init__(self, problems: tuple[InputProblem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(str(problem) for problem in problems))


class RuleNotFoundError(FirstcourseError, LookupError):
    """A calculation asked for a rule that has no value on the job's date."""

    def __init__(self, rule_id: str, on: date, practice: str) -> None:
        self.rule_id, self.on, self.practice = rule_id, on, practice
        super().__init__(
            f"rule '{rule_id}' has no value on {on} for practice '{practice}'. "
            "Add a dated value with its source, or plan for another date."
        )


class PlanRefusedError(FirstcourseError, RuntimeError):
    """A plan that its own verifier rejects; it is never written."""

    def __init__(self, objections: tuple[str, ...]) -> None:
        self.objections = objections
        super().__init__("the plan does not verify:\n" + "\n".join(objections))
