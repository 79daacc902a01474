"""A surface's flatness as read, against its tile: findings, the map of highs and lows, and what would mend it."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import Check, inches_beside
from firstcourse.suitability.flatness import (
    MM_PER_IN,
    SAME_MM,
    Flatness,
    Spot,
    judge_flatness,
    least_zone,
    tolerance_for,
)
from firstcourse.suitability.levelling import Filling, floor_fillings
from firstcourse.suitability.remedies import Remedy
from firstcourse.suitability.straightening import Straightening, stud_table, wall_straightenings
from firstcourse.units import Tape, format_length, inch_text, ticks_from_mm
from firstcourse.workings import Working

_MOST_NAMED = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """A floor or wall as read.

    Attributes:
        where: The place in words.
        is_floor: A floor is filled or ground, a wall's studs are shimmed or planed.
        tape: What lengths are shown in.
        spots: Readings; on a wall `v_mm` is the height above the floor.
        tile_edge_mm: Longest edge of the tile [mm].
        area_m2: Of the part that is boarded [m²].
        string: All readings lie along one string.
    """

    where: str
    is_floor: bool
    tape: Tape
    spots: tuple[Spot, ...]
    tile_edge_mm: float
    area_m2: float
    string: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundJudgement:
    """What the readings say.

    Attributes:
        findings: Empty where the surface keeps its tolerance.
        workings: By a short name, in order.
        remedies: Best first; empty where none is needed.
        deviations_mm: Of each reading over the best plane, in the order given [mm].
        changes_mm: What the best remedy that passes adds at each reading, less than nothing where it takes off;
            empty where none is needed or none passes [mm].
    """

    findings: tuple[Finding, ...]
    workings: dict[str, Working]
    remedies: tuple[Remedy, ...]
    deviations_mm: tuple[float, ...]
    changes_mm: tuple[float, ...] = ()


def judge_ground(rules: RuleSet, ground: Ground) -> GroundJudgement:
    """Judge the flatness of one surface for its tile.

    Raises:
        InputValueError: Too few readings, or on a floor all on one line.
        RuleNotFoundError: The practice has no tolerance.
    """
    tolerance = tolerance_for(rules, ground.tile_edge_mm)
    found = judge_flatness(ground.spots, tolerance, string=ground.string)
    _zone, width = least_zone(ground.spots, string=ground.string)
    checks = _checks(rules, ground, found)
    workings = {f"flatness.{number}": _working(ground, check) for number, check in enumerate(checks, start=1)}
    workings["flatness.map"] = _map(ground, found, width)
    if found.passes:
        return GroundJudgement(
            findings=_unseen(ground, found), workings=workings, remedies=(), deviations_mm=found.deviations_mm
        )
    ways: tuple[tuple[Remedy, tuple[float, ...]], ...]
    if ground.is_floor:
        fillings = floor_fillings(rules, ground.spots, tolerance, ground.area_m2, ground.tape)
        ways = tuple((each.remedy, each.depths_mm) for each in fillings)
        workings |= {
            f"flatness.{each.remedy.names[0]}": _filling_working(rules, ground, each)
            for each in fillings
            if each.volume_l > 0
        }
    else:
        studs = wall_straightenings(rules, ground.spots, tolerance, ground.tape, string=ground.string)
        ways = tuple((each.remedy, each.corrections_mm) for each in studs)
        workings |= {f"flatness.{each.remedy.names[0]}": _stud_working(ground, each) for each in studs}
    options = tuple(remedy for remedy, _changes in ways)
    findings = [_finding(rules, ground, check, options) for check in checks if not check.holds]
    findings += [_highs_and_lows(ground, found), *_unseen(ground, found)]
    return GroundJudgement(
        findings=tuple(findings),
        workings=workings,
        remedies=options,
        deviations_mm=found.deviations_mm,
        changes_mm=next((changes for remedy, changes in ways if remedy.passes and any(changes)), ()),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """The widest gap under one straightedge [mm], and where it lay, in words."""

    place: str
    reach_mm: float
    gap_mm: float


def judge_gaps(
    rules: RuleSet, where: str, tape: Tape, gaps: Sequence[Gap], tile_edge_mm: float
) -> tuple[tuple[Finding, ...], dict[str, Working]]:
    """Gaps under a straightedge against the tolerance of a tile; one shorter than the short reach keeps its limit.

    Raises:
        RuleNotFoundError: The practice has no tolerance.
    """
    tolerance = tolerance_for(rules, tile_edge_mm)
    findings: list[Finding] = []
    values: dict[str, str] = {}
    for number, gap in enumerate(gaps, start=1):
        short = gap.reach_mm <= tolerance.short_reach_mm + SAME_MM
        limit, rule = (
            (tolerance.short_mm, tolerance.short_rule) if short else (tolerance.long_mm, tolerance.long_rule)
        )
        holds = gap.gap_mm <= limit + SAME_MM
        values[f"{number}. {gap.place}"] = (
            f"{_length(gap.gap_mm, tape)} under {_length(gap.reach_mm, tape)}, at most {_length(limit, tape)}: "
            f"{'holds' if holds else 'DOES NOT HOLD'}"
        )
        if not holds:
            findings.append(
                rules.entry(rule).finding(
                    code="SUI-402" if short else "SUI-401",
                    severity=Severity.FIX,
                    where=where,
                    message=f"Under a straightedge at {gap.place} the surface is not flat enough for this tile.",
                    measured=f"{_length(gap.gap_mm, tape)} under {_length(gap.reach_mm, tape)}",
                    limit=f"at most {_length(limit, tape)}",
                    remedy="Fill or grind there; readings on a grid give the volume, the bags and the shims.",
                )
            )
    worst = max(gap.gap_mm for gap in gaps)
    working = Working(
        title=f"{where}: gaps under a straightedge",
        formula="each gap against the limit of the straightedge's length",
        values=values,
        result=_length(worst, tape),
        unit="at most",
        source=rules.entry(tolerance.long_rule).cited,
    )
    return tuple(findings), {"flatness.straightedge": working}


def _checks(rules: RuleSet, ground: Ground, found: Flatness) -> tuple[Check, ...]:
    limits = found.tolerance
    rows = [("long", found.worst_long_mm, limits.long_mm, limits.long_rule, limits.long_reach_mm)]
    if limits.short_rule != limits.long_rule and found.short_seen:
        rows.append(("short", found.worst_short_mm, limits.short_mm, limits.short_rule, limits.short_reach_mm))
    return tuple(
        Check(
            name=f"flatness, {name} straightedge",
            found=round(worst, 6),
            limit=round(limit, 6),
            at_least=False,
            unit="mm",
            rule=rule,
            source=rules.entry(rule).cited,
            working=Working(
                title=f"Worst gap under a straightedge of {_length(reach, ground.tape)}",
                formula="largest distance of a reading from the chord between two others",
                values={"readings": str(len(ground.spots)), "straightedge": _length(reach, ground.tape)},
                result=f"{worst:.2f}",
                unit="mm",
                source=rules.entry(rule).cited,
                argument=("What lies between the readings is not seen.",),
            ),
        )
        for name, worst, limit, rule, reach in rows
    )


def _working(ground: Ground, check: Check) -> Working:
    limit = f"{check.limit_text()}: {'holds' if check.holds else 'DOES NOT HOLD'}"
    return check.working.model_copy(
        update={
            "title": f"{ground.where}: {check.working.title}",
            "values": {**check.working.values, "limit": limit},
        }
    )


def _finding(rules: RuleSet, ground: Ground, check: Check, options: Sequence[Remedy]) -> Finding:
    passing = [option.what for option in options if option.passes]
    inch = ground.tape is Tape.INCH
    accepted = rules.entries.get("surface.accepted.wall")
    trap = ""
    if accepted is not None and not ground.is_floor and check.found <= rules.number(accepted.id):
        trap = f" It was rightly handed over as flat to {rules.number(accepted.id):g} mm; tile asks more."
    return Finding(
        code="SUI-401" if "long" in check.name else "SUI-402",
        severity=Severity.FIX,
        where=ground.where,
        message=f"{check.name[0].upper()}{check.name[1:]}: not flat enough for this tile.{trap}",
        measured=f'{inches_beside(check.found / MM_PER_IN, check.limit / MM_PER_IN)}"'
        if inch
        else check.found_text(),
        limit=f'at most {inch_text(check.limit / MM_PER_IN)}"' if inch else check.limit_text(),
        rule=check.rule,
        source=check.source,
        remedy="By computation: " + " Or: ".join(passing)
        if passing
        else "No single measure makes it flat: rebuild the worst part, or choose smaller tile.",
    )


def _unseen(ground: Ground, found: Flatness) -> tuple[Finding, ...]:
    """Readings too far apart for the short straightedge must not read as flat under it."""
    limits = found.tolerance
    if found.short_seen or limits.short_rule == limits.long_rule:
        return ()
    reach = _length(limits.short_reach_mm, ground.tape)
    return (
        Finding(
            code="SUI-404",
            severity=Severity.NOTE,
            where=ground.where,
            message=f"The readings stand too far apart to tell how flat it is under {reach}.",
            limit=f"at most {_length(limits.short_mm, ground.tape)} under {reach}",
            rule=limits.short_rule,
            remedy=f"Lay a straightedge of {reach} where it looks worst and enter the gaps, or read closer.",
        ),
    )


def _highs_and_lows(ground: Ground, found: Flatness) -> Finding:
    order = sorted(range(len(ground.spots)), key=lambda i: -found.deviations_mm[i])
    # What lies within half the tolerance is not worth a name; the working's map has every reading.
    named = [i for i in order if abs(found.deviations_mm[i]) > found.tolerance.long_mm / 2] or order[:1]
    highs = [i for i in named if found.deviations_mm[i] > 0][:_MOST_NAMED]
    lows = [i for i in reversed(named) if found.deviations_mm[i] < 0][:_MOST_NAMED]
    said = [
        f"{name} "
        + ", ".join(f"{_signed(found.deviations_mm[i], ground.tape)} at {_place(ground, i)}" for i in rows)
        for name, rows in (("highest", highs), ("lowest", lows))
        if rows
    ]
    return Finding(
        code="SUI-403",
        severity=Severity.NOTE,
        where=ground.where,
        message=f"Against the best plane, {'; '.join(said)}.",
        remedy="Grind or plane the highest first; fill what is then still low."
        if ground.is_floor
        else "The working lists every stud with what to shim or plane off.",
    )


def _map(ground: Ground, found: Flatness, zone_mm: float) -> Working:
    rows: dict[str, list[tuple[float, str]]] = {}
    word = "out" if ground.is_floor else "up"
    for spot, off in sorted(
        zip(ground.spots, found.deviations_mm, strict=True), key=lambda each: (each[0].v_mm, each[0].u_mm)
    ):
        row = "along the string" if ground.string else f"{_length(spot.v_mm, ground.tape)} {word}"
        rows.setdefault(row, []).append(
            (spot.u_mm, f"{_signed(off, ground.tape)} at {_length(spot.u_mm, ground.tape)}")
        )
    plane = found.plane
    return Working(
        title=f"{ground.where}: highs and lows against the best {'line' if ground.string else 'plane'}",
        formula="height = level + slope along × left + slope across × out, least sum of squares",
        values={
            "slope along": f"{plane.slope_u * 1000:.2f} mm/m",
            "slope across": f"{plane.slope_v * 1000:.2f} mm/m",
            **{row: ", ".join(text for _u, text in spots) for row, spots in rows.items()},
        },
        result=f"{zone_mm:.2f}",
        unit="mm between the closest two parallel planes that hold every reading",
        source="least squares; least zone (Chebyshev) by linear programming",
    )


def _filling_working(rules: RuleSet, ground: Ground, filling: Filling) -> Working:
    entry = rules.entry("surface.fill.yield")
    mean = filling.volume_l / ground.area_m2
    return Working(
        title=f"{ground.where}: {filling.remedy.what.split(':')[0].lower()}",
        formula="volume = mean depth × area; bags = volume / yield, rounded up",
        values={
            "mean depth": f"{mean:.2f} mm, by {filling.weights}",
            "area": f"{ground.area_m2:.2f} m²",
            "yield": f"{rules.number(entry.id):g} l a bag",
            "bags": str(filling.bags),
            **{
                _place(ground, i): f"{'fill' if depth >= 0 else 'grind'} {_length(abs(depth), ground.tape)}"
                for i, depth in enumerate(filling.depths_mm)
                if abs(depth) >= 0.05
            },
        },
        result=f"{filling.volume_l:.1f}",
        unit="l",
        source=f"trapezoidal rule over the readings; yield: {entry.cited}",
        argument=("Beyond the outermost readings the mean depth is taken.",),
    )


def _stud_working(ground: Ground, way: Straightening) -> Working:
    return Working(
        title=f"{ground.where}: {way.remedy.what.split(':')[0].lower()}",
        formula="plane of the least zone, moved to the proudest (or deepest) stud, less each reading",
        values=stud_table(ground.spots, way.corrections_mm, ground.tape),
        result=_length(max(abs(each) for each in way.corrections_mm), ground.tape),
        unit="at most",
        source="least zone (Chebyshev) by linear programming; whole graduations of the tape",
        argument=() if way.remedy.passes else (f"Does not pass: {', '.join(way.remedy.still_failing)}.",),
    )


def _place(ground: Ground, index: int) -> str:
    spot = ground.spots[index]
    left = f"left {_length(spot.u_mm, ground.tape)}"
    if ground.string:
        return left
    return f"{left} {'out' if ground.is_floor else 'up'} {_length(spot.v_mm, ground.tape)}"


def _length(length_mm: float, tape: Tape) -> str:
    return format_length(ticks_from_mm(length_mm), tape)


def _signed(length_mm: float, tape: Tape) -> str:
    text = _length(length_mm, tape)
    return text if text.startswith(("-", "0")) else f"+{text}"
