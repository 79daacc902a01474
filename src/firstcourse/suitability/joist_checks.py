"""Every check of one joist, each as a line of a calculation sheet."""

import math

from firstcourse.rules import RuleSet
from firstcourse.suitability import beams
from firstcourse.suitability.checks import Check, deflection_check, deflection_text, length_check, stiffness_text
from firstcourse.suitability.joists import SIMPLE, TOTAL_LIMIT, Joist, allowable_bending_psi, bending_factors
from firstcourse.suitability.lumber import Lumber
from firstcourse.suitability.part_steps import part_deflection_step, part_end_step, part_moment_step
from firstcourse.workings import Working


def check_joist(
    rules: RuleSet, joist: Joist, limit_rules: tuple[str, ...], total_rule: str = TOTAL_LIMIT
) -> tuple[Check, ...]:
    """Every check of one joist, each with its working.

    Args:
        rules: The rule book.
        joist: The joist.
        limit_rules: Ids of the live-deflection limits to hold against, the finish's and the code's.
        total_rule: Id of the limit on deflection under live and dead load.

    Returns:
        Bending, shear and bearing where design values are known, then bearing length where it is known, live
        deflection against each limit, then total deflection.
    """
    wood = joist.wood
    strength = () if wood is None else (_bending(rules, joist, wood), _shear(rules, joist, wood))
    bearing: list[Check] = []
    if joist.bearing_in is not None:
        if wood is not None:
            bearing.append(_bearing(joist, wood, joist.bearing_in))
        bearing.append(
            length_check(
                rules,
                name="bearing length",
                title="Bearing length",
                found=joist.bearing_in,
                rule="floor.bearing.min",
            )
        )
    live = tuple(_live(rules, joist, rule) for rule in dict.fromkeys(limit_rules))
    return (*strength, *bearing, *live, _total(rules, joist, total_rule))


def _of_load(joist: Joist, effect: str, symbol: str, power: str) -> str:
    """An effect of the uniform load with its numbers, such as `0.125 × 5.556 lb/in × 168² in²`."""
    live, dead = getattr(joist.under_live, effect), getattr(joist.under_dead, effect)
    if effect == "moment" and joist.sister is not None:
        live = dead = SIMPLE.moment  # a part sister is worked out over one span, which is never less
    if live == dead:
        total = joist.live_line + joist.dead_line
        return f"{symbol} = {live:g} w L{power} = {live:g} × {total:.3f} × {joist.span_in:g}{power}"
    return (
        f"{symbol} = (c_live w_live + c_dead w_dead) L{power} = ({live:.4f} × {joist.live_line:.3f} + "
        f"{dead:.4f} × {joist.dead_line:.3f}) × {joist.span_in:g}{power}"
    )


def _bending(rules: RuleSet, joist: Joist, wood: Lumber) -> Check:
    width, span = wood.width_in * joist.plies, joist.span_in
    modulus = beams.section_modulus(width, wood.depth_in)
    # The greatest of each load's moments are added wherever they stand: never less than the true one.
    points = sum(beams.point_moment(p.load_lb, p.at_in, span) for p in joist.points)
    points += sum(joist.part_moment(part) for part in joist.parts)
    uniform = (
        SIMPLE.moment * (joist.live_line + joist.dead_line) if joist.sister else joist.combined("moment")
    ) * (span**2)
    moment = uniform + points
    steps = [
        f"{_of_load(joist, 'moment', 'M', '²')} = {uniform:,.0f} lb·in",
    ]
    steps += [
        f"+ P a b / L = {p.load_lb:g} × {p.at_in:g} × {span - p.at_in:g} / {span:g} = "
        f"{beams.point_moment(p.load_lb, p.at_in, span):,.0f} lb·in"
        for p in joist.points
    ]
    steps += [part_moment_step(joist, part) for part in joist.parts]
    if joist.points or joist.parts:
        steps.append(f"M = {uniform:,.0f} + {points:,.0f} = {moment:,.0f} lb·in, the greatest of each added")
    stress = moment / modulus
    if joist.sister is None:
        steps.append(f"fb = M / S = {moment:,.0f} / {modulus:.3f} = {stress:,.0f} psi")
    else:
        end = span * (1 - joist.sister.share) / 2
        at_end = (joist.live_line + joist.dead_line) * end * (span - end) / 2 + points
        stress = max(moment / modulus / 2, at_end / modulus)
        steps += [
            f"over the sister: fb = M / 2 S = {moment:,.0f} / (2 × {modulus:.3f}) "
            f"= {moment / modulus / 2:,.0f} psi",
            f"at its end, {end:.1f} in from the support: M = w x (L - x) / 2 + points = {at_end:,.0f} lb·in; "
            f"fb = {at_end / modulus:,.0f} psi",
        ]
    allowed = allowable_bending_psi(rules, wood, joist.spacing_in)
    factors = " × ".join(f"{factor:g}" for factor in bending_factors(rules, wood, joist.spacing_in))
    steps.append(f"Fb' = Fb CD CF Cr = {wood.fb_psi:g} × {factors} = {allowed:,.0f} psi")
    return _stress(
        "bending", "Bending stress", "fb = M / S ≤ Fb' = Fb · CD · CF · Cr", stress, allowed, steps, wood, "fb"
    )


