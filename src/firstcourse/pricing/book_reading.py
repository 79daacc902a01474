"""Read a price book from YAML, JSON, CSV or XLSX; what is wrong is said with its line and column."""

import re
from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

from pydantic import ValidationError

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.files import utf8_text
from firstcourse.placed import KeyPath, Places, dotted, from_yaml, problem, refused
from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.book_tables import Table, csv_table, xlsx_table

LARGEST_BYTES = 5_000_000
_KINDS = {
    "book": "book",
    "material": "materials",
    "delivery": "deliveries",
    "labour": "labour",
    "rate": "rates",
    "done": "done",
    "hire": "hire",
    "disposal": "disposal",
    "overhead": "overhead",
    "profit": "profit",
    "tax": "taxes",
    "risk": "risks",
    "access": "access",
    "found": "found",
}
"""What the column `kind` of a table may say, and where it goes."""
_SINGLE = {"book", "overhead", "profit", "access"}
_DAYS = {"quoted_on", "valid_until"}
_FIRST_DAY = date(1899, 12, 30)


def read_book(data: bytes, name: str) -> PriceBook:
    """Read a price book.

    Args:
        data: The file; its name's end says how it is written.
        name: What to call it in messages, ending in .yaml, .yml, .json, .csv or .xlsx.

    Raises:
        JobError: Listing every problem found, with line and column.
    """
    ending = name.rpartition(".")[2].lower()
    try:
        if len(data) > LARGEST_BYTES:
            raise InputValueError(f"{len(data):,} bytes are too many for a price book ({LARGEST_BYTES:,} at most)")
        if ending == "xlsx":
            found, places = _from_table(xlsx_table(data), name)
        elif ending == "csv":
            found, places = _from_table(csv_table(utf8_text(data)), name)
        elif ending in ("yaml", "yml", "json"):
            found, places = from_yaml(utf8_text(data), name, "a price book")
        else:
            raise InputValueError("is no price book by its name; name it .yaml, .csv or .xlsx")
    except InputValueError as error:
        raise refused(name, str(error)) from None
    try:
        book = PriceBook.model_validate(found)
    except ValidationError as error:
        raise JobError(
            tuple(problem(one, places, name, PriceBook) for one in error.errors(include_url=False))
        ) from None
    twice = tuple(_twice(book, places, name))
    if twice:
        raise JobError(twice)
    return book


def _from_table(rows: Table, name: str) -> tuple[dict[str, Any], Places]:
    if not rows:
        raise refused(name, "is empty; its first row names the columns, `kind` among them")
    at, head = rows[0]
    columns = {number: text.lower().replace(" ", "_") for number, text in head.items()}
    if "kind" not in columns.values() or len(set(columns.values())) < len(columns):
        raise refused(name, "the first row names each column once, and one of them is `kind`", (at, 1))
    found: dict[str, Any] = {}
    places: Places = {(): (at, 1)}
    for row, cells in rows[1:]:
        _add_row(row, cells, columns, found, places, name)
    return found, places


def _add_row(
    row: int,
    cells: Mapping[int, str],
    columns: Mapping[int, str],
    found: dict[str, Any],
    places: Places,
    name: str,
) -> None:
    beyond = next((number for number in cells if number not in columns), None)
    if beyond is not None:
        raise refused(name, f"'{cells[beyond][:40]}' stands in a column without a name", (row, beyond))
    fields = {columns[number]: text for number, text in cells.items()}
    at = {columns[number]: (row, number) for number in cells}
    kind = fields.pop("kind", "").lower()
    if kind not in _KINDS:
        raise refused(name, f"'{kind[:40]}' is no kind; {', '.join(_KINDS)} are", at.get("kind", (row, 1)), "kind")
    for day in _DAYS & fields.keys():
        if re.fullmatch(r"\d{5}", fields[day]):
            fields[day] = (_FIRST_DAY + timedelta(days=int(fields[day]))).isoformat()
    room = _KINDS[kind]
    path: KeyPath = (room,)
    if room in _SINGLE:
        if room in found:
            raise refused(name, f"a second row of {kind}; there is one at most", (row, 1))
        found[room] = fields
    else:
        listed = found.setdefault(room, [])
        path = (room, len(listed))
        listed.append(fields)
    places[path] = (row, 1)
    for field, place in at.items():
        places[(*path, field)] = place


def _twice(book: PriceBook, places: Places, name: str) -> list[InputProblem]:
    """What is said twice, so that nobody could tell which one holds."""
    keys: dict[str, list[tuple[object, ...]]] = {
        "materials": [(one.item, one.supplier, one.holds, one.unit, one.from_packs) for one in book.materials],
        "deliveries": [(one.supplier,) for one in book.deliveries],
        "disposal": [(one.by,) for one in book.disposal],
        "labour": [(one.task,) for one in book.labour],
        "rates": [(one.task,) for one in book.rates],
        "taxes": [(one.name, one.on) for one in book.taxes],
        "risks": [(one.name,) for one in book.risks],
        "found": [(one.work,) for one in book.found],
        "done": [(one.task, one.job) for one in book.done],
    }
    problems = []
    for room, listed in keys.items():
        for number, key in enumerate(listed):
            if key in listed[:number]:
                line, column = places[(room, number)]
                first = places[(room, listed.index(key))][0]
                problems.append(
                    InputProblem(
                        file=name,
                        line=line,
                        column=column,
                        field=dotted((room, number)),
                        message=f"says again what line {first} says; keep one of them",
                    )
                )
    return problems
