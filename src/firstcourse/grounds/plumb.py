"""A wall out of plumb and a floor out of level: what to fur, what becomes of the tub lap, how cuts taper.

Works in mm. A lean is positive where the wall's top stands into the room.
"""

import math
from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.grounds.flatness import MM_PER_IN
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, format_length, ticks_from_mm
from firstcourse.values import Measure, Ref, Word, measure, most
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """The wall that meets the judged one in a corner.

    Attributes:
        name: The corner.
        wall: The other wall, such as `B-C`.
        lean_mm: Its lean over its height [mm].
        height_mm: Its height [mm].
        angle_deg: Between the two walls, inside the room [degrees].
    """

    name: str
    wall: str
    lean_mm: float
    height_mm: float
    angle_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stance:
    """How a wall stands.

    Attributes:
        ref: Reference to the wall, such as `bath/wall/A-B`.
        tape: What lengths are read with.
        height_mm: Its height [mm].
        bottom_mm, top_mm: Between which it is boarded, above the floor [mm].
        lean_mm: Its lean over its height [mm]; None where not taken.
        over: What the boards stand above: `floor`, `tub`, `tray`, `kerb` or `none`.
        corners: Walls it meets whose lean was taken.
        ends: Names of its left and right corner.
        rise_mm: Floor at the right end over that at the left [mm]; None where no level was taken.
    """

    ref: str
    tape: Tape
    height_mm: float
    bottom_mm: float
    top_mm: float
    lean_mm: float | None = None
    over: str = "floor"
    corners: tuple[Corner, ...] = ()
    ends: tuple[str, str] = ("left", "right")
    rise_mm: float | None = None

    @property
    def tiled_mm(self) -> float:
        """Height that is boarded and tiled [mm]."""
        return self.top_mm - self.bottom_mm


def judge_stance(rules: RuleSet, stance: Stance) -> tuple[tuple[Finding, ...], tuple[Working, ...]]:
    """Judge a wall's plumb and level, and say what each does to tub lap and cuts.

    Returns:
        Findings, and a working of its lean and of each corner.
    """
    findings: list[Finding] = []
    workings: list[Working] = []
    if stance.lean_mm is not None:
        findings += _plumb(rules, stance, stance.lean_mm)
        findings += _lap(stance, stance.lean_mm)
        workings.append(_plumb_working(rules, stance, stance.lean_mm))
    for corner in stance.corners:
        taper = corner_taper_mm(corner, stance.tiled_mm)
        findings += _taper(rules, stance, corner, taper)
        workings.append(_taper_working(rules, stance, corner, taper))
    if stance.rise_mm is not None and stance.over == "floor":
        findings += _level(rules, stance, stance.rise_mm)
    return tuple(findings), tuple(workings)


def corner_taper_mm(corner: Corner, tiled_mm: float) -> float:
    """How much wider the last cut against a leaning wall is at the top than at the foot [mm]; less: narrower."""
    return -corner.lean_mm * tiled_mm / corner.height_mm / math.sin(math.radians(corner.angle_deg))


def furring_mm(stance: Stance, lean_mm: float, height_mm: float) -> float:
    """How far a wall must be furred out at a height so that it stands plumb, nothing where it is proudest [mm]."""
    share = height_mm / stance.height_mm
    return lean_mm * (1 - share) if lean_mm > 0 else -lean_mm * share


def needed_furring_mm(rules: RuleSet, stance: Stance, height_mm: float) -> float:
    """How far the wall is to be furred out at a height; nothing where it keeps its limit [mm]."""
    lean = stance.lean_mm
    if lean is None or keeps_plumb(rules, stance, lean):
        return 0.0
    return furring_mm(stance, lean, height_mm)


def keeps_plumb(rules: RuleSet, stance: Stance, lean_mm: float) -> bool:
    """Whether a wall stands as plumb as it must: what the tape reads like the limit does not lean too far."""
    limit = plumb_limit_mm(rules, stance.height_mm)
    return abs(lean_mm) <= limit + 1e-6 or _shown(abs(lean_mm), stance) == _shown(limit, stance)


def plumb_limit_mm(rules: RuleSet, height_mm: float) -> float:
    """The lean a wall of this height may have [mm]."""
    most, reach = rules.number("wall.plumb.max"), rules.number("wall.plumb.reach")
    return most / reach * height_mm


