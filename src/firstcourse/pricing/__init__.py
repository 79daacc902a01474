"""What a plan costs: order, hours and price."""

from firstcourse.pricing.book import Heading, PriceBook
from firstcourse.pricing.book_reading import LARGEST_BYTES, read_book
from firstcourse.pricing.make import offer
from firstcourse.pricing.offer import Offer
from firstcourse.pricing.price import Line, Pricing, cost_working, price
from firstcourse.pricing.proposal import Proposal, propose
from firstcourse.pricing.wording import LARGEST_WORDS, Business, Wording, filled, read_wording

__all__ = [
    "LARGEST_BYTES",
    "LARGEST_WORDS",
    "Business",
    "Heading",
    "Line",
    "Offer",
    "PriceBook",
    "Pricing",
    "Proposal",
    "Wording",
    "cost_working",
    "filled",
    "offer",
    "price",
    "propose",
    "read_book",
    "read_wording",
]
