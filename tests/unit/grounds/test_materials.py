"""Boards, barriers, mortars, fasteners, tile, grounds and moisture, each in its place."""

import datetime
from dataclasses import replace

import pytest

from firstcourse.errors import InputValueError
from firstcourse.findings import Severity
from firstcourse.grounds import judge_exposure
from firstcourse.grounds.exposure import ExposedSurface, Zone, boards_for, zone_working
from firstcourse.grounds.materials import tile_class
from firstcourse.rules import load_rules
from said import all_said, worked

DAY = datetime.date(2026, 11, 25)
RULES = load_rules(DAY)
WALL = ExposedSurface(ref="bath/wall/A-B", zone=Zone.WET, board="fibre_cement", membrane_on_face=True)
DAMP = replace(WALL, zone=Zone.DAMP, membrane_on_face=False)
FLOOR = replace(WALL, is_floor=True)


@pytest.mark.parametrize(
    ("surface", "expected"),
    [
        (WALL, []),
        (replace(WALL, membrane_on_face=False, retarder_behind=True), []),
        (replace(WALL, retarder_behind=True), ["SUI-502"]),
        (replace(WALL, membrane_on_face=False), ["SUI-503"]),
        (replace(WALL, board="coated_gypsum", membrane_on_face=False), []),
        (replace(WALL, board="coated_gypsum", membrane_on_face=False, retarder_behind=True), ["SUI-502"]),
        (replace(WALL, board="greenboard"), ["SUI-501"]),
        (replace(DAMP, board="greenboard"), []),
        (replace(DAMP, board="greenboard", retarder_behind=True), ["SUI-508"]),
        (replace(DAMP, board="plywood"), ["SUI-501"]),
        (replace(DAMP, zone=Zone.DRY, board="strand_board"), ["SUI-501"]),
        (replace(DAMP, zone=Zone.NEAR_HEAT), ["SUI-507"]),
        (replace(DAMP, zone=Zone.NEAR_HEAT, board="plasterboard"), ["SUI-501"]),
        (
            ExposedSurface(ref="bath/wall/A-B", zone=Zone.STEAM, board="cement_board", retarder_behind=True),
            ["SUI-504"],
        ),
        (replace(WALL, zone=Zone.STEAM, board="cement_board"), ["SUI-509"]),
        (replace(WALL, zone=Zone.STEAM, board="cement_board", membrane="low_perm"), []),
        (replace(WALL, membrane="crack_isolation"), ["SUI-509"]),
        (replace(WALL, mortar="organic_adhesive"), ["SUI-511"]),
        (replace(DAMP, mortar="organic_adhesive"), []),
        (replace(DAMP, zone=Zone.NEAR_HEAT, mortar="epoxy"), ["SUI-507", "SUI-511"]),
        (replace(WALL, fastener="drywall_screw"), ["SUI-512"]),
        (replace(WALL, fastener="backer_screw"), []),
        (replace(FLOOR, over="particle_board"), ["SUI-510"]),
        (replace(FLOOR, absorption_percent=5), ["SUI-513"]),
        (replace(FLOOR, absorption_percent=3), []),
        (replace(WALL, absorption_percent=15), []),
        (replace(WALL, absorption_percent=25), ["SUI-513"]),
        (replace(WALL, absorption_percent=0.3, mortar="unmodified"), ["SUI-514"]),
        (replace(WALL, absorption_percent=0.3, mortar="modified"), []),
        (replace(FLOOR, wet_friction=0.41), ["SUI-515"]),
        (replace(FLOOR, wet_friction=0.42), []),
        (replace(WALL, wet_friction=0.1), []),
        (replace(DAMP, wood_moisture_percent=24), ["SUI-505"]),
        (replace(DAMP, wood_moisture_percent=19), []),
        (replace(FLOOR, slab_humidity_percent=80), ["SUI-516"]),
        (replace(FLOOR, slab_humidity_percent=75), []),
        (replace(FLOOR, slab_emission_lb=4), ["SUI-517"]),
    ],
)
def test_each_material_in_its_place(surface, expected):
    found = all_said(judge_exposure(RULES, surface), sources=RULES.sources())
    assert [finding.code for finding in found] == expected
    assert all(finding.remedy for finding in found)
    assert all(finding.source for finding in found)


