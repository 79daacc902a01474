"""Make the gallery of patterns and its pictures: `.venv/bin/python docs/gallery.py`.

Small rooms, all invented, each planned like any other job; the page tells what the plan chose and why.
"""

import datetime
import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from pathlib import Path
from typing import Any

from firstcourse.drawings import draw_fall, draw_tiling, to_svg
from firstcourse.job import Job
from firstcourse.papers.fall_pages import level_place
from firstcourse.papers.mark_words import line_words
from firstcourse.papers.start_reasons import start_reasons
from firstcourse.plan import Fall, Plan, Surface
from firstcourse.steps import plan_job
from firstcourse.units import Tape, format_length, inches, mm
from firstcourse.words import speaker_for

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "gallery.md"
FOLDER = ROOT / "docs" / "pictures"
_HEAD = """# Gallery: eleven rooms, every pattern

Made by `.venv/bin/python docs/gallery.py`; a test holds this page and its pictures against the plans. All rooms
are invented. Each was planned from its readings alone: nobody told the tool where to start.

Hatched tiles are cut, and letters name them as the papers do. Mosaic is drawn as faint chips within the outlines
of its sheets; its cut chips are not hatched. Heavy short dashes are soft joints, long dashes with dots the lines
to snap. Running figures count from the left end and from the foot.
"""

