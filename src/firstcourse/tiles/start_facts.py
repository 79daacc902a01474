"""What a start brings: how it cuts along each edge, and how sure that is in a room not surveyed exactly."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Along:
    """The narrowest cut along one side of the surface.

    Attributes:
        side: Reference to it.
        weight: How much a poor cut shows there.
        width: Of the cut; None where no tile is cut there [mm].
        share: The same as a share of the longest side of a tile; 1 where none is cut.
    """

    side: str
    weight: float
    width: float | None
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StartFacts:
    """What a start brings beside the number of its cuts.

    Attributes:
        short: How far the poorest cut, as laid, falls short of what is wanted; 0 to 1.
        may_sliver: A sliver may stand there in a room that the survey allows.
        uneven: Greatest difference of cuts on opposite sides, share of a tile; None where nothing faces.
        on_joints: Wanted lines that lie on joints.
        num_wanted: How many lines are wanted on joints.
        unsure: Whether the survey leaves the room any play.
        along: The narrowest cut along every side, as laid.
    """

    short: float = 0.0
    may_sliver: bool = False
    uneven: float | None = None
    on_joints: int = 0
    num_wanted: int = 0
    unsure: bool = False
    along: tuple[Along, ...] = ()


NO_FACTS = StartFacts()
"""Of what keeps the lines of another start."""
