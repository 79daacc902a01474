"""Which surfaces a job tiles, and what stands before each of their sides when the tile goes up."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from firstcourse.job import BoardedWall, BoardRange, Exposure, Job, Room, TileExposure, Tiling
from firstcourse.layers import laid_tile, set_height
from firstcourse.plan import Side, SideKind, Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet

_OF_ZONE: dict[str, TileExposure] = {
    "dry": "interior",
    "damp": "moist",
    "wet": "moist",
    "steam": "moist",
    "exterior": "exterior",
    "near_heat": "heat",
}
"""What a surface's tile is exposed to by the zone that the job gives for its boards."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToTile:
    """One surface to be tiled.

    Attributes:
        tiling: What the job asks for.
        room: The room of the job.
        field: Path of the tiling in the job document, for messages.
        boards: What the boards under it are exposed to, where the job says so.
        mortar: Thickness of the mortar under it, where the job says so; as combed otherwise [ticks].
    """

    surface_id: str
    tiling: Tiling
    room: Room
    field: str
    boards: Exposure | None = None
    mortar: int | None = None

    @property
    def exposure(self) -> TileExposure:
        """What the tile is exposed to: as the tiling says, else the boards' zone, else the room."""
        if self.tiling.exposure is not None:
            return self.tiling.exposure
        return self.room.tile_exposure if self.boards is None else _OF_ZONE[self.boards.zone]


def surfaces_to_tile(job: Job) -> Iterator[ToTile]:
    """Every surface that the job tiles, floor first in each room."""
    for number, room in enumerate(job.rooms, start=1):
        base = f"rooms[{number}]"
        if room.floor is not None and room.floor.tiling is not None:
            yield ToTile(
                surface_id=f"{room.name}/floor",
                tiling=room.floor.tiling,
                room=room,
                field=f"{base}.floor.tiling",
                boards=room.floor.exposure,
                mortar=None if room.floor.tile is None else room.floor.tile.bond_coat,
            )
        shower = room.floor.shower if room.floor is not None else None
        if shower is not None and shower.tiling is not None:
            yield ToTile(
                surface_id=f"{room.name}/floor/shower",
                tiling=shower.tiling,
                room=room,
                field=f"{base}.floor.shower.tiling",
            )
        for index, wall in enumerate(room.walls, start=1):
            if wall.tiling is not None:
                yield ToTile(
                    surface_id=f"{room.name}/wall/{wall.wall}",
                    tiling=wall.tiling,
                    room=room,
                    field=f"{base}.walls[{index}].tiling",
                    boards=wall.exposure,
                    mortar=None if wall.tile is None else wall.tile.bond_coat,
                )
        if room.ceiling is not None and room.ceiling.tiling is not None:
            yield ToTile(
                surface_id=f"{room.name}/ceiling",
                tiling=room.ceiling.tiling,
                room=room,
                field=f"{base}.ceiling.tiling",
                boards=room.ceiling.exposure,
            )


def depth_before(
    surface: Surface,
    room: Room,
    stock: Sequence[Stock],
    job: Job,
    rules: RuleSet,
    reaching: frozenset[str] = frozenset(),
) -> tuple[int, ...]:
    """What stands before each side of a surface when its tile goes up [ticks].

    A wall's tile ends at the boards of the wall it meets, and at its tile where that is set first: the wider
    tiling is, as the one that is looked at. A floor's or ceiling's tile ends at the boards of the walls.

    Args:
        surface: The surface; lengths of its outline are between studs.
        room: The room as the job has it.
        stock: Sheets of the job.
        job: For its tiles.
        rules: For the mortar under the tile.
        reaching: Walls whose boards begin over the panels, but reach down into this floor.
    """
    walls = {wall.wall: wall for wall in room.walls}
    return tuple(_depth(surface, side, room, walls, stock, job, rules, reaching) for side in surface.sides)


