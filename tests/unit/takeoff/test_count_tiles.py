"""The tiling's shopping list on small surfaces, counted by hand."""

import datetime
import math
import re
from typing import Any

import pytest
from shapely import Polygon
from shapely import box as mm_box

from firstcourse.plan import (
    Area,
    Opening,
    OpeningKind,
    Pack,
    Ring,
    Side,
    SideKind,
    SoftJoint,
    StartPoint,
    Surface,
    SurfaceKind,
    Tile,
    TiledArea,
    TileStock,
)
from firstcourse.rules import Override, load_rules
from firstcourse.takeoff import (
    BOND_BREAKER,
    EDGE_TRIM,
    GROUT,
    JOINT_SEALANT,
    LARGE_TILE_MORTAR,
    SPACERS,
    TILE_MORTAR,
    Quantities,
    count_tiles,
    rod_of,
    tiles_of,
)
from firstcourse.takeoff.tile_cuts import cuts_by_kind
from firstcourse.takeoff.tile_edges import lengths_needed
from firstcourse.tiles.lay import lay
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.sharing import share
from firstcourse.units import KG_PER_LB, TICKS_PER_MM, Tape, mm
from said import all_said, worked

DAY = datetime.date(2026, 11, 25)
RULES = load_rules(DAY)
JOINT = 3.0


def ring(points: Any) -> Ring:
    return tuple((mm(x), mm(y)) for x, y in points)


def box(left: float, lower: float, right: float, upper: float) -> Ring:
    return ring([(left, lower), (right, lower), (right, upper), (left, upper)])


def stock(width: float = 300, height: float = 200, **more: Any) -> TileStock:
    fields = {"thickness": mm(8), "kind": "ceramic", "joint": mm(JOINT), **more}
    return TileStock(id="plain", size=(mm(width), mm(height)), **fields)


def tiled(area: Polygon, item: TileStock, pattern: Any = "stacked", **more: Any) -> Surface:
    """A floor tiled from the lower left corner of its area, cuts shared."""
    size = (item.size[0] / TICKS_PER_MM, item.size[1] / TICKS_PER_MM)
    cell = repeat_cell(pattern, [item], JOINT)
    found = lay(cell, (0.0, 0.0), area)
    cut = [tile for tile in found if not tile.whole]
    places = iter(share(cut, size, kerf=2.0).places)
    tiles = []
    for number, tile in enumerate(found):
        place = None if tile.whole else next(places)
        tiles.append(
            Tile(
                id=f"floor#{number}",
                outline=ring(tile.shape.exterior.coords[:-1])
                if tile.shape.exterior.is_ccw
                else ring(tuple(tile.shape.exterior.coords[:-1])[::-1]),
                holes=tuple(ring(hole.coords[:-1]) for hole in tile.shape.interiors),
                whole=tile.whole,
                stock=item.id,
                laid=ring(tile.laid),
                from_="" if place is None else f"plain {place.source}",
                cut=() if place is None else ring(place.outline),
            )
        )
    left, lower, right, upper = area.bounds
    fields: dict[str, Any] = {
        "id": "bath/floor",
        "room": "bath",
        "kind": SurfaceKind.FLOOR,
        "outline": box(left, lower, right, upper),
        "sides": tuple(Side(kind=SideKind.PERIMETER) for _ in range(4)),
        "tiles": tuple(tiles),
        "tiled": (
            TiledArea(
                pattern=pattern,
                tiles=(item.id,),
                area=(Area(outline=ring(area.exterior.coords[:-1])),),
                joint=mm(JOINT),
                step_a=cell.step_a,
                step_b=cell.step_b,
                starts=(StartPoint(origin=(0, 0), smallest_cut=0, cut_tiles=len(cut)),),
            ),
        ),
        **more,
    }
    return Surface(**fields)


def counted(surface: Surface, item: TileStock, tape: Tape = Tape.MM, rules: Any = RULES) -> Quantities:
    return count_tiles((surface,), (item,), rules, tape)


def line_of(done: Quantities, item: str) -> Any:
    return next(line for line in done.quantities if line.item == item)


