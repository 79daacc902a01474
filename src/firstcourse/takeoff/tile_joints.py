"""What fills the joints between tiles: grout, and in soft joints sealant with rod or tape behind it."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from shapely import LineString

from firstcourse.plan import Pack, Surface
from firstcourse.rules import RuleSet
from firstcourse.takeoff.items import BOND_BREAKER, GROUT, JOINT_SEALANT, rod_of
from firstcourse.takeoff.lines import Line, by_mass, line
from firstcourse.takeoff.tiled_parts import TiledPart, places
from firstcourse.tiles import joint_section
from firstcourse.units import TICKS_PER_MM, to_mm
from firstcourse.values import length, measure
from firstcourse.workings import Working


def grout(parts: Sequence[TiledPart], rules: RuleSet) -> Iterator[Line]:
    """Grout of all joints that are not left soft: exact by what is drawn, and what the handbook formula gives."""
    if not parts:
        return
    density = rules.number("tile.grout.density")
    litres = math.fsum(part.grout_litres for part in parts)
    formula = math.fsum(part.formula_litres for part in parts)
    yield by_mass(
        GROUT,
        litres * density,
        rules.kilograms("tile.grout.bag"),
        rules.number("tile.grout.waste"),
        Working(
            formula="quantities-grout",
            at=(GROUT,),
            inputs={
                **places(parts),
                "area": tuple(measure(part.field_m2, "m2") for part in parts),
                "faces": tuple(measure(part.tile_m2, "m2") for part in parts),
                "soft": tuple(measure(part.soft_m2, "m2") for part in parts),
                "deep": tuple(measure(part.depth_mm, "mm") for part in parts),
                "volume": measure(litres, "l"),
                "density": measure(density, "kg/l"),
                "handbook": measure(formula * density, "kg"),
            },
            result=measure(litres * density, "kg"),
            rule="tile.grout.density",
        ),
    )


def sealant(parts: Sequence[TiledPart], surfaces: Sequence[Surface], rules: RuleSet) -> Iterator[Line]:
    """Sealant of all soft joints by their section, and the backer rod or tape behind it."""
    deep: dict[str, int] = {}
    for part in parts:
        depth = part.bed.thickness + max(item.thickness for item in part.stock)
        deep[part.surface.id] = max(deep.get(part.surface.id, 0), depth)
    lengths: Counter[tuple[int, int, int]] = Counter()
    for surface in surfaces:
        if surface.id not in deep:
            continue
        for joint in surface.soft_joints:
            section = joint_section(joint.width, deep[surface.id], rules)
            lengths[section.width, section.depth, section.rod] += round(LineString(joint.line).length)
    if not lengths:
        return
    yield _sealant(lengths, rules)
    rods: Counter[int] = Counter()
    for (_, _, rod), along in lengths.items():
        rods[rod] += along
    for rod, along in sorted(rods.items()):
        yield _behind(rod, along, rules)


def _sealant(lengths: Mapping[tuple[int, int, int], int], rules: RuleSet) -> Line:
    """Sealant of joints by width, depth and rod; by each their length [ticks]."""
    ml = math.fsum(along * wide * deep for (wide, deep, _), along in lengths.items()) / (TICKS_PER_MM * 10) ** 3
    sections = sorted(lengths)
    rule = "tile.sealant.square_to"
    return line(
        JOINT_SEALANT,
        measure(ml, "ml"),
        Pack(kind="cartridge", size=rules.number("tile.sealant.cartridge"), unit="ml"),
        Working(
            formula="quantities-joint_sealant",
            at=(JOINT_SEALANT,),
            inputs={
                "wide": tuple(length(wide) for wide, _, _ in sections),
                "deep": tuple(length(deep) for _, deep, _ in sections),
                "rod": tuple(length(rod) for _, _, rod in sections),
                "on_rod": tuple(rod > 0 for _, _, rod in sections),
                "along": tuple(length(lengths[section]) for section in sections),
                "square_to": length(rules.ticks(rule)),
            },
            result=measure(ml, "ml"),
            rule=rule,
        ),
        share=rules.number("tile.sealant.waste"),
    )


def _behind(rod: int, along: int, rules: RuleSet) -> Line:
    """Backer rod of one diameter, or tape where there is no room for one [ticks]."""
    item = rod_of(rod) if rod else BOND_BREAKER
    return line(
        item,
        length(along),
        Pack(kind="coil", size=to_mm(rules.ticks("tile.rod.coil")), unit="mm"),
        Working(
            formula="quantities-backer_rod" if rod else "quantities-bond_breaker",
            at=(item,),
            inputs={"rod": length(rod), "over": measure(rules.number("tile.sealant.rod_over"))} if rod else {},
            result=length(along),
            rule="tile.sealant.rod_over",
        ),
        share=rules.number("tile.rod.waste"),
    )
