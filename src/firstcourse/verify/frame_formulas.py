"""Frames judged again from what was found: stresses and deflections of joists and studs by published formulas.

Inches, pounds and pounds on a square inch. What is not a joist over one span under even load alone is left to the
sums of its own sheet, which are worked out again line by line.
"""

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from firstcourse.verify.arithmetic import outcome
from firstcourse.verify.frame_fields import Frame, Line
from firstcourse.verify.panel_formulas import check_panel_lines
from firstcourse.verify.part_effects import Effects, part_effects
from firstcourse.verify.printed import first_number
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.verdict import Objection

_HALF_MARK = 1 / 32
"""Lengths are printed to a mark of the tape [in]."""
_NEAR = 0.01
"""Loads and design values are printed to three or four figures; each may move a result by so much."""
_MEMBER = re.compile(r"[^,]+, (?P<b>[\d.]+) × (?P<d>[\d.]+) in, (?P<plies>\d+) side by side")
_VALUES = re.compile(
    r"Fb (?P<fb>[\d.]+), CF (?P<cf>[\d.]+), Fv (?P<fv>[\d.]+), Fcp (?P<fc>[\d.]+), E (?P<e>[\d,]+) psi.*"
)
_NAMED = re.compile(r"(?P<size>2x\d+) .*")
_LITERAL = re.compile(r"\d[\d,]*(?:\.\d+)?")
_SYMBOLS = frozenset({"L", "H", "P", "c"})
"""Values that are put into the steps of a sheet as they are printed."""
_FURTHER = ("unbroken over spans of", "lasting load on one joist", "sister")
_MEAN = "mean dead load of a joist"
_STRESSES = ("bending", "shear", "bearing")
_SQ_IN_PER_SQ_FT = 144
_MM_PER_IN = 25.4
_RATIO = "L/x"
"""Unit of a span over its deflection, which is printed without what stands behind the point."""
_SAME = 1e-6
_THREE_FIGURES = 0.0051
"""Values are printed to three figures."""


@dataclass(frozen=True, slots=True)
class _Joist:
    span: float
    spacing: float
    width: float
    depth: float
    fb: float
    cf: float
    fv: float
    fc: float
    e: float
    live: float
    dead: float
    bearing: float | None
    unbroken: bool = False

    @property
    def stiffness(self) -> float:
        return self.e * self.width * self.depth**3 / 12

    def found(self, each: Sequence[Effects]) -> Iterator[tuple[str, float]]:
        """What each line of the sheet must come to.

        Args:
            each: Effects of loads on parts of the floor, joist by joist.
        """
        live, dead = (load * self.spacing / _SQ_IN_PER_SQ_FT for load in (self.live, self.dead))
        total, span = live + dead, self.span
        moment, end, sag = (max((one[at] for one in each), default=0.0) for at in range(3))
        # Beside the middle support of two equal spans, where the joist runs over one.
        shear, reaction = (0.625, 1.25) if self.unbroken else (0.5, 0.5)
        yield "bending", (0.125 * total * span**2 + moment) / (self.width * self.depth**2 / 6)
        yield (
            "shear",
            1.5 * (max(shear * total * span - total * self.depth, 0.0) + end) / (self.width * self.depth),
        )
        if self.bearing is not None:
            yield "bearing", (reaction * total * span + end) / (self.width * self.bearing)
            yield "bearing length", self.bearing
        for name in ("live deflection (finish)", "live deflection (code)"):
            yield name, 384 * self.stiffness / (5 * live * span**3)
        even = 5 * total * span**4 / (384 * self.stiffness)
        yield "total deflection", span / (even + sag / self.stiffness)
        yield "Loads along one joist, section and stiffness", total
        yield "joist spacing", self.spacing


