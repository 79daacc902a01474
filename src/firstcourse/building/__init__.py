"""A building of many rooms: its document, its phases one after the other, and what comes of them."""

from firstcourse.building.carrying import plan_building
from firstcourse.building.document import LARGEST_BYTES, Building, phase_job, read_building
from firstcourse.building.model import BuildingPlan, building_document

__all__ = [
    "LARGEST_BYTES",
    "Building",
    "BuildingPlan",
    "building_document",
    "phase_job",
    "plan_building",
    "read_building",
]
