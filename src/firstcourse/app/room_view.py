"""The surfaces of a room as they stand: of the plan where the document is planned, as surveyed otherwise."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.app.session import Session
from firstcourse.drawings import PlacedSurface as PlacedSurface
from firstcourse.drawings import place_room
from firstcourse.findings import Finding as Finding
from firstcourse.plan import Opening as Opening
from firstcourse.plan import Plan
from firstcourse.plan import Surface as Surface

_SCALE = 10
"""Of the unfolded room: its coordinates are centimetres."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomView:
    """A room to be shown.

    Attributes:
        surfaces: Its own and those that line niches and windows, as planned or as surveyed.
        placed: Where its floor and walls lie unfolded [cm].
    """

    name: str
    surfaces: tuple[Surface, ...]
    placed: tuple[PlacedSurface, ...]


def room_view(session: Session, number: int, plan: Plan | None) -> RoomView | None:
    """A room of the document; None where it has none of that number.

    Args:
        session: The document.
        number: Which room, from 1.
        plan: The plan of this very document; None where it is not planned.

    Raises:
        JobError: The readings do not fix the room.
    """
    rooms = session.job.rooms
    if not 1 <= number <= len(rooms):
        return None
    name = rooms[number - 1].name
    every = session.survey().surfaces if plan is None else plan.surfaces
    surfaces = tuple(one for one in every if one.room == name)
    own = [one for one in surfaces if not one.part_of]
    return RoomView(name=name, surfaces=surfaces, placed=tuple(place_room(own, scale=_SCALE)))


def findings_of(findings: Sequence[Finding], surface: str) -> list[Finding]:
    """What is told of one surface or of what belongs to it."""
    return [one for one in findings if _belongs(one.at[0], surface)]


def _belongs(place: str, surface: str) -> bool:
    rest = place.removeprefix(surface)
    return (rest != place and (not rest or rest[0] in "/#")) or place == surface
