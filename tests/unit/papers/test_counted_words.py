"""One piece, two pieces: no paper prints one of a thing in the plural."""

import json
import re
from pathlib import Path

import pytest

from example_plans import result_of
from firstcourse.app.summaries import summarize
from firstcourse.cli.plan import print_summary
from firstcourse.papers.office_pack import office_data
from firstcourse.papers.site_pack import pack_data
from firstcourse.papers.workbook import tables
from firstcourse.units import counted, one_or_more
from firstcourse.words import speaker_for

ONE_OF_MANY = re.compile(r"(?<![\d.,/#'-])1 (?!across|is |this |has )[a-z]{3,}s\b")


@pytest.mark.parametrize("name", ["out-of-true", "tiled-shower"])
def test_one_of_a_thing_is_no_plural(name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    done = result_of(name)
    print_summary(summarize(done), tmp_path, speaker_for(done.plan))
    shown = [capsys.readouterr().out]
    shown += [json.dumps(data(done.plan), ensure_ascii=False) for data in (pack_data, office_data)]
    shown += [
        " ".join("" if cell is None else str(cell) for cell in row)
        for table in tables(done.plan)
        for row in table.rows
    ]
    shown += [f"{w['result']} {w['unit']}" for w in office_data(done.plan)["workings"]]
    shown += [" ".join(row[3:]) for row in pack_data(done.plan)["shopping"]]
    assert [found[0] for text in shown for found in ONE_OF_MANY.finditer(text)] == []


@pytest.mark.parametrize(
    ("number", "plural", "word"),
    [
        (1, "boxes", "box"),
        (1.0, "pieces", "piece"),
        ("1", "inside corners", "inside corners"),
        (0, "sheets", "sheets"),
    ],
)
def test_words_follow_their_number(number: float | str, plural: str, word: str) -> None:
    assert one_or_more(number, plural) == word


def test_what_is_not_counted_stays() -> None:
    assert [counted(1, unit) for unit in ("kg", "mm", "glass")] == ["1 kg", "1 mm", "1 glass"]
