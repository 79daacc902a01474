"""Judged frames as the verifier reads them from raw JSON: what was found of them, lines, layers and loads."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from firstcourse.verify.fields import FieldError, Node
from firstcourse.verify.load_fields import FloorLoads, read_loads

_KINDS = ("floor", "wall", "ceiling")
_USES, _FINISHES = ("living", "sleeping"), ("ceramic", "stone")
_ABOVE = ("above_attic", "above_attic_storage", "above_floor")
_LAYERS = ("board_mortar", "board", "heating", "mortar_bed", "mortar", "tile")
_MM_PER_IN = 25.4
_MOST_SPANS = 6
_MOST = 50


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a calculation sheet: what it says of its working, and whether it holds."""

    name: str
    working: str
    found: Mapping[str, Any]
    limit: Mapping[str, Any] | None
    holds: bool
    advised: bool

    @property
    def stands(self) -> bool:
        """Whether it holds, or its limit is advice."""
        return self.holds or self.advised


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer: thickness [mm], density [kg/m³], mass [kg/m²]."""

    of: str
    thickness: float
    density: float
    mass: float


@dataclass(frozen=True, slots=True)
class CutFound:
    """A notch or hole [in]; `edge` is None where it has no distance to keep."""

    kind: str
    size: float
    place: float
    length: float
    edge: float | None
    in_bottom: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What was found or entered of a frame, in inches and pounds; what follows from it by the rules is left out.

    Attributes:
        span: Of joists, longest clear span; of studs, clear height.
        size, species, grade: Of sawn members; no size where they are given by their stiffness.
        deeper: A size whose depth studs are thought to have instead, their design values staying.
        each: EI of one engineered joist.
        layers, ratings: Of the panel, as sold, from below.
        entered: Whether its ratings were read off its stamp.
        panel: Thickness of the whole panel.
        web, mils, flange, inertia: Of steel studs, as far as they are known.
    """

    span: float
    spacing: float
    size: str = ""
    deeper: str = ""
    species: str = ""
    grade: str = ""
    each: float | None = None
    plies: int = 1
    run: tuple[float, ...] = ()
    unbroken: bool = False
    bearing: float | None = None
    layers: tuple[str, ...] = ()
    ratings: tuple[str, ...] = ()
    entered: bool = False
    glued: bool = False
    panel: float = 0.0
    use: str = ""
    finish: str = ""
    above: str = ""
    points: tuple[tuple[float, float], ...] = ()
    cuts: tuple[CutFound, ...] = ()
    sister: float | None = None
    web: float | None = None
    mils: float | None = None
    flange: float | None = None
    inertia: float | None = None


@dataclass(frozen=True, slots=True)
class Frame:
    """One judged floor, wall or ceiling; `facts`, `mass` and `assumed` as they stand in the plan."""

    surface: str
    kind: str
    facts: Mapping[str, Any]
    found: Found
    lines: tuple[Line, ...]
    layers: tuple[Layer, ...]
    mass: Any
    assumed: Any
    unjudged: Any
    remedies: tuple[str, ...]
    loads: FloorLoads


