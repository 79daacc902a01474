"""Membranes without a gap: a bench that stands where walls or floor are waterproof is covered like them."""

from collections.abc import Iterator

from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection


def check_membranes(plan: Document) -> Iterator[Objection]:
    """Object to a bench in the wet with a face that bears no membrane, or another than stands beside it."""
    kinds = {surface.id: surface.membrane for surface in plan.surfaces}
    faces: dict[str, list[Surface]] = {}
    for surface in plan.surfaces:
        if not surface.boarded and surface.fall is None and not surface.part_of:
            faces.setdefault(surface.id.rpartition("/")[0], []).append(surface)
    for bench, found in faces.items():
        walls = {f"{face.room}/wall/{label.removeprefix('wall ')}" for face in found for label in face.labels}
        beside = {kinds[wall] for wall in walls if kinds.get(wall)}
        in_shower = any(
            why == bench for surface in plan.surfaces if surface.fall is not None for why, _ in surface.not_tiled
        )
        for face in found:
            if (in_shower and not face.membrane) or (beside and face.membrane not in beside):
                yield Objection("VER-763", face.id, "is not covered by the membrane of what it stands against")
