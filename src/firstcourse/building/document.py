"""The building document: types of rooms, rooms as each was taped, phases, deliveries and lots of tile."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import Annotated

from pydantic import Field

from firstcourse.job import (
    MOST_ITEMS,
    MOST_ROOMS,
    Job,
    JobHead,
    JobModel,
    KeptOffcut,
    Length,
    Name,
    Offset,
    Pair,
    Room,
    check_job,
    read_document,
)

LARGEST_BYTES = 2_000_000
Place = tuple[str | int, ...]
PhaseId = Annotated[str, Field(pattern=r"^[A-Za-z0-9][A-Za-z0-9 _.\-]{0,59}$", max_length=30)]


class Readings(JobModel):
    """What was taped otherwise in one room than its type says."""

    sides: dict[Pair, Length] = Field(default={}, description="Sides that differ.")
    diagonals: dict[Pair, Length] = Field(default={}, description="Diagonals that differ, or are read here alone.")
    height: Length | None = Field(default=None, description="One height for all corners.")
    heights: dict[str, Length] = Field(default={}, description="Wall heights that differ.")
    levels: dict[str, Offset] = Field(default={}, description="Floor heights that differ.")
    plumb: dict[Pair, Offset] = Field(default={}, description="Leans that differ.")


class RoomType(JobModel):
    """A room that is built more than once."""

    id: Name = Field(description="What it is called.")
    room: Room = Field(description="The room as in a job document.")


class RoomHere(JobModel):
    """One room of the building."""

    number: Name = Field(description="Its number, such as 304; no other room has it.")
    floor: Annotated[int, Field(ge=-20, le=200)] = Field(description="The floor it is on.")
    type: Name = Field(description="The type it is of.")
    readings: Readings = Field(default=Readings(), description="What was taped otherwise than its type says.")


class Phase(JobModel):
    """Rooms that are cut together."""

    id: PhaseId = Field(description="What it is called.")
    rooms: Annotated[tuple[Name, ...], Field(min_length=1, max_length=MOST_ROOMS)] = Field(
        description="Numbers of its rooms."
    )


class Delivery(JobModel):
    """What comes to the site at one time."""

    id: Name = Field(description="What it is called.")
    phases: Annotated[tuple[Name, ...], Field(min_length=1, max_length=MOST_ITEMS)] = Field(
        description="The phases it serves."
    )


class Lot(JobModel):
    """How much of a tile can be had of one lot."""

    tile: Name = Field(description="The tile.")
    packs: Annotated[int, Field(ge=1, le=1_000_000)] = Field(description="Boxes, as it is sold.")


class Building(JobHead):
    """A whole building."""

    types: Annotated[tuple[RoomType, ...], Field(min_length=1, max_length=MOST_ITEMS)] = Field(
        description="Types of rooms."
    )
    rooms: Annotated[tuple[RoomHere, ...], Field(min_length=1, max_length=MOST_ROOMS)] = Field(
        description="All rooms."
    )
    phases: Annotated[tuple[Phase, ...], Field(min_length=1, max_length=MOST_ITEMS)] = Field(
        description="Phases in the order in which they are cut; each room is in one."
    )
    deliveries: Annotated[tuple[Delivery, ...], Field(min_length=1, max_length=MOST_ITEMS)] = Field(
        description="Deliveries in their order; each phase is served by one."
    )
    lots: Annotated[tuple[Lot, ...], Field(max_length=40)] = Field(
        default=(), description="Tiles of which one lot holds only so much."
    )

    def taped(self, room: RoomHere) -> Room:
        """A room of the building as a room of a job: its type, with what was taped otherwise."""
        own = room.readings
        given = next(each.room for each in self.types if each.id == room.type)
        height = own.height if own.height is not None else None if own.heights else given.height
        return given.model_copy(
            update={
                "name": room.number,
                "sides": given.sides | own.sides,
                "diagonals": given.diagonals | own.diagonals,
                "height": height,
                "heights": {} if own.height is not None else given.heights | own.heights,
                "levels": given.levels | own.levels,
                "plumb": given.plumb | own.plumb,
            }
        )


def read_building(text: str, name: str = "building.yaml") -> Building:
    """Read a building document.

    Args:
        text: YAML or JSON.
        name: What to call it in messages.

    Raises:
        JobError: Listing every problem found, each with its line and column.
    """
    return read_document(text, name, Building, _check)


def phase_job(building: Building, rooms: Sequence[str], offcuts: Sequence[KeptOffcut]) -> Job:
    """The job of some rooms, with kept pieces to use up.

    Args:
        building: The building.
        rooms: Their numbers.
        offcuts: What is on the rack.
    """
    by_number = {room.number: room for room in building.rooms}
    head = {name: getattr(building, name) for name in JobHead.model_fields}
    taped = tuple(building.taped(by_number[number]) for number in rooms)
    return Job.model_validate({**head, "offcuts": tuple(offcuts), "rooms": taped})


def _check(building: Building) -> Iterator[tuple[Place, str]]:
    crossed = [*_names(building), *_memberships(building)]
    yield from crossed
    if crossed:
        return
    whole = phase_job(building, [room.number for room in building.rooms], building.offcuts)
    seen = set()
    for path, message in check_job(whole):
        # What is wrong with a type is said once, not in each of its rooms.
        place = _at_home(building, path)
        if (place, message) not in seen:
            seen.add((place, message))
            yield place, message


def _at_home(building: Building, path: Place) -> Place:
    """Where a room's field stands: with its readings where they give it, else with its type."""
    if len(path) < 2 or path[0] != "rooms" or not isinstance(path[1], int):
        return path
    room = building.rooms[path[1]]
    if len(path) > 2 and getattr(room.readings, str(path[2]), None):
        return ("rooms", path[1], "readings", *path[2:])
    kind = next(number for number, each in enumerate(building.types) if each.id == room.type)
    return ("types", kind, "room", *path[2:])


