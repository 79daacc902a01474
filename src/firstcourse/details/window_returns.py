"""Windows set back in walls: what a wet wall must know of them, how high sills lie."""

from collections.abc import Iterator

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.job import Room, WallOpening
from firstcourse.plan import Opening, OpeningKind, Surface
from firstcourse.rules import RuleSet
from firstcourse.tiles import ToTile
from firstcourse.values import length
from firstcourse.workings import Working

_WET = ("wet", "steam")


def windows_of(room: Room, wall: Surface) -> Iterator[tuple[int, WallOpening, Opening]]:
    """Every window on the boarded part of a wall: its number among the openings, as asked and as it lies."""
    asked = next((one for one in room.walls if f"{room.name}/wall/{one.wall}" == wall.id), None)
    placed = {opening.id: opening for opening in wall.openings if opening.kind is OpeningKind.WINDOW}
    for number, opening in enumerate(() if asked is None else asked.openings, start=1):
        if opening.id in placed:
            yield number, opening, placed[opening.id]


def returns_asked(item: ToTile, window: Opening, rules: RuleSet) -> Iterator[Finding]:
    """The question how deep a window of a wet wall is set back, where the job leaves it out."""
    if item.boards is None or item.boards.zone not in _WET or window.depth is not None:
        return
    ref = f"{item.surface_id}/opening/{window.id}"
    yield rules.entry("fall.shelf.min").found("TIL-130", Severity.FIX, ref, remedies=("give_returns",))


def sill_working(wall: Surface, window: Opening, drop: int, on_sill: int) -> Working:
    """How high a window's sill lies at its front and at the frame.

    Args:
        wall: The wall.
        window: The window.
        drop: How much lower the sill's front lies [ticks].
        on_sill: Thickness of tile and mortar on it [ticks].
    """
    assert window.outline is not None
    low = bounds(window.outline)[1]
    return Working(
        formula="tiles-sill",
        at=(f"{wall.id}/opening/{window.id}",),
        inputs={
            "front": length(low),
            "fall": length(drop),
            "tile": length(on_sill),
            "at_frame": length(low + drop + on_sill),
        },
        result=length(low + on_sill),
    )
