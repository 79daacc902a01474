"""What is done already when a plan is made again: boards that are up, where others were planned, what came out."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from firstcourse.geometry import Ring, counter_clockwise, rectangle
from firstcourse.job.fields import MOST_BOARDS, MOST_ITEMS, JobModel, Length, Name, Offset, ShortReason

SURFACE_PATTERN = r"^[A-Za-z0-9][A-Za-z0-9 _.\-/]{0,199}$"
SurfaceName = Annotated[str, Field(pattern=SURFACE_PATTERN)]
_Corners = Annotated[tuple[tuple[Offset, Offset], ...], Field(max_length=200)]


class BoardDone(JobModel):
    """One board of an earlier plan as it stands: left and bottom with width and height, or points all round."""

    board: Annotated[int, Field(ge=1, le=100_000)] = Field(
        description="Its number in the earlier plan: 3 for `bath/wall/A-B#3`. It keeps it."
    )
    mark: Name = Field(description="Its mark on the earlier drawings, such as W1-3.")
    stock: Name = Field(description="Which stock it is of.")
    up: bool = Field(
        default=True,
        description="It is fastened where it stands, and stays. With no, it is not up yet: it stays planned there "
        "as long as that breaks no more rules than another place would.",
    )
    left: Offset | None = Field(
        default=None, description="Its left edge, from where the surface is measured from."
    )
    bottom: Offset | None = Field(default=None, description="Its lower edge; on a floor as the drawing has it.")
    width: Length | None = Field(default=None, description="Width of a rectangle.")
    height: Length | None = Field(default=None, description="Height of a rectangle.")
    points: _Corners = Field(default=(), description="Corners of any other shape, from the same place.")
    holes: Annotated[tuple[_Corners, ...], Field(max_length=60)] = Field(
        default=(), description="Corners of each hole cut in it."
    )

    @model_validator(mode="after")
    def _shape(self) -> Self:
        told = (self.left, self.bottom, self.width, self.height)
        if bool(self.points) == any(side is not None for side in told):
            raise ValueError("give left, bottom, width and height, or points all round")
        if not self.points and None in told:
            raise ValueError("left, bottom, width and height go together")
        if any(len(ring) < 3 for ring in ((self.points,) if self.points else ()) + self.holes):
            raise ValueError("points need three corners or more")
        return self

    @property
    def outline(self) -> Ring:
        """Its outline on the surface, counter-clockwise [ticks]."""
        if self.points:
            return counter_clockwise(self.points)
        left, bottom = self.left or 0, self.bottom or 0
        return rectangle(left, bottom, left + (self.width or 0), bottom + (self.height or 0))


class TakenOut(JobModel):
    """A part of a surface that was opened again: boards that were up there are up no more."""

    left: Offset = Field(description="Its left edge, measured as boards are.")
    bottom: Offset = Field(description="Its lower edge.")
    width: Length = Field(description="Width.")
    height: Length = Field(description="Height.")
    why: ShortReason = Field(description="Why, such as rot behind it.")

    @property
    def outline(self) -> Ring:
        """Its outline on the surface, counter-clockwise [ticks]."""
        return rectangle(self.left, self.bottom, self.left + self.width, self.bottom + self.height)


class SurfaceDone(JobModel):
    """What is done on one surface.

    Boards are measured as on the drawing of the earlier plan: on a wall from its left corner and the lowest point
    of its floor, on a floor or ceiling from the left end and the lowest corner of the drawing.
    """

    surface: SurfaceName = Field(
        description="Its id in the earlier plan: room/wall/A-B, room/floor, room/ceiling."
    )
    boards: Annotated[tuple[BoardDone, ...], Field(max_length=2 * MOST_BOARDS)] = Field(
        default=(), description="The boards of the earlier plan; `firstcourse done` writes them."
    )
    taken_out: Annotated[tuple[TakenOut, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="What was taken out since."
    )


class Done(JobModel):
    """What is done already: planning keeps it, and plans what is left round it."""

    sheets: dict[Name, Annotated[int, Field(ge=0, le=100_000)]] = Field(
        default={},
        description="How many sheets of each stock are cut up already; what is left of them stands under offcuts.",
    )
    surfaces: Annotated[tuple[SurfaceDone, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="What is done on each surface; one that is not listed is planned anew."
    )
