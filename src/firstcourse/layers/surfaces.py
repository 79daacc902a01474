"""The layers a job puts on each surface, from below, with the mortar between them.

This is the one place where a layer gets its thickness: height, mass, load, order, doors, flanges, drains and
valves all take it from here, and the plan carries it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from firstcourse.job import BoardedCeiling, BoardedFloor, BoardedWall, ChosenTile, FloorTile, Job, Room, Tiling
from firstcourse.layers.board_mass import board_density
from firstcourse.layers.buildup import BOND_COAT, MORTAR_BED, TILE, Layer
from firstcourse.layers.combed import combed_mortar, longest_side
from firstcourse.layers.mortar import board_mortar
from firstcourse.plan import Stock, Surface, SurfaceKind, SurfaceLayer
from firstcourse.rules import RuleSet
from firstcourse.units import to_inches, to_mm

_MM2_PER_M2 = 1e6
_NAMES = {
    "board_mortar": "mortar under the boards",
    "board": "board",
    "heating": "mortar round the heating",
    "mortar_bed": MORTAR_BED,
    "mortar": BOND_COAT,
    "tile": TILE,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidTile:
    """The tile of one surface, as entered there or as chosen for its tiling.

    Attributes:
        stone: Natural stone, else ceramic.
        thickness: Of the tile [ticks].
        edge: Its longest edge [ticks]; None where not known.
        bond_coat: Mortar under it [ticks]; None: as combed.
        face_m2: Face of one tile [m²]; None where not known.
        absorption_percent: Water it takes up; None where not known.
        wet_friction: Its wet dynamic coefficient of friction; None where not known.
    """

    stone: bool
    thickness: int
    edge: int | None = None
    bond_coat: int | None = None
    face_m2: float | None = None
    absorption_percent: float | None = None
    wet_friction: float | None = None

    def mortar(self, rules: RuleSet) -> int:
        """The mortar under it, as entered or as its trowel leaves it [ticks]."""
        return combed_mortar(self.edge, rules).thickness if self.bond_coat is None else self.bond_coat


def laid_tile(job: Job, part: BoardedFloor | BoardedWall | BoardedCeiling) -> LaidTile | None:
    """The tile of a surface, of a repeat its thickest with the longest edge; None where the job names none.

    What is entered for a surface that has a tiling too says what the tiling's tile leaves open.
    """
    entered = None if isinstance(part, BoardedCeiling) else part.tile
    chosen = None if part.tiling is None else tiling_tile(job, part.tiling)
    if entered is None:
        return chosen
    tile = LaidTile(
        stone=entered.kind == "stone",
        thickness=entered.thickness,
        edge=entered.edge,
        bond_coat=entered.bond_coat,
        absorption_percent=entered.absorption_percent,
        wet_friction=entered.wet_friction if isinstance(entered, FloorTile) else None,
    )
    if chosen is None:
        return tile
    return replace(
        chosen,
        bond_coat=tile.bond_coat,
        absorption_percent=_known(chosen.absorption_percent, tile.absorption_percent),
        wet_friction=_known(chosen.wet_friction, tile.wet_friction),
    )


def tiling_tile(job: Job, tiling: Tiling) -> LaidTile | None:
    """The tile of a tiling, of a repeat its thickest with the longest edge; None where the job has none such."""
    named = {tiling.tile} | {
        piece.tile for repeat in job.repeats if repeat.id == tiling.repeat for piece in repeat.pieces
    }
    chosen = [tile for tile in job.tiles if tile.id in named]
    return laid_of(chosen) if chosen else None


def laid_of(chosen: Sequence[ChosenTile]) -> LaidTile:
    """Tiles set in one bed as one: the thickest, with the longest edge of any; stone where any is."""
    return replace(
        max((_chosen(tile) for tile in chosen), key=lambda tile: tile.thickness),
        stone=any(tile.kind == "stone" for tile in chosen),
        edge=longest_side(chosen),
    )


def _chosen(tile: ChosenTile) -> LaidTile:
    return LaidTile(
        stone=tile.kind == "stone",
        thickness=tile.thickness,
        edge=longest_side((tile,)),
        face_m2=to_mm(tile.size[0]) * to_mm(tile.size[1]) / _MM2_PER_M2,
        absorption_percent=tile.absorption_percent,
        wet_friction=tile.wet_friction,
    )


def _known(first: float | None, second: float | None) -> float | None:
    return second if first is None else first


def floor_layers(
    tile: LaidTile | None, entered: FloorTile | None, stock: tuple[Stock, ...], rules: RuleSet
) -> tuple[Layer, ...]:
    """Everything over the panels from below: mortar, board, heating, mortar bed, bond coat, tile.

    Of several boards the thickest counts.

    Args:
        tile: The floor's tile; None where the job names none.
        entered: What the job says of bed and heating.
        stock: Boards it may be laid on; none where tile goes on another ground.
        rules: For mortar as combed, and densities.
    """
    return judged_layers(_floor(tile, entered, stock, rules))


def wall_layers(tile: LaidTile | None, stock: tuple[Stock, ...], rules: RuleSet) -> tuple[Layer, ...]:
    """Everything over the studs' faces: board, bond coat, tile. Of several boards the thickest counts."""
    return judged_layers(_wall(tile, stock, rules))


