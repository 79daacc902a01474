"""Seams: really there, no four corners meeting, staggered, carried by members, off the panel joints."""

from collections.abc import Iterator
from itertools import combinations

from shapely import Point, Polygon, STRtree, get_parts, make_valid
from shapely.affinity import translate
from shapely.ops import unary_union

from firstcourse.geometry import axis_of, bounds, rectangle
from firstcourse.units import TICKS_PER_MM, ceil_to
from firstcourse.verify.coverage import SLACK, seam_band
from firstcourse.verify.structure import Document, Seam, Surface
from firstcourse.verify.verdict import Objection

_NOISE = 200.0
_ROUNDED = 2


def check_seams(plan: Document) -> Iterator[Objection]:
    """Object to seams that are not there or stand where the rules let none stand."""
    for surface in plan.surfaces:
        yield from _real(surface)
        yield from _corners(surface, plan)
        yield from _staggered(surface, plan)
        yield from _panel_joints(surface, plan)
        yield from _small(surface, plan)
        yield from _limbs(surface, plan)
        if surface.framing_axis and not surface.carried_everywhere and surface.boards:
            yield from _bearing(surface, plan)


def _real(surface: Surface) -> Iterator[Objection]:
    boards = unary_union([board.shape for board in surface.boards])
    bands = [seam_band(seam) for seam in surface.seams]
    for seam, band in zip(surface.seams, bands, strict=True):
        (au, av), (bu, bv) = seam.line
        where = f"{surface.id} seam {seam.line}"
        if band.intersection(boards).area > _NOISE + band.length * SLACK:
            yield Objection("VER-305", where, "a seam is listed where a board lies")
            continue
        # Along an opening one side may be bare; a seam with boards on neither side joins nothing.
        length = ((bu - au) ** 2 + (bv - av) ** 2) ** 0.5
        off = (-(bv - av) / length * seam.width, (bu - au) / length * seam.width)
        touched = sum(translate(band, off[0] * way, off[1] * way).intersection(boards).area for way in (1, -1))
        if touched < band.area / 2:
            yield Objection("VER-305", where, "a seam is listed where no boards meet")
    for (one, a), (other, b) in combinations(zip(surface.seams, bands, strict=True), 2):
        if a.intersects(b) and a.intersection(b).area > 2 * one.width * other.width:
            yield Objection("VER-305", f"{surface.id} seam {one.line}", "is listed twice")


def _corners(surface: Surface, plan: Document) -> Iterator[Objection]:
    if plan.says(surface, code="BRD-202"):
        return
    reach = 1.5 * ceil_to(plan.rules.ticks("boards.gap.between"), plan.tape.graduation)
    shapes = [board.shape for board in surface.boards]
    tree = STRtree(shapes)
    met: set[tuple[int, ...]] = set()
    for board in surface.boards:
        for corner in board.outline:
            near = tuple(sorted(tree.query(Point(corner), predicate="dwithin", distance=reach).tolist()))
            if len(near) >= 4:
                met.add(near)
    for near in sorted(met):
        yield Objection(
            "VER-301", surface.id, f"corners meet: {', '.join(surface.boards[index].id for index in near)}"
        )


def _along(seam: Seam, axis: int) -> bool:
    return seam.line[0][1 - axis] == seam.line[1][1 - axis]


def _staggered(surface: Surface, plan: Document) -> Iterator[Objection]:
    least = plan.rules.ticks("boards.stagger.end_joints")
    gap = ceil_to(plan.rules.ticks("boards.gap.between"), plan.tape.graduation)
    close, meeting = (plan.says(surface, code=code) for code in ("BRD-201", "BRD-202"))
    for axis in (0, 1):
        ends = [seam for seam in surface.seams if _along(seam, 1 - axis)]
        for joint in (seam for seam in surface.seams if _along(seam, axis)):
            level, (low, high) = joint.line[0][1 - axis], sorted(point[axis] for point in joint.line)
            reach = joint.width + plan.tape.graduation
            below, above = [], []
            for seam in ends:
                at, (start, end) = seam.line[0][axis], sorted(point[1 - axis] for point in seam.line)
                if low - reach <= at <= high + reach:
                    below += [at] if start < level and abs(end - level) <= reach else []
                    above += [at] if end > level and abs(start - level) <= reach else []
            for one in below:
                for other in above:
                    distance = abs(one - other)
                    if distance < least and not (meeting if distance <= gap else close):
                        yield Objection(
                            "VER-302", surface.id, f"end joints at {one} and {other} ticks are not staggered"
                        )


