"""Reading of a plan into what the verifier knows of it, field by field."""

import datetime
from typing import Any

from shapely import MultiPolygon, Polygon

from firstcourse.errors import FirstcourseError
from firstcourse.rules import Override, RuleSet, load_rules
from firstcourse.units import Tape
from firstcourse.verify.at_once import Do, at_once
from firstcourse.verify.bound_fields import read_bounds
from firstcourse.verify.drawn_fields import read_reading, read_step
from firstcourse.verify.fall_fields import Fall, read_fall
from firstcourse.verify.fields import FieldError, Node, number, point, ring, segment, ticks
from firstcourse.verify.frame_fields import read_frame
from firstcourse.verify.mark_fields import read_mark
from firstcourse.verify.shopping_fields import read_shopping, read_tile_stock, texts
from firstcourse.verify.start_fields import read_start
from firstcourse.verify.structure import (
    Ban,
    Board,
    Count,
    Cut,
    Document,
    Door,
    Fill,
    Opening,
    Part,
    Piece,
    Said,
    Seam,
    Sheet,
    SoftJoint,
    Support,
    Surface,
    Tile,
    TiledArea,
)

_SIDES = ("perimeter", "foot", "free")
_EXPOSURES = ("interior", "slab", "sun", "heat", "moist", "exterior")
_MEMBRANES = ("", "liner", "sheet", "liquid")
_TROWELS = ("", "mosaic", "small", "medium", "large")
_SLABS = ("", "tiled", "bonded", "fastened")
_LAYERS = ("board_mortar", "board", "heating", "mortar_bed", "mortar", "tile")
_LIFTING = {
    "reach": "safety.lift.reach",
    "low": "safety.lift.low",
    "high": "safety.lift.high",
    "turn_degrees": "safety.lift.turn",
    "times_a_minute": "safety.lift.per_minute",
    "grip": "safety.lift.grip",
}
"""What the job may say of lifting, and the rule whose assumed value it takes the place of."""
_SOFT = ("plane", "restrained", "doorway", "structural_joint", "control_joint", "change_of_backing", "field")
_KINDS = ("floor", "wall", "ceiling", "counter")


def read_document(value: Any, *, do: Do = at_once) -> Document:
    """Read a plan.

    Args:
        value: As `json.loads` gives it.
        do: How what depends on one surface alone is done.

    Raises:
        FieldError: The first field that is missing or not what the format asks.
    """
    top = Node(value, "plan")
    if top.text("format") != "firstcourse-plan" or top.raw("version") != 2:
        raise FieldError("plan.format", "is not a firstcourse-plan of version 2: plan the job again")
    job = Node(top.raw("job"), "plan.job")
    job.text("name"), job.text("digest")
    given = Node(top.raw("given"), "plan.given")
    stock = {node.text("id"): node.size("size") for node in top.nodes("stock")}
    return Document(
        tape=_tape(job),
        rules=_rules(Node(given.raw("job"), "plan.given.job")),
        surfaces=tuple(do(_surface, node) for node in top.nodes("surfaces")),
        pieces=tuple(_piece(node) for node in top.nodes("pieces")),
        sheets=tuple(_sheet(node) for node in top.nodes("sheets")),
        stock=stock,
        tile_stock={node.text("id"): read_tile_stock(node) for node in top.nodes("tile_stock", ())},
        counts=tuple(
            Count(name, node.count("used"), node.count("lower_bound"), node.flag("proven"))
            for name, node in top.named("counts")
        ),
        findings=tuple(
            Said(
                code=n.text("code"),
                severity=_one_of(n, "severity", ("stop", "fix", "note")),
                rule=n.text("rule", ""),
                measured=_given(n, "measured"),
                limit=_given(n, "limit"),
                at=_places(n),
                values=Node(n.raw("values", {}), f"{n.where}.values").value,
                remedies=texts(n, "remedies"),
            )
            for n in top.nodes("findings")
        ),
        shopping=read_shopping(top),
        frames=tuple(read_frame(node) for node in top.nodes("structures", ())),
        bounds=read_bounds(top),
        doors=tuple(_door(node) for node in top.nodes("doors", ())),
        source=top,
    )


def _places(node: Node) -> tuple[str, ...]:
    found = texts(node, "at")
    if not found:
        raise FieldError(f"{node.where}.at", "names no place")
    return found


def _given(node: Node, key: str) -> dict[str, Any] | None:
    """A value with its unit, checked to be a number; None where there is none."""
    if node.raw(key, None) is None:
        return None
    found = Node(node.raw(key), f"{node.where}.{key}")
    found.number("value")
    sense = {"sense": _one_of(found, "sense", ("least", "most", "is"))} if key == "limit" else {}
    return found.value | {"unit": found.text("unit", "")} | sense


