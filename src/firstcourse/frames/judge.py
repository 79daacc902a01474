"""Judge whether frame and panel will carry tile, before anything is bought."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.errors import RuleNotFoundError
from firstcourse.findings import Finding, Severity
from firstcourse.frames.ceilings import CeilingInput, ceiling_joist, ceiling_lumber, check_ceiling
from firstcourse.frames.checks import Check, as_found
from firstcourse.frames.data_sheets import JudgedMember, ceiling_member, floor_member, longest_working, wall_member
from firstcourse.frames.floors import (
    MEAN_DEAD_LOAD,
    FloorInput,
    check_floor,
    floor_joist,
    floor_lumber,
    limit_rules,
)
from firstcourse.frames.frame_remedies import ceiling_remedies, stud_remedies
from firstcourse.frames.joists import governing, max_spans_in
from firstcourse.frames.loads import AreaKind
from firstcourse.frames.lumber import Lumber
from firstcourse.frames.notches import cut_checks
from firstcourse.frames.panels import thickness_in
from firstcourse.frames.remedies import Remedy, floor_remedies, second_layer
from firstcourse.frames.unjudged import FRAMES_NEED, frame_unjudged
from firstcourse.frames.walls import Studs, check_studs
from firstcourse.layers import Layer
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Value, Word, least, length_in, measure
from firstcourse.workings import Working

_CODES = {
    "joist_spacing": "SUI-101",
    "dead_load": "SUI-102",
    "bending": "SUI-103",
    "shear": "SUI-104",
    "bearing": "SUI-105",
    "bearing_length": "SUI-106",
    "live_deflection_finish": "SUI-107",
    "live_deflection_code": "SUI-109",
    "total_deflection": "SUI-108",
    MEAN_DEAD_LOAD: "SUI-113",
    "panel_point": "SUI-201",
    "panel_uniform": "SUI-202",
    "panel_thickest": "SUI-203",
    "panel_rating": "SUI-205",
    "panel_bending": "SUI-206",
    "stud_spacing": "SUI-301",
    "stud_stiffness_tile": "SUI-302",
    "stud_stiffness_code": "SUI-302",
    "steel_thickness": "SUI-303",
    "ceiling_joist_spacing": "SUI-112",
}
# One more member in each wide bay is set on the way; that alone does not halt the work.
_MENDED_ON_THE_WAY = frozenset({"stud_spacing", "ceiling_joist_spacing"})
_TAKEN = (AreaKind.TUB, AreaKind.KERB, AreaKind.BENCH)
"""Of what the job may say how heavy it is, so that no mass is taken for it."""
_SPACING_RULES = {
    "stud": "framing.stud_spacing.max",
    "joist": "framing.joist_spacing.max",
    "ceiling_joist": "ceiling.spacing.max",
}
_ADVISED: dict[str, Value] = {"advised": True}
_ASKED_BY: dict[str, dict[str, Value]] = {
    "stud_stiffness_tile": {"by": Word(word="tile")},
    "stud_stiffness_code": {"by": Word(word="code")},
    "panel_point": {"advised": False},
    "panel_uniform": {"advised": False},
}
"""What the words need of checks that share a code, or that may be advice."""
_ORDER = {Severity.STOP: 0, Severity.FIX: 1, Severity.NOTE: 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class WallInput:
    """A wall to be tiled.

    Attributes:
        ref: Reference to the wall.
        studs: Its framing.
        layers: What lies on the studs, where it is known.
    """

    ref: str
    studs: Studs
    layers: tuple[Layer, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgeInput:
    """Everything to be judged."""

    floors: tuple[FloorInput, ...] = ()
    walls: tuple[WallInput, ...] = ()
    ceilings: tuple[CeilingInput, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """What was found.

    Attributes:
        findings: Worst first; the engineer's boundary last.
        members: Each judged floor, wall and ceiling with its sheet; those that no rule speaks of are left out.
        remedies: Each failing place, by reference, with its computed options, best first.
    """

    findings: tuple[Finding, ...]
    members: tuple[JudgedMember, ...]
    remedies: tuple[tuple[str, tuple[Remedy, ...]], ...]

    @property
    def workings(self) -> tuple[Working, ...]:
        """Of every line of every sheet."""
        return tuple(working for member in self.members for working in member.workings)

    @property
    def stops(self) -> bool:
        """Whether the work must not begin."""
        return any(finding.severity is Severity.STOP for finding in self.findings)


def judge(inputs: JudgeInput, rules: RuleSet) -> Judgement:
    """Judge floors, walls and ceilings by the rule book.

    Args:
        inputs: Floors, walls and ceilings as entered.
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
            findings.append(frame_unjudged(floor.ref, rules, missing=error.rule_id))
            continue
        findings += found
        members.append(member)
        if options:
            remedies.append((floor.ref, options))
    others: tuple[WallInput | CeilingInput, ...] = (*inputs.walls, *inputs.ceilings)
    for other in others:
        try:
            judged = _wall(rules, other) if isinstance(other, WallInput) else _ceiling(rules, other)
        except RuleNotFoundError as error:
            findings.append(frame_unjudged(other.ref, rules, missing=error.rule_id, floor=False))
            continue
        findings += judged[0]
        members.append(judged[1])
        if judged[2]:
            remedies.append((other.ref, judged[2]))
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
        else _finding(floor.ref, check, *_advice("floor", check, options))
        for check in _told(checks)
    ]
    cut_findings, cuts = _cuts(rules, floor)
    findings += cut_findings
    findings += _loads_taken(rules, floor)
    findings += _taken(floor.ref, floor_lumber(rules, floor))
    joist = floor_joist(rules, floor)
    spans = max_spans_in(rules, joist, max(rules.number(rule) for rule in limit_rules(floor)))
    longest = longest_working(floor.ref, joist, spans)
    return findings, floor_member(rules, floor, (*checks, *cuts), longest), options


