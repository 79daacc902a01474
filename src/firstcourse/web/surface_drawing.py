"""One surface on the screen: what of it is asked for, what is open in it and can be moved, its story pole."""

import json
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from xml.etree.ElementTree import Element, SubElement, tostring

from firstcourse.app.fields import SurfaceField, Thing, directions
from firstcourse.app.room_view import Opening, Surface
from firstcourse.units import TICKS_PER_MM, Tape, format_length

LAYERS = ("framing", "boards", "tile", "soft", "water", "heights", "pole")
"""What may be shown, in the order it is drawn."""
SHOWN_FIRST = ("framing", "boards", "tile", "pole")
_SVG = "http://www.w3.org/2000/svg"
_POLE_SHARE, _LEAST_POLE_MM = 0.34, 330.0
"""Width of the story pole with its heights, of the surface's."""
_TEXT_SHARE = 0.036
"""Height of a letter, of the drawing's width."""
_REACH_MM = 24.0
"""A thing is at least as wide to the hand on the drawing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flag:
    """Where a finding belongs.

    Attributes:
        number: As in the list below the drawing.
        at: On the surface [mm].
        row: How many others stand at the same place before it.
    """

    number: int
    at: tuple[float, float]
    row: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Snap:
    """A line that what is moved stops at.

    Attributes:
        axis: `u` for an upright line, `v` for a level one.
        at: Where [mm].
        name: What it is, in words.
    """

    axis: str
    at: float
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceSheet:
    """All that one drawing is made from.

    Attributes:
        surface: As planned, planned lightly or surveyed.
        where: The same in the document.
        moved: What may be moved, by its id.
        shown: Which layers.
        flags: Numbered findings.
        snaps: Lines to stop at.
        words: What letters on it say: `pole`, `moves`.
    """

    surface: Surface
    where: SurfaceField
    moved: Mapping[str, Thing]
    shown: Collection[str]
    flags: Sequence[Flag]
    snaps: Sequence[Snap]
    tape: Tape
    words: Mapping[str, str]


class _Paper:
    """A drawing whose points are given as on the surface, v upwards [ticks]."""

    def __init__(self, surface: Surface, pole: bool) -> None:
        whole = surface.extent or surface.outline
        every = [*whole, *(point for one in surface.openings for point in one.outline or ())]
        self.left, self.right = (pick(u for u, _ in every) / TICKS_PER_MM for pick in (min, max))
        self.low, self.top = (pick(v for _, v in every) / TICKS_PER_MM for pick in (min, max))
        wide = self.right - self.left
        self.pole_mm = max(wide * _POLE_SHARE, _LEAST_POLE_MM) if pole else 0.0
        self.text = max(wide + self.pole_mm, 600.0) * _TEXT_SHARE
        self.edge = self.text * 1.4
        size = (wide + self.pole_mm + 2 * self.edge, self.top - self.low + 2 * self.edge)
        self.box = f"{self.left - self.edge:.1f} {-self.edge:.1f} {size[0]:.1f} {size[1]:.1f}"

    def at(self, point: tuple[float, float]) -> tuple[float, float]:
        return point[0] / TICKS_PER_MM, self.top - point[1] / TICKS_PER_MM

    def points(self, ring: Iterable[tuple[float, float]]) -> str:
        return " ".join(f"{x:.2f},{y:.2f}" for x, y in map(self.at, ring))

    def path(self, outline: Iterable[tuple[int, int]], holes: Iterable[Iterable[tuple[int, int]]]) -> str:
        return "".join(f"M{self.points(ring)}Z" for ring in (outline, *holes))


def draw(sheet: SurfaceSheet, *, label: str) -> str:
    """The whole drawing as SVG; `draw_layers` alone is exchanged while something moves.

    Args:
        sheet: What it is made from.
        label: What it is called to those who don't see it.
    """
    paper = _paper(sheet)
    svg = Element("svg", {"xmlns": _SVG, "viewBox": paper.box, "class": "surface", "aria-label": label})
    svg.set("role", "group")
    svg.set("font-size", f"{paper.text:.1f}")
    svg.set("data-snaps", json.dumps([[one.axis, round(one.at, 4), one.name] for one in sheet.snaps]))
    svg.set("data-top", f"{paper.top:.4f}")
    _hatches(svg, paper)
    svg.append(_layers(sheet, paper))
    over = SubElement(svg, "g", {"id": "things"})
    for opening in sheet.surface.openings:
        _thing(over, sheet, paper, opening)
    svg.append(_flags(sheet, paper))
    SubElement(svg, "g", {"id": "guides"})
    return tostring(svg, encoding="unicode")


def draw_layers(sheet: SurfaceSheet) -> str:
    """What changes while something moves: the layers under it and the flags, as an SVG document of its own."""
    svg = Element("svg", {"xmlns": _SVG})
    svg.append(_layers(sheet, _paper(sheet)))
    svg.append(_flags(sheet, _paper(sheet)))
    return tostring(svg, encoding="unicode")


def _paper(sheet: SurfaceSheet) -> _Paper:
    return _Paper(sheet.surface, "pole" in sheet.shown and sheet.where.part == "wall")


def _hatches(svg: Element, paper: _Paper) -> None:
    """Wood, board, tile that is cut, what keeps water off: each its own lines."""
    step = paper.text * 0.55
    defs = SubElement(svg, "defs")
    lines = {
        "wood": (f"M0 0L{step:.1f} {step:.1f}M{step:.1f} 0L0 {step:.1f}", step, 0),
        "board": (f"M0 0V{step * 2.2:.1f}", step * 2.2, 45),
        "cut": (f"M0 0V{step * 0.9:.1f}", step * 0.9, -45),
        "water": (f"M0 {step:.1f}q{step / 2:.1f} {-step:.1f} {step:.1f} 0t{step:.1f} 0", step * 2, 0),
    }
    for name, (path, wide, turn) in lines.items():
        pattern = SubElement(
            defs,
            "pattern",
            {
                "id": f"hatch-{name}",
                "width": f"{wide:.1f}",
                "height": f"{wide:.1f}",
                "patternUnits": "userSpaceOnUse",
                "patternTransform": f"rotate({turn})",
            },
        )
        SubElement(pattern, "path", {"d": path, "class": f"hatch {name}"})


def _layers(sheet: SurfaceSheet, paper: _Paper) -> Element:
    surface = sheet.surface
    under = Element("g", {"id": "layers"})
    SubElement(under, "polygon", {"points": paper.points(surface.extent or surface.outline), "class": "ground"})
    draws = {
        "framing": _framing,
        "boards": _boards,
        "tile": _tile,
        "soft": _soft,
        "water": _water,
        "heights": _heights,
        "pole": _pole,
    }
    for name in LAYERS:
        if name in sheet.shown:
            draws[name](SubElement(under, "g", {"class": f"layer {name}"}), sheet, paper)
    return under


def _flags(sheet: SurfaceSheet, paper: _Paper) -> Element:
    group = Element("g", {"id": "flags"})
    for flag in sheet.flags:
        x, y = paper.at((flag.at[0] * TICKS_PER_MM, flag.at[1] * TICKS_PER_MM))
        x += flag.row * paper.text * 1.9
        ring = {"cx": f"{x:.1f}", "cy": f"{y:.1f}", "r": f"{paper.text * 0.85:.1f}"}
        SubElement(group, "circle", {**ring, "class": "flag"})
        _text(group, (x, y + paper.text * 0.35), str(flag.number), "flag")
    return group


def _framing(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    for one in sheet.surface.supports:
        if one.kind.value == "panel":
            continue  # it carries everywhere and would hatch everything
        kind = "member added" if one.added else "member"
        SubElement(
            group, "polygon", {"points": paper.points(one.outline), "class": kind, "fill": "url(#hatch-wood)"}
        )


def _boards(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    for board in sheet.surface.boards:
        path = {"d": paper.path(board.outline, board.holes), "class": "board", "fill-rule": "evenodd"}
        SubElement(group, "path", {**path, "fill": "url(#hatch-board)"})
    for seam in sheet.surface.seams:
        SubElement(group, "polyline", {"points": paper.points(seam.line), "class": "seam"})


def _tile(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    for tile in sheet.surface.tiles:
        path = {"d": paper.path(tile.outline, tile.holes), "class": "tile", "fill-rule": "evenodd"}
        if not tile.whole:
            path |= {"class": "tile cut", "fill": "url(#hatch-cut)"}
        SubElement(group, "path", path)


def _soft(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    for joint in sheet.surface.soft_joints:
        SubElement(group, "polyline", {"points": paper.points(joint.line), "class": "soft"})


def _water(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    if sheet.surface.membrane:
        shape = {"points": paper.points(sheet.surface.outline), "class": "membrane", "fill": "url(#hatch-water)"}
        SubElement(group, "polygon", shape)


def _heights(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    for mark in sheet.surface.heights:
        x, y = paper.at(mark.at)
        SubElement(group, "circle", {"cx": f"{x:.1f}", "cy": f"{y:.1f}", "r": f"{paper.text * 0.2:.1f}"})
        off = format_length(mark.off, sheet.tape, feet=False)
        _text(group, (x, y - paper.text * 0.4), f"+{off}" if mark.off > 0 and off[0] != "0" else off, "height")


def _pole(group: Element, sheet: SurfaceSheet, paper: _Paper) -> None:
    """The batten beside the wall: a mark at each course, wider at what is open, heights where there is room."""
    marks = pole_marks(sheet.surface)
    if not paper.pole_mm or not marks:
        return
    left = paper.right + paper.text * 1.2
    wide = paper.text * 1.1
    ends = [paper.at((0, v))[1] for v in (marks[0].v, marks[-1].v)]
    box = {"x": f"{left:.1f}", "y": f"{ends[1]:.1f}", "width": f"{wide:.1f}", "height": f"{ends[0] - ends[1]:.1f}"}
    SubElement(group, "rect", {**box, "class": "batten"})
    taken: list[float] = []
    for mark in sorted(marks, key=lambda one: (not one.thing, one.v)):
        y = paper.at((0, mark.v))[1]
        x1, x2 = (left - wide * 0.4, left + wide * 1.4) if mark.thing else (left, left + wide)
        line = {"x1": f"{x1:.1f}", "x2": f"{x2:.1f}", "y1": f"{y:.1f}", "y2": f"{y:.1f}"}
        SubElement(group, "line", {**line, "class": "mark thing" if mark.thing else "mark"})
        if all(abs(y - other) >= paper.text for other in taken):
            taken.append(y)
            told = format_length(mark.distance, sheet.tape, feet=False)
            _text(group, (left + wide * 1.6, y + paper.text * 0.3), told, "pole thing" if mark.thing else "pole")


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleMark:
    """A mark on a wall's upright pole.

    Attributes:
        v: Its height on the surface [ticks].
        distance: From the pole's end [ticks].
        refs: What it stands for, by reference.
        thing: Something open begins or ends there.
        cut: Tiles that begin there are cut.
    """

    v: int
    distance: int
    refs: tuple[str, ...]
    thing: bool
    cut: bool


def pole_marks(surface: Surface) -> list[PoleMark]:
    """The marks of a wall's upright pole from below; none where the plan has no pole for it."""
    at: dict[int, list[tuple[int, str, bool]]] = {}
    for mark in surface.marks:
        (_, v0), (_, v1) = mark.line
        if mark.kind == "pole" and v0 == v1:
            at.setdefault(v0, []).append((mark.distance, mark.to, mark.cut))
    return [
        PoleMark(
            v=v,
            distance=found[0][0],
            refs=tuple(to for _, to, _ in found),
            thing=any("/opening/" in to for _, to, _ in found),
            cut=any(cut for _, _, cut in found),
        )
        for v, found in sorted(at.items())
    ]


