"""Design values of sawn joists from the rule book; where species or grade is unknown, the weakest of them."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet
from firstcourse.values import Value, Word

SPECIES = {"dfl": "Douglas fir-larch", "hf": "hem-fir", "spf": "spruce-pine-fir", "sp": "southern pine"}
GRADES = {
    "ss": "Select Structural",
    "no1": "No. 1",
    "no2": "No. 2",
    "no3": "No. 3",
    "stud": "Stud",
    "construction": "Construction",
    "standard": "Standard",
    "utility": "Utility",
}
UNKNOWN = "unknown"
_SMALL = "2x4"
_SMALL_GRADES = ("construction", "standard", "utility")


def grades_of(size: str) -> tuple[str, ...]:
    """The grades a size is made in: Construction, Standard and Utility are 2x4 and narrower.

    References:
        AWC NDS Supplement, Tables 4A and 4B: size classification.
    """
    return tuple(grade for grade in GRADES if size == _SMALL or grade not in _SMALL_GRADES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lumber:
    """A size of lumber with its reference design values.

    Attributes:
        width_in: Thickness of the joist [in].
        depth_in: Depth of the joist [in].
        fb_psi: Reference bending value before factors [psi].
        size_factor: Factor on bending for the size.
        e_psi: Modulus of elasticity [psi].
        fv_psi: Reference shear value [psi].
        fc_perp_psi: Reference compression across the grain [psi].
        size, species, grade: As asked for.
        unknown: `species`, `grade` or `both`; empty where all was known.
        rules: Ids of the rules that the values are, by `fb`, `e`, `fv` and `fc_perp`.
    """

    width_in: float
    depth_in: float
    fb_psi: float
    size_factor: float
    e_psi: float
    fv_psi: float
    fc_perp_psi: float
    size: str = ""
    species: str = UNKNOWN
    grade: str = UNKNOWN
    unknown: str = ""
    rules: Mapping[str, str] = field(default_factory=dict)


def lumber_facts(wood: Lumber) -> dict[str, Value]:
    """Species and grade as a plan keeps them."""
    return {"species": _word("species", wood.species), "grade": _word("grade", wood.grade)}


def _word(kind: str, code: str) -> Word:
    return Word(word=UNKNOWN if code == UNKNOWN else f"{kind}_{code}")


def lumber(rules: RuleSet, size: str, species: str = UNKNOWN, grade: str = UNKNOWN) -> Lumber:
    """The design values of a size, species and grade.

    What is unknown is the weakest it may be: every grade the size is made in, of every species group of the book.

    Args:
        rules: The rule book.
        size: Nominal size, such as `2x10`.
        species: One of `SPECIES`, or `unknown`.
        grade: One of `GRADES`, or `unknown`.

    Raises:
        InputValueError: The book has no such size, species or grade, or lacks one that what is unknown may be.
    """
    if not rules.has(f"lumber.depth.{size}"):
        raise InputValueError(f"no lumber size '{size}'; give one such as 2x10, or the joist's EI")
    if species not in (*SPECIES, UNKNOWN):
        raise InputValueError(f"no species '{species}'; give one of {', '.join(SPECIES)} or unknown")
    if grade not in (*GRADES, UNKNOWN):
        raise InputValueError(f"no grade '{grade}'; give one of {', '.join(GRADES)} or unknown")
    if grade != UNKNOWN and grade not in grades_of(size):
        raise InputValueError(
            f"grade {GRADES[grade]} is made in 2x4 alone, not in {size}; "
            "read the stamp again, or give the joist's EI"
        )
    found = [
        _values(rules, size, one, other)
        for one in (SPECIES if species == UNKNOWN else (species,))
        for other in (grades_of(size) if grade == UNKNOWN else (grade,))
    ]
    if UNKNOWN not in (species, grade):
        return found[0]
    # Each property's own minimum: weaker than any single species, so never on the unsafe side.
    weakest = min(found, key=lambda one: one.fb_psi * one.size_factor)
    least = {
        "fb": weakest,
        "e": min(found, key=lambda one: one.e_psi),
        "fv": min(found, key=lambda one: one.fv_psi),
        "fc_perp": min(found, key=lambda one: one.fc_perp_psi),
    }
    return replace(
        weakest,
        e_psi=least["e"].e_psi,
        fv_psi=least["fv"].fv_psi,
        fc_perp_psi=least["fc_perp"].fc_perp_psi,
        species=species,
        grade=grade,
        unknown="both" if species == grade else "species" if species == UNKNOWN else "grade",
        rules={name: one.rules[name] for name, one in least.items()},
    )


def _values(rules: RuleSet, size: str, species: str, grade: str) -> Lumber:
    factor = f"lumber.size_factor.{size}"
    listed = grade
    if grade == "stud":
        stud_factor = f"lumber.size_factor.stud.{size}"
        if species == "sp" or not rules.has(stud_factor):
            # Southern pine's table has one row for both; elsewhere wide Stud has the values and factors of No. 3.
            listed = "no3"
        else:
            factor = stud_factor
    own_size = f"lumber.{species}.{listed}.fb.{size}"
    any_size = f"lumber.{species}.{listed}.fb"
    fb = next((rule for rule in (own_size, any_size) if rules.has(rule)), None)
    if fb is None:
        raise InputValueError(
            f"the rule book has no values for {SPECIES[species]} {GRADES[listed]} in {size}; "
            "read the grade stamp and enter species and grade, or give the joist's EI"
        )
    used = {
        "fb": fb,
        "e": f"lumber.{species}.{listed}.e",
        "fv": f"lumber.{species}.fv",
        "fc_perp": f"lumber.{species}.fc_perp",
    }
    return Lumber(
        width_in=rules.number("lumber.width"),
        depth_in=rules.number(f"lumber.depth.{size}"),
        fb_psi=rules.number(fb),
        # A value tabulated for its own size has the size effect in it already.
        size_factor=1.0 if fb == own_size else rules.number(factor),
        e_psi=rules.number(used["e"]),
        fv_psi=rules.number(used["fv"]),
        fc_perp_psi=rules.number(used["fc_perp"]),
        size=size,
        species=species,
        grade=grade,
        rules=used,
    )
