"""What must be said of tile as it is laid: slivers and why, niches off the courses, joints that are cut."""

from collections.abc import Iterator

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM, ticks_from_mm
from firstcourse.verify.fields import Node
from firstcourse.verify.soft_joints import asked_of
from firstcourse.verify.start_fields import CONTINUED, Start
from firstcourse.verify.start_reasons import tilings
from firstcourse.verify.starts import cuts_in
from firstcourse.verify.structure import Document, Said, Surface, TiledArea
from firstcourse.verify.told import at_least, at_most, given, mm, ref, said, word

CODES = frozenset({"TIL-110", "TIL-111", "TIL-121", "TIL-122"})
_COURSED = ("stacked", "running")
_ASKEW = TICKS_PER_MM
_FINEST_SHARE = 1 / 24


def laid_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of how each surface's tile comes out."""
    asked = tilings(plan)
    for surface in plan.surfaces:
        if surface.tiled:
            tiling = asked.get(surface.id)
            yield from _slivers(surface, tiling, plan)
            yield from _niches(surface, plan)
            yield from _cut_along(surface, plan)


def _slivers(surface: Surface, tiling: Node | None, plan: Document) -> Iterator[Said]:
    """A sliver that the start leaves, with the reason; of a band that lies on other joints than the field too."""
    is_given = tiling is not None and "start" in tiling.value
    for number, area in enumerate(surface.tiled):
        if not area.starts or not area.starts[0].sliver or (number and area.role != "band"):
            continue
        if area.starts[0].why not in CONTINUED:
            at = f"{surface.id}/band" if number else surface.id
            yield _sliver(surface, area, at, plan, is_given=is_given and not number)


def _sliver(surface: Surface, area: TiledArea, at: str, plan: Document, *, is_given: bool) -> Said:
    rule, pick = "tiling.start.least_cut", area.starts[0]
    share = plan.rules.number("tiling.start.least_share")
    without = next((number for number, start in enumerate(area.starts) if not start.sliver), 0)
    if is_given:
        why = "given"
    elif without:
        why = "cuts_more"
    else:
        many = _met_in_many_ways(surface, area, plan.rules.ticks(rule), share)
        why = "many_ways" if many else "none_without"
    width, smallest, tried = _told(surface, pick, at, plan)
    return said(
        "TIL-121",
        "note",
        at,
        why,
        rule=rule,
        measured=mm(width),
        limit=at_least(plan.rules.ticks(rule)),
        why=word(why),
        edge=ref(pick.narrowest_at),
        named=bool(pick.narrowest_at),
        smallest=smallest,
        share=given(100 * share, "%"),
        instead=without,
        more=area.starts[without].cut_tiles - pick.cut_tiles,
        most_more=int(plan.rules.number("tiling.start.more_cuts")),
        tried=tried,
    )


def _told(surface: Surface, pick: Start, at: str, plan: Document) -> tuple[int, bool, int]:
    """Width of the narrowest sliver, whether no cut is smaller, and how many starts were laid in search.

    A sliver that is wider than the smallest cut, beside smaller tile, is one that is drawn, as near as it can be
    marked. How many starts were laid cannot be derived: one at least; one alone where none was searched for.
    """
    told = next((one for one in plan.findings if one.code == "TIL-121" and one.place == at), None)
    if told is None:
        return pick.smallest_cut, True, 1
    width = ticks_from_mm(told.amount or 0.0)
    searched = pick.why in ("best", "round_corners", "no_sliver")
    tried = told.values.get("tried")
    laid = tried if searched and isinstance(tried, int) and tried > 1 else 1
    limit = plan.rules.ticks("tiling.start.least_cut")
    if pick.smallest_cut < width <= limit and _is_drawn(surface, width, plan):
        return width, False, laid
    return pick.smallest_cut, True, laid


def _is_drawn(surface: Surface, width: int, plan: Document) -> bool:
    """Whether a cut of a width is among those that are drawn; a surface with bands is searched closed up."""
    found = cuts_in(surface, plan.rules)
    near = plan.tape.graduation // 2
    return len(surface.tiled) > 1 or any(abs(cut.width - width) <= near for cut in found)