def _depth(
    surface: Surface,
    side: Side,
    room: Room,
    walls: dict[str, BoardedWall],
    stock: Sequence[Stock],
    job: Job,
    rules: RuleSet,
    reaching: frozenset[str],
) -> int:
    if side.kind is SideKind.FREE:
        return 0
    if surface.kind is SurfaceKind.WALL:
        own = "-".join(surface.corners)
        meets = _wall_at(side.corner, own, room) if side.corner else ""
        wall = walls.get(meets)
        if wall is None or not _reaches(wall, side.corner):
            return 0
        depth = _board(wall, stock)
        if wall.tiling is not None and _set_first(meets, own, room):
            depth += _tile(wall, job, rules)
        return depth
    wall = walls.get(side.wall)
    if wall is None:
        return 0
    if surface.kind is SurfaceKind.FLOOR and wall.boards.bottom is not None and wall.wall not in reaching:
        return 0
    if surface.kind is SurfaceKind.CEILING and wall.boards.top is not None:
        return 0
    return _board(wall, stock)


def wall_finish(room: Room, stock: Sequence[Stock], job: Job, rules: RuleSet) -> int:
    """Most that boards and tile of a room's walls take up before the framing [ticks]."""
    return max(
        (_board(wall, stock) + (_tile(wall, job, rules) if wall.tiling else 0) for wall in room.walls),
        default=0,
    )


def boards_on(pair: str, room: Room, stock: Sequence[Stock]) -> int:
    """Thickness of the boards on a wall; 0 where it is not boarded [ticks]."""
    wall = next((wall for wall in room.walls if wall.wall == pair), None)
    return 0 if wall is None else _board(wall, stock)


def walls_beside(pair: str, room: Room) -> tuple[str, str]:
    """The walls at the left and the right corner of a wall."""
    left, right = pair.split("-")
    return _wall_at(left, pair, room), _wall_at(right, pair, room)


def joints_listed_elsewhere(surface: Surface, room: Room) -> frozenset[int]:
    """Sides whose soft joint is listed with the surface beyond them, so that no bead counts twice.

    A corner's bead belongs to the wall that is set second, a floor's to the wall whose tile stands over it.
    """
    walls = {wall.wall: wall for wall in room.walls if wall.tiling is not None}
    found = set()
    for index, side in enumerate(surface.sides):
        if surface.kind is SurfaceKind.WALL:
            own = "-".join(surface.corners)
            wall = walls.get(_wall_at(side.corner, own, room)) if side.corner else None
            if wall is not None and _reaches(wall, side.corner) and not _set_first(wall.wall, own, room):
                found.add(index)
        elif surface.kind is SurfaceKind.FLOOR:
            wall = walls.get(side.wall)
            if wall is not None and wall.boards.bottom is None and wall.foot == "floor":
                found.add(index)
    return frozenset(found)


def _wall_at(corner: str, own: str, room: Room) -> str:
    """The other wall at a corner of a wall."""
    left, right = own.split("-")
    for pair in room.side_pairs():
        one, other = pair.split("-")
        if pair != own and ((corner == right and one == right) or (corner == left and other == left)):
            return pair
    return ""


def _reaches(wall: BoardedWall, corner: str) -> bool:
    """Whether a wall's boards run into the corner."""
    left, _ = wall.wall.split("-")
    limit = wall.boards.left if corner == left else wall.boards.right
    return limit is None or (corner == left and limit == 0)


def _set_first(one: str, other: str, room: Room) -> bool:
    """Whether one wall is tiled before another: the wider tiling, or of equals the first in the room's order."""
    pairs = room.side_pairs()
    return (-_width(one, room), pairs.index(one)) < (-_width(other, room), pairs.index(other))


def _width(pair: str, room: Room) -> int:
    asked = next((wall.boards for wall in room.walls if wall.wall == pair), BoardRange())
    right = room.sides[pair] if asked.right is None else asked.right
    return right - (asked.left or 0)


def _board(wall: BoardedWall, stock: Sequence[Stock]) -> int:
    usable = [item.thickness for item in stock if not wall.stock or item.id in wall.stock]
    return max(usable, default=0)


def _tile(wall: BoardedWall, job: Job, rules: RuleSet) -> int:
    tile = laid_tile(job, wall)
    return 0 if tile is None else set_height(tile, rules)
