"""The job document: what the setter writes down, read with line and column."""

from firstcourse.job.carrying import (
    DoorStep,
    Exposure,
    FloorTile,
    JoistCut,
    JoistLoad,
    Joists,
    Panels,
    SpotLevel,
    WallStuds,
)
from firstcourse.job.guide import job_guide
from firstcourse.job.model import (
    BoardedCeiling,
    BoardedFloor,
    BoardedWall,
    BoardRange,
    FloorFraming,
    FloorOpening,
    Job,
    KeptOffcut,
    Member,
    NoFastenerZone,
    PanelJoint,
    PanelScrews,
    Room,
    RuleChange,
    SheetStock,
    WallBlocking,
    WallFraming,
    WallOpening,
)
from firstcourse.job.reading import read_job, read_job_text
from firstcourse.job.schema import job_schema
from firstcourse.job.starter import starter_text
from firstcourse.job.writing import job_text

__all__ = [
    "BoardRange",
    "BoardedCeiling",
    "BoardedFloor",
    "BoardedWall",
    "DoorStep",
    "Exposure",
    "FloorFraming",
    "FloorOpening",
    "FloorTile",
    "Job",
    "JoistCut",
    "JoistLoad",
    "Joists",
    "KeptOffcut",
    "Member",
    "NoFastenerZone",
    "PanelJoint",
    "PanelScrews",
    "Panels",
    "Room",
    "RuleChange",
    "SheetStock",
    "SpotLevel",
    "WallBlocking",
    "WallFraming",
    "WallOpening",
    "WallStuds",
    "job_guide",
    "job_schema",
    "job_text",
    "read_job",
    "read_job_text",
    "starter_text",
]
