"""`price` from the command line: what it writes, what `verify` says of it, and books that are refused."""

import json
import shutil
from pathlib import Path

import pytest

from firstcourse.cli import run

ROOT = Path(__file__).parents[2]
JOB = ROOT / "examples" / "limber-floor" / "job.yaml"
BOOK = ROOT / "examples" / "prices.yaml"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("priced") / "out"
    assert run(["price", str(JOB), "--prices", str(BOOK), "--effort", "0", "--out", str(made)]) == 0
    return made


def test_an_order_is_written_with_the_plan_it_is_for(folder: Path) -> None:
    assert {file.name for file in folder.iterdir()} == {
        "plan.json", "price.json", "order-letter.pdf", "order-a4.pdf",
    }  # fmt: skip


def test_verify_proves_the_price_beside_the_plan(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["verify", str(folder)]) == 0
    assert "price.json" in capsys.readouterr().out
    spoilt = shutil.copytree(folder, tmp_path / "spoilt")
    price = json.loads((spoilt / "price.json").read_text())
    price["total"] = "1.00"
    (spoilt / "price.json").write_text(json.dumps(price))
    assert run(["verify", str(spoilt)]) == 1
    assert "VER-95" in capsys.readouterr().out


def test_json_is_the_price(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["price", str(JOB), "--prices", str(BOOK), "--effort", "0", "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == json.loads((folder / "price.json").read_text())


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("currency: USD", "currency: dollars", "currency"),
        ("price: 14.50", "price: 1e308", "price"),
        ("holds: 1, unit: sheet, price: 14.50", "holds: 1, unit: lb, price: 14.50", "sheet"),
        ("item: stock/floor board 3x5, supplier", "itm: stock/floor board 3x5, supplier", "itm"),
    ],
)
def test_a_bad_book_is_refused_and_nothing_is_written(
    old: str, new: str, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = BOOK.read_text()
    assert old in text
    book = tmp_path / "book.yaml"
    book.write_text(text.replace(old, new, 1))
    out = tmp_path / "out"
    assert run(["price", str(JOB), "--prices", str(book), "--effort", "0", "--out", str(out)]) == 2
    assert not out.exists()
    shown = capsys.readouterr().err
    assert said in shown and "Traceback" not in shown
    # A pack in another unit than the plan's is seen only beside the plan, and named by what it is a pack of.
    line = 1 + book.read_text()[: book.read_text().index(new)].count("\n")
    assert f"book.yaml:{line}:" in shown or "stock/floor board 3x5" in shown


def test_a_book_that_is_not_there_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["price", str(JOB), "--prices", str(tmp_path / "none.csv")]) == 2
    assert "none.csv" in capsys.readouterr().err
