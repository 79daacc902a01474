"""A proposal of a plan and its price: made, proved again, and written as papers."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from firstcourse.app.files import PLAN, PRICE
from firstcourse.app.pricing import price_document
from firstcourse.errors import InputValueError, PlanRefusedError
from firstcourse.files import read_file
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.papers import Paper
from firstcourse.papers.proposal import proposal_lines, proposal_page, proposal_paper
from firstcourse.placed import refused
from firstcourse.plan import Plan
from firstcourse.pricing import LARGEST_WORDS, Business, Offer, Proposal, Wording, propose, read_wording
from firstcourse.steps import PlanResult
from firstcourse.verify import verify_proposal
from firstcourse.words import speaker_for

PROPOSAL = "proposal.json"
_EXAMPLE = Business(name="Example Tile Work", address="1 Sample Street", phone="000-0100")


def proposal_words(path: Path | str | None, plan: Plan) -> Wording:
    """Read the words of a proposal.

    Args:
        path: YAML or JSON, see docs/concepts/proposal.md; an invented business where not given.
        plan: The plan that is offered: a field that it has nothing for is refused.

    Raises:
        JobError: It cannot be read, or says what it cannot say; with line and column.
    """
    if path is None:
        return Wording(invented=True, business=_EXAMPLE)
    try:
        data = read_file(Path(path), most_bytes=LARGEST_WORDS, what="the words of a proposal")
    except InputValueError as error:
        raise refused(str(path), str(error)) from None
    site = {"client": plan.job.site.client, "address": plan.job.site.address}
    return read_wording(data, str(path), frozenset(name for name, value in site.items() if not value))


def proposed(result: PlanResult, offer: Offer, words: Wording) -> Proposal:
    """A proposal, proved again from its JSON.

    Args:
        result: A verified plan.
        offer: Its order and price.
        words: The firm's own.

    Raises:
        InputValueError: Something has no price.
        PlanRefusedError: The proposal does not verify; this is our fault.
    """
    if offer.book.is_invented:
        # Whose ever the words are: what it costs is made up, and every page says so.
        words = words.model_copy(update={"invented": True})
    price = price_document(offer)
    made = propose(result.plan, result.document, offer, price, words)
    objections = verify_proposal(result.document, price, _document(made))
    if objections:
        raise PlanRefusedError(tuple(f"{one.code} {one.where}: {one.message}" for one in objections))
    return made


def _document(made: Proposal) -> str:
    return made.model_dump_json(indent=1) + "\n"


def proposal_papers(result: PlanResult, offer: Offer, made: Proposal) -> Iterator[Paper]:
    """The plan, its price, the proposal as values, and as pages on both paper sizes.

    Args:
        result: A plan.
        offer: Its order and price.
        made: Its proposal.
    """
    page = _page(result, made)
    yield Paper(PLAN, result.document.encode())
    yield Paper(PRICE, price_document(offer).encode())
    yield Paper(PROPOSAL, _document(made).encode())
    for size in PAGE_SIZES:
        yield Paper(f"proposal-{size}.pdf", proposal_paper(size, page))


def proposal_text(result: PlanResult, made: Proposal) -> tuple[str, ...]:
    """A proposal as lines of text.

    Args:
        result: A plan.
        made: Its proposal.
    """
    return tuple(proposal_lines(_page(result, made)))


def _page(result: PlanResult, made: Proposal) -> dict[str, Any]:
    return proposal_page(result.plan, made, speaker_for(result.plan))
