"""Grout joints, the shift of courses, the step at joints, and the mortar under each kind of tile on a surface."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import ticks
from firstcourse.verify.formulas.proving import CODE, Prove, holds, just, key_of, limited, long, only, rests_on
from firstcourse.verify.layers import mortar_under
from firstcourse.verify.shopping_fields import TileStock, Working
from firstcourse.verify.structure import Document, Surface, TiledArea
from firstcourse.verify.verdict import Objection

JOINT, OFFSET, LIPPAGE, MORTAR = "tiles-joint", "tiles-offset", "tiles-lippage", "tiles-mortar"
_IN_OFFSET = ("running", "herringbone", "double_herringbone", "basket_weave", "repeat")
_LEVEL = ("floor", "counter")
_M2 = (1000 * TICKS_PER_MM) ** 2


def expected(plan: Document) -> Iterator[str]:
    """One of each for every kind of tile on every surface; of the mortar for the longest tile of each pattern."""
    for surface in plan.surfaces:
        for name, area in kinds_on(surface).items():
            if name in plan.tile_stock:
                at = (surface.id, f"tile_stock/{name}")
                yield key_of(JOINT, *at)
                yield key_of(LIPPAGE, *at)
                if area.pattern == "running":
                    yield key_of(OFFSET, *at)
        for name in _longest(surface, plan):
            yield key_of(MORTAR, surface.id, f"tile_stock/{name}")


def kinds_on(surface: Surface) -> dict[str, TiledArea]:
    """Every kind of tile on a surface, and what it is laid in: its field, else the first band or border."""
    found: dict[str, TiledArea] = {}
    for area in sorted(surface.tiled, key=lambda area: area.role != "field"):
        for name in area.tiles:
            found.setdefault(name, area)
    return found


def _longest(surface: Surface, plan: Document) -> dict[str, TiledArea]:
    """The longest tile of each pattern, which sets its bed, and the first area that it does so for."""
    found: dict[str, TiledArea] = {}
    for area in surface.tiled:
        names = [name for name in area.tiles if name in plan.tile_stock]
        if names:
            found.setdefault(max(names, key=lambda name: max(plan.tile_stock[name].size)), area)
    return found


def _about(plan: Document, working: Working) -> tuple[Surface, TileStock, TiledArea]:
    """What a working is about; it is there, as the plan asks for the working."""
    place, tile = working.at
    surface = next(one for one in plan.surfaces if one.id == place)
    name = tile.removeprefix("tile_stock/")
    return surface, plan.tile_stock[name], kinds_on(surface)[name]


def _refs(*rules: str) -> list[dict[str, str]]:
    return [{"ref": f"rule/{rule}"} for rule in dict.fromkeys(rules)]


def _ticks(working: Working, name: str) -> int:
    """A length of a working [ticks]; 0 where it has none."""
    found = working.comes_to if name == "result" else working.number(name)
    return 0 if found is None else round(found * TICKS_PER_MM)


@dataclass(frozen=True, slots=True)
class Measured:
    """What the job gives of a tile beside its size; None where it does not [ticks]."""

    spread: int | None = None
    warpage: int | None = None
    joint: int | None = None


def measured(plan: Document, name: str) -> Measured:
    """What the job gives of a tile beside its size."""
    tile = next((one for one in plan.job.nodes("tiles", ()) if one.text("id") == name), None)
    if tile is None:
        return Measured()
    keys = ("size_spread", "warpage", "joint")
    found = [None if tile.raw(key, None) is None else ticks(tile.raw(key), f"{tile.where}.{key}") for key in keys]
    return Measured(*found)


def _joint(plan: Document, working: Working) -> Iterator[Objection]:
    surface, item, area = _about(plan, working)
    rules, given = plan.rules, measured(plan, item.id)
    rows = dict(asked_joints(surface, item, area, given, rules))
    spreads = any(name.startswith("by_") for name in rows)
    names = ["on", *rows, "own", "least", "rules", *(("spread", "factor") if spreads else ())]
    yield from only(working, *names, *(("warpage",) if given.warpage is not None else ()))
    yield from just(working, "on", {"word": surface.kind})
    for name, (_, width) in rows.items():
        yield from long(working, name, width)
    if spreads:
        usual = rules.ticks(usual_spread(item))
        yield from long(working, "spread", usual if given.spread is None else given.spread)
        yield from holds(working, "factor", rules.number("tile.joint.spread_factor"), "")
    if given.warpage is not None:
        yield from long(working, "warpage", given.warpage)
    least = max(width for _, width in rows.values())
    yield from long(working, "least", least)
    yield from just(working, "rules", _refs(*(rule for rule, _ in rows.values())))
    half = plan.tape.graduation // 2
    if given.joint is None:
        yield from just(working, "own", {"word": "none"})
    else:
        yield from long(working, "own", given.joint)
    wanted = -(-least // half) * half if given.joint is None else given.joint
    yield from long(working, "result", max(wanted, least))
    yield from rests_on(working)
    yield from limited(working)
    # Beside other tile the widest joint of them all is laid.
    widest = max(_ticks(plan.workings[key], "result") for key in _joints_of(surface, plan))
    if widest != area.joint:
        yield Objection(CODE, working.key, f"leads to a joint of {widest / TICKS_PER_MM} mm; another is laid")


def _joints_of(surface: Surface, plan: Document) -> list[str]:
    keys = [key_of(JOINT, surface.id, f"tile_stock/{name}") for name in kinds_on(surface)]
    return [key for key in keys if key in plan.workings]


def asked_joints(
    surface: Surface, item: TileStock, area: TiledArea, given: Measured, rules: RuleSet
) -> Iterator[tuple[str, tuple[str, int]]]:
    """What each rule asks, in the order of the working: the input's name, the rule and the joint [ticks]."""
    level = surface.kind in _LEVEL
    least = f"tile.joint.min_{'floor' if level else 'wall'}"
    yield "narrowest", (least, rules.ticks(least))
    stone = "tile.joint.min_wall_stone"
    if not level and item.kind == "stone" and rules.has(stone):
        yield "stone", (stone, rules.ticks(stone))
    if not level and rules.has("tile.joint.small_area"):
        small = item.size[0] * item.size[1] / _M2 < rules.number("tile.joint.small_area")
        small = small and max(item.size) <= rules.ticks("tile.joint.small_side")
        name = "small" if small else "large"
        yield name, (f"tile.joint.min_wall_{name}", rules.ticks(f"tile.joint.min_wall_{name}"))
    factor = rules.number("tile.joint.spread_factor")
    if given.spread is not None:
        yield "by_spread", ("tile.joint.spread_factor", math.ceil(factor * given.spread))
    elif given.joint is None:
        usual = usual_spread(item)
        yield "by_usual_spread", (usual, math.ceil(factor * rules.ticks(usual)))
    if area.pattern in _IN_OFFSET and max(item.size) > rules.ticks("tile.joint.long_side"):
        rule = f"tile.joint.offset_{item.edges}"
        yield "in_offset", (rule, rules.ticks(rule) + (given.warpage or 0))


