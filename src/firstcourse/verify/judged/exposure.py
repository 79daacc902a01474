"""Materials against what a surface is exposed to: boards, barriers, mortar, fasteners, tile, ground, moisture."""

from collections.abc import Iterable, Iterator

from firstcourse.rules import RuleSet
from firstcourse.units import EMISSION
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.build_up import boards_of, family_of
from firstcourse.verify.formulas.derived import Number, Wanted, name, word
from firstcourse.verify.formulas.parts import Part
from firstcourse.verify.formulas.stance import fit_for
from firstcourse.verify.judged.asked import FIX, NOTE, STOP, Asked
from firstcourse.verify.judged.grounds import Laid, laid, number_or_none
from firstcourse.verify.structure import Document

CODES = frozenset(f"SUI-{number}" for number in (501, 502, 503, 504, 505, 507, 508, 509, *range(510, 520)))
_REFUSED = {"membrane": "SUI-509", "mortar": "SUI-511", "fastener": "SUI-512"}
_CLASSES = ("impervious", "vitreous", "semi_vitreous", "non_vitreous", "porous")
_WALKED_WET = ("wet", "steam")
_READINGS = (
    ("SUI-505", STOP, "wood", "%", "moisture.wood.max"),
    ("SUI-516", FIX, "slab_humidity", "%", "moisture.slab.rh_max"),
    ("SUI-517", FIX, "slab_emission", "lb/1000 ft²", "moisture.slab.mver_max"),
)


def exposure_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """What must be told of one surface's materials; nothing where the job does not say what it is exposed to."""
    given = part.given.part("exposure")
    if not given.value:
        return
    rules, zone, floor = plan.rules, given.text("zone"), part.surface.kind == "floor"
    families = dict.fromkeys(family_of(item) for item in boards_of(plan, part.surface))
    boards = list(families) or ([""] if part.surface.slab else [])
    tile = laid(plan, part.given, part.surface.kind)
    for board in boards:
        yield from _board(rules, part.ref, zone, board, floor=floor)
        yield from _barriers(rules, part.ref, zone, board, given, floor=floor)
    if not boards:
        return
    if given.flag("membrane", False) and zone in rules.text("exposure.membrane_zones").split():
        yield from _material(rules, part.ref, zone, "membrane", given.text("membrane_kind", "waterproof"))
    for kind, key in (("mortar", "mortar"), ("fastener", "fasteners")):
        if key in given.value:
            yield from _material(rules, part.ref, zone, kind, given.text(key))
    if "over" in given.value:
        entry = rules.entry(f"exposure.over.{given.text('over')}")
        yield Asked(
            code="SUI-510",
            severity=STOP,
            at=(part.ref,),
            rule=entry.id,
            remedies=("take_out",),
            values={"over": word(given.text("over")), "why": name(str(entry.value))},
        )
    yield from _tile(rules, part.ref, zone, tile, given.text("mortar", ""), floor=floor)
    yield from _moisture(rules, part.ref, given)


def _board(rules: RuleSet, ref: str, zone: str, board: str, *, floor: bool) -> Iterator[Asked]:
    if not board:
        return
    refused, heated = rules.find("exposure.wall_refused"), rules.text("exposure.heat_boards").split()
    fit = sorted(heated) if zone == "near_heat" else fit_for(rules, "board", zone)
    if refused is not None and not floor and board in str(refused.value).split():
        yield Asked(
            code="SUI-519",
            severity=STOP,
            at=(ref,),
            rule=refused.id,
            remedies=("use_board",),
            values={"board": word(board), **_standards(rules, fit)},
        )
        return
    if zone == "near_heat" and board in heated:
        yield Asked(
            code="SUI-507",
            severity=NOTE,
            at=(ref,),
            rule="exposure.heat_boards",
            remedies=("clearances",),
            values={"board": word(board)},
        )
        return
    entry, why = rules.entry(f"exposure.board.{board}"), rules.find(f"exposure.why.{board}")
    zones = str(entry.value).split()
    if zone in zones:
        return
    unlisted = board == "greenboard" and zone in _WALKED_WET
    values: dict[str, Wanted] = {
        "board": word(board),
        "zone": word(zone),
        "zones": _words(zones),
        "because": why is not None,
        "unlisted": unlisted,
    }
    values |= {} if why is None else {"why": name(str(why.value))}
    values |= {"year": Number(rules.number("exposure.greenboard.last_year"))} if unlisted else {}
    values |= _standards(rules, fit) if fit else {}
    remedy = "use_board" if fit else "no_board"
    yield Asked(code="SUI-501", severity=STOP, at=(ref,), rule=entry.id, remedies=(remedy,), values=values)


