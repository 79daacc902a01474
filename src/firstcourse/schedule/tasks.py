"""What is to be done of a plan, room by room, with its quantities, and what waits for what."""

import math
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from typing import Final, Literal

from firstcourse.geometry import area2
from firstcourse.plan import Board, OpeningKind, Ring, Surface, SurfaceKind, TaskKind, TileStock, Work
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import kept

TILE_HERE: Final = "tile_here"
HOLDS: frozenset[TaskKind] = frozenset(
    ("framing_seen", "nail_plates", "blocking_seen", "drain_test", "flood_test", "glass_measure")
)
_LEVELS = ("ground-patch", "ground-level_out", "ground-grind")
"""Workings of what makes a floor flat."""
_PIPES = (OpeningKind.VALVE, OpeningKind.PIPE, OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.FLANGE)
_LAST = {SurfaceKind.CEILING: 0, SurfaceKind.WALL: 1, SurfaceKind.COUNTER: 2, SurfaceKind.FLOOR: 3}
"""What is tiled first: nobody stands on fresh tile."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A task that has no time yet."""

    id: str
    kind: TaskKind
    room: str
    surfaces: tuple[str, ...] = ()
    work: tuple[Work, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Pause:
    """A task waits for another; `rule` says how long, empty where it need only be over."""

    task: str
    after: str
    rule: str = ""


@dataclass(slots=True)
class Steps:
    """Tasks in the order of work, with their waits."""

    steps: list[Step] = field(default_factory=list)
    pauses: list[Pause] = field(default_factory=list)

    def add(
        self,
        kind: TaskKind,
        room: str,
        after: Iterable[str | tuple[str, str]],
        *work: Work,
        of: str = "",
        surfaces: Sequence[str] = (),
    ) -> str:
        """List a task behind what it waits for: an id, or an id with the rule that says how long."""
        name = f"{of}#{kind}" if of else f"{room}/{kind}" if room else kind
        self.steps.append(
            Step(id=name, kind=kind, room=room, surfaces=tuple(surfaces) or ((of,) if of else ()), work=work)
        )
        for one in after:
            found, rule = (one, "") if isinstance(one, str) else one
            self.pauses.append(Pause(task=name, after=found, rule=rule))
        return name


@dataclass(frozen=True, slots=True, kw_only=True)
class Products:
    """What the job says of what sets."""

    mortar: Literal["standard", "rapid"]
    grout: Literal["cement", "resin"]
    seal: bool


def steps_of(
    surfaces: Sequence[Surface],
    stock: Sequence[TileStock],
    workings: Collection[str],
    products: Products,
    rules: RuleSet,
) -> Steps:
    """All tasks of a plan in the order of work.

    Args:
        surfaces: All of the plan.
        stock: Its tiles.
        workings: Keys of its workings: they tell which floors are made flat.
        products: What the job says of them.
        rules: For what counts as a large tile.
    """
    found = Steps()
    if any(surface.tiled for surface in surfaces):
        found.add(TILE_HERE, "", ())
    sizes = {tile.id: min(tile.size) for tile in stock}
    for room in dict.fromkeys(surface.room for surface in surfaces):
        _Room(
            room, [one for one in surfaces if one.room == room], sizes, workings, products, rules, found
        ).listed()
    return found


@dataclass(frozen=True, slots=True)
class _Room:
    name: str
    surfaces: list[Surface]
    sizes: dict[str, int]
    workings: Collection[str]
    products: Products
    rules: RuleSet
    to: Steps

    def listed(self) -> None:
        """List all that is done in the room."""
        seen = self._before_boards()
        ground = self._ground(seen)
        covered = self._boards(seen, ground)
        dry = self._membrane(covered)
        self._tile(dry)

    def _before_boards(self) -> list[str]:
        checked = self.to.add("strip_check", self.name, (), _work("room", 1, "count", "strip_check"))
        added = [(one.id, sum(support.added for support in one.supports)) for one in self.surfaces]
        count = sum(number for _, number in added)
        where = [name for name, number in added if number]
        framed = checked
        if count:
            framed = self.to.add(
                "framing", self.name, [checked], _work("member", count, "count", "member"), surfaces=where
            )
        held = [self.to.add("framing_seen", self.name, [framed]), self.to.add("nail_plates", self.name, [framed])]
        if count:
            held.append(self.to.add("blocking_seen", self.name, [framed], surfaces=where))
        if self._has(OpeningKind.DRAIN, *_PIPES) or self._falls():
            held.append(self.to.add("drain_test", self.name, [framed]))
        return held

    def _ground(self, seen: list[str]) -> list[str | tuple[str, str]]:
        """Floors made flat, and liners with the test that they hold."""
        found: list[str | tuple[str, str]] = []
        for one in self.surfaces:
            if any(f"{formula}@{one.id}" in self.workings for formula in _LEVELS):
                work = _work("levelled", _area(one.outline), "m2", "levelling")
                found.append(
                    (self.to.add("levelling", self.name, seen, work, of=one.id), "schedule.wait.levelling")
                )
        lined = [one for one in self._falls() if one.membrane == "liner"]
        if lined:
            laid = [
                self.to.add(
                    "liner", self.name, seen, _work("membrane", _area(one.outline), "m2", "membrane"), of=one.id
                )
                for one in lined
            ]
            found.append(self._tested([(each, "schedule.wait.liner") for each in laid], [one.id for one in lined]))
        return found

    def _boards(
        self, seen: list[str], ground: list[str | tuple[str, str]]
    ) -> tuple[list[str | tuple[str, str]], list[str | tuple[str, str]]]:
        """Boards and beds; what comes over boards, and over beds, waits for these."""
        boards = [(one, board) for one in self.surfaces for board in one.boards if not board.fixed]
        over: list[str | tuple[str, str]] = [*seen, *ground]
        if boards:
            where = list(dict.fromkeys(one.id for one, _ in boards))
            area = kept(sum(_board_area(board) for _, board in boards))
            last = self.to.add("boards", self.name, over, _work("board", area, "m2", "board"), surfaces=where)
            count = sum(len(board.fasteners) for _, board in boards)
            if count:
                work = _work("fastener", count, "count", "fastener")
                last = self.to.add("fasteners", self.name, [last], work, surfaces=where)
            over = [last]
            seams = [
                (one.id, seam.line) for one in self.surfaces if one.id in where for seam in one.seams if seam.tape
            ]
            if seams:
                work = _work("seam", _metres(line for _, line in seams), "m", "seam")
                taped = list(dict.fromkeys(name for name, _ in seams))
                over = [(self.to.add("tape", self.name, over, work, surfaces=taped), "schedule.wait.seams")]
        beds: list[str | tuple[str, str]] = []
        for one in self._falls():
            work = _work("bed", _area(one.outline), "m2", "bed")
            # A bed is screeded to marks on the boards, and over a liner that has held.
            after = [item if isinstance(item, str) else item[0] for item in over]
            beds.append((self.to.add("bed", self.name, after, work, of=one.id), "schedule.wait.bed"))
        return over, beds

    def _membrane(
        self, covered: tuple[list[str | tuple[str, str]], list[str | tuple[str, str]]]
    ) -> list[str | tuple[str, str]]:
        """What keeps the water off boards and beds; tile waits for what is returned."""
        boards, beds = covered
        waits = [*boards, *beds]
        kinds = {one.membrane for one in self.surfaces} - {"", "liner"}
        if not kinds:
            return waits
        where = [one for one in self.surfaces if one.membrane in kinds]
        area, ids = kept(sum(_area(one.outline) for one in where)), [one.id for one in where]
        laid = self.to.add("membrane", self.name, waits, _work("membrane", area, "m2", "membrane"), surfaces=ids)
        rule = "schedule.wait.sheet"
        if "liquid" in kinds:
            rule = "schedule.wait.liquid"
            second = kept(sum(_area(one.outline) for one in where if one.membrane == "liquid"))
            laid = self.to.add(
                "second_coat",
                self.name,
                [(laid, "schedule.wait.between_coats")],
                _work("membrane", second, "m2", "second_coat"),
                surfaces=[one.id for one in where if one.membrane == "liquid"],
            )
        floors = [one.id for one in self._falls() if one.membrane in kinds]
        return [self._tested([(laid, rule)], floors)] if floors else [(laid, rule)]

    def _tested(self, waits: Sequence[tuple[str, str]], floors: list[str]) -> str:
        work = _work("surface", len(floors), "count", "fill")
        filled = self.to.add("fill", self.name, waits, work, of=floors[0], surfaces=floors)
        wait = (filled, "water.test.hours")
        return self.to.add("flood_test", self.name, [wait], of=floors[0], surfaces=floors)

    def _tile(self, dry: list[str | tuple[str, str]]) -> None:
        tiled = sorted((one for one in self.surfaces if one.tiled), key=lambda one: _LAST[one.kind])
        if not tiled:
            return
        set_: list[tuple[str, str]] = []
        for one in tiled:
            work = _work("surface", 1, "count", "layout")
            marked = self.to.add("layout", self.name, [*dry, TILE_HERE], work, of=one.id)
            area = kept(sum(_area(part.outline, part.holes) for area in one.tiled for part in area.area))
            cut = sum(not tile.whole and not tile.fixed for tile in one.tiles)
            works = [_work("tile", area, "m2", "tile")]
            works += [_work("cut_tile", cut, "count", "cut_tile")] if cut else []
            set_.append((self.to.add("tile", self.name, [marked], *works, of=one.id), self._mortar(one)))
        ids = [one.id for one in tiled]
        whole = kept(
            sum(_area(part.outline, part.holes) for one in tiled for area in one.tiled for part in area.area)
        )
        grout = self.products.grout
        grouted = self.to.add("grout", self.name, set_, _work("tile", whole, "m2", "grout"), surfaces=ids)
        last, uses = grouted, [(grouted, f"schedule.wait.{grout}_use")]
        soft = [(one.id, joint.line) for one in tiled for joint in one.soft_joints]
        if soft:
            last = self.to.add(
                "sealant",
                self.name,
                [(grouted, f"schedule.wait.{grout}")],
                _work("soft_joint", _metres(line for _, line in soft), "m", "sealant"),
                surfaces=list(dict.fromkeys(name for name, _ in soft)),
            )
            uses.append((last, "schedule.wait.sealant_use"))
        if self.products.seal and grout == "cement":
            after: list[str | tuple[str, str]] = [(grouted, "schedule.wait.seal")]
            after += [last] if last != grouted else []
            last = self.to.add("seal", self.name, after, _work("tile", whole, "m2", "seal"), surfaces=ids)
            uses.append((last, "schedule.wait.sealed_use"))
        clean = self.to.add("cleaning", self.name, [last], _work("tile", whole, "m2", "cleaning"), surfaces=ids)
        ends: list[str | tuple[str, str]] = [clean, *uses]
        if self._falls() or self._has(OpeningKind.TUB, OpeningKind.TRAY):
            ends.append(self.to.add("glass_measure", self.name, [grouted]))
        self.to.add("in_use", self.name, ends)

    def _mortar(self, surface: Surface) -> str:
        if self.products.mortar == "rapid":
            return "schedule.wait.rapid"
        large = any(
            self.sizes[name] >= self.rules.ticks("schedule.large") for area in surface.tiled for name in area.tiles
        )
        return "schedule.wait.slow" if large and surface.membrane else "schedule.wait.standard"

    def _falls(self) -> list[Surface]:
        return [one for one in self.surfaces if one.fall is not None]

    def _has(self, *kinds: OpeningKind) -> bool:
        return any(opening.kind in kinds for one in self.surfaces for opening in one.openings)


def needs(surfaces: Iterable[Surface]) -> tuple[bool, bool, bool]:
    """Whether a room has pipes, a drain and boxes that others set before it is boarded."""
    kinds = {opening.kind for one in surfaces for opening in one.openings}
    return not kinds.isdisjoint(_PIPES), OpeningKind.DRAIN in kinds, OpeningKind.BOX in kinds


def _work(of: str, amount: float, unit: str, rate: str) -> Work:
    return Work.model_validate({"of": of, "amount": amount, "unit": unit, "rule": f"schedule.hours.{rate}"})


def _board_area(board: Board) -> float:
    return _area(board.outline, board.holes)


def _area(outline: Ring, holes: Iterable[Ring] = ()) -> float:
    """An area [m²]."""
    doubled = area2(outline) - sum(abs(area2(hole)) for hole in holes)
    return kept(float(Fraction(doubled, 2 * TICKS_PER_MM**2 * 10**6)))


def _metres(lines: Iterable[Sequence[tuple[int, int]]]) -> float:
    return kept(math.fsum(_lengths(lines)) / TICKS_PER_MM / 1000)


def _lengths(lines: Iterable[Sequence[tuple[int, int]]]) -> Iterator[float]:
    for line in lines:
        yield from (math.dist(a, b) for a, b in pairwise(line))
