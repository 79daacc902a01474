"""What fills the joints between tiles: grout, and in soft joints sealant with rod or tape behind it."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from shapely import LineString

from firstcourse.bedding import length_text, mass_text, small_text
from firstcourse.plan import Quantity, Surface
from firstcourse.quantities.items import BOND_BREAKER, GROUT, JOINT_SEALANT, rod_of
from firstcourse.quantities.lines import by_mass, line, square_text
from firstcourse.quantities.tiled_parts import TiledPart
from firstcourse.rules import RuleSet
from firstcourse.tiling.movement import joint_section
from firstcourse.tiling.words import fine_text
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, ticks_from_mm
from firstcourse.workings import Working

_TICKS_PER_M = TICKS_PER_MM * 1000


def grout(parts: Sequence[TiledPart], rules: RuleSet, tape: Tape) -> Iterator[tuple[Quantity, Working]]:
    """Grout of all joints that are not left soft: exact by what is drawn, and what the handbook formula gives."""
    if not parts:
        return
    density = rules.number("tile.grout.density")
    litres = math.fsum(part.grout_litres for part in parts)
    formula = math.fsum(part.formula_litres for part in parts)
    text = mass_text(litres * density, tape)
    yield by_mass(
        GROUT,
        litres * density,
        rules.kilograms("tile.grout.bag"),
        rules.number("tile.grout.waste"),
        tape,
        Working(
            title="Grout by the joints that are drawn",
            formula="(area - tile faces - soft joints) x tile thickness x density",
            values={
                **{f"{part.surface.id}, {part.stock[0].id}": _grout_text(part, tape) for part in parts},
                "volume": f"{litres:.3f} litres",
                "density": f"{density:g} kg/l",
                "handbook formula": mass_text(formula * density, tape),
            },
            result=text.split()[0],
            unit=text.split()[1],
            source=f"drawings; density: {rules.entry('tile.grout.density').cited}",
            argument=(
                "The handbook formula is (A + B) / (A x B) x joint x depth x density x area; it counts each "
                "crossing of joints twice, so it comes out a little high, most of all for mosaic.",
            ),
        ),
    )


def _grout_text(part: TiledPart, tape: Tape) -> str:
    areas = [square_text(area, tape) for area in (part.field_m2, part.tile_m2, part.soft_m2)]
    return f"({' - '.join(areas)}) x {small_text(ticks_from_mm(part.depth_mm), tape)}"


def sealant(
    parts: Sequence[TiledPart], surfaces: Sequence[Surface], rules: RuleSet, tape: Tape
) -> Iterator[tuple[Quantity, Working]]:
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
    volume = math.fsum(length * w * d for (w, d, _), length in lengths.items()) / (TICKS_PER_MM * 10) ** 3
    cartridge, rule = rules.number("tile.sealant.cartridge"), rules.entry("tile.sealant.square_to")
    yield line(
        JOINT_SEALANT,
        round(volume, 1),
        "ml",
        kind="cartridge",
        share=rules.number("tile.sealant.waste"),
        pack=cartridge,
        pack_name=f"cartridge of {cartridge:g} ml",
        spare="lost in nozzle and tooling",
        base=Working(
            title="Sealant in soft joints",
            formula="sum of length x width x depth",
            values={
                f"{fine_text(w, tape)} wide, {fine_text(d, tape)} deep"
                + (f", on rod {fine_text(rod, tape)}" if rod else ", on tape"): length_text(length, tape)
                for (w, d, rod), length in sorted(lengths.items())
            },
            result=f"{volume:.1f}",
            unit="ml",
            source=rule.cited,
            argument=(
                f"As deep as wide, above {fine_text(rules.ticks(rule.id), tape)} half as deep; where no rod fits "
                "behind it, on tape.",
            ),
        ),
    )
    rods: Counter[int] = Counter()
    for (_, _, rod), length in lengths.items():
        rods[rod] += length
    unit, per_unit = ("m", _TICKS_PER_M) if tape is Tape.MM else ("ft", TICKS_PER_FOOT)
    coil = rules.ticks("tile.rod.coil") / per_unit
    for rod, length in sorted(rods.items()):
        yield line(
            rod_of(rod) if rod else BOND_BREAKER,
            round(length / per_unit, 3),
            unit,
            kind="coil",
            share=rules.number("tile.rod.waste"),
            pack=coil,
            pack_name=f"coil of {coil:g} {unit}",
            spare="lost at ends",
            base=Working(
                title=f"Backer rod {fine_text(rod, tape)}"
                if rod
                else "Bond-breaker tape at the bottom of soft joints",
                formula="length of soft joints with room for it"
                if rod
                else "length of soft joints too shallow for rod",
                values={"diameter over width": f"{rules.number('tile.sealant.rod_over'):g}"} if rod else {},
                result=length_text(length, tape).split()[0],
                unit=unit,
                source=rules.entry("tile.sealant.rod_over").source,
            ),
        )
