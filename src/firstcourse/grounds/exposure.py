"""Right material, right place: which boards stand in which zone, and exactly one barrier against water."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Value, Word, just, measure, most
from firstcourse.workings import Working


class Zone(StrEnum):
    """What a surface is exposed to."""

    DRY = "dry"
    DAMP = "damp"
    WET = "wet"
    STEAM = "steam"
    EXTERIOR = "exterior"
    NEAR_HEAT = "near_heat"


_REFUSED = {"membrane": "SUI-509", "mortar": "SUI-511", "fastener": "SUI-512"}
_GREEN = "greenboard"


@dataclass(frozen=True, slots=True, kw_only=True)
class ExposedSurface:
    """A surface with its board, its barriers and what holds the tile.

    Attributes:
        ref: Reference to the surface.
        zone: What it is exposed to.
        board: Board family, such as `fibre_cement`, `cement_board`, `coated_gypsum`, `greenboard`, `plasterboard`,
            `plywood`, `strand_board`.
        membrane_on_face: A membrane over the board.
        membrane: What it is, by the rule book's names.
        retarder_behind: A vapour retarder between board and framing.
        is_floor: Floors ask for no vapour retarder behind.
        mortar, fastener: By the rule book's names; empty where not said.
        over: What boards or tile go onto, by the rule book's names of doubtful grounds; empty otherwise.
        absorption_percent: Water the tile takes up; None where not known.
        wet_friction: The tile's wet dynamic coefficient of friction; None where not known.
        wood_moisture_percent: Reading in the framing; None where not taken.
        slab_humidity_percent: Relative humidity in the slab; None where not taken.
        slab_emission_lb: Moisture the slab gives off [lb/1000 ft²/24 h]; None where not taken.
    """

    ref: str
    zone: Zone
    board: str
    membrane_on_face: bool = False
    membrane: str = "waterproof"
    retarder_behind: bool = False
    is_floor: bool = False
    mortar: str = ""
    fastener: str = ""
    over: str = ""
    absorption_percent: float | None = None
    wet_friction: float | None = None
    wood_moisture_percent: float | None = None
    slab_humidity_percent: float | None = None
    slab_emission_lb: float | None = None


def judge_board(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """Whether the board may stand in its zone, and if not why, and which may; nothing where there is no board.

    Raises:
        InputValueError: The rule book has no such board family.
    """
    if not surface.board:
        return ()
    rule = f"exposure.board.{surface.board}"
    if not rules.has(rule):
        boards = ", ".join(entry.id.removeprefix("exposure.board.") for entry in rules.under("exposure.board."))
        raise InputValueError(f"no board family '{surface.board}'; the rule book has {boards}")
    board, zone = Word(word=surface.board), Word(word=surface.zone.value)
    refused = rules.find("exposure.wall_refused")
    if refused is not None and not surface.is_floor and surface.board in str(refused.value).split():
        return (
            refused.found(
                "SUI-519",
                Severity.STOP,
                surface.ref,
                measured=None,
                limit=None,
                remedies=("use_board",),
                board=board,
                **_named(rules, boards_for(rules, surface.zone)),
            ),
        )
    if surface.zone is Zone.NEAR_HEAT and surface.board in rules.text("exposure.heat_boards").split():
        heat = rules.entry("exposure.heat_boards")
        return (heat.found("SUI-507", Severity.NOTE, surface.ref, remedies=("clearances",), board=board),)
    entry = rules.entry(rule)
    zones = rules.text(rule).split()
    if surface.zone.value in zones:
        return ()
    reason = rules.find(f"exposure.why.{surface.board}")
    unlisted = surface.board == _GREEN and surface.zone in (Zone.WET, Zone.STEAM)
    values: dict[str, Value] = {"board": board, "zone": zone, "zones": _words(zones)}
    values |= {"because": reason is not None, "unlisted": unlisted}
    if reason is not None:
        values["why"] = Name(name=str(reason.value))
    if unlisted:
        values["year"] = measure(rules.number("exposure.greenboard.last_year"))
    if fit := boards_for(rules, surface.zone):
        values |= _named(rules, fit)
    return (
        entry.found(
            "SUI-501",
            Severity.STOP,
            surface.ref,
            measured=None,
            limit=None,
            remedies=("use_board" if fit else "no_board",),
            **values,
        ),
    )


def boards_for(rules: RuleSet, zone: Zone) -> tuple[str, ...]:
    """Board families that may stand in a zone."""
    if zone is Zone.NEAR_HEAT:
        return tuple(sorted(rules.text("exposure.heat_boards").split()))
    return allowed(rules, "board", zone)


def allowed(rules: RuleSet, kind: str, zone: Zone) -> tuple[str, ...]:
    """What the rule book allows in a zone: `board`, `membrane`, `mortar`, `fastener` or `tile`."""
    prefix = f"exposure.{kind}."
    return tuple(
        entry.id.removeprefix(prefix) for entry in rules.under(prefix) if zone.value in str(entry.value).split()
    )


def judge_barriers(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """Exactly one barrier against water and vapour, on the right side."""
    own = surface.board in rules.text("exposure.own_barrier").split()
    face = surface.membrane_on_face or own
    zones, face_only = (
        rules.text("exposure.membrane_zones").split(),
        rules.text("exposure.face_only_zones").split(),
    )
    exactly = just(measure(rules.number("exposure.barriers")))
    found: list[Finding] = []
    if face and surface.retarder_behind and not surface.is_floor:
        found.append(
            rules.entry("exposure.barriers").found(
                "SUI-502",
                Severity.STOP,
                surface.ref,
                measured=measure(2),
                limit=exactly,
                remedies=("outer_wall" if surface.zone is Zone.EXTERIOR else "one_barrier",),
                membrane=surface.membrane_on_face,
            )
        )
    if surface.retarder_behind and surface.board in rules.text("exposure.no_retarder").split():
        found.append(
            rules.entry("exposure.no_retarder").found(
                "SUI-508",
                Severity.STOP,
                surface.ref,
                remedies=("leave_out",),
                board=Word(word=surface.board),
            )
        )
    if not face and not surface.retarder_behind and surface.zone.value in zones:
        found.append(
            rules.entry("exposure.membrane_zones").found(
                "SUI-503", Severity.STOP, surface.ref, limit=exactly, remedies=("membrane",)
            )
        )
    elif not surface.membrane_on_face and surface.zone.value in face_only:
        found.append(
            rules.entry("exposure.face_only_zones").found(
                "SUI-504", Severity.STOP, surface.ref, remedies=("membrane",)
            )
        )
    if surface.membrane_on_face and surface.zone.value in zones:
        found += judge_material(rules, surface, "membrane", surface.membrane)
    return tuple(found)


def judge_material(rules: RuleSet, surface: ExposedSurface, kind: str, name: str) -> tuple[Finding, ...]:
    """Whether a membrane, mortar or fastener may be used in the surface's zone.

    Raises:
        InputValueError: The rule book does not know it.
    """
    rule = f"exposure.{kind}.{name}"
    if not rules.has(rule):
        known = ", ".join(entry.id.rsplit(".", 1)[1] for entry in rules.under(f"exposure.{kind}."))
        raise InputValueError(f"no {kind} '{name}'; the rule book has {known}")
    zones = rules.text(rule).split()
    if surface.zone.value in zones:
        return ()
    fit = allowed(rules, kind, surface.zone)
    steam = kind == "membrane" and surface.zone is Zone.STEAM
    values: dict[str, Value] = {"fit": _words(fit)} if fit else {}
    return (
        rules.entry(rule).found(
            _REFUSED[kind],
            Severity.STOP,
            surface.ref,
            measured=None,
            limit=most(measure(rules.number("exposure.steam.perm_max"), "perm")) if steam else None,
            remedies=("use" if fit else "none_known",),
            material=Word(word=name),
            zone=Word(word=surface.zone.value),
            zones=_words(zones),
            steam=steam,
            **values,
        ),
    )


def zone_working(rules: RuleSet, ref: str, zone: Zone, *, is_floor: bool) -> Working:
    """What may be used on a surface in its zone, all kinds of material, by the rule book."""
    classes = allowed(rules, "tile", zone)
    if is_floor and zone in (Zone.WET, Zone.STEAM):
        classes = tuple(name for name in classes if name in rules.text("exposure.wet_floor_tile").split())
    barrier = zone.value in rules.text("exposure.membrane_zones").split()
    on_face = zone.value in rules.text("exposure.face_only_zones").split()
    boards = boards_for(rules, zone)
    return Working(
        formula="ground-materials",
        at=(ref,),
        inputs={
            "boards": _words(boards),
            "standards": tuple(Name(name=_standard(rules, board)) for board in boards),
            "known": tuple(bool(_standard(rules, board)) for board in boards),
            **({"membranes": _words(allowed(rules, "membrane", zone))} if barrier else {}),
            "barrier": Word(word="at_most_one" if not barrier else "on_face" if on_face else "either_side"),
            "mortars": _words(allowed(rules, "mortar", zone)),
            "fasteners": _words(allowed(rules, "fastener", zone)),
            "tiles": _words(classes),
        },
        result=Word(word=zone.value),
    )


def _standard(rules: RuleSet, board: str) -> str:
    standard = rules.find(f"exposure.standard.{board}")
    return "" if standard is None else str(standard.value)


def _named(rules: RuleSet, boards: Iterable[str]) -> dict[str, Value]:
    """Boards with the standard that each is made to, as far as the rule book knows one."""
    standards = {board: rules.find(f"exposure.standard.{board}") for board in boards}
    return {
        "fit": _words(standards),
        "standards": tuple(Name(name="" if one is None else str(one.value)) for one in standards.values()),
        "known": tuple(one is not None for one in standards.values()),
    }


def _words(codes: Iterable[str]) -> tuple[Word, ...]:
    return tuple(Word(word=code) for code in codes)
