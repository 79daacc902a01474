"""The spreadsheet is read back with another library and compared with the plan it was made from."""

import io
from collections.abc import Iterator
from typing import Any

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from firstcourse.findings import Finding, Severity
from firstcourse.papers.workbook import workbook
from firstcourse.plan import (
    Board,
    Cut,
    Given,
    JobStamp,
    Pack,
    Part,
    Piece,
    Plan,
    Quantity,
    Ring,
    RuleNote,
    Sheet,
    Side,
    SideKind,
    Stock,
    Surface,
    SurfaceKind,
    Tile,
    TileStock,
)
from firstcourse.units import Tape, inches, to_mm
from firstcourse.values import Name, Word
from firstcourse.workings import Working, by_id
from said import worked

FORMULA_LIKE = '=HYPERLINK("https://example.invalid","see")'
ROOM = "bath & hall"


def ring(*points: tuple[float, float]) -> Ring:
    return tuple((inches(x), inches(y)) for x, y in points)


PLAIN = ring((0, 0), (30, 0), (30, 36), (0, 36))
TAPERED = ring((0, 0), (24, 0), (23.5, 36), (0, 36))
NOTCHED = ring((0, 0), (30, 0), (30, 20), (20, 20), (20, 24), (0, 24))
HOLE = ring((5, 5), (5, 7), (7, 7), (7, 5))
OUTLINES = {"W1-1": PLAIN, "W1-2": TAPERED, "F1-1": NOTCHED}
BLANKS = {"W1-1": (30, 36), "W1-2": (24, 36), "F1-1": (30, 24)}


def board(mark: str, *, holes: tuple[Ring, ...] = (), fasteners: int = 0) -> Board:
    return Board(
        id=f"bath#{mark}",
        piece=f"P{mark}",
        outline=OUTLINES[mark],
        holes=holes,
        fasteners=tuple((inches(n), inches(1)) for n in range(fasteners)),
        mark=mark,
    )


PRACTICE = Working(
    formula="boards-practice",
    at=("stock/board",),
    inputs={"keeps": False, "faults": (Word(word="BRD-101"),), "numbers": (2,)},
    result=8,
)


def make_plan(tape: Tape = Tape.INCH) -> Plan:
    """Two boards of one new sheet, both turned, and one that is a kept offcut, whole.

    S1, 36 x 60 in           S2, 30 x 24 in
    +-------------+ 60       +-----------+
    | S1bb, kept  |          |           |
    +-------------+ 54       | S2, F1-1  |
    | S1ba, W1-2  |          |           |
    +-------------+ 30       +-----------+
    | S1a, W1-1   |
    +-------------+
    """
    size = (inches(36), inches(60))
    return Plan(
        job=JobStamp(name=ROOM, digest="0123456789abcdef", date="2026-11-25", tape=tape),
        surfaces=(
            Surface(
                id="bath/wall/A-B",
                room="bath",
                kind=SurfaceKind.WALL,
                outline=PLAIN,
                boards=(board("W1-1", fasteners=3), board("W1-2", holes=(HOLE,), fasteners=5)),
            ),
            Surface(
                id="bath/floor", room="bath", kind=SurfaceKind.FLOOR, outline=NOTCHED, boards=(board("F1-1"),)
            ),
        ),
        pieces=tuple(
            Piece(
                id=f"P{mark}",
                board=f"bath#{mark}",
                stock="board",
                blank=(inches(width), inches(height)),
                outline=OUTLINES[mark],
            )
            for mark, (width, height) in BLANKS.items()
        ),
        sheets=(
            Sheet(
                id="S1",
                stock="board",
                size=size,
                source="new",
                cuts=(
                    Cut(of="S1", along="x", at=inches(30), gives=("S1a", "S1b")),
                    Cut(of="S1b", along="x", at=inches(24), gives=("S1ba", "S1bb")),
                ),
                parts=(
                    Part(id="S1a", at=(0, 0), size=(inches(36), inches(30)), piece="PW1-1", turned=True),
                    Part(id="S1ba", at=(0, inches(30)), size=(inches(36), inches(24)), piece="PW1-2", turned=True),
                    Part(id="S1bb", at=(0, inches(54)), size=(inches(36), inches(6)), keep=True),
                ),
            ),
            Sheet(
                id="S2",
                stock="board",
                size=(inches(30), inches(24)),
                source="offcut:rack 1",
                parts=(Part(id="S2", at=(0, 0), size=(inches(30), inches(24)), piece="PF1-1"),),
            ),
        ),
        stock=(Stock(id="board", size=size, thickness=inches(0.5), kind="fibre_cement"),),
        findings=(
            Finding(
                code="FST-107",
                severity=Severity.FIX,
                at=(FORMULA_LIKE,),
                rule="boards.bearing.min",
                remedies=("member_each_side",),
                values={"members": (Name(name="=1+1"),)},
            ),
        ),
        quantities=(
            Quantity(
                item="fasteners",
                exact=8.25,
                unit="fastener",
                buy=1,
                pack=Pack(kind="pack", size=9, unit="fastener"),
                working=PRACTICE.id,
            ),
            Quantity(
                item="seam_tape",
                exact=3 * 304.8,
                unit="mm",
                buy=1,
                pack=Pack(kind="roll", size=15240, unit="mm"),
                working="by hand",
            ),
        ),
        workings=by_id((PRACTICE,)),
    )


