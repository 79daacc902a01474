"""What the client will see: the tile that was chosen, and how it is to lie on a surface."""

import re
from contextlib import suppress
from fractions import Fraction
from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, Field, FiniteFloat, WithJsonSchema, model_validator

from firstcourse.job.fields import (
    MOST_ITEMS,
    Distance,
    JobModel,
    Joint,
    Length,
    Name,
    Pair,
    Price,
    Thickness,
    Unevenness,
)

Pattern = Literal[
    "stacked",
    "running",
    "diagonal",
    "herringbone",
    "double_herringbone",
    "basket_weave",
    "hexagon",
    "repeat",
]


TileExposure = Literal["interior", "slab", "sun", "heat", "moist", "exterior"]
"""Plainly inside, inside on a slab above ground, in direct sun, over heating, where it gets wet, outside."""


def _fraction(value: Any) -> Any:
    if not isinstance(value, str):
        return value
    with suppress(ZeroDivisionError):
        # Bounded before it is worked out: 1e-9999999 is a fraction too, of ten million digits.
        if re.fullmatch(r"\d{1,4}(\s*/\s*\d{1,4})?|\d?\.\d{1,6}", value):
            return Fraction(value.replace(" ", ""))
    raise ValueError(f"'{value}' is no fraction; write a share of the tile, such as 1/2 or 1/3")


Share = Annotated[
    Fraction,
    BeforeValidator(_fraction),
    Field(gt=0, lt=1),
    WithJsonSchema({"type": "string", "description": "a fraction of a tile", "examples": ["1/2", "1/3"]}),
]


def _number(value: Any) -> Any:
    return int(value) if isinstance(value, str) and value.isdecimal() else value


Angle = Annotated[Literal[0, 45, 90], BeforeValidator(_number)]


class ChosenTile(JobModel):
    """A tile that was chosen, as measured from the boxes."""

    id: Name = Field(description="Your name for it.")
    size: tuple[Length, Length] = Field(
        description="Width and height of one piece as measured; for a hexagon across flats and across corners."
    )
    thickness: Thickness = Field(description="Thickness of the tile, at most 2 in.")
    kind: Literal["ceramic", "porcelain", "stone", "glass"] = Field(
        default="ceramic", description="What it is made of."
    )
    shape: Literal["rectangle", "hexagon"] = Field(default="rectangle", description="Outline of one piece.")
    upright: bool | None = Field(
        default=None,
        description="Whether a tile that is higher than wide is to stand so in level courses; asked if not given.",
    )
    edges: Literal["pressed", "rectified"] = Field(
        default="pressed", description="Edges as pressed (calibrated), or ground to size (rectified)."
    )
    joint: Joint | None = Field(
        default=None, description="Grout joint you want; the least that the rules allow where not given."
    )
    size_spread: Unevenness | None = Field(
        default=None, description="Largest less smallest facial size found; the joint is at least three times it."
    )
    warpage: Unevenness | None = Field(default=None, description="Greatest edge warpage found.")
    directional: bool = Field(default=False, description="Has a grain: a piece may not be turned.")
    sheet: tuple[Annotated[int, Field(ge=1, le=200)], Annotated[int, Field(ge=1, le=200)]] | None = Field(
        default=None, description="Mosaic: pieces across and up on one mounted sheet."
    )
    per_box: Annotated[int, Field(ge=1, le=100_000)] | None = Field(
        default=None, description="Pieces in a box (mosaic: sheets in a box); single pieces otherwise."
    )
    price: Price | None = Field(default=None, description="Price of one box.")
    absorption_percent: Annotated[FiniteFloat, Field(ge=0, le=100)] | None = Field(
        default=None, description="Water it takes up, by its data sheet (ASTM C373, ISO 10545-3)."
    )
    wet_friction: Annotated[FiniteFloat, Field(gt=0, lt=2)] | None = Field(
        default=None, description="Wet dynamic coefficient of friction (DCOF), by its data sheet."
    )

    @model_validator(mode="after")
    def _regular(self) -> Self:
        if self.shape == "hexagon" and not 1.14 < self.size[1] / self.size[0] < 1.17:
            raise ValueError("a regular hexagon is 1.155 times as wide across corners as across flats")
        if self.joint is not None and 2 * self.joint > min(self.size):
            raise ValueError("the joint is more than half as wide as the tile; check both")
        stands = self.shape == "rectangle" and self.size[1] > self.size[0]
        if self.upright is not None and self.upright != stands:
            raise ValueError(
                "upright does not agree with the size, which is width by height; change the order of the size"
            )
        return self


