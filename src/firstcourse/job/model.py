"""What a job document may say. Field descriptions here are the user's reference and the schema's text.

Corners are listed clockwise seen from above: standing inside and turning to the right, the way walls are read.
Wall A-B has A at its left end. A wall's items are placed from its left corner and its floor; a floor's items from
the left end of a named side and outwards from that side into the room.
"""

import datetime
from typing import Annotated, Literal, Self

from pydantic import Field, FiniteFloat, model_validator

from firstcourse.job.carrying import (
    CeilingJoists,
    DoorStep,
    Exposure,
    FloorTile,
    Joists,
    Panels,
    Planks,
    SpotLevel,
    WallStuds,
)
from firstcourse.job.done import Done
from firstcourse.job.fields import (
    MOST_BOARDS,
    MOST_CORNERS,
    MOST_ITEMS,
    MOST_ROOMS,
    Corner,
    Distance,
    JobModel,
    Length,
    Name,
    Offset,
    Pair,
    Price,
    ShortReason,
    Thickness,
    Warmth,
    measured,
    one_of,
)
from firstcourse.job.framing import FloorFraming, WallBlocking, WallFraming
from firstcourse.job.openings import FloorOpening, WallOpening
from firstcourse.job.own_rules import Lifting, RuleChange
from firstcourse.job.schedule import WorkSchedule
from firstcourse.job.shower import TiledShower
from firstcourse.job.site import Site
from firstcourse.job.surface import StraightedgeGap, StudReading, WallTile
from firstcourse.job.tile import ChosenTile, TiledBench, TileExposure, TileRepeat, Tiling
from firstcourse.plan import SurfaceKind
from firstcourse.rules import Override
from firstcourse.tongues import ENGLISH, Tongue
from firstcourse.units import WARMTH, Tape


class SheetStock(JobModel):
    """A kind of sheet that can be bought."""

    id: Name = Field(description="Your name for it, used in the plan.")
    size: tuple[Length, Length] = Field(
        description="Width and length of the sheet. A surface that takes more than about "
        f"{MOST_BOARDS} of the largest it may be boarded with is refused."
    )
    thickness: Thickness = Field(description="Thickness of the sheet, at most 2 in.")
    kind: Name = Field(default="fibre_cement", description="Board family, in your words.")
    price: Price | None = Field(default=None, description="Price of one sheet.")
    density_kg_m3: Annotated[FiniteFloat, Field(gt=0, lt=10_000)] | None = Field(
        default=None, description="Density for masses; the rule book's value where not given."
    )
    used_for: tuple[SurfaceKind, ...] = Field(
        default=(), alias="for", description="Surfaces it serves: floor, wall, ceiling; all where not given."
    )


class KeptOffcut(JobModel):
    """A piece of an earlier sheet that may be used up."""

    id: Name = Field(description="The label on it.")
    stock: Name = Field(description="Which stock it is of.")
    size: tuple[Length, Length] = Field(description="Width and length of the good rectangle.")


class NoFastenerZone(JobModel):
    """A part of a wall where nothing may be driven."""

    left: Distance = Field(description="Its left edge, from the left corner.")
    right: Length = Field(description="Its right edge, from the left corner.")
    bottom: Distance = Field(description="Its lower edge, above the floor.")
    top: Length = Field(description="Its upper edge, above the floor.")
    why: ShortReason = Field(description="Why; printed on the drawing.")

    @model_validator(mode="after")
    def _spans(self) -> Self:
        if self.right <= self.left or self.top <= self.bottom:
            raise ValueError("right must be more than left, and top more than bottom")
        return self