def _plumb(rules: RuleSet, stance: Stance, lean: float) -> list[Finding]:
    foot, top = (needed_furring_mm(rules, stance, height) for height in (stance.bottom_mm, stance.top_mm))
    if not foot and not top:
        return []
    return [
        rules.entry("wall.plumb.max").found(
            "SUI-411",
            Severity.FIX,
            stance.ref,
            measured=_mm(abs(lean)),
            limit=most(_mm(plumb_limit_mm(rules, stance.height_mm))),
            remedies=("fur",),
            inwards=lean > 0,
            height=_mm(stance.height_mm),
            foot=_mm(foot),
            top=_mm(top),
        )
    ]


def _lap(stance: Stance, lean: float) -> list[Finding]:
    run = abs(lean) * stance.tiled_mm / stance.height_mm
    if stance.over not in ("tub", "tray") or ticks_from_mm(run) < stance.tape.graduation // 2:
        return []
    furred = furring_mm(stance, lean, stance.bottom_mm)
    return [
        Finding(
            code="SUI-412",
            severity=Severity.NOTE,
            at=(stance.ref,),
            measured=_mm(run),
            remedies=("fur_and_lap" if ticks_from_mm(furred) >= stance.tape.graduation else "fur_top",),
            values={
                "inwards": lean > 0,
                "over": Word(word=stance.over),
                "tiled": _mm(stance.tiled_mm),
                "furred": _mm(furred),
            },
        )
    ]


def _taper(rules: RuleSet, stance: Stance, corner: Corner, taper: float) -> list[Finding]:
    entry = rules.entry("surface.taper.max")
    allowed = rules.number(entry.id) * MM_PER_IN
    if abs(taper) <= allowed:
        return []
    return [
        entry.found(
            "SUI-413",
            Severity.FIX,
            stance.ref,
            measured=_mm(abs(taper)),
            limit=most(_mm(allowed)),
            remedies=("fur",),
            corner=Ref(ref=f"{stance.ref}/corner/{corner.name}"),
            wall=_other_wall(stance, corner),
            inwards=corner.lean_mm > 0,
            wider=taper > 0,
            tiled=_mm(stance.tiled_mm),
        )
    ]


def _level(rules: RuleSet, stance: Stance, rise: float) -> list[Finding]:
    entry = rules.entry("surface.taper.max")
    allowed = rules.number(entry.id) * MM_PER_IN
    if abs(rise) <= allowed:
        return []
    low, high = stance.ends if rise > 0 else stance.ends[::-1]
    return [
        entry.found(
            "SUI-414",
            Severity.FIX,
            stance.ref,
            measured=_mm(abs(rise)),
            limit=most(_mm(allowed)),
            remedies=("level",),
            low=Ref(ref=f"{stance.ref}/corner/{low}"),
            high=Ref(ref=f"{stance.ref}/corner/{high}"),
        )
    ]


def _plumb_working(rules: RuleSet, stance: Stance, lean: float) -> Working:
    foot, top = (furring_mm(stance, lean, height) for height in (stance.bottom_mm, stance.top_mm))
    return Working(
        formula="ground-plumb",
        at=(stance.ref,),
        inputs={
            "lean": measure(lean, "mm"),
            "height": measure(stance.height_mm, "mm"),
            "foot": measure(foot, "mm"),
            "top": measure(top, "mm"),
            "holds": keeps_plumb(rules, stance, lean),
        },
        result=measure(abs(lean), "mm"),
        limit=most(measure(plumb_limit_mm(rules, stance.height_mm), "mm")),
        rule="wall.plumb.max",
    )


def _taper_working(rules: RuleSet, stance: Stance, corner: Corner, taper: float) -> Working:
    return Working(
        formula="ground-taper",
        at=(stance.ref, f"{stance.ref}/corner/{corner.name}"),
        inputs={
            "wall": _other_wall(stance, corner),
            "lean": measure(corner.lean_mm, "mm"),
            "height": measure(corner.height_mm, "mm"),
            "tiled": measure(stance.tiled_mm, "mm"),
            "angle": measure(corner.angle_deg, "deg"),
            "wider": taper > 0,
        },
        result=measure(abs(taper), "mm"),
        limit=most(measure(rules.number("surface.taper.max") * MM_PER_IN, "mm")),
        rule="surface.taper.max",
    )


def _other_wall(stance: Stance, corner: Corner) -> Ref:
    return Ref(ref=f"{stance.ref.rpartition('/')[0]}/{corner.wall}")


def _shown(length_mm: float, stance: Stance) -> str:
    return format_length(ticks_from_mm(length_mm), stance.tape)


def _mm(length_mm: float) -> Measure:
    return measure(round(length_mm, 3), "mm")
