"""What findings tell of boards: members to add, and surfaces without boards; each speaks of what is there."""

from collections.abc import Iterator
from typing import Any

from firstcourse.geometry import bounds
from firstcourse.verify.structure import Document, Said, Surface
from firstcourse.verify.told import mm, said, told_of, untrue
from firstcourse.verify.verdict import Objection

_CODE = "VER-309"


def check_board_findings(plan: Document) -> Iterator[Objection]:
    """Object to members added and not told with their places, and to findings on boards that speak of nothing."""
    there = {surface.id for surface in plan.surfaces}
    there |= {board.id for surface in plan.surfaces for board in surface.boards}
    there |= {fill.id for surface in plan.surfaces for fill in surface.fills}
    for told in plan.findings:
        if told.code.startswith("BRD-") and told.place not in there:
            yield Objection(_CODE, told.place, f"{told.code} speaks of what is not there")
    for surface in plan.surfaces:
        yield from untrue(_CODE, told_of(surface, "BRD-101", plan.findings), _added(surface))
        slab = said("BRD-302", "note", surface.id, "read_heights", "carry_joints", "enter_framing")
        yield from untrue(
            _CODE, told_of(surface, "BRD-302", plan.findings), [slab] if surface.slab == "tiled" else []
        )
        none = surface.boarded and not surface.boards and surface.slab != "tiled"
        wanted = [said("BRD-301", "stop", surface.id, "check")] if none else []
        yield from untrue(_CODE, told_of(surface, "BRD-301", plan.findings), wanted)


def _added(surface: Surface) -> Iterator[Said]:
    """All members that are added, in their order: those that stand, then those that lie."""
    added = [(support.kind, bounds(support.outline)) for support in surface.supports if support.added]
    if not added:
        return
    stand = [((u0 + u1) // 2, v0, v1) for _, (u0, v0, u1, v1) in added if v1 - v0 >= u1 - u0]
    lie = [((v0 + v1) // 2, u0, u1) for _, (u0, v0, u1, v1) in added if v1 - v0 < u1 - u0]
    values: dict[str, Any] = {}
    for name, places in (("upright", stand), ("level", lie)):
        for part, what in enumerate(("at", "from", "to")):
            values[f"{name}_{what}"] = [mm(place[part]) for place in places]
    yield said(
        "BRD-101",
        "fix",
        surface.id,
        "add",
        rule="boards.bearing.min",
        count=len(added),
        kind={"word": added[0][0]},
        uprights=len(stand),
        levels=len(lie),
        **values,
    )
