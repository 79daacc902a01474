"""Studs behind tile derived again: sideways stiffness of the stud alone, spacing, thickness of steel."""

from collections.abc import Iterator, Mapping

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, as_found, inches, ratio, word
from firstcourse.verify.formulas.lumber import lumber_named, wood
from firstcourse.verify.frame_fields import Found


def wall_sheet(rules: RuleSet, found: Found) -> tuple[tuple[Derived, ...], dict[str, Wanted]]:
    """Lines and facts of a wall."""
    lines = [as_found(rules, "stud_spacing", found.spacing, "framing.stud_spacing.max")]
    facts: dict[str, Wanted] = {"height": inches(found.span), "spacing": inches(found.spacing)}
    if found.size:
        sawn = wood(rules, found.size, found.species, found.grade)
        depth = rules.number(f"lumber.depth.{found.deeper or found.size}")
        facts |= {**lumber_named(found), "e": Number(sawn.e, "psi")}
        stiff = {"e": Number(sawn.e, "psi"), "width": inches(sawn.width), "depth": inches(depth)}
        lines += _stud(rules, found, sawn.e * sawn.width * depth**3 / 12, stiff)
        return tuple(lines), facts
    facts["web"] = inches(found.web or 0.0)
    for key, wanted in (
        ("steel", None if found.mils is None else Number(found.mils, "mil")),
        ("flange", None if found.flange is None else inches(found.flange)),
        ("inertia", None if found.inertia is None else Number(found.inertia, "in⁴")),
    ):
        facts |= {} if wanted is None else {key: wanted}
    inertia, section_of = _channel(rules, found)
    if inertia is not None:
        modulus = rules.number("wall.steel.e")
        lines += _stud(
            rules,
            found,
            modulus * inertia,
            {**section_of, "steel_e": Number(modulus, "psi"), "inertia": Number(inertia, "in⁴")},
        )
    if found.mils is not None:
        lines.append(as_found(rules, "steel_thickness", found.mils, "wall.steel.min", at_least=True, unit="mil"))
    return tuple(lines), facts


def _channel(rules: RuleSet, found: Found) -> tuple[float | None, dict[str, Wanted]]:
    """Second moment of a steel stud by its maker, or of the gross section; None where neither is known [in⁴]."""
    if found.inertia is not None or found.mils is None or found.web is None:
        return found.inertia, {}
    t, flange = found.mils / 1000, found.flange or rules.number("wall.steel.flange")
    # The whole rectangle less what is hollow of it.
    inertia = (flange * found.web**3 - (flange - t) * (found.web - 2 * t) ** 3) / 12
    thin = 2 * flange * t**3 / 12
    return inertia - thin, {"web": inches(found.web), "flange": inches(flange), "steel": inches(t)}


def _stud(rules: RuleSet, found: Found, ei: float, stiff: Mapping[str, Wanted]) -> Iterator[Derived]:
    load = rules.number("wall.load.lateral")
    w = load * found.spacing / 144
    for by in ("tile", "code"):
        rule = f"wall.deflection.{by}"
        yield ratio(
            rules,
            f"stud_stiffness_{by}",
            rule,
            found.span,
            5 * w * found.span**4 / (384 * ei),
            {
                "by": word(by),
                "height": inches(found.span),
                "spacing": inches(found.spacing),
                "load": Number(load, "psf"),
                "w": Number(w, "lb/in"),
                **stiff,
                "ei": Number(ei, "lb·in²"),
            },
            formula="frames-stud_stiffness",
            also=(f"rule/{rule}",),
        )
