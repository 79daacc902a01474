"""Movement joints as UK trade advice tells BS 5385, and of AS 3958 from memory."""

import datetime

from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.tiles.movement import field_spacing
from firstcourse.units import mm, to_mm

UK, AU = (load_rules(datetime.date(2026, 11, 25), practice) for practice in ("uk", "au"))


def test_uk_spacing() -> None:
    """BS 5385-3:2024 external floors 3 to 5 m; a trade association's guide: walls 3 to 4.5 m, floors 8 to 10 m."""
    assert UK.ticks("tile.movement.spacing_exterior") == mm(5000)
    assert UK.ticks("tile.movement.spacing_exterior_close") == mm(3000)
    assert field_spacing(SurfaceKind.WALL, UK, exposure="dry").limit == mm(4500)
    assert field_spacing(SurfaceKind.WALL, UK, exposure="moist").limit == mm(3000)
    assert field_spacing(SurfaceKind.FLOOR, UK, exposure="dry").limit == mm(10000)
    assert "memory" not in {e.read for e in UK.entries.values() if e.id.startswith("tile.movement.spacing_")}


def test_uk_heated_or_wet_floor_keeps_area_and_side() -> None:
    """Heated floors: no field over 40 m² and no side over 8 m, as a supplier tells the association's advice."""
    limit = to_mm(field_spacing(SurfaceKind.FLOOR, UK, exposure="moist").limit)
    assert limit <= 8000 and 39e6 <= limit**2 <= 40e6


def test_au_spacing() -> None:
    """AS 3958: internal 4.5 m, external about 3 m (memory)."""
    assert field_spacing(SurfaceKind.FLOOR, AU, exposure="dry").limit == mm(4500)
    assert field_spacing(SurfaceKind.WALL, AU, exposure="dry").limit == mm(4500)
    assert field_spacing(SurfaceKind.FLOOR, AU, exposure="exterior").limit == mm(3000)
    assert AU.entry("tile.movement.spacing_floor").read == "memory"
