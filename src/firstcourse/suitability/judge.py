"""Judge whether frame, panel and surface will carry tile, before anything is bought."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.errors import RuleNotFoundError
from firstcourse.findings import Finding, Severity
from firstcourse.plan.structure import verdict
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import Layer
from firstcourse.suitability.ceilings import CeilingInput, ceiling_joist, ceiling_lumber, check_ceiling
from firstcourse.suitability.checks import Check, length_check, quantity
from firstcourse.suitability.cuts import cut_checks
from firstcourse.suitability.exposure import ExposedSurface
from firstcourse.suitability.floors import (
    MEAN_DEAD_LOAD,
    FloorInput,
    check_floor,
    floor_joist,
    floor_lumber,
    limit_rules,
)
from firstcourse.suitability.frame_remedies import ceiling_remedies, stud_remedies
from firstcourse.suitability.joists import max_span_in
from firstcourse.suitability.loads import AreaKind
from firstcourse.suitability.lumber import Lumber
from firstcourse.suitability.materials import judge_exposure
from firstcourse.suitability.remedies import Remedy, floor_remedies, second_layer
from firstcourse.suitability.sheets import JudgedMember, ceiling_member, floor_member, wall_member
from firstcourse.suitability.walls import Studs, check_backing_mass, check_studs
from firstcourse.units import KG_PER_LB, Tape, format_length, inches
from firstcourse.workings import Working

_CODES = {
    "joist spacing": "SUI-101",
    "dead load": "SUI-102",
    "bending": "SUI-103",
    "shear": "SUI-104",
    "bearing": "SUI-105",
    "bearing length": "SUI-106",
    "live deflection (finish)": "SUI-107",
    "live deflection (code)": "SUI-109",
    "total deflection": "SUI-108",
    MEAN_DEAD_LOAD: "SUI-113",
    "panel under a point load": "SUI-201",
    "panel under uniform load": "SUI-202",
    "thickest panel layer": "SUI-203",
    "panel span rating": "SUI-205",
    "panel bending": "SUI-206",
    "stud spacing": "SUI-301",
    "stud stiffness (tile)": "SUI-302",
    "stud stiffness (code)": "SUI-302",
    "steel thickness": "SUI-303",
    "tiling mass": "SUI-304",
    "ceiling joist spacing": "SUI-112",
}
# One more member in each wide bay is set on the way; that alone does not halt the work.
_MENDED_ON_THE_WAY = frozenset({"stud spacing", "ceiling joist spacing"})
_TAKEN = {
    AreaKind.TUB: "Enter what it weighs filled (openings, weight).",
    AreaKind.KERB: "Say what it is built of (shower, kerb, body: solid or framed).",
    AreaKind.BENCH: "Say what it is built as (benches, body: solid, framed or hung).",
}
"""What to enter where a mass was taken."""
_SPACING_RULES = {
    "stud": "framing.stud_spacing.max",
    "joist": "framing.joist_spacing.max",
    "ceiling joist": "ceiling.spacing.max",
}
FRAMES_NEED = "floor.load.live"
"""A practice without this rule has none to judge frames by."""
_ORDER = {Severity.STOP: 0, Severity.FIX: 1, Severity.NOTE: 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class WallInput:
    """A wall to be tiled.

    Attributes:
        where: The wall in words.
        studs: Its framing.
        gauge_only: The steel is known by a gauge number only, which may mean several thicknesses.
        backing: Existing backing such as `plasterboard`; empty for new board.
        tiling_kg_m2: Tile, mortar and grout [kg/m²]; None where not known.
        layers: What lies on the studs, where it is known.
    """

    where: str
    studs: Studs
    gauge_only: bool = False
    backing: str = ""
    tiling_kg_m2: float | None = None
    layers: tuple[Layer, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgeInput:
    """Everything to be judged."""

    floors: tuple[FloorInput, ...] = ()
    walls: tuple[WallInput, ...] = ()
    ceilings: tuple[CeilingInput, ...] = ()
    surfaces: tuple[ExposedSurface, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """What was found.

    Attributes:
        findings: Worst first; the engineer's boundary last.
        members: Each judged floor, wall and ceiling with its sheet; those that no rule speaks of are left out.
        remedies: Each failing place with its computed options, best first.
    """

    findings: tuple[Finding, ...]
    members: tuple[JudgedMember, ...]
    remedies: tuple[tuple[str, tuple[Remedy, ...]], ...]

    @property
    def workings(self) -> tuple[Working, ...]:
        """Every line of every sheet, its place first in its title."""
        return tuple(placed(member.where, line) for member in self.members for line in member.lines)

    @property
    def stops(self) -> bool:
        """Whether the work must not begin."""
        return any(finding.severity is Severity.STOP for finding in self.findings)


def judge(inputs: JudgeInput, rules: RuleSet) -> Judgement:
    """Judge floors, walls and surfaces by the rule book.

    Args:
        inputs: Floors, walls and surfaces as entered.
        rules: The rule book in force.

    Returns:
        Findings with measured value, limit, rule, source and remedy; workings; computed remedies. Where the
        practice has no rule for a check the finding says so instead of passing it.
    """
    findings: list[Finding] = []
    members: list[JudgedMember] = []
    remedies: list[tuple[str, tuple[Remedy, ...]]] = []
    for floor in inputs.floors:
        try:
            found, member, options = _floor(rules, floor)
        except RuleNotFoundError as error:
            findings.append(frame_unjudged(floor.where, rules, missing=error.rule_id))
            continue
        findings += found
        members.append(member)
        if options:
            remedies.append((floor.where, options))
    others: tuple[WallInput | CeilingInput, ...] = (*inputs.walls, *inputs.ceilings)
    for other in others:
        try:
            judged = _wall(rules, other) if isinstance(other, WallInput) else _ceiling(rules, other)
        except RuleNotFoundError as error:
            findings.append(frame_unjudged(other.where, rules, missing=error.rule_id, floor=False))
            continue
        findings += judged[0]
        members.append(judged[1])
        if judged[2]:
            remedies.append((other.where, judged[2]))
    for surface in inputs.surfaces:
        findings += judge_exposure(rules, surface)
    findings.sort(key=lambda finding: _ORDER[finding.severity])
    if inputs.floors or inputs.walls or inputs.ceilings:
        findings.append(_boundary(rules))
    return Judgement(findings=tuple(findings), members=tuple(members), remedies=tuple(remedies))


def _floor(rules: RuleSet, floor: FloorInput) -> tuple[list[Finding], JudgedMember, tuple[Remedy, ...]]:
    checks = check_floor(rules, floor)
    options = floor_remedies(rules, floor)
    findings = [
        _advised(rules, floor, check)
        if check.advised
        else _finding(floor.where, check, _advice("floor", check, options))
        for check in _told(checks)
    ]
    cut_findings, cuts = _cuts(rules, floor)
    findings += cut_findings
    findings += _loads_taken(rules, floor)
    findings += _taken(floor.where, floor_lumber(rules, floor))
    joist = floor_joist(rules, floor)
    span, governs = max_span_in(rules, joist, max(rules.number(rule) for rule in limit_rules(floor)))
    strength = "" if joist.wood is not None else " The strength of joists given by EI is left out."
    longest = Working(
        title="Longest span for these joists and this finish",
        formula="least of the spans that bending, shear and live deflection allow",
        values={"span found": f"{floor.span_in:g} in", "dead load": f"{joist.dead_psf:.1f} psf"},
        result=f"{span:.1f}",
        unit="in",
        source="as the checks of this floor",
        argument=(
            f"{governs.capitalize()} governs. Point loads and a part sister are left out; what stands on parts of "
            f"the floor stands where it does most.{strength}",
        ),
    )
    return findings, floor_member(rules, floor, (*checks, *cuts), longest), options


def _ceiling(rules: RuleSet, ceiling: CeilingInput) -> tuple[list[Finding], JudgedMember, tuple[Remedy, ...]]:
    checks = check_ceiling(rules, ceiling)
    options = ceiling_remedies(rules, ceiling)
    joist = ceiling_joist(rules, ceiling)
    span, governs = max_span_in(rules, joist, rules.number("ceiling.deflection.live_brittle"))
    longest = f"These joists carry it over {span:.0f} in at most ({governs} governs)."
    findings = [
        _finding(ceiling.where, check, f"{longest} {_advice('ceiling', check, options)}")
        for check in _told(checks)
    ]
    findings += _taken(ceiling.where, ceiling_lumber(rules, ceiling))
    return findings, ceiling_member(rules, ceiling, checks), options


def _told(checks: Sequence[Check]) -> list[Check]:
    """The checks that do not hold; of one value held against several limits the one that asks most."""
    failing = [check for check in checks if not check.holds]
    sternest: dict[str, Check] = {}
    for check in failing:
        value = _limited(check)
        if value not in sternest or check.limit > sternest[value].limit:
            sternest[value] = check
    return [check for check in failing if check is sternest[_limited(check)]]


def _limited(check: Check) -> str:
    """The value that a check holds against one of its limits, which its name tells in brackets."""
    return check.name.partition(" (")[0] if check.unit == "L/x" else check.name


def _taken(where: str, wood: Lumber | None) -> list[Finding]:
    """What was taken for joists whose strength is not known in full."""
    if wood is None:
        return [
            Finding(
                code="SUI-111",
                severity=Severity.NOTE,
                where=where,
                message="Only stiffness is judged for joists given by EI: not bending, shear, bearing, holes or "
                "deflection from shear.",
                remedy="Hold the loads against the joist maker's tables.",
            )
        ]
    if not wood.assumed:
        return []
    return [
        Finding(
            code="SUI-110",
            severity=Severity.NOTE,
            where=where,
            message=f"{wood.assumed[0].upper()}{wood.assumed[1:]}.",
            source=wood.source,
            remedy="Read the grade stamp on the joists and enter it.",
        )
    ]


def _advice(kind: str, check: Check, options: tuple[Remedy, ...]) -> str:
    alone = [o.what for o in options if len(o.names) == 1 and check.name not in o.still_failing]
    whole = [o.what for o in options if o.passes]
    return " ".join(
        (
            "An engineer first, then by computation this check holds: " + " Or: ".join(alone)
            if alone
            else "An engineer first: no single measure makes this check hold.",
            f"The whole {kind} passes with: {whole[0]}"
            if whole
            else f"Nothing computed here makes the whole {kind} pass: for design by a licensed engineer.",
        )
    )


def _loads_taken(rules: RuleSet, floor: FloorInput) -> list[Finding]:
    """What was taken for the mass of things that the job says nothing of."""
    return [
        rules.entry(area.assumed).finding(
            code="SUI-114",
            severity=Severity.NOTE,
            where=floor.where,
            message=f"What {area.name} weighs is not known; the joists are judged with it at "
            f"{area.kg / KG_PER_LB:,.0f} lb.",
            measured=f"{area.psf:.1f} psf",
            remedy=_TAKEN[area.kind],
        )
        for area in floor.areas
        if area.assumed and area.kind in _TAKEN
    ]


def _advised(rules: RuleSet, floor: FloorInput, check: Check) -> Finding:
    """A limit beside a published rating that allows what was found: a note, and what a second layer gains.

    Where it is the reach of the code's span tables, who decides on permits is to confirm the floor.
    """
    if check.name == MEAN_DEAD_LOAD:
        remedy = "Have the building office or a licensed engineer confirm the floor with this sheet."
        told = (
            "The code's span tables hold no such load; this floor is judged by its joists' design values instead."
        )
        return _finding(floor.where, check, remedy).model_copy(update={"severity": Severity.FIX, "message": told})
    doubled = second_layer(rules, floor)
    remedy = "Screw the layers down well; a stiffer panel, or joists closer together, lessens it."
    if doubled is not None:
        (gained,) = [one for one in check_floor(rules, doubled) if one.name == check.name]
        remedy = (
            f"A second layer of {doubled.panel.layers[-1]} in, screwed to the first, makes it "
            f"{gained.found_text()}, "
            f"{'which keeps it' if gained.holds else 'still short of it'}."
        )
    return _finding(floor.where, check, remedy).model_copy(
        update={
            "severity": Severity.NOTE,
            "message": f"{check.name[0].upper()}{check.name[1:]}: the panel's span rating allows these joists; "
            "the limit is advice for tile.",
        }
    )


def _cuts(rules: RuleSet, floor: FloorInput) -> tuple[list[Finding], tuple[Check, ...]]:
    """Findings about the cuts, and every limit they were held against."""
    wood = floor_lumber(rules, floor)
    if wood is None:
        asked = Finding(
            code="SUI-121",
            severity=Severity.STOP,
            where=floor.where,
            message="A cut in an engineered joist is judged only by its maker.",
            remedy="Ask the joist maker or an engineer in writing.",
        )
        return [asked for _cut in floor.cuts[:1]], ()
    findings: list[Finding] = []
    lines: list[Check] = []
    for number, cut in enumerate(floor.cuts, start=1):
        name = f"{cut.kind.replace('_', ' ')} {number}"
        checks = cut_checks(rules, wood.width_in, wood.depth_in, floor.span_in, cut, name)
        lines += checks
        findings += [
            Finding(
                code="SUI-120",
                severity=Severity.STOP,
                where=floor.where,
                message=f"{check.name[0].upper()}{check.name[1:]}: breaks the code's limit.",
                measured=check.found_text(),
                limit=check.limit_text(),
                rule=check.rule,
                source=check.source,
                remedy="For design by a licensed engineer; a cut joist is not judged by this check alone.",
            )
            for check in checks
            if not check.holds
        ]
    return findings, tuple(lines)


def _wall(rules: RuleSet, wall: WallInput) -> tuple[list[Finding], JudgedMember, tuple[Remedy, ...]]:
    checks = list(check_studs(rules, wall.studs))
    findings = []
    steel = wall.studs.steel
    if wall.gauge_only or (steel is not None and steel.mils is None):
        entry = rules.entry("wall.steel.min")
        findings.append(
            entry.finding(
                code="SUI-310",
                severity=Severity.FIX,
                where=wall.where,
                message="A gauge number means several steel thicknesses, so stiffness is not judged: 20 gauge is "
                f"{rules.text('wall.steel.gauge_20')}.",
                measured="gauge only",
                limit=f"at least {rules.number(entry.id):g} mil",
                remedy="Read the thickness in mils off the stud's stamp, or ask the supplier, and enter it.",
            )
        )
    if wall.backing and wall.tiling_kg_m2 is not None:
        mass = check_backing_mass(rules, wall.backing, wall.tiling_kg_m2)
        if mass is None:
            findings.append(
                Finding(
                    code="SUI-311",
                    severity=Severity.FIX,
                    where=wall.where,
                    message=f"The rule book has no mass limit for {wall.backing} in this practice.",
                    measured=f"{wall.tiling_kg_m2:.1f} kg/m²",
                    remedy="Ask the backing's maker what mass of tiling it carries.",
                )
            )
        else:
            checks.append(mass)
    options = stud_remedies(rules, wall.studs)
    findings += [
        _finding(
            wall.where, check, "Take lighter tile." if check.unit == "kg/m²" else _advice("frame", check, options)
        )
        for check in _told(checks)
    ]
    return findings, wall_member(rules, wall.where, wall.studs, wall.layers, tuple(checks)), options


def _finding(where: str, check: Check, remedy: str) -> Finding:
    return Finding(
        code=_CODES[check.name],
        severity=Severity.FIX if check.name in _MENDED_ON_THE_WAY else Severity.STOP,
        where=where,
        message=f"{check.name[0].upper()}{check.name[1:]} does not hold.",
        measured=check.found_text(),
        limit=check.limit_text(),
        rule=check.rule,
        source=check.source,
        remedy=remedy,
    )


def judge_spacing(rules: RuleSet, where: str, member: str, spacing_in: float, tape: Tape) -> tuple[Finding, ...]:
    """What a spacing says by itself, where nothing else is known of the members.

    Args:
        rules: The rule book in force.
        where: The place in words.
        member: `stud`, `joist` or `ceiling joist`.
        spacing_in: Widest centre to centre behind the boards [in].
        tape: Tape of the job, in whose unit the spacing is told.

    Returns:
        One finding where it is wider than the rule. Studs and ceiling joists are added on the way; joists of a
        floor stop the work where a judgement of the whole frame would, so not in a practice without its rules.
    """
    rule = _SPACING_RULES[member]
    if not rules.has(rule):
        return ()
    name = f"{member} spacing"
    check = length_check(rules, name=name, title=name, found=spacing_in, rule=rule, at_least=False)
    if check.holds:
        return ()
    most = _on_tape(check.limit, tape)
    remedy = (
        f"Before boarding add a {member} in each bay that is wider, so that none stand farther apart than "
        f"{most}, and enter them (framing, members)."
    )
    found = check.found_text() if tape is Tape.INCH else _on_tape(check.found, tape)
    told = {"measured": found, "limit": f"at most {most}"}
    if not rules.has(FRAMES_NEED):
        told["severity"] = Severity.FIX
    return (_finding(where, check, remedy).model_copy(update=told),)


def _on_tape(length_in: float, tape: Tape) -> str:
    """A spacing as the tape reads: inches alone, as frames are spoken of, or millimetres."""
    return quantity(length_in, "in") if tape is Tape.INCH else format_length(inches(length_in), tape)


def placed(where: str, line: Check | Working) -> Working:
    """A line of a sheet as a working that stands alone: its place in its title, its limit among its values."""
    if isinstance(line, Working):
        return line.model_copy(update={"title": f"{where}: {line.title}"})
    limit = f"{line.limit_text()}: {verdict(holds=line.holds, advised=line.advised)}"
    return line.working.model_copy(
        update={"title": f"{where}: {line.working.title}", "values": {**line.working.values, "limit": limit}}
    )


def frame_unjudged(where: str, rules: RuleSet, *, missing: str = FRAMES_NEED, floor: bool = True) -> Finding:
    """What is said of a frame for which a practice has no rules: that nothing here tells, and whom to ask.

    Args:
        where: The place in words.
        rules: The rule book in force.
        missing: The rule it has no value of.
        floor: Whether it is a floor, which live load bends.

    Returns:
        A note where the practice has no such rules at all: the work need not wait for a table of this book. A stop
        where it judges frames and lacks this one rule.
    """
    partly = rules.has(FRAMES_NEED)
    asked = rules.find("frame.ask")
    who = "a structural engineer" if asked is None else asked.value
    remedy = f"Ask {who} if this carries the weight of what is laid here"
    if (limit := rules.find("frame.ask.deflection")) is not None:
        borrowed = f" (the limit of {limit.taken_from.upper()} practice)" if limit.taken_from else ""
        load = "live load" if floor else "its load"
        remedy += f", and bends no more than 1/{rules.number(limit.id):g} of its span under {load}{borrowed}"
    remedy += "."
    if floor and (usual := rules.find("frame.deflection.usual")) is not None:
        share = rules.number(usual.id)
        remedy += f" Under other finishes a floor there may bend {share:g} of its span ({usual.cited})."
    lacks = f"no value of {missing}" if partly else "no loads and design values"
    return Finding(
        code="SUI-901",
        severity=Severity.STOP if partly else Severity.NOTE,
        where=where,
        message=f"Cannot tell if this frame carries tile: the rule book has {lacks} of {rules.practice.upper()} "
        f"practice on {rules.on}. Spacing, panels, flatness, materials, moisture and build-up are judged as far "
        "as it has their rules.",
        remedy=remedy,
    )


def _boundary(rules: RuleSet) -> Finding:
    entry = rules.entry("safety.caution.engineer")
    return entry.finding(
        code="SUI-900",
        severity=Severity.NOTE,
        where="whole job",
        message=str(entry.value),
    )
