"""One surface planned lightly, while something on it is being moved: quick, and not proved.

Its boards are its own best, its courses stay where they are, nothing else of the job is planned again. The plan of
the whole job, which comes after, may choose otherwise.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.boards import SurfaceLayout, best_choice, build_layout, layout_alternatives, only_up
from firstcourse.cutting import CannotCutError
from firstcourse.findings import Finding
from firstcourse.job import Done, Job, Room, StartAt, Tiling
from firstcourse.plan import Piece, Stock, Surface, SurfaceKind
from firstcourse.reuse import ONCE, Steps
from firstcourse.rules import RuleSet, load_rules
from firstcourse.sheets import Surfaced, allowed_stock, cut_pieces, job_stock, with_done
from firstcourse.steps.tile import tile_job
from firstcourse.survey import benches_at_walls, survey_job
from firstcourse.units import Tape


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What stays as the last plan has it while one surface is planned lightly.

    Attributes:
        start: Where the surface's pattern starts [ticks]; found anew where None.
        pieces: Of the boards of all other surfaces; they share sheets with this one.
    """

    start: tuple[int, int] | None = None
    pieces: tuple[Piece, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OneSurface:
    """A surface planned lightly.

    Attributes:
        surfaces: It, then what lines its niches and windows.
        sheets: Sheets for all boards of the job, those of the other surfaces as they were; None where a piece
            fits none.
        findings: What its boards and its tile have to say.
    """

    surfaces: tuple[Surface, ...]
    sheets: int | None
    findings: tuple[Finding, ...] = ()


def plan_one_surface(
    job: Job, surface: str, *, held: Held | None = None, steps: Steps = ONCE
) -> OneSurface | None:
    """Plan one surface by itself; None where the job boards no such surface.

    Args:
        job: The job.
        surface: Id, such as `hall bath/wall/A-B`.
        held: What stays as it was.
        steps: Does the steps, or reuses them.

    Raises:
        JobError: The readings do not fix its room, or its tile cannot be laid.
    """
    held = Held() if held is None else held
    room = next((one for one in job.rooms if surface.startswith(f"{one.name}/")), None)
    if room is None:
        return None
    job = job.model_copy(update={"rooms": (_alone(room, surface, held),), "done": _done_on(job, surface)})
    rules = load_rules(job.date, job.practice, job.overrides())
    survey = survey_job(job, rules, steps=steps, only=surface)
    job = benches_at_walls(job, survey.rooms, rules)
    found = next((one for one in survey.surfaces if one.id == surface), None)
    if found is None:
        return None
    by_kind = job_stock(job, rules)
    stock = tuple({item.id: item for kind in SurfaceKind for item in by_kind[kind]}.values())
    (item,) = with_done([Surfaced(found, "", allowed_stock(found, by_kind))], stock, job)
    layout = steps.do(own_best, item.surface, item.stock, rules, job.tape)
    boarded = item.surface.model_copy(
        update={
            "boards": layout.boards,
            "seams": layout.seams,
            "supports": (*item.surface.supports, *layout.added_supports),
        }
    )
    tiled = tile_job(job, survey, (boarded,), by_kind, rules, steps=steps, cuts=False)
    return OneSurface(
        surfaces=tiled.surfaces,
        sheets=_sheets((*layout.pieces, *held.pieces), stock, job, steps),
        findings=(*layout.findings, *tiled.findings),
    )


def own_best(surface: Surface, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape) -> SurfaceLayout:
    """The boards that are best for a surface by itself, whatever shares sheets with it."""
    choices = layout_alternatives(surface, stock, rules, tape)
    if not choices or any(board.fixed for board in surface.boards):
        return only_up(surface, rules, tape)
    return build_layout(surface, best_choice(choices, stock), stock, rules, tape)


def _alone(room: Room, surface: str, held: Held) -> Room:
    """A room with what one surface needs of it; the other walls and the floor bound it."""
    part = surface.removeprefix(f"{room.name}/")
    walls = tuple(
        wall.model_copy(update={"tiling": _started(wall.tiling, held)}) if part == f"wall/{wall.wall}" else wall
        for wall in room.walls
    )
    floor, ceiling = room.floor, room.ceiling
    if floor is not None and part == "floor":
        floor = floor.model_copy(update={"tiling": _started(floor.tiling, held)})
    elif floor is not None and floor.framing is not None:
        # Only boards of its own ask for these.
        floor = floor.model_copy(update={"panel_joints": (), "panel_screws": None, "spots": ()})
    if ceiling is not None and part == "ceiling":
        ceiling = ceiling.model_copy(update={"tiling": _started(ceiling.tiling, held)})
    return room.model_copy(update={"walls": walls, "floor": floor, "ceiling": ceiling})


def _started(tiling: Tiling | None, held: Held) -> Tiling | None:
    """A tiling that starts where it did."""
    if tiling is None or tiling.start is not None or held.start is None:
        return tiling
    left, up = held.start
    # Where a pattern begins may lie outside the surface, which no document may say.
    return tiling.model_copy(update={"start": StartAt.model_construct(left=left, up=up)})


def _done_on(job: Job, surface: str) -> Done | None:
    if job.done is None:
        return None
    own = tuple(part for part in job.done.surfaces if part.surface == surface)
    return job.done.model_copy(update={"surfaces": own})


def _sheets(pieces: Sequence[Piece], stock: tuple[Stock, ...], job: Job, steps: Steps) -> int | None:
    """How many sheets all pieces take; what is within a piece's blank, and in the rooms, makes no difference."""
    blanks = tuple(piece.model_copy(update={"outline": (), "holes": ()}) for piece in pieces)
    return steps.do(num_sheets, blanks, stock, job.model_copy(update={"rooms": (), "done": None}))


def num_sheets(pieces: tuple[Piece, ...], stock: tuple[Stock, ...], job: Job) -> int | None:
    """How many sheets pieces take, found in little time; None where one fits none of them.

    Args:
        pieces: By their blanks.
        stock: All sheets of the job.
        job: For kept offcuts and the tape.
    """
    known = {item.id: item for item in stock}
    if not all(piece.stock in known for piece in pieces):
        return None
    alike = {
        piece.id: tuple(
            item
            for item in stock
            if (item.thickness, item.kind) == (known[piece.stock].thickness, known[piece.stock].kind)
        )
        for piece in pieces
    }
    try:
        cutting = cut_pieces(pieces, alike, stock, job, effort=0, prove=False)
    except CannotCutError:
        return None
    return sum(count.used for count in cutting.counts.values())
