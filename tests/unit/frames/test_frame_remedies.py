import datetime
from dataclasses import replace

from firstcourse.frames import judge
from firstcourse.frames.ceilings import CeilingInput, check_ceiling
from firstcourse.frames.frame_remedies import ceiling_remedies, stud_remedies
from firstcourse.frames.judge import JudgeInput, WallInput
from firstcourse.frames.lumber import lumber
from firstcourse.frames.walls import SteelStud, Studs, check_studs
from firstcourse.layers import Layer
from firstcourse.rules import load_rules
from said import all_said

RULES = load_rules(datetime.date(2026, 11, 25))
TALL = Studs(height_in=170, spacing_in=16, wood=lumber(RULES, "2x4", "spf", "no2"))
THIN = Studs(height_in=96, spacing_in=24, steel=SteelStud(depth_in=3.625, mils=18))
CEILING = CeilingInput(
    ref="bath/ceiling",
    span_in=150,
    spacing_in=16,
    size="2x6",
    species="spf",
    grade="no2",
    layers=(Layer(name="tile", thickness_in=0.5, density_kg_m3=2350),),
)


def names(options, *, passing):
    return {option.names for option in options if option.passes is passing}


def test_tall_studs_pass_when_deeper_or_closer():
    options = stud_remedies(RULES, TALL)
    assert {("added_studs",), ("deeper_studs",)} <= names(options, passing=True)
    deeper = next(option for option in options if option.names == ("deeper_studs",))
    assert deeper.height_in == 2.0
    assert options[0].names == ("added_studs",)


def test_thin_steel_needs_thicker_steel_and_closer_studs_together():
    options = stud_remedies(RULES, THIN)
    assert names(options, passing=True) == {("added_studs", "thicker_steel")}
    assert ("deeper_studs",) in names(options, passing=False)


def test_a_ceiling_has_options_that_were_checked_again():
    assert not all(check.holds for check in check_ceiling(RULES, CEILING))
    options = ceiling_remedies(RULES, CEILING)
    assert names(options, passing=True)
    for option in options:
        assert option.passes is all(check.holds for check in option.checks)


def test_nothing_is_offered_where_nothing_fails():
    assert stud_remedies(RULES, replace(TALL, height_in=90)) == ()
    assert ceiling_remedies(RULES, replace(CEILING, span_in=60)) == ()


def test_a_makers_section_is_not_swapped_for_another():
    known = replace(THIN, steel=SteelStud(depth_in=3.625, mils=18, second_moment_in4=0.2))
    assert {("deeper_studs",), ("thicker_steel",)}.isdisjoint({o.names for o in stud_remedies(RULES, known)})
    assert not all(check.holds for check in check_studs(RULES, known))


def test_the_judgement_ranks_them_by_place():
    done = judge(
        JudgeInput(walls=(WallInput(ref="bath/wall/A-B", studs=TALL),), ceilings=(CEILING,)),
        RULES,
    )
    assert [where for where, _options in done.remedies] == ["bath/wall/A-B", "bath/ceiling"]
    advice = [finding.remedy for finding in all_said(done.findings) if finding.where == "bath: wall A-B"]
    assert advice and all("whole frame passes with: Add a stud" in text for text in advice)
