"""What no single field can tell about a shower floor: sides that are not there, a drain that lies outside."""

from collections.abc import Iterator

from firstcourse.job.model import Room
from firstcourse.job.shower import TiledShower

Wrong = tuple[tuple[str | int, ...], str]


def check_shower(room: Room) -> Iterator[Wrong]:
    """Everything wrong across fields of a room's shower floor, each with its path below the shower."""
    floor = room.floor
    if floor is None or floor.shower is None:
        return
    shower, sides = floor.shower, room.side_pairs()
    if shower.side is not None and shower.side not in sides:
        yield ("side",), f"'{shower.side}' is not a side of this room: the sides are {', '.join(sides)}"
    if shower.drain.along is not None and shower.drain.along not in sides:
        yield ("drain", "along"), f"'{shower.drain.along}' is not a side of this room"
    if any(opening.id == "shower" for opening in floor.openings):
        yield (), "an opening of the floor is called 'shower' already; give it another name"
    names = [shelf.id for shelf in shower.shelves]
    for index, name in enumerate(names):
        if name in names[:index]:
            yield ("shelves", index), f"shelf '{name}' stands twice; each needs a name of its own"
    for index, shelf in enumerate(shower.shelves):
        if shelf.drop is not None and shelf.drop >= shelf.depth:
            yield ("shelves", index, "drop"), "drops by as much as it is deep; check both"
    yield from _drain(shower)


def _drain(shower: TiledShower) -> Iterator[Wrong]:
    if shower.width is None or shower.depth is None or shower.left is None or shower.out is None:
        return
    drain = shower.drain
    places: list[tuple[tuple[str | int, ...], tuple[int, int]]]
    if drain.left is not None and drain.out is not None:
        places = [((), (drain.left, drain.out))]
    else:
        places = [(("ends", number), at) for number, at in enumerate(drain.ends or ())]
    for path, (along, away) in places:
        if not shower.left <= along <= shower.left + shower.width:
            yield ("drain", *path), "the drain lies beside the shower floor; both are measured from the same side"
        if not shower.out <= away <= shower.out + shower.depth:
            yield ("drain", *path), "the drain lies before or behind the shower floor; check out"
