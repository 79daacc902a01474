"""What would make failing studs or a failing ceiling pass, each option through the same checks again."""

from collections.abc import Callable
from dataclasses import replace

from firstcourse.frames.ceilings import CeilingInput, check_ceiling
from firstcourse.frames.remedies import Remedy, computed_remedies
from firstcourse.frames.walls import Studs, check_studs
from firstcourse.rules import RuleSet

_STUD_SIZES = ("2x4", "2x6", "2x8")


def stud_remedies(rules: RuleSet, studs: Studs) -> tuple[Remedy, ...]:
    """What would make studs pass; empty where they already do."""
    return computed_remedies(rules, studs, _STUD_MEASURES, check_studs, _depth)


def ceiling_remedies(rules: RuleSet, ceiling: CeilingInput) -> tuple[Remedy, ...]:
    """What would make a ceiling's joists pass; empty where they already do."""
    return computed_remedies(rules, ceiling, _CEILING_MEASURES, check_ceiling, lambda _ceiling: 0.0)


def _depth(studs: Studs) -> float:
    if studs.wood is not None:
        return studs.wood.depth_in
    return 0.0 if studs.steel is None else studs.steel.depth_in


def _added_studs(rules: RuleSet, studs: Studs) -> Studs | None:
    return replace(studs, spacing_in=studs.spacing_in / 2)


def _deeper_studs(rules: RuleSet, studs: Studs) -> Studs | None:
    if studs.wood is not None:
        depths = {size: rules.number(f"lumber.depth.{size}") for size in _STUD_SIZES}
        size = next((size for size, depth in depths.items() if depth > studs.wood.depth_in), None)
        return None if size is None else replace(studs, wood=replace(studs.wood, size=size, depth_in=depths[size]))
    steel = studs.steel
    if steel is None or steel.second_moment_in4 is not None:
        return None
    depth = _next(rules, "wall.steel.depths", steel.depth_in)
    return None if depth is None else replace(studs, steel=replace(steel, depth_in=depth))


def _thicker_steel(rules: RuleSet, studs: Studs) -> Studs | None:
    steel = studs.steel
    if steel is None or steel.mils is None or steel.second_moment_in4 is not None:
        return None
    # The least that is allowed behind tile, or the next thicker one.
    least = rules.number("wall.steel.min")
    mils = least if steel.mils < least else _next(rules, "wall.steel.thicknesses", steel.mils)
    return None if mils is None else replace(studs, steel=replace(steel, mils=mils))


def _next(rules: RuleSet, listed: str, now: float) -> float | None:
    return next((each for each in map(float, rules.text(listed).split()) if each > now), None)


def _ceiling_sister(rules: RuleSet, ceiling: CeilingInput) -> CeilingInput | None:
    return replace(ceiling, plies=ceiling.plies * 2) if ceiling.size else None


def _ceiling_joists(rules: RuleSet, ceiling: CeilingInput) -> CeilingInput | None:
    return replace(ceiling, spacing_in=ceiling.spacing_in / 2)


def _ceiling_support(rules: RuleSet, ceiling: CeilingInput) -> CeilingInput | None:
    # Two simple halves are never better than an unbroken run in deflection, and alike in bending.
    return replace(ceiling, span_in=ceiling.span_in / 2)


_STUD_MEASURES: dict[str, Callable[[RuleSet, Studs], Studs | None]] = {
    "added_studs": _added_studs,
    "deeper_studs": _deeper_studs,
    "thicker_steel": _thicker_steel,
}
_CEILING_MEASURES: dict[str, Callable[[RuleSet, CeilingInput], CeilingInput | None]] = {
    "ceiling_sister": _ceiling_sister,
    "ceiling_joists": _ceiling_joists,
    "ceiling_support": _ceiling_support,
}
