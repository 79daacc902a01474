"""Gaps found under a straightedge against what a tile allows, and what they tell of other lengths."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.grounds.flatness import SAME_MM, Tolerance, tolerance_for
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Word, measure, most
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """The widest gap under one straightedge [mm], and where it lay, in words."""

    place: str
    reach_mm: float
    gap_mm: float


def tells(gap: Gap, reach_mm: float, limit_mm: float) -> bool:
    """Whether a gap tells of a straightedge of its own length, or of a shorter one whose limit it keeps [mm]."""
    longer = gap.reach_mm > reach_mm and gap.gap_mm <= limit_mm + SAME_MM
    return longer or abs(gap.reach_mm - reach_mm) <= SAME_MM


def judge_gaps(
    rules: RuleSet,
    ref: str,
    gaps: Sequence[Gap],
    tile_edge_mm: float,
    *,
    read: bool = False,
) -> tuple[tuple[Finding, ...], Working]:
    """Gaps under a straightedge against the tolerance of a tile; one shorter than the short reach keeps its limit.

    Args:
        rules: The rules in force.
        ref: Reference to the surface.
        gaps: One gap or more.
        tile_edge_mm: Longest edge of the tile [mm].
        read: Heights were read there as well, whose own judgement says what they do not tell.

    Raises:
        RuleNotFoundError: The practice has no tolerance.
    """
    tolerance = tolerance_for(rules, tile_edge_mm)
    findings: list[Finding] = []
    limits: list[float] = []
    verdicts: list[str] = []
    for gap in gaps:
        short = gap.reach_mm <= tolerance.short_reach_mm + SAME_MM
        limit, rule = (
            (tolerance.short_mm, tolerance.short_rule) if short else (tolerance.long_mm, tolerance.long_rule)
        )
        holds = gap.gap_mm <= limit + SAME_MM
        # A gap within the limit of a longer straightedge tells nothing of what lies beyond its ends.
        told = short or gap.reach_mm >= tolerance.long_reach_mm - SAME_MM
        limits.append(limit)
        verdicts.append("fails" if not holds else "holds" if told else "holds_for_its_length")
        if not holds:
            findings.append(
                rules.entry(rule).found(
                    "SUI-402" if short else "SUI-401",
                    Severity.FIX,
                    ref,
                    measured=measure(gap.gap_mm, "mm"),
                    limit=most(measure(limit, "mm")),
                    remedies=("fill_or_grind",),
                    laid=True,
                    place=Name(name=gap.place),
                    reach=measure(gap.reach_mm, "mm"),
                    caution=Name(name=rules.text("safety.grinding")),
                )
            )
    if not read and not findings:
        findings += _not_laid(rules, ref, gaps, tolerance)
    return tuple(findings), Working(
        formula="ground-gaps",
        at=(ref,),
        inputs={
            "place": tuple(Name(name=gap.place) for gap in gaps),
            "gap": tuple(measure(gap.gap_mm, "mm") for gap in gaps),
            "reach": tuple(measure(gap.reach_mm, "mm") for gap in gaps),
            "allowed": tuple(measure(limit, "mm") for limit in limits),
            "verdict": tuple(Word(word=verdict) for verdict in verdicts),
        },
        result=measure(max(gap.gap_mm for gap in gaps), "mm"),
        rule=tolerance.long_rule,
    )


def _not_laid(rules: RuleSet, ref: str, gaps: Sequence[Gap], tolerance: Tolerance) -> Iterator[Finding]:
    """Lengths of straightedge of which no gap that was entered tells."""
    rows = [(tolerance.long_reach_mm, tolerance.long_mm, tolerance.long_rule)]
    if tolerance.short_rule != tolerance.long_rule:
        rows.append((tolerance.short_reach_mm, tolerance.short_mm, tolerance.short_rule))
    for reach, limit, rule in rows:
        if any(tells(gap, reach, limit) for gap in gaps):
            continue
        longest = max(gaps, key=lambda gap: gap.reach_mm)
        yield rules.entry(rule).found(
            "SUI-404",
            Severity.NOTE,
            ref,
            measured=measure(longest.gap_mm, "mm"),
            limit=most(measure(limit, "mm")),
            remedies=("lay",),
            laid=True,
            longest=measure(longest.reach_mm, "mm"),
            reach=measure(reach, "mm"),
        )
