"""What the survey says by what the job gives: leaning walls, what lies in them, boards across a doorway."""

from collections.abc import Iterator
from typing import Any

from firstcourse.geometry import bounds
from firstcourse.verify.fields import Node, point
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.told import mm, name, said

_LEAN_JUDGED = ("SUI-411", "SUI-412")
"""A lean that is spoken of where the wall is judged is not told twice."""
_PLUMB = "survey.plumb.note"
Span = tuple[int, int]


def survey_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of each room by what is given of it."""
    judged = {one.place for one in plan.findings if one.code in _LEAN_JUDGED}
    for room in plan.job.nodes("rooms", ()):
        at = room.text("name")
        walls = room.nodes("walls", ())
        for wall in walls:
            yield from _kept_out(wall, f"{at}/wall/{wall.text('wall')}")
        if room.raw("taped_to", "") == "finish" and walls:
            yield said("SUR-105", "fix", at, "price_only", "tape_studs")
        plumb, limit = room.part("plumb"), plan.rules.ticks(_PLUMB)
        for pair in plumb.value:
            lean, where = plumb.distance(pair), f"{at}/wall/{pair}"
            if abs(lean) > limit and where not in judged:
                yield said(
                    "SUR-104",
                    "note",
                    where,
                    "see_judgement",
                    rule=_PLUMB,
                    measured=mm(abs(lean)),
                    limit=mm(limit) | {"sense": "is"},
                    inwards=lean > 0,
                )
        yield from _boarded_over(room, at)


def _kept_out(wall: Node, at: str) -> Iterator[Said]:
    for zone in wall.nodes("no_fasteners", ()):
        edges: dict[str, Any] = {side: mm(zone.distance(side)) for side in ("left", "right", "bottom", "top")}
        yield said("SUR-112", "fix", at, "mark", why=name(zone.text("why")), **edges)


def _boarded_over(room: Node, at: str) -> Iterator[Said]:
    """Doorways that the floor gives and their boarded wall does not."""
    walls = {wall.text("wall"): wall for wall in room.nodes("walls", ())}
    for door in room.part("floor").nodes("doorways", ()):
        wall = walls.get(str(door.raw("wall", "")))
        if wall is None or "left" not in door.value or "width" not in door.value:
            continue
        left = door.distance("left")
        span = left, left + door.length("width")
        doors = [_span(opening) for opening in wall.nodes("openings", ()) if opening.text("kind") == "door"]
        if _is_boarded(wall, span, door, room) and not any(_meet(span, other) for other in doors):
            yield said(
                "SUR-109",
                "fix",
                (f"{at}/wall/{wall.text('wall')}", f"{at}/floor/door/{door.text('id')}"),
                "enter_in_wall",
                left=mm(span[0]),
                right=mm(span[1]),
            )


def _is_boarded(wall: Node, span: Span, door: Node, room: Node) -> bool:
    boards = wall.part("boards")
    left = boards.distance("left") if _has(boards, "left") else 0
    right = boards.distance("right") if _has(boards, "right") else room.part("sides").length(wall.text("wall"))
    bottom = boards.distance("bottom") if _has(boards, "bottom") else 0
    above = _has(door, "height") and bottom >= door.length("height")
    return _meet(span, (left, right)) and not above


def _span(opening: Node) -> Span:
    """From where to where an opening reaches along its wall [ticks]."""
    if opening.raw("points", None):
        left, _, right, _ = bounds(tuple(point(*row) for row in opening.rows("points")))
        return left, right
    left = opening.distance("left")
    if _has(opening, "diameter"):
        half = opening.length("diameter") // 2
        return left - half, left + half
    return left, left + opening.length("width")


def _has(node: Node, key: str) -> bool:
    return node.raw(key, None) is not None


def _meet(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]
