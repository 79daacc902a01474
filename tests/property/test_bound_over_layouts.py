"""The bound over every layout stays below every plan found, and does not depend on the hand of a room."""

from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.cutting import StockSize
from firstcourse.cutting.choice import choose
from firstcourse.cutting.choices import Arrangement, ChoiceField, Course
from firstcourse.cutting.every_layout import Region, least_over_layouts

GAP, LEAST, STAGGER = 2, 8, 16
SHEET = StockSize("sheet", 60, 36, 1)

walls = st.lists(st.tuples(st.integers(30, 110), st.integers(20, 90), st.integers(8, 23)), min_size=1, max_size=3)


def course(length, height, studs):
    breaks = (-1, *studs, length + 1)
    intervals = [
        (i, j, ((breaks[j] - breaks[i] - GAP, height),))
        for i in range(len(breaks))
        for j in range(i + 1, len(breaks))
        if LEAST <= breaks[j] - breaks[i] - GAP <= SHEET.w
    ]
    return Course(breaks, tuple(intervals))


def field(name, length, across, first):
    """A wall with studs every 16, in courses as high as they go or alike, and the region it fills."""
    studs = [stud for stud in range(first, length, 16) if LEAST + 1 <= stud <= length - LEAST - 1]
    num = -(-(across + GAP) // (SHEET.h + GAP))
    stacks = set()
    for courses in (num, num + 1):
        even, rest = divmod(across - GAP * (courses - 1), courses)
        stacks.add(tuple([even + 1] * rest + [even] * (courses - rest)))
    stacks = sorted(stack for stack in stacks if min(stack) >= LEAST and max(stack) <= SHEET.h)
    arrangements = tuple(Arrangement(tuple(course(length, h, studs) for h in stack), STAGGER) for stack in stacks)
    starts = tuple(stud - GAP // 2 for stud in studs)
    return ChoiceField(name, arrangements), Region(length, across, GAP, LEAST, SHEET.h, STAGGER, starts)


@settings(max_examples=25, deadline=None)
@given(walls)
def test_no_plan_found_takes_fewer_sheets_than_the_bound(sizes):
    made = [field(str(n), *size) for n, size in enumerate(sizes)]
    bound = least_over_layouts([[region] for _, region in made], SHEET).value
    assert bound <= len(choose([laid for laid, _ in made], [SHEET], effort=0).sheets)


@given(walls)
@settings(deadline=None)
def test_a_mirrored_room_has_the_same_bound(sizes):
    regions = [field(str(n), *size)[1] for n, size in enumerate(sizes)]
    mirrored = [
        Region(r.length, r.across, r.gap, r.least, r.most, r.stagger,
               tuple(r.length - r.gap - start for start in r.starts or ()))
        for r in regions
    ]  # fmt: skip
    assert least_over_layouts([[r] for r in regions], SHEET) == least_over_layouts([[r] for r in mirrored], SHEET)
