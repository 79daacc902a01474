"""What is ticked and measured of a plan on site: its parts in the order of the work, and what a tick means.

A thing keeps its id from plan to plan as long as it has one; `SiteWork.meaning` says whether what was ticked on an
earlier plan is still the same thing.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache

from firstcourse.app.papers import drawing
from firstcourse.app.ticked import Measured, Ticked, plan_parts
from firstcourse.drawings import draw_heights, to_svg
from firstcourse.errors import InputValueError
from firstcourse.papers.phone_items import EntryKind, Section, sections
from firstcourse.papers.phone_pack import LONGEST_ENTRY, Picture, pictures_of, plan_digest
from firstcourse.plan import Plan
from firstcourse.steps import PlanResult
from firstcourse.units import LengthError, parse_length

LONGEST_VALUE = LONGEST_ENTRY
_BY_WORDS = frozenset(("finding", "check", "water", "flood", "line"))
"""Kinds that are the same thing in another plan where they are told in the same words."""
_WHOLE = {"boards": False, "tile": True}


@dataclass(frozen=True, slots=True, kw_only=True)
class SitePart:
    """One part of the work.

    Attributes:
        room: Its room; empty where it is about all of them.
        section: What is read, ticked and measured there.
    """

    room: str
    section: Section


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteWork:
    """All that is ticked and measured of one plan.

    Attributes:
        digest: SHA-256 of its plan.json.
        parts: In the order of the work, what is about all rooms first.
        meaning: By the id of each thing to tick or blank, what must be the same in another plan so that it is the
            same thing there; None for what never is, such as a cut of a sheet.
        blanks: What is written into each blank.
        up: Ids of boards that are up in the plan already, as things to tick.
        surfaces: By id, the surfaces that are drawn, with whether they are tiled.
    """

    digest: str
    parts: tuple[SitePart, ...]
    meaning: Mapping[str, object]
    blanks: Mapping[str, EntryKind]
    up: frozenset[str]
    surfaces: Mapping[str, bool]

    def checked(self, thing: str, value: str) -> str:
        """What is kept of a value.

        Args:
            thing: Id of a thing to tick or of a blank.
            value: `yes` or nothing for a tick; what was written for a blank, nothing to empty it.

        Raises:
            InputValueError: There is no such thing, or this is no value of it.
        """
        if thing not in self.meaning:
            raise InputValueError(f"'{thing[:80]}': the plan has nothing of that name to tick or to fill in")
        if thing not in self.blanks:
            if value not in ("", "yes"):
                raise InputValueError(f"'{value[:80]}': a tick is 'yes' or nothing")
            return value
        text = " ".join(value.split())
        if len(text) > LONGEST_VALUE:
            raise InputValueError(f"{len(text)} letters are too many ({LONGEST_VALUE} at most)")
        if text and self.blanks[thing] == "length":
            try:
                parse_length(text)
            except LengthError as error:
                raise InputValueError(str(error)) from None
        return text


def site_work(result: PlanResult) -> SiteWork:
    """What is ticked and measured of a plan."""
    return _work(result.document)


@lru_cache(maxsize=8)
def _work(document: str) -> SiteWork:
    return _made(Plan.model_validate_json(document))


def _made(plan: Plan) -> SiteWork:
    parts = []
    meaning: dict[str, object] = {}
    blanks: dict[str, EntryKind] = {}
    for room, part, shared in plan_parts(plan):
        for section in sections(part, shared=shared):
            parts.append(SitePart(room=room, section=section))
            for item in section.items:
                kind = item.id.partition("/")[0]
                meaning[item.id] = (item.strong, item.text) if kind in _BY_WORDS else None
            meaning |= dict.fromkeys((section.tiles or {}).values())
            blanks |= {entry.id: entry.kind for entry in section.entries}
    for surface in plan.surfaces:
        meaning |= {f"board/{board.id}": (board.outline, board.holes) for board in surface.boards}
        meaning |= {f"tile/{tile.id}": tile.outline for tile in surface.tiles if f"tile/{tile.id}" in meaning}
    meaning |= {name: ("blank", kind) for name, kind in blanks.items()}
    return SiteWork(
        digest=plan_digest(plan),
        parts=tuple(parts),
        meaning=meaning,
        blanks=blanks,
        up=frozenset(f"board/{board.id}" for one in plan.surfaces for board in one.boards if board.fixed),
        surfaces={one.id: bool(one.tiles) for one in plan.surfaces},
    )


def site_drawings(result: PlanResult, picture: str) -> list[Picture]:
    """The drawings of a part; none where it has none.

    Args:
        result: A plan.
        picture: As the part's section names it.
    """
    kind, _, name = picture.partition("/")
    if kind in _WHOLE:
        return [Picture(drawing(result, name, tile=_WHOLE[kind]))]
    if kind == "heights":
        return [Picture(to_svg(draw_heights(result.plan, one))) for one in result.plan.surfaces if one.id == name]
    return pictures_of(result.plan, picture)


def what_is_done(result: PlanResult, values: Mapping[str, str], at: datetime) -> tuple[Ticked, tuple[str, ...]]:
    """What stands on site, for `Session.mark_done`, and boards that were up and were taken out.

    Args:
        result: The plan.
        values: By the id of each thing ticked or measured, what stands there now.
        at: When this is.

    Raises:
        InputValueError: A length in it is none.
    """
    work = site_work(result)
    measured = {
        name: Measured(text=value, ticks=parse_length(value) if work.blanks[name] == "length" else None, at=at)
        for name, value in values.items()
        if name in work.blanks and value
    }
    ticks = {name: at for name, value in values.items() if name not in work.blanks and value}
    out = tuple(sorted(name.removeprefix("board/") for name in work.up if values.get(name) == ""))
    return Ticked(plan=work.digest, saved=at, ticks=ticks, measured=measured), out
