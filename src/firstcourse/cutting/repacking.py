"""Compiled inner loop of `cut`: fitting blanks into a fixed set of sheets by emptying a few and packing again.

What does not fit lies in a heap. A step empties up to four sheets, wholly or down to some of the blanks placed
first, packs what was in them and the heap in a new order, and keeps the result if the heap shrank, or grew less
than a temperature allows. It ends when the heap is empty. Whole numbers only and one random sequence of our own:
the same arguments give the same result on every machine, and more steps continue the same sequence.
"""

import numpy as np

from firstcourse.cutting.kernels import CHANCES, Ints, compiled, draw

CYCLE = 10_000
"""Steps from the highest temperature to none; then it starts again, so that the sequence knows no end."""
HEAT = 5
"""Highest temperature in thousandths of a sheet."""
MOST_EMPTIED = 4

X, Y, TURNED, ACROSS, FREE_W, FREE_H = range(6)
"""Columns of a placement: where, how it lies, which cut came first, the free rectangle it took."""


@compiled
def split_across(split: int, right: int, above: int, wide: int, high: int, bw: int, bh: int) -> bool:
    """Whether the horizontal cut is made first, by one of five ways to cut."""
    if split == 0:
        return right < above
    if split == 1:
        return right >= above
    if split == 4:
        return max(above * wide, right * bh) >= max(right * high, above * bw)
    return split == 2


@compiled
def sort_by(key: Ints, items: Ints, start: int, stop: int) -> None:
    """Sort a stretch of `items` by falling `key`, equal ones as they stand."""
    for i in range(start + 1, stop):
        item, value = items[i], key[items[i]]
        j = i
        while j > start and key[items[j - 1]] < value:
            items[j] = items[j - 1]
            j -= 1
        items[j] = item


