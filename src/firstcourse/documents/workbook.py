"""The plan as a spreadsheet: pieces, cuts in working order, shopping with prices, findings, workings and rules."""

import datetime
import io
import math
from collections.abc import Iterator, Mapping
from typing import Any, Literal, NamedTuple

from firstcourse.documents.rule_values import shown_value
from firstcourse.documents.ticket_pages import parts_named
from firstcourse.drawings.cut_tiles import cut_kinds
from firstcourse.drawings.cut_words import said_places, size_words
from firstcourse.drawings.tickets import part_numbers, parts_within
from firstcourse.geometry import area2, sides
from firstcourse.plan import Board, Part, Plan, Ring, Sheet
from firstcourse.pricing import price
from firstcourse.units import Tape, format_length, one_or_more, to_mm
from firstcourse.words import SaidWorking, Speaker, speaker_for

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
    """A column of a sheet: its heading, width in characters, and how its cells are shown.

    Whole numbers of a column `mm` or `fine` stand without decimals.
    """

    heading: str
    width: float
    shown: Literal["text", "count", "mm", "fine", "money"] = "text"


class Table(NamedTuple):
    """One sheet of the workbook."""

    name: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]


def workbook(plan: Plan) -> bytes:
    """The plan's spreadsheet.

    Text stays text, whatever it begins with; lengths stand as the job's tape reads them and in millimetres.

    Args:
        plan: A verified plan.

    Returns:
        An XLSX file; the same plan gives the same bytes.
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
        for table in tables(plan):
            _write(book.add_worksheet(table.name), table, formats, plan)
    return memory.getvalue()


def tables(plan: Plan) -> tuple[Table, ...]:
    """What the workbook's sheets show, in order."""
    tiled = (_tile_cuts(plan),) if plan.tile_stock else ()
    speaker = speaker_for(plan)
    said = {name: speaker.working(working) for name, working in plan.workings.items()}
    texts = (*tiled, _shopping(plan, said), _findings(plan), _workings(plan, said))
    told = (_told(table, plan) for table in texts)
    return (_pieces(plan), _cuts(plan), *told, _rules(plan))


def _told(table: Table, plan: Plan) -> Table:
    """A sheet in the reader's words and units; ids and titles of sources stay."""
    speaker = speaker_for(plan)
    own = [column.heading not in ("id", "source", "rule", "code") for column in table.columns]
    rows = (
        tuple(
            speaker.say(cell) if said and isinstance(cell, str) else cell
            for cell, said in zip(row, own, strict=True)
        )
        for row in table.rows
    )
    return table._replace(rows=tuple(rows))


def _write(sheet: Any, table: Table, formats: dict[str, Any], plan: Plan) -> None:
    sheet.set_landscape()
    sheet.set_paper(_A4 if plan.job.tape is Tape.MM else _LETTER)
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0)
    sheet.freeze_panes(1, 0)
    name = plan.job.name[:_LONGEST_NAME].replace("&", "&&")
    sheet.set_header(f"&L{name}&R{table.name}")
    sheet.set_footer(f"&Lplan {plan.job.digest[:12]}&Rpage &P of &N")
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


def _pieces(plan: Plan) -> Table:
    columns = (
        Column("mark", 9),
        Column("surface", 26),
        Column("stock", 20),
        Column("cut from", 13),
        Column("width", 13),
        Column("height", 13),
        Column("width, mm", 10, "mm"),
        Column("height, mm", 10, "mm"),
        Column("holes", 7),
        Column("taper", 7),
        Column("notch", 7),
        Column("fasteners", 10, "count"),
    )
    pieces = {piece.id: piece for piece in plan.pieces}
    part_of = {
        part.piece: f"{sheet.id}, part {part_numbers(sheet)[part.id]}"
        for sheet in plan.sheets
        for part in sheet.parts
        if part.piece
    }
    rows: list[tuple[Cell, ...]] = []
    speaker = speaker_for(plan)
    for surface in plan.surfaces:
        for board in surface.boards:
            piece = pieces.get(board.piece)
            blank: tuple[int, ...] = piece.blank if piece else ()
            size: list[Cell] = [format_length(side, plan.job.tape) for side in blank] or ["", ""]
            size += [to_mm(side) for side in blank] or [None, None]
            rows.append(
                (
                    _mark(board),
                    speaker.place(surface.id),
                    piece.stock if piece else "already up",
                    part_of.get(board.piece, ""),
                    *size,
                    _yes(bool(board.holes)),
                    _yes(_is_tapered(board.outline, plan.job.tape)),
                    _yes(_is_notched(board.outline, plan.job.tape)),
                    len(board.fasteners),
                )
            )
    return Table("Boards and pieces", columns, tuple(rows))


