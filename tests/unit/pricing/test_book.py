"""A price book is read the same from each kind of file, and what is wrong with one is said with its place."""

import io
import zipfile
from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
import xlsxwriter

from firstcourse.errors import JobError
from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.book_reading import read_book
from firstcourse.pricing.lengths import cut_lengths
from firstcourse.pricing.packs import Offer, cheapest

YAML = """\
book: {name: Made up, currency: USD}
materials:
  - {item: grout, supplier: North, holds: 4.5, unit: kg, price: 17.10, quoted_by: counter,
     quoted_on: 2026-11-02, valid_until: 2026-12-31}
profit: {way: margin, percent: 20 %}
"""
ROWS = [
    ["kind", "name", "currency", "item", "supplier", "holds", "unit", "price", "quoted by", "quoted_on",
     "valid_until", "way", "percent"],
    ["book", "Made up", "USD"],
    ["material", "", "", "grout", "North", "4.5", "kg", "17.10", "counter", "2026-11-02", "2026-12-31"],
    ["profit", *[""] * 10, "margin", "20 %"],
]  # fmt: skip


def workbook(rows: list[list[object]], formula: str = "") -> bytes:
    file = io.BytesIO()
    book = xlsxwriter.Workbook(file)
    sheet = book.add_worksheet()
    for number, row in enumerate(rows):
        for column, value in enumerate(row):
            if value != "":
                sheet.write(number, column, value)
    if formula:
        sheet.write_formula(7, 2, formula)
    book.close()
    return file.getvalue()


def problems(data: bytes | str, name: str = "book.yaml") -> str:
    with pytest.raises(JobError) as refused:
        read_book(data.encode() if isinstance(data, str) else data, name)
    return str(refused.value)


def test_three_kinds_of_file_say_the_same() -> None:
    book = read_book(YAML.encode(), "book.yaml")
    assert book.materials[0].price == Decimal("17.10") and book.profit is not None
    comma = "\n".join(",".join(map(str, row)) for row in ROWS)
    assert read_book(comma.encode(), "book.csv") == book
    numbers: list[list[object]] = [list(row) for row in ROWS]
    numbers[2][5], numbers[2][7] = 4.5, 17.1  # kept by a workbook as binary fractions
    numbers[2][9] = (date(2026, 11, 2) - date(1899, 12, 30)).days
    assert read_book(workbook(numbers), "book.xlsx") == book
    assert PriceBook.model_validate_json(book.model_dump_json()) == book


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("17.10", "1e3", "book.yaml:3:65: materials[1].price: must be a number in plain digits"),
        ("17.10", "17.12345", "has more than 4 decimals"),
        ("17.10", "-3", "received '-3'"),
        ("17.10", ".nan", "materials[1].price"),
        ("2026-12-31", "2026-10-31", "before it was quoted"),
        ("margin, percent: 20", "margin, percent: 100", "a margin is a share of the price"),
        ("profit:", "profits:", "'profits' is not known here; is `profit` meant?"),
        ("currency: USD", "currency: usd", "book.currency"),
        ("supplier: North, ", "", "'supplier' is missing"),
        ("name: Made up", "name: &a [*a]", "book.yaml:1:"),
    ],
)
def test_what_is_wrong_is_said_with_its_place(old: str, new: str, said: str) -> None:
    assert said in problems(YAML.replace(old, new))


def test_one_price_is_not_given_twice() -> None:
    again = YAML.replace("profit:", YAML[YAML.index("  - {") : YAML.index("profit:")] + "profit:")
    assert "book.yaml:5:5: materials[2]: says again what line 3 says" in problems(again)


def test_formulas_are_refused() -> None:
    assert "cell C8 is a formula" in problems(workbook(list(ROWS), "=SUM(A1:A2)"), "book.xlsx")
    assert "row 2, column 2: '=1+1' begins like a formula" in problems('kind,name\nbook,"=1+1"\n', "book.csv")


def test_a_workbook_that_unpacks_without_end_is_refused() -> None:
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", b"<worksheet>" + b" " * 40_000_000 + b"</worksheet>")
    assert "unpacks to more than" in problems(file.getvalue(), "book.xlsx")


def test_entities_and_rubbish_are_refused() -> None:
    for content in (
        b'<!DOCTYPE a [<!ENTITY b "c">]><worksheet>&b;</worksheet>',
        "<!DOCTYPE a><a/>".encode("utf-16"),
    ):
        file = io.BytesIO()
        with zipfile.ZipFile(file, "w") as packed:
            packed.writestr("xl/worksheets/sheet1.xml", content)
        assert "declares entities" in problems(file.getvalue(), "book.xlsx")
    assert "cannot be read as a workbook" in problems(b"PK\x03\x04 rubbish", "book.xlsx")
    assert "name it .yaml, .csv or .xlsx" in problems(b"", "book.ods")


def test_packs_by_hand() -> None:
    one = Offer(holds=Fraction(1), tiers=((1, Fraction(10)), (10, Fraction(7))))
    assert cheapest(Fraction(8), [one]) == (10,)  # ten at 7 cost less than eight at 10
    small = Offer(holds=Fraction(10), tiers=((1, Fraction(30)),))
    large = Offer(holds=Fraction(25), tiers=((1, Fraction(60)),))
    assert cheapest(Fraction(31), [small, large]) == (1, 1)


def test_lengths_against_a_known_optimum() -> None:
    """Longest first needs three lengths of 10 where two do: 4 + 3 + 3 twice."""
    pieces = [4, 4, 3, 3, 3, 3]
    found = cut_lengths(pieces, 10)
    assert len(found.lengths) == found.least == 2
    assert cut_lengths([25], 10).least == 3
    assert cut_lengths([5, 5], 10, kerf=1).least == 2
    assert cut_lengths([5, 5], 10).least == 1
