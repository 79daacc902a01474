"""What is to be bought in words: the item, how much of it is needed in the reader's unit, and its packs."""

from collections.abc import Callable

from firstcourse.plan import Quantity
from firstcourse.units import Tape
from firstcourse.values import Measure, kept, length
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
    pack, (exact, unit) = quantity.pack, amount(quantity.exact, quantity.unit, tape)
    code, _, name = quantity.item.partition("/")
    named = {"rod": fine(Measure(value=float(name), unit="mm"), tape)} if code == "backer_rod" else {"name": name}
    if code in ("added", "collars"):
        named = {"name": term(name)}
    return SaidQuantity(
        item=say(f"quantities-item-{code}", **(named if name else {})),
        exact=exact,
        unit=say(f"quantities-unit-{unit}", number=exact) if unit in _COUNTED else unit,
        pack=packed(
            pack.kind,
            Measure(value=pack.size, unit=pack.unit),
            say,
            tape,
            sheets=pack.sheets or 0,
            wide=None if pack.width is None else length(pack.width),
        ),
    )


def need(found: Measure, say: Callable[..., str], tape: Tape, decimals: int) -> str:
    """How much of something is needed, with its unit; no more decimals than it has.

    Args:
        found: How much, in the plan's unit.
        say: Says a message with its values.
        tape: The reader's.
        decimals: At most so many.
    """
    value, unit = amount(found.value, found.unit, tape)
    number = f"{float(number_text(value, decimals).replace(',', '')):.10g}"
    return f"{number} {say(f'quantities-unit-{unit}', number=float(number)) if unit in _COUNTED else unit}"


def packed(
    kind: str,
    holds: Measure,
    say: Callable[..., str],
    tape: Tape,
    *,
    sheets: int = 0,
    wide: Measure | None = None,
) -> str:
    """A pack with how much it holds.

    Args:
        kind: What it is, by its code.
        holds: How much one holds.
        say: Says a message with its values.
        tape: The reader's.
        sheets: Mounted sheets in a box of mosaic.
        wide: Width of the roll that it is cut off.
    """
    size, unit = amount(holds.value, holds.unit, tape)
    shown = f"{size:.10g}" if unit in _COUNTED else f"{float(f'{size:.{_FIGURES.get(unit, 3)}g}'):.10g} {unit}"
    return say(
        f"quantities-pack-{kind}",
        unit=unit,
        size=shown,
        of=holds.unit,
        sheets=sheets,
        each=f"{holds.value / sheets:g}" if sheets else "",
        wide="" if wide is None else _running(wide, tape),
    )


def _running(found: Measure, tape: Tape) -> str:
    value, unit = amount(found.value, found.unit, tape)
    return f"{number_text(value, None)} {unit}"
