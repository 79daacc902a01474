"""What the site pack prints of waterproofing: each membrane by surface, as a list to work off and tick."""

from collections.abc import Iterator, Mapping
from typing import Any

from firstcourse.geometry import bounds
from firstcourse.papers.blocks import HIGH_MM, in_columns, words_height
from firstcourse.plan import Opening, Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, Tape, format_length, ticks_from_mm
from firstcourse.values import length
from firstcourse.words import Speaker, speaker_for, why_barred

_LAID = ("water-face", "water-floor", "water-bench")
_COLLARED = ("pipe", "valve", "box", "drain")
_COLUMNS, _COLUMN_MM, _TEXT_PT = 3, 59.0, 9.0
"""Columns of surfaces beside each other, the width of each [mm], and their type size [pt]."""
_LAP, _COAT = "water.lap", "water.liquid.wet"


def water_pages(plan: Plan) -> dict[str, Any]:
    """Each surface with a membrane, what belongs to it, and what holds for all, as plain values.

    The figures are those of the workings, in the tape's units.
    """
    speaker = speaker_for(plan)
    kinds: set[str] = {surface.membrane for surface in plan.surfaces if surface.membrane}
    return {
        "surfaces": [
            {
                "title": speaker.title(surface),
                "kind": speaker.text("water-kind", surface.membrane),
                "rows": list(_rows(plan, surface, speaker)),
            }
            for surface in plan.surfaces
            if surface.membrane
        ],
        "general": list(_general(plan, kinds, speaker)) if kinds else [],
    }


def water_columns(page: Mapping[str, Any]) -> list[list[list[dict[str, Any]]]]:
    """The surfaces of a page in rows of columns of about one height.

    Args:
        page: As `water_pages` gives it.
    """
    heights = [
        words_height([f"{listed['title']}: {listed['kind']}"], _COLUMN_MM, _TEXT_PT)
        + words_height([f"{name}: {value}" for name, value in listed["rows"]], _COLUMN_MM - 5.0, _TEXT_PT, gap=1.9)
        + 4.0
        for listed in page["surfaces"]
    ]
    return in_columns(page["surfaces"], heights, _COLUMNS, most=HIGH_MM - 40.0)


def _rows(plan: Plan, surface: Surface, speaker: Speaker) -> Iterator[list[str]]:
    _, lower, _, upper = bounds(surface.outline)
    if surface.kind is SurfaceKind.WALL:
        heights = speaker.text("water-heights", low=length(lower), high=length(upper))
        yield [speaker.text("water-row", "where"), heights]
    for working in (one for one in plan.workings.values() if one.formula in _LAID and one.at == (surface.id,)):
        # Each collar is listed by its place.
        inputs = {name: value for name, value in working.inputs.items() if name != "collars"}
        said = speaker.working(working.model_copy(update={"inputs": inputs}))
        yield [speaker.text("water-row", "in_all"), f"{said.result} {said.unit}"]
        yield from ([name, value] for name, value in said.values.items())
    for opening in surface.openings:
        if opening.kind in _COLLARED:
            kind = "flange" if opening.kind == "drain" else "collar"
            yield [speaker.text("water-row", kind, name=opening.id), _place(opening, surface, speaker)]
    for zone in surface.no_fastener_zones:
        _, low, _, high = bounds(zone.outline)
        yield [
            speaker.text("water-row", "no_fastener"),
            speaker.text("water-zone", low=length(low), high=length(high), why=why_barred(zone, speaker)),
        ]


def _general(plan: Plan, kinds: set[str], speaker: Speaker) -> Iterator[str]:
    tape = plan.job.tape
    rules = {rule.id: rule for rule in plan.rules}
    for name, said, wanted in ((_LAP, "lap", {"sheet", "liner"}), (_COAT, "coat", {"liquid"})):
        if name in rules and kinds & wanted:
            fine = _ticks(rules[name].value, rules[name].unit)
            # A coat of 1.2 mm is not one of 1 mm.
            on_tape = tape is Tape.INCH and fine >= tape.graduation
            shown = format_length(fine, tape) if on_tape else f"{fine / TICKS_PER_MM:.3g} mm"
            yield speaker.text(f"water-{said}", **{said: shown})
    yield speaker.text("water-order")
    yield speaker.text("water-whole")


def _ticks(value: str, unit: str) -> int:
    return ticks_from_mm(float(value) * {"mm": 1.0, "in": 25.4}[unit])


def _place(opening: Opening, surface: Surface, speaker: Speaker) -> str:
    """Where a hole lies, as the drawing's running dimensions read."""
    left, foot, _, _ = bounds(surface.extent or surface.outline)
    if opening.centre is not None:
        u, v = opening.centre
    else:
        u0, v0, u1, v1 = bounds(opening.outline or surface.outline)
        u, v = (u0 + u1) // 2, (v0 + v1) // 2
    return speaker.text("water-centre", left=length(u - left), up=length(v - foot))
