"""Mortar, tape and sealant of small jobs worked by hand."""

import datetime

import pytest

from firstcourse.boards import bed
from firstcourse.plan import (
    Board,
    Opening,
    OpeningKind,
    Piece,
    Ring,
    Seam,
    Side,
    SideKind,
    Stock,
    Surface,
    SurfaceKind,
)
from firstcourse.rules import load_rules
from firstcourse.units import TICKS_PER_FOOT, Tape, inches
from firstcourse.values import measure
from said import worked

RULES = load_rules(datetime.date(2026, 1, 1))
STOCK = (Stock(id="3x5", size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement"),)


def box(left: float, lower: float, right: float, upper: float) -> Ring:
    a, b, c, d = (inches(value) for value in (left, lower, right, upper))
    return ((a, b), (c, b), (c, d), (a, d))


def wall(
    left: str, right: str, *, lower: float, upper: float, length: float = 60, foot: SideKind = SideKind.FOOT
) -> Surface:
    outline = box(0, lower, length, upper)
    perimeter = SideKind.PERIMETER
    return Surface(
        id=f"bath/wall/{left}-{right}",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=outline,
        sides=(
            Side(kind=foot, meets="bath/floor"),
            Side(kind=perimeter, meets=f"bath/corner/{right}"),
            Side(kind=perimeter, meets="bath/ceiling"),
            Side(kind=perimeter, meets=f"bath/corner/{left}"),
        ),
        corners=(left, right),
        boards=(Board(id=f"bath/wall/{left}-{right}#1", piece="P1", outline=outline),),
    )


def floor(*, fixed: bool = False) -> Surface:
    outline = box(0, 0, 120, 120)
    return Surface(
        id="bath/floor",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=outline,
        sides=tuple(Side(kind=SideKind.PERIMETER) for _ in range(4)),
        boards=(Board(id="bath/floor#1", piece="P1", outline=outline, fixed=fixed),),
    )


def ceiling() -> Surface:
    return floor().model_copy(update={"id": "bath/ceiling", "kind": SurfaceKind.CEILING})


PIECES = (Piece(id="P1", board="x", stock="3x5", blank=(inches(36), inches(60)), outline=box(0, 0, 36, 60)),)


def test_mortar_under_a_floor() -> None:
    # 100 sq ft, notch 1/4 x 1/4 x 1/4 at 60 degrees: 0.10825 in; 1600 kg/m3 with a fifth of water.
    need = bed((floor(),), PIECES, STOCK, RULES)
    # The thickness is kept to a tick, 1/16256 in.
    expected = 100 * 0.10825318 / 12 * 0.028316846592 * 1600 * 0.8
    assert need.mortar_kg == pytest.approx(expected, rel=2e-4)
    assert need.mortar_working.result == measure(need.mortar_kg, "kg")


def test_no_mortar_under_boards_already_down_nor_behind_walls() -> None:
    surfaces = (floor(fixed=True), wall("A", "B", lower=0, upper=96))
    assert bed(surfaces, PIECES, STOCK, RULES).mortar_kg == 0


def test_seams_are_filled_and_taped() -> None:
    seam = Seam(line=((inches(30), 0), (inches(30), inches(96))), width=inches(0.125))
    bare = seam.model_copy(update={"tape": False})
    surface = wall("A", "B", lower=0, upper=96).model_copy(update={"seams": (seam, bare)})
    need = bed((surface,), PIECES, STOCK, RULES)
    assert need.tape == 8 * TICKS_PER_FOOT
    assert need.mortar_kg == pytest.approx(96 * 0.125 * 0.5 * 0.0254**3 * 1600 * 0.8)


def test_corners_are_taped_over_the_height_that_both_walls_are_boarded() -> None:
    surfaces = (
        wall("A", "B", lower=0, upper=96),
        wall("B", "C", lower=20, upper=80),
        wall("D", "A", lower=0, upper=96),
    )
    assert bed(surfaces, PIECES, STOCK, RULES).tape == inches(60) + inches(96)


def test_walls_of_other_rooms_meet_in_no_corner() -> None:
    other = wall("B", "C", lower=0, upper=96).model_copy(update={"room": "ensuite"})
    assert bed((wall("A", "B", lower=0, upper=96), other), PIECES, STOCK, RULES).tape == 0


def test_a_boarded_ceiling_is_taped_to_the_walls() -> None:
    surfaces = (wall("A", "B", lower=0, upper=96), ceiling())
    assert bed(surfaces, PIECES, STOCK, RULES).tape == inches(60)


def test_sealant_at_the_foot() -> None:
    # 5 ft of 1/4 x 1/4 in.
    need = bed((wall("A", "B", lower=0, upper=96),), PIECES, STOCK, RULES)
    assert need.sealant_ml == pytest.approx(60 * 0.25 * 0.25 * 16.387064)


def test_a_door_needs_no_sealant_and_a_tub_does() -> None:
    door = Opening(id="door", kind=OpeningKind.DOOR, outline=box(10, 0, 40, 80))
    surface = wall("A", "B", lower=0, upper=96).model_copy(update={"openings": (door,)})
    need = bed((surface,), PIECES, STOCK, RULES)
    assert need.sealant_ml == pytest.approx(30 * 0.25 * 0.25 * 16.387064)
    tub = Opening(id="tub", kind=OpeningKind.TUB, outline=box(0, 0, 60, 30))
    need = bed((floor().model_copy(update={"openings": (tub,)}),), PIECES, STOCK, RULES)
    assert need.sealant_ml == pytest.approx(90 * 0.25 * 0.25 * 16.387064)


def test_metric_workings_are_metric() -> None:
    need = bed((floor(), wall("A", "B", lower=0, upper=96)), PIECES, STOCK, RULES)
    mortar, tape = (worked(one, Tape.MM) for one in (need.mortar_working, need.tape_working))
    assert (mortar.unit, mortar.values["area"], tape.unit) == ("kg", "9.29 m²", "m")
