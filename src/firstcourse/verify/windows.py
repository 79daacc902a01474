"""Windows set back in walls: lined all round or not at all, sills falling to the front, and none forgotten."""

import math
from collections.abc import Iterator

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.structure import Document, Opening, Surface
from firstcourse.verify.verdict import Objection

_SLACK = 4.0
_FACES = ("sill", "head", "left", "right")


def check_windows(plan: Document) -> Iterator[Objection]:
    """Object to returns that are missing, have another size than their window, or let water stand."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    for wall in plan.surfaces:
        for window in wall.openings:
            # A skylight has no sill.
            if window.kind != "window" or wall.kind != "wall":
                continue
            name = f"{wall.id}/{window.id}"
            if not window.depth:
                continue
            faces = {face: by_id.get(f"{name}/{face}") for face in _FACES}
            if (
                all(found is None for found in faces.values())
                and f"tiles-sill@{wall.id}/opening/{window.id}" not in plan.workings
            ):
                continue
            for face, found in faces.items():
                if found is None or not found.tiled or found.id not in wall.linings:
                    yield Objection("VER-719", name, f"has no {face} among the tiled surfaces of its wall")
            if all(found is not None for found in faces.values()):
                yield from _sizes(wall, window, {face: found for face, found in faces.items() if found}, plan)


def _sizes(wall: Surface, window: Opening, faces: dict[str, Surface], plan: Document) -> Iterator[Objection]:
    assert window.outline is not None
    left, low, right, top = bounds(window.outline)
    on_wall = sum(thickness for kind, thickness in wall.layers if kind in ("mortar", "tile"))
    deep = window.depth + on_wall
    feet = sorted(v for _, v in faces["left"].outline)[:2]
    drop = feet[1] - feet[0]
    wanted = {
        "sill": (right - left, math.hypot(deep, drop)),
        "head": (right - left, deep),
        "left": (deep, top - low),
        "right": (deep, top - low),
    }
    for face, (wide, high) in wanted.items():
        u0, v0, u1, v1 = bounds(faces[face].outline)
        if abs(u1 - u0 - wide) > _SLACK or abs(v1 - v0 - high) > _SLACK:
            yield Objection("VER-719", faces[face].id, "is not as large as its window and the tile before it ask")
    least = window.depth * plan.rules.number("fall.shelf.min")
    ref = f"{wall.id}/opening/{window.id}"
    falls = [said for said in plan.findings if said.code == "TIL-124" and said.place == ref]
    # A drop that the job gives is kept, and told where it is too little.
    told = any(said.severity != "note" for said in falls)
    if drop < least - _SLACK and not told:
        yield Objection(
            "VER-719",
            faces["sill"].id,
            f"falls {drop / TICKS_PER_MM:.1f} mm, less than {least / TICKS_PER_MM:.1f} mm",
        )
