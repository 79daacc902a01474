"""What is bought and how it came about, as the verifier reads it from raw JSON: stock, quantities, workings."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from firstcourse.verify.fields import FieldError, Node

_MOST = 1_000_000
_LARGEST = 1e12


@dataclass(frozen=True, slots=True)
class SheetStock:
    """A kind of sheet: width and height, thickness [ticks], its family, price of one, density [kg/m³]."""

    size: tuple[int, int]
    thickness: int
    kind: str
    price: float | None
    density: float | None


@dataclass(frozen=True, slots=True)
class TileStock:
    """A tile that was chosen: of a hexagon its size across flats and across corners.

    Attributes:
        sheet: Pieces of one mounted sheet across and up; None for loose tile.
        per_sheet: Pieces on one mounted sheet; 1 for loose tile.
        per_box: Pieces or sheets in a box; None where it is bought by the piece.
    """

    size: tuple[int, int]
    shape: str
    directional: bool
    id: str = ""
    thickness: int = 0
    joint: int = 0
    kind: str = ""
    edges: str = "pressed"
    mounted: bool = False
    sheet: tuple[int, int] | None = None
    per_sheet: int = 1
    per_box: int | None = None
    price: float | None = None


@dataclass(frozen=True, slots=True)
class Pack:
    """How something is sold: what one pack is and how much it holds; the width of a roll in ticks."""

    kind: str
    size: float
    unit: str
    sheets: int | None
    width: int | None


@dataclass(frozen=True, slots=True)
class Quantity:
    """Something to buy."""

    item: str
    exact: float
    unit: str
    buy: int
    pack: Pack
    working: str


Given = Any
"""A value as it stands in the plan: a number with its unit, a reference, a code, a name, a count, or several."""


def number_of(given: Given) -> float | None:
    """A value's number; None where it has none, or one that nothing on a site has."""
    if isinstance(given, Mapping):
        given = given.get("value")
    numeric = isinstance(given, int | float) and not isinstance(given, bool)
    return float(given) if numeric and abs(given) <= _LARGEST else None


@dataclass(frozen=True, slots=True)
class Working:
    """How a number came about: what went in, what it comes to, what is allowed of it."""

    formula: str
    at: tuple[str, ...]
    inputs: Mapping[str, Given] = field(default_factory=dict)
    found: Given = None
    limit: Given = None
    rule: str = ""

    @property
    def key(self) -> str:
        """The key it must have in the plan."""
        return f"{self.formula}@{'+'.join(self.at)}"

    def number(self, name: str) -> float | None:
        """An input's number, in its unit; None where it has none."""
        return number_of(self.inputs.get(name))

    @property
    def comes_to(self) -> float | None:
        """The result's number, in its unit; None where it has none."""
        return number_of(self.found)


@dataclass(frozen=True, slots=True)
class RuleNote:
    """A rule's value as the papers print it."""

    id: str
    value: str
    unit: str
    basis: str
    source: str
    taken_from: str
    read: str = ""
    converted: str = ""
    override: str = ""


@dataclass(frozen=True, slots=True)
class Shopping:
    """What is bought, and all workings and rules; the ids of stock as they are listed, twice or not."""

    sheet_stock: dict[str, SheetStock] = field(default_factory=dict)
    quantities: tuple[Quantity, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)
    rule_notes: tuple[RuleNote, ...] = ()
    stock_ids: tuple[str, ...] = ()
    tile_ids: tuple[str, ...] = ()


