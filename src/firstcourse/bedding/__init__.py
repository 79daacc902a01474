"""What boards lie in and what closes their joints: mortar, tape, sealant."""

from firstcourse.bedding.bed import KG_PER_LB, Bedding, bed, length_text, mass_text
from firstcourse.bedding.mortar import dry_mass, mean_thickness

__all__ = ["KG_PER_LB", "Bedding", "bed", "dry_mass", "length_text", "mass_text", "mean_thickness"]
