"""A spreadsheet: sheets of rows under headings, each cell shown as its column says."""

import datetime
import io
from collections.abc import Iterable
from typing import Any, Literal, NamedTuple

from firstcourse.plan import Plan
from firstcourse.units import Tape
from firstcourse.words import speaker_for

_LETTER, _A4 = 1, 9
_UNDATED = datetime.date(1980, 1, 1)
"""Stands in the file where the plan has no date: the earliest that the file's container can hold."""
_LONGEST_TEXT = 32_767
"""Characters that a spreadsheet's cell can hold."""
_LONGEST_NAME = 100
"""A page header holds 255 characters, and the name is one part of it."""


class Formula(NamedTuple):
    """A cell that is computed from others of its row or column, with its value as long as nobody changes them.

    Attributes:
        text: The formula; `{row}` stands for the cell's own row, `{last}` for the one above it.
    """

    text: str
    value: float


Cell = str | int | float | Formula | None


class Column(NamedTuple):
    """A column of a sheet: its code, width in characters, how its cells are shown, and its heading.

    Whole numbers of a column `mm` or `fine` stand without decimals.
    """

    code: str
    width: float
    shown: Literal["text", "count", "mm", "fine", "money"] = "text"
    heading: str = ""


class Table(NamedTuple):
    """One sheet of the workbook."""

    name: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]


def spreadsheet(plan: Plan, tables: Iterable[Table]) -> bytes:
    """An XLSX file; the same tables give the same bytes.

    Args:
        plan: Whose name, date and digest stand on every sheet.
        tables: Its sheets in order.
    """
    import xlsxwriter

    memory = io.BytesIO()
    date = datetime.date.fromisoformat(plan.job.date) if plan.job.date else _UNDATED
    with xlsxwriter.Workbook(
        memory, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False}
    ) as book:
        book.set_properties(
            {"title": plan.job.name, "created": datetime.datetime.combine(date, datetime.time.min)}
        )
        base: dict[str, Any] = {"valign": "top", "border": 7}
        formats = {
            "heading": book.add_format({**base, "bold": True, "text_wrap": True, "bottom": 2}),
            "text": book.add_format({**base, "text_wrap": True}),
            "count": book.add_format({**base, "num_format": "0"}),
            "mm": book.add_format({**base, "num_format": "0.0"}),
            "fine": book.add_format({**base, "num_format": "0.0##"}),
            "money": book.add_format({**base, "num_format": "#,##0.00"}),
        }
        for table in tables:
            _write(book.add_worksheet(table.name), table, formats, plan)
    return memory.getvalue()


def _write(sheet: Any, table: Table, formats: dict[str, Any], plan: Plan) -> None:
    sheet.set_landscape()
    sheet.set_paper(_A4 if plan.job.tape is Tape.MM else _LETTER)
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0)
    sheet.freeze_panes(1, 0)
    name = plan.job.name[:_LONGEST_NAME].replace("&", "&&")
    sheet.set_header(f"&L{name}&R{table.name}")
    speaker = speaker_for(plan)
    foot = speaker.text("workbook-foot", digest=plan.job.digest[:12])
    page = speaker.text("workbook-page", page="&P", pages="&N")
    sheet.set_footer(f"&L{foot}&R{page}")
    for place, column in enumerate(table.columns):
        sheet.set_column(place, place, column.width)
        sheet.write_string(0, place, column.heading, formats["heading"])
    for number, row in enumerate(table.rows, start=1):
        for place, (column, value) in enumerate(zip(table.columns, row, strict=True)):
            whole = column.shown in ("mm", "fine") and isinstance(value, int | float) and value == int(value)
            shown = formats["count" if whole else column.shown]
            if value is None or value == "":
                sheet.write_blank(number, place, None, shown)
            elif isinstance(value, str):
                # A longer text would be left out whole, without a word.
                fits = value if len(value) <= _LONGEST_TEXT else value[: _LONGEST_TEXT - 1] + "…"
                sheet.write_string(number, place, fits, shown)
            elif isinstance(value, Formula):
                sheet.write_formula(
                    number, place, value.text.format(row=number + 1, last=number), shown, value.value
                )
            else:
                sheet.write_number(number, place, value, shown)
    # Results such as 14 stand as the plan prints them; that they are text is meant.
    sheet.ignore_errors({"number_stored_as_text": f"A1:XFD{len(table.rows) + 1}"})
