"""Any job survives writing and reading; no text gives anything but a job or a list of problems."""

import datetime

from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.errors import JobError
from firstcourse.job import Job, job_text, read_job_text, starter_text
from firstcourse.job.checks import NARROWEST_SHEET_MM
from firstcourse.job.fields import LONGEST_SIDE_MM
from firstcourse.units import Tape, mm

LENGTHS = st.integers(1, mm(LONGEST_SIDE_MM))
SHEET_SIDES = st.integers(mm(NARROWEST_SHEET_MM), mm(LONGEST_SIDE_MM))
OFFSETS = st.integers(-mm(100), mm(100))
WORDS = st.text(min_size=3, max_size=40)
REASONS = st.text(st.characters(min_codepoint=32, max_codepoint=126), min_size=3, max_size=40)
"""Reasons are printed: they hold what the papers' type has."""
NAMES = st.from_regex(r"[A-Za-z0-9][A-Za-z0-9 _.\-]{0,20}", fullmatch=True)


@st.composite
def jobs(draw):
    corners = [chr(ord("A") + i) for i in range(draw(st.integers(3, 8)))]
    pairs = [f"{a}-{b}" for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    sides = {pair: draw(LENGTHS) for pair in pairs}
    stud = draw(st.integers(0, min(sides.values())))
    # No ceiling rises more steeply than one to one here.
    low = draw(st.integers(1, mm(LONGEST_SIDE_MM) // 2))
    rise = min(*sides.values(), mm(LONGEST_SIDE_MM) // 2)
    room = {
        "name": draw(NAMES),
        "corners": corners,
        "sides": sides,
        "heights": {corner: low + draw(st.integers(0, rise)) for corner in corners},
        "levels": {corner: draw(OFFSETS) for corner in corners},
        "plumb": {pairs[0]: draw(OFFSETS)},
        "floor": draw(
            st.sampled_from([None, {}, {"framing": {"parallel_to": pairs[-1], "spacing": 9, "first": 0}}])
        ),
        "walls": [
            {
                "wall": pairs[0],
                "foot": draw(st.sampled_from(["floor", "tub", "none"])),
                "framing": {"members": [{"at": stud}], "plates": draw(st.booleans())},
            }
        ],
    }
    price = draw(st.none() | st.integers(0, 10**8).map(lambda cents: cents / 100))
    reason = draw(REASONS.filter(str.strip))
    return Job.model_validate(
        {
            "name": draw(NAMES),
            "date": draw(st.dates(datetime.date(2026, 1, 1), datetime.date(2999, 1, 1))),
            "tape": draw(st.sampled_from(Tape)),
            "stock": [
                {"id": draw(NAMES), "size": [draw(SHEET_SIDES), draw(SHEET_SIDES)], "thickness": 9, "price": price}
            ],
            "rules": [{"rule": "boards.piece.min", "value": "5 in", "reason": reason}],
            "rooms": [room],
        }
    )


@given(jobs())
@settings(max_examples=60, deadline=None)
def test_written_and_read_again_it_is_the_same_job(job):
    assert read_job_text(job_text(job)) == job


@st.composite
def spoilt_texts(draw):
    text = starter_text()
    for _ in range(draw(st.integers(1, 6))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 40)))
        piece = draw(
            st.text(max_size=12)
            | st.sampled_from(
                ["{", "[", "]", "}", ": ", "\n", "- ", "&a ", "*a", "!!x ", "null", "-1 in", "1e999", "~"]
            )
            | st.builds(lambda a, n: starter_text()[a : a + n], st.integers(0, 1500), st.integers(0, 60))
        )
        text = text[:start] + piece + text[end:]
    return text


@given(spoilt_texts() | st.text(max_size=200))
@settings(max_examples=400, deadline=None)
def test_no_text_gives_anything_but_a_job_or_problems(text):
    assert outcome(text)


def outcome(text):
    """Whether the text gave a job, or problems that each say something."""
    try:
        return isinstance(read_job_text(text), Job)
    except JobError as error:
        return bool(error.problems) and all(problem.message for problem in error.problems)
