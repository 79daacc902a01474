"""What was judged of a frame, as the calculation sheets and the engineer's data sheets print it."""

from typing import Literal

from firstcourse.plan.base import Frozen, Ring, Segment

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


class LoadRow(Frozen):
    """One thing of a load on a part of a floor, and its mass there [kg]."""

    of: str
    kg: float


class AreaLoad(Frozen):
    """What stands on a part of a judged floor.

    Attributes:
        of: Reference to it, such as `bath/floor/shower`.
        name: What it is called on the sheets.
        outline: Where it stands, in the floor's coordinates.
        area_m2: Of the outline [m²].
        psf: Its mean load, the structure under it left out [psf].
        instead: It stands in place of the floor's own layers.
        assumed: Id of the rule whose value was taken because the job says nothing; empty otherwise.
    """

    of: str
    name: str
    kind: Literal["shower", "kerb", "bench", "tub", "thing"]
    outline: Ring
    area_m2: float
    rows: tuple[LoadRow, ...]
    psf: float
    instead: bool = True
    assumed: str = ""


class JoistLoad(Frozen):
    """What one joist carries of a load on a part of the floor, beyond the floor's own layers.

    Attributes:
        joist: Its number, as `joist_lines` are counted, from one.
        of: Reference to what stands there.
        load_lb: On this joist [lb].
        length_in: Along the joist [in].
        width_in: Mean width of the floor that it carries of it [in].
        start_in: From the support [in]; None where not known: it counts where it does most.
    """

    joist: int
    of: str
    load_lb: float
    length_in: float
    width_in: float
    start_in: float | None = None


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
        areas: What stands on parts of a floor.
        joist_lines: Centre line of each joist of a floor, in its coordinates.
        joist_loads: What each joist carries of the areas.
        other: Lasting loads over the whole floor beside its layers, by name [psf].
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
    areas: tuple[AreaLoad, ...] = ()
    joist_lines: tuple[Segment, ...] = ()
    joist_loads: tuple[JoistLoad, ...] = ()
    other: tuple[tuple[str, float], ...] = ()

    @property
    def holds(self) -> bool:
        """Whether every check holds, advice left out."""
        return all(line.stands for line in self.lines)