def _ends(joist: Joist) -> float:
    """Greatest end force of loads at points and on parts [lb]; over supports the whole of each."""
    parts = sum(joist.part_end(part) for part in joist.parts)
    if joist.over_supports:
        return parts + sum(p.load_lb for p in joist.points)
    return parts + sum(p.load_lb * max(p.at_in, joist.span_in - p.at_in) / joist.span_in for p in joist.points)


def _shear(rules: RuleSet, joist: Joist, wood: Lumber) -> Check:
    width, depth = wood.width_in * joist.plies, wood.depth_in
    total = joist.live_line + joist.dead_line
    at_support = joist.combined("shear") * joist.span_in
    ends = _ends(joist)
    shear = max(at_support - total * depth, 0) + ends
    stress = 1.5 * shear / (width * depth)
    duration = rules.number("lumber.duration.floor")
    steps = [
        f"{_of_load(joist, 'shear', 'V', '')} = {at_support:,.0f} lb at the support",
        *(part_end_step(joist, part) for part in joist.parts),
        f"less w d = {total:.3f} × {depth:g}"
        + (f", plus {_named_loads(joist)} {ends:,.0f} lb" if ends else "")
        + f": V = {shear:,.1f} lb",
        f"fv = 1.5 V / (b d) = 1.5 × {shear:,.1f} / ({width:g} × {depth:g}) = {stress:,.0f} psi",
        f"Fv' = Fv CD = {wood.fv_psi:g} × {duration:g} = {wood.fv_psi * duration:,.0f} psi",
    ]
    formula = "fv = 1.5 V / (b d) ≤ Fv' = Fv · CD, V at a joist's depth from the support"
    return _stress("shear", "Shear stress", formula, stress, wood.fv_psi * duration, steps, wood, "fv")


def _bearing(joist: Joist, wood: Lumber, bearing_in: float) -> Check:
    width, ends = wood.width_in * joist.plies, _ends(joist)
    uniform = joist.combined("reaction") * joist.span_in
    pressure = (uniform + ends) / (width * bearing_in)
    steps = [
        f"{_of_load(joist, 'reaction', 'R', '')} = {uniform:,.0f} lb"
        + (f", plus {_named_loads(joist)} {ends:,.0f} lb" if ends else ""),
        *(part_end_step(joist, part) for part in joist.parts),
        f"fc = R / (b × bearing) = {uniform + ends:,.1f} / ({width:g} × {bearing_in:g}) = {pressure:,.0f} psi",
    ]
    return _stress(
        "bearing",
        "Bearing pressure",
        "fc = R / (b · bearing) ≤ Fcp",
        pressure,
        wood.fc_perp_psi,
        steps,
        wood,
        "fc_perp",
    )


def _named_loads(joist: Joist) -> str:
    """The kinds of further loads that a joist carries."""
    kinds = [("point loads", joist.points), ("loads on parts", joist.parts)]
    return " and ".join(name for name, loads in kinds if loads)


def _stress(
    name: str, title: str, formula: str, found: float, limit: float, steps: list[str], wood: Lumber, value: str
) -> Check:
    """A stress against the design value that it is held to, by its name among the lumber's."""
    return Check(
        name=name,
        found=found,
        limit=limit,
        at_least=False,
        unit="psi",
        rule=wood.rules.get(value, ""),
        source=wood.source,
        working=Working(
            title=title,
            formula=formula,
            steps=tuple(steps),
            result=f"{found:,.0f}",
            unit="psi",
            source=wood.source,
        ),
    )


