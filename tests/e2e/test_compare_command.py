"""`compare` from the command line: a list of alternatives that is wrong is told, and nothing is written."""

from pathlib import Path

import pytest

from firstcourse.cli import run

JOB = Path(__file__).parents[2] / "examples" / "metric-column" / "job.yaml"


@pytest.mark.parametrize("text", [None, "alternatives: [{name: one, changes: []}]"])
def test_a_wrong_list_writes_nothing(text: str | None, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    asked, out = tmp_path / "a.yaml", tmp_path / "out"
    if text is not None:
        asked.write_text(text)
    assert run(["compare", str(JOB), "--with", str(asked), "--out", str(out)]) == 2
    assert str(asked) in capsys.readouterr().err
    assert not out.exists()
