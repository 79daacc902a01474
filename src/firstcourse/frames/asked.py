"""What each surface of a job tells of its frame, for the judgement: joists, panels, studs."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.frames.asked_decks import deck_findings
from firstcourse.frames.ceilings import Above, CeilingInput
from firstcourse.frames.floor_loads import floor_loads
from firstcourse.frames.floors import Finish, FloorInput
from firstcourse.frames.joists import PointLoad, SisterPart
from firstcourse.frames.judge import JudgeInput, WallInput, judge_spacing
from firstcourse.frames.lumber import lumber
from firstcourse.frames.notches import Cut
from firstcourse.frames.panels import Panel, thickness_in
from firstcourse.frames.unjudged import FRAMES_NEED, frame_unjudged
from firstcourse.frames.walls import SteelStud, Studs
from firstcourse.geometry import Point, bounds
from firstcourse.job import (
    BoardedCeiling,
    BoardedFloor,
    BoardedWall,
    FloorFraming,
    Job,
    JoistCut,
    Joists,
    Panels,
    Room,
    WallFraming,
    WallStuds,
)
from firstcourse.layers import floor_layers, laid_tile, tiling_tile, wall_layers
from firstcourse.plan import Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.survey import SurveyedShower
from firstcourse.units import TICKS_PER_INCH, to_inches
from firstcourse.values import Word, length, length_in

NO_FRAME_RULES = "wants_frame_rules"
"""What stands for the frames of a practice for which the rule book has no values."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedFrame:
    """The frame of one surface.

    Attributes:
        inputs: What is to be judged; empty where too little is known.
        missing: What the job leaves out, by code.
        notes: What was taken for it, or why it is not judged.
    """

    inputs: JudgeInput = field(default_factory=JudgeInput)
    missing: tuple[str, ...] = ()
    notes: tuple[Finding, ...] = ()

    @property
    def judged(self) -> bool:
        """Whether there is a frame to judge."""
        return bool(self.inputs.floors or self.inputs.walls or self.inputs.ceilings)


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorGround:
    """What a room's floor is known by, beside what the job says of it.

    Attributes:
        plan: The room's adjusted corners.
        shower: Its shower floor as it lies; None without one.
        bedded: The same as planned, with its falls and layers.
        all_bed: Whether it takes the whole floor.
        filled_l: Levelling compound over the whole floor at most [l].
        filled_m2: The floor that this covers [m²].
    """

    plan: Mapping[str, Point]
    shower: SurveyedShower | None = None
    bedded: Surface | None = None
    all_bed: bool = False
    filled_l: float = 0.0
    filled_m2: float = 0.0


def asked_frame(
    job: Job,
    room: Room,
    surface: Surface,
    stock: tuple[Stock, ...],
    rules: RuleSet,
    ground: FloorGround,
) -> AskedFrame:
    """The frame of one surface as far as the job tells it.

    Args:
        job: The job document.
        room: The surface's room.
        surface: The surface.
        stock: Sheets that may be used on it.
        rules: The rules in force.
        ground: What the room's floor is known by.

    Raises:
        InputValueError: An entry cannot be used.
    """
    frame = _told_frame(job, room, surface, stock, rules, ground)
    floor = room.floor if surface.kind is SurfaceKind.FLOOR else None
    if floor is not None and not floor.is_slab:
        spacing = None if floor.framing is None else _spacing(floor.framing)
        frame = replace(frame, notes=(*deck_findings(floor, spacing, surface.id, rules), *frame.notes))
    if frame.judged:
        return frame
    # A spacing is limited by the boards and the tile, whatever the members are made of.
    return replace(frame, notes=(*frame.notes, *_spacing_alone(room, surface, rules)))


def _spacing_alone(room: Room, surface: Surface, rules: RuleSet) -> tuple[Finding, ...]:
    part: BoardedWall | BoardedFloor | BoardedCeiling | None
    if surface.kind is SurfaceKind.WALL:
        part, member = _boarded_wall(room, surface), "stud"
        spacing = _wall_spacing(part, surface, rules)
    elif surface.kind in (SurfaceKind.FLOOR, SurfaceKind.CEILING):
        floor = surface.kind is SurfaceKind.FLOOR
        part, member = room.floor if floor else room.ceiling, "joist" if floor else "ceiling_joist"
        spacing = None if part is None or part.framing is None else _spacing(part.framing)
    else:
        return ()
    return () if spacing is None else judge_spacing(rules, surface.id, member, to_inches(spacing))


def _boarded_wall(room: Room, surface: Surface) -> BoardedWall:
    return next(wall for wall in room.walls if wall.wall == "-".join(surface.corners))


