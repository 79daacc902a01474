"""What may be chosen for each surface, and what was: courses, arrangements, fields."""

from dataclasses import dataclass

from firstcourse.cutting.model import CutSheet

Size = tuple[int, int]


@dataclass(frozen=True)
class Course:
    """One course: where it may be broken and what each interval is cut as.

    Attributes:
        breaks: Ascending positions; the first and the last are the ends of the course and always taken.
        intervals: (from, to, blanks) with the numbers of two breaks; an interval not listed is not legal.
    """

    breaks: tuple[int, ...]
    intervals: tuple[tuple[int, int, tuple[Size, ...]], ...]


@dataclass(frozen=True)
class Arrangement:
    """One way to divide a field into courses, listed from one side to the other.

    Attributes:
        stagger: Least distance between breaks of neighbouring courses; ends do not count.
        stocks: Ids of the stocks its blanks may be cut from; all where empty.
    """

    courses: tuple[Course, ...]
    stagger: int
    stocks: tuple[str, ...] = ()


@dataclass(frozen=True)
class ChoiceField:
    """Something to be filled; `like` marks fields whose arrangements, number by number, go well together."""

    id: str
    arrangements: tuple[Arrangement, ...]
    like: str = ""


@dataclass(frozen=True)
class Pick:
    """What was chosen for a field: the number of the arrangement and the break numbers of each course."""

    field: str
    arrangement: int
    breaks: tuple[tuple[int, ...], ...]


@dataclass(frozen=True)
class Choice:
    """The choice for all fields, in their order, and the sheets they are cut from.

    Attributes:
        cost: Of all sheets bought.
        bound: The least that any layout costs, as given by the caller.
    """

    picks: tuple[Pick, ...]
    sheets: tuple[CutSheet, ...]
    cost: int
    bound: int

    @property
    def num_cuts(self) -> int:
        """Cuts over all sheets."""
        return sum(len(sheet.cuts) for sheet in self.sheets)

    @property
    def num_blanks(self) -> int:
        """Blanks over all sheets."""
        return sum(part.blank is not None for sheet in self.sheets for part in sheet.parts)

    @property
    def proven(self) -> bool:
        """Whether no layout costs less."""
        return self.cost == self.bound
