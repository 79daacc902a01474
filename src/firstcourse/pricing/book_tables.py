"""A price book's tables as text: comma-separated values, and the first sheet of a workbook.

A workbook is a compressed file from anywhere: how much is unpacked is limited before it is unpacked, entities and
formulas are refused, and nothing but the first sheet and its texts is looked at.
"""

import csv
import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from xml.etree import ElementTree

from firstcourse.errors import InputValueError

MOST_ROWS, MOST_COLUMNS = 20_000, 60
MOST_CELL = 2_000
MOST_UNPACKED = 30_000_000
"""Bytes of one part of a workbook when unpacked."""
MOST_PARTS = 500
_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_CELL = re.compile(r"([A-Z]{1,3})([1-9]\d{0,6})")
_FORMULA = ("=", "+", "@")

Table = list[tuple[int, dict[int, str]]]
"""Rows with their numbers, each with the texts of its filled columns; both are counted from 1."""


def csv_table(text: str) -> Table:
    """The rows of comma-separated values.

    Raises:
        InputValueError: It is no such file, is too large, or holds a formula; the message names the place.
    """
    rows: Table = []
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    try:
        for cells in reader:
            filled = {number: cell.strip() for number, cell in enumerate(cells, start=1) if cell.strip()}
            if filled:
                rows.append((reader.line_num, filled))
                _check(rows)
    except csv.Error as error:
        raise InputValueError(f"line {reader.line_num}: {error}; put a cell with commas in quotes") from None
    return rows


def xlsx_table(data: bytes) -> Table:
    """The rows of a workbook's first sheet, as the texts that its cells hold.

    Raises:
        InputValueError: As for `csv_table`, or it is no workbook.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as book:
            parts = book.infolist()
            if len(parts) > MOST_PARTS:
                raise InputValueError(f"holds {len(parts):,} parts; a price book has {MOST_PARTS} at most")
            sheets = sorted(
                (part.filename for part in parts if re.fullmatch(r"xl/worksheets/sheet\d+\.xml", part.filename)),
                key=lambda name: (len(name), name),
            )
            if not sheets:
                raise InputValueError("holds no sheet; save it as a workbook (.xlsx) or as CSV")
            names = {part.filename for part in parts}
            texts = list(_shared(_part(book, "xl/sharedStrings.xml"))) if "xl/sharedStrings.xml" in names else []
            if "xl/workbook.xml" in names:
                properties = _part(book, "xl/workbook.xml").find(f"{_MAIN}workbookPr")
                if properties is not None and properties.get("date1904") in ("1", "true"):
                    raise InputValueError("counts its days from 1904; save it with days from 1900, or as CSV")
            return _rows(_part(book, sheets[0]), texts)
    except (zipfile.BadZipFile, zlib.error, NotImplementedError, RuntimeError, EOFError, OSError, KeyError):
        raise InputValueError("cannot be read as a workbook; save it again as .xlsx, or as CSV") from None


def _part(book: zipfile.ZipFile, name: str) -> ElementTree.Element:
    with book.open(name) as packed:  # what the file says of its own size is not believed
        data = packed.read(MOST_UNPACKED + 1)
    if len(data) > MOST_UNPACKED:
        raise InputValueError(f"unpacks to more than {MOST_UNPACKED:,} bytes ({name}); a price book is smaller")
    # In a two-byte encoding a declaration would not be seen; workbooks are UTF-8.
    if b"\0" in data or b"<!" in data.replace(b"<!--", b""):
        raise InputValueError(f"declares entities ({name}), which no price book needs")
    try:
        return ElementTree.fromstring(data)
    except ElementTree.ParseError as error:
        raise InputValueError(f"cannot be read as a workbook ({name}: {error})") from None


def _shared(root: ElementTree.Element) -> Iterator[str]:
    for item in root.iter(f"{_MAIN}si"):
        yield "".join(part.text or "" for part in item.iter(f"{_MAIN}t"))


def _rows(root: ElementTree.Element, texts: list[str]) -> Table:
    rows: Table = []
    for row in root.iter(f"{_MAIN}row"):
        filled: dict[int, str] = {}
        at = 0
        for cell in row.iter(f"{_MAIN}c"):
            found = _CELL.fullmatch(cell.get("r", ""))
            if found is None:
                raise InputValueError("has a cell without a place; save it again as .xlsx, or as CSV")
            at = int(found[2])
            if cell.find(f"{_MAIN}f") is not None:
                raise InputValueError(f"cell {found[0]} is a formula; paste its value instead")
            text = _text(cell, texts, found[0]).strip()
            if text:
                filled[_column(found[1])] = text
        if filled:
            rows.append((at, filled))
            _check(rows)
    return rows


def _text(cell: ElementTree.Element, texts: list[str], place: str) -> str:
    kind, value = cell.get("t", "n"), cell.findtext(f"{_MAIN}v", "")
    if kind == "inlineStr":
        return "".join(part.text or "" for part in cell.iter(f"{_MAIN}t"))
    if kind == "s":
        if not value.isdecimal() or int(value) >= len(texts):
            raise InputValueError(f"cell {place} names a text that is not there; save it again")
        return texts[int(value)]
    if kind == "e":
        raise InputValueError(f"cell {place} holds an error ({value}); put a value there")
    if kind == "n" and value:
        # A workbook keeps 17.1 as its nearest binary fraction in 17 figures: its shortest name is what was typed.
        try:
            return repr(float(value)).removesuffix(".0")
        except ValueError:
            raise InputValueError(f"cell {place} holds no number: {value[:40]}") from None
    return value


def _column(letters: str) -> int:
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


def _check(rows: Table) -> None:
    at, cells = rows[-1]
    if len(rows) > MOST_ROWS:
        raise InputValueError(f"row {at}: more than {MOST_ROWS:,} rows; a price book has fewer")
    if max(cells) > MOST_COLUMNS:
        raise InputValueError(f"row {at}: more than {MOST_COLUMNS} columns; a price book has fewer")
    for number, text in cells.items():
        if len(text) > MOST_CELL:
            raise InputValueError(f"row {at}, column {number}: {len(text):,} characters are too many for a cell")
        if text.startswith(_FORMULA):
            raise InputValueError(f"row {at}, column {number}: '{text[:40]}' begins like a formula; give a value")
