"""What is looked at when the boards hang and before tile covers them: gaps, fasteners, bed, tape, sealant."""

from collections.abc import Iterator

from firstcourse.papers.rule_values import hands_value
from firstcourse.plan import Plan, SideKind, SurfaceKind
from firstcourse.words import speaker_for

_SEALED = ("tub", "tray")


def board_checks(plan: Plan) -> list[str]:
    """Lines to tick, with the values the plan was made with; none where nothing is boarded."""
    return list(_checks(plan)) if any(surface.boards for surface in plan.surfaces) else []


def _checks(plan: Plan) -> Iterator[str]:
    rules = {rule.id: rule for rule in plan.rules}
    speaker = speaker_for(plan)

    def value(name: str) -> str:
        return speaker.unit(hands_value(speaker.rule_text(rules[name].value), rules[name].unit, plan.job.tape))

    def check(name: str, **given: str) -> str:
        return speaker.text("boards-checks", name, **given)

    boarded = [surface for surface in plan.surfaces if surface.boards]
    floors = [surface for surface in boarded if surface.kind is SurfaceKind.FLOOR]
    screwed = [surface for surface in floors if surface.slab != "bonded"]
    others = [surface for surface in boarded if surface.kind is not SurfaceKind.FLOOR]
    feet = any(side.kind is SideKind.FOOT for surface in boarded for side in surface.sides)
    beside_tub = any(opening.kind in _SEALED for surface in floors for opening in surface.openings)
    if floors:
        yield check(
            "mortar", notch=" × ".join(value(f"bedding.trowel.notch_{side}") for side in ("width", "depth"))
        )
    gaps = [
        speaker.text("boards-gap", name, gap=value(f"boards.gap.{name}"))
        for name in ("between", "perimeter", "opening")
        # A plan holds the rules it asked for: without openings it asked for no gap round them.
        if f"boards.gap.{name}" in rules
    ]
    yield check("gaps", gaps=", ".join(gaps))
    if any(finding.code == "BRD-207" for finding in plan.findings):
        yield check("edge_kept", least=value("boards.gap.perimeter.least"))
    if any(finding.code == "BRD-208" for finding in plan.findings):
        yield check("cut_back", most=value("boards.gap.perimeter.most"))
    if feet or beside_tub:
        yield check("foot", gap=value("boards.gap.foot"), depth=value("bedding.sealant.depth"))
    if screwed or others:
        yield check(
            "fasteners",
            type=value("fastening.type"),
            spacing=speaker.text(
                "boards-spacing",
                surfaces="both" if screwed and others else "floor" if screwed else "wall",
                floor=value("fastening.spacing.floor") if screwed else "",
                wall=value("fastening.spacing.wall") if others else "",
            ),
            edge=value("fastening.edge.min"),
            corner=value("fastening.corner.min"),
        )
    if any(surface.no_fastener_zones for surface in boarded):
        yield check("zones")
    if any(support.added for surface in boarded for support in surface.supports):
        yield check("members")
    yield check("tape", tape=value("bedding.tape.width"))
