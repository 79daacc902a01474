"""What must be told of how members stand and of what lies on joists: spacings, planks, panels by their kind."""

import math
from collections.abc import Iterator
from itertools import pairwise

from firstcourse.geometry import sides
from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, parse_length
from firstcourse.verify.fields import ticks
from firstcourse.verify.formulas.derived import Number, Wanted, inches, name, word
from firstcourse.verify.formulas.panels import thickness
from firstcourse.verify.formulas.parts import Part
from firstcourse.verify.frame_given import FRAMES_NEED, bays, sold, widest
from firstcourse.verify.judged.asked import FIX, NOTE, STOP, Asked
from firstcourse.verify.judged.grounds import is_slab
from firstcourse.verify.structure import Document, Surface

CODES = frozenset(("SUI-115", "SUI-204", "SUI-207", "SUI-208", "SUI-209", "SUI-210", "SUI-211", "SUI-212"))
_KINDS = ("chipboard", "plywood", "strand_board")
_MOST_ASKEW = 10.0
"""How far off square framing still counts as square; common practice [degrees]."""


def spacing_of(plan: Document, part: Part) -> float | None:
    """Centre to centre of a surface's members, the widest [in]; None where there are no two of them."""
    framing = part.given.part("framing")
    try:
        return bays(part.surface, framing, plan.rules) if part.surface.kind == "wall" else widest(framing)
    except ValueError:
        return None


def deck_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """What must be told of planks and panels of a floor that is no slab."""
    if part.surface.kind != "floor" or is_slab(part.given):
        return
    rules, planks, panels = plan.rules, part.given.part("planks"), part.given.part("panels")
    layers = [ticks(*row) for row in panels.rows("layers", ())]
    spacing = spacing_of(plan, part)
    apart = None if spacing is None else round(spacing * TICKS_PER_INCH)
    if planks.value:
        kind = "planks_diagonal" if planks.text("lie", "square") == "diagonal" else "planks"
        width = planks.length("width") if "width" in planks.value else None
        yield _planks(rules, part.ref, width, layers)
        if apart is not None:
            yield from _by_spacing(rules, part.ref, kind, planks.length("thickness"), apart, known=True)
    elif layers and apart is not None and any(rules.has(f"deck.{kind}") for kind in _KINDS):
        material = panels.raw("material", None)
        # Of unknown kind it counts as what asks for the thickest.
        yield from _by_spacing(
            rules, part.ref, material or "chipboard", max(layers), apart, known=material is not None
        )


def counted_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """Layers of a judged panel between two thicknesses that are sold, which count as the thinner."""
    panels = part.given.part("panels")
    if not plan.rules.has(FRAMES_NEED) or panels.rows("ratings", ()):
        return
    for layer in (ticks(*row) for row in panels.rows("layers", ())):
        counted = thickness(sold(plan.rules, layer))
        if abs(counted * TICKS_PER_INCH - layer) > 1e-6:
            yield Asked(
                code="SUI-204",
                severity=NOTE,
                at=(part.ref,),
                measured=_long(layer),
                remedies=("stamp",),
                values={"counted": inches(counted)},
            )


def _planks(rules: RuleSet, ref: str, width: int | None, panels: list[int]) -> Asked:
    least, wide = rules.ticks("deck.planks.panel"), rules.ticks("deck.planks.wide")
    screws = "by_width" if width is None else "three" if width > wide else "two"
    values: dict[str, Wanted] = {"screws": word(screws), "wide": _long(wide)}
    if panels and max(panels) >= least:
        return Asked(code="SUI-211", severity=NOTE, at=(ref,), remedies=("screw", "joints"), values=values)
    thin = max(panels, default=None)
    return Asked(
        code="SUI-207" if thin is None else "SUI-208",
        severity=STOP,
        at=(ref,),
        measured=None if thin is None else _long(thin),
        limit=_long(least),
        sense="least",
        rule="deck.planks.panel",
        remedies=("screw", "panel_over" if thin is None else "thicker"),
        values=values | ({"why": name(rules.text("deck.planks.why"))} if thin is None else {}),
    )


def _by_spacing(rules: RuleSet, ref: str, deck: str, thick: int, spacing: int, *, known: bool) -> Iterator[Asked]:
    table = rules.find(f"deck.{deck}")
    if table is None:
        asked = rules.find("frame.ask")
        values: dict[str, Wanted] = {
            "deck": word(deck),
            "thickness": _long(thick),
            "spacing": _long(spacing),
            "practice": word(rules.practice),
            "named": asked is not None,
        }
        values |= {} if asked is None else {"who": name(str(asked.value))}
        yield Asked(code="SUI-212", severity=NOTE, at=(ref,), remedies=("ask",), values=values)
        return
    rows = _rows(table)
    up_to = min((apart for apart in rows if spacing <= apart), default=None)
    if up_to is not None and thick >= rows[up_to]:
        return
    values = {
        "deck": word(deck),
        "known": known,
        "spacing": _long(spacing),
        "too_far": up_to is None,
        **({} if up_to is None else {"up_to": _long(up_to)}),
    }
    yield Asked(
        code="SUI-209" if deck.startswith("planks") else "SUI-210",
        severity=STOP if known else FIX,
        at=(ref,),
        measured=_long(thick),
        limit=_long(max(rows) if up_to is None else rows[up_to]),
        sense="most" if up_to is None else "least",
        rule=table.id,
        remedies=("thicker",),
        values=values,
    )


def _rows(table: RuleEntry) -> dict[int, int]:
    """Least thickness by the spacing that it serves up to [ticks]."""
    pairs = (row.split(":") for row in str(table.value).split(";"))
    return {parse_length(apart.strip()): parse_length(least.strip()) for apart, least in pairs}


def askew_asked(surface: Surface) -> Iterator[Asked]:
    """What must be told of boards on framing that runs along neither axis of their surface."""
    members = [one for one in surface.supports if not one.added]
    panelled = any(one.kind == "panel" for one in members)
    if surface.framing_axis or not members or surface.slab or panelled:
        return
    lines = [max(sides(one.outline), key=lambda side: math.dist(*side)) for one in members]
    (au, av), (bu, bv) = max(lines, key=lambda side: math.dist(*side))
    turn = math.atan2(abs(bv - av), abs(bu - au))
    run = math.dist((au, av), (bu, bv))
    centres = [(sum(u for u, _ in one.outline) / 4, sum(v for _, v in one.outline) / 4) for one in members]
    across = sorted((v * (bu - au) - u * (bv - av)) / run for u, v in centres)
    values: dict[str, Wanted] = {"several": len(across) > 1}
    if len(across) > 1:
        apart = max(after - before for before, after in pairwise(across))
        shorter, longer = sorted((apart / math.sin(turn), apart / math.cos(turn)))
        values |= {"apart": _long(apart), "shorter_way": _long(shorter), "longer_way": _long(longer)}
    yield Asked(
        code="SUI-115",
        severity=STOP,
        at=(surface.id,),
        measured=Number(math.degrees(min(turn, math.pi / 2 - turn)), "deg"),
        limit=Number(_MOST_ASKEW, "deg"),
        sense="most",
        remedies=("battens",),
        values=values,
    )


def _long(length: float) -> Number:
    return Number(length / TICKS_PER_MM, "mm")
