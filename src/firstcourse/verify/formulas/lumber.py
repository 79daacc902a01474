"""Design values of sawn members from the rule book; of what is not known, the least of each."""

from dataclasses import dataclass
from itertools import product

from firstcourse.rules import RuleSet
from firstcourse.verify.formulas.derived import Wanted, name, word
from firstcourse.verify.frame_fields import Found

_SPECIES = ("dfl", "hf", "spf", "sp")
_GRADES = ("ss", "no1", "no2", "no3", "stud", "construction", "standard", "utility")
_SMALL_ALONE = frozenset(("construction", "standard", "utility"))
_SMALL = "2x4"
UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Wood:
    """Sizes [in], design values [psi] and, by `fb`, `e`, `fv` and `fc_perp`, the rules that they are."""

    width: float
    depth: float
    fb: float
    size_factor: float
    e: float
    fv: float
    fc_perp: float
    rules: tuple[tuple[str, str], ...]

    def rule(self, name: str) -> str:
        """The rule of a design value."""
        return dict(self.rules)[name]


def wood(rules: RuleSet, size: str, species: str, grade: str) -> Wood:
    """Design values of a size, species and grade.

    Raises:
        FirstcourseError: The book has none for them.
    """
    grades = [one for one in _GRADES if size == _SMALL or one not in _SMALL_ALONE] if grade == UNKNOWN else [grade]
    each = [
        _listed(rules, size, one, other)
        for one, other in product(_SPECIES if species == UNKNOWN else (species,), grades)
    ]
    weakest = min(each, key=lambda one: one.fb * one.size_factor)
    least = {
        "fb": weakest,
        "e": min(each, key=lambda one: one.e),
        "fv": min(each, key=lambda one: one.fv),
        "fc_perp": min(each, key=lambda one: one.fc_perp),
    }
    return Wood(
        rules.number("lumber.width"),
        rules.number(f"lumber.depth.{size}"),
        weakest.fb,
        weakest.size_factor,
        least["e"].e,
        least["fv"].fv,
        least["fc_perp"].fc_perp,
        tuple((name, one.rule(name)) for name, one in least.items()),
    )


def _listed(rules: RuleSet, size: str, species: str, grade: str) -> Wood:
    """One row of the tables; wide Stud is as No. 3, and southern pine has one row for both."""
    factor = f"lumber.size_factor.{size}"
    if grade == "stud" and species != "sp" and rules.has(f"lumber.size_factor.stud.{size}"):
        factor = f"lumber.size_factor.stud.{size}"
    elif grade == "stud":
        grade = "no3"
    own = f"lumber.{species}.{grade}.fb.{size}"
    fb = own if rules.has(own) else f"lumber.{species}.{grade}.fb"
    names = {
        "fb": fb,
        "e": f"lumber.{species}.{grade}.e",
        "fv": f"lumber.{species}.fv",
        "fc_perp": f"lumber.{species}.fc_perp",
    }
    return Wood(
        rules.number("lumber.width"),
        rules.number(f"lumber.depth.{size}"),
        rules.number(fb),
        # A value of its own size has the effect of the size in it.
        1.0 if fb == own else rules.number(factor),
        rules.number(names["e"]),
        rules.number(names["fv"]),
        rules.number(names["fc_perp"]),
        tuple(names.items()),
    )


def lumber_named(found: Found) -> dict[str, Wanted]:
    """Size, species and grade as they stand in the plan."""
    return {
        "size": name(found.size),
        "species": word(found.species if found.species == "unknown" else f"species_{found.species}"),
        "grade": word(found.grade if found.grade == "unknown" else f"grade_{found.grade}"),
    }
