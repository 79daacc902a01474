"""Texts of a ticket stood end to end, so that `2: W1-6` and `5: keep` read as `2: W1-65: keep`.

A label that had no room in its part shrank the whole sheet; a length was parted at the end of a line, its feet
from its inches.
"""

import io
import re

import pypdf
import pytest

from example_plans import plan_of, site_pack_of
from firstcourse.drawings.model import Text
from firstcourse.drawings.tickets import draw_sheet
from printed_numbers import retold

EXAMPLES = ("tub-bathroom", "tiled-shower")
PARTED = re.compile(r"\d'\n|\d-\n|\d/\n|\d\n(?:mm|in|ft|lb|gal|sq ft)\b|\b[A-Z]\d?-\n")


def gap(one: Text, other: Text) -> float:
    """How far two texts are apart along their line of writing [mm]; far where they are on two lines."""
    along = 1 if one.upright else 0
    across = 1 - along
    (a, b) = sorted((one.box, other.box), key=lambda box: box[along])
    on_one_line = min(a[across + 2], b[across + 2]) - max(a[across], b[across]) > 0.3 * one.size
    return b[along] - a[along + 2] if on_one_line else 99.0


@pytest.mark.parametrize("tongue", ["en", "es"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_labels_of_a_ticket_stand_apart_at_a_scale_that_can_be_read(name: str, tongue: str) -> None:
    plan = retold(plan_of(name), tongue=tongue)
    for sheet in plan.sheets:
        drawing = draw_sheet(plan, sheet, room=(43.0, 70.0))
        assert drawing.scale <= 24
        texts = drawing.texts
        for number, one in enumerate(texts):
            for other in texts[number + 1 :]:
                if one.upright == other.upright:
                    assert gap(one, other) > 0.25 * min(one.size, other.size), (one.text, other.text)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_length_is_parted_between_two_lines(name: str) -> None:
    pages = pypdf.PdfReader(io.BytesIO(site_pack_of(name, "letter"))).pages
    assert [found for page in pages for found in PARTED.findall(page.extract_text())] == []


def test_a_shower_head_is_no_head_of_a_shower() -> None:
    from firstcourse.papers.tile_pages import saw_page

    said = str(saw_page(retold(plan_of("tub-bathroom"), tongue="es")))
    assert "shower head" in said and "cabezal" not in said
