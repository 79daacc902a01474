"""Which tasks and waits the surfaces of a plan ask for: read off the plan, room by room, by a table."""

from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import Any

from shapely import Polygon

from firstcourse.verify.fields import Node
from firstcourse.verify.structure import Document

HOLDS = ("framing_seen", "nail_plates", "blocking_seen", "drain_test", "flood_test", "glass_measure")
_WATER = ("valve", "pipe", "tub", "tray", "flange")
_TURN = ("ceiling", "wall", "counter", "floor")
_BONDED = ("sheet", "liquid")
_LINER = "schedule.wait.liner"
Amount = tuple[str, float, str, str]
Wait = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Wanted:
    """A task that must be there.

    Attributes:
        work: What is counted, how much, its unit and the rule that says how long one takes.
        after: What it waits for, each with the rule of the wait or none.
    """

    id: str
    kind: str
    room: str
    surfaces: tuple[str, ...]
    work: tuple[Amount, ...]
    after: tuple[Wait, ...]


def wanted(plan: Document, asked: Node) -> list[Wanted]:
    """All tasks that a plan asks for, in the order of work."""
    surfaces = plan.source.nodes("surfaces")
    found: list[Wanted] = []
    if any(_areas(one) for one in surfaces):
        found.append(Wanted("tile_here", "tile_here", "", (), (), ()))
    for room in dict.fromkeys(one.text("room") for one in surfaces):
        mine = [one for one in surfaces if one.text("room") == room]
        asking = _Room(room, mine, asked, plan, [])
        asking.ask()
        found += asking.found
    return found


def opened(surfaces: list[Node]) -> set[str]:
    """Kinds of all openings in some surfaces."""
    return {opening.text("kind") for one in surfaces for opening in one.nodes("openings")}


