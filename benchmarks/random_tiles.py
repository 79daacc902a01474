"""Tile on the rooms of random jobs: sizes from chips to planks, every pattern, bands, starts and repeats."""

import random
from typing import Any

import yaml

_INCH = 25.4
_SIZES_MM = ((25, 25), (50, 50), (75, 150), (100, 100), (100, 300), (150, 150), (200, 600), (300, 300), (305, 610))
_LARGE_MM = ((600, 600), (600, 1200), (200, 1200), (800, 800))


def tiled(document: str, seed: int) -> str:
    """A random job with tile on some of its surfaces, drawn from the seed apart from the job's own draw.

    Args:
        document: The job without tile.
        seed: Makes the same tile again for the same document.
    """
    rng = random.Random(f"tile {seed}")
    job: dict[str, Any] = yaml.safe_load(document)
    tape = job["tape"]
    # Chips over a whole room are slow to plan: few jobs have them.
    tiles = [_tile(rng, tape, number, small=rng.random() < 0.1) for number in range(rng.randint(1, 3))]
    hexagon = _hexagon(rng, tape) if rng.random() < 0.3 else None
    job["tiles"] = tiles + ([hexagon] if hexagon else [])
    repeats = [_repeat(rng, tape, tiles)] if rng.random() < 0.3 else []
    if repeats:
        job["repeats"] = repeats
    for room in job["rooms"]:
        grounds = [room["floor"]] if "floor" in room else []
        grounds += [*room.get("walls", ()), *([room["ceiling"]] if "ceiling" in room else [])]
        for ground in rng.sample(grounds, rng.randint(1, len(grounds))):
            ground["tiling"] = _tiling(rng, job, room, wall="wall" in ground)
    return yaml.safe_dump(job, sort_keys=False)


def _text(length_mm: float, tape: str) -> str:
    """A length to the nearest step of a caliper: thousandths of an inch or tenths of a millimetre."""
    return f"{length_mm / _INCH:.3f} in" if tape == "inch" else f"{length_mm:.1f} mm"


def _tile(rng: random.Random, tape: str, number: int, *, small: bool) -> dict[str, Any]:
    width, height = rng.choice(_SIZES_MM[:2] if small else (*_SIZES_MM[2:], *_LARGE_MM))
    if rng.random() < 0.5:
        width, height = height, width
    # As measured, a little off the nominal size.
    off = rng.uniform(-0.02, 0.01)
    tile: dict[str, Any] = {
        "id": f"tile {number + 1}",
        "size": [_text(width * (1 + off), tape), _text(height * (1 + off), tape)],
        "thickness": _text(rng.choice([6, 8, 9.5, 12]), tape),
        "kind": rng.choice(["ceramic", "porcelain", "stone", "glass"]),
    }
    if rng.random() < 0.5:
        tile["edges"] = "rectified"
    if rng.random() < 0.4:
        tile["joint"] = _text(rng.choice([1.5, 2, 3.175, 5, 8]), tape)
    if rng.random() < 0.3:
        tile["size_spread"] = _text(rng.choice([0.3, 0.8, 2.0]), tape)
    if rng.random() < 0.2:
        tile["warpage"] = _text(rng.choice([0.3, 1.0]), tape)
    if rng.random() < 0.2:
        tile["directional"] = True
    if small:
        tile["sheet"] = [12, 12]
    return tile


def _hexagon(rng: random.Random, tape: str) -> dict[str, Any]:
    flats = rng.choice([50.0, 150.0, 200.0, 250.0])
    return {
        "id": "hexagon",
        "size": [_text(flats, tape), _text(flats * 1.1547, tape)],
        "thickness": _text(9, tape),
        "shape": "hexagon",
    }


def _repeat(rng: random.Random, tape: str, tiles: list[dict[str, Any]]) -> dict[str, Any]:
    """Two of a tile side by side, each row shifted; now and then with a gap that must be refused."""
    tile = rng.choice(tiles)
    width, height = (float(size.split()[0]) * (_INCH if tape == "inch" else 1) for size in tile["size"])
    tile["joint"] = _text(joint := rng.choice([3.175, 5.0]), tape)
    wrong = rng.choice([0.0, 0.0, 0.0, 4.0])
    return {
        "id": "own",
        "across": _text(2 * (width + joint), tape),
        "up": _text(height + joint + wrong, tape),
        "shift": _text(rng.choice([0.0, (width + joint) / 2]), tape),
        "pieces": [
            {"tile": tile["id"], "at": [_text(0, tape), _text(0, tape)]},
            {"tile": tile["id"], "at": [_text(width + joint, tape), _text(0, tape)]},
        ],
    }


def _tiling(rng: random.Random, job: dict[str, Any], room: dict[str, Any], *, wall: bool) -> dict[str, Any]:
    tile = rng.choice(job["tiles"])
    tiling: dict[str, Any] = {"tile": tile["id"], "angle": rng.choice([0, 0, 0, 45, 90])}
    if tile.get("shape") == "hexagon":
        tiling["pattern"] = "hexagon"
    elif job.get("repeats") and rng.random() < 0.4:
        tiling = {"pattern": "repeat", "repeat": "own", "angle": tiling["angle"]}
    else:
        # A weave of tile that does not make one is refused; few jobs should be.
        patterns = ["stacked", "running", "running", "diagonal"]
        long, short = sorted((float(size.split()[0]) for size in tile["size"]), reverse=True)
        patterns += ["herringbone"] * (long > 1.2 * short) + ["double_herringbone"] * (long > 2.5 * short)
        if rng.random() < 0.1:
            patterns = ["herringbone", "double_herringbone", "basket_weave"]
        tiling["pattern"] = rng.choice(patterns)
        if tiling["pattern"] == "running":
            tiling["offset"] = rng.choice(["1/2", "1/3", "1/4", "2/5"])
    if rng.random() < 0.2:
        tape = job["tape"]
        tiling["start"] = {key: _text(rng.uniform(0, 1500), tape) for key in ("left", "up")}
    if rng.random() < 0.3:
        tiling["seen_first"] = [rng.choice(list(room["sides"]))]
    others = [item["id"] for item in job["tiles"] if item.get("shape") != "hexagon"]
    if wall and tiling["pattern"] in ("stacked", "running") and tiling["angle"] == 0 and rng.random() < 0.4:
        tiling["bands"] = [
            {
                "bottom": _text(rng.uniform(0, 2300), job["tape"]),
                "tile": rng.choice(others),
                "courses": rng.randint(1, 3),
            }
            for _ in range(rng.randint(1, 2))
        ]
    return tiling
