"""What takes long to make is made once in a run of the tests, whichever of its processes asks first."""

import os
import pickle
from collections.abc import Callable
from pathlib import Path
from typing import Any

FOLDER = "FIRSTCOURSE_TESTS_SHARE"
"""Names the folder of one run; it goes when the run ends."""


def shared[T](name: str, make: Callable[[], T]) -> T:
    """What `make` gives, or what it gave in another process of this run.

    Args:
        name: Of the thing, unlike any other's; a name of a file.
        make: Makes it.
    """
    file = Path(os.environ[FOLDER]) / f"{name}.pickle"
    if file.exists():
        kept: Any = pickle.loads(file.read_bytes())
        return kept
    made = make()
    # Whole or not at all: the other process may ask at any moment.
    beside = file.with_suffix(f".{os.getpid()}")
    beside.write_bytes(pickle.dumps(made))
    beside.replace(file)
    return made