def _door(node: Node) -> Door:
    bottom, height = (
        None if node.raw(key, None) is None else ticks(node.raw(key), f"{node.where}.{key}")
        for key in ("bottom", "height")
    )
    return Door(
        id=node.text("id"),
        room=node.text("room"),
        wall=node.text("wall"),
        line=segment(node.raw("line"), f"{node.where}.line"),
        left=ticks(node.raw("left"), f"{node.where}.left"),
        width=node.length("width"),
        bottom=bottom,
        height=height,
    )


def _one_of(node: Node, key: str, allowed: tuple[str, ...], default: str | None = None) -> str:
    found = node.text(key) if default is None else node.text(key, default)
    if found not in allowed:
        raise FieldError(f"{node.where}.{key}", f"'{found}' is not one of {', '.join(allowed)}")
    return found


def _tape(job: Node) -> Tape:
    return Tape(_one_of(job, "tape", ("inch", "mm"), "inch"))


def _rules(job: Node) -> RuleSet:
    try:
        on = datetime.date.fromisoformat(job.text("date"))
    except ValueError:
        raise FieldError("plan.given.job.date", "is not a date like 2026-01-31") from None
    overrides = [
        Override(rule=node.text("rule"), value=_set(node), unit=node.text("unit", ""), reason=node.text("reason"))
        for node in job.nodes("rules", ())
    ]
    lifting = job.part("lifting")
    overrides += [
        Override(rule=rule, value=_lifted(lifting, name), unit="", reason="as the job says under lifting")
        for name, rule in _LIFTING.items()
        if name in lifting.value
    ]
    try:
        return load_rules(on, job.text("practice", "us"), tuple(overrides))
    except FirstcourseError as error:
        raise FieldError("plan.given.job", str(error)) from None


def _set(node: Node) -> str | bool | float:
    value = node.raw("value")
    return value if isinstance(value, str | bool) else node.number("value")


def _lifted(lifting: Node, name: str) -> str | float:
    if name == "grip":
        return lifting.text(name)
    number = lifting.number(name)
    return (
        f"{number!r} mm"
        if name in ("reach", "low", "high")
        else f"{number} deg"
        if name == "turn_degrees"
        else number
    )


def _surface(node: Node) -> Surface:
    outline = node.ring("outline")
    sides = tuple(_one_of(side, "kind", _SIDES) for side in node.nodes("sides"))
    met = tuple(side.text("meets") for side in node.nodes("sides"))
    if len(sides) != len(outline):
        raise FieldError(f"{node.where}.sides", "are not one per side of the outline")
    return Surface(
        id=node.text("id"),
        room=node.text("room", ""),
        kind=_one_of(node, "kind", _KINDS),
        outline=outline,
        sides=sides,
        met=met,
        corners=texts(node, "corners"),
        membrane=_one_of(node, "membrane", _MEMBRANES, ""),
        openings=tuple(_opening(item) for item in node.nodes("openings")),
        supports=tuple(
            Support(item.text("id", ""), item.text("kind"), item.ring("outline"), item.flag("added", False))
            for item in node.nodes("supports")
        ),
        framing_axis=_one_of(node, "framing_axis", ("u", "v", ""), ""),
        panel_joints=tuple(segment(*row) for row in node.rows("panel_joints")),
        panel_screws=tuple(point(*row) for row in node.rows("panel_screws")),
        bans=tuple(
            Ban(item.ring("outline"), item.text("why"), item.flag("found", False))
            for item in node.nodes("no_fastener_zones", ())
        ),
        board_stock=texts(node, "board_stock"),
        boards=tuple(_board(item) for item in node.nodes("boards")),
        seams=tuple(
            Seam(segment(item.raw("line"), f"{item.where}.line"), item.length("width"), item.flag("tape"))
            for item in node.nodes("seams")
        ),
        tiles=tuple(_tile(item) for item in node.nodes("tiles", ())),
        soft_joints=tuple(_soft_joint(item) for item in node.nodes("soft_joints", ())),
        boarded=node.flag("boarded", True),
        tiled=tuple(_tiled(item) for item in node.nodes("tiled", ())),
        fall=_fall(node),
        readings=tuple(read_reading(item) for item in node.nodes("heights", ())),
        tile_exposure=_one_of(node, "tile_exposure", _EXPOSURES, "moist"),
        hidden=frozenset(i for i, side in enumerate(node.nodes("sides")) if not side.flag("shown", True)),
        part_of=node.text("part_of", ""),
        linings=texts(node, "linings"),
        slab=_one_of(node, "slab", _SLABS, ""),
        layers=tuple(_layer(item) for item in node.nodes("layers", ())),
        fills=tuple(
            Fill(item.text("id"), item.ring("outline"), _one_of(item, "filled_with", ("mortar", "board")))
            for item in node.nodes("fills", ())
        ),
        not_tiled=tuple((item.text("why"), item.ring("outline")) for item in node.nodes("not_tiled", ())),
        datum=ticks(node.raw("datum", 0), f"{node.where}.datum"),
        extent=node.ring("extent") if node.raw("extent", None) is not None else outline,
        marks=tuple(read_mark(item) for item in node.nodes("marks", ())),
    )


