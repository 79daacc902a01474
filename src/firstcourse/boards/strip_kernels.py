"""Compiled inner loop of `strips`: the boards between many pairs of places along a course, all at once."""

import numpy as np
from numpy.typing import NDArray

from firstcourse.cutting import Ints, compiled

Floats = NDArray[np.float64]


@compiled
def boxes_between(
    places: Floats, shape_first: Ints, shapes: Floats, meet_first: Ints, meets: Ints, starts: Ints, ends: Ints,
    least_area2: float, pair: Ints, boxes: Ints,
) -> int:  # fmt: skip
    """Bounding boxes of the connected parts between each two places, by pair, in the order of `Strip.boxes`.

    Args:
        places: Ends of the slabs along u, ascending [ticks].
        shape_first: `shape_first[s] .. shape_first[s + 1]` are the trapezoids of slab s.
        shapes: Trapezoids as `Trapezoid` has them [ticks].
        meet_first: `meet_first[t] .. meet_first[t + 1]` in `meets` are the trapezoids left of t that it meets.
        meets: Numbers of trapezoids.
        starts: Left end of each pair [ticks].
        ends: Right end of each, of the same shape.
        least_area2: Parts with less than half of this area are left out [ticks²].
        pair: Receives the number of each box's pair; room for as many as pairs times trapezoids.
        boxes: Receives left, lower, right and upper [ticks]; as many rows.

    Returns:
        Number of boxes.
    """
    slabs, count = len(shape_first) - 1, 0
    part = np.zeros(len(shapes), np.int64)
    lasts = np.zeros(len(shapes), np.int64)
    for number in range(len(starts)):
        start, end = starts[number], ends[number]
        first = max(0, np.searchsorted(places, start, side="right") - 1)
        last = min(np.searchsorted(places, end, side="left"), slabs) - 1
        if first > last:
            continue
        begin, stop = shape_first[first], shape_first[last + 1]
        for shape in range(begin, stop):
            part[shape] = shape
            if shape >= shape_first[first + 1]:
                for touched in meets[meet_first[shape] : meet_first[shape + 1]]:
                    one, other = shape, touched
                    while part[one] != one:
                        one = part[one]
                    while part[other] != other:
                        other = part[other]
                    part[max(one, other)] = min(one, other)
        for shape in range(begin, stop):
            root = shape
            while part[root] != root:
                root = part[root]
            part[shape] = root
            lasts[root] = shape
        for final in range(begin, stop):
            root = part[final]
            if lasts[root] != final:
                continue
            left, right, lower, upper, area2 = np.inf, -np.inf, np.inf, -np.inf, 0.0
            for shape in range(root, final + 1):
                if part[shape] != root:
                    continue
                near, far, low_near, low_far, high_near, high_far = shapes[shape]
                left, right = min(left, near), max(right, far)
                a, b = max(near, float(start)), min(far, float(end))
                low_a = low_near if a <= near else low_near + (a - near) / (far - near) * (low_far - low_near)
                low_b = low_far if b >= far else low_near + (b - near) / (far - near) * (low_far - low_near)
                high_a = high_near if a <= near else high_near + (a - near) / (far - near) * (high_far - high_near)
                high_b = high_far if b >= far else high_near + (b - near) / (far - near) * (high_far - high_near)
                lower, upper = min(lower, low_a, low_b), max(upper, high_a, high_b)
                area2 += (high_a - low_a + high_b - low_b) * (b - a)
            if area2 >= least_area2:
                pair[count] = number
                boxes[count, 0] = np.int64(np.rint(max(left, float(start))))
                boxes[count, 1] = np.int64(np.rint(lower))
                boxes[count, 2] = np.int64(np.rint(min(right, float(end))))
                boxes[count, 3] = np.int64(np.rint(upper))
                count += 1
    return count
