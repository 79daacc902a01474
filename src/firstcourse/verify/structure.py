"""The plan as the verifier reads it from raw JSON: plain frozen values, lengths in ticks."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from shapely import MultiPolygon, Polygon

from firstcourse.geometry import Point, Ring
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.verify.areas import area_of
from firstcourse.verify.bound_fields import LayoutBound
from firstcourse.verify.drawn_fields import Reading
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fields import Node
from firstcourse.verify.frame_fields import Frame
from firstcourse.verify.mark_fields import Mark
from firstcourse.verify.shopping_fields import Quantity as Quantity
from firstcourse.verify.shopping_fields import Shopping, Working
from firstcourse.verify.shopping_fields import TileStock as TileStock
from firstcourse.verify.start_fields import Start


@dataclass(frozen=True, slots=True)
class Opening:
    """What stays open: a ring, or a circle by centre and diameter [ticks].

    A window set back has a depth, and where its returns are boarded the thickness of those boards.
    """

    id: str
    kind: str
    outline: Ring | None
    centre: Point
    diameter: int
    depth: int = 0
    return_board: int = 0


@dataclass(frozen=True, slots=True)
class Support:
    """A member's face."""

    id: str
    kind: str
    outline: Ring
    added: bool


@dataclass(frozen=True, slots=True)
class Board:
    """A placed board."""

    id: str
    piece: str
    outline: Ring
    holes: tuple[Ring, ...]
    factory_edges: tuple[int, ...]
    fasteners: tuple[Point, ...]
    fixed: bool
    mark: str

    @property
    def shape(self) -> Polygon:
        """The board's area."""
        return area_of(self.outline, self.holes)


@dataclass(frozen=True, slots=True)
class Ban:
    """Where nothing may be driven, why, and whether the job says that something is there."""

    outline: Ring
    why: str
    found: bool


@dataclass(frozen=True, slots=True)
class Seam:
    """The middle of a gap between boards, and the gap's width."""

    line: tuple[Point, Point]
    width: int
    tape: bool


@dataclass(frozen=True, slots=True)
class Fill:
    """Ground that no board covers, and with what it is filled."""

    id: str
    outline: Ring
    filled_with: str


@dataclass(frozen=True, slots=True)
class Tile:
    """A placed tile; `laid` is its outline uncut, `cut` its outline in the tile it is cut from."""

    id: str
    outline: Ring
    holes: tuple[Ring, ...]
    whole: bool
    source: str
    fixed: bool
    stock: str
    laid: Ring
    cut: Ring
    fit: bool = False
    mark: str = ""

    @property
    def shape(self) -> Polygon:
        """The tile's area."""
        return area_of(self.outline, self.holes)


@dataclass(frozen=True, slots=True)
class TiledArea:
    """An area tiled in one pattern, with the start that is used and others beside it."""

    pattern: str
    tiles: tuple[str, ...]
    shape: MultiPolygon
    joint: int
    role: str = "field"
    steps: tuple[tuple[float, float], ...] = ()
    mortar: int | None = None
    trowel: str = ""
    angle: float = 0.0
    starts: tuple[Start, ...] = ()

    @property
    def origin(self) -> Point:
        """Where the repeat that is used has its own origin."""
        return self.starts[0].origin if self.starts else (0, 0)


@dataclass(frozen=True, slots=True)
class SoftJoint:
    """A joint left free to move: what asks for it, what it meets at an edge, whether tiles are cut along it."""

    line: tuple[Point, ...]
    width: int
    place: str = "field"
    why: str = ""
    at: str = ""
    cut: bool = False


@dataclass(frozen=True, slots=True)
class Surface:
    """One plane with all that lies on it."""

    id: str
    room: str
    kind: str
    outline: Ring
    sides: tuple[str, ...]
    met: tuple[str, ...]
    corners: tuple[str, ...]
    membrane: str
    openings: tuple[Opening, ...]
    supports: tuple[Support, ...]
    framing_axis: str
    panel_joints: tuple[tuple[Point, Point], ...]
    panel_screws: tuple[Point, ...]
    bans: tuple[Ban, ...]
    board_stock: tuple[str, ...]
    boards: tuple[Board, ...]
    seams: tuple[Seam, ...]
    tiles: tuple[Tile, ...]
    soft_joints: tuple[SoftJoint, ...]
    boarded: bool
    tiled: tuple[TiledArea, ...]
    fall: Fall | None
    readings: tuple[Reading, ...] = ()
    tile_exposure: str = "moist"
    hidden: frozenset[int] = frozenset()
    part_of: str = ""
    linings: tuple[str, ...] = ()
    not_tiled: tuple[tuple[str, Ring], ...] = ()
    fills: tuple[Fill, ...] = ()
    layers: tuple[tuple[str, int], ...] = ()
    slab: str = ""
    extent: Ring = ()
    datum: int = 0
    marks: tuple[Mark, ...] = ()

    @property
    def foot(self) -> tuple[Point, Point]:
        """The floor along a wall as it was taped, from its left end to its right."""
        return self.extent[0], self.extent[1]

    def foot_at(self, u: float) -> float:
        """Height of the floor's panels at a place along a wall, over the lower end of its foot [ticks]."""
        (left, low), (right, high) = self.foot
        return low + (high - low) * (u - left) / (right - left) if right != left else low

    @property
    def zones(self) -> tuple[Ring, ...]:
        """Where nothing may be driven."""
        return tuple(ban.outline for ban in self.bans)

    @property
    def built_later(self) -> bool:
        """Whether it is a face of what does not stand yet on the day of marking: of a niche, a kerb or a bench."""
        return bool(self.part_of) or self.id.startswith(f"{self.room}/bench/")

    @property
    def carried_everywhere(self) -> bool:
        """Whether a panel lies under all of it."""
        return any(support.kind == "panel" for support in self.supports)


