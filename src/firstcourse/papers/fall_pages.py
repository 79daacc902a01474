"""What the site pack prints of floors that fall: planes, levels to check, bed, and the flood test card."""

from typing import Any

from firstcourse.drawings import draw_fall, svg_size, to_svg
from firstcourse.plan import Fall, LevelPoint, Plan, Surface
from firstcourse.units import Tape, format_length
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
    drawing = draw_fall(plan, surface, fall)
    return {
        "svg": to_svg(drawing),
        "width_mm": svg_size(drawing)[0],
        "scale": f"1:{drawing.scale}",
        **fall_words(surface, fall, speaker),
    }


def fall_words(surface: Surface, fall: Fall, speaker: Speaker) -> dict[str, Any]:
    """What stands with the drawing of a floor that falls: figures, heights to check, and the flood test card."""
    found: dict[str, str | int | None] = {
        "rise": fall.rise,
        "least": _slope(fall.least_fall, speaker),
        "greatest": _slope(fall.greatest_fall, speaker),
        "bed": _bed(fall.bed, fall.bed_litres, speaker),
        "pre_slope": _bed(fall.pre_slope, fall.pre_slope_litres, speaker) if fall.pre_slope else None,
        "drain": fall.drain_height,
        "room_floor": fall.room_floor,
        "kerb": fall.kerb,
        "upturn": fall.upturn_top if fall.membrane == "liner" else None,
        "recess": fall.recess,
        "largest_tile": fall.largest_tile,
    }
    test = fall.flood_test
    depth = test.level if test.depth is None else test.depth
    return {
        "title": speaker.text("papers-title-falls", surface=speaker.title(surface)),
        "facts": [
            [
                speaker.text("falls-fact", name),
                format_length(value, speaker.tape) if isinstance(value, int) else value,
            ]
            for name, value in found.items()
            if value is not None
        ],
        "levels": [
            [str(number), level_place(point, surface, speaker), format_length(point.height, speaker.tape)]
            for number, point in enumerate((*fall.levels, *fall.valley_levels), start=1)
        ],
        "flood": speaker.text(
            "falls-flood",
            deep=length(depth),
            water=_water(test.litres, test.kg, speaker),
            hours=test.hours,
            dam=test.dam,
        ),
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


def level_place(point: LevelPoint, surface: Surface, speaker: Speaker) -> str:
    """Where a point lies whose height is set."""
    labels = [Name(name=speaker.edge(surface.sides[side])) for side in point.sides]
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


def _slope(fall: float, speaker: Speaker) -> str:
    """A fall as the trade says it on either tape."""
    told = f"{fall * 1000:.1f}" if speaker.tape is Tape.MM else f"{fall * _IN_PER_FT:.3f}"
    ratio = f"{1 / fall:.0f}" if fall else 0
    return speaker.text("falls-slope", fall=told, tape=speaker.tape.value, ratio=ratio)


def _bed(thick: int, litres: float, speaker: Speaker) -> str:
    volume = f"{litres:.1f}" if speaker.tape is Tape.MM else f"{litres / _LITRES_PER_FT3:.2f}"
    return speaker.text("falls-bed", thick=length(thick), volume=volume, tape=speaker.tape.value)


def _water(litres: float, kg: float, speaker: Speaker) -> str:
    metric = speaker.tape is Tape.MM
    volume = f"{litres:.0f}" if metric else f"{litres / _LITRES_PER_GAL:.1f}"
    mass = f"{kg:.0f}" if metric else f"{kg * _LB_PER_KG:.0f}"
    return speaker.text("falls-water", volume=volume, mass=mass, tape=speaker.tape.value)