def check_frame_formulas(plan: Document) -> Iterator[Objection]:
    """Object to a line that its own facts do not bear out, and to one that says other than its working."""
    for frame in plan.frames:
        for line in frame.lines:
            working = plan.workings.get(line.working)
            if working is not None:
                yield from _as_worked(frame, line, working)
        by_name = {line.name: line for line in frame.lines}
        if frame.kind == "wall":
            yield from _studs(frame, by_name, plan)
        elif (joist := _joist(frame)) is not None:
            each = list(part_effects(frame.loads.joists, joist.span, unbroken=joist.unbroken))
            yield from _found(frame, by_name, dict(joist.found(each)))
            yield from _mean_load(frame, by_name.get(_MEAN), joist)
            yield from _strength(frame, by_name, joist, plan)
        yield from check_panel_lines(frame, by_name, plan, _more_psf(frame))
        yield from _dead_load(frame, by_name, plan)
        yield from _told(frame, plan)
    yield from _complete(plan)


def _told(frame: Frame, plan: Document) -> Iterator[Objection]:
    """Every line that does not hold is told in a finding, with what was found and what is allowed.

    A ratio held against two limits, that of the tile and that of the code, is told by the one that asks more.
    """
    here = [said for said in plan.findings if said.place == frame.surface]
    asked: dict[str, float] = {}
    for line in frame.lines:
        if line.limit is not None and any(_tells(said, line) for said in here if said.severity != "note"):
            asked[_value(line)] = max(line.limit, asked.get(_value(line), 0.0))
    for line in frame.lines:
        beside = line.at_least and line.limit is not None and line.limit <= asked.get(_value(line), 0.0)
        told = any(_tells(said, line) for said in here if line.advised or said.severity != "note")
        if not line.holds and not beside and not told:
            yield Objection("VER-913", frame.where, f"{line.name}: does not hold, and no finding tells of it so")
    if frame.remedies and frame.remedies not in plan.workings:
        yield Objection("VER-902", frame.where, f"working '{frame.remedies}' does not exist")


def _tells(said: Said, line: Line) -> bool:
    """Whether a finding says what a line found and what is allowed there, as far as the line prints it."""
    found, limit = said.measured, said.limit
    if found is None or limit is None or line.found is None or line.limit is None:
        return False
    sense = "least" if line.at_least else "most"
    return (
        limit["sense"] == sense
        and _prints(line.text, line.found, found["unit"], found["value"])
        and _prints(line.limit_text, line.limit, limit["unit"], limit["value"])
    )


def _prints(text: str, printed: float, unit: str, value: float) -> bool:
    """Whether a text with its number is what a value in its unit is printed as."""
    if unit == _RATIO:
        return "L/" in text and -_SAME < value - printed < 1
    if unit == "mm" and text.endswith(" in"):
        return abs(value / _MM_PER_IN - printed) <= _HALF_MARK + _THREE_FIGURES * printed
    return text.endswith(unit) and abs(value - printed) <= _THREE_FIGURES * abs(printed)


def _value(line: Line) -> str:
    """What a line holds against its limit: a ratio of deflection by its name without the limit's."""
    return line.name.partition(" (")[0] if line.text.startswith("L/") else line.name


def _complete(plan: Document) -> Iterator[Objection]:
    """Every numbered working of a judged frame is a line of one sheet, and of no other."""
    named = Counter(line.working for frame in plan.frames for line in frame.lines)
    for surface in plan.surfaces:
        head = f"suitability.{surface.id}."
        own = {
            name: working
            for name, working in plan.workings.items()
            if name.startswith(head) and name[len(head) :].isdecimal()
        }
        steps = set(_LITERAL.findall(" ".join(step for working in own.values() for step in working.steps)))
        for name, working in own.items():
            if named[name] != 1:
                yield Objection("VER-917", name, "is worked out, and is a line of no sheet or of two")
            for symbol in sorted(_SYMBOLS & working.values.keys()):
                said = _LITERAL.search(working.values[symbol])
                if working.steps and said is not None and said[0] not in steps:
                    yield Objection("VER-917", name, f"names {symbol} = {said[0]}, which no step puts in")


