"""Joists derived again from what was found of them: stresses, bearing and deflection, each with all on the way."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, as_found, close, inches, ratio, ref, word
from firstcourse.verify.formulas.lumber import Wood, lumber_named
from firstcourse.verify.formulas.runs import ONE_SPAN, Effects, PartEffects, bends, by_load, part_effects
from firstcourse.verify.frame_fields import Found
from firstcourse.verify.load_fields import JoistLoad

_SQ_IN_PER_SQ_FT = 144
_BY_LOADS = ("bending", "shear", "bearing", "total_deflection")


@dataclass(frozen=True, slots=True)
class Joist:
    """One joist with its loads.

    Attributes:
        found: What was found of it.
        wood: Of a sawn joist.
        live, dead: Loads [psf].
        parts: What it carries of loads on parts of the floor.
    """

    found: Found
    wood: Wood | None
    live: float
    dead: float
    parts: tuple[JoistLoad, ...] = ()

    @property
    def w_live(self) -> float:
        """Live load along it [lb/in]."""
        return self.live * self.found.spacing / _SQ_IN_PER_SQ_FT

    @property
    def w_dead(self) -> float:
        """Dead load along it [lb/in]."""
        return self.dead * self.found.spacing / _SQ_IN_PER_SQ_FT

    @property
    def w(self) -> float:
        """Both [lb/in]."""
        return self.w_live + self.w_dead

    @property
    def ei(self) -> float:
        """Stiffness of all plies [lb·in²]."""
        if self.wood is None:
            return (self.found.each or 0.0) * self.found.plies
        return self.wood.e * self.width * self.wood.depth**3 / 12

    @property
    def width(self) -> float:
        """Of all plies [in]."""
        return 0.0 if self.wood is None else self.wood.width * self.found.plies

    @property
    def over_supports(self) -> bool:
        """Whether it runs unbroken over a support."""
        return self.found.unbroken or len(self.found.run) > 1

    @property
    def by_load(self) -> tuple[Effects, Effects]:
        """Effects of live and of dead load."""
        return by_load(self.found.run, unbroken=self.found.unbroken)

    def even(self, effect: str) -> float:
        """Live and dead load, each times its coefficient of an effect [lb/in]."""
        live, dead = (getattr(one, effect) for one in self.by_load)
        return float(live * self.w_live + dead * self.w_dead)

    @property
    def effects(self) -> tuple[PartEffects, ...]:
        """Of each load on a part."""
        return tuple(part_effects(part, self.found.span) for part in self.parts)


def section(joist: Joist) -> Derived:
    """Loads along a joist, its section and its stiffness."""
    found = joist.found
    inputs: dict[str, Wanted] = {
        "span": inches(found.span),
        "spacing": inches(found.spacing),
        "live": Number(joist.live, "psf"),
        "dead": Number(joist.dead, "psf"),
        "w_live": Number(joist.w_live, "lb/in"),
        "w_dead": Number(joist.w_dead, "lb/in"),
        "plies": found.plies,
        "ei": Number(joist.ei, "lb·in²"),
    }
    if joist.wood is None:
        inputs["each"] = Number(found.each or 0.0, "lb·in²")
    else:
        depth = joist.wood.depth
        inputs |= {
            **lumber_named(found),
            "width": inches(joist.width),
            "depth": inches(depth),
            "modulus": Number(joist.width * depth**2 / 6, "in³"),
            "inertia": Number(joist.width * depth**3 / 12, "in⁴"),
            "e": Number(joist.wood.e, "psi"),
        }
    if joist.over_supports:
        live, dead = joist.by_load
        inputs |= {key: [Number(getattr(live, key)), Number(getattr(dead, key))] for key in Effects._fields}
    if len(found.run) > 1:
        inputs["run"] = [inches(span) for span in found.run]
    return Derived(
        formula="frames-joist_section" if joist.wood is not None else "frames-joist_stiffness",
        inputs=inputs,
        result=Number(joist.w, "lb/in"),
        rule="" if joist.wood is None else joist.wood.rule("e"),
    )


def joist_checks(
    rules: RuleSet,
    joists: Mapping[int, Joist],
    limits: Sequence[str],
    total: str,
    named: Mapping[str, object],
) -> Iterator[Derived]:
    """Every check of the joists, each of the one that it is worst for.

    Args:
        rules: The rule book.
        joists: By their numbers, those that carry loads on parts; one under 0 where none does.
        limits: Rules of live deflection, the finish's and the code's.
        total: Rule of deflection under all load.
        named: By the formula, which joist the plan says is worst.
    """
    each = {number: tuple(_checks(rules, joist, limits, total)) for number, joist in joists.items()}
    for at, one in enumerate(next(iter(each.values()))):
        checks = {number: found[at] for number, found in each.items()}
        if one.name not in _BY_LOADS or 0 in checks:
            yield one
            continue
        number = worst(
            {of: check.result.value * (1 if check.at_least else -1) for of, check in checks.items()},
            named.get(one.formula),
        )
        yield _on(checks[number], number)


def worst(margins: Mapping[int, float], named: object) -> int:
    """The joist with the least margin, or the one that is named where it has no more."""
    least = min(margins, key=lambda number: (margins[number], number))
    if isinstance(named, int) and named in margins and close(margins[named], margins[least]):
        return named
    return least


def _on(check: Derived, number: int) -> Derived:
    return Derived(
        formula=check.formula,
        also=check.also,
        name=check.name,
        inputs={"joist": number, **check.inputs},
        result=check.result,
        limit=check.limit,
        at_least=check.at_least,
        rule=check.rule,
    )


def _checks(rules: RuleSet, joist: Joist, limits: Sequence[str], total: str) -> Iterator[Derived]:
    found = joist.found
    if joist.wood is not None:
        yield _bending(rules, joist, joist.wood)
        yield _shear(rules, joist, joist.wood)
        if found.bearing is not None:
            yield _bearing(joist, joist.wood, found.bearing)
    if found.bearing is not None:
        yield as_found(rules, "bearing_length", found.bearing, "floor.bearing.min", at_least=True)
    for rule in dict.fromkeys(limits):
        by = "code" if rule.endswith("_code") else "finish"
        inputs, bent = _bent(joist, live=True)
        yield ratio(
            rules,
            f"live_deflection_{by}",
            rule,
            found.span,
            bent,
            {"by": word(by), "span": inches(found.span), "ei": Number(joist.ei, "lb·in²"), **inputs},
            formula="frames-live_deflection",
            also=(f"rule/{rule}",),
        )
    yield _total(rules, joist, total)


def _of_load(joist: Joist, effect: str) -> dict[str, Wanted]:
    live, dead = (getattr(one, effect) for one in joist.by_load)
    if effect == "moment" and joist.found.sister is not None:
        live = dead = ONE_SPAN.moment
    span = inches(joist.found.span)
    if close(live, dead, 1e-12):
        return {"span": span, "c": Number(live), "w": Number(joist.w, "lb/in")}
    return {
        "span": span,
        "c_live": Number(live),
        "w_live": Number(joist.w_live, "lb/in"),
        "c_dead": Number(dead),
        "w_dead": Number(joist.w_dead, "lb/in"),
    }


def _points(joist: Joist) -> dict[str, Wanted]:
    if not joist.found.points:
        return {}
    return {
        "points": [Number(load, "lb") for load, _ in joist.found.points],
        "points_at": [inches(at) for _, at in joist.found.points],
    }


def _parts(joist: Joist) -> dict[str, Wanted]:
    if not joist.parts:
        return {}
    known = all(part.start is not None for part in joist.parts)
    return {
        "parts": [ref(part.of) for part in joist.parts],
        "part_line": [Number(one.line, "lb/in") for one in joist.effects],
        "part_length": [inches(one.length) for one in joist.effects],
    } | ({"part_start": [inches(one.start) for one in joist.effects]} if known else {})


def _bending(rules: RuleSet, joist: Joist, sawn: Wood) -> Derived:
    found, modulus = joist.found, joist.width * sawn.depth**2 / 6
    span = found.span
    points = [load * at * (span - at) / span for load, at in found.points]
    further = sum(points) + sum(one.moment for one in joist.effects)
    even = (joist.even("moment") if found.sister is None else ONE_SPAN.moment * joist.w) * span**2
    moment = even + further
    factors = {
        "value": Number(sawn.fb, "psi"),
        "duration": Number(rules.number("lumber.duration.floor")),
        "size_factor": Number(sawn.size_factor),
        "repetition": Number(_repetition(rules, found.spacing)),
    }
    inputs: dict[str, Wanted] = {**_of_load(joist, "moment"), "uniform": Number(even, "lb·in")}
    if points:
        inputs |= {**_points(joist), "points_moment": [Number(one, "lb·in") for one in points]}
    if joist.parts:
        inputs |= {**_parts(joist), "part_moment": [Number(one.moment, "lb·in") for one in joist.effects]}
    inputs |= {"moment": Number(moment, "lb·in"), "modulus": Number(modulus, "in³"), **factors}
    stress = moment / modulus
    if found.sister is not None:
        end = span * (1 - found.sister) / 2
        at_end = joist.w * end * (span - end) / 2 + further
        inputs |= {
            "sister": Number(found.sister),
            "sister_end": inches(end),
            "over_sister": Number(stress / 2, "psi"),
            "end_moment": Number(at_end, "lb·in"),
            "at_end": Number(at_end / modulus, "psi"),
        }
        stress = max(stress / 2, at_end / modulus)
    return _stress("bending", stress, bears_in_bending(rules, joist, sawn), inputs, sawn.rule("fb"))


def bears_in_bending(rules: RuleSet, joist: Joist, sawn: Wood) -> float:
    """Bending value with the factors for duration, size and repetition [psi]."""
    duration = rules.number("lumber.duration.floor")
    return sawn.fb * sawn.size_factor * duration * _repetition(rules, joist.found.spacing)


def _repetition(rules: RuleSet, spacing: float) -> float:
    together = spacing <= rules.number("lumber.repetitive_spacing")
    return rules.number("lumber.repetitive_factor") if together else 1.0


def _ends(joist: Joist) -> tuple[float, dict[str, Wanted]]:
    """Greatest end force of loads at points and on parts, and what it comes from."""
    found, inputs = joist.found, _points(joist)
    points = [
        load if joist.over_supports else load * max(at, found.span - at) / found.span for load, at in found.points
    ]
    whole = joist.over_supports
    parts = [part.pounds if whole else one.end for part, one in zip(joist.parts, joist.effects, strict=True)]
    if points:
        inputs["points_end"] = [Number(one, "lb") for one in points]
    if parts:
        told = _parts(joist)
        inputs["parts"] = told["parts"]
        inputs["part_end"] = [Number(one, "lb") for one in parts]
        if not whole:
            placed = "part_start" in told
            inputs["part_line" if placed else "part_against"] = told["part_line"]
            inputs["part_length"] = told["part_length"]
            if placed:
                inputs["part_lever"] = [inches(one.lever) for one in joist.effects]
    if inputs:
        inputs["ends"] = Number(sum(points) + sum(parts), "lb")
    return sum(points) + sum(parts), inputs


def _shear(rules: RuleSet, joist: Joist, sawn: Wood) -> Derived:
    at_support, (ends, by_ends) = joist.even("shear") * joist.found.span, _ends(joist)
    force = max(at_support - joist.w * sawn.depth, 0.0) + ends
    duration = rules.number("lumber.duration.floor")
    inputs = {
        **_of_load(joist, "shear"),
        "w": Number(joist.w, "lb/in"),
        "at_support": Number(at_support, "lb"),
        "depth": inches(sawn.depth),
        **by_ends,
        "force": Number(force, "lb"),
        "width": inches(joist.width),
        "value": Number(sawn.fv, "psi"),
        "duration": Number(duration),
    }
    stress = 3 * force / (2 * joist.width * sawn.depth)
    return _stress("shear", stress, sawn.fv * duration, inputs, sawn.rule("fv"))


def _bearing(joist: Joist, sawn: Wood, bearing: float) -> Derived:
    even, (ends, by_ends) = joist.even("reaction") * joist.found.span, _ends(joist)
    inputs = {
        **_of_load(joist, "reaction"),
        "uniform": Number(even, "lb"),
        **by_ends,
        "force": Number(even + ends, "lb"),
        "width": inches(joist.width),
        "bearing": inches(bearing),
    }
    pressure = (even + ends) / (joist.width * bearing)
    return _stress("bearing", pressure, sawn.fc_perp, inputs, sawn.rule("fc_perp"))


def _stress(name: str, found: float, limit: float, inputs: Mapping[str, Wanted], rule: str) -> Derived:
    return Derived(
        formula=f"frames-{name}",
        name=name,
        inputs=inputs,
        result=Number(found, "psi"),
        limit=Number(limit, "psi"),
        rule=rule,
    )


def _total(rules: RuleSet, joist: Joist, rule: str) -> Derived:
    found, ei = joist.found, joist.ei
    live = _bent(joist, live=True)[1]
    by_dead, dead = _bent(joist, live=False)
    points = sum(load * bends(at, found.span) for load, at in found.points) / ei
    parts = [one.sag / ei for one in joist.effects]
    lasting = dead + points + sum(parts)
    creep = rules.number("lumber.creep_factor")
    inputs: dict[str, Wanted] = {
        "span": inches(found.span),
        "ei": Number(ei, "lb·in²"),
        "live": inches(live),
        **by_dead,
        "dead": inches(dead),
        "creep": Number(creep),
        "in_time": inches(live + creep * lasting),
    }
    if found.points:
        inputs |= {**_points(joist), "points_deflection": inches(points)}
    if joist.parts:
        inputs |= {**_parts(joist), "part_deflection": [inches(one) for one in parts]}
    return ratio(rules, "total_deflection", rule, found.span, live + lasting, inputs)


def _bent(joist: Joist, *, live: bool) -> tuple[dict[str, Wanted], float]:
    """How far the joist bends under live or dead load [in], and what that comes from."""
    found, load = joist.found, joist.w_live if live else joist.w_dead
    inputs: dict[str, Wanted] = {"w": Number(load, "lb/in")}
    if found.sister is None:
        coefficient = joist.by_load[0 if live else 1].deflection
        return {**inputs, "c": Number(coefficient)}, coefficient * load * found.span**4 / joist.ei
    end = found.span * (1 - found.sister) / 2
    first, whole = (_area_moment(load, found.span, to) for to in (end, found.span / 2))
    inputs |= {
        "sister": Number(found.sister),
        "sister_end": inches(end),
        "to_end": Number(first, "lb·in³"),
        "to_middle": Number(whole, "lb·in³"),
    }
    return inputs, (2 * first + (whole - first)) / joist.ei


def _area_moment(load: float, span: float, to: float) -> float:
    """Integral from a support of the moment times half the distance: w x (L - x) / 2 · x / 2."""
    return load * span * to**3 / 12 - load * to**4 / 16
