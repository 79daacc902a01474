"""What no single field can tell about tile: names that are not there, bands where there is no wall."""

from collections.abc import Iterator, Mapping

from firstcourse.job.model import Job, Room
from firstcourse.job.tile import Tiling

Wrong = tuple[tuple[str | int, ...], str]


def check_tiles(job: Job) -> Iterator[Wrong]:
    """Everything wrong with the job's tiles across fields, each with the path of the field and what to do."""
    tiles = [tile.id for tile in job.tiles]
    repeats = [repeat.id for repeat in job.repeats]
    for names, field, what in ((tiles, "tiles", "tile"), (repeats, "repeats", "repeat")):
        for index, name in enumerate(names):
            if name in names[:index]:
                yield (field, index), f"{what} '{name}' stands twice; each needs a name of its own"
    shapes = {tile.id: tile.shape for tile in job.tiles}
    for index, repeat in enumerate(job.repeats):
        for number, piece in enumerate(repeat.pieces):
            if piece.tile not in tiles:
                yield ("repeats", index, "pieces", number, "tile"), f"'{piece.tile}' is not one of the job's tiles"
    for index, room in enumerate(job.rooms):
        for path, name in _tiles_beside(room):
            if shapes.get(name) != "rectangle":
                yield ("rooms", index, *path), f"'{name}' is not one of the job's rectangular tiles"
        for rest, message in _windows(room, shapes):
            yield ("rooms", index, *rest), message
        for rest, message in _standing(room):
            yield ("rooms", index, *rest), message
        for path, tiling in _tilings(room):
            kind = {"wall": path[0] == "walls", "falls": "shower" in path}
            for rest, message in _tiling(tiling, room, shapes, frozenset(repeats), **kind):
                yield ("rooms", index, *path, *rest), message


def _tilings(room: Room) -> Iterator[tuple[tuple[str | int, ...], Tiling]]:
    if room.floor is not None and room.floor.tiling is not None:
        yield ("floor", "tiling"), room.floor.tiling
    if room.floor is not None and room.floor.shower is not None and room.floor.shower.tiling is not None:
        yield ("floor", "shower", "tiling"), room.floor.shower.tiling
    for index, wall in enumerate(room.walls):
        if wall.tiling is not None:
            yield ("walls", index, "tiling"), wall.tiling
    if room.ceiling is not None and room.ceiling.tiling is not None:
        yield ("ceiling", "tiling"), room.ceiling.tiling