def test_a_refusal_gives_its_reason_and_what_would_do():
    (green,) = all_said(judge_exposure(RULES, replace(WALL, board="greenboard")))
    assert "gypsum core soften once water passes the tile" in green.message
    assert "since 2006" in green.message
    assert "cement board (ASTM C1325)" in green.remedy and "plywood" not in green.remedy
    (mastic,) = all_said(judge_exposure(RULES, replace(WALL, mortar="organic_adhesive")))
    assert "ANSI A136.1" in mastic.message and "epoxy" in mastic.remedy
    (lauan,) = all_said(judge_exposure(RULES, replace(FLOOR, over="lauan")))
    assert lauan.severity is Severity.STOP and "plies part" in lauan.message


def test_a_membrane_in_steam_is_told_its_permeance():
    (steam,) = all_said(judge_exposure(RULES, replace(WALL, zone=Zone.STEAM, board="cement_board")))
    assert steam.limit == "at most 0.5 perm" and steam.remedy == "Use low perm."


def test_slippery_tile_stops_a_wet_floor_and_is_to_be_mended_elsewhere():
    wet = judge_exposure(RULES, replace(FLOOR, wet_friction=0.3))[0]
    damp = judge_exposure(RULES, replace(DAMP, is_floor=True, wet_friction=0.3))[0]
    assert (wet.severity, damp.severity) == (Severity.STOP, Severity.FIX)


def test_a_reading_without_a_limit_is_told():
    british = load_rules(DAY, "uk")
    (told,) = judge_exposure(british, replace(FLOOR, slab_emission_lb=4))[:1]
    # The emission limit serves every practice; that of wood is only in the American book.
    assert told.code == "SUI-517"
    (wood,) = all_said(judge_exposure(british, replace(DAMP, wood_moisture_percent=24)))
    assert wood.code == "SUI-518" and "practice 'uk'" in wood.message


def test_every_zone_has_its_list_of_materials():
    for zone in Zone:
        working = worked(zone_working(RULES, "bath/wall/A-B", zone, is_floor=False))
        named = {"boards", "vapour barrier", "mortars", "fasteners", "tile classes"}
        assert set(working.values) - {"membranes"} == named
        assert ("membranes" in working.values) is ("no membrane needed" not in working.values["vapour barrier"])
        assert boards_for(RULES, zone) and "none" not in working.values.values()
    steam = worked(zone_working(RULES, "bath/floor", Zone.STEAM, is_floor=True)).values
    assert steam["membranes"] == "low perm" and steam["vapour barrier"] == "exactly one, on the face"
    assert steam["tile classes"] == "impervious, vitreous" and steam["fasteners"] == "stainless"


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_porous_glazed_wall_tile_is_what_british_and_australian_walls_are_tiled_with(practice):
    """Group BIII takes up more than 10 percent; every such wall was stopped as of tile that does not last."""
    rules = load_rules(DAY, practice=practice)
    for zone in (Zone.DRY, Zone.DAMP, Zone.WET):
        codes = [found.code for found in judge_exposure(rules, replace(WALL, zone=zone, absorption_percent=14))]
        assert "SUI-513" not in codes
    for surface in (replace(FLOOR, absorption_percent=14), replace(WALL, absorption_percent=21)):
        assert "SUI-513" in [found.code for found in judge_exposure(rules, surface)]


def test_classes_meet_at_their_limits():
    assert [tile_class(RULES, each) for each in (0.5, 0.51, 3.01, 7.01, 20.01)] == [
        "impervious",
        "vitreous",
        "semi_vitreous",
        "non_vitreous",
        "",
    ]


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: judge_exposure(RULES, replace(WALL, board="cork")),
        lambda: judge_exposure(RULES, replace(WALL, mortar="glue")),
        lambda: judge_exposure(RULES, replace(WALL, fastener="tack")),
        lambda: judge_exposure(RULES, replace(WALL, membrane="paint")),
    ],
)
def test_unknown_materials_are_refused(wrong):
    with pytest.raises(InputValueError, match="the rule book has"):
        wrong()
