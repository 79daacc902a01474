"""Right material, right place: which boards stand in which zone, and exactly one vapour barrier."""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.checks import sourced


class Zone(StrEnum):
    """What a surface is exposed to."""

    DRY = "dry"
    DAMP = "damp"
    WET = "wet"
    STEAM = "steam"
    EXTERIOR = "exterior"
    NEAR_HEAT = "near_heat"


@dataclass(frozen=True, slots=True, kw_only=True)
class ExposedSurface:
    """A surface with its board and its barriers.

    Attributes:
        where: The place in words.
        zone: What it is exposed to.
        board: Board family, such as `fibre_cement`, `cement_board`, `coated_gypsum`, `greenboard`, `plasterboard`,
            `plywood`, `strand_board`.
        membrane_on_face: A waterproof membrane over the board.
        retarder_behind: A vapour retarder between board and framing.
        is_floor: Floors ask for no vapour retarder behind.
        wood_moisture_percent: Reading in the framing; None where not taken.
    """

    where: str
    zone: Zone
    board: str
    membrane_on_face: bool = False
    retarder_behind: bool = False
    is_floor: bool = False
    wood_moisture_percent: float | None = None


def judge_exposure(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """What is wrong with the board, the barriers and the moisture of one surface; empty where nothing is."""
    return (*_board(rules, surface), *_barriers(rules, surface), *_moisture(rules, surface))


def _board(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    rule = f"exposure.board.{surface.board}"
    if rule not in rules.entries:
        boards = ", ".join(entry.id.removeprefix("exposure.board.") for entry in rules.under("exposure.board."))
        raise InputValueError(f"no board family '{surface.board}'; the rule book has {boards}")
    entry = rules.entry(rule)
    if surface.zone.value in rules.text(rule).split():
        return []
    fit = [
        e.id.removeprefix("exposure.board.")
        for e in rules.under("exposure.board.")
        if surface.zone.value in str(e.value).split()
    ]
    return [
        Finding(
            code="SUI-501",
            severity=Severity.STOP,
            where=surface.where,
            message=f"{surface.board.replace('_', ' ')} may not stand in a {_words(surface.zone)} zone.",
            measured=_words(surface.zone),
            limit=f"zones: {rules.text(rule)}",
            rule=rule,
            source=sourced(entry),
            remedy=(
                "Use " + " or ".join(name.replace("_", " ") for name in fit) + "."
                if fit
                else "The rule book has no board for this zone: ask the board maker in writing."
            ),
        )
    ]


def _barriers(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    entry = rules.entry("exposure.barriers")
    most = int(rules.number(entry.id))
    count = surface.membrane_on_face + surface.retarder_behind
    found = []
    zones, face_only = rules.text("exposure.membrane_zones"), rules.text("exposure.face_only_zones")
    if count > most and not surface.is_floor:
        found.append(
            (
                "SUI-502",
                "Membrane on the face and retarder behind trap moisture in the board.",
                f"{count} barriers",
                f"exactly {most}",
                "Leave out the retarder behind, or the membrane on the face.",
                entry.id,
            )
        )
    if count == 0 and surface.zone.value in zones.split():
        found.append(
            (
                "SUI-503",
                "Water that passes tile and board reaches the framing.",
                "no barrier",
                f"exactly {most}",
                "Put a membrane on the face of the board.",
                "exposure.membrane_zones",
            )
        )
    elif surface.zone.value in face_only.split() and not surface.membrane_on_face:
        found.append(
            (
                "SUI-504",
                "In steam only a membrane on the face keeps vapour out of the board.",
                "no membrane on the face",
                "membrane on the face",
                "Put the membrane on the face and leave out the retarder behind.",
                "exposure.face_only_zones",
            )
        )
    return [
        Finding(
            code=code,
            severity=Severity.STOP,
            where=surface.where,
            message=message,
            measured=measured,
            limit=limit,
            rule=rule,
            source=sourced(rules.entry(rule)),
            remedy=remedy,
        )
        for code, message, measured, limit, remedy, rule in found
    ]


def _moisture(rules: RuleSet, surface: ExposedSurface) -> list[Finding]:
    entry = rules.entries.get("moisture.wood.max")
    reading = surface.wood_moisture_percent
    if entry is None or reading is None or reading <= rules.number(entry.id):
        return []
    return [
        Finding(
            code="SUI-505",
            severity=Severity.STOP,
            where=surface.where,
            message="The framing is too wet: it will shrink behind the tile.",
            measured=f"{reading:g} %",
            limit=f"at most {rules.number(entry.id):g} %",
            rule=entry.id,
            source=sourced(entry),
            remedy="Let it dry and measure again before boarding.",
        )
    ]


def _words(zone: Zone) -> str:
    return zone.value.replace("_", " ")
