"""What is marked on a surface before tile is set."""

from typing import Literal

from pydantic import AliasChoices, Field

from firstcourse.plan.base import Frozen, Segment, Ticks

MarkKind = Literal["first_course", "plumb", "snap", "start", "square", "pole"]


class Mark(Frozen):
    """One line or place to mark, and one length that finds it; a line that is measured twice is given twice.

    All marks but `start` are made on the day when boards are up and shower beds laid and no tile is set, from what
    can be touched then. Those of a small face are made just before it is tiled.

    Attributes:
        kind: `first_course` is the level line at the lower edge of the lowest whole course that runs all along a
            wall, `plumb` the upright one beside it, `snap` one of the two lines of other surfaces, `start` the far
            edge of the first tile from an edge of a small face, or where no lines can be found, `square` a part of
            the check that lines are square (3, 4 and 5 of a unit), `pole` a mark on a story pole.
        line: The line on the surface, of a pole the place of its mark from side to side.
        from_: What the length is measured from: a side of a surface (`.../side/2`, counted from 0), a fixture
            (`.../opening/tub`), a floor, a pole's end (`pole/1`), a line (`.../line/first`) or a crossing.
        distance: How long it is.
        to: What the mark stands for: a course (`.../row/2`, counted from 1), a tile with its side, the joint
            beside it or a point of it (`.../tile 4/joint`), an opening with its side or centre, a line or its end.
        at: Where the tape lies: along which edge, or at which; empty where it is held in the open.
        measure: Where the tape is held and where it ends, on the line; none for a pole.
        cut: Whether all tiles that begin at a pole's mark are cut there.
        every: Of a pole's mark at tile, every how manyth row is marked: those of a sheet of mosaic, or as many of
            small tile as are read apart.
        stock: Tiles that begin there, where a surface has several kinds.
    """

    kind: MarkKind
    line: Segment
    from_: str = Field(validation_alias=AliasChoices("from", "from_"), serialization_alias="from")
    distance: Ticks
    to: str
    at: str = ""
    measure: Segment | None = None
    cut: bool = False
    every: int = Field(default=1, ge=1)
    stock: str = ""
