"""Which niches, windows, benches and kerbs are tiled, as surfaces of their own, and what they take of others."""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

from firstcourse.details.bench_feet import bench_feet, feet_findings, floors_of
from firstcourse.details.footings import Floors, Foot
from firstcourse.details.linings import bench_linings, kerb_linings, niche_linings, window_linings
from firstcourse.details.shelves import FallLimits, drop_of_shelf, least_drop
from firstcourse.details.wall_feet import floor_zones, left_on_boards, out_of_level, short_of_floor, tiled_floors
from firstcourse.details.window_returns import returns_asked, sill_working, windows_of
from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds, rectangle, to_shapely
from firstcourse.job import Job, Pattern, Room, TiledBench, TiledNiche, Tiling, WindowReturns
from firstcourse.layers import laid_of, set_height, tiling_tile
from firstcourse.plan import OWN_HEIGHT, Opening, OpeningKind, Stock, Surface, SurfaceKind, Zone, opening_ring
from firstcourse.rules import RuleSet
from firstcourse.survey import SideFrame, SurveyedShower, SurveyResult, frames_of
from firstcourse.tiles import COURSED, Lining, Rim, ToLine, ToTile, boards_on, surfaces_to_tile, walls_beside
from firstcourse.units import floor_to, ticks_from_mm, to_mm
from firstcourse.values import Value, Word, least, length
from firstcourse.workings import Working

_SAME_MM = 0.01
_DOWN_TO_FLOORS = ("floor", "tray", "kerb")


@dataclass(frozen=True, slots=True, kw_only=True)
class Linings:
    """All linings of a job.

    Attributes:
        lines: In order of the job.
        taken: What they take up of other surfaces, by surface.
        findings: Falls of sills and tops.
        workings: How high each kerb's outer face is, and how high each window's sill lies.
    """

    lines: tuple[ToLine, ...] = ()
    taken: Mapping[str, tuple[Zone, ...]] = field(default_factory=dict)
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def linings_of(
    job: Job,
    survey: SurveyResult,
    surfaces: Sequence[Surface],
    stock: Mapping[SurfaceKind, tuple[Stock, ...]],
    rules: RuleSet,
) -> Linings:
    """The linings of a job.

    Args:
        job: The job.
        survey: For rooms and showers as they are.
        surfaces: Boarded surfaces and shower floors.
        stock: Sheets by what they serve.
        rules: Rules in force.

    Raises:
        JobError: A niche that is no rectangle, or a lining of which tile leaves nothing.
    """
    return _Liner(job, survey, surfaces, stock, rules).lined()


