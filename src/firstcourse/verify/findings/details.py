"""What must be said of what is built in tile: falls of sills and tops, windows of wet walls, feet out of level."""

from collections.abc import Iterator
from typing import Any

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM, ticks_from_mm
from firstcourse.verify.fields import Node
from firstcourse.verify.floor_heights import kerb_drop
from firstcourse.verify.start_reasons import tilings
from firstcourse.verify.structure import Document, Opening, Said, Surface
from firstcourse.verify.told import at_least, mm, ref, said, word
from firstcourse.verify.wall_feet import left_on_boards

CODES = frozenset({"TIL-124", "TIL-130", "TIL-131", "TIL-132"})
_SAME = 0.01 * TICKS_PER_MM
_WET = ("wet", "steam")
_DOWN_TO_FLOORS = ("floor", "tray", "kerb")
_FALL = "fall.shelf.min"


def detail_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of sills, tops, windows and the feet of walls."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    asked = tilings(plan)
    for room in plan.job.nodes("rooms", ()):
        name = room.text("name")
        for wall in room.nodes("walls", ()):
            surface = by_id.get(f"{name}/wall/{wall.text('wall')}")
            if surface is not None:
                yield from _of_openings(surface, wall, asked.get(surface.id), plan)
                down = wall.text("foot", "floor") in _DOWN_TO_FLOORS and surface.tiled
                if down and left_on_boards(name, by_id, plan):
                    yield _foot(surface)
        for bench in room.nodes("benches", ()):
            yield _fall(f"{name}/bench/{bench.text('id')}", "top", bench.length("depth"), bench, plan)
        kerb = room.part("floor").part("shower").part("kerb")
        if kerb.raw("tile", None) is not None and f"{name}/floor/shower" in by_id:
            yield _fall(f"{name}/floor/shower/kerb", "top", kerb.length("width"), Node({}, kerb.where), plan)


def _of_openings(surface: Surface, wall: Node, tiling: Node | None, plan: Document) -> Iterator[Said]:
    given = {opening.text("id"): opening for opening in wall.nodes("openings", ())}
    for niche in () if tiling is None else tiling.nodes("niches", ()):
        at = f"{surface.id}/opening/{niche.text('niche')}"
        yield _fall(at, "sill", niche.length("depth"), niche, plan)
    for window in surface.openings:
        if window.kind != "window" or window.id not in given:
            continue
        at, returns = f"{surface.id}/opening/{window.id}", given[window.id].part("returns")
        if surface.tiled and returns.value and returns.flag("tiled", True):
            yield _fall(at, "sill", returns.length("depth"), returns, plan)
        if surface.tiled and not window.depth and wall.part("exposure").raw("zone", "") in _WET:
            yield said("TIL-130", "fix", at, "give_returns", rule=_FALL)
        if surface.boards and window.depth and window.outline is not None:
            yield _returns(at, surface, window, plan)


def _fall(at: str, what: str, depth: int, given: Node, plan: Document) -> Said:
    """How much lower the front of a sill or top lies than its back, as given or as the rules ask."""
    rules, most = plan.rules, "fall.shelf.max"
    needed = kerb_drop(depth, plan)
    drop = needed if given.raw("drop", None) is None else given.distance("drop")
    low, wrong = depth * rules.number(_FALL), False
    bounded: dict[str, Any] = {}
    if rules.has(most):
        high = depth * rules.number(most)
        half = plan.tape.graduation // 2
        marked = ticks_from_mm(high / TICKS_PER_MM) // half * half
        bounded["most"] = mm(marked if marked >= needed else ticks_from_mm(high / TICKS_PER_MM))
        wrong = drop > high + _SAME and given.raw("drop", None) is not None
    wrong = wrong or drop < low - _SAME
    return said(
        "TIL-124",
        "fix" if wrong else "note",
        at,
        "set" if wrong else "check",
        rule=_FALL,
        measured=mm(drop),
        limit=at_least(needed),
        what=word(what),
        bounded=bool(bounded),
        **bounded,
    )


def _returns(at: str, wall: Surface, window: Opening, plan: Document) -> Said:
    """How far apart the framing of a window's boarded returns stands, or that they are too narrow for boards."""
    rules, least = plan.rules, "boards.limb.min"
    width = window.depth - rules.ticks("boards.gap.perimeter")
    if width < rules.ticks(least):
        wide: dict[str, Any] = {"measured": mm(width), "limit": at_least(rules.ticks(least))}
        return said("TIL-131", "fix", at, "mortar_or_foam", rule=least, boarded=False, **wide)
    left, low, right, top = bounds(window.outline or ())
    board = dict(wall.layers).get("board", 0)
    apart: dict[str, Any] = {"wide": mm(right - left + 2 * board), "high": mm(top - low + 2 * board)}
    return said("TIL-131", "note", at, "check_framing", boarded=True, **apart)


def _foot(wall: Surface) -> Said:
    """How the foot of a wall lies whose tile begins at its boards."""
    feet: dict[str, Any] = {
        "corners": [ref(f"{wall.id}/corner/{corner}") for corner in wall.corners],
        "heights": [mm(wall.datum + v) for _, v in wall.foot],
    }
    return said("TIL-132", "fix", wall.id, "level_or_hold", **feet)
