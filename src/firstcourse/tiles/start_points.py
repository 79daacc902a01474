"""A start as the plan keeps it: what it brings, in whole ticks."""

from firstcourse.plan import EdgeCut, StartPoint
from firstcourse.tiles.model import Start
from firstcourse.units import ticks_from_mm, ticks_from_mm_floor


def start_point(start: Start) -> StartPoint:
    """Keep a start; widths are rounded down, so that none is told wider than it is."""
    facts = start.facts
    return StartPoint(
        origin=(ticks_from_mm(start.shift[0]), ticks_from_mm(start.shift[1])),
        smallest_cut=ticks_from_mm_floor(start.smallest_cut),
        cut_tiles=start.cut_tiles,
        slack=ticks_from_mm_floor(max(start.slack, 0.0)),
        why=start.why,
        sliver=start.sliver,
        under_half=facts.short > 0,
        narrowest_at=start.poorest,
        edges=tuple(
            EdgeCut(
                at=one.side,
                width=None if one.width is None else ticks_from_mm_floor(one.width),
                share=round(one.share, 6),
                weight=one.weight,
            )
            for one in facts.along
        ),
        uneven=None if facts.uneven is None else round(facts.uneven, 6),
        wanted=facts.num_wanted,
        on_joints=facts.on_joints,
        unsure=facts.unsure,
        may_sliver=facts.may_sliver,
        sure_cut=ticks_from_mm_floor(max(start.sure_cut, 0.0)),
    )
