"""Random walls, floors and ceilings of a room: framing, openings and what is boarded."""

import math
import random
from typing import Any

from random_shapes import Corners, Taper, size
from shapely import LineString, Polygon

_MADE_WHOLE = frozenset({"tub", "tray"})
_TOUCH_MM = 24
"""Things may come so far into each other, as they are taped: a little less than `shower.touch` lets pass."""


def wall(rng: random.Random, taper: Taper, pair: str, length: float, height: float) -> dict[str, Any]:
    """A wall with its framing, what of it is boarded, and openings anywhere."""
    foot = rng.choices(["floor", "tub", "tray", "kerb", "none"], [40, 25, 20, 5, 10])[0]
    rim = {"tub": rng.uniform(350, 560), "tray": rng.uniform(20, 120), "kerb": rng.uniform(60, 150)}.get(foot)
    wall: dict[str, Any] = {"wall": pair, "foot": foot, "framing": _studs(rng, taper, length)}
    boards: dict[str, str] = {}
    if rim is not None:
        boards["bottom"] = taper.text(rim)
    if rng.random() < 0.6:
        boards["top"] = taper.text(min(height - 20, rng.choice([rng.uniform(900, 1300), 2134, 2000])))
    if length > 900 and rng.random() < 0.35:
        # Towards a tub or tray at one end, seldom a patch in the middle.
        edge = rng.uniform(700, length - 50)
        if rng.random() < 0.5:
            boards["right"] = taper.text(edge)
        else:
            boards["left"] = taper.text(length - edge)
    if boards:
        wall["boards"] = boards
    openings = [
        _on_wall(rng, taper, length, height, number) for number in range(rng.choice([0, 0, 1, 1, 2, 3, 5]))
    ]
    if openings:
        wall["openings"] = openings
    if rng.random() < 0.15 and length > 700:
        left = rng.uniform(20, length - 420)
        at, right = rng.uniform(300, height - 100), left + rng.uniform(150, 400)
        wall["blocking"] = [{"at": taper.text(at), "left": taper.text(left), "right": taper.text(right)}]
    return wall


def _studs(rng: random.Random, taper: Taper, length: float) -> dict[str, Any]:
    spacing = rng.choice([406.4, 304.8] if taper.tape == "inch" else [400, 300, 600])
    if rng.random() < 0.5:
        first = min(rng.uniform(19, spacing), length - 5)
        return {"spacing": taper.text(spacing), "first": taper.text(first)}
    centres = [rng.uniform(19, 60)]
    while centres[-1] + 150 < length - 19:
        centres.append(min(length - 19, centres[-1] + rng.uniform(150, 620)))
    if length - centres[-1] > 100 and rng.random() < 0.7:
        centres.append(length - 19)
    return {"members": [{"at": taper.text(min(at, length - 3))} for at in centres]}


def _on_wall(rng: random.Random, taper: Taper, length: float, height: float, number: int) -> dict[str, Any]:
    """A window, niche, door, valve, pipe or box anywhere on a wall, also over the edge of what is boarded."""
    kind = rng.choice(["window", "niche", "door", "valve", "pipe", "pipe", "box", "other"])
    opening: dict[str, Any] = {"id": f"{kind} {number + 1}", "kind": kind}
    if kind in ("valve", "pipe"):
        diameter = rng.uniform(90, 180) if kind == "valve" else rng.uniform(15, 115)
        diameter = min(diameter, length / 2)
        half = diameter / 2 + 2 * taper.step_mm
        left, bottom = rng.uniform(half, length - half), rng.uniform(half, height - 80)
        return opening | {
            "left": taper.text(left),
            "bottom": taper.text(bottom),
            "diameter": taper.text(max(diameter, 10)),
        }
    sizes = {"window": (400, 1200), "niche": (250, 600), "door": (600, 900), "box": (50, 110), "other": (60, 400)}
    low, high = sizes[kind]
    width = min(rng.uniform(low, high), length - 4)
    tall = {"door": rng.uniform(1950, 2100), "box": rng.uniform(50, 110)}.get(kind, rng.uniform(low, high))
    left = rng.uniform(0, length - width - 3)
    bottom = 0.0 if kind == "door" else rng.uniform(0, height - tall - 30)
    if kind == "other":
        points = [(left, bottom + tall / 3), (left + width / 2, bottom), (left + width, bottom + tall / 2)]
        points.append((left + width / 2, bottom + tall))
        return opening | {"points": [[taper.text(u), taper.text(v)] for u, v in points]}
    return opening | {
        "left": taper.text(left),
        "bottom": taper.text(bottom),
        "width": taper.text(width),
        "height": taper.text(tall),
    }


def joists(rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float]) -> dict[str, Any]:
    """Joists at a spacing, or one by one where they are out of place."""
    pair = rng.choice([pair for pair, length in lengths.items() if length > 300])
    spacing = rng.choice([406.4, 304.8, 609.6] if taper.tape == "inch" else [400, 450, 600])
    if rng.random() < 0.7:
        return {
            "parallel_to": pair,
            "spacing": taper.text(spacing),
            "first": taper.text(rng.uniform(30, spacing)),
        }
    width, depth = size([(u - min(c[0] for c in corners), v - min(c[1] for c in corners)) for u, v in corners])
    at, centres = rng.uniform(20, 300), []
    while at < max(width, depth):
        centres.append(at)
        at += rng.uniform(200, 620)
    return {"parallel_to": pair, "members": [{"at": taper.text(centre)} for centre in centres]}


