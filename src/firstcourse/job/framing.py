"""Framing that boards are fastened to: studs, joists and blocking as taped."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from firstcourse.job.fields import (
    MOST_ITEMS,
    Distance,
    JobModel,
    Length,
    Pair,
)


class Member(JobModel):
    """One framing member as found."""

    at: Distance = Field(description="Its centre: on a wall from the left corner, on a floor from the named side.")
    width: Length | None = Field(default=None, description="Face width; the rule book's value where not given.")


class _Framing(JobModel):
    spacing: Length | None = Field(default=None, description="Centre to centre, where regular.")
    first: Distance | None = Field(default=None, description="Centre of the first member.")
    width: Length | None = Field(default=None, description="Face width of the members.")
    members: Annotated[tuple[Member, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(),
        description="Members as found: each of them where no spacing is given; else those that stand beside the "
        "regular ones, such as trim studs at an opening. One that overlaps a regular member is that member.",
    )

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if not self.members and self.spacing is None:
            raise ValueError("give either spacing (with first) or members as found, or both")
        if (self.spacing is None) != (self.first is None):
            raise ValueError("spacing and first go together")
        return self


class WallFraming(_Framing):
    """Studs of a wall, measured from its left corner: spacing and first, each member as found, or both."""

    plates: bool = Field(default=True, description="Whether plates run along the wall's top and bottom.")


class FloorFraming(_Framing):
    """Joists, measured from the side they run parallel to: spacing and first, each member as found, or both."""

    parallel_to: Pair = Field(description="The side they run along, such as A-B.")


class WallBlocking(JobModel):
    """A piece of blocking between studs."""

    at: Distance = Field(description="Height of its centre above the floor.")
    left: Distance = Field(description="Left end from the left corner.")
    right: Distance = Field(description="Right end from the left corner.")
    width: Length | None = Field(default=None, description="Face height; a stud's width where not given.")

    @model_validator(mode="after")
    def _runs(self) -> Self:
        if self.right <= self.left:
            raise ValueError("right must be more than left")
        return self