def _cuts(plan: Plan) -> Table:
    columns = (
        Column("sheet", 8),
        Column("stock", 20),
        Column("source", 20),
        Column("size", 18),
        Column("cut", 6, "count"),
        Column("cut part", 10),
        Column("line runs", 12),
        Column("distance", 13),
        Column("distance, mm", 10, "mm"),
        Column("from the part's", 12),
        Column("gives, at that edge", 28),
        Column("gives, beyond the line", 28),
    )
    speaker = speaker_for(plan)
    marks = {board.piece: _mark(board) for surface in plan.surfaces for board in surface.boards}
    rows = [row for sheet in plan.sheets for row in _sheet_cuts(sheet, marks, speaker)]
    return Table("Sheets and cuts", columns, tuple(rows))


def _sheet_cuts(sheet: Sheet, marks: dict[str, str], speaker: Speaker) -> Iterator[tuple[Cell, ...]]:
    """One row for each cut; a sheet that is used whole has one row, without a cut."""
    tape = speaker.tape
    source = "new sheet" if sheet.source == "new" else f"kept offcut {sheet.source.removeprefix('offcut:')}"
    head = (sheet.id, sheet.stock, source, _size(sheet.size, tape))
    parts, held = {part.id: part for part in sheet.parts}, parts_within(sheet)
    for number, cut in enumerate(sheet.cuts, start=1):
        what = "sheet" if cut.of == sheet.id else parts_named(held[cut.of], speaker)
        near, far = (_given(held.get(name, ()), parts.get(name), marks, speaker) for name in cut.gives)
        runs, edge = ("across", "lower edge") if cut.along == "x" else ("up", "left edge")
        yield *head, number, what, runs, format_length(cut.at, tape), to_mm(cut.at), edge, near, far
    if not sheet.cuts:
        whole = next(iter(sheet.parts), None)
        given = _given(held.get(whole.id, ()), whole, marks, speaker) if whole else ""
        yield *head, None, "sheet", "no cut", "", None, "", given, ""


def _given(numbers: tuple[int, ...], part: Part | None, marks: dict[str, str], speaker: Speaker) -> str:
    """What a cut sets free, by the numbers that the ticket has for it."""
    named = parts_named(numbers, speaker)
    if part is None:
        return f"{named}: cut again" if numbers else named
    if part.piece is not None:
        turned = ", lies turned by a quarter" if part.turned else ""
        return f"{named}: piece {marks.get(part.piece, part.piece)}{turned}"
    return f"{named}: keep, {_size(part.size, speaker.tape)}" if part.keep else named


def _tile_cuts(plan: Plan) -> Table:
    """Each line of cut tiles: how many, where they go, about what size, and how many tiles are cut for them."""
    columns = (
        Column("mark", 7),
        Column("surface", 28),
        Column("cut", 16),
        Column("number", 9, "count"),
        Column("where", 34),
        Column("tile", 20),
        Column("size", 30),
        Column("width, mm", 10, "mm"),
        Column("to, mm", 10, "mm"),
        Column("height, mm", 10, "mm"),
        Column("up to, mm", 10, "mm"),
        Column("from tiles", 10, "count"),
        Column("shares them with", 30),
    )
    speaker = speaker_for(plan)
    lines = [
        (surface, kind, {tile.from_ for tile in kind.tiles})
        for surface in plan.surfaces
        for kind in cut_kinds(surface, without={})
    ]
    speaker = speaker_for(plan)
    sharing: dict[str, list[str]] = {}
    for surface, kind, sources in lines:
        for source in sources:
            sharing.setdefault(source, []).append(f"{kind.mark} of {speaker.place(surface.id)}")
    rows: list[tuple[Cell, ...]] = []
    for surface, kind, sources in lines:
        name = f"{kind.mark} of {speaker.place(surface.id)}"
        others = dict.fromkeys(other for source in sorted(sources) for other in sharing[source] if other != name)
        rows.append(
            (
                kind.mark,
                speaker.place(surface.id),
                "to fit" if kind.is_fit else "as drawn",
                kind.count,
                ", ".join(f"{place} ({number})" for place, number in said_places(kind.places, speaker)),
                kind.tile.stock,
                size_words(kind, speaker),
                *(to_mm(side) for pair in zip(kind.least, kind.most, strict=True) for side in pair),
                len(sources),
                "; ".join(others),
            )
        )
    return Table("Tile cuts", columns, tuple(rows))