def test_tiles_are_those_set_whole_and_those_cut_up() -> None:
    # Four courses of three whole tiles; to their right a strip of 140 mm, of which a tile yields two.
    item = stock(per_box=5)
    surface = tiled(mm_box(0, 0, 3 * 303 + 140, 4 * 203), item)
    done = counted(surface, item)
    line = line_of(done, tiles_of("plain"))
    assert (line.exact, line.unit) == (12 + 2, "tile")
    # One breaks, one is kept: 16 tiles are four boxes of five.
    assert (line.buy, line.pack) == (4, Pack(kind="box", size=5, unit="tile"))
    values = worked(done.workings[line.working]).values
    assert (values["set whole"], values["set cut"], values["whole tiles cut"]) == ("12", "4", "2")
    assert values["breakage in handling and cutting"] == "3% = 0.42 tiles"
    assert values["kept for repairs"] == "2% = 1 tile"
    assert values["left over beyond that"] == "4 tiles"


def test_tiles_already_set_are_not_bought_again() -> None:
    item = stock()
    surface = tiled(mm_box(0, 0, 600, 400), item)
    fixed = tuple(tile.model_copy(update={"fixed": True}) for tile in surface.tiles)
    done = counted(surface.model_copy(update={"tiles": fixed}), item)
    assert not [line for line in done.quantities if line.item == tiles_of("plain")]


def test_mosaic_is_bought_by_the_sheet() -> None:
    item = stock(48, 48, sheet=(6, 6), per_box=10)
    done = counted(tiled(mm_box(0, 0, 51 * 12, 51 * 12), item), item)
    line = line_of(done, tiles_of("plain"))
    assert (line.exact, line.buy) == (144, 1)
    assert line.pack == Pack(kind="box", size=360, unit="chip", sheets=10)
    assert SPACERS not in {line.item for line in done.quantities}


def test_mortar_from_notch_and_back_butter() -> None:
    item = stock()
    surface = tiled(mm_box(0, 0, 3030, 2030), item)
    line = line_of(counted(surface, item), TILE_MORTAR)
    # 11.8 in: a medium tile, 1/4 x 3/8 in notch at 60 degrees, back-buttered by 1/32 in where it is wet.
    combed = 0.25 * 0.375 * math.sin(math.radians(60)) / 0.5 * 0.0254
    volume = 3.03 * 2.03 * combed + 10 * 10 * 0.3 * 0.2 * 0.0254 / 32
    assert line.exact == pytest.approx(volume * 1600 * 0.8, rel=1e-3)
    assert line.buy == math.ceil(line.exact * 1.1 / (50 * KG_PER_LB))


def test_large_tile_has_its_own_mortar() -> None:
    item = stock(600, 600)
    items = {line.item for line in counted(tiled(mm_box(0, 0, 1300, 1300), item), item).quantities}
    assert LARGE_TILE_MORTAR in items
    assert TILE_MORTAR not in items


def test_grout_fills_what_tiles_leave_open() -> None:
    item = stock()
    done = counted(tiled(mm_box(0, 0, 3030, 2030), item), item)
    line = line_of(done, GROUT)
    assert line.exact == pytest.approx((3.03 * 2.03 - 100 * 0.06) * 8 * 1.6, abs=1e-3)
    assert (
        worked(done.workings[line.working], Tape.MM).values["handbook formula"]
        == f"{3.03 * 2.03 * 0.5 / 60 * 3 * 8 * 1.6:.1f} kg"
    )


def test_soft_joints_in_the_field_are_not_grouted() -> None:
    item = stock()
    plain = tiled(mm_box(0, 0, 3030, 2030), item)
    soft = SoftJoint(line=((mm(1513.5), 0), (mm(1513.5), mm(2030))), width=mm(3), why="field")
    surface = plain.model_copy(update={"soft_joints": (soft,)})
    less = line_of(counted(plain, item), GROUT).exact - line_of(counted(surface, item), GROUT).exact
    assert less == pytest.approx(2.03 * 0.003 * 8 * 1.6, abs=2e-3)


