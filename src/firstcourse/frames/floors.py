"""A whole tiled floor on joists, as entered, and every check of it: frame and panel."""

from dataclasses import dataclass, replace
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.frames.checks import Check, as_found
from firstcourse.frames.joist_checks import check_joist
from firstcourse.frames.joists import CODE_LIMIT, Joist, PointLoad, SisterPart
from firstcourse.frames.loads import SQ_IN_PER_SQ_FT, AreaLoad, JoistLoads, PartLoad, Summed, area_working
from firstcourse.frames.lumber import UNKNOWN, Lumber, lumber
from firstcourse.frames.notches import Cut
from firstcourse.frames.panels import Panel, check_panel
from firstcourse.geometry import Point
from firstcourse.layers import Layer, total_mass_psf
from firstcourse.rules import RuleSet
from firstcourse.values import length_in, measure
from firstcourse.workings import Working

MEAN_DEAD_LOAD = "mean_dead_load"
_BY_LOADS = ("bending", "shear", "bearing", "total_deflection")
"""Checks that loads on parts of the floor bear on."""
_TABLE = "floor.load.dead_table_max"


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
        ref: Reference to the floor.
        span_in: Longest clear span of the joists over their whole length, not just under the tile [in].
        spacing_in: Joists centre to centre [in].
        panel: The panel layers on the joists.
        layers: Everything over the panel from below, bond coats included, by the names of `buildup`.
        size, species, grade: Of sawn joists.
        stiffness: EI of engineered or steel joists, from their maker [lb·in²]; then no size.
        continuous: The joists run unbroken over a support, their other spans not known.
        run_in: Every span in order where all are known [in].
        other: Further lasting loads over the whole floor, by code, such as a membrane or a filling [psf].
        areas: Loads on parts of the floor.
        joists: What each joist under them carries of them, beyond the floor's own layers.
        joist_lines: Centre line of each joist in the order of their numbers, in the floor's coordinates [ticks].
    """

    ref: str
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
    other: tuple[tuple[str, float], ...] = ()
    areas: tuple[AreaLoad, ...] = ()
    joists: tuple[JoistLoads, ...] = ()
    joist_lines: tuple[tuple[Point, Point], ...] = ()

    def __post_init__(self) -> None:
        if (self.size is None) == (self.stiffness is None):
            raise InputValueError(f"{self.ref}: give either the joists' size or their EI")


def floor_lumber(rules: RuleSet, floor: FloorInput) -> Lumber | None:
    """Design values of the floor's sawn joists; None for engineered ones."""
    return None if floor.size is None else lumber(rules, floor.size, floor.species, floor.grade)


def dead_load(rules: RuleSet, floor: FloorInput) -> Summed:
    """Dead load of joists, panel and all layers."""
    return Summed.of({**structure_psf(rules, floor), **dict(floor.other)}, floor.layers)


def structure_psf(rules: RuleSet, floor: FloorInput) -> dict[str, float]:
    """Joists and panel, by code [psf]."""
    return {
        "joists": rules.number("mass.joists"),
        "panel": floor.panel.thickness_in * rules.number("mass.panel"),
    }


def layers_psf(floor: FloorInput) -> float:
    """The floor's own layers, which a load that stands in their place takes over [psf]."""
    return total_mass_psf(floor.layers) + sum(psf for _name, psf in floor.other)


def area_load(rules: RuleSet, floor: FloorInput, area: AreaLoad) -> Working:
    """Lasting load where something stands on a part of the floor, the structure in it."""
    there = structure_psf(rules, floor)
    if not area.instead:
        there["floor_layers"] = layers_psf(floor)
    return area_working(floor.ref, Summed.of(there), area, "mass.panel")


def heaviest_psf(rules: RuleSet, floor: FloorInput) -> float:
    """Greatest lasting load under tile [psf]: that of the whole floor, or with what is built on a part of it."""
    built = [area for area in floor.areas if area.is_built]
    instead = max((area.more_than(layers_psf(floor)) for area in built if area.instead), default=0.0)
    upon = max((area.psf for area in built if not area.instead), default=0.0)
    return dead_load(rules, floor).psf + instead + upon


