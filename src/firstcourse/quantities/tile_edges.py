"""Edge trim where tile shows its edge, and spacers between tiles."""

from collections.abc import Iterator, Sequence

from firstcourse.bedding import length_text
from firstcourse.findings import Finding, Severity
from firstcourse.plan import Quantity, Surface
from firstcourse.quantities.items import EDGE_TRIM, SPACERS
from firstcourse.quantities.lines import line
from firstcourse.quantities.tiled_parts import TiledPart
from firstcourse.rules import RuleSet
from firstcourse.tiling.setting import shown_edges
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, ceil_to, format_length
from firstcourse.values import length as kept_length
from firstcourse.workings import Working

_TICKS_PER_M = TICKS_PER_MM * 1000


def trim(surfaces: Sequence[Surface], rules: RuleSet, tape: Tape) -> Iterator[tuple[Quantity, Working]]:
    """Edge trim along edges that show, cut from stock lengths."""
    edges = [(surface.id, length) for surface in surfaces for length in shown_edges(surface)]
    if not edges:
        return
    stock = rules.ticks("tile.trim.stock")
    number = lengths_needed([length for _, length in edges], stock)
    unit, per_unit = ("m", _TICKS_PER_M) if tape is Tape.MM else ("ft", TICKS_PER_FOOT)
    total = sum(length for _, length in edges)
    by_surface = {
        name: ", ".join(format_length(length, tape) for where, length in edges if where == name)
        for name in dict.fromkeys(where for where, _ in edges)
    }
    quantity, working = line(
        EDGE_TRIM,
        round(total / per_unit, 3),
        unit,
        kind="length",
        share=0.0,
        pack=stock / per_unit,
        pack_name=f"length of {stock / per_unit:g} {unit}",
        spare="allowance",
        base=Working(
            title="Edge trim where tile stops in the open and round niches and windows",
            formula="sum of edges; cut from stock lengths, longest first, each from the first that has room",
            values={**by_surface, "edges": str(len(edges)), "stock length": format_length(stock, tape)},
            result=length_text(total, tape).split()[0],
            unit=unit,
            source="drawings",
            argument=("Edges longer than a stock length are joined; corners are mitred or take corner pieces.",),
        ),
    )
    yield (
        quantity.model_copy(update={"buy": number}),
        working.model_copy(update={"values": {**working.values, "packs to buy": str(number)}}),
    )


def lengths_needed(pieces: Sequence[int], stock: int) -> int:
    """Stock lengths that pieces are cut from, longest first, each from the first that has room [ticks].

    Example:
        >>> lengths_needed([60, 50, 40, 30], 100), lengths_needed([250], 100)
        (2, 3)
    """
    full = sum(length // stock for length in pieces)
    left: list[int] = []
    for length in sorted((length % stock for length in pieces if length % stock), reverse=True):
        for index, room in enumerate(left):
            if room >= length:
                left[index] -= length
                break
        else:
            left.append(stock - length)
    return full + len(left)


def trim_finding(surface: Surface, parts: Sequence[TiledPart], tape: Tape) -> Finding:
    """That edges of a surface's tile show, and how high the trim must be."""
    own = [part for part in parts if part.surface.id == surface.id]
    high = max((part.bed.thickness + max(item.thickness for item in part.stock) for part in own), default=0)
    step = TICKS_PER_MM // 2 if tape is Tape.MM else tape.graduation
    return Finding(
        code="TIL-107",
        severity=Severity.NOTE,
        at=(surface.id,),
        measured=kept_length(sum(shown_edges(surface))),
        remedies=("trim",),
        values={"high": kept_length(ceil_to(high, step))},
    )


def spacers(parts: Sequence[TiledPart], rules: RuleSet) -> Iterator[tuple[Quantity, Working]]:
    """Spacers at the meetings of joints; mosaic on sheets needs none."""
    crossings: dict[str, int] = {}
    for part in parts:
        if any(item.sheet for item in part.stock):
            continue
        # Four tiles meet at a crossing where joints run through both ways; else three meet, twice as often.
        each = 1 if part.area.pattern in ("stacked", "diagonal") else 2
        crossings[part.surface.id] = crossings.get(part.surface.id, 0) + each * len(part.tiles)
    if not sum(crossings.values()):
        return
    pack = rules.number("tile.spacer.pack")
    exact = sum(crossings.values()) * rules.number("tile.spacer.per_crossing")
    yield line(
        SPACERS,
        exact,
        "spacers",
        kind="pack",
        share=0.0,
        pack=pack,
        pack_name=f"pack of {pack:g}",
        spare="allowance",
        base=Working(
            title="Spacers",
            formula="one at each meeting of joints: one meeting for each tile of a straight layout, two in bond",
            values={name: str(number) for name, number in crossings.items()},
            result=f"{exact:g}",
            unit="spacers",
            source=rules.entry("tile.spacer.per_crossing").source,
            argument=("They can be used again once the mortar holds, so half will often do.",),
        ),
    )
