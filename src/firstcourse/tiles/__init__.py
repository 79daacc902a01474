"""Tile on each surface: where it starts, its pattern, cuts, joints, soft joints and marks."""
