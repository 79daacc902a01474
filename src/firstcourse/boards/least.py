"""The least area of sheet that any layout of a surface can be cut from."""

from firstcourse.boards.field import board_region, limits_of
from firstcourse.plan import Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape


def least_board_area(surface: Surface, rules: RuleSet, tape: Tape) -> int:
    """The least area of blanks, however the surface is laid with boards of the least size or more [ticks²].

    Boards grown by half a gap all round cover the region. A blank of w × h grows to (w + gap) × (h + gap), by most
    in proportion where it is smallest.
    """
    region, _ = board_region(surface, rules, tape.graduation)
    limits = limits_of(rules, tape.graduation)
    if region.is_empty:
        return 0
    left, lower, right, upper = region.bounds
    least = max(1, min(limits.least_piece, round(right - left), round(upper - lower)))
    return int(region.area * (least / (least + limits.gap)) ** 2)
