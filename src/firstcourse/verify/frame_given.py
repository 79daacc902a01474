"""What was found of judged frames is what the job gives, and every frame that the job gives is judged."""

from collections.abc import Iterator
from dataclasses import fields
from itertools import pairwise
from typing import Any

from firstcourse.geometry import bounds
from firstcourse.rules import RuleSet
from firstcourse.units import INERTIA, LOAD, SHEET_STEEL, STIFFNESS, TICKS_PER_INCH, MeasureKind
from firstcourse.verify.fields import Node, ticks
from firstcourse.verify.formulas.derived import close
from firstcourse.verify.formulas.panels import thickness, usual_rating
from firstcourse.verify.formulas.parts import tile_given
from firstcourse.verify.frame_fields import CutFound, Found, Frame
from firstcourse.verify.structure import Document, Said, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-004"
_NOT_JUDGED, _TOO_LITTLE = ("SUI-901", "SUI-902"), "SUI-910"
_WANTS = frozenset({
    "wants_studs", "wants_stud_spacing", "wants_joists", "wants_joist_spacing", "wants_panels", "wants_tile",
    "wants_tiling",
})  # fmt: skip
"""What a frame is not judged without, as a finding names it."""
FRAMES_NEED = "floor.load.live"
"""A practice without this rule has none to judge frames by."""


def check_frame_given(plan: Document) -> Iterator[Objection]:
    """Object to a frame that is not as the job gives it, is judged twice, or is given and not judged."""
    frames = {frame.surface: frame for frame in plan.frames}
    if len(frames) != len(plan.frames):
        yield Objection("VER-911", "structures", "judge a surface twice")
    given = dict(_parts(plan))
    for ref in frames.keys() - given.keys():
        yield Objection(_CODE, ref, "is judged, and the job gives no frame there")
    surfaces = {surface.id: surface for surface in plan.surfaces}
    told = {at for said in plan.findings if _tells(said) for at in said.at}
    for ref, part in given.items():
        surface = surfaces.get(ref)
        if surface is None:
            continue
        if ref not in frames:
            if plan.rules.has(FRAMES_NEED) and ref not in told:
                yield Objection(_CODE, ref, "has a frame that the job gives, and is not judged")
            continue
        try:
            wanted = _wanted(plan, frames[ref], surface, part)
        except (LookupError, ValueError) as error:
            yield Objection(_CODE, ref, f"has a frame that cannot be read from the job: {error}")
            continue
        for one in fields(Found):
            mine, right = getattr(frames[ref].found, one.name), getattr(wanted, one.name)
            if not _same(mine, right):
                yield Objection(_CODE, ref, f"is judged with {one.name} {mine}, given is {right}")


def _tells(said: Said) -> bool:
    """Whether a finding says that a frame is not judged: by what is asked of it, or by what the job leaves out."""
    if said.code != _TOO_LITTLE:
        return said.code in _NOT_JUDGED
    wanted = said.values.get("wanted")
    return any(
        isinstance(one, dict) and one.get("word") in _WANTS for one in (wanted if isinstance(wanted, list) else ())
    )


def _parts(plan: Document) -> Iterator[tuple[str, Node]]:
    """Floors, walls and ceilings whose members the job gives; a floor that is all shower by its shower."""
    surfaces = {surface.id for surface in plan.surfaces}
    for room in plan.job.nodes("rooms", ()):
        name = room.text("name")
        for kind in ("floor", "ceiling"):
            part = room.part(kind)
            if "joists" in part.value:
                ref = f"{name}/{kind}"
                yield (ref if ref in surfaces else f"{ref}/shower"), part
        for wall in room.nodes("walls", ()):
            if "studs" in wall.value:
                yield f"{name}/wall/{wall.text('wall')}", wall


def _same(one: object, other: object) -> bool:
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(_same, one, other))
    if isinstance(one, CutFound) and isinstance(other, CutFound):
        return all(_same(getattr(one, each.name), getattr(other, each.name)) for each in fields(CutFound))
    if isinstance(one, float) and isinstance(other, float | int):
        return close(one, other)
    return one == other


def _wanted(plan: Document, frame: Frame, surface: Surface, part: Node) -> Found:
    framing = part.part("framing")
    if frame.kind == "wall":
        return _wall(surface, part.part("studs"), bays(surface, framing, plan.rules))
    joists, spacing = part.part("joists"), widest(framing)
    member: dict[str, Any] = {
        "span": _inches(joists, "span"),
        "spacing": spacing,
        "size": joists.text("size", ""),
        **(
            {}
            if "size" not in joists.value
            else {key: joists.text(key, "unknown") for key in ("species", "grade")}
        ),
        "each": _measure(joists, STIFFNESS, "stiffness", "ei_lb_in2"),
    }
    if frame.kind == "ceiling":
        return Found(**member, above=f"above_{joists.text('above', 'attic_storage')}")
    return _floor(plan, part, joists, member)


