"""Boards inside their surface with the gaps that rules ask, no overlap, and nothing left bare.

Everything is derived from distances, not from the way a planner insets outlines: a board may touch nothing nearer
than the gap, and ground farther than one tape graduation past the gap must be covered.
"""

import math
from collections.abc import Iterator

import shapely
from shapely import LineString, Point, Polygon, STRtree
from shapely.affinity import translate
from shapely.ops import unary_union

from firstcourse.geometry import Ring, axis_near, axis_of, sides
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, ceil_to
from firstcourse.verify.structure import Document, Opening, Seam, Surface
from firstcourse.verify.told import ticks_of
from firstcourse.verify.verdict import Objection

SLACK = 1
"""Rounding of a side along an axis [ticks]."""
SLOPED_SLACK = 2
"""Rounding of any other side, measured square to it [ticks]."""
_NOISE = 200.0
"""Area that rounding alone can make [ticks²]; a side one tick out over 1 mm makes more."""
_SPECK = 5 * TICKS_PER_MM**2
"""Bare ground too small to be a board: what is left where a joint meets a sloped side [ticks²]."""
_HAIR = 4
_SIDE_RULES = {"perimeter": "boards.gap.perimeter", "foot": "boards.gap.foot"}
_SEALED = ("tub", "tray")


def check_coverage(plan: Document) -> Iterator[Objection]:
    """Object to boards out of place and to bare ground."""
    for surface in plan.surfaces:
        yield from _inside(surface, plan.rules)
        yield from _apart(surface, plan.rules)
        if surface.slab == "tiled":
            if surface.boards or any(support.kind == "joist" for support in surface.supports):
                yield Objection("VER-106", surface.id, "is a slab tiled as it is, and has boards or joists")
        elif not surface.boarded:
            if surface.boards or surface.supports:
                yield Objection("VER-106", surface.id, "is said to take no boards, and has boards or framing")
        elif surface.boards or not plan.says(surface, code="BRD-301"):
            yield from _covered(surface, plan)


def seam_band(seam: Seam, *, longer: float = 0.0) -> Polygon:
    """The gap that a seam stands for, its ends moved out by `longer` [ticks]."""
    (au, av), (bu, bv) = seam.line
    length = math.hypot(bu - au, bv - av)
    du, dv = (bu - au) / length, (bv - av) / length
    half = seam.width / 2
    a = (au - du * longer, av - dv * longer)
    b = (bu + du * longer, bv + dv * longer)
    return Polygon([(a[0] + dv * half, a[1] - du * half), (b[0] + dv * half, b[1] - du * half),
                    (b[0] - dv * half, b[1] + du * half), (a[0] - dv * half, a[1] + du * half)])  # fmt: skip


def opening_shape(opening: Opening) -> Polygon:
    """An opening's own area."""
    if opening.outline is not None:
        return Polygon(opening.outline)
    return Point(opening.centre).buffer(opening.diameter / 2, quad_segs=32)


def board_hole(opening: Opening) -> Polygon:
    """What boards stop at: an opening's own area, with the boards that line a window round it."""
    shape = opening_shape(opening)
    return shape.buffer(opening.return_board, join_style="mitre") if opening.return_board else shape


def board_box(opening: Opening) -> Polygon:
    """What boards stop at, a round opening as the square round it."""
    shape = board_hole(opening)
    return shape if opening.outline is not None else shapely.box(*shape.bounds)


def _side_gap(kind: str, rules: RuleSet) -> int:
    return rules.ticks(_SIDE_RULES[kind]) if kind in _SIDE_RULES else 0


def _opening_gap(opening: Opening, rules: RuleSet) -> int:
    return rules.ticks("boards.gap.foot" if opening.kind in _SEALED else "boards.gap.opening")


def _slack(a: tuple[int, int], b: tuple[int, int]) -> int:
    return SLACK if axis_of(a, b) else SLOPED_SLACK


