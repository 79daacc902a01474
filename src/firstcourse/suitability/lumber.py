"""Design values of sawn joists from the rule book; where species or grade is unknown, the weakest of them."""

from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.rules import RuleSet

SPECIES = ("dfl", "hf", "spf", "sp")
GRADES = ("ss", "no1", "no2", "no3")
UNKNOWN = "unknown"


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
        assumed: What was taken because it was unknown; empty where all was known.
        source: Where the values come from.
    """

    name: str
    width_in: float
    depth_in: float
    fb_psi: float
    size_factor: float
    e_psi: float
    fv_psi: float
    fc_perp_psi: float
    assumed: str = ""
    source: str = ""


def lumber(rules: RuleSet, size: str, species: str = UNKNOWN, grade: str = UNKNOWN) -> Lumber:
    """The design values of a size, species and grade.

    Args:
        rules: The rule book.
        size: Nominal size, such as `2x10`.
        species: One of `dfl`, `hf`, `spf`, `sp`, or `unknown`.
        grade: One of `ss`, `no1`, `no2`, `no3`, or `unknown`.

    Raises:
        InputValueError: The book has no such size, species or grade.
    """
    if f"lumber.depth.{size}" not in rules.entries:
        raise InputValueError(f"no lumber size '{size}'; give one such as 2x10, or the joist's EI")
    if species not in (*SPECIES, UNKNOWN):
        raise InputValueError(f"no species '{species}'; give one of {', '.join(SPECIES)} or unknown")
    if grade not in (*GRADES, UNKNOWN):
        raise InputValueError(f"no grade '{grade}'; give one of {', '.join(GRADES)} or unknown")
    found = [
        values
        for one in (SPECIES if species == UNKNOWN else (species,))
        for other in (GRADES if grade == UNKNOWN else (grade,))
        if (values := _values(rules, size, one, other)) is not None
    ]
    if not found:
        raise InputValueError(f"the rule book has no values for {size} {species} {grade}; give the joist's EI")
    if UNKNOWN not in (species, grade):
        return found[0]
    # Each property's own minimum: weaker than any single species, so never on the unsafe side.
    weakest = min(found, key=lambda one: one.fb_psi * one.size_factor)
    unknown = " and ".join(word for word, given in (("species", species), ("grade", grade)) if given == UNKNOWN)
    return Lumber(
        name=f"{size}, {unknown} unknown",
        width_in=weakest.width_in,
        depth_in=weakest.depth_in,
        fb_psi=weakest.fb_psi,
        size_factor=weakest.size_factor,
        e_psi=min(one.e_psi for one in found),
        fv_psi=min(one.fv_psi for one in found),
        fc_perp_psi=min(one.fc_perp_psi for one in found),
        assumed=f"{unknown} unknown: the lowest of each design value in the rule book is taken",
        source=weakest.source,
    )


def _values(rules: RuleSet, size: str, species: str, grade: str) -> Lumber | None:
    own_size = f"lumber.{species}.{grade}.fb.{size}"
    any_size = f"lumber.{species}.{grade}.fb"
    fb = next((rule for rule in (own_size, any_size) if rule in rules.entries), None)
    if fb is None:
        return None
    return Lumber(
        name=f"{size} {rules.entry(fb).description.split(',')[0].split(f' {size}')[0]}",
        width_in=rules.number("lumber.width"),
        depth_in=rules.number(f"lumber.depth.{size}"),
        fb_psi=rules.number(fb),
        # A value tabulated for its own size has the size effect in it already.
        size_factor=1.0 if fb == own_size else rules.number(f"lumber.size_factor.{size}"),
        e_psi=rules.number(f"lumber.{species}.{grade}.e"),
        fv_psi=rules.number(f"lumber.{species}.fv"),
        fc_perp_psi=rules.number(f"lumber.{species}.fc_perp"),
        source=f"{rules.entry(fb).source}, {rules.entry(fb).locator}",
    )
