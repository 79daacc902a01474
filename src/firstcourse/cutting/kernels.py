"""Compiled inner loops of `choice`: a greedy edge-to-edge packer and an annealing over break patterns.

Whole numbers only, one random sequence of our own: the same arguments give the same result on every machine.
Compiled code is kept on disk; `python -m firstcourse.cutting.kernels` compiles it once, so that no plan waits.

The arrays that describe fields (`Tables` in `choice` builds them):

- `field_first[f] .. field_first[f + 1]`: arrangements of field f; `goes_with[f]`: fields whose arrangements go
  together.
- `course_first[a] .. course_first[a + 1]`: courses of arrangement a; `stagger[a]`: least distance of breaks in
  neighbouring courses; `allowed[a]`: the rooms it may be cut from, one bit each; `kind[c]`: the course kind of
  course c.
- `break_first[k] .. break_first[k + 1]`: break positions of kind k in `position`; `cell_first[k]`: where its
  square table of intervals starts; `blank_first[cell]`, `blank_num[cell]`: its blanks (-1: no legal interval).
- `blank_w`, `blank_h`: sizes of blanks.

A state is `arrangement[f]` and, per field and course, the chosen breaks `chosen[f, c, 0 .. num_chosen[f, c]]`,
ends included.
"""

from collections.abc import Callable
from typing import Any, cast

import numba
import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]
compiled = cast("Callable[[Callable[..., Any]], Callable[..., Any]]", numba.njit(cache=True))

NUM_MANNERS = 60
"""Ways to pack: 4 orders x 3 measures of fit x 5 ways to cut."""
CHANCES = 1024
"""Entries of the table of acceptance: -1024 ln(u) for evenly spaced u."""


@compiled
def draw(seed: Ints, num: int) -> int:
    """Next of a linear congruential sequence, 0 <= value < num. Constants of Knuth's MMIX, from memory."""
    seed[0] = seed[0] * 6364136223846793005 + 1442695040888963407
    value: int = ((seed[0] >> 33) & 0x7FFFFFFF) % num
    return value


@compiled
def in_order(w: Ints, h: Ints, num: int, order: int, keys: Ints, rank: Ints) -> None:
    """Fill `rank` with the blanks, largest first by area, longer side, shorter side or girth."""
    for i in range(num):
        long, short = max(w[i], h[i]), min(w[i], h[i])
        if order == 0:
            key = long * short
        elif order == 1:
            key = (long << 20) + short
        elif order == 2:
            key = (short << 20) + long
        else:
            key = long + short
        j = i
        while j > 0 and keys[j - 1] < key:
            keys[j] = keys[j - 1]
            rank[j] = rank[j - 1]
            j -= 1
        keys[j] = key
        rank[j] = i