def _names(building: Building) -> Iterator[tuple[Place, str]]:
    for where, field, named in (
        ("types", "id", [each.id for each in building.types]),
        ("rooms", "number", [each.number for each in building.rooms]),
        ("phases", "id", [each.id for each in building.phases]),
        ("deliveries", "id", [each.id for each in building.deliveries]),
        ("lots", "tile", [each.tile for each in building.lots]),
    ):
        for number, name in enumerate(named):
            if name in named[:number]:
                yield (where, number, field), f"'{name}' stands in {where} already; give each its own"
    known = [each.id for each in building.types]
    for number, room in enumerate(building.rooms):
        if room.type not in known:
            yield ("rooms", number, "type"), f"'{room.type}' is not one of the types: {', '.join(known)}"
    tiles = [tile.id for tile in building.tiles]
    for number, lot in enumerate(building.lots):
        if lot.tile not in tiles:
            yield ("lots", number, "tile"), f"'{lot.tile}' is not one of the tiles: {', '.join(tiles) or 'none'}"


def _memberships(building: Building) -> Iterator[tuple[Place, str]]:
    phased = [(n, m, name) for n, each in enumerate(building.phases) for m, name in enumerate(each.rooms)]
    served = [(n, m, name) for n, each in enumerate(building.deliveries) for m, name in enumerate(each.phases)]
    rooms, phases = [each.number for each in building.rooms], [each.id for each in building.phases]
    yield from _each_once("rooms", "phases", "rooms", rooms, phased)
    yield from _each_once("phases", "deliveries", "phases", phases, served)


def _each_once(
    of: str, where: str, field: str, known: Sequence[str], named: Iterable[tuple[int, int, str]]
) -> Iterator[tuple[Place, str]]:
    """Each of them is named by one group, and the groups name no others."""
    seen: Counter[str] = Counter()
    for group, number, name in named:
        seen[name] += 1
        if name not in known:
            yield (where, group, field, number), f"'{name}' is not one of the {of}"
        elif seen[name] > 1:
            yield (where, group, field, number), f"'{name}' is in {where} already; name it once"
    for number, name in enumerate(known):
        if not seen[name]:
            yield (of, number), f"'{name}' is in none of the {where}; add it to one of them"
