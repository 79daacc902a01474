"""Checks that look at one surface alone say of it what they say of the whole plan, done anew or kept."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from example_plans import plan_of
from firstcourse.app.store import Memory
from firstcourse.reuse import Steps
from firstcourse.verify import objecting, verify
from firstcourse.verify.at_once import at_once
from firstcourse.verify.proof import _CHECKS, READING, _objections
from firstcourse.verify.reading import read_document
from sealing import set_rule

SOUND = plan_of("tub-bathroom").model_dump_json(by_alias=True)


def _wall(plan: dict[str, Any]) -> dict[str, Any]:
    return next(surface for surface in plan["surfaces"] if surface["id"].endswith("wall/A-B"))


def fewer_fasteners(plan: dict[str, Any]) -> None:
    board = _wall(plan)["boards"][0]
    board["fasteners"] = board["fasteners"][::3]


def a_board_moved(plan: dict[str, Any]) -> None:
    board = _wall(plan)["boards"][0]
    board["outline"] = [[u + 12.5, v] for u, v in board["outline"]]


def a_seam_gone(plan: dict[str, Any]) -> None:
    _wall(plan)["seams"].pop()


def a_tile_moved(plan: dict[str, Any]) -> None:
    tile = _wall(plan)["tiles"][0]
    tile["outline"] = [[u + 25, v] for u, v in tile["outline"]]


def another_start_told(plan: dict[str, Any]) -> None:
    _wall(plan)["tiled"][0]["starts"][0]["cut_tiles"] += 1


def nothing_said(plan: dict[str, Any]) -> None:
    plan["findings"] = []


def studs_gone(plan: dict[str, Any]) -> None:
    _wall(plan)["supports"] = []


SPOILT = (
    fewer_fasteners,
    a_board_moved,
    a_seam_gone,
    a_tile_moved,
    another_start_told,
    nothing_said,
    studs_gone,
)


@pytest.mark.parametrize("spoil", SPOILT)
def test_what_is_spoilt_is_objected_to_alike(spoil: Callable[[dict[str, Any]], None]) -> None:
    document = json.loads(SOUND)
    spoil(document)
    plan = read_document(document)
    alone = list(_objections(plan, at_once))
    assert alone and alone == [objection for check in _CHECKS for objection in check(plan)]


def test_a_plan_proved_after_others_is_proved_as_if_it_were_the_first() -> None:
    steps = Steps(Memory())
    sound = json.loads(SOUND)
    assert verify(sound, do=steps.do) == verify(sound)
    for spoil in SPOILT[:4]:
        document = json.loads(SOUND)
        spoil(document)
        verdict = verify(document, do=steps.do)
        assert verdict.objections and verdict == verify(document)
    assert verify(sound, do=steps.do) == verify(sound)


def test_a_rule_that_the_job_sets_is_asked_again() -> None:
    steps = Steps(Memory())
    document = json.loads(SOUND)
    verify(document, do=steps.do)
    set_rule(document, "fastening.spacing.wall", 2.0, "in")
    verdict = verify(document, do=steps.do)
    assert verdict == verify(document)
    assert any(objection.code == "VER-406" for objection in verdict.objections)


def test_the_first_objection_is_one_of_all_whichever_check_is_made_first() -> None:
    steps = Steps(Memory())
    assert objecting(json.loads(SOUND), do=steps.do, first=["check_tiles", "no such check"]) is None
    document = json.loads(SOUND)
    fewer_fasteners(document)
    of_fasteners = next(check for check in _CHECKS if check.__name__ == "check_fasteners")
    assert list(of_fasteners(read_document(document)))
    assert objecting(document, do=steps.do, first=["check_fasteners"]) == "check_fasteners"
    assert objecting(document, do=steps.do) in {check.__name__ for check in _CHECKS}
    del document["sheets"]
    assert objecting(document, do=steps.do) == READING
