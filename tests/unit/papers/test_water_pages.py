"""The waterproofing page: every membrane with what belongs to it, in the units of the tape."""

import io

import pypdf
import pytest

from example_plans import plan_of, site_pack_of
from firstcourse.papers.water_pages import water_pages
from firstcourse.plan import Plan
from firstcourse.units import Tape
from firstcourse.words import speaker_for


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_of("tiled-shower")


def test_every_membrane_has_its_list(plan: Plan) -> None:
    page = water_pages(plan)
    wet = [surface for surface in plan.surfaces if surface.membrane]
    speaker = speaker_for(plan)
    assert [surface["title"] for surface in page["surfaces"]] == [speaker.place(surface.id) for surface in wet]
    for surface, listed in zip(wet, page["surfaces"], strict=True):
        rows = dict(listed["rows"])
        formula = "water-face" if surface.boarded else "water-floor"
        inputs = plan.workings[f"{formula}@{surface.id}"].inputs
        assert int(rows.get("outside corners", "0")) == inputs.get("outside", 0)
        holes = [opening for opening in surface.openings if opening.kind in ("pipe", "valve", "box", "drain")]
        assert sum("centre" in where for where in rows.values()) == len(holes)
        assert ("no fastener" in rows) == bool(surface.no_fastener_zones)


def test_figures_are_in_the_tape_s_units(plan: Plan) -> None:
    text = str(water_pages(plan)["surfaces"])
    assert " mm" not in text and "m2" not in text and "sq ft" in text
    metric = plan.model_copy(update={"job": plan.job.model_copy(update={"tape": Tape.MM})})
    text = str(water_pages(metric)["surfaces"])
    assert "sq ft" not in text and " m²" in text


def test_what_holds_for_all_goes_with_the_kinds_there_are(plan: Plan) -> None:
    general = " ".join(water_pages(plan)["general"])
    assert 'Seams lap 2" at least' in general and "1.2 mm thick while wet" in general
    metric = plan.model_copy(update={"job": plan.job.model_copy(update={"tape": Tape.MM})})
    assert "1.2 mm thick while wet" in " ".join(water_pages(metric)["general"])
    dry = plan_of("metric-column")
    assert water_pages(dry) == {"surfaces": [], "general": []}


def test_the_pack_prints_it_to_be_ticked() -> None:
    pages = [
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(site_pack_of("tiled-shower", "letter"))).pages
    ]
    (page,) = [text for text in pages if "Looked at before tile" in text]
    assert "collar at valve" in page and "flange at drain" in page
