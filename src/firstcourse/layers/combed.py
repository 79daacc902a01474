"""The mortar that a trowel leaves under tile, by the longest side of what is set in it."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from firstcourse.errors import InputValueError
from firstcourse.job import ChosenTile
from firstcourse.plan import TileStock
from firstcourse.rules import RuleSet


def laid_size(tile: ChosenTile | TileStock) -> tuple[int, int]:
    """Width and height of a tile as it is laid [ticks]: a hexagon as a regular one, whatever was measured."""
    width, height = tile.size
    return (width, round(width * 2 / math.sqrt(3))) if tile.shape == "hexagon" else (width, height)


@dataclass(frozen=True, slots=True, kw_only=True)
class CombedMortar:
    """The mortar that a trowel, and butter on the back, leave under tile of one length.

    Attributes:
        size: What the tile counts as for the trowel: `mosaic`, `small`, `medium` or `large`.
        combed: Mean thickness that the notches leave [ticks].
        buttered: Mortar spread on the back of the tile; 0 where none is [ticks].
    """

    size: Literal["mosaic", "small", "medium", "large"]
    combed: int
    buttered: int

    @property
    def thickness(self) -> int:
        """Mean thickness of the mortar under the tile [ticks]."""
        return self.combed + self.buttered


def longest_side(tiles: Iterable[ChosenTile | TileStock]) -> int:
    """Longest side of any of the tiles [ticks]: it sets the trowel for all that are set in one bed."""
    return max(max(laid_size(tile)) for tile in tiles)


def combed_mortar(longest: int | None, rules: RuleSet, *, wet: bool = True) -> CombedMortar:
    """The mortar under tile whose longest side is given [ticks]; where it is not known, as under large tile.

    Args:
        longest: The longest side.
        rules: Rules in force.
        wet: Whether the surface gets wet.
    """
    size = _size(longest, rules)
    notch = f"tile.trowel.{size}"
    width, depth, land = (rules.ticks(f"{notch}.{part}") for part in ("width", "depth", "land"))
    combed = notch_mean(
        rules.text(f"{notch}.shape"),
        width=width,
        depth=depth,
        land=land,
        angle_deg=rules.number("tile.trowel.angle"),
    )
    long_enough = rules.ticks("tile.back_butter.wet_side" if wet else "tile.back_butter.side")
    buttered = longest is None or longest >= long_enough
    return CombedMortar(
        size=size,
        combed=round(combed),
        buttered=rules.ticks("tile.back_butter.thickness") if buttered else 0,
    )


def notch_mean(shape: str, *, width: float, depth: float, land: float, angle_deg: float) -> float:
    """Mean thickness of the bed once the ridges are pressed flat, in the unit of the notch.

    Args:
        shape: `square`, `U` (a rectangle that ends in a half circle) or `V` (a triangle).
        width: Width of a notch.
        depth: Depth of a notch.
        land: Width of the tooth between two notches.
        angle_deg: Angle between trowel and ground [degrees]; held lower, ridges are lower.

    Raises:
        InputValueError: Another shape, or a U notch less deep than half its width.

    References:
        Ridge geometry: section x sin(angle) / (width + land).

    Example:
        >>> notch_mean("V", width=0.25, depth=0.25, land=0, angle_deg=90)
        0.125
    """
    if shape == "square":
        section = width * depth
    elif shape == "V":
        section = width * depth / 2
    elif shape == "U" and depth >= width / 2:
        section = width * (depth - width / 2) + math.pi * width**2 / 8
    else:
        raise InputValueError(f"'{shape}' {width:g} x {depth:g} is not a square, U or V notch")
    return section * math.sin(math.radians(angle_deg)) / (width + land)


def _size(longest: int | None, rules: RuleSet) -> Literal["mosaic", "small", "medium", "large"]:
    if longest is None:
        return "large"
    if longest <= rules.ticks("tile.trowel.mosaic_side"):
        return "mosaic"
    if longest <= rules.ticks("tile.trowel.small_side"):
        return "small"
    return "medium" if longest < rules.ticks("tile.back_butter.side") else "large"