def floor_joist(rules: RuleSet, floor: FloorInput, loads: JoistLoads | None = None) -> Joist:
    """One of the floor's joists with its loads; that with the greatest moment of them where none is named."""
    if loads is None and floor.joists:
        bare = floor_joist(rules, floor, JoistLoads(joist=0, parts=()))
        loads = max(floor.joists, key=lambda one: (sum(map(bare.part_moment, one.parts)), -one.joist))
    live = "floor.load.live_sleeping" if floor.use is Use.SLEEPING else "floor.load.live"
    return Joist(
        span_in=floor.span_in,
        spacing_in=floor.spacing_in,
        live_psf=rules.number(live),
        dead_psf=dead_load(rules, floor).psf,
        wood=floor_lumber(rules, floor),
        stiffness=floor.stiffness,
        plies=floor.plies,
        continuous=floor.continuous,
        run_in=floor.run_in,
        bearing_in=floor.bearing_in,
        points=floor.points,
        parts=() if loads is None else loads.parts,
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
    joist, dead = floor_joist(rules, floor), dead_load(rules, floor)
    return (
        Check(
            name="dead_load",
            found=dead.psf,
            limit=rules.number(_TABLE),
            at_least=False,
            unit="psf",
            rule=_TABLE,
            inputs=dead.inputs,
        ),
        as_found(rules, "joist_spacing", floor.spacing_in, "framing.joist_spacing.max", at_least=False),
        *_joists(rules, floor),
        *_mean_load(rules, floor),
        *check_panel(rules, floor.panel, floor.spacing_in, joist.live_psf + heaviest_psf(rules, floor)),
    )


def _joists(rules: RuleSet, floor: FloorInput) -> tuple[Check, ...]:
    """Each check of the joist that it is worst for; they carry different parts of what stands on the floor."""
    if not floor.joists:
        return check_joist(rules, floor_joist(rules, floor), limit_rules(floor))
    each = [check_joist(rules, floor_joist(rules, floor, loads), limit_rules(floor)) for loads in floor.joists]
    worst = []
    for checks in zip(*each, strict=True):
        index = min(range(len(checks)), key=lambda at: (checks[at].margin, at))
        check = checks[index]
        if check.name in _BY_LOADS:
            check = replace(check, inputs={"joist": floor.joists[index].joist, **check.inputs})
        worst.append(check)
    return tuple(worst)


def _mean_load(rules: RuleSet, floor: FloorInput) -> tuple[Check, ...]:
    """Mean lasting load along the joist that carries most of what is built on a part of the floor.

    The code's span tables hold up to so much; a filled tub is of the live load they are made for.
    """
    built = {area.of for area in floor.areas if area.is_built}
    carried = [
        (sum(part.load_lb * _within(part, floor.span_in) for part in loads.parts if part.of in built), loads)
        for loads in floor.joists
    ]
    pounds, loads = max(carried, key=lambda one: one[0], default=(0.0, None))
    if loads is None or not pounds:
        return ()
    even = dead_load(rules, floor).psf
    square_feet = floor.span_in * floor.spacing_in / SQ_IN_PER_SQ_FT
    return (
        Check(
            name=MEAN_DEAD_LOAD,
            found=even + pounds / square_feet,
            limit=rules.number(_TABLE),
            at_least=False,
            unit="psf",
            rule=_TABLE,
            inputs={
                "joist": loads.joist,
                "load": measure(pounds, "lb"),
                "span": length_in(floor.span_in),
                "spacing": length_in(floor.spacing_in),
                "area": measure(square_feet, "sq ft"),
                "even": measure(even, "psf"),
            },
            # Stresses and deflections are computed with this load; the tables' reach is beside them.
            advised=True,
        ),
    )


def _within(part: PartLoad, span_in: float) -> float:
    """Share of a load on a part that fits on the span."""
    return min(1.0, span_in / part.length_in)
