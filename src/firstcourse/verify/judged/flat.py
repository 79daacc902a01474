"""What must be told of how flat a floor or wall is: gaps under straightedges, highs and lows."""

from collections.abc import Iterator, Mapping, Sequence

from firstcourse.rules import RuleSet
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.derived import Number, Wanted, agrees, name, word
from firstcourse.verify.formulas.flattening import FLOOR_WAYS, litres_of, ways
from firstcourse.verify.formulas.parts import Part, length_mm
from firstcourse.verify.formulas.readings import (
    MM_PER_IN,
    SAME_MM,
    Edge,
    Readings,
    best_plane,
    edges_for,
    narrowest,
    readings_of,
    seen_under,
)
from firstcourse.verify.judged.asked import CODE, FIX, NOTE, Asked
from firstcourse.verify.judged.grounds import is_bed
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.verdict import Objection

CODES = frozenset(("SUI-401", "SUI-402", "SUI-404"))
MAP = "SUI-403"
_CODE_OF = {"long": "SUI-401", "short": "SUI-402"}
_MOST_NAMED = 5
_NEAR = 1e-5
"""Planes are found to this [mm]."""


def flat_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """What must be told of how flat one surface is, its highs and lows left out."""
    if part.edge_mm is None or part.surface.kind == "ceiling" or is_bed(part):
        return
    rows, read = part.given.nodes("straightedge", ()), readings_of(part, plan.rules)
    edges = edges_of(plan.rules, part.edge_mm) if read is None else read.edges
    if rows:
        yield from _gaps(plan.rules, part, rows, edges, read=read is not None)
    if read is not None:
        yield from _read(plan, part, read, rows)


def edges_of(rules: RuleSet, longest: float) -> tuple[Edge, ...]:
    """The straightedges that a tile is judged by, by its longest edge [mm]."""
    by_size = rules.has("surface.large_tile")
    return edges_for(rules, large=by_size and longest >= rules.number("surface.large_tile") * MM_PER_IN)


def _gaps(
    rules: RuleSet, part: Part, rows: Sequence[Node], edges: Sequence[Edge], *, read: bool
) -> Iterator[Asked]:
    """Gaps found under a straightedge, and lengths of straightedge of which none of them tells."""
    fails = False
    for row in rows:
        reach, gap = length_mm(row, "reach"), length_mm(row, "gap")
        short = reach <= edges[-1].reach + SAME_MM
        edge = edges[-1] if short else edges[0]
        if gap > edge.allowed + SAME_MM:
            fails = True
            yield Asked(
                code="SUI-402" if short else "SUI-401",
                severity=FIX,
                at=(part.ref,),
                measured=_mm(gap),
                limit=_mm(edge.allowed),
                sense="most",
                rule=edge.rule,
                remedies=("fill_or_grind",),
                values={
                    "laid": True,
                    "place": name(row.text("place", "unnamed place")),
                    "reach": _mm(reach),
                    "caution": name(rules.text("safety.grinding")),
                },
            )
    if fails or read:
        return
    longest = max(rows, key=lambda row: length_mm(row, "reach"))
    for edge in edges:
        if not _is_laid(rows, edge):
            yield Asked(
                code="SUI-404",
                severity=NOTE,
                at=(part.ref,),
                measured=_mm(length_mm(longest, "gap")),
                limit=_mm(edge.allowed),
                sense="most",
                rule=edge.rule,
                remedies=("lay",),
                values={"laid": True, "longest": _mm(length_mm(longest, "reach")), "reach": _mm(edge.reach)},
            )


def _is_laid(rows: Sequence[Node], edge: Edge) -> bool:
    """Whether a straightedge of that length was laid, or a longer one that kept its limit."""
    return any(
        abs(length_mm(row, "reach") - edge.reach) <= SAME_MM
        or (length_mm(row, "reach") > edge.reach and length_mm(row, "gap") <= edge.allowed + SAME_MM)
        for row in rows
    )


def _read(plan: Document, part: Part, read: Readings, rows: Sequence[Node]) -> Iterator[Asked]:
    """What straightedges find over the readings, and readings too far apart for them."""
    wide = narrowest(read) or 0.0
    remedies, values = _ways(plan, part, read) if read.uneven else ((), {})
    for edge in read.edges:
        worst, unseen = seen_under(read.spots, edge)
        if worst > edge.allowed + SAME_MM:
            yield _uneven(plan.rules, part, edge, worst, remedies, values)
        elif unseen and not _is_laid(rows, edge):
            yield Asked(
                code="SUI-404",
                severity=FIX if wide > edge.allowed + SAME_MM else NOTE,
                at=(part.ref,),
                measured=_mm(wide),
                limit=_mm(edge.allowed),
                sense="most",
                rule=edge.rule,
                remedies=("lay_or_read",),
                values={
                    "laid": False,
                    "reach": _mm(edge.reach),
                    "half": _mm(edge.reach / 2),
                    "everywhere": len(unseen) == len(read.spots),
                    "more": max(0, len(unseen) - _MOST_NAMED),
                    "way": word(read.way),
                    "left": [_mm(read.spots[place].left) for place in unseen[:_MOST_NAMED]],
                    "on": [_mm(read.spots[place].on) for place in unseen[:_MOST_NAMED]],
                },
                slack=_NEAR,
            )


