"""Plan random jobs, shaped as rooms are found on site, and count what becomes of them.

    python benchmarks/random_rooms.py --seed 1 --count 500
    python benchmarks/random_rooms.py --seed 1 --count 50 --tiled

Job number k is made from seed + k alone, so any one of them is made again with `--seed N --count 1`; `--show`
prints its document. A job is planned and verified, or refused with a message for the setter; anything else is our
fault, and the exit code is 1.

Shapes, areas and how far rooms are out of square follow published floor plans of flats; studs, openings and ranges
are invented to be awkward.
"""

import argparse
import math
import random
import sys
import time
import traceback
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from statistics import median
from typing import Any

import yaml
from random_tiles import tiled
from shapely import LineString, Polygon

from firstcourse.errors import JobError, PlanRefusedError
from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.planning import plan_job

Corners = list[tuple[float, float]]
"""Corners clockwise seen from above, v up [mm]."""
_INCH = 25.4
_STOCKS = {
    "inch": (("36 in", "60 in"), ("48 in", "96 in"), ("32 in", "48 in"), ("48 in", "60 in")),
    "mm": (("900 mm", "1500 mm"), ("1200 mm", "2400 mm"), ("600 mm", "1200 mm"), ("800 mm", "1250 mm")),
}


class Taper:
    """Writes lengths as the tape of one job shows them."""

    def __init__(self, tape: str) -> None:
        self.tape = tape
        self.step_mm = _INCH / 16 if tape == "inch" else 1.0

    def text(self, length_mm: float) -> str:
        """The nearest graduation, at least zero, with its unit."""
        marks = max(0, round(length_mm / self.step_mm))
        if self.tape == "mm":
            return f"{marks} mm"
        whole, part = divmod(Fraction(marks, 16), 1)
        return f"{whole} {part} in" if whole and part else f"{part or whole} in"


# --- shapes -----------------------------------------------------------------------------------------------------


def rectangle(rng: random.Random) -> Corners:
    """A plain room of 1 to 12 m², seldom larger."""
    area = min(20.0, math.exp(rng.gauss(1.5, 0.55))) * 1e6
    ratio = rng.uniform(1.0, 2.2)
    w, h = math.sqrt(area * ratio), math.sqrt(area / ratio)
    if rng.random() < 0.5:
        w, h = h, w
    return [(0, h), (w, h), (w, 0), (0, 0)]


def _size(corners: Corners) -> tuple[float, float]:
    return max(u for u, _ in corners), max(v for _, v in corners)


def l_shape(rng: random.Random) -> Corners:
    """A room with one corner taken out, by a pipe box of 50 to 150 mm or by another room."""
    w, h = _size(rectangle(rng))
    if rng.random() < 0.4:
        a, b = w - rng.uniform(50, 400), h - rng.uniform(50, 150)
    else:
        a, b = w * rng.uniform(0.35, 0.7), h * rng.uniform(0.35, 0.7)
    return [(0, h), (a, h), (a, b), (w, b), (w, 0), (0, 0)]


def u_shape(rng: random.Random) -> Corners:
    """A room with a stub wall or a duct in the middle of one side."""
    w, h = _size(rectangle(rng))
    w = max(w, 1500)
    left = w * rng.uniform(0.25, 0.5)
    right = min(w * 0.8, left + rng.choice([rng.uniform(90, 160), rng.uniform(250, 700)]))
    low = h * rng.uniform(0.4, 0.9)
    return [(0, h), (left, h), (left, low), (right, low), (right, h), (w, h), (w, 0), (0, 0)]


def tapered(rng: random.Random) -> Corners:
    """A room whose far wall is plainly shorter."""
    w, h = _size(rectangle(rng))
    by, off = rng.uniform(20, 0.2 * w), rng.uniform(0, 60)
    return [(0, h), (w, h - off), (w - by, 0), (0, 0)]