@compiled
def pack(
    w: Ints, h: Ints, mask: Ints, num: int, rooms: Ints, num_kept: int, use_kept: int, buy: Ints, least: int,
    manner: int, keys: Ints, rank: Ints, free: Ints, load: Ints, room_of: Ints, placed: Ints,
) -> tuple[int, int, int]:  # fmt: skip
    """Pack blanks greedily, each in the corner of the free rectangle that fits best.

    Args:
        w: Widths of the blanks.
        h: Heights of the blanks.
        mask: For each blank the rooms it may be cut from, one bit each.
        num: How many of them.
        rooms: What can be cut: (width, height, whether blanks may be turned, cost) of each.
        num_kept: So many rooms, the first ones, are there once and begun before any sheet is bought.
        use_kept: Whether they are used.
        buy: For each sheet bought, in order, the room wanted; where the blank at hand does not fit it, the first
            room that holds it is bought.
        least: Free rectangles narrower than this are passed over: no blank is.
        manner: Which order, fit and cut, below `NUM_MANNERS`.
        keys: Room for `num` sort keys.
        rank: Room for `num` numbers.
        free: Room for 2 num + num_kept + 2 free rectangles (sheet, x, y, w, h).
        load: Receives the area filled on each sheet; room for num + num_kept.
        room_of: Receives the room of each sheet, kept ones first; room for num + num_kept.
        placed: Receives, in the order of placing, (blank, sheet, x, y, turned, cut across first, w, h) with the
            size of the free rectangle taken.

    Returns:
        Number of sheets (kept ones included), cost and number of cuts; sheets -1 if a blank fits no room.
    """
    in_order(w, h, num, manner % 4, keys, rank)
    fit, split = manner // 4 % 3, manner // 12
    sheets = num_free = cuts = cost = bought = 0
    if use_kept:
        for room in range(num_kept):
            free[num_free] = (sheets, 0, 0, rooms[room, 0], rooms[room, 1])
            load[sheets] = 0
            room_of[sheets] = room
            sheets += 1
            num_free += 1
    for place in range(num):
        blank = rank[place]
        best, best_score, best_turned = -1, 0, 0
        for fresh in range(2):
            if fresh:
                if best >= 0:
                    break
                room = -1
                for choice in range(num_kept - 1, len(rooms)):
                    r = buy[bought] if choice < num_kept else choice
                    if not mask[blank] >> r & 1:
                        continue
                    if (w[blank] <= rooms[r, 0] and h[blank] <= rooms[r, 1]) or (
                        rooms[r, 2] and h[blank] <= rooms[r, 0] and w[blank] <= rooms[r, 1]
                    ):
                        room = r
                        break
                if room < 0:
                    return -1, 0, 0
                free[num_free] = (sheets, 0, 0, rooms[room, 0], rooms[room, 1])
                load[sheets] = 0
                room_of[sheets] = room
                cost += rooms[room, 3]
                sheets += 1
                bought += 1
                num_free += 1
            for index in range(num_free - 1 if fresh else 0, num_free):
                room = room_of[free[index, 0]]
                if not mask[blank] >> room & 1:
                    continue
                for turned in range(1 + rooms[room, 2]):
                    bw, bh = (h[blank], w[blank]) if turned else (w[blank], h[blank])
                    right, above = free[index, 3] - bw, free[index, 4] - bh
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
        sheet, x, y, fw, fh = free[best, 0], free[best, 1], free[best, 2], free[best, 3], free[best, 4]
        num_free -= 1
        free[best] = free[num_free]
        bw, bh = (h[blank], w[blank]) if best_turned else (w[blank], h[blank])
        right, above = fw - bw, fh - bh
        if split == 0:
            across = right < above
        elif split == 1:
            across = right >= above
        elif split == 4:
            across = max(above * fw, right * bh) >= max(right * fh, above * bw)
        else:
            across = split == 2
        cuts += (right > 0) + (above > 0)
        if right >= least:
            free[num_free] = (sheet, x + bw, y, right, bh if across else fh)
            num_free += 1
        if above >= least:
            free[num_free] = (sheet, x, y + bh, fw if across else bw, above)
            num_free += 1
        load[sheet] += bw * bh
        placed[place] = (blank, sheet, x, y, best_turned, 1 if across else 0, fw, fh)
    return sheets, cost, cuts


@compiled
def far_enough(position: Ints, at: int, field: int, course: int, kinds: Ints, tables: Any, state: Any) -> bool:
    """Whether a break at `at` keeps its distance from the breaks of course number `course` of the field."""
    break_first, apart = tables
    chosen, num_chosen = state
    first = break_first[kinds[course]]
    for i in range(1, num_chosen[field, course] - 1):
        if abs(position[first + chosen[field, course, i]] - at) < apart:
            return False
    return True