class _Liner:
    def __init__(
        self,
        job: Job,
        survey: SurveyResult,
        surfaces: Sequence[Surface],
        stock: Mapping[SurfaceKind, tuple[Stock, ...]],
        rules: RuleSet,
    ) -> None:
        self.job, self.survey, self.rules = job, survey, rules
        self.by_kind, self.stock = stock, stock[SurfaceKind.WALL]
        self.surfaces = {surface.id: surface for surface in surfaces}
        self.tiles = {tile.id: tile for tile in job.tiles}
        self.asked = {item.surface_id: item for item in surfaces_to_tile(job)}
        self.lines: list[ToLine] = []
        self.taken: dict[str, list[Zone]] = {}
        self.findings: list[Finding] = []
        self.workings: list[Working] = []
        self.problems: list[InputProblem] = []

    def lined(self) -> Linings:
        for number, room in enumerate(self.job.rooms, start=1):
            self._feet(room)
            for item in self.asked.values():
                if item.room is room and item.surface_id in self.surfaces:
                    for index, niche in enumerate(item.tiling.niches, start=1):
                        self._placed(f"{item.field}.niches[{index}]", partial(self._niche, item, niche))
                    for index, asked, window in windows_of(room, self.surfaces[item.surface_id]):
                        place = f"{item.field.removesuffix('tiling')}openings[{index}].returns"
                        self._placed(place, partial(self._window, item, asked.returns, window))
            for index, bench in enumerate(room.benches, start=1):
                self._placed(f"rooms[{number}].benches[{index}]", partial(self._bench, room, bench))
            for shower in self.survey.showers:
                if shower.surface.room == room.name:
                    self._placed(f"rooms[{number}].floor.shower.kerb", partial(self._kerb, room, shower))
        if self.problems:
            raise JobError(tuple(self.problems))
        return Linings(
            lines=tuple(self.lines),
            taken={name: tuple(zones) for name, zones in self.taken.items()},
            findings=tuple(self.findings),
            workings=tuple(self.workings),
        )

    def _placed(self, place: str, line: Callable[[str], None]) -> None:
        try:
            line(place)
        except InputValueError as error:
            self.problems.append(InputProblem(file="job", line=0, column=0, field=place, message=str(error)))

    def _floors(self, room: Room) -> Floors | None:
        return floors_of(self.job, room, self.survey.showers, self.surfaces, self.by_kind, self.rules)

    def _feet(self, room: Room) -> None:
        """What the room's floors take up of its walls."""
        floors = tiled_floors(room, self._floors(room))
        boarded = {wall.wall: self.surfaces.get(f"{room.name}/wall/{wall.wall}") for wall in room.walls}
        sloped = out_of_level([one for one in boarded.values() if one is not None], self.job.tape)
        for wall in room.walls if floors is not None else ():
            surface = boarded[wall.wall]
            if surface is not None and surface.id in self.asked and floors is not None:
                frame = self._frame(room, wall.wall)
                if floors.fall is not None and sloped:
                    if wall.foot in _DOWN_TO_FLOORS:
                        self.findings.append(left_on_boards(surface))
                    continue
                self.taken.setdefault(surface.id, []).extend(floor_zones(surface, frame, floors))
                if wall.foot in _DOWN_TO_FLOORS:
                    self.findings += short_of_floor(surface, frame, floors, self.rules, self.job.tape)

    def _niche(self, item: ToTile, asked: TiledNiche, place: str) -> None:
        wall = self.surfaces[item.surface_id]
        opening = next((one for one in wall.openings if one.id == asked.niche), None)
        if opening is None or opening.kind is not OpeningKind.NICHE or opening.outline is None:
            raise InputValueError(f"'{asked.niche}' is no niche on the boarded part of this wall")
        tiling = item.tiling
        returns = asked.returns or asked.tile or tiling.tile
        assert returns is not None
        drop = self._drop(asked.depth, asked.drop, f"{wall.id}/opening/{opening.id}", "sill")
        back_tile = asked.tile or tiling.tile
        found = niche_linings(
            wall,
            opening,
            depth=asked.depth,
            drop=drop,
            on_wall=self._built_as(item),
            on_back=self._built(back_tile or returns),
            on_returns=self._built(returns),
        )
        for lining in found:
            if lining.name != "back":
                like = self._like_wall(item, returns)
            elif asked.tile in (None, tiling.tile):
                like = self._as_wall(item)
            else:
                like = Tiling(tile=asked.tile, pattern=asked.pattern, exposure=item.exposure)
            self._add(lining, like, item.room, place, item.surface_id, leads=lining.name == "back")

    def _window(self, item: ToTile, asked: WindowReturns | None, window: Opening, place: str) -> None:
        wall = self.surfaces[item.surface_id]
        self.findings += returns_asked(item, window, self.rules)
        if asked is None or not asked.tiled:
            return
        tile = asked.tile or item.tiling.tile
        assert tile is not None
        drop = self._drop(asked.depth, asked.drop, f"{wall.id}/opening/{window.id}", "sill")
        on_returns = self._built(tile)
        found = window_linings(
            wall,
            window,
            depth=asked.depth,
            drop=drop,
            on_wall=self._built_as(item),
            on_returns=on_returns,
        )
        self.workings.append(sill_working(wall, window, drop, on_returns))
        for lining in found:
            like = self._like_wall(item, tile)
            self._add(lining, like, item.room, place, item.surface_id, leads=lining.name == "sill")

    def _bench(self, room: Room, asked: TiledBench, place: str) -> None:
        wall_id = f"{room.name}/wall/{asked.wall}"
        long, touch = room.sides[asked.wall], self.rules.ticks("shower.touch")
        before, after = walls_beside(asked.wall, room)
        right = asked.left + asked.width
        front = asked.front or asked.tile
        left_rim, right_rim = (
            Rim(meets=f"{room.name}/wall/{pair}", before=boards_on(pair, room, self.stock)) if stands else None
            for pair, stands in ((before, asked.left <= touch), (after, right >= long - touch))
        )
        base = f"{room.name}/bench/{asked.id}"
        frame, on_front = self._frame(room, asked.wall), self._built(front)
        feet = bench_feet(asked, frame, self._floors(room), on_front)
        free = (True, left_rim is None, right_rim is None)
        found = bench_linings(
            (base, room.name),
            width=asked.width,
            depth=asked.depth,
            feet=feet,
            height=asked.height,
            drop=self._drop(asked.depth, asked.drop, base, "top"),
            ends=(left_rim, right_rim),
            back=Rim(meets=wall_id, before=boards_on(asked.wall, room, self.stock)),
            on_front=on_front,
        )
        self.findings += feet_findings(asked, feet, free, base, self.job.tape)
        self._on_drain(room, asked, feet[0], base)
        for lining in found:
            tile = asked.tile if lining.name == "top" else front
            self._add(
                lining,
                self._like_wall(self.asked.get(wall_id), tile),
                room,
                place,
                wall_id,
                leads=lining.name == "top",
            )
        self._takes(room, asked, base, before, after, (left_rim is not None, right_rim is not None))

    def _on_drain(self, room: Room, asked: TiledBench, front: Foot, base: str) -> None:
        """That a bench which stands on the floor stands on the drain."""
        floor = self.surfaces.get(f"{room.name}/floor/shower")
        if floor is None or floor.fall is None or front.on == (OWN_HEIGHT,):
            return
        box = self._frame(room, asked.wall).box(asked.left, 0, asked.left + asked.width, asked.depth)
        drains = [opening for opening in floor.openings if opening.kind is OpeningKind.DRAIN]
        under = [
            f"{floor.id}/opening/{drain.id}"
            for drain in drains
            if to_shapely(opening_ring(drain)).intersection(to_shapely(box)).area > 0
        ]
        if under:
            self.findings.append(
                Finding(code="TIL-128", severity=Severity.STOP, at=(base, *under), remedies=("move_or_hang",))
            )

    def _kerb(self, room: Room, shower: SurveyedShower, place: str) -> None:
        kerb = shower.shower.kerb
        floor = self.surfaces.get(shower.surface.id)
        if kerb is None or kerb.tile is None or floor is None:
            return
        boards = [boards_on(wall.wall, room, self.stock) for wall in room.walls]
        drop, on_top = self._drop(kerb.width, None, f"{floor.id}/kerb", "top"), self._built(kerb.tile)
        found = kerb_linings(
            floor,
            width=kerb.width,
            drop=drop,
            height=kerb.height - on_top,
            outer=self._outer(floor, kerb.height, drop, on_top),
            on_walls=max(boards, default=0),
        )
        for index, lining in enumerate(found):
            tile = kerb.tile if lining.name == "top" else kerb.faces or kerb.tile
            self._add(lining, Tiling(tile=tile), room, place, "", leads=index == 0)

    def _outer(self, floor: Surface, kerb: int, drop: int, on_top: int) -> int:
        """Height of a kerb's outer face, from the room's finished floor to the tile of the top [ticks]."""
        fall = floor.fall
        if fall is None or fall.drain_height is None or fall.room_floor is None:
            return kerb - on_top
        outer = fall.drain_height + kerb + drop - on_top - fall.room_floor
        self.workings.append(
            Working(
                formula="tiles-kerb_face",
                at=(floor.id,),
                inputs={
                    "drain": length(fall.drain_height),
                    "kerb": length(kerb),
                    "fall": length(drop),
                    "tile": length(on_top),
                    "floor": length(fall.room_floor),
                },
                result=length(outer),
            )
        )
        return outer

    def _add(self, lining: Lining, tiling: Tiling, room: Room, place: str, follows: str, *, leads: bool) -> None:
        item = ToTile(surface_id=lining.surface.id, tiling=tiling, room=room, field=place)
        self.lines.append(ToLine(lining=lining, item=item, follows=follows, leads=leads))

    def _built(self, tile: str) -> int:
        return set_height(laid_of((self.tiles[tile],)), self.rules)

    def _built_as(self, wall: ToTile) -> int:
        tile = tiling_tile(self.job, wall.tiling)
        return 0 if tile is None else set_height(replace(tile, bond_coat=wall.mortar), self.rules)

    def _as_wall(self, wall: ToTile) -> Tiling:
        """The wall's tiling without what belongs to the wall alone."""
        alone = {"start": None, "seen_first": (), "bands": (), "niches": (), "border": None, "soft_joints": ()}
        return wall.tiling.model_copy(update={**alone, "exposure": wall.exposure})

    def _like_wall(self, wall: ToTile | None, tile: str) -> Tiling:
        """Courses that can run on from the wall's; else plain ones."""
        if (
            wall is not None
            and wall.tiling.tile == tile
            and wall.tiling.pattern in COURSED
            and wall.tiling.angle == 0
        ):
            return self._as_wall(wall)
        pattern: Pattern = "hexagon" if self.tiles[tile].shape == "hexagon" else "stacked"
        return Tiling(tile=tile, pattern=pattern, exposure=None if wall is None else wall.exposure)

    def _drop(self, depth: int, given: int | None, ref: str, what: str) -> int:
        """How much lower the front lies, and a word on it [ticks]."""
        entry, tape = self.rules.entry("fall.shelf.min"), self.job.tape
        greatest = self.rules.number("fall.shelf.max") if self.rules.has("fall.shelf.max") else None
        low, high = drop_of_shelf(to_mm(depth), FallLimits(least=self.rules.number(entry.id), greatest=greatest))
        needed = least_drop(depth, self.rules, tape)
        drop = needed if given is None else given
        wrong = to_mm(drop) < low - _SAME_MM or (to_mm(drop) > high + _SAME_MM and given is not None)
        bounded: dict[str, Value] = {}
        if not math.isinf(high):
            bounded["most"] = length(self._readable(ticks_from_mm(high), needed))
        self.findings.append(
            entry.found(
                "TIL-124",
                Severity.FIX if wrong else Severity.NOTE,
                ref,
                measured=length(drop),
                limit=least(length(needed)),
                remedies=("set" if wrong else "check",),
                what=Word(word=what),
                bounded=bool(bounded),
                **bounded,
            )
        )
        return drop

    def _readable(self, most: int, needed: int) -> int:
        """A greatest drop down to the half mark that a tape reads; as it is where that is under the least."""
        marked = floor_to(most, self.job.tape.graduation // 2)
        return marked if marked >= needed else most

    def _takes(
        self, room: Room, asked: TiledBench, base: str, before: str, after: str, stands: tuple[bool, bool]
    ) -> None:
        """What a bench stands before: its own wall, the walls at its ends, the floor and a shower floor."""
        front, top = self._built(asked.front or asked.tile), self._built(asked.tile)
        left = asked.left - (0 if stands[0] else front)
        right = asked.left + asked.width + (0 if stands[1] else front)
        out, high = asked.depth + front, asked.height + top
        self._take(f"{room.name}/wall/{asked.wall}", (left, right, high), base)
        if stands[0]:
            self._take(f"{room.name}/wall/{before}", (room.sides[before] - out, room.sides[before], high), base)
        if stands[1]:
            self._take(f"{room.name}/wall/{after}", (0, out, high), base)
        ring = self._frame(room, asked.wall).box(left, 0, right, out)
        for name in (f"{room.name}/floor", f"{room.name}/floor/shower"):
            if name in self.surfaces:
                self.taken.setdefault(name, []).append(Zone(outline=ring, why=base))

    def _frame(self, room: Room, wall: str) -> SideFrame:
        plan = next(one.plan for one in self.survey.rooms if one.name == room.name)
        return frames_of(room, plan)[wall]

    def _take(self, name: str, span: tuple[int, int, int], base: str) -> None:
        surface = self.surfaces.get(name)
        if surface is not None:
            left, right, high = span
            low = min(0, bounds(surface.outline)[1])
            zone = Zone(outline=rectangle(left, low, right, high), why=base)
            self.taken.setdefault(name, []).append(zone)