def _barriers(rules: RuleSet, ref: str, zone: str, board: str, given: Node, *, floor: bool) -> Iterator[Asked]:
    """Exactly one barrier, on the right side."""
    membrane, behind = given.flag("membrane", False), given.flag("retarder_behind", False)
    on_face = membrane or board in rules.text("exposure.own_barrier").split()
    one = Number(rules.number("exposure.barriers"))
    if on_face and behind and not floor:
        yield Asked(
            code="SUI-502",
            severity=STOP,
            at=(ref,),
            measured=Number(2),
            limit=one,
            sense="is",
            rule="exposure.barriers",
            remedies=("outer_wall" if zone == "exterior" else "one_barrier",),
            values={"membrane": membrane},
        )
    if behind and board in rules.text("exposure.no_retarder").split():
        yield Asked(
            code="SUI-508",
            severity=STOP,
            at=(ref,),
            rule="exposure.no_retarder",
            remedies=("leave_out",),
            values={"board": word(board)},
        )
    needs = zone in rules.text("exposure.membrane_zones").split()
    if needs and not on_face and not behind:
        yield Asked(
            code="SUI-503",
            severity=STOP,
            at=(ref,),
            limit=one,
            sense="is",
            rule="exposure.membrane_zones",
            remedies=("membrane",),
        )
    elif not membrane and zone in rules.text("exposure.face_only_zones").split():
        yield Asked(
            code="SUI-504", severity=STOP, at=(ref,), rule="exposure.face_only_zones", remedies=("membrane",)
        )


def _material(rules: RuleSet, ref: str, zone: str, kind: str, material: str) -> Iterator[Asked]:
    entry = rules.entry(f"exposure.{kind}.{material}")
    zones, fit = str(entry.value).split(), fit_for(rules, kind, zone)
    if zone in zones:
        return
    steam = kind == "membrane" and zone == "steam"
    values = {"material": word(material), "zone": word(zone), "zones": _words(zones), "steam": steam}
    yield Asked(
        code=_REFUSED[kind],
        severity=STOP,
        at=(ref,),
        limit=Number(rules.number("exposure.steam.perm_max"), "perm") if steam else None,
        sense="most" if steam else "",
        rule=entry.id,
        remedies=("use" if fit else "none_known",),
        values=values | ({"fit": _words(fit)} if fit else {}),
    )


def _tile(rules: RuleSet, ref: str, zone: str, tile: Laid, mortar: str, *, floor: bool) -> Iterator[Asked]:
    walked_wet = floor and zone in _WALKED_WET
    if tile.absorption is not None:
        of = _class_of(rules, tile.absorption)
        fit = fit_for(rules, "tile", zone)
        rule = f"exposure.tile.{of}" if of else "tile.absorption.non_vitreous"
        if walked_wet:
            rule = "exposure.wet_floor_tile"
            fit = [one for one in fit if one in rules.text(rule).split()]
        if of not in fit:
            values: dict[str, Wanted] = {
                "known": bool(of),
                "floor": floor,
                "zone": word(zone),
                "fit": _words(fit),
                "shares": [Number(rules.number(f"tile.absorption.{one}"), "%") for one in fit],
            }
            yield Asked(
                code="SUI-513",
                severity=STOP,
                at=(ref,),
                measured=Number(tile.absorption, "%"),
                rule=rule,
                remedies=("denser",),
                values=values | ({"class": word(of)} if of else {}),
            )
        bonding = rules.text("exposure.impervious_mortars").split()
        if of == "impervious" and mortar and mortar not in bonding:
            yield Asked(
                code="SUI-514",
                severity=STOP,
                at=(ref,),
                rule="exposure.impervious_mortars",
                remedies=("use_mortar",),
                values={"mortar": word(mortar), "bonding": _words(bonding)},
            )
    entry = rules.find("tile.slip.dcof")
    if entry is not None and floor and tile.friction is not None and tile.friction < rules.number(entry.id):
        yield Asked(
            code="SUI-515",
            severity=STOP if walked_wet else FIX,
            at=(ref,),
            measured=Number(tile.friction),
            limit=Number(rules.number(entry.id)),
            sense="least",
            rule=entry.id,
            remedies=("more_grip",),
        )


def _class_of(rules: RuleSet, absorption: float) -> str:
    """The densest class that takes up as much; none where it takes up more than any."""
    for of in _CLASSES:
        if rules.has(f"tile.absorption.{of}") and absorption <= rules.number(f"tile.absorption.{of}"):
            return of
    return ""


def _moisture(rules: RuleSet, ref: str, given: Node) -> Iterator[Asked]:
    emission = EMISSION.read(given.text("slab_emission")) if "slab_emission" in given.value else None
    taken = {
        "wood": number_or_none(given, "wood_moisture_percent"),
        "slab_humidity": number_or_none(given, "slab_humidity_percent"),
        "slab_emission": number_or_none(given, "slab_emission_lb") if emission is None else emission,
    }
    for code, severity, of, unit, rule in _READINGS:
        reading = taken[of]
        if reading is None:
            continue
        if not rules.has(rule):
            yield Asked(
                code="SUI-518",
                severity=FIX,
                at=(ref,),
                measured=Number(reading, unit),
                remedies=("ask_makers",),
                values={"reading": word(of), "practice": word(rules.practice)},
            )
        elif reading > rules.number(rule):
            yield Asked(
                code=code,
                severity=severity,
                at=(ref,),
                measured=Number(reading, unit),
                limit=Number(rules.number(rule), unit),
                sense="most",
                rule=rule,
                remedies=("dry",),
            )


def _standards(rules: RuleSet, boards: Iterable[str]) -> dict[str, Wanted]:
    """Boards with the standard that each is made to, as far as the book knows one."""
    each = {board: rules.find(f"exposure.standard.{board}") for board in boards}
    return {
        "fit": _words(each),
        "standards": [name("" if one is None else str(one.value)) for one in each.values()],
        "known": [one is not None for one in each.values()],
    }


def _words(codes: Iterable[str]) -> list[Wanted]:
    return [word(code) for code in codes]
