"""Tile on a surface: the areas in one pattern, their tiles and joints, and the tile that was chosen."""

from typing import Literal

from pydantic import AliasChoices, Field

from firstcourse.plan.base import Frozen, Point, Ring, Ticks


class Tile(Frozen):
    """One placed tile. `from` names the whole tile a cut piece comes from.

    Attributes:
        stock: Which tile of `tile_stock` it is.
        laid: Outline it would have uncut, where it is cut. It begins at the corner that is lower left in the whole
            tile, of a hexagon the lowest, and so shows how a grain runs.
        cut: Outline within the tile it is cut from, seen from its face, lower left corner at (0, 0); a piece may
            lie turned there, never mirrored.
        fit: Cut straight to fit where it goes; a cut tile that is not is drawn, with its notch, hole or slant.
        mark: Short mark on drawings and cut lists; pieces of one line share it: those of one shape, or those
            cut to fit at one place and of about one size.
    """

    id: str
    outline: Ring
    holes: tuple[Ring, ...] = ()
    whole: bool
    from_: str = Field(validation_alias=AliasChoices("from", "from_"), serialization_alias="from", default="")
    fixed: bool = False
    stock: str = ""
    laid: Ring = ()
    cut: Ring = ()
    fit: bool = False
    mark: str = ""


SoftWhy = Literal[
    "plane", "restrained", "doorway", "structural_joint", "control_joint", "change_of_backing", "field"
]


class SoftJoint(Frozen):
    """A joint left free to move, filled with sealant.

    Attributes:
        why: What asks for it: a change of plane or material (`plane`), what restrains the tile there, a doorway
            that tile runs through, a joint in what carries it, or the size of the field.
        at: At the edge of the tile, what it meets there: a side of the surface (`.../side/2`, counted from 0),
            what stands on it (`.../opening/tub`), or the floor or kerb before a wall.
        place: Which width is asked of it: at the edge of the tile, where it meets walls, other planes and what
            restrains it, or across its field.
        cut: Tiles lie across it, so that they are cut along it.
    """

    line: tuple[Point, ...]
    width: Ticks
    why: SoftWhy
    at: str = ""
    place: Literal["edge", "field"] = "field"
    cut: bool = False


class Area(Frozen):
    """A part of a surface: its outline and the holes in it."""

    outline: Ring
    holes: tuple[Ring, ...] = ()


StartWhy = Literal[
    "best", "other", "given", "round_corners", "host_joints", "no_sliver", "courses_below", "field_joints",
    "both_corners",
]  # fmt: skip
"""How a start came about."""


class EdgeCut(Frozen):
    """The narrowest cut along one side of a surface.

    Attributes:
        at: The side (`.../side/2`, counted from 0).
        width: Of the cut; None where no tile is cut there.
        share: The same as a share of a tile's longest side; 1 where none is cut.
        weight: How much a poor cut shows there.
    """

    at: str
    width: Ticks | None = None
    share: float = 1.0
    weight: float = 1.0


class StartPoint(Frozen):
    """A place the pattern may start from, and what it brings.

    Attributes:
        origin: Where the repeat has its own origin, for most patterns a tile's lower left corner.
        smallest_cut: Least side of any cut tile; 0 where nothing is cut.
        cut_tiles: How many tiles are cut.
        slack: How far the room may differ from its survey before the smallest cut falls below the rule's;
            0 where it is below already.
        why: How it came about: the best or another that was found, given by the job, with the courses of the walls
            beside it (`round_corners`), with the joints of the wall that it belongs to (`host_joints`) or off them
            to be rid of a sliver (`no_sliver`); of a band, a border and what they part: with the courses below or
            the joints of the field, or alike from both corners.
        sliver: One of the cuts is a sliver.
        under_half: A cut along an edge is under half a tile.
        narrowest_at: Where the narrowest sliver stands, else the narrowest cut under half a tile: a side, an
            opening or what stands before the surface; empty where there is none, or nothing of these is there.
        edges: The narrowest cut along each side.
        uneven: Greatest difference of cuts on opposite sides, share of a tile; None where nothing faces.
        wanted: Edges of niches and windows that are best met by a joint.
        on_joints: How many of them are.
        unsure: The survey leaves the room any play.
        may_sliver: In a room that the survey allows a sliver may stand.
        sure_cut: Narrowest cut along an edge in any such room.
    """

    origin: Point
    smallest_cut: Ticks
    cut_tiles: int
    slack: Ticks = 0
    why: StartWhy = "best"
    sliver: bool = False
    under_half: bool = False
    narrowest_at: str = ""
    edges: tuple[EdgeCut, ...] = ()
    uneven: float | None = None
    wanted: int = 0
    on_joints: int = 0
    unsure: bool = False
    may_sliver: bool = False
    sure_cut: Ticks = 0


class TiledArea(Frozen):
    """An area tiled in one pattern.

    Attributes:
        tiles: Ids of the tile stocks in it.
        mortar: Mean thickness of the mortar under its tile, the one value for heights, masses, orders and joints;
            None in plans made before it was kept.
        trowel: Class of the notch that leaves it, by the longest of its tiles; empty where the job gives the
            thickness.
        area: Where tile goes, soft joints at its edges taken off.
        joint: Width of the grout joints.
        step_a: One step of the repeat [mm]; not whole ticks, so that turned patterns keep true.
        step_b: The other step [mm].
        role: What it is of the whole: the field, a band across it, or a strip of the border round it.
        starts: The start that is used, then the alternatives, best first.
    """

    pattern: str
    tiles: tuple[str, ...]
    mortar: Ticks | None = None
    trowel: Literal["", "mosaic", "small", "medium", "large"] = ""
    area: tuple[Area, ...]
    joint: Ticks
    angle: int = 0
    step_a: tuple[float, float]
    step_b: tuple[float, float]
    starts: tuple[StartPoint, ...]
    role: Literal["field", "band", "border"] = "field"


class TileStock(Frozen):
    """A tile that was chosen.

    Attributes:
        size: Measured width and height of one piece; of a hexagon across flats and across corners.
        sheet: Pieces across and up on one mounted mosaic sheet.
        price: Per box, in the job's currency; None where not given.
        wet_friction: Wet dynamic coefficient of friction by its data sheet; None where not given.
    """

    id: str
    size: tuple[Ticks, Ticks]
    thickness: Ticks
    kind: str
    shape: Literal["rectangle", "hexagon"] = "rectangle"
    edges: Literal["pressed", "rectified"] = "pressed"
    joint: Ticks
    directional: bool = False
    sheet: tuple[int, int] | None = None
    per_box: int | None = None
    price: float | None = None
    wet_friction: float | None = None