def surface_layers(
    job: Job, room: Room, surface: Surface, stock: tuple[Stock, ...], rules: RuleSet
) -> tuple[SurfaceLayer, ...]:
    """The layers of a surface as the plan carries them.

    Args:
        job: For its tiles.
        room: The surface's room.
        surface: The surface.
        stock: Boards it may be boarded with.
        rules: For mortar as combed, and densities.
    """
    if surface.part_of:
        return _wall(None, stock, rules)
    part = surface_part(room, surface)
    if part is None:
        return ()
    tile, boards = laid_tile(job, part), stock if surface.boarded else ()
    if isinstance(part, BoardedFloor):
        return _floor(tile, part.tile, boards, rules)
    return _wall(tile, boards, rules)


def surface_part(room: Room, surface: Surface) -> BoardedFloor | BoardedWall | BoardedCeiling | None:
    """What the job says of a surface."""
    if surface.kind is SurfaceKind.WALL:
        return next(wall for wall in room.walls if wall.wall == "-".join(surface.corners))
    return room.ceiling if surface.kind is SurfaceKind.CEILING else room.floor


def tile_layers(tile: LaidTile, rules: RuleSet) -> tuple[SurfaceLayer, ...]:
    """The tile and the mortar under it, on a ground that is not boarded."""
    density = rules.number("mass.stone" if tile.stone else "mass.tile")
    return (
        SurfaceLayer(
            of="mortar", thickness=tile.mortar(rules), density_kg_m3=rules.number("bedding.mortar.density")
        ),
        SurfaceLayer(of="tile", thickness=tile.thickness, density_kg_m3=density),
    )


def set_height(tile: LaidTile, rules: RuleSet) -> int:
    """Thickness of a tile with the mortar under it [ticks]."""
    return sum(layer.thickness for layer in tile_layers(tile, rules))


def _floor(
    tile: LaidTile | None, entered: FloorTile | None, stock: tuple[Stock, ...], rules: RuleSet
) -> tuple[SurfaceLayer, ...]:
    mortar = rules.number("bedding.mortar.density")
    layers: list[SurfaceLayer] = []
    if stock:
        layers.append(SurfaceLayer(of="board_mortar", thickness=board_mortar(rules), density_kg_m3=mortar))
        layers.append(_board(stock, rules))
    if entered is not None and entered.heating is not None:
        layers.append(SurfaceLayer(of="heating", thickness=entered.heating, density_kg_m3=mortar))
    if entered is not None and entered.mortar_bed is not None:
        density = rules.number("mass.mortar_bed")
        layers.append(SurfaceLayer(of="mortar_bed", thickness=entered.mortar_bed, density_kg_m3=density))
    return (*layers, *(tile_layers(tile, rules) if tile is not None else ()))


def _wall(tile: LaidTile | None, stock: tuple[Stock, ...], rules: RuleSet) -> tuple[SurfaceLayer, ...]:
    return (
        *((_board(stock, rules),) if stock else ()),
        *(tile_layers(tile, rules) if tile is not None else ()),
    )


def _board(stock: tuple[Stock, ...], rules: RuleSet) -> SurfaceLayer:
    board = max(stock, key=lambda item: item.thickness)
    return SurfaceLayer(of="board", thickness=board.thickness, density_kg_m3=board_density(board, rules))


def judged_layers(layers: Sequence[SurfaceLayer]) -> tuple[Layer, ...]:
    """Layers of the plan as the judgement of a frame names and weighs them."""
    return tuple(
        Layer(
            name=_NAMES[layer.of],
            thickness_in=to_inches(layer.thickness),
            density_kg_m3=layer.density_kg_m3,
            of=layer.of,
        )
        for layer in layers
    )
