"""What the judgement found stood in plan.json as sentences on the job's own tape.

No other reader could be told it from them, and the verifier had to compare them letter by letter. It is kept as
codes, references and numbers, and said at the edge.
"""

import re
from importlib.resources import files
from pathlib import Path

import pytest
import yaml

from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.steps.judging import judge_alone
from firstcourse.units import Tape
from firstcourse.words import Speaker

SOURCE = Path(str(files("firstcourse")))
EXAMPLES = Path(__file__).parents[2] / "examples"
OUT_OF_TRUE, LIMBER = (
    (EXAMPLES / name / "job.yaml").read_text(encoding="utf-8") for name in ("out-of-true", "limber-floor")
)
INCHES = re.compile(r"\d\"|\d'|\d in\b(?! \d)|\bpsf\b|\bpsi\b|\blb\b(?!/1000)")
METRIC = re.compile(r"\d mm\b|\bkPa\b|\bMPa\b|kg/m²|\d l\b")


def loaded() -> str:
    """The limber floor over joists given by their EI and cut, with a tub of which nobody says what it weighs."""
    data = yaml.safe_load(LIMBER)
    floor = data["rooms"][-1]["floor"]
    at = {"side": "A-B", "left": "0 in", "out": "0 in", "width": "60 in", "depth": "30 in"}
    floor["openings"] = [*floor.get("openings", ()), {"id": "tub", "kind": "tub", **at}]
    hole = {"kind": "hole", "size": "1 in", "at": "30 in", "edge": "3 in"}
    floor["joists"] = {"span": "12 ft", "stiffness": "1.2e8 lb in2", "cuts": [hole]}
    return yaml.safe_dump(data, sort_keys=False)


def british(text: str) -> str:
    return text.replace("practice: us", "practice: uk")


JOBS = {
    "a room out of true": OUT_OF_TRUE,
    "the same by UK practice": british(OUT_OF_TRUE),
    "a floor that bends": LIMBER,
    "the same by UK practice, its frame untold": british(LIMBER),
    "the same with a tub on joists by their EI": loaded(),
}


@pytest.mark.parametrize("name", JOBS)
def test_findings_are_values_that_both_tapes_say(name: str) -> None:
    done = judge_alone(read_job_text(JOBS[name]))
    found = [finding for finding in done.findings if finding.code.startswith("SUI-")]
    assert len(found) >= 4
    for finding in found:
        assert Finding.model_validate_json(finding.model_dump_json()) == finding
        for tape, others in ((Tape.INCH, METRIC), (Tape.MM, INCHES)):
            said = Speaker(done.practice, tape).finding(finding)
            assert said.message and not others.search(
                " ".join((said.message, said.measured, said.limit, said.remedy))
            )


def test_every_code_of_the_judgement_has_words_and_no_words_are_left_over() -> None:
    built = {
        code
        for file in SOURCE.rglob("*.py")
        if file.relative_to(SOURCE).parts[0] not in ("verify", "words")
        for code in re.findall(r'"(SUI-\d{3})"', file.read_text(encoding="utf-8"))
    }
    text = (SOURCE / "words" / "texts" / "en" / "sui.ftl").read_text(encoding="utf-8")
    worded = set(re.findall(r"^(SUI-\d{3}) =", text, re.MULTILINE))
    assert built == worded and len(built) > 60