def _as_worked(frame: Frame, line: Line, working: Working) -> Iterator[Objection]:
    one, other = first_number(line.text), first_number(working.result)
    if one is not None and other is not None and abs(one - other) > _NEAR * max(abs(one), abs(other)):
        yield Objection(
            "VER-915", frame.where, f"{line.name}: {line.text} on the sheet, {working.result} worked out"
        )
    limit = working.values.get("limit", "")
    if line.limit is None or not limit:
        return
    said = first_number(limit)
    if said is not None and abs(said - line.limit) > _NEAR * abs(line.limit):
        yield Objection("VER-915", frame.where, f"{line.name}: held against {line.limit:g} and against {limit}")
    if limit.endswith("holds") != line.holds or limit.endswith("DOES NOT HOLD") == line.stands:
        yield Objection("VER-915", frame.where, f"{line.name}: holds on one sheet and not on the other")


def _found(frame: Frame, lines: Mapping[str, Line], right: Mapping[str, float]) -> Iterator[Objection]:
    for name, value in right.items():
        said = first_number(lines[name].text) if name in lines else None
        # Ratios of deflection are printed rounded down to whole numbers, stresses to the nearest.
        loss = 1.0 if name.startswith(("live", "total", "stud stiff")) else 0.5 if name in _STRESSES else 0.0
        loss += _HALF_MARK if name in ("bearing length", "joist spacing") else 0.0
        if said is not None and abs(said - value) > _NEAR * value + loss:
            yield Objection("VER-916", frame.where, f"{name}: {lines[name].text} said, {value:.4g} by its facts")


def _mean_load(frame: Frame, line: Line | None, joist: _Joist) -> Iterator[Objection]:
    """Mean lasting load along the joist that carries most of what is built on a part of the floor."""
    built = {area.of for area in frame.loads.areas if area.is_built}
    carried: dict[int, float] = {}
    for part in frame.loads.joists:
        if part.of in built:
            pounds = part.pounds * min(1.0, joist.span / part.length)
            carried[part.joist] = carried.get(part.joist, 0.0) + pounds
    most = max(carried.values(), default=0.0)
    if (line is None) != (not most):
        yield Objection("VER-916", frame.where, f"{_MEAN}: is not on the sheet, or has nothing to be of")
    elif line is not None:
        right = joist.dead + most * _SQ_IN_PER_SQ_FT / (joist.span * joist.spacing)
        said = first_number(line.text)
        if said is None or abs(said - right) > _NEAR * right + 0.05:
            yield Objection("VER-916", frame.where, f"{_MEAN}: {line.text} said, {right:.1f} by its facts")


def _more_psf(frame: Frame) -> float:
    """Greatest load of what is built on parts of the floor over its own layers [psf]."""
    layers = sum(layer.psf for layer in frame.layers) + sum(psf for _name, psf in frame.loads.other)
    built = [area for area in frame.loads.areas if area.is_built]
    instead = max((area.psf - layers for area in built if area.instead), default=0.0)
    return max(instead, 0.0) + max((area.psf for area in built if not area.instead), default=0.0)


def _joist(frame: Frame) -> _Joist | None:
    facts = dict(frame.facts)
    member, design = _MEMBER.fullmatch(facts.get("joists", "")), _VALUES.fullmatch(facts.get("design values", ""))
    cut = any(name.startswith(("notch", "hole", "bored")) for name in facts)
    if member is None or design is None or cut or any(name in facts for name in _FURTHER):
        return None
    needed = [first_number(facts.get(name, "")) for name in (
        "clear span, face to face", "joists, centre to centre", "live load", "dead load",
    )]  # fmt: skip
    span, spacing, live, dead = (0.0 if value is None else value for value in needed)
    depth, width = float(member["d"]), float(member["b"]) * int(member["plies"])
    if min(span, spacing, live, depth, width) <= 0:
        return None
    return _Joist(
        span=span,
        spacing=spacing,
        width=width,
        depth=depth,
        fb=float(design["fb"]),
        cf=float(design["cf"]),
        fv=float(design["fv"]),
        fc=float(design["fc"]),
        e=float(design["e"].replace(",", "")),
        live=live,
        dead=dead,
        bearing=first_number(facts.get("bearing at the ends", "")),
        unbroken="unbroken over a support" in facts,
    )


