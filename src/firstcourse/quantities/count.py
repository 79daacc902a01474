"""What to buy: exact need, allowance for waste apart, whole packs; and what it weighs."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import pairwise

import pydantic
import shapely
from shapely import Polygon

from firstcourse.bedding import Bedding, bed, board_density, density_rule, length_text, mass_text, small_text
from firstcourse.findings import Finding
from firstcourse.geometry import bounds
from firstcourse.plan import Count, Frozen, Pack, Piece, Quantity, Ring, Sheet, Stock, Surface, SurfaceKind
from firstcourse.quantities.items import BOARD_STRIPS, FASTENERS, MORTAR, SEALANT, TAPE, added_of, sheets_of
from firstcourse.quantities.lifting import lifting
from firstcourse.quantities.lines import by_mass, line
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, format_length
from firstcourse.workings import Working

_TICKS_PER_M = TICKS_PER_MM * 1000


class Quantities(Frozen):
    """The shopping list.

    Attributes:
        quantities: What to buy, sheets first.
        workings: By the key that each quantity names.
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
        pieces: What the boards are cut as.
        sheets: Sheets and kept offcuts with their cuts.
        stock: Sheets that can be bought.
        counts: Sheets used beside their lower bound, by stock.
        rules: Rules in force.
        tape: Tape of the job; running lengths and masses are in its units.

    Raises:
        KeyError: A piece or a sheet names a stock that is not given.
    """
    need = bed(surfaces, pieces, stock, rules, tape)
    mass_of = {item.id: _sheet_kg(item, rules) for item in stock}
    used = Counter(sheet.stock for sheet in sheets if sheet.source == "new")
    sheet_kg = {name: mass_of[name] for name in sorted({sheet.stock for sheet in sheets})}
    board_kg = _board_kg(pieces, surfaces, stock, mass_of)
    lines = [
        *_sheets(sheets, stock, used, counts, pieces),
        # A job without boards, or with boards that are bonded, lists no screws, tape or mortar for them.
        *(pair for pair in (*_fasteners(surfaces, rules), *_bedding(need, rules, tape)) if pair[0].exact > 0),
        *_added(surfaces, tape),
        *_strips(surfaces, tape),
    ]
    workings = {quantity.working: working for quantity, working in lines}
    for name, kg in sheet_kg.items():
        workings[f"mass {name}"] = _mass_working(name, stock, kg, rules, tape)
    findings, lifted = lifting(rules, sheet_kg, tape)
    workings |= lifted
    workings["mass boards"] = _carried_working(board_kg, tape)
    return Quantities(
        quantities=tuple(quantity for quantity, _ in lines),
        workings={**need.workings, **workings},
        findings=findings,
        sheet_kg=sheet_kg,
        board_kg=board_kg,
    )


def _sheets(
    sheets: tuple[Sheet, ...],
    stock: tuple[Stock, ...],
    used: Counter[str],
    counts: Mapping[str, Count],
    pieces: tuple[Piece, ...],
) -> Iterator[tuple[Quantity, Working]]:
    for item in stock:
        number = used[item.id]
        if not number and item.id not in counts:
            continue
        bound = counts.get(item.id)
        blanks = sum(p.blank[0] * p.blank[1] for p in pieces if p.stock == item.id)
        bought = number * item.size[0] * item.size[1]
        offcuts = sum(sheet.stock == item.id and sheet.source != "new" for sheet in sheets)
        name = sheets_of(item.id)
        yield (
            Quantity(
                item=name,
                exact=number,
                unit="sheet",
                buy=number,
                pack=Pack(kind="sheet", size=1, unit="sheet"),
                working=f"quantity {name}",
            ),
            Working(
                title=f"New sheets of {item.id}",
                formula="number of new sheets on the cut tickets",
                values={
                    "pieces": str(sum(p.stock == item.id for p in pieces)),
                    "kept offcuts used": str(offcuts),
                    "fewest that any plan needs": str(bound.lower_bound) if bound else "not known",
                    "area of pieces over area bought": f"{blanks / bought:.1%}" if bought else "nothing bought",
                },
                result=str(number),
                unit="sheets",
                source="cut tickets",
                argument=("No allowance is added: breakage is for the setter to judge.",),
            ),
        )


def _fasteners(surfaces: tuple[Surface, ...], rules: RuleSet) -> Iterator[tuple[Quantity, Working]]:
    by_kind: Counter[str] = Counter()
    for surface in surfaces:
        kind = "floor" if surface.kind is SurfaceKind.FLOOR else "wall"
        by_kind[kind] += sum(len(board.fasteners) for board in surface.boards if not board.fixed)
    total = by_kind.total()
    pack, kind_entry = rules.number("fastening.pack"), rules.entry("fastening.type")
    yield line(
        FASTENERS,
        total,
        "fasteners",
        kind="pack",
        share=rules.number("fastening.spare"),
        pack=pack,
        pack_name=f"pack of {pack:g}",
        spare="spare for those overdriven or dropped",
        base=Working(
            title=f"Fasteners: {kind_entry.value}",
            formula="fasteners of floors + fasteners of walls and ceilings",
            values={"floors": str(by_kind["floor"]), "walls and ceilings": str(by_kind["wall"])},
            result=str(total),
            unit="fasteners",
            source=kind_entry.cited,
        ),
    )


def _bedding(need: Bedding, rules: RuleSet, tape: Tape) -> Iterator[tuple[Quantity, Working]]:
    metric = tape is Tape.MM
    yield by_mass(
        MORTAR,
        need.mortar_kg,
        rules.kilograms("bedding.mortar.bag"),
        rules.number("bedding.mortar.waste"),
        tape,
        need.workings["bedding mortar"],
    )
    per_unit = _TICKS_PER_M if metric else TICKS_PER_FOOT
    roll = rules.ticks("bedding.tape.roll") / per_unit
    yield line(
        TAPE,
        round(need.tape / per_unit, 3),
        "m" if metric else "ft",
        kind="roll",
        share=rules.number("bedding.tape.waste"),
        pack=roll,
        pack_name=f"roll of {roll:g} {'m' if metric else 'ft'}",
        spare="lost at ends and laps",
        base=need.workings["bedding tape"],
    )
    cartridge = rules.number("bedding.sealant.cartridge")
    yield line(
        SEALANT,
        round(need.sealant_ml, 1),
        "ml",
        kind="cartridge",
        share=rules.number("bedding.sealant.waste"),
        pack=cartridge,
        pack_name=f"cartridge of {cartridge:g} ml",
        spare="lost in nozzle and tooling",
        base=need.workings["bedding sealant"],
    )


def _added(surfaces: tuple[Surface, ...], tape: Tape) -> Iterator[tuple[Quantity, Working]]:
    lengths: dict[str, list[int]] = {}
    for surface in surfaces:
        for support in surface.supports:
            if support.added:
                left, lower, right, upper = bounds(support.outline)
                lengths.setdefault(support.kind.value, []).append(max(right - left, upper - lower))
    for kind, found in sorted(lengths.items()):
        yield _by_length(
            added_of(kind),
            found,
            tape,
            counted="members",
            title=f"Members to add: {kind}",
            formula="sum of the lengths of the members marked as added",
            argument="Cut from the lengths at hand; no length of stock is assumed.",
        )


def _strips(surfaces: tuple[Surface, ...], tape: Tape) -> Iterator[tuple[Quantity, Working]]:
    lengths = [
        _longer_side(fill.outline) for surface in surfaces for fill in surface.fills if fill.filled_with == "board"
    ]
    if lengths:
        yield _by_length(
            BOARD_STRIPS,
            lengths,
            tape,
            counted="strips",
            title="Strips of board to rip",
            formula="sum of the lengths of the strips that are filled with board",
            argument="Ripped from what is left of the sheets; none is bought for them.",
        )


def _by_length(
    item: str, lengths: list[int], tape: Tape, *, counted: str, title: str, formula: str, argument: str
) -> tuple[Quantity, Working]:
    """What is needed by the running metre or foot, with the length of each [ticks]; nothing is added to it."""
    unit, per_unit = ("m", _TICKS_PER_M) if tape is Tape.MM else ("ft", TICKS_PER_FOOT)
    return line(
        item,
        round(sum(lengths) / per_unit, 3),
        unit,
        kind="running",
        share=0.0,
        pack=1,
        pack_name=f"running {unit}",
        spare="allowance",
        base=Working(
            title=title,
            formula=formula,
            values={
                counted: str(len(lengths)),
                "each": ", ".join(format_length(length, tape) for length in sorted(lengths)),
            },
            result=length_text(sum(lengths), tape).split()[0],
            unit=unit,
            source="drawings",
            argument=(argument,),
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


def _mass_working(name: str, stock: tuple[Stock, ...], kg: float, rules: RuleSet, tape: Tape) -> Working:
    item = next(item for item in stock if item.id == name)
    usual = density_rule(item.kind, rules)
    given = item.density_kg_m3 is not None
    text = mass_text(kg, tape)
    return Working(
        title=f"Mass of one sheet of {name}",
        formula="width x height x thickness x density",
        values={
            "size": " x ".join(format_length(side, tape) for side in item.size),
            "thickness": small_text(item.thickness, tape),
            "density": f"{board_density(item, rules):g} kg/m3",
        },
        result=text.split()[0],
        unit=text.split()[1],
        source="the sheet as given in the job" if given else usual.cited,
    )


def _carried_working(kg: float, tape: Tape) -> Working:
    text = mass_text(kg, tape)
    return Working(
        title="Mass of all boards to carry and set",
        formula="sum of each board's area over its sheet's area, times the sheet's mass",
        result=text.split()[0],
        unit=text.split()[1],
        source="drawings",
    )