XY = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One room of the gallery.

    Attributes:
        name: Short name; its picture is called after it.
        title: What is shown.
        why: What makes it worth showing.
        corners: Where the corners lie, clockwise seen from above, A in the upper left, down is plus; in inches on
            an inch tape, else in millimetres.
        tiles: Tiles as the job document lists them.
        tiling: How the surface is tiled.
        wall: The wall that is shown, as the job document has it; the floor where none is given.
        openings: Openings of the floor.
        shower: A tiled shower of the floor, as the job document has it; then its floor is shown.
        repeats: Patterns of one's own.
        tape: In which the room was taped.
    """

    name: str
    title: str
    why: str
    corners: dict[str, XY]
    tiles: list[dict[str, Any]]
    tiling: dict[str, Any]
    wall: dict[str, Any] | None = None
    openings: tuple[dict[str, Any], ...] = ()
    shower: dict[str, Any] | None = None
    repeats: tuple[dict[str, Any], ...] = ()
    tape: Tape = Tape.INCH

    def job(self) -> Job:
        """Its job document."""
        surfaces: dict[str, Any] = {"floor": {"tiling": self.tiling, "openings": list(self.openings)}}
        if self.shower is not None:
            surfaces = {"floor": {"shower": {**self.shower, "tiling": self.tiling}}}
        if self.wall is not None:
            surfaces = {"walls": [{**self.wall, "tiling": self.tiling}]}
        room = {"name": self.name, "corners": list(self.corners), "height": "8' 0\"", **self._taped(), **surfaces}
        return Job.model_validate(
            {
                "name": self.name,
                "date": datetime.date(2026, 11, 25),
                "tape": self.tape,
                "tiles": self.tiles,
                "repeats": list(self.repeats),
                "rooms": [room],
            }
        )

    def _taped(self) -> dict[str, dict[str, str]]:
        """Every distance between corners, as the tape reads it."""
        unit = inches if self.tape is Tape.INCH else mm
        names = list(self.corners)
        sides = list(zip(names, names[1:] + names[:1], strict=True))
        apart = [
            pair for pair in combinations(names, 2) if pair not in sides and tuple(reversed(pair)) not in sides
        ]
        return {
            what: {
                f"{a}-{b}": format_length(unit(math.dist(self.corners[a], self.corners[b])), self.tape)
                for a, b in pairs
            }
            for what, pairs in (("sides", sides), ("diagonals", apart))
        }


def _box(width: float, depth: float, narrower: float = 0.0) -> dict[str, XY]:
    """Four corners; the side opposite the first is shorter by what is given."""
    return {"A": (0, 0), "B": (width, 0), "C": (width - narrower, depth), "D": (0, depth)}


ENTRIES = (
    Entry(
        name="stacked",
        title="Stacked squares in a guest bath",
        why="With a joint in the middle both side walls get cuts of about 5-1/2 in, with a tile in the middle of "
        "about 11-1/2 in and one tile fewer in each course.",
        corners=_box(59.6, 73.0),
        tiles=[
            {"id": "12 x 12", "size": ["11 13/16 in", "11 13/16 in"], "thickness": "3/8 in", "joint": "3/16 in"}
        ],
        tiling={"tile": "12 x 12", "pattern": "stacked"},
    ),
    Entry(
        name="running-half",
        title="Running bond by halves with a feature band and a niche",
        why="Courses open at a course joint to take the band and go on above it.",
        corners=_box(62.0, 60.0),
        tiles=[
            {"id": "3 x 6", "size": ["5 15/16 in", "2 15/16 in"], "thickness": "5/16 in", "joint": "1/8 in"},
            {"id": "band", "size": ["1 15/16 in", "1 15/16 in"], "thickness": "5/16 in", "joint": "1/8 in"},
        ],
        tiling={
            "tile": "3 x 6",
            "pattern": "running",
            "offset": "1/2",
            "bands": [{"bottom": "68 in", "tile": "band", "courses": 2}],
        },
        wall={
            "wall": "A-B",
            "boards": {"top": "84 in"},
            "framing": {"spacing": "16 in", "first": "15 1/4 in"},
            "openings": [
                {
                    "id": "niche",
                    "kind": "niche",
                    "left": "24 in",
                    "bottom": "42 in",
                    "width": "14 in",
                    "height": "21 in",
                },
                {"id": "valve", "kind": "valve", "left": "52 in", "bottom": "40 in", "diameter": "5 in"},
            ],
        },
    ),
    Entry(
        name="running-third",
        title="Long tiles offset by a third, in a room that tapers",
        why="The floor narrows by 3/4 in, so its cuts along one wall taper. Long tiles bow most in the middle, so "
        "they are offset by a third.",
        corners=_box(66.0, 92.0, narrower=0.75),
        tiles=[{"id": "8 x 24", "size": ["23 5/8 in", "7 7/8 in"], "thickness": "3/8 in", "joint": "3/16 in"}],
        tiling={"tile": "8 x 24", "pattern": "running", "offset": "1/3", "seen_first": ["C-D"]},
        openings=(
            {
                "id": "closet flange",
                "kind": "flange",
                "side": "D-A",
                "left": "40 in",
                "out": "12 1/2 in",
                "diameter": "4 1/2 in",
            },
        ),
    ),
    Entry(
        name="diagonal",
        title="Diagonal squares before a tub",
        why="Every edge cuts the tiles askew; the start makes opposite sides alike.",
        corners=_box(60.0, 84.0),
        tiles=[{"id": "8 x 8", "size": ["7 7/8 in", "7 7/8 in"], "thickness": "3/8 in", "joint": "3/16 in"}],
        tiling={"tile": "8 x 8", "pattern": "diagonal"},
        openings=(
            {
                "id": "tub",
                "kind": "tub",
                "side": "A-B",
                "left": "0 in",
                "out": "0 in",
                "width": "60 in",
                "depth": "30 in",
            },
        ),
    ),
    Entry(
        name="herringbone",
        title="Herringbone on an L-shaped floor",
        why="The pattern has no joint that runs through; the lines to snap run through the points of its stairs.",
        corners={"A": (0, 0), "B": (78, 0), "C": (78, 42), "D": (40, 42), "E": (40, 80), "F": (0, 80)},
        tiles=[{"id": "3 x 12", "size": ["11 15/16 in", "2 15/16 in"], "thickness": "3/8 in", "joint": "1/8 in"}],
        tiling={"tile": "3 x 12", "pattern": "herringbone"},
    ),
    Entry(
        name="double-herringbone",
        title="Double herringbone turned by 45 degrees",
        why="Pairs of tiles whose points run along the room.",
        corners=_box(54.0, 60.0),
        tiles=[{"id": "3 x 12", "size": ["11 15/16 in", "2 15/16 in"], "thickness": "3/8 in", "joint": "1/8 in"}],
        tiling={"tile": "3 x 12", "pattern": "double_herringbone", "angle": 45},
    ),
    Entry(
        name="basket-weave",
        title="Basket weave in a powder room",
        why="Two pieces and the joint between them are as wide as one is long, or no even joint is possible.",
        corners=_box(42.0, 54.0, narrower=0.25),
        tiles=[{"id": "2 x 4", "size": ["4 1/8 in", "2 in"], "thickness": "5/16 in", "joint": "1/8 in"}],
        tiling={"tile": "2 x 4", "pattern": "basket_weave"},
    ),
    Entry(
        name="hexagon",
        title="Hexagon mosaic, taped in millimetres",
        why="Drawn chip by chip, though it is bought on sheets.",
        corners=_box(1050.0, 1400.0, narrower=8.0),
        tiles=[
            {
                "id": "hexagon 50",
                "size": ["50 mm", "57.7 mm"],
                "thickness": "6 mm",
                "shape": "hexagon",
                "joint": "3 mm",
                "sheet": [6, 6],
            }
        ],
        tiling={"tile": "hexagon 50", "pattern": "hexagon"},
        tape=Tape.MM,
    ),
    Entry(
        name="repeat",
        title="A repeat of one's own: a small square at each corner of a large one",
        why="Given as two pieces, two steps and a shift; it is checked that they fill the floor with even joints.",
        corners=_box(58.0, 64.0),
        tiles=[
            {"id": "8 x 8", "size": ["8 1/8 in", "8 1/8 in"], "thickness": "3/8 in", "joint": "1/8 in"},
            {"id": "4 x 4", "size": ["4 in", "4 in"], "thickness": "3/8 in", "joint": "1/8 in"},
        ],
        repeats=(
            {
                "id": "hopscotch",
                "across": "20 5/8 in",
                "up": "4 1/8 in",
                "shift": "8 1/4 in",
                "pieces": [
                    {"tile": "8 x 8", "at": ["0 in", "0 in"]},
                    {"tile": "4 x 4", "at": ["8 1/4 in", "0 in"]},
                ],
            },
        ),
        tiling={"repeat": "hopscotch", "pattern": "repeat"},
    ),
    Entry(
        name="column",
        title="Large tiles in an L-shaped room with a column, taped in millimetres",
        why="Six walls and four faces of a column: what a start gains at one it may lose at another.",
        corners={
            "A": (0, 0),
            "B": (2900, 0),
            "C": (2894, 1650),
            "D": (1700, 1644),
            "E": (1704, 2600),
            "F": (0, 2606),
        },
        tiles=[
            {
                "id": "300 x 600",
                "size": ["598 mm", "298 mm"],
                "thickness": "10 mm",
                "edges": "rectified",
                "joint": "3 mm",
            }
        ],
        tiling={"tile": "300 x 600", "pattern": "running", "offset": "1/3", "angle": 90},
        openings=(
            {
                "id": "column",
                "kind": "column",
                "side": "A-B",
                "left": "1150 mm",
                "out": "900 mm",
                "width": "250 mm",
                "depth": "250 mm",
            },
        ),
        tape=Tape.MM,
    ),
    Entry(
        name="shower",
        title="A tapered shower with its drain off the centre",
        why="A level perimeter and a plane from every side to the drain: the shorter the way, the steeper the "
        "plane. Chips are cut along the valleys where they are too large to bend over them.",
        corners=_box(96.0, 66.0),
        tiles=[
            {
                "id": "mosaic 2 x 2",
                "size": ["2 in", "2 in"],
                "thickness": "1/4 in",
                "kind": "porcelain",
                "joint": "1/8 in",
                "sheet": [6, 6],
            }
        ],
        tiling={"tile": "mosaic 2 x 2", "pattern": "stacked"},
        shower={
            "side": "A-B",
            "points": [["0 in", "0 in"], ["50 in", "0 in"], ["42 in", "38 in"], ["0 in", "34 in"]],
            "drain": {"left": "16 in", "out": "14 in"},
            "kerb": {"height": "4 1/2 in", "width": "5 in", "entry": "24 in"},
            "membrane": "sheet",
        },
    ),
)


def planned(entry: Entry) -> tuple[Plan, Surface]:
    """An entry's plan and the surface that is shown."""
    plan = plan_job(entry.job(), effort=0).plan
    shown = [surface for surface in plan.surfaces if surface.tiled]
    return plan, next((surface for surface in shown if surface.fall is not None), shown[0])


