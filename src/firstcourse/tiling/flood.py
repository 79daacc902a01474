"""The flood test of a shower floor: how high the water stands, what it weighs, and what is written down."""

from firstcourse.plan import FloodTest
from firstcourse.rules import RuleSet
from firstcourse.survey.showers import SurveyedShower
from firstcourse.tiling.fall_planes import FallingFloor
from firstcourse.tiling.words import length_text
from firstcourse.units import Tape, ticks_from_mm, to_mm

_MM3_PER_LITRE = 1e6


def flood_test(surveyed: SurveyedShower, floor: FallingFloor, rules: RuleSet, tape: Tape) -> FloodTest:
    """What a shower floor is filled to before tile is set.

    The water stands just below the threshold, and never shallower than the rule asks; without a kerb a dam holds
    it. One litre of water is taken as one kilogram.

    Args:
        surveyed: The floor; without a kerb the threshold is its highest point.
        floor: Its planes.
        rules: Rules in force.
        tape: For the words of the record.
    """
    kerb = surveyed.shower.kerb
    least = rules.ticks("water.test.depth")
    if kerb is None:
        level = max(least, ticks_from_mm(floor.rise))
    else:
        level = max(least, kerb.height - rules.ticks("water.test.below_threshold"))
    area = floor.volume(1.0) - floor.volume(0.0)
    litres = max(0.0, to_mm(level) * area - floor.volume(0.0)) / _MM3_PER_LITRE
    hours = rules.number("water.test.hours")
    mark = length_text(level, tape)
    return FloodTest(
        hours=hours,
        level=level,
        litres=litres,
        kg=litres,
        dam=kerb is None,
        record=(
            "Plug or test ball set in the drain below the weep holes",
            f"Water mark {mark} over the top of the drain, on {'the dam' if kerb is None else 'the kerb'}",
            "Date and time of filling, level at the mark",
            "Temperature of the room, sunlight or draught on the water",
            f"Level after {hours:g} h, and the loss",
            "Ceiling below and outer face of the walls: dry, damp or wet",
            "Plug taken out, floor drained without puddles",
            "Tested by, seen by",
        ),
    )