def read_frame(node: Node) -> Frame:
    """Read one sheet.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    kind = node.text("kind")
    if kind not in _KINDS:
        raise FieldError(f"{node.where}.kind", "is no floor, wall or ceiling")
    facts = Node(node.raw("facts"), f"{node.where}.facts")
    remedies = node.rows("remedies", ())
    if not all(isinstance(value, str) for value, _ in remedies):
        raise FieldError(f"{node.where}.remedies", "are no keys of workings")
    return Frame(
        surface=node.text("surface"),
        kind=kind,
        facts=facts.value,
        found=_found(kind, facts),
        lines=tuple(_line(line) for line in node.nodes("lines")),
        layers=tuple(_layer(layer) for layer in node.nodes("layers", ())),
        mass=node.raw("mass", None),
        assumed=node.raw("assumed", []),
        unjudged=node.raw("unjudged", []),
        remedies=tuple(value for value, _ in remedies),
        loads=read_loads(node),
    )


def _line(node: Node) -> Line:
    limit = node.raw("limit", None)
    return Line(
        name=node.text("name", ""),
        working=node.text("working"),
        found=_amount(node, "found"),
        limit=None if limit is None else _amount(node, "limit"),
        holds=node.flag("holds"),
        advised=node.flag("advised", False),
    )


def _amount(node: Node, key: str) -> dict[str, Any]:
    found = Node(node.raw(key), f"{node.where}.{key}")
    found.number("value"), found.text("unit", "")
    return found.value


def _layer(node: Node) -> Layer:
    return Layer(
        of=_allowed(node.text("of"), _LAYERS, f"{node.where}.of"),
        thickness=_number(node, "thickness", "mm"),
        density=_number(node, "density", "kg/m3"),
        mass=_number(node, "mass", "kg/m2"),
    )


def _found(kind: str, facts: Node) -> Found:
    if kind == "wall":
        steel = "web" in facts.value
        return Found(
            span=_inches(facts, "height"),
            spacing=_inches(facts, "spacing"),
            **({} if steel else _lumber(facts)),
            web=_inches(facts, "web") if steel else None,
            mils=_above(facts, "steel", "mil") if "steel" in facts.value else None,
            flange=_inches(facts, "flange") if "flange" in facts.value else None,
            inertia=_above(facts, "inertia", "in⁴") if "inertia" in facts.value else None,
        )
    joists: dict[str, Any] = {"span": _inches(facts, "span"), "spacing": _inches(facts, "spacing")}
    joists["plies"] = facts.count("plies")
    if not 1 <= joists["plies"] <= _MOST:
        raise FieldError(f"{facts.where}.plies", "is no number of plies")
    joists |= {"each": _above(facts, "each", "lb·in²")} if "each" in facts.value else _lumber(facts)
    if kind == "ceiling":
        return Found(**joists, above=_one_of(facts, "above", _ABOVE))
    return _floor(facts, joists)


def _floor(facts: Node, joists: dict[str, Any]) -> Found:
    layers, ratings = (_codes(facts, key, "name") for key in ("layers", "ratings"))
    run = tuple(_several(facts, "run", "mm"))
    points, at = _several(facts, "points", "lb", least=0.0), _several(facts, "points_at", "mm")
    if not layers or len(layers) != len(ratings) or len(points) != len(at):
        raise FieldError(facts.where, "has layers without ratings, or loads without places")
    if run and (len(run) > _MOST_SPANS or max(run) != joists["span"]):
        raise FieldError(f"{facts.where}.run", "is no run of which the span is the longest")
    if any(not 0 < place < joists["span"] for place in at):
        raise FieldError(f"{facts.where}.points_at", "does not lie within the span")
    sister = _above(facts, "sister", "") if "sister" in facts.value else None
    if sister is not None and sister >= 1:
        raise FieldError(f"{facts.where}.sister", "is no part of a span")
    return Found(
        **joists,
        run=run,
        unbroken=facts.flag("unbroken", False),
        bearing=_inches(facts, "bearing") if "bearing" in facts.value else None,
        layers=layers,
        ratings=ratings,
        entered=facts.flag("entered"),
        glued=facts.flag("glued"),
        panel=_inches(facts, "panel"),
        use=_one_of(facts, "use", _USES),
        finish=_one_of(facts, "finish", _FINISHES),
        points=tuple(zip(points, at, strict=True)),
        cuts=_cuts(facts),
        sister=sister,
    )


def _lumber(facts: Node) -> dict[str, Any]:
    named = {key: _code(facts, key, "word") for key in ("species", "grade")}
    return {"size": _code(facts, "size", "name")} | {
        key: code.removeprefix(f"{key}_") for key, code in named.items()
    }


def _cuts(facts: Node) -> tuple[CutFound, ...]:
    kinds = _codes(facts, "cuts", "word")
    sizes, places, lengths = (
        _several(facts, f"cut_{key}", "mm", least=0.0) for key in ("sizes", "places", "lengths")
    )
    edges, bottoms = facts.rows("cut_edges", ()), facts.rows("cut_bottoms", ())
    if {len(sizes), len(places), len(lengths), len(edges), len(bottoms)} != {len(kinds)}:
        raise FieldError(f"{facts.where}.cuts", "have not each a size, a place, a length, an edge and a side")
    return tuple(
        CutFound(
            kind=kind,
            size=sizes[at],
            place=places[at],
            length=lengths[at],
            edge=None if edges[at][0] == {"word": "none"} else _in_inches(_value(*edges[at], "mm")),
            in_bottom=bottoms[at][0] is True,
        )
        for at, kind in enumerate(kinds)
    )


def _value(value: Any, where: str, unit: str) -> float:
    node = Node(value, where)
    if node.text("unit", "") != unit:
        raise FieldError(f"{where}.unit", f"is not {unit or 'without a unit'}")
    return node.number("value")


def _number(node: Node, key: str, unit: str) -> float:
    return _value(node.raw(key), f"{node.where}.{key}", unit)


def _above(node: Node, key: str, unit: str) -> float:
    found = _number(node, key, unit)
    if found <= 0:
        raise FieldError(f"{node.where}.{key}", "is not above zero")
    return found


def _inches(node: Node, key: str) -> float:
    return _in_inches(_above(node, key, "mm"))


def _in_inches(value: float) -> float:
    """A length without what division leaves behind nine figures, so that 24 in are no more than 24 in."""
    return round(value / _MM_PER_IN, 9)


def _several(node: Node, key: str, unit: str, least: float | None = None) -> list[float]:
    """Several numbers, lengths in inches; above zero, or not below `least`."""
    read = [_value(value, where, unit) for value, where in node.rows(key, ())]
    found = list(map(_in_inches, read)) if unit == "mm" else read
    if any(value < least if least is not None else value <= 0 for value in found) or len(found) > _MOST:
        raise FieldError(f"{node.where}.{key}", "holds too much, or what is not above zero")
    return found


def _code(node: Node, key: str, kind: str) -> str:
    return Node(node.raw(key), f"{node.where}.{key}").text(kind)


def _one_of(node: Node, key: str, allowed: tuple[str, ...]) -> str:
    return _allowed(_code(node, key, "word"), allowed, f"{node.where}.{key}")


def _allowed(code: str, allowed: tuple[str, ...], where: str) -> str:
    if code not in allowed:
        raise FieldError(where, f"'{code}' is not one of {', '.join(allowed)}")
    return code


def _codes(node: Node, key: str, kind: str) -> tuple[str, ...]:
    return tuple(Node(value, where).text(kind) for value, where in node.rows(key, ()))
