"""How flat a floor or wall is for its tile: gaps under straightedges, highs and lows against the best plane."""

from collections.abc import Iterator

from firstcourse.verify.fields import Node
from firstcourse.verify.formulas import flattening
from firstcourse.verify.formulas.parts import length_mm, part_of, parts
from firstcourse.verify.formulas.proving import (
    Prove,
    column,
    holds,
    just,
    key_of,
    limited,
    only,
    rests_on,
)
from firstcourse.verify.formulas.readings import (
    SAME_MM,
    Edge,
    best_plane,
    edges_for,
    is_large,
    narrowest,
    readings_of,
    seen_under,
)
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_GAPS, _EDGE, _MAP = "ground-gaps", "ground-straightedge", "ground-map"


def _gaps(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    if part is None or part.edge_mm is None:
        return
    edges = edges_for(plan.rules, large=is_large(part.edge_mm, plan.rules))
    rows = part.given.nodes("straightedge", ())
    held = [edges[-1] if length_mm(row, "reach") <= edges[-1].reach + SAME_MM else edges[0] for row in rows]
    yield from only(working, "place", "gap", "reach", "allowed", "verdict")
    yield from just(working, "place", [{"name": row.text("place", "unnamed place")} for row in rows])
    yield from column(working, "gap", [length_mm(row, "gap") for row in rows], "mm")
    yield from column(working, "reach", [length_mm(row, "reach") for row in rows], "mm")
    yield from column(working, "allowed", [edge.allowed for edge in held], "mm")
    words = [_gap_verdict(row, edge, edges) for row, edge in zip(rows, held, strict=True)]
    yield from just(working, "verdict", [{"word": word} for word in words])
    yield from holds(working, "result", max(length_mm(row, "gap") for row in rows), "mm")
    yield from rests_on(working, edges[0].rule)
    yield from limited(working)


def _gap_verdict(row: Node, edge: Edge, edges: tuple[Edge, ...]) -> str:
    """A gap within the limit of a longer straightedge tells nothing of what lies beyond its ends."""
    if length_mm(row, "gap") > edge.allowed + SAME_MM:
        return "fails"
    told = (
        length_mm(row, "reach") <= edges[-1].reach + SAME_MM or length_mm(row, "reach") >= edges[0].reach - SAME_MM
    )
    return "holds" if told else "holds_for_its_length"


def _straightedge(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    read = None if part is None else readings_of(part, plan.rules)
    if read is None:
        return
    edge = next(edge for edge in read.edges if f"rule/{edge.rule}" == working.at[1])
    worst, unseen = seen_under(read.spots, edge)
    fails = worst > edge.allowed + SAME_MM
    tells = fails or not unseen
    word = "fails" if fails else "holds" if tells else "cannot_tell"
    places = ("way", "left", "on") if unseen else ()
    yield from only(working, "readings", "reach", "verdict", *places, *(() if tells else ("zone",)))
    yield from just(working, "readings", len(read.spots))
    yield from holds(working, "reach", edge.reach, "mm")
    yield from just(working, "verdict", {"word": word})
    if unseen:
        yield from just(working, "way", {"word": read.way})
        yield from column(working, "left", [read.spots[place].left for place in unseen], "mm")
        yield from column(working, "on", [read.spots[place].on for place in unseen], "mm")
    if tells:
        yield from holds(working, "result", worst, "mm")
    else:
        yield from holds(working, "zone", narrowest(read) or 0.0, "mm")
        yield from just(working, "result", {"word": word})
    yield from rests_on(working, edge.rule)
    yield from limited(working, "most", edge.allowed, "mm")


def _map(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    read = None if part is None else readings_of(part, plan.rules)
    if read is None:
        return
    along, across, off = best_plane(read)
    rows = sorted(zip(read.spots, off, strict=True), key=lambda row: (row[0].on, row[0].left))
    yield from only(working, "way", "slope_along", "slope_across", "left", "on", "height", "off")
    yield from just(working, "way", {"word": read.way})
    yield from holds(working, "slope_along", along, "mm/m")
    yield from holds(working, "slope_across", across, "mm/m")
    for name in ("left", "on", "height"):
        yield from column(working, name, [getattr(spot, name) for spot, _ in rows], "mm")
    yield from column(working, "off", [each for _, each in rows], "mm")
    yield from holds(working, "result", narrowest(read) or 0.0, "mm")
    yield from rests_on(working)
    yield from limited(working)


def expected(plan: Document) -> Iterator[str]:
    """Gaps where a straightedge was laid; where heights were read, highs and lows, and what straightedges see."""
    for part in parts(plan):
        if part.edge_mm is None or part.surface.kind == "ceiling":
            continue
        if part.given.nodes("straightedge", ()):
            yield key_of(_GAPS, part.ref)
        read = readings_of(part, plan.rules)
        if read is None:
            continue
        yield key_of(_MAP, part.ref)
        yield from (key_of(_EDGE, part.ref, f"rule/{edge.rule}") for edge in read.edges)
        yield from flattening.expected(plan, part, read)


FORMULAS: dict[str, Prove] = {_GAPS: _gaps, _EDGE: _straightedge, _MAP: _map, **flattening.FORMULAS}
