"""What a job tells of the deck on its joists, for the judgement: planks, and panels by their kind."""

from firstcourse.findings import Finding
from firstcourse.job import BoardedFloor
from firstcourse.rules import RuleSet
from firstcourse.suitability import Deck, Planks, judge_deck, judge_planks
from firstcourse.units import Tape


def deck_findings(
    floor: BoardedFloor, spacing: int | None, where: str, rules: RuleSet, tape: Tape
) -> tuple[Finding, ...]:
    """What is said of planks and panels by their thickness and the joists' spacing.

    Args:
        floor: What the job says of the floor.
        spacing: Its joists centre to centre [ticks]; None where not known.
        where: The place in words.
        rules: The rules in force.
        tape: Tape of the job.
    """
    panels = () if floor.panels is None else floor.panels.layers
    if floor.planks is not None:
        kind = Deck.PLANKS_DIAGONAL if floor.planks.lie == "diagonal" else Deck.PLANKS
        planks = Planks(kind=kind, thickness=floor.planks.thickness, width=floor.planks.width)
        return judge_planks(rules, where, planks, panels, spacing, tape)
    if floor.panels is None or spacing is None:
        return ()
    material = floor.panels.material
    return judge_deck(rules, where, None if material is None else Deck(material), panels, spacing, tape)
