"""Moisture readings in wood and slab against what tile, membranes and mortar allow."""

from firstcourse.findings import Finding, Severity
from firstcourse.grounds.exposure import ExposedSurface
from firstcourse.rules import RuleSet
from firstcourse.values import Measure, Word, measure, most


def judge_moisture(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """Readings over their limits; a practice without a limit for a reading that was taken is told so."""
    wood, slab = (
        ("wood", surface.wood_moisture_percent, "%"),
        ("slab_humidity", surface.slab_humidity_percent, "%"),
    )
    emission = ("slab_emission", surface.slab_emission_lb, "lb/1000 ft²")
    rows = (
        ("SUI-505", Severity.STOP, wood, "moisture.wood.max"),
        ("SUI-516", Severity.FIX, slab, "moisture.slab.rh_max"),
        ("SUI-517", Severity.FIX, emission, "moisture.slab.mver_max"),
    )
    found = []
    for code, severity, (name, reading, unit), rule in rows:
        if reading is None:
            continue
        entry = rules.find(rule)
        if entry is None:
            found.append(_no_limit(rules, surface, name, measure(reading, unit)))
        elif reading > rules.number(rule):
            limit = most(measure(rules.number(rule), unit))
            found.append(
                entry.found(
                    code, severity, surface.ref, measured=measure(reading, unit), limit=limit, remedies=("dry",)
                )
            )
    return tuple(found)


def _no_limit(rules: RuleSet, surface: ExposedSurface, name: str, reading: Measure) -> Finding:
    return Finding(
        code="SUI-518",
        severity=Severity.FIX,
        at=(surface.ref,),
        measured=reading,
        remedies=("ask_makers",),
        values={"reading": Word(word=name), "practice": Word(word=rules.practice)},
    )
