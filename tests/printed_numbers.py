"""The numbers that a pack prints, each with its place, to compare one plan in several words and units.

They are taken from the values that are handed to the page maker, before anything is set: texts, and those of
drawings. A place is a section of the pack and a part of it, such as a ticket; how parts stand in columns is no
part of it, since columns follow the lengths of words.
"""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import zip_longest
from typing import Any, NamedTuple
from xml.etree import ElementTree as ET

from firstcourse.papers.office_pack import office_data
from firstcourse.papers.site_pack import pack_data
from firstcourse.plan import Plan

_FRACTION = r"\d+/\d+"
_FEET = (
    rf"(?P<feet>\d+)' (?:(?P<whole>\d+)(?:-(?P<part>{_FRACTION}))?|(?P<only>{_FRACTION}))\"|(?P<even>\d+)'(?!\w)"
)
_PLAIN = rf"(?:(?P<lead>\d+)[- ](?={_FRACTION}\W))?(?P<number>{_FRACTION}|\d+(?:,\d{{3}})*(?:\.\d+)?)"
_UNITS = {
    '"': ("mm", 25.4), "in": ("mm", 25.4), "ft": ("mm", 304.8), "mm": ("mm", 1.0), "m": ("mm", 1000.0),
    "sq ft": ("m²", 0.09290304), "m²": ("m²", 1.0), "lb/sq ft": ("kg/m²", 4.882427636), "kg/m²": ("kg/m²", 1.0),
    "psf": ("kPa", 0.04788025898), "kPa": ("kPa", 1.0), "lb": ("kg", 0.45359237), "kg": ("kg", 1.0),
    "gal": ("l", 3.785411784), "l": ("l", 1.0), "litres": ("l", 1.0), "litros": ("l", 1.0),
    "fl oz": ("l", 0.0295735295625), "ml": ("l", 0.001), "cu ft": ("l", 28.316846592), "m³": ("l", 1000.0),
    "in per ft": ("mm/m", 1000 / 12), "in por ft": ("mm/m", 1000 / 12), "mm por m": ("mm/m", 1.0),
    "in/ft": ("mm/m", 1000 / 12), "mm per m": ("mm/m", 1.0), "mm/m": ("mm/m", 1.0),
    "psi": ("MPa", 0.006894757293), "MPa": ("MPa", 1.0),
}  # fmt: skip
"""What a printed unit is of another, by how it is written."""
_LONGEST = sorted(_UNITS, key=len, reverse=True)
_TOKEN = re.compile(
    rf"(?<![\w.])(?:{_FEET}|{_PLAIN}"
    rf"(?:\s?(?P<unit>{'|'.join(map(re.escape, _LONGEST))})(?![\w²³/·]|(?<=1 in) \d))?)"
)
_SCALE = re.compile(r"1:\d+")
_SIXTEENTH = 25.4 / 16


class Number(NamedTuple):
    """One number as it is read.

    Attributes:
        value: In the metric unit.
        unit: That unit; empty where none stands behind the number.
        step: The next number that could have been printed is so far away.
        text: As it is printed.
    """

    value: float
    unit: str
    step: float
    text: str

    def agrees(self, other: "Number") -> bool:
        """Whether both may stand for one length or amount: no farther apart than one step of each."""
        return self.unit == other.unit and abs(self.value - other.value) <= self.step + other.step + 1e-9


def site_numbers(plan: Plan) -> dict[str, list[str]]:
    """The texts of a site pack by section and part, in order; those of a drawing by the numbers in them."""
    return _by_place(pack_data(plan))


def office_numbers(plan: Plan) -> dict[str, list[str]]:
    """The texts of an office pack, in the same way."""
    return _by_place(office_data(plan, with_rules=True, with_starts=True))


def retold(plan: Plan, **job: object) -> Plan:
    """The very same plan for another reader: another tongue, another tape, other trade words."""
    return plan.model_copy(update={"job": plan.job.model_copy(update=job)})


def found(text: str) -> list[Number]:
    """The numbers of a text in order."""
    return [_number(match) for match in _TOKEN.finditer(text)]


def said(number: Number) -> str:
    """A number with its unit, whatever the tongue calls that."""
    return f"{number.value:.9g} {number.unit}".rstrip()


