"""Random whole jobs: each is planned and verified, or refused with a message that a setter can act on."""

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest
import yaml

_BENCHMARK = Path(__file__).parents[2] / "benchmarks" / "random_rooms.py"


def _load() -> ModuleType:
    spec = importlib.util.spec_from_file_location("random_rooms", _BENCHMARK)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    # Dataclasses look their module up by name while they are made.
    sys.modules[spec.name] = module
    # As when it is run as a script, its neighbours are found beside it.
    sys.path.append(str(_BENCHMARK.parent))
    spec.loader.exec_module(module)
    return module


ROOMS = _load()


@pytest.mark.parametrize("seed", range(1, 9))
def test_a_random_job_is_planned_or_refused_for_a_reason(seed: int) -> None:
    found = ROOMS.outcome(seed)
    assert found.kind in ("planned", "refused"), found.text


# 7030: fasteners on two lines of a joist that slants by half a degree.
# 90087: a corner of an opening reaches a narrow wall's side. 51115: a strip between a wall and a round hole with
# slanting ends.
# 20092: plain practice left a crack beyond a whole board. 20016, 21051, 21347: strips that are filled beside
# a seam or a round hole. 10238: a strip between a wall and a tray that stands askew narrows to nothing.
# 10244: rounding along a sloped edge.
# 25, 27: an outline only touches a cell of a course.
# 70, 118: a seam was listed where a course had tapered to nothing. 38: a door below a falling floor's foot.
# 95839: a step of a tick in the end of a board that gave way at a wall. 200191: a gap that was wide before its
# board gave way at the other end. 200506: a seam that only a narrower gap at the wall leaves room for.
@pytest.mark.parametrize(
    "seed",
    [25, 27, 38, 70, 118, 7030, 10238, 10244, 20016, 20092, 21051, 21347, 51115, 90087, 95839, 200191, 200506],
)
def test_a_random_job_that_once_failed_is_planned(seed: int) -> None:
    found = ROOMS.outcome(seed)
    assert found.kind == "planned", found.text


# 1011: a floor whose joints recur at no step that both steps of its repeat share.
# 30056: a cabinet so near to a tiled wall's face that, rounded to ticks, it crossed it.
# 31051: an opening's corner parts a tile by less than a joint.
# 31402: a piece so small that rounding to ticks turns it, cut of a tile with a grain.
# 31504, 32002: a band whose tile alone would have a narrower joint than the field it lies in.
# 31702: a pierced tile beside a band. 31802: lines to snap along courses that a band takes the place of.
# 50927: mitres of a round opening's corners cross beside a wall.
# 72020: walls begin on a floor tiled in a pattern of one's own.
# 50152: slanting lines to snap on a wall narrower than its tile.
# 120014: a board that was made longer to keep its sheet's edge then had a narrow limb.
# 120076: rounding left a hair of tile over an opening that its tile ends level with.
# 250340: a strip just as thin as a joint may take, by floating point.
# 250129: a joint within the field ends at the middle of a wall's edge.
# 210247: a strip narrower than the gap at openings between window and wall. 210284: bands take a whole foot.
@pytest.mark.parametrize(
    "seed",
    [
        1011,
        30056,
        31051,
        31402,
        31504,
        31702,
        31802,
        32002,
        50152,
        50927,
        72020,
        120014,
        120076,
        210247,
        210284,
        250129,
        250340,
        300002,
        300116,
    ],
)
def test_a_random_tiled_job_that_once_failed_is_planned(seed: int) -> None:
    found = ROOMS.outcome(seed, with_tile=True)
    assert found.kind == "planned", found.text


# 50034: walls that keep the same courses, one of which leaves nothing to tile.
# 50053: a band above the tiling, whose tile's joint was laid all the same.
# 50715: an area for tile too small for a piece of one.
@pytest.mark.parametrize("seed", [50034, 50053, 50715])
def test_a_random_tiled_job_that_once_failed_is_refused(seed: int) -> None:
    found = ROOMS.outcome(seed, with_tile=True)
    assert found.kind == "refused", found.text


def test_tile_leaves_the_rest_of_a_job_as_it_was() -> None:
    plain, tiled = (yaml.safe_load(ROOMS.document(11, with_tile=asked)) for asked in (False, True))
    assert {key: tiled[key] for key in plain if key != "rooms"} == {
        key: plain[key] for key in plain if key != "rooms"
    }
    assert tiled["rooms"][0]["sides"] == plain["rooms"][0]["sides"]


def test_the_same_seed_makes_the_same_job() -> None:
    assert ROOMS.random_job(5) == ROOMS.random_job(5)
    assert ROOMS.random_job(5) != ROOMS.random_job(6)
