"""The verifier passes a sound plan made by hand and objects to every way of spoiling it."""

import json
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import Any

import pytest

from firstcourse.app.store import Memory
from firstcourse.reuse import Steps
from firstcourse.verify import verify, verify_text
from firstcourse.verify.fields import FieldError
from firstcourse.verify.reading import read_document
from sealing import set_rule
from tamperings import TAMPERINGS, NothingToSpoil, Tampering

Plan = dict[str, Any]


def codes(plan: Plan) -> set[str]:
    return {objection.code for objection in verify_text(json.dumps(plan)).objections}


def test_a_sound_plan_passes(plan: Plan) -> None:
    assert verify_text(json.dumps(plan)).objections == ()
    assert verify(plan).verified


@pytest.mark.parametrize("tampering", TAMPERINGS, ids=lambda tampering: tampering.name)
def test_every_tampering_is_objected_to(plan: Plan, tampering: Tampering) -> None:
    try:
        tampering.change(plan)
    except NothingToSpoil:
        pytest.skip("this plan has nothing of that kind")
    assert codes(plan) & tampering.codes


def in_line(plan: Plan) -> None:
    """Move the second course's seam on the wall from the stud at 32 in to the one at 48 in."""
    wall = plan["surfaces"][0]
    left, right, seam = wall["boards"][2], wall["boards"][3], wall["seams"][2]
    for point in [*left["outline"][1:3], right["outline"][0], right["outline"][3], *seam["line"]]:
        point[0] = round(point[0] + 16 * 25.4, 7)


def ends_close(code: str, surface: str, apart: float, *, least: float = 16) -> dict[str, Any]:
    """What a plan says of end joints so far apart [in]."""
    return {
        "code": code,
        "severity": "fix",
        "at": [surface],
        "measured": {"value": apart * 25.4, "unit": "mm"},
        "limit": {"value": least * 25.4, "unit": "mm", "sense": "least"},
        "rule": "boards.stagger.end_joints",
        "remedies": ["other_size"],
    }


def test_four_corners_are_objected_to_unless_the_plan_says_so(plan: Plan) -> None:
    in_line(plan)
    assert {"VER-301", "VER-302"} <= codes(plan)
    plan["findings"].append(ends_close("BRD-202", "bath/wall/A-B", 0))
    assert not {"VER-301", "VER-302"} & codes(plan)


def test_end_joints_too_close_are_objected_to_unless_the_plan_says_so(plan: Plan) -> None:
    set_rule(plan, "boards.stagger.end_joints", 20, "in")
    # A plan made by hand lists no rules, and so not the one that its job changes.
    assert codes(plan) == {"VER-302", "VER-910"}
    plan["findings"].append(ends_close("BRD-201", "bath/wall/A-B", 16, least=20))
    assert codes(plan) == {"VER-904", "VER-910"}
    plan["findings"][-1]["measured"]["value"] += 25.4
    assert codes(plan) == {"VER-302", "VER-904", "VER-910"}


def test_a_finding_on_one_surface_excuses_no_other(plan: Plan) -> None:
    in_line(plan)
    plan["findings"].append(ends_close("BRD-202", "bath/floor", 0))
    assert "VER-301" in codes(plan)


@pytest.mark.parametrize("spoilt", [{"limit": {"value": 1.0}}, {"measured": "1 mm"}, {"at": []}])
def test_a_finding_whose_form_is_wrong_is_read_no_further(plan: Plan, spoilt: dict[str, Any]) -> None:
    plan["findings"].append(ends_close("BRD-202", "bath/wall/A-B", 0) | spoilt)
    assert codes(plan) == {"VER-001"}


def test_a_seam_by_one_tick_too_narrow_is_objected_to(plan: Plan) -> None:
    board = plan["surfaces"][1]["boards"][0]
    for point in board["outline"][1:3]:
        point[0] += 2 / 640
    assert "VER-105" in codes(plan)


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "null", "3", '{"format": "firstcourse-plan"}', "[" * 100_000, '{"a": 1, "a": 2}', "1" * 5_000],
    ids=lambda text: text[:20],
)
def test_what_is_no_plan_is_one_objection(text: str) -> None:
    assert [objection.code for objection in verify_text(text).objections] == ["VER-001"]


def paths(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    found = [path] if path else []
    if isinstance(value, dict):
        for key in value:
            found += paths(value[key], (*path, key))
    elif isinstance(value, list) and value:
        # The last item stands for its like.
        found += paths(value[-1], (*path, len(value) - 1))
    return found


@contextmanager
def spoiled(plan: Plan, path: tuple[Any, ...], value: Any) -> Iterator[Plan]:
    """The plan with one value changed, and as it was again afterwards."""
    place: Any = plan
    for key in path[:-1]:
        place = place[key]
    kept, place[path[-1]] = place[path[-1]], value
    try:
        yield plan
    finally:
        place[path[-1]] = kept


WRONG = (None, [], {}, "x", -1, 10**400, float("inf"), True)


def test_no_wrong_type_anywhere_brings_the_reader_down(plan: Plan) -> None:
    """Each value at each place; of workings, which the reader hands on as they are, one value in turn."""
    steps = Steps(Memory())
    for number, path in enumerate(paths(plan)):
        for value in WRONG if path[0] != "workings" else WRONG[number % len(WRONG) :][:1]:
            with suppress(FieldError), spoiled(plan, path, value) as wrong:
                read_document(wrong, do=steps.do)


def test_no_wrong_type_brings_a_proof_down(plan: Plan) -> None:
    """One value at each second place, in turn: all of them everywhere would take ten minutes."""
    steps = Steps(Memory())
    for number, path in enumerate(paths(plan)[::2]):
        with spoiled(plan, path, WRONG[number % len(WRONG)]) as wrong:
            verify(wrong, do=steps.do)
