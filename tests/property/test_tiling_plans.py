"""Plans of tiled rooms: mirrored rooms, areas that balance, both tapes, and no spoilt tile that passes."""

import copy
import json
from functools import cache
from typing import Any

import pytest
import yaml
from shapely import Polygon

from firstcourse.job import read_job_text
from firstcourse.plan import Plan, Surface
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM
from proving import verify_text
from tamperings import TAMPERINGS, NothingToSpoil, Tampering

# Out of square by a few millimetres, with a pipe off its middle.
WIDE, FAR, LEFT, RIGHT, PIPE = 1512, 1508, 1204, 1210, 402


def _document(*, mirrored: bool = False, pattern: str = "stacked", joint: int = 3, tape: str = "mm") -> str:
    right, left = (LEFT, RIGHT) if mirrored else (RIGHT, LEFT)
    diagonals = (1935, 1942) if not mirrored else (1942, 1935)
    pipe = WIDE - PIPE if mirrored else PIPE
    return yaml.safe_dump(
        {
            "name": "tiled",
            "date": "2026-11-25",
            "tape": tape,
            "tiles": [
                {"id": "t", "size": ["200 mm", "200 mm"], "thickness": "8 mm", "joint": f"{joint} mm"},
            ],
            "rooms": [
                {
                    "name": "bath",
                    "corners": ["A", "B", "C", "D"],
                    "sides": {
                        "A-B": f"{WIDE} mm",
                        "B-C": f"{right} mm",
                        "C-D": f"{FAR} mm",
                        "D-A": f"{left} mm",
                    },
                    "diagonals": {"A-C": f"{diagonals[0]} mm", "B-D": f"{diagonals[1]} mm"},
                    "height": "2400 mm",
                    "floor": {
                        "openings": [
                            {
                                "id": "pipe", "kind": "pipe", "side": "A-B", "left": f"{pipe} mm",
                                "out": "300 mm", "diameter": "60 mm",
                            }
                        ],
                        "tiling": {"tile": "t", "pattern": pattern},
                    },
                }
            ],
        },
        sort_keys=False,
    )  # fmt: skip


@cache
def _plan(mirrored: bool = False, pattern: str = "stacked", joint: int = 3, tape: str = "mm") -> Plan:
    document = _document(mirrored=mirrored, pattern=pattern, joint=joint, tape=tape)
    return plan_job(read_job_text(document), effort=0).plan


def _floor(plan: Plan) -> Surface:
    return next(surface for surface in plan.surfaces if surface.tiles)


def _mm2(surface: Surface) -> float:
    return sum(Polygon(tile.outline, tile.holes).area for tile in surface.tiles) / TICKS_PER_MM**2


def test_a_mirrored_room_gives_the_mirrored_tiles() -> None:
    here, there = _floor(_plan()), _floor(_plan(True))
    assert sum(tile.whole for tile in here.tiles) == sum(tile.whole for tile in there.tiles)
    assert len(here.tiles) == len(there.tiles)
    width = max(u for u, _ in here.outline)
    ours = sorted(Polygon([(width - u, v) for u, v in tile.outline]).bounds for tile in here.tiles)
    theirs = [Polygon(tile.outline).bounds for tile in there.tiles]
    for box in ours:
        nearest = min(theirs, key=lambda other: max(abs(a - b) for a, b in zip(box, other, strict=True)))
        # The survey rounds each corner, and the room's first side lies level in both.
        assert nearest == pytest.approx(box, abs=0.02 * TICKS_PER_MM)


def test_a_mirrored_room_gives_running_courses_as_good() -> None:
    here, there = (_floor(_plan(mirrored, "running")).tiled[0].starts[0] for mirrored in (False, True))
    # The start and what is cut at the pipe may differ; the smallest cut does by less than a millimetre.
    assert here.smallest_cut == pytest.approx(there.smallest_cut, abs=TICKS_PER_MM)
    assert here.slack == pytest.approx(there.slack, abs=0.02 * TICKS_PER_MM)


def test_tiles_and_the_joints_between_them_fill_the_area() -> None:
    before = float("inf")
    for joint in (2, 3, 6):
        floor = _floor(_plan(joint=joint))
        (tiled,) = floor.tiled
        area = sum(Polygon(part.outline, part.holes).area for part in tiled.area) / TICKS_PER_MM**2
        covered = _mm2(floor)
        share = (200 / (200 + joint)) ** 2
        # One course more or less of joints at the edges is what the share does not know.
        assert covered == pytest.approx(share * area, rel=0.01)
        assert covered < min(area, before)
        before = covered


def test_both_tapes_lay_the_same_tiles() -> None:
    metric, inch = _plan(), _plan(tape="inch")
    assert [tile.outline for tile in _floor(metric).tiles] == [tile.outline for tile in _floor(inch).tiles]


@pytest.mark.parametrize(
    "tampering", [one for one in TAMPERINGS if "tile" in one.name], ids=lambda tampering: tampering.name
)
def test_spoilt_tiles_of_a_metric_plan_are_objected_to(tampering: Tampering) -> None:
    plan: dict[str, Any] = copy.deepcopy(json.loads(_plan().model_dump_json(by_alias=True)))
    try:
        tampering.change(plan)
    except NothingToSpoil:
        pytest.skip("this plan has nothing of that kind")
    found = {objection.code for objection in verify_text(json.dumps(plan)).objections}
    assert found & tampering.codes
