"""What an engineer is handed of one judged member: facts, layers, assumptions, what is left open, every check."""

import math
from collections import Counter
from dataclasses import dataclass, field

from firstcourse.frames.ceilings import CeilingInput, ceiling_joist, dead_load_working
from firstcourse.frames.checks import Check
from firstcourse.frames.floors import FloorInput, area_load, floor_joist
from firstcourse.frames.joist_checks import section_working
from firstcourse.frames.joists import Joist, governing
from firstcourse.frames.loads import AreaKind, AreaLoad, JoistLoads, shares_working
from firstcourse.frames.lumber import Lumber, lumber_facts
from firstcourse.frames.notches import Cut
from firstcourse.frames.panels import panel_facts
from firstcourse.frames.walls import Studs, flange_in
from firstcourse.geometry import Point
from firstcourse.layers import Layer
from firstcourse.plan import FrameKind
from firstcourse.rules import RuleSet
from firstcourse.values import Measure, Name, Ref, Statement, Value, Word, length_in, measure
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedMember:
    """One judged floor, wall or ceiling with what an engineer needs to judge it anew.

    Attributes:
        ref: Reference to it.
        facts: What was found or entered, and what follows from it by the rules, by name, in order.
        layers: What lies on or hangs below the structure.
        assumed: What was taken because it was not known, or by rule.
        unjudged: What these checks leave open, by code.
        lines: Checks, and workings without a limit such as loads along a joist, in the order of the sheet.
        areas: Loads on parts of a floor.
        joists: What each joist carries of them.
        joist_lines: Centre line of each joist of a floor [ticks].
        other: Lasting loads over a whole floor beside its layers, by code [psf].
    """

    ref: str
    kind: FrameKind
    facts: dict[str, Value]
    layers: tuple[Layer, ...]
    assumed: tuple[Statement, ...]
    unjudged: tuple[str, ...]
    lines: tuple[Check | Working, ...]
    areas: tuple[AreaLoad, ...] = ()
    joists: tuple[JoistLoads, ...] = ()
    joist_lines: tuple[tuple[Point, Point], ...] = ()
    other: tuple[tuple[str, float], ...] = field(default=())

    @property
    def workings(self) -> tuple[Working, ...]:
        """Of each line, in order."""
        return tuple(line if isinstance(line, Working) else line.working(self.ref) for line in self.lines)


def floor_member(rules: RuleSet, floor: FloorInput, checks: tuple[Check, ...], longest: Working) -> JudgedMember:
    """The data sheet of a floor."""
    joist = floor_joist(rules, floor)
    areas = _area_workings(rules, floor)
    facts: dict[str, Value] = {
        "use": Word(word=floor.use.value),
        "span": length_in(floor.span_in),
        "spacing": length_in(floor.spacing_in),
    }
    if floor.run_in:
        facts["run"] = tuple(length_in(span) for span in floor.run_in)
    elif floor.continuous:
        facts["unbroken"] = True
    facts |= _member_facts(joist)
    if floor.bearing_in is not None:
        facts["bearing"] = length_in(floor.bearing_in)
    facts |= {
        **panel_facts(rules, floor.panel),
        "entered": bool(floor.panel.ratings),
        "glued": floor.panel.glued_and_screwed,
        "panel": length_in(floor.panel.thickness_in),
        "finish": Word(word=floor.finish.value),
        **_load_facts(joist),
    }
    if areas:
        facts |= {
            "areas": tuple(Ref(ref=area.of) for area in floor.areas),
            "area_loads": tuple(map(amount, areas)),
            "area_sizes": tuple(measure(area.area_m2, "m2") for area in floor.areas),
        }
    if floor.points:
        facts["points"] = tuple(measure(point.load_lb, "lb") for point in floor.points)
        facts["points_at"] = tuple(length_in(point.at_in) for point in floor.points)
    facts |= _cut_facts(floor.cuts)
    if floor.sister is not None:
        facts["sister"] = measure(floor.sister.share)
    unjudged = ["walls_on_floor", "beams", "vibration"]
    if floor.bearing_in is None:
        unjudged.append("bearing_not_known")
    return JudgedMember(
        ref=floor.ref,
        kind="floor",
        facts=facts,
        layers=floor.layers,
        assumed=(
            _taken("joists_weigh", load=measure(rules.number("mass.joists"), "psf")),
            _taken("no_stiffness"),
            *_assumed(joist.wood),
            *_assumed_areas(rules, floor),
        ),
        unjudged=(*unjudged, *(() if floor.stiffness is None else ("ei_strength",))),
        lines=(
            checks[0],
            *areas,
            *(shares_working(floor.ref, loads, floor.spacing_in) for loads in _carrying_most(floor, joist)),
            section_working(floor.ref, joist),
            *checks[1:],
            longest,
        ),
        areas=floor.areas,
        joists=floor.joists,
        joist_lines=floor.joist_lines,
        other=floor.other,
    )


def amount(working: Working) -> Measure:
    """What a line of a sheet comes to."""
    assert isinstance(working.result, Measure)
    return working.result


def longest_working(ref: str, joist: Joist, spans: dict[str, float]) -> Working:
    """How far the joists may span, and what governs."""
    governs = governing(spans)
    return Working(
        formula="frames-longest_span",
        at=(ref,),
        inputs={
            "span": length_in(joist.span_in),
            "dead": measure(joist.dead_psf, "psf"),
            **{name: length_in(span) for name, span in spans.items()},
            "governs": Word(word=governs),
        },
        result=length_in(spans[governs]),
    )