def _live(rules: RuleSet, joist: Joist, rule: str) -> Check:
    deflection = joist.deflection(live=True)
    return deflection_check(
        rules,
        name=f"live deflection ({'code' if rule.endswith('_code') else 'finish'})",
        title="Live-load deflection",
        formula=_formula(joist, "w_live"),
        rule=rule,
        span_in=joist.span_in,
        deflection_in=deflection,
        values={"L": f"{joist.span_in:g} in"},
        steps=(
            *_steps(joist, live=True),
            f"L / Δ = {joist.span_in:g} / {deflection_text(deflection)} = {joist.span_in / deflection:.1f}",
        ),
    )


def _total(rules: RuleSet, joist: Joist, rule: str) -> Check:
    live, even, points = joist.deflection(live=True), joist.deflection(live=False), joist.point_deflection()
    parts = sum(joist.part_deflection(part) for part in joist.parts)
    total = live + even + points + parts
    factor = rules.number("lumber.creep_factor")
    steps = [
        f"live: Δ = {deflection_text(live)} in, as above",
        *(f"dead: {step}" for step in _steps(joist, live=False)),
    ]
    if joist.points:
        steps.append(
            f"point loads: Σ P a (3 L² - 4 a²) / (48 EI), a from the nearer support = {deflection_text(points)} in"
        )
    steps += [part_deflection_step(joist, part) for part in joist.parts]
    if joist.points or joist.parts:
        added = [live, even, *([points] if joist.points else []), *map(joist.part_deflection, joist.parts)]
        steps.append("Δ = " + " + ".join(map(deflection_text, added)) + f" = {deflection_text(total)} in")
    steps.append(
        f"L / Δ = {joist.span_in:g} / {deflection_text(total)} = {joist.span_in / total:.1f}",
    )
    return deflection_check(
        rules,
        name="total deflection",
        title="Deflection under live and dead load",
        formula=_formula(joist, "w") + f", live + dead + {_named_loads(joist) or 'point loads'}",
        rule=rule,
        span_in=joist.span_in,
        deflection_in=total,
        values={"L": f"{joist.span_in:g} in"},
        steps=tuple(steps),
        argument=(
            f"With creep of the dead load in the long term, times {factor:g}: "
            f"{live + factor * (even + points + parts):.3f} in; no limit is set for it here.",
        ),
    )


def _formula(joist: Joist, load: str) -> str:
    if joist.sister is not None:
        middle = f"EI doubled over the middle {joist.sister.share:.0%}"
        return f"Δ = 2 ∫ M (x / 2) / EI dx to midspan under {load}, {middle}"
    if len(joist.run_in) > 1:
        return f"Δ = c {load} L⁴ / EI, c for this run of spans"
    return f"Δ = 5 {load} L⁴ / (384 EI)"


def _steps(joist: Joist, *, live: bool) -> tuple[str, ...]:
    """How the deflection under live or dead load comes about, its result last."""
    load = joist.live_line if live else joist.dead_line
    result = joist.deflection(live=live)
    span, stiffness = joist.span_in, stiffness_text(joist.ei)
    if joist.sister is not None:
        end = span * (1 - joist.sister.share) / 2
        single = beams.stepped_integral(load, span, end)
        whole = beams.stepped_integral(load, span, span / 2)
        return (
            f"G = w (L x³ / 3 - x⁴ / 4) / 4, w = {load:.3f} lb/in: to the sister's end, x = {end:g} in, "
            f"G1 = {single:,.0f}; to midspan, x = {span / 2:g} in, G2 = {whole:,.0f}",
            f"Δ = 2 (G1 / EI + (G2 - G1) / (2 EI)) = 2 × ({single:,.0f} + ({whole:,.0f} - {single:,.0f}) / 2) / "
            f"{stiffness} = {deflection_text(result)} in",
        )
    factor = (joist.under_live if live else joist.under_dead).deflection
    if math.isclose(factor, SIMPLE.deflection):
        return (f"Δ = 5 × {load:.3f} × {span:g}⁴ / (384 × {stiffness}) = {deflection_text(result)} in",)
    return (f"Δ = {factor:.5f} × {load:.3f} × {span:g}⁴ / {stiffness} = {deflection_text(result)} in",)
