"""How steep shower floors are told to be: just where no rise keeps the falls that are asked of all of them."""

from collections import Counter
from collections.abc import Iterator

from firstcourse.verify.fall_given import shower_of
from firstcourse.verify.fall_rise import Rise
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_FALLS = {"flow": "", "planes": "FAL-104", "none": "FAL-103"}
"""By where the least fall is kept, what is to be said of it."""


def check_falls_told(plan: Document) -> Iterator[Objection]:
    """Object where it is not told how steep a floor is that keeps not all of its falls, or told of another."""
    asked = Counter(_asked(plan))
    told = Counter((one.code, one.at) for one in plan.findings if one.code in ("FAL-103", "FAL-104"))
    for code, at in asked - told:
        yield Objection("VER-759", at[0], f"asks for {code} of {' and '.join(at)}, and no finding says so")
    for code, at in told - asked:
        yield Objection("VER-759", at[0], f"has {code} said of {' and '.join(at)}, and nothing asks for it")


def _asked(plan: Document) -> Iterator[tuple[str, tuple[str, ...]]]:
    for surface in plan.surfaces:
        if surface.fall is None or shower_of(surface, plan) is None:
            continue
        if code := _FALLS[Rise.of(surface.fall, plan.rules).kept]:
            yield code, (surface.id,)
