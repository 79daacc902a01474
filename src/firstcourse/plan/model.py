"""The plan's data model. In Python every length is whole ticks; in plan.json it is millimetres.

A surface is seen from inside the room: `u` runs right, `v` runs up; a floor is seen from above, a ceiling
from below. Outlines run counter-clockwise, holes clockwise, the first point is not repeated.
"""

from enum import StrEnum
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, PlainSerializer, ValidationInfo, WithJsonSchema
from pydantic.functional_validators import BeforeValidator

from firstcourse.findings import Finding
from firstcourse.units import Tape, ticks_from_mm, to_mm
from firstcourse.workings import Working


def _ticks(value: Any, info: ValidationInfo) -> Any:
    if info.mode == "json" and isinstance(value, int | float) and not isinstance(value, bool):
        return ticks_from_mm(value)
    return value


Ticks = Annotated[
    int,
    BeforeValidator(_ticks),
    PlainSerializer(to_mm, return_type=float, when_used="json"),
    WithJsonSchema({"type": "number", "description": "millimetres, a multiple of 1/640"}),
]
"""A length: whole ticks in Python, millimetres in JSON."""

Point = tuple[Ticks, Ticks]
Ring = tuple[Point, ...]
Segment = tuple[Point, Point]


class Frozen(BaseModel):
    """Base of every plan value: immutable, and unknown fields are refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True)


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
    """

    kind: SideKind
    label: str = ""


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
    """A part of a surface that stays open: either `outline` or `centre` with `diameter`."""

    id: str
    kind: OpeningKind
    outline: Ring | None = None
    centre: Point | None = None
    diameter: Ticks | None = None


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
    """A region with a ban, such as no fastener near a tray or kerb, with the reason."""

    outline: Ring
    why: str


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


class Tile(Frozen):
    """One placed tile. `from` names the whole tile a cut piece comes from."""

    id: str
    outline: Ring
    holes: tuple[Ring, ...] = ()
    whole: bool
    from_: str = Field(alias="from", default="")
    fixed: bool = False


class SoftJoint(Frozen):
    """A joint left free to move, filled with sealant."""

    line: tuple[Point, ...]
    width: Ticks
    why: str


class Surface(Frozen):
    """One plane to be boarded and tiled.

    Attributes:
        outline: The part to be boarded, counter-clockwise.
        sides: One per side of `outline`, same order.
        corners: Room corner labels in order of `u` for a wall (left, right), of the outline for a floor.
        extent: The whole wall, floor or ceiling for the drawing, where less than all is boarded.
        framing_axis: Axis the framing members run along: `u` or `v`; empty where there is none.
        board_stock: Ids of the stocks this surface may be boarded with.
    """

    id: str
    room: str
    kind: SurfaceKind
    title: str = ""
    outline: Ring
    sides: tuple[Side, ...] = ()
    corners: tuple[str, ...] = ()
    extent: Ring | None = None
    openings: tuple[Opening, ...] = ()
    supports: tuple[Support, ...] = ()
    framing_axis: Literal["u", "v", ""] = ""
    panel_joints: tuple[Segment, ...] = ()
    panel_screws: tuple[Point, ...] = ()
    no_fastener_zones: tuple[Zone, ...] = ()
    board_stock: tuple[str, ...] = ()
    boards: tuple[Board, ...] = ()
    seams: tuple[Seam, ...] = ()
    tiles: tuple[Tile, ...] = ()
    soft_joints: tuple[SoftJoint, ...] = ()


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


class RuleOverride(Frozen):
    """A rule's value set by the job, with the reason that papers print."""

    rule: str
    value: float | str | bool
    unit: str = ""
    reason: str


class RuleNote(Frozen):
    """A rule the plan rests on, as the papers print it."""

    id: str
    value: str
    unit: str
    basis: str
    source: str
    locator: str = ""


class JobStamp(Frozen):
    """Which job and which rules made this plan.

    Attributes:
        digest: SHA-256 of the job document and the rule book.
        practice: Rule set, such as `us`.
        date: Date the rules are read for, ISO 8601.
    """

    name: str
    digest: str
    practice: str = "us"
    date: str = ""
    tape: Tape = Tape.INCH
    currency: str = ""
    effort: int = 1
    overrides: tuple[RuleOverride, ...] = ()


class Plan(Frozen):
    """The whole plan, as written to plan.json."""

    format: Literal["firstcourse-plan"] = "firstcourse-plan"
    version: Literal[1] = 1
    job: JobStamp
    surfaces: tuple[Surface, ...] = ()
    pieces: tuple[Piece, ...] = ()
    sheets: tuple[Sheet, ...] = ()
    stock: tuple[Stock, ...] = ()
    counts: dict[str, Count] = {}
    findings: tuple[Finding, ...] = ()
    quantities: tuple[Quantity, ...] = ()
    workings: dict[str, Working] = {}
    rules: tuple[RuleNote, ...] = ()
