"""A line beside a bench was measured "beside owners bath/bench/bench", and a level line "farther in".

Hands need the name of the thing as one calls it who stands before it, and how far from the line's end to measure.
"""

from firstcourse.papers.mark_words import line_words, thing
from firstcourse.plan import Mark, Side, SideKind, Surface, SurfaceKind
from firstcourse.units import Tape, parse_length
from firstcourse.words import Speaker

SPEAKER = Speaker("us", Tape.INCH)


def inch(words: str) -> int:
    return parse_length(words)


def surface(name: str, kind: SurfaceKind, marks: tuple[Mark, ...] = ()) -> Surface:
    wide, high = inch("60 in"), inch("90 in")
    outline = ((0, 0), (wide, 0), (wide, high), (0, high))
    met = ("fixture/tray", "corner/C", "ceiling", "corner/B")
    return Surface(
        id=f"bath/{name}",
        room="bath",
        kind=kind,
        outline=outline,
        sides=tuple(Side(kind=SideKind.PERIMETER, meets=f"bath/{one}") for one in met),
        marks=marks,
    )


def test_a_bench_is_called_by_its_name() -> None:
    floor = surface("floor/shower", SurfaceKind.FLOOR)
    assert thing("bath/bench/long seat", floor, SPEAKER) == "the long seat"
    assert "bath/" not in thing("bath/floor/shower/kerb 1/top", floor, SPEAKER)


def test_a_level_line_says_how_far_from_its_end_it_is_measured() -> None:
    line = ((0, inch("8 in")), (inch("60 in"), inch("8 in")))
    marks = tuple(
        Mark(
            kind="first_course",
            line=line,
            from_="bath/floor/shower",
            distance=inch("8 in"),
            to="bath/wall/A-B/tile 1/joint",
            measure=((at, 0), (at, inch("8 in"))),
        )
        for at in (inch("6 in"), inch("60 in"))
    )
    (words,) = line_words(surface("wall/A-B", SurfaceKind.WALL, marks), SPEAKER)
    assert 'at 6" from the left end, 8" above the shower\'s bed' in words
    assert 'at the right end 8" above' in words
