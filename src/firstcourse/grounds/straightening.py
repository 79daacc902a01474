"""Making a wall's studs stand in one plane: how much to shim or plane off each, and whether the wall then passes.

Works in mm; a reading is how far a stud's face stands towards the tile.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.frames import Remedy
from firstcourse.grounds.flatness import MM_PER_IN, Spot, Tolerance, least_zone
from firstcourse.grounds.levelling import failing_names, moved, on_plane
from firstcourse.grounds.plumb import Stance, needed_furring_mm
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, ticks_from_mm, to_mm
from firstcourse.values import length, measure
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
    for name, plane_down, most in (("shim", False, thickest), ("plane_down", True, deepest)):
        exact = corrections_mm(spots, plane_down=plane_down, string=string)
        marked = tuple(to_mm(_marked(each, tape)) for each in exact)
        studs = len({s.u_mm for s, each in zip(spots, marked, strict=True) if each})
        largest = max(abs(each) for each in marked)
        failing = failing_names(moved(spots, marked), tolerance, string=string)
        if largest > most:
            failing = (*failing, "too_much")
        found.append(
            Straightening(
                remedy=Remedy(
                    names=(name,),
                    passes=not failing,
                    height_in=0.0,
                    material=float(studs) if name == "shim" else 0.0,
                    labour_h=round(rules.number(f"remedy.{name}.labour") * studs, 2),
                    still_failing=failing,
                    checks=(),
                    values={"studs": studs, "deep": measure(largest, "mm")},
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


def packing(rules: RuleSet, stance: Stance, spots: tuple[Spot, ...]) -> tuple[Working, ...]:
    """What each stud gets at the lowest and the highest board edge so that the wall is plumb and straight at once.

    Args:
        rules: The rule book.
        stance: How the wall stands.
        spots: Readings along one string.

    Returns:
        One working; none where the wall is plumb enough, as shims alone then do.
    """
    foot, top = (needed_furring_mm(rules, stance, height) for height in (stance.bottom_mm, stance.top_mm))
    if not foot and not top:
        return ()
    shims = corrections_mm(spots, plane_down=False, string=True)
    # The proudest place of all needs nothing.
    spare = min(foot, top) + min(shims)
    studs = sorted(zip(spots, shims, strict=True), key=lambda each: each[0].u_mm)
    return (
        Working(
            formula="ground-packing",
            at=(stance.ref,),
            inputs={
                "left": tuple(measure(spot.u_mm, "mm") for spot, _ in studs),
                "foot": tuple(length(_marked(foot + shim - spare, stance.tape)) for _, shim in studs),
                "top": tuple(length(_marked(top + shim - spare, stance.tape)) for _, shim in studs),
            },
            result=length(_marked(max(foot, top) + max(shims) - spare, stance.tape)),
        ),
    )
