"""The steps, each named by its number."""
