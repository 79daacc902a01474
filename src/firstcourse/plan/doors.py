"""Doors of a room, in walls that are boarded and in walls that stay as they are."""

from firstcourse.plan.base import Frozen, Segment, Ticks


class Door(Frozen):
    """A doorway, as drawings of its floor and of its wall show it.

    Attributes:
        wall: Left and right corner of the wall it is in, such as `C-D`.
        line: Its left and right end on the plan of the room's floor.
        left: Its left end along the wall, from the wall's left corner.
        width: Along the wall.
        bottom: Its foot, over what the wall's drawing counts heights from; None where it stands on the floor.
        height: From its foot to its head; None where the job does not say.
    """

    id: str
    room: str
    wall: str
    line: Segment
    left: Ticks
    width: Ticks
    bottom: Ticks | None = None
    height: Ticks | None = None
