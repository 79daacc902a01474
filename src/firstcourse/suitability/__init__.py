"""Whether frame, panel and surface will carry tile, with every working and the remedies that would pass."""
