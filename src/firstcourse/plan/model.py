"""The plan's data model. In Python every length is whole ticks; in plan.json it is millimetres.

A surface is seen from inside the room: `u` runs right, `v` runs up; a floor is seen from above, a ceiling
from below. Outlines run counter-clockwise, holes clockwise, the first point is not repeated.
"""

from enum import StrEnum
from typing import Literal

from pydantic import AliasChoices, Field

from firstcourse.findings import Finding
from firstcourse.plan.base import Frozen as Frozen
from firstcourse.plan.base import Point, Segment, Ticks
from firstcourse.plan.base import Ring as Ring
from firstcourse.plan.bounds import LayoutBound
from firstcourse.plan.doors import Door
from firstcourse.plan.falls import Fall
from firstcourse.plan.heights import HeightMark
from firstcourse.plan.marks import Mark
from firstcourse.plan.stamp import JobStamp, RuleNote
from firstcourse.plan.structure import StructureSheet
from firstcourse.workings import Working


class SurfaceKind(StrEnum):
    """What a surface is."""

    FLOOR = "floor"
    WALL = "wall"
    CEILING = "ceiling"
    COUNTER = "counter"


class SideKind(StrEnum):
    """What lies beyond one side of a surface's outline; it sets the gap left there.

    `perimeter` meets another surface or a cabinet; `foot` stands above a floor, tub, tray or kerb and is
    sealed; `free` is where the boarding simply stops (board edge on the line, no gap asked).
    """

    PERIMETER = "perimeter"
    FOOT = "foot"
    FREE = "free"


class Side(Frozen):
    """One side of an outline, from point `i` to point `i + 1`.

    Attributes:
        kind: Sets the gap left along the side.
        label: What the setter calls it, such as `wall B-C`, `tub rim`, `ceiling`, `stops here`.
        shown: False where a free edge of tile is covered or trimmed with the surface beyond it.
    """

    kind: SideKind
    label: str = ""
    shown: bool = True


class OpeningKind(StrEnum):
    """What an opening is; windows, doors and niches are framed, the rest are cut round."""

    WINDOW = "window"
    DOOR = "door"
    NICHE = "niche"
    VALVE = "valve"
    PIPE = "pipe"
    BOX = "box"
    DRAIN = "drain"
    FLANGE = "flange"
    TUB = "tub"
    TRAY = "tray"
    CABINET = "cabinet"
    COLUMN = "column"
    OTHER = "other"


class Opening(Frozen):
    """A part of a surface that stays open: either `outline` or `centre` with `diameter`.

    Attributes:
        depth: Of a window that is set back: from the face of the wall's boards to its frame; else None.
        return_board: Of a window whose returns are boarded: thickness of those boards. They stand round the
            outline, between the framing and it, their front edges flush with the face of the wall's boards.
    """

    id: str
    kind: OpeningKind
    outline: Ring | None = None
    centre: Point | None = None
    diameter: Ticks | None = None
    depth: Ticks | None = None
    return_board: Ticks | None = None


class SupportKind(StrEnum):
    """What carries a board."""

    STUD = "stud"
    JOIST = "joist"
    PLATE = "plate"
    BLOCKING = "blocking"
    HEADER = "header"
    PANEL = "panel"


class Support(Frozen):
    """A framing member's face as seen behind the surface; a floor panel carries everywhere.

    Attributes:
        added: True where the plan asks for a member that is not there yet.
    """

    id: str = ""
    outline: Ring
    kind: SupportKind
    added: bool = False


class Zone(Frozen):
    """A region with a ban, such as no fastener near a tray or kerb, with the reason.

    Attributes:
        found: What the job says is there, such as a pipe behind the wall; else a rule asks for it.
    """

    outline: Ring
    why: str
    found: bool = False


class Board(Frozen):
    """One placed board: its outline on the surface, and the piece it is cut as.

    Attributes:
        factory_edges: Indices of outline edges that are uncut sheet edges.
        fixed: Already on the wall; replanning keeps it.
        mark: Short mark on drawings and tickets, such as `W2-3`.
    """

    id: str
    piece: str
    outline: Ring
    holes: tuple[Ring, ...] = ()
    factory_edges: tuple[int, ...] = ()
    fasteners: tuple[Point, ...] = ()
    fixed: bool = False
    mark: str = ""


