"""What stands on a part of a floor, such as a shower's bed or a filled tub, and what a joist carries of it.

A load on a part is told beside the floor's own layers: where it stands in their place, only what it weighs more
than they do comes on top of them.
"""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.geometry.polygon import Ring
from firstcourse.suitability.buildup import PSF_PER_KG_M2
from firstcourse.units import KG_PER_LB
from firstcourse.workings import Working

LITRES_PER_CUBIC_FOOT = 28.316846592
SQ_FT_PER_M2 = 10.763910416709722
SQ_IN_PER_SQ_FT = 144


class AreaKind(StrEnum):
    """What stands there."""

    SHOWER = "shower"
    KERB = "kerb"
    BENCH = "bench"
    TUB = "tub"
    THING = "thing"


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadRow:
    """One thing of a load.

    Attributes:
        of: What it is, such as `bed` or `tile`.
        kg: Its mass on the whole part [kg].
        litres: Its volume, where its mass is that of a volume [l].
        density_kg_m3: Of that volume [kg/m³].
    """

    of: str
    kg: float
    litres: float | None = None
    density_kg_m3: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaLoad:
    """A load on a part of a floor.

    Attributes:
        of: Reference to what stands there, such as `bath/floor/shower`.
        name: What it is called on the sheets.
        outline: Where it stands, in the floor's coordinates [ticks].
        area_m2: Of the outline [m²].
        rows: What it is made of.
        instead: It stands in place of the floor's own layers.
        assumed: Id of the rule whose value was taken because the job says nothing; empty otherwise.
    """

    of: str
    name: str
    kind: AreaKind
    outline: Ring
    area_m2: float
    rows: tuple[LoadRow, ...]
    instead: bool = True
    assumed: str = ""

    @property
    def kg(self) -> float:
        """Its whole mass [kg]."""
        return sum(row.kg for row in self.rows)

    @property
    def psf(self) -> float:
        """Its mean load [psf]."""
        return self.kg / self.area_m2 * PSF_PER_KG_M2

    @property
    def is_built(self) -> bool:
        """Whether the plan builds it; tubs and other things stand there by themselves, on feet of their own."""
        return self.kind in (AreaKind.SHOWER, AreaKind.KERB, AreaKind.BENCH)

    def more_than(self, layers_psf: float) -> float:
        """What it brings over the floor's own layers [psf]."""
        return max(0.0, self.psf - layers_psf) if self.instead else self.psf


@dataclass(frozen=True, slots=True, kw_only=True)
class PartLoad:
    """What one joist carries of a load on a part of the floor, evenly along a part of its span.

    Attributes:
        of: Reference to what stands there.
        name: What it is called on the sheets.
        load_lb: What it brings over the floor's own layers, on this joist [lb].
        length_in: Along the joist [in].
        width_in: Mean width of the floor that this joist carries of it [in].
        start_in: From one support [in]; None where it is not known, so that it stands where it does most.
    """

    of: str
    name: str
    load_lb: float
    length_in: float
    width_in: float
    start_in: float | None = None

    @property
    def line(self) -> float:
        """Load along the joist [lb/in]."""
        return self.load_lb / self.length_in

    def on(self, span_in: float) -> tuple[float, float]:
        """Where it begins, and how long it is, on a span [in]; in the middle where its place is not known."""
        length = min(self.length_in, span_in)
        start = (span_in - length) / 2 if self.start_in is None else self.start_in
        return start, length

    def narrowed(self, width_in: float) -> "PartLoad":
        """The same on a joist that carries so wide a strip of the floor [in]."""
        share = min(1.0, width_in / self.width_in)
        return PartLoad(
            of=self.of,
            name=self.name,
            load_lb=self.load_lb * share,
            length_in=self.length_in,
            width_in=self.width_in * share,
            start_in=self.start_in,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class JoistLoads:
    """The loads on parts that one joist carries.

    Attributes:
        joist: Its number, counted from the side that the joists are measured from.
    """

    joist: int
    parts: tuple[PartLoad, ...]


def area_working(there_psf: dict[str, float], area: AreaLoad, source: str) -> Working:
    """How the load on a part is made up, the structure under it included [psf].

    Args:
        there_psf: What lies under it, by name: the structure, and the floor's own layers where it stands on them.
        area: The load.
        source: Where the figures come from.
    """
    square_feet = area.area_m2 * SQ_FT_PER_M2
    values = {"area": f"{square_feet:.2f} sq ft", **{name: f"{psf:.2f} psf" for name, psf in there_psf.items()}}
    steps, parts = [], list(there_psf.values())
    for row in area.rows:
        pounds = row.kg / KG_PER_LB
        psf = pounds / square_feet
        parts.append(psf)
        values[row.of] = f"{pounds:.1f} lb, {psf:.2f} psf"
        if row.litres is not None and row.density_kg_m3 is not None:
            feet = row.litres / LITRES_PER_CUBIC_FOOT
            weight = row.density_kg_m3 * LITRES_PER_CUBIC_FOOT / 1000 / KG_PER_LB
            steps.append(f"{row.of}: {feet:.3f} × {weight:.2f} lb for a cubic foot = {pounds:.1f} lb")
        steps.append(f"{row.of}: {pounds:.2f} / {square_feet:.3f} = {psf:.2f} psf")
    total = sum(parts)
    steps.append(" + ".join(f"{part:.2f}" for part in parts) + f" = {total:.2f} psf")
    return Working(
        title=f"Dead load, {area.name}",
        formula="structure + what stands there, each by its mass / area",
        values=values,
        steps=tuple(steps),
        result=f"{total:.1f}",
        unit="psf",
        source=source,
    )


def shares_working(loads: JoistLoads, spacing_in: float) -> Working:
    """What one joist carries of the loads on parts of the floor, beyond the floor's own layers."""
    steps = []
    for part in loads.parts:
        at = "" if part.start_in is None else f" from {part.start_in:g} in"
        steps.append(
            f"{part.name}, {part.width_in:.2f} in wide and {part.length_in:g} in long{at}: {part.load_lb:.2f} / "
            f"{part.length_in:g} = {part.line:.4f} lb/in"
        )
    total = sum(part.load_lb for part in loads.parts)
    steps.append(" + ".join(f"{part.load_lb:.2f}" for part in loads.parts) + f" = {total:.2f} lb")
    return Working(
        title=f"Loads on parts of the floor that joist {loads.joist} carries, the most of any",
        formula="the strip half-way to each neighbour × (load there - layers of the floor)",
        values={"spacing": f"{spacing_in:g} in"},
        steps=tuple(steps),
        result=f"{total:.1f}",
        unit="lb",
        source="where each stands on the plan, and the joists as entered",
    )
