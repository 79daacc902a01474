"""Story poles as strips at true scale, to cut out, join on their crosses and glue on a batten.

Every page carries a line of known length: a printer that shrinks its pages is found out before a tile is cut.
Figures are as high as can be read at arm's length.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from firstcourse.papers.pages import HERE, PAGE_SIZES, PageMaker, Paper
from firstcourse.papers.poles import PoleMark, StoryPole, plan_poles
from firstcourse.plan import Plan
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, format_length
from firstcourse.words import Speaker, speaker_for

PAGE_MM: dict[Paper, tuple[float, float]] = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}
"""Width and height of the pages [mm]."""
CHECK_TICKS = {Tape.INCH: 10 * TICKS_PER_INCH, Tape.MM: 250 * TICKS_PER_MM}
"""Length printed on every page to be held against the tape [ticks]."""
CHECK_PEN_PT = 0.9
"""Line width of the check length; no other line has it [pt]."""
STRIP_TICKS: dict[Paper, dict[Tape, int]] = {
    "letter": {Tape.INCH: 19 * TICKS_PER_INCH // 2, Tape.MM: 240 * TICKS_PER_MM},
    "a4": {Tape.INCH: 10 * TICKS_PER_INCH, Tape.MM: 260 * TICKS_PER_MM},
}
"""Length of pole on one strip, from cross to cross [ticks]: round on the tape, as long as the page allows."""
STRIPS = 4
"""Strips side by side on a page."""
FIRST_X_MM, FOOT_MM = 21.0, 16.0
"""Left edge of the first strip; height of the lowest cross above the page's lower edge [mm]."""
OVERLAP_MM = 8.0
"""How far a strip is printed on past its crosses, for the glue [mm]."""
FIGURE_MM = 5.75
"""Size of the type of figures [mm]: its figures are 4 mm high."""

_CHECK_X_MM, _HOW_X_MM, _RIGHT_MM, _BETWEEN_MM = 9.0, 16.5, 6.5, 0.8
_NAME_MM, _SMALL_MM, _LEAST_MM = 3.1, 2.4, 1.6
_UNDER_MM = 4.9
"""A mark's name stands this far under its figure [mm]."""
_ABOVE_MM, _LINE_MM = 2.9, 3.3
"""What a figure takes above its middle; distance of two lines of a name [mm]."""
_TEXT_X_MM = 10.2
_MARK_MM, _MOVED_MM = 8.0, 0.3
_STUB_MM = 80
"""A last strip shorter than this has no room for its figures [mm]."""
_PEN_PT = {"end": 0.8, "control": 1.6, "tile": 0.5, "opening": 1.2}
_EDGE_PT, _CROSS_PT, _LEADER_PT = 0.25, 0.4, 0.2
_CROSS_MM = 3.0
_SAME = TICKS_PER_MM // 20
"""Marks closer together than this are one pencil line [ticks]."""
_NARROW = {
    "i": 0.27,
    "l": 0.29,
    "t": 0.36,
    "r": 0.4,
    "f": 0.36,
    ";": 0.28,
    " ": 0.24,
    "'": 0.25,
    '"': 0.42,
    "-": 0.4,
    "/": 0.39,
    ",": 0.28,
    ".": 0.28,
    ":": 0.28,
}
_GLYPH = 0.6
"""Advance of a figure in type sizes; that of most letters is less."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PolePiece:
    """One piece of a pole.

    Attributes:
        number: Counted from 1.
        of: Number of strips of the pole.
        start: Distance of its lower cross from the pole's end [ticks].
        end: Of its upper cross; of the pole's own end on the last strip [ticks].
        marks: Marks from cross to cross.
    """

    pole: StoryPole
    number: int
    of: int
    start: int
    end: int
    marks: tuple[PoleMark, ...]


def pole_strip(plan: Plan, paper: Paper, maker: PageMaker = HERE) -> bytes:
    """All poles of a plan as strips at true scale.

    Args:
        plan: A verified plan with tile.
        paper: Page size.
        maker: Makes the pages.

    Raises:
        PaperError: A warning of the page maker.
    """
    return maker.compiled(("pole_strip.typ",), strip_data(plan, paper))


def strip_data(plan: Plan, paper: Paper) -> dict[str, Any]:
    """All that the pages print: lines and texts in millimetres from the upper left corner."""
    tape = plan.job.tape
    strips = [strip for pole in plan_poles(plan) for strip in strips_of(pole, STRIP_TICKS[paper][tape])]
    pages = [strips[index : index + STRIPS] for index in range(0, len(strips), STRIPS)]
    speaker = speaker_for(plan)
    digest = plan.job.digest[:12]
    return {
        "paper": PAGE_SIZES[paper],
        "tongue": speaker.tongue,
        "title": speaker.text("poles-title"),
        "pages": [
            _page(
                page,
                speaker,
                PAGE_MM[paper],
                speaker.text("poles-page", job=plan.job.name, digest=digest, page=number, pages=len(pages)),
            )
            for number, page in enumerate(pages, start=1)
        ],
    }


def strips_of(pole: StoryPole, step: int) -> tuple[PolePiece, ...]:
    """A pole cut into strips.

    The last has no glue tab above, so that its room may go to the pole itself; where it would be a stub, the one
    before it gives it half of its length.

    Args:
        pole: With its marks.
        step: Length of a strip from cross to cross [ticks].
    """
    count = max(1, -(-(pole.length - round(OVERLAP_MM * TICKS_PER_MM)) // step))
    breaks = [number * step for number in range(count)] + [pole.length]
    if count > 1 and breaks[-1] - breaks[-2] < _STUB_MM * TICKS_PER_MM:
        breaks[-2] -= step // 2
    return tuple(
        PolePiece(
            pole=pole,
            number=number,
            of=count,
            start=start,
            end=end,
            marks=tuple(
                mark for mark in pole.marks if start <= mark.at < end or (number == count and mark.at == end)
            ),
        )
        for number, (start, end) in enumerate(pairwise(breaks), start=1)
    )


class _Page:
    """Collects lines and texts; heights are given upwards from the page's lower edge [mm]."""

    def __init__(self, size: tuple[float, float]) -> None:
        self.size = size
        self.strip_mm = (size[0] - FIRST_X_MM - _RIGHT_MM) / STRIPS - _BETWEEN_MM
        self.lines: list[list[float]] = []
        self.texts: list[dict[str, Any]] = []

    def line(self, a: tuple[float, float], b: tuple[float, float], pen: float) -> None:
        self.lines.append([a[0], self.size[1] - a[1], b[0], self.size[1] - b[1], pen])

    def text(
        self, at: tuple[float, float], text: str, size: float, *, bold: bool = False, up: bool = False
    ) -> None:
        place = {"x": at[0], "y": self.size[1] - at[1]}
        self.texts.append({**place, "text": text, "size": size, "bold": bold, "up": up})