def pictures(entry: Entry, plan: Plan, surface: Surface) -> dict[str, str]:
    """The pictures of a room by their file names: its tile, and its falls where it has any."""
    found = {f"gallery-{entry.name}.svg": to_svg(draw_tiling(plan, surface))}
    if surface.fall is not None:
        found[f"gallery-{entry.name}-falls.svg"] = to_svg(draw_fall(plan, surface, surface.fall))
    return found


def section(entry: Entry, plan: Plan, surface: Surface) -> str:
    """What the page says of one room."""
    return "\n".join(_section(entry, plan, surface))


def _section(entry: Entry, plan: Plan, surface: Surface) -> Iterator[str]:
    tape = plan.job.tape
    main = surface.tiled[0]
    whole = sum(tile.whole for tile in surface.tiles)
    yield f"## {entry.title}\n"
    yield f"{entry.why}\n"
    yield f"![{entry.title}](pictures/gallery-{entry.name}.svg)\n"
    joint = format_length(main.joint, tape)
    tiles = ", ".join(dict.fromkeys(name for area in surface.tiled for name in area.tiles))
    yield f"Tile {tiles}, joint {joint}; {whole} whole tiles, {len(surface.tiles) - whole} cut pieces.\n"
    yield "| start | smallest cut | cut tiles | why |"
    yield "|---|---|---|---|"
    for number, start in enumerate(main.starts):
        name = "used" if number == 0 else f"instead {number}"
        smallest = format_length(start.smallest_cut, tape) if start.cut_tiles else "no cut"
        reasons = start_reasons(speaker_for(plan), start, main.starts[0])
        yield f"| {name} | {smallest} | {start.cut_tiles} | {reasons} |"
    yield ""
    for words in line_words(surface, speaker_for(plan)):
        yield f"- {words}"
    for finding in speaker_for(plan).findings(plan.findings):
        if finding.code in ("TIL-104", "TIL-121", "TIL-122"):
            yield f"- {finding.code}: {finding.message} {finding.measured}; limit {finding.limit}."
    yield ""
    if surface.fall is not None:
        yield from _falls(entry, plan, surface, surface.fall)


