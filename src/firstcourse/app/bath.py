"""A tub with what belongs to it, a niche and a closet flange, as one form asks for them when a room was taped."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from firstcourse.app.fields import typed
from firstcourse.app.walk import Walk
from firstcourse.errors import InputValueError
from firstcourse.job import FieldValue
from firstcourse.units import LengthError, Tape, format_length, parse_length

USUAL: Mapping[Tape, Mapping[str, str]] = {
    Tape.INCH: {
        "tub out": "30",
        "tub rim": "15",
        "tub top": "84",
        "tub reach": "31 1/4",
        "pipes spout": "20",
        "pipes valve": "33",
        "pipes head": "78",
        "niche left": "16 3/4",
        "niche bottom": "48",
        "niche width": "14 1/2",
        "niche height": "24",
        "closet out": "12",
    },
    Tape.MM: {
        "tub out": "750",
        "tub rim": "540",
        "tub top": "2100",
        "tub reach": "780",
        "pipes spout": "640",
        "pipes valve": "900",
        "pipes head": "2000",
        "niche left": "419",
        "niche bottom": "1200",
        "niche width": "362",
        "niche height": "600",
        "closet out": "300",
    },
}
"""What a form offers, to be compared with the room: common practice, from memory; a niche fills a bay of studs."""
_ROUND = {
    Tape.INCH: {"spout": "1 1/4", "valve": "5", "head": "1 1/4", "closet": "4 1/2"},
    Tape.MM: {"spout": "32", "valve": "125", "head": "32", "closet": "110"},
}
"""Diameters of the holes: common practice, from memory."""
TYPED = ("closet left", *USUAL[Tape.INCH])
"""Fields of the form that hold a length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """What stands in a room and what it asks of its walls.

    Attributes:
        floor: Openings of the floor.
        walls: By side: what the document says of a wall beside its framing.
    """

    floor: Sequence[FieldValue]
    walls: Mapping[str, Mapping[str, FieldValue]]


def fitted(walk: Walk, form: Mapping[str, str]) -> Fitted:
    """What a form says of tub, pipes, niche and closet flange; nothing where nothing is ticked.

    Args:
        walk: The room as taped.
        form: Field to what was typed: those of `TYPED`, and `tub`, `tub side`, `pipes`, `niche`, `closet` and
            `closet side`.

    Raises:
        InputValueError: A side is named that the room does not have or that is not taped, or a length is none.
    """
    asked = _Asked(walk, form)
    floor: list[FieldValue] = []
    walls: dict[str, dict[str, FieldValue]] = {}
    if form.get("tub"):
        floor.append(asked.tub())
        walls = asked.walls()
    if form.get("closet"):
        floor.append(asked.closet())
    return Fitted(floor=floor, walls=walls)


class _Asked:
    """One form about one room."""

    def __init__(self, walk: Walk, form: Mapping[str, str]) -> None:
        self._walk, self._form, self._tape = walk, form, walk.tape
        corners = walk.corners
        self._sides = [f"{a}-{b}" for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]

    def tub(self) -> FieldValue:
        side = self._side("tub side")
        width = format_length(self._taped(side), self._tape)
        return {
            **{
                "id": "tub",
                "kind": "tub",
                "side": side,
                "left": self._with_unit("0"),
                "out": self._with_unit("0"),
            },
            **{"width": width, "depth": self._said("tub out")},
        }

    def closet(self) -> FieldValue:
        told = {"left": self._said("closet left"), "out": self._said("closet out")}
        whole = {"id": "closet flange", "kind": "flange", "side": self._side("closet side"), **told}
        return {**whole, "diameter": self._with_unit(_ROUND[self._tape]["closet"])}

    def walls(self) -> dict[str, dict[str, FieldValue]]:
        """The wall along the tub, then those at its ends: the right one, the left one."""
        at = self._sides.index(self._side("tub side"))
        along, right, left = (self._sides[(at + step) % len(self._sides)] for step in (0, 1, -1))
        high: dict[str, FieldValue] = {"bottom": self._said("tub rim"), "top": self._said("tub top")}
        reach, out = self._said("tub reach"), self._said("tub out")
        # Both ends begin at the tub's corner: the right wall's left end, the left wall's right end.
        found: dict[str, dict[str, FieldValue]] = {
            along: {"boards": high},
            right: {"boards": {"right": reach, **high}},
            left: {"boards": {"left": self._from_right(left, reach), **high}},
        }
        for wall in found.values():
            wall["foot"] = "tub"
            wall["exposure"] = {"zone": "wet", **({"membrane": "yes"} if self._form.get("membrane") else {})}
        if self._form.get("niche"):
            found[along]["openings"] = [self._niche()]
        middle = format_length(self._ticks(out, "tub out") // 2, self._tape)
        if self._form.get("pipes") == "right":
            found[right]["openings"] = self._pipes(middle)
        elif self._form.get("pipes") == "left":
            found[left]["openings"] = self._pipes(self._from_right(left, middle))
        return found

    def _niche(self) -> FieldValue:
        names = ("left", "bottom", "width", "height")
        return {"id": "niche", "kind": "niche", **{name: self._said(f"niche {name}") for name in names}}

    def _pipes(self, left: str) -> FieldValue:
        holes = _ROUND[self._tape]
        named = (("spout", "spout", "pipe"), ("valve", "valve", "valve"), ("head", "shower head", "pipe"))
        return [
            {
                **{"id": name, "kind": kind, "left": left, "bottom": self._said(f"pipes {key}")},
                "diameter": self._with_unit(holes[key]),
            }
            for key, name, kind in named
        ]

    def _side(self, field: str) -> str:
        side = self._form.get(field, "")
        if side not in self._sides:
            raise InputValueError(
                f"'{side}' is no side of this room; choose one of {', '.join(self._sides)}", field=field
            )
        return side

    def _taped(self, side: str) -> int:
        same = frozenset(side.split("-"))
        found = next((one.length for one in self._walk.readings if frozenset(one.pair.split("-")) == same), None)
        if found is None:
            raise InputValueError(
                f"{side} is not taped, and what stands along it is measured from it; tape it first"
            )
        return found

    def _said(self, field: str) -> str:
        told = typed(self._form.get(field, ""), self._tape)
        self._ticks(told, field)
        return told

    def _with_unit(self, text: str) -> str:
        return typed(f"{text} {'in' if self._tape is Tape.INCH else 'mm'}", self._tape)

    def _from_right(self, side: str, told: str) -> str:
        """A distance from a wall's right end, told from its left."""
        left = self._taped(side) - self._ticks(told, side)
        if left < 0:
            raise InputValueError(f"{told} is more than {side} is long", field=side)
        return format_length(left, self._tape)

    def _ticks(self, text: str, field: str) -> int:
        try:
            return parse_length(text)
        except LengthError as error:
            raise InputValueError(str(error), field=field) from None
