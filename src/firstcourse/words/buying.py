"""What is to be bought in words: the item, how much of it is needed in the reader's unit, and its packs."""

from collections.abc import Callable

from firstcourse.plan import Pack, Quantity
from firstcourse.units import Tape, to_mm
from firstcourse.values import Measure, kept
from firstcourse.words.figures import fine, number_text
from firstcourse.words.measures import unit_for
from firstcourse.words.said import SaidQuantity

_COUNTED = {"sheet", "fastener", "tile", "chip", "spacer", "piece"}
_RUNNING = {Tape.INCH: (1 / 304.8, "ft"), Tape.MM: (1 / 1000, "m")}
_BULK = {Tape.INCH: unit_for("m3", Tape.INCH), Tape.MM: (1000.0, "l")}
"""Lengths are bought by the running metre or foot, mortar for beds by the litre or cubic foot."""
_FIGURES = {"m": 4, "ft": 4}
"""Figures of what a pack holds; three where nothing is said."""


def amount(value: float, unit: str, tape: Tape) -> tuple[float, str]:
    """How much is needed, in the unit that it is bought by.

    Example:
        >>> amount(3048.0, "mm", Tape.INCH), amount(0.5, "m3", Tape.MM), amount(12.0, "tile", Tape.MM)
        ((10.0, 'ft'), (500.0, 'l'), (12.0, 'tile'))
    """
    factor, name = {"mm": _RUNNING, "m3": _BULK}.get(unit, {}).get(tape) or unit_for(unit, tape)
    return kept(value * factor), name


def said_quantity(
    quantity: Quantity, say: Callable[..., str], term: Callable[[str], str], tape: Tape
) -> SaidQuantity:
    """Something to buy in words.

    Args:
        quantity: As the plan has it.
        say: Says a message with its values.
        term: Says a word by its code.
        tape: The reader's.

    Raises:
        MissingWordsError: Something of it has no words.
    """
    exact, unit = amount(quantity.exact, quantity.unit, tape)
    code, _, name = quantity.item.partition("/")
    named = {"rod": fine(Measure(value=float(name), unit="mm"), tape)} if code == "backer_rod" else {"name": name}
    if code == "added":
        named = {"name": term(name)}
    return SaidQuantity(
        item=say(f"quantities-item-{code}", **(named if name else {})),
        exact=exact,
        unit=say(f"quantities-unit-{unit}", number=exact) if unit in _COUNTED else unit,
        pack=_pack(quantity.pack, say, tape),
    )


def _pack(pack: Pack, say: Callable[..., str], tape: Tape) -> str:
    size, unit = amount(pack.size, pack.unit, tape)
    holds = f"{size:.10g}" if unit in _COUNTED else f"{float(f'{size:.{_FIGURES.get(unit, 3)}g}'):.10g} {unit}"
    wide = ""
    if pack.width is not None:
        value, wide_unit = amount(to_mm(pack.width), "mm", tape)
        wide = f"{number_text(value, None)} {wide_unit}"
    return say(
        f"quantities-pack-{pack.kind}",
        unit=pack.unit if unit in _COUNTED else unit,
        size=holds,
        of=pack.unit,
        sheets=pack.sheets or 0,
        each=f"{pack.size / pack.sheets:g}" if pack.sheets else "",
        wide=wide,
    )
