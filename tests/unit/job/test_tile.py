"""Tiles and tilings as the setter writes them: what is read, and what is refused with a word that helps."""

from fractions import Fraction

import pytest

from firstcourse.errors import JobError
from firstcourse.job import Job, read_job_text

_JOB = """
name: tiles
date: 2026-11-25
tape: mm
tiles:
  - {{id: white, size: [300 mm, 100 mm], thickness: 8 mm, joint: 2 mm, per_box: 34, price: 21.50}}
  - {{id: penny, shape: hexagon, size: [50 mm, 57.7 mm], thickness: 6 mm, sheet: [6, 6]}}
repeats:
  - {{id: two by two, across: 604 mm, up: 204 mm, pieces: [{{tile: {piece}, at: [0 mm, 0 mm]}}]}}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 2000 mm, B-C: 1500 mm, C-D: 2000 mm, D-A: 1500 mm}}
    diagonals: {{A-C: 2500 mm, B-D: 2500 mm}}
    height: 2400 mm
    walls:
      - {{wall: A-B, framing: {{spacing: 400 mm, first: 400 mm}}, tiling: {wall}}}
    floor: {{tiling: {floor}}}
"""


def _read(*, wall: str = "{tile: white}", floor: str = "{tile: white}", piece: str = "white") -> Job:
    return read_job_text(_JOB.format(wall=wall, floor=floor, piece=piece))


def test_a_tiling_is_read_with_its_fraction_and_angle():
    job = _read(wall="{tile: white, pattern: running, offset: 1/3, angle: 90}")
    tiling = job.rooms[0].walls[0].tiling
    assert tiling is not None
    assert (tiling.offset, tiling.angle) == (Fraction(1, 3), 90)
    assert job.tiles[0].per_box == 34
    assert job.tiles[1].sheet == (6, 6)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"wall": "{tile: green}"}, "'green' is not one of the job's tiles"),
        ({"wall": "{tile: penny}"}, "hexagons go with pattern: hexagon"),
        ({"wall": "{tile: white, pattern: hexagon}"}, "hexagons go with pattern: hexagon"),
        ({"wall": "{tile: white, offset: 1/3}"}, "an offset belongs to pattern: running"),
        ({"wall": "{tile: white, pattern: running, offset: 3/2}"}, "less than 1"),
        ({"wall": "{tile: white, pattern: running, offset: a third}"}, "'a third' is no fraction"),
        ({"wall": "{tile: white, angle: 30}"}, "angle"),
        ({"wall": "{tile: white, pattern: repeat}"}, "go together"),
        ({"wall": "{pattern: repeat, repeat: windmill}"}, "'windmill' is not one of the job's repeats"),
        ({"wall": "{}"}, "name the tile"),
        ({"wall": "{tile: white, seen_first: [A-C]}"}, "'A-C' is not a side"),
        ({"wall": "{tile: white, bands: [{bottom: 1 m, tile: penny}]}"}, "rectangular tiles"),
        ({"wall": "{tile: white, angle: 45, bands: [{bottom: 1 m, tile: white}]}"}, "level courses"),
        ({"floor": "{tile: white, bands: [{bottom: 1 m, tile: white}]}"}, "walls only"),
        ({"piece": "green"}, "'green' is not one of the job's tiles"),
    ],
)
def test_what_cannot_be_is_refused_in_words(changed: dict[str, str], words: str):
    with pytest.raises(JobError) as caught:
        _read(**changed)
    assert words in str(caught.value)
    assert "job.yaml:" in str(caught.value)


def test_a_hexagon_must_be_regular():
    text = _JOB.format(wall="{tile: white}", floor="{tile: white}", piece="white").replace("57.7 mm", "50 mm")
    with pytest.raises(JobError, match="regular hexagon"):
        read_job_text(text)
