"""Story poles as strips at true scale, to cut out, join on their crosses and glue on a batten.

Every page carries a line of known length: a printer that shrinks its pages is found out before a tile is cut.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from firstcourse.documents.pages import PAGE_SIZES, Paper, compiled
from firstcourse.plan import Plan, SurfaceKind
from firstcourse.tiling.story_pole import PoleMark, StoryPole, story_poles
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, format_length

PAGE_MM: dict[Paper, tuple[float, float]] = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}
"""Width and height of the pages [mm]."""
CHECK_TICKS = {Tape.INCH: 10 * TICKS_PER_INCH, Tape.MM: 250 * TICKS_PER_MM}
"""Length printed on every page to be held against the tape [ticks]."""
CHECK_PEN_PT = 0.9
"""Line width of the check length; no other line has it [pt]."""
STRIP_TICKS = {Tape.INCH: 136 * TICKS_PER_INCH // 16, Tape.MM: 220 * TICKS_PER_MM}
"""Length of pole on one strip, from cross to cross [ticks]: 8-1/2 in or 220 mm."""
OVERLAP_MM = 8.0
"""How far a strip is printed on past its crosses, for the glue [mm]."""

_CHECK_X_MM, _FIRST_X_MM, _STRIP_MM, _STRIPS = 12.0, 25.0, 58.0, 3
_FOOT_MM = 22.0
"""Lowest cross above the page's lower edge [mm]."""
_TEXT_MM, _SMALLEST_MM, _PITCH_MM = 2.4, 1.5, 3.0
_NAME_X_MM = 19.0
_MARK_MM = {"end": 16.0, "control": 16.0, "tile": 10.0, "opening": 13.0}
_PEN_PT = {"end": 0.8, "control": 1.2, "tile": 0.5, "opening": 0.8}
_EDGE_PT, _CROSS_PT, _LEADER_PT = 0.25, 0.4, 0.2
_GLYPH = 0.56


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """One piece of a pole.

    Attributes:
        number: Counted from 1.
        of: Number of strips of the pole.
        start: Distance of its lower cross from the pole's foot [ticks].
        end: Of its upper cross; of the pole's own end on the last strip [ticks].
        marks: Marks from cross to cross.
    """

    pole: StoryPole
    number: int
    of: int
    start: int
    end: int
    marks: tuple[PoleMark, ...]


def plan_poles(plan: Plan) -> tuple[StoryPole, ...]:
    """The poles of all surfaces: up the walls first, then along them, then those of floors and ceilings."""
    found = [
        (surface.kind is not SurfaceKind.WALL, pole.along == "u", pole)
        for surface in plan.surfaces
        for pole in story_poles(surface)
    ]
    return tuple(pole for *_, pole in sorted(found, key=lambda item: item[:2]))


def pole_strip(plan: Plan, paper: Paper) -> bytes:
    """All poles of a plan as strips at true scale.

    Args:
        plan: A verified plan with tile.
        paper: Page size.

    Raises:
        PaperError: A warning of the page maker.
    """
    return compiled(("pole_strip.typ",), strip_data(plan, paper))


def strip_data(plan: Plan, paper: Paper) -> dict[str, Any]:
    """All that the pages print: lines and texts in millimetres from the upper left corner."""
    strips = [strip for pole in plan_poles(plan) for strip in _strips(pole, plan.job.tape)]
    pages = [strips[index : index + _STRIPS] for index in range(0, len(strips), _STRIPS)]
    return {
        "paper": PAGE_SIZES[paper],
        "title": f"{plan.job.name}: story poles at full size",
        "digest": plan.job.digest[:12],
        "how": "Cut out, lay the lower cross of each strip on the upper cross of the one before, glue in order.",
        "pages": [_page(page, plan.job.tape, PAGE_MM[paper]) for page in pages],
    }