def _strength(frame: Frame, lines: Mapping[str, Line], joist: _Joist, plan: Document) -> Iterator[Objection]:
    """What the wood bears: its design values by the factors of the rule book."""
    rules = plan.rules
    close = joist.spacing <= rules.number("lumber.repetitive_spacing")
    duration = rules.number("lumber.duration.floor")
    bending = joist.fb * joist.cf * duration * (rules.number("lumber.repetitive_factor") if close else 1.0)
    for name, value in (("bending", bending), ("shear", joist.fv * duration), ("bearing", joist.fc)):
        line = lines.get(name)
        if line is not None and line.limit is not None and abs(line.limit - value) > _NEAR * value:
            yield Objection(
                "VER-916", frame.where, f"{name}: held against {line.limit:g}, the wood bears {value:.0f}"
            )


def _studs(frame: Frame, lines: Mapping[str, Line], plan: Document) -> Iterator[Objection]:
    """Wooden studs under even sideways load, alone."""
    facts, rules = dict(frame.facts), plan.rules
    named = _NAMED.fullmatch(facts.get("studs", ""))
    height, spacing, e = (
        first_number(facts.get(name, "")) for name in ("clear height", "studs, centre to centre", "E")
    )
    if named is None or not rules.has(f"lumber.depth.{named['size']}") or not (height and spacing and e):
        return
    width, depth = rules.number("lumber.width"), rules.number(f"lumber.depth.{named['size']}")
    load = rules.number("wall.load.lateral") * spacing / _SQ_IN_PER_SQ_FT
    ratio = 384 * e * width * depth**3 / 12 / (5 * load * height**3)
    right = {"stud stiffness (tile)": ratio, "stud stiffness (code)": ratio, "stud spacing": spacing}
    yield from _found(frame, lines, right)
    for name, rule in (
        ("stud stiffness (tile)", "wall.deflection.tile"),
        ("stud stiffness (code)", "wall.deflection.code"),
    ):
        line = lines.get(name)
        if line is not None and line.limit is not None and line.limit != rules.number(rule):
            yield Objection("VER-916", frame.where, f"{name}: held against {line.limit:g}, not the rule's")


def _dead_load(frame: Frame, lines: Mapping[str, Line], plan: Document) -> Iterator[Objection]:
    """The dead load of the facts is that of the sheet, and each layer weighs there what it weighs below."""
    said = first_number(dict(frame.facts).get("dead load", ""))
    line = lines.get("dead load")
    if said is None or line is None:
        return
    found = first_number(line.text)
    if found is not None and abs(found - said) > 0.05 + _NEAR * said:
        yield Objection("VER-916", frame.where, f"dead load: {said:g} psf found, {line.text} on the sheet")
    working = plan.workings.get(line.working)
    if working is None:
        return
    sums = [value for step in working.steps if (value := outcome(step)) is not None]
    if sums and not sums[-1].low - 0.06 <= said <= sums[-1].high + 0.06:
        yield Objection(
            "VER-916", frame.where, f"dead load: {said:g} psf found, its layers weigh {sums[-1].high:.2f}"
        )
    # Layers of one name are one line of the sheet.
    for name in dict.fromkeys(layer.name for layer in frame.layers):
        below = [layer.psf for layer in frame.layers if layer.name == name]
        psf = first_number(working.values.get(name, ""))
        if psf is not None and abs(psf - sum(below)) > 0.0051 * (len(below) + 1):
            yield Objection("VER-916", frame.where, f"{name}: {psf:g} psf on the sheet, {sum(below):g} psf below")
