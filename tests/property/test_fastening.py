"""Random boards over members and panels: every distance and spacing is derived again from the points alone."""

import datetime
import math
from itertools import combinations, pairwise

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Point, Polygon, box
from shapely.ops import unary_union

from firstcourse.boards import fasten
from firstcourse.plan import Board, Ring, Support, SupportKind, Surface, SurfaceKind, Zone
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches

RULES = load_rules(datetime.date(2026, 1, 1))
EDGE, CORNER = RULES.ticks("fastening.edge.min"), RULES.ticks("fastening.corner.min")
CLEAR, MOST = RULES.ticks("fastening.panel_screw_clear"), RULES.ticks("fastening.edge.max_floor")
APART = RULES.ticks("fastening.apart.min")
SPACING = {
    SurfaceKind.WALL: RULES.ticks("fastening.spacing.wall"),
    SurfaceKind.FLOOR: RULES.ticks("fastening.spacing.floor"),
}
ROUNDING = 2


def _rectangle(left: int, lower: int, right: int, upper: int) -> Ring:
    return ((left, lower), (right, lower), (right, upper), (left, upper))


@st.composite
def boards(draw: st.DrawFn, step: int) -> Board:
    """A whole, tapered, notched or drilled board, its level and plumb sides on tape marks."""
    across = draw(st.integers(inches(1) // step, inches(60) // step)) * step
    up = draw(st.integers(inches(1) // step, inches(60) // step)) * step
    a = draw(st.integers(across // step // 4, across // step * 3 // 4)) * step
    b = draw(st.integers(up // step // 4, up // step * 3 // 4)) * step
    slope = draw(st.integers(0, up // 4))
    outline = draw(
        st.sampled_from(
            [
                _rectangle(0, 0, across, up),
                ((0, 0), (across, 0), (across, b), (a, b), (a, up), (0, up)),
                ((0, 0), (across, 0), (across, up - slope), (0, up)),
                ((0, 0), (across, slope), (across, up), (a, up)),
            ]
        )
    )
    holes: tuple[Ring, ...] = ()
    half = draw(st.integers(inches(1), inches(4)))
    hole = _rectangle(a - half, b - half, a + half, b + half)
    if draw(st.booleans()) and Polygon(outline).buffer(-step).contains(Polygon(hole)):
        holes = (tuple(reversed(hole)),)
    return Board(id="room/x#1", piece="P1", outline=outline, holes=holes)


@st.composite
def walls(draw: st.DrawFn, step: int) -> Surface:
    board = draw(boards(step))
    right, upper = inches(62), inches(62)
    supports, at = [], draw(st.integers(-inches(1), inches(8)))
    while at < right:
        ring = _rectangle(at, -inches(1), at + inches(1.5), upper)
        supports.append(Support(id=f"stud {at}", kind=SupportKind.STUD, outline=ring))
        at += draw(st.integers(inches(1.5), inches(24)))
    level = draw(st.integers(0, inches(50)))
    cross = _rectangle(-inches(1), level, right, level + inches(1.5))
    supports.append(Support(id="blocking", kind=SupportKind.BLOCKING, outline=cross))
    zones = (Zone(outline=_rectangle(-1, -1, right, inches(2)), why="tray"),) if draw(st.booleans()) else ()
    return Surface(
        id="room/x",
        room="room",
        kind=SurfaceKind.WALL,
        outline=_rectangle(0, 0, right, upper),
        framing_axis="v",
        supports=tuple(supports),
        no_fastener_zones=zones,
        boards=(board,),
    )


@st.composite
def floors(draw: st.DrawFn, step: int) -> Surface:
    board = draw(boards(step))
    ring = _rectangle(-inches(1), -inches(1), inches(62), inches(62))
    screws: tuple[tuple[int, int], ...] = ()
    if draw(st.booleans()):
        first = draw(st.integers(0, inches(16)))
        screws = tuple(
            (u, v) for u in range(first, ring[1][0], inches(16)) for v in range(0, ring[2][1], inches(6))
        )
    return Surface(
        id="room/x",
        room="room",
        kind=SurfaceKind.FLOOR,
        outline=ring,
        supports=(Support(id="panel", kind=SupportKind.PANEL, outline=ring),),
        panel_screws=screws,
        boards=(board,),
    )


def _sticking_out(ring: Ring) -> list[tuple[int, int]]:
    found = []
    for index, b in enumerate(ring):
        a, c = ring[index - 1], ring[(index + 1) % len(ring)]
        back, on = math.atan2(b[1] - a[1], b[0] - a[0]), math.atan2(c[1] - b[1], c[0] - b[0])
        if math.radians(30) < (on - back + math.pi) % (2 * math.pi) - math.pi:
            found.append(b)
    return found


def check_places(surface: Surface, board: Board, told: set[str]) -> None:
    shape = Polygon(board.outline, board.holes)
    faces = unary_union([Polygon(support.outline) for support in surface.supports])
    zones = unary_union([Polygon(zone.outline) for zone in surface.no_fastener_zones])
    assert board.fasteners or "FST-104" in told
    for one, other in combinations(board.fasteners, 2):
        assert math.dist(one, other) >= APART - ROUNDING
    for place in board.fasteners:
        spot = Point(place)
        assert shape.contains(spot) and faces.intersects(spot) and not zones.contains(spot)
        assert shape.boundary.distance(spot) >= EDGE - ROUNDING
        if "FST-103" not in told:
            assert MultiPoint(_sticking_out(board.outline)).distance(spot) >= CORNER - ROUNDING
        assert all(math.dist(place, screw) >= CLEAR for screw in surface.panel_screws)


def check_members(surface: Surface, board: Board) -> None:
    """Along each member, from where a fastener may first sit to where one may last, steps are within the rule."""
    spacing = SPACING[surface.kind]
    zones = unary_union([Polygon(zone.outline) for zone in surface.no_fastener_zones])
    room = Polygon(board.outline, board.holes).buffer(-EDGE, join_style="mitre").difference(zones)
    for support in surface.supports:
        face = Polygon(support.outline)
        axis = 1 if support.kind is SupportKind.STUD else 0
        parts = room.intersection(face)
        for part in getattr(parts, "geoms", [parts]):
            if part.is_empty or part.geom_type != "Polygon":
                continue
            low, high = part.bounds[axis], part.bounds[axis + 2]
            if high - low <= spacing:
                continue
            # Members that lie close together share their fasteners.
            near = part.buffer(APART + ROUNDING)
            row = sorted(place[axis] for place in board.fasteners if near.contains(Point(place)))
            assert row and all(b - a <= spacing + ROUNDING for a, b in pairwise([low, *row, high]))


def check_panel(surface: Surface, board: Board) -> None:
    """Every square of twice the spacing within the board holds a fastener, and every long edge has its row."""
    spacing = SPACING[surface.kind]
    shape = Polygon(board.outline, board.holes)
    left, lower, right, upper = (round(value) for value in shape.bounds)
    side = 2 * spacing
    spots = MultiPoint(board.fasteners)
    for u in range(left, right - side + 1, spacing // 2):
        for v in range(lower, upper - side + 1, spacing // 2):
            square = box(u, v, u + side, v + side)
            assert not shape.contains(square) or square.intersects(spots)
    for a, b in zip(board.outline, board.outline[1:] + board.outline[:1], strict=True):
        length = math.dist(a, b)
        if length <= spacing + 2 * CORNER:
            continue
        du, dv = (b[0] - a[0]) / length, (b[1] - a[1]) / length
        row = []
        for u, v in board.fasteners:
            along, off = (u - a[0]) * du + (v - a[1]) * dv, (v - a[1]) * du - (u - a[0]) * dv
            if 0 <= off <= MOST + ROUNDING and 0 <= along <= length:
                row.append(along)
        assert row and all(t - s <= spacing + ROUNDING for s, t in pairwise([0, *sorted(row), length]))


def check(surface: Surface, tape: Tape) -> None:
    done = fasten(surface, RULES, tape)
    (board,) = done.boards
    told = {finding.code for finding in done.findings}
    check_places(surface, board, told)
    if told & {"FST-101", "FST-102", "FST-104"}:
        return
    if surface.kind is SurfaceKind.WALL:
        check_members(surface, board)
    else:
        check_panel(surface, board)


@settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(data=st.data(), tape=st.sampled_from(list(Tape)))
def test_members(data: st.DataObject, tape: Tape) -> None:
    check(data.draw(walls(tape.graduation)), tape)


@settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(data=st.data(), tape=st.sampled_from(list(Tape)))
def test_panels(data: st.DataObject, tape: Tape) -> None:
    check(data.draw(floors(tape.graduation)), tape)
