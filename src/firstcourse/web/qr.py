"""An address as a QR code that a phone reads from the terminal."""

import segno

_HALVES = {(False, False): "█", (False, True): "▀", (True, False): "▄", (True, True): " "}
"""Two rows a line; what is light is drawn, for most terminals are dark."""
_BORDER = 2


def qr_lines(text: str) -> list[str]:
    """Lines to print, one sign for two squares above each other.

    Args:
        text: What the code says.
    """
    rows = [[bool(square) for square in row] for row in segno.make(text, micro=False).matrix_iter(border=_BORDER)]
    if len(rows) % 2:
        rows.append([False] * len(rows[0]))
    return [
        "".join(_HALVES[upper, lower] for upper, lower in zip(first, second, strict=True))
        for first, second in zip(rows[::2], rows[1::2], strict=True)
    ]


def qr_svg(text: str) -> str:
    """The code as SVG to stand in a page, black on white.

    Args:
        text: What the code says.
    """
    drawn: str = segno.make(text, micro=False).svg_inline(
        scale=6, border=4, dark="#000", light="#fff", svgclass=None, lineclass=None
    )
    return drawn
