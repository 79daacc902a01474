"""How walls stand: how far they lean, what cuts in their corners taper by; and what may be used in each zone."""

import math
from collections.abc import Iterator

from firstcourse.geometry import bounds
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, format_length, ticks_from_mm
from firstcourse.verify.fields import FieldError, Node
from firstcourse.verify.formulas.parts import Part, ends_of, length_mm, part_of, parts
from firstcourse.verify.formulas.proving import (
    CODE,
    Prove,
    holds,
    just,
    key_of,
    limited,
    only,
    ref,
    rests_on,
)
from firstcourse.verify.formulas.survey import drawn_corners
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_PLUMB, _TAPER, _MATERIALS = "ground-plumb", "ground-taper", "ground-materials"
_MM_PER_IN = 25.4


def furring(plan: Document, part: Part) -> tuple[float, float]:
    """What a wall is furred out by at its lowest and highest board edge; nothing where it is plumb enough [mm]."""
    lean = lean_of(part.room, part.wall)
    if lean is None or is_plumb(plan, part, lean):
        return 0.0, 0.0
    return furred(part, lean)


def furred(part: Part, lean: float) -> tuple[float, float]:
    """What brings a wall plumb at its lowest and highest board edge, whether it must be or not [mm]."""
    high, base = height_of(part), part.whole[1]
    _, low, _, top = bounds(part.surface.outline)
    foot, head = ((at - base) / TICKS_PER_MM / high for at in (low, top))
    return (lean * (1 - foot), lean * (1 - head)) if lean > 0 else (-lean * foot, -lean * head)


def height_of(part: Part) -> float:
    """Height of the whole wall [mm]."""
    _, low, _, high = part.whole
    return (high - low) / TICKS_PER_MM


def is_plumb(plan: Document, part: Part, lean: float) -> bool:
    """What the tape reads like the limit does not lean too far."""
    read, limit = (format_length(ticks_from_mm(each), plan.tape) for each in (abs(lean), lean_allowed(plan, part)))
    return abs(lean) <= lean_allowed(plan, part) + 1e-6 or read == limit


def lean_allowed(plan: Document, part: Part) -> float:
    """How far a wall may lean over its height [mm]."""
    return plan.rules.number("wall.plumb.max") / plan.rules.number("wall.plumb.reach") * height_of(part)


