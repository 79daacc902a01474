"""A floor that falls: its planes, valleys and ridges, the drain, and the points whose heights are set."""

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import FIGURE_MM
from firstcourse.drawings.model import XY, Circle, Drawing, Line, Poly, Text
from firstcourse.drawings.on_paper import OnPaper, fitted
from firstcourse.drawings.placing import Placer
from firstcourse.geometry import bounds
from firstcourse.plan import Fall, Plan, Surface
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.words import Speaker

_SCALES = {"inch": (4, 6, 8, 12, 16, 24, 32, 48), "mm": (5, 10, 20, 25, 50, 100)}
_ARROW_MM, _BARB_MM, _BESIDE_MM = 9.0, 2.0, 2.8
_OFF_MM, _AROUND_MM = 4.0, 24.0


def draw_fall(plan: Plan, surface: Surface, fall: Fall, *, room: XY = (150.0, 120.0)) -> Drawing:
    """Draw how a floor falls, at the largest usual scale that fits.

    Arrows point down each plane and bear its fall. Heavy broken lines are valleys, thin broken ones ridges. Points
    that are set to height are numbered as the level table has them.

    Args:
        plan: For the tape of the job.
        surface: The floor.
        fall: How it falls.
        room: Width and height on paper [mm].
    """
    box = bounds(surface.outline)
    scales = _SCALES[plan.job.tape.value]
    return fitted(scales, box, room, lambda scale: _drawn(plan, surface, fall, scale, room))


def _drawn(plan: Plan, surface: Surface, fall: Fall, scale: int, room: XY) -> Drawing:
    sheet = OnPaper(plan, surface, bounds(surface.outline), scale, "papers-title-falls", room)
    drawing = sheet.drawing
    sheet.draw_outline()
    drawing.lines += [Line("soft", sheet.at(a), sheet.at(b)) for a, b in fall.valleys]
    drawing.lines += [Line("framing", sheet.at(a), sheet.at(b)) for a, b in fall.ridges]
    for opening in surface.openings:
        if opening.outline is not None:
            drawing.polys.append(Poly("opening", sheet.ring(opening.outline), opening.id))
        elif opening.centre is not None and opening.diameter is not None:
            radius = opening.diameter / 2 / TICKS_PER_MM / drawing.scale
            drawing.circles.append(Circle("opening", sheet.at(opening.centre), radius))
    points = list(enumerate((*fall.levels, *fall.valley_levels), start=1))
    drawing.circles += [Circle("fastener", sheet.at(point.at), 0.7) for _, point in points]
    arrows = [
        _arrow(drawing, Polygon(sheet.ring(plane.ring)), plane.gradient, sheet.speaker) for plane in fall.planes
    ]
    # Points at the edge stand in the open round the floor.
    left, lower, right, upper = drawing.box
    sheet.placer = Placer(
        drawing, (left - _AROUND_MM, lower - _OFF_MM * 2, right + _AROUND_MM, upper + _OFF_MM * 2)
    )
    middle = shapely.centroid(Polygon(sheet.ring(surface.outline)))
    for number, point in points:
        x, y = sheet.at(point.at)
        dx, dy = (_OFF_MM if x > middle.x else -_OFF_MM), (_OFF_MM if y > middle.y else -_OFF_MM)
        if number > len(fall.levels):
            # A valley runs outwards from the drain: its figures stand beside it.
            dy = -dy
        text = f"{number}: {sheet.length(point.height)}"
        spot = Text((x + dx, y + dy), text, FIGURE_MM, anchor="start" if dx > 0 else "end", bold=True)
        sheet.placer.put(spot, reach=8.0, aside=True)
    for label in arrows:
        if label is not None:
            sheet.placer.put(label, reach=8.0, upright_too=True, aside=True)
    sheet.name_corners()
    sheet.name_doors()
    return drawing


def _arrow(drawing: Drawing, plane: Polygon, gradient: tuple[float, float], speaker: Speaker) -> Text | None:
    """An arrow down the plane from near its middle; gives the plane's fall to stand beside it."""
    steep = (gradient[0] ** 2 + gradient[1] ** 2) ** 0.5
    if not steep or plane.is_empty:
        return None
    du, dv = -gradient[0] / steep, -gradient[1] / steep
    spot = shapely.point_on_surface(plane)
    tail = (spot.x - du * _ARROW_MM / 2, spot.y - dv * _ARROW_MM / 2)
    tip = (spot.x + du * _ARROW_MM / 2, spot.y + dv * _ARROW_MM / 2)
    drawing.lines.append(Line("dimension", tail, tip))
    for side in (1, -1):
        barb = (tip[0] - _BARB_MM * (du + side * dv * 0.5), tip[1] - _BARB_MM * (dv - side * du * 0.5))
        drawing.lines.append(Line("dimension", tip, barb))
    told = f"{steep * 12:.2f}" if speaker.tape is Tape.INCH else f"{steep * 1000:.0f}"
    words = speaker.text("drawings-fall", fall=told, tape=speaker.tape.value)
    level = abs(dv) < abs(du)
    beside = (spot.x, spot.y + _BESIDE_MM) if level else (spot.x + _BESIDE_MM, spot.y)
    return Text(beside, words, FIGURE_MM, upright=not level)
