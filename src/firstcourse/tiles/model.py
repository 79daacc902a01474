"""Values of the tiling steps. Inside this room lengths are floats in millimetres; they leave it as whole ticks."""

from dataclasses import dataclass

from shapely import MultiPolygon, Polygon

from firstcourse.plan import StartWhy
from firstcourse.tiles.soft_edges import NO_SOFT_EDGES, SoftEdges
from firstcourse.tiles.start_facts import NO_FACTS, StartFacts

XY = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class CellPiece:
    """One piece of a repeat, its joints taken off.

    Attributes:
        tile: Id of the tile.
        ring: Outline, counter-clockwise, within the repeat's own axes [mm].
    """

    tile: str
    ring: tuple[XY, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RepeatCell:
    """What repeats: its pieces and the two steps that carry it over the plane.

    Attributes:
        step_a: First step, joints included [mm].
        step_b: Second step, not parallel to the first [mm].
        pieces: The pieces of one repeat.
        joint: Width of the joints [mm].
    """

    step_a: XY
    step_b: XY
    pieces: tuple[CellPiece, ...]
    joint: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """A side of the area to be tiled, where pieces are cut.

    Attributes:
        a: One end; the area lies to the left of the way to the other [mm].
        b: Other end [mm].
        weight: How much a poor cut shows here; 1 for a side like any other, more where it is seen first.
        side: Reference to the side of the surface; empty where it is none.
        free: Nothing stands there: tile ends where the setter ends it, whatever the room measures.
    """

    a: XY
    b: XY
    weight: float = 1.0
    side: str = ""
    free: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class TileArea:
    """The area to be tiled.

    Attributes:
        area: Where tile goes, edge joints taken off [mm].
        edges: Its sides with their weights.
        wanted: Edges of niches and windows that are best met by a joint, `(axis, at)`: axis `u` is a level line at
            height `at`, axis `v` an upright one [mm].
        uncertainty: How far the room may differ from its survey [mm].
        things: By reference, what lies within the area or before it: openings, benches, floors [mm].
        soft: Edges along which a joint is left free to move, and how much wider it may come out.
    """

    area: Polygon | MultiPolygon
    edges: tuple[Edge, ...] = ()
    wanted: tuple[tuple[str, float], ...] = ()
    uncertainty: float = 0.0
    things: tuple[tuple[str, Polygon], ...] = ()
    soft: SoftEdges = NO_SOFT_EDGES


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidTile:
    """A tile where it lies.

    Attributes:
        tile: Id of the tile.
        laid: Its outline uncut [mm].
        shape: What stays of it; one of several where an opening parts a tile [mm].
        whole: Nothing is cut off it.
    """

    tile: str
    laid: tuple[XY, ...]
    shape: Polygon
    whole: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """A place to start from, and what it brings.

    Attributes:
        shift: Where the repeat's origin lies [mm].
        smallest_cut: Least width of any cut tile; 0 where none is cut [mm].
        slack: How far the room may differ before a cut falls below the least that is wanted [mm].
        cut_tiles: How many tiles are cut.
        whole_tiles: How many lie whole.
        penalty: What the search makes least; comparable within one field only.
        why: How it came about.
        facts: What else it brings.
        sliver: Whether one of the cuts, as laid, is narrower than is wanted at the least.
        narrowest: Width of the narrowest of these; 0 without one [mm].
        poorest: Where it stands, or the narrowest cut under half a tile, by reference; empty where every cut is
            good, or where nothing with a name is there.
        sure_cut: Narrowest cut along an edge in the worst room that the survey allows [mm].
        exact: Every start that can be best was judged, so that none is cheaper.
        num_laid: How many starts were laid, each tile of them, in search of one without a sliver.
    """

    shift: XY
    smallest_cut: float
    slack: float
    cut_tiles: int
    whole_tiles: int
    penalty: float
    why: StartWhy = "best"
    facts: StartFacts = NO_FACTS
    sliver: bool = False
    narrowest: float = 0.0
    poorest: str = ""
    sure_cut: float = 0.0
    exact: bool = False
    num_laid: int = 1
