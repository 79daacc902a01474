"""How high a shower floor and what holds its water lie over the panels, beside the room's finished floor."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Self

import shapely

from firstcourse.details import least_drop
from firstcourse.layers import combed_mortar
from firstcourse.plan import Fall, LevelPoint, SideKind, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape

_ROUNDED = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """What lies on a shower's bed.

    Attributes:
        tile: Thickness of the tile [ticks]; 0 where none is chosen.
        mortar: Thickness of the mortar under it [ticks].
    """

    tile: int
    mortar: int

    @property
    def height(self) -> int:
        """Both together [ticks]."""
        return self.tile + self.mortar

    @classmethod
    def of(cls, set_in: tuple[int, int] | None, rules: RuleSet) -> Self:
        """The tile with its mortar; where none is chosen, the mortar under mosaic, as most such floors have."""
        tile, mortar = (0, combed_mortar(0, rules).thickness) if set_in is None else set_in
        return cls(tile=tile, mortar=mortar)


def open_levels(surface: Surface, levels: Sequence[LevelPoint]) -> list[int]:
    """Heights over the drain along the sides that are open to the room [ticks]."""
    ring = surface.outline
    found: list[int] = []
    for index, side in enumerate(surface.sides):
        if side.kind is SideKind.FREE:
            line = shapely.LineString([ring[index], ring[(index + 1) % len(ring)]])
            found += [level.height for level in levels if line.distance(shapely.Point(level.at)) <= _ROUNDED]
    return found


def drain_height(
    surface: Surface, levels: Sequence[LevelPoint], under: int, cover: Cover, room_floor: int | None
) -> int:
    """Height of the top of the drain, where the finished falls begin, over the room's panels [ticks].

    A bed stands on the panels, unless the shower is let into the floor so that the open side lies level with it.

    Args:
        surface: The shower floor.
        levels: Heights along its perimeter over the drain.
        under: Bed and slope under it at the drain [ticks].
        cover: Tile and mortar on the bed.
        room_floor: Height of the room's finished floor over its panels [ticks]; None where the shower takes all.
    """
    entry = open_levels(surface, levels)
    if entry and room_floor is not None:
        return room_floor - max(entry)
    return under + cover.height


def upturn_top(fall: Fall, rules: RuleSet, tape: Tape) -> int:
    """Height over the drain at which a floor's membrane ends on the walls [ticks].

    It is measured from the finished threshold: the highest line of the kerb's top, which falls inwards; without a
    kerb the highest place of the floor, or the floor beyond a doorway where that lies higher.
    """
    if fall.kerb is None:
        threshold = max(fall.rise, fall.threshold or 0)
    else:
        threshold = fall.kerb + (0 if fall.kerb_width is None else least_drop(fall.kerb_width, rules, tape))
    return threshold + rules.ticks("water.upturn.above_threshold")
