"""The grout joint a tile asks for, how far its courses may be shifted, and the step allowed at its joints."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.job import ChosenTile, Tiling
from firstcourse.layers import laid_size
from firstcourse.plan import SurfaceKind
from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.values import Measure, Name, Ref, Value, Word, length, measure
from firstcourse.values import least as at_least
from firstcourse.values import most as at_most
from firstcourse.workings import Working

OFFSET_PATTERNS = frozenset({"running", "herringbone", "double_herringbone", "basket_weave", "repeat"})
"""Patterns in which the end of one tile lies along the side of another."""
_TICKS_PER_M = TICKS_PER_MM * 1000
_HALF = 50.0
"""Shift of a tile that no rule limits: the most there can be [percent]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JointChoice:
    """The joint a tile is set with, and why.

    Attributes:
        joint: Width of the grout joint [ticks].
        least: The least that the rules allow [ticks].
        findings: Where the job asks for what the rules do not allow.
        workings: Of the joint, of the step at it, and for a running bond of the shift of its courses.
    """

    joint: int
    least: int
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def tile_joint(
    tile: ChosenTile,
    tiling: Tiling,
    rules: RuleSet,
    *,
    kind: SurfaceKind = SurfaceKind.FLOOR,
    tape: Tape = Tape.INCH,
    surface: str = "",
) -> JointChoice:
    """Choose the grout joint of a tile on a surface, and check pattern and step.

    The job's own joint is used where the rules allow it, else the least that they allow. Where the job names none,
    the least is rounded up to the tape.

    Args:
        tile: The tile as measured.
        tiling: The pattern it is laid in.
        rules: Rules in force.
        kind: What the surface is.
        tape: Tape of the job.
        surface: Id of the surface, for findings; empty for the tile wherever it is set.
    """
    asked = _asked(tile, tiling, rules, kind)
    rule, least, _ = max(asked, key=lambda row: row[1])
    usual = -(-least // (tape.graduation // 2)) * (tape.graduation // 2)
    wanted = usual if tile.joint is None else tile.joint
    joint = max(wanted, least)
    place = _ref(tile, surface)
    findings: list[Finding] = []
    if wanted < least:
        findings.append(
            rule.found(
                "TIL-101",
                Severity.FIX,
                place,
                measured=length(wanted),
                limit=at_least(length(least)),
                remedies=("closer_in_size",),
                tile=Name(name=tile.id),
            )
        )
    if tile.size_spread is None and tile.joint is None:
        findings.append(_spread_not_known(tile, rules))
    at = (surface, _ref(tile))
    workings = [_joint_working(tile, asked, joint, least, kind, rules, at)]
    if tiling.pattern == "running":
        findings += _offset(tile, tiling, rules, place)
        workings.append(_offset_working(tile, tiling, rules, at))
    step, step_rules = step_allowed(tile, joint, rules)
    workings.append(_step_working(tile, tiling, step, step_rules, joint, at))
    findings += _bow(tile, tiling, step, step_rules[0], place)
    return JointChoice(joint=joint, least=least, findings=tuple(findings), workings=tuple(workings))


def is_long(tile: ChosenTile, rules: RuleSet) -> bool:
    """Whether any side is above the length from which offset patterns ask for more."""
    return max(laid_size(tile)) > rules.ticks("tile.joint.long_side")


def largest_offset(tile: ChosenTile, rules: RuleSet) -> float:
    """Largest shift of a course over the last that the rules allow, as a percentage of the tile."""
    limited = tile.size[0] > rules.ticks("tile.joint.long_side")
    return rules.number("tile.offset.max") if limited else _HALF


def step_allowed(tile: ChosenTile, joint: int, rules: RuleSet) -> tuple[int, tuple[RuleEntry, ...]]:
    """Step allowed between neighbouring tiles [ticks], and the rules it follows from.

    Args:
        tile: The tile; where the practice adds warpage, it is the measured one.
        joint: Width of its grout joint [ticks].
        rules: Rules in force.
    """
    if rules.has("tile.lippage.narrow_to"):
        narrow = joint <= rules.ticks("tile.lippage.narrow_to")
    else:
        narrow = joint < rules.ticks("tile.lippage.wide_from")
    used = ["tile.lippage.narrow" if narrow else "tile.lippage.wide"]
    special = {"stone": "tile.lippage.stone"}.get(tile.kind, "tile.lippage.ground")
    applies = tile.kind == "stone" or tile.edges == "rectified"
    if applies and rules.has(special):
        used.insert(0, special)
    used.sort(key=rules.ticks)
    step = rules.ticks(used[0])
    entries = (rules.entry(used[0]), rules.entry("tile.lippage.adds_warpage"))
    return step + (tile.warpage or 0 if rules.flag("tile.lippage.adds_warpage") else 0), entries


def bow_step(warpage: float, offset: float) -> float:
    """Step that a bowed tile's end makes beside its neighbour, in the unit of the warpage.

    A bowed edge is taken as a flat parabola, so that at a share `x` of the edge it stands `4 x (1 - x)` of the
    warpage above its ends.

    Args:
        warpage: Edge warpage: rise of the middle over the ends.
        offset: Shift of a course over the last, share of a tile.

    Example:
        >>> bow_step(1.0, 0.5), round(bow_step(1.0, 1 / 3), 3), bow_step(1.0, 0.0)
        (1.0, 0.889, 0.0)
    """
    return 4 * warpage * offset * (1 - offset)


def _asked(
    tile: ChosenTile, tiling: Tiling, rules: RuleSet, kind: SurfaceKind
) -> tuple[tuple[RuleEntry, int, str], ...]:
    """Every rule that asks for a joint of this tile here: the rule, the joint [ticks], and its code."""
    level = kind in (SurfaceKind.FLOOR, SurfaceKind.COUNTER)
    least = rules.entry("tile.joint.min_floor" if level else "tile.joint.min_wall")
    rows = [(least, rules.ticks(least.id), "narrowest")]
    if not level:
        if tile.kind == "stone" and rules.has("tile.joint.min_wall_stone"):
            entry = rules.entry("tile.joint.min_wall_stone")
            rows.append((entry, rules.ticks(entry.id), "stone"))
        if rules.has("tile.joint.small_area"):
            width, height = laid_size(tile)
            small = (
                width * height / _TICKS_PER_M**2 < rules.number("tile.joint.small_area")
                and max(width, height) <= rules.ticks("tile.joint.small_side")
            )  # fmt: skip
            entry = rules.entry("tile.joint.min_wall_small" if small else "tile.joint.min_wall_large")
            rows.append((entry, rules.ticks(entry.id), "small" if small else "large"))
    if tile.size_spread is not None:
        entry = rules.entry("tile.joint.spread_factor")
        rows.append((entry, math.ceil(rules.number(entry.id) * tile.size_spread), "by_spread"))
    elif tile.joint is None:
        # A joint too narrow cannot be set; one too wide only shows. The rule of the spread that is taken is cited.
        entry = assumed_spread(tile, rules)
        wide = math.ceil(rules.number("tile.joint.spread_factor") * rules.ticks(entry.id))
        rows.append((entry, wide, "by_usual_spread"))
    if tiling.pattern in OFFSET_PATTERNS and is_long(tile, rules):
        name = "tile.joint.offset_rectified" if tile.edges == "rectified" else "tile.joint.offset_pressed"
        rows.append((rules.entry(name), rules.ticks(name) + (tile.warpage or 0), "in_offset"))
    return tuple(rows)


def assumed_spread(tile: ChosenTile, rules: RuleSet) -> RuleEntry:
    """The size spread that a tile is taken to have until it is measured."""
    close = tile.edges == "rectified" or tile.sheet is not None
    return rules.entry("tile.joint.spread_close" if close else "tile.joint.spread_pressed")


def _joint_working(
    tile: ChosenTile,
    asked: tuple[tuple[RuleEntry, int, str], ...],
    joint: int,
    least: int,
    kind: SurfaceKind,
    rules: RuleSet,
    at: tuple[str, str],
) -> Working:
    inputs: dict[str, Value] = {"on": Word(word=kind.value)}
    inputs |= {code: length(width) for _, width, code in asked}
    codes = [code for _, _, code in asked]
    if "by_spread" in codes or "by_usual_spread" in codes:
        spread = tile.size_spread
        inputs["spread"] = length(rules.ticks(assumed_spread(tile, rules).id) if spread is None else spread)
        inputs["factor"] = measure(rules.number("tile.joint.spread_factor"))
    inputs |= _warpage(tile)
    inputs["own"] = Word(word="none") if tile.joint is None else length(tile.joint)
    inputs["least"] = length(least)
    inputs["rules"] = _refs(entry for entry, _, _ in asked)
    return Working(formula="tiles-joint", at=at, inputs=inputs, result=length(joint))


def _warpage(tile: ChosenTile) -> dict[str, Value]:
    return {} if tile.warpage is None else {"warpage": length(tile.warpage)}


def _refs(entries: Iterable[RuleEntry]) -> tuple[Ref, ...]:
    return tuple(dict.fromkeys(Ref(ref=f"rule/{entry.id}") for entry in entries))


def _spread_not_known(tile: ChosenTile, rules: RuleSet) -> Finding:
    """That a tile is not measured, told in one way wherever it is set."""
    entry = rules.entry("tile.joint.spread_factor")
    return entry.found(
        "TIL-102",
        Severity.NOTE,
        _ref(tile),
        limit=at_least(measure(rules.number(entry.id))),
        remedies=("measure",),
        tile=Name(name=tile.id),
        spread=length(rules.ticks(assumed_spread(tile, rules).id)),
    )


def _ref(tile: ChosenTile, surface: str = "") -> str:
    """Reference to a tile that was chosen, on a surface or wherever it is set."""
    return f"{surface}/tile_stock/{tile.id}" if surface else f"tile_stock/{tile.id}"


def _shift(tiling: Tiling) -> float:
    """How far the end of a tile lies from the nearest end in the next course, share of a tile."""
    return float(min(tiling.offset, 1 - tiling.offset))


def _offset(tile: ChosenTile, tiling: Tiling, rules: RuleSet, place: str) -> list[Finding]:
    limit = largest_offset(tile, rules)
    # The rule's 33 percent is spoken of as a third.
    if math.floor(100 * _shift(tiling)) <= limit:
        return []
    entry = rules.entry("tile.offset.max")
    return [
        entry.found(
            "TIL-103",
            Severity.FIX,
            place,
            measured=measure(100 * _shift(tiling), "%"),
            limit=at_most(measure(limit, "%")),
            remedies=("third",),
            tile=Name(name=tile.id),
            offset=Name(name=str(tiling.offset)),
            long=length(tile.size[0]),
        )
    ]


def _offset_working(tile: ChosenTile, tiling: Tiling, rules: RuleSet, at: tuple[str, str]) -> Working:
    limit = largest_offset(tile, rules)
    return Working(
        formula="tiles-offset",
        at=at,
        inputs={
            "part": tiling.offset.numerator,
            "of": tiling.offset.denominator,
            "side": length(tile.size[0]),
            "long": length(rules.ticks("tile.joint.long_side")),
        },
        result=measure(100 * _shift(tiling), "%"),
        limit=at_most(measure(limit, "%")) if limit < _HALF else None,
        rule=rules.entry("tile.offset.max").id,
    )


def _step_working(
    tile: ChosenTile,
    tiling: Tiling,
    step: int,
    used: tuple[RuleEntry, ...],
    joint: int,
    at: tuple[str, str],
) -> Working:
    added = bool(used[1].value)
    inputs: dict[str, Value] = {
        "joint": length(joint),
        "by_joint": length(step - (tile.warpage or 0) * added),
        "added": added,
        **_warpage(tile),
    }
    if tile.warpage is not None and tiling.pattern == "running":
        inputs["bow"] = _bow_made(tile.warpage, tiling)
    inputs["rules"] = _refs(used)
    return Working(formula="tiles-lippage", at=at, inputs=inputs, result=length(step), rule=used[0].id)


def _bow_made(warpage: int, tiling: Tiling) -> Measure:
    return length(round(bow_step(warpage, _shift(tiling))))


def _bow(tile: ChosenTile, tiling: Tiling, step: int, rule: RuleEntry, place: str) -> list[Finding]:
    if tile.warpage is None or tiling.pattern != "running":
        return []
    made = round(bow_step(tile.warpage, _shift(tiling)))
    if made <= step:
        return []
    return [
        rule.found(
            "TIL-104",
            Severity.FIX,
            place,
            measured=length(made),
            limit=at_most(length(step)),
            remedies=("shift_less",),
            tile=Name(name=tile.id),
        )
    ]
