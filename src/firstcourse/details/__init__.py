"""Niches, windows, benches and kerbs as surfaces of their own, and the feet of walls."""
