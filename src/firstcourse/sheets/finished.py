"""Finished layouts that surfaces may take, and the best of them together: where the joint search begins."""

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from firstcourse.boards import Choice, SurfaceLayout, best_choice, build_layout, only_up
from firstcourse.rules import RuleSet
from firstcourse.sheets.together import Surfaced
from firstcourse.sheets.weighing import Rough
from firstcourse.units import Tape

MOST_FINISHED = 8
"""Layouts of a surface built and weighed beside others: plain practice, then those of the fewest boards."""
MOST_WEIGHED = 10_000
"""Pieces cut over all layouts of a set that are tried: the work grows with the surfaces and no faster."""


class Finished(NamedTuple):
    """The layouts one surface may take as they are; none breaks more rules than the first, its own best.

    Attributes:
        usual: The own best, plain practice, and the best of each sheet.
        others: The rest of those worth weighing.
    """

    usual: list[SurfaceLayout]
    others: list[SurfaceLayout]

    @property
    def every(self) -> list[SurfaceLayout]:
        """All of them."""
        return [*self.usual, *self.others]

    @property
    def fewest_boards(self) -> int:
        """Boards of the layout that has the fewest."""
        return min(len(layout.boards) for layout in self.every)


def finished_layouts(
    item: Surfaced,
    choices: tuple[Choice, ...],
    practice: SurfaceLayout,
    tape: Tape,
    rules: RuleSet,
    *,
    before: SurfaceLayout | None = None,
) -> Finished:
    """Build the layouts a surface may take as they are.

    Args:
        item: The surface.
        choices: Its alternatives, the cheapest by the layout's own measure first; none where nothing is boarded.
        practice: Its layout by plain practice; left out where it breaks more rules than the surface's own best.
        tape: Tape of the job.
        rules: Rules in force.
        before: What stays of an earlier plan; nothing else is weighed where that breaks no more rules.
    """
    if before is not None and not (before.faults and choices):
        return Finished([before], [])
    if not choices:
        return Finished([only_up(item.surface, rules, tape)], [])
    picked = [best_choice(choices, item.stock)]
    for sheet in item.stock:
        own = tuple(choice for choice in choices if choice.stock == sheet.id)
        if own and (choice := best_choice(own, item.stock)) not in picked:
            picked.append(choice)
    others = [choice for choice in choices if choice not in picked][: max(0, MOST_FINISHED - len(picked))]

    def built(listed: Sequence[Choice]) -> list[SurfaceLayout]:
        return [build_layout(item.surface, choice, item.stock, rules, tape, mark=item.mark) for choice in listed]

    usual = built(picked)
    if before is not None and before.faults <= usual[0].faults:
        # What was planned stays where another place breaks as many rules.
        return Finished([before], [])
    usual.insert(1, practice)
    broken = usual[0].faults
    return Finished(
        [layout for layout in usual if layout.faults <= broken],
        [layout for layout in built(others) if layout.faults <= broken],
    )


def best_together(
    listed: Sequence[Finished],
    begun: Sequence[SurfaceLayout],
    value: Callable[[Sequence[SurfaceLayout]], Rough],
) -> list[SurfaceLayout]:
    """Exchange one layout after another while all together become better.

    Args:
        listed: The layouts each surface may take; the surfaces share sheets.
        begun: The layouts to begin with.
        value: Weighs layouts of all the surfaces; less is better.

    Returns:
        Layouts that are no worse than those begun with.
    """
    now, left = list(begun), MOST_WEIGHED
    if sum(len(finished.every) for finished in listed) <= len(listed):
        return now
    best = value(now)
    changed = True
    while changed and left > 0:
        changed = False
        for tried in _one_exchanged(listed, now):
            left -= sum(len(layout.boards) for layout in tried)
            if left < 0:
                break
            if (found := value(tried)) < best:
                best, changed = found, True
                now[:] = tried
    return now


def _one_exchanged(listed: Sequence[Finished], now: list[SurfaceLayout]) -> Iterator[list[SurfaceLayout]]:
    """`now` with one layout exchanged, as it is when asked."""
    for number, finished in enumerate(listed):
        for layout in finished.every:
            if layout is not now[number]:
                yield [*now[:number], layout, *now[number + 1 :]]
