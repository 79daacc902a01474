"""A building on paper: what the phases cost, the order by delivery, rooms by phase, and which are alike."""

from collections.abc import Iterator, Mapping
from typing import Any

from firstcourse.building import BuildingPlan
from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.plan import Plan
from firstcourse.words import Speaker

Rows = list[list[str]]


def building_paper(paper: Paper, building: BuildingPlan, plans: Mapping[str, Plan], speaker: Speaker) -> bytes:
    """The page of a building as a PDF.

    Args:
        paper: Page size.
        building: A building as planned.
        plans: By phase its plan.
        speaker: In whose words and units it is printed.
    """
    data = {"paper": PAGE_SIZES[paper], "tongue": speaker.tongue}
    return HERE.compiled(("building.typ",), {**data, **speaker.fields(building_page(building, plans, speaker))})


def building_page(building: BuildingPlan, plans: Mapping[str, Plan], speaker: Speaker) -> dict[str, Any]:
    """What the paper and the terminal print: a title, and tables with their heads and rows.

    Args:
        building: A building as planned.
        plans: By phase its plan.
        speaker: In whose words and units it is said.
    """
    derived = building.derived
    tables = [
        _table("cost", speaker, list(_cost(building)), (1, 2, 3), note=_note(building, speaker)),
        _table("phases", speaker, list(_phases(building)), (2, 3, 4)),
        *(
            _table("delivery", speaker, list(_lines(order.id, building, plans, speaker)), (1,), name=order.id)
            for order in derived.deliveries
        ),
        _table("rooms", speaker, list(_rooms(building)), (0,)),
        _table(
            "alike", speaker, [[one.type, ", ".join(one.rooms), ", ".join(one.differs)] for one in derived.alike]
        ),
    ]
    return {
        "title": speaker.text("building-title", job=building.name),
        "tables": [one for one in tables if one["rows"]],
    }


def _table(
    kind: str, speaker: Speaker, rows: Rows, figures: tuple[int, ...] = (), *, note: str = "", name: str = ""
) -> dict[str, Any]:
    return {
        "title": speaker.text(f"building-{kind}", name=name),
        "heads": list(speaker.labels(f"building-{kind}_heads").values()),
        "rows": rows,
        "figures": list(figures),
        "note": note,
    }


def _note(building: BuildingPlan, speaker: Speaker) -> str:
    return speaker.text("building-not_compared" if building.derived.heap is None else "building-compared")


def _cost(building: BuildingPlan) -> Iterator[list[str]]:
    derived = building.derived
    for stock in sorted({*derived.sheets, *derived.saved}):
        heap = derived.heap
        compared = ["–", "–"] if heap is None else [str(heap.sheets.get(stock, 0)), str(derived.saved[stock])]
        yield [stock, str(derived.sheets.get(stock, 0)), *compared]


def _phases(building: BuildingPlan) -> Iterator[list[str]]:
    for given, cut in zip(building.given.phases, building.derived.phases, strict=True):
        sheets = ", ".join(f"{number} {stock}" for stock, number in cut.sheets.items())
        yield [given.id, sheets, str(len(given.rooms)), str(len(cut.used)), str(len(cut.rack))]


def _lines(name: str, building: BuildingPlan, plans: Mapping[str, Plan], speaker: Speaker) -> Iterator[list[str]]:
    order = next(one for one in building.derived.deliveries if one.id == name)
    phases = next(one.phases for one in building.given.deliveries if one.id == name)
    named = {one.item: one for phase in phases for one in plans[phase].quantities}
    for line in order.lines:
        over = line.item.removeprefix("tile_stock/") in order.over and line.item.startswith("tile_stock/")
        note = speaker.text("building-over") if over else ""
        yield [speaker.words(speaker.quantity(named[line.item]).item), str(line.packs), note]


def _rooms(building: BuildingPlan) -> Iterator[list[str]]:
    phase = {number: one.id for one in building.given.phases for number in one.rooms}
    for room in sorted(building.given.rooms, key=lambda one: one.floor):
        yield [str(room.floor), room.number, room.type, phase[room.number]]
