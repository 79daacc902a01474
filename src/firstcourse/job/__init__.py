"""The job document: what the setter writes down, read with line and column."""

from firstcourse.job.carrying import DoorStep, Exposure, FloorTile, JoistCut, Joists, Panels, WallStuds
from firstcourse.job.checks import check_job as check_job
from firstcourse.job.done import BoardDone, Done, SurfaceDone, TakenOut
from firstcourse.job.editing import FieldValue, edited_text, with_block, without_item
from firstcourse.job.fields import (
    BOOK_STOCK,
    MOST_BOARDS,
    MOST_ITEMS,
    JobModel,
)
from firstcourse.job.fields import (
    MOST_ROOMS as MOST_ROOMS,
)
from firstcourse.job.fields import (
    Length as Length,
)
from firstcourse.job.fields import (
    Name as Name,
)
from firstcourse.job.fields import (
    Offset as Offset,
)
from firstcourse.job.fields import (
    Pair as Pair,
)
from firstcourse.job.framing import FloorFraming, Member, WallBlocking, WallFraming
from firstcourse.job.guide import job_guide
from firstcourse.job.merging import WHOLE, Clash, Merge, Side, merged
from firstcourse.job.model import (
    BoardedCeiling,
    BoardedFloor,
    BoardedWall,
    BoardRange,
    Job,
    JobHead,
    KeptOffcut,
    PanelJoint,
    Room,
    SheetStock,
)
from firstcourse.job.openings import FloorOpening, WallOpening
from firstcourse.job.reading import job_file_text, problems_placed, read_document, read_job, read_job_text
from firstcourse.job.schedule import WorkSchedule
from firstcourse.job.schema import job_schema
from firstcourse.job.shower import Kerb, TiledShower
from firstcourse.job.site import Site
from firstcourse.job.starter import starter_text
from firstcourse.job.tile import (
    Angle,
    ChosenTile,
    Pattern,
    SoftJointOver,
    StartAt,
    TileBand,
    TiledBench,
    TiledNiche,
    TileExposure,
    TileRepeat,
    Tiling,
    WindowReturns,
)
from firstcourse.job.writing import exact_length, job_text, job_values

__all__ = [
    "BOOK_STOCK",
    "MOST_BOARDS",
    "MOST_ITEMS",
    "WHOLE",
    "Angle",
    "BoardDone",
    "BoardRange",
    "BoardedCeiling",
    "BoardedFloor",
    "BoardedWall",
    "ChosenTile",
    "Clash",
    "Done",
    "DoorStep",
    "Exposure",
    "FieldValue",
    "FloorFraming",
    "FloorOpening",
    "FloorTile",
    "Job",
    "JobHead",
    "JobModel",
    "JoistCut",
    "Joists",
    "KeptOffcut",
    "Kerb",
    "Member",
    "Merge",
    "PanelJoint",
    "Panels",
    "Pattern",
    "Room",
    "SheetStock",
    "Side",
    "Site",
    "SoftJointOver",
    "StartAt",
    "SurfaceDone",
    "TakenOut",
    "TileBand",
    "TileExposure",
    "TileRepeat",
    "TiledBench",
    "TiledNiche",
    "TiledShower",
    "Tiling",
    "WallBlocking",
    "WallFraming",
    "WallOpening",
    "WallStuds",
    "WindowReturns",
    "WorkSchedule",
    "edited_text",
    "exact_length",
    "job_file_text",
    "job_guide",
    "job_schema",
    "job_text",
    "job_values",
    "merged",
    "problems_placed",
    "read_document",
    "read_job",
    "read_job_text",
    "starter_text",
    "with_block",
    "without_item",
]
