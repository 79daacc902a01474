"""What the sheets cost."""

from firstcourse.pricing.price import Line, Pricing, cost_working, price

__all__ = ["Line", "Pricing", "cost_working", "price"]
