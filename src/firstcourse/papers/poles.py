"""Story poles as the papers have them: from the marks of the plan, each stick with what it shows."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce
from typing import Literal

from firstcourse.papers.mark_words import place_words, row_number, step_words
from firstcourse.plan import Mark, Plan, Surface, SurfaceKind
from firstcourse.words import Speaker, speaker_for

PlaceKind = Literal["end", "tile", "opening", "control"]
_ORDER: tuple[PlaceKind, ...] = ("control", "tile", "opening", "end")
"""Order of marks at one place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleMark:
    """One mark.

    Attributes:
        at: Distance from the pole's end [ticks].
        name: What is marked.
        kind: What sort of mark it is.
    """

    at: int
    name: str
    kind: PlaceKind


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryPole:
    """One stick.

    Attributes:
        id: As the plan's marks name it.
        surfaces: Ids of the surfaces it serves; several where their courses lie alike.
        places: What they are called, in the same order.
        way: Which way the pole lies.
        control: What it is held to.
        step: Where not each row is marked, which are, with the sum.
        served: All that it serves, as one phrase.
        marks: From its end on.
    """

    id: str
    surfaces: tuple[str, ...]
    places: tuple[str, ...]
    way: str
    control: str
    step: str
    served: str
    marks: tuple[PoleMark, ...]

    @property
    def title(self) -> str:
        """The surfaces it serves, which way it lies, and which rows it shows."""
        return f"{self.served}, {self.way}" + (f", {self.step}" if self.step else "")

    @property
    def length(self) -> int:
        """From its end to its last mark [ticks]."""
        return max((mark.at for mark in self.marks), default=0)


def plan_poles(plan: Plan) -> tuple[StoryPole, ...]:
    """The poles of a plan in the order of their numbers."""
    found: dict[str, list[tuple[Surface, list[Mark]]]] = {}
    speaker = speaker_for(plan)
    for surface in plan.surfaces:
        mine: dict[str, list[Mark]] = {}
        for mark in surface.marks:
            if mark.kind == "pole":
                mine.setdefault(mark.from_, []).append(mark)
        for name, marks in mine.items():
            found.setdefault(name, []).append((surface, marks))
    return tuple(
        _pole(name, found[name], plan, speaker)
        for name in sorted(found, key=lambda name: int(name.rpartition("/")[2]))
    )


def _pole(name: str, served: Sequence[tuple[Surface, list[Mark]]], plan: Plan, speaker: Speaker) -> StoryPole:
    named: dict[PoleMark, list[Surface]] = {}
    begins = sorted({mark.distance for surface, marks in served for mark in marks if _begins(mark, surface)})
    for surface, marks in served:
        for place in _places(surface, marks, begins, plan, speaker):
            named.setdefault(place, []).append(surface)
    shown = [
        mark
        if len(places) == len(served)
        else PoleMark(at=mark.at, name=f"{_short(_listed(places, speaker))}: {mark.name}", kind=mark.kind)
        for mark, places in named.items()
    ]
    first, marks = served[0]
    upright = marks[0].line[0][1] == marks[0].line[1][1]
    wall = first.kind is SurfaceKind.WALL
    control = next(mark.name for mark in shown if mark.kind == "control")
    way = ("up" if upright else "along") if wall else ("first" if upright else "second")
    return StoryPole(
        id=name,
        surfaces=tuple(surface.id for surface, _ in served),
        places=tuple(speaker.title(surface) for surface, _ in served),
        way=speaker.text("marks-way", way),
        control=control,
        step=step_words(first, marks, upright, plan, speaker),
        served=_listed([surface for surface, _ in served], speaker),
        marks=tuple(sorted(shown, key=lambda mark: (mark.at, _ORDER.index(mark.kind), mark.name))),
    )


def _places(
    surface: Surface, marks: Sequence[Mark], begins: Sequence[int], plan: Plan, speaker: Speaker
) -> list[PoleMark]:
    """Marks of one surface by name; tiles are counted along the stick, whichever surfaces have them."""
    found = []
    for mark in marks:
        before = bisect_right(begins, mark.distance if _begins(mark, surface) else mark.distance - 1)
        if _kind(mark, surface) == "tile":
            before = row_number(surface, mark, begins[0], before, plan)
        name = place_words(surface, mark, before, plan, speaker)
        found.append(PoleMark(at=mark.distance, name=name, kind=_kind(mark, surface)))
    return found


def _begins(mark: Mark, surface: Surface) -> bool:
    """Whether a tile begins at a mark."""
    return _kind(mark, surface) == "tile" and mark.to.rpartition("/")[2] in ("low", "left")


def _kind(mark: Mark, surface: Surface) -> PlaceKind:
    if mark.to.startswith(f"{surface.id}/line/"):
        return "control" if mark.to.count("/") == surface.id.count("/") + 2 else "end"
    return "opening" if mark.to.startswith(f"{surface.id}/opening/") else "tile"


def _listed(served: Sequence[Surface], speaker: Speaker) -> str:
    """Several walls of one room as one phrase."""
    walls = [surface.id.rpartition("/wall/") for surface in served]
    if len(served) > 1 and all(room and room == walls[0][0] for room, _, _ in walls):
        names = [name for _, _, name in walls]
        room = speaker.title(served[0]).partition(": ")[0]
        return speaker.text("marks-walls", room=room, names=", ".join(names[:-1]), last=names[-1])
    return reduce(
        lambda one, two: speaker.text("marks-places", one=one, two=two), [speaker.title(one) for one in served]
    )


def _short(place: str) -> str:
    """A place without its room."""
    return place.rpartition(": ")[2]
