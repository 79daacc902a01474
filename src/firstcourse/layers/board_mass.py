"""What a sheet weighs for its size: its density as entered, else that of its family in the rule book."""

from firstcourse.plan import Stock
from firstcourse.rules import RuleEntry, RuleSet


def board_family(kind: str) -> str:
    """A stock's kind as the rule book names board families.

    Example:
        >>> board_family("Cement board")
        'cement_board'
    """
    return kind.strip().lower().replace(" ", "_").replace("-", "_")


def density_rule(kind: str, rules: RuleSet) -> RuleEntry:
    """The rule for the density of a family of boards [kg/m³]; fibre cement where it has none of its own."""
    own = f"mass.board.{board_family(kind)}"
    return rules.entry(own if rules.has(own) else "boards.density")


def board_density(stock: Stock, rules: RuleSet) -> float:
    """Density of a sheet [kg/m³]."""
    if stock.density_kg_m3 is not None:
        return stock.density_kg_m3
    return rules.number(density_rule(stock.kind, rules).id)
