"""What a setter reads off a wall before it is boarded: how its studs stand, what tile it will carry."""

from typing import Annotated, Literal

from pydantic import Field, FiniteFloat

from firstcourse.job.fields import Distance, JobModel, Length, Name, Offset, Thickness


class StudReading(JobModel):
    """How far one stud's face stands out, from a string or a straightedge along the wall."""

    at: Distance = Field(description="The stud's centre, from the left corner.")
    up: Distance = Field(
        default=0, description="Height above the floor; leave it out where one string was read along the wall."
    )
    face: Offset = Field(description="From any string you keep, towards the room is plus.")


class StraightedgeGap(JobModel):
    """The widest gap found under a straightedge, or half of what it rocks over a hump."""

    reach: Length = Field(description="Length of the straightedge.")
    gap: Distance = Field(description="Widest gap under it.")
    place: Name = Field(default="unnamed place", description="Where, in your words.")


class WallTile(JobModel):
    """What will lie on the wall's boards; the tile of its tiling where not given."""

    kind: Literal["ceramic", "stone"] = Field(description="Ceramic (porcelain too) or natural stone.")
    thickness: Thickness = Field(description="Thickness of the tile, at most 2 in.")
    edge: Length | None = Field(default=None, description="Its longest edge; sets how flat the wall must be.")
    bond_coat: Length | None = Field(
        default=None,
        description="Mortar under the tile; as its trowel leaves it where not given, that of large tile where "
        "its edge is not given either.",
    )
    absorption_percent: Annotated[FiniteFloat, Field(ge=0, le=100)] | None = Field(
        default=None, description="Water it takes up, by its data sheet (ASTM C373, ISO 10545-3)."
    )
