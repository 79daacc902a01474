"""Whatever stands in a plan.json, the verifier answers with objections and never with an error."""

import copy
import json
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from example_plans import result_of
from firstcourse.cli import run
from proving import verify, verify_text

EXAMPLES = Path(__file__).parents[2] / "examples"
JUNK = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-(10**400), 10**400),
    st.integers(-3, 3),
    st.floats(),
    st.sampled_from([1e308, -1e308, 5e-324, 0.1, 1 / 640, float("nan"), float("inf"), 2**63, -0.0]),
    st.text(max_size=8),
    st.sampled_from(["", " = ", "1 = 2 / 0", "9⁹⁹⁹ × 9⁹ = 1", "((((", "1,,,1", "5' 3-1/2\"", "NaN", "١٢", "²"]),
    st.lists(st.integers(-5, 5), max_size=3),
    st.dictionaries(st.text(max_size=3), st.integers(), max_size=2),
)


def planned(name: str) -> str:
    return result_of(name).document


def places(value: Any, place: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Every place in a document; of a long list the first items and the last stand for all."""
    found = [place] if place else []
    if isinstance(value, dict):
        for key in value:
            found += places(value[key], (*place, key))
    elif isinstance(value, list):
        for index in sorted({0, 1, len(value) - 1} & set(range(len(value)))):
            found += places(value[index], (*place, index))
    return found


def spoil(document: Any, place: tuple[Any, ...], how: str, junk: Any) -> None:
    at = document
    for key in place[:-1]:
        at = at[key]
    if how == "put":
        at[place[-1]] = junk
    elif how == "drop":
        del at[place[-1]]
    elif isinstance(at, list):
        at.insert(0, copy.deepcopy(at[place[-1]]))
    else:
        at[f"{place[-1]}x"] = at[place[-1]]


@cache
def small_places(name: str) -> list[tuple[Any, ...]]:
    return places(json.loads(planned(name)))


@given(st.data(), st.sampled_from(["out-of-true", "limber-floor"]))
@settings(max_examples=60, deadline=None)
def test_no_change_anywhere_brings_the_verifier_down(data, name):
    document = json.loads(planned(name))
    for _ in range(data.draw(st.integers(1, 3))):
        place = data.draw(st.sampled_from(small_places(name)))
        try:
            spoil(document, place, data.draw(st.sampled_from(["put", "put", "drop", "twice"])), data.draw(JUNK))
        except (KeyError, IndexError, TypeError):
            continue
    first, again = verify(document), verify(document)
    assert first == again
    assert first.readable or len(first.objections) == 1


@given(st.data())
@settings(max_examples=40, deadline=None)
def test_a_text_cut_short_or_garbled_is_one_objection(data):
    text = planned("out-of-true")
    at = data.draw(st.integers(0, len(text) - 2))
    how = data.draw(st.sampled_from(["cut", "brace", "nan"]))
    spoilt = {"cut": text[:at], "brace": text[:at] + "}" + text[at:], "nan": text[:at] + "NaN" + text[at:]}[how]
    verdict = verify_text(spoilt)
    # What is put into a text within may leave a plan that can be read.
    assert not (how == "cut" and verdict.readable)
    assert verdict.readable or len(verdict.objections) == 1


def test_garbage_ends_with_two_and_one_message(tmp_path, capsys):
    file = tmp_path / "plan.json"
    text = planned("out-of-true")
    later = json.loads(text) | {"version": 3}
    for garbage in (b"", b"\xff\xfe", b"{", b"[1, 2]", text[:-40].encode(), json.dumps(later).encode()):
        file.write_bytes(garbage)
        assert run(["verify", str(file)]) == 2
        out, err = capsys.readouterr()
        assert out == "" and len(err.strip().splitlines()) == 1 and "Traceback" not in err
