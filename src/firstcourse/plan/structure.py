"""What was judged of a frame, as values: the calculation sheets and the engineer's data sheets say it in words."""

from typing import Literal

from firstcourse.plan.base import Frozen, Ring, Segment
from firstcourse.values import Limit, Measure, Statement, Value

FrameKind = Literal["floor", "wall", "ceiling"]


class SheetLine(Frozen):
    """One line of a calculation sheet.

    Attributes:
        name: What is checked, by its code, such as `bending`; empty for a line without a limit, such as loads.
        working: Key of the working in the plan.
        found: The value found.
        limit: What is allowed; None for a line without a limit.
        holds: Whether the value keeps the limit.
        advised: The limit is advice beside a published rating that allows what was found; it stops nothing.
    """

    name: str = ""
    working: str
    found: Measure
    limit: Limit | None = None
    holds: bool = True
    advised: bool = False

    @property
    def stands(self) -> bool:
        """Whether the work may go on as far as this line goes: it holds, or its limit is advice."""
        return self.holds or self.advised

    @property
    def verdict(self) -> str:
        """Its outcome, by its code."""
        return "check_holds" if self.holds else "check_advised" if self.advised else "check_fails"


class LayerLine(Frozen):
    """One layer of the build-up.

    Attributes:
        of: What it is, by its code.
        thickness: As it ends up in place.
        density: For its mass.
        mass: For one square metre.
    """

    of: str
    thickness: Measure
    density: Measure
    mass: Measure


class LoadRow(Frozen):
    """One thing of a load on a part of a floor.

    Attributes:
        of: What it is, by its code.
        kg: Its mass there [kg].
        litres: Its volume, where its mass is that of a volume [l].
        density_kg_m3: Of that volume [kg/m³].
    """

    of: str
    kg: float
    litres: float | None = None
    density_kg_m3: float | None = None


class AreaLoad(Frozen):
    """What stands on a part of a judged floor.

    Attributes:
        of: Reference to it, such as `bath/floor/shower`.
        outline: Where it stands, in the floor's coordinates.
        area_m2: Of the outline [m²].
        psf: Its mean load, the structure under it left out [psf].
        instead: It stands in place of the floor's own layers.
        assumed: Id of the rule whose value was taken because the job says nothing; empty otherwise.
    """

    of: str
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
        facts: What was found or entered, and what follows from it by the rules, by name, in order.
        layers: What lies on or hangs below the structure.
        mass: Of all layers for one square metre; None where no layers are known.
        assumed: What was taken because it was not known, or by rule.
        unjudged: What the checks leave open, by code.
        lines: The calculation sheet, in order.
        remedies: Keys of the workings of the remedies, best first; empty where none is needed.
        areas: What stands on parts of a floor.
        joist_lines: Centre line of each joist of a floor, in its coordinates.
        joist_loads: What each joist carries of the areas.
        other: Lasting loads over the whole floor beside its layers, by code [psf].
    """

    surface: str
    kind: FrameKind
    facts: dict[str, Value]
    layers: tuple[LayerLine, ...] = ()
    mass: Measure | None = None
    assumed: tuple[Statement, ...] = ()
    unjudged: tuple[str, ...] = ()
    lines: tuple[SheetLine, ...]
    remedies: tuple[str, ...] = ()
    areas: tuple[AreaLoad, ...] = ()
    joist_lines: tuple[Segment, ...] = ()
    joist_loads: tuple[JoistLoad, ...] = ()
    other: tuple[tuple[str, float], ...] = ()

    @property
    def holds(self) -> bool:
        """Whether every check holds, advice left out."""
        return all(line.stands for line in self.lines)
