"""The tutorial's lines run as they stand there."""

import re
from pathlib import Path

import pytest

TUTORIAL = Path(__file__).parents[2] / "docs" / "tutorial.md"


def test_the_tutorial_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (code,) = re.findall(r"```python\n(.+?)```", TUTORIAL.read_text(encoding="utf-8"), flags=re.DOTALL)
    monkeypatch.chdir(tmp_path)
    exec(compile(code, str(TUTORIAL), "exec"), {})
    shown = capsys.readouterr().out
    assert re.search(r"\d+ boards from \d+ sheets", shown) and "boards changed: hall bath/wall/A-B" in shown
    assert (tmp_path / "wall.svg").read_text(encoding="utf-8").startswith("<svg")
    assert {"plan.json", "site-pack-letter.pdf"} <= {file.name for file in (tmp_path / "plan").iterdir()}
