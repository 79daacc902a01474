"""What a start trades: told both ways, so that none of them seems to be all gain."""

from firstcourse.papers.start_reasons import start_reasons
from firstcourse.plan import EdgeCut, StartPoint
from firstcourse.units import Tape, mm
from firstcourse.words import Speaker

SIDES = ("wall A-B", "wall B-C", "wall D-E")
SPEAKER = Speaker("us", Tape.MM, labels={f"bath/floor/side/{i}": ("bath", name) for i, name in enumerate(SIDES)})


def edges(*widths: float | None) -> tuple[EdgeCut, ...]:
    """The narrowest cuts at three walls, of tiles 100 mm wide; None where none is cut."""
    return tuple(
        EdgeCut(at=f"bath/floor/side/{i}")
        if width is None
        else EdgeCut(at=f"bath/floor/side/{i}", width=mm(width), share=width / 100)
        for i, width in enumerate(widths)
    )


PICK = StartPoint(
    origin=(0, 0),
    smallest_cut=mm(40),
    cut_tiles=20,
    sliver=True,
    under_half=True,
    may_sliver=True,
    narrowest_at="bath/floor/side/1",
    edges=edges(None, 40.0, 52.0),
)


def other(**changes: object) -> StartPoint:
    return PICK.model_copy(update={"why": "other", **changes})


def trade(start: StartPoint, used: StartPoint) -> str:
    return start_reasons(SPEAKER, start, used)


def test_what_is_used_is_told_by_itself() -> None:
    assert trade(PICK, PICK) == "a cut at wall B-C is a sliver"
    sure = PICK.model_copy(
        update={"sliver": False, "unsure": True, "may_sliver": False, "sure_cut": mm(12), "uneven": 0.01}
    )
    assert trade(sure, sure) == (
        "some cuts at wall B-C are under half a tile, none is a sliver; cuts on opposite sides are even; holds "
        "for every room that the survey allows: no cut along an edge is under 12 mm in any of them"
    )
    given = PICK.model_copy(update={"why": "given", "cut_tiles": 0, "wanted": 4, "on_joints": 2})
    assert trade(given, given) == "as given: no tile is cut; 2 of 4 edges of niches and windows lie on joints"
    round_corners = PICK.model_copy(update={"why": "round_corners"})
    assert trade(round_corners, round_corners).endswith("; courses run on round the corners")


def test_the_greatest_gain_and_the_greatest_loss_along_an_edge_are_both_told() -> None:
    one = other(edges=edges(70.0, 55.0, 90.0))
    assert trade(one, PICK) == "for it: cuts at wall D-E wider; against it: cuts at wall A-B"
    assert trade(PICK, one) == "for it: no cuts at wall A-B; against it: cuts at wall D-E narrower"


def test_what_the_survey_may_do_to_the_cuts_is_told_where_no_start_has_room_for_it() -> None:
    pick, one = PICK.model_copy(update={"sure_cut": mm(12)}), other(sure_cut=0)
    assert trade(one, pick).endswith("narrower cuts if the survey is off")
    assert trade(pick, one).endswith("wider cuts if the survey is off")
    # With room to spare, that is what is told.
    assert trade(other(slack=mm(9)), pick) == "for it: stands more error of the room"


def test_what_hardly_changes_is_not_told() -> None:
    assert trade(other(edges=edges(None, 40.9, 51.5)), PICK) == "much like the pick, with the joints elsewhere"


def test_a_start_is_never_all_gain() -> None:
    one = other(cut_tiles=19, smallest_cut=mm(39.5))
    assert trade(one, PICK) == "for it: 1 fewer tile to cut; against it: the smallest cut is a little narrower"
