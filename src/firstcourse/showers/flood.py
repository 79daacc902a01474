"""The flood test of a shower floor: how high the water stands, and what it weighs."""

from firstcourse.plan import FloodTest
from firstcourse.rules import RuleSet
from firstcourse.showers.fall_planes import FallingFloor
from firstcourse.survey import SurveyedShower
from firstcourse.units import ticks_from_mm, to_mm

_MM3_PER_LITRE = 1e6


def flood_test(
    surveyed: SurveyedShower, floor: FallingFloor, below: int, on_kerb: int, rules: RuleSet
) -> FloodTest:
    """What a shower floor is filled to before it is tiled.

    The water stands as deep as the rule asks over the membrane where that is highest, so at the threshold too; a
    dam holds it where no kerb, not tiled yet, stands high enough. One litre of water is taken as one kilogram.

    Args:
        surveyed: The floor.
        floor: Its planes; those of the membrane lie alike.
        below: How far the membrane lies below the finished planes [ticks].
        on_kerb: Tile and mortar that are still to come on the kerb's top [ticks].
        rules: Rules in force.
    """
    kerb, depth, rise = surveyed.shower.kerb, rules.ticks("water.test.depth"), ticks_from_mm(floor.rise)
    level = rise - below + depth
    held = kerb is not None and level <= kerb.height - on_kerb - rules.ticks("water.test.below_threshold")
    area = floor.volume(1.0) - floor.volume(0.0)
    litres = (to_mm(rise + depth) * area - floor.volume(0.0)) / _MM3_PER_LITRE
    return FloodTest(
        hours=rules.number("water.test.hours"), level=level, depth=depth, litres=litres, kg=litres, dam=not held
    )
