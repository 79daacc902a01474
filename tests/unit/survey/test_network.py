import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.errors import InputValueError
from firstcourse.survey import Reading, UnfixedError, adjust

SIGMA = 1.5
LIMIT = 3.29


def tape(truth, pairs, errors=()):
    """Readings of the true corners' distances, with errors put on some pairs."""
    wrong = dict(errors)
    return [
        Reading(
            one=one,
            other=other,
            length_mm=math.dist(truth[one], truth[other]) + wrong.get(f"{one}-{other}", 0.0),
            sigma_mm=SIGMA,
        )
        for one, other in (pair.split("-") for pair in pairs)
    ]


def all_pairs(names):
    return [f"{a}-{b}" for i, a in enumerate(names) for b in names[i + 1 :]]


def sides_of(names):
    return [f"{a}-{b}" for a, b in zip(names, names[1:] + names[:1], strict=True)]


QUAD = {"A": (0.0, 0.0), "B": (2438.0, 0.0), "C": (2441.0, -1829.0), "D": (-4.0, -1822.0)}
L_ROOM = {
    "A": (0.0, 0.0),
    "B": (2400.0, 0.0),
    "C": (2410.0, -1500.0),
    "D": (1200.0, -1495.0),
    "E": (1195.0, -2600.0),
    "F": (6.0, -2590.0),
}
U_ROOM = {
    "A": (0.0, 0.0),
    "B": (3600.0, 0.0),
    "C": (3605.0, -2400.0),
    "D": (2400.0, -2395.0),
    "E": (2395.0, -1100.0),
    "F": (1205.0, -1105.0),
    "G": (1200.0, -2402.0),
    "H": (-5.0, -2400.0),
}


def close_to(adjustment, truth, within=1e-4):
    return all(math.dist(adjustment.corners_mm[name], at) < within for name, at in truth.items())


def test_true_readings_give_the_true_room():
    done = adjust("ABCD", tape(QUAD, all_pairs("ABCD")), limit=LIMIT)
    assert close_to(done, QUAD)
    assert done.freedom == 1
    assert done.suspects == () and not done.ambiguous
    assert all(abs(residual.residual_mm) < 1e-6 for residual in done.residuals)


@pytest.mark.parametrize(
    ("truth", "pairs"),
    [
        (L_ROOM, [*sides_of("ABCDEF"), "A-C", "A-D", "D-F"]),
        (L_ROOM, [*sides_of("ABCDEF"), "B-D", "A-D", "A-E"]),
        (U_ROOM, [*sides_of("ABCDEFGH"), "B-D", "B-E", "A-E", "A-F", "A-G"]),
    ],
    ids=["L across the long leg", "L across the short leg", "U"],
)
def test_reflex_corners_fall_on_the_side_that_makes_a_square_room(truth, pairs):
    done = adjust("".join(truth), tape(truth, pairs), limit=LIMIT)
    assert close_to(done, truth)
    assert done.freedom == 0
    assert not done.ambiguous
    assert all(residual.redundancy == 0.0 for residual in done.residuals)


def test_two_likely_shapes_are_told_with_the_distance_that_settles_it():
    # Corner A can lie on either side of the line B-F: both times the taped distances run inside the room.
    truth = {
        "A": (1300.0, 700.0),
        "B": (800.0, 100.0),
        "C": (0.0, 1600.0),
        "D": (1000.0, 3600.0),
        "E": (2400.0, 2400.0),
        "F": (1900.0, 1500.0),
    }
    pairs = [*sides_of("ABCDEF"), "B-E", "C-E", "C-F"]
    done = adjust("ABCDEF", tape(truth, pairs), limit=LIMIT)
    assert done.ambiguous
    assert (done.settled_by, done.mirrored_over, done.differing) == ("A-C", "B-F", ("A",))
    checked = adjust("ABCDEF", tape(truth, [*pairs, "A-C"]), limit=LIMIT)
    assert not checked.ambiguous and checked.settled_by == checked.mirrored_over == ""


def test_a_shape_whose_walls_stand_across_a_taped_distance_is_not_meant():
    # Mirrored over A-C, corner B would dent the room so that nobody could tape A-C.
    truth = {
        "A": (0.0, 0.0),
        "B": (2000.0, 300.0),
        "C": (2600.0, -1500.0),
        "D": (1200.0, -2300.0),
        "E": (-300.0, -1300.0),
    }
    done = adjust("ABCDE", tape(truth, [*sides_of("ABCDE"), "A-C", "A-D"]), limit=LIMIT)
    assert not done.ambiguous
    assert all(
        math.dist(done.corners_mm[a], done.corners_mm[b]) == pytest.approx(math.dist(truth[a], truth[b]), abs=1e-3)
        for a in truth
        for b in truth
    )


def test_only_corners_that_see_each_other_are_proposed():
    with pytest.raises(UnfixedError) as caught:
        adjust("ABCDEF", tape(L_ROOM, sides_of("ABCDEF")), limit=LIMIT)
    assert len(caught.value.missing) == 3
    assert not {*caught.value.missing} & {"C-E", "C-F", "B-E"}  # across the corner that stands out at D
    done = adjust("ABCDEF", tape(L_ROOM, [*sides_of("ABCDEF"), *caught.value.missing]), limit=LIMIT)
    assert done.freedom == 0 and not done.ambiguous and "C-E" not in done.in_sight


