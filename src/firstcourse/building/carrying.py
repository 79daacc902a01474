"""Phases planned one after the other, what each leaves over carried to the next."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from hashlib import sha256
from typing import Protocol

from firstcourse.building.document import Building, RoomHere, phase_job
from firstcourse.building.model import (
    Alike,
    BuildingDerived,
    BuildingGiven,
    BuildingPlan,
    Carried,
    Cut,
    DeliveryGiven,
    DeliveryLine,
    DeliveryOrder,
    LotGiven,
    PhaseCut,
    PhaseGiven,
    RoomGiven,
)
from firstcourse.job import MOST_ITEMS, Job, KeptOffcut
from firstcourse.plan import Plan


class Planned(Protocol):
    """A plan and its plan.json."""

    @property
    def plan(self) -> Plan:
        """The plan."""
        ...

    @property
    def document(self) -> str:
        """Its plan.json."""
        ...


def plan_building[P: Planned](
    building: Building, planned: Callable[[str, Job], P], *, heap: bool = True
) -> tuple[BuildingPlan, dict[str, tuple[Job, P]], tuple[Job, P] | None]:
    """Plan a building phase by phase.

    Args:
        building: The building.
        planned: Plans a job; told what it is: a phase's name, or nothing for all rooms as one.
        heap: Whether all rooms are planned as one too, to compare.

    Returns:
        The building's plan; by phase its job and plan; the same of all rooms as one, where that was asked for.

    Raises:
        JobError: As `planned` raises.
    """
    rack, found, cuts = building.offcuts, {}, []
    for phase in building.phases:
        job = phase_job(building, phase.rooms, rack)
        made = planned(phase.id, job)
        used = _used(made.plan)
        rack = tuple(_rack(rack, used, phase.id, made.plan))
        found[phase.id] = job, made
        cuts.append(
            PhaseCut(
                id=phase.id,
                plan=_digest(made.document),
                sheets=_new_sheets(made.plan),
                used=used,
                rack=tuple(Carried(id=one.id, stock=one.stock, size=one.size) for one in rack),
            )
        )
    whole = None
    if heap:
        job = phase_job(building, [room.number for room in building.rooms], building.offcuts)
        whole = job, planned("", job)
    derived = _derived(building, cuts, {name: made.plan for name, (_, made) in found.items()}, whole)
    return BuildingPlan(name=building.name, given=_given(building), derived=derived), found, whole


def _digest(document: str) -> str:
    return sha256(document.encode()).hexdigest()


def _used(plan: Plan) -> tuple[str, ...]:
    return tuple(sorted(sheet.source.removeprefix("offcut:") for sheet in plan.sheets if sheet.source != "new"))


def _new_sheets(plan: Plan) -> dict[str, int]:
    counted = Counter(sheet.stock for sheet in plan.sheets if sheet.source == "new")
    return dict(sorted(counted.items()))


def _rack(before: Sequence[KeptOffcut], used: Sequence[str], phase: str, plan: Plan) -> Iterator[KeptOffcut]:
    """What is on the rack after a phase: the largest, where more is kept than a job document takes."""
    left = [one for one in before if one.id not in used]
    left += [
        KeptOffcut(id=f"{phase} {sheet.id} {part.id}", stock=sheet.stock, size=part.size)
        for sheet in plan.sheets
        for part in sheet.parts
        if part.keep
    ]
    largest = sorted(left, key=lambda one: (-one.size[0] * one.size[1], one.id))[:MOST_ITEMS]
    yield from sorted(largest, key=lambda one: one.id)


def _sum(counts: Iterable[dict[str, int]]) -> dict[str, int]:
    total: Counter[str] = Counter()
    for each in counts:
        total.update(each)
    return dict(sorted(total.items()))


def _derived[P: Planned](
    building: Building, cuts: Sequence[PhaseCut], plans: dict[str, Plan], whole: tuple[Job, P] | None
) -> BuildingDerived:
    sheets = _sum(cut.sheets for cut in cuts)
    heap = None
    if whole is not None:
        heap = Cut(plan=_digest(whole[1].document), sheets=_new_sheets(whole[1].plan))
    stocks = sorted({*sheets, *(heap.sheets if heap else ())})
    return BuildingDerived(
        phases=tuple(cuts),
        deliveries=tuple(_orders(building, plans)),
        alike=tuple(_alike(building)),
        sheets=sheets,
        heap=heap,
        saved={stock: sheets.get(stock, 0) - heap.sheets.get(stock, 0) for stock in stocks} if heap else {},
    )


def _orders(building: Building, plans: dict[str, Plan]) -> Iterator[DeliveryOrder]:
    lots = {f"tile_stock/{lot.tile}": lot for lot in building.lots}
    for delivery in building.deliveries:
        lines: dict[str, DeliveryLine] = {}
        for phase in delivery.phases:
            for one in plans[phase].quantities:
                packs = lines[one.item].packs if one.item in lines else 0
                lines[one.item] = DeliveryLine(item=one.item, packs=packs + one.buy, pack=one.pack)
        over = (lot.tile for item, lot in lots.items() if item in lines and lines[item].packs > lot.packs)
        yield DeliveryOrder(id=delivery.id, lines=tuple(lines[item] for item in sorted(lines)), over=tuple(over))


def _alike(building: Building) -> Iterator[Alike]:
    """Rooms by type and readings, types in their order, those like the type first."""
    for kind in building.types:
        groups: dict[str, list[RoomHere]] = {}
        for room in building.rooms:
            if room.type == kind.id:
                taped = building.taped(room).model_copy(update={"name": ""})
                groups.setdefault(taped.model_dump_json(by_alias=True), []).append(room)
        found = [
            Alike(
                type=kind.id,
                rooms=tuple(room.number for room in group),
                differs=tuple(_differs(building, group[0])),
            )
            for group in groups.values()
        ]
        yield from sorted(found, key=lambda one: bool(one.differs))


def _differs(building: Building, room: RoomHere) -> Iterator[str]:
    taped = building.taped(room)
    given = next(each.room for each in building.types if each.id == room.type)
    for name in ("sides", "diagonals", "heights", "levels", "plumb"):
        mine, theirs = getattr(taped, name), getattr(given, name)
        yield from (f"{name}.{key}" for key in sorted({*mine, *theirs}) if mine.get(key) != theirs.get(key))
    if taped.height != given.height:
        yield "height"


def _given(building: Building) -> BuildingGiven:
    return BuildingGiven(
        rooms=tuple(RoomGiven(number=one.number, floor=one.floor, type=one.type) for one in building.rooms),
        phases=tuple(PhaseGiven(id=one.id, rooms=one.rooms) for one in building.phases),
        deliveries=tuple(DeliveryGiven(id=one.id, phases=one.phases) for one in building.deliveries),
        lots=tuple(LotGiven(tile=one.tile, packs=one.packs) for one in building.lots),
    )
