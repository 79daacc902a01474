"""What stands together on a page, how much room it takes, and which blocks share a page.

Drawings know their size, and texts are measured in the face they are printed in; so pages are filled here, and a
page break never parts a drawing from its words or leaves a page all but empty.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from firstcourse.drawings import Drawing, to_svg
from firstcourse.drawings.face import text_width
from firstcourse.drawings.svg import svg_size

WIDE_MM, HALF_MM = 186.0, 91.0
"""Width of a page and of half a page within their margins, on the narrower of the papers [mm]."""
HIGH_MM = 234.0
"""Height of a page within its margins, on the lower of the papers [mm]."""
TITLE_MM = 9.5
ROW_MM = 6.0
"""Height of a block's title; of one row of a table [mm]."""
_BETWEEN_MM = 6.0
_POINT_MM = 25.4 / 72
_LINE = 1.32
"""Distance of lines in type sizes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A title with its drawing and words.

    Attributes:
        kind: Which of the page makers' forms prints it.
        data: What it prints, as plain values.
        height: What it takes of a page [mm].
        half: Whether it is no wider than half a page.
    """

    kind: str
    data: dict[str, Any] = field(repr=False)
    height: float
    half: bool = False


def pages_of(blocks: Iterable[Block]) -> list[list[list[dict[str, Any]]]]:
    """Pages of rows, each of one wide block or of one or two narrow ones, in order, as plain values."""
    pages: list[list[list[dict[str, Any]]]] = []
    left = 0.0
    for row in _rows(list(blocks)):
        height = max(block.height for block in row)
        if not pages or height + _BETWEEN_MM > left:
            pages.append([])
            left = HIGH_MM
        else:
            left -= _BETWEEN_MM
        left -= height
        pages[-1].append([{"kind": block.kind, **block.data} for block in row])
    return pages


def _rows(blocks: Sequence[Block]) -> list[list[Block]]:
    rows: list[list[Block]] = []
    for block in blocks:
        if block.half and rows and len(rows[-1]) == 1 and rows[-1][0].half:
            rows[-1].append(block)
        else:
            rows.append([block])
    return rows


def image(drawing: Drawing) -> dict[str, Any]:
    """A drawing as the page makers place it."""
    return {"svg": to_svg(drawing), "width_mm": svg_size(drawing)[0], "scale": f"1:{drawing.scale}"}


def words_height(texts: Iterable[str], width: float, points: float) -> float:
    """Height of paragraphs, each broken between words [mm].

    Args:
        texts: One a paragraph.
        width: Room for a line [mm].
        points: Type size [pt].
    """
    size = points * _POINT_MM
    return sum(_lines(text, width, size) * size * _LINE + size * 0.4 for text in texts)


def _lines(text: str, width: float, size: float) -> int:
    lines, used = 1, 0.0
    space = text_width(" ", size)
    for word in text.split():
        # Of heavier type somewhere within, and of what is broken badly.
        length = text_width(word, size, bold=True)
        if used and used + space + length > width:
            lines, used = lines + 1, 0.0
        used += (space if used else 0.0) + length
        if used > width:
            lines += math.floor(used / width)
            used %= width
    return lines
