"""What a start trades: told both ways, so that none of them seems to be all gain."""

from dataclasses import replace

from firstcourse.tiling.start_words import Along, Facts, trade


def along(*widths: float | None) -> tuple[Along, ...]:
    """The narrowest cuts at three walls, of tiles 100 mm wide; None where none is cut."""
    return tuple(
        Along(label=label, weight=1.0, width=width, share=1.0 if width is None else width / 100)
        for label, width in zip(("wall A-B", "wall B-C", "wall D-E"), widths, strict=True)
    )


PICK = Facts(
    cut_tiles=20,
    smallest_cut=40.0,
    sure_cut=0.0,
    slack=0.0,
    short=0.7,
    sliver=True,
    may_sliver=True,
    uneven=None,
    where=" at wall B-C",
    on_joints=0,
    num_wanted=0,
    unsure=False,
    along=along(None, 40.0, 52.0),
)


def test_the_greatest_gain_and_the_greatest_loss_along_an_edge_are_both_told() -> None:
    other = replace(PICK, along=along(70.0, 55.0, 90.0))
    assert trade(other, PICK) == "for it: cuts at wall D-E wider; against it: cuts at wall A-B"
    assert trade(PICK, other) == "for it: no cuts at wall A-B; against it: cuts at wall D-E narrower"


def test_what_the_survey_may_do_to_the_cuts_is_told_where_no_start_has_room_for_it() -> None:
    pick, other = replace(PICK, sure_cut=12.0), replace(PICK, sure_cut=0.0)
    assert trade(other, pick).endswith("narrower cuts if the survey is off")
    assert trade(pick, other).endswith("wider cuts if the survey is off")
    # With room to spare, that is what is told.
    assert trade(replace(other, slack=9.0), pick) == "for it: stands more error of the room"


def test_what_hardly_changes_is_not_told() -> None:
    other = replace(PICK, along=along(None, 40.9, 51.5))
    assert trade(other, PICK) == "much like the pick, with the joints elsewhere"
