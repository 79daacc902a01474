from itertools import combinations, pairwise, product

import pytest

from firstcourse.cutting import StockSize
from firstcourse.cutting.every_layout import GapGround, Region, least_area, least_over_layouts, most_gaps


def heights(across, gap, least, most):
    """Every stack of course heights that fills `across`."""
    if least <= across <= most:
        yield (across,)
    for height in range(least, min(most, across - gap) + 1):
        for rest in heights(across - gap - height, gap, least, most):
            yield (height, *rest)


def rows(region):
    """Every set of gap starts of one course."""
    places = range(region.length) if region.starts is None else region.starts
    for num in range(region.length // region.least + 1):
        for starts in combinations(places, num):
            ends = (-region.gap, *starts, region.length)
            if all(b - a - region.gap >= region.least for a, b in pairwise(ends)):
                yield starts


def brute_area(region):
    areas = []
    every_row = list(rows(region))
    for stack in heights(region.across, region.gap, region.least, region.most):
        for row in product(every_row, repeat=len(stack)):
            if all(abs(a - b) >= region.stagger for x, y in pairwise(row) for a in x for b in y):
                pairs = zip(stack, row, strict=True)
                areas.append(sum(h * (region.length - region.gap * len(r)) for h, r in pairs))
    return min(areas)


@pytest.mark.parametrize(
    "region",
    [
        Region(12, 11, 1, 3, 6, 4),
        Region(13, 9, 2, 3, 6, 5),
        Region(12, 14, 1, 4, 6, 2, (4, 6, 8)),
        Region(16, 10, 2, 3, 5, 3, (3, 6, 9, 12)),
        Region(9, 12, 1, 2, 6, 9, (2, 5)),
    ],
)
def test_no_layout_covers_less_than_the_least_area(region):
    assert least_area(region) <= brute_area(region)


def test_the_least_area_is_that_of_the_layout_with_most_gaps():
    # Courses of 3 + 1 + 3; the breaks of both together are no more than one course could have, which is two.
    region = Region(11, 7, 1, 3, 3, 5)
    assert least_area(region) == brute_area(region) == 2 * 3 * 11 - 2 * 3


def test_breaks_only_where_they_may_be():
    assert Region(20, 5, 1, 4, 5, 0, (1, 5, 9, 11, 18)).most_breaks(5) == 2
    assert Region(20, 5, 1, 4, 5, 0).most_breaks(5) == 3
    assert Region(5, 5, 1, 4, 5, 0).most_breaks(5) == 0


def test_a_field_counts_the_way_round_that_takes_least():
    one, other = Region(30, 20, 0, 5, 20, 0), Region(20, 20, 0, 5, 20, 0)
    assert least_over_layouts([[one, other]], StockSize("s", 20, 20, 1)).value == 1
    assert least_over_layouts([[one]], StockSize("s", 20, 20, 1)).value == 2


def test_a_mirrored_field_has_the_same_bound():
    starts = (3, 7, 15, 22, 26)
    mirrored = tuple(30 - 2 - start for start in starts)
    there, back = (Region(30, 25, 2, 3, 9, 4, places) for places in (starts, mirrored))
    assert least_area(there) == least_area(back)


@pytest.mark.parametrize(
    "region",
    [
        Region(12, 11, 1, 3, 6, 4),
        Region(13, 9, 2, 3, 6, 5),
        Region(12, 14, 1, 4, 6, 2, (4, 6, 8)),
        Region(16, 10, 2, 3, 5, 3, (3, 6, 9, 12)),
        Region(90, 120, 1, 8, 36, 16, (5, 21, 37, 53, 69)),
        Region(90, 120, 1, 8, 36, 0),
    ],
)
def test_the_closed_form_is_the_least_area(region):
    anywhere = ((0, region.length),)
    ground = GapGround(
        length=region.length,
        across=region.across,
        gap=region.gap,
        least=region.least,
        most=region.most,
        breaks=anywhere if region.starts is None else tuple((at, at) for at in region.starts),
        joints=((0, region.across),),
        stagger=region.stagger,
    )
    assert region.length * region.across - most_gaps(ground).area == least_area(region)


def test_joints_only_where_they_may_be():
    def gaps(*joints):
        ground = GapGround(length=50, across=40, gap=1, least=6, most=40, breaks=(), joints=joints)
        return most_gaps(ground)

    assert gaps((0, 40)).courses == 5
    assert gaps((10, 12), (14, 14), (30, 30)).courses == 3
    assert gaps().courses == 1 and gaps().area == 0
