"""Judged floors, walls and ceilings derived again, whole: every line, and what follows by rules."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.cuts import cut_facts, cut_lines
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, as_found, inches, ref, word
from firstcourse.verify.formulas.joists import Joist, joist_checks, section, worst
from firstcourse.verify.formulas.longest import longest_line
from firstcourse.verify.formulas.lumber import Wood, lumber_named, wood
from firstcourse.verify.formulas.panels import named as panel_named
from firstcourse.verify.formulas.panels import panel_checks
from firstcourse.verify.formulas.studs import wall_sheet
from firstcourse.verify.frame_fields import Found, Frame
from firstcourse.verify.load_fields import AreaLoad, JoistLoad

_PSF_PER_KG_M2 = 0.204816
_M_PER_MM = 0.001
_TABLE = "floor.load.dead_table_max"
_ABOVE = {
    "above_attic": ("ceiling.load.live_attic", "ceiling.load.dead_attic"),
    "above_attic_storage": ("ceiling.load.live_storage", "ceiling.load.dead_storage"),
    "above_floor": ("floor.load.live", "ceiling.load.dead_floor"),
}

type Named = Mapping[str, object]
"""By a formula, the joist that the plan says it is of."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a frame's sheet must hold: its lines in order, and what follows from its facts by the rules."""

    lines: tuple[Derived, ...]
    facts: Mapping[str, Wanted]

    @property
    def checks(self) -> tuple[Derived, ...]:
        """Lines that are held against a limit, those of cuts left out."""
        return tuple(line for line in self.lines if line.name and not line.formula.startswith("frames-cut_"))


def sheet(rules: RuleSet, frame: Frame, named: Named) -> Sheet:
    """Derive the sheet of a frame.

    Args:
        rules: The rule book.
        frame: As it stands in the plan.
        named: Which of several joists the plan says a line is of; of as many as are alike, any may be.

    Raises:
        FirstcourseError, KeyError, ValueError, ZeroDivisionError: What was found is nothing that can be judged.
    """
    if frame.kind == "wall":
        return Sheet(*wall_sheet(rules, frame.found))
    return _floor(rules, frame, named) if frame.kind == "floor" else _ceiling(rules, frame)


def _rows(there: Mapping[str, float], frame: Frame) -> dict[str, float]:
    """Loads by what they are of, layers of one kind as one [psf]."""
    rows = dict(there)
    for layer in frame.layers:
        psf = layer.thickness * _M_PER_MM * layer.density * _PSF_PER_KG_M2
        rows[layer.of] = rows.get(layer.of, 0.0) + psf
    return rows


def _loads(rows: Mapping[str, float]) -> dict[str, Wanted]:
    return {"of": [word(of) for of in rows], "loads": [Number(psf, "psf") for psf in rows.values()]}


def own_layers(frame: Frame) -> float:
    """A floor's own layers [psf]."""
    return sum(_rows({}, frame).values()) + sum(psf for _of, psf in frame.loads.other)


def _structure(rules: RuleSet, found: Found) -> dict[str, float]:
    return {"joists": rules.number("mass.joists"), "panel": found.panel * rules.number("mass.panel")}


def _sawn(rules: RuleSet, found: Found) -> Wood | None:
    return wood(rules, found.size, found.species, found.grade) if found.size else None


