"""Membranes without a gap: what the job says is wet bears one, and so does a bench that stands there."""

from collections.abc import Iterator

from firstcourse.verify.fall_given import shower_of
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection


def check_membranes(plan: Document) -> Iterator[Objection]:
    """Object to a surface with another membrane than the job asks of it, or of what it stands against."""
    kinds, wet = _of_rooms(plan), _wet(plan)
    asked = {
        surface.id: kinds[surface.room] if surface.id in wet else ""
        for surface in plan.surfaces
        if surface.boarded
    }
    benches: dict[str, list[Surface]] = {}
    for surface in plan.surfaces:
        if not surface.boarded and surface.fall is None and not surface.part_of:
            benches.setdefault(surface.id.rpartition("/")[0], []).append(surface)
    for bench, faces in benches.items():
        walls = [met for face in faces for met in face.met if met.startswith(f"{face.room}/wall/")]
        beside = [asked[wall] for wall in walls if asked.get(wall)]
        in_shower = any(
            why == bench for surface in plan.surfaces if surface.fall is not None for why, _ in surface.not_tiled
        )
        kind = beside[0] if beside else kinds[faces[0].room] if in_shower else ""
        asked |= {face.id: kind for face in faces}
    for surface in plan.surfaces:
        if surface.membrane != asked.get(surface.id, surface.membrane):
            yield Objection(
                "VER-763",
                surface.id,
                f"bears {surface.membrane or 'no'} membrane, not {asked[surface.id] or 'none'}",
            )


def _of_rooms(plan: Document) -> dict[str, str]:
    """What walls and benches of each room take: the sheet of its shower floor, else a liquid."""
    kinds = {surface.room: "liquid" for surface in plan.surfaces}
    for surface in plan.surfaces:
        shower = shower_of(surface, plan)
        if shower is not None and shower.text("membrane", "sheet") == "sheet":
            kinds[surface.room] = "sheet"
    return kinds


def _wet(plan: Document) -> frozenset[str]:
    """Surfaces of which the job says that they get wet and have a membrane."""
    found = set()
    for room in plan.job.nodes("rooms", ()):
        name = room.text("name")
        parts = {f"{name}/{kind}": room.part(kind) for kind in ("floor", "ceiling")}
        parts |= {f"{name}/wall/{wall.text('wall')}": wall for wall in room.nodes("walls", ())}
        for ref, part in parts.items():
            exposure = part.part("exposure")
            if exposure.flag("membrane", False) and exposure.text("zone", "") in ("wet", "steam"):
                found.add(ref)
    return frozenset(found)