def _strip(a: tuple[int, int], b: tuple[int, int], depth: float, longer: float) -> Polygon:
    """The strip as deep as `depth` on the left of the way from a to b, its ends moved out by `longer`."""
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    du, dv = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    p = (a[0] - du * longer, a[1] - dv * longer)
    q = (b[0] + du * longer, b[1] + dv * longer)
    return Polygon([p, q, (q[0] - dv * depth, q[1] + du * depth), (p[0] - dv * depth, p[1] + du * depth)])


def _inside(surface: Surface, rules: RuleSet) -> Iterator[Objection]:
    outline = Polygon(surface.outline)
    near = []
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        # What lies between the least gap and the usual one is for `kept_edges` to judge.
        gap = _side_gap(kind, rules)
        if kind == "perimeter" and axis_near(a, b):
            gap = min(gap, rules.ticks("boards.gap.perimeter.least"))
        if gap > SLOPED_SLACK:
            near.append((kind, _strip(a, b, gap - _slack(a, b), 0)))
    for board in surface.boards:
        shape = board.shape
        if shape.difference(outline).area > _NOISE:
            yield Objection("VER-101", board.id, "reaches out of its surface")
        if board.fixed:
            # How near it stands to what bounds it is told, see `standing`.
            continue
        for kind, strip in near:
            if shape.intersection(strip).area > _NOISE:
                yield Objection("VER-102", board.id, f"leaves too small a gap at a {kind} side")
        for opening in surface.openings:
            gap = _opening_gap(opening, rules)
            least = board_hole(opening).buffer(gap - SLOPED_SLACK, quad_segs=32)
            if shape.intersection(least).area > _NOISE:
                yield Objection("VER-103", board.id, f"covers opening {opening.id}, or is too near to it")


def _apart(surface: Surface, rules: RuleSet) -> Iterator[Objection]:
    gap = rules.ticks("boards.gap.between")
    shapes = [board.shape for board in surface.boards]
    tree = STRtree(shapes)
    for index, shape in enumerate(shapes):
        for other in sorted(tree.query(shape, predicate="dwithin", distance=gap).tolist()):
            if other <= index:
                continue
            where = f"{surface.boards[index].id} and {surface.boards[other].id}"
            if shape.intersection(shapes[other]).area > _NOISE:
                yield Objection("VER-104", where, "overlap")
            elif surface.boards[index].fixed and surface.boards[other].fixed:
                # How far apart they stand is told, see `standing`.
                continue
            elif shape.distance(shapes[other]) < gap - SLACK:
                yield Objection("VER-105", where, "stand closer than the gap between boards")


def _covered(surface: Surface, plan: Document) -> Iterator[Objection]:
    rules, step = plan.rules, plan.tape.graduation
    taken = unary_union([_may_stay_bare(surface, rules, step), _told_open(surface, plan)])
    boards = unary_union([board.shape for board in surface.boards])
    bands = [seam_band(seam).buffer(1, join_style="mitre") for seam in surface.seams]
    # What is filled keeps the gap from boards that it ends at.
    rim = rules.ticks("boards.gap.between") + step + _HAIR
    filled = unary_union([Polygon(fill.outline).buffer(rim, join_style="mitre") for fill in surface.fills])
    bare = Polygon(surface.outline).difference(unary_union([taken, boards, filled, *bands]))
    # Opening with a hair's width drops what rounding leaves between neighbours.
    bare = bare.buffer(-_HAIR, join_style="mitre").buffer(_HAIR, join_style="mitre")
    for part in shapely.get_parts(bare):
        if part.area > _SPECK and not (
            _beside_opening(part, surface, boards, taken)
            or _where_narrow(part, surface, taken, rules.ticks("boards.limb.min") + 4 * step)
        ):
            at = part.representative_point()
            yield Objection(
                "VER-106",
                surface.id,
                f"bare ground at {at.x / TICKS_PER_MM:.0f}, {at.y / TICKS_PER_MM:.0f} mm that must be covered, "
                "or a gap that is too wide or is not listed as a seam",
            )
    least = ceil_to(rules.ticks("boards.gap.between"), step)
    # As wide as boards that are up are told to stand apart.
    as_up = {ticks_of(said.measured) for said in plan.findings if said.code == "BRD-104"}
    for seam in surface.seams:
        usual = rules.ticks("boards.gap.between") <= seam.width < least + step
        if not usual and seam.width not in as_up:
            yield Objection("VER-107", surface.id, "a seam is not as wide as the gap between boards")