def floor(rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float]) -> dict[str, Any]:
    """A floor with joists, joints and screws of the panel under it, and openings."""
    floor: dict[str, Any] = {}
    if rng.random() < 0.8:
        floor["framing"] = joists(rng, taper, corners, lengths)
        if rng.random() < 0.5:
            floor["panel_screws"] = {"spacing": taper.text(203.2), "first": taper.text(rng.uniform(10, 200))}
    joints = []
    for _ in range(rng.choice([0, 1, 1, 2, 3])):
        pair = rng.choice(list(lengths))
        out = rng.uniform(200, 1200)
        # Only a joint that meets the floor is one.
        if LineString(_line(corners, pair, out)).intersection(Polygon(corners).buffer(-40)).length > 200:
            joints.append({"parallel_to": pair, "out": taper.text(out)})
    if joints:
        floor["panel_joints"] = joints
    openings: list[dict[str, Any]] = []
    standing: list[tuple[str, Polygon]] = []
    for number in range(rng.choice([0, 1, 1, 2, 3])):
        openings.append(_on_floor(rng, taper, corners, lengths, number, standing))
    if openings:
        floor["openings"] = openings
    return floor


def _ends(corners: Corners, pair: str) -> tuple[tuple[float, float], tuple[float, float]]:
    left, right = (ord(name) - ord("A") for name in pair.split("-"))
    return corners[left], corners[right]


def _line(corners: Corners, pair: str, out: float) -> list[tuple[float, float]]:
    a, b = _ends(corners, pair)
    return [_place(a, b, -20_000, out), _place(a, b, 20_000, out)]


def _place(a: tuple[float, float], b: tuple[float, float], left: float, out: float) -> tuple[float, float]:
    length = math.dist(a, b)
    du, dv = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    return a[0] + du * left + dv * out, a[1] + dv * left - du * out


def _on_floor(
    rng: random.Random,
    taper: Taper,
    corners: Corners,
    lengths: dict[str, float],
    number: int,
    standing: list[tuple[str, Polygon]],
) -> dict[str, Any]:
    """A tub, tray, cabinet, column, drain, flange or pipe, mostly within the room.

    What stands is added to `standing`; where a tub or tray would stand in another thing another place is tried.
    """
    kind = rng.choice(["tub", "tray", "cabinet", "column", "drain", "flange", "pipe", "other"])
    name = f"{kind} {number + 1}"
    if kind in ("drain", "flange", "pipe"):
        return round_on_floor(rng, taper, corners, lengths, name, kind)
    opening: dict[str, Any] = {"id": name, "kind": kind}
    room = Polygon(corners)
    sizes = {
        "tub": (1400, 1700, 680, 800),
        "tray": (700, 1200, 700, 1000),
        "cabinet": (350, 1200, 300, 600),
        "column": (150, 450, 150, 450),
        "other": (100, 500, 100, 500),
    }
    least_w, most_w, least_d, most_d = sizes[kind]
    for _ in range(30):
        pair = rng.choice(list(lengths))
        a, b = _ends(corners, pair)
        width, depth = rng.uniform(least_w, most_w), rng.uniform(least_d, most_d)
        if kind in ("tub", "tray") and rng.random() < 0.5:
            width = lengths[pair]
        against = kind in ("tub", "tray", "cabinet") and rng.random() < 0.8
        left = rng.choice([0.0, max(0.0, lengths[pair] - width), rng.uniform(0, lengths[pair])])
        out = 0.0 if against else rng.uniform(0, 1500)
        ring = [(left, out), (left + width, out), (left + width, out + depth), (left, out + depth)]
        placed = Polygon([_place(a, b, *point) for point in ring])
        within = room.intersection(placed).area > 0.9 * placed.area and placed.area < 0.7 * room.area
        if within and not _in_another(kind, placed, standing):
            if kind != "other":
                standing.append((kind, placed))
            else:
                ring[2] = (left + width * 0.7, out + depth * 0.8)
                points = [[taper.text(u), taper.text(v)] for u, v in ring]
                return opening | {"side": pair, "points": points}
            return opening | {
                "side": pair,
                "left": taper.text(left),
                "out": taper.text(out),
                "width": taper.text(width),
                "depth": taper.text(depth),
            }
    return round_on_floor(rng, taper, corners, lengths, name, "pipe")


def _in_another(kind: str, placed: Polygon, standing: list[tuple[str, Polygon]]) -> bool:
    return any(
        {kind, other} & _MADE_WHOLE and not placed.intersection(there).buffer(-_TOUCH_MM / 2).is_empty
        for other, there in standing
        if kind != "other"
    )


def round_on_floor(
    rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float], name: str, kind: str
) -> dict[str, Any]:
    """A drain, flange, pipe or fan somewhere within the room."""
    room = Polygon(corners)
    diameter = rng.uniform(20, 150)
    pair, left, out = next(iter(lengths)), 10.0, 10.0
    for _ in range(30):
        pair = rng.choice(list(lengths))
        left, out = rng.uniform(0, lengths[pair]), rng.uniform(0, 1800)
        if room.contains(LineString([_place(*_ends(corners, pair), left, out)] * 2).centroid):
            break
    return {
        "id": name,
        "kind": kind,
        "side": pair,
        "left": taper.text(left),
        "out": taper.text(out),
        "diameter": taper.text(diameter),
    }
