"""What the site pack prints of floors that fall: planes, levels to check, bed, and the flood test card."""

from typing import Any

from firstcourse.drawings.falls import draw_fall
from firstcourse.drawings.svg import svg_size, to_svg
from firstcourse.plan import Fall, LevelPoint, Plan, Surface
from firstcourse.units import Tape, counted, format_length
from firstcourse.values import Name, Value, Word, length, measure, statement
from firstcourse.words import Speaker, speaker_for

_IN_PER_FT = 12
_LITRES_PER_GAL = 3.785411784
_LITRES_PER_FT3 = 28.316846592
_LB_PER_KG = 1 / 0.45359237


def fall_pages(plan: Plan) -> list[dict[str, Any]]:
    """One entry for each floor that falls, as plain values."""
    speaker = speaker_for(plan)
    return [_page(plan, surface, surface.fall, speaker) for surface in plan.surfaces if surface.fall is not None]


def _page(plan: Plan, surface: Surface, fall: Fall, speaker: Speaker) -> dict[str, Any]:
    tape = plan.job.tape
    drawing = draw_fall(plan, surface, fall)
    bed = f"{format_length(fall.bed, tape)} at least, {_volume(fall.bed_litres, tape)}"
    facts = [
        ["highest point over the drain", format_length(fall.rise, tape)],
        ["least fall on the water's way", _slope(fall.least_fall, tape)],
        ["greatest fall of a plane", _slope(fall.greatest_fall, tape)],
        ["bed", bed],
    ]
    if fall.pre_slope:
        pre = f"{format_length(fall.pre_slope, tape)} at least, {_volume(fall.pre_slope_litres, tape)}"
        facts.append(["slope under the liner", pre])
    if fall.drain_height is not None:
        facts.append(["top of the drain over the panels", format_length(fall.drain_height, tape)])
    if fall.room_floor is not None:
        facts.append(["room's finished floor over the panels", format_length(fall.room_floor, tape)])
    if fall.kerb is not None:
        facts.append(["top of the kerb over the drain", format_length(fall.kerb, tape)])
    if fall.membrane == "liner" and fall.upturn_top is not None:
        facts.append(["liner ends on the walls, over the drain", format_length(fall.upturn_top, tape)])
    if fall.recess is not None:
        facts.append(["recess below the room's floor", format_length(fall.recess, tape)])
    if fall.largest_tile is not None:
        facts.append(["largest tile that follows uncut", format_length(fall.largest_tile, tape)])
    test = fall.flood_test
    water = f"{_water(test.litres, tape)}, {_mass(test.kg, tape)}"
    depth = test.level if test.depth is None else test.depth
    deep = format_length(depth, tape)
    return {
        "title": f"{surface.title or surface.id}: falls",
        "svg": to_svg(drawing),
        "width_mm": svg_size(drawing)[0],
        "scale": f"1:{drawing.scale}",
        "facts": facts,
        "levels": [
            [str(number), _place(point, surface, speaker), format_length(point.height, tape)]
            for number, point in enumerate((*fall.levels, *fall.valley_levels), start=1)
        ],
        "flood": f"Before tile: fill until it stands {deep} deep over the membrane at the threshold, and "
        f"wherever the membrane is highest ({water}), and leave it for "
        f"{counted(test.hours, 'hours')}." + (" A dam across the opening is needed." if test.dam else ""),
        "record": speaker.lines(
            statement(
                "showers-flood_record",
                dam=test.dam,
                depth=length(depth),
                at_drain=length(fall.rise + depth),
                hours=measure(test.hours, "hours"),
            )
        ),
    }


def _place(point: LevelPoint, surface: Surface, speaker: Speaker) -> str:
    """Where a point lies whose height is set."""
    labels = [Name(name=surface.sides[side].label) for side in point.sides]
    given: dict[str, Value] = {}
    if point.kind == "corner":
        before, after = labels
        given = {"before": Word(word="same") if before == after else before, "after": after}
    elif point.kind == "side":
        given = {"side": labels[0]}
    elif point.between is not None and point.along is not None:
        low, high = point.between
        given = {"along": length(point.along), "low": low, "high": high}
    return speaker.statement(statement(f"showers-level_{point.kind}", **given))


def _slope(fall: float, tape: Tape) -> str:
    """A fall as the trade says it on either tape."""
    ratio = f"1 in {1 / fall:.0f}" if fall else "none"
    return (
        f"{fall * 1000:.1f} mm per m, {ratio}"
        if tape is Tape.MM
        else f"{fall * _IN_PER_FT:.3f} in per ft, {ratio}"
    )


def _volume(litres: float, tape: Tape) -> str:
    return f"{litres:.1f} l" if tape is Tape.MM else f"{litres / _LITRES_PER_FT3:.2f} cu ft"


def _water(litres: float, tape: Tape) -> str:
    return f"{litres:.0f} l" if tape is Tape.MM else f"{litres / _LITRES_PER_GAL:.1f} gal"


def _mass(kg: float, tape: Tape) -> str:
    return f"{kg:.0f} kg" if tape is Tape.MM else f"{kg * _LB_PER_KG:.0f} lb"
