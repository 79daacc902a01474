"""Judge whether frame, panel and surface will carry tile, before anything is bought."""

from dataclasses import dataclass

from firstcourse.errors import RuleNotFoundError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import Check, sourced
from firstcourse.suitability.exposure import ExposedSurface
from firstcourse.suitability.floors import (
    FloorInput,
    check_floor,
    dead_load,
    floor_joist,
    floor_lumber,
    limit_rules,
)
from firstcourse.suitability.joists import cut_problems, max_span_in
from firstcourse.suitability.materials import judge_exposure
from firstcourse.suitability.remedies import Remedy, floor_remedies
from firstcourse.suitability.walls import Studs, check_backing_mass, check_studs
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
    "panel under a point load": "SUI-201",
    "panel under uniform load": "SUI-202",
    "thickest panel layer": "SUI-203",
    "stud spacing": "SUI-301",
    "stud stiffness": "SUI-302",
    "steel thickness": "SUI-303",
    "tiling mass": "SUI-304",
}
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
    """

    where: str
    studs: Studs
    gauge_only: bool = False
    backing: str = ""
    tiling_kg_m2: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgeInput:
    """Everything to be judged."""

    floors: tuple[FloorInput, ...] = ()
    walls: tuple[WallInput, ...] = ()
    surfaces: tuple[ExposedSurface, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """What was found.

    Attributes:
        findings: Worst first; the engineer's boundary last.
        workings: Title first with its place, in the order of the checks.
        remedies: Each failing floor's place with its computed options, best first.
    """

    findings: tuple[Finding, ...]
    workings: tuple[Working, ...]
    remedies: tuple[tuple[str, tuple[Remedy, ...]], ...]

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
    workings: list[Working] = []
    remedies: list[tuple[str, tuple[Remedy, ...]]] = []
    for floor in inputs.floors:
        try:
            found, shown, options = _floor(rules, floor)
        except RuleNotFoundError as error:
            findings.append(_unjudged(floor.where, error))
            continue
        findings += found
        workings += shown
        if options:
            remedies.append((floor.where, options))
    for wall in inputs.walls:
        try:
            found, shown = _wall(rules, wall)
        except RuleNotFoundError as error:
            findings.append(_unjudged(wall.where, error))
            continue
        findings += found
        workings += shown
    for surface in inputs.surfaces:
        findings += judge_exposure(rules, surface)
    findings.sort(key=lambda finding: _ORDER[finding.severity])
    if inputs.floors or inputs.walls:
        findings.append(_boundary(rules))
    return Judgement(findings=tuple(findings), workings=tuple(workings), remedies=tuple(remedies))


def _floor(rules: RuleSet, floor: FloorInput) -> tuple[list[Finding], list[Working], tuple[Remedy, ...]]:
    checks = check_floor(rules, floor)
    options = floor_remedies(rules, floor)
    findings = [_finding(floor.where, check, _advice(check, options)) for check in checks if not check.holds]
    findings += _cuts(rules, floor)
    wood = floor_lumber(rules, floor)
    if wood is not None and wood.assumed:
        findings.append(
            Finding(
                code="SUI-110",
                severity=Severity.NOTE,
                where=floor.where,
                message=f"{wood.assumed[0].upper()}{wood.assumed[1:]}.",
                source=wood.source,
                remedy="Read the grade stamp on the joists and enter it.",
            )
        )
    if floor.stiffness is not None:
        findings.append(
            Finding(
                code="SUI-111",
                severity=Severity.NOTE,
                where=floor.where,
                message="Only stiffness is judged for engineered joists, not strength.",
                remedy="Hold the loads against the joist maker's tables.",
            )
        )
    shown = [_placed(floor.where, check) for check in checks if check.name != "dead load"]
    dead = dead_load(rules, floor)[1]
    joist = floor_joist(rules, floor)
    span, governs = max_span_in(rules, joist, max(rules.number(rule) for rule in limit_rules(floor)))
    longest = Working(
        title=f"{floor.where}: longest span for these joists and this finish",
        formula="least of the spans that bending, shear and live deflection allow",
        values={"span found": f"{floor.span_in:g} in", "dead load": f"{joist.dead_psf:.1f} psf"},
        result=f"{span:.1f}",
        unit="in",
        source="as the checks of this floor",
        argument=(f"{governs.capitalize()} governs. Point loads and a part sister are left out.",),
    )
    return findings, [dead.model_copy(update={"title": f"{floor.where}: {dead.title}"}), *shown, longest], options


def _advice(check: Check, options: tuple[Remedy, ...]) -> str:
    alone = [o.what for o in options if len(o.names) == 1 and check.name not in o.still_failing]
    whole = [o.what for o in options if o.passes]
    return " ".join(
        (
            "Mends this check, by computation: " + " Or: ".join(alone)
            if alone
            else "No single measure mends this check.",
            f"The whole floor passes with: {whole[0]}"
            if whole
            else "Nothing computed here makes the whole floor pass: for design by a licensed engineer.",
        )
    )


def _cuts(rules: RuleSet, floor: FloorInput) -> list[Finding]:
    wood = floor_lumber(rules, floor)
    entry = rules.entries.get("joist.hole.share")
    if entry is None:
        return []
    if wood is None:
        return [
            Finding(
                code="SUI-121",
                severity=Severity.STOP,
                where=floor.where,
                message="A cut in an engineered joist is judged only by its maker.",
                remedy="Ask the joist maker or an engineer in writing.",
            )
            for _cut in floor.cuts[:1]
        ]
    return [
        Finding(
            code="SUI-120",
            severity=Severity.STOP,
            where=floor.where,
            message=f"A {cut.kind.replace('_', ' ')} breaks the code's limits: {'; '.join(problems)}.",
            measured=f"{cut.size_in:g} in",
            rule=entry.id,
            source=sourced(entry),
            remedy="For design by a licensed engineer; a cut joist is not judged by this check alone.",
        )
        for cut in floor.cuts
        if (problems := cut_problems(rules, wood.depth_in, floor.span_in, cut))
    ]


def _wall(rules: RuleSet, wall: WallInput) -> tuple[list[Finding], list[Working]]:
    checks = list(check_studs(rules, wall.studs))
    findings = []
    steel = wall.studs.steel
    if wall.gauge_only or (steel is not None and steel.mils is None):
        entry = rules.entry("wall.steel.min")
        findings.append(
            Finding(
                code="SUI-310",
                severity=Severity.FIX,
                where=wall.where,
                message="A gauge number means several steel thicknesses.",
                measured="gauge only",
                limit=f"at least {rules.number(entry.id):g} mil",
                rule=entry.id,
                source=sourced(entry),
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
    advice = "Closer studs, deeper studs or thicker steel; blocking does not stiffen a stud between its plates."
    findings += [_finding(wall.where, check, advice) for check in checks if not check.holds]
    return findings, [_placed(wall.where, check) for check in checks]


def _finding(where: str, check: Check, remedy: str) -> Finding:
    return Finding(
        code=_CODES[check.name],
        severity=Severity.STOP,
        where=where,
        message=f"{check.name[0].upper()}{check.name[1:]} does not hold.",
        measured=check.found_text(),
        limit=check.limit_text(),
        rule=check.rule,
        source=check.source,
        remedy=remedy,
    )


def _placed(where: str, check: Check) -> Working:
    working = check.working
    limit = f"{check.limit_text()}: {'holds' if check.holds else 'DOES NOT HOLD'}"
    return working.model_copy(
        update={"title": f"{where}: {working.title}", "values": {**working.values, "limit": limit}}
    )


def _unjudged(where: str, error: RuleNotFoundError) -> Finding:
    return Finding(
        code="SUI-901",
        severity=Severity.STOP,
        where=where,
        message=f"Not judged: rule '{error.rule_id}' has no value for practice '{error.practice}' on {error.on}.",
        rule=error.rule_id,
        remedy="Have an engineer judge it by the local code.",
    )


def _boundary(rules: RuleSet) -> Finding:
    entry = rules.entry("safety.caution.engineer")
    return Finding(
        code="SUI-900",
        severity=Severity.NOTE,
        where="whole job",
        message=str(entry.value),
        rule=entry.id,
        source=sourced(entry),
    )