class BoardRange(JobModel):
    """The part of a wall that is boarded; what is not given runs to the wall's end."""

    left: Distance | None = Field(default=None, description="From the left corner.")
    right: Length | None = Field(default=None, description="From the left corner.")
    bottom: Distance | None = Field(default=None, description="Above the floor, such as the tub's rim.")
    top: Length | None = Field(default=None, description="Above the floor.")

    @model_validator(mode="after")
    def _spans(self) -> Self:
        if self.left is not None and self.right is not None and self.right <= self.left:
            raise ValueError("right must be more than left")
        if self.bottom is not None and self.top is not None and self.top <= self.bottom:
            raise ValueError("top must be more than bottom")
        return self


class BoardedWall(JobModel):
    """A wall to be boarded; walls that are not listed stay as they are."""

    wall: Pair = Field(description="Left and right corner, such as A-B.")
    boards: BoardRange = Field(default=BoardRange(), description="Where less than the whole wall is boarded.")
    foot: Literal["floor", "tub", "tray", "kerb", "none"] = Field(
        default="floor",
        description="What the boards stand above: the floor; a tub's or tray's rim or a kerb, where boards.bottom "
        "gives its height; or none, where they begin above free wall. The gap there (rule boards.gap.foot; none "
        "leaves no gap) is kept open under the boards and sealed; over a tray or kerb nothing is driven low.",
    )
    framing: WallFraming = Field(description="The studs.")
    blocking: Annotated[tuple[WallBlocking, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Blocking between studs that is there already."
    )
    openings: Annotated[tuple[WallOpening, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Windows, doors, niches and every hole for valve, pipe or box."
    )
    no_fasteners: Annotated[tuple[NoFastenerZone, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Where nothing may be driven, beside the zone above a tray or kerb."
    )
    stock: tuple[Name, ...] = Field(default=(), description="Only these stocks; all that serve walls otherwise.")
    studs: WallStuds | None = Field(default=None, description="What the studs are; not judged otherwise.")
    faces: Annotated[tuple[StudReading, ...], Field(max_length=120)] = Field(
        default=(), description="How the studs' faces stand, at two studs or more; for flatness."
    )
    straightedge: Annotated[tuple[StraightedgeGap, ...], Field(max_length=60)] = Field(
        default=(), description="Gaps under a straightedge, instead of readings or beside them."
    )
    tile: WallTile | None = Field(default=None, description="What will lie on the boards.")
    trim: Length | None = Field(default=None, description="Height of the edge trim, where there is one.")
    exposure: Exposure | None = Field(default=None, description="What it is exposed to; not judged otherwise.")
    tiling: Tiling | None = Field(default=None, description="How it is tiled; boards only otherwise.")


class PanelJoint(JobModel):
    """A joint of the panel layer below the boards, or a stretch of it."""

    parallel_to: Pair = Field(description="The side it runs along.")
    out: Distance = Field(description="From that side.")
    left: Distance | None = Field(
        default=None, description="Where it starts along the side; the whole floor otherwise."
    )
    right: Length | None = Field(default=None, description="Where it ends along the side.")


class PanelScrews(JobModel):
    """Screws of the panel below, in rows on the joists."""

    spacing: Length = Field(description="Along each joist.")
    first: Distance = Field(description="From the left end of the side the joists run along.")


class BoardedFloor(JobModel):
    """The floor, where it is boarded."""

    framing: FloorFraming | None = Field(
        default=None, description="The joists. A floor without framing, joists, panels and their joints is a slab."
    )
    panel_joints: Annotated[tuple[PanelJoint, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Joints of the panels below; board seams stay off them."
    )
    panel_screws: PanelScrews | None = Field(
        default=None, description="Screws of the panels below; board fasteners stay clear of them."
    )
    openings: Annotated[tuple[FloorOpening, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(),
        description="Drains, flanges and pipes, and what stands on the floor: tub, tray, cabinet, column.",
    )
    stock: tuple[Name, ...] = Field(
        default=(), description="Only these stocks; all that serve floors otherwise. A slab takes none by itself."
    )
    boards_on_slab: Literal["bonded", "fastened"] | None = Field(
        default=None,
        description="Boards on a slab, and how they are held: bonded in a full bed of mortar alone, or fastened "
        "through that into drilled holes as well. Without it a slab is tiled as it is.",
    )
    joists: Joists | None = Field(
        default=None, description="What the joists are; the floor is not judged without joists, panels and tile."
    )
    planks: Planks | None = Field(default=None, description="Planks on the joists, under any panels.")
    panels: Panels | None = Field(default=None, description="The panel layers on the joists, or on planks.")
    tile: FloorTile | None = Field(default=None, description="What will lie on the boards.")
    spots: Annotated[tuple[SpotLevel, ...], Field(max_length=120)] = Field(
        default=(), description="Height readings, at least three and not in one line; for flatness."
    )
    straightedge: Annotated[tuple[StraightedgeGap, ...], Field(max_length=60)] = Field(
        default=(), description="Gaps under a straightedge, instead of height readings or beside them."
    )
    doorways: Annotated[tuple[DoorStep, ...], Field(max_length=20)] = Field(
        default=(), description="Where the finished floor meets another."
    )
    flange_top: Distance | None = Field(default=None, description="Top of the closet flange over the panels.")
    shower: TiledShower | None = Field(default=None, description="A shower floor on a bed of its own.")
    trim: Length | None = Field(default=None, description="Height of the edge trim, where there is one.")
    exposure: Exposure | None = Field(default=None, description="What it is exposed to; not judged otherwise.")
    tiling: Tiling | None = Field(default=None, description="How it is tiled; boards only otherwise.")

    @property
    def is_slab(self) -> bool:
        """Whether it is of concrete: nothing is entered of joists, planks or panels."""
        told = (self.framing, self.joists, self.planks, self.panels, self.panel_screws)
        return all(part is None for part in told) and not self.panel_joints

    @model_validator(mode="after")
    def _held(self) -> Self:
        if self.boards_on_slab is not None and not self.is_slab:
            raise ValueError("boards_on_slab is for a slab; this floor has joists or panels")
        if self.boards_on_slab is None and self.is_slab and self.stock:
            raise ValueError(
                "stock is named, and nothing says what carries the boards: enter the framing, or for a slab how "
                "they are held on it (boards_on_slab: bonded or fastened); tile goes on the slab itself otherwise"
            )
        return self


class BoardedCeiling(JobModel):
    """The ceiling, where it is boarded; it lies over the whole room."""

    framing: FloorFraming = Field(description="The ceiling joists.")
    joists: CeilingJoists | None = Field(default=None, description="What the joists are; not judged otherwise.")
    openings: Annotated[tuple[FloorOpening, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Boxes, pipes and hatches, placed as on the floor below them."
    )
    stock: tuple[Name, ...] = Field(
        default=(), description="Only these stocks; all that serve ceilings otherwise."
    )
    exposure: Exposure | None = Field(default=None, description="What it is exposed to; not judged otherwise.")
    tiling: Tiling | None = Field(default=None, description="How it is tiled; boards only otherwise.")


class Room(JobModel):
    """One room as it was taped."""

    name: Name = Field(description="The room's name, unique in the job.")
    corners: Annotated[tuple[Corner, ...], Field(min_length=3, max_length=MOST_CORNERS)] = Field(
        description="Corner names, clockwise seen from above (turning to the right inside)."
    )
    sides: dict[Pair, Length] = Field(description="Taped length of each side.")
    diagonals: dict[Pair, Length] = Field(default={}, description="Taped distances between other corners.")
    taped_to: Literal["studs", "finish"] | None = Field(
        default=None,
        description="What the tape touched on the walls to be boarded: bare studs, as planning takes it where not "
        "given, or the finish that was still on them (finish). Walls that stay are taped to their face.",
    )
    height: Length | None = Field(default=None, description="One height for all corners.")
    heights: dict[Corner, Length] = Field(default={}, description="Wall height at each corner.")
    levels: dict[Corner, Offset] = Field(default={}, description="Floor height at corners against a level line.")
    plumb: dict[Pair, Offset] = Field(
        default={}, description="How far a wall leans in (+) or out over its height."
    )
    floor: BoardedFloor | None = Field(
        default=None, description="The floor, where it is boarded; `{}` for a plain slab."
    )
    walls: Annotated[tuple[BoardedWall, ...], Field(max_length=MOST_CORNERS)] = Field(
        default=(), description="The walls to be boarded; the others stay as they are."
    )
    ceiling: BoardedCeiling | None = Field(default=None, description="The ceiling, where it is boarded.")
    benches: Annotated[tuple[TiledBench, ...], Field(max_length=20)] = Field(
        default=(), description="Benches that are tiled."
    )
    tile_exposure: TileExposure = Field(
        default="moist", description="What its tile is exposed to, where a surface says nothing else."
    )
    yearly_range: Warmth | None = Field(
        default=None,
        description="Outside: hottest less coldest temperature of the tile in a year, such as 120 F or 65 C; it "
        "widens soft joints.",
    )
    yearly_range_f: Annotated[FiniteFloat, Field(gt=0, le=300)] | None = Field(
        default=None, description="Older name of yearly_range [°F]."
    )

    @model_validator(mode="after")
    def _one_range(self) -> Self:
        one_of({"yearly_range": self.yearly_range, "yearly_range_f": self.yearly_range_f})
        return self

    @property
    def warmth_f(self) -> float | None:
        """Hottest less coldest temperature of its tile in a year [°F]; None where not given."""
        return measured(WARMTH, self.yearly_range, self.yearly_range_f)

    def side_pairs(self) -> tuple[str, ...]:
        """The sides in order, each as `left-right`."""
        return tuple(f"{a}-{b}" for a, b in zip(self.corners, self.corners[1:] + self.corners[:1], strict=True))


class JobHead(JobModel):
    """What is said once for all rooms."""

    name: Name = Field(description="The job's name.")
    practice: Literal["us", "uk", "au"] = Field(default="us", description="Whose rules apply.")
    date: datetime.date = Field(description="The rules are read for this day.")
    tape: Tape = Field(default=Tape.INCH, description="The tape in your hand: inch (1/16 in) or mm.")
    tongue: Tongue = Field(default=ENGLISH, description="What papers and findings are written in, such as en.")
    site: Site = Field(default=Site(), description="What stands on the cover of the papers.")
    currency: Annotated[str, Field(pattern=r"^[A-Z]{0,3}$")] = Field(default="", description="Of the prices.")
    stock: Annotated[tuple[SheetStock, ...], Field(max_length=20)] = Field(
        default=(), description="Sheets you can buy; the rule book's where not given."
    )
    offcuts: Annotated[tuple[KeptOffcut, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Pieces of earlier sheets to use up first."
    )
    rules: Annotated[tuple[RuleChange, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Rules that have another value on this job, each with its reason."
    )
    lifting: Lifting | None = Field(
        default=None, description="How sheets are lifted; assumed where not given, as its settings say."
    )
    tiles: Annotated[tuple[ChosenTile, ...], Field(max_length=40)] = Field(
        default=(), description="The tiles that were chosen."
    )
    repeats: Annotated[tuple[TileRepeat, ...], Field(max_length=20)] = Field(
        default=(), description="Tile patterns of your own."
    )

    def overrides(self) -> tuple[Override, ...]:
        """The rules that have another value on this job."""
        lifted = () if self.lifting is None else self.lifting.overrides()
        return (*(each.override() for each in self.rules), *lifted)


class Job(JobHead):
    """A whole job."""

    rooms: Annotated[tuple[Room, ...], Field(min_length=1, max_length=MOST_ROOMS)] = Field(
        description="The rooms as taped."
    )
    schedule: WorkSchedule | None = Field(
        default=None, description="When and by whom the work is done; a calendar is made only where it is given."
    )
    done: Done | None = Field(default=None, description="What is done already, when a plan is made again.")
