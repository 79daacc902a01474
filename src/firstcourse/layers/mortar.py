"""Mortar: how thick a notched trowel leaves it, and what its volume weighs dry. Any one system of units."""

import math

from firstcourse.rules import RuleSet


def board_mortar(rules: RuleSet) -> int:
    """Mean thickness of the mortar that the rule book's trowel leaves under boards [ticks]."""
    return round(
        mean_thickness(
            notch_width=rules.ticks("bedding.trowel.notch_width"),
            notch_depth=rules.ticks("bedding.trowel.notch_depth"),
            land=rules.ticks("bedding.trowel.land"),
            angle_deg=rules.number("bedding.trowel.angle"),
        )
    )


def mean_thickness(*, notch_width: float, notch_depth: float, land: float, angle_deg: float) -> float:
    """Mean thickness of the bed once square ridges are pressed flat, in the unit of the notch.

    Args:
        notch_width: Width of a notch.
        notch_depth: Depth of a notch.
        land: Width of the tooth between two notches.
        angle_deg: Angle between trowel and floor while combing [degrees]; held lower, ridges are lower.

    References:
        Ridge geometry: width x depth x sin(angle) / (width + land).

    Example:
        >>> mean_thickness(notch_width=0.25, notch_depth=0.25, land=0.25, angle_deg=90)
        0.125
    """
    return notch_width * notch_depth * math.sin(math.radians(angle_deg)) / (notch_width + land)


def dry_mass(volume: float, *, mixed_density: float, water_share: float) -> float:
    """Mass of powder in a volume of mixed mortar, in the density's unit of mass.

    Args:
        volume: Mixed mortar, in the density's unit of volume.
        mixed_density: Mass of a unit of mixed mortar.
        water_share: Share of water in that mass.
    """
    return volume * mixed_density * (1 - water_share)
