"""The gallery of patterns is true: its page and pictures are what the plans give, and each pattern is there."""

import importlib.util
import sys
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any, get_args

import pytest

from firstcourse.job.tile import Pattern
from firstcourse.papers.start_reasons import start_reasons
from firstcourse.plan import Plan, Surface
from firstcourse.words import speaker_for

ROOT = Path(__file__).parents[3]


def _loaded() -> ModuleType:
    spec = importlib.util.spec_from_file_location("gallery", ROOT / "docs" / "gallery.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    # Its frozen records look their module up by name.
    sys.modules["gallery"] = module
    spec.loader.exec_module(module)
    return module


GALLERY = _loaded()
ENTRIES = {entry.name: entry for entry in GALLERY.ENTRIES}


@cache
def planned(name: str) -> tuple[Plan, Surface]:
    found: tuple[Plan, Surface] = GALLERY.planned(ENTRIES[name])
    return found


@pytest.mark.parametrize("name", ENTRIES)
def test_the_page_and_its_picture_are_what_the_plan_gives(name: str) -> None:
    plan, surface = planned(name)
    page = (ROOT / "docs" / "gallery.md").read_text(encoding="utf-8")
    assert GALLERY.section(ENTRIES[name], plan, surface) in page
    for file, picture in GALLERY.pictures(ENTRIES[name], plan, surface).items():
        assert (ROOT / "docs" / "pictures" / file).read_text(encoding="utf-8") == picture
        assert f"(pictures/{file})" in page


@pytest.mark.parametrize("name", ENTRIES)
def test_a_sliver_stands_only_where_the_plan_says_why(name: str) -> None:
    plan, surface = planned(name)
    pick, *others = surface.tiled[0].starts
    told: list[Any] = [finding for finding in plan.findings if finding.code == "TIL-121"]
    speaker = speaker_for(plan)
    said = start_reasons(speaker, pick, pick)
    assert (" is a sliver" in said.replace("none is a sliver", "")) == bool(told)
    # No start that is offered beside the pick has only what speaks for it.
    beside = [start_reasons(speaker, other, pick) for other in others]
    assert all("against it" in words or "much like" in words for words in beside)


def test_eleven_rooms_show_every_pattern_and_a_floor_that_falls() -> None:
    assert len(ENTRIES) == 11
    assert [name for name in ENTRIES if planned(name)[1].fall is not None] == ["shower"]
    shown = {entry.tiling["pattern"] for entry in ENTRIES.values()}
    assert shown == set(get_args(Pattern))
