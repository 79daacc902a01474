"""A whole tiled floor on joists, as entered, and every check of it: frame and panel."""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import Layer, summed_load
from firstcourse.suitability.checks import Check, length_check
from firstcourse.suitability.cuts import Cut
from firstcourse.suitability.joist_checks import check_joist
from firstcourse.suitability.joists import CODE_LIMIT, Joist, PointLoad, SisterPart
from firstcourse.suitability.lumber import UNKNOWN, Lumber, lumber
from firstcourse.suitability.panels import Panel, check_panel
from firstcourse.workings import Working


class Finish(StrEnum):
    """What the floor is finished with."""

    CERAMIC = "ceramic"
    STONE = "stone"


class Use(StrEnum):
    """What the room is used for, which sets its live load."""

    LIVING = "living"
    SLEEPING = "sleeping"


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorInput:
    """A floor as found and as it is to be built.

    Attributes:
        where: The floor in words.
        span_in: Longest clear span of the joists over their whole length, not just under the tile [in].
        spacing_in: Joists centre to centre [in].
        panel: The panel layers on the joists.
        layers: Everything over the panel from below, bond coats included, by the names of `buildup`.
        size, species, grade: Of sawn joists.
        stiffness: EI of engineered or steel joists, from their maker [lb·in²]; then no size.
        continuous: The joists run unbroken over a support, their other spans not known.
        run_in: Every span in order where all are known [in].
        extra_dead_psf: Other lasting load, such as heating in a bed or a ceiling below [psf].
    """

    where: str
    span_in: float
    spacing_in: float
    panel: Panel
    layers: tuple[Layer, ...]
    finish: Finish = Finish.CERAMIC
    use: Use = Use.LIVING
    size: str | None = None
    species: str = UNKNOWN
    grade: str = UNKNOWN
    stiffness: float | None = None
    plies: int = 1
    continuous: bool = False
    run_in: tuple[float, ...] = ()
    bearing_in: float | None = None
    points: tuple[PointLoad, ...] = ()
    cuts: tuple[Cut, ...] = ()
    sister: SisterPart | None = None
    extra_dead_psf: float = 0.0

    def __post_init__(self) -> None:
        if (self.size is None) == (self.stiffness is None):
            raise InputValueError(f"{self.where}: give either the joists' size or their EI")


def floor_lumber(rules: RuleSet, floor: FloorInput) -> Lumber | None:
    """Design values of the floor's sawn joists; None for engineered ones."""
    return None if floor.size is None else lumber(rules, floor.size, floor.species, floor.grade)


def dead_load(rules: RuleSet, floor: FloorInput) -> tuple[float, Working]:
    """Dead load of joists, panel and all layers [psf], with its working."""
    per_inch = rules.entry("mass.panel")
    parts = {
        "joists": rules.number("mass.joists"),
        "panel": floor.panel.thickness_in * rules.number(per_inch.id),
    }
    return summed_load(
        parts,
        floor.layers,
        other_psf=floor.extra_dead_psf,
        title="Dead load of the floor",
        formula="sum of the layers, each thickness × density",
        source=f"panel and joists: {per_inch.cited}; layers as entered",
    )


def floor_joist(rules: RuleSet, floor: FloorInput) -> Joist:
    """The floor's joist with its loads."""
    live = "floor.load.live_sleeping" if floor.use is Use.SLEEPING else "floor.load.live"
    return Joist(
        span_in=floor.span_in,
        spacing_in=floor.spacing_in,
        live_psf=rules.number(live),
        dead_psf=dead_load(rules, floor)[0],
        wood=floor_lumber(rules, floor),
        stiffness=floor.stiffness,
        plies=floor.plies,
        continuous=floor.continuous,
        run_in=floor.run_in,
        bearing_in=floor.bearing_in,
        points=floor.points,
        sister=floor.sister,
    )


def limit_rules(floor: FloorInput) -> tuple[str, ...]:
    """Ids of the live-deflection limits: the finish's first, then the code's, always both."""
    if floor.finish is Finish.STONE:
        finish = "floor.deflection.live_stone"
    elif floor.stiffness is not None:
        finish = "floor.deflection.live_engineered"
    else:
        finish = "floor.deflection.live_ceramic"
    return finish, CODE_LIMIT


def check_floor(rules: RuleSet, floor: FloorInput) -> tuple[Check, ...]:
    """Every check of one floor that has a number and a limit, in order: frame, panel."""
    joist = floor_joist(rules, floor)
    table = rules.entry("floor.load.dead_table_max")
    return (
        Check(
            name="dead load",
            found=joist.dead_psf,
            limit=rules.number(table.id),
            at_least=False,
            unit="psf",
            rule=table.id,
            source=table.cited,
            working=dead_load(rules, floor)[1],
        ),
        length_check(
            rules,
            name="joist spacing",
            title="Joist spacing",
            found=floor.spacing_in,
            rule="framing.joist_spacing.max",
            at_least=False,
        ),
        *check_joist(rules, joist, limit_rules(floor)),
        *check_panel(rules, floor.panel, floor.spacing_in, joist.live_psf + joist.dead_psf),
    )
