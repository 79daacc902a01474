"""Membranes laid out flat: every part, strip, band and piece counted again from the surface that bears one."""

from collections.abc import Iterator

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.covered import all_covered, covered
from firstcourse.verify.formulas.proving import (
    Prove,
    column,
    holds,
    just,
    key_of,
    limited,
    long,
    only,
    ref,
    rests_on,
    surface_of,
)
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_SHARE = 1e-6
"""Planes are measured along their slope, by gradients that are kept in full."""


def _membrane(plan: Document, working: Working) -> Iterator[Objection]:
    found = covered(surface_of(plan, working), plan)
    names = ["kind", *found.areas, *found.lengths]
    yield from just(working, "kind", {"word": found.kind})
    for name, area in found.areas.items():
        yield from holds(working, name, area, "m2", _SHARE)
    for name, ticks in found.lengths.items():
        yield from column(working, name, [one / TICKS_PER_MM for one in ticks], "mm")
    if found.kind != "liquid":
        number, strip = found.strips
        names += ["strips", "long", "lap"]
        yield from just(working, "strips", number)
        yield from holds(working, "long", strip, "mm")
        yield from long(working, "lap", plan.rules.ticks("water.lap"))
    if found.laps:
        names.append("laps")
        yield from holds(working, "laps", found.laps, "m2", _SHARE)
    if found.band:
        names.append("band")
        yield from holds(working, "band", found.band / TICKS_PER_MM, "mm")
    for name, number in (("inside", found.inside), ("outside", found.outside)):
        if number:
            names.append(name)
            yield from just(working, name, number)
    if found.collars:
        names.append("collars")
        yield from just(
            working, "collars", [ref(f"{found.surface}/opening/{opening.id}") for opening in found.collars]
        )
    yield from only(working, *names)
    yield from holds(working, "result", found.area + found.laps, "m2", _SHARE)
    yield from rests_on(working, "water.upturn.above_threshold" if found.kind == "liner" else "")
    yield from limited(working)


def expected(plan: Document) -> Iterator[str]:
    """One of every surface that bears a membrane."""
    yield from (key_of(f"water-{found.of}", found.surface) for found in all_covered(plan))


FORMULAS: dict[str, Prove] = {f"water-{of}": _membrane for of in ("face", "floor", "bench")}
