"""Running dimensions: figures along the foot or the left, each measured from one origin."""

from firstcourse.drawings.model import Drawing, Line, Text

FIGURE_MM = 3.1
"""Height of the type of dimension figures [mm]."""
PITCH_MM = 3.8
"""Least distance of two figures of one chain [mm]: none stands on the next."""
_LEADER_MM = 4.6
_OFF_MM = 1.5


def add_chain(drawing: Drawing, marks: list[tuple[float, str]], *, along: int, off: float = 0.0) -> None:
    """Add running dimensions below (`along` 0) or left (`along` 1) of a drawing whose origin is its lower left.

    Figures that would collide move apart on leaders; none is left out. Of millimetres the first alone bears the
    unit, so that the others can be read at a glance.

    Args:
        drawing: What to add to.
        marks: Place on paper [mm] and figure of each mark, ascending.
        along: Axis the marks lie along.
        off: How much farther off the figures stand, to leave room for names of corners [mm].
    """
    near, bend, far = -_OFF_MM, -_OFF_MM - off - _LEADER_MM / 2, -_OFF_MM - off - _LEADER_MM
    placed = _apart([spot for spot, _ in marks])
    for number, ((spot, told), moved) in enumerate(zip(marks, placed, strict=True)):
        figure = told.removesuffix(" mm") if number else told
        if along == 0:
            drawing.lines.append(Line("dimension", (spot, near), (spot, bend)))
            drawing.lines.append(Line("dimension", (spot, bend), (moved, far)))
            drawing.texts.append(Text((moved, far - 0.8), figure, FIGURE_MM, anchor="end", upright=True))
        else:
            drawing.lines.append(Line("dimension", (near, spot), (bend, spot)))
            drawing.lines.append(Line("dimension", (bend, spot), (far, moved)))
            drawing.texts.append(Text((far - 0.8, moved), figure, FIGURE_MM, anchor="end"))


def _apart(spots: list[float]) -> list[float]:
    """Places a pitch apart or more, in order, as near to their marks as the row allows, none before the first."""
    placed: list[float] = []
    for spot in spots:
        placed.append(max(spot, placed[-1] + PITCH_MM) if placed else spot)
    # Pushed apart rightwards above, the row is pulled back over its marks from the far end.
    limit = spots[-1] if spots else 0.0
    for index in range(len(placed) - 1, -1, -1):
        placed[index] = min(placed[index], limit)
        limit = placed[index] - PITCH_MM
    # Before its first mark a row would meet the figures along the other side.
    lowest = spots[0] if spots else 0.0
    for index, place in enumerate(placed):
        placed[index] = max(place, lowest)
        lowest = placed[index] + PITCH_MM
    return placed
