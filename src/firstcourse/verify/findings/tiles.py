"""What must be said of tile as it is set: joints, courses, steps, mortar, contact, slip, edges that show."""

import math
from collections.abc import Iterator
from typing import Any

from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.verify.formulas.proving import key_of
from firstcourse.verify.formulas.tile_joints import (
    JOINT,
    OFFSET,
    asked_joints,
    kinds_on,
    measured,
    shift_laid,
    step_rule,
    usual_spread,
)
from firstcourse.verify.formulas.tile_quantities import shown_edges
from firstcourse.verify.layers import mortar_under
from firstcourse.verify.shopping_fields import TileStock
from firstcourse.verify.structure import Document, Said, Surface, TiledArea
from firstcourse.verify.told import at_least, at_most, given, mm, name, ref, said, word

CODES = frozenset({
    "TIL-101", "TIL-102", "TIL-103", "TIL-104", "TIL-105", "TIL-106", "TIL-107", "TIL-108", "TIL-129",
})  # fmt: skip
_LEADS = ("back", "top")
"""Faces of a niche, a bench and the first run of a kerb on which all of it is spoken of once."""
_COURSED = ("stacked", "running")
_HALF = 50.0
_ALIKE = 1e-4


def tile_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of the tile on each surface, each once."""
    found: list[Said] = []
    for surface in plan.surfaces:
        if surface.tiled and _speaks(surface, plan):
            for one in (*_of_joints(surface, plan), *_of_beds(surface, plan)):
                if one not in found:
                    found.append(one)
        if sum(shown_edges(surface)):
            found.append(_shown(surface, plan))
    yield from found
    yield from _upright(plan)


def _speaks(surface: Surface, plan: Document) -> bool:
    """Whether what is said of a surface's tile is said of it, and not once of all faces of its whole."""
    if not surface.built_later:
        return True
    whole, _, face = surface.id.rpartition("/")
    window = face == "sill" and not any(other.id == f"{whole}/back" for other in plan.surfaces)
    kerb = f"{surface.room}/floor/shower/kerb"
    later = whole.startswith(f"{kerb} ") and whole != f"{kerb} 1"
    return window or (face in _LEADS and not later)


def _of_joints(surface: Surface, plan: Document) -> Iterator[Said]:
    rules = plan.rules
    for tile, area in kinds_on(surface).items():
        item, own = plan.tile_stock.get(tile), measured(plan, tile)
        if item is None:
            continue
        rows = [row for _, row in asked_joints(surface, item, area, own, rules)]
        rule, least = max(rows, key=lambda row: row[1])
        place = f"{surface.id}/tile_stock/{tile}"
        if own.joint is not None and own.joint < least:
            wide = {"measured": mm(own.joint), "limit": at_least(least)}
            yield said("TIL-101", "fix", place, "closer_in_size", rule=rule, tile=name(tile), **wide)
        if own.joint is None and own.spread is None:
            factor = "tile.joint.spread_factor"
            yield said(
                "TIL-102",
                "note",
                f"tile_stock/{tile}",
                "measure",
                rule=factor,
                limit=given(rules.number(factor), "", "least"),
                tile=name(tile),
                spread=mm(rules.ticks(usual_spread(item))),
            )
        if area.pattern == "running":
            yield from _of_courses(place, item, area, plan)
            if own.warpage is not None:
                yield from _of_bow(place, item, area, own.warpage, plan)


def _of_courses(place: str, item: TileStock, area: TiledArea, plan: Document) -> Iterator[Said]:
    """Courses that are shifted by more than the rules allow of a long tile."""
    rule = "tile.offset.max"
    long = item.size[0] > plan.rules.ticks("tile.joint.long_side")
    most = plan.rules.number(rule) if long else _HALF
    surface, _, tile = place.partition("/tile_stock/")
    shift = plan.workings.get(key_of(OFFSET, surface, f"tile_stock/{tile}"))
    part, of = (shift.number("part"), shift.number("of")) if shift is not None else (None, None)
    # The pattern's steps tell the shift nearly; the share that was asked for is proved beside them.
    if not part or not of or abs(part / of - shift_laid(area)) > _ALIKE:
        part, of = shift_laid(area), 1.0
    off = min(part / of, 1 - part / of)
    if math.floor(100 * off) > most:
        yield said(
            "TIL-103",
            "fix",
            place,
            "third",
            rule=rule,
            measured=given(100 * off, "%"),
            limit=given(most, "%", "most"),
            tile=name(tile),
            offset=name(f"{part:.0f}/{of:.0f}"),
            long=mm(item.size[0]),
        )


