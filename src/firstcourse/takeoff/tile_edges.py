"""Edge trim where tile shows its edge, and spacers between tiles."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Pack, Surface
from firstcourse.rules import RuleSet
from firstcourse.takeoff.items import EDGE_TRIM, SPACERS
from firstcourse.takeoff.lines import Line, line
from firstcourse.takeoff.tiled_parts import TiledPart
from firstcourse.tiles import shown_edges
from firstcourse.units import TICKS_PER_MM, Tape, ceil_to, to_mm
from firstcourse.values import Ref, length, measure
from firstcourse.workings import Working


def trim(surfaces: Sequence[Surface], rules: RuleSet) -> Iterator[Line]:
    """Edge trim along edges that show, cut from stock lengths."""
    edges = [(surface.id, edge) for surface in surfaces for edge in shown_edges(surface)]
    if not edges:
        return
    stock = rules.ticks("tile.trim.stock")
    need = length(sum(edge for _, edge in edges))
    yield line(
        EDGE_TRIM,
        need,
        Pack(kind="length", size=to_mm(stock), unit="mm"),
        Working(
            formula="quantities-edge_trim",
            at=(EDGE_TRIM,),
            inputs={
                "surface": tuple(Ref(ref=surface) for surface, _ in edges),
                "edge": tuple(length(edge) for _, edge in edges),
                "edges": len(edges),
                "stock": length(stock),
            },
            result=need,
        ),
        buy=lengths_needed([edge for _, edge in edges], stock),
    )


def lengths_needed(pieces: Sequence[int], stock: int) -> int:
    """Stock lengths that pieces are cut from, longest first, each from the first that has room [ticks].

    Example:
        >>> lengths_needed([60, 50, 40, 30], 100), lengths_needed([250], 100)
        (2, 3)
    """
    full = sum(piece // stock for piece in pieces)
    left: list[int] = []
    for piece in sorted((piece % stock for piece in pieces if piece % stock), reverse=True):
        for index, room in enumerate(left):
            if room >= piece:
                left[index] -= piece
                break
        else:
            left.append(stock - piece)
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
        measured=length(sum(shown_edges(surface))),
        remedies=("trim",),
        values={"high": length(ceil_to(high, step))},
    )


def spacers(parts: Sequence[TiledPart], rules: RuleSet) -> Iterator[Line]:
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
    need = measure(sum(crossings.values()) * rules.number("tile.spacer.per_crossing"), "spacer")
    yield line(
        SPACERS,
        need,
        Pack(kind="pack", size=rules.number("tile.spacer.pack"), unit="spacer"),
        Working(
            formula="quantities-spacers",
            at=(SPACERS,),
            inputs={
                "surface": tuple(Ref(ref=surface) for surface in crossings),
                "crossings": tuple(crossings.values()),
                "each": measure(rules.number("tile.spacer.per_crossing")),
            },
            result=need,
            rule="tile.spacer.per_crossing",
        ),
    )
