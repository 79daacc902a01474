"""What a job tells of the deck on its joists, for the judgement: planks, and panels by their kind."""

from firstcourse.findings import Finding
from firstcourse.frames.decks import Deck, Planks, judge_deck, judge_planks
from firstcourse.job import BoardedFloor
from firstcourse.rules import RuleSet


def deck_findings(floor: BoardedFloor, spacing: int | None, ref: str, rules: RuleSet) -> tuple[Finding, ...]:
    """What is said of planks and panels by their thickness and the joists' spacing.

    Args:
        floor: What the job says of the floor.
        spacing: Its joists centre to centre [ticks]; None where not known.
        ref: Reference to the floor.
        rules: The rules in force.
    """
    panels = () if floor.panels is None else floor.panels.layers
    if floor.planks is not None:
        kind = Deck.PLANKS_DIAGONAL if floor.planks.lie == "diagonal" else Deck.PLANKS
        planks = Planks(kind=kind, thickness=floor.planks.thickness, width=floor.planks.width)
        return judge_planks(rules, ref, planks, panels, spacing)
    if floor.panels is None or spacing is None:
        return ()
    material = floor.panels.material
    return judge_deck(rules, ref, None if material is None else Deck(material), panels, spacing)