def _falls(entry: Entry, plan: Plan, surface: Surface, fall: Fall) -> Iterator[str]:
    tape = plan.job.tape
    yield f"![{entry.title}: falls](pictures/gallery-{entry.name}-falls.svg)\n"
    yield "Arrows point down each plane and bear its fall; broken lines are valleys. Heights are over the drain.\n"
    yield "| point | where | height |"
    yield "|---|---|---|"
    speaker = speaker_for(plan)
    for number, point in enumerate(fall.levels, start=1):
        yield f"| {number} | {level_place(point, surface, speaker)} | {format_length(point.height, tape)} |"
    yield ""
    valleys = ", ".join(format_length(round(math.dist(a, b)), tape) for a, b in fall.valleys)
    yield f"- Valleys from the drain: {valleys}."
    yield (
        f"- Least fall on the water's way {fall.least_fall:.2%}, greatest of a plane {fall.greatest_fall:.2%}; "
        f"bed {format_length(fall.bed, tape)} at least, {fall.bed_litres:.1f} l."
    )
    if fall.largest_tile is not None:
        yield f"- Largest tile that follows the planes uncut: {format_length(fall.largest_tile, tape)}."
    yield ""


def page(sections: list[str]) -> str:
    """The whole page."""
    return "\n".join((_HEAD, *sections)).rstrip("\n") + "\n"


def main() -> None:
    FOLDER.mkdir(exist_ok=True)
    sections = []
    for entry in ENTRIES:
        plan, surface = planned(entry)
        for name, picture in pictures(entry, plan, surface).items():
            (FOLDER / name).write_text(picture, encoding="utf-8")
        sections.append(section(entry, plan, surface))
    PAGE.write_text(page(sections), encoding="utf-8")


if __name__ == "__main__":
    main()
