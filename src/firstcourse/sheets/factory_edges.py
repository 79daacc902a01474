"""Where a cut would take off too little to be snapped, gaps at walls give way.

The board keeps the sheet's edge and comes nearer to the wall, or is cut back farther from it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from firstcourse.boards import SurfaceLayout, end_gaps, nearest_mark, resized
from firstcourse.cutting import CutLine, CutPart, CutSheet
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds, moved
from firstcourse.plan import Board, Piece, Surface
from firstcourse.rules import RuleSet
from firstcourse.sheets.seam_shifts import beside, thin_strip
from firstcourse.units import Tape, ceil_to
from firstcourse.values import least as at_least
from firstcourse.values import length, most


class Kept(NamedTuple):
    """Layouts and sheets without the thin strips that gaps at walls take up."""

    layouts: tuple[SurfaceLayout, ...]
    sheets: tuple[CutSheet, ...]


def factory_edges_kept(
    surfaces: Sequence[Surface],
    layouts: Sequence[SurfaceLayout],
    sheets: Sequence[CutSheet],
    rules: RuleSet,
    tape: Tape,
) -> Kept:
    """Resize boards beside strips too thin to snap, as far as the gaps at walls allow.

    They take up the strip and keep the sheet's edge; where that cannot be, they lose what is wanting to snap it.
    Every board beside a strip takes its part. The sheets, their number and all other cuts stay.

    Args:
        surfaces: All surfaces, with what stands in them.
        layouts: Theirs, in the same order.
        sheets: What their pieces are cut from.
        rules: For `boards.cut.least` and the gaps.
        tape: Tape whose graduation edges lie on.
    """
    held = {layout.surface_id: layout for layout in layouts}
    by_id = {surface.id: surface for surface in surfaces}
    owner = {piece.id: layout.surface_id for layout in layouts for piece in layout.pieces}
    least = rules.ticks("boards.cut.least")
    made = []
    for sheet in sheets:
        tried: set[tuple[int, int]] = set()
        while (found := next(((c, s) for c, s in _thin(sheet, least) if s.at not in tried), None)) is not None:
            cut, strip = found
            tried.add(strip.at)
            wide = strip.size[_across(cut)]
            if (changed := _taken_up(sheet, cut, strip, wide, by_id, held, owner, rules, tape)) is not None:
                sheet = _without(sheet, cut, strip)
            else:
                more = ceil_to(least - wide, tape.graduation)
                if not _can_lose(sheet, cut, strip, more, least):
                    continue
                changed = _taken_up(sheet, cut, strip, -more, by_id, held, owner, rules, tape)
                if changed is None:
                    continue
                sheet = _cut_back(sheet, cut, strip, more)
                tried.add(next(part.at for part in sheet.parts if part.name == strip.name))
            held |= changed
        made.append(sheet)
    done = []
    for old in layouts:
        new = held[old.surface_id]
        if new is not old:
            told = _told(by_id[old.surface_id], old, new, rules, tape.graduation)
            new = new.model_copy(update={"findings": (*new.findings, *told)})
        done.append(new)
    return Kept(tuple(done), tuple(made))


def _across(cut: CutLine) -> int:
    """The axis of the sheet that a cut divides."""
    return 1 if cut.along == "x" else 0


def _thin(sheet: CutSheet, least: int) -> Iterator[tuple[CutLine, CutPart]]:
    """The cuts whose right or upper part is left over and narrower than `least` [ticks], with that part."""
    for cut in sheet.cuts:
        strip = thin_strip(sheet, cut, least)
        if strip is not None:
            yield cut, strip


def _can_lose(sheet: CutSheet, cut: CutLine, strip: CutPart, by: int, least: int) -> bool:
    """Whether all that ends at a cut can end so much sooner: what is left over stays wide enough to be snapped."""
    axis = _across(cut)
    return all(part.blank is not None or part.size[axis] - by >= least for part in beside(sheet, cut, strip))


def _taken_up(
    sheet: CutSheet,
    cut: CutLine,
    strip: CutPart,
    by: int,
    surfaces: dict[str, Surface],
    layouts: dict[str, SurfaceLayout],
    owner: dict[str, str],
    rules: RuleSet,
    tape: Tape,
) -> dict[str, SurfaceLayout] | None:
    """The layouts with every board beside a strip longer by so much, None where one cannot be."""
    axis = _across(cut)
    changed: dict[str, SurfaceLayout] = {}
    for part in beside(sheet, cut, strip):
        if part.blank is None:
            continue
        name = owner[part.blank]
        layout = _resized(
            surfaces[name], changed.get(name, layouts[name]), part.blank, axis ^ part.turned, by, rules, tape
        )
        if layout is None:
            return None
        changed[name] = layout
    return changed


def _resized(
    surface: Surface, layout: SurfaceLayout, piece_id: str, axis: int, by: int, rules: RuleSet, tape: Tape
) -> SurfaceLayout | None:
    number = next(n for n, board in enumerate(layout.boards) if board.piece == piece_id)
    old = layout.boards[number]
    if any(old.id in finding.at for finding in layout.findings):
        # What is told of it was measured as it is.
        return None
    supports = (*surface.supports, *layout.added_supports)
    board = resized(surface, layout.boards, supports, number, axis, by, rules, tape.graduation)
    if board is None:
        return None
    boards = (*layout.boards[:number], board, *layout.boards[number + 1 :])
    pieces = tuple(_cut_as(board, piece, tape) if piece.id == piece_id else piece for piece in layout.pieces)
    if any(new.blank[1 - axis] != was.blank[1 - axis] for new, was in zip(pieces, layout.pieces, strict=True)):
        # Beside a side askew to the axes a longer board is wider as well, and its sheet is cut to the old width.
        return None
    return layout.model_copy(update={"boards": boards, "pieces": pieces})


def _cut_as(board: Board, piece: Piece, tape: Tape) -> Piece:
    left, lower, right, upper = bounds(board.outline)
    return piece.model_copy(
        update={
            "blank": (ceil_to(right - left, tape.graduation), ceil_to(upper - lower, tape.graduation)),
            "outline": moved(board.outline, -left, -lower),
            "holes": tuple(moved(hole, -left, -lower) for hole in board.holes),
        }
    )


def _without(sheet: CutSheet, cut: CutLine, strip: CutPart) -> CutSheet:
    """The sheet without a cut, what lies beside its strip wider by it; parts are named by the cuts left."""
    axis, (kept, gone) = _across(cut), cut.gives
    sheet = _longer(sheet, cut, strip, strip.size[axis])

    def named(name: str) -> str:
        return cut.of + name[len(kept) :] if name.startswith(kept) else name

    return replace(
        sheet,
        cuts=tuple(
            replace(other, of=named(other.of), gives=(named(other.gives[0]), named(other.gives[1])))
            for other in sheet.cuts
            if other is not cut
        ),
        parts=tuple(replace(part, name=named(part.name)) for part in sheet.parts if part.name != gone),
    )


def _cut_back(sheet: CutSheet, cut: CutLine, strip: CutPart, by: int) -> CutSheet:
    """The sheet with a cut made sooner, the strip wider and what lies beside it narrower."""
    axis = _across(cut)
    sheet = _longer(sheet, cut, strip, -by)

    def moved(pair: tuple[int, int], more: int) -> tuple[int, int]:
        return (pair[0] + more, pair[1]) if axis == 0 else (pair[0], pair[1] + more)

    return replace(
        sheet,
        cuts=tuple(replace(other, at=other.at - by) if other is cut else other for other in sheet.cuts),
        parts=tuple(
            replace(part, at=moved(part.at, -by), size=moved(part.size, by)) if part.name == strip.name else part
            for part in sheet.parts
        ),
    )


def _longer(sheet: CutSheet, cut: CutLine, strip: CutPart, by: int) -> CutSheet:
    """The sheet with the parts that end at a cut longer by so much, negative where shorter."""
    axis = _across(cut)
    ends_there = {part.name for part in beside(sheet, cut, strip)}

    def size(part: CutPart) -> tuple[int, int]:
        wide, high = part.size
        if part.name not in ends_there:
            return wide, high
        return (wide + by, high) if axis == 0 else (wide, high + by)

    return replace(sheet, parts=tuple(replace(part, size=size(part)) for part in sheet.parts))


def _told(surface: Surface, old: SurfaceLayout, new: SurfaceLayout, rules: RuleSet, step: int) -> list[Finding]:
    """One finding for each board with less or more gap than usual, so that nobody cuts it back or fills it."""
    usual = rules.ticks("boards.gap.perimeter")
    lowest, highest = (rules.ticks(f"boards.gap.perimeter.{end}") for end in ("least", "most"))
    found = []
    for before, board in zip(old.boards, new.boards, strict=True):
        if board.outline == before.outline:
            continue
        gaps = end_gaps(surface, board.outline, highest)
        if gaps and nearest_mark(gaps[0], step) < nearest_mark(usual, step):
            found.append(
                rules.entry("boards.gap.perimeter.least").found(
                    "BRD-207",
                    Severity.NOTE,
                    board.id,
                    measured=length(nearest_mark(gaps[0], step)),
                    limit=at_least(length(lowest)),
                    remedies=("cut_nothing",),
                    usual=length(usual),
                )
            )
        # An edge may fall back from the usual gap to the last tape mark, and may have stood farther off before.
        cut_back = set(gaps) - set(end_gaps(surface, before.outline, highest))
        if any(gap > usual + step for gap in cut_back):
            found.append(
                rules.entry("boards.gap.perimeter.most").found(
                    "BRD-208",
                    Severity.NOTE,
                    board.id,
                    measured=length(nearest_mark(gaps[-1], step)),
                    limit=most(length(highest)),
                    remedies=("wider_gap",),
                    usual=length(usual),
                )
            )
    return found
