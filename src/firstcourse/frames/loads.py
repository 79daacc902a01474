"""What stands on a part of a floor, such as a shower's bed or a filled tub, and what a joist carries of it.

A load on a part is told beside the floor's own layers: where it stands in their place, only what it weighs more
than they do comes on top of them.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from firstcourse.geometry import Ring
from firstcourse.layers import PSF_PER_KG_M2, Layer
from firstcourse.values import Ref, Value, Word, length_in, measure
from firstcourse.workings import Working

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
        of: What it is, by its code, such as `bed` or `tile`.
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
        outline: Where it stands, in the floor's coordinates [ticks].
        area_m2: Of the outline [m²].
        rows: What it is made of.
        instead: It stands in place of the floor's own layers.
        assumed: Id of the rule whose value was taken because the job says nothing; empty otherwise.
    """

    of: str
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
        load_lb: What it brings over the floor's own layers, on this joist [lb].
        length_in: Along the joist [in].
        width_in: Mean width of the floor that this joist carries of it [in].
        start_in: From one support [in]; None where it is not known, so that it stands where it does most.
    """

    of: str
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


@dataclass(frozen=True, slots=True)
class Summed:
    """A load that is made up of several, by what they are [psf]."""

    rows: tuple[tuple[str, float], ...]

    @classmethod
    def of(cls, there: Mapping[str, float], layers: tuple[Layer, ...] = ()) -> "Summed":
        """What is there and the layers on it; layers of one kind are one.

        Args:
            there: By its code [psf].
            layers: What comes on it.
        """
        rows = dict(there)
        for layer in layers:
            rows[layer_code(layer)] = rows.get(layer_code(layer), 0.0) + layer.mass_psf
        return cls(tuple(rows.items()))

    @property
    def psf(self) -> float:
        """All of it [psf]."""
        return sum(psf for _of, psf in self.rows)

    @property
    def inputs(self) -> dict[str, Value]:
        """As a working keeps it."""
        return {
            "of": tuple(Word(word=of) for of, _psf in self.rows),
            "loads": tuple(measure(psf, "psf") for _of, psf in self.rows),
        }

    def working(self, formula: str, at: tuple[str, ...], rule: str) -> Working:
        """How it is made up."""
        return Working(formula=formula, at=at, inputs=self.inputs, result=measure(self.psf, "psf"), rule=rule)


def layer_code(layer: Layer) -> str:
    """A layer by its code."""
    return layer.of or layer.name


def area_working(ref: str, there: Summed, area: AreaLoad, rule: str) -> Working:
    """How the load on a part is made up, the structure under it included.

    Args:
        ref: Reference to the floor.
        there: What lies under it: the structure, and the floor's own layers where it stands on them.
        area: The load.
        rule: Whose value the structure's is.
    """
    inputs: dict[str, Value] = {"area": measure(area.area_m2, "m2"), **there.inputs}
    solid = [row for row in area.rows if row.litres is not None and row.density_kg_m3 is not None]
    if solid:
        inputs |= {
            "solid": tuple(Word(word=row.of) for row in solid),
            "volume": tuple(measure((row.litres or 0.0) / 1000, "m3") for row in solid),
            "density": tuple(measure(row.density_kg_m3 or 0.0, "kg/m3") for row in solid),
            "solid_mass": tuple(measure(row.kg, "kg") for row in solid),
        }
    each = [row.kg / area.area_m2 * PSF_PER_KG_M2 for row in area.rows]
    if area.rows:
        inputs |= {
            "rows": tuple(Word(word=row.of) for row in area.rows),
            "mass": tuple(measure(row.kg, "kg") for row in area.rows),
            "psf": tuple(measure(psf, "psf") for psf in each),
        }
    if area.assumed:
        inputs["assumed"] = Ref(ref=f"rule/{area.assumed}")
    return Working(
        formula="frames-area_load",
        at=(ref, area.of),
        inputs=inputs,
        result=measure(there.psf + sum(each), "psf"),
        rule=rule,
    )


def shares_working(ref: str, loads: JoistLoads, spacing_in: float) -> Working:
    """What one joist carries of the loads on parts of the floor, beyond the floor's own layers."""
    parts = loads.parts
    inputs: dict[str, Value] = {
        "joist": loads.joist,
        "spacing": length_in(spacing_in),
        "parts": tuple(Ref(ref=part.of) for part in parts),
        "part_width": tuple(length_in(part.width_in) for part in parts),
        "part_length": tuple(length_in(part.length_in) for part in parts),
    }
    starts = [part.start_in for part in parts if part.start_in is not None]
    if starts:
        inputs["part_start"] = tuple(map(length_in, starts))
    inputs |= {
        "part_load": tuple(measure(part.load_lb, "lb") for part in parts),
        "part_line": tuple(measure(part.line, "lb/in") for part in parts),
    }
    total = sum(part.load_lb for part in parts)
    return Working(formula="frames-joist_share", at=(ref,), inputs=inputs, result=measure(total, "lb"))