def _told_frame(
    job: Job,
    room: Room,
    surface: Surface,
    stock: tuple[Stock, ...],
    rules: RuleSet,
    ground: FloorGround,
) -> AskedFrame:
    if surface.kind is SurfaceKind.WALL:
        wall = _boarded_wall(room, surface)
        told = wall.studs is not None
        return _without_rules(surface.id, rules, told) or _wall(job, wall, surface, stock, rules)
    if surface.kind is SurfaceKind.FLOOR and room.floor is not None:
        if room.floor.is_slab:
            return AskedFrame(notes=(_slab(room.floor, surface.id),))
        told = room.floor.joists is not None
        return _without_rules(surface.id, rules, told, floor=True) or _floor(
            job, room, room.floor, surface, stock, rules, ground
        )
    if surface.kind is SurfaceKind.CEILING and room.ceiling is not None:
        told = room.ceiling.joists is not None
        return _without_rules(surface.id, rules, told) or _ceiling(job, room.ceiling, surface, stock, rules)
    return AskedFrame()


def _without_rules(ref: str, rules: RuleSet, told: bool, *, floor: bool = False) -> AskedFrame | None:
    """What is said where the practice has no rules for frames; None where it has."""
    if rules.has(FRAMES_NEED):
        return None
    if told:
        return AskedFrame(notes=(frame_unjudged(ref, rules, floor=floor),))
    return AskedFrame(missing=(NO_FRAME_RULES,))


def _slab(floor: BoardedFloor, ref: str) -> Finding:
    wanted = [] if floor.spots or floor.straightedge else ["slab_heights"]
    exposure = floor.exposure
    if exposure is None or (exposure.slab_humidity_percent is None and exposure.emission_lb is None):
        wanted.append("slab_moisture")
    return Finding(
        code="SUI-130",
        severity=Severity.NOTE,
        at=(ref,),
        remedies=("enter",) if wanted else (),
        values={"wanted": tuple(Word(word=name) for name in wanted)} if wanted else {},
    )


def _wall(job: Job, wall: BoardedWall, surface: Surface, stock: tuple[Stock, ...], rules: RuleSet) -> AskedFrame:
    spacing = _wall_spacing(wall, surface, rules)
    if wall.studs is None or spacing is None:
        return AskedFrame(missing=("wants_studs",) if wall.studs is None else ("wants_stud_spacing",))
    _, low, _, high = bounds(surface.extent or surface.outline)
    tile = laid_tile(job, wall)
    layers = () if tile is None else wall_layers(tile, stock, rules)
    studs = _studs(wall.studs, high - low, spacing, rules)
    return AskedFrame(inputs=JudgeInput(walls=(WallInput(ref=surface.id, studs=studs, layers=layers),)))


def _studs(studs: WallStuds, wall_height: int, spacing: int, rules: RuleSet) -> Studs:
    height, apart = to_inches(studs.height or wall_height), to_inches(spacing)
    if studs.steel is not None:
        steel = SteelStud(
            depth_in=to_inches(studs.steel),
            mils=studs.thick_mils,
            flange_in=_inches(studs.flange),
            second_moment_in4=studs.ix_in4,
        )
        return Studs(height_in=height, spacing_in=apart, steel=steel)
    return Studs(
        height_in=height, spacing_in=apart, wood=lumber(rules, studs.size or "", studs.species, studs.grade)
    )


def _ceiling(
    job: Job, ceiling: BoardedCeiling, surface: Surface, stock: tuple[Stock, ...], rules: RuleSet
) -> AskedFrame:
    spacing, tile, joists = _spacing(ceiling.framing), laid_tile(job, ceiling), ceiling.joists
    if spacing is None or joists is None or tile is None:
        wanted = (("wants_joist_spacing", spacing), ("wants_joists", joists), ("wants_tiling", tile))
        return AskedFrame(missing=tuple(name for name, value in wanted if value is None))
    asked = CeilingInput(
        ref=surface.id,
        span_in=to_inches(joists.span),
        spacing_in=to_inches(spacing),
        layers=wall_layers(tile, stock, rules),
        above=Above(joists.above),
        size=joists.size,
        species=joists.species,
        grade=joists.grade,
        stiffness=joists.ei,
    )
    return AskedFrame(inputs=JudgeInput(ceilings=(asked,)))


