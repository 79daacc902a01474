"""What must be told of what is not judged: what the job leaves out, what a practice lacks, and whom to ask."""

from collections.abc import Iterator

from firstcourse.verify.formulas.derived import Number, Wanted, name, word
from firstcourse.verify.formulas.parts import Part
from firstcourse.verify.frame_given import FRAMES_NEED
from firstcourse.verify.judged.asked import NOTE, STOP, Asked
from firstcourse.verify.judged.decks import spacing_of
from firstcourse.verify.judged.grounds import grounds, is_bed, is_slab
from firstcourse.verify.structure import Document, Said

CODES = frozenset(("SUI-130", "SUI-900", "SUI-901", "SUI-910"))
_NO_RULES = "wants_frame_rules"
_BED = "made_by_bed"


def unjudged_asked(plan: Document) -> Iterator[Asked]:
    """What must be told of frames and surfaces that are judged in part or not at all."""
    yield from _untold(plan)
    judged = bool(plan.frames)
    for part in grounds(plan):
        if part.surface.kind == "floor" and is_slab(part.given):
            yield _slab(part)
        elif is_framed(part) and not plan.rules.has(FRAMES_NEED):
            yield _unjudged(plan, part, "")
        elif is_whole(plan, part) and all(frame.surface != part.ref for frame in plan.frames):
            yield _unjudged(plan, part, _lacking(plan, part))
            judged = True
    if judged:
        caution = plan.rules.entry("safety.caution.engineer")
        values = {"caution": name(str(caution.value))}
        yield Asked(code="SUI-900", severity=NOTE, at=("job",), rule=caution.id, values=values)


def _untold(plan: Document) -> Iterator[Asked]:
    """By room, surfaces of which the job leaves the same out."""
    rooms: dict[str, dict[tuple[str, ...], list[str]]] = {}
    for part in grounds(plan):
        for wanted in (tuple(_missing(plan, part)), (_BED,) if is_bed(part) else ()):
            if wanted:
                rooms.setdefault(part.room.text("name"), {}).setdefault(wanted, []).append(part.ref)
    for room, untold in rooms.items():
        for wanted, refs in untold.items():
            asks = {"engineer": _NO_RULES in wanted, "enter": bool(set(wanted) - {_NO_RULES, _BED})}
            yield Asked(
                code="SUI-910",
                severity=NOTE,
                at=(room, *refs),
                remedies=tuple(remedy for remedy, applies in asks.items() if applies),
                values={"wanted": [word(one) for one in wanted]},
            )


def _missing(plan: Document, part: Part) -> Iterator[str]:
    yield from _frame_wants(plan, part)
    if "exposure" not in part.given.value:
        yield "wants_exposure"
    floor = part.surface.kind == "floor" and part.is_tiled and not is_bed(part)
    read = any(part.given.value.get(key) for key in ("spots", "straightedge"))
    if floor and (part.edge_mm is None or not read):
        yield "wants_flatness"


def _frame_wants(plan: Document, part: Part) -> Iterator[str]:
    """What a frame is not judged without, and is not given."""
    kind, given = part.surface.kind, part.given.value
    if kind == "floor" and is_slab(part.given):
        return
    if not plan.rules.has(FRAMES_NEED):
        yield from () if is_framed(part) else (_NO_RULES,)
        return
    spaced = spacing_of(plan, part) is not None
    if kind == "wall":
        if "studs" not in given or not spaced:
            yield "wants_studs" if "studs" not in given else "wants_stud_spacing"
        return
    yield from () if spaced else ("wants_joist_spacing",)
    yield from () if "joists" in given else ("wants_joists",)
    if kind == "floor":
        yield from () if "panels" in given else ("wants_panels",)
    if not has_tile(part):
        yield "wants_tile" if kind == "floor" else "wants_tiling"


def has_tile(part: Part) -> bool:
    """Whether the tile of a surface is known; of a floor that is all shower that of the shower counts too."""
    return part.is_tiled or (is_bed(part) and "tiling" in part.given.part("shower").value)


def is_framed(part: Part) -> bool:
    """Whether the job says what a surface's members are."""
    return ("studs" if part.surface.kind == "wall" else "joists") in part.given.value


def is_whole(plan: Document, part: Part) -> bool:
    """Whether all is given that a frame is judged by."""
    return is_framed(part) and not any(_frame_wants(plan, part))


def _slab(part: Part) -> Asked:
    given, exposure = part.given.value, part.given.part("exposure").value
    wanted = [] if given.get("spots") or given.get("straightedge") else ["slab_heights"]
    if not {"slab_humidity_percent", "slab_emission", "slab_emission_lb"} & exposure.keys():
        wanted.append("slab_moisture")
    return Asked(
        code="SUI-130",
        severity=NOTE,
        at=(part.ref,),
        remedies=("enter",) if wanted else (),
        values={"wanted": [word(one) for one in wanted]} if wanted else {},
    )


def _lacking(plan: Document, part: Part) -> str:
    """The rule that a frame is said to be unjudged for want of; it counts where the practice has it not."""
    for said in plan.findings:
        missing = _name(said, "missing")
        if said.code == "SUI-901" and said.place == part.ref and not plan.rules.has(missing):
            return missing
    return ""


def _name(said: Said, key: str) -> str:
    found = said.values.get(key)
    given = found.get("name") if isinstance(found, dict) else None
    return given if isinstance(given, str) else ""


def _unjudged(plan: Document, part: Part, missing: str) -> Asked:
    """That nothing tells whether a frame carries tile, as the practice has no rules for it, or lacks one."""
    rules, floor = plan.rules, part.surface.kind == "floor"
    asked, bends = rules.find("frame.ask"), rules.find("frame.ask.deflection")
    usual = rules.find("frame.deflection.usual") if floor else None
    partly = rules.has(FRAMES_NEED)
    values: dict[str, Wanted] = {
        "partly": partly,
        "missing": name(missing or FRAMES_NEED),
        "practice": word(rules.practice),
        "day": name(rules.on.isoformat()),
        "floor": floor,
        "named": asked is not None,
        "bends": bends is not None,
        "borrowed": bends is not None and bool(bends.taken_from),
    }
    values |= {} if asked is None else {"who": name(str(asked.value))}
    if bends is not None:
        values["divisor"] = Number(rules.number(bends.id))
        values |= {"lender": word(bends.taken_from)} if bends.taken_from else {}
    values |= {} if usual is None else {"usual": Number(rules.number(usual.id))}
    return Asked(
        code="SUI-901",
        severity=STOP if partly else NOTE,
        at=(part.ref,),
        rule="" if usual is None else usual.id,
        remedies=("carries",) if usual is None else ("carries", "usual"),
        values=values,
    )
