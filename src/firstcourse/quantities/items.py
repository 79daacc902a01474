"""Names of what is bought, the same on every paper, so that anyone can count it again from the drawings."""

FASTENERS = "fasteners"
MORTAR = "bedding mortar"
TAPE = "seam tape"
SEALANT = "sealant"


def sheets_of(stock_id: str) -> str:
    """Name of the sheets of one stock."""
    return f"sheets {stock_id}"


def added_of(kind: str) -> str:
    """Name of the members of one kind that the plan adds."""
    return f"added {kind}"
