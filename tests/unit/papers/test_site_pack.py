"""The site pack: every mark on it, only our own face, true page sizes."""

import io
from pathlib import Path

import pypdf
import pytest

from example_plans import plan_of, site_pack_of
from firstcourse.papers.office_pack import office_data
from firstcourse.papers.site_pack import pack_data, site_pack
from firstcourse.words import speaker_for
from said import all_said

EXAMPLES = Path(__file__).parents[3] / "examples"
POINTS = {"letter": (612, 792), "a4": (595.28, 841.89)}


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", ["tub-bathroom", "l-shower-room", "metric-column"])
def test_the_pack_shows_every_board_sheet_and_finding(name: str, paper: str) -> None:
    plan = plan_of(name)
    pdf = pypdf.PdfReader(io.BytesIO(site_pack_of(name, paper)))  # type: ignore[arg-type]
    text = "\n".join(page.extract_text() for page in pdf.pages)
    # What stands among the cautions is not told again.
    cautions = pack_data(plan)["cautions"]
    codes = [found.code for found in all_said(plan.findings) if found.message not in cautions]
    marks = [board.mark for surface in plan.surfaces for board in surface.boards]
    for wanted in (*marks, *(sheet.id for sheet in plan.sheets), *codes):
        assert wanted in text
    width, height = POINTS[paper]
    assert float(pdf.pages[0].mediabox.width) == pytest.approx(width, abs=0.1)
    assert float(pdf.pages[0].mediabox.height) == pytest.approx(height, abs=0.1)


def test_only_the_face_that_comes_with_us_is_used() -> None:
    pdf = pypdf.PdfReader(io.BytesIO(site_pack_of("tub-bathroom", "letter")))
    faces = set()
    for page in pdf.pages:
        for font in page["/Resources"].get("/Font", {}).values():
            faces.add(font.get_object()["/BaseFont"])
    assert faces
    assert all("IBMPlexSans" in face for face in faces)


def test_the_same_plan_gives_the_same_pack() -> None:
    plan = plan_of("tub-bathroom")
    assert site_pack(plan, "letter") == site_pack_of("tub-bathroom", "letter")


def test_the_cover_says_how_few_is_proven_and_where_everything_stands() -> None:
    plan = plan_of("tub-bathroom")
    assert ["sheets of wall board 3x5", "4 (no layout that keeps the rules takes fewer)"] in pack_data(plan)[
        "figures"
    ]
    cover = pypdf.PdfReader(io.BytesIO(site_pack_of("tub-bathroom", "letter"))).pages[0].extract_text()
    assert "hall bath: wall A-B: tile" in cover and "Cut tickets" in cover
    (figure, *_) = pack_data(plan_of("metric-column"))["figures"]
    assert figure[1].endswith("(these boards take no fewer; with other seams fewer may do)")


def test_needs_are_short_and_never_short_of_the_need() -> None:
    plan = plan_of("tub-bathroom")
    needs = {row[0]: float(row[3]) for row in pack_data(plan)["shopping"]}
    speaker = speaker_for(plan)
    for quantity in plan.quantities:
        if quantity.buy:
            told = speaker.quantity(quantity)
            need = needs[speaker.words(told.item)]
            assert told.exact <= need + 1e-9 and need - told.exact <= 0.1
    assert all(len(row[3]) <= 6 for row in pack_data(plan)["shopping"])


def test_a_tub_named_tub_is_told_by_one_word() -> None:
    blocks = [block for row in pack_data(plan_of("tub-bathroom"))["tile"] for block in row]
    places = [said for block in blocks for said in block["soft"]]
    assert any(said.startswith("tub: meets what restrains it") for said in places)
    assert not any("tub tub" in said for said in places)


def test_no_working_is_printed_twice() -> None:
    titles = [working["title"] for working in office_data(plan_of("tub-bathroom"))["workings"]]
    assert len(titles) == len(set(titles)), [title for title in titles if titles.count(title) > 1]


def test_overrides_and_house_assumptions_stand_apart() -> None:
    data = office_data(plan_of("tub-bathroom"))
    assumed = {row[0] for row in data["assumptions"]}
    assert "boards.gap.opening" in assumed
    published = {value.split()[0] for row in data["rules"] for value in row[1].split("; ")}
    assert not assumed & published and "boards.gap.between" in published