def usual_spread(item: TileStock) -> str:
    """The rule that says how much a tile that was not measured may vary in size."""
    close = item.edges == "rectified" or item.mounted
    return f"tile.joint.spread_{'close' if close else 'pressed'}"


def _offset(plan: Document, working: Working) -> Iterator[Objection]:
    _, item, area = _about(plan, working)
    rules = plan.rules
    yield from only(working, "part", "of", "side", "long")
    part, of = working.number("part"), working.number("of")
    laid = shift_laid(area)
    if not part or not of or not 0 < part < of or abs(part / of - laid) > 1e-4:
        yield Objection(CODE, working.key, f"shifts courses by {part}/{of} of a tile, which are {laid:.4f} of one")
        return
    yield from just(working, "part", int(part))
    yield from just(working, "of", int(of))
    yield from long(working, "side", item.size[0])
    limited_over = rules.ticks("tile.joint.long_side")
    yield from long(working, "long", limited_over)
    yield from holds(working, "result", 100 * min(part / of, 1 - part / of), "%")
    yield from rests_on(working, "tile.offset.max")
    if item.size[0] > limited_over:
        yield from limited(working, "most", rules.number("tile.offset.max"), "%")
    else:
        yield from limited(working)


def shift_laid(area: TiledArea) -> float:
    """How far a course lies shifted over the last, as a share of the tile, by the steps of its pattern."""
    if len(area.steps) != 2:
        return 0.0
    (ax, ay), (bx, by) = area.steps
    return (ax * bx + ay * by) / (ax * ax + ay * ay)


