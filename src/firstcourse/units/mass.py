"""Units of mass."""

KG_PER_LB = 0.45359237
"""Kilograms in a pound, exact: National Institute of Standards and Technology, Handbook 44, appendix C."""
