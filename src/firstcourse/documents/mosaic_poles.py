"""Story poles of mosaic: chips are laid by the sheet, so sheets are what is marked."""

from dataclasses import replace

from firstcourse.drawings.mosaic import mosaics
from firstcourse.plan import Plan, Surface
from firstcourse.tiling.story_pole import PoleMark, StoryPole


def by_sheets(pole: StoryPole, surface: Surface, plan: Plan) -> StoryPole:
    """The pole with a mark for each sheet of mosaic in place of each chip; any other pole as it is.

    Args:
        pole: Of one surface.
        surface: Which it is of, with its start and its lines.
        plan: For the tiles that come on sheets.
    """
    axis = 1 if pole.along == "v" else 0
    area = surface.tiled[0]
    stock = mosaics(plan).get(area.tiles[0])
    lines = [line.line for line in area.lines]
    control = next((line[0][axis] for line in lines if line[0][axis] == line[1][axis]), None)
    alone = len(surface.tiled) == 1 and len(area.tiles) == 1
    if not alone or stock is None or stock.sheet is None or area.pattern != "stacked" or area.angle:
        return pole
    if control is None or pole.control is None:
        return pole
    foot = control - pole.control
    pitch = stock.size[axis] + area.joint
    chips = [mark for mark in pole.marks if mark.kind == "tile"]
    kept: list[PoleMark] = []
    for number, mark in enumerate(chips):
        place = round((foot + mark.at - area.starts[0].origin[axis]) / pitch)
        is_end = number == len(chips) - 1
        if number == 0 or is_end or place % stock.sheet[axis] == 0:
            sheet = len(kept) + (0 if is_end else 1)
            cut = ", cut" if mark.name.endswith(", cut") else ""
            kept.append(replace(mark, name=f"end of sheet {sheet}" if is_end else f"sheet {sheet}{cut}"))
    named = {mark.at: mark for mark in kept}
    marks = (mark if mark.kind != "tile" else named.get(mark.at) for mark in pole.marks)
    return replace(pole, marks=tuple(mark for mark in marks if mark is not None))
