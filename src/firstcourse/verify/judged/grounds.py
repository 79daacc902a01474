"""What is judged: floors, walls and ceilings as the job gives them, a floor that is all shower by that shower."""

from collections.abc import Iterator
from dataclasses import dataclass

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.parts import Part, length_mm, tile_given
from firstcourse.verify.structure import Document

_UNJUDGED = "SUI-902"
_LEVEL = ("floor", "ceiling")


@dataclass(frozen=True, slots=True)
class Laid:
    """What is known of a surface's tile: water it takes up [%] and its wet friction, None where not known.

    Attributes:
        face: Of one tile [m²]; None where its size is not known.
    """

    absorption: float | None = None
    friction: float | None = None
    face: float | None = None


def grounds(plan: Document) -> Iterator[Part]:
    """Every floor, wall and ceiling that the plan can judge, those that it says it cannot left out."""
    unjudged = {said.place for said in plan.findings if said.code == _UNJUDGED}
    for part in all_grounds(plan):
        if part.ref not in unjudged:
            yield part


def all_grounds(plan: Document) -> Iterator[Part]:
    """Every floor, wall and ceiling of the job, of each room the floor first and the ceiling last."""
    surfaces = {surface.id: surface for surface in plan.surfaces}
    for room in plan.job.nodes("rooms", ()):
        name = room.text("name")
        floor, ceiling = ([(f"{name}/{kind}", room.part(kind))] * (kind in room.value) for kind in _LEVEL)
        walls = [(f"{name}/wall/{wall.text('wall')}", wall) for wall in room.nodes("walls", ())]
        for ref, part in (*floor, *walls, *ceiling):
            surface = surfaces.get(ref) or surfaces.get(f"{ref}/shower")
            if surface is not None:
                yield Part(surface, room, part, *tile_given(plan, part))


def is_bed(part: Part) -> bool:
    """Whether a floor is all shower, so that nothing is boarded there."""
    return part.surface.kind == "floor" and part.ref != f"{part.room.text('name')}/floor"


def is_slab(part: Node) -> bool:
    """Whether a floor is of concrete: the job says nothing of joists, planks or panels."""
    told = ("framing", "joists", "planks", "panels", "panel_screws", "panel_joints")
    return not any(name in part.value for name in told)


def laid(plan: Document, part: Node, kind: str) -> Laid:
    """The tile that is laid: the thickest of its tiling's, and what is entered where that says nothing."""
    entered, tiling = part.part("tile"), part.part("tiling")
    own = _entered(entered, kind) if kind != "ceiling" else Laid()
    named = {tiling.raw("tile", None)} | {
        piece.raw("tile", None)
        for repeat in plan.job.nodes("repeats", ())
        if repeat.raw("id", None) == tiling.raw("repeat", "")
        for piece in repeat.nodes("pieces", ())
    }
    chosen = [tile for tile in plan.job.nodes("tiles", ()) if tile.raw("id", None) in named]
    if not chosen:
        return own
    thickest = max(chosen, key=lambda tile: length_mm(tile, "thickness"))
    tile = _entered(thickest, "floor")
    across, up = thickest.size("size")
    return Laid(
        own.absorption if tile.absorption is None else tile.absorption,
        own.friction if tile.friction is None else tile.friction,
        to_m2(across, up),
    )


def to_m2(across: int, up: int) -> float:
    """Area of a rectangle [m²] from its sides [ticks]."""
    return across * up / (1000 * TICKS_PER_MM) ** 2


def _entered(tile: Node, kind: str) -> Laid:
    friction = number_or_none(tile, "wet_friction") if kind == "floor" else None
    return Laid(number_or_none(tile, "absorption_percent"), friction)


def number_or_none(node: Node, key: str) -> float | None:
    """A number that may be left out."""
    return node.number(key) if key in node.value else None