class Seam(Frozen):
    """The centre line of the gap between two boards."""

    line: Segment
    width: Ticks
    tape: bool = True


class Fill(Frozen):
    """Ground of a boarded surface that no board covers, out to what bounds it.

    Attributes:
        filled_with: `mortar`, or `board` for a strip ripped to its width and bedded on a member.
    """

    id: str
    outline: Ring
    filled_with: Literal["mortar", "board"]


class Tile(Frozen):
    """One placed tile. `from` names the whole tile a cut piece comes from.

    Attributes:
        stock: Which tile of `tile_stock` it is.
        laid: Outline it would have uncut, where it is cut.
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


class SoftJoint(Frozen):
    """A joint left free to move, filled with sealant.

    Attributes:
        place: Which width is asked of it: at the edge of the tile, where it meets walls, other planes and what
            restrains it, or across its field.
    """

    line: tuple[Point, ...]
    width: Ticks
    why: str
    place: Literal["edge", "field"] = "field"


class Area(Frozen):
    """A part of a surface: its outline and the holes in it."""

    outline: Ring
    holes: tuple[Ring, ...] = ()


class StartPoint(Frozen):
    """A place the pattern may start from, and what it brings.

    Attributes:
        origin: Where the repeat has its own origin, for most patterns a tile's lower left corner.
        smallest_cut: Least side of any cut tile; 0 where nothing is cut.
        cut_tiles: How many tiles are cut.
        slack: How far the room may differ from its survey before the smallest cut falls below the rule's;
            0 where it is below already.
        words: What speaks for it and against it.
    """

    origin: Point
    smallest_cut: Ticks
    cut_tiles: int
    slack: Ticks = 0
    words: str = ""


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


class SurfaceLayer(Frozen):
    """One layer between a surface's structure and its face.

    Attributes:
        of: What it is; `board_mortar` lies under boards, `heating` embeds floor heating, `mortar` is under tile.
        thickness: As it ends up in place, the one value for all that rests on it.
        density_kg_m3: For its mass.
    """

    of: Literal["board_mortar", "board", "heating", "mortar_bed", "mortar", "tile"]
    thickness: Ticks
    density_kg_m3: float


class Surface(Frozen):
    """One plane to be boarded and tiled.

    Attributes:
        outline: The part to be boarded, counter-clockwise.
        sides: One per side of `outline`, same order.
        corners: Room corner labels in order of `u` for a wall (left, right), of the outline for a floor.
        extent: The whole wall, floor or ceiling for the drawing, where less than all is boarded.
        datum: Of a wall: how far the lowest point of its foot, where its heights count from, lies over the lowest
            corner of the room's floor; 0 where the floor is level.
        framing_axis: Axis the framing members run along: `u` or `v`; empty where there is none.
        board_stock: Ids of the stocks this surface may be boarded with.
        fills: Strips that are filled instead of boarded.
        boarded: False where tile goes on another ground, such as the bed of a shower floor.
        slab: What a slab takes: tile as it is, or boards bonded in mortar alone, or fastened as well; empty where
            the floor is no slab.
        tiled: What is tiled, area by area; empty where the surface is not tiled.
        fall: How it falls to its drain, where it is a shower floor.
        layers: What lies over its structure, from below, by one value each; of a shower floor and of linings what
            lies on their bed. Empty where neither boards nor tile are known.
        heights: Its readings for flatness, before anything is done; empty where none were taken.
        membrane: What keeps the water off its boards or in its shower floor; empty without one.
        tile_exposure: What its tile is exposed to, which sets how far apart its soft joints may lie.
        part_of: The wall whose niche or window it lines, or the shower floor whose kerb it is part of.
        linings: Surfaces that line its niches and windows or cover its kerb, and must be tiled with it.
        not_tiled: What stands before it when it is tiled, such as a bench, with the bench's id; before a wall also
            the finished floors, as far as they lie above the foot of its boards, with the floor's id.
        marks: What is marked on it before tile is set.
    """

    id: str
    room: str
    kind: SurfaceKind
    title: str = ""
    outline: Ring
    sides: tuple[Side, ...] = ()
    corners: tuple[str, ...] = ()
    extent: Ring | None = None
    datum: Ticks = 0
    openings: tuple[Opening, ...] = ()
    supports: tuple[Support, ...] = ()
    framing_axis: Literal["u", "v", ""] = ""
    panel_joints: tuple[Segment, ...] = ()
    panel_screws: tuple[Point, ...] = ()
    no_fastener_zones: tuple[Zone, ...] = ()
    board_stock: tuple[str, ...] = ()
    boards: tuple[Board, ...] = ()
    seams: tuple[Seam, ...] = ()
    fills: tuple[Fill, ...] = ()
    tiles: tuple[Tile, ...] = ()
    soft_joints: tuple[SoftJoint, ...] = ()
    boarded: bool = True
    slab: Literal["", "tiled", "bonded", "fastened"] = ""
    tiled: tuple[TiledArea, ...] = ()
    fall: Fall | None = None
    layers: tuple[SurfaceLayer, ...] = ()
    heights: tuple[HeightMark, ...] = ()
    membrane: Literal["", "liner", "sheet", "liquid"] = ""
    tile_exposure: Literal["interior", "slab", "sun", "heat", "moist", "exterior"] = "moist"
    part_of: str = ""
    linings: tuple[str, ...] = ()
    not_tiled: tuple[Zone, ...] = ()
    marks: tuple[Mark, ...] = ()


class Piece(Frozen):
    """What one board is cut as, seen with the face that stays visible upwards.

    Attributes:
        blank: Width and height of the rectangle it is cut from; whole graduations of the tape.
        outline: Within the blank, counter-clockwise from its lower left.
    """

    id: str
    board: str
    stock: str
    blank: tuple[Ticks, Ticks]
    outline: Ring
    holes: tuple[Ring, ...] = ()
    face_up: bool = True


class Cut(Frozen):
    """One edge-to-edge cut of a part into two.

    Attributes:
        of: Id of the part that is cut.
        along: Axis the line runs along: `x` (a horizontal line) or `y` (a vertical line).
        at: Distance from the part's left side (`along` y) or lower side (`along` x).
        gives: Ids of the left or lower part, then the right or upper part.
    """

    of: str
    along: Literal["x", "y"]
    at: Ticks
    gives: tuple[str, str]


class Part(Frozen):
    """A part left when all cuts of a sheet are made: a piece, an offcut to keep, or waste.

    Attributes:
        turned: The piece lies turned by a quarter: its blank's width runs up the sheet.
    """

    id: str
    at: Point
    size: tuple[Ticks, Ticks]
    piece: str | None = None
    turned: bool = False
    keep: bool = False


class Sheet(Frozen):
    """One sheet or kept offcut and how it is cut. `source` is `new` or `offcut:ID`."""

    id: str
    stock: str
    size: tuple[Ticks, Ticks]
    source: str
    cuts: tuple[Cut, ...] = ()
    parts: tuple[Part, ...] = ()


class Stock(Frozen):
    """A kind of sheet that can be bought.

    Attributes:
        kind: Board family such as `fibre_cement`.
        price: Per sheet, in the job's currency; None where not given.
        density_kg_m3: For the mass of pieces; None where not known.
    """

    id: str
    size: tuple[Ticks, Ticks]
    thickness: Ticks
    kind: str
    price: float | None = None
    density_kg_m3: float | None = None


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


class Count(Frozen):
    """Sheets used of one stock beside a proven lower bound."""

    used: int
    lower_bound: int
    proven: bool


class Quantity(Frozen):
    """Something to buy: the exact need, and whole packs of it."""

    item: str
    exact: float
    unit: str
    buy: int
    pack: str
    working: str = ""


class Plan(Frozen):
    """The whole plan, as written to plan.json."""

    format: Literal["firstcourse-plan"] = "firstcourse-plan"
    version: Literal[1] = 1
    job: JobStamp
    surfaces: tuple[Surface, ...] = ()
    doors: tuple[Door, ...] = ()
    pieces: tuple[Piece, ...] = ()
    sheets: tuple[Sheet, ...] = ()
    stock: tuple[Stock, ...] = ()
    tile_stock: tuple[TileStock, ...] = ()
    counts: dict[str, Count] = Field(default={})
    bounds: tuple[LayoutBound, ...] = ()
    findings: tuple[Finding, ...] = ()
    quantities: tuple[Quantity, ...] = ()
    workings: dict[str, Working] = Field(default={})
    structures: tuple[StructureSheet, ...] = ()
    rules: tuple[RuleNote, ...] = ()
