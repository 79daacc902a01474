"""What must hold for the checkout as a whole: locks carry hashes and no address, modules stay readable."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LONGEST_MODULE = 520


@pytest.mark.parametrize("name", ["requirements.lock", "requirements-dev.lock"])
def test_locks_hold_hashes_and_no_address(name: str) -> None:
    text = (ROOT / name).read_text()
    assert not re.search(r"https?:|file:|--index|--find-links|@ ", text)
    requirements = re.findall(r"^[A-Za-z0-9_.\-]+==", text, flags=re.MULTILINE)
    hashed = re.findall(r"^[A-Za-z0-9_.\-]+==[^\n]*\\\n\s+--hash=sha256:", text, flags=re.MULTILINE)
    assert len(requirements) == len(hashed) > 20


def test_the_development_lock_holds_the_same_versions() -> None:
    def versions(name: str) -> set[str]:
        return set(re.findall(r"^([A-Za-z0-9_.\-]+==\S+)", (ROOT / name).read_text(), flags=re.MULTILINE))

    assert versions("requirements.lock") <= versions("requirements-dev.lock")


@pytest.mark.parametrize("file", sorted((ROOT / "src").rglob("*.py")), ids=lambda file: file.name)
def test_modules_stay_readable(file: Path) -> None:
    assert len(file.read_text(encoding="utf-8").splitlines()) <= LONGEST_MODULE
