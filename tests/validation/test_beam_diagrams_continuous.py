"""Published beam diagrams: continuous beams of equal spans under uniform load, and two unequal ones.

Known = read, in an engineering reference that reprints the usual diagrams; one span of two loaded is from memory.
The diagrams print three or four digits, so half of the last digit is exact. Misprint there: four spans, the moment
in the third is printed 0.805, and its shear of 0.518 gives about 0.0805; the shear beside the second support is
printed 0.0554, and equilibrium gives 1 - 0.446 = 0.554.
"""

import pytest

from firstcourse.frames.continuous import all_loaded, of_loads, worst_pattern

TWO, THREE, FOUR = (1.0,) * 2, (1.0,) * 3, (1.0,) * 4


@pytest.mark.parametrize(
    ("spans", "loads", "moment", "shear", "reaction", "deflection"),
    [
        (TWO, (1, 1), 0.125, 0.625, 1.25, 1 / 185),
        (TWO, (1, 0), 49 / 512, 0.5625, 0.625, 0.0092),
        (THREE, (1, 1, 1), 0.100, 0.600, 1.100, 0.0069),
        (THREE, (1, 1, 0), 0.1167, 0.617, 1.200, 0.0059),
        (FOUR, (1, 0, 1, 0), 0.0996, 0.554, 0.572, 0.0097),
    ],
    ids=["two, all", "two, one (memory)", "three, all", "three, two to one side", "four, two"],
)
def test_equal_spans(spans, loads, moment, shear, reaction, deflection):
    found = of_loads(spans, tuple(map(float, loads)))
    assert found.moment == pytest.approx(moment, abs=0.00005)
    assert found.shear == pytest.approx(shear, abs=0.0006)
    assert found.reaction == pytest.approx(reaction, abs=0.0006)
    assert found.deflection == pytest.approx(deflection, abs=0.00005)


@pytest.mark.parametrize(("a", "b"), [(12.0, 9.0), (10.0, 4.0)])
def test_two_unequal_spans(a, b):
    """Moment over the middle support: w (a³ + b³) / (8 (a + b))."""
    middle = (a**3 + b**3) / (8 * (a + b))
    assert all_loaded((a, b)).moment * max(a, b) ** 2 == pytest.approx(middle, rel=1e-12)


def test_one_span_is_the_simple_one():
    found = worst_pattern((7.0,))
    assert found.moment == pytest.approx(1 / 8)
    assert found.shear == found.reaction == pytest.approx(1 / 2)
    assert found.deflection == pytest.approx(5 / 384)


def test_load_where_it_does_most_is_never_less_than_load_everywhere():
    for spans in (TWO, THREE, FOUR, (10.0, 6.0), (8.0, 12.0, 5.0)):
        everywhere, worst = all_loaded(spans), worst_pattern(spans)
        assert worst.moment >= everywhere.moment and worst.shear >= everywhere.shear
        assert worst.reaction >= everywhere.reaction and worst.deflection >= everywhere.deflection
