"""Judged members as the plan keeps them: their sheets, with keys to their workings."""

from collections.abc import Sequence

from firstcourse.frames.checks import Check
from firstcourse.frames.data_sheets import JudgedMember, amount
from firstcourse.frames.loads import AreaLoad, PartLoad, layer_code
from firstcourse.frames.remedies import Remedy
from firstcourse.layers import Layer, total_mass_kg_m2
from firstcourse.plan import LayerLine, SheetLine, StructureSheet, structure
from firstcourse.values import Value, Word, kept, length_in, measure
from firstcourse.workings import Working


def structure_sheet(member: JudgedMember, remedies: Sequence[Working]) -> StructureSheet:
    """The sheet of what was judged.

    Args:
        member: As judged.
        remedies: Workings of its remedies, best first.
    """
    layers = member.layers
    return StructureSheet(
        surface=member.ref,
        kind=member.kind,
        facts=member.facts,
        layers=tuple(_layer(layer) for layer in layers),
        mass=measure(total_mass_kg_m2(layers), "kg/m2") if layers else None,
        assumed=member.assumed,
        unjudged=member.unjudged,
        lines=tuple(_line(line, working) for line, working in zip(member.lines, member.workings, strict=True)),
        remedies=tuple(working.id for working in remedies),
        areas=tuple(_area(area) for area in member.areas),
        joist_lines=member.joist_lines,
        joist_loads=tuple(_joist(one.joist, part) for one in member.joists for part in one.parts),
        other=tuple((of, kept(psf)) for of, psf in member.other),
    )


def remedy_workings(ref: str, options: Sequence[Remedy], formula: str = "frames-remedy") -> tuple[Working, ...]:
    """What each option costs in height, material and labour, and what it leaves failing; the best first.

    Args:
        ref: Reference to the floor, wall or ceiling.
        options: As ranked.
        formula: Whose words they have: of what mends a frame, or an uneven surface (`ground-remedy`).
    """
    return tuple(
        Working(
            formula=formula,
            at=(ref, f"option/{number}"),
            inputs={
                "measures": tuple(Word(word=name) for name in option.names),
                "height": length_in(option.height_in),
                "material": measure(option.material),
                "labour": measure(option.labour_h),
                **option.values,
                **_failing(option),
            },
            result=Word(word="passes" if option.passes else "fails"),
        )
        for number, option in enumerate(options, start=1)
    )


def _failing(option: Remedy) -> dict[str, Value]:
    return {} if option.passes else {"failing": tuple(Word(word=name) for name in option.still_failing)}


def _area(area: AreaLoad) -> structure.AreaLoad:
    return structure.AreaLoad(
        of=area.of,
        kind=area.kind.value,
        outline=area.outline,
        area_m2=kept(area.area_m2),
        rows=tuple(
            structure.LoadRow(
                of=row.of,
                kg=kept(row.kg),
                litres=None if row.litres is None else kept(row.litres),
                density_kg_m3=row.density_kg_m3,
            )
            for row in area.rows
        ),
        psf=kept(area.psf),
        instead=area.instead,
        assumed=area.assumed,
    )


def _joist(number: int, part: PartLoad) -> structure.JoistLoad:
    return structure.JoistLoad(
        joist=number,
        of=part.of,
        load_lb=kept(part.load_lb),
        length_in=kept(part.length_in),
        width_in=kept(part.width_in),
        start_in=None if part.start_in is None else kept(part.start_in),
    )


def _line(line: Check | Working, working: Working) -> SheetLine:
    if isinstance(line, Working):
        return SheetLine(working=working.id, found=amount(working))
    return SheetLine(
        name=line.name,
        working=working.id,
        found=amount(working),
        limit=working.limit,
        holds=line.holds,
        advised=line.advised,
    )


def _layer(layer: Layer) -> LayerLine:
    return LayerLine(
        of=layer_code(layer),
        thickness=length_in(layer.thickness_in),
        density=measure(layer.density_kg_m3, "kg/m3"),
        mass=measure(layer.mass_kg_m2, "kg/m2"),
    )
