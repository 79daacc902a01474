"""Movement joints of BS 5385 and AS 3958: external floors as a trade association tells, the rest from memory."""

import datetime

from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.tiling.movement import field_spacing
from firstcourse.units import mm

UK, AU = (load_rules(datetime.date(2026, 11, 25), practice) for practice in ("uk", "au"))


def test_uk_spacing() -> None:
    """BS 5385-3:2024 external floors 3 to 5 m (read); walls 3 to 4.5 m and rigid floors 10 m (memory)."""
    assert UK.ticks("tile.movement.spacing_exterior") == mm(5000)
    assert UK.ticks("tile.movement.spacing_exterior_close") == mm(3000)
    assert UK.entry("tile.movement.spacing_exterior").read != "memory"
    assert field_spacing(SurfaceKind.WALL, UK, exposure="dry").limit == mm(4500)
    assert field_spacing(SurfaceKind.WALL, UK, exposure="moist").limit == mm(3000)
    assert field_spacing(SurfaceKind.FLOOR, UK, exposure="dry").limit == mm(10000)
    assert UK.entry("tile.movement.spacing_floor").read == "memory"


def test_au_spacing() -> None:
    """AS 3958: internal 4.5 m, external about 3 m (memory)."""
    assert field_spacing(SurfaceKind.FLOOR, AU, exposure="dry").limit == mm(4500)
    assert field_spacing(SurfaceKind.WALL, AU, exposure="dry").limit == mm(4500)
    assert field_spacing(SurfaceKind.FLOOR, AU, exposure="exterior").limit == mm(3000)
    assert AU.entry("tile.movement.spacing_floor").read == "memory"