@compiled
def repattern(
    field: int, course: int, below: bool, above: bool, apart: int, kinds: Ints, break_first: Ints, position: Ints,
    cell_first: Ints, blank_num: Ints, chosen: Ints, num_chosen: Ints, seed: Ints, reach: Ints,
) -> bool:  # fmt: skip
    """Draw a new legal pattern of breaks for one course, away from its neighbours' breaks; False if none is.

    Long intervals are drawn more often than short ones.
    """
    kind = kinds[course]
    first = break_first[kind]
    num = break_first[kind + 1] - first
    table = cell_first[kind]
    reach[num - 1] = 1
    for i in range(num - 2, -1, -1):
        reach[i] = 0
        free = True
        if i > 0:
            at = position[first + i]
            tables, state = (break_first, apart), (chosen, num_chosen)
            if below:
                free = far_enough(position, at, field, course - 1, kinds, tables, state)
            if free and above:
                free = far_enough(position, at, field, course + 1, kinds, tables, state)
        if free:
            for j in range(i + 1, num):
                if reach[j] and blank_num[table + i * num + j] >= 0:
                    reach[i] = 1
                    break
    if not reach[0]:
        return False
    at = count = 0
    chosen[field, course, 0] = 0
    while at < num - 1:
        ways = 0
        for j in range(at + 1, num):
            if reach[j] and blank_num[table + at * num + j] >= 0:
                ways += 1
        pick = draw(seed, ways)
        if draw(seed, 2):
            pick = max(pick, draw(seed, ways))
        for j in range(at + 1, num):
            if reach[j] and blank_num[table + at * num + j] >= 0:
                if pick == 0:
                    at = j
                    break
                pick -= 1
        count += 1
        chosen[field, course, count] = at
    num_chosen[field, course] = count + 1
    return True


@compiled
def rearrange(
    field: int, arrangement: int, course_first: Ints, stagger: Ints, kind: Ints, break_first: Ints, position: Ints,
    cell_first: Ints, blank_num: Ints, chosen: Ints, num_chosen: Ints, seed: Ints, reach: Ints,
) -> bool:  # fmt: skip
    """Draw patterns for all courses of an arrangement from the first up; False if a course is left without."""
    kinds = kind[course_first[arrangement] : course_first[arrangement + 1]]
    for course in range(len(kinds)):
        if not repattern(
            field, course, course > 0, False, stagger[arrangement], kinds, break_first, position, cell_first,
            blank_num, chosen, num_chosen, seed, reach,
        ):  # fmt: skip
            return False
    return True


@compiled
def gather(
    arrangement: Ints, course_first: Ints, allowed: Ints, kind: Ints, break_first: Ints, cell_first: Ints,
    blank_first: Ints, blank_num: Ints, blank_w: Ints, blank_h: Ints, chosen: Ints, num_chosen: Ints, w: Ints,
    h: Ints, mask: Ints,
) -> int:  # fmt: skip
    """List the blanks of a state in `w`, `h` and `mask`; returns how many."""
    num = 0
    for field in range(len(arrangement)):
        first = course_first[arrangement[field]]
        for course in range(course_first[arrangement[field] + 1] - first):
            k = kind[first + course]
            breaks = break_first[k + 1] - break_first[k]
            for i in range(num_chosen[field, course] - 1):
                cell = cell_first[k] + chosen[field, course, i] * breaks + chosen[field, course, i + 1]
                for blank in range(blank_first[cell], blank_first[cell] + blank_num[cell]):
                    w[num] = blank_w[blank]
                    h[num] = blank_h[blank]
                    mask[num] = allowed[arrangement[field]]
                    num += 1
    return num


