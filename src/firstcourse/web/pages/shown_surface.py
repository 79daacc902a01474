"""A surface as it stands, in a reader's words: planned, planned lightly or surveyed."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from starlette.exceptions import HTTPException

from firstcourse.app import PlanResult, Session, kept_plan
from firstcourse.app.fields import SurfaceField, Thing, surface_fields, things
from firstcourse.app.one_surface import LightTask, OneSurface, held_of, smallest_cut
from firstcourse.app.remedies import Change, change_for
from firstcourse.app.room_view import Finding, Surface, findings_of
from firstcourse.units import TICKS_PER_MM, format_length
from firstcourse.web.asking import Ask
from firstcourse.web.pages.saving import revision
from firstcourse.web.rendering import speaker as speaking
from firstcourse.web.surface_drawing import LAYERS, SHOWN_FIRST, Flag, Snap, SurfaceSheet
from firstcourse.words import SaidFinding, Speaker, speaker_for

PAGE_WAITS_S = 2.0
"""For a surface to be planned lightly; it is shown as surveyed where that takes longer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """One surface.

    Attributes:
        session: The document it is shown from.
        base: The revision of that document.
        surveyed: The surface as surveyed, or as planned.
        surface: As it is drawn.
        plan: The plan of this very revision; None where it is not planned.
        last: The newest plan there is.
        light: What came of planning it lightly.
    """

    session: Session
    base: int
    where: SurfaceField
    things: tuple[Thing, ...]
    surveyed: Surface
    surface: Surface
    plan: PlanResult | None
    last: PlanResult | None
    light: OneSurface | None = None

    @property
    def locked(self) -> bool:
        """The document says where the pattern starts."""
        tiling = self.where.said.tiling
        return tiling is not None and tiling.start is not None

    def lightly(self, made: OneSurface) -> "Shown":
        """The same as planned lightly."""
        own = next(one for one in made.surfaces if one.id == self.surveyed.id)
        return replace(self, surface=own, light=made, plan=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundFlag:
    """A finding with its number on the drawing.

    Attributes:
        change: What a button would change in the document; None where no change of it is a remedy.
        at: Where it belongs [mm].
        row: How many others belong there before it.
    """

    number: int
    said: SaidFinding
    change: Change | None
    at: tuple[float, float]
    row: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StartChoice:
    """A place the pattern may start from.

    Attributes:
        at: Left and up [ticks].
        tells: What it brings, in words.
        used: It is the one in the plan.
    """

    at: tuple[int, int]
    tells: Sequence[str]
    used: bool


def planned_as(ask: Ask, number: int) -> PlanResult | None:
    """The plan of a revision; None where it is not planned."""
    kept = ask.house.jobs.plan(ask.job.id, number) if number else None
    return None if kept is None else kept_plan(kept.document, kept.beside)


def shown_surface(ask: Ask, surface: str, *, base: int | None = None, planned: bool = True) -> Shown:
    """A surface as it stands.

    Args:
        ask: Who asks.
        surface: Its id.
        base: The revision it is shown from; the newest where not given.
        planned: Whether it is planned lightly where there is no plan of that revision.

    Raises:
        HTTPException: The document has no such surface.
        JobError: The readings do not fix its room.
    """
    found = revision(ask, base)
    session = _opened(found.text, ask.job.name)
    where = surface_fields(session.job).get(surface)
    if where is None:
        raise HTTPException(404)
    plan = planned_as(ask, found.number)
    last = plan or planned_as(ask, ask.job.planned)
    every = plan.plan.surfaces if plan else session.survey().surfaces
    own = next((one for one in every if one.id == surface), None)
    if own is None:
        raise HTTPException(404)
    shown = Shown(
        session=session,
        base=found.number,
        where=where,
        things=things(where, session.job),
        surveyed=own,
        surface=own,
        plan=plan,
        last=last,
    )
    if plan is not None or not planned:
        return shown
    held = held_of(last.plan if last else None, surface)
    task = LightTask(text=found.text, name=ask.job.name, surface=surface, held=held)
    came = ask.house.light.soon(ask.job.id, task, wait_s=PAGE_WAITS_S)
    return shown if came.made is None else shown.lightly(came.made)


@lru_cache(maxsize=8)
def _opened(text: str, name: str) -> Session:
    """A document that is shown again and again while something on it moves; nobody changes it."""
    return Session(text, name=name)


def shown_layers(ask: Ask) -> tuple[str, ...]:
    """What is asked to be shown."""
    if "view" in ask.form:
        return tuple(name for name in LAYERS if name in ask.form["view"].split())
    query = ask.request.query_params
    return tuple(name for name in LAYERS if name in query.getlist("show")) if "set" in query else SHOWN_FIRST


def sheet_of(ask: Ask, shown: Shown) -> SurfaceSheet:
    """All that its drawing is made from."""
    return SurfaceSheet(
        surface=shown.surface,
        where=shown.where,
        moved={one.id: one for one in shown.things},
        shown=shown_layers(ask),
        flags=[Flag(number=one.number, at=one.at, row=one.row) for one in found_flags(ask, shown)],
        snaps=_snaps(ask, shown),
        tape=shown.session.job.tape,
        words={"moves": ask.text("unfold-surface", "moves")},
    )


def foot(ask: Ask, shown: Shown) -> list[tuple[str, str, str]]:
    """What stands at the foot of the drawing: key, label and figure each."""
    surface, light = shown.surface, shown.light
    sheets: int | None = None
    if shown.plan is not None:
        sheets = sum(count.used for count in shown.plan.plan.counts.values())
    elif light is not None:
        sheets = light.sheets
    cut = smallest_cut(surface)
    figures = {
        "sheets": "–" if sheets is None else str(sheets),
        "boards": str(len(surface.boards)),
        "tiles": str(sum(1 for tile in surface.tiles if not tile.whole)),
        "smallest": "–" if cut is None else format_length(cut, shown.session.job.tape, feet=False),
        "proof": ask.text("unfold-foot", "verified" if shown.plan is not None else "not_proved"),
    }
    return [(name, ask.text("unfold-foot", name), figure) for name, figure in figures.items()]


def found_flags(ask: Ask, shown: Shown) -> list[FoundFlag]:
    """Its findings, numbered, each with where it belongs on the drawing."""
    every: Sequence[Finding] = ()
    if shown.plan is not None:
        every = shown.plan.plan.findings
    elif shown.light is not None:
        every = shown.light.findings
    own = findings_of(every, shown.surface.id)
    speaker = _speaker(ask, shown)
    crowd: dict[tuple[float, float], int] = {}
    flags = []
    for number, one in enumerate(own, start=1):
        at = _place(shown.surface, one.at[0])
        row = crowd[at] = crowd.get(at, -1) + 1
        change = change_for(one, shown.surface, shown.where, shown.session) if shown.plan is not None else None
        flags.append(FoundFlag(number=number, said=speaker.finding(one), change=change, at=at, row=row))
    return flags


def start_choices(ask: Ask, shown: Shown) -> list[StartChoice]:
    """The starts that the plan ranks for its field, the used one first; none before it is planned."""
    if shown.plan is None or shown.where.said.tiling is None:
        return []
    field = next((area for area in shown.surface.tiled if area.role == "field"), None)
    if field is None:
        return []
    tape, speaker = shown.session.job.tape, _speaker(ask, shown)
    choices, say = [], speaking(ask.tongue)
    for index, one in enumerate(field.starts):
        smallest = format_length(one.smallest_cut, tape, feet=False)
        tells = [say.text("unfold-start", "cuts", count=one.cut_tiles, smallest=smallest)]
        if one.narrowest_at:
            tells.append(say.text("unfold-start", "narrowest", where=speaker.within(one.narrowest_at)))
        if one.wanted:
            tells.append(say.text("unfold-start", "joints", count=one.on_joints, of=one.wanted))
        for name in ("sliver", "under_half", "may_sliver"):
            tells += [say.text("unfold-start", name)] if getattr(one, name) else []
        at = _within(one.origin, field.step_a, field.step_b)
        choices.append(StartChoice(at=at, tells=tells, used=index == 0))
    return choices


def named(ask: Ask, reference: str, room: str) -> str:
    """What a surface, or what a pole's mark stands for, is called."""
    for part in ("wall", "floor", "ceiling"):
        if reference.startswith(f"{room}/{part}") and room:
            rest = reference.removeprefix(f"{room}/{part}").lstrip("/")
            return " ".join(filter(None, (ask.text("unfold-part", part), rest)))
    if "/opening/" in reference:
        thing, _, side = reference.rpartition("/opening/")[2].rpartition("/")
        return f"{thing}, {ask.text('unfold-mark', side)}" if side in ("low", "high") else thing
    if reference.endswith("/line/level"):
        return ask.text("unfold-mark", "level")
    if "/row/" in reference or "/tile " in reference:
        return ask.text("unfold-mark", "top" if reference.endswith("/high") else "course")
    return ask.text("unfold-mark", "end")


def _speaker(ask: Ask, shown: Shown) -> Speaker:
    if shown.last is not None:
        return speaker_for(shown.last.plan, tongue=ask.tongue)
    job = shown.session.job
    return Speaker(job.practice, job.tape, tongue=ask.tongue, sources=shown.session.sources)


def _within(origin: tuple[int, int], step_a: tuple[float, float], step_b: tuple[float, float]) -> tuple[int, int]:
    """The same start where the document can say it: one repeat after another up and to the right."""
    u, v = (value / TICKS_PER_MM for value in origin)
    while v < 0 and step_b[1] > 0:
        u, v = u + step_b[0], v + step_b[1]
    while u < 0 and step_a[0] > 0:
        u, v = u + step_a[0], v + step_a[1]
    return round(u * TICKS_PER_MM), round(v * TICKS_PER_MM)


def _place(surface: Surface, reference: str) -> tuple[float, float]:
    """Where a reference lies on its surface [mm]; its upper left corner where it names all of it."""
    rest = reference.removeprefix(surface.id)
    opening = next((one for one in surface.openings if rest.startswith(f"/opening/{one.id}")), None)
    if opening is not None and opening.outline is not None:
        return _middle(opening.outline)
    if opening is not None and opening.centre is not None:
        return opening.centre[0] / TICKS_PER_MM, opening.centre[1] / TICKS_PER_MM
    board = next((one for one in surface.boards if one.id == reference), None)
    if board is not None:
        return _middle(board.outline)
    if rest.startswith("/side/") and rest.removeprefix("/side/").isdigit():
        number = int(rest.removeprefix("/side/"))
        ends = [surface.outline[(number + step) % len(surface.outline)] for step in (0, 1)]
        return _middle(ends)
    us, vs = ([point[axis] for point in surface.outline] for axis in (0, 1))
    return min(us) / TICKS_PER_MM + 60, max(vs) / TICKS_PER_MM - 60


def _middle(points: Sequence[tuple[int, int]]) -> tuple[float, float]:
    u, v = (sum(point[axis] for point in points) / len(points) / TICKS_PER_MM for axis in (0, 1))
    return u, v


def _snaps(ask: Ask, shown: Shown) -> list[Snap]:
    """Studs, courses, corners and other things: lines that what is moved stops at."""
    surface = shown.surface
    found: list[Snap] = []
    axis = {"v": "u", "u": "v"}.get(surface.framing_axis, "")
    for one in surface.supports:
        us, vs = ([point[index] for point in one.outline] for index in (0, 1))
        along = axis or "u"
        values = us if along == "u" else vs
        if one.kind.value in ("blocking", "plate", "header"):
            along, values = "v", vs
        middle = (min(values) + max(values)) / 2
        for value, edge in ((min(values), "edge"), (middle, "centre"), (max(values), "edge")):
            name = f"{one.id or one.kind.value}, {ask.text('unfold-snap', edge)}"
            found.append(Snap(axis=along, at=value / TICKS_PER_MM, name=name))
    whole = surface.extent or surface.outline
    for index, along in ((0, "u"), (1, "v")):
        for value in {point[index] for point in whole}:
            found.append(
                Snap(axis=along, at=value / TICKS_PER_MM, name=ask.text("unfold-snap", f"corner_{along}"))
            )
    if shown.where.part == "wall":
        rows = sorted({min(v for _, v in tile.laid or tile.outline) for tile in surface.tiles})
        found += [
            Snap(axis="v", at=value / TICKS_PER_MM, name=f"{ask.text('unfold-snap', 'course')} {number}")
            for number, value in enumerate(rows, start=1)
        ]
    for opening in surface.openings:
        ring = opening.outline
        if ring is None and opening.centre is not None:
            ring = (opening.centre,)
        for index, along in ((0, "u"), (1, "v")):
            for value in {min(point[index] for point in ring or ()), max(point[index] for point in ring or ())}:
                found.append(Snap(axis=along, at=value / TICKS_PER_MM, name=opening.id))
    return sorted(
        {(one.axis, one.at, one.name): one for one in found}.values(), key=lambda one: (one.axis, one.at, one.name)
    )
