"""Of 535 validation tests some 330 met a printed number; the README said neither how many nor how read."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
VALIDATION = ROOT / "tests" / "validation"


def test_the_readme_says_how_many_published_results_hold_and_how_they_were_read() -> None:
    done = subprocess.run(
        [sys.executable, str(VALIDATION / "kinds.py")], cwd=ROOT, capture_output=True, text=True, check=True
    )
    said = done.stdout.strip()
    assert said.endswith("copied from.") and int(said.split()[0]) > 300
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert said in readme, f"renew the README: {said}"
    assert "tests/validation/kinds.py" in readme


def test_every_file_and_every_exception_is_one_that_is_there() -> None:
    files = {file.stem for file in VALIDATION.glob("test_*.py")}
    text = "".join(file.read_text(encoding="utf-8") for file in VALIDATION.glob("test_*.py"))
    lists: dict[str, object] = {}
    exec(compile((VALIDATION / "kinds.py").read_text(encoding="utf-8"), "kinds.py", "exec"), lists)
    of_file, of_test, kinds = lists["OF_FILE"], lists["OF_TEST"], lists["KINDS"]
    assert isinstance(of_file, dict) and isinstance(of_test, dict) and isinstance(kinds, tuple)
    assert set(of_file) == files
    assert not [name for name in of_test if f"def {name}(" not in text]
    assert {*of_file.values(), *of_test.values()} <= set(kinds)