def cut_corner(rng: random.Random) -> Corners:
    """A room with one corner cut off at an odd angle."""
    w, h = _size(rectangle(rng))
    a, b = rng.uniform(0.15, 0.45) * w, rng.uniform(0.15, 0.45) * h
    return [(0, h), (w - a, h), (w, h - b), (w, 0), (0, 0)]


def two_jogs(rng: random.Random) -> Corners:
    """A room with two opposite corners boxed in."""
    w, h = _size(rectangle(rng))
    a, b = rng.uniform(50, 150), rng.uniform(50, 150)
    c, d = rng.uniform(50, 0.35 * w), rng.uniform(50, 0.35 * h)
    return [(0, h), (w - a, h), (w - a, h - b), (w, h - b), (w, 0), (c, 0), (c, d), (0, d)]


_SHAPES = ((rectangle, 34), (l_shape, 28), (u_shape, 12), (tapered, 10), (cut_corner, 6), (two_jogs, 10))


def outline(rng: random.Random) -> Corners:
    """A room's corners: any shape, turned, mirrored, and out of square as rooms are."""
    make = rng.choices([shape for shape, _ in _SHAPES], [weight for _, weight in _SHAPES])[0]
    corners = make(rng)
    if rng.random() < 0.5:
        corners = [(-u, v) for u, v in reversed(corners)]
    for _ in range(rng.randrange(4)):
        corners = [(v, -u) for u, v in corners]
    start = rng.randrange(len(corners))
    corners = corners[start:] + corners[:start]
    if rng.random() < 0.15:
        return corners
    degrees = rng.uniform(0.3, 1.5)
    return [
        (u + _off(rng, corners, index, degrees), v + _off(rng, corners, index, degrees))
        for index, (u, v) in enumerate(corners)
    ]


def _off(rng: random.Random, corners: Corners, index: int, degrees: float) -> float:
    """A shift of one corner that turns its shorter side by no more than so many degrees, at most 20 mm."""
    at = corners[index]
    short = min(math.dist(at, corners[index - 1]), math.dist(at, corners[(index + 1) % len(corners)]))
    most = min(20.0, math.tan(math.radians(degrees)) * short)
    return rng.uniform(-most, most)


# --- the job ----------------------------------------------------------------------------------------------------


def random_job(seed: int) -> str:
    """A random job document."""
    rng = random.Random(seed)
    tape = rng.choice(["inch", "inch", "mm"])
    taper = Taper(tape)
    job: dict[str, Any] = {"name": f"random {seed}", "date": "2026-11-25", "tape": tape}
    stocks = _stocks(rng, tape)
    if stocks:
        job["stock"] = stocks
        if rng.random() < 0.2:
            size = [taper.text(rng.uniform(150, 500)), taper.text(rng.uniform(300, 900))]
            job["offcuts"] = [{"id": "rack 1", "stock": stocks[0]["id"], "size": size}]
    job["rooms"] = [_room(rng, taper, f"room {number + 1}") for number in range(1 + (rng.random() < 0.1))]
    return yaml.safe_dump(job, sort_keys=False)


def _stocks(rng: random.Random, tape: str) -> list[dict[str, Any]]:
    if rng.random() < 0.25:
        return []
    sizes = rng.sample(_STOCKS[tape], rng.randint(1, 2))
    return [
        {"id": f"board {number + 1}", "size": list(size), "thickness": "12 mm", "price": rng.randint(12, 60)}
        for number, size in enumerate(sizes)
    ]


