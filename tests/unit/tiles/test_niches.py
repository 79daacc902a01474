"""A niche is moved to the nearest course joints, and one that meets them is left alone."""

import pytest

from firstcourse.geometry.polygon import rectangle
from firstcourse.plan import Opening, OpeningKind, Surface, SurfaceKind
from firstcourse.tiles.niches import niche_findings
from firstcourse.units import Tape, mm
from said import all_said

PITCH, JOINT, LEVEL = 100.0, 2.0, 30.0
FIELDS = ((0.0, LEVEL),)
"""Where each field begins, and a course of it."""


def _wall(bottom: float, top: float, kind: OpeningKind = OpeningKind.NICHE) -> Surface:
    niche = Opening(id="niche", kind=kind, outline=rectangle(mm(400), mm(bottom), mm(760), mm(top)))
    outline = rectangle(0, 0, mm(1500), mm(2000))
    return Surface(id="bath/wall/A-B", room="bath", kind=SurfaceKind.WALL, outline=outline, openings=(niche,))


def test_it_is_told_where_the_niche_meets_the_courses():
    (finding,) = all_said(niche_findings(_wall(1200, 1800), PITCH, JOINT, FIELDS, Tape.MM), Tape.MM)
    assert finding.code == "TIL-122"
    # Courses stand at 30, 130, ... mm; the sill lies a joint below one of them, on the course under it.
    assert "sill at 1228 mm" in finding.remedy
    assert "602 mm high: 6 courses" in finding.remedy


@pytest.mark.parametrize(("bottom", "top"), [(1228, 1830), (1228.4, 1829.6)])
def test_a_niche_on_the_joints_is_left_alone(bottom: float, top: float):
    assert not list(niche_findings(_wall(bottom, top), PITCH, JOINT, FIELDS, Tape.MM))


def test_a_low_niche_keeps_one_course_at_least():
    (finding,) = all_said(niche_findings(_wall(1228, 1240), PITCH, JOINT, FIELDS, Tape.MM), Tape.MM)
    assert "102 mm high: 1 course." in finding.remedy


def test_windows_are_where_they_are():
    assert not list(niche_findings(_wall(1200, 1800, OpeningKind.WINDOW), PITCH, JOINT, FIELDS, Tape.MM))


def test_courses_above_a_band_count_from_where_they_lie():
    fields = (*FIELDS, (1000.0, LEVEL + 40))
    assert not list(niche_findings(_wall(1268, 1870), PITCH, JOINT, fields, Tape.MM))


def test_a_niche_in_the_bands_at_the_foot_counts_from_the_first_field():
    assert not list(niche_findings(_wall(1228, 1830), PITCH, JOINT, ((1500.0, LEVEL),), Tape.MM))
    assert not list(niche_findings(_wall(1200, 1800), PITCH, JOINT, (), Tape.MM))
