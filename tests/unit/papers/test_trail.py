"""The walks from tape to ticket and from rule to finding are real: a change at the start shows at every stop."""

import importlib.util
import sys
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

ROOT = Path(__file__).parents[3]


def _loaded(name: str) -> ModuleType:
    spec = importlib.util.spec_from_file_location(name, ROOT / "docs" / f"{name}.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    # Its frozen records look their module up by name.
    sys.modules[name] = module
    spec.loader.exec_module(module)
    return module


TRAIL = _loaded("trail")
TEXT = TRAIL.EXAMPLE.read_text(encoding="utf-8")
MOVED = TEXT.replace("left: 48 in, out: 12 1/2 in", "left: 46 in, out: 12 1/2 in")
SET = TEXT.replace(
    "\nrooms:\n",
    "\nrules: [{rule: door.clearance.min, value: 1/2 in, reason: a thick mat lies there}]\n\nrooms:\n",
)


@pytest.fixture(scope="module")
def as_it_is() -> Any:
    return TRAIL.walked(TEXT)


def test_the_page_is_what_the_plan_gives(as_it_is: Any) -> None:
    assert TRAIL.PAGE.read_text(encoding="utf-8") == TRAIL.page(as_it_is)


@pytest.mark.parametrize(("text", "stops", "most"), [(MOVED, "READING", 10), (SET, "VALUE", 6)])
def test_every_stop_follows_a_change(text: str, stops: str, most: int, as_it_is: Any) -> None:
    assert text != TEXT
    changed = TRAIL.walked(text)
    walk = getattr(TRAIL, stops)
    assert len(walk) <= most
    assert [stop.where for stop in walk if stop.value(changed) == stop.value(as_it_is)] == []


def test_the_map_of_the_house_is_made_from_the_code() -> None:
    house = _loaded("house")
    assert house.PAGE.read_text(encoding="utf-8") == house.page()
