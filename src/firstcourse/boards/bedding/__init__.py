"""What boards lie in and what closes their joints: mortar, tape, sealant."""

from firstcourse.boards.bedding.bed import Bedding, bed

__all__ = [
    "Bedding",
    "bed",
]