def _floor(rules: RuleSet, frame: Frame, named: Named) -> Sheet:
    found, sawn = frame.found, _sawn(rules, frame.found)
    rows = _rows(_structure(rules, found) | dict(frame.loads.other), frame)
    dead = sum(rows.values())
    live = rules.number("floor.load.live_sleeping" if found.use == "sleeping" else "floor.load.live")
    carried: dict[int, tuple[JoistLoad, ...]] = {}
    for part in frame.loads.joists:
        carried[part.joist] = (*carried.get(part.joist, ()), part)
    joists = {number: Joist(found, sawn, live, dead, parts) for number, parts in carried.items()}
    joists = joists or {0: Joist(found, sawn, live, dead)}
    moments = {number: -sum(one.moment for one in joist.effects) for number, joist in joists.items()}
    most = worst(moments, named.get("frames-joist_share"))
    finish = "stone" if found.finish == "stone" else "ceramic" if sawn is not None else "engineered"
    limits = (f"floor.deflection.live_{finish}", "floor.deflection.live_code")
    areas = tuple(_areas(rules, frame))
    lines = [
        Derived(
            formula="frames-dead_load",
            name="dead_load",
            inputs=_loads(rows),
            result=Number(dead, "psf"),
            limit=Number(rules.number(_TABLE), "psf"),
            rule=_TABLE,
        ),
        *areas,
        *([_share(most, joists[most])] if most else []),
        section(joists[most]),
        as_found(rules, "joist_spacing", found.spacing, "framing.joist_spacing.max"),
        *joist_checks(rules, joists, limits, "floor.deflection.total", named),
        *_mean_load(rules, frame, dead, named),
        *panel_checks(rules, found, live + dead + _more(frame)),
        *(line for number, cut in enumerate(found.cuts, 1) for line in cut_lines(rules, found, sawn, cut, number)),
        longest_line(rules, joists[most], max(map(rules.number, limits))),
    ]
    facts: dict[str, Wanted] = {
        "use": word(found.use),
        **_spans(found),
        **_member(found, sawn),
        **panel_named(found),
        "entered": found.entered,
        "glued": found.glued,
        "panel": inches(found.panel),
        "finish": word(found.finish),
        "live": Number(live, "psf"),
        "dead": Number(dead, "psf"),
    }
    if found.run:
        facts["run"] = [inches(span) for span in found.run]
    elif found.unbroken:
        facts["unbroken"] = True
    if found.bearing is not None:
        facts["bearing"] = inches(found.bearing)
    if areas:
        facts |= {
            "areas": [ref(area.of) for area in frame.loads.areas],
            "area_loads": [line.result for line in areas],
            "area_sizes": [Number(area.area, "m2") for area in frame.loads.areas],
        }
    if found.points:
        facts["points"] = [Number(load, "lb") for load, _ in found.points]
        facts["points_at"] = [inches(at) for _, at in found.points]
    if found.sister is not None:
        facts["sister"] = Number(found.sister)
    return Sheet(tuple(lines), facts | cut_facts(found.cuts))


def _areas(rules: RuleSet, frame: Frame) -> Iterator[Derived]:
    """Lasting load where something stands on a part of the floor, the structure in it."""
    seen: list[str] = []
    for area in frame.loads.areas:
        seen.append(area.of)
        there = _structure(rules, frame.found)
        if not area.instead:
            there["floor_layers"] = own_layers(frame)
        each = [row.kg / area.area * _PSF_PER_KG_M2 for row in area.rows]
        inputs: dict[str, Wanted] = {"area": Number(area.area, "m2"), **_loads(there)}
        solid = [row for row in area.rows if row.litres is not None]
        if solid:
            inputs |= {
                "solid": [word(row.of) for row in solid],
                "volume": [Number((row.litres or 0.0) / 1000, "m3") for row in solid],
                "density": [Number(row.density or 0.0, "kg/m3") for row in solid],
                "solid_mass": [Number(row.kg, "kg") for row in solid],
            }
        if each:
            inputs |= {
                "rows": [word(row.of) for row in area.rows],
                "mass": [Number(row.kg, "kg") for row in area.rows],
                "psf": [Number(psf, "psf") for psf in each],
            }
        if area.assumed:
            inputs["assumed"] = ref(f"rule/{area.assumed}")
        again = seen.count(area.of)
        yield Derived(
            formula="frames-area_load",
            also=(area.of, f"part/{again}") if again > 1 else (area.of,),
            inputs=inputs,
            result=Number(sum(there.values()) + sum(each), "psf"),
            rule="mass.panel",
        )


def _share(number: int, joist: Joist) -> Derived:
    """What the joist that carries most carries of loads on parts of the floor."""
    parts = joist.parts
    inputs: dict[str, Wanted] = {
        "joist": number,
        "spacing": inches(joist.found.spacing),
        "parts": [ref(part.of) for part in parts],
        "part_width": [inches(part.width) for part in parts],
        "part_length": [inches(part.length) for part in parts],
        "part_load": [Number(part.pounds, "lb") for part in parts],
        "part_line": [Number(part.pounds / part.length, "lb/in") for part in parts],
    }
    if any(part.start is not None for part in parts):
        inputs["part_start"] = [inches(part.start) for part in parts if part.start is not None]
    return Derived(
        formula="frames-joist_share", inputs=inputs, result=Number(sum(part.pounds for part in parts), "lb")
    )


