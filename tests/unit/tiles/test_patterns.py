"""The repeats: known modules, and what cannot be made said in words."""

import math
from fractions import Fraction

import pytest

from firstcourse.errors import InputValueError
from firstcourse.job.tile import RepeatPiece, TileRepeat
from firstcourse.plan import TileStock
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.units import mm


def tile(width: float, height: float, name: str = "t", hexagon: bool = False) -> TileStock:
    return TileStock(
        id=name,
        size=(mm(width), mm(height)),
        thickness=mm(8),
        kind="ceramic",
        shape="hexagon" if hexagon else "rectangle",
        joint=mm(3),
    )


def test_a_stacked_tile_steps_by_tile_and_joint() -> None:
    cell = repeat_cell("stacked", [tile(300, 200)], 3)
    assert (cell.step_a, cell.step_b) == ((303, 0), (0, 203))
    assert cell.pieces[0].ring == ((0, 0), (300, 0), (300, 200), (0, 200))


@pytest.mark.parametrize(("offset", "courses"), [("1/2", 2), ("1/3", 3), ("1/4", 4), ("2/5", 5)])
def test_courses_stand_above_each_other_after_the_offset_s_denominator(offset: str, courses: int) -> None:
    cell = repeat_cell("running", [tile(300, 100)], 3, offset=Fraction(offset))
    shifts = [k * cell.step_b[0] / cell.step_a[0] % 1 for k in range(1, courses + 1)]
    assert min(shifts[-1], 1 - shifts[-1]) == pytest.approx(0, abs=1e-9)
    assert all(0.1 < shift < 0.9 for shift in shifts[:-1])


def test_diagonal_is_stacked_turned_by_half_a_quarter() -> None:
    cell = repeat_cell("diagonal", [tile(100, 100)], 2)
    side = 102 / math.sqrt(2)
    assert cell.step_a == pytest.approx((side, side))
    assert cell.step_b == pytest.approx((-side, side))
    assert min(y for _, y in cell.pieces[0].ring) == pytest.approx(0)


def test_a_quarter_turn_keeps_the_origin_in_the_lower_left_corner() -> None:
    cell = repeat_cell("stacked", [tile(300, 100)], 3, angle=90)
    assert sorted(cell.pieces[0].ring) == [(0, 0), (0, 300), (100, 0), (100, 300)]


def test_points_of_a_herringbone_run_along_the_room_at_45() -> None:
    cell = repeat_cell("herringbone", [tile(200, 97)], 3, angle=45)
    assert cell.step_a == pytest.approx((0, 100 * math.sqrt(2)))
    assert cell.step_b == pytest.approx((203 * math.sqrt(2), 0))


def test_a_basket_weave_of_metric_modules_is_a_chessboard_of_squares() -> None:
    cell = repeat_cell("basket_weave", [tile(197, 97)], 3)
    assert len(cell.pieces) == 4
    assert (cell.step_a, cell.step_b) == ((200, 200), (200, -200))


def test_a_mosaic_is_laid_as_its_chips() -> None:
    sheet = tile(48, 48).model_copy(update={"sheet": (6, 6)})
    assert repeat_cell("stacked", [sheet], 2).step_a == (50, 0)


@pytest.mark.parametrize(
    ("pattern", "size", "words"),
    [
        ("herringbone", (100, 100), "longer than wide"),
        ("double_herringbone", (200, 100), "more than twice as long"),
        ("basket_weave", (200, 100), "no joint would do"),
        ("basket_weave", (210, 100), "a joint of 10 mm would do"),
        ("basket_weave", (120, 100), "at least twice as long"),
        ("hexagon", (100, 100), "is a rectangle"),
        ("repeat", (100, 100), "needs the repeat"),
    ],
)
def test_what_a_tile_cannot_make_is_refused_in_words(pattern: str, size: tuple[float, float], words: str) -> None:
    with pytest.raises(InputValueError, match=words):
        repeat_cell(pattern, [tile(*size)], 3)  # type: ignore[arg-type]


def test_a_negative_joint_and_two_tiles_are_refused() -> None:
    with pytest.raises(InputValueError, match="joint must be 0 or more"):
        repeat_cell("stacked", [tile(100, 100)], -1)
    with pytest.raises(InputValueError, match="made of one tile"):
        repeat_cell("stacked", [tile(100, 100), tile(50, 50)], 3)


def hopscotch(step: float, at: float = 103) -> TileRepeat:
    return TileRepeat(
        id="hopscotch",
        across=mm(step),
        up=mm(100 + 3),
        shift=mm(50),
        pieces=(
            RepeatPiece(tile="large", at=(0, 0)),
            RepeatPiece(tile="small", at=(mm(at), 0)),
        ),
    )


def test_a_repeat_of_the_user_must_fill_the_plane() -> None:
    tiles = [tile(100, 100, "large"), tile(47, 100, "small")]
    cell = repeat_cell("repeat", tiles, 3, repeat=hopscotch(153))
    assert (cell.step_a, cell.step_b) == ((153, 0), (50, 103))
    with pytest.raises(InputValueError, match="every gap must be one joint wide"):
        repeat_cell("repeat", tiles, 3, repeat=hopscotch(160))
    with pytest.raises(InputValueError, match="pieces 1 and 2 come closer"):
        repeat_cell("repeat", tiles, 3, repeat=hopscotch(153, at=90))
    with pytest.raises(InputValueError, match="names tile 'small'"):
        repeat_cell("repeat", tiles[:1], 3, repeat=hopscotch(153))
    with pytest.raises(InputValueError, match="is a hexagon"):
        repeat_cell("repeat", [tiles[0], tile(47, 54.27, "small", hexagon=True)], 3, repeat=hopscotch(153))
