"""The least that any layout the rules allow could take, not only the one that is planned."""

from pydantic import Field

from firstcourse.plan.base import Frozen, Ticks


class FieldBound(Frozen):
    """The least area of board that one surface takes, however its courses and seams are laid.

    Attributes:
        surface: Its id.
        covered: Ground that boards and the gaps between them must cover [mm²].
        gaps: The most of it that gaps between boards can take [mm²].
        least: What is left for boards [mm²].
        side: No board is narrower.
        courses: So many courses leave the most gaps.
        alone: Most seams in one course.
        pair: Most seams in two neighbouring courses together.
    """

    surface: str
    covered: int
    gaps: int
    least: int
    side: Ticks
    courses: int
    alone: int
    pair: int


class LayoutBound(Frozen):
    """The fewest sheets, and the least cost, of surfaces that share sheets, over every layout.

    Attributes:
        stocks: Ids of the sheets they may be boarded with.
        surfaces: What each of them takes at least.
        kept: Area of the kept offcuts of these sheets [mm²].
        used: Sheets that the plan buys of them.
        lower_bound: No layout takes fewer.
        proven: The plan meets it.
        cost: Of the sheets used, in the job's currency; None where a price is missing.
        least_cost: No layout costs less; None where a price is missing.
    """

    stocks: tuple[str, ...]
    surfaces: tuple[FieldBound, ...]
    kept: int
    used: int
    lower_bound: int
    proven: bool
    cost: float | None = Field(default=None)
    least_cost: float | None = Field(default=None)
