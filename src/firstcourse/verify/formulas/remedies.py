"""What would make a frame pass, derived again: each set of measures taken, and every check of what that makes."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from itertools import combinations

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import Derived, Number, inches, word
from firstcourse.verify.formulas.frames import sheet
from firstcourse.verify.formulas.panels import thickness, usual_rating
from firstcourse.verify.frame_fields import Found, Frame

_MOST_MEASURES, _MOST_SPANS = 3, 6
_STUD_SIZES = ("2x4", "2x6", "2x8")
_MM_PER_IN = 25.4

type Take = Callable[[RuleSet, Frame], Frame | None]


@dataclass(frozen=True, slots=True)
class Option:
    """Measures, the height they add [in], material and labour in relative figures, and checks that still fail."""

    measures: tuple[str, ...]
    height: float
    material: float
    labour: float
    failing: tuple[str, ...]

    @property
    def rank(self) -> tuple[object, ...]:
        """Best first: what passes, then by height, material and labour."""
        return bool(self.failing), round(self.height, 9), self.material, self.labour, self.measures

    def derived(self, number: int) -> Derived:
        """Its working, as the option of this number."""
        inputs = {
            "measures": [word(one) for one in self.measures],
            "height": inches(self.height),
            "material": Number(self.material),
            "labour": Number(self.labour),
        }
        if self.failing:
            inputs["failing"] = [word(one) for one in self.failing]
        result = word("fails" if self.failing else "passes")
        return Derived(formula="frames-remedy", also=(f"option/{number}",), inputs=inputs, result=result)


def options(rules: RuleSet, frame: Frame) -> list[Option]:
    """Single measures, and sets of up to three of which no smaller set is enough, best first.

    Raises:
        FirstcourseError, KeyError, ValueError, ZeroDivisionError: What was found is nothing that can be judged.
    """
    if all(check.stands for check in sheet(rules, frame, {}).checks):
        return []
    measures, found = _MEASURES[frame.kind], list[Option]()
    for count in range(1, _MOST_MEASURES + 1):
        for names in combinations(measures, count):
            enough = any(not one.failing and set(one.measures) < set(names) for one in found)
            if enough or (count > 1 and _pointless(names)):
                continue
            taken: Frame | None = frame
            for name in names:
                taken = None if taken is None else measures[name](rules, taken)
            if taken is None:
                continue
            failing = [check.name for check in sheet(rules, taken, {}).checks if not check.stands]
            if not failing or count == 1:
                material, labour = (
                    sum(rules.number(f"remedy.{name}.{what}") for name in names) for what in ("material", "labour")
                )
                more = _height(rules, taken) - _height(rules, frame)
                found.append(Option(names, more, material, labour, tuple(dict.fromkeys(failing))))
    return sorted(found, key=lambda one: one.rank)


def _pointless(names: tuple[str, ...]) -> bool:
    """Blocking adds nothing; a part sister is none beside a whole one, nor beside a support in its middle."""
    beside = {"sister_full", "mid_support"} & set(names)
    return "blocking" in names or ("sister_part" in names and bool(beside))


def _height(rules: RuleSet, frame: Frame) -> float:
    """Of a floor over its joists, or the depth of studs; of ceilings it is not told."""
    if frame.kind == "floor":
        return frame.found.panel + sum(layer.thickness for layer in frame.layers) / _MM_PER_IN
    if frame.kind == "wall" and frame.found.size:
        return rules.number(f"lumber.depth.{frame.found.deeper or frame.found.size}")
    return frame.found.web or 0.0


def _with(frame: Frame, **found: object) -> Frame:
    return replace(frame, found=replace(frame.found, **found))  # type: ignore[arg-type]


def _sister_full(_rules: RuleSet, frame: Frame) -> Frame | None:
    return _with(frame, plies=2 * frame.found.plies, sister=None) if frame.found.size else None


def _sister_part(rules: RuleSet, frame: Frame) -> Frame | None:
    if not frame.found.size or frame.found.sister is not None:
        return None
    return _with(frame, sister=rules.number("remedy.sister_part.share"))


def _mid_support(_rules: RuleSet, frame: Frame) -> Frame | None:
    found = frame.found
    half, halves = found.span / 2, [span / 2 for span in found.run or (found.span,) for _ in (0, 1)]
    if len(halves) > _MOST_SPANS:
        return None
    near = [(load, min(at, found.span - at)) for load, at in found.points]
    joists = tuple(replace(part, start=None) for part in frame.loads.joists)
    return replace(
        _with(
            frame,
            span=half,
            run=() if found.unbroken and not found.run else tuple(halves),
            points=tuple(point for point in near if point[1] < half),
            sister=None,
        ),
        loads=replace(frame.loads, joists=joists),
    )


def _added_joists(_rules: RuleSet, frame: Frame) -> Frame:
    half, joists = frame.found.spacing / 2, []
    for part in frame.loads.joists:
        share = min(1.0, half / part.width)
        joists.append(replace(part, pounds=part.pounds * share, width=part.width * share))
    return replace(_with(frame, spacing=half), loads=replace(frame.loads, joists=tuple(joists)))


def second_layer(rules: RuleSet, frame: Frame) -> Frame | None:
    """The floor with a second panel layer on its only one; None where it has two already."""
    found, added = frame.found, rules.text("remedy.second_layer.thickness")
    if len(found.layers) > 1:
        return None
    return _with(
        frame,
        layers=(*found.layers, added),
        ratings=(*found.ratings, usual_rating(rules, added)),
        panel=found.panel + thickness(added),
    )


def _thinner_bed(rules: RuleSet, frame: Frame) -> Frame | None:
    thin = rules.number("remedy.thinner_bed.thickness") * _MM_PER_IN
    layers = tuple(
        replace(layer, thickness=min(layer.thickness, thin)) if layer.of == "mortar_bed" else layer
        for layer in frame.layers
    )
    return None if layers == frame.layers else replace(frame, layers=layers)


def _other_finish(rules: RuleSet, frame: Frame) -> Frame | None:
    if frame.found.finish != "stone":
        return None
    layers = tuple(
        replace(layer, density=rules.number("mass.tile")) if layer.of == "tile" else layer
        for layer in frame.layers
    )
    return replace(_with(frame, finish="ceramic"), layers=layers)


def _closer(_rules: RuleSet, frame: Frame) -> Frame:
    return _with(frame, spacing=frame.found.spacing / 2)


def _deeper_studs(rules: RuleSet, frame: Frame) -> Frame | None:
    found = frame.found
    if found.size:
        now = rules.number(f"lumber.depth.{found.deeper or found.size}")
        size = next((one for one in _STUD_SIZES if rules.number(f"lumber.depth.{one}") > now), None)
        return None if size is None else _with(frame, deeper=size)
    web = None if found.inertia is not None else _next(rules, "wall.steel.depths", found)
    return None if web is None else _with(frame, web=web)


def _thicker_steel(rules: RuleSet, frame: Frame) -> Frame | None:
    found, least = frame.found, rules.number("wall.steel.min")
    if found.mils is None or found.inertia is not None:
        return None
    mils = least if found.mils < least else _next(rules, "wall.steel.thicknesses", found)
    return None if mils is None else _with(frame, mils=mils)


def _next(rules: RuleSet, listed: str, found: Found) -> float | None:
    now = (found.web if listed.endswith("depths") else found.mils) or 0.0
    return next((each for each in map(float, rules.text(listed).split()) if each > now), None)


def _ceiling_sister(_rules: RuleSet, frame: Frame) -> Frame | None:
    return _with(frame, plies=2 * frame.found.plies) if frame.found.size else None


def _ceiling_support(_rules: RuleSet, frame: Frame) -> Frame:
    return _with(frame, span=frame.found.span / 2)


_MEASURES: Mapping[str, Mapping[str, Take]] = {
    "floor": {
        "sister_full": _sister_full,
        "sister_part": _sister_part,
        "mid_support": _mid_support,
        "added_joists": _added_joists,
        "second_layer": second_layer,
        "thinner_bed": _thinner_bed,
        "other_finish": _other_finish,
        "blocking": lambda _rules, frame: frame,
    },
    "wall": {"added_studs": _closer, "deeper_studs": _deeper_studs, "thicker_steel": _thicker_steel},
    "ceiling": {
        "ceiling_sister": _ceiling_sister,
        "ceiling_joists": _closer,
        "ceiling_support": _ceiling_support,
    },
}
