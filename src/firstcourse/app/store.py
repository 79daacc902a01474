"""Where a session keeps what steps of planning gave."""

from collections import OrderedDict
from collections.abc import Sequence

from firstcourse.reuse import Kept

MOST_KEPT = 4_096
"""Steps kept in memory; a bathroom's plan takes some forty, a change of one wall some ten more."""
_MOST_ALIKE = 4
"""Of one step with the same inputs, so many are kept for rules of different values."""


class Memory:
    """Keeps in memory what was used last, up to a number of steps."""

    def __init__(self, most: int = MOST_KEPT) -> None:
        """Keep nothing yet.

        Args:
            most: Steps to keep; the one that was not used for the longest time goes first.
        """
        self._most = most
        self._kept: OrderedDict[str, tuple[Kept, ...]] = OrderedDict()

    def __len__(self) -> int:
        return len(self._kept)

    def find(self, key: str) -> Sequence[Kept]:
        """All that is kept under a key."""
        found = self._kept.get(key, ())
        if found:
            self._kept.move_to_end(key)
        return found

    def keep(self, key: str, kept: Kept) -> None:
        """Keep what a step gave, the newest first."""
        self._kept[key] = (kept, *self._kept.get(key, ()))[:_MOST_ALIKE]
        self._kept.move_to_end(key)
        while len(self._kept) > self._most:
            self._kept.popitem(last=False)
