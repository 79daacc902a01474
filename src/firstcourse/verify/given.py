"""What the plan was given: its seal is whole, and what was copied from it stands in the plan as given."""

import hashlib
import json
from collections.abc import Iterator, Mapping
from typing import Any

from shapely import Polygon, make_valid

from firstcourse.geometry import rectangle
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node, point, ticks
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_SEAL, _STAMP, _COPY = "VER-002", "VER-003", "VER-004"
_STAMPED: Mapping[str, Any] = {
    "name": None, "practice": "us", "date": None, "tape": "inch", "tongue": "en", "currency": "",
}  # fmt: skip
"""What the stamp repeats of the job, with what the job means where it says nothing."""
_SHEET: Mapping[str, Any] = {
    "size": None, "thickness": None, "kind": "fibre_cement", "price": None, "density_kg_m3": None,
}  # fmt: skip
_TILE: Mapping[str, Any] = {
    "size": None, "thickness": None, "kind": "ceramic", "shape": "rectangle", "edges": "pressed",
    "directional": False, "sheet": None, "per_box": None, "price": None, "wet_friction": None,
}  # fmt: skip


def check_given(plan: Document) -> Iterator[Objection]:
    """Object to a broken seal, and to a stamp, sheets, tiles, surfaces or openings that the job does not give."""
    given = plan.given
    values = {"job": given.raw("job"), "rules": given.raw("rules")}
    text = json.dumps(values, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    if given.text("digest") != hashlib.sha256(text.encode()).hexdigest():
        yield Objection(_SEAL, "given", "is not what was sealed: something in it was changed")
    yield from _stamp(plan)
    yield from _copied(plan.source.nodes("stock"), plan.job.nodes("stock", ()), _SHEET, "stock")
    laid = {name for surface in plan.surfaces for area in surface.tiled for name in area.tiles}
    chosen = [tile for tile in plan.job.nodes("tiles", ()) if tile.text("id") in laid]
    yield from _copied(plan.source.nodes("tile_stock", ()), chosen, _TILE, "tile_stock")
    yield from _surfaces(plan)


def _stamp(plan: Document) -> Iterator[Objection]:
    stamp, job = plan.source.part("job"), plan.job
    for name, usual in _STAMPED.items():
        if stamp.raw(name, usual) != job.raw(name, usual):
            yield Objection(
                _STAMP, f"job.{name}", f"is {stamp.raw(name, usual)}, given was {job.raw(name, usual)}"
            )
    told = {name: value for name, value in stamp.part("site").value.items() if value}
    if told != {name: str(value) for name, value in job.part("site").value.items()}:
        yield Objection(_STAMP, "job.site", "is not the site that the job gives")
    said = [
        (row.raw("rule"), row.raw("value"), row.raw("unit", ""), row.raw("reason"))
        for row in stamp.nodes("overrides", ())
    ]
    entries = map(plan.rules.entry, plan.rules.ids())
    changed = [(entry.id, entry.value, entry.unit, entry.reason) for entry in entries if entry.reason]
    if sorted(map(repr, said)) != sorted(map(repr, changed)):
        yield Objection(_STAMP, "job.overrides", "are not the rules that the job sets otherwise")


def _copied(rows: list[Node], given: list[Node], fields: Mapping[str, Any], what: str) -> Iterator[Objection]:
    """Sheets and tiles of the plan are those of the job; where it names none, the rule book's."""
    have = {row.text("id"): row for row in rows}
    wanted = {row.text("id"): row for row in given}
    if wanted and (have.keys() != wanted.keys() or len(rows) != len(have)):
        yield Objection(_COPY, what, f"lists {', '.join(have)}, not what the job gives")
    for name in wanted.keys() & have.keys():
        for key, usual in fields.items():
            mine, asked = have[name].raw(key, usual), wanted[name].raw(key, usual)
            # A hexagon across its corners follows from what it is across flats.
            if key == "size" and wanted[name].raw("shape", "") == "hexagon":
                mine, asked = have[name].size(key)[0], wanted[name].size(key)[0]
            if mine != asked:
                yield Objection(_COPY, f"{what}/{name}", f"has another {key} than the job gives")


def _surfaces(plan: Document) -> Iterator[Objection]:
    """Every surface that the job gives is there with its openings, and no room that it does not give."""
    found = {surface.id: surface for surface in plan.surfaces}
    rooms = {room.text("name"): room for room in plan.job.nodes("rooms", ())}
    for surface in plan.surfaces:
        if surface.room not in rooms:
            yield Objection(_COPY, surface.id, "is in a room that the job does not have")
    for name, room in rooms.items():
        parts = {f"{name}/wall/{wall.text('wall')}": wall for wall in room.nodes("walls", ())}
        parts |= {f"{name}/{kind}": room.part(kind) for kind in ("floor", "ceiling") if kind in room.value}
        for ref, part in parts.items():
            # A floor that is all shower is that shower's alone.
            if ref in found:
                yield from _openings(found[ref], part)
            elif f"{ref}/shower" not in found:
                yield Objection(_COPY, ref, "is given by the job and is no surface of the plan")


def _openings(surface: Surface, given: Node) -> Iterator[Objection]:
    have = {opening.id: opening.kind for opening in surface.openings}
    for opening in given.nodes("openings", ()):
        name, kind = opening.text("id"), opening.text("kind")
        if name not in have and surface.kind == "wall" and _beside_boards(opening, surface):
            continue
        if have.get(name) != kind:
            yield Objection(
                _COPY, f"{surface.id}/opening/{name}", f"is {have.get(name, 'missing')}, given as {kind}"
            )


def _beside_boards(opening: Node, wall: Surface) -> bool:
    """Whether an opening of a wall lies where nothing is boarded: below, above or beside the boards."""
    if opening.raw("points", None):
        ring = [point(value, where) for value, where in opening.rows("points")]
    else:
        left, bottom = (ticks(opening.raw(key), f"{opening.where}.{key}") for key in ("left", "bottom"))
        if opening.raw("diameter", None) is not None:
            half = opening.length("diameter") // 2
            box = left - half, bottom - half, left + half, bottom + half
        else:
            box = left, bottom, left + opening.length("width"), bottom + opening.length("height")
        ring = [*rectangle(*box)]
    return bool(make_valid(Polygon(ring)).intersection(Polygon(wall.outline)).area < TICKS_PER_MM**2)
