"""Trowel, back-butter, contact and slip by the tile's size and place."""

import datetime
from typing import Any

import pytest

from firstcourse.errors import InputValueError
from firstcourse.findings import Severity
from firstcourse.layers.combed import notch_mean
from firstcourse.plan import (
    Area,
    Opening,
    OpeningKind,
    Ring,
    Side,
    SideKind,
    StartPoint,
    Surface,
    SurfaceKind,
    TiledArea,
    TileStock,
)
from firstcourse.rules import Override, load_rules
from firstcourse.tiles.setting import setting_bed, shown_edges
from firstcourse.units import Tape, inches
from said import all_said, worked

DAY = datetime.date(2026, 11, 25)
RULES = load_rules(DAY)


def tile(width: float, height: float, kind: str = "ceramic") -> TileStock:
    return TileStock(
        id="plain",
        size=(inches(width), inches(height)),
        thickness=inches(0.375),
        kind=kind,
        joint=inches(0.125),
    )


def box(left: float, lower: float, right: float, upper: float) -> Ring:
    a, b, c, d = (inches(value) for value in (left, lower, right, upper))
    return ((a, b), (c, b), (c, d), (a, d))


@pytest.mark.parametrize(
    ("side", "wet", "size", "buttered"),
    [
        (2, True, "mosaic", False),
        (6, True, "small", False),
        (8, True, "small", True),
        (12, True, "medium", True),
        (12, False, "medium", False),
        (15, False, "large", True),
        (24, True, "large", True),
    ],
)
def test_trowel_and_back_butter_by_size_and_place(side: float, wet: bool, size: str, buttered: bool) -> None:
    bed = setting_bed(tile(side, side), RULES, wet=wet)
    assert (bed.size, bed.back_buttered > 0, bed.large_mortar) == (size, buttered, size == "large")
    assert bed.thickness >= RULES.ticks("tile.bed.min")
    assert [finding.code for finding in all_said(bed.findings) if finding.severity is Severity.FIX] == []


@pytest.mark.parametrize(
    ("kind", "wet", "contact"), [("ceramic", False, 80), ("ceramic", True, 95), ("stone", False, 95)]
)
def test_contact_by_kind_and_place(kind: str, wet: bool, contact: float) -> None:
    bed = setting_bed(tile(12, 12, kind), RULES, wet=wet)
    assert bed.contact == contact
    assert any(f"{contact}%" in finding.limit for finding in all_said(bed.findings) if finding.code == "TIL-106")


def test_a_trowel_held_too_flat_leaves_too_little() -> None:
    rules = load_rules(DAY, overrides=(Override(rule="tile.trowel.angle", value=45, reason="as seen on site"),))
    (finding,) = (f for f in all_said(setting_bed(tile(6, 6), rules).findings) if f.code == "TIL-105")
    assert (finding.severity, finding.rule) == (Severity.FIX, "tile.bed.min")
    assert (finding.measured, finding.limit) == ("0.0884 in", 'at least 3/32"')


def test_too_much_mortar_is_said() -> None:
    rules = load_rules(
        DAY, overrides=(Override(rule="tile.trowel.small.depth", value="3/4 in", reason="as seen on site"),)
    )
    (finding,) = (f for f in all_said(setting_bed(tile(6, 6), rules).findings) if f.code == "TIL-105")
    assert finding.rule == "tile.bed.max_thin"


@pytest.mark.parametrize(
    ("kind", "wet", "said"),
    [(SurfaceKind.FLOOR, True, True), (SurfaceKind.FLOOR, False, False), (SurfaceKind.WALL, True, False)],
)
def test_slip_is_a_matter_of_wet_floors(kind: SurfaceKind, wet: bool, said: bool) -> None:
    bed = setting_bed(tile(12, 12), RULES, kind=kind, wet=wet)
    assert any(finding.code == "TIL-108" for finding in all_said(bed.findings)) == said


@pytest.mark.parametrize(("friction", "told"), [(None, [""]), (0.38, ["0.38"]), (0.42, []), (0.6, [])])
def test_a_grip_that_the_job_gives_is_not_asked_for(friction: float | None, told: list[str]) -> None:
    given = tile(12, 12).model_copy(update={"wet_friction": friction})
    bed = setting_bed(given, RULES, kind=SurfaceKind.FLOOR, wet=True)
    assert [finding.measured for finding in all_said(bed.findings) if finding.code == "TIL-108"] == told


@pytest.mark.parametrize("practice", ["us", "uk", "au"])
@pytest.mark.parametrize("tape", list(Tape))
def test_every_practice_has_a_bed(practice: str, tape: Tape) -> None:
    bed = setting_bed(tile(12, 24), load_rules(DAY, practice))
    assert worked(bed.working, tape).unit == ("mm" if tape is Tape.MM else "in")


@pytest.mark.parametrize(("shape", "depth"), [("W", 0.25), ("U", 0.1)])
def test_what_is_no_notch_is_refused(shape: str, depth: float) -> None:
    with pytest.raises(InputValueError, match="notch"):
        notch_mean(shape, width=0.25, depth=depth, land=0.25, angle_deg=60)


def test_edges_that_show_are_free_sides_and_niche_rims() -> None:
    fields: dict[str, Any] = {
        "id": "bath/wall/A-B",
        "room": "bath",
        "kind": SurfaceKind.WALL,
        "outline": box(0, 0, 60, 80),
        "sides": tuple(
            Side(kind=kind) for kind in (SideKind.FOOT, SideKind.FREE, SideKind.FREE, SideKind.PERIMETER)
        ),
        "openings": (Opening(id="niche", kind=OpeningKind.NICHE, outline=box(20, 40, 34, 52)),),
    }
    area = TiledArea(
        pattern="stacked",
        tiles=("plain",),
        area=(Area(outline=box(0, 0, 60, 80)),),
        joint=inches(0.125),
        step_a=(1, 0),
        step_b=(0, 1),
        starts=(StartPoint(origin=(0, 0), smallest_cut=0, cut_tiles=0),),
    )
    assert shown_edges(Surface(**fields)) == ()
    edges = shown_edges(Surface(**fields, tiled=(area,)))
    assert edges == tuple(inches(length) for length in (80, 60, 14, 12, 14, 12))