class RepeatPiece(JobModel):
    """One piece of a repeat."""

    tile: Name = Field(description="Which tile.")
    at: tuple[Distance, Distance] = Field(description="Its lower left corner within the repeat.")
    turned: bool = Field(default=False, description="Turned by a quarter.")


class TileRepeat(JobModel):
    """A pattern of your own: what repeats, with joints counted in."""

    id: Name = Field(description="Your name for it.")
    across: Length = Field(description="How far the repeat steps to the right, joints included.")
    up: Length = Field(description="How far the next row of repeats lies above, joints included.")
    shift: Distance = Field(default=0, description="How far each row is shifted to the right over the last.")
    pieces: Annotated[tuple[RepeatPiece, ...], Field(min_length=1, max_length=60)] = Field(
        description="The pieces of one repeat."
    )


class TileBand(JobModel):
    """A feature band across a wall."""

    bottom: Distance = Field(description="Its lower edge above the floor; it moves to the nearest course.")
    tile: Name = Field(description="Which tile.")
    courses: Annotated[int, Field(ge=1, le=20)] = Field(
        default=1, description="How many courses of it, for pattern stacked or running."
    )
    pattern: Literal[
        "stacked", "running", "diagonal", "herringbone", "double_herringbone", "basket_weave", "hexagon"
    ] = Field(default="stacked", description="The band's own pattern.")
    offset: Share = Field(default=Fraction(1, 2), description="Running bond: shift of each course over the last.")
    height: Length | None = Field(
        default=None, description="Height of the band, for every other pattern; its tiles are cut at both edges."
    )

    @model_validator(mode="after")
    def _tall(self) -> Self:
        coursed = self.pattern in ("stacked", "running")
        if coursed == (self.height is not None):
            raise ValueError("patterns stacked and running are so many courses high, every other needs a height")
        if not coursed and "courses" in self.model_fields_set:
            raise ValueError("courses belong to pattern stacked or running; give the height alone")
        if self.pattern != "running" and "offset" in self.model_fields_set:
            raise ValueError("an offset belongs to pattern: running")
        return self


class TileBorder(JobModel):
    """A border along all edges of the tiling, the field inside it laid from a start of its own."""

    tile: Name = Field(description="Which tile; its pieces lie along the edges.")
    distance: Distance = Field(
        default=0,
        description="From the edge of the tiling, which stops a soft joint before the wall, to the border.",
    )
    courses: Annotated[int, Field(ge=1, le=20)] = Field(default=1, description="How many courses of its tile.")
    width: Length | None = Field(default=None, description="Width it is ripped to; whole courses where not given.")
    corners: Literal["mitred", "butted"] = Field(
        default="mitred", description="Cut on the corner's bisector, or the longer side runs through."
    )


class TiledNiche(JobModel):
    """The inside of a niche: its back, sides, sill and head."""

    niche: Name = Field(description="Its id among the wall's openings.")
    depth: Length = Field(description="From the face of the wall's boards to the face of those at its back.")
    tile: Name | None = Field(default=None, description="Tile of its back; the wall's where not given.")
    pattern: Literal["stacked", "running", "diagonal", "herringbone", "basket_weave", "hexagon"] = Field(
        default="stacked", description="Pattern of a tile of its own; else the wall's pattern runs on."
    )
    returns: Name | None = Field(
        default=None, description="Tile of sides, sill and head; that of its back where not given."
    )
    drop: Distance | None = Field(
        default=None, description="How much lower the sill's front lies; by the rule of falls where not given."
    )


class WindowReturns(JobModel):
    """Sill, sides and head of a window set back; its opening lies between the faces of their boards."""

    depth: Length = Field(description="From the face of the wall's boards to the face of the window's frame.")
    drop: Distance | None = Field(
        default=None,
        description="How much lower the sill's front lies than its back; by the rule of falls where not given.",
    )
    tiled: bool = Field(default=True, description="Whether they bear tile; boards, membrane and trim otherwise.")
    tile: Name | None = Field(default=None, description="Their tile; the wall's where not given.")