def test_a_room_is_worked_out_from_whichever_reading_allows_it():
    # No diagonal ends at A or B: the chain starts across the room.
    pairs = [*sides_of("ABCDEF"), "C-E", "C-F", "B-F"]
    done = adjust("ABCDEF", tape(L_ROOM, pairs), limit=LIMIT)
    assert done.freedom == 0
    assert all(
        math.dist(done.corners_mm[one], done.corners_mm[other])
        == pytest.approx(math.dist(L_ROOM[one], L_ROOM[other]))
        for one, other in (pair.split("-") for pair in pairs)
    )


def test_readings_that_fix_a_room_only_all_together_ask_for_one_more():
    pairs = [*sides_of("ABCDEF"), "A-D", "B-E", "C-F"]
    with pytest.raises(InputValueError, match="cannot be worked out from two others"):
        adjust("ABCDEF", tape(L_ROOM, pairs), limit=LIMIT)


def test_four_sides_are_refused_with_the_diagonal_to_take():
    with pytest.raises(UnfixedError, match="Tape the diagonal A-C") as caught:
        adjust("ABCD", tape(QUAD, sides_of("ABCD")), limit=LIMIT)
    assert caught.value.missing[0] == "A-C"


def test_triangle_needs_no_diagonal():
    truth = {"A": (0.0, 0.0), "B": (2000.0, 0.0), "C": (700.0, -1500.0)}
    assert close_to(adjust("ABC", tape(truth, sides_of("ABC")), limit=LIMIT), truth)


def test_sides_that_cannot_meet_are_refused():
    readings = [
        Reading(one="A", other="B", length_mm=5000.0, sigma_mm=SIGMA),
        Reading(one="B", other="C", length_mm=1000.0, sigma_mm=SIGMA),
        Reading(one="C", other="A", length_mm=1000.0, sigma_mm=SIGMA),
    ]
    with pytest.raises(InputValueError, match="measure those again"):
        adjust("ABC", readings, limit=LIMIT)


def test_a_room_listed_anticlockwise_comes_out_as_its_mirror_image():
    done = adjust("ADCB", tape(QUAD, all_pairs("ABCD")), limit=LIMIT)
    area2 = sum(
        done.corners_mm[a][0] * done.corners_mm[b][1] - done.corners_mm[b][0] * done.corners_mm[a][1]
        for a, b in zip("ADCB", "DCBA", strict=True)
    )
    assert area2 < 0


def test_one_check_tells_of_a_blunder_but_not_which():
    done = adjust("ABCD", tape(QUAD, all_pairs("ABCD"), {"B-C": 25.4}.items()), limit=LIMIT)
    assert done.freedom == 1
    assert len(done.suspects) > 1
    assert "B-C" in {suspect.reading.name for suspect in done.suspects}


@pytest.mark.parametrize("pair", all_pairs("ABCDEF"))
def test_a_misread_inch_is_named_with_its_size(pair):
    done = adjust("ABCDEF", tape(L_ROOM, all_pairs("ABCDEF"), {pair: 25.4}.items()), limit=LIMIT)
    assert done.suspects[0].reading.name == pair
    assert done.suspects[0].error_mm == pytest.approx(25.4, abs=2.0)


def test_uncertainty_grows_with_the_tape_and_away_from_the_first_side():
    pairs = [*sides_of("ABCD"), "A-C"]
    done = adjust("ABCD", tape(QUAD, pairs), limit=LIMIT)
    assert done.uncertainty_mm["A"] == 0.0
    assert 0 < done.uncertainty_mm["B"] < done.uncertainty_mm["C"]
    more = adjust("ABCD", tape(QUAD, all_pairs("ABCD")), limit=LIMIT)
    assert more.uncertainty_mm["D"] < done.uncertainty_mm["D"]


def test_redundancies_sum_to_the_freedom():
    done = adjust("ABCDEF", tape(L_ROOM, all_pairs("ABCDEF")), limit=LIMIT)
    assert sum(residual.redundancy for residual in done.residuals) == pytest.approx(done.freedom)


@settings(max_examples=60, deadline=None)
@given(
    st.integers(1500, 6000),
    st.integers(1500, 6000),
    st.floats(0.3, 0.7),
    st.floats(0.3, 0.7),
    st.lists(st.floats(-40, 40), min_size=12, max_size=12),
    st.lists(st.floats(-1.5, 1.5), min_size=15, max_size=15),
)
def test_random_rooms_come_out_within_the_tape(width, depth, along, back, shift, noise):
    square = [
        (0, 0),
        (width, 0),
        (width, -depth * back),
        (width * along, -depth * back),
        (width * along, -depth),
        (0, -depth),
    ]
    truth = {
        name: (u + shift[2 * i], v + shift[2 * i + 1])
        for i, (name, (u, v)) in enumerate(zip("ABCDEF", square, strict=True))
    }
    pairs = all_pairs("ABCDEF")
    done = adjust("ABCDEF", tape(truth, pairs, zip(pairs, noise, strict=True)), limit=LIMIT)
    for one, other in (pair.split("-") for pair in pairs):
        adjusted = math.dist(done.corners_mm[one], done.corners_mm[other])
        assert adjusted == pytest.approx(math.dist(truth[one], truth[other]), abs=4.0)
    assert done.suspects == ()


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(all_pairs("ABCDEF")), st.sampled_from([-25.4, 25.4]), st.integers(0, 2**32))
def test_a_misread_inch_among_ordinary_errors_is_found(pair, wrong, seed):
    import random

    noise = random.Random(seed)
    pairs = all_pairs("ABCDEF")
    errors = {name: noise.uniform(-1.5, 1.5) for name in pairs}
    errors[pair] += wrong
    done = adjust("ABCDEF", tape(L_ROOM, pairs, errors.items()), limit=LIMIT)
    assert pair in {suspect.reading.name for suspect in done.suspects}
