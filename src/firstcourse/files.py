"""Read a file that a person named, after looking at what it is: never a device, a pipe or more than is wanted."""

import os
import stat
from pathlib import Path

from firstcourse.errors import InputValueError


def read_file(path: Path, *, most_bytes: int, what: str) -> bytes:
    """Read a whole file.

    Args:
        path: The file, or a link to one.
        most_bytes: The largest that is read [bytes].
        what: What the file should be, such as `a job document`, for messages.

    Raises:
        InputValueError: It cannot be read, is no file, or is too large; the message does not repeat the path.
    """
    try:
        # Without waiting: opening a pipe that nobody writes into would never come back.
        opened = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    except (OSError, ValueError) as error:
        raise InputValueError(getattr(error, "strerror", None) or f"cannot be read: {error}") from None
    try:
        status = os.fstat(opened)
        if stat.S_ISDIR(status.st_mode):
            raise InputValueError(f"is a folder; name the file of {what} in it")
        if not stat.S_ISREG(status.st_mode):
            raise InputValueError(f"is a device or a pipe; save {what} in a file and name that")
        if status.st_size > most_bytes:
            raise InputValueError(f"{status.st_size:,} bytes are too many for {what} ({most_bytes:,} at most)")
        with open(opened, "rb", closefd=False) as file:
            data = file.read(most_bytes + 1)
    except OSError as error:
        raise InputValueError(error.strerror or "cannot be read") from None
    finally:
        os.close(opened)
    if len(data) > most_bytes:
        raise InputValueError(f"grows while it is read; {most_bytes:,} bytes are the most for {what}")
    return data


def utf8_text(data: bytes) -> str:
    """Decode a file's text.

    Raises:
        InputValueError: It is not UTF-8; the message says at which line and byte.
    """
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        place = error.start - (data.rfind(b"\n", 0, error.start) + 1) + 1
        raise InputValueError(
            f"is not UTF-8 text: byte {place} of line {line} is 0x{data[error.start]:02x}; save it as UTF-8"
        ) from None