@dataclass(frozen=True, slots=True)
class _Room:
    name: str
    surfaces: list[Node]
    asked: Node
    plan: Document
    found: list[Wanted]

    def ask(self) -> None:
        """Ask for all of the room's tasks."""
        free = self._seen()
        over = self._boards(self._ground(free))
        dry = list(over)
        for one in self._falls():
            after = [(name, "") for name, _ in over]
            dry += self._per_surface("bed", "bed", one, after, "schedule.wait.bed")
        self._tile(self._coats(dry))

    def _put(self, kind: str, of: list[Node], work: list[Amount], after: list[Wait], *, one: str = "") -> str:
        name = f"{one}#{kind}" if one else f"{self.name}/{kind}"
        self.found.append(Wanted(name, kind, self.name, tuple(map(_id, of)), tuple(work), tuple(after)))
        return name

    def _per_surface(self, kind: str, counted: str, one: Node, after: list[Wait], rule: str) -> list[Wait]:
        rate = "membrane" if kind == "liner" else kind
        return [(self._put(kind, [one], [(counted, _size(one), "m2", rate)], after, one=_id(one)), rule)]

    def _seen(self) -> list[Wait]:
        last = self._put("strip_check", [], [("room", 1.0, "count", "strip_check")], [])
        framed = [one for one in self.surfaces if _added(one)]
        if framed:
            work = [("member", float(sum(map(_added, framed))), "count", "member")]
            last = self._put("framing", framed, work, [(last, "")])
        kinds = ["framing_seen", "nail_plates"] + ["blocking_seen"] * bool(framed)
        kinds += ["drain_test"] * bool(self._falls() or opened(self.surfaces) & {"drain", *_WATER})
        return [(self._put(k, framed if k == "blocking_seen" else [], [], [(last, "")]), "") for k in kinds]

    def _ground(self, free: list[Wait]) -> list[Wait]:
        ground = list(free)
        keys = self.plan.source.part("workings").value
        for one in self.surfaces:
            if any(f"ground-{way}@{_id(one)}" in keys for way in ("patch", "level_out", "grind")):
                ground += self._per_surface("levelling", "levelled", one, free, "schedule.wait.levelling")
        lined = [one for one in self._falls() if one.text("membrane", "") == "liner"]
        laid = [wait for one in lined for wait in self._per_surface("liner", "membrane", one, free, _LINER)]
        return [*ground, self._test(lined, laid)] if lined else ground

    def _test(self, floors: list[Node], waits: list[Wait]) -> Wait:
        first = _id(floors[0])
        filled = self._put("fill", floors, [("surface", float(len(floors)), "count", "fill")], waits, one=first)
        return self._put("flood_test", floors, [], [(filled, "water.test.hours")], one=first), ""

    def _boards(self, over: list[Wait]) -> list[Wait]:
        boarded = [one for one in self.surfaces if _new_boards(one)]
        if not boarded:
            return over
        new = [board for one in boarded for board in _new_boards(one)]
        area = sum(_polygon(board.raw("outline"), board.raw("holes", ())) for board in new)
        over = [(self._put("boards", boarded, [("board", area, "m2", "board")], over), "")]
        driven = sum(len(board.rows("fasteners", ())) for board in new)
        if driven:
            work = [("fastener", float(driven), "count", "fastener")]
            over = [(self._put("fasteners", boarded, work, over), "")]
        taped = [one for one in boarded if _taped(one)]
        if taped:
            work = [("seam", sum(_metres(line) for one in taped for line in _taped(one)), "m", "seam")]
            over = [(self._put("tape", taped, work, over), "schedule.wait.seams")]
        return over

    def _coats(self, dry: list[Wait]) -> list[Wait]:
        coated = [one for one in self.surfaces if one.text("membrane", "") in _BONDED]
        if not coated:
            return dry
        laid = self._put("membrane", coated, [("membrane", sum(map(_size, coated)), "m2", "membrane")], dry)
        dry = [(laid, "schedule.wait.sheet")]
        liquid = [one for one in coated if one.text("membrane") == "liquid"]
        if liquid:
            work = [("membrane", sum(map(_size, liquid)), "m2", "second_coat")]
            second = self._put("second_coat", liquid, work, [(laid, "schedule.wait.between_coats")])
            dry = [(second, "schedule.wait.liquid")]
        held = [one for one in self._falls() if one.text("membrane", "") in _BONDED]
        return [self._test(held, dry)] if held else dry

    def _tile(self, dry: list[Wait]) -> None:
        tiled = [one for one in self.surfaces if _areas(one)]
        tiled.sort(key=lambda one: _TURN.index(one.text("kind")))
        if not tiled:
            return
        laid = []
        for one in tiled:
            before = [*dry, ("tile_here", "")]
            marked = self._put("layout", [one], [("surface", 1.0, "count", "layout")], before, one=_id(one))
            work = [("tile", sum(_areas(one)), "m2", "tile")]
            cut = sum(not t.flag("whole") and not t.flag("fixed", False) for t in one.nodes("tiles"))
            work += [("cut_tile", float(cut), "count", "cut_tile")] * bool(cut)
            laid.append((self._put("tile", [one], work, [(marked, "")], one=_id(one)), self._mortar(one)))
        whole, grout = sum(sum(_areas(one)) for one in tiled), self.asked.text("grout", "cement")

        def over_tile(kind: str, *after: Wait) -> str:
            return self._put(kind, tiled, [("tile", whole, "m2", kind)], list(after))

        grouted = last = over_tile("grout", *laid)
        uses = [(grouted, f"schedule.wait.{grout}_use")]
        soft = [one for one in tiled if one.nodes("soft_joints")]
        if soft:
            metres = sum(_metres(joint.raw("line")) for one in soft for joint in one.nodes("soft_joints"))
            work = [("soft_joint", metres, "m", "sealant")]
            last = self._put("sealant", soft, work, [(grouted, f"schedule.wait.{grout}")])
            uses.append((last, "schedule.wait.sealant_use"))
        if self.asked.flag("seal", False) and grout == "cement":
            last = over_tile("seal", (grouted, "schedule.wait.seal"), *([(last, "")] if soft else []))
            uses.append((last, "schedule.wait.sealed_use"))
        ends = [(over_tile("cleaning", (last, "")), ""), *uses]
        if self._falls() or opened(self.surfaces) & {"tub", "tray"}:
            ends.append((self._put("glass_measure", [], [], [(grouted, "")]), ""))
        self._put("in_use", [], [], ends)

    def _mortar(self, one: Node) -> str:
        if self.asked.text("mortar", "standard") == "rapid":
            return "schedule.wait.rapid"
        laid = {name for area in one.nodes("tiled") for name, _ in area.rows("tiles")}
        sizes = [min(t.size("size")) for t in self.plan.source.nodes("tile_stock") if t.text("id") in laid]
        slow = one.text("membrane", "") and max(sizes) >= self.plan.rules.ticks("schedule.large")
        return "schedule.wait.slow" if slow else "schedule.wait.standard"

    def _falls(self) -> list[Node]:
        return [one for one in self.surfaces if one.raw("fall", None) is not None]


def _id(one: Node) -> str:
    return one.text("id")


def _added(one: Node) -> int:
    return sum(part.flag("added", False) for part in one.nodes("supports"))


def _new_boards(one: Node) -> list[Node]:
    return [board for board in one.nodes("boards") if not board.flag("fixed", False)]


def _taped(one: Node) -> list[Any]:
    return [seam.raw("line") for seam in one.nodes("seams") if seam.flag("tape", True)]


def _size(one: Node) -> float:
    return _polygon(one.raw("outline"), ())


def _areas(one: Node) -> list[float]:
    parts = [part for area in one.nodes("tiled", ()) for part in area.nodes("area")]
    return [_polygon(part.raw("outline"), part.raw("holes", ())) for part in parts]


def _polygon(outline: Any, holes: Any) -> float:
    """An area [m²], of lengths in millimetres."""
    return float(Polygon(outline).area - sum(Polygon(hole).area for hole in holes)) / 1e6


def _metres(line: Any) -> float:
    return sum(dist(a, b) for a, b in pairwise(line)) / 1000