def _shopping(plan: Plan, said: Mapping[str, SaidWorking]) -> Table:
    """What is bought; a price or a number that somebody changes changes the cost."""
    currency = plan.job.currency or "money"
    columns = (
        Column("item", 28),
        Column("need", 10, "fine"),
        Column("unit", 11),
        Column("buy", 7, "count"),
        Column("pack", 20),
        Column(f"price of one, {currency}", 11, "money"),
        Column(f"cost, {currency}", 11, "money"),
        Column("working", 70),
    )
    speaker = speaker_for(plan)
    priced = price(plan.quantities, plan.stock, plan.tile_stock)
    each = {line.item: line for line in priced.lines}
    rows: list[tuple[Cell, ...]] = []
    for need in plan.quantities:
        if not need.buy:
            continue
        line = each.get(need.item)
        told = speaker.quantity(need)
        cost = None if line is None else Formula("=D{row}*F{row}", float(line.cost))
        rows.append(
            (
                told.item,
                told.exact,
                told.unit,
                need.buy,
                told.pack,
                None if line is None else float(line.each),
                cost,
                _in_short(need.working, said[need.working]) if need.working in said else need.working,
            )
        )
    if priced.total is not None:
        total = Formula("=SUM(G2:G{last})", float(priced.total))
        rows.append(("cost of what has a price", None, "", None, "", None, total, ""))
    return Table("Shopping", columns, tuple(rows))


def _findings(plan: Plan) -> Table:
    columns = (
        Column("severity", 9),
        Column("code", 10),
        Column("where", 26),
        Column("message", 40),
        Column("measured", 18),
        Column("limit", 18),
        Column("do", 44),
        Column("rule", 24),
        Column("source", 30),
    )
    rows = tuple(
        (f.severity.value, f.code, f.where, f.message, f.measured, f.limit, f.remedy, f.rule, f.source)
        for f in speaker_for(plan).findings(plan.findings)
    )
    return Table("Findings", columns, rows)


def _workings(plan: Plan, said: Mapping[str, SaidWorking]) -> Table:
    speaker = speaker_for(plan)
    columns = (
        Column("id", 24),
        Column("title", 32),
        Column("formula", 36),
        Column("values", 44),
        Column("result", 12),
        Column("unit", 11),
        Column("source", 34),
        Column("argument", 40),
    )
    rows = tuple(
        (
            name,
            found.title,
            found.formula,
            _values(found),
            *_result(found, speaker),
            found.source,
            "\n".join(found.argument),
        )
        for name, found in said.items()
    )
    return Table("Workings", columns, rows)


def _result(working: SaidWorking, speaker: Speaker) -> tuple[str, str]:
    result, unit = speaker.result(working.result, working.unit)
    return result, one_or_more(result, unit)


def _rules(plan: Plan) -> Table:
    columns = (
        Column("rule", 34),
        Column("value", 40),
        Column("basis", 18),
        Column("source", 60),
        Column("check: taken from", 12),
    )
    rows = tuple(
        (
            rule.id,
            shown_value(rule.value, rule.unit, plan.job.tape),
            rule.basis.replace("_", " "),
            rule.source,
            f"{rule.taken_from.upper()} practice" if rule.taken_from else "",
        )
        for rule in plan.rules
    )
    return Table("Rules", columns, rows)


def _in_short(name: str, working: SaidWorking) -> str:
    """How a number came about, in a row that stays low: its values stand in the sheet of workings."""
    return (
        f"{working.formula}\n= {working.result} {one_or_more(working.result, working.unit)}; see Workings, {name}"
    )


def _values(working: SaidWorking) -> str:
    return "\n".join(f"{name}: {value}" for name, value in working.values.items())


def _mark(board: Board) -> str:
    return board.mark or board.id


def _size(size: tuple[int, int], tape: Tape) -> str:
    return " x ".join(format_length(side, tape) for side in size)


def _yes(true: bool) -> str:
    return "yes" if true else "no"


def _is_tapered(outline: Ring, tape: Tape) -> bool:
    """Whether a side slopes against the sheet's sides by as much as the tape can show."""
    return any(2 * min(abs(bx - ax), abs(by - ay)) >= tape.graduation for (ax, ay), (bx, by) in sides(outline))


def _is_notched(outline: Ring, tape: Tape) -> bool:
    """Whether the outline, counter-clockwise, turns inwards by as much as the tape can show."""
    for (before, corner), (_, after) in zip(sides(outline), sides(outline[1:] + outline[:1]), strict=True):
        chord = math.dist(before, after)
        depth = -area2((before, corner, after)) / chord if chord else 0.0
        if 2 * depth >= tape.graduation:
            return True
    return False
