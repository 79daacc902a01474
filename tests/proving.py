"""Proofs for tests that spoil one plan in many ways: what was proved of a surface that is the same is kept.

`tests/unit/verify/test_one_surface_at_a_time.py` holds that a proof with what is kept is the proof without.
"""

import json
from typing import Any

import firstcourse.verify
from firstcourse.app.store import Memory
from firstcourse.reuse import Steps
from firstcourse.verify import Verdict

_PROVED = Steps(Memory())


def verify_text(plan_json: str) -> Verdict:
    """The verdict on a plan's text."""
    return firstcourse.verify.verify_text(plan_json, do=_PROVED.do)


def verify(document: Any) -> Verdict:
    """The verdict on a plan as JSON values; they may be changed afterwards."""
    return verify_text(json.dumps(document))