@compiled
def anneal(
    tables: Any, rooms: Ints, num_kept: int, unit: int, least: int, arrangement: Ints, chosen: Ints,
    num_chosen: Ints, manner: Ints, buy: Ints, seed: Ints, steps: int, hot: int, cold: int, weights: Ints,
    enough: int, chance: Ints, most: int,
) -> tuple[int, int, int, int]:  # fmt: skip
    """Anneal a state in place and leave the best one found in it.

    Objective: `weights[0]` per `unit` of cost above `enough`, `weights[1]` per `unit` for the share that is filled
    of the cheapest worth of sheet (the next to go), `weights[2]` per cut and `weights[3]` per blank.

    Args:
        tables: The arrays that describe the fields, in the order of the module's docstring.
        rooms: As for `pack`.
        num_kept: As for `pack`.
        unit: Cost of an ordinary sheet.
        least: Least side of any blank.
        arrangement: State; an empty state has `num_chosen` zero in its first course and is drawn first.
        chosen: State.
        num_chosen: State.
        manner: State: two numbers, how it is packed and whether kept rooms are used.
        buy: State: as for `pack`, `most` + 1 numbers.
        seed: One number, changed.
        steps: Packings to try.
        hot: First temperature in units of the objective.
        cold: Last temperature.
        weights: Four numbers.
        enough: Stop when cost is as low and the load counts; else cost below is worth nothing.
        chance: `CHANCES` values -1024 ln(u).
        most: Most blanks any state has.

    Returns:
        (objective, cost, cuts, blanks) of the state left; cost -1 if no legal state was found.
    """
    (field_first, goes_with, course_first, stagger, allowed, kind, break_first, position, cell_first, blank_first,
     blank_num, blank_w, blank_h) = tables  # fmt: skip
    fields = len(goes_with)
    w, h, mask = np.zeros(most, np.int64), np.zeros(most, np.int64), np.zeros(most, np.int64)
    keys, rank = np.zeros(most, np.int64), np.zeros(most, np.int64)
    load, room_of = np.zeros(most + num_kept, np.int64), np.zeros(most + num_kept, np.int64)
    free, placed = np.zeros((2 * most + num_kept + 2, 5), np.int64), np.zeros((most, 8), np.int64)
    reach = np.zeros(len(position) + 1, np.int64)
    now_a, now_c, now_n = arrangement.copy(), chosen.copy(), num_chosen.copy()
    new_a, new_c, new_n = arrangement.copy(), chosen.copy(), num_chosen.copy()
    now_m, new_m, now_b, new_b = manner.copy(), manner.copy(), buy.copy(), buy.copy()
    now_value, best_value, best_cost, best_cuts, best_num = -1, -1, -1, 0, 0
    stocks = len(rooms) - num_kept
    sheets = cost = cuts = num = 0
    for step in range(steps):
        legal = True
        move = draw(seed, 16)
        if new_n[0, 0] == 0:
            for field in range(fields):
                found = False
                for extra in range(64):
                    a = field_first[field]
                    if extra:
                        a += draw(seed, field_first[field + 1] - a)
                    if rearrange(field, a, course_first, stagger, kind, break_first, position, cell_first,
                                 blank_num, new_c, new_n, seed, reach):  # fmt: skip
                        new_a[field] = a
                        found = True
                        break
                if not found:
                    return -1, -1, 0, 0
        elif step == 0:
            legal = True
        elif move < 2:
            other = draw(seed, 4) if stocks > 1 or num_kept else 0
            if other == 3 and num_kept:
                new_m[1] = 1 - new_m[1]
            elif other and stocks > 1:
                new_b[draw(seed, max(sheets, 1))] = num_kept + draw(seed, stocks)
            else:
                new_m[0] = draw(seed, 60)
        elif move < 5:
            field = draw(seed, fields)
            offset = draw(seed, field_first[field + 1] - field_first[field])
            alone = draw(seed, 2)
            for other in range(fields):
                if other == field or (not alone and goes_with[other] == goes_with[field]):
                    a = field_first[other] + offset
                    new_a[other] = a
                    if not rearrange(other, a, course_first, stagger, kind, break_first, position, cell_first,
                                     blank_num, new_c, new_n, seed, reach):  # fmt: skip
                        legal = False
                        break
        else:
            field = draw(seed, fields)
            a = new_a[field]
            kinds = kind[course_first[a] : course_first[a + 1]]
            course = draw(seed, len(kinds))
            legal = repattern(
                field, course, course > 0, course + 1 < len(kinds), stagger[a], kinds, break_first, position,
                cell_first, blank_num, new_c, new_n, seed, reach,
            )  # fmt: skip
        if legal:
            num = gather(new_a, course_first, allowed, kind, break_first, cell_first, blank_first, blank_num,
                         blank_w, blank_h, new_c, new_n, w, h, mask)  # fmt: skip
            sheets, cost, cuts = pack(w, h, mask, num, rooms, num_kept, new_m[1], new_b, least, new_m[0], keys,
                                      rank, free, load, room_of, placed)  # fmt: skip
            legal = sheets >= 0
        if legal:
            emptiest = -1
            for sheet in range(sheets):
                room = room_of[sheet]
                if room >= num_kept:
                    share = weights[1] * load[sheet] // (rooms[room, 0] * rooms[room, 1]) * rooms[room, 3] // unit
                    if emptiest < 0 or share < emptiest:
                        emptiest = share
            value = (max(cost - enough, 0) * weights[0] // unit + max(emptiest, 0) + weights[2] * cuts
                     + weights[3] * num)  # fmt: skip
            heat = hot + (cold - hot) * step // steps
            if now_value < 0 or value - now_value <= heat * chance[draw(seed, 1024)] // 1024:
                now_value = value
                now_m[:] = new_m
                now_b[:] = new_b
                now_a[:] = new_a
                now_c[:] = new_c
                now_n[:] = new_n
                if best_value < 0 or value < best_value:
                    best_value, best_cost, best_cuts, best_num = value, cost, cuts, num
                    arrangement[:] = new_a
                    chosen[:] = new_c
                    num_chosen[:] = new_n
                    manner[:] = new_m
                    buy[:] = new_b
                    if weights[1] > 0 and cost <= enough:
                        break
                continue
        new_m[:] = now_m
        new_b[:] = now_b
        new_a[:] = now_a
        new_c[:] = now_c
        new_n[:] = now_n
    return best_value, best_cost, best_cuts, best_num


