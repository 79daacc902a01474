"""Compiled inner loop of `choice`: laying one course again and cutting only the sheets it came from again.

The sheets are given. What does not fit lies in a heap. A step lays one course or one field again, or none; takes
apart the sheets that held its blanks and a few others; and packs what was on them, the new blanks and the heap
into these sheets in some order. The result is kept if it is better, and now and then if it is worse. Whole
numbers only and one random sequence of our own: the same arguments give the same result on every machine.
"""

from typing import Any

import numpy as np

from firstcourse.cutting.kernels import Ints, compiled, draw, rearrange, repattern

ITEM_W, ITEM_H, ITEM_MASK, ITEM_FIELD, ITEM_COURSE, ITEM_CELL = range(6)
"""Columns of a blank: its size, the rooms it may be cut from, field, course, and which of the kernel's blanks."""
X, Y, TURNED, ACROSS, FREE_W, FREE_H = range(6)
"""Columns of a place: where, how it lies, which cut came first, the free rectangle it took."""
CYCLE = 25_000
"""Steps from the highest temperature to the lowest; then it starts again."""


@compiled
def fill(
    item: Ints, order: Ints, num: int, sheets: Ints, num_sheets: int, room_of: Ints, rooms: Ints, least: int,
    fit: int, split: int, free: Ints, seat: Ints, lies: Ints, cuts: Ints, largest: Ints,
) -> None:  # fmt: skip
    """Pack blanks greedily into the given empty sheets, each in the corner of the free rectangle that fits best.

    Args:
        item: The blanks.
        order: Their numbers in the order of packing.
        num: How many of them.
        sheets: The sheets.
        num_sheets: How many of them.
        room_of: Room of every sheet.
        rooms: (width, height, whether blanks may be turned, cost) of every room.
        least: Free rectangles narrower than this are passed over.
        fit: Measure of fit: area, shorter or longer rest.
        split: Which of five ways to cut.
        free: Room for free rectangles (sheet, x, y, w, h).
        seat: Receives by blank the position in `sheets` it is cut from; -1 if none holds it.
        lies: Receives by blank where.
        cuts: Receives by position the number of cuts.
        largest: Receives by position the area of the largest free rectangle left.
    """
    num_free = 0
    for s in range(num_sheets):
        room = room_of[sheets[s]]
        free[num_free] = (s, 0, 0, rooms[room, 0], rooms[room, 1])
        cuts[s] = largest[s] = 0
        num_free += 1
    for place in range(num):
        blank = order[place]
        w, h, mask = item[blank, ITEM_W], item[blank, ITEM_H], item[blank, ITEM_MASK]
        best, best_score, best_turned = -1, 0, 0
        for index in range(num_free):
            room = room_of[sheets[free[index, 0]]]
            if not mask >> room & 1:
                continue
            for turned in range(1 + rooms[room, 2]):
                right = free[index, 3] - (h if turned else w)
                above = free[index, 4] - (w if turned else h)
                if right < 0 or above < 0:
                    continue
                if fit == 0:
                    score = free[index, 3] * free[index, 4]
                elif fit == 1:
                    score = min(right, above)
                else:
                    score = max(right, above)
                if best < 0 or score < best_score:
                    best, best_score, best_turned = index, score, turned
        if best < 0:
            seat[blank] = -1
            continue
        s, x, y, fw, fh = free[best, 0], free[best, 1], free[best, 2], free[best, 3], free[best, 4]
        num_free -= 1
        free[best] = free[num_free]
        bw, bh = (h, w) if best_turned else (w, h)
        right, above = fw - bw, fh - bh
        if split == 0:
            across = right < above
        elif split == 1:
            across = right >= above
        elif split == 4:
            across = max(above * fw, right * bh) >= max(right * fh, above * bw)
        else:
            across = split == 2
        cuts[s] += (right > 0) + (above > 0)
        if right >= least:
            free[num_free] = (s, x + bw, y, right, bh if across else fh)
            num_free += 1
        if above >= least:
            free[num_free] = (s, x, y + bh, fw if across else bw, above)
            num_free += 1
        seat[blank] = s
        lies[blank] = (x, y, best_turned, 1 if across else 0, fw, fh)
    for index in range(num_free):
        s = free[index, 0]
        largest[s] = max(largest[s], free[index, 3] * free[index, 4])


