"""An inch job was told in square metres and litres, a UK setter of curbs, a US setter of kerbs.

A pack is in one system of units and in the words of its practice; what stands apart is what others published:
titles of sources, a rule's own figure in brackets beside the reader's, and sums in the units of their tables.
"""

import copy
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.job import read_job_text
from firstcourse.papers.office_pack import office_data
from firstcourse.papers.site_pack import pack_data
from firstcourse.papers.workbook import tables
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import Tape
from firstcourse.words import TERMS, Speaker, in_units, terms_of

EXAMPLES = Path(__file__).parents[2] / "examples"
METRIC = re.compile(
    r"\d ?(?:mm|cm|m|m²|m2|m³|m3|l|ml|litres?|kg|kg/\S+|kPa|MPa|N/mm²|kN\S*|mm/m|l/m²|°C)(?![\w²³/·])"
)
# A slope of "1 in 74" is a ratio, no length.
INCHED = re.compile(
    r"\d ?(?:in(?! \d)|ft|sq ft|cu ft|gal|fl oz|lb|psf|psi|pcf|plf|°F|in/ft)(?![\w/·])|\d(?:\"|' \d)"
)
PUBLISHED = ("source", "sources", "steps", "formula")
"""Keys of what others published, and of sums in the units of published tables."""
RULES = ("rules", "assumptions", "borrowed", "overrides")
"""Keys of lists in which the book's own figure stands in brackets."""


@cache
def planned(practice: str, tape: str) -> Plan:
    """The tiled shower, for a practice and a tape, its names free of trade words."""
    text = (EXAMPLES / "tiled-shower" / "job.yaml").read_text(encoding="utf-8")
    document: dict[str, Any] = yaml.safe_load(text.replace("closet flange", "toilet"))
    document |= {"practice": practice, "tape": tape}
    return plan_job(read_job_text(yaml.safe_dump(document)), effort=0).plan


def texts(value: Any, key: str = "") -> Iterator[tuple[str, str]]:
    """Every text of a paper with the key it stands under; of pictures what is written on them."""
    if isinstance(value, str):
        if key == "svg":
            yield from ((key, one) for one in re.findall(r"<text[^>]*>([^<]+)<", value))
        else:
            yield key, value
    elif isinstance(value, dict):
        for name, one in value.items():
            inner = key if key in RULES else name
            yield from texts(one, inner)
    elif isinstance(value, list | tuple):
        for one in value:
            yield from texts(one, key)


def papers(plan: Plan) -> list[tuple[str, str]]:
    return [*texts(pack_data(plan)), *texts(office_data(plan))]


@pytest.mark.parametrize(("practice", "tape"), [("us", "inch"), ("uk", "mm"), ("uk", "inch")])
def test_a_pack_has_one_system_of_units(practice: str, tape: str) -> None:
    foreign = METRIC if tape == "inch" else INCHED
    found = []
    for key, text in papers(planned(practice, tape)):
        if key not in (*PUBLISHED, *RULES):
            found += [f"{key}: {text[:160]}" for _ in foreign.finditer(text)]
    data = office_data(planned(practice, tape))
    values = [row[1] for key in ("assumptions", "borrowed", "overrides", "rules") for row in data[key]]
    assert values
    for value in values:
        found += [value[:160] for _ in foreign.finditer(re.sub(r"\([^()]*\)", "", value))]
    assert not found, "\n".join(found[:20])


@pytest.mark.parametrize("practice", ["us", "uk"])
def test_a_pack_speaks_the_words_of_its_practice(practice: str) -> None:
    plan = planned(practice, "inch" if practice == "us" else "mm")
    foreign = sorted(set(terms_of(practice)) - {term.of(practice) for term in TERMS})
    assert {"soft joint", "kerb" if practice == "us" else "curb"} <= set(foreign)
    pattern = re.compile(rf"(?<![\w.`/])(?:{'|'.join(foreign)})(?![\w`/]|\.\w)", re.IGNORECASE)
    sheets = [
        (column.heading, cell)
        for table in tables(plan)
        for row in table.rows
        for column, cell in zip(table.columns, row, strict=True)
        if isinstance(cell, str) and table.name != "Rules" and column.heading != "id"
    ]
    said = [
        f"{key}: {text[:120]}"
        for key, text in (*papers(plan), *sheets)
        if key not in ("source", "sources", "steps", *RULES)
        if pattern.search(text)
    ]
    assert not said, "\n".join(said[:20])


