"""Every step of a calculation sheet, worked out again from its own printed numbers, as one would by hand."""

import ast
import datetime
import itertools
import math
import operator
import re
from dataclasses import replace

import pytest

from firstcourse.frames import judge
from firstcourse.frames.ceilings import Above, CeilingInput
from firstcourse.frames.floors import Finish, FloorInput
from firstcourse.frames.joists import PointLoad, SisterPart
from firstcourse.frames.judge import JudgeInput, WallInput
from firstcourse.frames.lumber import lumber
from firstcourse.frames.notches import Cut
from firstcourse.frames.panels import Panel
from firstcourse.frames.walls import SteelStud, Studs
from firstcourse.layers import Layer
from firstcourse.rules import load_rules
from said import worked

RULES = load_rules(datetime.date(2026, 11, 25))
FLOOR = FloorInput(
    ref="bath/floor",
    span_in=150,
    spacing_in=16,
    size="2x8",
    species="hf",
    grade="no2",
    panel=Panel(layers=("23/32", "19/32")),
    layers=(Layer(name="tile", thickness_in=0.375, density_kg_m3=2350),),
    bearing_in=3,
    points=(PointLoad(load_lb=250, at_in=60), PointLoad(load_lb=120, at_in=100)),
)
FLOORS = {
    "simple span": FLOOR,
    "glued panels": replace(FLOOR, panel=Panel(layers=("23/32", "19/32"), glued_and_screwed=True)),
    "run of three": replace(FLOOR, run_in=(150.0, 120.0, 90.0)),
    "run not known": replace(FLOOR, continuous=True),
    "part sister": replace(FLOOR, sister=SisterPart(share=0.7)),
    "stone on EI": replace(FLOOR, size=None, stiffness=2.3e8, plies=2, finish=Finish.STONE, bearing_in=None),
    "cut": replace(FLOOR, cuts=(Cut(kind="notch", size_in=1, at_in=30, length_in=2),)),
}
WALLS = {
    "wood": Studs(height_in=96, spacing_in=16, wood=lumber(RULES, "2x4", "spf", "no2")),
    "steel": Studs(height_in=108, spacing_in=16, steel=SteelStud(depth_in=3.625, mils=43)),
}
CEILING = CeilingInput(
    ref="bath/ceiling",
    span_in=120,
    spacing_in=16,
    size="2x6",
    above=Above.ATTIC,
    layers=FLOOR.layers,
)

_UNITS = r"lb/in|lb·in²|lb·in|lb|psi|psf|in⁴|in³|in"
_RAISED = {"²": "**2", "³": "**3", "⁴": "**4"}
_DOES = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}


def value_of(text: str) -> float | None:
    """A printed expression such as `5 × 4.444 × 150⁴ / 2.5×10⁶`; None where it holds symbols or words."""
    plain = re.sub(r"(?<=\d),(?=\d{3})", "", text).replace("×10⁶", "e6")
    plain = re.sub(rf"(?<=\d)\s*(?:{_UNITS})(?![\w·])", "", plain).replace("×", "*")
    for sign, power in _RAISED.items():
        plain = plain.replace(sign, power)
    if not re.fullmatch(r"[-+*/(). \de]+", plain.strip()) or not re.search(r"\d", plain):
        return None
    try:
        return _evaluated(ast.parse(plain.strip(), mode="eval").body)
    except SyntaxError:
        return None


def _evaluated(node: ast.expr) -> float:
    if isinstance(node, ast.BinOp):
        return float(_DOES[type(node.op)](_evaluated(node.left), _evaluated(node.right)))
    if isinstance(node, ast.UnaryOp):
        return -_evaluated(node.operand)
    assert isinstance(node, ast.Constant)
    return float(node.value)


def redone(done) -> int:
    """How many equations were worked out again."""
    count = 0
    for working in map(worked, done.workings):
        for step in working.steps:
            for clause in re.split(r"; |, plus |: V|: Δ|: R|: (?=\d)|lb: ", step):
                parts = [(part, value) for part in clause.split(" = ") if (value := value_of(part)) is not None]
                for (_, left), (printed, right) in itertools.pairwise(parts):
                    # Half of the last printed digit, and what rounded factors lose in their product.
                    decimals = re.search(r"\d\.(\d+)", printed)
                    half = 0.51 * 10 ** -(len(decimals[1]) if decimals else 0)
                    assert left == pytest.approx(right, rel=3e-3, abs=half), f"{working.title}: {step}"
                    count += 1
    return count


@pytest.mark.parametrize("floor", FLOORS.values(), ids=FLOORS.keys())
def test_floor_steps_come_out(floor):
    assert redone(judge(JudgeInput(floors=(floor,)), RULES)) >= 12


@pytest.mark.parametrize("studs", WALLS.values(), ids=WALLS.keys())
def test_wall_steps_come_out(studs):
    assert redone(judge(JudgeInput(walls=(WallInput(ref="bath/wall/A-B", studs=studs),)), RULES)) >= 6


def test_ceiling_steps_come_out():
    assert redone(judge(JudgeInput(ceilings=(CEILING,)), RULES)) >= 14


def test_the_reader_of_steps_reads():
    assert value_of("5 × 4.444 × 150⁴ / (384 × 61.933×10⁶)") == pytest.approx(0.4730, abs=1e-4)
    assert value_of("17,817 lb·in") == 17817 and value_of("M / S") is None
    assert value_of("1.5 × 7.25² / 6") == pytest.approx(13.14, abs=0.005)
    assert math.isclose(value_of("40 psf × 16 in / 144") or 0, 4.4444, rel_tol=1e-4)
