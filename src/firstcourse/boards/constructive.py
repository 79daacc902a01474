"""The layout made without a solver: the cheapest of the alternatives by the layout's own measure."""

from firstcourse.boards.layout import Choice, SurfaceLayout, build_layout, no_layout
from firstcourse.boards.space import layout_alternatives
from firstcourse.plan import Stock, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape


def constructive_layout(
    surface: Surface, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape, *, mark: str = ""
) -> SurfaceLayout:
    """Lay one surface with few pieces and no relaxed rule where that can be.

    Args:
        surface: What is to be boarded, with its framing.
        stock: Sheets that can be bought.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.
        mark: Letter and number of the surface on drawings, such as `W2`; its kind's letter where empty.

    Returns:
        The layout; one without boards and with a `stop` finding where none can be made.
    """
    alternatives = layout_alternatives(surface, stock, rules, tape)
    if not alternatives:
        return no_layout(surface)
    return build_layout(surface, best_choice(alternatives, stock), stock, rules, tape, mark=mark)


def best_choice(alternatives: tuple[Choice, ...], stock: tuple[Stock, ...]) -> Choice:
    """The cheapest of some alternatives by the layout's own measure, then of the smallest sheet."""
    sizes = {sheet.id: sheet.size for sheet in stock}
    return min(
        alternatives,
        key=lambda choice: (choice.cost, sizes[choice.stock][0] * sizes[choice.stock][1], choice.along_v),
    )
