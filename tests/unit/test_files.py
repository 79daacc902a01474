"""Files are looked at before they are read."""

import os
from pathlib import Path

import pytest

from firstcourse.errors import InputValueError
from firstcourse.files import read_file, utf8_text


def test_a_file_is_read_whole(tmp_path: Path) -> None:
    (tmp_path / "job.yaml").write_bytes(b"name: x")
    assert read_file(tmp_path / "job.yaml", most_bytes=7, what="a job document") == b"name: x"


def test_a_larger_file_is_refused_unread(tmp_path: Path) -> None:
    with (tmp_path / "job.yaml").open("wb") as file:
        file.truncate(3 << 30)
    with pytest.raises(InputValueError, match="3,221,225,472 bytes are too many for a job document"):
        read_file(tmp_path / "job.yaml", most_bytes=2_000_000, what="a job document")


def test_a_pipe_that_nobody_writes_into_is_refused_at_once(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "job.yaml")
    with pytest.raises(InputValueError, match="is a device or a pipe"):
        read_file(tmp_path / "job.yaml", most_bytes=7, what="a job document")


@pytest.mark.parametrize(
    ("name", "said"),
    [("/dev/zero", "is a device"), (".", "is a folder"), ("none", "No such file"), ("a\0b", "null")],
)
def test_what_is_no_file_is_refused(name: str, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    with pytest.raises(InputValueError, match=said):
        read_file(Path(name), most_bytes=7, what="a job document")


def test_text_that_is_not_utf_8_is_refused_with_its_place() -> None:
    with pytest.raises(InputValueError, match="byte 4 of line 2 is 0xe9"):
        utf8_text(b"name: x\ncaf\xe9: 3\n")
