"""How far apart soft joints lie, how wide they are and what fills them, by the rules."""

import math
from dataclasses import dataclass
from typing import Literal

from firstcourse.plan import SurfaceKind
from firstcourse.rules import RuleEntry, RuleSet

Exposure = Literal["dry", "slab", "moist", "exterior"]
"""Dry inside; inside on a slab above ground; inside in direct sun or where it gets wet; outside."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spacing:
    """How far apart soft joints of a field lie at most, and how wide they are.

    Attributes:
        limit: Largest distance between soft joints, each way [ticks].
        width: Width of a soft joint in the field [ticks].
        edge: Width at the perimeter of a floor, or where a wall's or ceiling's tile meets another plane [ticks].
        rule: The rule that sets the limit.
        widest: Widest joint to fill with sealant [ticks].
        width_rule: The rule that sets the width in the field.
        edge_width_rule: The rule that sets it at the edges.
        edge_rule: The rule that asks for joints at edges and changes of plane.
        below_rule: The rule that asks for joints over joints in the backing.
        widest_rule: The rule that says how wide sealant may fill.
    """

    limit: int
    width: int
    edge: int
    widest: int
    rule: RuleEntry
    width_rule: RuleEntry
    edge_width_rule: RuleEntry
    edge_rule: RuleEntry
    below_rule: RuleEntry
    widest_rule: RuleEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """What fills a soft joint.

    Attributes:
        width: Width of the joint [ticks].
        depth: Depth of the sealant at its middle [ticks].
        rod: Diameter of the backer rod; 0 where none goes in and bond-breaker tape is laid [ticks].
    """

    width: int
    depth: int
    rod: int


def field_spacing(
    kind: SurfaceKind,
    rules: RuleSet,
    *,
    exposure: Exposure = "moist",
    joint: int = 0,
    yearly_range_f: float = 0,
    wanted: int | None = None,
    mosaic: bool = False,
) -> Spacing:
    """Spacing and width of soft joints by exposure.

    Args:
        kind: What the surface is.
        rules: Rules in force.
        exposure: Where it lies.
        joint: Grout joint; a soft joint is not narrower [ticks].
        yearly_range_f: Outside: hottest less coldest temperature of the tile in a year [°F].
        wanted: A closer spacing that the job wants; outside it may allow a narrower joint [ticks].
        mosaic: Whether all its tile is mosaic, which inside may have narrower joints in the field.
    """
    level = kind is SurfaceKind.FLOOR
    plain = "tile.movement.spacing_floor" if level else "tile.movement.spacing_wall"
    asked = {
        "dry": plain,
        "slab": "tile.movement.spacing_slab",
        "moist": f"tile.movement.spacing_moist_{'floor' if level else 'wall'}",
        "exterior": "tile.movement.spacing_exterior",
    }[exposure]
    rule = rules.entry(min([plain, *(name for name in [asked] if rules.has(name))], key=rules.ticks))
    limit = rules.ticks(rule.id) if wanted is None else min(wanted, rules.ticks(rule.id))
    if exposure == "exterior":
        near = "tile.movement.spacing_exterior_close"
        close = rules.has(near) and limit <= rules.ticks(near)
        width_rule = rules.entry(f"tile.movement.width_exterior_{'close' if close else 'far'}")
        least = rules.ticks(width_rule.id) + _heat_width(yearly_range_f, rules)
        if yearly_range_f:
            least = max(least, movement_width(limit, yearly_range_f, rules))
        edge_width_rule, least_edge = width_rule, least
    else:
        of = "mosaic" if mosaic and level else "floor" if level else "wall"
        width_rule = rules.entry(f"tile.movement.width_{of}")
        edge_width_rule = rules.entry("tile.movement.width_perimeter" if level else "tile.movement.width_plane")
        least, least_edge = rules.ticks(width_rule.id), rules.ticks(edge_width_rule.id)
    return Spacing(
        limit=limit,
        width=max(joint, least),
        edge=max(joint, least_edge),
        widest=rules.ticks("tile.sealant.max_width"),
        rule=rule,
        width_rule=width_rule,
        edge_width_rule=edge_width_rule,
        edge_rule=rules.entry("tile.movement.change_of_plane"),
        below_rule=rules.entry("tile.movement.required"),
        widest_rule=rules.entry("tile.sealant.max_width"),
    )


def movement_width(length: int, range_f: float, rules: RuleSet) -> int:
    """Width that a field's own expansion asks of a joint [ticks].

    Args:
        length: Length of field between joints [ticks].
        range_f: Range of temperature [°F].
        rules: Rules in force.

    References:
        Movement = expansion x length x range; width = factor x movement, never below the narrowest.
    """
    movement = rules.number("tile.movement.expansion") * length * range_f * 5 / 9
    return max(
        math.ceil(movement * rules.number("tile.sealant.movement_factor")), rules.ticks("tile.sealant.min_width")
    )


def joint_section(width: int, available: int, rules: RuleSet) -> Section:
    """Sealant and what lies behind it.

    Args:
        width: Width of the joint [ticks].
        available: Depth of the open joint: tile and mortar under it [ticks].
        rules: Rules in force.
    """
    depth = min(sealant_depth(width, rules), available)
    step, least = rules.ticks("tile.sealant.rod_step"), rules.ticks("tile.sealant.rod_least")
    rod = max(-(-math.ceil(width * rules.number("tile.sealant.rod_over")) // step) * step, least)
    # One that is much wider than the joint cannot be pressed in; one that stands out of it leaves no sealant.
    goes_in = rod <= width * rules.number("tile.sealant.rod_most") and depth + rod <= available
    return Section(width=width, depth=depth, rod=rod if goes_in else 0)


def sealant_depth(width: int, rules: RuleSet) -> int:
    """Depth of sealant by the joint's width: as deep as wide, then half, never over the most [ticks]."""
    most = rules.ticks("tile.sealant.square_to")
    return width if width <= most else min(width // 2, most)


def _heat_width(yearly_range_f: float, rules: RuleSet) -> int:
    base = "tile.movement.temperature_base"
    if not rules.has(base) or yearly_range_f <= rules.number(base):
        return 0
    steps = math.ceil((yearly_range_f - rules.number(base)) / rules.number("tile.movement.temperature_step"))
    return steps * rules.ticks("tile.movement.temperature_width")