class TiledBench(JobModel):
    """A bench that stands against a wall, on or before its boards: its top, front and free ends are tiled."""

    id: Name = Field(description="Its name, such as bench.")
    wall: Pair = Field(description="The wall behind it, such as A-B.")
    left: Distance = Field(description="Its left end from the wall's left corner; 0 in the corner.")
    width: Length = Field(description="Along the wall.")
    depth: Length = Field(description="From the wall to its front, before it is tiled.")
    height: Length = Field(
        description="Height of its top at the front, before it is tiled, over the panels or slab that walls are "
        "measured from."
    )
    bottom: Distance | None = Field(
        default=None,
        description="Height at which the tile of its front begins; on the finished floor where not given.",
    )
    drop: Distance | None = Field(
        default=None, description="How much lower its front lies; by the rule of falls where not given."
    )
    body: Literal["solid", "framed", "hung"] | None = Field(
        default=None,
        description="What it is built as: of masonry or mortar (solid), of wood (framed), or carried by its wall "
        "(hung). On joists it counts as solid where not given.",
    )
    tile: Name = Field(description="Tile of its top.")
    front: Name | None = Field(default=None, description="Tile of front and ends; the top's where not given.")

    @model_validator(mode="after")
    def _stands(self) -> Self:
        if self.bottom is not None and self.bottom >= self.height:
            raise ValueError("bottom must be less than height")
        return self


class StartAt(JobModel):
    """A start that is given, not found: where one piece of the pattern has its lower left corner."""

    left: Distance = Field(description="From the left corner, on a floor from the left end of its first side.")
    up: Distance = Field(description="Above the floor, on a floor up from its lowest corner on the drawing.")


class SoftJointOver(JobModel):
    """A line along which tile must be free to move: a doorway it runs through, or a joint in what carries it."""

    over: Literal["doorway", "structural joint", "control joint", "change of backing"] = Field(
        description="What lies there. A doorway's joint moves to the nearest grout joint, the others stay."
    )
    side: Pair | None = Field(
        default=None, description="Floor or ceiling: side it is measured from; the first side where not given."
    )
    ends: tuple[tuple[Distance, Distance], tuple[Distance, Distance]] = Field(
        description="Both ends, each along and out from the side; on a wall from the left corner and the floor."
    )

    @model_validator(mode="after")
    def _runs(self) -> Self:
        if self.ends[0] == self.ends[1]:
            raise ValueError("the two ends are one point")
        return self


class Tiling(JobModel):
    """How a surface is tiled."""

    tile: Name | None = Field(default=None, description="Which tile; a repeat names its own.")
    pattern: Pattern = Field(default="stacked", description="The pattern.")
    repeat: Name | None = Field(default=None, description="Which repeat, for the pattern of that name.")
    offset: Share = Field(default=Fraction(1, 2), description="Running bond: shift of each course over the last.")
    angle: Angle = Field(default=0, description="The whole pattern turned to the left [degrees].")
    start: StartAt | None = Field(default=None, description="Where it starts; found where not given.")
    seen_first: tuple[Pair, ...] = Field(
        default=(), description="Sides that are seen first, where cuts must look best, such as the door's."
    )
    bands: Annotated[tuple[TileBand, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Feature bands of a wall."
    )
    niches: Annotated[tuple[TiledNiche, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Niches of a wall whose inside is tiled."
    )
    border: TileBorder | None = Field(default=None, description="A border along its edges.")
    exposure: TileExposure | None = Field(
        default=None,
        description="How soft joints are spaced: interior, slab (inside on a slab above ground), sun, heat (over "
        "heating), moist, exterior. Where not given, by the surface's exposure, then the room's tile_exposure.",
    )
    soft_joints: Annotated[tuple[SoftJointOver, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Doorways the tile runs through, and joints below that it must follow."
    )

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if (self.pattern == "repeat") != (self.repeat is not None):
            raise ValueError("pattern: repeat and the repeat's name go together")
        if (self.pattern == "repeat") == (self.tile is not None):
            raise ValueError("name the tile, or for pattern: repeat the repeat alone")
        if self.pattern != "running" and "offset" in self.model_fields_set:
            raise ValueError("an offset belongs to pattern: running")
        return self
