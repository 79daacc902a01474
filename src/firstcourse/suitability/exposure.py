"""Right material, right place: which boards stand in which zone, and exactly one barrier against water."""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.workings import Working


class Zone(StrEnum):
    """What a surface is exposed to."""

    DRY = "dry"
    DAMP = "damp"
    WET = "wet"
    STEAM = "steam"
    EXTERIOR = "exterior"
    NEAR_HEAT = "near_heat"


_REMEDY_MATERIAL = {
    "membrane": ("SUI-509", "This membrane does not keep out what it must here"),
    "mortar": ("SUI-511", "This mortar does not last here"),
    "fastener": ("SUI-512", "This fastener does not last here"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ExposedSurface:
    """A surface with its board, its barriers and what holds the tile.

    Attributes:
        where: The place in words.
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

    where: str
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
    refused = rules.find("exposure.wall_refused")
    if refused is not None and not surface.is_floor and surface.board in str(refused.value).split():
        return (
            _stop(
                rules,
                surface,
                "SUI-519",
                f"{words(surface.board)} is no longer tiled directly on walls in this practice.",
                words(surface.board),
                "a backer board",
                refused.id,
                "Use " + " or ".join(_named(rules, name) for name in boards_for(rules, surface.zone)) + ".",
            ),
        )
    if surface.zone is Zone.NEAR_HEAT and surface.board in rules.text("exposure.heat_boards").split():
        return _near_heat(rules, surface)
    entry = rules.entry(rule)
    if surface.zone.value in rules.text(rule).split():
        return ()
    reason = rules.find(f"exposure.why.{surface.board}")
    why = "" if reason is None else f": {reason.value}"
    if surface.board == "greenboard" and surface.zone in (Zone.WET, Zone.STEAM):
        year = rules.number("exposure.greenboard.last_year")
        why += f", and the residential code has not listed it for wet tile since {year:.0f}"
    fit = boards_for(rules, surface.zone)
    return (
        entry.finding(
            code="SUI-501",
            severity=Severity.STOP,
            where=surface.where,
            message=f"{words(surface.board).capitalize()} may not stand in a {words(surface.zone)} zone{why}.",
            measured=words(surface.zone),
            limit=f"zones: {rules.text(rule).replace('_', ' ')}",
            remedy=(
                "Use " + " or ".join(_named(rules, name) for name in fit) + "."
                if fit
                else "The rule book has no board for this zone: ask the board maker in writing."
            ),
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


def _near_heat(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    entry = rules.entry("exposure.heat_boards")
    return (
        entry.finding(
            code="SUI-507",
            severity=Severity.NOTE,
            where=surface.where,
            message=f"Near heat {words(surface.board)} shields nothing by itself: wood behind it still gets hot.",
            remedy="Keep the clearances of the appliance's maker and of the local fire code.",
        ),
    )


def judge_barriers(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """Exactly one barrier against water and vapour, on the right side."""
    own = surface.board in rules.text("exposure.own_barrier").split()
    face = surface.membrane_on_face or own
    zones, face_only = (
        rules.text("exposure.membrane_zones").split(),
        rules.text("exposure.face_only_zones").split(),
    )
    most = f"exactly {rules.number('exposure.barriers'):g}"
    found: list[Finding] = []
    if face and surface.retarder_behind and not surface.is_floor:
        found.append(
            _stop(
                rules,
                surface,
                "SUI-502",
                f"{'Membrane on the face' if surface.membrane_on_face else 'The coated face of the board'} and "
                "retarder behind trap moisture in the board.",
                "2 barriers",
                most,
                "exposure.barriers",
                "Leave out the retarder behind: no plastic sheet, and facings of the insulation slashed."
                if surface.zone is not Zone.EXTERIOR
                else "Have the wall's barrier placed by whoever answers for the outer wall.",
            )
        )
    if surface.retarder_behind and surface.board in rules.text("exposure.no_retarder").split():
        found.append(
            _stop(
                rules,
                surface,
                "SUI-508",
                f"{words(surface.board)} never stands over a vapour retarder: what gets in cannot dry out.",
                "retarder behind",
                "none",
                "exposure.no_retarder",
                "Leave out the retarder behind.",
            )
        )
    if not face and not surface.retarder_behind and surface.zone.value in zones:
        found.append(
            _stop(
                rules,
                surface,
                "SUI-503",
                "Water that passes tile and board reaches the framing.",
                "no barrier",
                most,
                "exposure.membrane_zones",
                "Put a membrane on the face of the board.",
            )
        )
    elif not surface.membrane_on_face and surface.zone.value in face_only:
        found.append(
            _stop(
                rules,
                surface,
                "SUI-504",
                "In steam only a membrane on the face keeps vapour out of the board.",
                "no membrane on the face",
                "membrane on the face",
                "exposure.face_only_zones",
                "Put the membrane on the face and leave out the retarder behind.",
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
    entry = rules.entry(rule)
    if surface.zone.value in rules.text(rule).split():
        return ()
    code, message = _REMEDY_MATERIAL[kind]
    fit = [words(each) for each in allowed(rules, kind, surface.zone)]
    limit = f"zones: {rules.text(rule).replace('_', ' ')}"
    if kind == "membrane" and surface.zone is Zone.STEAM:
        limit = f"at most {rules.number('exposure.steam.perm_max'):g} perm"
    return (
        entry.finding(
            code=code,
            severity=Severity.STOP,
            where=surface.where,
            message=f"{message}: {entry.description.split('. Zones')[0].split(' Zones')[0].rstrip('.')}.",
            measured=f"{words(name)} in a {words(surface.zone)} zone",
            limit=limit,
            remedy=f"Use {' or '.join(fit)}." if fit else "The rule book has none for this zone: ask its maker.",
        ),
    )


def zone_working(rules: RuleSet, where: str, zone: Zone, *, is_floor: bool) -> Working:
    """What may be used on a surface in its zone, all kinds of material, by the rule book."""
    classes = allowed(rules, "tile", zone)
    if is_floor and zone in (Zone.WET, Zone.STEAM):
        classes = tuple(name for name in classes if name in rules.text("exposure.wet_floor_tile").split())
    barrier = zone.value in rules.text("exposure.membrane_zones").split()
    face_only = zone.value in rules.text("exposure.face_only_zones").split()
    if not barrier:
        side = "at most one"
    else:
        side = "exactly one, on the face" if face_only else "exactly one: on the face, or behind the boards"
    rows = {
        "boards": tuple(_named(rules, name) for name in boards_for(rules, zone)),
        "membranes": allowed(rules, "membrane", zone) if barrier else ("not needed",),
        "vapour barrier": (side,),
        "mortars": allowed(rules, "mortar", zone),
        "fasteners": allowed(rules, "fastener", zone),
        "tile classes": classes,
    }
    return Working(
        title=f"{where}: what may be used in a {words(zone)} zone",
        formula="every material of the rule book whose zones name this one",
        values={
            name: ", ".join(words(entry) for entry in entries) or "none in the rule book"
            for name, entries in rows.items()
        },
        result=words(zone),
        unit="zone",
        source="rules exposure.*, each with its source; `firstcourse rules` lists them",
    )


def words(name: str) -> str:
    """A rule-book name as it is said."""
    return name.replace("_", " ")


def _named(rules: RuleSet, board: str) -> str:
    standard = rules.find(f"exposure.standard.{board}")
    return words(board) if standard is None else f"{words(board)} ({standard.value})"


def _stop(
    rules: RuleSet,
    surface: ExposedSurface,
    code: str,
    message: str,
    measured: str,
    limit: str,
    rule: str,
    remedy: str,
) -> Finding:
    return rules.entry(rule).finding(
        code=code,
        severity=Severity.STOP,
        where=surface.where,
        message=message[0].upper() + message[1:],
        measured=measured,
        limit=limit,
        remedy=remedy,
    )
