"""A piece with its second cuts: tapers, notches and holes, marked from its lower left, face up."""

import math

from shapely import Polygon

from firstcourse.drawings.chains import add_chain
from firstcourse.drawings.model import XY, Drawing, Line, Poly, Text
from firstcourse.drawings.on_paper import LABEL_MM, fitted, page_round, titled
from firstcourse.drawings.placing import Placer
from firstcourse.geometry import Point, Ring, bounds
from firstcourse.plan import Piece, Plan
from firstcourse.units import TICKS_PER_MM, format_length
from firstcourse.words import speaker_for

_SCALES = {"inch": (12, 16, 24, 32, 48, 64, 96), "mm": (10, 20, 25, 50, 100)}
_MARK_MM = 4.6
_ROUND_SIDE = 38 * TICKS_PER_MM
"""Sides shorter than this in a row stand for a curve [ticks]."""
_CURVE_TURN = math.radians(12)
"""A corner that turns no more is one of a curve, however long its sides."""
_CURVE_STEP = 150 * TICKS_PER_MM
"""A curve is marked again so far along it [ticks]."""
_ROUND_FROM = 8
"""A hole of this many sides or more stands for a circle: its middle is marked, not its corners."""


def has_second_cuts(piece: Piece) -> bool:
    """Whether the piece is more than its blank: a taper, a notch or a hole."""
    width, height = piece.blank
    plain = {(0, 0), (width, 0), (width, height), (0, height)}
    return bool(piece.holes) or set(piece.outline) != plain


def draw_piece(plan: Plan, piece: Piece, *, room: XY = (88.0, 96.0)) -> Drawing:
    """Draw a piece with running dimensions to every corner of its outline and every hole.

    Args:
        plan: For the tape of the job.
        piece: What to draw.
        room: Width and height on paper, dimensions included [mm].
    """
    scales = _SCALES[plan.job.tape.value]
    return fitted(scales, (0, 0, *piece.blank), room, lambda scale: _drawn(plan, piece, scale, room))


def _drawn(plan: Plan, piece: Piece, scale: int, room: XY) -> Drawing:
    per = TICKS_PER_MM * scale
    speaker = speaker_for(plan)
    drawing = titled(speaker, speaker.text("drawings-title", "piece", name=piece.id), scale)
    corners = [(0, 0), (piece.blank[0], 0), piece.blank, (0, piece.blank[1])]
    drawing.polys.append(Poly("extent", tuple((x / per, y / per) for x, y in corners)))
    rings = [tuple((x / per, y / per) for x, y in ring) for ring in (piece.outline, *piece.holes)]
    drawing.polys += [Poly("board", ring, piece.id) for ring in rings]
    inner = Polygon(rings[0], rings[1:])
    labels = []
    across, up = {0, piece.blank[0]}, {0, piece.blank[1]}
    for ring in (piece.outline, *piece.holes):
        left, lower, right, upper = bounds(ring)
        if len(ring) >= _ROUND_FROM and ring in piece.holes:
            x, y = (left + right) // 2, (lower + upper) // 2
            across.add(x)
            up.add(y)
            reach = (right - left) / 2 / per + 1
            drawing.lines.append(Line("hatch", (x / per - reach, y / per), (x / per + reach, y / per)))
            drawing.lines.append(Line("hatch", (x / per, y / per - reach), (x / per, y / per + reach)))
            size = format_length(right - left, plan.job.tape, feet=False)
            labels.append(Text((x / per, y / per + reach + 2), speaker.text("drawings-hole", size=size), LABEL_MM))
        else:
            corners_marked = corners_to_mark(ring, _ROUND_SIDE)
            across |= {x for x, _ in corners_marked}
            up |= {y for _, y in corners_marked}
    for along, marks in enumerate((across, up)):
        figures = {mark: format_length(mark, plan.job.tape, feet=False) for mark in sorted(marks)}
        kept: dict[str, int] = {}
        for place, figure in figures.items():
            # Marks that no tape tells apart are one mark.
            kept.setdefault(figure, place)
        add_chain(drawing, [(place / per, figure) for figure, place in kept.items()], along=along)
    placer = Placer(drawing, page_round(drawing, room))
    for label in labels:
        placer.put(label, within=inner, upright_too=True, aside=True)
    middle = inner.centroid if inner.contains(inner.centroid) else inner.representative_point()
    mark = Text((middle.x, middle.y), piece.id.removeprefix("P"), _MARK_MM, bold=True)
    placer.put_small_too(mark, LABEL_MM, within=inner)
    return drawing


def corners_to_mark(ring: Ring, round_side: int) -> set[Point]:
    """The corners a setter marks: all of a straight-sided outline; of a curve how far it reaches, and a few more.

    A curve's sides are short, or, where it is as wide as a column, turn little from one to the next.

    Args:
        ring: The outline.
        round_side: Sides shorter than this in a row stand for a curve [ticks].
    """
    count = len(ring)
    lengths = [math.dist(ring[i], ring[(i + 1) % count]) for i in range(count)]
    turns = [_turn(ring[i - 1], ring[i], ring[(i + 1) % count]) for i in range(count)]
    curved = [max(lengths[i - 1], lengths[i]) < round_side or turns[i] <= _CURVE_TURN for i in range(count)]
    rounded = [point for point, is_curved in zip(ring, curved, strict=True) if is_curved]
    if len(rounded) < 3:
        return set(ring)
    left, lower, right, upper = bounds(tuple(rounded))
    marked = {(left, lower), (right, upper)}
    since = 0.0
    for i, point in enumerate(ring):
        since += lengths[i - 1]
        if not curved[i] or since >= _CURVE_STEP:
            marked.add(point)
            since = 0.0
    return marked


def _turn(a: Point, b: Point, c: Point) -> float:
    """How far a way turns at its middle point [radians]."""
    turn = math.atan2(c[1] - b[1], c[0] - b[0]) - math.atan2(b[1] - a[1], b[0] - a[0])
    return abs(math.remainder(turn, 2 * math.pi))
