"""A surface's flatness as read, against its tile: findings, the map of highs and lows, and what puts it right."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.frames import Remedy
from firstcourse.grounds.flatness import (
    MM_PER_IN,
    SAME_MM,
    Flatness,
    Spot,
    judge_flatness,
    least_zone,
    tolerance_for,
)
from firstcourse.grounds.gaps import Gap, tells
from firstcourse.grounds.levelling import Filling, floor_fillings
from firstcourse.grounds.straightening import Straightening, wall_straightenings
from firstcourse.rules import RuleSet
from firstcourse.units import Tape
from firstcourse.values import Measure, Name, Value, Word, measure, most
from firstcourse.workings import Working

_MOST_NAMED = 5
_LONG = "long"
_NOTHING_MM = 0.05
"""What is added or taken off below this is left as it is [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadGround:
    """A floor or wall as read.

    Attributes:
        ref: Reference to the surface.
        is_floor: A floor is filled or ground, a wall's studs are shimmed or planed.
        tape: What lengths are read with.
        spots: Readings; on a wall `v_mm` is the height above the floor.
        tile_edge_mm: Longest edge of the tile [mm].
        area_m2: Of the part that is boarded [m²].
        string: All readings lie along one string.
        laid: Gaps found under straightedges that were laid there as well.
    """

    ref: str
    is_floor: bool
    tape: Tape
    spots: tuple[Spot, ...]
    tile_edge_mm: float
    area_m2: float
    string: bool = False
    laid: tuple[Gap, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundJudgement:
    """What the readings say.

    Attributes:
        findings: Empty where the surface keeps its tolerance.
        workings: Of each straightedge, of highs and lows, and of each way to flatten it.
        remedies: Best first; empty where none is needed.
        deviations_mm: Of each reading over the best plane, in the order given [mm].
        changes_mm: What the best remedy that passes adds at each reading, less than nothing where it takes off;
            empty where none is needed or none passes [mm].
        filled_l: Levelling compound of the way that takes most of it [l].
    """

    findings: tuple[Finding, ...]
    workings: tuple[Working, ...]
    remedies: tuple[Remedy, ...]
    deviations_mm: tuple[float, ...]
    changes_mm: tuple[float, ...] = ()
    filled_l: float = 0.0


def judge_ground(rules: RuleSet, ground: ReadGround) -> GroundJudgement:
    """Judge the flatness of one surface for its tile.

    Raises:
        InputValueError: Too few readings, or on a floor all on one line.
        RuleNotFoundError: The practice has no tolerance.
    """
    tolerance = tolerance_for(rules, ground.tile_edge_mm)
    found = judge_flatness(ground.spots, tolerance, string=ground.string)
    _zone, width = least_zone(ground.spots, string=ground.string)
    edges = _edges(ground, found)
    workings = [*(_edge_working(ground, edge, width) for edge in edges), _map(ground, found, width)]
    unseen = _unseen(rules, ground, edges, width)
    if found.passes:
        return GroundJudgement(
            findings=unseen, workings=tuple(workings), remedies=(), deviations_mm=found.deviations_mm
        )
    ways: tuple[tuple[Remedy, tuple[float, ...]], ...]
    fillings: tuple[Filling, ...] = ()
    studs: tuple[Straightening, ...] = ()
    if ground.is_floor:
        fillings = floor_fillings(rules, ground.spots, tolerance, ground.area_m2)
        ways = tuple((each.remedy, each.depths_mm) for each in fillings)
        workings += [_filling_working(rules, ground, each) for each in fillings if each.volume_l > 0]
    else:
        studs = wall_straightenings(rules, ground.spots, tolerance, ground.tape, string=ground.string)
        ways = tuple((each.remedy, each.corrections_mm) for each in studs)
        workings += [_stud_working(rules, ground, each) for each in studs]
    options = tuple(remedy for remedy, _changes in ways)
    found_so = _ways(rules, fillings, studs)
    findings = [_finding(rules, ground, edge, found_so) for edge in edges if edge.fails]
    findings += [_highs_and_lows(rules, ground, found), *unseen]
    return GroundJudgement(
        findings=tuple(findings),
        workings=tuple(workings),
        remedies=options,
        deviations_mm=found.deviations_mm,
        filled_l=max((each.volume_l for each in fillings), default=0.0),
        changes_mm=next((changes for remedy, changes in ways if remedy.passes and any(changes)), ()),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Edge:
    """One straightedge over the readings.

    Attributes:
        worst_mm: Worst gap that it saw [mm].
        limit_mm: Most that the tile allows [mm].
        reach_mm: Its length [mm].
        rule: Rule that sets the limit.
        unseen: Readings of which it tells nothing, as no two others lie within its reach in one line with them.
        laid: A straightedge of that length was laid itself, so that the readings need not tell.
    """

    name: str
    worst_mm: float
    limit_mm: float
    reach_mm: float
    rule: str
    unseen: tuple[int, ...]
    laid: bool

    @property
    def fails(self) -> bool:
        return self.worst_mm > self.limit_mm + SAME_MM

    @property
    def tells(self) -> bool:
        """Whether it gives a verdict: what it saw fails, or it saw every reading."""
        return self.fails or not self.unseen


def _edges(ground: ReadGround, found: Flatness) -> tuple[_Edge, ...]:
    limits = found.tolerance
    rows = [(_LONG, found.worst_long_mm, limits.long_mm, limits.long_reach_mm, limits.long_rule, found.long_seen)]
    if limits.short_rule != limits.long_rule:
        short = (found.worst_short_mm, limits.short_mm, limits.short_reach_mm, limits.short_rule)
        rows.append(("short", *short, found.short_seen))
    return tuple(
        _Edge(
            name=name,
            worst_mm=round(worst, 6),
            limit_mm=round(limit, 6),
            reach_mm=reach,
            rule=rule,
            unseen=tuple(index for index, each in enumerate(seen) if not each),
            laid=any(tells(gap, reach, limit) for gap in ground.laid),
        )
        for name, worst, limit, reach, rule, seen in rows
    )


def _edge_working(ground: ReadGround, edge: _Edge, zone_mm: float) -> Working:
    """The gap under a straightedge; of one that gives no verdict what is known is the readings' own deviation."""
    verdict = "fails" if edge.fails else "holds" if edge.tells else "cannot_tell"
    return Working(
        formula="ground-straightedge",
        at=(ground.ref, f"rule/{edge.rule}"),
        inputs={
            "readings": len(ground.spots),
            "reach": _mm(edge.reach_mm),
            **(_at("", ground, edge.unseen) if edge.unseen else {}),
            "verdict": Word(word=verdict),
            **({} if edge.tells else {"zone": _mm(zone_mm)}),
        },
        result=_mm(edge.worst_mm) if edge.tells else Word(word=verdict),
        limit=most(_mm(edge.limit_mm)),
        rule=edge.rule,
    )


def _ways(
    rules: RuleSet, fillings: Sequence[Filling], studs: Sequence[Straightening]
) -> tuple[tuple[str, ...], dict[str, Value]]:
    """What to do by the ways that pass, best first: remedies by code, and what their words need."""
    fills = [each for each in fillings if each.remedy.passes]
    straight = [each for each in studs if each.remedy.passes]
    if not fills and not straight:
        return ("rebuild",), {}
    values: dict[str, Value] = {
        "floor": bool(fills),
        "names": tuple(Word(word=each.remedy.names[0]) for each in fills or straight),
    }
    if not fills:
        values["studs"] = tuple(each.studs for each in straight)
        values["deep"] = tuple(_mm(max(map(abs, each.corrections_mm))) for each in straight)
        return ("ways",), values
    values["litres"] = tuple(measure(each.volume_l, "l") for each in fills)
    values["bags"] = tuple(each.bags for each in fills)
    values["deep"] = tuple(_mm(max(each.depths_mm)) for each in fills)
    values["off"] = tuple(_mm(max(0.0, -min(each.depths_mm))) for each in fills)
    if any(each.remedy.names == ("grind",) for each in fills):
        return ("ways", "with_care"), values | {"caution": Name(name=rules.text("safety.grinding"))}
    return ("ways",), values


def _finding(
    rules: RuleSet, ground: ReadGround, edge: _Edge, ways: tuple[tuple[str, ...], dict[str, Value]]
) -> Finding:
    accepted = rules.find("surface.accepted.wall")
    told: dict[str, Value] = {"laid": False, "edge": Word(word=edge.name), "handed_over": False}
    if accepted is not None and not ground.is_floor and edge.worst_mm <= rules.number(accepted.id):
        told |= {"handed_over": True, "accepted": measure(rules.number(accepted.id), "mm")}
    remedies, values = ways
    return rules.entry(edge.rule).found(
        "SUI-401" if edge.name == _LONG else "SUI-402",
        Severity.FIX,
        ground.ref,
        measured=_mm(edge.worst_mm),
        limit=most(_mm(edge.limit_mm)),
        remedies=remedies,
        **told,
        **values,
    )


def _unseen(rules: RuleSet, ground: ReadGround, edges: Sequence[_Edge], zone_mm: float) -> tuple[Finding, ...]:
    """Readings too far apart for a straightedge must not read as flat under it."""
    return tuple(
        rules.entry(edge.rule).found(
            "SUI-404",
            Severity.FIX if zone_mm > edge.limit_mm + SAME_MM else Severity.NOTE,
            ground.ref,
            measured=_mm(zone_mm),
            limit=most(_mm(edge.limit_mm)),
            remedies=("lay_or_read",),
            laid=False,
            reach=_mm(edge.reach_mm),
            half=_mm(edge.reach_mm / 2),
            everywhere=len(edge.unseen) == len(ground.spots),
            more=max(0, len(edge.unseen) - _MOST_NAMED),
            **_at("", ground, edge.unseen[:_MOST_NAMED]),
        )
        for edge in edges
        if not edge.tells and not edge.laid
    )


def _at(which: str, ground: ReadGround, indexes: Sequence[int]) -> dict[str, Value]:
    """Where readings lie: along the surface, and out on a floor or up on a wall."""
    spots = [ground.spots[index] for index in indexes]
    return {
        "way": _way(ground),
        f"{which}left": tuple(_mm(spot.u_mm) for spot in spots),
        f"{which}on": tuple(_mm(spot.v_mm) for spot in spots),
    }


def _highs_and_lows(rules: RuleSet, ground: ReadGround, found: Flatness) -> Finding:
    order = sorted(range(len(ground.spots)), key=lambda i: -found.deviations_mm[i])
    # What lies within half the tolerance is not worth a name; the working's map has every reading.
    named = [i for i in order if abs(found.deviations_mm[i]) > found.tolerance.long_mm / 2] or order[:1]
    highs = [i for i in named if found.deviations_mm[i] > 0][:_MOST_NAMED]
    lows = [i for i in reversed(named) if found.deviations_mm[i] < 0][:_MOST_NAMED]
    values: dict[str, Value] = {"high": bool(highs), "low": bool(lows)}
    for which, rows in (("high", highs), ("low", lows)):
        values[f"{which}_off"] = tuple(_mm(found.deviations_mm[i]) for i in rows)
        values |= _at(f"{which}_", ground, rows)
    if ground.is_floor:
        values["caution"] = Name(name=rules.text("safety.grinding"))
    return Finding(
        code="SUI-403",
        severity=Severity.NOTE,
        at=(ground.ref,),
        remedies=("grind" if ground.is_floor else "studs",),
        values=values,
    )


def _map(ground: ReadGround, found: Flatness, zone_mm: float) -> Working:
    rows = sorted(
        zip(ground.spots, found.deviations_mm, strict=True), key=lambda each: (each[0].v_mm, each[0].u_mm)
    )
    return Working(
        formula="ground-map",
        at=(ground.ref,),
        inputs={
            "way": _way(ground),
            "slope_along": measure(found.plane.slope_u * 1000, "mm/m"),
            "slope_across": measure(found.plane.slope_v * 1000, "mm/m"),
            "left": tuple(_mm(spot.u_mm) for spot, _ in rows),
            "on": tuple(_mm(spot.v_mm) for spot, _ in rows),
            "height": tuple(_mm(spot.height_mm) for spot, _ in rows),
            "off": tuple(_mm(off) for _, off in rows),
        },
        result=_mm(zone_mm),
    )


def _filling_working(rules: RuleSet, ground: ReadGround, filling: Filling) -> Working:
    entry = rules.entry("surface.fill.yield")
    grind = filling.remedy.names == ("grind",)
    caution: dict[str, Value] = {"caution": Name(name=rules.text("safety.grinding"))} if grind else {}
    return Working(
        formula=f"ground-{filling.remedy.names[0]}",
        at=(ground.ref,),
        inputs={
            "mean": _mm(filling.volume_l / ground.area_m2),
            "weights": Word(word=filling.weights),
            "area": measure(ground.area_m2, "m2"),
            "yield": measure(rules.number(entry.id), "l"),
            "bags": filling.bags,
            **_at("", ground, range(len(ground.spots))),
            **_done(filling.depths_mm, "fill", "grind"),
            **caution,
        },
        result=measure(filling.volume_l, "l"),
        rule=entry.id,
    )


def _stud_working(rules: RuleSet, ground: ReadGround, way: Straightening) -> Working:
    rule = f"surface.{way.remedy.names[0]}.max"
    order = sorted(range(len(ground.spots)), key=lambda i: (ground.spots[i].u_mm, ground.spots[i].v_mm))
    return Working(
        formula=f"ground-{way.remedy.names[0]}",
        at=(ground.ref,),
        inputs={
            **_at("", ground, order),
            **_done([way.corrections_mm[i] for i in order], "shim", "plane_off"),
            "passes": way.remedy.passes,
            "failing": tuple(Word(word=name) for name in way.remedy.still_failing),
        },
        result=_mm(max(abs(each) for each in way.corrections_mm)),
        limit=most(_mm(rules.number(rule) * MM_PER_IN)),
        rule=rule,
    )


def _done(changes_mm: Sequence[float], more: str, less: str) -> dict[str, Value]:
    """What is done at each reading, and how much of it."""
    words = [more if change > _NOTHING_MM else less if change < -_NOTHING_MM else "leave" for change in changes_mm]
    return {
        "do": tuple(Word(word=word) for word in words),
        # What is left as it is may lie a hair on either side.
        "by": tuple(
            _mm(change if word == "leave" else abs(change)) for word, change in zip(words, changes_mm, strict=True)
        ),
    }


def _way(ground: ReadGround) -> Word:
    return Word(word="string" if ground.string else "out" if ground.is_floor else "up")


def _mm(length_mm: float) -> Measure:
    return measure(length_mm, "mm")
