"""Everything that is exposed, judged together: board, barriers, mortar, fasteners, tile, ground and moisture."""

from firstcourse.findings import Finding, Severity
from firstcourse.grounds.exposure import ExposedSurface, Zone, allowed, judge_barriers, judge_board, judge_material
from firstcourse.grounds.moisture import judge_moisture
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Value, Word, least, measure

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
    over, why = Word(word=surface.over), Name(name=str(entry.value))
    return [entry.found("SUI-510", Severity.STOP, surface.ref, remedies=("take_out",), over=over, why=why)]


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
        known: dict[str, Value] = {"class": Word(word=name)} if name else {}
        found.append(
            rules.entry(rule).found(
                "SUI-513",
                Severity.STOP,
                surface.ref,
                measured=measure(surface.absorption_percent, "%"),
                limit=None,
                remedies=("denser",),
                known=bool(name),
                floor=surface.is_floor,
                zone=Word(word=surface.zone.value),
                fit=tuple(Word(word=each) for each in fit),
                shares=tuple(measure(rules.number(f"tile.absorption.{each}"), "%") for each in fit),
                **known,
            )
        )
    bonding = tuple(rules.text("exposure.impervious_mortars").split())
    if name == "impervious" and surface.mortar and surface.mortar not in bonding:
        found.append(
            rules.entry("exposure.impervious_mortars").found(
                "SUI-514",
                Severity.STOP,
                surface.ref,
                remedies=("use_mortar",),
                mortar=Word(word=surface.mortar),
                bonding=tuple(Word(word=each) for each in bonding),
            )
        )
    return found


def _friction(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    entry = rules.find("tile.slip.dcof")
    friction = surface.wet_friction
    if entry is None or friction is None or not surface.is_floor or friction >= rules.number(entry.id):
        return []
    return [
        entry.found(
            "SUI-515",
            Severity.STOP if surface.zone in _WALKED_WET else Severity.FIX,
            surface.ref,
            measured=measure(friction),
            limit=least(measure(rules.number(entry.id))),
            remedies=("more_grip",),
        )
    ]
