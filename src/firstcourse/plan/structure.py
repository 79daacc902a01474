"""What was judged of a frame, as the calculation sheets and the engineer's data sheets print it."""

from typing import Literal

from firstcourse.plan.base import Frozen

FrameKind = Literal["floor", "wall", "ceiling"]


def verdict(*, holds: bool, advised: bool) -> str:
    """The outcome of a check as printed; a limit that is advice stops nothing."""
    if holds:
        return "holds"
    return "advised, not kept" if advised else "DOES NOT HOLD"


class SheetLine(Frozen):
    """One line of a calculation sheet.

    Attributes:
        name: What is checked or worked out, in words.
        working: Key of the working in the plan.
        found: The value as printed.
        limit: What is allowed, with its sense; empty for a line without a limit, such as loads.
        holds: Whether the value keeps the limit.
        advised: The limit is advice beside a published rating that allows what was found; it stops nothing.
    """

    name: str
    working: str
    found: str
    limit: str = ""
    holds: bool = True
    advised: bool = False

    @property
    def stands(self) -> bool:
        """Whether the work may go on as far as this line goes: it holds, or its limit is advice."""
        return self.holds or self.advised

    @property
    def verdict(self) -> str:
        """Its outcome as printed."""
        return verdict(holds=self.holds, advised=self.advised)


class LayerLine(Frozen):
    """One layer of the build-up, as printed.

    Attributes:
        thickness: In inches and millimetres.
        density: With its unit.
        mass: For one square metre and one square foot.
    """

    name: str
    thickness: str
    density: str
    mass: str


class StructureSheet(Frozen):
    """One judged floor, wall or ceiling.

    Attributes:
        surface: Surface id.
        where: The place in words.
        facts: Name and value of what was found or entered, in order.
        layers: What lies on or hangs below the structure.
        mass: Of all layers, as printed; empty where no layers are known.
        assumed: What was taken because it was not known, or by rule.
        unjudged: What the checks leave open.
        question: What is asked of an engineer.
        lines: The calculation sheet, in order.
        remedies: Key of the working that ranks the remedies; empty where none is needed.
    """

    surface: str
    where: str
    kind: FrameKind
    facts: tuple[tuple[str, str], ...]
    layers: tuple[LayerLine, ...] = ()
    mass: str = ""
    assumed: tuple[str, ...] = ()
    unjudged: tuple[str, ...] = ()
    question: str
    lines: tuple[SheetLine, ...]
    remedies: str = ""

    @property
    def holds(self) -> bool:
        """Whether every check holds, advice left out."""
        return all(line.stands for line in self.lines)
