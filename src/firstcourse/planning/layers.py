"""The layers a job puts on each surface, from below, with the mortar between them."""

from dataclasses import dataclass, replace

from firstcourse.bedding import board_density, mean_thickness
from firstcourse.job import BoardedCeiling, BoardedFloor, BoardedWall, ChosenTile, FloorTile, Job
from firstcourse.plan import Stock
from firstcourse.rules import RuleSet
from firstcourse.suitability import BOND_COAT, MORTAR_BED, TILE, Layer
from firstcourse.units import to_inches, to_mm

_MM2_PER_M2 = 1e6


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


def laid_tile(job: Job, part: BoardedFloor | BoardedWall | BoardedCeiling) -> LaidTile | None:
    """The tile of a surface, of a repeat its thickest with the longest edge; None where the job names none."""
    entered = None if isinstance(part, BoardedCeiling) else part.tile
    if entered is not None:
        return LaidTile(
            stone=entered.kind == "stone",
            thickness=entered.thickness,
            edge=entered.edge,
            bond_coat=entered.bond_coat,
            absorption_percent=entered.absorption_percent,
            wet_friction=entered.wet_friction if isinstance(entered, FloorTile) else None,
        )
    if part.tiling is None:
        return None
    named = {part.tiling.tile} | {
        piece.tile for repeat in job.repeats if repeat.id == part.tiling.repeat for piece in repeat.pieces
    }
    chosen = [_chosen(tile) for tile in job.tiles if tile.id in named]
    if not chosen:
        return None
    return replace(
        max(chosen, key=lambda tile: tile.thickness),
        stone=any(tile.stone for tile in chosen),
        edge=max(tile.edge or 0 for tile in chosen),
    )


def _chosen(tile: ChosenTile) -> LaidTile:
    return LaidTile(
        stone=tile.kind == "stone",
        thickness=tile.thickness,
        edge=max(tile.size),
        face_m2=to_mm(tile.size[0]) * to_mm(tile.size[1]) / _MM2_PER_M2,
        absorption_percent=tile.absorption_percent,
        wet_friction=tile.wet_friction,
    )


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
    mortar = rules.number("bedding.mortar.density")
    rows: list[tuple[str, float, float]] = []
    if stock:
        rows = [("mortar under the boards", combed_in(rules), mortar), _board(stock, rules)]
    if entered is not None and entered.heating is not None:
        rows.append(("mortar round the heating", to_inches(entered.heating), mortar))
    if entered is not None and entered.mortar_bed is not None:
        rows.append((MORTAR_BED, to_inches(entered.mortar_bed), rules.number("mass.mortar_bed")))
    return _layers([*rows, *(_tiling(tile, rules) if tile is not None else [])])


def wall_layers(tile: LaidTile, stock: tuple[Stock, ...], rules: RuleSet) -> tuple[Layer, ...]:
    """Everything over the studs' faces: board, bond coat, tile. Of several boards the thickest counts."""
    return _layers([*([_board(stock, rules)] if stock else []), *_tiling(tile, rules)])


def combed_in(rules: RuleSet) -> float:
    """Mean thickness of mortar combed with the rule book's trowel and beaten in [in]."""
    return mean_thickness(
        notch_width=to_inches(rules.ticks("bedding.trowel.notch_width")),
        notch_depth=to_inches(rules.ticks("bedding.trowel.notch_depth")),
        land=to_inches(rules.ticks("bedding.trowel.land")),
        angle_deg=rules.number("bedding.trowel.angle"),
    )


def _board(stock: tuple[Stock, ...], rules: RuleSet) -> tuple[str, float, float]:
    board = max(stock, key=lambda item: item.thickness)
    return "board", to_inches(board.thickness), board_density(board, rules)


def _tiling(tile: LaidTile, rules: RuleSet) -> list[tuple[str, float, float]]:
    under = combed_in(rules) if tile.bond_coat is None else to_inches(tile.bond_coat)
    return [
        (BOND_COAT, under, rules.number("bedding.mortar.density")),
        (TILE, to_inches(tile.thickness), rules.number("mass.stone" if tile.stone else "mass.tile")),
    ]


def _layers(rows: list[tuple[str, float, float]]) -> tuple[Layer, ...]:
    return tuple(Layer(name=name, thickness_in=high, density_kg_m3=density) for name, high, density in rows)
