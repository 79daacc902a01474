"""Pages made in a process of their own are those made here, also where that process cannot be used."""

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from firstcourse.papers import page_process
from firstcourse.papers.page_process import PageProcess
from firstcourse.papers.pages import HERE, PaperError

PAGE = """#let d = json(bytes(sys.inputs.data))
#set page(width: 40mm, height: 30mm)
#set text(font: d.face)
#d.text #metadata(d.text.len()) <length>"""
FACE = "IBM Plex Sans"


@pytest.fixture
def page(tmp_path: Path) -> tuple[str, ...]:
    """Page sources that print a text and mark its length."""
    source = tmp_path / "page.typ"
    source.write_text(PAGE, encoding="utf-8")
    return (str(source),)


@pytest.fixture
def maker() -> Iterator[PageProcess]:
    with PageProcess() as made:
        yield made


def test_pages_and_marks_are_those_made_here(maker: PageProcess, page: tuple[str, ...]) -> None:
    told = {"text": "Baño, 60 3/8 in", "face": FACE}
    assert maker.compiled(page, told) == HERE.compiled(page, told)
    assert maker.marked(page, told, "length") == HERE.marked(page, told, "length") == [16]
    assert maker._process is not None


def test_a_process_that_was_asked_much_makes_room_for_another(
    maker: PageProcess, page: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(page_process, "MOST_ASKED", 100)
    maker.marked(page, {"text": "short", "face": FACE}, "length")
    first = maker._process
    assert first is not None and first.poll() is None
    maker.marked(page, {"text": "long" * 20, "face": FACE}, "length")
    assert maker._process is None and first.returncode is not None
    assert maker.marked(page, {"text": "short", "face": FACE}, "length") == [5]


def test_a_warning_is_told_as_it_is_here(maker: PageProcess, page: tuple[str, ...]) -> None:
    with pytest.raises(PaperError, match="no such face"):
        maker.compiled(page, {"text": "text", "face": "no such face"})


def test_a_process_that_was_ended_from_outside_is_done_without(maker: PageProcess, page: tuple[str, ...]) -> None:
    told = {"text": "text", "face": FACE}
    made = maker.compiled(page, told)
    assert maker._process is not None
    maker._process.kill()
    assert maker.compiled(page, told) == made


def test_where_no_process_can_be_started_pages_are_made_here(
    maker: PageProcess, page: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "executable", "")
    told = {"text": "text", "face": FACE}
    assert maker.compiled(page, told) == HERE.compiled(page, told)
    assert maker._process is None