@compiled
def same_breaks(
    field: int, old: int, new: int, course_first: Ints, kind: Ints, break_first: Ints, position: Ints,
    cell_first: Ints, blank_num: Ints, chosen: Ints, num_chosen: Ints,
) -> bool:  # fmt: skip
    """Whether the courses of another arrangement can be broken at the very same places."""
    courses = course_first[old + 1] - course_first[old]
    if course_first[new + 1] - course_first[new] != courses:
        return False
    for course in range(courses):
        k, m = kind[course_first[old] + course], kind[course_first[new] + course]
        breaks = break_first[m + 1] - break_first[m]
        if break_first[k + 1] - break_first[k] != breaks:
            return False
        for i in range(num_chosen[field, course]):
            at = chosen[field, course, i]
            if position[break_first[k] + at] != position[break_first[m] + at]:
                return False
            if i and blank_num[cell_first[m] + chosen[field, course, i - 1] * breaks + at] < 0:
                return False
    return True


@compiled
def shift(
    field: int, course: int, apart: int, kinds: Ints, break_first: Ints, position: Ints, cell_first: Ints,
    blank_num: Ints, chosen: Ints, num_chosen: Ints, seed: Ints,
) -> bool:  # fmt: skip
    """Move one break of a course a little; False if that is not legal."""
    k = kinds[course]
    first, breaks = break_first[k], break_first[k + 1] - break_first[k]
    i = 1 + draw(seed, num_chosen[field, course] - 2)
    at = chosen[field, course, i] + draw(seed, 13) - 6
    before, behind = chosen[field, course, i - 1], chosen[field, course, i + 1]
    if not before < at < behind:
        return False
    if blank_num[cell_first[k] + before * breaks + at] < 0 or blank_num[cell_first[k] + at * breaks + behind] < 0:
        return False
    for other in (course - 1, course + 1):
        if 0 <= other < len(kinds):
            start = break_first[kinds[other]]
            for j in range(1, num_chosen[field, other] - 1):
                if abs(position[start + chosen[field, other, j]] - position[first + at]) < apart:
                    return False
    chosen[field, course, i] = at
    return True


