"""Judged members as the plan keeps them: their sheets, with keys to their workings."""

from firstcourse.plan import LayerLine, SheetLine, StructureSheet, Surface, structure
from firstcourse.suitability import Check, JudgedMember, Layer, placed
from firstcourse.suitability.buildup import total_mass_kg_m2, total_mass_psf
from firstcourse.suitability.loads import AreaLoad, PartLoad
from firstcourse.workings import Working

_MM_PER_IN = 25.4
_PLACES = 6
"""Decimals of masses and lengths that are no whole ticks."""


def keyed_workings(surface_id: str, members: tuple[JudgedMember, ...]) -> dict[str, Working]:
    """Every line of the members' sheets under `suitability.<surface id>.<number>`, in order."""
    lines = [(member.where, line) for member in members for line in member.lines]
    return {_key(surface_id, number): placed(*line) for number, line in enumerate(lines, start=1)}


def structure_sheets(
    surface: Surface, members: tuple[JudgedMember, ...], remedies: str
) -> tuple[StructureSheet, ...]:
    """The sheets of what was judged on one surface.

    Args:
        surface: The surface.
        members: As judged, in the order of `keyed_workings`.
        remedies: Key of the working that ranks the remedies; empty where there is none.
    """
    sheets: list[StructureSheet] = []
    first = 1
    for member in members:
        layers = member.layers
        sheets.append(
            StructureSheet(
                surface=surface.id,
                where=member.where,
                kind=member.kind,
                facts=member.facts,
                layers=tuple(_layer(layer) for layer in layers),
                mass=_mass(total_mass_kg_m2(member.layers), total_mass_psf(member.layers))
                if member.layers
                else "",
                assumed=member.assumed,
                unjudged=member.unjudged,
                question=member.question,
                lines=tuple(
                    _line(line, _key(surface.id, number)) for number, line in enumerate(member.lines, start=first)
                ),
                remedies=remedies,
                areas=tuple(_area(area) for area in member.areas),
                joist_lines=member.joist_lines,
                joist_loads=tuple(_joist(one.joist, part) for one in member.joists for part in one.parts),
                other=tuple((name, round(psf, _PLACES)) for name, psf in member.other),
            )
        )
        first += len(member.lines)
    return tuple(sheets)


def _area(area: AreaLoad) -> structure.AreaLoad:
    return structure.AreaLoad(
        of=area.of,
        name=area.name,
        kind=area.kind.value,
        outline=area.outline,
        area_m2=round(area.area_m2, _PLACES),
        rows=tuple(structure.LoadRow(of=row.of, kg=round(row.kg, _PLACES)) for row in area.rows),
        psf=round(area.psf, _PLACES),
        instead=area.instead,
        assumed=area.assumed,
    )


def _joist(number: int, part: PartLoad) -> structure.JoistLoad:
    return structure.JoistLoad(
        joist=number,
        of=part.of,
        load_lb=round(part.load_lb, _PLACES),
        length_in=round(part.length_in, _PLACES),
        width_in=round(part.width_in, _PLACES),
        start_in=None if part.start_in is None else round(part.start_in, _PLACES),
    )


def _key(surface_id: str, number: int) -> str:
    return f"suitability.{surface_id}.{number}"


def _line(line: Check | Working, key: str) -> SheetLine:
    if isinstance(line, Working):
        return SheetLine(name=line.title, working=key, found=f"{line.result} {line.unit}".strip())
    return SheetLine(
        name=line.name,
        working=key,
        found=line.found_text(),
        limit=line.limit_text(),
        holds=line.holds,
        advised=line.advised,
    )


def _layer(layer: Layer) -> LayerLine:
    return LayerLine(
        name=layer.name,
        thickness=f"{layer.thickness_in:.3f} in ({layer.thickness_in * _MM_PER_IN:.1f} mm)",
        density=f"{layer.density_kg_m3:,.0f} kg/m³",
        mass=_mass(layer.mass_kg_m2, layer.mass_psf),
    )


def _mass(kg_m2: float, psf: float) -> str:
    return f"{kg_m2:.1f} kg/m² ({psf:.2f} psf)"