@compiled
def refit(
    w: Ints, h: Ints, turns: Ints, sort: Ints, allowed: Ints, room: Ints, kind: Ints, first: Ints, after: Ints,
    load: Ints, lies: Ints, heap: Ints, num_heap: int, seed: Ints, step: int, last: int, chance: Ints,
) -> tuple[int, int]:  # fmt: skip
    """Fit all blanks into the given sheets, changing the state in place.

    Args:
        w: Widths of the blanks.
        h: Heights of the blanks.
        turns: Whether each blank may be turned.
        sort: (orders, blanks) keys; the blanks are packed by one of them, largest first.
        allowed: (blanks, kinds of sheet) whether it may be cut from it.
        room: (kinds of sheet, 3) width, height, whether blanks may lie turned on it.
        kind: Kind of each sheet.
        first: State: first blank placed on each sheet, or -1.
        after: State: the blank placed after each on its sheet, or -1.
        load: State: area filled on each sheet.
        lies: State: (blanks, 6) placements.
        heap: State: blanks that lie on no sheet.
        num_heap: How many of them.
        seed: One number, changed.
        step: Number of the first step.
        last: Number of the step to stop before.
        chance: `CHANCES` values -1024 ln(u).

    Returns:
        Blanks left in the heap, and the number of the step after the last one done.
    """
    num, sheets = len(w), len(kind)
    area = w * h
    whole = room[:, 0] * room[:, 1]
    heat = np.max(whole) * HEAT // 1000
    lost = 0
    for i in range(num_heap):
        lost += area[heap[i]]
    picked = np.zeros(MOST_EMPTIED, np.int64)
    rest, order = np.zeros(num, np.int64), np.zeros(MOST_EMPTIED, np.int64)
    fresh, place, out = np.zeros((num, 6), np.int64), np.zeros(num, np.int64), np.zeros(num, np.int64)
    slot, filled = np.zeros(num, np.int64), np.zeros(MOST_EMPTIED, np.int64)
    free = np.zeros((2 * num + 2 * MOST_EMPTIED, 5), np.int64)
    while num_heap > 0 and step < last:
        emptied = min(sheets, 1 + draw(seed, MOST_EMPTIED))
        for i in range(emptied):
            pick, again = -1, True
            while again:
                pick = draw(seed, sheets)
                if draw(seed, 2):
                    other = draw(seed, sheets)
                    if load[other] * whole[kind[pick]] < load[pick] * whole[kind[other]]:
                        pick = other
                again = False
                for j in range(i):
                    again = again or picked[j] == pick
            picked[i] = pick
        partly = draw(seed, 3) == 0
        num_free = num_rest = num_placed = 0
        for i in range(emptied):
            sheet = picked[i]
            free[num_free] = (i, 0, 0, room[kind[sheet], 0], room[kind[sheet], 1])
            num_free += 1
            filled[i] = 0
            keep = 0
            if partly:
                held = 0
                blank = first[sheet]
                while blank >= 0:
                    held += 1
                    blank = after[blank]
                keep = draw(seed, held + 1)
            blank = first[sheet]
            while blank >= 0:
                if keep == 0:
                    rest[num_rest] = blank
                    num_rest += 1
                else:
                    keep -= 1
                    index = num_free - 1
                    while (
                        free[index, 0] != i
                        or free[index, 1] != lies[blank, X]
                        or free[index, 2] != lies[blank, Y]
                        or free[index, 3] != lies[blank, FREE_W]
                        or free[index, 4] != lies[blank, FREE_H]
                    ):
                        index -= 1
                    num_free -= 1
                    free[index] = free[num_free]
                    bw, bh = (h[blank], w[blank]) if lies[blank, TURNED] else (w[blank], h[blank])
                    right, above = lies[blank, FREE_W] - bw, lies[blank, FREE_H] - bh
                    if right > 0:
                        free[num_free] = (i, lies[blank, X] + bw, lies[blank, Y], right,
                                          bh if lies[blank, ACROSS] else lies[blank, FREE_H])  # fmt: skip
                        num_free += 1
                    if above > 0:
                        free[num_free] = (i, lies[blank, X], lies[blank, Y] + bh,
                                          lies[blank, FREE_W] if lies[blank, ACROSS] else bw, above)  # fmt: skip
                        num_free += 1
                    fresh[num_placed] = lies[blank]
                    place[num_placed] = blank
                    slot[num_placed] = i
                    num_placed += 1
                    filled[i] += area[blank]
                blank = after[blank]
        for i in range(num_heap):
            rest[num_rest] = heap[i]
            num_rest += 1
        manner = draw(seed, 4 * 3 * 5)
        by, fit, split = manner % 4, manner // 4 % 3, manner // 12
        sort_by(sort[by], rest, 0, num_rest)
        for i in range(num_rest - 1):
            if draw(seed, 5) == 0:
                rest[i], rest[i + 1] = rest[i + 1], rest[i]
        num_out = left = 0
        for i in range(num_rest):
            blank = rest[i]
            best, best_score, best_turned = -1, 0, 0
            for index in range(num_free):
                on = kind[picked[free[index, 0]]]
                if not allowed[blank, on]:
                    continue
                wide, high = free[index, 3], free[index, 4]
                for turned in range(1 + (turns[blank] and room[on, 2])):
                    bw, bh = (h[blank], w[blank]) if turned else (w[blank], h[blank])
                    if bw > wide or bh > high:
                        continue
                    if fit == 0:
                        score = wide * high
                    elif fit == 1:
                        score = min(wide - bw, high - bh)
                    else:
                        score = max(wide - bw, high - bh)
                    if best < 0 or score < best_score:
                        best, best_score, best_turned = index, score, turned
            if best < 0:
                out[num_out] = blank
                num_out += 1
                left += area[blank]
                continue
            on, x, y, wide, high = free[best]
            num_free -= 1
            free[best] = free[num_free]
            bw, bh = (h[blank], w[blank]) if best_turned else (w[blank], h[blank])
            right, above = wide - bw, high - bh
            across = 1 if split_across(split, right, above, wide, high, bw, bh) else 0
            if right > 0:
                free[num_free] = (on, x + bw, y, right, bh if across else high)
                num_free += 1
            if above > 0:
                free[num_free] = (on, x, y + bh, wide if across else bw, above)
                num_free += 1
            fresh[num_placed] = (x, y, best_turned, across, wide, high)
            place[num_placed] = blank
            slot[num_placed] = on
            num_placed += 1
            filled[on] += area[blank]
        warmth = heat * (CYCLE - step % CYCLE) // CYCLE
        step += 1
        if left - lost <= warmth * chance[draw(seed, CHANCES)] // 1024:
            lost = left
            num_heap = num_out
            heap[:num_out] = out[:num_out]
            for i in range(emptied):
                order[i] = -1
                load[picked[i]] = filled[i]
                first[picked[i]] = -1
            for i in range(num_placed):
                blank = place[i]
                lies[blank] = fresh[i]
                after[blank] = -1
                if order[slot[i]] < 0:
                    first[picked[slot[i]]] = blank
                else:
                    after[order[slot[i]]] = blank
                order[slot[i]] = blank
    return num_heap, step