def _number(match: re.Match[str]) -> Number:
    if match["feet"] or match["even"]:
        inches = 12 * Fraction(match["feet"] or match["even"])
        inches += sum(Fraction(match[name]) for name in ("whole", "part", "only") if match[name])
        return Number(float(inches * Fraction("25.4")), "mm", _SIXTEENTH, match[0])
    unit, factor = _UNITS.get(match["unit"] or "", ("", 1.0))
    digits = match["number"].replace(",", "")
    value = float(Fraction(digits)) + float(match["lead"] or 0)
    step = float(10 ** -len(digits.partition(".")[2])) * factor if unit else 0.0
    if match["unit"] in ('"', "in") and "." not in digits:
        step = _SIXTEENTH
    return Number(value * factor, unit, step, match[0].strip())


def _by_place(data: Mapping[str, Any]) -> dict[str, list[str]]:
    places: dict[str, list[str]] = {}
    for section, told in data.items():
        if section != "tongue":
            for place, text in _texts(told, section):
                places.setdefault(place, []).append(text)
    return places


def _texts(told: Any, place: str) -> Iterator[tuple[str, str]]:
    """Every text with its place; a drawing gives the texts on it."""
    if isinstance(told, Mapping):
        named = next((str(told[key]) for key in ("id", "mark", "code") if told.get(key)), "")
        for key, one in told.items():
            if key == "svg":
                yield from ((f"{place}/drawn", text) for text in _drawn(one))
            else:
                yield from _texts(one, f"{place}/{named}" if named else place)
    elif isinstance(told, list | tuple):
        if place == "shopping" and all(isinstance(one, str) for one in told):
            # How much and its unit stand in two columns.
            told = [*told[:-2], " ".join(told[-2:])]
        for one in told:
            yield from _texts(one, place)
    elif isinstance(told, str):
        yield place, told


def _drawn(svg: str) -> list[str]:
    texts = (element.text or "" for element in ET.fromstring(svg).iter("{http://www.w3.org/2000/svg}text"))
    return sorted(texts, key=lambda text: ([one.text for one in found(text)], text))


def differing(one: Mapping[str, list[str]], other: Mapping[str, list[str]]) -> list[str]:
    """Places at which two packs do not print the same numbers, with what only one of them prints there."""
    faults = []
    for place in dict.fromkeys((*one, *other)):
        mine, theirs = (
            Counter(said(number) for text in pack.get(place, []) for number in found(text))
            for pack in (one, other)
        )
        if mine != theirs:
            faults.append(f"{place}: only the first {dict(mine - theirs)}, only the second {dict(theirs - mine)}")
    return faults


def disagreeing(one: Mapping[str, list[str]], other: Mapping[str, list[str]]) -> list[str]:
    """Texts of two packs whose numbers do not stand for the same within what both print: the pair of texts.

    Drawings have as many figures as there is room for at their scale: where both have as many, these are compared
    from the shortest to the longest. Not compared are tapers that one tape shows and the other does not.
    """
    faults = []
    for place in dict.fromkeys((*one, *other)):
        mine, theirs = one.get(place, []), other.get(place, [])
        if place == "slight":
            continue
        if place.endswith("/drawn"):
            pair = _lengths(mine), _lengths(theirs)
            if len(pair[0]) == len(pair[1]):
                faults += [
                    f"{place}: {a.text} and {b.text}" for a, b in zip(*pair, strict=True) if not a.agrees(b)
                ]
            continue
        for text, again in zip_longest(mine, theirs, fillvalue=""):
            pair = found(text), found(again)
            if _SCALE.fullmatch(text) and _SCALE.fullmatch(again):
                continue
            if len(pair[0]) != len(pair[1]) or not all(a.agrees(b) for a, b in zip(*pair, strict=True)):
                faults.append(f"{place}: {text!r} and {again!r}")
    return faults


def _lengths(texts: list[str]) -> list[Number]:
    """The lengths on drawings; on millimetre tapes running figures have no unit but at their end."""
    metric = any(number.text.endswith("mm") for text in texts for number in found(text))
    bare = [(text, number) for text in texts for number in found(text)]
    told = [number._replace(unit="mm") if metric and number.text == text else number for text, number in bare]
    return sorted((number for number in told if number.unit == "mm"), key=lambda number: number.value)