@pytest.mark.parametrize(("thickness", "behind"), [(8, BOND_BREAKER), (20, rod_of(mm(8)))])
def test_sealant_and_what_lies_behind_it(thickness: float, behind: str) -> None:
    item = stock(thickness=mm(thickness))
    soft = SoftJoint(line=((0, 0), (mm(6400), 0)), width=mm(6), why="plane")
    surface = tiled(mm_box(0, 0, 600, 400), item).model_copy(update={"soft_joints": (soft,)})
    done = counted(surface, item, rules=load_rules(DAY, "uk"))
    sealant = line_of(done, JOINT_SEALANT)
    assert (sealant.exact, sealant.buy) == (230.4, 1)
    assert line_of(done, behind).exact == 6400


def test_trim_is_cut_from_stock_lengths() -> None:
    item = stock()
    niche = Opening(id="niche", kind=OpeningKind.NICHE, outline=box(100, 100, 400, 300))
    sides = tuple(
        Side(kind=kind) for kind in (SideKind.FREE, SideKind.PERIMETER, SideKind.FREE, SideKind.PERIMETER)
    )
    surface = tiled(mm_box(0, 0, 1500, 800), item, sides=sides, openings=(niche,))
    done = counted(surface, item, rules=load_rules(DAY, "uk"))
    line = line_of(done, EDGE_TRIM)
    # 1.5 + 1.5 m and a niche rim of 1 m in lengths of 2.5 m.
    assert (line.exact, line.buy, line.pack) == (4000, 2, Pack(kind="length", size=2500, unit="mm"))
    (finding,) = all_said(done.findings, Tape.MM)
    assert (finding.code, finding.measured) == ("TIL-107", "4.00 m")


@pytest.mark.parametrize(
    ("tape", "height"), [(Tape.INCH, r'trim about [\d/-]+" high'), (Tape.MM, r"trim about [\d.]+ mm high")]
)
def test_the_height_of_trim_is_told_as_the_tape_reads(tape: Tape, height: str) -> None:
    item = stock()
    sides = tuple(Side(kind=kind) for kind in (SideKind.FREE, *(SideKind.PERIMETER,) * 3))
    done = counted(tiled(mm_box(0, 0, 1500, 800), item, sides=sides), item, tape=tape)
    (found,) = [finding for finding in all_said(done.findings, tape) if finding.code == "TIL-107"]
    assert re.fullmatch(height, found.limit), found.limit
    # 1500 mm is 59.055 in.
    assert found.measured == ("1.50 m" if tape is Tape.MM else "4' 11-1/16\"")


@pytest.mark.parametrize(("pieces", "expected"), [([], 0), ([100], 1), ([250], 3), ([60, 50, 40, 30], 2)])
def test_longer_edges_take_more_than_one_length(pieces: list[int], expected: int) -> None:
    assert lengths_needed(pieces, 100) == expected


def test_spacers_by_pattern() -> None:
    item = stock()
    for pattern, each in (("stacked", 1), ("running", 2)):
        surface = tiled(mm_box(0, 0, 3030, 2030), item, pattern)
        assert line_of(counted(surface, item), SPACERS).exact == each * len(surface.tiles)


@pytest.mark.parametrize("tape", list(Tape))
@pytest.mark.parametrize("practice", ["us", "uk", "au"])
@pytest.mark.parametrize("pattern", ["stacked", "diagonal"])
def test_every_line_covers_its_need_and_names_its_working(tape: Tape, practice: str, pattern: Any) -> None:
    item = stock(300, 300)
    soft = SoftJoint(line=((0, 0), (mm(2000), 0)), width=mm(6), why="plane")
    surface = tiled(Polygon([(0, 0), (2100, 0), (1990, 1777), (0, 1700)]), item, pattern)
    done = counted(surface.model_copy(update={"soft_joints": (soft,)}), item, tape, load_rules(DAY, practice))
    assert len({line.item for line in done.quantities}) == len(done.quantities)
    for line in done.quantities:
        assert line.buy > 0 < line.exact
        working = done.workings[line.working]
        assert working.inputs["packs"] == line.buy
    assert "quantities-cuts@tile_stock/plain" in done.workings