def _panel_joints(surface: Surface, plan: Document) -> Iterator[Objection]:
    if plan.says(surface, code="BRD-203"):
        return
    least = plan.rules.ticks("boards.offset.panel_joints")
    for seam in surface.seams:
        for joint in surface.panel_joints:
            axis = {"u": 0, "v": 1}.get(axis_of(*joint))
            if axis is None or not _along(seam, axis):
                continue
            low, high = sorted(point[axis] for point in seam.line)
            start, end = sorted(point[axis] for point in joint)
            apart = abs(seam.line[0][1 - axis] - joint[0][1 - axis]) - (seam.width + 1) // 2
            if low < end and high > start and apart < least - SLACK:
                yield Objection("VER-304", surface.id, f"seam {seam.line} stands too near a panel joint")


def _small(surface: Surface, plan: Document) -> Iterator[Objection]:
    if plan.says(surface, code="BRD-204"):
        return
    left, lower, right, upper = bounds(surface.outline)
    least = min(plan.rules.ticks("boards.piece.min"), (right - left) // 2, (upper - lower) // 2)
    for board in surface.boards:
        left, lower, right, upper = bounds(board.outline)
        if min(right - left, upper - lower) < least:
            yield Objection("VER-307", board.id, "is narrower than the least piece, and no finding says so")


def _limbs(surface: Surface, plan: Document) -> Iterator[Objection]:
    """No part of a board is narrower than a limb may be, but for what is no longer than a limb is wide."""
    if plan.says(surface, code="BRD-205"):
        return
    limb = plan.rules.ticks("boards.limb.min")
    for board in surface.boards:
        left, lower, right, upper = bounds(board.outline)
        if board.fixed or min(right - left, upper - lower) < limb:
            continue
        shape = board.shape
        wide = shape.buffer(_ROUNDED - limb / 2, join_style="mitre").buffer(
            limb / 2 + _ROUNDED, join_style="mitre"
        )
        narrow = shape.difference(wide if wide.is_valid else make_valid(wide))
        for part in get_parts(narrow):
            box = part.bounds
            longest = max(box[2] - box[0], box[3] - box[1])
            if longest > limb + _ROUNDED and part.area > longest * TICKS_PER_MM / 2:
                at = part.representative_point()
                yield Objection(
                    "VER-308",
                    board.id,
                    f"a limb at {at.x / TICKS_PER_MM:.0f}, {at.y / TICKS_PER_MM:.0f} mm is too narrow",
                )


def _bearing(surface: Surface, plan: Document) -> Iterator[Objection]:
    axis = 1 if surface.framing_axis == "v" else 0
    bearing, trim = plan.rules.ticks("boards.bearing.min"), 2 * plan.tape.graduation
    faces = unary_union([Polygon(support.outline) for support in surface.supports])
    speck = float(2 * plan.tape.graduation) ** 2
    for seam in surface.seams:
        if not _along(seam, axis):
            continue
        at, (low, high) = seam.line[0][1 - axis], sorted(point[axis] for point in seam.line)
        if high - low <= 2 * trim:
            continue
        half = seam.width // 2 + bearing - SLACK
        band = (
            rectangle(at - half, low + trim, at + half, high - trim)
            if axis
            else rectangle(low + trim, at - half, high - trim, at + half)
        )
        if Polygon(band).difference(faces).area > speck:
            yield Objection("VER-303", surface.id, f"boards do not bear on a member along seam {seam.line}")