def _uneven(
    rules: RuleSet,
    part: Part,
    edge: Edge,
    worst: float,
    remedies: tuple[str, ...],
    values: Mapping[str, Wanted],
) -> Asked:
    of = edge.name.partition("_")[0]
    accepted = rules.find("surface.accepted.wall")
    told: dict[str, Wanted] = {"laid": False, "edge": word(of), "handed_over": False}
    if accepted is not None and part.surface.kind != "floor" and worst <= rules.number(accepted.id):
        told |= {"handed_over": True, "accepted": _mm(rules.number(accepted.id))}
    return Asked(
        code=_CODE_OF[of],
        severity=FIX,
        at=(part.ref,),
        measured=_mm(worst),
        limit=_mm(edge.allowed),
        sense="most",
        rule=edge.rule,
        remedies=remedies,
        values={**told, **values},
        slack=_NEAR,
    )


def _ways(plan: Document, part: Part, read: Readings) -> tuple[tuple[str, ...], dict[str, Wanted]]:
    """What flattens a surface, best first."""
    passing = [way for way in ways(plan, part, read) if not way.failing]
    if not passing:
        return ("rebuild",), {}
    floor = part.surface.kind == "floor"
    values: dict[str, Wanted] = {"floor": floor, "names": [word(way.name) for way in passing]}
    if not floor:
        values["studs"] = [
            len({spot.left for spot, by in zip(read.spots, way.changes, strict=True) if by}) for way in passing
        ]
        values["deep"] = [_mm(max(map(abs, way.changes))) for way in passing]
        return ("ways",), values
    filled = [litres_of(plan, part, read, way) if way.name in FLOOR_WAYS else (0.0, 0) for way in passing]
    values["litres"] = [Number(litres, "l") for litres, _ in filled]
    values["bags"] = [bags for _, bags in filled]
    values["deep"] = [_mm(max(way.changes)) for way in passing]
    values["off"] = [_mm(max(0.0, -min(way.changes))) for way in passing]
    if any(way.name == "grind" for way in passing):
        return ("ways", "with_care"), values | {"caution": name(plan.rules.text("safety.grinding"))}
    return ("ways",), values


def check_map(plan: Document, part: Part) -> Iterator[Objection]:
    """Object to highs and lows that are told otherwise than read, or are not told of what is uneven."""
    told = [said for said in plan.findings if said.code == MAP and said.place == part.ref]
    untiled = part.edge_mm is None or part.surface.kind == "ceiling" or is_bed(part)
    read = None if untiled else readings_of(part, plan.rules)
    if read is None or not read.uneven:
        yield from (Objection(CODE, said.place, f"{MAP} is told, and is not so") for said in told)
    elif len(told) != 1 or not _is_map(plan.rules, part, read, told[0]):
        yield Objection(CODE, part.ref, f"{MAP} is not told, or not as it is")


def _is_map(rules: RuleSet, part: Part, read: Readings, said: Said) -> bool:
    """Whether highs and lows are those of the readings; of readings that lie alike any may stand first."""
    _, _, off = best_plane(read)
    half = read.edges[0].allowed / 2
    sure = [place for place, by in enumerate(off) if abs(by) > half + _NEAR]
    highest = max(range(len(off)), key=lambda place: off[place])
    named = [place for place, by in enumerate(off) if abs(by) > half - _NEAR] or [highest]
    floor = part.surface.kind == "floor"
    values: dict[str, Wanted] = {"way": word(read.way)}
    for which, sign in (("high", 1), ("low", -1)):
        rows = _told_rows(said, which)
        own = [place for place in named if off[place] * sign > 0]
        least = len([place for place in sure if off[place] * sign > 0])
        if rows is None or not min(least, _MOST_NAMED) <= len(rows) <= min(len(own), _MOST_NAMED):
            return False
        outer = sorted((off[place] * sign for place in own), reverse=True)
        for row, size in zip(rows, outer, strict=False):
            spot = (row[0] * sign, row[1], row[2])
            if not any(_is_at(spot, (off[p] * sign, read.spots[p].left, read.spots[p].on)) for p in own):
                return False
            if abs(spot[0] - size) > _NEAR:
                return False
        if len({*rows}) != len(rows):
            return False
        values[which] = bool(rows)
    values |= {"caution": name(rules.text("safety.grinding"))} if floor else {}
    columns = {f"{which}_{of}" for which in ("high", "low") for of in ("off", "left", "on")}
    return (
        (said.severity, said.at, said.rule, said.measured, said.limit) == (NOTE, (part.ref,), "", None, None)
        and said.remedies == ("grind" if floor else "studs",)
        and said.values.keys() == values.keys() | columns
        and all(agrees(said.values[key], wanted) for key, wanted in values.items())
    )


def _told_rows(said: Said, which: str) -> list[tuple[float, float, float]] | None:
    """How far off, along and out: rows that are told; None where they are not three columns of lengths."""
    columns: list[list[float]] = []
    for of in ("off", "left", "on"):
        given = said.values.get(f"{which}_{of}")
        if not isinstance(given, list) or any(not _is_length(one) for one in given):
            return None
        columns.append([float(one["value"]) for one in given])
    if len({len(column) for column in columns}) != 1:
        return None
    return [(one, two, three) for one, two, three in zip(*columns, strict=True)]


def _is_length(given: object) -> bool:
    if not isinstance(given, dict) or given.keys() != {"value", "unit"} or given["unit"] != "mm":
        return False
    return isinstance(given["value"], int | float) and not isinstance(given["value"], bool)


def _is_at(one: tuple[float, float, float], other: tuple[float, float, float]) -> bool:
    return all(abs(a - b) <= _NEAR for a, b in zip(one, other, strict=True))


def _mm(length: float) -> Number:
    return Number(length, "mm")
