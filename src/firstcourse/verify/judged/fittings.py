"""What must be told of what meets the finished height: doorways, rims, valves, trim, and a wall's load."""

from collections.abc import Iterator

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.build_up import boards_of, density_of, family_of
from firstcourse.verify.formulas.derived import Number, Wanted, word
from firstcourse.verify.formulas.doorways import doorways_given, step_key, taken_up
from firstcourse.verify.formulas.parts import Part, length_mm
from firstcourse.verify.formulas.stance import height_of, is_plumb, lean_of
from firstcourse.verify.judged.asked import FIX, NOTE, STOP, Asked
from firstcourse.verify.judged.grounds import all_grounds, is_bed, laid
from firstcourse.verify.judged.showers import along_doorway, rims
from firstcourse.verify.shopping_fields import number_of
from firstcourse.verify.structure import Document

CODES = frozenset(f"SUI-{number}" for number in (304, 305, 601, 602, 603, 604, 605, 606, 607, 608))
_ROUNDED = 1e-4
"""Heights are told to a millionth of an inch [mm]."""
_ON_FALLS = 0.0035
"""Heights of falling floors are rounded to ticks, twice at most [mm]."""
_NONE = 1e-6


def doorways_asked(plan: Document) -> Iterator[Asked]:
    """What must be told of the step at each doorway, and of the gap under its door."""
    unjudged = {said.place for said in plan.findings if said.code == "SUI-902"}
    beds = {part.ref: part for part in all_grounds(plan) if is_bed(part)}
    for ref, door in doorways_given(plan).items():
        working = plan.workings.get(step_key(ref))
        floor = ref.partition("/door/")[0]
        if working is None or {floor, f"{floor}/shower"} & unjudged:
            continue
        high = number_of(working.inputs.get("this_floor")) or 0.0
        bed = beds.get(f"{floor}/shower")
        fall = None if bed is None else bed.surface.fall
        if bed is not None and fall is not None and fall.drain_height is not None:
            high = along_doorway(plan, bed, fall, fall.drain_height, door)[1] / TICKS_PER_MM
        rise = high - length_mm(door, "other_floor")
        yield from _step(plan, ref, rise, _ROUNDED if fall is None else _ON_FALLS)
        if "door_underside" in door.value:
            gap, least = length_mm(door, "door_underside") - high, _mm_of(plan.rules, "door.clearance.min")
            near = _NONE if fall is None else _ON_FALLS
            if gap < least + near:
                yield Asked(
                    code="SUI-603",
                    severity=FIX,
                    at=(ref,),
                    measured=Number(gap, "mm"),
                    limit=Number(least, "mm"),
                    sense="least",
                    rule="door.clearance.min",
                    remedies=("cut",),
                    values={"drags": gap > 0, "off": Number(least - gap, "mm")},
                    slack=max(near, _ROUNDED),
                    may=gap > least - near,
                )


def _step(plan: Document, ref: str, rise: float, near: float) -> Iterator[Asked]:
    rules, step = plan.rules, abs(rise)
    taken = taken_up(rules, step, plan.tape.graduation / TICKS_PER_MM)
    profile = taken.pop("profile")
    if profile == "straight_edge_trim":
        return
    bevel = profile == "bevelled_reducer"
    rule = "transition.vertical.max" if bevel else "transition.bevel.max"
    yield Asked(
        code="SUI-601" if bevel else "SUI-602",
        severity=NOTE if bevel else FIX,
        at=(ref,),
        measured=Number(step, "mm"),
        limit=Number(_mm_of(rules, rule), "mm"),
        sense="most",
        rule=rule,
        remedies=("profile",),
        values={
            "up": rise > 0,
            "over": Number(step - _mm_of(rules, "transition.bevel.max"), "mm"),
            **{name: Number(*each) for name, each in taken.items()},
        },
        slack=20 * near,
    )


def fittings_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """What must be told of what meets a tiled surface that has its layers everywhere."""
    if is_bed(part):
        for rim, kind, above in rims(plan, part):
            yield from _rim(plan.rules, part.ref, rim, kind, above, _ON_FALLS)
        return
    if not part.is_tiled:
        return
    high = sum(thick for _, thick in part.surface.layers) / TICKS_PER_MM
    openings = part.given.nodes("openings", ())
    if part.surface.kind == "floor":
        for opening in openings:
            if "top" in opening.value and opening.text("kind") in ("flange", "drain"):
                rim = f"{part.ref}/opening/{opening.text('id')}"
                above = length_mm(opening, "top") - high
                yield from _rim(plan.rules, part.ref, rim, opening.text("kind"), above)
        if "flange_top" in part.given.value:
            above = length_mm(part.given, "flange_top") - high
            yield from _rim(plan.rules, part.ref, f"{part.ref}/flange", "flange", above)
    elif part.surface.kind == "wall":
        for opening in openings:
            if "depth" in opening.value and opening.text("kind") == "valve":
                yield from _valve(plan, part, opening, high)
    if "trim" in part.given.value:
        yield from _trim(plan.rules, part, length_mm(part.given, "trim"))
    if part.surface.kind != "floor":
        yield from _carried(plan, part)


