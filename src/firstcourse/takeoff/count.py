"""What to buy: exact need, allowance for waste apart, whole packs; and what it weighs."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import pydantic
import shapely
from shapely import Polygon

from firstcourse.boards import Bedding, bed
from firstcourse.findings import Finding
from firstcourse.geometry import bounds
from firstcourse.layers import board_density, density_rule
from firstcourse.plan import Count, Frozen, Pack, Piece, Quantity, Ring, Sheet, Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.takeoff.items import BOARD_STRIPS, FASTENERS, MORTAR, SEALANT, TAPE, added_of, sheets_of
from firstcourse.takeoff.lifting import lifting
from firstcourse.takeoff.lines import Line, by_mass, line, running
from firstcourse.units import TICKS_PER_MM, Tape, to_mm
from firstcourse.values import Name, Value, Word, length, measure
from firstcourse.workings import Working, by_id

_TICKS_PER_M = TICKS_PER_MM * 1000
_LEAST = 1e-6
"""Less than this of something, in its unit, is dust of sums and nothing to buy."""


class Quantities(Frozen):
    """The shopping list.

    Attributes:
        quantities: What to buy, sheets first.
        workings: By their ids.
        findings: Cautions on sheets too heavy for one person.
        sheet_kg: Mass of one new sheet of each stock used [kg].
        board_kg: Mass of all boards as placed [kg].
    """

    quantities: tuple[Quantity, ...]
    workings: dict[str, Working] = pydantic.Field(default_factory=dict)
    findings: tuple[Finding, ...] = ()
    sheet_kg: dict[str, float] = pydantic.Field(default_factory=dict)
    board_kg: float = 0.0


def count(
    surfaces: tuple[Surface, ...],
    pieces: tuple[Piece, ...],
    sheets: tuple[Sheet, ...],
    stock: tuple[Stock, ...],
    counts: Mapping[str, Count],
    rules: RuleSet,
    tape: Tape,
) -> Quantities:
    """Count everything that the boards of a job need.

    Args:
        surfaces: Boarded and fastened surfaces.
        pieces: What the boards are cut as, or were.
        sheets: Sheets and kept offcuts with their cuts.
        stock: Sheets that can be bought.
        counts: Sheets used beside their lower bound, by stock.
        rules: Rules in force.
        tape: Tape of the job; members are bought by its running unit.

    Raises:
        KeyError: A piece or a sheet names a stock that is not given.
    """
    mass_of = {item.id: _sheet_kg(item, rules) for item in stock}
    sheet_kg = {name: mass_of[name] for name in sorted({sheet.stock for sheet in sheets})}
    board_kg = _board_kg(pieces, surfaces, stock, mass_of)
    bought = (_fasteners(surfaces, rules), *_bedding(bed(surfaces, pieces, stock, rules), rules))
    up = {board.piece for surface in surfaces for board in surface.boards if board.fixed}
    lines = [
        *_sheets(sheets, stock, counts, [piece for piece in pieces if piece.id not in up]),
        # A job without boards, or with boards that are bonded, lists no screws, tape or mortar for them.
        *(pair for pair in bought if pair[0].exact > _LEAST),
        *_added(surfaces, tape),
        *_strips(surfaces, tape),
    ]
    findings, lifted = lifting(rules, sheet_kg)
    masses = [_mass_working(item, sheet_kg[item.id], rules) for item in stock if item.id in sheet_kg]
    if masses:
        masses.append(_carried_working(board_kg))
    return Quantities(
        quantities=tuple(quantity for quantity, _ in lines),
        workings=by_id((*(working for _, working in lines), *masses, *lifted)),
        findings=findings,
        sheet_kg=sheet_kg,
        board_kg=board_kg,
    )


def _sheets(
    sheets: tuple[Sheet, ...], stock: tuple[Stock, ...], counts: Mapping[str, Count], pieces: Sequence[Piece]
) -> Iterator[Line]:
    used = Counter(sheet.stock for sheet in sheets if sheet.source == "new")
    for item in stock:
        number, name = used[item.id], sheets_of(item.id)
        if not number and item.id not in counts:
            continue
        bound = counts.get(item.id)
        blanks = sum(p.blank[0] * p.blank[1] for p in pieces if p.stock == item.id)
        inputs: dict[str, Value] = {
            "pieces": sum(p.stock == item.id for p in pieces),
            "offcuts": sum(sheet.stock == item.id and sheet.source != "new" for sheet in sheets),
        }
        if bound is not None:
            inputs["fewest"] = bound.lower_bound
        if number:
            inputs["filled"] = measure(100 * blanks / (number * item.size[0] * item.size[1]), "%")
        working = Working(formula="quantities-sheets", at=(name,), inputs=inputs, result=measure(number, "sheet"))
        pack = Pack(kind="sheet", size=1, unit="sheet")
        quantity = Quantity(item=name, exact=number, unit="sheet", buy=number, pack=pack, working=working.id)
        yield quantity, working


def _fasteners(surfaces: tuple[Surface, ...], rules: RuleSet) -> Line:
    by_kind: Counter[str] = Counter()
    for surface in surfaces:
        kind = "floors" if surface.kind is SurfaceKind.FLOOR else "walls"
        by_kind[kind] += sum(len(board.fasteners) for board in surface.boards if not board.fixed)
    need = measure(by_kind.total(), "fastener")
    return line(
        FASTENERS,
        need,
        Pack(kind="pack", size=rules.number("fastening.pack"), unit="fastener"),
        Working(
            formula="quantities-fasteners",
            at=(FASTENERS,),
            inputs={
                "fastener": Name(name=rules.text("fastening.type")),
                "floors": by_kind["floors"],
                "walls": by_kind["walls"],
            },
            result=need,
            rule="fastening.type",
        ),
        share=rules.number("fastening.spare"),
    )


def _bedding(need: Bedding, rules: RuleSet) -> Iterator[Line]:
    yield by_mass(
        MORTAR,
        need.mortar_kg,
        rules.kilograms("bedding.mortar.bag"),
        rules.number("bedding.mortar.waste"),
        need.mortar_working,
    )
    yield line(
        TAPE,
        length(need.tape),
        Pack(kind="roll", size=to_mm(rules.ticks("bedding.tape.roll")), unit="mm"),
        need.tape_working,
        share=rules.number("bedding.tape.waste"),
    )
    yield line(
        SEALANT,
        measure(need.sealant_ml, "ml"),
        Pack(kind="cartridge", size=rules.number("bedding.sealant.cartridge"), unit="ml"),
        need.sealant_working,
        share=rules.number("bedding.sealant.waste"),
    )


def _added(surfaces: tuple[Surface, ...], tape: Tape) -> Iterator[Line]:
    lengths: dict[str, list[int]] = {}
    for surface in surfaces:
        for support in surface.supports:
            if support.added:
                left, lower, right, upper = bounds(support.outline)
                lengths.setdefault(support.kind.value, []).append(max(right - left, upper - lower))
    for kind, found in sorted(lengths.items()):
        yield _by_length("quantities-added", added_of(kind), {"kind": Word(word=kind)}, found, tape)


def _strips(surfaces: tuple[Surface, ...], tape: Tape) -> Iterator[Line]:
    lengths = [
        _longer_side(fill.outline) for surface in surfaces for fill in surface.fills if fill.filled_with == "board"
    ]
    if lengths:
        yield _by_length("quantities-board_strips", BOARD_STRIPS, {}, lengths, tape)


def _by_length(formula: str, item: str, inputs: Mapping[str, Value], lengths: Sequence[int], tape: Tape) -> Line:
    """What is needed by the running metre or foot, with the length of each [ticks]; nothing is added to it."""
    need = length(sum(lengths))
    each = tuple(map(length, sorted(lengths)))
    return line(
        item,
        need,
        running(tape),
        Working(
            formula=formula,
            at=(item,),
            inputs={**inputs, "number": len(lengths), "each": each},
            result=need,
        ),
    )


def _longer_side(outline: Ring) -> int:
    corners = shapely.get_coordinates(shapely.minimum_rotated_rectangle(Polygon(outline))).tolist()
    return round(max(math.dist(a, b) for a, b in pairwise(corners)))


def _sheet_kg(item: Stock, rules: RuleSet) -> float:
    width, height = item.size
    return width * height * item.thickness / _TICKS_PER_M**3 * board_density(item, rules)


def _board_kg(
    pieces: tuple[Piece, ...],
    surfaces: tuple[Surface, ...],
    stock: tuple[Stock, ...],
    mass_of: Mapping[str, float],
) -> float:
    """Mass of the boards still to be set: each piece's share of its sheet."""
    area = {item.id: item.size[0] * item.size[1] for item in stock}
    of_piece = {piece.id: piece.stock for piece in pieces}
    return math.fsum(
        float(Polygon(board.outline, board.holes).area) / area[name] * mass_of[name]
        for surface in surfaces
        for board in surface.boards
        if not board.fixed and (name := of_piece.get(board.piece, "")) in area
    )


def _mass_working(item: Stock, kg: float, rules: RuleSet) -> Working:
    return Working(
        formula="quantities-sheet_mass",
        at=(sheets_of(item.id),),
        inputs={
            "size": tuple(map(length, item.size)),
            "thickness": length(item.thickness),
            "density": measure(board_density(item, rules), "kg/m3"),
            "entered": item.density_kg_m3 is not None,
        },
        result=measure(kg, "kg"),
        rule="" if item.density_kg_m3 is not None else density_rule(item.kind, rules).id,
    )


def _carried_working(kg: float) -> Working:
    return Working(formula="quantities-boards_mass", at=("job",), result=measure(kg, "kg"))
