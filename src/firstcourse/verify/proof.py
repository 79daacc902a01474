"""Every family of checks, in order, over one plan."""

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import Any

from shapely.errors import ShapelyError

from firstcourse.errors import RuleNotFoundError
from firstcourse.rules import RuleSet
from firstcourse.verify.at_once import Do, at_once
from firstcourse.verify.bans import check_bans
from firstcourse.verify.benches import check_benches
from firstcourse.verify.board_findings import check_board_findings
from firstcourse.verify.bounds import check_bounds
from firstcourse.verify.calendar import check_calendar
from firstcourse.verify.counts import check_counts
from firstcourse.verify.coverage import check_coverage
from firstcourse.verify.cut_lines import check_cut_lines
from firstcourse.verify.cutting import check_cutting
from firstcourse.verify.doors import check_doors
from firstcourse.verify.drawn import check_drawn
from firstcourse.verify.edges import check_edges
from firstcourse.verify.fall_asked import check_falls_told
from firstcourse.verify.fall_findings import check_fall_findings
from firstcourse.verify.fall_given import check_falls_given
from firstcourse.verify.falls import check_falls
from firstcourse.verify.fasteners import check_fasteners
from firstcourse.verify.fields import FieldError
from firstcourse.verify.fills import check_fills
from firstcourse.verify.findings import check_findings
from firstcourse.verify.floor_heights import check_floor_heights
from firstcourse.verify.floor_loads import check_floor_loads
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.formulas.quantities import check_quantities
from firstcourse.verify.frame_given import check_frame_given
from firstcourse.verify.frames import check_frames
from firstcourse.verify.given import check_given
from firstcourse.verify.in_room import check_in_room
from firstcourse.verify.judged import check_judged
from firstcourse.verify.kept_edges import check_kept_edges
from firstcourse.verify.laid_starts import check_laid_starts
from firstcourse.verify.layers import check_layers
from firstcourse.verify.load_masses import check_load_masses
from firstcourse.verify.marks import check_marks
from firstcourse.verify.membranes import check_membranes
from firstcourse.verify.met_edges import check_met
from firstcourse.verify.reading import read_document
from firstcourse.verify.return_boards import check_return_boards
from firstcourse.verify.rule_notes import check_rule_notes
from firstcourse.verify.seams import check_seams
from firstcourse.verify.shopping_fields import Shopping
from firstcourse.verify.soft_joints import check_soft_joints
from firstcourse.verify.soft_reasons import check_soft_reasons
from firstcourse.verify.standing import check_gaps_as_built, check_standing
from firstcourse.verify.start_play import check_start_play
from firstcourse.verify.start_reasons import check_start_reasons
from firstcourse.verify.starts import check_starts
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.thin_pieces import check_thin_pieces
from firstcourse.verify.tiles import check_tiles, check_tiles_made
from firstcourse.verify.verdict import Objection, Verdict
from firstcourse.verify.wall_feet import check_wall_feet
from firstcourse.verify.windows import check_windows

_CHECKS = (
    check_given,
    check_standing,
    check_gaps_as_built,
    check_in_room,
    check_met,
    check_doors,
    check_coverage,
    check_fills,
    check_seams,
    check_board_findings,
    check_fasteners,
    check_edges,
    check_cutting,
    check_kept_edges,
    check_counts,
    check_calendar,
    check_bounds,
    check_tiles,
    check_thin_pieces,
    check_tiles_made,
    check_cut_lines,
    check_windows,
    check_return_boards,
    check_starts,
    check_laid_starts,
    check_start_play,
    check_start_reasons,
    check_soft_joints,
    check_soft_reasons,
    check_falls,
    check_falls_given,
    check_falls_told,
    check_fall_findings,
    check_bans,
    check_layers,
    check_floor_heights,
    check_benches,
    check_wall_feet,
    check_membranes,
    check_quantities,
    check_drawn,
    check_marks,
    check_frames,
    check_frame_given,
    check_floor_loads,
    check_load_masses,
    check_judged,
    check_formulas,
    check_rule_notes,
    check_findings,
)

READING = "reading"
"""What `objecting` names where a plan's form is wrong."""

Check = Callable[[Document], Iterator[Objection]]
_BROKEN = (ArithmeticError, AttributeError, LookupError, TypeError, ValueError, ShapelyError)
"""What a proof may break on where a plan's parts do not fit together."""
_BOARDED: frozenset[Check] = frozenset((check_coverage, check_fills, check_seams, check_fasteners, check_edges))
"""These look at the boards of one surface at a time, beside them at tape, rules, and what findings say of it."""
_LAID: frozenset[Check] = frozenset((check_tiles, check_thin_pieces, check_starts, check_laid_starts))
"""These look at the tiles of one surface at a time, whatever each is cut from."""


def verify_text(plan_json: str, *, do: Do = at_once) -> Verdict:
    """Prove a plan from the text of its plan.json.

    Args:
        plan_json: The whole document; it is believed in nothing.
        do: How what depends on one surface alone is done: who proves a plan after each change need not prove the
            same surface twice.

    Returns:
        Every objection found; what is not JSON, or holds NaN or a name twice, is an objection too.
    """
    try:
        document = json.loads(plan_json, parse_constant=_refuse_constant, object_pairs_hook=_once)
    except FieldError as error:
        return Verdict((Objection("VER-001", error.where, error.message),))
    except (ValueError, RecursionError) as error:
        return Verdict((Objection("VER-001", "plan", f"is not JSON that can be read: {error}"),))
    return verify(document, do=do)


