"""A kitchen of 60 m² and 25 corners was searched for half a minute, and 60 corners at effort 3 without end.

The steps of a level are fewer the more sheets there are, by a count that depends on the job alone.
"""

import pytest

from firstcourse.cutting import StockSize
from firstcourse.cutting import choice as search
from firstcourse.cutting.choice import FULL_WORK, choose
from firstcourse.cutting.choices import Arrangement, ChoiceField, Course

WIDE = 100


def work_of(monkeypatch: pytest.MonkeyPatch, sheets: int, effort: int) -> int:
    """Steps that a field is searched in whose bound is so many sheets, and that is never met."""
    counted: list[int] = []
    course = Course((0, 50, WIDE), ((0, 1, ((50, 60),)), (1, 2, ((50, 60),)), (0, 2, ((WIDE, 60),))))
    field = ChoiceField("f", (Arrangement((course,) * 3, 10),))

    def found(self: object, steps: int, parts: int, bound: int) -> None:
        counted.append(steps + parts)

    monkeypatch.setattr(search._Search, "run", found)
    monkeypatch.setattr(search._Search, "go_on", lambda *_: None)
    monkeypatch.setattr(search._Search, "trim", lambda self, steps, rounds: counted.append(steps * rounds))
    monkeypatch.setattr(search._Search, "start_again", lambda self, *given: counted.append(sum(given[:3])))
    monkeypatch.setattr(search._Search, "choice", lambda self, bound: None)
    choose([field], [StockSize("s", 120, 80, 7)], effort=effort, bound=7 * sheets)
    return sum(counted)


@pytest.mark.parametrize("effort", [1, 2, 3])
def test_work_shrinks_with_the_sheets_and_is_full_for_rooms(monkeypatch: pytest.MonkeyPatch, effort: int) -> None:
    full = work_of(monkeypatch, 1, effort)
    assert work_of(monkeypatch, FULL_WORK, effort) == full
    twice, many = (work_of(monkeypatch, FULL_WORK * times, effort) for times in (2, 20))
    assert 0.4 * full < twice < 0.55 * full
    assert many < 0.1 * full


def test_more_effort_is_more_work_on_a_large_surface(monkeypatch: pytest.MonkeyPatch) -> None:
    works = [work_of(monkeypatch, 200, effort) for effort in range(4)]
    assert works == sorted(works) and works[0] < works[3]
