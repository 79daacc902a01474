"""Sheets of judged frames: each verdict follows from its figures, none is hidden, layers weigh what they are."""

from collections.abc import Iterator

from firstcourse.verify.frame_fields import Frame, Line
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_M_PER_IN = 0.0254
_HALF_THICKNESS = 0.0005
"""Thicknesses are printed to a thousandth of an inch, densities to a kilogram, masses to a tenth of one: half of
each may be lost."""
_HALF_DENSITY = 0.5
_HALF_MASS = 0.051


def check_frames(plan: Document) -> Iterator[Objection]:
    """Object to a sheet whose verdict, workings or masses do not follow from what it prints."""
    surfaces = {surface.id for surface in plan.surfaces}
    loud = {said.place for said in plan.findings if said.severity in ("stop", "fix")}
    for frame in plan.frames:
        if frame.surface not in surfaces:
            yield Objection("VER-911", frame.surface, "is judged and is no surface of this plan")
        for line in frame.lines:
            if line.working not in plan.workings:
                yield Objection("VER-902", frame.where, f"working '{line.working}' does not exist")
            if not _follows(line):
                yield Objection(
                    "VER-912", frame.where, f"{line.name}: {line.found:g} against {line.limit:g}, said otherwise"
                )
        if frame.surface not in loud and not all(line.stands for line in frame.lines):
            yield Objection("VER-913", frame.where, "does not hold in every check, and no finding says so")
        yield from _masses(frame)


def _follows(line: Line) -> bool:
    """Whether the verdict follows from the printed figures; where both print alike, either may."""
    if line.found is None or line.limit is None:
        return line.holds
    if line.found == line.limit:
        return True
    return line.holds is (line.found > line.limit if line.at_least else line.found < line.limit)


def _masses(frame: Frame) -> Iterator[Objection]:
    for layer in frame.layers:
        mass = layer.thickness * _M_PER_IN * layer.density
        slack = _HALF_THICKNESS * layer.density + _HALF_DENSITY * layer.thickness
        if abs(mass - layer.mass) > _HALF_MASS + _M_PER_IN * slack:
            yield Objection("VER-914", frame.where, f"{layer.name} weighs {mass:.1f} kg/m², not {layer.mass:g}")
    if frame.mass is not None:
        total = sum(layer.mass for layer in frame.layers)
        if abs(total - frame.mass) > _HALF_MASS * (len(frame.layers) + 1):
            yield Objection("VER-914", frame.where, f"layers weigh {total:.1f} kg/m², not {frame.mass:g}")
