"""What must be told of how walls stand: plumb, tub laps, tapers, level; and of a steam room's ceiling."""

import math
from collections.abc import Iterator

import numpy as np

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM, ticks_from_mm
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.derived import Number, ref, word
from firstcourse.verify.formulas.parts import Part, ends_of, length_mm
from firstcourse.verify.formulas.stance import (
    angle_at,
    furred,
    furring,
    height_of,
    lean_allowed,
    lean_of,
    meeting,
    room_height,
)
from firstcourse.verify.formulas.survey import drawn_corners
from firstcourse.verify.judged.asked import FIX, NOTE, Asked
from firstcourse.verify.structure import Document

CODES = frozenset(("SUI-411", "SUI-412", "SUI-413", "SUI-414", "SUI-610", "SUI-611"))
_MM_PER_IN = 25.4
_ROUNDED = 0.00105
"""Lengths here are told to a thousandth of a millimetre."""
_LEVEL = 0.0005
"""A fall that no level shows."""


def stance_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """What must be told of how one wall stands."""
    if part.surface.kind != "wall":
        return
    lean = lean_of(part.room, part.wall)
    if lean is not None:
        yield from _leans(plan, part, lean)
    for corner, (wall, ends) in meeting(part).items():
        other = lean_of(part.room, wall)
        if other is not None:
            yield from _tapers(plan, part, corner, wall, ends, other)
    yield from _level(plan, part)


def _leans(plan: Document, part: Part, lean: float) -> Iterator[Asked]:
    over = part.given.text("foot", "floor")
    foot, top = furring(plan, part)
    if foot or top:
        yield Asked(
            code="SUI-411",
            severity=FIX,
            at=(part.ref,),
            measured=_mm(abs(lean)),
            limit=_mm(lean_allowed(plan, part)),
            sense="most",
            rule="wall.plumb.max",
            remedies=("fur",),
            values={"inwards": lean > 0, "height": _mm(height_of(part)), "foot": _mm(foot), "top": _mm(top)},
            slack=_ROUNDED,
        )
    run = abs(lean) * _tiled(part) / height_of(part)
    if over in ("tub", "tray") and ticks_from_mm(run) >= plan.tape.graduation // 2:
        there = furred(part, lean)[0]
        yield Asked(
            code="SUI-412",
            severity=NOTE,
            at=(part.ref,),
            measured=_mm(run),
            remedies=("fur_and_lap" if ticks_from_mm(there) >= plan.tape.graduation else "fur_top",),
            values={"inwards": lean > 0, "over": word(over), "tiled": _mm(_tiled(part)), "furred": _mm(there)},
            slack=_ROUNDED,
        )


def _tapers(
    plan: Document, part: Part, corner: str, wall: str, ends: tuple[str, str], lean: float
) -> Iterator[Asked]:
    high = max(room_height(part.room, name) for name in ends_of(wall, part.room.where))
    angle = angle_at(plan, part.surface.room, corner, ends)
    if high <= 0 or not 0 < angle < 180:
        return
    taper = -lean * _tiled(part) / high / math.sin(math.radians(angle))
    allowed = plan.rules.number("surface.taper.max") * _MM_PER_IN
    if abs(taper) > allowed:
        yield Asked(
            code="SUI-413",
            severity=FIX,
            at=(part.ref,),
            measured=_mm(abs(taper)),
            limit=_mm(allowed),
            sense="most",
            rule="surface.taper.max",
            remedies=("fur",),
            values={
                "corner": ref(f"{part.ref}/corner/{corner}"),
                "wall": ref(f"{part.surface.room}/wall/{wall}"),
                "inwards": lean > 0,
                "wider": taper > 0,
                "tiled": _mm(_tiled(part)),
            },
            slack=_ROUNDED,
        )


def _level(plan: Document, part: Part) -> Iterator[Asked]:
    left, right = ends_of(part.wall, part.given.where)
    levels = part.room.part("levels")
    if part.given.text("foot", "floor") != "floor" or not {left, right} <= levels.value.keys():
        return
    # Whole ticks, as levels are: at the limit itself a difference of two floats would be over it.
    rise = round((length_mm(levels, right) - length_mm(levels, left)) * TICKS_PER_MM) / TICKS_PER_MM
    allowed = plan.rules.number("surface.taper.max") * _MM_PER_IN
    if abs(rise) > allowed:
        low, high = (left, right) if rise > 0 else (right, left)
        yield Asked(
            code="SUI-414",
            severity=FIX,
            at=(part.ref,),
            measured=_mm(abs(rise)),
            limit=_mm(allowed),
            sense="most",
            rule="surface.taper.max",
            remedies=("level",),
            values={"low": ref(f"{part.ref}/corner/{low}"), "high": ref(f"{part.ref}/corner/{high}")},
            slack=_ROUNDED,
        )


def _tiled(part: Part) -> float:
    """Height that is boarded and tiled [mm]."""
    _, low, _, high = bounds(part.surface.outline)
    return (high - low) / TICKS_PER_MM


def steam_asked(plan: Document, room: Node) -> Iterator[Asked]:
    """What must be told of the ceiling of a room of which a wall or the ceiling is in steam."""
    ceiling = room.part("ceiling").part("exposure").text("zone", "")
    walls = [wall.part("exposure").text("zone", "") for wall in room.nodes("walls", ())]
    if "steam" not in (*walls, ceiling):
        return
    at = (f"{room.text('name')}/ceiling",)
    corners = drawn_corners(plan, room.text("name"))
    left, low, right, high = bounds(tuple(corners.values()))
    run = min(right - left, high - low) / TICKS_PER_MM
    least, fall = plan.rules.number("ceiling.steam.fall.min"), _fall(room, corners)
    if fall is None or fall < least - plan.tape.graduation / TICKS_PER_MM / run:
        yield Asked(
            code="SUI-610",
            severity=NOTE if fall is None else FIX,
            at=at,
            measured=None if fall is None else Number(fall),
            limit=Number(least),
            sense="least",
            rule="ceiling.steam.fall.min",
            remedies=("heights", "frame") if fall is None else ("frame",),
            values={
                "known": fall is not None,
                "level": fall is not None and fall < _LEVEL,
                "down": Number(least * run, "mm"),
                "run": Number(run, "mm"),
            },
            slack=1e-7,
        )
    if ceiling != "steam":
        yield Asked(
            code="SUI-611",
            severity=NOTE,
            at=at,
            limit=Number(plan.rules.number("exposure.steam.perm_max"), "perm"),
            sense="most",
            rule="exposure.steam.perm_max",
            remedies=("exposure",),
            values={"told": bool(ceiling)} | ({"zone": word(ceiling)} if ceiling else {}),
        )


def _fall(room: Node, corners: dict[str, tuple[int, int]]) -> float | None:
    """Fall of the plane that fits the ceiling's corners best; None where their heights are not known."""
    heights, levels = room.part("heights"), room.part("levels")
    if "height" not in room.value and not corners.keys() <= heights.value.keys():
        return None
    high = [
        room_height(room, name) + (length_mm(levels, name) if name in levels.value else 0.0) for name in corners
    ]
    rows = np.array([[u / TICKS_PER_MM / 1000, v / TICKS_PER_MM / 1000, 1.0] for u, v in corners.values()])
    along, across, _ = np.linalg.lstsq(rows, np.array(high) / 1000, rcond=None)[0]
    return math.hypot(float(along), float(across))


def _mm(length: float) -> Number:
    return Number(length, "mm")
