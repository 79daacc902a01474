"""Steps at doorways: the difference of the two floors beside each."""

from collections.abc import Iterator

from firstcourse.verify.formulas.proving import CODE, Prove
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_STEP = "height-doorway_step"
_SLACK_MM = 0.001
"""A step is rounded to a millionth of an inch, heights to nine figures."""


def _step(plan: Document, working: Working) -> Iterator[Objection]:
    here, beyond, step = working.number("this_floor"), working.number("other_floor"), working.comes_to
    if here is None or beyond is None or step is None or abs(here - beyond - step) > _SLACK_MM:
        yield Objection(CODE, working.key, f"gives a step of {step} mm between floors {here} and {beyond} mm high")


def expected(plan: Document) -> Iterator[str]:
    """Steps that are worked out."""
    yield from (key for key, working in plan.workings.items() if working.formula == _STEP)


FORMULAS: dict[str, Prove] = {_STEP: _step}
