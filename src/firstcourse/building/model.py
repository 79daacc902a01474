"""What is planned for a building, as the values of its building.json."""

from typing import Literal

from firstcourse.plan.base import Frozen, Ticks
from firstcourse.plan.buying import Pack


class RoomGiven(Frozen):
    """A room, where it is and which type it is of."""

    number: str
    floor: int
    type: str


class PhaseGiven(Frozen):
    """A phase and its rooms."""

    id: str
    rooms: tuple[str, ...]


class DeliveryGiven(Frozen):
    """A delivery and the phases it serves."""

    id: str
    phases: tuple[str, ...]


class LotGiven(Frozen):
    """How many packs of a tile one lot holds."""

    tile: str
    packs: int


class BuildingGiven(Frozen):
    """What the building document says, as far as what is derived rests on it."""

    rooms: tuple[RoomGiven, ...]
    phases: tuple[PhaseGiven, ...]
    deliveries: tuple[DeliveryGiven, ...]
    lots: tuple[LotGiven, ...]


class Carried(Frozen):
    """A piece on the rack: its label, which stock it is of, width and length."""

    id: str
    stock: str
    size: tuple[Ticks, Ticks]


class Cut(Frozen):
    """What the plan of some rooms takes.

    Attributes:
        plan: SHA-256 of its plan.json.
        sheets: New sheets by stock.
    """

    plan: str
    sheets: dict[str, int]


class PhaseCut(Cut):
    """A phase: what it takes, which kept pieces it uses, and the rack after it."""

    id: str
    used: tuple[str, ...]
    rack: tuple[Carried, ...]


class DeliveryLine(Frozen):
    """Packs of one thing in a delivery: those that its phases take, each phase in whole packs."""

    item: str
    packs: int
    pack: Pack


class DeliveryOrder(Frozen):
    """A delivery; `over` names tiles that one lot does not hold."""

    id: str
    lines: tuple[DeliveryLine, ...]
    over: tuple[str, ...]


class Alike(Frozen):
    """Rooms of a type that were taped the same; `differs` names what was taped otherwise than the type says."""

    type: str
    rooms: tuple[str, ...]
    differs: tuple[str, ...]


class BuildingDerived(Frozen):
    """What follows."""

    phases: tuple[PhaseCut, ...]
    deliveries: tuple[DeliveryOrder, ...]
    alike: tuple[Alike, ...]
    sheets: dict[str, int]
    heap: Cut | None
    saved: dict[str, int]


class BuildingPlan(Frozen):
    """A building as planned; each phase has a plan.json of its own beside it."""

    format: Literal["firstcourse-building"] = "firstcourse-building"
    version: Literal[1] = 1
    name: str
    given: BuildingGiven
    derived: BuildingDerived


def building_document(plan: BuildingPlan) -> str:
    """A building as its building.json."""
    return plan.model_dump_json(by_alias=True, indent=1) + "\n"
