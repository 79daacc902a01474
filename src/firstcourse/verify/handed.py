"""Proves what a handover lists as asked, held and missing again, from handover.json and the plan.json it is of."""

import hashlib
import json
from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any

from firstcourse.verify.priced_fields import decimal
from firstcourse.verify.verdict import Objection

Row = Mapping[str, Any]
_FIELDS = {"format", "version", "plan", "record", "photos", "asked", "changes"}


def verify_handover(plan_text: str, handover_text: str) -> tuple[Objection, ...]:
    """Every objection to a handover; none where it lists all that its plan asks to be proved, as it is recorded.

    Args:
        plan_text: A plan.json, which `verify_text` proves by itself.
        handover_text: The handover.json of that plan.
    """
    try:
        plan, said = json.loads(plan_text), json.loads(handover_text)
        if said["format"] != "firstcourse-handover" or said["version"] != 1 or set(said) != _FIELDS:
            return (Objection("VER-980", "handover", "is no handover of format 1"),)
        return tuple(_objections(plan, plan_text, said))
    except (KeyError, TypeError, ValueError, AttributeError, IndexError, ArithmeticError) as error:
        return (Objection("VER-980", "handover", f"cannot be read: {type(error).__name__} {error}"),)
    except RecursionError:
        return (Objection("VER-980", "handover", "is nested too deep"),)


def _objections(plan: Row, plan_text: str, said: Row) -> Iterator[Objection]:
    if hashlib.sha256(plan_text.encode()).hexdigest() != said["plan"]:
        yield Objection("VER-981", "plan", "is another plan than the one that was built")
    if len(said["photos"]) != len(said["record"]["photos"]):
        yield Objection("VER-981", "photos", "are not those of the record")
    wanted = {(what, at): hours for what, at, hours in _wanted(plan)}
    told = {(one["what"], one["at"]): one for one in said["asked"]}
    if list(told) != list(wanted) or len(said["asked"]) != len(told):
        yield Objection("VER-982", "asked", "is not what the plan asks to be proved")
        return
    for key, hours in wanted.items():
        state = _recorded(*key, hours, said["record"])
        if (told[key]["state"], told[key]["hours"]) != (state, hours):
            yield Objection("VER-983", key[1], f"its {key[0]} is {state} by the record, and is told otherwise")


def _wanted(plan: Row) -> Iterator[tuple[str, str, float | None]]:
    rooms: dict[str, list[Row]] = {}
    for surface in plan["surfaces"]:
        rooms.setdefault(surface["room"], []).append(surface)
    for room, surfaces in rooms.items():
        members = [one for surface in surfaces for one in surface["supports"]]
        piped = {one["kind"] for surface in surfaces for one in surface["openings"]} & {"drain", "pipe", "valve"}
        for code, so in (
            ("framing", members),
            ("members", [one for one in members if one["added"]]),
            ("drain_test", piped or [one for one in surfaces if one["fall"]]),
        ):
            if so:
                yield code, room, None
        for surface in surfaces:
            new = [board for board in surface["boards"] if not board["fixed"]]
            if any(board["fasteners"] for board in new):
                yield "fasteners", surface["id"], None
            if new and any(seam["tape"] for seam in surface["seams"]):
                yield "tape", surface["id"], None
            if surface["membrane"]:
                yield "membrane", surface["id"], None
            if surface["fall"]:
                yield "flood_test", surface["id"], surface["fall"]["flood_test"]["hours"]


def _recorded(what: str, at: str, hours: float | None, record: Row) -> str:
    if what == "flood_test":
        tests = sorted((one for one in record["tests"] if one["at"] == at), key=lambda one: _time(one["ends"]))
        return _judged([_stood(one, hours) for one in tests][-1:])
    checks = [one for one in record["checks"] if one["what"] == what and one["at"] == at]
    last = max((one["on"] for one in checks), default="")
    return _judged([one["holds"] for one in checks if one["on"] == last][-1:])


def _judged(found: list[bool]) -> str:
    return "missing" if not found else "held" if found[0] else "failed"


def _stood(test: Row, hours: float | None) -> bool:
    long = (_time(test["ends"]) - _time(test["starts"])).total_seconds()
    sank = decimal(test["start_level"]) - decimal(test["end_level"])
    return long >= 3600 * (hours or 0) and sank <= 0


def _time(text: str) -> datetime:
    return datetime.fromisoformat(text)