def _page(strips: Sequence[PolePiece], speaker: Speaker, size: tuple[float, float], title: str) -> dict[str, Any]:
    page = _Page(size)
    _margin(page, speaker, title)
    for index, strip in enumerate(strips):
        _draw(page, strip, FIRST_X_MM + index * (page.strip_mm + _BETWEEN_MM), speaker)
    return {"lines": page.lines, "texts": page.texts}


def _margin(page: _Page, speaker: Speaker, title: str) -> None:
    """The check length along the page's left edge, and beside it what the page is and how it is used."""
    tape = speaker.tape
    length = CHECK_TICKS[tape] / TICKS_PER_MM
    low = (page.size[1] - length) / 2
    page.line((_CHECK_X_MM, low), (_CHECK_X_MM, low + length), CHECK_PEN_PT)
    for at in (low, low + length):
        page.line((_CHECK_X_MM - 2, at), (_CHECK_X_MM + 2, at), _CROSS_PT)
    words = format_length(CHECK_TICKS[tape], tape, feet=False)
    room = length - 4.0
    for x, text in (
        (_CHECK_X_MM + 1.5, speaker.text("poles-check", length=words, title=title)),
        (_HOW_X_MM, speaker.text("poles-how")),
    ):
        page.text((x, low + 2.0), text, _fitting(text, room, _NAME_MM), up=True)


def _draw(page: _Page, strip: PolePiece, x: float, speaker: Speaker) -> None:
    low = FOOT_MM
    high = low + (strip.end - strip.start) / TICKS_PER_MM
    first, last = strip.number == 1, strip.number == strip.of
    bottom, top = (low if first else low - OVERLAP_MM), (high if last else high + OVERLAP_MM)
    right = x + page.strip_mm
    for side in (x, right):
        page.line((side, bottom), (side, top), _EDGE_PT)
    for end in (bottom, top):
        page.line((x, end), (right, end), _EDGE_PT)
    for height in (*(() if first else (low,)), *(() if last else (high,))):
        _cross(page, x + _TEXT_X_MM + _CROSS_MM, height)
        _cross(page, right - _CROSS_MM - 2.0, height)
    free = (low if first else low + _CROSS_MM, high if last else high - _CROSS_MM)
    blocks = _marks(page, strip, x, speaker.tape, free)
    _caption(page, strip, x, speaker, [(low, free[0]), *blocks, (free[1], free[1])])


