"""Who reads a plan's papers: in whose words and units they are, and which names are the job's own."""

import weakref
from collections.abc import Iterator

from firstcourse.plan import Plan, Zone
from firstcourse.words.edges import said_edge
from firstcourse.words.labels import said_part
from firstcourse.words.messages import Messages
from firstcourse.words.places import parts, shown
from firstcourse.words.speaker import Speaker

_KEPT: list[tuple[weakref.ref[Plan], str, Speaker]] = []
"""Who spoke last: every drawing of a plan asks for him again."""


def speaker_for(plan: Plan, *, tongue: str = "") -> Speaker:
    """Says everything in the words of the job's practice and the units of its tape.

    Args:
        plan: Whose papers are printed.
        tongue: What they are written in; the job's own where not given.
    """
    tongue = tongue or plan.job.tongue
    for kept, its_tongue, its_speaker in tuple(_KEPT):  # another thread may put its own there at any moment
        if kept() is plan and its_tongue == tongue:
            return its_speaker
    labels = _labels(plan, Messages(tongue, plan.job.practice, {}))
    speaker = Speaker(
        plan.job.practice,
        plan.job.tape,
        names=_names(plan),
        ids={one.id: shown(labels[one.id]) for one in plan.surfaces if "/" in one.id},
        labels=labels,
        sources={rule.id: rule.source for rule in plan.rules},
        tongue=tongue,
    )
    _KEPT[:] = [(weakref.ref(plan), tongue, speaker)]
    return speaker


def why_barred(zone: Zone, speaker: Speaker) -> str:
    """Why nothing is driven somewhere: as the job says it, or as the rule does."""
    return zone.why if zone.found else speaker.words(speaker.text(f"word-{zone.why}"))


def _labels(plan: Plan, words: Messages) -> dict[str, tuple[str, ...]]:
    """What surfaces, their boards and sides are called, by their ids."""

    def word(kind: str) -> str:
        known = words.has(f"word-{kind}")
        return words.say(f"word-{kind}") if known else said_part(kind, words.say, words.has)

    labels: dict[str, tuple[str, ...]] = {}
    for surface in plan.surfaces:
        labels[surface.id] = tuple(parts(surface.id, {}, word))
        labels |= {
            board.id: (*labels[surface.id], words.say("label-board", name=board.mark)) for board in surface.boards
        }
        for number, side in enumerate(surface.sides):
            labels[f"{surface.id}/side/{number}"] = (*labels[surface.id], said_edge(side, words.say))
    return labels


def _names(plan: Plan) -> Iterator[str]:
    """What the job has named."""
    yield plan.job.name
    yield from (value for value in plan.job.site.model_dump().values() if value)
    yield from (stock.id for stock in plan.stock)
    yield from (tile.id for tile in plan.tile_stock)
    yield from (sheet.source for sheet in plan.sheets)
    for surface in plan.surfaces:
        yield surface.room
        yield from (opening.id for opening in surface.openings)
    yield from (change.reason for change in plan.job.overrides)
