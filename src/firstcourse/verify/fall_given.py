"""Shower floors as the job gives them: planes, kerb, bed and membrane, and the step that their tile may make."""

from collections.abc import Iterator

from firstcourse.rules import RuleSet
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fields import Node
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-770"


def check_falls_given(plan: Document) -> Iterator[Objection]:
    """Object to a shower floor that the job gives otherwise, or does not give, and to one that is left out."""
    floors = {surface.id: surface for surface in plan.surfaces if surface.id == f"{surface.room}/floor/shower"}
    for room in plan.job.nodes("rooms", ()):
        ref = f"{room.text('name')}/floor/shower"
        if "shower" in room.part("floor").value and ref not in floors:
            yield Objection(_CODE, ref, "is given by the job and is no surface of the plan")
    for surface in plan.surfaces:
        if surface.fall is None:
            continue
        shower = shower_of(surface, plan)
        if shower is None:
            yield Objection(_CODE, surface.id, "falls to a drain, and the job gives no shower there")
            continue
        for what, found, asked in _rows(surface, surface.fall, shower, plan):
            if found != asked:
                yield Objection(_CODE, surface.id, f"has {found} as its {what}, and the job asks {asked}")


def shower_of(surface: Surface, plan: Document) -> Node | None:
    """What the job says of a shower floor; None where it gives none there."""
    for room in plan.job.nodes("rooms", ()):
        if surface.id == f"{room.text('name')}/floor/shower" and "shower" in room.part("floor").value:
            return room.part("floor").part("shower")
    return None


def tile_of(shower: Node, plan: Document) -> Node | None:
    """The tile that the job gives a shower floor; None where it gives none."""
    wanted = shower.part("tiling").raw("tile", None)
    return next((one for one in plan.job.nodes("tiles", ()) if one.raw("id") == wanted), None)


def shelves_of(surface: Surface, shower: Node) -> dict[str, Node]:
    """Shelves that the job gives in a shower, by their references."""
    return {f"{surface.id}/shelf/{shelf.text('id')}": shelf for shelf in shower.nodes("shelves", ())}


def drop_of(shelf: Node) -> float | None:
    """Fall of a shelf over its depth; None where the job leaves its drop to the plan."""
    return shelf.distance("drop") / shelf.length("depth") if "drop" in shelf.value else None


def step_between_tiles(shower: Node, plan: Document) -> tuple[int, str]:
    """Step that a shower floor's tile may make [ticks], and the rule that it follows from."""
    rules, tile = plan.rules, tile_of(shower, plan)
    if tile is None:
        return rules.ticks("tile.lippage.narrow"), "tile.lippage.narrow"
    joint = tile.length("joint") if "joint" in tile.value else rules.ticks("tile.joint.min_floor")
    allowed = [_by_joint(joint, rules)]
    stone = tile.raw("kind", "") == "stone"
    special = f"tile.lippage.{'stone' if stone else 'ground'}"
    if (stone or tile.raw("edges", "") == "rectified") and rules.has(special):
        allowed.insert(0, special)
    rule = min(allowed, key=rules.ticks)
    bowed = tile.length("warpage") if "warpage" in tile.value else 0
    return rules.ticks(rule) + (bowed if rules.flag("tile.lippage.adds_warpage") else 0), rule


def _by_joint(joint: int, rules: RuleSet) -> str:
    if rules.has("tile.lippage.narrow_to"):
        narrow = joint <= rules.ticks("tile.lippage.narrow_to")
    else:
        narrow = joint < rules.ticks("tile.lippage.wide_from")
    return "tile.lippage.narrow" if narrow else "tile.lippage.wide"


def _rows(surface: Surface, fall: Fall, shower: Node, plan: Document) -> Iterator[tuple[str, object, object]]:
    rules, kerb = plan.rules, shower.part("kerb") if "kerb" in shower.value else None
    membrane = shower.text("membrane", "sheet")
    usual = "fall.bed.liner" if membrane == "liner" else "fall.bed.bonded"
    slope = 0
    if membrane == "liner":
        slope = shower.length("pre_slope") if "pre_slope" in shower.value else rules.ticks("fall.pre_slope")
    yield "planes", fall.layout, shower.text("falls", "level")
    yield "membrane", fall.membrane, membrane
    yield "membrane", surface.membrane, membrane
    yield "kerb", fall.kerb, None if kerb is None else kerb.length("height")
    yield "kerb's width", fall.kerb_width, None if kerb is None else kerb.length("width")
    yield "bed", fall.bed, shower.length("bed") if "bed" in shower.value else rules.ticks(usual)
    yield "slope under the liner", fall.pre_slope, slope
    yield "number of the drain's ends", len(fall.drain), 1 if "left" in shower.part("drain").value else 2
    if fall.largest_tile is not None:
        yield "step between tiles", fall.tile_step, step_between_tiles(shower, plan)[0]