def _met_in_many_ways(surface: Surface, area: TiledArea, least: int, share: float) -> bool:
    """Whether edges meet tiles askew, or rows nearer to each other than a good cut is wide."""
    rings = {tile.laid for tile in surface.tiles if tile.laid and tile.stock in area.tiles}
    shapes = {tuple((u - ring[0][0], v - ring[0][1]) for u, v in ring) for ring in rings}
    for axis in (0, 1):
        extents = [max(point[axis] for point in ring) - min(point[axis] for point in ring) for ring in shapes]
        step = _rows_apart([abs(step[axis]) for step in area.steps])
        if not extents or step is None or step * TICKS_PER_MM <= _FINEST_SHARE * min(extents):
            return True
        if step * TICKS_PER_MM < min(least, share * max(extents)):
            return True
    return any(
        abs(a[0] - b[0]) > _ASKEW and abs(a[1] - b[1]) > _ASKEW
        for ring in shapes
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
    )


def _rows_apart(steps: list[float]) -> float | None:
    """The length that all steps are whole times of [mm]."""
    if len(steps) != 2:
        return None
    long, short = max(steps), min(steps)
    while short > 1e-3:
        long, short = short, abs(long - round(long / short) * short)
    return long


def _niches(surface: Surface, plan: Document) -> Iterator[Said]:
    """Niches whose sill or head lies off the courses of the wall, with the nearest place on them."""
    # A band at the foot comes before the field above it.
    area = next((area for area in surface.tiled if area.role == "field"), surface.tiled[0])
    coursed = area.pattern in _COURSED and not area.angle and len(area.steps) == 2
    if surface.kind != "wall" or area.role != "field" or not coursed:
        return
    pitch, joint = ticks_from_mm(area.steps[1][1]), area.joint
    for opening in surface.openings:
        if opening.kind != "niche" or opening.outline is None:
            continue
        _, bottom, _, top = bounds(opening.outline)
        level = _level(surface, bottom)
        sill = level + round((bottom + joint - level) / pitch) * pitch - joint
        head = max(level + round((top - level) / pitch) * pitch, sill + joint + pitch)
        if max(abs(sill - bottom), abs(head - top)) >= plan.tape.graduation:
            yield said(
                "TIL-122",
                "note",
                f"{surface.id}/opening/{opening.id}",
                "set",
                sill=mm(bottom),
                head=mm(top),
                better_sill=mm(sill),
                better_height=mm(head - sill),
                courses=(head - sill - joint) // pitch,
            )


def _level(surface: Surface, height: int) -> int:
    """Where the courses start that lie at a height: over a band they lie otherwise than below it."""
    fields = [area for area in surface.tiled if area.role == "field" and area.starts]
    below = [area for area in fields if area.shape.bounds[1] * 1.0 <= height]
    return max(below or fields[:1], key=lambda area: area.shape.bounds[1]).origin[1]


def _cut_along(surface: Surface, plan: Document) -> Iterator[Said]:
    """Joints free to move that tiles are cut along, and such joints wider than sealant may fill."""
    across = [joint for joint in surface.soft_joints if joint.place == "field"]
    # Beside bands and borders a joint may run on the joints of the field and through tiles of another pattern.
    if len(surface.tiled) == 1:
        for why in dict.fromkeys(joint.why for joint in across if joint.cut):
            yield _cut_clean(surface, why, plan)
    widest = max((joint.width for joint in surface.soft_joints), default=0)
    limit = "tile.sealant.max_width"
    if widest > plan.rules.ticks(limit):
        wide = {"measured": mm(widest), "limit": at_most(plan.rules.ticks(limit))}
        yield said("TIL-111", "fix", surface.id, "closer", rule=limit, **wide)


def may_be_cut(plan: Document) -> Iterator[Said]:
    """What may be said besides: a joint is called cut by the field's pattern, and no tile need lie in its way."""
    for surface in plan.surfaces:
        if surface.tiled:
            field = any(joint.why == "field" for joint in surface.soft_joints)
            whys = {joint.why for joint in surface.soft_joints if joint.place == "field" and joint.cut}
            there = whys if len(surface.tiled) == 1 else set()
            for why in ("doorway", "structural_joint", "control_joint", "change_of_backing", *(["field"] * field)):
                if why not in there:
                    yield _cut_clean(surface, why, plan)


def _cut_clean(surface: Surface, why: str, plan: Document) -> Said:
    rule = asked_of(surface, plan).rule if why == "field" else "tile.movement.required"
    return said("TIL-110", "note", surface.id, "cut_clean", rule=rule, why=word(why))