@compiled
def least_area(
    length: int, across: int, gap: int, least: int, most: int, alone: int, both: int, room: Ints
) -> int:
    """Least area of courses stacked over `across`, at most `alone` breaks in one and `both` in two neighbours.

    Args:
        length: Of every course, breaks included.
        across: Of all courses and the gaps between them.
        gap: Between boards and between courses.
        least: Least height of a course.
        most: Greatest height of a course.
        alone: Most breaks of one course.
        both: Most breaks of two neighbouring courses.
        room: Room for (across + 1, alone + 1) numbers.

    Returns:
        The area; 0 if no heights fill `across`.
    """
    # room[r, s]: least area of courses that fill r, the last of them with at most s breaks; -1 if none does.
    # What lies below a last course of s breaks is worth keeping, of all it may lie on, where room - width * height
    # is least: `queue[s]` holds the heights that may yet be that, in rising order of both.
    queue = np.zeros((alone + 1, across + 1), np.int64)
    head, tail = np.zeros(alone + 1, np.int64), np.zeros(alone + 1, np.int64)
    for r in range(across + 1):
        for s in range(alone + 1):
            width, below = length - gap * s, min(alone, both - s)
            under = r - gap - least
            if under >= least and room[under, below] >= 0:
                value = room[under, below] - width * under
                while tail[s] > head[s]:
                    last = queue[s, tail[s] - 1]
                    if room[last, below] - width * last < value:
                        break
                    tail[s] -= 1
                queue[s, tail[s]] = under
                tail[s] += 1
            while tail[s] > head[s] and queue[s, head[s]] < r - gap - most:
                head[s] += 1
            best = room[r, s - 1] if s else -1
            if least <= r <= most and (best < 0 or r * width < best):
                best = r * width
            if tail[s] > head[s]:
                under = queue[s, head[s]]
                area = room[under, below] + (r - gap - under) * width
                if best < 0 or area < best:
                    best = area
            room[r, s] = best
    total: int = max(room[across, alone], 0)
    return total


def warm() -> None:
    """Compile what is not yet on disk, by choosing for one small field and cutting one small list."""
    from firstcourse.cutting import cheaper, patterns
    from firstcourse.cutting.choice import choose
    from firstcourse.cutting.choices import Arrangement, ChoiceField, Course
    from firstcourse.cutting.every_layout import Region, least_over_layouts
    from firstcourse.cutting.model import StockSize

    course = Course((0, 5, 10), ((0, 1, ((5, 5),)), (1, 2, ((5, 5),)), (0, 2, ((10, 5),))))
    choose([ChoiceField("f", (Arrangement((course, course), 1),))], [StockSize("s", 10, 8, 1)], effort=0)
    least_over_layouts([[Region(10, 10, 1, 2, 5, 1)]], StockSize("s", 10, 8, 1))
    cheaper.warm()
    patterns.warm()


if __name__ == "__main__":
    # Compiled code is filed under the module's name, so it must not be compiled as `__main__`.
    from firstcourse.cutting.kernels import warm as warm_installed

    warm_installed()
