"""The shopping list counted again, line by line, with the working of each need."""

from collections import Counter
from collections.abc import Iterator, Mapping

from firstcourse.verify.formulas.board_quantities import board_lines
from firstcourse.verify.formulas.proving import Prove
from firstcourse.verify.formulas.tile_quantities import tile_lines
from firstcourse.verify.formulas.wanted import Listed, once
from firstcourse.verify.formulas.water_quantities import water_lines
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection


@once
def _lines(plan: Document) -> Mapping[str, Listed]:
    """Every line, by its item."""
    return {line.item: line for line in (*board_lines(plan), *tile_lines(plan), *water_lines(plan))}


def check_quantities(plan: Document) -> Iterator[Objection]:
    """Object to what is listed and not needed, to what is needed and not listed, and to packs that do not fit."""
    lines = _lines(plan)
    listed = Counter(quantity.item for quantity in plan.quantities)
    for name in sorted(name for name, number in listed.items() if number > 1):
        yield Objection("VER-803", name, "is listed twice")
    for line in lines.values():
        if line.must and line.item not in listed:
            yield Objection("VER-804", line.item, "is needed and not on the list")
    for quantity in plan.quantities:
        if quantity.item in lines:
            yield from lines[quantity.item].objections(quantity)
        else:
            yield Objection("VER-804", quantity.item, "is on the list, and nothing drawn needs it")


def expected(plan: Document) -> Iterator[str]:
    """The working of every line that must be listed, and of what else is listed of those that may be."""
    listed = {quantity.item for quantity in plan.quantities}
    yield from (line.key for line in _lines(plan).values() if line.must or line.item in listed)


def _line(plan: Document, working: Working) -> Iterator[Objection]:
    line = _lines(plan)[working.at[0]]
    quantity = next((one for one in plan.quantities if one.item == line.item), None)
    if quantity is None:
        yield Objection("VER-804", line.item, "is worked out and not on the list")
    else:
        yield from line.wanted(quantity).objections(working)


FORMULAS: dict[str, Prove] = dict.fromkeys(
    (
        "quantities-sheets", "quantities-fasteners", "quantities-bedding_mortar", "quantities-seam_tape",
        "quantities-sealant", "quantities-added", "quantities-board_strips", "quantities-tiles",
        "quantities-tile_mortar", "quantities-grout", "quantities-joint_sealant", "quantities-backer_rod",
        "quantities-bond_breaker", "quantities-edge_trim", "quantities-spacers", "quantities-sheet_membrane",
        "quantities-liquid_membrane", "quantities-liner", "quantities-sealing_band", "quantities-inside_corners",
        "quantities-outside_corners", "quantities-drain_flanges", "quantities-collars", "quantities-bed_mortar",
    ),
    _line,
)  # fmt: skip