def _lippage(plan: Document, working: Working) -> Iterator[Objection]:
    _, item, area = _about(plan, working)
    rules, joint = plan.rules, plan.workings.get(key_of(JOINT, *working.at))
    if joint is None:
        return
    used, adds = step_rule(item, _ticks(joint, "result"), rules), rules.flag("tile.lippage.adds_warpage")
    warpage = measured(plan, item.id).warpage
    bowed = warpage is not None and area.pattern == "running"
    names = (["warpage"] if warpage is not None else []) + (["bow"] if bowed else [])
    yield from only(working, "joint", "by_joint", "added", *names, "rules")
    yield from just(working, "joint", joint.found)
    yield from long(working, "by_joint", rules.ticks(used))
    yield from just(working, "added", adds)
    if warpage is not None:
        yield from long(working, "warpage", warpage)
    if warpage is not None and bowed:
        shift = shift_laid(area)
        made = 4 * warpage * shift * (1 - shift)
        if abs(_ticks(working, "bow") - made) > 1:
            yield Objection(CODE, working.key, f"says that the bow makes another step than {made:.0f} ticks")
    yield from long(working, "result", rules.ticks(used) + (warpage or 0) * adds)
    yield from just(working, "rules", _refs(used, "tile.lippage.adds_warpage"))
    yield from rests_on(working, used)
    yield from limited(working)


def step_rule(item: TileStock, joint: int, rules: RuleSet) -> str:
    """The rule that allows least of a step at a joint."""
    if rules.has("tile.lippage.narrow_to"):
        narrow = joint <= rules.ticks("tile.lippage.narrow_to")
    else:
        narrow = joint < rules.ticks("tile.lippage.wide_from")
    by_joint = f"tile.lippage.{'narrow' if narrow else 'wide'}"
    own = f"tile.lippage.{'stone' if item.kind == 'stone' else 'ground'}"
    if (item.kind == "stone" or item.edges == "rectified") and rules.has(own):
        return min(own, by_joint, key=rules.ticks)
    return by_joint


def _mortar(plan: Document, working: Working) -> Iterator[Objection]:
    surface, item, _ = _about(plan, working)
    area = _longest(surface, plan)[item.id]
    rules, found = plan.rules, mortar_under((item,), plan.rules)
    entered = not area.trowel
    yield from only(
        working, "entered", "width", "depth", "shape", "land", "angle", "combed", "back", "contact", "notch"
    )
    yield from just(working, "entered", entered)
    for part in ("width", "depth", "land"):
        yield from long(working, part, rules.ticks(f"tile.trowel.{found.size}.{part}"))
    yield from just(working, "shape", {"word": rules.text(f"tile.trowel.{found.size}.shape")})
    yield from holds(working, "angle", rules.number("tile.trowel.angle"), "deg")
    yield from long(working, "combed", found.combed)
    if found.buttered:
        yield from long(working, "back", found.buttered)
    else:
        yield from just(working, "back", {"word": "none"})
    contact = "tile.contact.stone" if item.kind == "stone" else "tile.contact.wet"
    yield from holds(working, "contact", rules.number(contact), "%")
    yield from just(working, "notch", _refs(f"tile.trowel.{found.size}.width")[0])
    yield from long(working, "result", (area.mortar or 0) if entered else found.combed + found.buttered)
    yield from rests_on(working, contact)
    yield from limited(working)


FORMULAS: dict[str, Prove] = {JOINT: _joint, OFFSET: _offset, LIPPAGE: _lippage, MORTAR: _mortar}
