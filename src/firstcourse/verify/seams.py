"""Seams: really there, no four corners meeting, staggered, carried by members, off the panel joints."""

from collections.abc import Iterator
from itertools import combinations

from shapely import Point, Polygon, STRtree, get_parts, make_valid
from shapely.affinity import translate
from shapely.ops import unary_union

from firstcourse.geometry import axis_of, bounds, rectangle
from firstcourse.units import TICKS_PER_MM, ceil_to
from firstcourse.verify.coverage import SLACK, seam_band
from firstcourse.verify.structure import Document, Said, Seam, Surface
from firstcourse.verify.told import at_least, mm, said, ticks_of, told_of, untrue
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
    """Each seam that ends on a joint stands far from those on its other side, or it is told how near one is."""
    least = plan.rules.ticks("boards.stagger.end_joints")
    gap = ceil_to(plan.rules.ticks("boards.gap.between"), plan.tape.graduation)
    told = [one for code in ("BRD-201", "BRD-202") for one in told_of(surface, code, plan.findings)]
    close: dict[tuple[int, int, int], tuple[Said, bool]] = {}
    for axis in (0, 1):
        ends = [seam for seam in surface.seams if _along(seam, 1 - axis)]
        for joint in (seam for seam in surface.seams if _along(seam, axis)):
            level, (low, high) = joint.line[0][1 - axis], sorted(point[axis] for point in joint.line)
            reach = joint.width + plan.tape.graduation
            below, above = [], []
            for seam in ends:
                at, (start, end) = seam.line[0][axis], sorted(point[1 - axis] for point in seam.line)
                below += [at] if start < level and abs(end - level) <= reach else []
                above += [at] if end > level and abs(start - level) <= reach else []
            on_joint = [at for at in below if low - reach <= at <= high + reach]
            for one in above:
                apart = min((abs(one - other) for other in below), default=least)
                if apart >= least:
                    continue
                # Another joint at this level may lie between two seams; then it need not be told.
                here = low - reach <= one <= high + reach and any(abs(one - at) < least for at in on_joint)
                place = (axis, level, one)
                needs = here or (place in close and close[place][1])
                close[place] = (_close(surface, apart, least, gap), needs)
    wanted, may = ([one for one, needs in close.values() if needs is asked] for asked in (True, False))
    yield from untrue("VER-302", told, wanted, may)


def _close(surface: Surface, apart: int, least: int, gap: int) -> Said:
    """What is told of end joints so far apart [ticks]."""
    return said(
        "BRD-202" if apart <= gap else "BRD-201",
        "fix",
        surface.id,
        "other_size",
        rule="boards.stagger.end_joints",
        measured=mm(apart),
        limit=at_least(least),
    )


def _panel_joints(surface: Surface, plan: Document) -> Iterator[Objection]:
    """Each seam keeps off the panel joints that it runs beside, or it is told where it stands."""
    least = plan.rules.ticks("boards.offset.panel_joints")
    near: dict[tuple[bool, int], tuple[Said, bool]] = {}
    for seam in surface.seams:
        for joint in surface.panel_joints:
            axis = {"u": 0, "v": 1}.get(axis_of(*joint))
            if axis is None or not _along(seam, axis):
                continue
            low, high = sorted(point[axis] for point in seam.line)
            start, end = sorted(point[axis] for point in joint)
            apart = abs(seam.line[0][1 - axis] - joint[0][1 - axis]) - (seam.width + 1) // 2
            if apart < least + SLACK:
                # Where the joint ends before the seam begins it may be told all the same.
                place = (axis == 1, seam.line[0][1 - axis])
                needs = low < end and high > start and apart < least - SLACK
                needs = needs or (place in near and near[place][1])
                near[place] = (_near_joint(surface, seam, least, upright=axis == 1), needs)
    wanted, may = ([one for one, needs in near.values() if needs is asked] for asked in (True, False))
    yield from untrue("VER-304", told_of(surface, "BRD-203", plan.findings), wanted, may)


def _near_joint(surface: Surface, seam: Seam, least: int, *, upright: bool) -> Said:
    """What is told of a seam near a panel joint: where its gap begins."""
    at = seam.line[0][0 if upright else 1] - seam.width // 2
    return said(
        "BRD-203",
        "fix",
        surface.id,
        "shift_joint",
        rule="boards.offset.panel_joints",
        measured=mm(at),
        limit=at_least(least),
        upright=upright,
    )


def _small(surface: Surface, plan: Document) -> Iterator[Objection]:
    """Each board narrower than the least piece is told with its width; a window's return may be narrow."""
    least = plan.rules.ticks("boards.piece.min")
    if surface.part_of:
        left, lower, right, upper = bounds(surface.outline)
        least = min(least, (right - left) // 2, (upper - lower) // 2)
    wanted = []
    for board in surface.boards:
        left, lower, right, upper = bounds(board.outline)
        narrow = min(right - left, upper - lower)
        if narrow < least and not board.fixed:
            wanted.append(
                said(
                    "BRD-204",
                    "note",
                    board.id,
                    "both_edges",
                    rule="boards.piece.min",
                    measured=mm(narrow),
                    limit=at_least(least),
                )
            )
    yield from untrue("VER-307", told_of(surface, "BRD-204", plan.findings), wanted)


def _limbs(surface: Surface, plan: Document) -> Iterator[Objection]:
    """No part of a board is narrower than a limb may be, but for what is told, or no longer than it is wide."""
    limb = plan.rules.ticks("boards.limb.min")
    left = told_of(surface, "BRD-205", plan.findings)
    for board in surface.boards:
        box = bounds(board.outline)
        if board.fixed or min(box[2] - box[0], box[3] - box[1]) < limb:
            continue
        shape = board.shape
        # A limb is where no square fits in whose sides are a limb less two ticks. Beside a round hole it narrows
        # slowly: asked with any other width, its size would differ by more than rounding.
        wide = shape.buffer(1 - limb / 2, join_style="mitre").buffer(limb / 2 + 1, join_style="mitre")
        narrow = shape.difference(wide if wide.is_valid else make_valid(wide))
        for part in get_parts(narrow):
            u0, v0, u1, v1 = part.bounds
            so = next(
                (one for one in left if one.place == board.id and _is_limb(one, u1 - u0, v1 - v0, limb)), None
            )
            if so is not None:
                left.remove(so)
            longest = max(u1 - u0, v1 - v0)
            if longest > limb + _ROUNDED and part.area > longest * TICKS_PER_MM / 2 and so is None:
                at = part.representative_point()
                yield Objection(
                    "VER-308",
                    board.id,
                    f"a limb at {at.x / TICKS_PER_MM:.0f}, {at.y / TICKS_PER_MM:.0f} mm is too narrow",
                )
    for one in left:
        yield Objection("VER-308", one.place, "is told to have a narrow limb that it does not have")


def _is_limb(told: Said, wide: float, high: float, limb: int) -> bool:
    """Whether a finding tells of a limb so large, but for rounding."""
    sizes = [ticks_of(told.values.get(key)) for key in ("wide", "high")]
    if any(at is None or abs(at - size) > 2 * _ROUNDED for at, size in zip(sizes, (wide, high), strict=True)):
        return False
    values = {key: mm(at or 0) for key, at in zip(("wide", "high"), sizes, strict=True)}
    limit = at_least(limb)
    return told == said("BRD-205", "fix", told.place, "cut_off", rule="boards.limb.min", limit=limit, **values)


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
