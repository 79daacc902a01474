"""Shower floors: their falls, heights and tests, and the membranes that keep water in."""

from firstcourse.showers.asked import shower_floors
from firstcourse.showers.bed_floor import judge_bed_floor
from firstcourse.showers.developed import Developed, Kind, square
from firstcourse.showers.water import membrane

__all__ = [
    "Developed",
    "Kind",
    "judge_bed_floor",
    "membrane",
    "shower_floors",
    "square",
]