def test_names_that_the_job_gave_stay_as_they_are() -> None:
    speaker = Speaker("us", Tape.INCH, names=["my kerb", "kerb"], ids={"bath/kerb/top": "bath: kerb, top"})
    assert speaker.say("my kerb by the kerb") == "my kerb by the kerb"
    speaker = Speaker("us", Tape.INCH, names=["my kerb"], ids={"bath/kerb/top": "bath: kerb, top"})
    assert speaker.say("The kerb beside my kerb, 12 mm: bath/kerb/top") == (
        'The curb beside my kerb, 1/2": bath: curb, top'
    )
    assert speaker.say("shower.kerb.max is 9 in; Kerbs stand.") == "shower.kerb.max is 9 in; Curbs stand."
    assert Speaker("uk", Tape.MM).say("The curb is 4 in high.") == "The kerb is 102 mm high."


@pytest.mark.parametrize(
    ("text", "tape", "wanted"),
    [
        ("2.861 m² of it", Tape.INCH, "30.8 sq ft of it"),
        ("pail of 13.2 l", Tape.INCH, "pail of 3.49 gal"),
        ("whole surface: 109 kg, 241 lb", Tape.INCH, "whole surface: 241 lb"),
        ("0.250 in (6.3 mm)", Tape.INCH, "0.250 in"),
        ("0.250 in (6.3 mm)", Tape.MM, "6.3 mm"),
        ("limit: at most 6.35 mm", Tape.INCH, 'limit: at most 1/4"'),
        ("slope -0.77 mm/m", Tape.INCH, "slope -0.00924 in/ft"),
        ("1.2 mm thick while wet", Tape.INCH, "0.047 in thick while wet"),
        ("tile 12x24, course 3, 20 pieces", Tape.INCH, "tile 12x24, course 3, 20 pieces"),
        ("A-B 10' 0\" long, 1/4 in, 23/32 in", Tape.MM, "A-B 3048 mm long, 6.35 mm, 18.3 mm"),
        ("at most 40 psf at 70 °F", Tape.MM, "at most 1.92 kPa at 21 °C"),
        ("13.1 mm per m, 1 in 76", Tape.MM, "13.1 mm per m, 1 in 76"),  # a slope, no inch
        ("572 mm long (1 in 12)", Tape.MM, "572 mm long (1 in 12)"),
        ("1 in, 2 of them", Tape.MM, "25.4 mm, 2 of them"),
        ("add stud 'added 1', its centre", Tape.MM, "add stud 'added 1', its centre"),  # a name, no foot
        ("12' long, 1' 2\" high", Tape.MM, "3658 mm long, 355.6 mm high"),
    ],
)
def test_measures_are_converted_where_they_stand(text: str, tape: Tape, wanted: str) -> None:
    assert in_units(text, tape) == wanted


def test_what_is_in_the_own_system_already_stays_to_the_letter() -> None:
    inch = '3\' 0-1/8" × 1/2"; 27.08 sq ft; 8.79 psf; 1 in per ft'
    assert in_units(inch, Tape.INCH) == inch
    metric = "914 mm × 12.7 mm; 2.5 m²; 1.2 kPa; 20 mm/m; 3.5 l"
    assert in_units(metric, Tape.MM) == metric


def test_papers_are_the_same_each_time() -> None:
    plan = planned("us", "inch")
    assert pack_data(copy.deepcopy(plan)) == pack_data(plan)
