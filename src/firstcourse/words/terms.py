"""Trade words by practice: what one reader calls a curb another calls a kerb.

The house writes in either word; on the way to paper, spreadsheet or terminal every term becomes the reader's.
"""

from typing import NamedTuple

_BRITISH = ("uk", "au")


class Term(NamedTuple):
    """One thing and what it is called.

    Attributes:
        us: In US practice.
        uk: In UK and Australian practice.
        au: In Australian practice, where that is another word again.
        also: Other words of the house for it, which no reader meets.
        only: The one practice whose readers must be told otherwise; the other's word means other things too.
    """

    us: str
    uk: str
    also: tuple[str, ...] = ()
    only: str = ""
    au: str = ""

    def of(self, practice: str) -> str:
        """What a practice calls it."""
        if practice == "au" and self.au:
            return self.au
        return self.uk if practice in _BRITISH else self.us


TERMS: tuple[Term, ...] = (
    Term("curb", "kerb", au="hob"),
    Term("curbs", "kerbs", au="hobs"),
    Term("closet flange", "soil pipe", only="uk"),
    Term("closet flanges", "soil pipes", only="uk"),
    Term("movement joint", "movement joint", ("soft joint",)),
    Term("movement joints", "movement joints", ("soft joints",)),
    Term("thinset", "tile adhesive", ("tile mortar",)),
    Term("thinset for boards", "adhesive for boards", ("bedding mortar",)),
    Term("thinset under the tile", "adhesive under the tile", ("mortar under the tile",)),
    Term("thinset under the tiles", "adhesive under the tiles", ("mortar under the tiles",)),
    Term("thinset under the boards", "adhesive under the boards", ("mortar under the boards",)),
    Term("fresh thinset", "fresh adhesive", ("fresh mortar",)),
    Term("mortar bed", "screed", only="uk"),
    Term("pan", "tray", only="us"),
    Term("tub", "bath", only="uk"),
    Term("tubs", "baths", only="uk"),
    Term("blocking", "noggings"),
    Term("drywall", "plasterboard"),
    Term("lumber", "timber"),
    Term("center", "centre"),
    Term("centers", "centres"),
    Term("centered", "centred"),
    Term("fiber", "fibre"),
    Term("color", "colour"),
    Term("colors", "colours"),
    Term("gray", "grey"),
    Term("leveling", "levelling"),
    Term("leveled", "levelled"),
    Term("vapor", "vapour"),
    Term("mold", "mould"),
    Term("labor", "labour"),
    Term("meter", "metre", only="us"),
    Term("meters", "metres", only="us"),
    Term("millimeter", "millimetre"),
    Term("millimeters", "millimetres"),
    Term("liter", "litre"),
    Term("liters", "litres"),
)
"""Every term that differs by practice, or that the house calls otherwise than its readers."""


def terms_of(practice: str) -> dict[str, str]:
    """By every word that the house may have for a thing: what a practice calls it, where that is another."""
    side = "uk" if practice in _BRITISH else "us"
    found: dict[str, str] = {}
    for term in TERMS:
        theirs = () if term.only not in ("", side) else (term.us, term.uk)
        found |= {word: term.of(practice) for word in (*theirs, *term.also) if word != term.of(practice)}
    return found
