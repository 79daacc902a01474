"""Surfaces of their own within and upon others, with what they meet and how they are tiled."""

from dataclasses import dataclass

from firstcourse.plan import SideKind, Surface
from firstcourse.tiles.tile_ground import ToTile


@dataclass(frozen=True, slots=True, kw_only=True)
class Rim:
    """One side of a lining.

    Attributes:
        meets: What lies beyond it, see `Side`.
        kind: Where it meets something it is left free to move.
        before: Thickness of what stands before it when it is tiled [ticks].
        elsewhere: Its soft joint is listed with the surface beyond it.
        shown: Its edge shows and takes trim here; a corner's edge is trimmed once.
    """

    meets: str
    kind: SideKind = SideKind.PERIMETER
    before: int = 0
    elsewhere: bool = False
    shown: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Lining:
    """One such surface.

    Attributes:
        surface: What is tiled.
        rims: One per side of its outline.
        name: What it is of the whole: `back`, `left`, `right`, `sill`, `head`, `top`, `front`, `inner`, `outer`.
    """

    surface: Surface
    rims: tuple[Rim, ...]
    name: str

    @property
    def before(self) -> tuple[int, ...]:
        """What stands before each side [ticks]."""
        return tuple(rim.before for rim in self.rims)

    @property
    def elsewhere(self) -> frozenset[int]:
        """Sides whose soft joint is listed with the surface beyond."""
        return frozenset(index for index, rim in enumerate(self.rims) if rim.elsewhere)


@dataclass(frozen=True, slots=True, kw_only=True)
class ToLine:
    """A lining with how it is tiled.

    Attributes:
        lining: The surface with what it meets.
        item: How it is tiled.
        follows: Id of the surface whose courses it keeps where it has the same tile; empty where none.
        leads: First of its whole: what is said of its tile once is said of it.
    """

    lining: Lining
    item: ToTile
    follows: str = ""
    leads: bool = False
