"""Measures with their unit."""

import pytest

from firstcourse.units import (
    EMISSION,
    INERTIA,
    LOAD,
    SHEET_STEEL,
    STIFFNESS,
    WARMTH,
    WEIGHT,
    MeasureError,
    MeasureKind,
)


@pytest.mark.parametrize(
    ("kind", "text", "wanted"),
    [
        (WEIGHT, "0 kg", 0),
        (WEIGHT, "100kg", 220.462262),
        (LOAD, "1 kN", 224.808943),
        (STIFFNESS, "2.0E8 lb·in²", 2e8),
        (STIFFNESS, "1 N m2", 348.4546),
        (STIFFNESS, "1000 kN-mm^2", 348.4546),
        (INERTIA, "416231 mm4", 1.0),
        (SHEET_STEEL, "0.033 in", 33),
        (EMISSION, "4.88243 g/m²", 1.0),
        (WARMTH, "50 °C", 90),
    ],
)
def test_reads(kind: MeasureKind, text: str, wanted: float) -> None:
    assert kind.read(text) == pytest.approx(wanted, rel=1e-5)


@pytest.mark.parametrize("text", ["", "kg", "1 2 kg", "-3 kg", "1,5 kg", "nan kg", "1 stone", "1" * 60, "1e99 kg"])
def test_refuses(text: str) -> None:
    with pytest.raises(MeasureError):
        WEIGHT.read(text)
