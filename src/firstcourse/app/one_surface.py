"""One surface planned lightly while something on it moves, and how that is told from process to process."""

from dataclasses import dataclass

from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.plan import Surface as Surface
from firstcourse.reuse import Steps, Store
from firstcourse.steps import Held as Held
from firstcourse.steps import OneSurface as OneSurface
from firstcourse.steps import plan_one_surface


@dataclass(frozen=True, slots=True, kw_only=True)
class LightTask:
    """One surface to plan lightly.

    Attributes:
        text: The document, with what moves where it is now.
        name: What the document is called in messages.
        surface: Its id.
        held: What stays as it was.
    """

    text: str
    name: str
    surface: str
    held: Held


def held_of(plan: Plan | None, surface: str) -> Held:
    """What stays of a plan while one of its surfaces is planned lightly; nothing without a plan."""
    if plan is None:
        return Held()
    own = next((one for one in plan.surfaces if one.id == surface), None)
    boards = set() if own is None else {board.piece for board in own.boards}
    field = next((area for area in own.tiled if area.role == "field" and area.starts), None) if own else None
    return Held(
        start=None if field is None else field.starts[0].origin,
        pieces=tuple(piece for piece in plan.pieces if piece.id not in boards),
    )


def planned_lightly(task: LightTask, store: Store) -> OneSurface | None:
    """Do a task.

    Args:
        task: The task.
        store: Where steps are kept to be reused.

    Raises:
        JobError: The document says something a job cannot say, or the surface cannot be planned.
    """
    return plan_one_surface(read_job_text(task.text, task.name), task.surface, held=task.held, steps=Steps(store))


def smallest_cut(surface: Surface) -> int | None:
    """The smallest side of any cut tile of a surface at its start; None where no tile is cut or laid [ticks]."""
    found = [area.starts[0].smallest_cut for area in surface.tiled if area.starts and area.starts[0].cut_tiles]
    return min(found, default=None)
