"""What the survey of one room says, as values for a program."""

from dataclasses import dataclass

from firstcourse.survey.room import RoomSurvey
from firstcourse.units import to_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerReport:
    """One corner of a room.

    Attributes:
        at: On the floor plan, right and up [mm].
        uncertainty_95: Within which it lies with 95 % probability [mm].
        squared: How far drawing the room square moves it [mm].
    """

    name: str
    at: tuple[float, float]
    uncertainty_95: float
    squared: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingReport:
    """One reading: as taped, as adjusted and the difference [mm].

    Attributes:
        redundancy: How far others check it, 0 to 1.
        standardised: The difference in terms of what is usual; None where nothing checks it.
    """

    name: str
    taped: float
    adjusted: float
    residual: float
    redundancy: float
    standardised: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomReport:
    """What the survey of one room proves.

    Attributes:
        taped_to: What its sides were taped to; None where the job does not say.
        freedom: Readings beyond those needed.
        area_m2: Of the floor [m²].
        suspects: Readings that are likely misread, the likeliest first.
        ambiguous: Whether another reading may as well be the wrong one.
    """

    name: str
    taped_to: str | None
    freedom: int
    area_m2: float
    corners: tuple[CornerReport, ...]
    readings: tuple[ReadingReport, ...]
    suspects: tuple[str, ...]
    ambiguous: bool


def report(room: RoomSurvey) -> RoomReport:
    """What the survey of a room proves, as values.

    Args:
        room: The adjusted room.
    """
    done = room.adjustment
    return RoomReport(
        name=room.name,
        taped_to=room.taped_to or None,
        freedom=done.freedom,
        area_m2=room.area_m2,
        corners=tuple(
            CornerReport(
                name=name,
                at=(to_mm(room.plan[name][0]), to_mm(room.plan[name][1])),
                uncertainty_95=round(done.uncertainty_mm[name], 3),
                squared=round(room.squared_mm[name], 3),
            )
            for name in room.corners
        ),
        readings=tuple(
            ReadingReport(
                name=residual.reading.name,
                taped=residual.reading.length_mm,
                adjusted=round(residual.adjusted_mm, 3),
                residual=round(residual.residual_mm, 3),
                redundancy=round(residual.redundancy, 4),
                standardised=None if residual.standardised is None else round(residual.standardised, 3),
            )
            for residual in done.residuals
        ),
        suspects=tuple(suspect.reading.name for suspect in done.suspects),
        ambiguous=done.ambiguous,
    )
