"""How independent tasks of one step are done: one after the other here, by whoever plans in other ways."""

from collections.abc import Callable, Sequence
from typing import Protocol


class Share(Protocol):
    """Does independent tasks; what comes of them may not depend on how."""

    def __call__[Task, Found](
        self,
        function: Callable[..., Found],
        tasks: Sequence[Task],
        *given: object,
        ready: Callable[[], object] | None = None,
    ) -> list[Found]:
        """What `function(task, *given)` returns for each task, in their order.

        Args:
            function: Of a module; given the same it returns the same.
            tasks: Small, for each may be sent elsewhere.
            given: What all tasks share.
            ready: Called once where that saves each worker the same beginning.
        """
        ...


def in_turn[Task, Found](
    function: Callable[..., Found],
    tasks: Sequence[Task],
    *given: object,
    ready: Callable[[], object] | None = None,
) -> list[Found]:
    """One task after the other, in this process; see `Share`."""
    return [function(task, *given) for task in tasks]
