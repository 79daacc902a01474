"""Tiling: patterns, where they start, cuts, soft joints, falls, water and the story pole."""