def read(content: bytes) -> Workbook:
    return openpyxl.load_workbook(io.BytesIO(content))


def rows(book: Workbook, name: str) -> list[dict[str, Any]]:
    heading, *found = book[name].iter_rows(values_only=True)
    return [dict(zip(heading, row, strict=True)) for row in found]


def cells(book: Workbook) -> Iterator[Any]:
    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            yield from row


@pytest.fixture(scope="module")
def book() -> Workbook:
    return read(workbook(make_plan()))


def test_sheets_come_in_the_order_of_the_work(book: Workbook) -> None:
    assert book.sheetnames == ["Boards and pieces", "Sheets and cuts", "Shopping", "Findings", "Workings", "Rules"]


def test_every_board_stands_with_its_piece(book: Workbook) -> None:
    found = rows(book, "Boards and pieces")
    assert [row["mark"] for row in found] == ["W1-1", "W1-2", "F1-1"]
    assert [row["surface"] for row in found] == ["bath: wall A-B", "bath: wall A-B", "bath: floor"]
    assert [row["cut from"] for row in found] == ["S1, part 1", "S1, part 2", "S2, part 1"]
    assert [(row["width"], row["height"]) for row in found] == [
        ("2' 6\"", "3' 0\""),
        ("2' 0\"", "3' 0\""),
        ("2' 6\"", "2' 0\""),
    ]
    for row, (width, height) in zip(found, BLANKS.values(), strict=True):
        assert (row["width, mm"], row["height, mm"]) == (to_mm(inches(width)), to_mm(inches(height)))
    assert [(row["holes"], row["taper"], row["notch"]) for row in found] == [
        ("no", "no", "no"),
        ("yes", "yes", "no"),
        ("no", "no", "yes"),
    ]
    assert [row["fasteners"] for row in found] == [3, 5, 0]


def test_what_the_tape_cannot_show_is_neither_taper_nor_notch() -> None:
    plan = make_plan()
    tick = 1
    almost = ((0, 0), (inches(15), tick), (inches(30), 0), (inches(30) - tick, inches(36)), (0, inches(36)))
    surface = plan.surfaces[0]
    crooked = surface.model_copy(update={"boards": (surface.boards[0].model_copy(update={"outline": almost}),)})
    found = rows(read(workbook(plan.model_copy(update={"surfaces": (crooked,)}))), "Boards and pieces")
    assert (found[0]["taper"], found[0]["notch"]) == ("no", "no")


