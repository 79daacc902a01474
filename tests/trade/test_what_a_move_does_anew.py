"""While something on a surface is moved, each move adjusted the readings of its room anew, unfolded all its other
surfaces, and read the document three times."""

import pytest

from example_plans import EXAMPLES
from firstcourse.app import Session
from firstcourse.app.fields import surface_fields, text_with_thing, things
from firstcourse.app.one_surface import Held, LightTask, planned_lightly
from firstcourse.app.store import Memory
from firstcourse.files import read_file, utf8_text
from firstcourse.survey import rooms, survey_job


def text_of(name: str) -> str:
    return utf8_text(read_file(EXAMPLES / name / "job.yaml", most_bytes=1_000_000, what="a job document"))


@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower", "l-shower-room"])
def test_one_surface_unfolded_alone_is_as_it_is_among_all(name: str) -> None:
    session = Session(text_of(name))
    every = session.survey()
    assert len(every.surfaces) > 1
    for one in every.surfaces:
        alone = survey_job(session.job, session.rules, only=one.id)
        assert alone.surfaces == (one,) and alone.rooms == every.rooms and alone.showers == every.showers


def test_a_move_adjusts_no_readings_again(monkeypatch: pytest.MonkeyPatch) -> None:
    adjusted = 0
    adjust = rooms.adjust

    def counted(*args: object, **kwargs: object) -> object:
        nonlocal adjusted
        adjusted += 1
        return adjust(*args, **kwargs)  # type: ignore[arg-type]

    monkeypatch.setattr(rooms, "adjust", counted)
    session = Session(text_of("tub-bathroom"))
    where = surface_fields(session.job)["hall bath/wall/A-B"]
    (niche,) = things(where, session.job)
    memory, found = Memory(), []
    for left in ("16 3/4 in", "18 in", "20 1/2 in"):
        text = text_with_thing(session, where, niche.number, {"left": left})
        made = planned_lightly(LightTask(text=text, name="job", surface=where.surface, held=Held()), memory)
        assert made is not None
        found.append(made.surfaces[0].openings[0].outline)
    assert adjusted == 1 and len({*found}) == 3


def test_a_session_surveys_once_and_again_after_a_change() -> None:
    session = Session(text_of("tub-bathroom"))
    first = session.survey()
    assert session.survey() is first
    session.edit("rooms[1].walls[1].openings[1].left", "18 in")
    assert session.survey().surfaces != first.surfaces
