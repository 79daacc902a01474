"""Names of what is bought, the same on every paper, so that anyone can count it again from the drawings."""

FASTENERS = "fasteners"
MORTAR = "bedding mortar"
TAPE = "seam tape"
SEALANT = "sealant"
BOARD_STRIPS = "board strips"
TILE_MORTAR = "tile mortar"
LARGE_TILE_MORTAR = "large-tile mortar"
GROUT = "grout"
JOINT_SEALANT = "joint sealant"
BOND_BREAKER = "bond-breaker tape"
EDGE_TRIM = "edge trim"
SPACERS = "spacers"
SHEET_MEMBRANE = "sheet membrane"
LIQUID_MEMBRANE = "liquid membrane"
LINER = "shower liner"
SEALING_BAND = "sealing band"
INSIDE_CORNERS = "inside corners"
OUTSIDE_CORNERS = "outside corners"
DRAIN_FLANGE = "drain flanges"
BED_MORTAR = "bed mortar"


def sheets_of(stock_id: str) -> str:
    """Name of the sheets of one stock."""
    return f"sheets {stock_id}"


def added_of(kind: str) -> str:
    """Name of the members of one kind that the plan adds."""
    return f"added {kind}"


def tiles_of(stock_id: str) -> str:
    """Name of the tiles of one kind."""
    return f"tiles {stock_id}"


def rod_of(diameter: str) -> str:
    """Name of the backer rod of one diameter."""
    return f"backer rod {diameter}"


def collars_of(kind: str) -> str:
    """Name of the sealing collars of one kind of opening."""
    return f"{kind} collars"
