"""Joists over a tiled ceiling: an attic or a floor above, the boards and tile below."""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.frames.checks import Check, as_found
from firstcourse.frames.joist_checks import check_joist
from firstcourse.frames.joists import CODE_LIMIT, TOTAL_LIMIT, Joist
from firstcourse.frames.loads import Summed
from firstcourse.frames.lumber import UNKNOWN, Lumber, lumber
from firstcourse.layers import Layer
from firstcourse.rules import RuleSet
from firstcourse.workings import Working

BRITTLE_LIMIT = "ceiling.deflection.live_brittle"


class Above(StrEnum):
    """What lies above a ceiling, which sets its loads."""

    ATTIC = "attic"
    STORAGE = "attic_storage"
    FLOOR = "floor"


_LIVE = {
    Above.ATTIC: "ceiling.load.live_attic",
    Above.STORAGE: "ceiling.load.live_storage",
    Above.FLOOR: "floor.load.live",
}
_DEAD = {
    Above.ATTIC: "ceiling.load.dead_attic",
    Above.STORAGE: "ceiling.load.dead_storage",
    Above.FLOOR: "ceiling.load.dead_floor",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CeilingInput:
    """A ceiling as found and as it is to be built.

    Attributes:
        ref: Reference to the ceiling.
        span_in: Longest clear span of the joists [in].
        spacing_in: Joists centre to centre [in].
        layers: Boards, bond coat and tile that hang below.
        above: What lies above.
        size, species, grade: Of sawn joists.
        stiffness: EI of engineered or steel joists, from their maker [lb·in²]; then no size.
        plies: How many members side by side.
    """

    ref: str
    span_in: float
    spacing_in: float
    layers: tuple[Layer, ...]
    above: Above = Above.STORAGE
    size: str | None = None
    species: str = UNKNOWN
    grade: str = UNKNOWN
    stiffness: float | None = None
    plies: int = 1

    def __post_init__(self) -> None:
        if (self.size is None) == (self.stiffness is None):
            raise InputValueError(f"{self.ref}: give either the joists' size or their EI")


def ceiling_lumber(rules: RuleSet, ceiling: CeilingInput) -> Lumber | None:
    """Design values of the ceiling's sawn joists; None for engineered ones."""
    return None if ceiling.size is None else lumber(rules, ceiling.size, ceiling.species, ceiling.grade)


def ceiling_dead_load(rules: RuleSet, ceiling: CeilingInput) -> Summed:
    """Dead load of what is there and what hangs below."""
    there = "ceiling_above" if ceiling.above is not Above.FLOOR else "floor_above"
    return Summed.of({there: rules.number(_DEAD[ceiling.above])}, ceiling.layers)


def dead_load_working(rules: RuleSet, ceiling: CeilingInput) -> Working:
    """How the dead load of a ceiling is made up."""
    load = ceiling_dead_load(rules, ceiling)
    return load.working("frames-ceiling_dead_load", (ceiling.ref,), _DEAD[ceiling.above])


def ceiling_joist(rules: RuleSet, ceiling: CeilingInput) -> Joist:
    """The ceiling's joist with its loads."""
    return Joist(
        span_in=ceiling.span_in,
        spacing_in=ceiling.spacing_in,
        live_psf=rules.number(_LIVE[ceiling.above]),
        dead_psf=ceiling_dead_load(rules, ceiling).psf,
        wood=ceiling_lumber(rules, ceiling),
        stiffness=ceiling.stiffness,
        plies=ceiling.plies,
    )


def ceiling_limits(ceiling: CeilingInput) -> tuple[str, ...]:
    """Ids of the live-deflection limits: the brittle finish's, then the code's for what is above."""
    if ceiling.above is Above.FLOOR:
        return BRITTLE_LIMIT, CODE_LIMIT
    return BRITTLE_LIMIT, "ceiling.deflection.live_code"


def check_ceiling(rules: RuleSet, ceiling: CeilingInput) -> tuple[Check, ...]:
    """Every check of one ceiling's joists, in order: spacing, strength, deflection."""
    return (
        as_found(rules, "ceiling_joist_spacing", ceiling.spacing_in, "ceiling.spacing.max", at_least=False),
        *check_joist(
            rules,
            ceiling_joist(rules, ceiling),
            ceiling_limits(ceiling),
            TOTAL_LIMIT if ceiling.above is Above.FLOOR else "ceiling.deflection.total",
        ),
    )
