"""What a phone shows of a plan: sections in the order of the work, each with what is ticked and what is measured.

Each thing to tick and each blank has an id of its own in the plan, whichever room's pack shows it, so that what
was ticked can be sent back and read against the plan.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from typing import Literal

from firstcourse.drawings.cut_tiles import cut_kinds
from firstcourse.drawings.cut_words import said_places, size_words
from firstcourse.drawings.mosaic import mosaics
from firstcourse.papers.board_checks import board_checks
from firstcourse.papers.board_pages import board_rows
from firstcourse.papers.fall_pages import fall_words
from firstcourse.papers.judgement_pages import structure_cautions
from firstcourse.papers.poles import plan_poles
from firstcourse.papers.rule_pages import CAUTIONS
from firstcourse.papers.ticket_pages import cut_again, slight_tapers, ticket_words
from firstcourse.papers.tile_pages import pole_rows, words_beside
from firstcourse.papers.water_pages import water_pages
from firstcourse.plan import Plan, Surface
from firstcourse.units import as_needed
from firstcourse.words import Speaker, alike_together, speaker_for

Group = Literal["first", "boards", "cuts", "falls", "tile", "buy", "found"]
EntryKind = Literal["length", "text"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One thing to tick.

    Attributes:
        id: In the plan.
        strong: What is read first: a mark, a number.
        text: The rest.
        part: What of the section's drawing it is, by the name drawn there; empty where it is none.
    """

    id: str
    strong: str = ""
    text: str = ""
    part: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One blank: a length as a tape reads it, or a text.

    Attributes:
        id: In the plan.
        label: What is asked.
        kind: What is written there.
    """

    id: str
    label: str
    kind: EntryKind = "text"


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One part of the pack.

    Attributes:
        group: Where it stands in the order of the work.
        picture: Which drawing belongs to it, as `boards/` and the surface's id; empty where it has none.
        lines: What is only read, before what is ticked.
        after: What is only read, after it.
        tiles: The ids of tiles that are ticked on the drawing itself, by their names there.
    """

    group: Group
    title: str
    picture: str = ""
    lines: Sequence[str] = ()
    items: Sequence[Item] = ()
    entries: Sequence[Entry] = ()
    after: Sequence[str] = ()
    tiles: Mapping[str, str] | None = None


def sections(plan: Plan, *, shared: bool = False) -> list[Section]:
    """Every section of a plan, or of one room's part of it, in the order of the work.

    Args:
        plan: A verified plan, or what `by_room` leaves of it.
        shared: Of several rooms, only what they share.
    """
    speaker = speaker_for(plan)
    if shared:
        made = chain(_first(plan, speaker), _buy(plan, speaker))
        return [_said(section, speaker) for section in made]
    made = chain(
        _first(plan, speaker),
        _boards(plan, speaker),
        _cuts(plan, speaker),
        _falls(plan, speaker),
        _water(plan, speaker),
        _tile(plan, speaker),
        _poles(plan, speaker),
        _buy(plan, speaker),
        (_found(plan, speaker),),
    )
    return [_said(section, speaker) for section in made]


def ids_of(plan: Plan) -> tuple[frozenset[str], dict[str, EntryKind]]:
    """All ids that can be ticked, and the blanks with what is written there.

    Args:
        plan: As for `sections`.
    """
    ticked: set[str] = set()
    entries: dict[str, EntryKind] = {}
    for section in sections(plan):
        ticked |= {item.id for item in section.items} | set((section.tiles or {}).values())
        entries |= {entry.id: entry.kind for entry in section.entries}
    return frozenset(ticked), entries


def _said(section: Section, speaker: Speaker) -> Section:
    """A section in the reader's words and units; its ids stay."""
    say = speaker.say
    return replace(
        section,
        title=say(section.title),
        lines=[say(line) for line in section.lines],
        after=[say(line) for line in section.after],
        items=[replace(item, strong=say(item.strong), text=say(item.text)) for item in section.items],
        entries=[replace(entry, label=say(entry.label)) for entry in section.entries],
    )


def _room(plan: Plan) -> str:
    """The room that a part of a plan is; empty where there are several."""
    rooms = {surface.room for surface in plan.surfaces}
    return rooms.pop() if len(rooms) == 1 else ""