def _thing(group: Element, sheet: SurfaceSheet, paper: _Paper, opening: Opening) -> None:
    thing = sheet.moved.get(opening.id)
    ways = None if thing is None else directions(thing, sheet.where, sheet.surface)
    own = SubElement(group, "g", {"class": f"thing {opening.kind.value}"})
    if opening.outline is not None:
        SubElement(own, "polygon", {"points": paper.points(opening.outline)})
        us, vs = ([point[axis] for point in opening.outline] for axis in (0, 1))
        box = min(us), min(vs), max(us), max(vs)
        corners = ((box[0], box[1]), (box[2], box[3])), ((box[0], box[3]), (box[2], box[1]))
        for one, other in corners if opening.kind.value in ("niche", "window", "door", "box", "other") else ():
            SubElement(own, "polyline", {"points": paper.points((one, other)), "class": "across"})
    else:
        assert opening.centre is not None and opening.diameter is not None
        (u, v), radius = opening.centre, opening.diameter // 2
        box = u - radius, v - radius, u + radius, v + radius
        x, y = paper.at(opening.centre)
        SubElement(own, "circle", {"cx": f"{x:.2f}", "cy": f"{y:.2f}", "r": f"{radius / TICKS_PER_MM:.2f}"})
    x, y = paper.at(((box[0] + box[2]) / 2, box[3]))
    _text(own, (x, y - paper.text * 0.35), opening.id, "name")
    if thing is None or ways is None:
        return
    left, top = paper.at((box[0], box[3]))
    size = [(box[index + 2] - box[index]) / TICKS_PER_MM for index in (0, 1)]
    spare = [max(0.0, max(_REACH_MM, paper.text * 2.6) - length) / 2 for length in size]
    reach = {"x": f"{left - spare[0]:.1f}", "y": f"{top - spare[1]:.1f}"}
    reach |= {"width": f"{size[0] + 2 * spare[0]:.1f}", "height": f"{size[1] + 2 * spare[1]:.1f}"}
    SubElement(own, "rect", {**reach, "class": "reach"})
    own.set("tabindex", "0")
    own.set("role", "button")
    own.set("aria-label", f"{opening.id}: {sheet.words['moves']}")
    own.set("data-number", str(thing.number))
    own.set("data-box", json.dumps([round(value / TICKS_PER_MM, 4) for value in box]))


def _text(group: Element, at: tuple[float, float], text: str, kind: str) -> None:
    said = SubElement(group, "text", {"x": f"{at[0]:.1f}", "y": f"{at[1]:.1f}", "class": kind})
    said.text = text
