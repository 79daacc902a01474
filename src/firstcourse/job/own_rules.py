"""What a job sets otherwise than the rule book: single rules, and how sheets are lifted."""

from typing import Annotated, Literal

from pydantic import Field, FiniteFloat, Strict, StrictBool

from firstcourse.job.fields import Distance, JobModel, Length, Printed, Reason
from firstcourse.rules import Override
from firstcourse.units import to_mm


class RuleChange(JobModel):
    """A rule's value set for this job."""

    rule: str = Field(description="Rule id; `firstcourse rules` lists them.")
    value: StrictBool | Annotated[FiniteFloat, Strict()] | Printed = Field(
        description="The value with its unit, such as 3/16 in, 50 psf or 24 h; a bare number where the rule has "
        "no unit; yes or no; or words, where the rule's value is of words.",
    )
    unit: str = Field(default="", max_length=20, description="Unit of the value, where that is a bare number.")
    reason: Reason = Field(description="Why; printed on the papers.")

    def override(self) -> Override:
        """The change as the rule book reads it."""
        return Override(rule=self.rule, value=self.value, unit=self.unit, reason=self.reason)


class Lifting(JobModel):
    """How sheets are picked up and carried; it decides what one person may lift."""

    reach: Length | None = Field(
        default=None, description="From between your ankles to the middle of your hands; 15 in where not given."
    )
    low: Distance | None = Field(
        default=None, description="Height of your hands where a sheet is picked up; 20 in where not given."
    )
    high: Length | None = Field(
        default=None, description="Height of your hands where it is set down; 40 in where not given."
    )
    turn_degrees: Annotated[FiniteFloat, Field(ge=0, le=180)] | None = Field(
        default=None, description="Turn of your body between the two [degrees]; none where not given."
    )
    times_a_minute: Annotated[FiniteFloat, Field(gt=0, le=15)] | None = Field(
        default=None, description="Lifts a minute, an hour a day in all; one in five minutes where not given."
    )
    grip: Literal["good", "fair", "poor"] | None = Field(
        default=None, description="Good with handles, fair with fingers under it, poor else; poor where not given."
    )

    def overrides(self) -> tuple[Override, ...]:
        """What is given, as changes of the rules that assume it otherwise."""
        given: dict[str, str | float | None] = {
            "reach": _in_mm(self.reach),
            "low": _in_mm(self.low),
            "high": _in_mm(self.high),
            "turn": None if self.turn_degrees is None else f"{self.turn_degrees} deg",
            "per_minute": self.times_a_minute,
            "grip": self.grip,
        }
        return tuple(
            Override(rule=f"safety.lift.{name}", value=value, unit="", reason="as the job says under lifting")
            for name, value in given.items()
            if value is not None
        )


def _in_mm(length: int | None) -> str | None:
    return None if length is None else f"{to_mm(length)!r} mm"
