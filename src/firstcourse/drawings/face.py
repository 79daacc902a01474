"""How long a text is in the face that the papers are printed in, read from the face's own files.

Only what an advance takes is read: the tables `head`, `hhea`, `hmtx` and `cmap` (format 4) as the OpenType
specification gives them. Kerning is left out: in this face it makes texts shorter, so what is measured is enough.
"""

import struct
from functools import cache
from importlib import resources

_FILES = {False: "IBMPlexSans_400Regular.ttf", True: "IBMPlexSans_600SemiBold.ttf"}
CAP_HEIGHT = 0.698
"""Height of capitals and figures in type sizes."""
ASCENT, DESCENT = 0.78, 0.22
"""Above and below the line of writing that letters reach, in type sizes."""


@cache
def advances(*, bold: bool = False) -> tuple[dict[int, float], float]:
    """Advance of each letter by its code point, and that of a letter which the face lacks [type sizes]."""
    data = (resources.files("firstcourse.drawings") / "fonts" / _FILES[bold]).read_bytes()
    tables = {}
    for index in range(struct.unpack_from(">H", data, 4)[0]):
        tag, _, offset, _ = struct.unpack_from(">4sLLL", data, 12 + 16 * index)
        tables[tag.decode("ascii")] = offset
    per_em = struct.unpack_from(">H", data, tables["head"] + 18)[0]
    measured = struct.unpack_from(">H", data, tables["hhea"] + 34)[0]
    widths = [struct.unpack_from(">H", data, tables["hmtx"] + 4 * glyph)[0] / per_em for glyph in range(measured)]

    def width(glyph: int) -> float:
        return float(widths[min(glyph, measured - 1)])

    return {code: width(glyph) for code, glyph in _glyphs(data, tables["cmap"])}, width(0)


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """Length of a text, in the unit of its size.

    Args:
        text: One line.
        size: Type size.
        bold: In the heavier cut.

    Example:
        >>> round(text_width("W1-1", 4.2, bold=True), 1)
        9.9
    """
    known, missing = advances(bold=bold)
    return size * sum(known.get(ord(letter), missing) for letter in text)


def _glyphs(data: bytes, start: int) -> list[tuple[int, int]]:
    """Code points with their glyphs, from the table's first part of format 4."""
    for index in range(struct.unpack_from(">H", data, start + 2)[0]):
        at = start + struct.unpack_from(">L", data, start + 4 + 8 * index + 4)[0]
        if struct.unpack_from(">H", data, at)[0] == 4:
            break
    else:
        raise ValueError("the face has no table of letters in format 4")
    count = struct.unpack_from(">H", data, at + 6)[0] // 2
    ends = struct.unpack_from(f">{count}H", data, at + 14)
    starts = struct.unpack_from(f">{count}H", data, at + 16 + 2 * count)
    deltas = struct.unpack_from(f">{count}H", data, at + 16 + 4 * count)
    ranges_at = at + 16 + 6 * count
    ranges = struct.unpack_from(f">{count}H", data, ranges_at)
    found = []
    for part, (first, last) in enumerate(zip(starts, ends, strict=True)):
        for code in range(first, min(last, 0xFFFE) + 1):
            glyph = code
            if ranges[part]:
                glyph = struct.unpack_from(">H", data, ranges_at + 2 * part + ranges[part] + 2 * (code - first))[0]
            if glyph or not ranges[part]:
                found.append((code, (glyph + deltas[part]) % 0x10000))
    return found
