"""Layers over each structure: how high and how heavy they are together, and whether their ground carries them."""

from collections.abc import Iterator

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import FieldError
from firstcourse.verify.formulas.parts import Part, boarded_m2, part_of, parts
from firstcourse.verify.formulas.proving import (
    Prove,
    column,
    holds,
    just,
    key_of,
    limited,
    only,
    rests_on,
)
from firstcourse.verify.shopping_fields import SheetStock, Working
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_HEIGHT, _MASS, _BACKING = "height-build_up", "height-mass", "height-backing"
_MM_PER_M = 1000


def _height(plan: Document, working: Working) -> Iterator[Objection]:
    layers = _layers(plan, working)
    yield from only(working, "layer", "thick")
    yield from just(working, "layer", [{"word": of} for of, _ in layers])
    yield from column(working, "thick", [thick for _, thick in layers], "mm")
    yield from holds(working, "result", sum(thick for _, thick in layers), "mm")
    yield from rests_on(working)
    yield from limited(working)


def _mass(plan: Document, working: Working) -> Iterator[Objection]:
    layers = _layers(plan, working)
    part = part_of(plan, working.at[0])
    if part is None:
        return
    densities = [density_of(plan, part, of) for of, _ in layers]
    masses = [thick / _MM_PER_M * density for (_, thick), density in zip(layers, densities, strict=True)]
    area = boarded_m2(part.surface)
    yield from only(working, "layer", "thick", "density", "mass", "area", "whole")
    yield from just(working, "layer", [{"word": of} for of, _ in layers])
    yield from column(working, "thick", [thick for _, thick in layers], "mm")
    yield from column(working, "density", densities, "kg/m3")
    yield from column(working, "mass", masses, "kg/m2")
    yield from holds(working, "area", area, "m2")
    yield from holds(working, "whole", sum(masses) * area, "kg")
    yield from holds(working, "result", sum(masses), "kg/m2")
    yield from rests_on(working)
    yield from limited(working)


def _backing(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    if part is None:
        return
    rule = working.at[1].removeprefix("rule/")
    tiling = sum(
        thick / _MM_PER_M * density_of(plan, part, of)
        for of, thick in _layers(plan, working)
        if of in ("mortar", "tile")
    )
    grout, most = plan.rules.number("mass.grout"), plan.rules.number(rule)
    yield from only(working, "backing", "tiling", "grout", "holds")
    yield from just(working, "backing", {"word": rule.removeprefix("wall.mass.")})
    yield from holds(working, "tiling", tiling, "kg/m2")
    yield from holds(working, "grout", grout, "kg/m2")
    yield from just(working, "holds", tiling + grout <= most)
    yield from holds(working, "result", tiling + grout, "kg/m2")
    yield from rests_on(working, rule)
    yield from limited(working, "most", most, "kg/m2")


def _layers(plan: Document, working: Working) -> list[tuple[str, float]]:
    """What lies on a surface, from below [mm]."""
    surface = next(one for one in plan.surfaces if one.id == working.at[0])
    return [(of, thick / TICKS_PER_MM) for of, thick in surface.layers]


def density_of(plan: Document, part: Part, of: str) -> float:
    """Density of one layer on a surface [kg/m³]."""
    if of in ("board_mortar", "heating", "mortar"):
        return plan.rules.number("bedding.mortar.density")
    if of == "mortar_bed":
        return plan.rules.number("mass.mortar_bed")
    if of == "tile":
        return plan.rules.number("mass.stone" if part.is_stone else "mass.tile")
    boards = boards_of(plan, part.surface)
    if not boards:
        raise FieldError(part.ref, "has a board among its layers, and none that it may be boarded with")
    return board_density(max(boards, key=lambda item: item.thickness), plan.rules)


def board_density(item: SheetStock, rules: RuleSet) -> float:
    """As the sheet has it; else as the book has it for its family, or for fibre cement [kg/m³]."""
    if item.density is not None:
        return item.density
    own = f"mass.board.{family_of(item)}"
    return rules.number(own if rules.has(own) else "boards.density")


def boards_of(plan: Document, surface: Surface) -> list[SheetStock]:
    """Sheets that a surface may be boarded with."""
    if surface.slab == "tiled":
        return []
    asked = set(surface.board_stock)
    for_others = {
        row.text("id") for row in plan.job.nodes("stock", ()) if surface.kind not in row.raw("for", [surface.kind])
    }
    sheets = plan.shopping.sheet_stock
    return [item for name, item in sheets.items() if name not in for_others and (not asked or name in asked)]


def family_of(item: SheetStock) -> str:
    """A sheet's kind as the rule book names families of boards."""
    return item.kind.lower().replace(" ", "_").replace("-", "_")


def expected(plan: Document) -> Iterator[str]:
    """Height and mass of what has a tile; off the floor what each board that may be there carries."""
    for part in parts(plan):
        if not part.is_tiled:
            continue
        yield key_of(_HEIGHT, part.ref)
        yield key_of(_MASS, part.ref)
        if part.surface.kind == "floor":
            continue
        for family in dict.fromkeys(family_of(item) for item in boards_of(plan, part.surface)):
            if plan.rules.has(f"wall.mass.{family}"):
                yield key_of(_BACKING, part.ref, f"rule/wall.mass.{family}")


FORMULAS: dict[str, Prove] = {_HEIGHT: _height, _MASS: _mass, _BACKING: _backing}
