"""How the work on site stands: all events of a job, folded to what is ticked and measured of its newest plan."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from firstcourse.app.site import SiteWork
from firstcourse.store.site import KeptEvent

_SET = ("board/", "tile/")
"""What is on the wall once it is ticked, whatever is planned."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """How one thing stands.

    Attributes:
        heads: The events that no other replaces, the latest last.
        value: What the latest says.
        clash: That two of them say different things.
    """

    heads: tuple[KeptEvent, ...]
    value: str
    clash: bool

    @property
    def last(self) -> KeptEvent:
        """The latest event."""
        return self.heads[-1]


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteStand:
    """How a job stands on site.

    Attributes:
        things: By id, each thing of the newest plan that was ever ticked or measured.
        clashes: Ids of those that are said to be two things.
        elsewhere: What stands as set on an earlier plan and is not so in the newest: nothing is lost.
        after: By id of a thing, the ids of all events that its next one replaces, as forms carry them.
    """

    things: Mapping[str, Stand]
    clashes: tuple[str, ...]
    elsewhere: tuple[KeptEvent, ...]
    after: Mapping[str, str]

    def values(self, work: SiteWork) -> dict[str, str]:
        """What stands of each thing: boards that are up in the plan are, until they are said to be out."""
        return dict.fromkeys(work.up, "yes") | {name: stand.value for name, stand in self.things.items()}


def site_stand(
    events: Sequence[KeptEvent], work: SiteWork, earlier: Callable[[int], SiteWork | None]
) -> SiteStand:
    """Fold events.

    Args:
        events: All of a job.
        work: Of its newest plan.
        earlier: Gives the work of the plan of a revision; None where it is kept no more.
    """
    by_thing: dict[str, list[KeptEvent]] = {}
    for event in events:
        by_thing.setdefault(event.thing, []).append(event)
    things: dict[str, Stand] = {}
    elsewhere: list[KeptEvent] = []
    after: dict[str, str] = {}
    for thing, all_of in by_thing.items():
        replaced = {name for event in all_of for name in event.after}
        heads = [event for event in all_of if event.id not in replaced]
        after[thing] = " ".join(event.id for event in heads)
        here = [event for event in heads if _same(event, work, earlier)]
        if thing.startswith(_SET) and thing not in work.up:
            elsewhere += [event for event in heads if event not in here and event.value]
        if here:
            here.sort(key=lambda event: (event.at, event.came, event.id))
            values = {event.value for event in here}
            things[thing] = Stand(heads=tuple(here), value=here[-1].value, clash=len(values) > 1)
    return SiteStand(
        things=things,
        clashes=tuple(sorted(name for name, stand in things.items() if stand.clash)),
        elsewhere=tuple(elsewhere),
        after=after,
    )


def _same(event: KeptEvent, work: SiteWork, earlier: Callable[[int], SiteWork | None]) -> bool:
    """Whether an event is about a thing of this plan."""
    if event.plan == work.digest:
        return event.thing in work.meaning
    if event.thing not in work.meaning or event.thing in work.up:
        return False
    if event.thing in work.blanks:
        return True  # what was measured stays measured
    meaning, was = work.meaning[event.thing], earlier(event.revision)
    if meaning is None or was is None or was.digest != event.plan:
        return False
    return was.meaning.get(event.thing) == meaning
