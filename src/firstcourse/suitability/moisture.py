"""Moisture readings in wood and slab against what tile, membranes and mortar allow."""

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.exposure import ExposedSurface


def judge_moisture(rules: RuleSet, surface: ExposedSurface) -> tuple[Finding, ...]:
    """Readings over their limits; a practice without a limit for a reading that was taken is told so."""
    rows = (
        (
            "SUI-505",
            Severity.STOP,
            surface.wood_moisture_percent,
            "moisture.wood.max",
            "%",
            "The framing is too wet: it will shrink behind the tile.",
            "Let it dry and measure again before boarding.",
        ),
        (
            "SUI-516",
            Severity.FIX,
            surface.slab_humidity_percent,
            "moisture.slab.rh_max",
            "% relative humidity",
            "The slab is damp: membranes and polymer mortars on it may let go, and salts rise into the joints.",
            "Let it dry and measure again, or lay a moisture membrane whose maker allows this reading.",
        ),
        (
            "SUI-517",
            Severity.FIX,
            surface.slab_emission_lb,
            "moisture.slab.mver_max",
            "lb/1000 ft² in 24 h",
            "The slab gives off much moisture: membranes and polymer mortars on it may let go.",
            "Measure the humidity inside the slab, or lay a moisture membrane whose maker allows this reading.",
        ),
    )
    found = []
    for code, severity, reading, rule, unit, message, remedy in rows:
        if reading is None:
            continue
        entry = rules.find(rule)
        if entry is None:
            found.append(_no_limit(rules, surface, f"{reading:g} {unit}"))
        elif reading > rules.number(rule):
            found.append(
                entry.finding(
                    code=code,
                    severity=severity,
                    where=surface.where,
                    message=message,
                    measured=f"{reading:g} {unit}",
                    limit=f"at most {rules.number(rule):g} {unit}",
                    remedy=remedy,
                )
            )
    return tuple(found)


def _no_limit(rules: RuleSet, surface: ExposedSurface, reading: str) -> Finding:
    return Finding(
        code="SUI-518",
        severity=Severity.FIX,
        where=surface.where,
        message=f"The rule book has no limit for this moisture reading in practice '{rules.practice}'.",
        measured=reading,
        remedy="Ask the makers of membrane and mortar what they allow.",
    )