def _area_workings(rules: RuleSet, floor: FloorInput) -> tuple[Working, ...]:
    """Of each load on a part; a second one of one thing, such as the other end of a kerb, by its number."""
    seen: Counter[str] = Counter()
    found = []
    for area in floor.areas:
        working = area_load(rules, floor, area)
        seen[area.of] += 1
        if seen[area.of] > 1:
            working = working.model_copy(update={"at": (*working.at, f"part/{seen[area.of]}")})
        found.append(working)
    return tuple(found)


def _carrying_most(floor: FloorInput, joist: Joist) -> tuple[JoistLoads, ...]:
    """The joist with the greatest moment of what stands on parts of the floor; none where nothing does."""
    return tuple(loads for loads in floor.joists if loads.parts == joist.parts)[:1]


def _assumed_areas(rules: RuleSet, floor: FloorInput) -> list[Statement]:
    taken = []
    for area in floor.areas:
        if area.assumed:
            rule = rules.entry(area.assumed)
            of, load = Ref(ref=area.of), measure(rules.number(rule.id), rule.unit)
            taken.append(_taken("load_taken", of=of, load=load))
    if any(area.kind is AreaKind.TUB for area in floor.areas):
        taken.append(_taken("tub_water"))
    if any(part.start_in is None for loads in floor.joists for part in loads.parts):
        taken.append(_taken("parts_do_most"))
    if floor.continuous and not floor.run_in:
        taken.append(_taken("other_spans"))
    return taken


def ceiling_member(rules: RuleSet, ceiling: CeilingInput, checks: tuple[Check, ...]) -> JudgedMember:
    """The data sheet of a ceiling."""
    joist = ceiling_joist(rules, ceiling)
    return JudgedMember(
        ref=ceiling.ref,
        kind="ceiling",
        facts={
            "above": Word(word=f"above_{ceiling.above.value}"),
            "span": length_in(ceiling.span_in),
            "spacing": length_in(ceiling.spacing_in),
            **_member_facts(joist),
            **_load_facts(joist),
        },
        layers=ceiling.layers,
        assumed=(_taken("brittle_finish"), *_assumed(joist.wood)),
        unjudged=("hanging_mass", "ceiling_beams", *(() if ceiling.stiffness is None else ("ei_strength",))),
        lines=(dead_load_working(rules, ceiling), section_working(ceiling.ref, joist), *checks),
    )


def wall_member(
    rules: RuleSet, ref: str, studs: Studs, layers: tuple[Layer, ...], checks: tuple[Check, ...]
) -> JudgedMember:
    """The data sheet of a wall."""
    facts: dict[str, Value] = {"height": length_in(studs.height_in), "spacing": length_in(studs.spacing_in)}
    taken = [
        _taken("lateral_load", load=measure(rules.number("wall.load.lateral"), "psf")),
        _taken("stud_alone"),
        *_assumed(studs.wood),
    ]
    if (wood := studs.wood) is not None:
        facts |= {"size": Name(name=wood.size), **lumber_facts(wood), "e": measure(wood.e_psi, "psi")}
    elif (steel := studs.steel) is not None:
        facts["web"] = length_in(steel.depth_in)
        if steel.mils is not None:
            facts["steel"] = measure(steel.mils, "mil")
        if steel.flange_in is not None:
            facts["flange"] = length_in(steel.flange_in)
        if steel.second_moment_in4 is not None:
            facts["inertia"] = measure(steel.second_moment_in4, "in⁴")
        taken.append(_taken("flanges", width=length_in(flange_in(rules, steel))))
    return JudgedMember(
        ref=ref,
        kind="wall",
        facts=facts,
        layers=layers,
        assumed=tuple(taken),
        unjudged=("wall_loads",),
        lines=checks,
    )


def _member_facts(joist: Joist) -> dict[str, Value]:
    wood = joist.wood
    if wood is None:
        return {"each": measure(joist.ei / joist.plies, "lb·in²"), "plies": joist.plies}
    return {
        "size": Name(name=wood.size),
        "width": length_in(wood.width_in),
        "depth": length_in(wood.depth_in),
        "plies": joist.plies,
        **lumber_facts(wood),
        "fb": measure(wood.fb_psi, "psi"),
        "size_factor": measure(wood.size_factor),
        "fv": measure(wood.fv_psi, "psi"),
        "fc_perp": measure(wood.fc_perp_psi, "psi"),
        "e": measure(wood.e_psi, "psi"),
        "values": tuple(Ref(ref=f"rule/{rule}") for rule in dict.fromkeys(wood.rules.values())),
    }


def _cut_facts(cuts: tuple[Cut, ...]) -> dict[str, Value]:
    if not cuts:
        return {}
    unsaid = Word(word="none")
    return {
        "cuts": tuple(Word(word=cut.kind) for cut in cuts),
        "cut_sizes": tuple(length_in(cut.size_in) for cut in cuts),
        "cut_places": tuple(length_in(cut.at_in) for cut in cuts),
        "cut_lengths": tuple(length_in(cut.length_in) for cut in cuts),
        "cut_edges": tuple(unsaid if math.isinf(cut.edge_in) else length_in(cut.edge_in) for cut in cuts),
        "cut_bottoms": tuple(cut.in_bottom for cut in cuts),
    }


def _load_facts(joist: Joist) -> dict[str, Value]:
    return {"live": measure(joist.live_psf, "psf"), "dead": measure(joist.dead_psf, "psf")}


def _taken(code: str, **values: Value) -> Statement:
    """What was taken, by its code."""
    return Statement(code=f"frames-{code}", values=values)


def _assumed(wood: Lumber | None) -> tuple[Statement, ...]:
    if wood is None or not wood.unknown:
        return ()
    return (_taken("lumber_lowest", unknown=Word(word=wood.unknown)),)
