"""How high a room's finished floor lies over its panels, from which everything on its walls is measured."""

from collections.abc import Mapping, Sequence

from firstcourse.job import Job, Room
from firstcourse.layers import floor_layers, laid_tile, total_height_in
from firstcourse.plan import Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.sheets import allowed_stock
from firstcourse.units import inches


def room_floor(
    job: Job,
    room: Room,
    surfaces: Sequence[Surface],
    stock: Mapping[SurfaceKind, tuple[Stock, ...]],
    rules: RuleSet,
) -> int | None:
    """Height of a room's finished floor over its panels or slab [ticks]; None where none is planned.

    Args:
        job: For its tiles.
        room: The room.
        surfaces: Boarded surfaces, the room's floor among them.
        stock: Sheets by what they serve.
        rules: For mortar as combed.
    """
    floor = next((surface for surface in surfaces if surface.id == f"{room.name}/floor"), None)
    if room.floor is None or floor is None:
        return None
    tile = laid_tile(job, room.floor)
    return inches(total_height_in(floor_layers(tile, room.floor.tile, allowed_stock(floor, stock), rules)))
