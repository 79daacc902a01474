"""A whole tiled floor on joists, as entered, and every check of it: frame and panel."""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.geometry.polygon import Point
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import Layer, summed_load, total_mass_psf
from firstcourse.suitability.checks import Check, length_check
from firstcourse.suitability.cuts import Cut
from firstcourse.suitability.joist_checks import check_joist
from firstcourse.suitability.joists import CODE_LIMIT, Joist, PointLoad, SisterPart
from firstcourse.suitability.loads import SQ_IN_PER_SQ_FT, AreaLoad, JoistLoads, PartLoad, area_working
from firstcourse.suitability.lumber import UNKNOWN, Lumber, lumber
from firstcourse.suitability.panels import Panel, check_panel
from firstcourse.workings import Working

MEAN_DEAD_LOAD = "mean dead load of a joist"
_BY_LOADS = ("bending", "shear", "bearing", "total deflection")
"""Checks that loads on parts of the floor bear on."""


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
        other: Further lasting loads over the whole floor, by name, such as a membrane or a filling [psf].
        areas: Loads on parts of the floor.
        joists: What each joist under them carries of them, beyond the floor's own layers.
        joist_lines: Centre line of each joist in the order of their numbers, in the floor's coordinates [ticks].
    """

    ref: str
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
    other: tuple[tuple[str, float], ...] = ()
    areas: tuple[AreaLoad, ...] = ()
    joists: tuple[JoistLoads, ...] = ()
    joist_lines: tuple[tuple[Point, Point], ...] = ()

    def __post_init__(self) -> None:
        if (self.size is None) == (self.stiffness is None):
            raise InputValueError(f"{self.where}: give either the joists' size or their EI")


def floor_lumber(rules: RuleSet, floor: FloorInput) -> Lumber | None:
    """Design values of the floor's sawn joists; None for engineered ones."""
    return None if floor.size is None else lumber(rules, floor.size, floor.species, floor.grade)


def dead_load(rules: RuleSet, floor: FloorInput) -> tuple[float, Working]:
    """Dead load of joists, panel and all layers [psf], with its working."""
    per_inch = rules.entry("mass.panel")
    parts = {**structure_psf(rules, floor), **dict(floor.other)}
    return summed_load(
        parts,
        floor.layers,
        other_psf=floor.extra_dead_psf,
        title="Dead load of the floor",
        formula="sum of the layers, each thickness × density",
        source=f"panel and joists: {per_inch.cited}; layers as entered",
    )


def structure_psf(rules: RuleSet, floor: FloorInput) -> dict[str, float]:
    """Joists and panel, by name [psf]."""
    return {
        "joists": rules.number("mass.joists"),
        "panel": floor.panel.thickness_in * rules.number("mass.panel"),
    }


def layers_psf(floor: FloorInput) -> float:
    """The floor's own layers, which a load that stands in their place takes over [psf]."""
    return total_mass_psf(floor.layers) + sum(psf for _name, psf in floor.other) + floor.extra_dead_psf


def area_load(rules: RuleSet, floor: FloorInput, area: AreaLoad) -> tuple[float, Working]:
    """Lasting load where something stands on a part of the floor, the structure in it [psf], with its working."""
    there = structure_psf(rules, floor)
    if not area.instead:
        there["layers of the floor"] = layers_psf(floor)
    sources = [rules.entry("mass.panel").cited, *([rules.entry(area.assumed).cited] if area.assumed else [])]
    working = area_working(there, area, "; ".join((*sources, "volumes and layers of this plan")))
    return sum(there.values()) + area.psf, working


def heaviest_psf(rules: RuleSet, floor: FloorInput) -> float:
    """Greatest lasting load under tile [psf]: that of the whole floor, or with what is built on a part of it."""
    built = [area for area in floor.areas if area.is_built]
    instead = max((area.more_than(layers_psf(floor)) for area in built if area.instead), default=0.0)
    upon = max((area.psf for area in built if not area.instead), default=0.0)
    return dead_load(rules, floor)[0] + instead + upon


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
        dead_psf=dead_load(rules, floor)[0],
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
        index = min(range(len(checks)), key=lambda at: (_margin(checks[at]), at))
        if checks[index].name in _BY_LOADS:
            worst.append(checks[index].on_joist(floor.joists[index].joist))
        else:
            worst.append(checks[index])
    return tuple(worst)


def _margin(check: Check) -> float:
    """How far a check is kept: more is better."""
    return check.found - check.limit if check.at_least else check.limit - check.found


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
    table = rules.entry("floor.load.dead_table_max")
    even = dead_load(rules, floor)[0]
    square_feet = floor.span_in * floor.spacing_in / SQ_IN_PER_SQ_FT
    found = even + pounds / square_feet
    return (
        Check(
            name=MEAN_DEAD_LOAD,
            found=found,
            limit=rules.number(table.id),
            at_least=False,
            unit="psf",
            rule=table.id,
            source=table.cited,
            working=Working(
                title=f"Mean dead load along joist {loads.joist}, with what is built on a part of the floor",
                formula="load of the whole floor + what stands on this joist / (span × spacing)",
                values={"on this joist": f"{pounds:.1f} lb", "L": f"{floor.span_in:g} in"},
                steps=(
                    f"span × spacing = {floor.span_in:g} × {floor.spacing_in:g} / 144 = {square_feet:.3f} sq ft",
                    f"{even:.2f} + {pounds:.2f} / {square_feet:.3f} = {found:.2f} psf",
                ),
                result=f"{found:.1f}",
                unit="psf",
                source=table.cited,
            ),
            # Stresses and deflections are computed with this load; the tables' reach is beside them.
            advised=True,
        ),
    )


def _within(part: PartLoad, span_in: float) -> float:
    """Share of a load on a part that fits on the span."""
    return min(1.0, span_in / part.length_in)
