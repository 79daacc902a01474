"""What a plan was given: the job as taped and chosen, and each rule value that was asked, under one seal."""

import hashlib
import json
from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import Field

from firstcourse.plan.base import Frozen
from firstcourse.plan.stamp import RuleNote


class Given(Frozen):
    """All that came from outside; whatever else stands in the plan follows from it.

    Attributes:
        digest: SHA-256 of `job` and `rules` as JSON, keys sorted, without spaces.
        job: The job document's values by its own names, lengths in millimetres; what was not given is left out.
        rules: The rule values that were asked, by id.
    """

    digest: str = ""
    job: dict[str, Any] = Field(default={})
    rules: tuple[RuleNote, ...] = ()


def sealed(job: Mapping[str, Any], rules: Sequence[RuleNote]) -> Given:
    """The job's values and the rules that were asked, with their digest."""
    values = {"job": job, "rules": [note.model_dump(mode="json") for note in rules]}
    text = json.dumps(values, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return Given(digest=hashlib.sha256(text.encode()).hexdigest(), job=dict(job), rules=tuple(rules))
