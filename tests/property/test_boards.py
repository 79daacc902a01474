"""Random surfaces: whatever is laid covers all, overlaps nothing, keeps its gaps, staggers, and bears on members.

The checks are made from the boards alone, with shapely, not with the room's own code.
"""

import datetime
from itertools import combinations

import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon
from shapely.ops import unary_union

from firstcourse.boards import SurfaceLayout, practice_layout
from firstcourse.plan import (
    Opening,
    OpeningKind,
    Side,
    SideKind,
    Stock,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
)
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches
from own_best import own_best_layout

RULES = load_rules(datetime.date(2026, 1, 1))
STOCK = (
    Stock(id="3x5", size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement"),
    Stock(id="4x8", size=(inches(48), inches(96)), thickness=inches(0.5), kind="fibre_cement"),
)
STEP = Tape.INCH.graduation


def _box(left: int, lower: int, right: int, upper: int) -> tuple[tuple[int, int], ...]:
    return ((left, lower), (right, lower), (right, upper), (left, upper))


@st.composite
def outlines(draw: st.DrawFn) -> tuple[tuple[int, int], ...]:
    size = st.integers(inches(20), inches(150))
    w, h = draw(size), draw(size)
    a, b = draw(st.integers(w // 4, w * 3 // 4)), draw(st.integers(h // 4, h * 3 // 4))
    c = draw(st.integers(w // 8, w // 5))
    slope = draw(st.integers(-h // 6, h // 6))
    return draw(
        st.sampled_from(
            [
                _box(0, 0, w, h),
                ((0, 0), (w, 0), (w, b), (a, b), (a, h), (0, h)),
                ((0, 0), (w, 0), (w, h), (w - c, h), (w - c, b), (c, b), (c, h), (0, h)),
                ((0, 0), (w, 0), (w, h + slope), (0, h)),
                ((0, 0), (w, 0), (w - c, h), (c // 2, h - c // 3)),
            ]
        )
    )


@st.composite
def surfaces(draw: st.DrawFn) -> Surface:
    outline = draw(outlines())
    wall = draw(st.booleans())
    right, upper = max(p[0] for p in outline), max(p[1] for p in outline)
    supports: list[Support] = []
    if wall:
        at = 0
        while at < right:
            at = min(at, right - inches(1.5))
            ring = _box(at, 0, at + inches(1.5), upper)
            supports.append(Support(id=f"stud {at}", kind=SupportKind.STUD, outline=ring))
            if at == right - inches(1.5):
                break
            at += draw(st.integers(inches(9), inches(24)))
    else:
        supports.append(Support(id="panel", kind=SupportKind.PANEL, outline=outline))
    openings = []
    for number in range(draw(st.integers(0, 2))):
        u, v = draw(st.integers(0, right)), draw(st.integers(0, upper))
        if draw(st.booleans()):
            d = draw(st.integers(inches(1), inches(8)))
            openings.append(Opening(id=f"o{number}", kind=OpeningKind.PIPE, centre=(u, v), diameter=d))
        else:
            ring = _box(u, v, u + draw(st.integers(inches(4), inches(40))), v + inches(30))
            openings.append(Opening(id=f"o{number}", kind=OpeningKind.WINDOW, outline=ring))
    kinds = [SideKind.FOOT if wall and i == 0 else SideKind.PERIMETER for i in range(len(outline))]
    return Surface(
        id="room/wall/A-B" if wall else "room/floor",
        room="room",
        kind=SurfaceKind.WALL if wall else SurfaceKind.FLOOR,
        outline=outline,
        sides=tuple(Side(kind=kind) for kind in kinds),
        openings=tuple(openings),
        supports=tuple(supports),
        framing_axis="v" if wall else "",
    )


def _polygons(layout: SurfaceLayout) -> list[Polygon]:
    return [Polygon(board.outline, board.holes) for board in layout.boards]


def _must_stay_open(surface: Surface, extra: float) -> Polygon:
    """What boards stay out of, openings and the ground near sides, by round buffers: a looser region."""
    wall = Polygon(surface.outline)
    parts = []
    for opening in surface.openings:
        gap = RULES.ticks("boards.gap.opening") + extra
        if opening.outline is not None:
            parts.append(Polygon(opening.outline).buffer(gap, join_style="mitre"))
        else:
            assert opening.centre is not None and opening.diameter is not None
            centre = Polygon(_box(*opening.centre, opening.centre[0] + 1, opening.centre[1] + 1))
            parts.append(centre.buffer(opening.diameter / 2 + gap, quad_segs=32))
    for index, side in enumerate(surface.sides):
        a, b = surface.outline[index], surface.outline[(index + 1) % len(surface.outline)]
        gap = RULES.ticks("boards.gap.foot" if side.kind is SideKind.FOOT else "boards.gap.perimeter") + extra
        parts.append(LineString([a, b]).buffer(gap, cap_style="flat") if gap else wall.boundary)
    return unary_union(parts)


def check(surface: Surface, layout: SurfaceLayout) -> None:
    boards = _polygons(layout)
    codes = {finding.code for finding in layout.findings}
    if not boards:
        assert codes & {"BRD-301"}
        return
    wall = Polygon(surface.outline)
    gap = RULES.ticks("boards.gap.between")
    speck = inches(0.125) ** 2
    assert all(board.is_valid for board in boards)
    # Inside, and clear of openings and sides.
    assert unary_union(boards).difference(wall).area < speck
    assert unary_union(boards).intersection(_must_stay_open(surface, -4)).area < speck
    # No two boards nearer than the gap, but for rounding at odd angles.
    for one, other in combinations(boards, 2):
        assert one.distance(other) >= gap - 4
    # All is covered: what is left over is narrower than the widest gap allowed and its remainder, or a strip that
    # is filled and that boards meet at its ends only.
    left = wall.difference(_must_stay_open(surface, STEP + 4))
    covered = unary_union(boards).buffer(gap / 2 + 2, join_style="mitre")
    fill = RULES.ticks("boards.limb.min")
    for part in shapely.get_parts(left.difference(covered)):
        filled = part.buffer(-fill / 2 - 4).is_empty
        beside = part.boundary.intersection(covered.buffer(8)).length
        assert part.buffer(-STEP).is_empty or (filled and beside <= 2.5 * fill)
    # Every piece comes out of a sheet.
    sizes = {stock.id: stock.size for stock in STOCK}
    for piece in layout.pieces:
        assert sorted(piece.blank) <= sorted(sizes[piece.stock])
        assert all(a <= b for a, b in zip(sorted(piece.blank), sorted(sizes[piece.stock]), strict=True))
        assert piece.blank[0] % STEP == 0 and piece.blank[1] % STEP == 0
    if surface.kind is SurfaceKind.WALL:
        _bears(surface, layout)


def _bears(surface: Surface, layout: SurfaceLayout) -> None:
    members = [Polygon(s.outline) for s in surface.supports + layout.added_supports]
    faces = unary_union(members)
    bearing = RULES.ticks("boards.bearing.min")
    for seam in layout.seams:
        (au, av), (bu, bv) = seam.line
        if au != bu or abs(bv - av) <= 4 * STEP:
            continue
        half = seam.width // 2 + bearing
        band = Polygon(_box(au - half, min(av, bv) + 2 * STEP, au + half, max(av, bv) - 2 * STEP))
        assert band.difference(faces).area < inches(0.125) ** 2


def _staggers(layout: SurfaceLayout) -> None:
    """End joints of courses that touch the same joint line stand apart, and no two lines cross."""
    least = RULES.ticks("boards.stagger.end_joints")
    flat = [s for s in layout.seams if s.line[0][1] == s.line[1][1]]
    upright = [s for s in layout.seams if s.line[0][0] == s.line[1][0]]
    for lines, axis in ((flat, 0), (upright, 1)):
        others = upright if axis == 0 else flat
        for joint in lines:
            level, (low, high) = joint.line[0][1 - axis], sorted(p[axis] for p in joint.line)
            reach = joint.width + STEP
            below, above = [], []
            for other in others:
                at, ends = other.line[0][axis], sorted(p[1 - axis] for p in other.line)
                if low <= at <= high:
                    below += [at] if abs(ends[1] - level) <= reach else []
                    above += [at] if abs(ends[0] - level) <= reach else []
            assert all(abs(a - b) >= least for a in below for b in above)


@settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(surface=surfaces())
def test_own_best_layouts_keep_the_rules_or_say_which_they_break(surface: Surface) -> None:
    layout = own_best_layout(surface, STOCK, RULES, Tape.INCH)
    check(surface, layout)
    codes = {finding.code for finding in layout.findings}
    assert "BRD-202" not in codes
    if "BRD-201" not in codes:
        _staggers(layout)


@settings(max_examples=20, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(surface=surfaces())
def test_practice_covers_as_well(surface: Surface) -> None:
    check(surface, practice_layout(surface, STOCK, RULES, Tape.INCH))