def _ceiling(rules: RuleSet, ceiling: CeilingInput) -> tuple[list[Finding], JudgedMember, tuple[Remedy, ...]]:
    checks = check_ceiling(rules, ceiling)
    options = ceiling_remedies(rules, ceiling)
    joist = ceiling_joist(rules, ceiling)
    spans = max_spans_in(rules, joist, rules.number("ceiling.deflection.live_brittle"))
    governs = governing(spans)
    longest: dict[str, Value] = {"longest": length_in(spans[governs]), "governs": Word(word=governs)}
    findings = []
    for check in _told(checks):
        remedies, values = _advice("ceiling", check, options)
        findings.append(_finding(ceiling.ref, check, ("longest", *remedies), values | longest))
    findings += _taken(ceiling.ref, ceiling_lumber(rules, ceiling))
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
    """The value that a check holds against one of several limits."""
    return check.formula or check.name


def _taken(ref: str, wood: Lumber | None) -> list[Finding]:
    """What was taken for joists whose strength is not known in full."""
    if wood is None:
        return [Finding(code="SUI-111", severity=Severity.NOTE, at=(ref,), remedies=("tables",))]
    if not wood.unknown:
        return []
    return [
        Finding(
            code="SUI-110",
            severity=Severity.NOTE,
            at=(ref,),
            remedies=("stamp",),
            values={"unknown": Word(word=wood.unknown)},
        )
    ]


def _advice(kind: str, check: Check, options: tuple[Remedy, ...]) -> tuple[tuple[str, ...], dict[str, Value]]:
    """What to do about a check that does not hold, by code: what fixes it alone, and what makes the whole pass."""
    alone = [o.names[0] for o in options if len(o.names) == 1 and check.name not in o.still_failing]
    whole = [o.names for o in options if o.passes]
    values: dict[str, Value] = {"kind": Word(word=kind)}
    if alone:
        values["alone"] = tuple(Word(word=name) for name in alone)
    if whole:
        values["whole"] = tuple(Word(word=name) for name in whole[0])
    remedies = ("engineer_holds" if alone else "engineer_none", "whole_holds" if whole else "whole_none")
    return remedies, values


def _loads_taken(rules: RuleSet, floor: FloorInput) -> list[Finding]:
    """What was taken for the mass of things that the job says nothing of."""
    return [
        rules.entry(area.assumed).found(
            "SUI-114",
            Severity.NOTE,
            floor.ref,
            area.of,
            measured=measure(area.psf, "psf"),
            remedies=("enter",),
            weight=measure(area.kg, "kg"),
            what=Word(word=area.kind.value),
        )
        for area in floor.areas
        if area.assumed and area.kind in _TAKEN
    ]


