"""`order` from the command line: what a supplier may see, with a price book and without one."""

import json
import subprocess
from pathlib import Path

import pytest

from firstcourse.cli import run

ROOT = Path(__file__).parents[2]
JOB = str(ROOT / "examples" / "limber-floor" / "job.yaml")
BOOK = str(ROOT / "examples" / "prices.yaml")


def _order(*more: str) -> list[str]:
    return ["order", JOB, "--effort", "0", *more]


def test_an_order_names_suppliers_and_no_money(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "out"
    assert run(_order("--prices", BOOK, "--out", str(out))) == 0
    shown = capsys.readouterr().out
    assert {file.name for file in out.iterdir()} == {"plan.json", "supply-letter.pdf", "supply-a4.pdf"}
    assert "To order from" in shown and "invented" in shown
    paper = subprocess.run(
        ["pdftotext", str(out / "supply-a4.pdf"), "-"], capture_output=True, text=True, check=True
    )
    for text in (shown, paper.stdout):
        assert "Total" not in text and "14.50" not in text and "USD" not in text


def test_without_a_book_the_packs_are_those_of_the_plan(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(_order("--json", "--out", str(tmp_path / "out"))) == 0
    found = json.loads(capsys.readouterr().out)
    plan = json.loads((tmp_path / "out" / "plan.json").read_text())
    needed = [one["item"] for one in plan["quantities"] if one["exact"] > 0]
    assert [line["item"] for line in found["order"]] == needed and needed
    assert not any("cost" in line or line["bought"] for line in found["order"])
    assert run(_order()) == 0
    shown = capsys.readouterr().out
    assert "from whom is open" in shown
    boards = next(one for one in plan["quantities"] if one["item"].startswith("stock/") and one["buy"])
    assert f"| {boards['buy']} × " in shown


def test_a_book_that_is_not_there_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "out"
    assert run(_order("--prices", str(tmp_path / "none.csv"), "--out", str(out))) == 2
    assert "none.csv" in capsys.readouterr().err
    assert not out.exists()
