"""What lies on a frame: the layers of each surface from below, with their thickness and mass."""

from firstcourse.layers.board_mass import board_density, board_family, density_rule
from firstcourse.layers.buildup import (
    BOND_COAT,
    MORTAR_BED,
    PSF_PER_KG_M2,
    TILE,
    Layer,
    total_height_in,
    total_mass_kg_m2,
    total_mass_psf,
)
from firstcourse.layers.combed import combed_mortar, laid_size, longest_side
from firstcourse.layers.mortar import board_mortar, dry_mass
from firstcourse.layers.surfaces import (
    LaidTile,
    floor_layers,
    judged_layers,
    laid_of,
    laid_tile,
    set_height,
    surface_layers,
    surface_part,
    tile_layers,
    tiling_tile,
    wall_layers,
)

__all__ = [
    "BOND_COAT",
    "MORTAR_BED",
    "PSF_PER_KG_M2",
    "TILE",
    "LaidTile",
    "Layer",
    "board_density",
    "board_family",
    "board_mortar",
    "combed_mortar",
    "density_rule",
    "dry_mass",
    "floor_layers",
    "judged_layers",
    "laid_of",
    "laid_size",
    "laid_tile",
    "longest_side",
    "set_height",
    "surface_layers",
    "surface_part",
    "tile_layers",
    "tiling_tile",
    "total_height_in",
    "total_mass_kg_m2",
    "total_mass_psf",
    "wall_layers",
]
