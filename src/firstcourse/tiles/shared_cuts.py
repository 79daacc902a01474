"""Where each cut piece comes from: the whole tiles that are cut, and what is sawn from each."""

from dataclasses import dataclass

from firstcourse.tiles.model import XY


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPlace:
    """Where one cut tile lies in the tile it is cut from.

    Attributes:
        source: Number of the whole tile, from 1.
        outline: The piece within that tile, seen from its face, the tile's lower left corner at (0, 0); its points
            in the order of the piece's own outline [mm].
        turned: How far the piece lies turned to the left against how it is laid in its own tile [degrees].
    """

    source: int
    outline: tuple[XY, ...]
    turned: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Sharing:
    """How all cut tiles of one kind come from whole ones.

    Attributes:
        places: One per piece, in the order given.
        sources: Whole tiles that are cut.
        lower_bound: No way of cutting needs fewer.
    """

    places: tuple[CutPlace, ...]
    sources: int
    lower_bound: int

    @property
    def proven(self) -> bool:
        """Whether no way of cutting needs fewer whole tiles."""
        return self.sources == self.lower_bound