def _plumb(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    lean = None if part is None else lean_of(part.room, part.wall)
    if part is None or lean is None:
        return
    foot, top = furred(part, lean)
    yield from only(working, "lean", "height", "foot", "top", "holds")
    yield from holds(working, "lean", lean, "mm")
    yield from holds(working, "height", height_of(part), "mm")
    yield from holds(working, "foot", foot, "mm")
    yield from holds(working, "top", top, "mm")
    yield from just(working, "holds", is_plumb(plan, part, lean))
    yield from holds(working, "result", abs(lean), "mm")
    yield from rests_on(working, "wall.plumb.max")
    yield from limited(working, "most", lean_allowed(plan, part), "mm")


def _taper(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    if part is None:
        return
    corner = working.at[1].rpartition("/")[2]
    wall, ends = meeting(part)[corner]
    lean = lean_of(part.room, wall) or 0.0
    high = max(room_height(part.room, name) for name in ends_of(wall, part.room.where))
    _, low, _, top = bounds(part.surface.outline)
    tiled = (top - low) / TICKS_PER_MM
    angle = angle_at(plan, part.surface.room, corner, ends)
    if high <= 0 or not 0 < angle < 180:
        yield Objection(CODE, working.key, "is at a wall without a height, or in no corner")
        return
    taper = -lean * tiled / high / math.sin(math.radians(angle))
    yield from only(working, "wall", "lean", "height", "tiled", "angle", "wider")
    yield from just(working, "wall", ref(f"{part.surface.room}/wall/{wall}"))
    yield from holds(working, "lean", lean, "mm")
    yield from holds(working, "height", high, "mm")
    yield from holds(working, "tiled", tiled, "mm")
    yield from holds(working, "angle", angle, "deg")
    yield from just(working, "wider", taper > 0)
    yield from holds(working, "result", abs(taper), "mm")
    yield from rests_on(working, "surface.taper.max")
    yield from limited(working, "most", plan.rules.number("surface.taper.max") * _MM_PER_IN, "mm")


def room_height(room: Node, corner: str) -> float:
    """Height of a room at a corner [mm]."""
    heights = room.part("heights")
    if corner in heights.value:
        return length_mm(heights, corner)
    return length_mm(room, "height") if "height" in room.value else 0.0


def meeting(part: Part) -> dict[str, tuple[str, tuple[str, str]]]:
    """By the corner at either end of a wall, the wall that it meets there and the far ends of both."""
    names = [str(name) for name, _ in part.room.rows("corners", ())]
    left, right = ends_of(part.wall, part.given.where)
    if not names:
        return {}
    if not {left, right} <= set(names):
        raise FieldError(part.given.where, "stands between corners that its room does not have")
    before, after = names[names.index(left) - 1], names[(names.index(right) + 1) % len(names)]
    return {left: (f"{before}-{left}", (before, right)), right: (f"{right}-{after}", (left, after))}


def angle_at(plan: Document, room: str, corner: str, ends: tuple[str, str]) -> float:
    """Between two walls, inside the room [degrees]; nothing where its corners are not known."""
    at = drawn_corners(plan, room)
    if not {corner, *ends} <= at.keys():
        return 0.0
    here = at[corner]
    first, second = (math.atan2(at[name][1] - here[1], at[name][0] - here[0]) for name in ends)
    turn = math.degrees(abs(first - second)) % 360
    return min(turn, 360 - turn)


def lean_of(room: Node, wall: str) -> float | None:
    """How far a wall leans over its height, into the room more than nothing [mm]; None where not taken."""
    plumb = room.part("plumb")
    return length_mm(plumb, wall) if wall in plumb.value else None


def _materials(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    if part is None:
        return
    rules, zone = plan.rules, part.given.part("exposure").text("zone")
    heated = sorted(rules.text("exposure.heat_boards").split())
    boards = heated if zone == "near_heat" else fit_for(rules, "board", zone)
    standards = [rules.find(f"exposure.standard.{board}") for board in boards]
    barrier = zone in rules.text("exposure.membrane_zones").split()
    side = "on_face" if zone in rules.text("exposure.face_only_zones").split() else "either_side"
    tiles = fit_for(rules, "tile", zone)
    if part.surface.kind == "floor" and zone in ("wet", "steam"):
        tiles = [name for name in tiles if name in rules.text("exposure.wet_floor_tile").split()]
    named = {
        "boards": boards,
        "mortars": fit_for(rules, "mortar", zone),
        "fasteners": fit_for(rules, "fastener", zone),
        "tiles": tiles,
        **({"membranes": fit_for(rules, "membrane", zone)} if barrier else {}),
    }
    yield from only(working, "standards", "known", "barrier", *named)
    for name, words in named.items():
        yield from just(working, name, [{"word": word} for word in words])
    told = [{"name": "" if one is None else str(one.value)} for one in standards]
    yield from just(working, "standards", told)
    yield from just(working, "known", [one is not None for one in standards])
    yield from just(working, "barrier", {"word": side if barrier else "at_most_one"})
    yield from just(working, "result", {"word": zone})
    yield from rests_on(working)
    yield from limited(working)


def fit_for(rules: RuleSet, kind: str, zone: str) -> list[str]:
    """What the rule book allows in a zone."""
    prefix = f"exposure.{kind}."
    return [entry.id.removeprefix(prefix) for entry in rules.under(prefix) if zone in str(entry.value).split()]


def expected(plan: Document) -> Iterator[str]:
    """Materials where the zone is given; of tiled and other walls how they and their neighbours lean."""
    for part in parts(plan):
        if "exposure" in part.given.value:
            yield key_of(_MATERIALS, part.ref)
        if part.surface.kind != "wall":
            continue
        if lean_of(part.room, part.wall) is not None:
            yield key_of(_PLUMB, part.ref)
        for corner, (wall, _) in meeting(part).items():
            if lean_of(part.room, wall) is not None:
                yield key_of(_TAPER, part.ref, f"{part.ref}/corner/{corner}")


FORMULAS: dict[str, Prove] = {_PLUMB: _plumb, _TAPER: _taper, _MATERIALS: _materials}