def _strips(pole: StoryPole, tape: Tape) -> Iterator[Strip]:
    step = STRIP_TICKS[tape]
    count = max(1, -(-pole.length // step))
    for number in range(1, count + 1):
        start, end = (number - 1) * step, min(number * step, pole.length)
        marks = tuple(
            mark for mark in pole.marks if start <= mark.at < end or (number == count and mark.at == end)
        )
        yield Strip(pole=pole, number=number, of=count, start=start, end=end, marks=marks)


class _Page:
    """Collects lines and texts; heights are given upwards from the page's lower edge [mm]."""

    def __init__(self, size: tuple[float, float]) -> None:
        self.size = size
        self.lines: list[list[float]] = []
        self.texts: list[dict[str, Any]] = []

    def line(self, a: tuple[float, float], b: tuple[float, float], pen: float) -> None:
        self.lines.append([a[0], self.size[1] - a[1], b[0], self.size[1] - b[1], pen])

    def text(
        self, at: tuple[float, float], text: str, size: float, *, bold: bool = False, up: bool = False
    ) -> None:
        place = {"x": at[0], "y": self.size[1] - at[1]}
        self.texts.append({**place, "text": text, "size": size, "bold": bold, "up": up})


def _page(strips: Sequence[Strip], tape: Tape, size: tuple[float, float]) -> dict[str, Any]:
    page = _Page(size)
    _check(page, tape)
    for index, strip in enumerate(strips):
        _draw(page, strip, _FIRST_X_MM + index * _STRIP_MM, tape)
    return {"lines": page.lines, "texts": page.texts}


def _check(page: _Page, tape: Tape) -> None:
    """The check length along the page's left edge."""
    length = CHECK_TICKS[tape] / TICKS_PER_MM
    low = (page.size[1] - length) / 2
    page.line((_CHECK_X_MM, low), (_CHECK_X_MM, low + length), CHECK_PEN_PT)
    for at in (low, low + length):
        page.line((_CHECK_X_MM - 2, at), (_CHECK_X_MM + 2, at), _CROSS_PT)
    words = format_length(CHECK_TICKS[tape], tape, feet=False)
    text = f"Check: this line is {words} long. If it is not, print again at 100 %, without fitting to the page."
    page.text((_CHECK_X_MM + 2.5, low + 20), text, _TEXT_MM, up=True)


def _draw(page: _Page, strip: Strip, x: float, tape: Tape) -> None:
    low = _FOOT_MM
    high = low + (strip.end - strip.start) / TICKS_PER_MM
    first, last = strip.number == 1, strip.number == strip.of
    bottom, top = (low if first else low - OVERLAP_MM), (high if last else high + OVERLAP_MM)
    width = _STRIP_MM - 2.0
    for side in (x, x + width):
        page.line((side, bottom), (side, top), _EDGE_PT)
    for end in (bottom, top):
        page.line((x, end), (x + width, end), _EDGE_PT)
    if not first:
        _cross(page, x + width - 6.0, low)
    if not last:
        _cross(page, x + width - 6.0, high)
    caption = _fitting(strip.pole.title, width, _TEXT_MM)
    page.text((x, bottom - 2.4), strip.pole.title, caption, bold=True)
    span = f"{format_length(strip.start, tape)} to {format_length(strip.end, tape)}"
    words = f"strip {strip.number} of {strip.of}: {span}"
    page.text((x, bottom - 5.6), words, _fitting(words, width, _TEXT_MM))
    _marks(page, strip, x, tape)


def _cross(page: _Page, x: float, y: float) -> None:
    page.line((x - 4.0, y), (x + 4.0, y), _CROSS_PT)
    page.line((x, y - 4.0), (x, y + 4.0), _CROSS_PT)


def _marks(page: _Page, strip: Strip, x: float, tape: Tape) -> None:
    heights = [_FOOT_MM + (mark.at - strip.start) / TICKS_PER_MM for mark in strip.marks]
    room = _STRIP_MM - 4.0 - _NAME_X_MM
    for mark, height, beside in zip(strip.marks, heights, _apart(heights), strict=True):
        end = x + _MARK_MM[mark.kind]
        page.line((x, height), (end, height), _PEN_PT[mark.kind])
        page.line((end, height), (x + _NAME_X_MM - 0.5, beside), _LEADER_PT)
        text = f"{format_length(mark.at, tape)}  {mark.name}"
        page.text((x + _NAME_X_MM, beside), text, _fitting(text, room, _TEXT_MM), bold=mark.kind == "control")


def _fitting(text: str, room: float, size: float) -> float:
    return max(_SMALLEST_MM, min(size, room / (len(text) * _GLYPH)))


def _apart(heights: Sequence[float]) -> list[float]:
    """Heights of names so that none stands on another, ascending like their marks [mm]."""
    placed: list[float] = []
    for height in heights:
        placed.append(max(height, placed[-1] + _PITCH_MM) if placed else height)
    limit = heights[-1] + _PITCH_MM if heights else 0.0
    for index in range(len(placed) - 1, -1, -1):
        placed[index] = min(placed[index], limit)
        limit = placed[index] - _PITCH_MM
    return placed
