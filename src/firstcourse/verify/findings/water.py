"""What must be said of membranes: walls lined too low or not at all, and walls fastened low beside a shower."""

from collections.abc import Iterator

from firstcourse.geometry import bounds
from firstcourse.verify.fall_given import shower_of
from firstcourse.verify.structure import Document, Said, Surface
from firstcourse.verify.told import at_least, mm, name, said

_HEIGHT = "water.wall.height"


def water_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of lined walls, and of the walls round each shower floor."""
    lined = {surface.id for surface in plan.surfaces if surface.membrane and surface.boarded}
    if plan.rules.has(_HEIGHT):
        least = plan.rules.ticks(_HEIGHT)
        for surface in plan.surfaces:
            top = bounds(surface.outline)[3]
            if surface.kind == "wall" and surface.id in lined and top < least:
                limit = at_least(least)
                yield said("WAT-101", "stop", surface.id, "higher", rule=_HEIGHT, measured=mm(top), limit=limit)
    for surface in plan.surfaces:
        if shower_of(surface, plan) is not None:
            yield from _round(surface, lined, plan)


def _round(shower: Surface, lined: set[str], plan: Document) -> Iterator[Said]:
    room = next(room for room in plan.job.nodes("rooms") if room.text("name") == shower.room)
    feet = {wall.text("wall"): wall.text("foot", "floor") for wall in room.nodes("walls", ())}
    for met in dict.fromkeys(shower.met):
        before, _, pair = met.rpartition("/")
        if before != f"{shower.room}/wall":
            continue
        at = shower.id, met
        if met not in lined:
            yield said("WAT-102", "fix", at, "give_exposure", rule="water.upturn.above_threshold")
        foot = feet.get(pair, "tray")
        if foot not in ("tray", "kerb"):
            ban = "fastening.no_fastener_above_tray"
            yield said("WAT-103", "fix", at, "write_foot", rule=ban, foot=name(foot))