def _layer(node: Node) -> tuple[str, int]:
    return _one_of(node, "of", _LAYERS), node.length("thickness")


def _fall(node: Node) -> Fall | None:
    value = node.raw("fall", None)
    return None if value is None else read_fall(Node(value, f"{node.where}.fall"))


def _tile(node: Node) -> Tile:
    return Tile(
        id=node.text("id"),
        outline=node.ring("outline"),
        holes=node.holes(),
        whole=node.flag("whole"),
        source=node.text("from", ""),
        fixed=node.flag("fixed", False),
        stock=node.text("stock", ""),
        laid=node.ring("laid") if node.raw("laid", ()) else (),
        cut=node.ring("cut") if node.raw("cut", ()) else (),
        fit=node.flag("fit", False),
        mark=node.text("mark", ""),
    )


def _soft_joint(node: Node) -> SoftJoint:
    line = tuple(point(*row) for row in node.rows("line"))
    if len(line) < 2:
        raise FieldError(f"{node.where}.line", "is not a line of two or more points")
    return SoftJoint(
        line,
        node.length("width"),
        _one_of(node, "place", ("edge", "field"), "field"),
        _one_of(node, "why", _SOFT),
        node.text("at", ""),
        node.flag("cut", False),
    )


def _tiled(node: Node) -> TiledArea:
    parts = [Polygon(item.ring("outline"), item.holes()) for item in node.nodes("area")]
    shape = MultiPolygon(parts)
    role = _one_of(node, "role", ("field", "band", "border"), "field")
    if not shape.is_valid:
        raise FieldError(f"{node.where}.area", "has parts that lie over each other")
    steps = tuple(read_step(node, key) for key in ("step_a", "step_b") if key in node.value)
    starts = node.nodes("starts", ())
    angle = node.raw("angle", 0)
    return TiledArea(
        node.text("pattern", ""),
        texts(node, "tiles"),
        shape,
        node.length("joint"),
        role,
        steps,
        None if node.raw("mortar", None) is None else node.length("mortar"),
        _one_of(node, "trowel", _TROWELS, ""),
        starts=tuple(map(read_start, starts)),
        angle=number(angle, f"{node.where}.angle"),
    )


def _opening(node: Node) -> Opening:
    name, kind = node.text("id"), node.text("kind")
    if node.raw("outline", None) is not None:
        depth, board = (
            node.length(field) if node.raw(field, None) is not None else 0 for field in ("depth", "return_board")
        )
        return Opening(name, kind, ring(node.raw("outline"), f"{node.where}.outline"), (0, 0), 0, depth, board)
    return Opening(name, kind, None, node.point("centre"), node.length("diameter"))


def _board(node: Node) -> Board:
    outline, holes = node.ring("outline"), node.holes()
    if not Polygon(outline, holes).is_valid:
        raise FieldError(f"{node.where}.holes", "do not lie inside the outline")
    edges = []
    for value, where in node.rows("factory_edges", ()):
        if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value < len(outline):
            raise FieldError(where, "is no side of the outline")
        edges.append(value)
    return Board(
        id=node.text("id"),
        piece=node.text("piece"),
        outline=outline,
        holes=holes,
        factory_edges=tuple(edges),
        fasteners=tuple(point(*row) for row in node.rows("fasteners")),
        fixed=node.flag("fixed", False),
        mark=node.text("mark", ""),
    )


def _piece(node: Node) -> Piece:
    return Piece(
        id=node.text("id"),
        board=node.text("board"),
        stock=node.text("stock"),
        blank=node.size("blank"),
        outline=node.ring("outline"),
        holes=node.holes(),
        face_up=node.flag("face_up", True),
    )


def _sheet(node: Node) -> Sheet:
    return Sheet(
        id=node.text("id"),
        stock=node.text("stock"),
        size=node.size("size"),
        source=node.text("source"),
        cuts=tuple(_cut(item) for item in node.nodes("cuts")),
        parts=tuple(_part(item) for item in node.nodes("parts")),
    )


def _cut(node: Node) -> Cut:
    gives = texts(node, "gives")
    if len(gives) != 2:
        raise FieldError(f"{node.where}.gives", "is not a pair of part ids")
    return Cut(node.text("of"), _one_of(node, "along", ("x", "y")), node.length("at"), (gives[0], gives[1]))


def _part(node: Node) -> Part:
    return Part(
        id=node.text("id"),
        at=node.point("at"),
        size=node.size("size"),
        piece=None if node.raw("piece", None) is None else node.text("piece"),
        turned=node.flag("turned", False),
        keep=node.flag("keep", False),
    )
