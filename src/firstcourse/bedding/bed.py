"""Mortar under boards and in seams, tape over seams and corners, sealant at the foot: the exact needs."""

import math

import pydantic
from shapely import Polygon

from firstcourse.bedding.joints import corner_length, foot_length, return_length, seam_length
from firstcourse.bedding.mortar import board_mortar, dry_mass
from firstcourse.plan import Board, Frozen, Piece, Stock, SupportKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.units import KG_PER_LB, TICKS_PER_MM, Tape, inch_text, to_inches, to_mm
from firstcourse.workings import Working

"""Exact by definition of the international pound (1959)."""
_TICKS_PER_M = TICKS_PER_MM * 1000
_MM_PER_FT = 304.8
_SQ_FT = 0.09290304
_MORTAR, _TAPE, _SEALANT = "bedding mortar", "bedding tape", "bedding sealant"


class Bedding(Frozen):
    """What a job's boards need besides fasteners, waste not included.

    Attributes:
        mortar_kg: Dry mortar under boards and in seams [kg].
        tape: Length of tape over seams and corners [ticks].
        sealant_ml: Sealant in gaps at the foot [ml].
        workings: `bedding mortar`, `bedding tape`, `bedding sealant`.
    """

    mortar_kg: float = 0.0
    tape: float = 0.0
    sealant_ml: float = 0.0
    workings: dict[str, Working] = pydantic.Field(default_factory=dict)


def bed(
    surfaces: tuple[Surface, ...], pieces: tuple[Piece, ...], stock: tuple[Stock, ...], rules: RuleSet, tape: Tape
) -> Bedding:
    """Mortar, tape and sealant of boarded surfaces.

    Args:
        surfaces: Boarded surfaces; boards already up are not bedded again.
        pieces: What the boards are cut as, for their thickness.
        stock: Sheets the pieces are cut from.
        rules: Rules in force.
        tape: Tape of the job; workings are written in its units.

    References:
        Rules bedding.trowel.*, bedding.mortar.*, bedding.tape.*, bedding.sealant.*.
    """
    mortar_kg, mortar = _mortar(surfaces, pieces, stock, rules, tape)
    length, taped = _tape(surfaces, rules, tape)
    sealant_ml, sealed = _sealant(surfaces, rules, tape)
    return Bedding(
        mortar_kg=mortar_kg,
        tape=length,
        sealant_ml=sealant_ml,
        workings={_MORTAR: mortar, _TAPE: taped, _SEALANT: sealed},
    )


def board_area_m2(board: Board) -> float:
    """A board's area, holes taken off [m²]."""
    return float(Polygon(board.outline, board.holes).area) / _TICKS_PER_M**2


def mass_text(kg: float, tape: Tape) -> str:
    """A mass in the unit that goes with the tape."""
    return f"{kg:.1f} kg" if tape is Tape.MM else f"{kg / KG_PER_LB:.1f} lb"


def length_text(ticks: float, tape: Tape) -> str:
    """A running length in the unit that goes with the tape."""
    return f"{ticks / _TICKS_PER_M:.2f} m" if tape is Tape.MM else f"{ticks / TICKS_PER_MM / _MM_PER_FT:.2f} ft"


def small_text(ticks: float, tape: Tape) -> str:
    """A thickness or width in the unit that goes with the tape, with decimals where no mark stands for it."""
    whole = round(ticks)
    return (
        f"{f'{to_mm(whole):.2f}'.rstrip('0').rstrip('.')} mm"
        if tape is Tape.MM
        else f"{inch_text(to_inches(whole))} in"
    )


def _area_text(m2: float, tape: Tape) -> str:
    return f"{m2:.2f} m²" if tape is Tape.MM else f"{m2 / _SQ_FT:.2f} sq ft"


def _is_bedded(surface: Surface) -> bool:
    """Whether the boards lie on a panel in mortar, as floors and counters do."""
    return surface.kind is SurfaceKind.FLOOR or any(s.kind is SupportKind.PANEL for s in surface.supports)


def _mortar(
    surfaces: tuple[Surface, ...], pieces: tuple[Piece, ...], stock: tuple[Stock, ...], rules: RuleSet, tape: Tape
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
        title="Dry mortar under floor boards and in seams",
        formula=(
            "(area x w x d x sin(angle) / (w + land) + seam volume + strips filled) x density x (1 - water share)"
        ),
        values={
            "area": _area_text(area, tape),
            "w": small_text(rules.ticks("bedding.trowel.notch_width"), tape),
            "d": small_text(rules.ticks("bedding.trowel.notch_depth"), tape),
            "land": small_text(rules.ticks("bedding.trowel.land"), tape),
            "angle": f"{rules.number('bedding.trowel.angle'):g} deg",
            "mean thickness": small_text(thickness, tape),
            "volume under boards": f"{under * 1000:.2f} litres",
            "seam volume": f"{seams * 1000:.2f} litres",
            "strips filled": f"{strips * 1000:.2f} litres",
            "density": f"{density:g} kg/m3",
            "water share": f"{water:g}",
        },
        result=mass_text(mass, tape).split()[0],
        unit=mass_text(mass, tape).split()[1],
        source=f"ridge geometry; density and water share: {rules.entry('bedding.mortar.density').source}",
        argument=("Seam volume is each seam's length x width x the thickness of the boards beside it.",),
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


def _tape(surfaces: tuple[Surface, ...], rules: RuleSet, tape: Tape) -> tuple[float, Working]:
    seams, corners = math.fsum(map(seam_length, surfaces)), corner_length(surfaces)
    returns = return_length(surfaces)
    width = rules.entry("bedding.tape.width")
    text = length_text(seams + corners + returns, tape)
    working = Working(
        title="Tape over seams and inside corners",
        formula=f"length of seams + length of inside corners{' + length of edges of returns' if returns else ''}",
        values={
            "seams": length_text(seams, tape),
            "inside corners": length_text(corners, tape),
            **({"edges of windows' returns": length_text(returns, tape)} if returns else {}),
            "tape width": small_text(rules.ticks("bedding.tape.width"), tape),
        },
        result=text.split()[0],
        unit=text.split()[1],
        source=width.cited,
        argument=(
            "Inside corners: wall to wall over the height that both are boarded, wall to ceiling along the top.",
        ),
    )
    return seams + corners + returns, working


def _sealant(surfaces: tuple[Surface, ...], rules: RuleSet, tape: Tape) -> tuple[float, Working]:
    length = math.fsum(map(foot_length, surfaces))
    width, depth = rules.ticks("boards.gap.foot"), rules.ticks("bedding.sealant.depth")
    volume_ml = length * width * depth / (TICKS_PER_MM * 10) ** 3
    source = rules.entry("bedding.sealant.depth")
    working = Working(
        title="Sealant in the gaps at the foot",
        formula="length x width x depth",
        values={
            "length": length_text(length, tape),
            "width": small_text(width, tape),
            "depth": small_text(depth, tape),
        },
        result=f"{volume_ml:.1f}",
        unit="ml",
        source=source.cited,
    )
    return volume_ml, working
