"""Which version of the code this is: part of the key of every step that is kept."""

__version__ = "0.1.0"
