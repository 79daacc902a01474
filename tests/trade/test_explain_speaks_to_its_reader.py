"""`explain` spoke the words of the house to every reader: a UK setter was told of blocking, he knows noggings."""

from pathlib import Path

import pytest

from firstcourse.cli import run

WALL = """
name: one wall
practice: PRACTICE
date: 2026-01-01
tape: mm
stock:
  - {id: blocking board, size: [900 mm, 1500 mm], thickness: 12 mm, for: [wall]}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1500 mm, B-C: 1500 mm, C-D: 1500 mm, D-A: 1500 mm}
    diagonals: {A-C: 2121 mm, B-D: 2121 mm}
    height: 2100 mm
    walls:
      - {wall: A-B, framing: {spacing: 400 mm, first: 300 mm, width: 45 mm}}
"""


@pytest.mark.parametrize(
    ("practice", "said", "foreign"), [("uk", "noggings", "of blocking"), ("us", "of blocking", "nogg")]
)
def test_what_if_is_told_in_the_words_of_the_practice(
    practice: str, said: str, foreign: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(WALL.replace("PRACTICE", practice))
    assert run(["explain", str(job), "--effort", "0"]) == 0
    shown = capsys.readouterr().out
    assert said in shown and foreign not in shown
    assert "blocking board:" in shown
