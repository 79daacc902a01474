"""Ways to spoil a plan.json, each on any plan that has what it spoils, with the objections that must answer.

The modules beside this one register them, one subject each.
"""

from tamperings import boards, calculations, columns, cutting, document, fasteners, sheet_counts, shopping, tiles
from tamperings.tools import TAMPERINGS, NothingToSpoil, Tampering

__all__ = [
    "TAMPERINGS",
    "NothingToSpoil",
    "Tampering",
    "boards",
    "calculations",
    "columns",
    "cutting",
    "document",
    "fasteners",
    "sheet_counts",
    "shopping",
    "tiles",
]
