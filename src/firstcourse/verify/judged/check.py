"""The judgement's findings against what the job and the plan ask for, family by family."""

from collections.abc import Callable, Iterator

from firstcourse.errors import FirstcourseError
from firstcourse.verify.formulas.parts import Part
from firstcourse.verify.frame_given import FRAMES_NEED
from firstcourse.verify.judged import decks, exposure, fittings, flat, frames, showers, stance, unjudged
from firstcourse.verify.judged.asked import CODE, Asked, untold
from firstcourse.verify.judged.grounds import all_grounds, grounds
from firstcourse.verify.judged.steep import check_steep
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_KNOWN = (
    decks.CODES
    | exposure.CODES
    | fittings.CODES
    | flat.CODES
    | {flat.MAP, "SUI-902"}
    | frames.CODES
    | showers.CODES
    | stance.CODES
    | unjudged.CODES
)
_OF_PARTS: tuple[Callable[[Document, Part], Iterator[Asked]], ...] = (
    exposure.exposure_asked,
    fittings.fittings_asked,
    flat.flat_asked,
    showers.doorway_asked,
    stance.stance_asked,
)


def check_judged(plan: Document) -> Iterator[Objection]:
    """Object to a finding of the judgement that is missing, changed, or of what is not so."""
    try:
        asked = judged_asked(plan)
    except FirstcourseError as error:
        yield Objection(CODE, "judgement", f"cannot be proved again: {error}")
        return
    yield from held(plan, asked)


def judged_asked(plan: Document) -> list[Asked]:
    """Every finding of the judgement that there must be, highs and lows of readings left out.

    Raises:
        FirstcourseError: The practice lacks a rule that is asked for.
    """
    families = (
        _frames,
        _decks,
        unjudged.unjudged_asked,
        fittings.doorways_asked,
        showers.shower_asked,
        _steam,
        _parts,
    )
    return [one for ask in families for one in ask(plan)]


def held(plan: Document, asked: list[Asked]) -> Iterator[Objection]:
    """Object to findings of the judgement other than what is asked, and to highs and lows that are not so."""
    yield from untold(plan.findings, _KNOWN - {flat.MAP, "SUI-902"}, asked)
    yield from check_steep(plan)
    judged = set()
    for part in grounds(plan):
        judged.add(part.ref)
        yield from flat.check_map(plan, part)
    for said in plan.findings:
        if said.code.startswith("SUI-") and said.code not in _KNOWN:
            yield Objection(CODE, said.place, f"{said.code} is no finding that is known")
        elif said.code == flat.MAP and said.place not in judged:
            yield Objection(CODE, said.place, f"{said.code} is told of what is not judged")


def _parts(plan: Document) -> Iterator[Asked]:
    for part in grounds(plan):
        for ask in _OF_PARTS:
            yield from ask(plan, part)


def _frames(plan: Document) -> Iterator[Asked]:
    for frame in plan.frames:
        yield from frames.frame_asked(plan, frame)


def _decks(plan: Document) -> Iterator[Asked]:
    for part in all_grounds(plan):
        yield from decks.askew_asked(part.surface)
    frames_known = plan.rules.has(FRAMES_NEED)
    for part in grounds(plan):
        yield from decks.deck_asked(plan, part)
        if unjudged.is_whole(plan, part) and frames_known:
            if part.surface.kind == "floor":
                yield from decks.counted_asked(plan, part)
            continue
        spacing = decks.spacing_of(plan, part)
        if spacing is not None:
            yield from frames.spacing_asked(
                plan.rules, part.surface.kind, part.ref, spacing, frames_known=frames_known
            )


def _steam(plan: Document) -> Iterator[Asked]:
    for room in plan.job.nodes("rooms", ()):
        yield from stance.steam_asked(plan, room)
