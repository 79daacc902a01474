"""What stands on parts of a judged floor, as the verifier reads it from raw JSON."""

from dataclasses import dataclass

from firstcourse.geometry import Point, Ring
from firstcourse.verify.fields import FieldError, Node, number, segment

_KINDS = ("shower", "kerb", "bench", "tub", "thing")


@dataclass(frozen=True, slots=True)
class LoadRow:
    """One thing of a load: its mass [kg], and where that is of a volume [l], that and its density [kg/m³]."""

    of: str
    kg: float
    litres: float | None
    density: float | None


@dataclass(frozen=True, slots=True)
class AreaLoad:
    """A load on a part of a floor: what it is made of, its mean load [psf]."""

    of: str
    kind: str
    outline: Ring
    area: float
    rows: tuple[LoadRow, ...]
    psf: float
    instead: bool
    assumed: str

    @property
    def kg(self) -> float:
        """Its whole mass [kg]."""
        return sum(row.kg for row in self.rows)

    @property
    def is_built(self) -> bool:
        """Whether the plan builds it."""
        return self.kind in ("shower", "kerb", "bench")


@dataclass(frozen=True, slots=True)
class JoistLoad:
    """What one joist carries of a load [lb], how long and wide, and from where along its span [in]."""

    joist: int
    of: str
    pounds: float
    length: float
    width: float
    start: float | None


@dataclass(frozen=True, slots=True)
class FloorLoads:
    """Loads on parts of one floor."""

    areas: tuple[AreaLoad, ...] = ()
    lines: tuple[tuple[Point, Point], ...] = ()
    joists: tuple[JoistLoad, ...] = ()
    other: tuple[tuple[str, float], ...] = ()


def read_loads(node: Node) -> FloorLoads:
    """Read what a sheet says of parts of its floor.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    return FloorLoads(
        areas=tuple(_area(item) for item in node.nodes("areas", ())),
        lines=tuple(segment(value, where) for value, where in node.rows("joist_lines", ())),
        joists=tuple(_joist(item) for item in node.nodes("joist_loads", ())),
        other=tuple(_named(value, where) for value, where in node.rows("other", ())),
    )


def _area(node: Node) -> AreaLoad:
    kind, area = node.text("kind"), node.number("area_m2")
    if kind not in _KINDS or area <= 0:
        raise FieldError(node.where, "is no load on a part of a floor")
    return AreaLoad(
        of=node.text("of"),
        kind=kind,
        outline=node.ring("outline"),
        area=area,
        rows=tuple(_row(row) for row in node.nodes("rows")),
        psf=node.number("psf"),
        instead=node.flag("instead", True),
        assumed=node.text("assumed", ""),
    )


def _row(node: Node) -> LoadRow:
    litres, density = (
        None if node.raw(key, None) is None else node.number(key) for key in ("litres", "density_kg_m3")
    )
    row = LoadRow(of=node.text("of"), kg=node.number("kg"), litres=litres, density=density)
    if min(row.kg, litres or 0.0, density or 0.0) < 0 or (litres is None) != (density is None):
        raise FieldError(node.where, "is no mass, or has a volume without a density")
    return row


def _joist(node: Node) -> JoistLoad:
    start = node.raw("start_in", None)
    found = JoistLoad(
        joist=node.count("joist"),
        of=node.text("of"),
        pounds=node.number("load_lb"),
        length=node.number("length_in"),
        width=node.number("width_in"),
        start=None if start is None else number(start, f"{node.where}.start_in"),
    )
    if min(found.length, found.width) <= 0 or found.pounds < 0 or (found.start or 0) < 0:
        raise FieldError(node.where, "is no load on a part of a joist")
    return found


def _named(value: object, where: str) -> tuple[str, float]:
    if not isinstance(value, list | tuple) or len(value) != 2 or not isinstance(value[0], str):
        raise FieldError(where, "is not a name and a load")
    return value[0], number(value[1], where)
