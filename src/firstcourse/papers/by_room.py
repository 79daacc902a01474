"""A plan of several rooms parted into one plan for each room's packs, and what is left for the whole job's.

A pack is made of one part alone, so that no more memory is taken than the largest room asks for, and a setter
carries no other room's pages. A sheet that several rooms share is cut once: its ticket stands in the pack of the
first of them, and the others say where.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from firstcourse.findings import Severity
from firstcourse.plan import Plan, Sheet

_ENDS = frozenset(("", "/", ".", ",", ":"))
"""What may follow a room's name in a reference or a place."""


class RoomPart(NamedTuple):
    """What one room's packs are made of.

    Attributes:
        room: Its name.
        plan: The plan with this room's surfaces, pieces, sheets, findings and workings alone.
        elsewhere: Boards cut from sheets of other packs: the board's mark, the sheet, the room of that pack.
    """

    room: str
    plan: Plan
    elsewhere: tuple[tuple[str, str, str], ...]


def room_parts(plan: Plan) -> tuple[RoomPart, ...]:
    """The parts of a plan by room, in the order of its surfaces; none where it has only one room.

    Args:
        plan: A verified plan.
    """
    rooms = tuple(dict.fromkeys(surface.room for surface in plan.surfaces))
    if len(rooms) < 2:
        return ()
    room_of_surface = {surface.id: surface.room for surface in plan.surfaces}
    room_of_piece = {
        board.piece: surface.room for surface in plan.surfaces for board in surface.boards if board.piece
    }
    mark_of = {board.piece: board.mark for surface in plan.surfaces for board in surface.boards}
    sheet_of = {part.piece: sheet for sheet in plan.sheets for part in sheet.parts if part.piece}
    cut_in = {sheet.id: _first_room(sheet, room_of_piece, rooms) for sheet in plan.sheets}
    findings = by_room([finding.at[0] for finding in plan.findings], rooms)
    workings = _rooms_of_workings(plan, rooms)
    structures = [_room_at(one.surface, rooms) or room_of_surface.get(one.surface, "") for one in plan.structures]
    parts = []
    for room in rooms:
        sheets = tuple(sheet for sheet in plan.sheets if cut_in[sheet.id] == room)
        cut_here = {part.piece for sheet in sheets for part in sheet.parts if part.piece}
        own = {piece for piece, its_room in room_of_piece.items() if its_room == room}
        told = [finding for finding, its_room in zip(plan.findings, findings, strict=True) if its_room == room]
        parted = plan.model_copy(
            update={
                "job": plan.job.model_copy(update={"name": f"{plan.job.name}: {room}"}),
                "surfaces": tuple(surface for surface in plan.surfaces if surface.room == room),
                "doors": tuple(door for door in plan.doors if door.room == room),
                "pieces": tuple(piece for piece in plan.pieces if piece.id in own or piece.id in cut_here),
                "sheets": sheets,
                "counts": {},
                "bounds": (),
                "findings": tuple(told),
                "quantities": (),
                "workings": {
                    name: working
                    for (name, working), its_room in zip(plan.workings.items(), workings, strict=True)
                    if its_room == room
                },
                "structures": tuple(
                    one for one, its_room in zip(plan.structures, structures, strict=True) if its_room == room
                ),
            }
        )
        elsewhere = tuple(
            (mark_of[piece], sheet_of[piece].id, cut_in[sheet_of[piece].id])
            for piece in sorted(own - cut_here)
            if piece in sheet_of
        )
        parts.append(RoomPart(room, parted, elsewhere))
    return tuple(parts)


def whole_part(plan: Plan) -> Plan:
    """What the packs of a whole job of several rooms tell: what no room's do, and all that is to be put right.

    Its surfaces, pieces and sheets are all there, for what is counted.

    Args:
        plan: A verified plan of several rooms.
    """
    rooms = tuple(dict.fromkeys(surface.room for surface in plan.surfaces))
    findings = by_room([finding.at[0] for finding in plan.findings], rooms)
    workings = _rooms_of_workings(plan, rooms)
    return plan.model_copy(
        update={
            "findings": tuple(
                finding
                for finding, room in zip(plan.findings, findings, strict=True)
                if finding.severity is not Severity.NOTE or not room
            ),
            "workings": {
                name: working
                for (name, working), room in zip(plan.workings.items(), workings, strict=True)
                if not room
            },
            "structures": (),
        }
    )


def _rooms_of_workings(plan: Plan, rooms: Sequence[str]) -> list[str]:
    return by_room([working.at[0] for working in plan.workings.values()], rooms)


def by_room(places: Iterable[str], rooms: Sequence[str]) -> list[str]:
    """The room that each place lies in; empty where it lies in none.

    Args:
        places: References such as `hall bath/wall/A-B` or words such as `hall bath, wall A-B`.
        rooms: Names of all rooms.
    """
    return [_room_at(place, rooms) for place in places]


def _room_at(place: str, rooms: Sequence[str]) -> str:
    found = [room for room in rooms if place.startswith(room) and place[len(room) : len(room) + 1] in _ENDS]
    return max(found, key=len, default="")


def _first_room(sheet: Sheet, room_of_piece: dict[str, str], rooms: Sequence[str]) -> str:
    held = {room_of_piece[part.piece] for part in sheet.parts if part.piece in room_of_piece}
    return next((room for room in rooms if room in held), rooms[0])
