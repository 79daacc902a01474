"""Story poles: every course, opening and end of a run, from the stick's end and in order."""

import datetime
from collections.abc import Sequence

from firstcourse.geometry.polygon import rectangle
from firstcourse.plan import (
    Mark,
    Opening,
    OpeningKind,
    Side,
    SideKind,
    StartPoint,
    Surface,
    SurfaceKind,
    Tile,
    TiledArea,
)
from firstcourse.rules import load_rules
from firstcourse.tiles.story_pole import pole_marks
from firstcourse.units import mm

RULES = load_rules(datetime.date(2026, 11, 25))
WALL = "bath/wall/A-B"


def _tile(
    number: int, left: float, low: float, right: float, high: float, *, laid_low: float | None = None
) -> Tile:
    outline = rectangle(mm(left), mm(low), mm(right), mm(high))
    laid = () if laid_low is None else rectangle(mm(left), mm(laid_low), mm(right), mm(high))
    return Tile(id=f"t{number}", outline=outline, whole=laid_low is None, stock="t", laid=laid)


def _wall(*openings: Opening, name: str = WALL, foot: float = 383.0) -> Surface:
    """Three stacked courses of two tiles 100 high over a tub rim; the lowest is cut."""
    tiles = [
        _tile(10 * column + row, 3 + 303 * column, low, 303 + 303 * column, high, laid_low=laid)
        for row, (low, high, laid) in enumerate(((foot, 443.0, 343.0), (446.0, 546.0, None), (549.0, 649.0, None)))
        for column in (0, 1)
    ]
    kinds = (SideKind.FOOT, SideKind.PERIMETER, SideKind.FREE, SideKind.PERIMETER)
    area = TiledArea(
        pattern="stacked",
        tiles=("t",),
        area=(),
        joint=mm(3),
        step_a=(303.0, 0.0),
        step_b=(0.0, 103.0),
        starts=(StartPoint(origin=(mm(3), mm(446)), smallest_cut=mm(60), cut_tiles=2),),
    )
    level, plumb = ((0, mm(446)), (mm(609), mm(446))), ((mm(306), mm(380)), (mm(306), mm(649)))
    return Surface(
        id=name,
        room="bath",
        kind=SurfaceKind.WALL,
        outline=rectangle(0, mm(380), mm(609), mm(649)),
        sides=tuple(
            Side(kind=kind, meets=meets)
            for kind, meets in zip(
                kinds, ("bath/fixture/tub", "bath/corner/B", "stops_here", "bath/corner/A"), strict=True
            )
        ),
        corners=("A", "B"),
        openings=openings,
        tiles=tuple(tiles),
        tiled=(area,),
        marks=(
            Mark(kind="first_course", line=level, from_=f"{name}/side/0", distance=mm(66), to=f"{name}/row/2"),
            Mark(kind="plumb", line=plumb, from_=f"{name}/side/3", distance=mm(306), to="t11/left"),
        ),
    )


NICHE = Opening(id="niche", kind=OpeningKind.NICHE, outline=rectangle(mm(100), mm(460), mm(200), mm(540)))
VALVE = Opening(id="valve", kind=OpeningKind.VALVE, centre=(mm(450), mm(600)), diameter=mm(60))


def _poles(*surfaces: Surface) -> dict[str, dict[str, list[Mark]]]:
    found: dict[str, dict[str, list[Mark]]] = {}
    for name, marks in pole_marks(surfaces, {}, RULES).items():
        for mark in marks:
            found.setdefault(mark.from_, {}).setdefault(name, []).append(mark)
    return found


def _told(marks: Sequence[Mark]) -> list[tuple[int, str]]:
    return [(mark.distance, mark.to) for mark in marks]


def test_a_pole_up_a_wall_has_its_courses_openings_level_line_and_ends() -> None:
    up = _poles(_wall(NICHE, VALVE))["pole/1"][WALL]
    assert _told(up) == [
        (0, f"{WALL}/line/plumb/start"),
        (mm(3), "t0/low"),
        (mm(66), "t1/low"),
        (mm(66), f"{WALL}/line/level"),
        (mm(80), f"{WALL}/opening/niche/low"),
        (mm(160), f"{WALL}/opening/niche/high"),
        (mm(169), "t2/low"),
        (mm(220), f"{WALL}/opening/valve/centre"),
        (mm(269), "t2/high"),
        (mm(269), f"{WALL}/line/plumb/end"),
    ]
    assert [mark.cut for mark in up if mark.to.endswith("/low") and mark.to.startswith("t")] == [
        True,
        False,
        False,
    ]
    assert all(mark.line == ((0, mm(380) + mark.distance), (mm(609), mm(380) + mark.distance)) for mark in up)


def test_a_pole_along_a_wall_follows_the_first_whole_course() -> None:
    along = _poles(_wall(NICHE))["pole/2"][WALL]
    assert [mark.to for mark in along] == [
        f"{WALL}/line/level/start",
        "t1/left",
        f"{WALL}/opening/niche/left",
        f"{WALL}/opening/niche/right",
        "t11/left",
        f"{WALL}/line/plumb",
        "t11/right",
        f"{WALL}/line/level/end",
    ]


def test_walls_with_the_same_whole_courses_share_a_stick_though_their_cuts_differ() -> None:
    other = "bath/wall/B-C"
    poles = _poles(_wall(), _wall(name=other, foot=385.0))
    assert list(poles) == ["pole/1", "pole/2"] and list(poles["pole/1"]) == [WALL, other]
    # Both are held to their level line at one mark of the stick.
    marks = [mark for mine in poles["pole/1"].values() for mark in mine]
    held = {mark.distance for mark in marks if mark.to.endswith("/line/level")}
    assert held == {mm(66)}
    cuts = [mark.distance for mark in marks if mark.to == "t0/low"]
    assert cuts == [mm(3), mm(5)]


def test_courses_of_another_tile_are_told_and_a_bare_surface_has_no_pole() -> None:
    wall = _wall()
    tiles = tuple(
        tile.model_copy(update={"stock": "band"}) if tile.outline[0][1] == mm(549) else tile for tile in wall.tiles
    )
    up = _poles(wall.model_copy(update={"tiles": tiles}))["pole/1"][WALL]
    assert {mark.to: mark.stock for mark in up if mark.stock} == {"t0/low": "t", "t1/low": "t", "t2/low": "band"}
    assert pole_marks([wall.model_copy(update={"tiles": (), "marks": ()})], {}, RULES) == {}