def test_cut_tiles_stand_by_lines_with_the_tiles_they_are_cut_from() -> None:
    plan = make_plan()
    tile = TileStock(
        id="white", size=(inches(12), inches(4)), thickness=inches(0.25), kind="ceramic", joint=inches(0.125)
    )
    whole = Tile(id="t1", outline=ring((0, 0), (12, 0), (12, 4), (0, 4)), whole=True, stock="white")
    cut = Tile(
        id="t2",
        outline=ring((12.125, 0), (15.125, 0), (15.125, 4), (12.125, 4)),
        whole=False,
        from_="white 1",
        stock="white",
        cut=ring((0, 0), (3, 0), (3, 4), (0, 4)),
        fit=True,
        mark="a",
    )
    wider = cut.model_copy(
        update={"id": "t3", "outline": ring((12.125, 4.125), (15.625, 4.125), (15.625, 8.125), (12.125, 8.125))}
    )
    sides = tuple(Side(kind=SideKind.PERIMETER, meets="hall bath/wall/B-C") for _ in plan.surfaces[0].outline)
    surface = plan.surfaces[0].model_copy(update={"tiles": (whole, cut, wider), "sides": sides})
    tiled = plan.model_copy(update={"surfaces": (surface,), "tile_stock": (tile,)})
    (row,) = rows(read(workbook(tiled)), "Tile cuts")
    assert (row["mark"], row["number"], row["cut"], row["from tiles"]) == ("a", 2, "to fit", 1)
    assert (row["size"], row["width, mm"], row["to, mm"]) == ('about 3" to 3-1/2" × 4"', 76.2, 88.9)


def test_cuts_stand_in_working_order(book: Workbook) -> None:
    found = rows(book, "Sheets and cuts")
    assert [(row["sheet"], row["source"], row["cut"], row["cut part"], row["line runs"]) for row in found] == [
        ("S1", "new sheet", 1, "sheet", "across"),
        ("S1", "new sheet", 2, "2+3", "across"),
        ("S2", "kept offcut rack 1", None, "sheet", "no cut"),
    ]
    assert [(row["distance"], row["distance, mm"], row["from the part's"]) for row in found[:2]] == [
        ("2' 6\"", 762, "lower edge"),
        ("2' 0\"", 609.6, "lower edge"),
    ]
    assert [(row["gives, at that edge"], row["gives, beyond the line"]) for row in found] == [
        ("1: piece W1-1, lies turned by a quarter", "2+3: cut again"),
        ("2: piece W1-2, lies turned by a quarter", '3: keep, 3\' 0" x 6"'),
        ("1: piece F1-1", None),
    ]


def test_shopping_carries_exact_need_packs_and_working(book: Workbook) -> None:
    fasteners, tape = rows(book, "Shopping")
    assert [fasteners[key] for key in ("item", "need", "unit", "buy", "pack")] == [
        "fasteners",
        8.25,
        "fasteners",
        1,
        "pack of 9",
    ]
    how = "full sheets from the lower left corner, the rest cut from what is left"
    assert fasteners["working"] == f"{how}\n= 8 sheets; see Workings, {PRACTICE.id}"
    assert tape["working"] == "by hand"


def test_the_cost_is_reckoned_in_the_sheet_and_what_is_not_bought_is_left_out() -> None:
    plan = make_plan()
    needs = [
        Quantity(
            item=f"stock/{name}", exact=buy, unit="sheet", buy=buy, pack=Pack(kind="sheet", size=1, unit="sheet")
        )
        for name, buy in (("board", 3), ("other", 0))
    ]
    stock = tuple(
        plan.stock[0].model_copy(update={"id": name, "price": price})
        for name, price in (("board", 14.5), ("other", 9))
    )
    bought = workbook(plan.model_copy(update={"quantities": (*needs, *plan.quantities), "stock": stock}))
    found = rows(read(bought), "Shopping")
    assert [row["item"] for row in found] == ["sheets board", "fasteners", "seam tape", "cost of what has a price"]
    assert (found[0]["price of one, money"], found[0]["cost, money"]) == (14.5, "=D2*F2")
    assert (found[1]["cost, money"], found[-1]["cost, money"]) == (None, "=SUM(G2:G4)")
    # What stands there before a program reckons again.
    shown = rows(openpyxl.load_workbook(io.BytesIO(bought), data_only=True), "Shopping")
    assert (shown[0]["cost, money"], shown[-1]["cost, money"]) == (43.5, 43.5)


def test_whole_numbers_stand_without_decimals(book: Workbook) -> None:
    fasteners, tape = list(book["Shopping"].iter_rows(min_row=2))
    assert (fasteners[1].number_format, tape[1].number_format) == ("0.0##", "0")
    sizes = {cell.value: cell.number_format for row in book["Boards and pieces"].iter_rows(2) for cell in row[6:8]}
    assert (sizes[762], sizes[609.6]) == ("0", "0.0")


