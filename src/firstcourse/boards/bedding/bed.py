"""Mortar under boards and in seams, tape over seams and corners, sealant at the foot: the exact needs."""

import math

from shapely import Polygon

from firstcourse.boards.bedding.joints import corner_length, foot_length, return_length, seam_length
from firstcourse.layers import board_mortar, dry_mass
from firstcourse.plan import Board, Frozen, Piece, Stock, SupportKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import length, measure
from firstcourse.workings import Working

_TICKS_PER_M = TICKS_PER_MM * 1000


class Bedding(Frozen):
    """What a job's boards need besides fasteners, waste not included.

    Attributes:
        mortar_kg: Dry mortar under boards and in seams [kg].
        tape: Length of tape over seams and corners [ticks].
        sealant_ml: Sealant in gaps at the foot [ml].
        mortar_working: How the mass of mortar came about.
        tape_working: How the length of tape came about.
        sealant_working: How the volume of sealant came about.
    """

    mortar_kg: float
    tape: float
    sealant_ml: float
    mortar_working: Working
    tape_working: Working
    sealant_working: Working


def bed(
    surfaces: tuple[Surface, ...], pieces: tuple[Piece, ...], stock: tuple[Stock, ...], rules: RuleSet
) -> Bedding:
    """Mortar, tape and sealant of boarded surfaces.

    Args:
        surfaces: Boarded surfaces; boards already up are not bedded again.
        pieces: What the boards are cut as, for their thickness.
        stock: Sheets the pieces are cut from.
        rules: Rules in force.

    References:
        Rules bedding.trowel.*, bedding.mortar.*, bedding.tape.*, bedding.sealant.*.
    """
    mortar_kg, mortar = _mortar(surfaces, pieces, stock, rules)
    taped, tape = _tape(surfaces, rules)
    sealant_ml, sealant = _sealant(surfaces, rules)
    return Bedding(
        mortar_kg=mortar_kg,
        tape=taped,
        sealant_ml=sealant_ml,
        mortar_working=mortar,
        tape_working=tape,
        sealant_working=sealant,
    )


def board_area_m2(board: Board) -> float:
    """A board's area, holes taken off [m²]."""
    return float(Polygon(board.outline, board.holes).area) / _TICKS_PER_M**2


def _is_bedded(surface: Surface) -> bool:
    """Whether the boards lie on a panel in mortar, as floors and counters do."""
    return surface.kind is SurfaceKind.FLOOR or any(s.kind is SupportKind.PANEL for s in surface.supports)


def _mortar(
    surfaces: tuple[Surface, ...], pieces: tuple[Piece, ...], stock: tuple[Stock, ...], rules: RuleSet
) -> tuple[float, Working]:
    thickness = board_mortar(rules)
    area = math.fsum(
        board_area_m2(board)
        for surface in surfaces
        if _is_bedded(surface)
        for board in surface.boards
        if not board.fixed
    )
    under = area * thickness / _TICKS_PER_M
    seams = _seam_volume_m3(surfaces, pieces, stock)
    density, water = rules.number("bedding.mortar.density"), rules.number("bedding.mortar.water_share")
    strips = _filled_volume_m3(surfaces, pieces, stock)
    mass = dry_mass(under + seams + strips, mixed_density=density, water_share=water)
    working = Working(
        formula="quantities-bedding_mortar",
        at=("bedding_mortar",),
        inputs={
            "area": measure(area, "m2"),
            "w": length(rules.ticks("bedding.trowel.notch_width")),
            "d": length(rules.ticks("bedding.trowel.notch_depth")),
            "land": length(rules.ticks("bedding.trowel.land")),
            "angle": measure(rules.number("bedding.trowel.angle"), "deg"),
            "mean": length(thickness),
            "under": measure(under * 1000, "l"),
            "seams": measure(seams * 1000, "l"),
            "strips": measure(strips * 1000, "l"),
            "density": measure(density, "kg/m3"),
            "water": measure(water),
        },
        result=measure(mass, "kg"),
        rule="bedding.mortar.density",
    )
    return mass, working


def _seam_volume_m3(surfaces: tuple[Surface, ...], pieces: tuple[Piece, ...], stock: tuple[Stock, ...]) -> float:
    thickness = {item.id: item.thickness for item in stock}
    of_piece = {piece.id: thickness[piece.stock] for piece in pieces}
    volumes = []
    for surface in surfaces:
        # Boards of one surface share a thickness; where they do not, the thickest errs on the safe side.
        deep = max((of_piece[board.piece] for board in surface.boards if board.piece in of_piece), default=0)
        volumes += [math.dist(*seam.line) * seam.width * deep for seam in surface.seams if seam.tape]
    return math.fsum(volumes) / _TICKS_PER_M**3


def _filled_volume_m3(surfaces: tuple[Surface, ...], pieces: tuple[Piece, ...], stock: tuple[Stock, ...]) -> float:
    """What strips take that mortar fills, as deep as the thickest board of their surface [m³]."""
    thickness = {item.id: item.thickness for item in stock}
    of_piece = {piece.id: thickness[piece.stock] for piece in pieces}
    volumes = []
    for surface in surfaces:
        deep = max((of_piece[board.piece] for board in surface.boards if board.piece in of_piece), default=0)
        volumes += [Polygon(f.outline).area * deep for f in surface.fills if f.filled_with == "mortar"]
    return math.fsum(volumes) / _TICKS_PER_M**3


def _tape(surfaces: tuple[Surface, ...], rules: RuleSet) -> tuple[float, Working]:
    seams, corners = math.fsum(map(seam_length, surfaces)), corner_length(surfaces)
    returns = return_length(surfaces)
    total = seams + corners + returns
    return total, Working(
        formula="quantities-seam_tape",
        at=("seam_tape",),
        inputs={
            "seams": length(seams),
            "corners": length(corners),
            "returns": length(returns),
            "width": length(rules.ticks("bedding.tape.width")),
        },
        result=length(total),
        rule="bedding.tape.width",
    )


def _sealant(surfaces: tuple[Surface, ...], rules: RuleSet) -> tuple[float, Working]:
    along = math.fsum(map(foot_length, surfaces))
    width, depth = rules.ticks("boards.gap.foot"), rules.ticks("bedding.sealant.depth")
    volume_ml = along * width * depth / (TICKS_PER_MM * 10) ** 3
    return volume_ml, Working(
        formula="quantities-sealant",
        at=("sealant",),
        inputs={"length": length(along), "width": length(width), "depth": length(depth)},
        result=measure(volume_ml, "ml"),
        rule="bedding.sealant.depth",
    )