def _room(rng: random.Random, taper: Taper, name: str) -> dict[str, Any]:
    corners = outline(rng)
    names = [chr(ord("A") + index) for index in range(len(corners))]
    pairs = [(index, (index + 1) % len(corners)) for index in range(len(corners))]
    lengths = {f"{names[i]}-{names[j]}": math.dist(corners[i], corners[j]) for i, j in pairs}
    room: dict[str, Any] = {
        "name": name,
        "corners": names,
        "sides": {pair: _read(rng, taper, length) for pair, length in lengths.items()},
        "diagonals": _diagonals(rng, taper, corners, names),
    }
    height = rng.uniform(2250, 2750)
    if rng.random() < 0.5:
        room["heights"] = {corner: taper.text(height + rng.uniform(-8, 8)) for corner in names}
        if rng.random() < 0.4:
            room["levels"] = {corner: taper.text(rng.uniform(0, 12)) for corner in names}
    else:
        room["height"] = taper.text(height)
    if rng.random() < 0.75:
        room["floor"] = _floor(rng, taper, corners, lengths)
    walls = [pair for pair, length in lengths.items() if length > 120 and rng.random() < 0.5]
    if walls or "floor" not in room:
        walls = walls or [max(lengths, key=lambda pair: lengths[pair])]
        room["walls"] = [_wall(rng, taper, pair, lengths[pair], height) for pair in walls]
    if rng.random() < 0.2:
        room["ceiling"] = {"framing": _joists(rng, taper, corners, lengths)}
        if rng.random() < 0.5:
            room["ceiling"]["openings"] = [_round_on_floor(rng, taper, corners, lengths, "fan", "box")]
    return room


def _read(rng: random.Random, taper: Taper, length_mm: float) -> str:
    return taper.text(length_mm + rng.gauss(0, 0.4) * taper.step_mm)


def _diagonals(rng: random.Random, taper: Taper, corners: Corners, names: list[str]) -> dict[str, str]:
    """Every distance that a tape can span inside the room; one job in ten leaves some out."""
    count = len(corners)
    inside = Polygon(corners).buffer(1)
    seen = [
        (i, j)
        for i in range(count)
        for j in range(i + 2, count)
        if (i, j) != (0, count - 1) and inside.covers(LineString([corners[i], corners[j]]))
    ]
    if rng.random() < 0.1:
        seen = [pair for pair in seen if rng.random() < 0.6]
    return {f"{names[i]}-{names[j]}": _read(rng, taper, math.dist(corners[i], corners[j])) for i, j in seen}


# --- walls ------------------------------------------------------------------------------------------------------


def _wall(rng: random.Random, taper: Taper, pair: str, length: float, height: float) -> dict[str, Any]:
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


# --- floors and ceilings ----------------------------------------------------------------------------------------


def _joists(rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float]) -> dict[str, Any]:
    pair = rng.choice([pair for pair, length in lengths.items() if length > 300])
    spacing = rng.choice([406.4, 304.8, 609.6] if taper.tape == "inch" else [400, 450, 600])
    if rng.random() < 0.7:
        return {
            "parallel_to": pair,
            "spacing": taper.text(spacing),
            "first": taper.text(rng.uniform(30, spacing)),
        }
    width, depth = _size([(u - min(c[0] for c in corners), v - min(c[1] for c in corners)) for u, v in corners])
    at, centres = rng.uniform(20, 300), []
    while at < max(width, depth):
        centres.append(at)
        at += rng.uniform(200, 620)
    return {"parallel_to": pair, "members": [{"at": taper.text(centre)} for centre in centres]}


def _floor(rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float]) -> dict[str, Any]:
    floor: dict[str, Any] = {}
    if rng.random() < 0.8:
        floor["framing"] = _joists(rng, taper, corners, lengths)
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
    openings = []
    for number in range(rng.choice([0, 1, 1, 2, 3])):
        openings.append(_on_floor(rng, taper, corners, lengths, number))
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
    rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float], number: int
) -> dict[str, Any]:
    """A tub, tray, cabinet, column, drain, flange or pipe, mostly within the room."""
    kind = rng.choice(["tub", "tray", "cabinet", "column", "drain", "flange", "pipe", "other"])
    name = f"{kind} {number + 1}"
    if kind in ("drain", "flange", "pipe"):
        return _round_on_floor(rng, taper, corners, lengths, name, kind)
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
        if room.intersection(placed).area > 0.9 * placed.area and placed.area < 0.7 * room.area:
            if kind == "other":
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
    return _round_on_floor(rng, taper, corners, lengths, name, "pipe")


