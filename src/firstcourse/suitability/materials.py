"""Everything that is exposed, judged together: board, barriers, mortar, fasteners, tile, ground and moisture."""

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.exposure import (
    ExposedSurface,
    Zone,
    allowed,
    judge_barriers,
    judge_board,
    judge_material,
    words,
)
from firstcourse.suitability.moisture import judge_moisture

_CLASSES = ("impervious", "vitreous", "semi_vitreous", "non_vitreous", "porous")
"""From the densest; a practice whose standard ends earlier has no porous one."""
_WALKED_WET = (Zone.WET, Zone.STEAM)


def judge_exposure(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """What is wrong with the materials of one surface for its place; empty where nothing is.

    Raises:
        InputValueError: The rule book does not know a material named.
    """
    return (
        *judge_board(rules, surface),
        *judge_barriers(rules, surface),
        *(judge_material(rules, surface, "mortar", surface.mortar) if surface.mortar else ()),
        *(judge_material(rules, surface, "fastener", surface.fastener) if surface.fastener else ()),
        *_over(rules, surface),
        *_tile(rules, surface),
        *_friction(rules, surface),
        *judge_moisture(rules, surface),
    )


def tile_class(rules: RuleSet, absorption_percent: float) -> str:
    """The class of a tile by the water it takes up; empty where it takes up more than any class."""
    for name in _CLASSES:
        entry = rules.find(f"tile.absorption.{name}")
        if entry is not None and absorption_percent <= rules.number(entry.id):
            return name
    return ""


def _over(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    if not surface.over:
        return []
    entry = rules.entry(f"exposure.over.{surface.over}")
    return [
        entry.finding(
            code="SUI-510",
            severity=Severity.STOP,
            where=surface.where,
            message=f"Nothing is set onto {words(surface.over)}: {entry.value}.",
            measured=words(surface.over),
            remedy="Take it out down to sound panels or slab before boarding.",
        )
    ]


def _tile(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    if surface.absorption_percent is None:
        return []
    name = tile_class(rules, surface.absorption_percent)
    fit = allowed(rules, "tile", surface.zone)
    rule = f"exposure.tile.{name}" if name else "tile.absorption.non_vitreous"
    if surface.is_floor and surface.zone in _WALKED_WET:
        rule = "exposure.wet_floor_tile"
        fit = tuple(each for each in fit if each in rules.text(rule).split())
    found = []
    if name not in fit:
        found.append(
            rules.entry(rule).finding(
                code="SUI-513",
                severity=Severity.STOP,
                where=surface.where,
                message=f"{words(name).capitalize() if name else 'Very absorbent'} tile does not last on "
                f"{'a floor' if surface.is_floor else 'a surface'} in a {words(surface.zone)} zone.",
                measured=f"{surface.absorption_percent:g} % water absorption",
                limit=", ".join(f"{words(each)} ({_most(rules, each)})" for each in fit),
                remedy="Choose tile that takes up less water.",
            )
        )
    if name == "impervious" and surface.mortar and surface.mortar not in _bonding(rules):
        entry = rules.entry("exposure.impervious_mortars")
        found.append(
            entry.finding(
                code="SUI-514",
                severity=Severity.STOP,
                where=surface.where,
                message=f"{words(surface.mortar).capitalize()} mortar does not bond tile that takes up no water.",
                measured=words(surface.mortar),
                limit=", ".join(words(each) for each in _bonding(rules)),
                remedy=f"Use {' or '.join(words(each) for each in _bonding(rules))} mortar.",
            )
        )
    return found


def _bonding(rules: RuleSet) -> tuple[str, ...]:
    return tuple(rules.text("exposure.impervious_mortars").split())


def _most(rules: RuleSet, name: str) -> str:
    return f"at most {rules.number(f'tile.absorption.{name}'):g} %"


def _friction(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    entry = rules.find("tile.slip.dcof")
    friction = surface.wet_friction
    if entry is None or friction is None or not surface.is_floor or friction >= rules.number(entry.id):
        return []
    wet = surface.zone in _WALKED_WET
    return [
        entry.finding(
            code="SUI-515",
            severity=Severity.STOP if wet else Severity.FIX,
            where=surface.where,
            message="The tile is too slippery for a floor that is walked on wet.",
            measured=f"{friction:g}",
            limit=f"at least {rules.number(entry.id):g}",
            remedy="Choose tile with more grip; reaching the limit alone does not prove it fit for showers.",
        )
    ]
