"""Codes of what is bought, the same everywhere, so that anyone can count it again from the drawings."""

from firstcourse.units import to_mm

FASTENERS = "fasteners"
MORTAR = "bedding_mortar"
TAPE = "seam_tape"
SEALANT = "sealant"
BOARD_STRIPS = "board_strips"
TILE_MORTAR = "tile_mortar"
LARGE_TILE_MORTAR = "large_tile_mortar"
GROUT = "grout"
JOINT_SEALANT = "joint_sealant"
BOND_BREAKER = "bond_breaker"
EDGE_TRIM = "edge_trim"
SPACERS = "spacers"
SHEET_MEMBRANE = "sheet_membrane"
LIQUID_MEMBRANE = "liquid_membrane"
LINER = "liner"
SEALING_BAND = "sealing_band"
INSIDE_CORNERS = "inside_corners"
OUTSIDE_CORNERS = "outside_corners"
DRAIN_FLANGE = "drain_flanges"
BED_MORTAR = "bed_mortar"


def sheets_of(stock_id: str) -> str:
    """The sheets of one stock."""
    return f"stock/{stock_id}"


def tiles_of(stock_id: str) -> str:
    """The tiles of one kind."""
    return f"tile_stock/{stock_id}"


def added_of(kind: str) -> str:
    """The members of one kind that the plan adds."""
    return f"added/{kind}"


def rod_of(diameter: int) -> str:
    """The backer rod of one diameter [ticks]."""
    return f"backer_rod/{to_mm(diameter):.10g}"


def collars_of(kind: str) -> str:
    """The sealing collars of one kind of opening."""
    return f"collars/{kind}"
