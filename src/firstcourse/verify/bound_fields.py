"""The bounds over every layout, as the verifier reads them from raw JSON."""

from dataclasses import dataclass

from firstcourse.verify.fields import Node, number
from firstcourse.verify.shopping_fields import texts


@dataclass(frozen=True, slots=True)
class FieldBound:
    """What is said of one surface: areas [mm²], the least side of a board [ticks], the seams that take most."""

    surface: str
    covered: int
    gaps: int
    least: int
    side: int
    courses: int
    alone: int
    pair: int


@dataclass(frozen=True, slots=True)
class LayoutBound:
    """What is said of surfaces that share sheets: kept offcuts [mm²], sheets, cost where prices are known."""

    where: str
    stocks: tuple[str, ...]
    surfaces: tuple[FieldBound, ...]
    kept: int
    used: int
    lower_bound: int
    proven: bool
    cost: float | None
    least_cost: float | None


def read_bounds(top: Node) -> tuple[LayoutBound, ...]:
    """Read the bounds of a plan; none where it gives none."""
    return tuple(
        LayoutBound(
            where=node.where,
            stocks=texts(node, "stocks"),
            surfaces=tuple(
                FieldBound(
                    field.text("surface"),
                    field.count("covered"),
                    field.count("gaps"),
                    field.count("least"),
                    field.length("side"),
                    field.count("courses"),
                    field.count("alone"),
                    field.count("pair"),
                )
                for field in node.nodes("surfaces")
            ),
            kept=node.count("kept"),
            used=node.count("used"),
            lower_bound=node.count("lower_bound"),
            proven=node.flag("proven"),
            cost=_money(node, "cost"),
            least_cost=_money(node, "least_cost"),
        )
        for node in top.nodes("bounds", ())
    )


def _money(node: Node, key: str) -> float | None:
    value = node.raw(key, None)
    return None if value is None else number(value, f"{node.where}.{key}")
