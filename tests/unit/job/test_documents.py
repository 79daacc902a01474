"""Examples, guide, schema and starter say what the models say."""

import json
from pathlib import Path

import jsonschema
import pytest
import yaml

from firstcourse.findings import Severity
from firstcourse.job import job_guide, job_schema, job_text, read_job, read_job_text, starter_text
from firstcourse.rules import Override, load_rules
from firstcourse.survey import survey_job
from firstcourse.units import to_mm

ROOT = Path(__file__).parents[3]
EXAMPLES = sorted((ROOT / "examples").glob("*/job.yaml"))
TEXTS = {path.parent.name: path.read_text(encoding="utf-8") for path in EXAMPLES} | {"starter": starter_text()}


def surveyed(text):
    job = read_job_text(text)
    changes = tuple(Override(rule=c.rule, value=c.value, reason=c.reason) for c in job.rules)
    return job, survey_job(job, load_rules(job.date, job.practice, changes))


def test_there_are_six_examples():
    assert [path.parent.name for path in EXAMPLES] == [
        "l-shower-room",
        "limber-floor",
        "metric-column",
        "out-of-true",
        "tiled-shower",
        "tub-bathroom",
    ]


@pytest.mark.parametrize("name", TEXTS)
def test_readings_agree_with_each_other_to_within_the_tape(name):
    job, result = surveyed(TEXTS[name])
    graduation_mm = to_mm(job.tape.graduation)
    for room in result.rooms:
        assert room.adjustment.freedom >= 1 and not room.adjustment.suspects
        assert all(abs(r.residual_mm) <= graduation_mm for r in room.adjustment.residuals)
    assert not [f for f in result.findings if f.severity is Severity.STOP]


def test_the_shower_room_is_out_of_square_and_its_wall_tops_slope():
    _, result = surveyed(TEXTS["l-shower-room"])
    wall = next(s for s in result.surfaces if s.id == "shower room/wall/F-A")
    assert len({v for _, v in wall.extent}) > 2
    (room,) = result.rooms
    assert 0.5 < abs(to_mm(room.plan["A"][0] - room.plan["F"][0])) / to_mm(room.plan["A"][1]) * 57.3 < 1.5


@pytest.mark.parametrize("name", TEXTS)
def test_written_back_it_reads_the_same(name):
    job = read_job_text(TEXTS[name])
    assert read_job_text(job_text(job)) == job


@pytest.mark.parametrize("name", TEXTS)
def test_schema_accepts_what_the_reader_accepts(name):
    schema = job_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    # Dates are text in JSON, and so is every length.
    data = json.loads(json.dumps(yaml.safe_load(TEXTS[name]), default=str))
    jsonschema.validate(data, schema)


def test_schema_refuses_unknown_settings():
    data = json.loads(json.dumps(yaml.safe_load(starter_text()), default=str)) | {"colour": "red"}
    with pytest.raises(jsonschema.ValidationError, match="colour"):
        jsonschema.validate(data, job_schema())


def test_guide_on_disk_is_the_guide_of_the_models():
    on_disk = (ROOT / "docs" / "job-document.md").read_text(encoding="utf-8")
    assert on_disk == job_guide(), (
        "renew it: python -c \"from firstcourse.job import job_guide; print(job_guide(), end='')\""
        " > docs/job-document.md"
    )


def test_every_setting_is_explained():
    assert "| None |" not in job_guide()
    for name, part in job_schema()["$defs"].items():
        for setting, described in part.get("properties", {}).items():
            assert described.get("description"), f"{name}.{setting}"


def test_examples_read_from_disk():
    for path in EXAMPLES:
        assert read_job(path).rooms