def _floor(plan: Document, part: Node, joists: Node, member: dict[str, Any]) -> Found:
    rules, panels, sistered = plan.rules, part.part("panels"), joists.text("sistered", "none")
    thick = _lengths(panels, "layers")
    layers = tuple(sold(rules, one) for one in thick)
    ratings = tuple(value for value, _ in panels.rows("ratings", ()))
    spans = tuple(length / TICKS_PER_INCH for length in _lengths(joists, "spans"))
    # Where a shower takes all of the floor, its tile is the floor's.
    _, tiled, stone = tile_given(plan, part)
    stone = stone if tiled else tile_given(plan, part.part("shower"))[2]
    return Found(
        **member,
        plies=2 if sistered == "full" else 1,
        sister=rules.number("remedy.sister_part.share") if sistered == "part" else None,
        run=spans,
        unbroken=joists.flag("continuous", False) and not spans,
        bearing=_inches(joists, "bearing") if "bearing" in joists.value else None,
        layers=layers,
        ratings=ratings or tuple(usual_rating(rules, layer) for layer in layers),
        entered=bool(ratings),
        glued=panels.flag("glued_and_screwed", False),
        panel=sum(thick) / TICKS_PER_INCH,
        use="living",
        finish="stone" if stone else "ceramic",
        points=tuple(
            (_measure(load, LOAD, "load", "load_lb") or 0.0, _inches(load, "at"))
            for load in joists.nodes("loads", ())
        ),
        cuts=tuple(
            CutFound(
                kind=cut.text("kind"),
                size=_inches(cut, "size"),
                place=_inches(cut, "at"),
                length=_inches(cut, "length") if "length" in cut.value else 0.0,
                edge=_inches(cut, "edge") if "edge" in cut.value else None,
                in_bottom=cut.flag("in_bottom", False),
            )
            for cut in joists.nodes("cuts", ())
        ),
    )


def sold(rules: RuleSet, thick: int) -> str:
    """A layer by the thickness that it counts as: the thickest that is sold and is no thicker."""
    names = []
    for rule in rules.ids("panel.rating."):
        *whole, top, bottom = rule.removeprefix("panel.rating.").split("_")
        names.append("-".join((*whole, f"{top}/{bottom}")))
    return max((name for name in names if thickness(name) * TICKS_PER_INCH <= thick), key=thickness)


def _wall(surface: Surface, studs: Node, spacing: float) -> Found:
    _, low, _, high = bounds(surface.extent or surface.outline)
    height = _inches(studs, "height") if "height" in studs.value else (high - low) / TICKS_PER_INCH
    if "steel" not in studs.value:
        return Found(span=height, spacing=spacing, **_lumber(studs))
    return Found(
        span=height,
        spacing=spacing,
        web=_inches(studs, "steel"),
        mils=_measure(studs, SHEET_STEEL, "thickness", "mils"),
        flange=_inches(studs, "flange") if "flange" in studs.value else None,
        inertia=_measure(studs, INERTIA, "inertia", "inertia_in4"),
    )


def _lumber(node: Node) -> dict[str, Any]:
    return {"size": node.text("size")} | {key: node.text(key, "unknown") for key in ("species", "grade")}


def widest(framing: Node) -> float:
    """Centre to centre of joists, of those found one by one the widest [in]."""
    if "spacing" in framing.value:
        return _inches(framing, "spacing")
    places = sorted(_ticks(member, "at") for member in framing.nodes("members", ()))
    return max(after - before for before, after in pairwise(places)) / TICKS_PER_INCH


def bays(surface: Surface, framing: Node, rules: RuleSet) -> float:
    """Centre to centre of studs, the widest bay that boards cross and no opening takes up whole [in]."""
    if "spacing" in framing.value:
        return _inches(framing, "spacing")
    usual = _ticks(framing, "width") if "width" in framing.value else rules.ticks("framing.stud_width")
    left, _, right, _ = bounds(surface.outline)
    holes = [bounds(opening.outline) for opening in surface.openings if opening.outline]
    studs = sorted(
        (_ticks(member, "at"), (_ticks(member, "width") if "width" in member.value else usual) // 2)
        for member in framing.nodes("members", ())
    )
    apart = []
    for (before, half), (after, other) in pairwise(studs):
        clear, end = before + half, after - other
        crossed = min(end, right) > max(clear, left)
        if crossed and not any(hole[0] <= clear and hole[2] >= end for hole in holes):
            apart.append(after - before)
    return max(apart) / TICKS_PER_INCH


def _measure(node: Node, kind: MeasureKind, name: str, older: str) -> float | None:
    """A measure in the unit of its kind, as written or under its older name; None where it is not given."""
    if name in node.value:
        return kind.read(node.text(name))
    return node.number(older) if older in node.value else None


def _inches(node: Node, key: str) -> float:
    return _ticks(node, key) / TICKS_PER_INCH


def _ticks(node: Node, key: str) -> int:
    return ticks(node.raw(key), f"{node.where}.{key}")


def _lengths(node: Node, key: str) -> list[int]:
    return [ticks(*row) for row in node.rows(key, ())]
