"""Seams and cuts chosen together: which layouts of all surfaces take the fewest and cheapest sheets."""
