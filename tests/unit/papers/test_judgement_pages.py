"""The judgement on paper: every check with its numbers, a data sheet for an engineer, cautions on every page."""

import io
from pathlib import Path
from typing import Any

import pypdf
import pytest

import firstcourse
from example_plans import plan_of, site_pack_of
from firstcourse.job import read_job_text
from firstcourse.papers.judgement_pages import judgement_pages, remedy_tables
from firstcourse.papers.office_pack import office_data, office_pack
from firstcourse.rules import load_rules
from firstcourse.steps.judging import judge_job
from firstcourse.survey import survey_job
from firstcourse.units import Tape
from firstcourse.words import Speaker
from said import all_said, worked

LIMBER = Path(__file__).parents[3] / "examples" / "limber-floor" / "job.yaml"
CAUTION = "not a design"
CONTENTS = "In this pack"


def pages(pdf: bytes) -> list[str]:
    return [" ".join(page.extract_text().split()) for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_every_structural_page_carries_the_cautions_and_the_engineers_boundary(paper: str) -> None:
    printed = pages(office_pack(plan_of("limber-floor"), paper))  # type: ignore[arg-type]
    structural = [
        page
        for page in printed
        if any(word in page for word in ("what and how", "Data sheet for an engineer", "SUI-"))
        and CONTENTS not in page
    ]
    assert len(structural) >= 4
    on_site = [page for page in pages(site_pack_of("limber-floor", paper)) if "SUI-" in page]  # type: ignore[arg-type]
    assert on_site
    for page in (*structural, *on_site):
        assert CAUTION in page and "licensed engineer" in page


def test_a_sheet_gives_formula_numbers_result_limit_and_source_in_order() -> None:
    judged = office_data(plan_of("limber-floor"))["judged"]
    floor = judged["sheets"][0][0]
    titles = [line["title"] for line in floor["lines"]]
    assert titles == [
        "Dead load of the floor",
        "Loads along one joist, section and stiffness",
        "Joist spacing",
        "Bending stress",
        "Shear stress",
        "Bearing pressure",
        "Bearing length",
        "Live-load deflection (finish)",
        "Live-load deflection (code)",
        "Deflection under live and dead load",
        "Joist spacing against the panel's span rating",
        "Bending of the panel between joists, one foot of width",
        "Deflection between joists under uniform load",
        "Deflection between joists under a point load",
        "Thickest panel layer",
        "Longest span for these joists and this finish",
    ]
    bending = floor["lines"][3]
    assert bending["steps"] == [
        "M = 0.125 w L² = 0.125 × 6.458 × 150² = 18,162 lb·in",
        "fb = M / S = 18,162 / 13.141 = 1,382 psi",
        "Fb' = Fb CD CF Cr = 850 × 1 × 1.2 × 1.15 = 1,173 psi",
    ]
    assert (bending["found"], bending["limit"]) == ("1,382 psi", "at most 1,173 psi")
    assert bending["verdict"] == "DOES NOT HOLD"
    assert all(line["source"] and line["formula"] for line in floor["lines"])


def test_an_engineer_gets_one_page_with_all_it_takes() -> None:
    printed = pages(office_pack(plan_of("limber-floor"), "a4"))
    (sheet,) = [page for page in printed if "Data sheet for an engineer" in page and CONTENTS not in page]
    for wanted in (
        "150 in (12' 6\")",
        "hem-fir, No. 2",
        "40 psf",
        "23/32 in (24 oc) + 19/32 in (20 oc), not glued",
        "8.79 lb/sq ft",
        "Assumed",
        "Left open",
        "Please design",
        "Name and licence",
    ):
        assert wanted in sheet


def test_what_the_sheets_print_is_not_printed_again() -> None:
    printed = "\n".join(pages(office_pack(plan_of("limber-floor"), "letter")))
    assert printed.count("Bearing pressure") == 1
    assert printed.count("SUI-103") == 1


def test_the_judgement_alone_is_written_on_both_papers(tmp_path: Path) -> None:
    done = firstcourse.open(LIMBER).judge()
    session = firstcourse.open(LIMBER)
    files = session.judgement_papers(done, tmp_path / "new" / "folder")
    assert [file.name for file in files] == ["judgement-letter.pdf", "judgement-a4.pdf"]
    for file in files:
        printed = pages(file.read_bytes())
        assert all(CAUTION in page for page in printed)
        assert any("Calculation sheet: upper bath: floor" in page for page in printed)
    assert session.judgement_papers(done, tmp_path)[0].read_bytes() == files[0].read_bytes()


def test_a_job_with_nothing_to_judge_has_no_such_pages() -> None:
    assert office_data(plan_of("metric-column"))["judged"] is None


def judged_pages(old: str, new: str) -> dict[str, Any]:
    text = LIMBER.read_text(encoding="utf-8").replace("sistered: none ", "sistered: full ")
    assert text.count(old) == 1
    job = read_job_text(text.replace(old, new))
    rules = load_rules(job.date, job.practice)
    done = judge_job(job, survey_job(job, rules), rules)
    return judgement_pages(
        job=done.job,
        date=done.date,
        practice=done.practice,
        structures=done.structures,
        findings=done.findings,
        said=all_said(done.findings),
        sheets=[Speaker("us", Tape.INCH).sheet(sheet, done.workings) for sheet in done.structures],
        remedies=remedy_tables(Speaker("us", Tape.INCH), done.workings.values()),
        workings={name: worked(working) for name, working in done.workings.items()},
        cautions=done.cautions,
        speaker=Speaker("us", Tape.INCH),
    )


def test_a_cut_is_held_against_each_limit_on_the_sheet() -> None:
    cut = "bearing: 3 in\n        cuts: [{kind: notch, size: 2 in, at: 2 ft, length: 2 in}]"
    shown = judged_pages("bearing: 3 in", cut)
    lines = {line["title"]: line for line in shown["sheets"][0][0]["lines"]}
    assert lines["Notch 1, depth"]["limit"] == "at most 1.21 in"
    assert lines["Notch 1, depth"]["verdict"] == "DOES NOT HOLD" and lines["Notch 1, length"]["verdict"] == "holds"
    assert lines["Notch 1, reach from the nearer support"]["steps"] == ["0.3333 × 150 in = 50.00 in"]
    assert shown["places"][0]["verdict"] == "does not hold: notch 1, depth"


def test_a_verdict_never_hides_what_is_open() -> None:
    assert judged_pages("bearing: 3 in", "bearing: 4 in")["places"][0]["verdict"] == (
        "all 14 checks of the frame hold; see SUI-404"
    )
    steel = judged_pages("studs: {size: 2x4, species: spf, grade: no2, ", "studs: {steel: 3 5/8 in, ")
    assert steel["places"][1]["verdict"] == "the frame's one check holds; see SUI-310"


def test_a_frame_that_cannot_be_judged_stands_under_the_cautions_too() -> None:
    told = plan_of("limber-floor")
    stop = next(finding for finding in told.findings if finding.code == "SUI-103")
    refused = told.model_copy(
        update={
            "structures": (),
            "findings": (stop.model_copy(update={"code": "SUI-121", "remedies": ("ask_maker",)}),),
            "surfaces": (),
        }
    )
    (page,) = [page for page in pages(office_pack(refused, "letter")) if "SUI-121" in page]
    assert CAUTION in page
