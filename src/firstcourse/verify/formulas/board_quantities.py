"""What boards take, counted again: sheets, fasteners, mortar, tape and sealant, and members to add."""

import math
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from itertools import pairwise, permutations

import shapely
from shapely import LineString, Polygon
from shapely.ops import unary_union

from firstcourse.geometry import bounds, sides
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.verify.formulas.wanted import Listed, by_mass, length, measure, word
from firstcourse.verify.shopping_fields import Given
from firstcourse.verify.structure import Document, Surface

_TICKS_PER_M = 1000 * TICKS_PER_MM
_TICKS3_PER_ML = (10.0 * TICKS_PER_MM) ** 3


def board_lines(plan: Document) -> Iterator[Listed]:
    """Everything that boards take."""
    yield from _sheets(plan)
    yield _fasteners(plan)
    yield _mortar(plan)
    yield _tape(plan)
    yield _sealant(plan)
    yield from _added(plan)
    yield from _strips(plan)


def _sheets(plan: Document) -> Iterator[Listed]:
    used = Counter(sheet.stock for sheet in plan.sheets if sheet.source == "new")
    bound = {count.stock: count.lower_bound for count in plan.counts}
    for stock, item in plan.shopping.sheet_stock.items():
        if not used[stock] and stock not in bound:
            continue
        own = [piece for piece in plan.to_cut if piece.stock == stock]
        inputs: dict[str, Given] = {
            "pieces": len(own),
            "offcuts": sum(s.stock == stock and s.source != "new" for s in plan.sheets),
        }
        if stock in bound:
            inputs["fewest"] = bound[stock]
        if used[stock]:
            blanks = sum(piece.blank[0] * piece.blank[1] for piece in own)
            inputs["filled"] = measure(100 * blanks / (used[stock] * item.size[0] * item.size[1]), "%")
        yield Listed(
            item=f"stock/{stock}",
            exact=float(used[stock]),
            unit="sheet",
            kind="sheet",
            size=1.0,
            buy=used[stock],
            formula="quantities-sheets",
            inputs=inputs,
            packed=False,
            always=True,
        )


def _fasteners(plan: Document) -> Listed:
    number: Counter[str] = Counter()
    for surface in plan.surfaces:
        kind = "floors" if surface.kind == "floor" else "walls"
        number[kind] += sum(len(board.fasteners) for board in surface.boards if not board.fixed)
    return Listed(
        item="fasteners",
        exact=float(number.total()),
        unit="fastener",
        kind="pack",
        size=plan.rules.number("fastening.pack"),
        share=plan.rules.number("fastening.spare"),
        formula="quantities-fasteners",
        inputs={
            "fastener": {"name": plan.rules.text("fastening.type")},
            "floors": number["floors"],
            "walls": number["walls"],
        },
        rule="fastening.type",
    )


def _mortar(plan: Document) -> Listed:
    """Ridges pressed flat under boards on a panel, and what seams between boards hold."""
    rules = plan.rules
    width, depth, land = (rules.ticks(f"bedding.trowel.{part}") for part in ("notch_width", "notch_depth", "land"))
    angle = rules.number("bedding.trowel.angle")
    mean = round(width * depth * math.sin(math.radians(angle)) / (width + land))
    area = math.fsum(
        board.shape.area
        for surface in plan.surfaces
        if surface.kind == "floor" or surface.carried_everywhere
        for board in surface.boards
        if not board.fixed
    )
    under, seams = area * mean / _TICKS_PER_M**3, _seam_volume(plan)
    strips = _strip_volume(plan)
    density, water = rules.number("bedding.mortar.density"), rules.number("bedding.mortar.water_share")
    return by_mass(
        "bedding_mortar",
        (under + seams + strips) * density * (1 - water),
        bag_kg=rules.kilograms("bedding.mortar.bag"),
        share=rules.number("bedding.mortar.waste"),
        formula="quantities-bedding_mortar",
        inputs={
            "area": measure(area / _TICKS_PER_M**2, "m2"),
            **{
                name: length(ticks) for name, ticks in (("w", width), ("d", depth), ("land", land), ("mean", mean))
            },
            "angle": measure(angle, "deg"),
            **{
                name: measure(volume * 1000, "l")
                for name, volume in (("under", under), ("seams", seams), ("strips", strips))
            },
            "density": measure(density, "kg/m3"),
            "water": measure(water),
        },
        rule="bedding.mortar.density",
    )


def _seam_volume(plan: Document) -> float:
    """What taped seams hold, each as deep as the thickest board of its surface [m³]."""
    stock_of = {piece.id: piece.stock for piece in plan.pieces}
    volume = 0.0
    for surface in plan.surfaces:
        named = [stock_of.get(board.piece, "") for board in surface.boards]
        deep = max((plan.shopping.sheet_stock[n].thickness for n in named if n in plan.stock), default=0)
        volume += sum(math.dist(*seam.line) * seam.width * deep for seam in surface.seams if seam.tape)
    return volume / _TICKS_PER_M**3


def _strip_volume(plan: Document) -> float:
    """What strips filled with mortar hold, as deep as the thickest board of their surface [m³]."""
    stock_of = {piece.id: piece.stock for piece in plan.pieces}
    volume = 0.0
    for surface in plan.surfaces:
        named = [stock_of.get(board.piece, "") for board in surface.boards]
        deep = max((plan.shopping.sheet_stock[n].thickness for n in named if n in plan.stock), default=0)
        volume += sum(Polygon(f.outline).area * deep for f in surface.fills if f.filled_with == "mortar")
    return volume / _TICKS_PER_M**3