def _round_on_floor(
    rng: random.Random, taper: Taper, corners: Corners, lengths: dict[str, float], name: str, kind: str
) -> dict[str, Any]:
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


# --- counting ---------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one job.

    Attributes:
        kind: `planned`, `refused` (a message for the setter), `objected` (our verifier's) or `crashed`.
        text: The message; empty where planned.
        codes: Codes of the plan's findings, each once.
        stopped: Whether a finding says that work must not start.
        seconds: Time that reading and planning took.
    """

    kind: str
    text: str
    codes: frozenset[str]
    stopped: bool
    seconds: float


def document(seed: int, *, with_tile: bool = False) -> str:
    """A random job document, with tile on its surfaces where asked."""
    return tiled(random_job(seed), seed) if with_tile else random_job(seed)


def outcome(seed: int, *, effort: int = 0, with_tile: bool = False) -> Outcome:
    """Plan one random job."""
    start = time.perf_counter()
    kind, text, codes, stopped = "planned", "", frozenset[str](), False
    try:
        result = plan_job(read_job_text(document(seed, with_tile=with_tile)), effort=effort)
        codes = frozenset(finding.code for finding in result.plan.findings)
        stopped = any(finding.severity is Severity.STOP for finding in result.plan.findings)
    except JobError as error:
        kind, text = "refused", str(error)
    except PlanRefusedError as error:
        kind, text = "objected", "\n".join(error.objections)
    except Exception:
        kind, text = "crashed", traceback.format_exc(limit=-4)
    return Outcome(kind=kind, text=text, codes=codes, stopped=stopped, seconds=time.perf_counter() - start)


def main() -> int:
    """Plan the jobs and print the counts."""
    parser = argparse.ArgumentParser(description="Plan random jobs and count what becomes of them.")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--effort", type=int, default=0, choices=range(4))
    parser.add_argument("--tiled", action="store_true", help="tile some of the surfaces too")
    parser.add_argument("--show", action="store_true", help="print the documents instead of planning them")
    asked = parser.parse_args()
    seeds = range(asked.seed, asked.seed + asked.count)
    if asked.show:
        print("---\n".join(document(seed, with_tile=asked.tiled) for seed in seeds), end="")
        return 0
    outcomes = {}
    for seed in seeds:
        found = outcomes[seed] = outcome(seed, effort=asked.effort, with_tile=asked.tiled)
        if found.text:
            print(f"seed {seed} {found.kind}:\n  " + "\n  ".join(found.text.splitlines()), flush=True)
    _report(list(outcomes.values()))
    return int(any(found.kind in ("objected", "crashed") for found in outcomes.values()))


def _report(outcomes: list[Outcome]) -> None:
    kinds = Counter(found.kind for found in outcomes)
    planned = [found for found in outcomes if found.kind == "planned"]
    codes = Counter(code for found in planned for code in found.codes)
    print(f"jobs                          {len(outcomes)}")
    print(f"planned and verified          {kinds['planned']}")
    print(f"  with a finding that stops   {sum(found.stopped for found in planned)}")
    print(f"  with members to add         {codes['BRD-101']} ({codes['BRD-101'] / max(1, len(planned)):.0%})")
    print(f"refused with a message        {kinds['refused']}")
    print(f"plan refused by verification  {kinds['objected']}")
    print(f"crashed                       {kinds['crashed']}")
    print(f"findings by code, jobs        {', '.join(f'{code} {n}' for code, n in sorted(codes.items()))}")
    times = [found.seconds for found in outcomes]
    print(f"seconds a job                 median {median(times):.2f}, longest {max(times):.2f}")


if __name__ == "__main__":
    sys.exit(main())
