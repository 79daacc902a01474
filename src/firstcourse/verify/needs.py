"""What must be bought, counted again from the drawings and the rules; each module of needs yields some of it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from firstcourse.units import KG_PER_LB, Tape


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """One line of the shopping list as it must be.

    Attributes:
        exact: Exact need, in `unit`.
        places: Decimals that it is rounded to.
        share: Allowance on top, share of the need.
        pack: How much one pack holds, in `unit`; 0 where `buy` is given.
        pack_name: The pack in words.
        kind: What one pack is.
        sheets: Mounted sheets in a box of mosaic.
        width: Of the roll that it is cut off [ticks].
        kept_as: Unit that the plan keeps it in, and how much of it `unit` is; that usual for it where not given.
        buy: Packs to buy, where they are not the need and its allowance by the pack.
        shown: Numbers that its working must print, by the name of the value.
        said: Texts that its working must give, by the name of the value.
    """

    item: str
    exact: float
    places: int
    unit: str
    share: float = 0.0
    pack: float = 1.0
    pack_name: str
    kind: str
    sheets: int | None = None
    width: int | None = None
    kept_as: tuple[str, float] | None = None
    buy: int | None = None
    shown: Mapping[str, float] = field(default_factory=dict)
    said: Mapping[str, str] = field(default_factory=dict)

    @property
    def kept(self) -> tuple[str, float]:
        """Unit that the plan keeps it in, and how much of it one of `unit` is."""
        return self.kept_as or KEPT_AS[self.unit]


KEPT_AS = {
    "lb": ("kg", KG_PER_LB), "kg": ("kg", 1.0), "ft": ("mm", 304.8), "m": ("mm", 1000.0), "l": ("l", 1.0),
    "sq ft": ("m2", 0.09290304), "m²": ("m2", 1.0), "ml": ("ml", 1.0), "sheets": ("sheet", 1.0),
    "fasteners": ("fastener", 1.0), "chips": ("chip", 1.0), "tiles": ("tile", 1.0), "spacers": ("spacer", 1.0),
    "pieces": ("piece", 1.0),
}  # fmt: skip


def by_mass(
    item: str, kg: float, bag_kg: float, share: float, tape: Tape, shown: Mapping[str, float] | None = None
) -> Need:
    """Something bought by mass, in the unit that goes with the tape.

    Args:
        item: What it is.
        kg: How much is needed, nothing added [kg].
        bag_kg: What a bag holds [kg].
        share: What is added for waste, share of the need.
        tape: Tape of the job.
        shown: Numbers that its working must print, by the name of the value.
    """
    metric = tape is Tape.MM
    factor = 1.0 if metric else KG_PER_LB
    bag = bag_kg / factor
    return Need(
        item=item,
        exact=kg / factor,
        places=3,
        unit="kg" if metric else "lb",
        share=share,
        pack=bag,
        kind="bag",
        pack_name=f"bag of {bag:.3g} {'kg' if metric else 'lb'}",
        shown=shown or {},
    )
