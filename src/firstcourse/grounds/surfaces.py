"""From a job and its survey to how flat, plumb and high each surface is, judged for its tile."""

import math
from dataclasses import dataclass
from typing import Literal

from shapely import unary_union

from firstcourse.findings import Finding
from firstcourse.frames import Remedy
from firstcourse.geometry import bounds, to_shapely
from firstcourse.grounds.build_up import BuildUp, judge_build_up
from firstcourse.grounds.doorways import Doorway
from firstcourse.grounds.exposure import ExposedSurface, Zone, zone_working
from firstcourse.grounds.fittings import Fitting, ValveWindow
from firstcourse.grounds.flat_enough import GroundJudgement, ReadGround, judge_ground
from firstcourse.grounds.flatness import MM_PER_IN, Spot
from firstcourse.grounds.gaps import Gap, judge_gaps
from firstcourse.grounds.plumb import Corner, Stance, judge_stance, needed_furring_mm
from firstcourse.grounds.straightening import packing
from firstcourse.job import BoardedCeiling, BoardedFloor, BoardedWall, Exposure, Job, Room
from firstcourse.layers import LaidTile, board_family, floor_layers, laid_tile, surface_part, wall_layers
from firstcourse.plan import HeightMark, OpeningKind, Point, Stock, Surface, SurfaceKind, opening_ring
from firstcourse.rules import RuleSet
from firstcourse.survey import RoomSurvey
from firstcourse.units import TICKS_PER_MM, ticks_from_mm, to_inches, to_mm
from firstcourse.workings import Working


@dataclass(slots=True)
class SurfaceSide:
    """What the surface itself says: flatness, plumb and level, build-up.

    Attributes:
        workings: In order.
        remedies: Ways to flatten it, best first; empty where it is flat or was not read.
        judged: Whether anything was.
        missing: What the job would have to say for more, by code.
        heights: Its readings with what to do at each.
    """

    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()
    remedies: tuple[Remedy, ...] = ()
    judged: bool = False
    missing: tuple[str, ...] = ()
    heights: tuple[HeightMark, ...] = ()
    filled_l: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """One surface with all that its judgement rests on."""

    job: Job
    room: Room
    survey: RoomSurvey
    surface: Surface
    stock: tuple[Stock, ...]
    rules: RuleSet


def judge_surface(
    job: Job,
    room: Room,
    survey: RoomSurvey,
    surface: Surface,
    stock: tuple[Stock, ...],
    rules: RuleSet,
) -> SurfaceSide:
    """Judge one surface as far as the job says how it stands and what it is to carry.

    Args:
        job: The job document.
        room: The surface's room.
        survey: That room as adjusted.
        surface: The surface.
        stock: Boards it may be boarded with.
        rules: The rules in force.

    Raises:
        InputValueError: Readings that fix no plane.
        RuleNotFoundError: The practice has no rule for something entered.
    """
    done = SurfaceSide()
    part = surface_part(room, surface)
    if part is None:
        return done
    ask = _Asked(job=job, room=room, survey=survey, surface=surface, stock=stock, rules=rules)
    tile = laid_tile(job, part)
    stance = None
    if isinstance(part, BoardedWall):
        stance = _stance(ask, part)
        if stance.lean_mm is not None or stance.corners or stance.rise_mm is not None:
            _add(done, *judge_stance(rules, stance))
    if part.exposure is not None:
        zone = Zone(part.exposure.zone)
        working = zone_working(rules, surface.id, zone, is_floor=surface.kind is SurfaceKind.FLOOR)
        _add(done, (), (working,))
    if tile is None:
        return done
    if isinstance(part, BoardedFloor):
        _floor_ground(done, ask, part, tile)
        _add(done, *judge_build_up(rules, _floor_build_up(ask, part, tile)))
        return done
    if isinstance(part, BoardedWall) and stance is not None:
        _wall_ground(done, ask, part, tile, stance)
    _add(done, *judge_build_up(rules, _wall_build_up(ask, part, tile, stance)))
    return done


def _add(done: SurfaceSide, findings: tuple[Finding, ...], workings: tuple[Working, ...]) -> None:
    done.findings += findings
    done.workings += workings
    done.judged = True