def test_rules_say_what_they_rest_on() -> None:
    note = RuleNote(
        id="water.lap", value="2", unit="in", basis="common_practice", source="common practice", taken_from="us"
    )
    plan = make_plan(Tape.MM).model_copy(update={"given": Given(rules=(note,))})
    (row,) = rows(read(workbook(plan)), "Rules")
    assert (row["rule"], row["value"], row["basis"]) == ("water.lap", "50.8 mm (2 in)", "common practice")
    assert row["check: taken from"] == "US practice"


def test_findings_and_workings_say_what_the_plan_says(book: Workbook) -> None:
    (finding,) = rows(book, "Findings")
    assert finding["severity"] == "fix"
    assert finding["message"].startswith("Nothing may be driven") and finding["do"].startswith("Fix a member")
    assert (finding["measured"], finding["rule"]) == ("=1+1", "boards.bearing.min")
    (working,) = rows(book, "Workings")
    assert working == {
        "id": PRACTICE.id,
        "title": "Sheets of board by plain practice",
        "formula": "full sheets from the lower left corner, the rest cut from what is left",
        "values": None,
        "result": "8",
        "unit": "sheets",
        "source": "common practice",
        "argument": worked(PRACTICE).argument[0],
    }


def test_text_that_looks_like_a_formula_stays_text(book: Workbook) -> None:
    assert {cell.data_type for cell in cells(book)} <= {"s", "n"}
    assert not [cell for cell in cells(book) if cell.hyperlink]
    (finding,) = rows(book, "Findings")
    assert finding["where"].startswith("=HYPERLINK(") and finding["measured"] == "=1+1"


def test_a_text_longer_than_a_cell_is_shortened_not_lost() -> None:
    plan = make_plan()
    long = PRACTICE.model_copy(update={"at": ("stock/" + "x" * 40_000,)})
    row = rows(read(workbook(plan.model_copy(update={"workings": {"count": long}}))), "Workings")[0]
    assert row["title"] == f"Sheets of {'x' * 40_000}"[:32_766] + "…"


@pytest.mark.parametrize(("tape", "paper"), [(Tape.INCH, 1), (Tape.MM, 9)])
def test_pages_are_ready_to_print(tape: Tape, paper: int) -> None:
    for sheet in read(workbook(make_plan(tape))).worksheets:
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.page_setup.paperSize == paper
        # A width of one page is what a file says by leaving it out.
        assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (None, 0)
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.print_title_rows == "$1:$1"
        assert sheet.freeze_panes == "A2"
        assert sheet.oddHeader.left.text == "bath && hall"
        assert all(sheet.column_dimensions[cell.column_letter].width for cell in sheet[1])


def test_metric_tapes_read_in_millimetres() -> None:
    found = rows(read(workbook(make_plan(Tape.MM))), "Boards and pieces")
    assert (found[0]["width"], found[0]["width, mm"]) == ("762 mm", 762)


def test_the_same_plan_gives_the_same_bytes() -> None:
    assert workbook(make_plan()) == workbook(make_plan())


@pytest.mark.parametrize(("date", "year"), [("2026-11-25", 2026), ("", 1980)])
def test_the_file_is_dated_by_the_job_never_by_the_clock(date: str, year: int) -> None:
    plan = make_plan()
    dated = plan.model_copy(update={"job": plan.job.model_copy(update={"date": date})})
    properties = read(workbook(dated)).properties
    assert properties.created.year == properties.modified.year == year


def test_an_empty_plan_has_headings_only() -> None:
    empty = read(workbook(Plan(job=JobStamp(name="empty", digest=""))))
    assert [sheet.max_row for sheet in empty.worksheets] == [1] * 6


def test_a_board_already_up_needs_no_piece() -> None:
    plan = make_plan()
    found = rows(read(workbook(plan.model_copy(update={"pieces": (), "sheets": ()}))), "Boards and pieces")
    assert {row["stock"] for row in found} == {"already up"}
    assert {row["width, mm"] for row in found} == {None}