def _of_bow(place: str, item: TileStock, area: TiledArea, warpage: int, plan: Document) -> Iterator[Said]:
    """A step that bowed tile makes where its courses are shifted, beyond the step that is allowed."""
    rules, (surface, _, tile) = plan.rules, place.partition("/tile_stock/")
    laid = plan.workings.get(key_of(JOINT, surface, f"tile_stock/{tile}"))
    joint = laid.comes_to if laid is not None else None
    rule = step_rule(item, round((joint or 0.0) * TICKS_PER_MM), rules)
    step = rules.ticks(rule) + warpage * rules.flag("tile.lippage.adds_warpage")
    shift = shift_laid(area)
    made = round(4 * warpage * shift * (1 - shift))
    if made > step:
        wide = {"measured": mm(made), "limit": at_most(step)}
        yield said("TIL-104", "fix", place, "shift_less", rule=rule, tile=name(tile), **wide)


def _of_beds(surface: Surface, plan: Document) -> Iterator[Said]:
    """The mortar under the longest tile of each pattern, its contact, and slip on a floor."""
    rules = plan.rules
    for area in surface.tiled:
        known = [tile for tile in area.tiles if tile in plan.tile_stock]
        if not known:
            continue
        item = plan.tile_stock[max(known, key=lambda tile: max(plan.tile_stock[tile].size))]
        under = mortar_under((item,), rules)
        entered = not area.trowel
        thick = (area.mortar or 0) if entered else under.combed + under.buttered
        most = "tile.bed.max_large" if under.size == "large" else "tile.bed.max_thin"
        thin = thick < rules.ticks("tile.bed.min")
        if thin or thick > rules.ticks(most):
            rule = "tile.bed.min" if thin else most
            yield said(
                "TIL-105",
                "fix",
                surface.id,
                "thicker" if thin else "thinner",
                rule=rule,
                measured=mm(thick),
                limit=(at_least if thin else at_most)(rules.ticks(rule)),
                thin=thin,
                entered=entered,
            )
        contact = "tile.contact.stone" if item.kind == "stone" else "tile.contact.wet"
        notch = f"tile.trowel.{under.size}"
        yield said(
            "TIL-106",
            "note",
            surface.id,
            "lift",
            rule=contact,
            limit=given(rules.number(contact), "%", "least"),
            width=mm(rules.ticks(f"{notch}.width")),
            depth=mm(rules.ticks(f"{notch}.depth")),
            shape=word(rules.text(f"{notch}.shape")),
            buttered=under.buttered > 0,
            back=mm(under.buttered),
            sample=int(rules.number("tile.contact.sample")),
        )
        yield from _of_slip(surface, item, plan)


def _of_slip(surface: Surface, item: TileStock, plan: Document) -> Iterator[Said]:
    scales = {"tile.slip.dcof": "friction", "tile.slip.pendulum": "pendulum"}
    rule = next((rule for rule in scales if plan.rules.has(rule)), None)
    if rule is None or surface.kind != "floor":
        return
    tile = next((one for one in plan.job.nodes("tiles", ()) if one.text("id") == item.id), None)
    told = None
    if tile is not None and scales[rule] == "friction" and tile.raw("wet_friction", None) is not None:
        told = tile.number("wet_friction")
    if told is None or told < plan.rules.number(rule):
        yield said(
            "TIL-108",
            "note",
            surface.id,
            "data_sheet",
            rule=rule,
            measured=None if told is None else given(told),
            limit=given(plan.rules.number(rule), "", "least"),
            tile=name(item.id),
            scale=word(scales[rule]),
        )


def _shown(surface: Surface, plan: Document) -> Said:
    """How long the edges are that show, and how high their trim must be."""
    high = 0
    for area in surface.tiled:
        items = tuple(plan.tile_stock[tile] for tile in area.tiles if tile in plan.tile_stock)
        if items and all(item.thickness for item in items):
            under = mortar_under(items, plan.rules)
            bed = area.mortar if area.mortar is not None and not area.trowel else under.combed + under.buttered
            high = max(high, bed + max(item.thickness for item in items))
    step = TICKS_PER_MM // 2 if plan.tape is Tape.MM else plan.tape.graduation
    length = mm(sum(shown_edges(surface)))
    return said("TIL-107", "note", surface.id, "trim", measured=length, high=mm(-(-high // step) * step))


def _upright(plan: Document) -> Iterator[Said]:
    """Tile that is entered higher than wide and laid in level courses, the job not saying that it stands."""
    for tile in plan.job.nodes("tiles", ()):
        wide, high = tile.size("size")
        plain = tile.raw("shape", "rectangle") == "rectangle" and tile.raw("upright", None) is None
        on = [surface.id for surface in plan.surfaces if _courses_of(surface, tile.text("id"))]
        if plain and high > wide and on:
            values: dict[str, Any] = {"surfaces": [ref(at) for at in on], "width": mm(wide), "height": mm(high)}
            yield said("TIL-129", "note", f"tile_stock/{tile.text('id')}", "say", **values)


def _courses_of(surface: Surface, tile: str) -> bool:
    if surface.part_of or not surface.tiled:
        return False
    fields = [area for area in surface.tiled if area.role == "field"]
    return any(area.pattern in _COURSED and not area.angle and area.tiles == (tile,) for area in fields[:1])
