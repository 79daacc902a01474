"""Every check of one joist, each with all that goes into it, so that a sheet can show it and another prove it."""

from firstcourse.frames import beams
from firstcourse.frames.checks import Check, as_found, deflection_check
from firstcourse.frames.joists import SIMPLE, TOTAL_LIMIT, Joist, allowable_bending_psi, bending_factors
from firstcourse.frames.loads import PartLoad
from firstcourse.frames.lumber import Lumber, lumber_facts
from firstcourse.rules import RuleSet
from firstcourse.values import Measure, Name, Ref, Value, Word, length_in, measure
from firstcourse.workings import Working

_EFFECTS = ("moment", "shear", "reaction", "deflection")


def check_joist(
    rules: RuleSet, joist: Joist, limit_rules: tuple[str, ...], total_rule: str = TOTAL_LIMIT
) -> tuple[Check, ...]:
    """Every check of one joist.

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
        bearing.append(as_found(rules, "bearing_length", joist.bearing_in, "floor.bearing.min"))
    live = tuple(_live(rules, joist, rule) for rule in dict.fromkeys(limit_rules))
    return (*strength, *bearing, *live, _total(rules, joist, total_rule))


def section_working(ref: str, joist: Joist) -> Working:
    """Loads along one joist, its section and stiffness: what every check of it starts from."""
    live, dead = joist.live_line, joist.dead_line
    inputs: dict[str, Value] = {
        "span": length_in(joist.span_in),
        "spacing": length_in(joist.spacing_in),
        "live": measure(joist.live_psf, "psf"),
        "dead": measure(joist.dead_psf, "psf"),
        "w_live": _line(live),
        "w_dead": _line(dead),
        "plies": joist.plies,
    }
    if (wood := joist.wood) is not None:
        width = wood.width_in * joist.plies
        inputs |= {
            "size": Name(name=wood.size),
            **lumber_facts(wood),
            "width": length_in(width),
            "depth": length_in(wood.depth_in),
            "modulus": measure(beams.section_modulus(width, wood.depth_in), "in³"),
            "inertia": measure(beams.second_moment(width, wood.depth_in), "in⁴"),
            "e": measure(wood.e_psi, "psi"),
        }
    else:
        inputs["each"] = measure(joist.ei / joist.plies, "lb·in²")
    inputs["ei"] = measure(joist.ei, "lb·in²")
    if joist.over_supports:
        inputs |= {
            effect: tuple(measure(getattr(by, effect)) for by in (joist.under_live, joist.under_dead))
            for effect in _EFFECTS
        }
    if len(joist.run_in) > 1:
        inputs["run"] = tuple(length_in(span) for span in joist.run_in)
    return Working(
        formula="frames-joist_section" if wood is not None else "frames-joist_stiffness",
        at=(ref,),
        inputs=inputs,
        result=_line(live + dead),
        rule="" if wood is None else wood.rules["e"],
    )


def _line(load: float) -> Measure:
    return measure(load, "lb/in")


def _pounds(load: float) -> Measure:
    return measure(load, "lb")


def _of_load(joist: Joist, effect: str) -> dict[str, Value]:
    """What an effect of the uniform load comes from: one coefficient, or one for each of live and dead load."""
    live, dead = getattr(joist.under_live, effect), getattr(joist.under_dead, effect)
    if effect == "moment" and joist.sister is not None:
        live = dead = SIMPLE.moment  # a part sister is worked out over one span, which is never less
    span = {"span": length_in(joist.span_in)}
    if live == dead:
        return {**span, "c": measure(live), "w": _line(joist.live_line + joist.dead_line)}
    return {
        **span,
        "c_live": measure(live),
        "w_live": _line(joist.live_line),
        "c_dead": measure(dead),
        "w_dead": _line(joist.dead_line),
    }


def _points(joist: Joist) -> dict[str, Value]:
    if not joist.points:
        return {}
    return {
        "points": tuple(_pounds(point.load_lb) for point in joist.points),
        "points_at": tuple(length_in(point.at_in) for point in joist.points),
    }


def _parts(joist: Joist) -> dict[str, Value]:
    """Loads on parts, each by its line load and its length on the span; where it begins, if that is known."""
    if not joist.parts:
        return {}
    on = [part.on(joist.span_in) for part in joist.parts]
    known = all(part.start_in is not None for part in joist.parts)
    return {
        "parts": tuple(Ref(ref=part.of) for part in joist.parts),
        "part_line": tuple(_line(part.line) for part in joist.parts),
        "part_length": tuple(length_in(length) for _start, length in on),
        **({"part_start": tuple(length_in(start) for start, _length in on)} if known else {}),
    }


def _bending(rules: RuleSet, joist: Joist, wood: Lumber) -> Check:
    width, span = wood.width_in * joist.plies, joist.span_in
    modulus = beams.section_modulus(width, wood.depth_in)
    # The greatest of each load's moments are added wherever they stand: never less than the true one.
    points = [beams.point_moment(p.load_lb, p.at_in, span) for p in joist.points]
    parts = [joist.part_moment(part) for part in joist.parts]
    further = sum(points) + sum(parts)
    uniform = (
        SIMPLE.moment * (joist.live_line + joist.dead_line) if joist.sister else joist.combined("moment")
    ) * (span**2)
    moment = uniform + further
    inputs: dict[str, Value] = {**_of_load(joist, "moment"), "uniform": measure(uniform, "lb·in")}
    if joist.points:
        inputs |= {**_points(joist), "points_moment": tuple(measure(each, "lb·in") for each in points)}
    if joist.parts:
        inputs |= {**_parts(joist), "part_moment": tuple(measure(each, "lb·in") for each in parts)}
    inputs |= {"moment": measure(moment, "lb·in"), "modulus": measure(modulus, "in³")}
    stress = moment / modulus
    if joist.sister is not None:
        end = span * (1 - joist.sister.share) / 2
        at_end = (joist.live_line + joist.dead_line) * end * (span - end) / 2 + further
        inputs |= {
            "sister": measure(joist.sister.share),
            "sister_end": length_in(end),
            "over_sister": measure(stress / 2, "psi"),
            "end_moment": measure(at_end, "lb·in"),
            "at_end": measure(at_end / modulus, "psi"),
        }
        stress = max(stress / 2, at_end / modulus)
    names = ("duration", "size_factor", "repetition")
    factors = bending_factors(rules, wood, joist.spacing_in)
    inputs |= {"value": measure(wood.fb_psi, "psi")}
    inputs |= {name: measure(factor) for name, factor in zip(names, factors, strict=True)}
    allowed = allowable_bending_psi(rules, wood, joist.spacing_in)
    return _stress("bending", stress, allowed, inputs, wood.rules["fb"])


def _ends(joist: Joist) -> tuple[float, dict[str, Value]]:
    """Greatest end force of loads at points and on parts [lb], over supports the whole of each; and how."""
    span = joist.span_in
    points = [
        p.load_lb if joist.over_supports else p.load_lb * max(p.at_in, span - p.at_in) / span for p in joist.points
    ]
    parts = [joist.part_end(part) for part in joist.parts]
    inputs = _points(joist)
    if points:
        inputs["points_end"] = tuple(map(_pounds, points))
    if parts:
        inputs |= _ends_by_parts(joist, joist.parts)
        inputs["part_end"] = tuple(map(_pounds, parts))
    if inputs:
        inputs["ends"] = _pounds(sum(points) + sum(parts))
    return sum(points) + sum(parts), inputs


def _ends_by_parts(joist: Joist, parts: tuple[PartLoad, ...]) -> dict[str, Value]:
    """What the end forces of loads on parts come from: all of each, its place, or where it does most."""
    found = _parts(joist)
    if joist.over_supports:
        return {"parts": found["parts"]}
    if "part_start" not in found:
        return {"parts": found["parts"], "part_against": found["part_line"], "part_length": found["part_length"]}
    middles = [start + length / 2 for start, length in (part.on(joist.span_in) for part in parts)]
    del found["part_start"]
    return {**found, "part_lever": tuple(length_in(max(joist.span_in - at, at)) for at in middles)}


def _shear(rules: RuleSet, joist: Joist, wood: Lumber) -> Check:
    width, depth = wood.width_in * joist.plies, wood.depth_in
    total = joist.live_line + joist.dead_line
    at_support = joist.combined("shear") * joist.span_in
    ends, by_ends = _ends(joist)
    shear = max(at_support - total * depth, 0) + ends
    stress = 1.5 * shear / (width * depth)
    duration = rules.number("lumber.duration.floor")
    inputs: dict[str, Value] = {
        **_of_load(joist, "shear"),
        "at_support": _pounds(at_support),
        "w": _line(total),
        "depth": length_in(depth),
        **by_ends,
        "force": _pounds(shear),
        "width": length_in(width),
        "value": measure(wood.fv_psi, "psi"),
        "duration": measure(duration),
    }
    return _stress("shear", stress, wood.fv_psi * duration, inputs, wood.rules["fv"])


def _bearing(joist: Joist, wood: Lumber, bearing_in: float) -> Check:
    width, (ends, by_ends) = wood.width_in * joist.plies, _ends(joist)
    uniform = joist.combined("reaction") * joist.span_in
    inputs: dict[str, Value] = {
        **_of_load(joist, "reaction"),
        "uniform": _pounds(uniform),
        **by_ends,
        "force": _pounds(uniform + ends),
        "width": length_in(width),
        "bearing": length_in(bearing_in),
    }
    pressure = (uniform + ends) / (width * bearing_in)
    return _stress("bearing", pressure, wood.fc_perp_psi, inputs, wood.rules["fc_perp"])


def _stress(name: str, found: float, limit: float, inputs: dict[str, Value], rule: str) -> Check:
    """A stress against what the wood bears, by the rule of its design value."""
    return Check(name=name, found=found, limit=limit, at_least=False, unit="psi", rule=rule, inputs=inputs)


def _live(rules: RuleSet, joist: Joist, rule: str) -> Check:
    by = "code" if rule.endswith("_code") else "finish"
    return deflection_check(
        rules,
        name=f"live_deflection_{by}",
        rule=rule,
        span_in=joist.span_in,
        deflection_in=joist.deflection(live=True),
        inputs={
            "by": Word(word=by),
            "span": length_in(joist.span_in),
            **_bent(joist, live=True),
            "ei": measure(joist.ei, "lb·in²"),
        },
        formula="live_deflection",
        also=(f"rule/{rule}",),
    )


def _total(rules: RuleSet, joist: Joist, rule: str) -> Check:
    live, even, points = joist.deflection(live=True), joist.deflection(live=False), joist.point_deflection()
    parts = [joist.part_deflection(part) for part in joist.parts]
    total = live + even + points + sum(parts)
    factor = rules.number("lumber.creep_factor")
    inputs: dict[str, Value] = {
        "span": length_in(joist.span_in),
        "ei": measure(joist.ei, "lb·in²"),
        "live": length_in(live),
        **_bent(joist, live=False),
        "dead": length_in(even),
    }
    if joist.points:
        inputs |= {**_points(joist), "points_deflection": length_in(points)}
    if joist.parts:
        inputs |= {**_parts(joist), "part_deflection": tuple(map(length_in, parts))}
    inputs |= {"creep": measure(factor), "in_time": length_in(live + factor * (total - live))}
    return deflection_check(
        rules, name="total_deflection", rule=rule, span_in=joist.span_in, deflection_in=total, inputs=inputs
    )


def _bent(joist: Joist, *, live: bool) -> dict[str, Value]:
    """What the deflection under live or dead load comes from: a coefficient, or the integrals beside a sister."""
    load = joist.live_line if live else joist.dead_line
    if joist.sister is None:
        return {"w": _line(load), "c": measure((joist.under_live if live else joist.under_dead).deflection)}
    span = joist.span_in
    end = span * (1 - joist.sister.share) / 2
    return {
        "w": _line(load),
        "sister": measure(joist.sister.share),
        "sister_end": length_in(end),
        "to_end": measure(beams.stepped_integral(load, span, end), "lb·in³"),
        "to_middle": measure(beams.stepped_integral(load, span, span / 2), "lb·in³"),
    }
