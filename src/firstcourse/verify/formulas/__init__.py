"""Every formula that a working may have: what it must come to, and for what a plan must hold one.

Fails closed: a formula that is not listed here is an objection, and so is a working that is absent or extra.
"""

from collections import Counter
from collections.abc import Iterator, Mapping

from firstcourse.verify.formulas import (
    boards,
    bounds,
    build_up,
    doorways,
    ground,
    lifting,
    masses,
    quantities,
    sawing,
    sheets,
    showers,
    stance,
    survey,
    tile_joints,
    tiles,
    water,
)
from firstcourse.verify.formulas.proving import Expected, Prove
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

FORMULAS: Mapping[str, Prove] = {
    **boards.FORMULAS,
    **bounds.FORMULAS,
    **build_up.FORMULAS,
    **doorways.FORMULAS,
    **sheets.FORMULAS,
    **showers.FORMULAS,
    **ground.FORMULAS,
    **lifting.FORMULAS,
    **masses.FORMULAS,
    **quantities.FORMULAS,
    **sawing.FORMULAS,
    **stance.FORMULAS,
    **survey.FORMULAS,
    **tile_joints.FORMULAS,
    **tiles.FORMULAS,
    **water.FORMULAS,
}
"""By the formula's id, what proves a working of it from the rest of the plan."""
EXPECTED: tuple[Expected, ...] = (
    boards.expected,
    bounds.expected,
    build_up.expected,
    doorways.expected,
    sheets.expected,
    showers.expected,
    ground.expected,
    lifting.expected,
    masses.expected,
    quantities.expected,
    sawing.expected,
    stance.expected,
    survey.expected,
    tile_joints.expected,
    tiles.expected,
    water.expected,
)
"""Each gives the keys of the workings of its own formulas that the rest of the plan asks for."""


def check_formulas(plan: Document) -> Iterator[Objection]:
    """Prove every working by its formula, and object to what is absent, extra or not known."""
    asked = Counter(key for expected in EXPECTED for key in expected(plan))
    for key, working in plan.workings.items():
        prove = FORMULAS.get(working.formula)
        if prove is None:
            yield Objection("VER-908", key, f"is by formula {working.formula}, which is not known")
        elif key != working.key:
            yield Objection("VER-908", key, f"is the key of what is {working.key}")
        elif key not in asked:
            yield Objection("VER-907", key, "is worked out, and nothing in the plan asks for it")
        else:
            yield from prove(plan, working)
    for key in asked.keys() - plan.workings.keys():
        yield Objection("VER-907", key, "is not worked out")