def _floor_ground(done: SurfaceSide, ask: _Asked, floor: BoardedFloor, tile: LaidTile) -> None:
    if tile.edge is None or not (floor.spots or floor.straightedge):
        done.missing += ("wants_flatness",)
        return
    _gaps(done, ask, floor, tile.edge, read=bool(floor.spots))
    if not floor.spots:
        return
    found = judge_ground(
        ask.rules,
        ReadGround(
            ref=ask.surface.id,
            is_floor=True,
            tape=ask.job.tape,
            spots=tuple(
                Spot(u_mm=to_mm(spot.left), v_mm=to_mm(spot.out), height_mm=to_mm(spot.height))
                for spot in floor.spots
            ),
            tile_edge_mm=to_mm(tile.edge),
            area_m2=boarded_m2(ask.surface),
            laid=_laid(floor),
        ),
    )
    _add(done, found.findings, found.workings)
    done.remedies = found.remedies
    done.filled_l = found.filled_l
    # The first side runs along the top of the drawing from left to right, and `out` is down from it.
    left, top = ask.survey.plan[ask.room.corners[0]]
    places = tuple((left + spot.left, top - spot.out) for spot in floor.spots)
    done.heights = _height_marks(found, places, more="fill", less="grind")


def _wall_ground(done: SurfaceSide, ask: _Asked, wall: BoardedWall, tile: LaidTile, stance: Stance) -> None:
    if tile.edge is None:
        return
    _gaps(done, ask, wall, tile.edge, read=bool(wall.faces))
    if not wall.faces:
        return
    heights = [reading.up for reading in wall.faces]
    string = max(heights) - min(heights) <= ask.rules.ticks("surface.string.reach")
    spots = tuple(
        Spot(u_mm=to_mm(reading.at), v_mm=0.0 if string else to_mm(reading.up), height_mm=to_mm(reading.face))
        for reading in wall.faces
    )
    found = judge_ground(
        ask.rules,
        ReadGround(
            ref=ask.surface.id,
            is_floor=False,
            tape=ask.job.tape,
            spots=spots,
            tile_edge_mm=to_mm(tile.edge),
            area_m2=boarded_m2(ask.surface),
            string=string,
            laid=_laid(wall),
        ),
    )
    _add(done, found.findings, found.workings)
    done.remedies = found.remedies
    if found.remedies and string:
        done.workings += packing(ask.rules, stance, spots)
    _, low, _, high = bounds(ask.surface.outline)
    # A string's height is not told; it is drawn across the middle of the boards.
    level = (low + high) // 2
    places = tuple((reading.at, reading.up or level) for reading in wall.faces)
    done.heights = _height_marks(found, places, more="shim", less="plane_off")


def _gaps(done: SurfaceSide, ask: _Asked, part: BoardedFloor | BoardedWall, edge: int, *, read: bool) -> None:
    if part.straightedge:
        findings, working = judge_gaps(ask.rules, ask.surface.id, _laid(part), to_mm(edge), read=read)
        _add(done, findings, (working,))


def _laid(part: BoardedFloor | BoardedWall) -> tuple[Gap, ...]:
    return tuple(
        Gap(place=each.place, reach_mm=to_mm(each.reach), gap_mm=to_mm(each.gap)) for each in part.straightedge
    )


def _height_marks(
    found: GroundJudgement,
    places: tuple[Point, ...],
    *,
    more: Literal["fill", "shim"],
    less: Literal["grind", "plane_off"],
) -> tuple[HeightMark, ...]:
    changes: tuple[float | None, ...] = found.changes_mm or (None,) * len(places)
    marks = []
    for at, off, change in zip(places, found.deviations_mm, changes, strict=True):
        by = 0 if change is None else ticks_from_mm(change)
        do: Literal["", "leave", "fill", "grind", "shim", "plane_off"] = ""
        if change is not None:
            do = "leave" if not by else more if by > 0 else less
        marks.append(HeightMark(at=at, off=ticks_from_mm(off), do=do, by=abs(by)))
    return tuple(marks)


def _floor_build_up(ask: _Asked, floor: BoardedFloor, tile: LaidTile) -> BuildUp:
    rims = [
        (Fitting(ref=f"{ask.surface.id}/opening/{opening.id}", top_in=to_inches(opening.top)), opening.kind)
        for opening in floor.openings
        if opening.top is not None
    ]
    flanges = [fitting for fitting, kind in rims if kind is OpeningKind.FLANGE]
    if floor.flange_top is not None:
        flanges.append(Fitting(ref=f"{ask.surface.id}/flange", top_in=to_inches(floor.flange_top)))
    return BuildUp(
        ref=ask.surface.id,
        tape=ask.job.tape,
        layers=floor_layers(tile, floor.tile, ask.stock if ask.surface.boarded else (), ask.rules),
        area_m2=boarded_m2(ask.surface),
        doorways=tuple(
            Doorway(
                ref=f"{ask.surface.id}/door/{door.id}",
                other_floor_in=to_inches(door.other_floor),
                door_underside_in=None if door.door_underside is None else to_inches(door.door_underside),
            )
            for door in floor.doorways
        ),
        flanges=tuple(flanges),
        drains=tuple(fitting for fitting, kind in rims if kind is OpeningKind.DRAIN),
        trim_in=None if floor.trim is None else to_inches(floor.trim),
    )