@dataclass(frozen=True, slots=True)
class Piece:
    """What a board is cut as."""

    id: str
    board: str
    stock: str
    blank: tuple[int, int]
    outline: Ring
    holes: tuple[Ring, ...]
    face_up: bool


@dataclass(frozen=True, slots=True)
class Cut:
    """One edge-to-edge cut."""

    of: str
    along: str
    at: int
    gives: tuple[str, str]


@dataclass(frozen=True, slots=True)
class Part:
    """What a sheet is cut into."""

    id: str
    at: Point
    size: tuple[int, int]
    piece: str | None
    turned: bool
    keep: bool


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet or offcut with its cuts."""

    id: str
    stock: str
    size: tuple[int, int]
    source: str
    cuts: tuple[Cut, ...]
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Count:
    """Sheets used beside the least that any plan needs."""

    stock: str
    used: int
    lower_bound: int
    proven: bool


@dataclass(frozen=True, slots=True)
class Said:
    """A finding's fields that the verifier reads.

    Attributes:
        measured: A value with its unit.
        limit: A value with its unit and sense.
    """

    code: str
    severity: str
    rule: str
    measured: Mapping[str, Any] | None
    limit: Mapping[str, Any] | None
    at: tuple[str, ...]
    values: Mapping[str, Any] = field(default_factory=dict)
    remedies: tuple[str, ...] = ()

    @property
    def place(self) -> str:
        """What it is about, by reference."""
        return self.at[0]

    @property
    def amount(self) -> float | None:
        """What was measured, as a number in its unit."""
        return None if self.measured is None else float(self.measured["value"])

    @property
    def allowed(self) -> float | None:
        """What is allowed, as a number in its unit."""
        return None if self.limit is None else float(self.limit["value"])

    def lengths(self, name: str) -> tuple[float, ...]:
        """One of its values, a length or several [ticks]; none where it is not given as such."""
        found = self.values.get(name)
        each = [one for one in (found if isinstance(found, list) else [found]) if isinstance(one, Mapping)]
        numbers = [one.get("value") for one in each if one.get("unit") == "mm"]
        return tuple(number * TICKS_PER_MM for number in numbers if isinstance(number, int | float))


@dataclass(frozen=True, slots=True)
class Door:
    """A doorway by its wall, and where it stands on the floor's plan."""

    id: str
    room: str
    wall: str
    line: tuple[Point, Point]
    left: int
    width: int
    bottom: int | None = None
    height: int | None = None


@dataclass(frozen=True, slots=True)
class Document:
    """The whole plan.

    Attributes:
        source: The plan as it stands in JSON.
    """

    tape: Tape
    rules: RuleSet
    surfaces: tuple[Surface, ...]
    pieces: tuple[Piece, ...]
    sheets: tuple[Sheet, ...]
    stock: dict[str, tuple[int, int]]
    tile_stock: dict[str, TileStock]
    counts: tuple[Count, ...]
    findings: tuple[Said, ...]
    shopping: Shopping
    frames: tuple[Frame, ...]
    bounds: tuple[LayoutBound, ...]
    doors: tuple[Door, ...] = ()
    source: Node = field(default_factory=lambda: Node({}, "plan"))

    @property
    def given(self) -> Node:
        """What the plan was given, as it stands there: the job's values, the rules, and their digest."""
        return Node(self.source.raw("given"), "plan.given")

    @property
    def job(self) -> Node:
        """The job as given: its document's values by their names, lengths in millimetres."""
        return Node(self.given.raw("job"), "plan.given.job")

    @property
    def to_cut(self) -> tuple[Piece, ...]:
        """The pieces of boards that are still to be set: what is up is cut no more."""
        up = {board.piece for surface in self.surfaces for board in surface.boards if board.fixed}
        return tuple(piece for piece in self.pieces if piece.id not in up)

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """What is to be bought."""
        return self.shopping.quantities

    @property
    def workings(self) -> dict[str, Working]:
        """How numbers came about, by name."""
        return self.shopping.workings

    def says(self, surface: Surface, *, code: str = "", rule: str = "") -> bool:
        """Whether a finding on this surface has the code, or speaks of the rule."""
        return any(
            (said.code == code if code else said.rule == rule)
            and any(at == surface.id or at.startswith((f"{surface.id}/", f"{surface.id}#")) for at in said.at)
            for said in self.findings
        )
