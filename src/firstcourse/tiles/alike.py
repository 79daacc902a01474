"""When two lengths of a tiling are one."""

ALIKE_MM = 1e-6
"""Lengths that differ by less are alike: of what is just so long floating point must not decide [mm].

Edges of areas are whole ticks (1/640 mm), so that two that differ at all differ by far more.
"""
