"""What a plan costs: order, hours and price."""

from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.book_reading import LARGEST_BYTES, read_book
from firstcourse.pricing.make import offer
from firstcourse.pricing.offer import Offer
from firstcourse.pricing.price import Line, Pricing, cost_working, price

__all__ = [
    "LARGEST_BYTES",
    "Line",
    "Offer",
    "PriceBook",
    "Pricing",
    "cost_working",
    "offer",
    "price",
    "read_book",
]