def verify(document: Any, *, do: Do = at_once) -> Verdict:
    """Prove a plan given as JSON values.

    Args:
        document: The plan as `json.loads` gives it, lengths in millimetres.
        do: As for `verify_text`.

    Returns:
        Every objection found. A plan whose form is wrong gets that one objection and is not read further.
    """
    try:
        plan = read_document(document, do=do)
    except FieldError as error:
        return Verdict((Objection("VER-001", error.where, error.message),))
    try:
        objections = tuple(_objections(plan, do))
    except FieldError as error:
        # What was given is read where it is needed.
        return Verdict((Objection("VER-001", error.where, error.message),))
    except RuleNotFoundError as error:
        objections = (Objection("VER-904", error.rule_id, "is asked for, and the practice has no such rule"),)
    return Verdict(
        objections,
        changes=plan.rules.changes(),
        stops=tuple(f"{said.code} {said.place}" for said in plan.findings if said.severity == "stop"),
        same_way=tuple(_same_way(plan)),
        tongue=plan.source.part("job").text("tongue", "en"),
    )


def objecting(document: Any, *, do: Do = at_once, first: Sequence[str] = ()) -> str | None:
    """Which check objects to a plan, where one objection is enough: no further check is made then.

    Args:
        document: As for `verify`.
        do: As for `verify_text`.
        first: Names of checks to make before the others, in this order; what is none of them is passed over.

    Returns:
        The name of the check that objects, "reading" where the form is wrong, or none where the plan is proved.
    """
    try:
        plan = read_document(document, do=do)
    except FieldError:
        return READING
    alone = _surfaces_alone(plan)
    named = {check.__name__: check for check in _CHECKS}
    for check in dict.fromkeys([*(named[name] for name in first if name in named), *_CHECKS]):
        try:
            if next(_said(check, plan, alone, do), None) is not None:
                return check.__name__
        except (FieldError, RuleNotFoundError):
            return check.__name__
    return None


def _same_way(plan: Document) -> Iterator[str]:
    """What of a plan is recomputed the same way as it was planned, see `Verdict`."""
    if plan.frames:
        yield "judgement"
    if any(said.code == "SUR-106" for said in plan.findings):
        yield "corners"
    if any(area.starts for surface in plan.surfaces for area in surface.tiled):
        yield "play"


def _objections(plan: Document, do: Do) -> Iterator[Objection]:
    alone = _surfaces_alone(plan)
    for check in _CHECKS:
        yield from _said(check, plan, alone, do)


def _surfaces_alone(plan: Document) -> tuple[list[Document], list[Document]]:
    """Each surface as its boards need it, and as its tiles do."""
    boarded = [_alone(_without_tile(surface), plan) for surface in plan.surfaces]
    return boarded, [_alone(_as_laid(surface), plan) for surface in plan.surfaces]


def _said(
    check: Check, plan: Document, alone: tuple[list[Document], list[Document]], do: Do
) -> Iterator[Objection]:
    if check in _BOARDED or check in _LAID:
        for one in alone[0] if check in _BOARDED else alone[1]:
            yield from do(_checked, check, one, plan.rules)
    else:
        yield from _proved(check, plan)


def _checked(check: Check, plan: Document, rules: RuleSet) -> tuple[Objection, ...]:
    """What one check says of one surface; the rules stand apart, so that it is told which were asked for."""
    return tuple(_proved(check, replace(plan, rules=rules)))


def _proved(check: Check, plan: Document) -> Iterator[Objection]:
    """What a check says; one that breaks on a plan that hangs together nowhere has not proved it."""
    try:
        yield from check(plan)
    except _BROKEN as error:
        yield Objection(
            "VER-005", check.__name__, f"cannot be proved of this plan: {type(error).__name__} {error}"
        )


def _without_tile(surface: Surface) -> Surface:
    return replace(surface, tiles=(), tiled=(), soft_joints=(), marks=())


def _as_laid(surface: Surface) -> Surface:
    """Without what its cut tiles are cut from, which they share with other surfaces."""
    tiles = tuple(replace(tile, source="", cut=(), fit=False, mark="") for tile in surface.tiles)
    return replace(surface, tiles=tiles, marks=())


def _alone(surface: Surface, plan: Document) -> Document:
    """One surface as if the plan had no other: nothing is there that does not speak of it."""
    laid = {name for area in surface.tiled for name in area.tiles}
    parts = {board.id for board in surface.boards}
    return Document(
        tape=plan.tape,
        rules=plan.rules,
        surfaces=(surface,),
        pieces=(),
        sheets=(),
        stock={},
        tile_stock={name: tile for name, tile in plan.tile_stock.items() if name in laid},
        counts=(),
        findings=tuple(said for said in plan.findings if any(surface.id in at or at in parts for at in said.at)),
        shopping=Shopping(),
        frames=(),
        bounds=(),
    )


def _refuse_constant(name: str) -> Any:
    raise FieldError("plan", f"holds {name}, which is no number")


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise FieldError(key, "is given twice in one object")
        found[key] = value
    return found
