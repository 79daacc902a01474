"""What plain practice would buy for the same surfaces, and which rules it would break."""

from collections import Counter
from collections.abc import Mapping, Sequence

from firstcourse.boards import SurfaceLayout
from firstcourse.job import Job
from firstcourse.plan import Count, Stock
from firstcourse.sheets.cut import cut_pieces
from firstcourse.sheets.seams import demand
from firstcourse.sheets.together import Surfaced
from firstcourse.values import Word
from firstcourse.workings import Working

_UNCARRIED = "BRD-101"
_BROKEN = frozenset({_UNCARRIED, "BRD-201", "BRD-202", "BRD-203", "BRD-204", "BRD-205", "BRD-301"})
"""Findings on a layout that are told where plain practice would have them."""


def by_plain_practice(
    surfaces: tuple[Surfaced, ...],
    layouts: tuple[SurfaceLayout, ...],
    chosen: tuple[SurfaceLayout, ...],
    stock: tuple[Stock, ...],
    counts: Mapping[str, Count],
    job: Job,
) -> tuple[dict[str, int], tuple[Working, ...]]:
    """Sheets that full sheets from a corner take, the rest cut as it comes; by stock, with what breaks rules.

    Args:
        surfaces: All surfaces of the job.
        layouts: Theirs by plain practice.
        chosen: Theirs in the plan: where practice needs more members added, its seams miss the framing.
        stock: All sheets of the job.
        counts: Those that the plan may cut.
        job: For its offcuts.
    """
    pieces, allowed = demand(surfaces, layouts)
    cutting = cut_pieces(pieces, allowed, stock, job, effort=0)
    broken = _broken(surfaces, layouts, chosen)
    used = {name: cutting.counts[name].used if name in cutting.counts else 0 for name in counts}
    return used, tuple(_working(name, number, broken.get(name, Counter())) for name, number in used.items())


def _broken(
    surfaces: Sequence[Surfaced], layouts: Sequence[SurfaceLayout], chosen: Sequence[SurfaceLayout]
) -> dict[str, Counter[str]]:
    """By stock, how often surfaces that it serves break a rule, by the code of the finding."""
    broken: dict[str, Counter[str]] = {}
    for item, layout, own in zip(surfaces, layouts, chosen, strict=True):
        codes = Counter(finding.code for finding in layout.findings if finding.code in _BROKEN)
        codes[_UNCARRIED] = max(0, len(layout.added_supports) - len(own.added_supports))
        for sheet in item.stock:
            broken.setdefault(sheet.id, Counter()).update(+codes)
    return broken


def _working(name: str, used: int, broken: Counter[str]) -> Working:
    faults = sorted(broken.items()) if used else []
    return Working(
        formula="boards-practice",
        at=(f"stock/{name}",),
        inputs={
            "keeps": not faults,
            "faults": tuple(Word(word=code) for code, _ in faults),
            "numbers": tuple(number for _, number in faults),
        },
        result=used,
    )
