"""What stands together on a page, how much room it takes, and which blocks stand beside each other.

Drawings know their size, and texts are measured in the face they are printed in. Blocks follow each other down the
pages, each whole: a page break never parts a drawing from its words.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from firstcourse.drawings import Drawing, svg_size, text_width, to_svg

WIDE_MM, HALF_MM = 186.0, 91.0
"""Width of a page and of half a page within their margins, on the narrower of the papers [mm]."""
HIGH_MM = 234.0
"""Height of a page within its margins, on the lower of the papers [mm]."""
NARROW_MM = 1620.0
"""Surfaces no wider than this on site may go two to a page [mm]."""
TITLE_MM = 9.5
ROW_MM = 6.0
"""Height of a block's title; of one row of a table [mm]."""
_POINT_MM = 25.4 / 72
_LINE = 1.25
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


def in_rows(blocks: Iterable[Block]) -> list[list[dict[str, Any]]]:
    """Rows of one wide block or of one or two narrow ones, in order, as plain values.

    A row that is higher than a page says so in its first block, and begins on a page of its own.
    """
    return [
        [{"kind": block.kind, "tall": max(one.height for one in row) > HIGH_MM, **block.data} for block in row]
        for row in _rows(list(blocks))
    ]


def _rows(blocks: Sequence[Block]) -> list[list[Block]]:
    rows: list[list[Block]] = []
    for block in blocks:
        # A narrow one fills the page of the narrow one before it, whatever stands between them.
        alone = next((row for row in rows if block.half and len(row) == 1 and row[0].half), None)
        if alone is not None:
            alone.append(block)
        else:
            rows.append([block])
    return rows


def two_to_a_page[Key](sizes: Mapping[Key, tuple[float, float]]) -> frozenset[Key]:
    """Which surfaces go two to a page.

    Args:
        sizes: Width and height of each on site [mm].

    Returns:
        Those that are narrow; of an odd number the largest gets a page of its own, so that no half stays empty.
    """
    narrow = {key: size for key, size in sizes.items() if size[0] <= NARROW_MM}
    if len(narrow) % 2:
        del narrow[max(narrow, key=lambda key: narrow[key][0] * narrow[key][1])]
    return frozenset(narrow)


def in_columns[Item](
    items: Sequence[Item], heights: Sequence[float], count: int, *, most: float = HIGH_MM
) -> list[list[list[Item]]]:
    """Items in order down columns of about one height, as many columns beside each other as are given.

    Args:
        items: What stands under each other.
        heights: What each takes [mm].
        count: Columns beside each other.
        most: The highest that columns may be; what goes beyond stands in further rows of columns [mm].

    Returns:
        Rows of columns; none is empty.
    """
    if not items:
        return []
    height = max(sum(heights) / count, *heights)
    while height <= most:
        columns = _columns(items, heights, height)
        if len(columns) <= count:
            return [columns]
        height *= 1.02
    columns = _columns(items, heights, most)
    first = sum(map(len, columns[:count]))
    return [columns[:count], *in_columns(items[first:], heights[first:], count, most=most)]


def _columns[Item](items: Sequence[Item], heights: Sequence[float], most: float) -> list[list[Item]]:
    columns: list[list[Item]] = []
    left = 0.0
    for item, height in zip(items, heights, strict=True):
        if not columns or height > left + 1e-9:
            columns.append([])
            left = most
        columns[-1].append(item)
        left -= height
    return columns


def in_shortest[Item](
    items: Sequence[Item], heights: Sequence[float], count: int
) -> tuple[list[list[Item]], list[float]]:
    """Items whose order says nothing in columns of about one height: the highest first, each into the shortest.

    Args:
        items: What stands under each other.
        heights: What each takes [mm].
        count: Columns beside each other.

    Returns:
        The columns, and how far down each goes [mm].
    """
    columns: list[list[Item]] = [[] for _ in range(count)]
    reached = [0.0] * count
    for number in sorted(range(len(items)), key=lambda number: -heights[number]):
        shortest = min(range(count), key=lambda column: reached[column])
        columns[shortest].append(items[number])
        reached[shortest] += heights[number]
    return columns, reached


def beside_each_other[Item](items: Sequence[Item], widths: Sequence[float], gap: float) -> list[list[Item]]:
    """Items in order in rows no wider than the page.

    Args:
        items: What stands beside each other.
        widths: What each takes [mm].
        gap: Between two of them [mm].
    """
    rows: list[list[Item]] = []
    left = 0.0
    for item, width in zip(items, widths, strict=True):
        if not rows or width + gap > left:
            rows.append([])
            left = WIDE_MM + gap
        rows[-1].append(item)
        left -= width + gap
    return rows


def image(drawing: Drawing) -> dict[str, Any]:
    """A drawing as the page makers place it."""
    return {"svg": to_svg(drawing), "width_mm": svg_size(drawing)[0], "scale": f"1:{drawing.scale}"}


def words_height(texts: Iterable[str], width: float, points: float, *, gap: float = 0.0) -> float:
    """Height of paragraphs, each broken between words [mm].

    Args:
        texts: One a paragraph.
        width: Room for a line [mm].
        points: Type size [pt].
        gap: What stands free under each paragraph [mm].
    """
    size = points * _POINT_MM
    return sum(_lines(text, width, size) * size * _LINE + gap for text in texts)


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
