"""Making a wall's studs stand in one plane: how much to shim or plane off each, and whether the wall then passes.

Works in mm; a reading is how far a stud's face stands towards the tile.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.rules import RuleSet
from firstcourse.suitability.flatness import MM_PER_IN, Spot, Tolerance, least_zone
from firstcourse.suitability.levelling import failing_names, moved, on_plane
from firstcourse.suitability.plumb import Stance, needed_furring_mm
from firstcourse.suitability.remedies import Remedy
from firstcourse.units import Tape, format_length, ticks_from_mm, to_mm
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Straightening:
    """One way to bring the studs into one plane.

    Attributes:
        remedy: What to do, and whether the wall then passes.
        studs: How many get something.
        corrections_mm: For each reading what to add (or, less than nothing, to plane off), in whole graduations of
            the tape [mm].
    """

    remedy: Remedy
    studs: int
    corrections_mm: tuple[float, ...]


def corrections_mm(spots: Sequence[Spot], *, plane_down: bool, string: bool = False) -> tuple[float, ...]:
    """What to shim (positive) or plane off (negative) at each reading so that all stand in one plane [mm].

    The plane is the one that needs the least: that midway through the narrowest zone about all readings, moved out
    to the proudest (shim only) or in to the deepest (plane down only).

    Args:
        spots: The readings; along a string two or more, else three or more that are not on one line.
        plane_down: Plane the proud studs down instead of shimming the others out.
        string: The readings lie along one string.
    """
    zone, _width = least_zone(spots, string=string)
    off = on_plane(spots, zone)
    target = min(off) if plane_down else max(off)
    return tuple(target - each for each in off)


def wall_straightenings(
    rules: RuleSet, spots: tuple[Spot, ...], tolerance: Tolerance, tape: Tape, *, string: bool
) -> tuple[Straightening, ...]:
    """Ways to straighten a wall's studs, each judged again with the shims and strokes a tape can show.

    Returns:
        Those that pass first, by the labour they ask.
    """
    thickest = rules.number("surface.shim.max") * MM_PER_IN
    deepest = rules.number("surface.plane_down.max") * MM_PER_IN
    found = []
    for name, what, plane_down, most in (
        ("shim", "Shim the studs out to the proudest", False, thickest),
        ("plane_down", "Plane the proud studs down to the deepest", True, deepest),
    ):
        exact = corrections_mm(spots, plane_down=plane_down, string=string)
        marked = tuple(to_mm(_marked(each, tape)) for each in exact)
        studs = len({s.u_mm for s, each in zip(spots, marked, strict=True) if each})
        largest = max(abs(each) for each in marked)
        failing = failing_names(moved(spots, marked), tolerance, string=string)
        if largest > most:
            failing = (
                *failing,
                f"{name.replace('_', ' ')} of more than {format_length(ticks_from_mm(most), tape)}",
            )
        found.append(
            Straightening(
                remedy=Remedy(
                    names=(name,),
                    what=f"{what}: {studs} {'stud' if studs == 1 else 'studs'}, "
                    f"up to {format_length(ticks_from_mm(largest), tape)}.",
                    passes=not failing,
                    height_in=0.0,
                    material=float(studs) if name == "shim" else 0.0,
                    labour_h=round(rules.number(f"remedy.{name}.labour") * studs, 2),
                    still_failing=failing,
                    checks=(),
                ),
                studs=studs,
                corrections_mm=marked,
            )
        )
    return tuple(sorted(found, key=lambda each: (not each.remedy.passes, each.remedy.labour_h)))


def _marked(length_mm: float, tape: Tape) -> int:
    """The nearest whole graduation [ticks]."""
    sign = -1 if length_mm < 0 else 1
    return sign * tape.graduation * round(abs(ticks_from_mm(length_mm)) / tape.graduation)


def stud_table(spots: Sequence[Spot], corrections: Sequence[float], tape: Tape) -> dict[str, str]:
    """Stud by stud what to do, from the left."""
    rows: dict[str, list[str]] = {}
    order = sorted(range(len(spots)), key=lambda i: (spots[i].u_mm, spots[i].v_mm))
    heights = {s.v_mm for s in spots}
    for i in order:
        spot, each = spots[i], corrections[i]
        what = (
            "leave"
            if not each
            else f"{'shim' if each > 0 else 'plane off'} {format_length(ticks_from_mm(abs(each)), tape)}"
        )
        at = f" at {format_length(ticks_from_mm(spot.v_mm), tape)} up" if len(heights) > 1 else ""
        rows.setdefault(f"stud at {format_length(ticks_from_mm(spot.u_mm), tape)}", []).append(what + at)
    return {stud: "; ".join(what) for stud, what in rows.items()}


def packing(rules: RuleSet, stance: Stance, spots: tuple[Spot, ...]) -> dict[str, Working]:
    """What each stud gets at the lowest and the highest board edge so that the wall is plumb and straight at once.

    Args:
        rules: The rule book.
        stance: How the wall stands.
        spots: Readings along one string.

    Returns:
        One working by its short name; none where the wall is plumb enough, as shims alone then do.
    """
    edges = {"foot": stance.bottom_mm, "top": stance.top_mm}
    furring = {name: needed_furring_mm(rules, stance, height) for name, height in edges.items()}
    if not any(furring.values()):
        return {}
    shims = corrections_mm(spots, plane_down=False, string=True)
    # The proudest place of all needs nothing.
    spare = min(furring.values()) + min(shims)
    rows = {
        f"stud at {_shown(spot.u_mm, stance.tape)}": ", ".join(
            f"{name} {_shown(to_mm(_marked(furring[name] + shim - spare, stance.tape)), stance.tape)}"
            for name in edges
        )
        for spot, shim in sorted(zip(spots, shims, strict=True), key=lambda each: each[0].u_mm)
    }
    return {
        "flatness.packing": Working(
            title=f"{stance.where}: what each stud gets so that the wall is plumb and straight",
            formula="furring at that height + shim of that stud, less the least of all",
            values=rows,
            result=_shown(max(furring.values()) + max(shims) - spare, stance.tape),
            unit="at most",
            source="lean and readings as entered; whole graduations of the tape",
        )
    }


def _shown(length_mm: float, tape: Tape) -> str:
    return format_length(ticks_from_mm(length_mm), tape)