def _rim(rules: RuleSet, ref: str, rim: str, kind: str, above: float, near: float = _ROUNDED) -> Iterator[Asked]:
    """What must be told of a flange or drain whose rim lies so far over the finished floor [mm]."""
    flange = kind == "flange"
    rule = "flange.above.max" if flange else "drain.below.max"
    most, off = _mm_of(rules, rule), above if flange else -above
    if near / 2 <= off <= most - near / 2:
        return
    within = -near / 2 <= off <= most + near / 2
    if flange:
        low = "rings" if rules.practice == "us" else "bring_up"
        values: dict[str, Wanted] = {
            "above": off > 0,
            "by": Number(off - most if off > 0 else -off, "mm"),
            "at_most": Number(abs(most - off), "mm"),
        }
        remedy = "lower" if off > 0 else low
    else:
        values = {"below": off > 0, "by": Number(max(off - most, 0.0), "mm")}
        remedy = "raise" if off > 0 else "lower"
    yield Asked(
        code="SUI-604" if flange else "SUI-607",
        severity=FIX,
        at=(ref, rim),
        measured=Number(abs(off), "mm"),
        limit=Number(most, "mm"),
        sense="most",
        rule=rule,
        remedies=(remedy,),
        values=values,
        slack=2 * near,
        may=within,
    )


def _valve(plan: Document, part: Part, opening: Node, bare: float) -> Iterator[Asked]:
    """A wall's layers, and the furring it is to get there, within a valve's window of depth."""
    least, most = (each / TICKS_PER_MM for each in opening.point("depth"))
    furring = _furred_at(plan, part, length_mm(opening, "bottom") if "bottom" in opening.value else 0.0)
    high = bare + furring
    near = min(abs(each - edge) for each in (high, bare) for edge in (least, most)) <= _NONE
    fits = least <= high <= most
    if fits and least <= bare <= most:
        return
    values: dict[str, Wanted] = {
        "from": Number(least, "mm"),
        "to": Number(most, "mm"),
        "furred": furring > 0,
        "furring": Number(furring, "mm"),
    }
    if not fits:
        beyond = high > most
        values |= {"beyond": beyond, "by": Number(high - most if beyond else least - high, "mm")}
    yield Asked(
        code="SUI-608" if fits else "SUI-605",
        severity=NOTE if fits else FIX,
        at=(part.ref, f"{part.ref}/opening/{opening.text('id')}"),
        measured=Number(high, "mm"),
        remedies=("fur" if fits else "move",),
        values=values,
        slack=_ROUNDED,
        may=near,
    )


def _furred_at(plan: Document, part: Part, up: float) -> float:
    """What a wall out of plumb is furred out by at a height above the floor [mm]."""
    lean = lean_of(part.room, part.wall)
    if lean is None or is_plumb(plan, part, lean):
        return 0.0
    share = up / height_of(part)
    return lean * (1 - share) if lean > 0 else -lean * share


def _trim(rules: RuleSet, part: Part, trim: float) -> Iterator[Asked]:
    wanted = sum(thick for of, thick in part.surface.layers if of in ("tile", "mortar")) / TICKS_PER_MM
    give = _mm_of(rules, "trim.height.tolerance")
    if abs(trim - wanted) > give + _NONE:
        yield Asked(
            code="SUI-606",
            severity=FIX,
            at=(part.ref,),
            measured=Number(trim, "mm"),
            limit=Number(wanted, "mm"),
            sense="is",
            rule="trim.height.tolerance",
            remedies=("trim",),
            values={"above": trim > wanted, "give": Number(give, "mm")},
            slack=_ROUNDED,
        )


def _carried(plan: Document, part: Part) -> Iterator[Asked]:
    """Tile, mortar and grout against what each board that may be there carries."""
    rules, face = plan.rules, laid(plan, part.given, part.surface.kind).face
    mass = rules.number("mass.grout") + sum(
        thick / TICKS_PER_MM / 1000 * density_of(plan, part, of)
        for of, thick in part.surface.layers
        if of in ("mortar", "tile")
    )
    for family in dict.fromkeys(family_of(item) for item in boards_of(plan, part.surface)):
        rule = f"wall.mass.{family}"
        if not rules.has(rule):
            continue
        most, share = rules.number(rule), rules.find("wall.mass.solid_bed_share")
        if mass > most:
            yield Asked(
                code="SUI-304",
                severity=STOP,
                at=(part.ref,),
                measured=Number(mass, "kg/m²"),
                limit=Number(most, "kg/m²"),
                sense="most",
                rule=rule,
                remedies=("thinner",),
                values={"backing": word(family)},
            )
        elif share is not None and face is not None and face < rules.number("tile.joint.small_area"):
            part_of_it = most * rules.number(share.id) / 100
            if mass > part_of_it:
                yield Asked(
                    code="SUI-305",
                    severity=NOTE,
                    at=(part.ref,),
                    measured=Number(mass, "kg/m²"),
                    limit=Number(part_of_it, "kg/m²"),
                    sense="most",
                    rule=share.id,
                    remedies=("butter",),
                    values={"backing": word(family), "share": Number(rules.number(share.id), "%")},
                )


def _mm_of(rules: RuleSet, rule: str) -> float:
    return rules.ticks(rule) / TICKS_PER_MM
