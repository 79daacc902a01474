"""The plan as a spreadsheet: pieces, cuts in working order, shopping with prices, findings, workings and rules."""

import math
from collections.abc import Iterable, Iterator, Mapping

from firstcourse.drawings import CutKind, cut_kinds, part_numbers, parts_within, said_places, size_words
from firstcourse.geometry import area2, sides
from firstcourse.papers.rule_values import shown_value
from firstcourse.papers.spreadsheet import Cell, Column, Formula, Table, spreadsheet
from firstcourse.papers.ticket_pages import parts_named
from firstcourse.plan import Board, Part, Plan, Ring, Sheet, Surface
from firstcourse.pricing import price
from firstcourse.units import Tape, format_length, one_or_more, to_mm
from firstcourse.words import SaidWorking, Speaker, speaker_for


def workbook(plan: Plan) -> bytes:
    """The plan's spreadsheet.

    Text stays text, whatever it begins with; lengths stand as the job's tape reads them and in millimetres.

    Args:
        plan: A verified plan.

    Returns:
        An XLSX file; the same plan gives the same bytes.
    """
    return spreadsheet(plan, tables(plan))


def tables(plan: Plan) -> tuple[Table, ...]:
    """What the workbook's sheets show, in order."""
    tiled = (_tile_cuts(plan),) if plan.tile_stock else ()
    speaker = speaker_for(plan)
    said = {name: speaker.working(working) for name, working in plan.workings.items()}
    texts = (*tiled, _shopping(plan, said), _findings(plan), _workings(plan, said))
    told = (_told(table, plan) for table in texts)
    return (_pieces(plan), _cuts(plan), *told, _rules(plan))


def _table(
    speaker: Speaker, code: str, columns: Iterable[Column], rows: tuple[tuple[Cell, ...], ...], **given: str
) -> Table:
    headings = speaker.labels(f"workbook-{code}", **given)
    headed = (column._replace(heading=headings[column.code]) for column in columns)
    return Table(speaker.text(f"workbook-{code}"), tuple(headed), rows)


def _told(table: Table, plan: Plan) -> Table:
    """A sheet in the reader's words and units; ids and titles of sources stay."""
    speaker = speaker_for(plan)
    own = [column.code not in ("id", "source", "rule", "code") for column in table.columns]
    rows = (
        tuple(
            speaker.say(cell) if said and isinstance(cell, str) else cell
            for cell, said in zip(row, own, strict=True)
        )
        for row in table.rows
    )
    return table._replace(rows=tuple(rows))


def _pieces(plan: Plan) -> Table:
    columns = (
        Column("mark", 9),
        Column("surface", 26),
        Column("stock", 20),
        Column("cut_from", 13),
        Column("width", 13),
        Column("height", 13),
        Column("width_mm", 10, "mm"),
        Column("height_mm", 10, "mm"),
        Column("holes", 7),
        Column("taper", 7),
        Column("notch", 7),
        Column("fasteners", 10, "count"),
    )
    speaker = speaker_for(plan)
    pieces = {piece.id: piece for piece in plan.pieces}
    part_of = {
        part.piece: speaker.text("workbook-part", sheet=sheet.id, part=part_numbers(sheet)[part.id])
        for sheet in plan.sheets
        for part in sheet.parts
        if part.piece
    }
    rows: list[tuple[Cell, ...]] = []
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
                    piece.stock if piece and not board.fixed else speaker.text("workbook-up"),
                    part_of.get(board.piece, ""),
                    *size,
                    speaker.word(_yes(bool(board.holes))),
                    speaker.word(_yes(_is_tapered(board.outline, plan.job.tape))),
                    speaker.word(_yes(_is_notched(board.outline, plan.job.tape))),
                    len(board.fasteners),
                )
            )
    return _table(speaker, "pieces", columns, tuple(rows))


def _cuts(plan: Plan) -> Table:
    columns = (
        Column("sheet", 8),
        Column("stock", 20),
        Column("source", 20),
        Column("size", 18),
        Column("cut", 6, "count"),
        Column("cut_part", 10),
        Column("line_runs", 12),
        Column("distance", 13),
        Column("distance_mm", 10, "mm"),
        Column("from_the_part_s", 12),
        Column("gives_at_that_edge", 28),
        Column("gives_beyond_the_line", 28),
    )
    speaker = speaker_for(plan)
    marks = {board.piece: _mark(board) for surface in plan.surfaces for board in surface.boards}
    rows = [row for sheet in plan.sheets for row in _sheet_cuts(sheet, marks, speaker)]
    return _table(speaker, "cuts", columns, tuple(rows))


def _sheet_cuts(sheet: Sheet, marks: dict[str, str], speaker: Speaker) -> Iterator[tuple[Cell, ...]]:
    """One row for each cut; a sheet that is used whole has one row, without a cut."""
    tape = speaker.tape
    source = speaker.text(
        "workbook-source",
        source="new" if sheet.source == "new" else "kept",
        offcut=sheet.source.removeprefix("offcut:"),
    )
    whole_sheet = speaker.text("workbook-sheet")
    word = speaker.labels("workbook-cut")
    head = (sheet.id, sheet.stock, source, _size(sheet.size, tape))
    parts, held = {part.id: part for part in sheet.parts}, parts_within(sheet)
    for number, cut in enumerate(sheet.cuts, start=1):
        what = whole_sheet if cut.of == sheet.id else parts_named(held[cut.of], speaker)
        near, far = (_given(held.get(name, ()), parts.get(name), marks, speaker) for name in cut.gives)
        runs, edge = (word["across"], word["lower"]) if cut.along == "x" else (word["up"], word["left"])
        yield *head, number, what, runs, format_length(cut.at, tape), to_mm(cut.at), edge, near, far
    if not sheet.cuts:
        whole = next(iter(sheet.parts), None)
        given = _given(held.get(whole.id, ()), whole, marks, speaker) if whole else ""
        yield *head, None, whole_sheet, word["none"], "", None, "", given, ""


