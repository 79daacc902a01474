"""Story poles: every course, opening and end of a run, from the foot and in order."""

from firstcourse.geometry.polygon import rectangle
from firstcourse.plan import (
    Opening,
    OpeningKind,
    Side,
    SideKind,
    SnapLine,
    StartPoint,
    Surface,
    SurfaceKind,
    Tile,
    TiledArea,
)
from firstcourse.tiling.story_pole import story_poles
from firstcourse.units import mm


def _tile(
    number: int, left: float, low: float, right: float, high: float, *, laid_low: float | None = None
) -> Tile:
    outline = rectangle(mm(left), mm(low), mm(right), mm(high))
    laid = () if laid_low is None else rectangle(mm(left), mm(laid_low), mm(right), mm(high))
    return Tile(id=f"t{number}", outline=outline, whole=laid_low is None, stock="t", laid=laid)


def _wall(*openings: Opening) -> Surface:
    """Three stacked courses of two tiles 100 high over a tub rim; the lowest is cut to 60."""
    tiles = [
        _tile(10 * column + row, 3 + 303 * column, low, 303 + 303 * column, low + high, laid_low=laid)
        for row, (low, high, laid) in enumerate(((383.0, 60.0, 343.0), (446.0, 100.0, None), (549.0, 100.0, None)))
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
        lines=(
            SnapLine(line=((0, mm(446)), (mm(609), mm(446))), words="level"),
            SnapLine(line=((mm(306), mm(380)), (mm(306), mm(649))), words="plumb"),
        ),
    )
    return Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        title="bath: wall A-B",
        outline=rectangle(0, mm(380), mm(609), mm(649)),
        sides=tuple(
            Side(kind=kind, label=label)
            for kind, label in zip(kinds, ("tub rim", "corner B", "stops here", "corner A"), strict=True)
        ),
        corners=("A", "B"),
        openings=openings,
        tiles=tuple(tiles),
        tiled=(area,),
    )


NICHE = Opening(id="niche", kind=OpeningKind.NICHE, outline=rectangle(mm(100), mm(460), mm(200), mm(540)))
VALVE = Opening(id="valve", kind=OpeningKind.VALVE, centre=(mm(450), mm(600)), diameter=mm(60))


def test_a_pole_up_a_wall_has_its_courses_openings_level_line_and_ends() -> None:
    up, _ = story_poles(_wall(NICHE, VALVE))
    assert up.title == "bath: wall A-B, up" and up.foot == "tub rim" and up.control == mm(66)
    assert [(mark.at, mark.name) for mark in up.marks] == [
        (0, "tub rim"),
        (mm(3), "course 1, cut"),
        (mm(66), "level line"),
        (mm(66), "course 2"),
        (mm(80), "niche, lower edge"),
        (mm(160), "niche, upper edge"),
        (mm(169), "course 3"),
        (mm(220), "valve, centre"),
        (mm(269), "end of course 3"),
        (mm(269), "top of the boards"),
    ]
    assert up.length == mm(269)


def test_a_pole_along_a_wall_follows_the_first_whole_course() -> None:
    _, along = story_poles(_wall(NICHE))
    assert along.control == mm(306)
    assert [mark.name for mark in along.marks] == [
        "left end",
        "tile 1",
        "niche, left edge",
        "niche, right edge",
        "plumb line",
        "tile 2",
        "end of tile 2",
        "right end",
    ]


def test_courses_of_another_tile_are_named_and_a_bare_surface_has_no_pole() -> None:
    wall = _wall()
    tiles = tuple(
        tile.model_copy(update={"stock": "band"}) if tile.outline[0][1] == mm(549) else tile for tile in wall.tiles
    )
    up, _ = story_poles(wall.model_copy(update={"tiles": tiles}))
    names = [mark.name for mark in up.marks]
    assert "course 3, band" in names and "course 1, t, cut" in names
    assert story_poles(wall.model_copy(update={"tiles": ()})) == ()
