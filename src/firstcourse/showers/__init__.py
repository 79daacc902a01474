"""Shower floors: their falls, heights and tests, and the membranes that keep water in."""
