"""Insides of niches, benches and kerbs as surfaces: how large they are, and what each side meets."""

import math

import pytest

from firstcourse.details.footings import level_foot
from firstcourse.details.linings import bench_linings, kerb_linings, niche_linings
from firstcourse.errors import InputValueError
from firstcourse.geometry import area2, sides
from firstcourse.geometry.polygon import Ring, rectangle
from firstcourse.plan import (
    Fall,
    FloodTest,
    LevelPoint,
    Opening,
    OpeningKind,
    Side,
    SideKind,
    Surface,
    SurfaceKind,
)
from firstcourse.tiles.lined import Lining, Rim
from firstcourse.units import mm

WALL = Surface(id="bath/wall/A-B", room="bath", kind=SurfaceKind.WALL, outline=rectangle(0, 0, mm(2000), mm(2400)))


OUTLINE = rectangle(mm(400), mm(1200), mm(760), mm(1500))


def _niche(outline: Ring = OUTLINE) -> dict[str, Lining]:
    niche = Opening(id="niche", kind=OpeningKind.NICHE, outline=outline)
    found = niche_linings(WALL, niche, depth=mm(90), drop=mm(3), on_wall=mm(12), on_back=mm(10), on_returns=mm(11))
    return {lining.name: lining for lining in found}


KERB = "floor/shower/kerb"


def _size(lining: Lining) -> tuple[int, int]:
    us, vs = zip(*lining.surface.outline, strict=True)
    return max(us) - min(us), max(vs) - min(vs)


def test_the_back_keeps_the_place_of_the_niche_above_its_sill():
    back = _niche()["back"]
    assert back.surface.id == "bath/wall/A-B/niche/back"
    assert back.surface.part_of == WALL.id
    assert back.surface.outline[0] == (mm(400), mm(1203))
    assert back.surface.outline[2] == (mm(760), mm(1500))
    assert back.elsewhere == frozenset()


def test_returns_run_from_the_back_s_tile_to_the_face_of_the_wall_s():
    found = _niche()
    deep = mm(90 + 12 - 10)
    assert _size(found["head"]) == (mm(360), deep)
    assert _size(found["sill"]) == (mm(360), round(math.hypot(deep, mm(3))))
    assert _size(found["left"]) == _size(found["right"]) == (deep, mm(300))


def test_the_sides_stand_on_the_sill_which_falls_to_the_front():
    found = _niche()
    left, right = found["left"].surface.outline, found["right"].surface.outline
    assert (left[0][1], left[1][1]) == (mm(1200), mm(1203))
    assert (right[0][1], right[1][1]) == (mm(1203), mm(1200))
    assert found["left"].before == (mm(11), 0, mm(11), 0)


def test_every_change_of_plane_of_a_niche_is_listed_once():
    found = _niche().values()
    meets = [
        round(math.dist(a, b))
        for lining in found
        for index, ((a, b), rim) in enumerate(zip(sides(lining.surface.outline), lining.rims, strict=True))
        if rim.kind is SideKind.PERIMETER and index not in lining.elsewhere
    ]
    # Round the back, and both sides' feet and heads.
    assert len(meets) == 4 + 4
    assert sum(not side.shown for lining in found for side in lining.surface.sides) == 4


@pytest.mark.parametrize(
    "outline",
    [((0, 0), (mm(300), mm(9)), (mm(300), mm(300)), (0, mm(300))), rectangle(0, 0, mm(300), mm(20))],
)
def test_a_niche_that_cannot_be_lined_is_refused(outline: Ring):
    with pytest.raises(InputValueError, match="niche"):
        _niche(outline)


def _bench(left: Rim | None, right: Rim | None) -> dict[str, Lining]:
    feet = (level_foot(mm(900), mm(30)), *[level_foot(mm(400), mm(30))] * 2)
    found = bench_linings(
        ("bath/bench/b", "bath"),
        width=mm(900), depth=mm(400), feet=feet, height=mm(430), drop=mm(9),
        ends=(left, right), back=Rim(meets="bath/wall/A-B", before=mm(10)), on_front=mm(11),
    )  # fmt: skip
    return {lining.name: lining for lining in found}


def test_a_bench_between_walls_has_no_ends():
    found = _bench(Rim(meets="bath/wall/D-A"), Rim(meets="bath/wall/B-C"))
    assert sorted(found) == ["front", "top"]
    assert _size(found["top"]) == (mm(900), round(math.hypot(mm(400), mm(9))) + mm(11))
    assert _size(found["front"]) == (mm(900), mm(400))
    assert [side.meets for side in found["front"].surface.sides] == [
        "own_height",
        "bath/wall/B-C",
        "bath/bench/b/top",
        "bath/wall/D-A",
    ]


def test_free_ends_are_tiled_and_covered_by_the_top():
    found = _bench(None, None)
    assert sorted(found) == ["front", "left end", "right end", "top"]
    assert _size(found["top"])[0] == mm(900 + 2 * 11)
    assert _size(found["left end"]) == _size(found["right end"]) == (mm(400), mm(400))
    assert found["left end"].surface.sides[3].wall == found["right end"].surface.sides[1].wall == "A-B"
    # The upright corners take trim on the front, the upper edges on the top.
    assert sum(side.kind is SideKind.FREE and side.shown for side in found["front"].surface.sides) == 2
    assert not any(side.kind is SideKind.FREE and side.shown for side in found["left end"].surface.sides)


