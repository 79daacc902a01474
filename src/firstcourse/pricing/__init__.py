"""What the sheets cost."""

from firstcourse.pricing.price import Line, Pricing, price

__all__ = ["Line", "Pricing", "price"]