def _tiling(
    tiling: Tiling, room: Room, shapes: Mapping[str, str], repeats: frozenset[str], *, wall: bool, falls: bool
) -> Iterator[Wrong]:
    if tiling.tile is not None and tiling.tile not in shapes:
        yield ("tile",), f"'{tiling.tile}' is not one of the job's tiles"
    elif tiling.tile is not None and (shapes[tiling.tile] == "hexagon") != (tiling.pattern == "hexagon"):
        yield ("pattern",), "hexagons go with pattern: hexagon, and with no other"
    if tiling.repeat is not None and tiling.repeat not in repeats:
        yield ("repeat",), f"'{tiling.repeat}' is not one of the job's repeats"
    for index, pair in enumerate(tiling.seen_first):
        if pair not in room.side_pairs():
            yield ("seen_first", index), f"'{pair}' is not a side of this room"
    for index, band in enumerate(tiling.bands):
        if not wall:
            yield ("bands", index), "bands run across walls only"
        elif band.pattern != "hexagon" and shapes.get(band.tile) != "rectangle":
            yield ("bands", index, "tile"), f"'{band.tile}' is not one of the job's rectangular tiles"
        elif band.pattern == "hexagon" and shapes.get(band.tile) != "hexagon":
            yield ("bands", index, "tile"), f"'{band.tile}' is not one of the job's hexagons"
    for index, joint in enumerate(tiling.soft_joints):
        if joint.side is not None and wall:
            yield ("soft_joints", index, "side"), "on a wall both ends are from its left corner and the floor"
        elif joint.side is not None and joint.side not in room.side_pairs():
            yield ("soft_joints", index, "side"), f"'{joint.side}' is not a side of this room"
    niches = {opening.id for item in room.walls if item.tiling is tiling for opening in item.openings}
    for index, niche in enumerate(tiling.niches):
        if niche.niche not in niches:
            yield ("niches", index, "niche"), f"'{niche.niche}' is not one of this wall's openings"
        if niche.niche in [other.niche for other in tiling.niches[:index]]:
            yield ("niches", index, "niche"), f"niche '{niche.niche}' stands twice"
        for field, name in (("tile", niche.tile), ("returns", niche.returns)):
            if name is not None and name not in shapes:
                yield ("niches", index, field), f"'{name}' is not one of the job's tiles"
        if (
            niche.tile is not None
            and niche.tile in shapes
            and (shapes[niche.tile] == "hexagon") != (niche.pattern == "hexagon")
        ):
            yield ("niches", index, "pattern"), "hexagons go with pattern: hexagon, and with no other"
        if niche.returns is None and tiling.tile is None:
            yield ("niches", index), "name the tile of its returns: the wall's repeat cannot run on into them"
    if tiling.border is not None:
        yield from _border(tiling, shapes, falls=falls)
    if tiling.bands and (tiling.pattern not in ("stacked", "running") or tiling.angle != 0):
        yield ("bands",), "bands go with level courses: pattern stacked or running, not turned"


def _border(tiling: Tiling, shapes: Mapping[str, str], *, falls: bool) -> Iterator[Wrong]:
    assert tiling.border is not None
    if shapes.get(tiling.border.tile) != "rectangle":
        yield ("border", "tile"), f"'{tiling.border.tile}' is not one of the job's rectangular tiles"
    if falls:
        yield ("border",), "a border runs round level floors, walls and ceilings, not round a floor that falls"
    if tiling.bands:
        yield ("border",), "a wall has bands or a border, not both"


def _tiles_beside(room: Room) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """Tiles of benches and of a kerb, with the path of each."""
    for index, bench in enumerate(room.benches):
        yield ("benches", index, "tile"), bench.tile
        if bench.front is not None:
            yield ("benches", index, "front"), bench.front
    kerb = room.floor.shower.kerb if room.floor is not None and room.floor.shower is not None else None
    if kerb is not None:
        for field, name in (("tile", kerb.tile), ("faces", kerb.faces)):
            if name is not None:
                yield ("floor", "shower", "kerb", field), name


def _windows(room: Room, shapes: Mapping[str, str]) -> Iterator[Wrong]:
    """Tiles of windows' returns that are not there."""
    for index, wall in enumerate(room.walls):
        for number, opening in enumerate(wall.openings):
            asked, path = opening.returns, ("walls", index, "openings", number, "returns")
            if asked is None:
                continue
            if asked.tile is not None and asked.tile not in shapes:
                yield (*path, "tile"), f"'{asked.tile}' is not one of the job's tiles"
            if asked.tiled and asked.tile is None and wall.tiling is not None and wall.tiling.tile is None:
                yield path, "name the tile of its returns: the wall's repeat cannot run on into them"


def _standing(room: Room) -> Iterator[Wrong]:
    """Benches that stand nowhere, or bear one name."""
    names = [bench.id for bench in room.benches]
    for index, bench in enumerate(room.benches):
        if bench.id in names[:index]:
            yield ("benches", index), f"bench '{bench.id}' stands twice; each needs a name of its own"
        length = room.sides.get(bench.wall)
        if bench.wall not in room.side_pairs() or length is None:
            yield ("benches", index, "wall"), f"'{bench.wall}' is not a wall of this room"
        elif bench.left + bench.width > length:
            yield ("benches", index), "it reaches past the end of its wall; check left and width"