def _tape(plan: Document) -> Listed:
    """Tape over seams, in corners where boarded surfaces meet, and over the edges of windows' returns."""
    rules = plan.rules
    seams = math.fsum(math.dist(*s.line) for surface in plan.surfaces for s in surface.seams if s.tape)
    corners = _corners([surface for surface in plan.surfaces if surface.boards])
    strips = {surface.id: surface for surface in plan.surfaces if surface.boards and surface.part_of}
    returns = math.fsum(_return_edges(surface, strips) for surface in strips.values())
    return Listed(
        item="seam_tape",
        exact=(seams + corners + returns) / TICKS_PER_MM,
        unit="mm",
        kind="roll",
        size=rules.ticks("bedding.tape.roll") / TICKS_PER_MM,
        share=rules.number("bedding.tape.waste"),
        formula="quantities-seam_tape",
        inputs={
            "seams": length(seams),
            "corners": length(corners),
            "returns": length(returns),
            "width": length(rules.ticks("bedding.tape.width")),
        },
        rule="bedding.tape.width",
    )


def _return_edges(surface: Surface, strips: Mapping[str, Surface]) -> float:
    """Front edges of boards on a window's returns, and the corners between sill or head and sides."""
    rims = zip(sides(surface.outline), surface.sides, surface.met, strict=True)
    return math.fsum(math.dist(*line) for line, kind, met in rims if kind == "free" or met in strips)


def _corners(boarded: list[Surface]) -> float:
    walls = [surface for surface in boarded if surface.kind == "wall" and len(surface.corners) == 2]
    roofed = {surface.room for surface in boarded if surface.kind == "ceiling"}
    total = 0.0
    for left, right in permutations(walls, 2):
        if left.room == right.room and left.corners[1] == right.corners[0]:
            corner = f"{left.room}/corner/{left.corners[1]}"
            for one in _spans(left, corner):
                for other in _spans(right, corner):
                    total += max(0, min(one[1], other[1]) - max(one[0], other[0]))
    for wall in boarded:
        if wall.kind == "wall" and wall.room in roofed:
            total += sum(math.dist(*line) for line in _perimeter(wall, f"{wall.room}/ceiling"))
    return total


def _perimeter(surface: Surface, ref: str) -> Iterator[tuple[tuple[int, int], tuple[int, int]]]:
    for line, kind, met in zip(sides(surface.outline), surface.sides, surface.met, strict=True):
        if kind == "perimeter" and met == ref:
            yield line


def _spans(wall: Surface, corner: str) -> list[tuple[int, int]]:
    """Heights over the lowest corner of the room between which a wall ends in a corner."""
    spans = [sorted((a[1] + wall.datum, b[1] + wall.datum)) for a, b in _perimeter(wall, corner)]
    return [(low, high) for low, high in spans]


def _sealant(plan: Document) -> Listed:
    """Sealant in the gaps at the foot of boards, and round tubs and trays that they are cut round."""
    rules = plan.rules
    along = math.fsum(_foot(surface) for surface in plan.surfaces if surface.boards)
    width, depth = rules.ticks("boards.gap.foot"), rules.ticks("bedding.sealant.depth")
    return Listed(
        item="sealant",
        exact=along * width * depth / _TICKS3_PER_ML,
        unit="ml",
        kind="cartridge",
        size=rules.number("bedding.sealant.cartridge"),
        share=rules.number("bedding.sealant.waste"),
        formula="quantities-sealant",
        inputs={"length": length(along), "width": length(width), "depth": length(depth)},
        rule="bedding.sealant.depth",
    )


def _foot(surface: Surface) -> float:
    feet = [
        LineString(line)
        for line, kind in zip(sides(surface.outline), surface.sides, strict=True)
        if kind == "foot"
    ]
    opened = [opening for opening in surface.openings if opening.outline is not None]
    length = float(unary_union(feet).difference(unary_union([Polygon(o.outline) for o in opened])).length)
    inside = Polygon(surface.outline)
    for opening in opened:
        if opening.kind in ("tub", "tray"):
            rim = Polygon(opening.outline).exterior.intersection(inside)
            lines = [part for part in shapely.get_parts(rim) if isinstance(part, LineString)]
            length += float(unary_union(lines).difference(inside.exterior).length)
    return length


def _added(plan: Document) -> Iterator[Listed]:
    lengths: dict[str, list[int]] = defaultdict(list)
    for surface in plan.surfaces:
        for support in surface.supports:
            if support.added:
                left, lower, right, upper = bounds(support.outline)
                lengths[support.kind].append(max(right - left, upper - lower))
    for kind, found in sorted(lengths.items()):
        yield _running(f"added/{kind}", "quantities-added", found, plan.tape, {"kind": word(kind)})


def _strips(plan: Document) -> Iterator[Listed]:
    """Strips of board for ground too narrow for a limb, each as long as the least box round it."""
    lengths = []
    for surface in plan.surfaces:
        for fill in surface.fills:
            if fill.filled_with == "board":
                corners = shapely.get_coordinates(
                    shapely.minimum_rotated_rectangle(Polygon(fill.outline))
                ).tolist()
                lengths.append(round(max(math.dist(a, b) for a, b in pairwise(corners))))
    if lengths:
        yield _running("board_strips", "quantities-board_strips", lengths, plan.tape, {})


def _running(item: str, formula: str, lengths: list[int], tape: Tape, inputs: dict[str, Given]) -> Listed:
    """What is needed by the running metre or foot [ticks]."""
    return Listed(
        item=item,
        exact=sum(lengths) / TICKS_PER_MM,
        unit="mm",
        kind="running",
        size=1000.0 if tape is Tape.MM else 304.8,
        formula=formula,
        inputs={**inputs, "number": len(lengths), "each": [length(found) for found in sorted(lengths)]},
    )