def _first(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    cautions = [speaker.rule_text(rule.value) for rule in plan.rules if rule.id.startswith(CAUTIONS)]
    told = [said for said in speaker.findings(plan.findings) if said.message not in cautions]
    labels = speaker.labels("phone-first")
    by_severity: dict[str, list[Item]] = {}
    for number, finding in enumerate(alike_together(told), start=1):
        found = by_severity.setdefault(finding.severity.value, [])
        measured = speaker.text("phone-measured", text=finding.measured) if finding.measured else ""
        text = " ".join(part for part in (finding.message, measured, finding.remedy) if part)
        found.append(
            Item(id=f"finding/{_room(plan)}/{number}", strong=finding.where, text=f"{text} {finding.code}")
        )
    for severity in ("stop", "fix", "note"):
        if severity in by_severity:
            yield Section(group="first", title=labels[severity], items=by_severity[severity])
    yield Section(group="first", title=labels["before"], lines=[*cautions, *structure_cautions(plan, speaker)])


def _boards(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    for surface in plan.surfaces:
        if surface.boards:
            places = speaker.labels("phone-board")
            items = [
                Item(
                    id=f"board/{board.id}",
                    strong=f"{mark}: {size}",
                    text=f"{places['left']} {left}, {places['up']} {up}, {count} {places['fasteners']}, {stock}",
                    part=mark,
                )
                for board, (mark, size, left, up, count, stock) in zip(
                    surface.boards, board_rows(plan, surface), strict=True
                )
            ]
            yield Section(
                group="boards",
                title=speaker.text("papers-title-boards", surface=speaker.title(surface)),
                picture=f"boards/{surface.id}",
                items=items,
                entries=[Entry(id=f"stud/{surface.id}", label=speaker.text("phone-entry", "stud"))],
            )
        if surface.heights:
            yield Section(
                group="boards",
                title=speaker.text("papers-title-heights", surface=speaker.title(surface)),
                picture=f"heights/{surface.id}",
                lines=[speaker.text("sitepack-labels", "heights")],
            )
    if checks := board_checks(plan):
        yield Section(
            group="boards",
            title=speaker.text("sitepack-labels", "checks"),
            items=[
                Item(id=f"check/{_room(plan)}/{number}", text=line) for number, line in enumerate(checks, start=1)
            ],
        )


def _cuts(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    about = speaker.text("sitepack-labels", "tickets_about")
    for sheet in plan.sheets:
        ticket = ticket_words(plan, sheet, speaker)
        yield Section(
            group="cuts",
            title=speaker.text("phone-sheet", sheet=sheet.id),
            picture=f"sheet/{sheet.id}",
            lines=[ticket["source"], *([about] if sheet is plan.sheets[0] else [])],
            items=[
                Item(id=f"cut/{sheet.id}/{number}", strong=f"{mark} {what}", text=gives)
                for number, (mark, what, gives) in enumerate(ticket["cuts"], start=1)
            ],
            after=ticket["second"],
        )
    for piece in cut_again(plan):
        mark = piece.id.removeprefix("P")
        yield Section(
            group="cuts",
            title=speaker.text("phone-second", board=mark),
            picture=f"piece/{piece.id}",
            lines=[speaker.text("sitepack-labels", "second_about")],
            items=[Item(id=f"second/{piece.id}", strong=mark, text=speaker.text("phone-done"))],
        )
    if slight := slight_tapers(plan):
        yield Section(
            group="cuts",
            title=speaker.text("sitepack-labels", "slight"),
            lines=[speaker.text("sitepack-labels", "slight_about")],
            items=[Item(id=f"slight/{mark}", strong=mark, text="; ".join(edges)) for mark, *edges in slight],
        )


def _falls(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    for surface in plan.surfaces:
        if surface.fall is None:
            continue
        said = fall_words(surface, surface.fall, speaker)
        found = speaker.text("phone-entry", "found")
        yield Section(
            group="falls",
            title=said["title"],
            picture=f"falls/{surface.id}",
            lines=[f"{name}: {value}" for name, value in said["facts"]],
            entries=[
                Entry(id=f"level/{surface.id}/{number}", label=f"{number} {where}: {high}. {found}", kind="length")
                for number, where, high in said["levels"]
            ],
        )
        yield Section(
            group="falls",
            title=speaker.text("phone-flood", surface=speaker.title(surface)),
            lines=[said["flood"]],
            items=[
                Item(id=f"flood/{surface.id}/{number}", text=line)
                for number, line in enumerate(said["record"], start=1)
            ],
            entries=[
                Entry(
                    id=f"flood/{surface.id}/{name}", label=speaker.text("phone-entry", f"flood_{name}"), kind=kind
                )
                for name, kind in _FLOOD.items()
            ],
        )


_FLOOD: Mapping[str, EntryKind] = {"start": "text", "level": "length", "end": "text", "end_level": "length"}
"""What a flood test is written down by."""


def _water(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    page = water_pages(plan)
    covered = [surface for surface in plan.surfaces if surface.membrane]
    for surface, listed in zip(covered, page["surfaces"], strict=True):
        yield Section(
            group="falls",
            title=speaker.text("phone-water", surface=listed["title"]),
            lines=[listed["kind"], *page["general"]],
            items=[
                Item(id=f"water/{surface.id}/{number}", strong=f"{name}:", text=value)
                for number, (name, value) in enumerate(listed["rows"], start=1)
            ],
        )


def _tile(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    for surface in plan.surfaces:
        if not surface.tiled:
            continue
        words = words_beside(plan, surface, speaker)
        title = speaker.text("papers-title-tile", surface=speaker.title(surface))
        softs, chips = (speaker.text("sitepack-labels", name) for name in ("softs", "chips"))
        yield Section(
            group="tile",
            title=title,
            picture=f"tile/{surface.id}",
            lines=[f"{name}: {found}" for name, found in words["facts"]],
            items=[
                Item(id=f"line/{surface.id}/{number}", text=line)
                for number, line in enumerate(words["lines"], start=1)
            ],
            entries=[
                Entry(id=f"course/{surface.id}", label=speaker.text("phone-entry", "course"), kind="length")
                for _ in range(surface.id.rpartition("/")[0] == f"{surface.room}/wall")
            ],
            after=[f"{softs}: {line}" for line in words["soft"]] + [f"{chips}: {line}" for line in words["chips"]],
            tiles={tile.id: f"tile/{tile.id}" for tile in surface.tiles},
        )
        cuts = list(_tile_cuts(plan, surface, speaker))
        if cuts:
            yield Section(
                group="tile", title=speaker.text("phone-saw", surface=speaker.title(surface)), items=cuts,
                picture=f"saw/{surface.id}", lines=[speaker.text("sitepack-labels", "saw_about")],
            )  # fmt: skip


def _tile_cuts(plan: Plan, surface: Surface, speaker: Speaker) -> Iterator[Item]:
    for number, kind in enumerate(cut_kinds(surface, without=mosaics(plan)), start=1):
        where = ", ".join(f"{place} ({count})" for place, count in said_places(kind.places, speaker))
        yield Item(
            id=f"saw/{surface.id}/{number}",
            strong=f"{kind.mark}: {kind.count} × {size_words(kind, speaker)}",
            text=where,
        )


def _poles(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    about = speaker.text("sitepack-labels", "poles_about")
    for place, pole in enumerate(plan_poles(plan), start=1):
        told = pole_rows(plan, pole)
        yield Section(
            group="tile",
            title=speaker.text("phone-pole", pole=told["title"]),
            lines=[about] if place == 1 else [],
            items=[
                Item(id=f"{pole.id}/{number}", strong=row["at"], text=row["name"])
                for number, row in enumerate(told["rows"], start=1)
            ],
        )


def _buy(plan: Plan, speaker: Speaker) -> Iterator[Section]:
    bought = [quantity for quantity in plan.quantities if quantity.buy]
    if not bought:
        return
    items = []
    for number, quantity in enumerate(bought, start=1):
        said = speaker.quantity(quantity)
        need = speaker.text("phone-need", need=f"{as_needed(said.exact)} {said.unit}")
        items.append(Item(id=f"buy/{number}", strong=f"{quantity.buy} × {said.item}", text=f"{said.pack}; {need}"))
    yield Section(group="buy", title=speaker.text("sitepack-labels", "shopping"), items=items)


def _found(plan: Plan, speaker: Speaker) -> Section:
    used = dict.fromkeys(name for surface in plan.surfaces for area in surface.tiled for name in area.tiles)
    entries = [
        Entry(
            id=f"tile_measured/{name}/{side}",
            label=speaker.text("phone-entry", f"tile_{side}", tile=name),
            kind="length",
        )
        for name in used
        for side in ("width", "height", "thickness")
    ]
    rooms = dict.fromkeys(surface.room for surface in plan.surfaces)
    entries += [Entry(id=f"other/{room}", label=speaker.text("phone-entry", "other", room=room)) for room in rooms]
    return Section(
        group="found",
        title=speaker.text("phone-found"),
        lines=[speaker.text("phone-found_about")],
        entries=entries,
    )