def read_shopping(top: Node) -> Shopping:
    """Read stock, quantities, workings and rules of a plan.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    return Shopping(
        sheet_stock={node.text("id"): _sheet_stock(node) for node in top.nodes("stock")},
        quantities=tuple(
            Quantity(
                item=node.text("item"),
                exact=node.number("exact"),
                unit=node.text("unit"),
                buy=node.count("buy"),
                pack=_pack(Node(node.raw("pack"), f"{node.where}.pack")),
                working=node.text("working", ""),
            )
            for node in top.nodes("quantities")
        ),
        workings={name: _working(node) for name, node in top.named("workings")},
        rule_notes=tuple(
            RuleNote(
                id=node.text("id"),
                value=node.text("value"),
                unit=node.text("unit"),
                basis=node.text("basis"),
                source=node.text("source"),
                taken_from=node.text("taken_from", ""),
                read=node.text("read", ""),
                converted=node.text("converted", ""),
                override=node.text("override", ""),
            )
            for node in Node(top.raw("given"), "plan.given").nodes("rules")
        ),
        stock_ids=tuple(node.text("id") for node in top.nodes("stock")),
        tile_ids=tuple(node.text("id") for node in top.nodes("tile_stock", ())),
    )


def read_tile_stock(node: Node) -> TileStock:
    """Read one tile that was chosen."""
    shape = node.text("shape", "rectangle")
    if shape not in ("rectangle", "hexagon"):
        raise FieldError(f"{node.where}.shape", f"'{shape}' is no rectangle or hexagon")
    mounted = node.raw("sheet", None) is not None
    sheet = _chips(node) if mounted else None
    return TileStock(
        size=node.size("size"),
        shape=shape,
        directional=node.flag("directional", False),
        id=node.text("id"),
        thickness=0 if node.raw("thickness", None) is None else node.length("thickness"),
        joint=0 if node.raw("joint", None) is None else node.length("joint"),
        kind=node.text("kind", ""),
        edges=node.text("edges", "pressed"),
        mounted=mounted,
        sheet=sheet,
        per_sheet=sheet[0] * sheet[1] if sheet else 1,
        per_box=_maybe_count(node, "per_box"),
        price=_maybe(node, "price"),
    )


def texts(node: Node, key: str) -> tuple[str, ...]:
    """A list of texts; none where it is missing."""
    rows = node.rows(key, ())
    for value, where in rows:
        if not isinstance(value, str):
            raise FieldError(where, "is not a text")
    return tuple(value for value, _ in rows)


def _pack(node: Node) -> Pack:
    size = node.number("size")
    if size <= 0:
        raise FieldError(f"{node.where}.size", "is not above zero")
    wide = node.raw("width", None) is not None
    return Pack(
        kind=node.text("kind"),
        size=size,
        unit=node.text("unit"),
        sheets=_maybe_count(node, "sheets"),
        width=node.length("width") if wide else None,
    )


def _sheet_stock(node: Node) -> SheetStock:
    return SheetStock(
        node.size("size"),
        node.length("thickness"),
        node.text("kind", "").strip(),
        _maybe(node, "price"),
        _maybe(node, "density_kg_m3"),
    )


def _working(node: Node) -> Working:
    at = texts(node, "at")
    if not at:
        raise FieldError(f"{node.where}.at", "names nothing that it is about")
    return Working(
        formula=node.text("formula"),
        at=at,
        inputs=Node(node.raw("inputs", {}), f"{node.where}.inputs").value,
        found=node.raw("result"),
        limit=node.raw("limit", None),
        rule=node.text("rule", ""),
    )


def _chips(node: Node) -> tuple[int, int]:
    """Chips of a mounted sheet across and up."""
    across, up = (_whole(value, where) for value, where in _pair(node, "sheet"))
    return across, up


def _pair(node: Node, key: str) -> list[tuple[object, str]]:
    rows = node.rows(key)
    if len(rows) != 2:
        raise FieldError(f"{node.where}.{key}", "is not a pair of numbers")
    return list(rows)


def _whole(value: object, where: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= _MOST:
        raise FieldError(where, "is not a whole number above zero")
    return value


def _maybe_count(node: Node, key: str) -> int | None:
    value = node.raw(key, None)
    return None if value is None else _whole(value, f"{node.where}.{key}")


def _maybe(node: Node, key: str) -> float | None:
    if node.raw(key, None) is None:
        return None
    found = node.number(key)
    if found < 0:
        raise FieldError(f"{node.where}.{key}", "is less than nothing")
    return found
