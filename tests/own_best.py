"""The layout of a surface that is best by itself: with it the choice of seams for all surfaces begins."""

from hypothesis import assume

from firstcourse.boards import SurfaceLayout, best_choice, build_layout, layout_alternatives
from firstcourse.plan import Stock, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape


def own_best_layout(
    surface: Surface, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape, *, mark: str = ""
) -> SurfaceLayout:
    found = layout_alternatives(surface, stock, rules, tape)
    # Where its gaps leave nothing of a random surface there is no layout to look at.
    if not found:
        assume(False)
    choice = best_choice(found, stock)
    return build_layout(surface, choice, stock, rules, tape, mark=mark)
