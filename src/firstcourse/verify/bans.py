"""Where nothing may be driven: what the job says is in a wall, and what stands under its boards."""

from collections.abc import Iterator

from firstcourse.geometry import bounds
from firstcourse.units import ticks_from_mm
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.parts import length_mm
from firstcourse.verify.structure import Ban, Document, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-412"
_SEALED = ("tray", "kerb")
"""A wall that stands over one of these is left whole just above it."""


def check_bans(plan: Document) -> Iterator[Objection]:
    """Object to a zone that nothing asks for, and to one that is left out, moved or given another reason."""
    given = {
        f"{room.text('name')}/wall/{wall.text('wall')}": wall
        for room in plan.job.nodes("rooms", ())
        for wall in room.nodes("walls", ())
    }
    for surface in plan.surfaces:
        wall = given.get(surface.id)
        wanted = [] if wall is None else list(_wanted(surface, wall, plan))
        for ban in wanted:
            if ban not in surface.bans:
                yield Objection(_CODE, surface.id, f"leaves out where nothing may be driven: {ban.why}")
        if any(ban not in wanted for ban in surface.bans):
            yield Objection(_CODE, surface.id, "bars fasteners where nothing asks for it")


def _wanted(surface: Surface, wall: Node, plan: Document) -> Iterator[Ban]:
    for zone in wall.nodes("no_fasteners", ()):
        left, low, right, high = (
            ticks_from_mm(length_mm(zone, name)) for name in ("left", "bottom", "right", "top")
        )
        yield Ban(((left, low), (right, low), (right, high), (left, high)), zone.text("why"), found=True)
    foot = wall.text("foot", "floor")
    if foot in _SEALED:
        left, low, right, _ = bounds(surface.outline)
        high = low + plan.rules.ticks("fastening.no_fastener_above_tray")
        yield Ban(((left, low), (right, low), (right, high), (left, high)), f"above_{foot}", found=False)
