"""How often somebody may try to sign in: few times in a while, by name and by address."""

import threading
from collections import defaultdict, deque
from time import monotonic

MOST_TRIES, WITHIN_S = 10, 600.0
"""So many tries that fail within so many seconds; then the next must wait."""
_MOST_REMEMBERED = 10_000


class Limiter:
    """Counts tries that failed."""

    def __init__(self) -> None:
        """Nobody has tried yet."""
        self._lock = threading.Lock()
        self._tries: defaultdict[str, deque[float]] = defaultdict(deque)

    def wait_s(self, *keys: str) -> int:
        """Seconds until one more try is allowed; 0 where it is allowed now."""
        now = monotonic()
        with self._lock:
            return max(0, *(self._wait(key, now) for key in keys))

    def failed(self, *keys: str) -> None:
        """Note a try that failed."""
        now = monotonic()
        with self._lock:
            if len(self._tries) > _MOST_REMEMBERED:
                self._tries.clear()
            for key in keys:
                self._tries[key].append(now)

    def forget(self, *keys: str) -> None:
        """Forget tries that failed before one that did not."""
        with self._lock:
            for key in keys:
                self._tries.pop(key, None)

    def _wait(self, key: str, now: float) -> int:
        tries = self._tries.get(key)
        if tries is None:
            return 0
        while tries and tries[0] <= now - WITHIN_S:
            tries.popleft()
        return 0 if len(tries) < MOST_TRIES else int(tries[0] + WITHIN_S - now) + 1
