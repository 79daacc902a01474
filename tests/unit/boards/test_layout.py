"""One surface laid: known cases, drawn where the picture helps."""

import datetime

from firstcourse.boards import build_layout, layout_alternatives, no_layout, practice_layout
from firstcourse.findings import Severity
from firstcourse.plan import Side, SideKind, Stock, Support, SupportKind, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches
from own_best import own_best_layout
from said import all_said

RULES = load_rules(datetime.date(2026, 1, 1))
SHEET = (Stock(id="3x5", size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement"),)


def _box(left: float, lower: float, right: float, upper: float) -> tuple[tuple[int, int], ...]:
    a, b, c, d = inches(left), inches(lower), inches(right), inches(upper)
    return ((a, b), (c, b), (c, d), (a, d))


def _wall(width: float, height: float, studs: tuple[float, ...]) -> Surface:
    return Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=_box(0, 0, width, height),
        sides=(Side(kind=SideKind.FOOT), *(Side(kind=SideKind.PERIMETER),) * 3),
        supports=tuple(
            Support(id=f"stud {at}", kind=SupportKind.STUD, outline=_box(at, 0, at + 1.5, height)) for at in studs
        ),
        framing_axis="v",
    )


def test_a_wall_smaller_than_a_sheet_is_one_board() -> None:
    layout = own_best_layout(_wall(32, 48, (0, 15.25, 30.5)), SHEET, RULES, Tape.INCH, mark="W1")
    assert [board.mark for board in layout.boards] == ["W1-1"]
    assert layout.pieces[0].blank == (inches(31.75), inches(47.625))
    assert layout.seams == () and all_said(layout.findings) == ()


def test_a_seam_stands_on_the_stud() -> None:
    #  |   .   .   #   .   |   studs at 0, 16, 32, 48, 64, 80 in
    layout = own_best_layout(_wall(81.5, 35, (0, 16, 32, 48, 64, 80)), SHEET, RULES, Tape.INCH)
    (seam,) = layout.seams
    assert seam.line[0][0] in {inches(at + 0.75) for at in (32, 48)}
    assert layout.added_supports == ()


def test_a_wall_without_studs_in_reach_gets_one_and_says_where() -> None:
    layout = own_best_layout(_wall(81.5, 35, (0, 80)), SHEET, RULES, Tape.INCH)
    assert len(layout.added_supports) == 1 and layout.added_supports[0].added
    assert [finding.code for finding in all_said(layout.findings)] == ["BRD-101"]


def test_no_sheet_stops_the_work_with_a_finding() -> None:
    assert layout_alternatives(_wall(81.5, 35, (0, 80)), (), RULES, Tape.INCH) == ()
    layout = practice_layout(_wall(81.5, 35, (0, 80)), (), RULES, Tape.INCH)
    assert layout.boards == () and [finding.code for finding in all_said(layout.findings)] == ["BRD-301"]


def test_a_slab_is_tiled_as_it_is() -> None:
    ring = ((0, 0), (inches(60), 0), (inches(60), inches(60)), (0, inches(60)))
    panel = Support(id="panel", kind=SupportKind.PANEL, outline=ring)
    joist = Support(id="joist 1", kind=SupportKind.JOIST, outline=ring)
    slab = Surface(
        id="r/floor",
        room="r",
        kind=SurfaceKind.FLOOR,
        outline=ring,
        sides=(Side(kind=SideKind.PERIMETER),) * 4,
        supports=(panel,),
        slab="tiled",
    )
    (said,) = all_said(practice_layout(slab, (), RULES, Tape.INCH).findings)
    assert (said.code, said.severity) == ("BRD-302", Severity.NOTE) and "tile goes on the concrete" in said.message
    # Joists without a sheet, or a slab that is to be boarded and has none, still stop the work.
    joisted = slab.model_copy(update={"supports": (panel, joist), "slab": ""})
    for surface in (joisted, slab.model_copy(update={"slab": "bonded"})):
        (said,) = all_said(no_layout(surface).findings)
        assert said.severity is Severity.STOP


def test_every_alternative_can_be_built() -> None:
    surface = _wall(81.5, 84, (0, 16, 32, 48, 64, 80))
    choices = layout_alternatives(surface, SHEET, RULES, Tape.INCH)
    assert len(choices) > 2
    assert all(build_layout(surface, choice, SHEET, RULES, Tape.INCH).boards for choice in choices)
