"""How what depends on its arguments alone is done: at once here; whoever proves plan after plan may reuse it."""

from collections.abc import Callable
from typing import Protocol


class Do(Protocol):
    """Gives what a function of a module gives for its arguments, done now or kept from before."""

    def __call__[**Given, Gives](
        self, step: Callable[Given, Gives], *args: Given.args, **kwargs: Given.kwargs
    ) -> Gives:
        """What `step(*args, **kwargs)` gives."""
        ...


def at_once[**Given, Gives](step: Callable[Given, Gives], *args: Given.args, **kwargs: Given.kwargs) -> Gives:
    """Do it, see `Do`."""
    return step(*args, **kwargs)