def _may_stay_bare(surface: Surface, rules: RuleSet, step: int) -> shapely.Geometry:
    """Ground within the widest gap allowed of sides and openings."""
    parts = []
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        gap = _side_gap(kind, rules)
        # A board edge along a free side may still have to fall back to the last tape mark.
        parts.append(_strip(a, b, gap + step + _slack(a, b), _most_gap(rules) + step))
    for opening in surface.openings:
        depth = _opening_gap(opening, rules) + step + SLOPED_SLACK
        parts.append(board_hole(opening).buffer(depth, quad_segs=32, join_style="mitre"))
        if opening.outline is not None:
            parts += _round_strips(opening.outline, depth + opening.return_board)
    return unary_union(parts)


def _told_open(surface: Surface, plan: Document) -> shapely.Geometry:
    """Ground that a board is told to leave open at a wall within the widest gap there, or leaves as it is up."""
    most = plan.rules.ticks("boards.gap.perimeter.most")
    told = {said.place for said in plan.findings if said.code == "BRD-208"}
    near = [board.shape.buffer(most + _HAIR, join_style="mitre") for board in surface.boards if board.id in told]
    strips = [
        _strip(a, b, most + SLOPED_SLACK, most)
        for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True)
        if kind == "perimeter" and axis_near(a, b)
    ]
    beside = unary_union(near).intersection(unary_union(strips)) if near else Polygon()
    reach = widest_joint(plan.rules, plan.tape.graduation)
    up = [board.shape.buffer(reach, join_style="mitre") for board in surface.boards if board.fixed]
    return unary_union([beside, *up])


def widest_joint(rules: RuleSet, step: int) -> int:
    """What is wider beside a board as it stands is a strip to be filled [ticks]."""
    return (
        max(rules.ticks(f"boards.gap.{name}") for name in ("between", "perimeter", "foot", "opening")) + 2 * step
    )


def _most_gap(rules: RuleSet) -> int:
    return max(rules.ticks(rule) for rule in _SIDE_RULES.values())


def _round_strips(ring: Ring, depth: float) -> list[Polygon]:
    # At an opening's corner the board is notched square, which is wider than the gap is long.
    return [_strip(b, a, depth, depth) for a, b in sides(ring)]


def _where_narrow(part: Polygon, surface: Surface, taken: shapely.Geometry, limb: int) -> bool:
    """Whether bare ground lies where the ground itself is narrower than a limb of board, as between two openings.

    What of it is far from any board must be told as filled besides.
    """
    ground = Polygon(surface.outline).difference(taken)
    wide = ground.buffer(-limb / 2, join_style="mitre").buffer(limb / 2 + _HAIR, join_style="mitre")
    narrow = part.difference(wide if wide.is_valid else shapely.make_valid(wide))
    return bool(narrow.area >= 0.8 * part.area)


def _beside_opening(part: Polygon, surface: Surface, boards: shapely.Geometry, taken: shapely.Geometry) -> bool:
    """Whether bare ground is the run of a seam's line along an opening or side, with a board on one side only."""
    if part.distance(taken) > _HAIR:
        return False
    reach = max(part.bounds[2] - part.bounds[0], part.bounds[3] - part.bounds[1]) * 2
    for seam in surface.seams:
        longer = LineString(seam.line).distance(part) + reach
        if part.difference(seam_band(seam, longer=longer).buffer(_HAIR, join_style="mitre")).area > _SPECK:
            continue
        (au, av), (bu, bv) = seam.line
        length = math.hypot(bu - au, bv - av)
        off_u, off_v = -(bv - av) / length * seam.width, (bu - au) / length * seam.width
        both = [
            translate(part, off_u * way, off_v * way).intersection(boards).area > part.area / 2 for way in (1, -1)
        ]
        if not all(both):
            return True
    return False