def _cross(page: _Page, x: float, y: float) -> None:
    page.line((x - _CROSS_MM, y), (x + _CROSS_MM, y), _CROSS_PT)
    page.line((x, y - _CROSS_MM), (x, y + _CROSS_MM), _CROSS_PT)


def _marks(
    page: _Page, strip: PolePiece, x: float, tape: Tape, free: tuple[float, float]
) -> list[tuple[float, float]]:
    """Each place with its figure and under it what is marked; gives what the figures and names take [mm]."""
    groups: list[list[PoleMark]] = []
    for mark in strip.marks:
        if groups and mark.at - groups[-1][0].at <= _SAME:
            groups[-1].append(mark)
        else:
            groups.append([mark])
    heights = [FOOT_MM + (group[0].at - strip.start) / TICKS_PER_MM for group in groups]
    room = page.strip_mm - _TEXT_X_MM - 0.8
    names = [_lines("; ".join(mark.name for mark in group), room, _NAME_MM) for group in groups]
    belows = [_UNDER_MM + _LINE_MM * len(lines) - 1.6 for lines in names]
    # Where marks crowd, all that is written shrinks alike.
    share = min(1.0, (free[1] - free[0] - 1.0) / max(sum(belows) + _ABOVE_MM * len(groups), 1e-9))
    above, belows = _ABOVE_MM * share, [below * share for below in belows]
    placed = _apart(heights, above, belows, (free[0], free[1] - 1.0 * share))
    for group, lines, height, beside in zip(groups, names, heights, placed, strict=True):
        for mark in group:
            page.line((x, height), (x + _MARK_MM, height), _PEN_PT[mark.kind])
        if abs(beside - height) > _MOVED_MM:
            page.line((x + _MARK_MM, height), (x + _TEXT_X_MM - 0.5, beside), _LEADER_PT)
        bold = any(mark.kind == "control" for mark in group)
        figure = format_length(group[0].at, tape)
        page.text((x + _TEXT_X_MM, beside), figure, _fitting(figure, room, FIGURE_MM * share), bold=bold)
        for number, line in enumerate(lines):
            under = (x + _TEXT_X_MM, beside - (_UNDER_MM + number * _LINE_MM) * share)
            page.text(under, line, _fitting(line, room, _NAME_MM * share), bold=bold)
    return [(beside - below, beside + above) for beside, below in zip(placed, belows, strict=True)]


def _caption(
    page: _Page, strip: PolePiece, x: float, speaker: Speaker, taken: Sequence[tuple[float, float]]
) -> None:
    """What the strip is, in the lowest gap between the marks that has room for it, else in the widest."""
    room = page.strip_mm - _TEXT_X_MM - 0.8
    start, end = (format_length(at, speaker.tape) for at in (strip.start, strip.end))
    span = speaker.text("poles-span", start=start, end=end)
    counted = speaker.text("poles-strip", number=strip.number, of=strip.of)
    lines = [*_lines(strip.pole.title, room, _SMALL_MM), counted, span]
    needed = (len(lines) + 1) * _LINE_MM
    gaps = [(lower[1], upper[0]) for lower, upper in pairwise(taken) if upper[0] > lower[1]]
    gap = next((one for one in gaps if one[1] - one[0] >= needed), None)
    if gap is None:
        gap = max(gaps, key=lambda one: one[1] - one[0], default=(taken[0][1], taken[0][1] + needed))
    share = min(1.0, (gap[1] - gap[0]) / needed)
    top = min(gap[1], gap[0] + 1.5 * needed) - _LINE_MM * share
    for number, line in enumerate(lines):
        page.text((x + _TEXT_X_MM, top - number * _LINE_MM * share), line, _fitting(line, room, _SMALL_MM * share))


def _lines(text: str, room: float, size: float) -> list[str]:
    """A text broken between words so that every line fits, where words allow it."""
    lines: list[str] = []
    for word in text.split(" "):
        if lines and _advance(f"{lines[-1]} {word}") * size <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def _advance(text: str) -> float:
    return sum(_NARROW.get(letter, _GLYPH) for letter in text)


def _fitting(text: str, room: float, size: float) -> float:
    return max(min(_LEAST_MM, size), min(size, room / _advance(text)))


def _apart(
    heights: Sequence[float], above: float, belows: Sequence[float], free: tuple[float, float]
) -> list[float]:
    """Heights of figures so that none stands on another, ascending like their marks, within limits [mm]."""
    placed: list[float] = []
    lowest = free[0]
    for height, below in zip(heights, belows, strict=True):
        placed.append(max(height, lowest + below))
        lowest = placed[-1] + above
    highest = free[1]
    for index in range(len(placed) - 1, -1, -1):
        placed[index] = min(placed[index], highest - above)
        highest = placed[index] - belows[index]
    return placed
