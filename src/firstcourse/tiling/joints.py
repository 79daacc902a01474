"""The grout joint a tile asks for, how far its courses may be shifted, and the step allowed at its joints."""

import math
from dataclasses import dataclass, field

from firstcourse.findings import Finding, Severity
from firstcourse.job.tile import ChosenTile, Tiling
from firstcourse.plan import SurfaceKind
from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.tiling.words import fine_text
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, format_length, inch_text
from firstcourse.values import Name, length, measure
from firstcourse.values import least as at_least
from firstcourse.values import most as at_most
from firstcourse.workings import Working

OFFSET_PATTERNS = frozenset({"running", "herringbone", "double_herringbone", "basket_weave", "repeat"})
"""Patterns in which the end of one tile lies along the side of another."""
_TICKS_PER_M = TICKS_PER_MM * 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class JointChoice:
    """The joint a tile is set with, and why.

    Attributes:
        joint: Width of the grout joint [ticks].
        least: The least that the rules allow [ticks].
        findings: Where the job asks for what the rules do not allow.
        workings: `joint ID`, and for a running bond `offset ID` and `lippage ID`, by the tile's id.
    """

    joint: int
    least: int
    findings: tuple[Finding, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)


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
    workings = {f"joint {tile.id}": _joint_working(tile, asked, joint, least, rules, tape)}
    if tiling.pattern == "running":
        findings += _offset(tile, tiling, rules, place)
        workings[f"offset {tile.id}"] = _offset_working(tile, tiling, rules, tape)
    step, step_rules = step_allowed(tile, joint, rules)
    workings[f"lippage {tile.id}"] = _step_working(tile, tiling, step, step_rules, joint, tape)
    findings += _bow(tile, tiling, step, step_rules[0], place)
    return JointChoice(joint=joint, least=least, findings=tuple(findings), workings=workings)


def is_long(tile: ChosenTile, rules: RuleSet) -> bool:
    """Whether any side is above the length from which offset patterns ask for more."""
    return max(tile.size) > rules.ticks("tile.joint.long_side")


def largest_offset(tile: ChosenTile, rules: RuleSet) -> float:
    """Largest shift of a course over the last that the rules allow, as a percentage of the tile."""
    limited = tile.size[0] > rules.ticks("tile.joint.long_side")
    return rules.number("tile.offset.max") if limited else 50.0


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
    """Every rule that asks for a joint of this tile here: the rule, the joint [ticks], and how it came about."""
    level = kind in (SurfaceKind.FLOOR, SurfaceKind.COUNTER)
    least = rules.entry("tile.joint.min_floor" if level else "tile.joint.min_wall")
    rows = [(least, rules.ticks(least.id), "narrowest joint in any case")]
    if not level:
        if tile.kind == "stone" and rules.has("tile.joint.min_wall_stone"):
            entry = rules.entry("tile.joint.min_wall_stone")
            rows.append((entry, rules.ticks(entry.id), "natural stone on a wall"))
        if rules.has("tile.joint.small_area"):
            small = (
                tile.size[0] * tile.size[1] / _TICKS_PER_M**2 < rules.number("tile.joint.small_area")
                and max(tile.size) <= rules.ticks("tile.joint.small_side")
            )  # fmt: skip
            entry = rules.entry("tile.joint.min_wall_small" if small else "tile.joint.min_wall_large")
            rows.append((entry, rules.ticks(entry.id), "small tile" if small else "large tile"))
    if tile.size_spread is not None:
        entry = rules.entry("tile.joint.spread_factor")
        rows.append((entry, math.ceil(rules.number(entry.id) * tile.size_spread), "size spread x factor"))
    elif tile.joint is None:
        # A joint too narrow cannot be set; one too wide only shows. The rule of the spread that is taken is cited.
        entry = assumed_spread(tile, rules)
        wide = math.ceil(rules.number("tile.joint.spread_factor") * rules.ticks(entry.id))
        rows.append((entry, wide, "size spread not measured, taken x factor"))
    if tiling.pattern in OFFSET_PATTERNS and is_long(tile, rules):
        name = "tile.joint.offset_rectified" if tile.edges == "rectified" else "tile.joint.offset_pressed"
        rows.append(
            (rules.entry(name), rules.ticks(name) + (tile.warpage or 0), "long tile in offset, plus edge warpage")
        )
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
    rules: RuleSet,
    tape: Tape,
) -> Working:
    values = {words: fine_text(width, tape) for _, width, words in asked}
    if tile.size_spread is not None:
        factor = rules.number("tile.joint.spread_factor")
        values["size spread"] = f"{fine_text(tile.size_spread, tape)}, times {factor:g}"
    if tile.warpage is not None:
        values["edge warpage"] = fine_text(tile.warpage, tape)
    values["the job's own joint"] = "none given" if tile.joint is None else fine_text(tile.joint, tape)
    values["least"] = fine_text(least, tape)
    number, unit = _apart(joint, tape)
    return Working(
        title=f"Grout joint of tile {tile.id}",
        formula="the widest of what each rule asks, and not less than that the job's own",
        values=values,
        result=number,
        unit=unit,
        source="; ".join(dict.fromkeys(entry.cited for entry, _, _ in asked)),
    )


def _apart(ticks: int, tape: Tape) -> tuple[str, str]:
    if tape is Tape.MM:
        return f"{ticks / TICKS_PER_MM:.2f}".rstrip("0").rstrip("."), "mm"
    return inch_text(ticks / TICKS_PER_INCH), "in"


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


def _offset_working(tile: ChosenTile, tiling: Tiling, rules: RuleSet, tape: Tape) -> Working:
    limited = largest_offset(tile, rules) < 50
    return Working(
        title=f"Shift of courses of tile {tile.id}",
        formula="smaller of shift and 1 - shift, against the limit where the shifted side is long",
        values={
            "shift": str(tiling.offset),
            "side that is shifted": format_length(tile.size[0], tape),
            "long above": format_length(rules.ticks("tile.joint.long_side"), tape),
            "limit": f"{largest_offset(tile, rules):g} %" if limited else "none",
        },
        result=f"{100 * _shift(tiling):.1f}",
        unit="%",
        source=rules.entry("tile.offset.max").cited,
    )


def _step_working(
    tile: ChosenTile, tiling: Tiling, step: int, used: tuple[RuleEntry, ...], joint: int, tape: Tape
) -> Working:
    added = bool(used[1].value)
    values = {
        "joint": fine_text(joint, tape),
        "step before warpage": fine_text(step - (tile.warpage or 0) * added, tape),
    }
    if tile.warpage is not None:
        values["edge warpage measured"] = fine_text(tile.warpage, tape)
        if tiling.pattern == "running":
            made = round(bow_step(tile.warpage, _shift(tiling)))
            values["step that the bow alone makes"] = fine_text(made, tape)
    number, unit = _apart(step, tape)
    return Working(
        title=f"Step allowed between tiles of {tile.id}",
        formula="allowance by joint + warpage measured" if added else "allowance by joint",
        values=values,
        result=number,
        unit=unit,
        source="; ".join(dict.fromkeys(entry.cited for entry in used)),
        argument=(
            ("The step that a bow makes is 4 x shift x (1 - shift) x warpage: a bowed edge taken as a parabola.",)
            if tile.warpage is not None and tiling.pattern == "running"
            else ()
        ),
    )


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
