"""UK and Australian packs spoke of closet flanges and wax rings, and an Australian setter read of kerbs."""

from typing import Any

import pytest
import yaml

from firstcourse.job import read_job_text
from firstcourse.papers.site_pack import pack_data
from firstcourse.steps import plan_job
from firstcourse.units import Tape
from firstcourse.words import Speaker

JOB = """
name: low pipe
practice: uk
date: 2026-11-25
tape: mm
stock: [{id: board, size: [600 mm, 1200 mm], thickness: 6 mm}]
tiles: [{id: small, size: [297 mm, 297 mm], thickness: 9 mm, joint: 3 mm, size_spread: 0.5 mm}]
rooms:
  - name: loo
    corners: [A, B, C, D]
    sides: {A-B: 1200 mm, B-C: 1500 mm, C-D: 1200 mm, D-A: 1500 mm}
    diagonals: {A-C: 1921 mm, B-D: 1921 mm}
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 400 mm, width: 45 mm}
      panels: {layers: [18 mm]}
      openings: [{id: wc, kind: flange, side: A-B, left: 600 mm, out: 410 mm, diameter: 110 mm}]
      flange_top: 5 mm
      tile: {kind: ceramic, thickness: 9 mm, edge: 297 mm}
      exposure: {zone: damp}
      tiling: {tile: small}
"""


def printed(practice: str) -> list[dict[str, Any]]:
    job = yaml.safe_load(JOB) | {"practice": practice}
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    return [finding for finding in pack_data(plan)["findings"] if finding["code"] in ("SUR-108", "SUI-604")]


@pytest.mark.parametrize(
    ("practice", "said", "foreign"),
    [("uk", "soil pipe", "closet flange"), ("au", "soil pipe", "wax"), ("us", "closet flange", "soil pipe")],
)
def test_what_a_closet_stands_on_has_the_name_of_the_practice(practice: str, said: str, foreign: str) -> None:
    found = printed(practice)
    assert {finding["code"] for finding in found} == {"SUR-108", "SUI-604"}
    for finding in found:
        assert said in finding["message"].lower()
        assert foreign not in f"{finding['message']} {finding['remedy']}".lower()
    rings = any("wax" in finding["remedy"] for finding in found)
    assert rings == (practice == "us")


def test_a_kerb_is_a_hob_in_australia() -> None:
    said = {practice: Speaker(practice, Tape.MM).words("The curb beside kerbs") for practice in ("us", "uk", "au")}
    assert said == {"us": "The curb beside curbs", "uk": "The kerb beside kerbs", "au": "The hob beside hobs"}
