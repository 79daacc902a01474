"""What an engineer is handed of one judged member: facts, layers, assumptions, what is left open, the question."""

from dataclasses import dataclass

from firstcourse.geometry.polygon import Point
from firstcourse.plan import FrameKind
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import Layer
from firstcourse.suitability.ceilings import Above, CeilingInput, ceiling_dead_load, ceiling_joist
from firstcourse.suitability.checks import Check, stiffness_text
from firstcourse.suitability.floors import FloorInput, Use, area_load, floor_joist
from firstcourse.suitability.joists import Joist, section_working
from firstcourse.suitability.loads import SQ_FT_PER_M2, AreaKind, AreaLoad, JoistLoads, shares_working
from firstcourse.suitability.lumber import GRADES, SPECIES, UNKNOWN
from firstcourse.suitability.panels import rated_layers
from firstcourse.suitability.walls import Studs
from firstcourse.workings import Working

_ABOVE = {
    Above.ATTIC: "attic without storage",
    Above.STORAGE: "attic with limited storage",
    Above.FLOOR: "a floor of living rooms",
}
_NOT_IN_EI = (
    "Bending, shear and bearing strength, web stiffeners, holes and deflection from shear of joists given by EI: "
    "their maker's tables."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedMember:
    """One judged floor, wall or ceiling with what an engineer needs to judge it anew.

    Attributes:
        where: The place in words.
        facts: Name and value of what was found or entered, in order.
        layers: What lies on or hangs below the structure.
        assumed: What was taken because it was not known, or by rule.
        unjudged: What these checks leave open.
        question: What is asked of the engineer.
        lines: Checks, and workings without a limit such as loads along a joist, in the order of the sheet.
        areas: Loads on parts of a floor.
        joists: What each joist carries of them.
        joist_lines: Centre line of each joist of a floor [ticks].
        other: Lasting loads over a whole floor beside its layers, by name [psf].
    """

    where: str
    kind: FrameKind
    facts: tuple[tuple[str, str], ...]
    layers: tuple[Layer, ...]
    assumed: tuple[str, ...]
    unjudged: tuple[str, ...]
    question: str
    lines: tuple[Check | Working, ...]
    areas: tuple[AreaLoad, ...] = ()
    joists: tuple[JoistLoads, ...] = ()
    joist_lines: tuple[tuple[Point, Point], ...] = ()
    other: tuple[tuple[str, float], ...] = ()


def floor_member(rules: RuleSet, floor: FloorInput, checks: tuple[Check, ...], longest: Working) -> JudgedMember:
    """The data sheet of a floor."""
    joist = floor_joist(rules, floor)
    panel = rated_layers(rules, floor.panel)
    facts = [
        ("use", "sleeping room" if floor.use is Use.SLEEPING else "living room, bath"),
        *_span_facts(floor.span_in, floor.spacing_in),
    ]
    if floor.continuous and not floor.run_in:
        facts.append(("unbroken over a support", "other spans not known"))
    if floor.run_in:
        facts.append(("unbroken over spans of", " + ".join(f"{span:g}" for span in floor.run_in) + " in"))
    facts += _member_facts(floor.size, floor.species, floor.grade, joist)
    facts += [
        ("bearing at the ends", "not known" if floor.bearing_in is None else f"{floor.bearing_in:g} in"),
        (
            "panel on the joists",
            f"{panel}, {'glued and screwed' if floor.panel.glued_and_screwed else 'not glued'}",
        ),
        ("panel thickness in all", f"{floor.panel.thickness_in:g} in"),
        ("finish", f"{floor.finish.value} tile"),
        *_load_facts(joist),
        *(
            (
                f"dead load, {area.name}",
                f"{area_load(rules, floor, area)[0]:.1f} psf over {area.area_m2 * SQ_FT_PER_M2:.1f} sq ft",
            )
            for area in floor.areas
        ),
    ]
    facts += [
        ("lasting load on one joist", f"{p.load_lb:g} lb at {p.at_in:g} in from an end") for p in floor.points
    ]
    facts += [
        (cut.kind.replace("_", " "), f"{cut.size_in:g} in, {cut.at_in:g} in from the nearer support")
        for cut in floor.cuts
    ]
    if floor.sister is not None:
        facts.append(("sister", f"a second ply over the middle {floor.sister.share:.0%} of the span"))
    assumed = [
        f"Joists and ceiling below weigh {rules.number('mass.joists'):g} psf beside panel and layers.",
        "Boards, mortar and tile add mass and no stiffness.",
        *_assumed(joist),
    ]
    assumed += _assumed_areas(rules, floor)
    if floor.continuous and not floor.run_in:
        assumed.append("Other spans of the unbroken joists are not known: counted as a simple span.")
    unjudged = [
        "Walls that stand on the floor, and what hangs on them.",
        "Beams, posts, hangers and footings that carry the joists.",
        "Vibration; rot, splits and insects.",
    ]
    if floor.bearing_in is None:
        unjudged.append("Bearing at the supports, whose length was not entered.")
    if floor.stiffness is not None:
        unjudged.append(_NOT_IN_EI)
    return JudgedMember(
        where=floor.where,
        kind="floor",
        facts=tuple(facts),
        layers=floor.layers,
        assumed=tuple(assumed),
        unjudged=tuple(unjudged),
        question=_question("floor", checks),
        lines=(
            checks[0],
            *(area_load(rules, floor, area)[1] for area in floor.areas),
            *(shares_working(loads, floor.spacing_in) for loads in _carrying_most(rules, floor)),
            section_working(joist),
            *checks[1:],
            longest,
        ),
        areas=floor.areas,
        joists=floor.joists,
        joist_lines=floor.joist_lines,
        other=floor.other,
    )


def _carrying_most(rules: RuleSet, floor: FloorInput) -> tuple[JoistLoads, ...]:
    """The joist with the greatest moment of what stands on parts of the floor; none where nothing does."""
    parts = floor_joist(rules, floor).parts
    return tuple(loads for loads in floor.joists if loads.parts == parts)[:1]


def _assumed_areas(rules: RuleSet, floor: FloorInput) -> list[str]:
    taken = []
    for area in floor.areas:
        if area.assumed:
            rule = rules.entry(area.assumed)
            taken.append(f"{area.name}: {rules.number(rule.id):g} {rule.unit} taken, for the job does not say.")
    if any(area.kind is AreaKind.TUB for area in floor.areas):
        taken.append("A tub's water is counted with the lasting loads, beside the full live load.")
    if any(part.start_in is None for loads in floor.joists for part in loads.parts):
        taken.append("Loads on parts of the floor stand where they do most along the joists.")
    return taken


def ceiling_member(rules: RuleSet, ceiling: CeilingInput, checks: tuple[Check, ...]) -> JudgedMember:
    """The data sheet of a ceiling."""
    joist = ceiling_joist(rules, ceiling)
    unjudged = [
        "How much mass boards and fasteners may hang overhead: no limit is published for this practice; ask the "
        "board's maker.",
        "Beams, hangers and plates that carry the joists.",
    ]
    if ceiling.stiffness is not None:
        unjudged.append(_NOT_IN_EI)
    return JudgedMember(
        where=ceiling.where,
        kind="ceiling",
        facts=(
            ("above", _ABOVE[ceiling.above]),
            *_span_facts(ceiling.span_in, ceiling.spacing_in),
            *_member_facts(ceiling.size, ceiling.species, ceiling.grade, joist),
            *_load_facts(joist),
        ),
        layers=ceiling.layers,
        assumed=("Tile counts as a brittle finish.", *_assumed(joist)),
        unjudged=tuple(unjudged),
        question=_question("ceiling", checks),
        lines=(ceiling_dead_load(rules, ceiling)[1], section_working(joist), *checks),
    )


def wall_member(
    rules: RuleSet, where: str, studs: Studs, layers: tuple[Layer, ...], checks: tuple[Check, ...]
) -> JudgedMember:
    """The data sheet of a wall."""
    facts = [("clear height", f"{studs.height_in:g} in"), ("studs, centre to centre", f"{studs.spacing_in:g} in")]
    assumed = [
        f"Sideways load {rules.number('wall.load.lateral'):g} psf.",
        "The stud alone: boards add no stiffness.",
    ]
    if studs.wood is not None:
        facts += [("studs", studs.wood.name), ("E", f"{studs.wood.e_psi:,.0f} psi")]
        if studs.wood.assumed:
            assumed.append(f"{studs.wood.assumed[0].upper()}{studs.wood.assumed[1:]}.")
    elif studs.steel is not None:
        steel = studs.steel
        facts += [
            ("studs", f"steel, web {steel.depth_in:g} in"),
            ("thickness", "gauge only, mils not known" if steel.mils is None else f"{steel.mils:g} mil"),
        ]
        assumed.append(
            f"Flanges {steel.flange_in or rules.number('wall.steel.flange'):g} in; section without lips, whole."
        )
    return JudgedMember(
        where=where,
        kind="wall",
        facts=tuple(facts),
        layers=layers,
        assumed=tuple(assumed),
        unjudged=("Load from above on the studs; wind; fastening of the plates.",),
        question=_question("wall", checks),
        lines=checks,
    )


def _span_facts(span_in: float, spacing_in: float) -> tuple[tuple[str, str], ...]:
    feet, inches = divmod(span_in, 12)
    return (
        (
            "clear span, face to face",
            f"{span_in:.6g} in ({feet:.0f} ft {inches:.4g} in, {span_in * 25.4:,.0f} mm)",
        ),
        ("joists, centre to centre", f"{spacing_in:g} in ({spacing_in * 25.4:,.0f} mm)"),
    )


def _member_facts(size: str | None, species: str, grade: str, joist: Joist) -> tuple[tuple[str, str], ...]:
    if size is None or joist.wood is None:
        return (
            (
                "joists",
                f"engineered or steel, EI {stiffness_text(joist.ei / joist.plies)} lb·in² each by their maker",
            ),
        )
    wood = joist.wood
    stamp = "not known" if species == UNKNOWN else SPECIES[species]
    return (
        ("joists", f"{size}, {wood.width_in:g} × {wood.depth_in:g} in, {joist.plies} side by side"),
        ("species, grade", f"{stamp}, {'not known' if grade == UNKNOWN else GRADES[grade]}"),
        (
            "design values",
            f"Fb {wood.fb_psi:g}, CF {wood.size_factor:g}, Fv {wood.fv_psi:g}, Fcp {wood.fc_perp_psi:g}, "
            f"E {wood.e_psi:,.0f} psi ({wood.source})",
        ),
    )


def _load_facts(joist: Joist) -> tuple[tuple[str, str], ...]:
    return (("live load", f"{joist.live_psf:g} psf"), ("dead load", f"{joist.dead_psf:.1f} psf, layers below"))


def _assumed(joist: Joist) -> tuple[str, ...]:
    if joist.wood is None or not joist.wood.assumed:
        return ()
    return (f"{joist.wood.assumed[0].upper()}{joist.wood.assumed[1:]}.",)


def _question(kind: str, checks: tuple[Check, ...]) -> str:
    failing = [check.name for check in checks if not check.stands]
    if not failing:
        return (
            f"Every check of this {kind} holds as entered. Please confirm members, supports and loads as found, "
            "and what stands under assumed and left open."
        )
    return (
        f"As entered this {kind} does not hold in {', '.join(failing)}. Please design what makes it carry the "
        "layers below within the limits of the calculation sheet, or confirm it as it is."
    )
