"""Compiled inner loop of `patterns`: the most that the parts of one sheet can be worth. Whole numbers only."""

import numpy as np

from firstcourse.cutting.kernels import Ints, compiled


@compiled
def most_worth(
    xs: Ints, ys: Ints, rest_x: Ints, rest_y: Ints, at_x: Ints, at_y: Ints, price: Ints, table: Ints
) -> None:
    """Fill a table with the most that a rectangle's parts are worth, each kind of part in any number.

    Args:
        xs: Widths that sums of parts' sides can have, ascending from 0.
        ys: The same for heights.
        rest_x: (widths, widths) number of the greatest width not above the difference of two.
        rest_y: The same for heights.
        at_x: By kind of part, the number of its width; turned parts are kinds of their own.
        at_y: The same for heights.
        price: Of each kind.
        table: Receives (widths, heights) the worth.
    """
    table[:] = 0
    for kind in range(len(price)):
        table[at_x[kind], at_y[kind]] = max(table[at_x[kind], at_y[kind]], price[kind])
    num_x, num_y = len(xs), len(ys)
    # A cut just beyond a place that is worth no more than the place before it gains nothing.
    gains = np.zeros(num_x, np.int64)
    for i in range(1, num_x):
        row, before = table[i], table[i - 1]
        for j in range(num_y):
            row[j] = max(row[j], before[j])
        for p in range(1, i):
            if 2 * xs[p] > xs[i]:
                break
            if gains[p]:
                first, second = table[p], table[rest_x[i, p]]
                for j in range(num_y):
                    row[j] = max(row[j], first[j] + second[j])
        for j in range(1, num_y):
            best = max(row[j], row[j - 1])
            for q in range(1, j):
                if 2 * ys[q] > ys[j]:
                    break
                if row[q] > row[q - 1]:
                    best = max(best, row[q] + row[rest_y[j, q]])
            row[j] = best
        for j in range(num_y):
            if row[j] > before[j]:
                gains[i] = 1
