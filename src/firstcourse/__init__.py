"""Firstcourse: from a tape measure to a wet-room plan that can be built and checked."""

__version__ = "0.1.0"