def _wall_build_up(
    ask: _Asked, part: BoardedWall | BoardedCeiling, tile: LaidTile, stance: Stance | None
) -> BuildUp:
    openings = part.openings if isinstance(part, BoardedWall) else ()
    trim = part.trim if isinstance(part, BoardedWall) else None
    return BuildUp(
        ref=ask.surface.id,
        tape=ask.job.tape,
        layers=wall_layers(tile, ask.stock, ask.rules),
        area_m2=boarded_m2(ask.surface),
        backings=tuple(dict.fromkeys(board_family(item.kind) for item in ask.stock)),
        tile_area_m2=tile.face_m2,
        valves=tuple(
            ValveWindow(
                ref=f"{ask.surface.id}/opening/{opening.id}",
                least_in=to_inches(opening.depth[0]),
                most_in=to_inches(opening.depth[1]),
                furring_in=0.0
                if stance is None
                else needed_furring_mm(ask.rules, stance, to_mm(opening.bottom or 0)) / MM_PER_IN,
            )
            for opening in openings
            if opening.depth is not None
        ),
        trim_in=None if trim is None else to_inches(trim),
    )


def exposed_surfaces(
    job: Job, room: Room, surface: Surface, exposure: Exposure, stock: tuple[Stock, ...]
) -> tuple[ExposedSurface, ...]:
    """The surface with all that is said of its materials, once for each board family it may be boarded with."""
    part = surface_part(room, surface)
    tile = None if part is None else laid_tile(job, part)
    # A slab without boards is exposed all the same.
    families = dict.fromkeys(board_family(item.kind) for item in stock) or ([""] if surface.slab else [])
    return tuple(
        ExposedSurface(
            ref=surface.id,
            zone=Zone(exposure.zone),
            board=family,
            membrane_on_face=exposure.membrane,
            membrane=exposure.membrane_kind,
            retarder_behind=exposure.retarder_behind,
            is_floor=surface.kind is SurfaceKind.FLOOR,
            mortar=exposure.mortar or "",
            fastener=exposure.fasteners or "",
            over=exposure.over or "",
            absorption_percent=None if tile is None else tile.absorption_percent,
            wet_friction=None if tile is None else tile.wet_friction,
            wood_moisture_percent=exposure.wood_moisture_percent,
            slab_humidity_percent=exposure.slab_humidity_percent,
            slab_emission_lb=exposure.emission_lb,
        )
        for family in families
    )


def _stance(ask: _Asked, wall: BoardedWall) -> Stance:
    room, surface = ask.room, ask.surface
    left, right = wall.wall.split("-")
    lean = room.plumb.get(wall.wall)
    levels = (room.levels.get(left), room.levels.get(right))
    _, low, _, high = bounds(surface.extent or surface.outline)
    _, bottom, _, top = bounds(surface.outline)
    return Stance(
        ref=ask.surface.id,
        tape=ask.job.tape,
        height_mm=to_mm(high - low),
        bottom_mm=to_mm(bottom - low),
        top_mm=to_mm(top - low),
        lean_mm=None if lean is None else to_mm(lean),
        over=wall.foot,
        corners=_corners(room, ask.survey, left, right),
        ends=(left, right),
        rise_mm=None if levels[0] is None or levels[1] is None else to_mm(levels[1] - levels[0]),
    )


def _corners(room: Room, survey: RoomSurvey, left: str, right: str) -> tuple[Corner, ...]:
    """The walls this one meets at its ends, where their lean was taken."""
    names = room.corners
    before = names[names.index(left) - 1]
    after = names[(names.index(right) + 1) % len(names)]
    found = []
    for corner, wall, one, other in (
        (left, f"{before}-{left}", before, right),
        (right, f"{right}-{after}", left, after),
    ):
        lean = room.plumb.get(wall)
        if lean is not None:
            heights = [room.heights.get(name, room.height or 0) for name in wall.split("-")]
            found.append(
                Corner(
                    name=corner,
                    wall=wall,
                    lean_mm=to_mm(lean),
                    height_mm=to_mm(max(heights)),
                    angle_deg=_angle(survey, one, corner, other),
                )
            )
    return tuple(found)


def _angle(survey: RoomSurvey, one: str, corner: str, other: str) -> float:
    at = survey.plan[corner]
    first, second = (
        math.atan2(survey.plan[name][1] - at[1], survey.plan[name][0] - at[0]) for name in (one, other)
    )
    turn = math.degrees(abs(first - second)) % 360
    return min(turn, 360 - turn)


def boarded_m2(surface: Surface) -> float:
    """Area that is boarded, openings left out [m²]."""
    whole = to_shapely(surface.outline)
    openings = unary_union([to_shapely(opening_ring(opening)) for opening in surface.openings])
    return float(whole.difference(openings).area) / (1000 * TICKS_PER_MM) ** 2