def _shower(met: tuple[str, ...], outline: Ring) -> Surface:
    return Surface(
        id="bath/floor/shower",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=outline,
        sides=tuple(Side(kind=SideKind.PERIMETER, meets=f"bath/{one}") for one in met),
        boarded=False,
    )


def _kerb(floor: Surface) -> dict[str, Lining]:
    found = kerb_linings(floor, width=mm(100), drop=0, height=mm(110), outer=mm(110), on_walls=mm(10))
    return {lining.surface.id.removeprefix(f"{floor.id}/"): lining for lining in found}


def test_a_kerb_between_walls_is_one_straight_run():
    outline = rectangle(0, 0, mm(1500), mm(900))
    found = _kerb(_shower((KERB, "wall/B-C", "wall/A-B", "wall/D-A"), outline))
    assert sorted(found) == ["kerb/inner", "kerb/outer", "kerb/top"]
    assert found["kerb/top"].surface.outline == rectangle(0, 0, mm(1500), mm(100))
    assert found["kerb/top"].before == (0, mm(10), 0, mm(10))
    assert _size(found["kerb/inner"]) == (mm(1500), mm(110))
    assert _size(found["kerb/outer"]) == (mm(1500), mm(110))


def _falling(floor: Surface, *heights: tuple[tuple[float, float], float]) -> Surface:
    fall = Fall(
        layout="single",
        drain=((0, 0), (mm(10), 0)),
        planes=(),
        levels=tuple(LevelPoint(at=(mm(u), mm(v)), height=mm(h), kind="corner") for (u, v), h in heights),
        rise=0,
        least_fall=0.02,
        least_plane_fall=0.02,
        greatest_fall=0.02,
        bed=mm(30),
        bed_litres=1.0,
        membrane="sheet",
        flood_test=FloodTest(hours=24, level=mm(90), litres=100, kg=100),
    )
    return floor.model_copy(update={"fall": fall})


def test_the_inner_face_stands_on_the_floor_where_the_kerb_is_not_where_it_drains():
    met = (KERB, "wall/B-C", "wall/A-B", "wall/D-A")
    flat = _shower(met, rectangle(0, 0, mm(1500), mm(900)))
    # A linear drain along wall A-B: the floor lies 24 mm over it all along the kerb.
    far = _falling(flat, ((0, 0), 24), ((1500, 0), 24), ((1500, 900), 0), ((0, 900), 0))
    assert _size(_kerb(far)["kerb/inner"]) == (mm(1500), mm(86))
    # Along wall D-A: the floor falls along the kerb, from its left end seen from inside.
    beside = _falling(flat, ((0, 0), 0), ((1500, 0), 31), ((1500, 900), 31), ((0, 900), 0))
    inner = _kerb(beside)["kerb/inner"].surface
    assert inner.outline == ((0, mm(31)), (mm(1500), 0), (mm(1500), mm(110)), (0, mm(110)))
    assert [side.meets for side in inner.sides] == [
        "bath/floor/shower",
        "bath/wall/D-A",
        "bath/floor/shower/kerb/top",
        "bath/wall/B-C",
    ]
    # Equal falls from all sides: the kerb's middle lies lower than its ends.
    bent = _falling(flat, ((0, 0), 20), ((750, 0), 10), ((1500, 0), 20), ((1500, 900), 20), ((0, 900), 20))
    inner = _kerb(bent)["kerb/inner"].surface
    assert inner.outline[:3] == ((0, mm(10)), (mm(750), 0), (mm(1500), mm(10)))
    assert len(inner.sides) == 5 and inner.sides[1].meets == "bath/floor/shower"


def test_runs_of_a_kerb_meet_on_the_bisector():
    outline = rectangle(0, 0, mm(1200), mm(900))
    found = _kerb(_shower((KERB, KERB, "wall/A-B", "wall/D-A"), outline))
    first, second = found["kerb 1/top"].surface, found["kerb 2/top"].surface
    assert first.outline == ((0, 0), (mm(1300), 0), (mm(1200), mm(100)), (0, mm(100)))
    assert second.outline == ((0, 0), (mm(1000), 0), (mm(1000), mm(100)), (mm(100), mm(100)))
    covered = sum(abs(area2(top.outline)) // 2 for top in (first, second))
    assert covered == mm(1300) * mm(1000) - mm(1200) * mm(900)


def test_a_kerb_ends_on_the_line_of_a_skew_wall():
    outline = ((0, 0), (mm(1200), 0), (mm(1300), mm(900)), (0, mm(900)))
    top = _kerb(_shower((KERB, "wall/B-C", "wall/A-B", "wall/D-A"), outline))["kerb/top"].surface
    # The wall leans out by a ninth of the depth; below the corner it runs back in by as much.
    us = sorted(u for u, _ in top.outline)
    assert us[-1] == mm(1200)
    assert top.outline[1][0] == pytest.approx(mm(1200) - mm(100) / 9, abs=2)