@compiled
def relay(
    tables: Any, rooms: Ints, least: int, arrangement: Ints, chosen: Ints, num_chosen: Ints, room_of: Ints,
    items: Ints, place: Ints, member: Ints, num_member: Ints, cuts: Ints, seed: Ints, steps: int, hot: int,
    cold: int, weights: Ints, chance: Ints,
) -> bool:  # fmt: skip
    """Lay and cut again in place until the heap is empty, or, where it is from the start, for all steps.

    Objective: `weights[0]` for a heap of one sheet's area, `weights[1]` per blank in it, `weights[2]` per cut and
    `weights[3]` per blank; less `weights[4]` for the square of the largest free rectangle of each sheet, in areas
    of a sheet, so that what is left gathers where a blank of the heap may fit. With an empty heap the best state
    found is left, else the last.

    Args:
        tables: The arrays that describe the fields, as for `kernels.anneal`.
        rooms: (width, height, whether blanks may be turned, cost) of every room.
        least: Least side of any blank.
        arrangement: State: arrangement of every field.
        chosen: State: breaks of every course.
        num_chosen: State: how many.
        room_of: Room of every sheet.
        items: State: the blanks, by slot.
        place: State: by slot, where it lies on its sheet.
        member: State: by sheet, its slots in the order of packing; the last line is the heap.
        num_member: State: by sheet, how many.
        cuts: State: by sheet, the number of cuts.
        seed: One number, changed.
        steps: Steps to do.
        hot: Highest temperature in units of the objective.
        cold: Lowest temperature.
        weights: Five numbers.
        chance: `CHANCES` values -1024 ln(u).

    Returns:
        Whether the heap is empty.
    """
    (field_first, goes_with, course_first, stagger, allowed, kind, break_first, position, cell_first, blank_first,
     blank_num, blank_w, blank_h) = tables  # fmt: skip
    fields, sheets, slots = len(goes_with), len(room_of), len(items)
    heap, fewest_cuts = sheets, num_member[sheets] == 0
    if sheets == 0:
        return bool(fewest_cuts)
    reach = np.zeros(len(position) + 1, np.int64)
    touched, is_touched = np.zeros(sheets + 1, np.int64), np.zeros(sheets + 1, np.int64)
    pool, lies = np.zeros((slots, 6), np.int64), np.zeros((slots, 6), np.int64)
    order, seat = np.zeros(slots, np.int64), np.zeros(slots, np.int64)
    key = np.zeros(slots, np.int64)
    free = np.zeros((2 * slots + sheets + 2, 5), np.int64)
    new_cuts, new_left = np.zeros(sheets + 1, np.int64), np.zeros(sheets + 1, np.int64)
    left = np.zeros(sheets + 1, np.int64)  # known once a sheet has been cut again
    new_c, new_n, changed = chosen.copy(), num_chosen.copy(), np.zeros(fields, np.int64)
    new_a = arrangement.copy()
    spare, num_spare = np.zeros(slots, np.int64), 0
    used = np.zeros(slots, np.int64)
    for s in range(sheets + 1):
        for i in range(num_member[s]):
            used[member[s, i]] = 1
    for slot in range(slots):
        if not used[slot]:
            spare[num_spare] = slot
            num_spare += 1
    area = 1
    for s in range(sheets):
        area = max(area, rooms[room_of[s], 0] * rooms[room_of[s], 1])
    best_a, best_c, best_n = arrangement.copy(), chosen.copy(), num_chosen.copy()
    best_items, best_place, best_member = items.copy(), place.copy(), member.copy()
    best_num, best_cuts, best_gain, gain = num_member.copy(), cuts.copy(), 0, 0
    for step in range(steps):
        heat = hot + (cold - hot) * (step % CYCLE) // CYCLE
        move = draw(seed, 16)
        field, course, legal = draw(seed, fields), -1, True
        for other in range(fields):
            changed[other] = 0
        if move < 4:
            ways = field_first[field + 1] - field_first[field]
            offset = draw(seed, ways)
            if move > 1:
                offset = min(max(arrangement[field] - field_first[field] + draw(seed, 17) - 8, 0), ways - 1)
            alone, keep = draw(seed, 4), move > 0
            for other in range(fields):
                if other == field or (not alone and goes_with[other] == goes_with[field]):
                    changed[other] = 1
                    new_a[other] = field_first[other] + offset
                    if keep and same_breaks(
                        other, arrangement[other], new_a[other], course_first, kind, break_first, position,
                        cell_first, blank_num, chosen, num_chosen,
                    ):  # fmt: skip
                        continue
                    if not rearrange(other, new_a[other], course_first, stagger, kind, break_first, position,
                                     cell_first, blank_num, new_c, new_n, seed, reach):  # fmt: skip
                        legal = False
                        break
        elif move < 10:
            a = arrangement[field]
            kinds = kind[course_first[a] : course_first[a + 1]]
            course = draw(seed, len(kinds))
            changed[field] = 1
            if move < 7 and num_chosen[field, course] > 2:
                legal = shift(field, course, stagger[a], kinds, break_first, position, cell_first, blank_num,
                              new_c, new_n, seed)  # fmt: skip
            else:
                legal = repattern(
                    field, course, course > 0, course + 1 < len(kinds), stagger[a], kinds, break_first, position,
                    cell_first, blank_num, new_c, new_n, seed, reach,
                )  # fmt: skip
        num_touched = 0
        accepted = False
        if legal:
            for s in range(sheets + 1):
                is_touched[s] = 0
            if move < 10:
                for s in range(sheets):
                    for i in range(num_member[s]):
                        slot = member[s, i]
                        f = items[slot, ITEM_FIELD]
                        if changed[f] and (course < 0 or items[slot, ITEM_COURSE] == course):
                            is_touched[s] = 1
                            touched[num_touched] = s
                            num_touched += 1
                            break
            extra = draw(seed, 3) if num_touched else 1 + draw(seed, 3)
            for _ in range(extra):
                s = draw(seed, sheets)
                if not is_touched[s]:
                    is_touched[s] = 1
                    touched[num_touched] = s
                    num_touched += 1
            touched[num_touched] = heap
            num = 0
            before = 0
            for t in range(num_touched + 1):
                s = touched[t]
                if s < heap:
                    before += weights[2] * cuts[s] - weights[4] * (left[s] * left[s] // area) // area
                for i in range(num_member[s]):
                    slot = member[s, i]
                    before += weights[3]
                    if s == heap:
                        before += weights[1] + weights[0] * items[slot, ITEM_W] * items[slot, ITEM_H] // area
                    f = items[slot, ITEM_FIELD]
                    if not (changed[f] and (course < 0 or items[slot, ITEM_COURSE] == course)):
                        pool[num] = items[slot]
                        num += 1
            for f in range(fields):
                if not changed[f]:
                    continue
                first = course_first[new_a[f]]
                for c in range(course_first[new_a[f] + 1] - first):
                    if course >= 0 and c != course:
                        continue
                    k = kind[first + c]
                    breaks = break_first[k + 1] - break_first[k]
                    for i in range(new_n[f, c] - 1):
                        cell = cell_first[k] + new_c[f, c, i] * breaks + new_c[f, c, i + 1]
                        for blank in range(blank_first[cell], blank_first[cell] + blank_num[cell]):
                            pool[num] = (blank_w[blank], blank_h[blank], allowed[new_a[f]], f, c,
                                         blank - blank_first[cell] + 1024 * i)  # fmt: skip
                            num += 1
            manner, noise = draw(seed, 60), draw(seed, 4)
            noise = 1 if noise < 2 else (6 if noise == 2 else 24)
            measure = manner % 4
            for i in range(num):
                long, short = max(pool[i, ITEM_W], pool[i, ITEM_H]), min(pool[i, ITEM_W], pool[i, ITEM_H])
                if measure == 0:
                    value = long * short
                elif measure == 1:
                    value = (long << 14) + short
                elif measure == 2:
                    value = (short << 14) + long
                else:
                    value = (long + short) << 10
                value = value * (32 + draw(seed, noise))
                j = i
                while j > 0 and key[j - 1] < value:
                    key[j] = key[j - 1]
                    order[j] = order[j - 1]
                    j -= 1
                key[j] = value
                order[j] = i
            fill(pool, order, num, touched, num_touched, room_of, rooms, least, manner // 4 % 3, manner // 12,
                 free, seat, lies, new_cuts, new_left)  # fmt: skip
            after = weights[3] * num
            for t in range(num_touched):
                after += weights[2] * new_cuts[t] - weights[4] * (new_left[t] * new_left[t] // area) // area
            for i in range(num):
                if seat[i] < 0:
                    after += weights[1] + weights[0] * pool[i, ITEM_W] * pool[i, ITEM_H] // area
            if after - before <= heat * chance[draw(seed, 1024)] // 1024:
                accepted = True
                gain += before - after
                for t in range(num_touched + 1):
                    s = touched[t]
                    for i in range(num_member[s]):
                        spare[num_spare] = member[s, i]
                        num_spare += 1
                    num_member[s] = 0
                    if s < heap:
                        cuts[s], left[s] = new_cuts[t], new_left[t]
                for p in range(num):
                    i = order[p]
                    s = heap if seat[i] < 0 else touched[seat[i]]
                    num_spare -= 1
                    slot = spare[num_spare]
                    items[slot] = pool[i]
                    place[slot] = lies[i]
                    member[s, num_member[s]] = slot
                    num_member[s] += 1
                for f in range(fields):
                    if changed[f]:
                        arrangement[f] = new_a[f]
                        chosen[f] = new_c[f]
                        num_chosen[f] = new_n[f]
                if num_member[heap] == 0:
                    if not fewest_cuts:
                        return True
                    if gain > best_gain:
                        best_gain = gain
                        best_a[:], best_c[:], best_n[:] = arrangement, chosen, num_chosen
                        best_items[:], best_place[:], best_member[:] = items, place, member
                        best_num[:], best_cuts[:] = num_member, cuts
        if not accepted:
            for f in range(fields):
                if changed[f]:
                    new_a[f] = arrangement[f]
                    new_c[f] = chosen[f]
                    new_n[f] = num_chosen[f]
    if fewest_cuts:
        arrangement[:], chosen[:], num_chosen[:] = best_a, best_c, best_n
        items[:], place[:], member[:] = best_items, best_place, best_member
        num_member[:], cuts[:] = best_num, best_cuts
    return bool(fewest_cuts)