def _advised(rules: RuleSet, floor: FloorInput, check: Check) -> Finding:
    """A limit beside a published rating that allows what was found: a note, and what a second layer gains.

    Where it is the reach of the code's span tables, who decides on permits is to confirm the floor.
    """
    if check.name == MEAN_DEAD_LOAD:
        return _finding(floor.ref, check, ("confirm",), {}, severity=Severity.FIX)
    doubled = second_layer(rules, floor)
    remedies, values = ("screw_layers",), _ADVISED
    if doubled is not None:
        (gained,) = [one for one in check_floor(rules, doubled) if one.name == check.name]
        remedies = ("second_layer",)
        values = values | {
            "layer": length_in(thickness_in(doubled.panel.layers[-1])),
            "gained": gained.measured,
            "keeps": gained.holds,
        }
    return _finding(floor.ref, check, remedies, values, severity=Severity.NOTE)


def _cuts(rules: RuleSet, floor: FloorInput) -> tuple[list[Finding], tuple[Check, ...]]:
    """Findings about the cuts, and every limit they were held against."""
    wood = floor_lumber(rules, floor)
    if wood is None:
        asked = Finding(code="SUI-121", severity=Severity.STOP, at=(floor.ref,), remedies=("ask_maker",))
        return [asked for _cut in floor.cuts[:1]], ()
    findings: list[Finding] = []
    lines: list[Check] = []
    for number, cut in enumerate(floor.cuts, start=1):
        checks = cut_checks(rules, wood.width_in, wood.depth_in, floor.span_in, cut, number)
        lines += checks
        findings += [
            rules.entry(check.rule).found(
                "SUI-120",
                Severity.STOP,
                floor.ref,
                measured=check.measured,
                limit=check.allowed,
                remedies=("design",),
                cut=Word(word=cut.kind),
                number=number,
                what=Word(word=check.name),
            )
            for check in checks
            if not check.holds
        ]
    return findings, tuple(lines)


def _wall(rules: RuleSet, wall: WallInput) -> tuple[list[Finding], JudgedMember, tuple[Remedy, ...]]:
    checks = check_studs(rules, wall.studs)
    findings = []
    steel = wall.studs.steel
    if steel is not None and steel.mils is None:
        entry = rules.entry("wall.steel.min")
        findings.append(
            entry.found(
                "SUI-310",
                Severity.FIX,
                wall.ref,
                limit=least(measure(rules.number(entry.id), "mil")),
                remedies=("stamp",),
                gauge=Name(name=rules.text("wall.steel.gauge_20")),
            )
        )
    options = stud_remedies(rules, wall.studs)
    findings += [_finding(wall.ref, check, *_advice("frame", check, options)) for check in _told(checks)]
    return findings, wall_member(rules, wall.ref, wall.studs, wall.layers, checks), options


def _finding(
    ref: str,
    check: Check,
    remedies: tuple[str, ...],
    values: dict[str, Value],
    severity: Severity | None = None,
) -> Finding:
    """A check that does not hold; it stops the work where nothing else is said."""
    usual = Severity.FIX if check.name in _MENDED_ON_THE_WAY else Severity.STOP
    return Finding(
        code=_CODES[check.name],
        severity=severity or usual,
        at=(ref,),
        measured=check.measured,
        limit=check.allowed,
        rule=check.rule,
        remedies=remedies,
        values=_ASKED_BY.get(check.name, {}) | values,
    )


def judge_spacing(rules: RuleSet, ref: str, member: str, spacing_in: float) -> tuple[Finding, ...]:
    """What a spacing says by itself, where nothing else is known of the members.

    Args:
        rules: The rule book in force.
        ref: Reference to the surface.
        member: `stud`, `joist` or `ceiling_joist`.
        spacing_in: Widest centre to centre behind the boards [in].

    Returns:
        One finding where it is wider than the rule. Studs and ceiling joists are added on the way; joists of a
        floor stop the work where a judgement of the whole frame would, so not in a practice without its rules.
    """
    rule = _SPACING_RULES[member]
    if not rules.has(rule):
        return ()
    check = as_found(rules, f"{member}_spacing", spacing_in, rule, at_least=False)
    if check.holds:
        return ()
    severity = None if rules.has(FRAMES_NEED) else Severity.FIX
    return (_finding(ref, check, ("add_member",), {"member": Word(word=member)}, severity),)


def _boundary(rules: RuleSet) -> Finding:
    entry = rules.entry("safety.caution.engineer")
    return entry.found("SUI-900", Severity.NOTE, "job", caution=Name(name=str(entry.value)))
