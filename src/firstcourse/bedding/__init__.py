"""What boards lie in and what closes their joints: mortar, tape, sealant."""

from firstcourse.bedding.bed import Bedding, bed
from firstcourse.bedding.board_mass import board_density, board_family, density_rule
from firstcourse.bedding.mortar import board_mortar, dry_mass, mean_thickness

__all__ = [
    "Bedding",
    "bed",
    "board_density",
    "board_family",
    "board_mortar",
    "density_rule",
    "dry_mass",
    "mean_thickness",
]