def _mean_load(rules: RuleSet, frame: Frame, dead: float, named: Named) -> Iterator[Derived]:
    """Mean lasting load along the joist that carries most of what is built on a part of the floor."""
    found, built = frame.found, {area.of for area in frame.loads.areas if area.is_built}
    carried: dict[int, float] = {}
    for part in frame.loads.joists:
        pounds = part.pounds * min(1.0, found.span / part.length) if part.of in built else 0.0
        carried[part.joist] = carried.get(part.joist, 0.0) + pounds
    if not any(carried.values()):
        return
    number = worst({of: -pounds for of, pounds in carried.items()}, named.get("frames-mean_dead_load"))
    square_feet = found.span * found.spacing / 144
    yield Derived(
        formula="frames-mean_dead_load",
        name="mean_dead_load",
        inputs={
            "joist": number,
            "load": Number(carried[number], "lb"),
            "span": inches(found.span),
            "spacing": inches(found.spacing),
            "area": Number(square_feet, "sq ft"),
            "even": Number(dead, "psf"),
        },
        result=Number(dead + carried[number] / square_feet, "psf"),
        limit=Number(rules.number(_TABLE), "psf"),
        rule=_TABLE,
        advised=True,
    )


def _more(frame: Frame) -> float:
    """Greatest load of what is built on parts of the floor over its own layers [psf]."""
    built = [area for area in frame.loads.areas if area.is_built]
    instead = max((_psf(area) - own_layers(frame) for area in built if area.instead), default=0.0)
    return max(instead, 0.0) + max((_psf(area) for area in built if not area.instead), default=0.0)


def _psf(area: AreaLoad) -> float:
    return area.kg / area.area * _PSF_PER_KG_M2


def ceiling_joist(rules: RuleSet, frame: Frame) -> Joist:
    """A joist of a ceiling with what it carries."""
    live_rule, _ = _ABOVE[frame.found.above]
    dead = sum(_over_ceiling(rules, frame).values())
    return Joist(frame.found, _sawn(rules, frame.found), rules.number(live_rule), dead)


def _over_ceiling(rules: RuleSet, frame: Frame) -> dict[str, float]:
    above = frame.found.above
    of = "floor_above" if above == "above_floor" else "ceiling_above"
    return _rows({of: rules.number(_ABOVE[above][1])}, frame)


def _ceiling(rules: RuleSet, frame: Frame) -> Sheet:
    found, sawn = frame.found, _sawn(rules, frame.found)
    _, dead_rule = _ABOVE[found.above]
    floor = found.above == "above_floor"
    rows, joist = _over_ceiling(rules, frame), ceiling_joist(rules, frame)
    limits = (
        "ceiling.deflection.live_brittle",
        "floor.deflection.live_code" if floor else "ceiling.deflection.live_code",
    )
    total = "floor.deflection.total" if floor else "ceiling.deflection.total"
    load = Derived(
        formula="frames-ceiling_dead_load", inputs=_loads(rows), result=Number(joist.dead, "psf"), rule=dead_rule
    )
    lines = (
        load,
        section(joist),
        as_found(rules, "ceiling_joist_spacing", found.spacing, "ceiling.spacing.max"),
        *joist_checks(rules, {0: joist}, limits, total, {}),
    )
    facts = {
        "above": word(found.above),
        **_spans(found),
        **_member(found, sawn),
        "live": Number(joist.live, "psf"),
        "dead": Number(joist.dead, "psf"),
    }
    return Sheet(lines, facts)


def _spans(found: Found) -> dict[str, Wanted]:
    return {"span": inches(found.span), "spacing": inches(found.spacing)}


def _member(found: Found, sawn: Wood | None) -> dict[str, Wanted]:
    if sawn is None:
        return {"each": Number(found.each or 0.0, "lb·in²"), "plies": found.plies}
    return {
        **lumber_named(found),
        "width": inches(sawn.width),
        "depth": inches(sawn.depth),
        "plies": found.plies,
        "fb": Number(sawn.fb, "psi"),
        "size_factor": Number(sawn.size_factor),
        "fv": Number(sawn.fv, "psi"),
        "fc_perp": Number(sawn.fc_perp, "psi"),
        "e": Number(sawn.e, "psi"),
        "values": [ref(f"rule/{rule}") for rule in dict.fromkeys(rule for _, rule in sawn.rules)],
    }
