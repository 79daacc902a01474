"""A plan priced by a price book: read, computed, and proved again before it is given out."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from firstcourse.app.files import PLAN, PRICE
from firstcourse.errors import InputProblem, InputValueError, JobError, PlanRefusedError
from firstcourse.files import read_file
from firstcourse.findings import Finding
from firstcourse.papers.order_page import order_page, order_paper, supply_page, supply_paper, way_in_of
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.papers import Paper
from firstcourse.pricing import LARGEST_BYTES, Heading, Offer, PriceBook, offer, read_book
from firstcourse.steps import PlanResult
from firstcourse.verify import verify_price
from firstcourse.words import Speaker, speaker_for


def price_book(path: Path | str) -> PriceBook:
    """Read a price book.

    Args:
        path: YAML, JSON, CSV or XLSX, see docs/concepts/price.md.

    Raises:
        JobError: It cannot be read, or says what a price book cannot say; with line and column.
    """
    try:
        data = read_file(Path(path), most_bytes=LARGEST_BYTES, what="a price book")
    except InputValueError as error:
        raise JobError((InputProblem(file=str(path), line=0, column=0, field="", message=str(error)),)) from None
    return read_book(data, str(path))


def priced(result: PlanResult, book: PriceBook) -> Offer:
    """An order and a price for a plan, proved again from their JSON.

    Args:
        result: A verified plan.
        book: Prices.

    Raises:
        InputValueError: The book does not go with the plan: another currency, or a price for another unit.
        PlanRefusedError: The price does not verify; this is our fault.
    """
    made = offer(result.plan, result.document, book)
    objections = verify_price(result.document, price_document(made))
    if objections:
        raise PlanRefusedError(tuple(f"{one.code} {one.where}: {one.message}" for one in objections))
    return made


def price_document(made: Offer) -> str:
    """An offer as its price.json."""
    return made.model_dump_json(indent=1) + "\n"


def order_papers(result: PlanResult, made: Offer) -> Iterator[Paper]:
    """The plan that was priced, its price.json, and the order and price on both paper sizes.

    Args:
        result: A plan.
        made: Its order and price.
    """
    yield Paper(PLAN, result.document.encode())
    yield Paper(PRICE, price_document(made).encode())
    speaker = speaker_for(result.plan)
    for size in PAGE_SIZES:
        yield Paper(f"order-{size}.pdf", order_paper(size, result.plan, made, speaker))


def price_page(result: PlanResult, made: Offer, speaker: Speaker) -> dict[str, Any]:
    """Title, cautions and tables of an order and a price, as the paper prints them."""
    return order_page(result.plan, made, speaker)


def no_book(currency: str) -> PriceBook:
    """A book in which nothing has a price: what a plan needs is still ordered in the plan's own packs.

    Args:
        currency: The job's; where it names none, the code that stands for no currency (ISO 4217).
    """
    return PriceBook(book=Heading(name="-", currency=currency or "XXX"))


def supply_papers(result: PlanResult, made: Offer) -> Iterator[Paper]:
    """The order without prices on both paper sizes, and the plan that it is for.

    Args:
        result: A plan.
        made: Its order.
    """
    yield Paper(PLAN, result.document.encode())
    speaker = speaker_for(result.plan)
    for size in PAGE_SIZES:
        yield Paper(f"supply-{size}.pdf", supply_paper(size, result.plan, made, speaker))


def supply_order(result: PlanResult, made: Offer, speaker: Speaker) -> tuple[dict[str, Any], tuple[Finding, ...]]:
    """Title and tables of an order without prices, and what its way in stops."""
    return supply_page(result.plan, made, speaker), way_in_of(made)
