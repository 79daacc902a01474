"""Boards on a surface, the pieces they are cut as, and the sheets these come from."""

from typing import Literal

from firstcourse.plan.base import Frozen, Point, Ring, Segment, Ticks


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
