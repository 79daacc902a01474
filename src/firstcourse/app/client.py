"""What a client is shown of a plan: rooms unfolded, and of each tiled surface its tile, joints and soft joints."""

from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.drawings import draw_room, room_names, to_svg
from firstcourse.errors import InputValueError
from firstcourse.papers.face_pages import facts_of
from firstcourse.papers.tile_words import soft_rows
from firstcourse.steps import PlanResult
from firstcourse.words import speaker_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A tiled surface in words.

    Attributes:
        id: Of the surface.
        facts: Names and values: tile, pattern, grout joint.
        soft: Its soft joints: where, how wide, how long.
    """

    id: str
    title: str
    facts: Sequence[tuple[str, str]]
    soft: Sequence[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClientView:
    """A plan as its client sees it.

    Attributes:
        rooms: Names of those that are drawn unfolded.
        trims: Edge trim in words, as need and what it is.
    """

    rooms: tuple[str, ...]
    surfaces: tuple[Shown, ...]
    trims: tuple[tuple[str, str], ...]


def client_view(result: PlanResult, *, tongue: str) -> ClientView:
    """What a client is shown.

    Args:
        result: A plan.
        tongue: What it is said in.
    """
    plan = result.plan
    speaker = speaker_for(plan, tongue=tongue)
    surfaces = tuple(
        Shown(
            id=one.id,
            title=speaker.words(speaker.title(one)),
            facts=tuple((speaker.say(name), speaker.say(value)) for name, value in facts_of(one, speaker)),
            soft=tuple(speaker.say(line) for line in soft_rows(plan, [one], speaker)),
        )
        for one in plan.surfaces
        if one.tiled
    )
    said = [speaker.quantity(one) for one in plan.quantities if one.item == "edge_trim" and one.buy]
    trims = tuple((f"{one.exact:.0f} {one.unit}", speaker.words(one.item)) for one in said)
    return ClientView(rooms=room_names(plan), surfaces=surfaces, trims=trims)


def room_drawing(result: PlanResult, room: str) -> str:
    """A room unfolded, as SVG.

    Raises:
        InputValueError: The plan has no such room.
    """
    known = room_names(result.plan)
    if room not in known:
        raise InputValueError(f"the plan has no room '{room[:80]}' to unfold; it has {', '.join(known)}")
    return to_svg(draw_room(result.plan, room))