def test_the_two_tapes_agree() -> None:
    item = stock()
    surface = tiled(mm_box(0, 0, 3000, 2000), item)
    inch, metric = (counted(surface, item, tape) for tape in (Tape.INCH, Tape.MM))
    for name in (GROUT, TILE_MORTAR):
        assert line_of(inch, name).exact == pytest.approx(line_of(metric, name).exact, abs=0.01)
        assert line_of(inch, name).buy == line_of(metric, name).buy


def test_a_band_has_its_own_bed_and_joints() -> None:
    item, band = stock(), stock(100, 100).model_copy(update={"id": "band", "thickness": mm(12)})
    lower = tiled(mm_box(0, 0, 3030, 203), item)
    upper = tiled(mm_box(0, 203, 3030, 306), band)
    surface = lower.model_copy(update={"tiles": lower.tiles + upper.tiles, "tiled": lower.tiled + upper.tiled})
    done = count_tiles((surface,), (item, band), RULES, Tape.MM)
    working = done.workings["quantities-grout@grout"]
    values = worked(working, Tape.MM).values
    assert "x 8 mm" in values["bath: floor, plain"]
    assert "x 12 mm" in values["bath: floor, band"]
    areas = [one.value for one in working.inputs["faces"]]
    assert areas == pytest.approx([0.6, sum(Polygon(t.outline).area for t in upper.tiles) / 640e3**2], abs=1e-3)


def test_breakage_and_spares_are_rules() -> None:
    item = stock()
    rules = load_rules(
        DAY,
        overrides=(
            Override(rule="tile.breakage", value=0.5, reason="thin glass"),
            Override(rule="tile.spares", value=0.25, reason="the client wants a quarter more"),
        ),
    )
    surface = tiled(mm_box(0, 0, 3 * 303, 4 * 203), item)
    assert line_of(counted(surface, item, rules=rules), tiles_of("plain")).buy == 12 + 6 + 3


def piece(outline: Any, holes: Any = ()) -> Tile:
    return Tile(
        id="t",
        outline=ring(outline),
        holes=tuple(ring(hole) for hole in holes),
        whole=False,
        stock="plain",
        laid=box(0, 0, 300, 200),
    )


@pytest.mark.parametrize(
    ("outline", "holes", "expected"),
    [
        ([(0, 0), (100, 0), (100, 200), (0, 200)], [], {"straight": 200}),
        ([(0, 0), (100, 0), (110, 200), (0, 200)], [], {"slanted": math.hypot(10, 200)}),
        ([(0, 0), (300, 0), (300, 120), (180, 120), (180, 200), (0, 200)], [], {"notch": 200}),
        (
            [(0, 0), (300, 0), (300, 200), (0, 200)],
            [[(100, 100), (100, 150), (150, 150), (150, 100)]],
            {"hole": 200},
        ),
        ([(0, 50), (100, 50), (100, 200), (0, 200)], [], {"straight": 250}),
    ],
)
def test_cuts_by_kind(outline: Any, holes: Any, expected: dict[str, float]) -> None:
    lengths, numbers = cuts_by_kind([piece(outline, holes)])
    found = {kind: length / TICKS_PER_MM for kind, length in lengths.items()}
    assert numbers == dict.fromkeys(expected, 1)
    assert found == pytest.approx(expected, abs=0.05)


def test_mortar_and_grout_are_reckoned_in_the_units_of_the_tape() -> None:
    item = stock()
    surface = tiled(mm_box(0, 0, 1500, 800), item)
    for tape, wanted, other in ((Tape.INCH, "sq ft", "mm"), (Tape.MM, "m²", " in")):
        done = counted(surface, item, tape=tape)
        for name in (TILE_MORTAR, GROUT):
            values = worked(done.workings[f"quantities-{name}@{name}"], tape).values
            text = values["bath: floor, plain"]
            assert wanted in text and other not in text, text