def _floor(
    job: Job,
    room: Room,
    floor: BoardedFloor,
    surface: Surface,
    stock: tuple[Stock, ...],
    rules: RuleSet,
    ground: FloorGround,
) -> AskedFrame:
    spacing = None if floor.framing is None else _spacing(floor.framing)
    joists, tile = floor.joists, laid_tile(job, floor)
    if tile is None and ground.all_bed and ground.shower is not None and ground.shower.shower.tiling is not None:
        tile = tiling_tile(job, ground.shower.shower.tiling)
    if spacing is None or joists is None or floor.panels is None or tile is None:
        wanted = (
            ("wants_joist_spacing", spacing),
            ("wants_joists", joists),
            ("wants_panels", floor.panels),
            ("wants_tile", tile),
        )
        return AskedFrame(missing=tuple(name for name, value in wanted if value is None))
    panel, notes = _panel(floor.panels, surface.id, rules)
    loads = floor_loads(
        job,
        room,
        ground.plan,
        ground.shower,
        ground.bedded,
        # Where a shower takes all of the floor, its bed is all that lies there.
        () if ground.all_bed else floor_layers(tile, floor.tile, stock, rules),
        ground.filled_l * rules.number("mass.levelling") / 1000 / ground.filled_m2 if ground.filled_l else 0.0,
        spacing,
        rules,
    )
    asked = FloorInput(
        ref=surface.id,
        span_in=to_inches(joists.span),
        spacing_in=to_inches(spacing),
        panel=panel,
        layers=loads.layers,
        finish=Finish.STONE if tile.stone else Finish.CERAMIC,
        size=joists.size,
        species=joists.species,
        grade=joists.grade,
        stiffness=joists.ei,
        plies=2 if joists.sistered == "full" else 1,
        continuous=joists.continuous,
        run_in=tuple(to_inches(span) for span in joists.spans or ()),
        bearing_in=_inches(joists.bearing),
        points=tuple(PointLoad(load_lb=load.pounds, at_in=to_inches(load.at)) for load in joists.loads),
        cuts=tuple(_cut(cut) for cut in joists.cuts),
        sister=_part_sister(joists, rules),
        other=loads.other,
        areas=loads.areas,
        joists=loads.joists,
        joist_lines=loads.lines,
    )
    return AskedFrame(inputs=JudgeInput(floors=(asked,)), notes=notes)


def _part_sister(joists: Joists, rules: RuleSet) -> SisterPart | None:
    return SisterPart(share=rules.number("remedy.sister_part.share")) if joists.sistered == "part" else None


def _cut(cut: JoistCut) -> Cut:
    return Cut(
        kind=cut.kind,
        size_in=to_inches(cut.size),
        at_in=to_inches(cut.at),
        length_in=to_inches(cut.length or 0),
        edge_in=math.inf if cut.edge is None else to_inches(cut.edge),
        in_bottom=cut.in_bottom,
    )


def _spacing(framing: FloorFraming | WallFraming) -> int | None:
    """Centre to centre, of members as found the widest [ticks]; None where there are fewer than two."""
    if framing.spacing is not None:
        return framing.spacing
    places = sorted(member.at for member in framing.members)
    return max((after - before for before, after in pairwise(places)), default=None)


def _wall_spacing(wall: BoardedWall, surface: Surface, rules: RuleSet) -> int | None:
    """Centre to centre of the studs that boards cross [ticks], of studs as found the widest.

    Bays beside the boards do not count, nor those that an opening takes up from stud to stud: its own frame
    carries what is above and below. None where there are no two studs.
    """
    left, _, right, _ = bounds(surface.outline)
    if wall.framing.spacing is not None:
        return wall.framing.spacing
    usual = wall.framing.width or rules.ticks("framing.stud_width")
    faces = sorted((m.at, (m.width or usual) // 2) for m in wall.framing.members)
    holes = [bounds(opening.outline) for opening in surface.openings if opening.outline]
    apart = []
    for (before, half), (after, other) in pairwise(faces):
        clear = before + half, after - other
        if min(clear[1], right) <= max(clear[0], left):
            continue
        if any(hole[0] <= clear[0] and hole[2] >= clear[1] for hole in holes):
            continue
        apart.append(after - before)
    return max(apart, default=None)


def _panel(panels: Panels, ref: str, rules: RuleSet) -> tuple[Panel, tuple[Finding, ...]]:
    """The panel layers by the names the rule book has; a thickness between two of them counts as the thinner.

    Raises:
        InputValueError: A layer is thinner than all the rule book has.
    """
    known = sorted(map(_thickness, rules.ids("panel.rating.")), key=thickness_in)
    layers, notes = [], []
    for layer in panels.layers:
        exact = Fraction(layer, TICKS_PER_INCH)
        fitting = [name for name in known if thickness_in(name) <= exact]
        if known and not fitting:
            raise InputValueError(
                f"a panel layer of {float(exact):.3g} in is thinner than {known[0]} in, the least in the rule book"
            )
        # A practice without panel values is refused by the judgement itself, with the rule that is missing.
        name = fitting[-1] if fitting else str(exact)
        layers.append(name)
        if fitting and thickness_in(name) != exact and not panels.ratings:
            notes.append(
                Finding(
                    code="SUI-204",
                    severity=Severity.NOTE,
                    at=(ref,),
                    measured=length(layer),
                    remedies=("stamp",),
                    values={"counted": length_in(thickness_in(name))},
                )
            )
    panel = Panel(
        layers=tuple(layers),
        glued_and_screwed=panels.glued_and_screwed,
        ratings=panels.ratings,
        true_in=tuple(to_inches(layer) for layer in panels.layers),
    )
    return panel, tuple(notes)


def _thickness(rule: str) -> str:
    """`panel.rating.1_1_8` as `1-1/8`."""
    *whole, top, bottom = rule.removeprefix("panel.rating.").split("_")
    return "-".join((*whole, f"{top}/{bottom}"))


def _inches(length: int | None) -> float | None:
    return None if length is None else to_inches(length)
