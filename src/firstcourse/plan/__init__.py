"""The plan as plain data: what every step adds to and what every paper is made from."""

from firstcourse.plan.base import Frozen, Point, Ring, Segment
from firstcourse.plan.boards import Board, Cut, Fill, Part, Piece, Seam, Sheet, Stock
from firstcourse.plan.bounds import FieldBound, LayoutBound
from firstcourse.plan.buying import Pack, Quantity
from firstcourse.plan.cut_fit import cut_to_fit, size_as_laid
from firstcourse.plan.cut_places import CutPlaces, Place
from firstcourse.plan.doors import Door
from firstcourse.plan.falls import Fall, FallPlane, FloodTest, LevelPoint
from firstcourse.plan.given import Given, sealed
from firstcourse.plan.heights import HeightMark
from firstcourse.plan.marks import Mark, MarkKind
from firstcourse.plan.model import Count, Plan
from firstcourse.plan.read_off import SAME, fill_name, has_courses, opening_ring
from firstcourse.plan.schedule import Delay, Ready, Schedule, Task, TaskKind, Visit, Wait, Work
from firstcourse.plan.site import SiteStamp
from firstcourse.plan.stamp import JobStamp, RuleNote, RuleOverride
from firstcourse.plan.structure import FrameKind, LayerLine, SheetLine, StructureSheet
from firstcourse.plan.surfaces import (
    OWN_HEIGHT,
    STOPS_HERE,
    Opening,
    OpeningKind,
    Side,
    SideKind,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
    SurfaceLayer,
    Zone,
)
from firstcourse.plan.tiles import (
    Area,
    EdgeCut,
    SoftJoint,
    SoftWhy,
    StartPoint,
    StartWhy,
    Tile,
    TiledArea,
    TileStock,
)

__all__ = [
    "OWN_HEIGHT",
    "SAME",
    "STOPS_HERE",
    "Area",
    "Board",
    "Count",
    "Cut",
    "CutPlaces",
    "Delay",
    "Door",
    "EdgeCut",
    "Fall",
    "FallPlane",
    "FieldBound",
    "Fill",
    "FloodTest",
    "FrameKind",
    "Frozen",
    "Given",
    "HeightMark",
    "JobStamp",
    "LayerLine",
    "LayoutBound",
    "LevelPoint",
    "Mark",
    "MarkKind",
    "Opening",
    "OpeningKind",
    "Pack",
    "Part",
    "Piece",
    "Place",
    "Plan",
    "Point",
    "Quantity",
    "Ready",
    "Ring",
    "RuleNote",
    "RuleOverride",
    "Schedule",
    "Seam",
    "Segment",
    "Sheet",
    "SheetLine",
    "Side",
    "SideKind",
    "SiteStamp",
    "SoftJoint",
    "SoftWhy",
    "StartPoint",
    "StartWhy",
    "Stock",
    "StructureSheet",
    "Support",
    "SupportKind",
    "Surface",
    "SurfaceKind",
    "SurfaceLayer",
    "Task",
    "TaskKind",
    "Tile",
    "TileStock",
    "TiledArea",
    "Visit",
    "Wait",
    "Work",
    "Zone",
    "cut_to_fit",
    "fill_name",
    "has_courses",
    "opening_ring",
    "sealed",
    "size_as_laid",
]
