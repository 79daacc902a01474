"""Make the README's pictures from the first example: `.venv/bin/python docs/pictures.py`."""

from pathlib import Path

import firstcourse
from firstcourse.drawings import draw_sheet, draw_surface, draw_tiling, to_svg

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "docs" / "pictures"


def main() -> None:
    plan = firstcourse.open(ROOT / "examples" / "tub-bathroom" / "job.yaml").plan().plan
    FOLDER.mkdir(exist_ok=True)
    for name, surface in (("floor", plan.surfaces[0]), ("wall", plan.surfaces[1])):
        (FOLDER / f"{name}.svg").write_text(to_svg(draw_surface(plan, surface)), encoding="utf-8")
    (FOLDER / "wall-tile.svg").write_text(to_svg(draw_tiling(plan, plan.surfaces[1])), encoding="utf-8")
    sheet = max(plan.sheets, key=lambda one: len(one.cuts))
    (FOLDER / "ticket.svg").write_text(to_svg(draw_sheet(plan, sheet)), encoding="utf-8")


if __name__ == "__main__":
    main()
