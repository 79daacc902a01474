"""Read a price book from YAML, JSON, CSV or XLSX; what is wrong is said with its line and column."""

import difflib
import re
from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

import yaml
from pydantic import ValidationError

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.files import utf8_text
from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.book_tables import Table, csv_table, xlsx_table
from firstcourse.units import printable

LARGEST_BYTES = 5_000_000
MOST_NODES, DEEPEST = 200_000, 8
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
}
"""What the column `kind` of a table may say, and where it goes."""
_SINGLE = {"book", "overhead", "profit", "access"}
_DAYS = {"quoted_on", "valid_until"}
_FIRST_DAY = date(1899, 12, 30)

_Path = tuple[str | int, ...]
_Places = dict[_Path, tuple[int, int]]


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
            found, places = _from_yaml(utf8_text(data), name)
        else:
            raise InputValueError("is no price book by its name; name it .yaml, .csv or .xlsx")
    except InputValueError as error:
        raise _refused(name, str(error)) from None
    try:
        book = PriceBook.model_validate(found)
    except ValidationError as error:
        raise JobError(
            tuple(_problem(one, found, places, name) for one in error.errors(include_url=False))
        ) from None
    twice = tuple(_twice(book, places, name))
    if twice:
        raise JobError(twice)
    return book


def _refused(name: str, message: str, at: tuple[int, int] = (0, 0), field: str = "") -> JobError:
    problem = InputProblem(file=name, line=at[0], column=at[1], field=field, message=printable(message))
    return JobError((problem,))


def _from_yaml(text: str, name: str) -> tuple[Any, _Places]:
    try:
        root = yaml.compose(text, yaml.CSafeLoader)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        at = (mark.line + 1, mark.column + 1) if mark else (0, 0)
        raise _refused(name, f"cannot be read: {error.problem or error.context}", at) from None
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        raise _refused(name, f"cannot be read as YAML: {str(error).splitlines()[0]}") from None
    if not isinstance(root, yaml.MappingNode):
        raise _refused(name, "must begin with keys such as `book:` and `materials:`")
    places: _Places = {}
    seen: set[int] = set()
    return _plain(root, (), places, seen, name), places


def _plain(node: yaml.Node, path: _Path, places: _Places, seen: set[int], name: str) -> Any:
    at = (node.start_mark.line + 1, node.start_mark.column + 1)
    places[path] = at
    if id(node) in seen:
        raise _refused(name, "anchors and aliases are not used in a price book; write it out", at)
    seen.add(id(node))
    if len(seen) > MOST_NODES or len(path) > DEEPEST:
        raise _refused(name, "is more than a price book holds", at)
    if isinstance(node, yaml.MappingNode):
        found: dict[str, Any] = {}
        for key, value in node.value:
            where = (key.start_mark.line + 1, key.start_mark.column + 1)
            if not isinstance(key, yaml.ScalarNode) or key.value in found:
                raise _refused(name, "a key must be plain text that stands once", where, _dotted(path))
            found[key.value] = _plain(value, (*path, key.value), places, seen, name)
        return found
    if isinstance(node, yaml.SequenceNode):
        return [_plain(one, (*path, number), places, seen, name) for number, one in enumerate(node.value)]
    return None if node.tag.endswith(":null") and not getattr(node, "style", None) else node.value


def _from_table(rows: Table, name: str) -> tuple[dict[str, Any], _Places]:
    if not rows:
        raise _refused(name, "is empty; its first row names the columns, `kind` among them")
    at, head = rows[0]
    columns = {number: text.lower().replace(" ", "_") for number, text in head.items()}
    if "kind" not in columns.values() or len(set(columns.values())) < len(columns):
        raise _refused(name, "the first row names each column once, and one of them is `kind`", (at, 1))
    found: dict[str, Any] = {}
    places: _Places = {(): (at, 1)}
    for row, cells in rows[1:]:
        _add_row(row, cells, columns, found, places, name)
    return found, places


def _add_row(
    row: int,
    cells: Mapping[int, str],
    columns: Mapping[int, str],
    found: dict[str, Any],
    places: _Places,
    name: str,
) -> None:
    beyond = next((number for number in cells if number not in columns), None)
    if beyond is not None:
        raise _refused(name, f"'{cells[beyond][:40]}' stands in a column without a name", (row, beyond))
    fields = {columns[number]: text for number, text in cells.items()}
    at = {columns[number]: (row, number) for number in cells}
    kind = fields.pop("kind", "").lower()
    if kind not in _KINDS:
        raise _refused(
            name, f"'{kind[:40]}' is no kind; {', '.join(_KINDS)} are", at.get("kind", (row, 1)), "kind"
        )
    for day in _DAYS & fields.keys():
        if re.fullmatch(r"\d{5}", fields[day]):
            fields[day] = (_FIRST_DAY + timedelta(days=int(fields[day]))).isoformat()
    room = _KINDS[kind]
    path: _Path = (room,)
    if room in _SINGLE:
        if room in found:
            raise _refused(name, f"a second row of {kind}; there is one at most", (row, 1))
        found[room] = fields
    else:
        listed = found.setdefault(room, [])
        path = (room, len(listed))
        listed.append(fields)
    places[path] = (row, 1)
    for field, place in at.items():
        places[(*path, field)] = place


def _problem(one: Any, found: Any, places: _Places, name: str) -> InputProblem:
    path = tuple(one["loc"])
    known = path
    while known not in places:
        known = known[:-1]
    line, column = places[known]
    message = one["msg"].removeprefix("Value error, ")
    if one["type"] == "extra_forbidden":
        message = f"'{path[-1]}' is not known here" + _meant(path)
    elif one["type"] == "missing":
        message = f"'{path[-1]}' is missing"
    elif isinstance(one["input"], str):
        message = f"{message[:1].lower()}{message[1:]}; received '{one['input'][:60]}'"
    return InputProblem(file=name, line=line, column=column, field=_dotted(path), message=printable(message))


def _meant(path: _Path) -> str:
    if len(path) != 1:
        return ""
    near = difflib.get_close_matches(str(path[0]), PriceBook.model_fields, n=1)
    return f"; is `{near[0]}` meant?" if near else ""


def _dotted(path: _Path) -> str:
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}" if text else str(part)
    return text


def _twice(book: PriceBook, places: _Places, name: str) -> list[InputProblem]:
    """What is said twice, so that nobody could tell which one holds."""
    keys: dict[str, list[tuple[object, ...]]] = {
        "materials": [(one.item, one.supplier, one.holds, one.unit, one.from_packs) for one in book.materials],
        "deliveries": [(one.supplier,) for one in book.deliveries],
        "disposal": [(one.by,) for one in book.disposal],
        "labour": [(one.task,) for one in book.labour],
        "rates": [(one.task,) for one in book.rates],
        "taxes": [(one.name, one.on) for one in book.taxes],
        "risks": [(one.name,) for one in book.risks],
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
                        field=_dotted((room, number)),
                        message=f"says again what line {first} says; keep one of them",
                    )
                )
    return problems
