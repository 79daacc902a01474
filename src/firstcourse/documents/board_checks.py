"""What is looked at when the boards hang and before tile covers them: gaps, fasteners, bed, tape, sealant."""

from collections.abc import Iterator

from firstcourse.documents.rule_values import shown_value
from firstcourse.plan import Plan, SideKind, SurfaceKind

_SEALED = ("tub", "tray")


def board_checks(plan: Plan) -> list[str]:
    """Lines to tick, with the values the plan was made with; none where nothing is boarded."""
    return list(_checks(plan)) if any(surface.boards for surface in plan.surfaces) else []


def _checks(plan: Plan) -> Iterator[str]:
    rules = {rule.id: rule for rule in plan.rules}

    def value(name: str) -> str:
        return shown_value(rules[name].value, rules[name].unit, plan.job.tape)

    boarded = [surface for surface in plan.surfaces if surface.boards]
    floors = [surface for surface in boarded if surface.kind is SurfaceKind.FLOOR]
    screwed = [surface for surface in floors if surface.slab != "bonded"]
    others = [surface for surface in boarded if surface.kind is not SurfaceKind.FLOOR]
    feet = any(side.kind is SideKind.FOOT for surface in boarded for side in surface.sides)
    beside_tub = any(opening.kind in _SEALED for surface in floors for opening in surface.openings)
    if floors:
        notch = " × ".join(value(f"bedding.trowel.notch_{side}") for side in ("width", "depth"))
        yield f"Floor boards lie in fresh mortar, combed with a {notch} notch; none lies dry."
    gaps = [
        f"{value(f'boards.gap.{name}')} {where}"
        for name, where in (
            ("between", "between boards"),
            ("perimeter", "at walls and ceiling"),
            ("opening", "round openings"),
        )
        # A plan holds the rules it asked for: without openings it asked for no gap round them.
        if f"boards.gap.{name}" in rules
    ]
    yield f"Gaps: {', '.join(gaps)}; no board touches its neighbour."
    if any(finding.code == "BRD-207" for finding in plan.findings):
        yield (
            "Boards that the findings name keep the sheet's edge, and have the gap told there: "
            f"{value('boards.gap.perimeter.least')} at least."
        )
    if any(finding.code == "BRD-208" for finding in plan.findings):
        yield (
            "Boards that the findings name are cut back from the wall, and have the gap told there: "
            f"{value('boards.gap.perimeter.most')} at most."
        )
    if feet or beside_tub:
        yield (
            f"At floor, tub, tray and kerb {value('boards.gap.foot')} stays open and is filled with sealant, "
            f"{value('bedding.sealant.depth')} deep; no mortar is in it."
        )
    spacing = " and ".join(
        f"{value(f'fastening.spacing.{where}')} on {name}"
        for where, name, there in (("floor", "floors", screwed), ("wall", "walls and ceilings", others))
        if there
    )
    if spacing:
        yield (
            f"Fasteners are {value('fastening.type')}s at most {spacing} apart, {value('fastening.edge.min')} or "
            f"more from edges and {value('fastening.corner.min')} from corners; heads flush, none through the "
            "face."
        )
    if any(surface.no_fastener_zones for surface in boarded):
        yield "No fastener is in the zones that the drawings and the list of waterproofing name."
    if any(support.added for surface in boarded for support in surface.supports):
        yield "The members that the drawings show with heavy broken lines are in."
    yield f"Every seam and inside corner is filled and taped, {value('bedding.tape.width')} tape bedded in mortar."
