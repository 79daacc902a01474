"""What is left open in a wall or floor, or stands there: niches, windows, valves, tubs, flanges."""

from typing import Annotated, Any, Self

from pydantic import Field, FiniteFloat, model_validator

from firstcourse.job.fields import (
    Distance,
    JobModel,
    Length,
    Name,
    Pair,
    Weight,
    measured,
    one_of,
)
from firstcourse.job.tile import WindowReturns
from firstcourse.plan import OpeningKind
from firstcourse.units import WEIGHT


class _Opening(JobModel):
    id: Name = Field(description="Its name, unique on the surface.")
    kind: OpeningKind = Field(description="What it is.")
    diameter: Length | None = Field(default=None, description="For a round hole.")

    def _shape(self, width: int | None, height: int | None, points: tuple[Any, ...], tall: str) -> None:
        ways = (self.diameter is not None) + (width is not None or height is not None) + bool(points)
        if ways != 1:
            raise ValueError(f"give width and {tall}, or a diameter, or points")
        if (width is None) != (height is None):
            raise ValueError(f"width and {tall} go together")
        if points and len(points) < 3:
            raise ValueError("points need three corners or more")


class WallOpening(_Opening):
    """An opening in a wall: left and bottom with width and height or with a diameter, or points all round."""

    left: Distance | None = Field(default=None, description="Its left edge; for a round hole its centre.")
    bottom: Distance | None = Field(default=None, description="Its lower edge; for a round hole its centre.")
    width: Length | None = Field(default=None, description="Width of a rectangle.")
    height: Length | None = Field(default=None, description="Height of a rectangle.")
    points: Annotated[tuple[tuple[Distance, Distance], ...], Field(max_length=60)] = Field(
        default=(), description="Corners of any other shape, each from the left corner and the floor."
    )
    depth: tuple[Distance, Length] | None = Field(
        default=None,
        description="Valve: least and most depth from the studs' faces to the finished face, from its sheet.",
    )
    returns: WindowReturns | None = Field(
        default=None,
        description="Window: how deep it is set back, and how its sill, sides and head are finished; asked in a "
        "wet wall.",
    )

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if self.depth is not None and (self.kind is not OpeningKind.VALVE or self.depth[0] > self.depth[1]):
            raise ValueError("depth is a valve's window: the least, then the most")
        if self.returns is not None and (self.kind is not OpeningKind.WINDOW or self.width is None):
            raise ValueError("returns belong to a window that is given by width and height")
        self._shape(self.width, self.height, self.points, "height")
        if not self.points and (self.left is None or self.bottom is None):
            raise ValueError("left and bottom say where it is")
        return self


_STANDING = (OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.CABINET, OpeningKind.OTHER)


class FloorOpening(_Opening):
    """An opening in a floor or ceiling, or a thing that stands there (tub, tray, cabinet, column).

    Give left and out with width and depth or with a diameter, or points all round.
    """

    side: Pair | None = Field(
        default=None, description="Side it is measured from; the first side where not given."
    )
    left: Distance | None = Field(
        default=None, description="From the side's left end; for a round hole its centre."
    )
    out: Distance | None = Field(default=None, description="From the side into the room; round: its centre.")
    width: Length | None = Field(default=None, description="Along the side.")
    depth: Length | None = Field(default=None, description="Away from the side.")
    points: Annotated[tuple[tuple[Distance, Distance], ...], Field(max_length=60)] = Field(
        default=(), description="Corners of any other shape, each along and out from the side."
    )
    top: Distance | None = Field(
        default=None, description="Drain or flange: top of its rim over the panels (or slab)."
    )
    weight: Weight | None = Field(
        default=None,
        description="What stands there weighs on the floor, a tub filled, such as 620 lb or 280 kg. Where not "
        "given, a tub has the rule book's load on its area, and other things have none; 0 kg where it is among "
        "the joists' loads.",
    )
    weight_lb: Annotated[FiniteFloat, Field(ge=0, le=1e5)] | None = Field(
        default=None, description="Older name of weight [lb]."
    )

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if self.top is not None and self.kind not in (OpeningKind.DRAIN, OpeningKind.FLANGE):
            raise ValueError("top is the rim of a drain or flange")
        one_of({"weight": self.weight, "weight_lb": self.weight_lb})
        if self.pounds is not None and self.kind not in _STANDING:
            name = "weight_lb" if self.weight is None else "weight"
            raise ValueError(f"{name} is of what stands on the floor: a tub, tray or cabinet, or other")
        self._shape(self.width, self.depth, self.points, "depth")
        if not self.points and (self.left is None or self.out is None):
            raise ValueError("left and out say where it is")
        return self

    @property
    def pounds(self) -> float | None:
        """What stands there weighs so much [lb]; None where not given."""
        return measured(WEIGHT, self.weight, self.weight_lb)
