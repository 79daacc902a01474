"""What to buy for the boards, counted from what is drawn."""

from firstcourse.quantities.count import Quantities, count
from firstcourse.quantities.items import FASTENERS, MORTAR, SEALANT, TAPE, added_of, sheets_of

__all__ = ["FASTENERS", "MORTAR", "SEALANT", "TAPE", "Quantities", "added_of", "count", "sheets_of"]
