"""What keeps the water in: membranes of wet surfaces and beds of shower floors, and what they take."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from firstcourse.findings import Finding
from firstcourse.job import Job
from firstcourse.plan import Quantity, Surface
from firstcourse.rules import RuleSet
from firstcourse.showers import Kind, membrane
from firstcourse.survey import SurveyResult
from firstcourse.takeoff import bed_mortar, membranes
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Waterproofing:
    """Membranes and beds of a job; nothing is listed where nothing is said to be waterproof.

    Attributes:
        kinds: Kind of membrane by surface id.
    """

    kinds: dict[str, Kind] = field(default_factory=dict)
    quantities: tuple[Quantity, ...] = ()
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def waterproof(
    job: Job,
    survey: SurveyResult,
    boarded: Sequence[Surface],
    floors: Sequence[Surface],
    rules: RuleSet,
    *,
    tiled: Sequence[Surface] = (),
) -> Waterproofing:
    """Lay out every membrane and count it, with the mortar of the beds.

    Args:
        job: For what surfaces are exposed to.
        survey: For the shower floors as they lie in their rooms.
        boarded: Boarded surfaces.
        floors: Shower floors with their falls.
        rules: Rules in force.
        tiled: All surfaces as they are tiled, those of benches among them.
    """
    falls = {surface.id: surface.fall for surface in floors if surface.fall is not None}
    showers = [(shower, falls.get(shower.surface.id)) for shower in survey.showers]
    laid = membrane(boarded, showers, job, rules, job.tape, tiled=tiled)
    lines = [*membranes(laid.developed, rules, job.tape), *bed_mortar(list(falls.items()), rules)]
    return Waterproofing(
        kinds={item.surface: item.kind for item in laid.developed},
        quantities=tuple(quantity for quantity, _ in lines),
        findings=laid.findings,
        workings=(*laid.workings, *(working for _, working in lines)),
    )
