"""One plane to be boarded and tiled, and what bounds, opens and carries it.

A surface is seen from inside the room: `u` runs right, `v` runs up; a floor is seen from above, a ceiling
from below. Outlines run counter-clockwise, holes clockwise, the first point is not repeated.
"""

from enum import StrEnum
from typing import Literal

from firstcourse.plan.base import Frozen, Point, Ring, Segment, Ticks
from firstcourse.plan.boards import Board, Fill, Seam
from firstcourse.plan.falls import Fall
from firstcourse.plan.heights import HeightMark
from firstcourse.plan.marks import Mark
from firstcourse.plan.tiles import SoftJoint, Tile, TiledArea


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


STOPS_HERE = "stops_here"
"""Boards end here on a plane that goes on."""
OWN_HEIGHT = "own_height"
"""The face of a bench begins here at the height that the job gives, or over floors that it does not plan."""
_WALL, _CORNER, _KERB = "wall", "corner", "/floor/shower/kerb"


class Side(Frozen):
    """One side of an outline, from point `i` to point `i + 1`.

    What it meets is a reference or one of the codes above. References are ids of surfaces (`bath/wall/B-C`,
    `bath/floor/shower`, `bath/bench/seat/top`), built or not, and of what bounds a surface besides: a corner
    (`bath/corner/B`), a fixture (`bath/fixture/tub`), the kerb round a shower floor (`bath/floor/shower/kerb`), of
    which each straight run has its number where there are several, the front of an opening
    (`bath/wall/A-B/opening/niche`), its frame and its framing (`.../opening/window/frame`).

    Attributes:
        kind: Sets the gap left along the side.
        meets: What lies at it.
        shown: False where a free edge of tile is covered or trimmed with the surface beyond it.
    """

    kind: SideKind
    meets: str = ""
    shown: bool = True

    @property
    def wall(self) -> str:
        """The corners of the room's wall that it meets, such as `B-C`; empty where it meets none."""
        return self._named(_WALL)

    @property
    def corner(self) -> str:
        """The corner of the room that it ends in; empty where it does not."""
        return self._named(_CORNER)

    @property
    def is_kerb(self) -> bool:
        """Whether a shower floor ends here at its kerb."""
        return self.meets.endswith(_KERB)

    def _named(self, kind: str) -> str:
        steps = self.meets.split("/")
        return steps[2] if len(steps) == 3 and steps[1] == kind else ""


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
        why: `above_tray` or `above_kerb` where a rule asks for it; of a floor or what stands there its reference;
            where it was found, as the job says it.
        found: The job says what is there, such as a pipe behind the wall.
    """

    outline: Ring
    why: str
    found: bool = False


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
