"""How each start came about: as the job gives it, with the courses of walls beside it, or as the best found."""

from collections.abc import Iterator, Mapping

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node
from firstcourse.verify.start_fields import CONTINUED, FOUND, Start
from firstcourse.verify.structure import Document, Surface, TiledArea
from firstcourse.verify.verdict import Objection

_CODE = "VER-723"
_OF_WALL = ("host_joints", "no_sliver")
_ROUNDED = 2.0
"""Levels of courses are rounded to whole ticks, wall by wall."""
_BY_KIND = {"foot": "tiling.sight.foot", "free": "tiling.sight.free"}


def tilings(plan: Document) -> Mapping[str, Node]:
    """How the job asks each surface to be tiled, by the surface's id."""
    found: dict[str, Node] = {}
    for room in plan.job.nodes("rooms", ()):
        name, floor = room.text("name"), room.part("floor")
        grounds = [
            (f"{name}/floor", floor),
            (f"{name}/floor/shower", floor.part("shower")),
            (f"{name}/ceiling", room.part("ceiling")),
            *((f"{name}/wall/{wall.text('wall')}", wall) for wall in room.nodes("walls", ())),
        ]
        found |= {ref: ground.part("tiling") for ref, ground in grounds if "tiling" in ground.value}
    return found


def check_start_reasons(plan: Document) -> Iterator[Objection]:
    """Object to a start that is told to have come about otherwise than it did."""
    asked = tilings(plan)
    for surface in plan.surfaces:
        for number, area in enumerate(surface.tiled):
            if area.starts:
                yield from _ways(surface, area, first=number == 0)
                yield from _beside(surface, area)
        if surface.tiled and surface.tiled[0].starts:
            used = surface.tiled[0].starts[0]
            tiling = asked.get(surface.id)
            if (used.why == "given") != (tiling is not None and "start" in tiling.value):
                yield Objection(_CODE, surface.id, f"starts as {used.why}, which the job does not say")
            if used.why == "round_corners" and not _runs_on(surface, plan):
                yield Objection(_CODE, surface.id, "keeps the courses of no wall beside it, and is told to")
            if used.why in _OF_WALL and not surface.built_later:
                yield Objection(_CODE, surface.id, "belongs to no wall whose joints it could keep")
            seen = [] if tiling is None else [str(side) for side, _ in tiling.rows("seen_first", ())]
            for start in surface.tiled[0].starts:
                yield from _weights(surface, start, seen, plan)


def _ways(surface: Surface, area: TiledArea, *, first: bool) -> Iterator[Objection]:
    used, *others = area.starts
    if first:
        may: tuple[str, ...] = FOUND
    elif area.role == "band":
        may = ("best", "field_joints")
    else:
        may = ("both_corners",) if area.role == "border" else ("courses_below", "field_joints")
    if used.why not in may or any(other.why != "other" for other in others):
        yield Objection(_CODE, surface.id, f"starts a {area.role} as {used.why}, or another beside it so")
    if used.why in CONTINUED and used != Start(
        used.origin, 0, 0, 0, used.why, False, False, "", (), None, 0, 0, False, False, 0
    ):
        yield Objection(_CODE, surface.id, "keeps the lines of another start, and tells cuts of its own")


def _beside(surface: Surface, area: TiledArea) -> Iterator[Objection]:
    """What holds of every start: of one room all are as sure, and slivers are under half a tile."""
    sides = [edge.at for edge in area.starts[0].edges]
    for start in area.starts:
        poor = start.sliver or start.under_half
        if (start.sliver and not start.under_half) or (start.narrowest_at and not poor):
            yield Objection(_CODE, surface.id, "tells a sliver, or where a poor cut is, and no cut under a half")
        if start.why not in CONTINUED and [edge.at for edge in start.edges] != sides:
            yield Objection(_CODE, surface.id, "tells cuts along other sides for one start than for another")
        if start.on_joints > start.wanted or start.wanted != area.starts[0].wanted:
            yield Objection(_CODE, surface.id, "wants other edges of niches and windows on joints by start")
        if start.unsure != area.starts[0].unsure:
            yield Objection(_CODE, surface.id, "is as sure for one start as for another")
    if len({start.origin for start in area.starts}) != len(area.starts):
        yield Objection(_CODE, surface.id, "lists one start twice")


def _runs_on(wall: Surface, plan: Document) -> bool:
    """Whether another wall of the room has its courses at the levels of this one."""
    if len(wall.tiled[0].steps) != 2:
        return False
    step = abs(wall.tiled[0].steps[1][1]) * TICKS_PER_MM
    level = wall.tiled[0].origin[1] + wall.datum
    for other in plan.surfaces:
        if other.id != wall.id and (other.room, other.kind) == (wall.room, "wall") and other.tiled:
            start = other.tiled[0].starts[0] if other.tiled[0].starts else None
            off = (other.tiled[0].origin[1] + other.datum - level) % step if step else 0.0
            if start is not None and start.why == "round_corners" and min(off, step - off) <= _ROUNDED:
                return True
    return False


def _weights(surface: Surface, start: Start, seen: list[str], plan: Document) -> Iterator[Objection]:
    """How much a poor cut shows along each side: by what the side is, or as the job says what is seen first."""
    for edge in start.edges:
        name = edge.at.removeprefix(f"{surface.id}/side/")
        index = int(name) if name.isdecimal() else len(surface.sides)
        if index >= len(surface.sides):
            yield Objection(_CODE, surface.id, f"tells cuts along {edge.at}, which it does not have")
            continue
        rule = _BY_KIND.get(surface.sides[index], "tiling.sight.usual")
        if surface.met[index] in {f"{surface.room}/wall/{pair}" for pair in seen}:
            rule = "tiling.sight.seen_first"
        if abs(edge.weight - plan.rules.number(rule)) > 1e-9:
            yield Objection(_CODE, surface.id, f"weighs cuts along {edge.at} by {edge.weight:g}, not by {rule}")
