"""Cut tiles in words: what they are cut along, and their sizes."""

from collections.abc import Iterable
from functools import reduce

from firstcourse.drawings.cut_tiles import CutKind
from firstcourse.plan import Place, Side
from firstcourse.units import format_length
from firstcourse.values import Name, Ref, Word
from firstcourse.words import Speaker


def said_places(places: Iterable[tuple[Place, int]], speaker: Speaker) -> list[tuple[str, int]]:
    """Places with the number there, the most frequent first."""
    counts: dict[str, int] = {}
    for place, number in places:
        said = _place(place, speaker)
        counts[said] = counts.get(said, 0) + number
    return sorted(counts.items(), key=lambda item: (-item[1], item[0]))


def _place(place: Place, speaker: Speaker) -> str:
    if not place:
        return speaker.text("tiles-in_field")
    said = [_beside(one, speaker) for one in place]
    return reduce(lambda one, two: speaker.text("tiles-along", one=one, two=two), dict.fromkeys(said))


def _beside(one: Word | Name | Ref | Side, speaker: Speaker) -> str:
    match one:
        case Word():
            return speaker.text("tiles-place", one.word)
        case Side():
            return speaker.edge(one)
        case Ref():
            return speaker.thing(one.ref)
        case Name():
            return one.name


def size_words(kind: CutKind, speaker: Speaker) -> str:
    """Sizes: of pieces that are cut to fit from the least to the greatest."""
    if not kind.is_fit:
        return " × ".join(format_length(side, speaker.tape, feet=False) for side in kind.size)
    sides = (_span(least, most, speaker) for least, most in zip(kind.least, kind.most, strict=True))
    return speaker.text("tiles-about", size=" × ".join(sides))


def _span(least: int, most: int, speaker: Speaker) -> str:
    """A length, or from which to which lengths go, as the tape reads them."""
    one, other = (format_length(side, speaker.tape, feet=False) for side in (least, most))
    return one if one == other else speaker.text("tiles-span", least=one, most=other)