def _given(numbers: tuple[int, ...], part: Part | None, marks: dict[str, str], speaker: Speaker) -> str:
    """What a cut sets free, by the numbers that the ticket has for it."""
    named = parts_named(numbers, speaker)
    if part is None:
        return speaker.text("workbook-given", "again", part=named) if numbers else named
    if part.piece is not None:
        mark = marks.get(part.piece, part.piece)
        return speaker.text("workbook-given", "turned" if part.turned else "piece", part=named, mark=mark)
    if not part.keep:
        return named
    return speaker.text("workbook-given", "keep", part=named, size=_size(part.size, speaker.tape))


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
        Column("width_mm", 10, "mm"),
        Column("to_mm", 10, "mm"),
        Column("height_mm", 10, "mm"),
        Column("up_to_mm", 10, "mm"),
        Column("from_tiles", 10, "count"),
        Column("shares_them_with", 30),
    )
    speaker = speaker_for(plan)
    lines = [
        (surface, kind, {tile.from_ for tile in kind.tiles})
        for surface in plan.surfaces
        for kind in cut_kinds(surface, without={})
    ]
    sharing: dict[str, list[str]] = {}
    for surface, kind, sources in lines:
        for source in sources:
            sharing.setdefault(source, []).append(_kind_of(kind, surface, speaker))
    rows: list[tuple[Cell, ...]] = []
    for surface, kind, sources in lines:
        name = _kind_of(kind, surface, speaker)
        others = dict.fromkeys(other for source in sorted(sources) for other in sharing[source] if other != name)
        rows.append(
            (
                kind.mark,
                speaker.place(surface.id),
                speaker.text("workbook-fit", fit=kind.is_fit),
                kind.count,
                ", ".join(f"{place} ({number})" for place, number in said_places(kind.places, speaker)),
                kind.tile.stock,
                size_words(kind, speaker),
                *(to_mm(side) for pair in zip(kind.least, kind.most, strict=True) for side in pair),
                len(sources),
                "; ".join(others),
            )
        )
    return _table(speaker, "tile_cuts", columns, tuple(rows))


def _kind_of(kind: CutKind, surface: Surface, speaker: Speaker) -> str:
    return speaker.text("workbook-kind_of", mark=kind.mark, surface=speaker.place(surface.id))


def _shopping(plan: Plan, said: Mapping[str, SaidWorking]) -> Table:
    """What is bought; a price or a number that somebody changes changes the cost."""
    speaker = speaker_for(plan)
    currency = plan.job.currency or speaker.text("workbook-money")
    columns = (
        Column("item", 28),
        Column("need", 10, "fine"),
        Column("unit", 11),
        Column("buy", 7, "count"),
        Column("pack", 20),
        Column("price_of_one", 11, "money"),
        Column("cost", 11, "money"),
        Column("working", 70),
    )
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
                _in_short(need.working, said[need.working], speaker) if need.working in said else need.working,
            )
        )
    if priced.total is not None:
        total = Formula("=SUM(G2:G{last})", float(priced.total))
        rows.append((speaker.text("workbook-total"), None, "", None, "", None, total, ""))
    return _table(speaker, "shopping", columns, tuple(rows), currency=currency)


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
    speaker = speaker_for(plan)
    rows = tuple(
        (
            speaker.text("papers-severity", f.severity.value),
            f.code,
            f.where,
            f.message,
            f.measured,
            f.limit,
            f.remedy,
            f.rule,
            f.source,
        )
        for f in speaker.findings(plan.findings)
    )
    return _table(speaker, "findings", columns, rows)


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
    return _table(speaker, "workings", columns, rows)


def _result(working: SaidWorking, speaker: Speaker) -> tuple[str, str]:
    result, unit = speaker.result(working.result, working.unit)
    return result, one_or_more(result, unit)


def _rules(plan: Plan) -> Table:
    columns = (
        Column("rule", 34),
        Column("value", 40),
        Column("basis", 18),
        Column("source", 60),
        Column("check_taken_from", 12),
    )
    speaker = speaker_for(plan)
    rows = tuple(
        (
            rule.id,
            shown_value(rule.value, rule.unit, plan.job.tape),
            speaker.text("workbook-basis", rule.basis),
            rule.source,
            speaker.text("workbook-practice", practice=rule.taken_from.upper()) if rule.taken_from else "",
        )
        for rule in plan.rules
    )
    return _table(speaker, "rules", columns, rows)


def _in_short(name: str, working: SaidWorking, speaker: Speaker) -> str:
    """How a number came about, in a row that stays low: its values stand in the sheet of workings."""
    result = f"{working.result} {one_or_more(working.result, working.unit)}"
    return speaker.text("workbook-short", formula=working.formula, result=result, name=name)


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
