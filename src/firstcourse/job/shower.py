"""A shower floor tiled on a bed with falls: where it lies, where it drains to, and what holds the water."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from firstcourse.job.fields import Distance, JobModel, Length, Name, Pair
from firstcourse.job.tile import Tiling

Place = tuple[Distance, Distance]


class ShowerDrain(JobModel):
    """Where the water goes: a point by left and out, or a line by its two ends or by the wall it runs along.

    Everything is measured from the same side of the room as the shower itself.
    """

    left: Distance | None = Field(default=None, description="Its centre, from the side's left end.")
    out: Distance | None = Field(default=None, description="Its centre, from the side into the room.")
    diameter: Length | None = Field(
        default=None, description="Of a point drain's grate; the rule book's value where not given."
    )
    ends: tuple[Place, Place] | None = Field(
        default=None, description="Both ends of a linear drain, each along and out from the side."
    )
    along: Pair | None = Field(default=None, description="A linear drain along the whole of this wall.")
    width: Length | None = Field(
        default=None, description="Of a linear drain's grate; the rule book's value where not given."
    )

    @property
    def is_linear(self) -> bool:
        """Whether it is a line."""
        return self.left is None

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if (self.left is None) != (self.out is None):
            raise ValueError("left and out go together")
        if (self.left is not None) + (self.ends is not None) + (self.along is not None) != 1:
            raise ValueError("give left and out (a point), ends (a line), or along (a line at a wall)")
        if self.diameter is not None and self.is_linear:
            raise ValueError("a diameter belongs to a point drain; a linear one has a width")
        if self.width is not None and not self.is_linear:
            raise ValueError("a width belongs to a linear drain; a point drain has a diameter")
        if self.ends is not None and self.ends[0] == self.ends[1]:
            raise ValueError("the two ends of a linear drain are one point")
        return self


class Kerb(JobModel):
    """A kerb along the open sides."""

    height: Length = Field(description="Its finished top, at its lower, inner edge, over the top of the drain.")
    width: Length = Field(description="Its width, tile included.")
    body: Literal["solid", "framed"] | None = Field(
        default=None,
        description="What it is built of: masonry or mortar (solid), or wood under a coat of mortar (framed). On "
        "joists it counts as solid where not given.",
    )
    entry: Length | None = Field(default=None, description="Clear width of the opening one walks in by.")
    tile: Name | None = Field(default=None, description="Tile of its top; not planned where not given.")
    faces: Name | None = Field(default=None, description="Tile of its faces; the top's where not given.")

    @model_validator(mode="after")
    def _tiled(self) -> Self:
        if self.faces is not None and self.tile is None:
            raise ValueError("name the tile of the kerb's top as well")
        return self


class ShowerShelf(JobModel):
    """A bench, sill or niche shelf in the shower, which must shed water."""

    id: Name = Field(description="Its name, such as bench.")
    depth: Length = Field(description="From its back to its front edge.")
    drop: Distance | None = Field(
        default=None, description="How much lower its front lies; the plan says how much where not given."
    )


class TiledShower(JobModel):
    """A shower floor tiled on a bed with falls, measured inside its kerb.

    Give left and out with width and depth, or points all round.
    """

    side: Pair | None = Field(
        default=None, description="Side it is measured from; the first side where not given."
    )
    left: Distance | None = Field(default=None, description="From the side's left end.")
    out: Distance | None = Field(default=None, description="From the side into the room.")
    width: Length | None = Field(default=None, description="Along the side.")
    depth: Length | None = Field(default=None, description="Away from the side.")
    points: Annotated[tuple[Place, ...], Field(max_length=60)] = Field(
        default=(), description="Corners of any other shape, each along and out from the side."
    )
    drain: ShowerDrain = Field(description="Where it drains to.")
    falls: Literal["level", "square", "single"] = Field(
        default="level",
        description="The planes: level keeps the perimeter level and falls from each side to the drain; square "
        "falls alike from all sides, so that the perimeter rises along long walls; single falls straight to a "
        "linear drain.",
    )
    kerb: Kerb | None = Field(default=None, description="The kerb; a shower without one has a recess.")
    recess: Distance | None = Field(
        default=None,
        description="Without a kerb: depth from the room's finished floor, or where the shower takes all of that "
        "from the floor beyond its doorway, down to what the bed stands on.",
    )
    membrane: Literal["liner", "sheet", "liquid"] = Field(
        default="sheet",
        description="A liner under the bed on a slope of its own, or a sheet or liquid membrane on the bed.",
    )
    bed: Length | None = Field(
        default=None, description="Least thickness of the bed; the rule book's value where not given."
    )
    pre_slope: Length | None = Field(
        default=None, description="Least thickness of the slope under a liner; the rule book's value otherwise."
    )
    shelves: Annotated[tuple[ShowerShelf, ...], Field(max_length=20)] = Field(
        default=(), description="Benches, sills and niche shelves."
    )
    tiling: Tiling | None = Field(default=None, description="How the floor is tiled.")

    @model_validator(mode="after")
    def _whole(self) -> Self:
        self._placed()
        if (self.kerb is None) == (self.recess is None):
            raise ValueError("give a kerb, or for a shower without one the recess there is")
        if self.falls == "single" and not self.drain.is_linear:
            raise ValueError("falls: single goes to a linear drain; give its ends or the wall it lies along")
        if self.pre_slope is not None and self.membrane != "liner":
            raise ValueError("a pre_slope lies under a liner; other membranes lie on the bed")
        return self

    def _placed(self) -> None:
        if bool(self.points) == (self.width is not None or self.depth is not None):
            raise ValueError("give width and depth, or points")
        if (self.width is None) != (self.depth is None):
            raise ValueError("width and depth go together")
        if self.points and len(self.points) < 3:
            raise ValueError("points need three corners or more")
        if not self.points and (self.left is None or self.out is None):
            raise ValueError("left and out say where it is")
