"""A room taped as the survey asks, and no more, comes out right, or the survey names the next reading.

The rooms are random: corners that turn by right angles as rooms do, and simple polygons as rooms hardly ever are.
Each is taped with the tape's own error. A distance is taped only where a tape can run straight; where the survey
asks for one that cannot, the setter takes another that starts at one of its corners, as the message says.
"""

import math
import random
import re
from itertools import combinations

import pytest

from firstcourse.errors import InputValueError
from firstcourse.survey import Reading, UnfixedError, adjust
from firstcourse.survey.sight import is_room, sees

SIGMA_MM = 1.0
LIMIT = 3.29
MOST_READINGS = 70
SURE_MM = 12.7


def square_room(rng, count):
    """A room of right angles, a little out of square: bites taken out of the corners of a rectangle."""
    for _ in range(500):
        points = [(0.0, 0.0), (rng.uniform(1500, 5000), 0.0)]
        points += [(points[1][0], -rng.uniform(1500, 4000)), (0.0, 0.0)]
        points[3] = (0.0, points[2][1])
        while len(points) < count:
            i = rng.randrange(len(points))
            a, b, c = points[i - 1], points[i], points[(i + 1) % len(points)]
            s, t = rng.uniform(0.15, 0.6), rng.uniform(0.15, 0.6)
            one = (b[0] + (a[0] - b[0]) * s, b[1] + (a[1] - b[1]) * s)
            two = (b[0] + (c[0] - b[0]) * t, b[1] + (c[1] - b[1]) * t)
            points[i : i + 1] = [one, (one[0] + two[0] - b[0], one[1] + two[1] - b[1]), two]
        points = [(u + rng.gauss(0, 6), v + rng.gauss(0, 6)) for u, v in points]
        shortest = min(math.dist(p, q) for p, q in combinations(points, 2))
        if len(points) == count and shortest > 150 and is_room(points):
            return points
    return None


def any_polygon(rng, count):
    """A simple polygon: points in random order, two sides that cross exchanged until none do."""
    while True:
        points = [(rng.uniform(0, 4000), rng.uniform(0, 4000)) for _ in range(count)]
        for _ in range(1000):
            crossing = next(
                (
                    (i, j)
                    for i, j in combinations(range(count), 2)
                    if _cross(points[i], points[(i + 1) % count], points[j], points[(j + 1) % count])
                ),
                None,
            )
            if crossing is None:
                break
            i, j = crossing
            points[i + 1 : j + 1] = reversed(points[i + 1 : j + 1])
        for ring in (points, points[::-1]):
            if is_room(ring) and min(math.dist(p, q) for p, q in combinations(ring, 2)) > 250:
                return ring


def _cross(a, b, c, d):
    def turn(p, q, r):
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0


def tape_as_asked(points, rng):
    """The end of the taping: the adjustment and the corners, or nothing where the survey asked in circles."""
    names = [chr(ord("A") + index) for index in range(len(points))]
    index = {name: number for number, name in enumerate(names)}
    readings = []

    def tape(pair):
        one, other = pair.split("-")
        taken = {frozenset((r.one, r.other)) for r in readings}
        wanted = [(one, other)]
        wanted += [(a, b) for a in (one, other) for b in names if b not in (one, other)]
        wanted += list(combinations(names, 2))
        for a, b in wanted:
            if frozenset((a, b)) not in taken and sees(points, index[a], index[b]):
                length = math.dist(points[index[a]], points[index[b]]) + rng.gauss(0, SIGMA_MM)
                readings.append(Reading(one=a, other=b, length_mm=round(length), sigma_mm=SIGMA_MM))
                return
        raise AssertionError(f"nothing is left to tape when {pair} is asked for")

    for one, other in zip(names, names[1:] + names[:1], strict=True):
        tape(f"{one}-{other}")
    while len(readings) < MOST_READINGS:
        try:
            done = adjust(names, readings, limit=LIMIT)
        except UnfixedError as error:
            tape(error.missing[0])
            continue
        except InputValueError as error:  # two corners so near a wall that the tape's error puts them through it
            found = re.search(r"and tape (\w-\w) as well", str(error))
            assert found is not None
            tape(found[1])
            continue
        if done.ambiguous:
            if not done.in_sight:
                return done, names, readings
            assert done.settled_by, "two shapes fit, and no reading is named that settles it"
            tape(done.settled_by)
        elif max(done.uncertainty_mm.values()) > SURE_MM and done.surest:
            tape(done.surest)
        else:
            return done, names, readings
    return None


def off_mm(done, names, points):
    """The largest error of a distance between two corners."""
    at = [done.corners_mm[name] for name in names]
    return max(
        abs(math.dist(at[i], at[j]) - math.dist(points[i], points[j]))
        for i, j in combinations(range(len(points)), 2)
    )


@pytest.mark.parametrize("count", [4, 6, 8, 12])
@pytest.mark.parametrize("make", [square_room, any_polygon])
def test_a_room_taped_as_asked_comes_out_right(make, count):
    rng = random.Random(100 * count + (make is any_polygon))
    for _ in range(3):
        points = make(rng, count)
        if points is None:
            continue
        found = tape_as_asked(points, rng)
        assert found is not None
        done, names, _ = found
        if done.ambiguous:  # said so; nothing is left to tape but the sides again
            continue
        sure = max(done.uncertainty_mm.values())
        assert off_mm(done, names, points) < max(10.0, 2.5 * sure), (points, sure)
