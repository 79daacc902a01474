"""What each validation test is, so that nothing is counted as more than it is.

- `first_hand`, `quoted`, `memory`: the program's own result is held against a printed one, read so.
- `copied`: a value of the rule book is held against the text it was copied from: no result of the program.
- `by_hand`: the expected number was computed by hand for this project; right, but not published.

Run as a program it prints how many cases there are of each kind, as `pytest` collects them.
"""

import io
import sys
from collections import Counter
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

import pytest

PUBLISHED = ("first_hand", "quoted", "memory")
KINDS = (*PUBLISHED, "copied", "by_hand")

OF_FILE = {
    "test_access_thresholds": "quoted",
    "test_ansi_a108_02_flatness": "quoted",
    "test_ansi_a108_02_joints": "quoted",
    "test_ansi_a108_02_layout": "by_hand",
    "test_ansi_a108_11_backer_units": "copied",
    "test_ansi_a108_5_contact": "copied",
    "test_asce_7_dead_loads": "quoted",
    "test_backers_and_tile_classes": "quoted",
    "test_beam_diagrams_continuous": "quoted",
    "test_beam_formulas": "by_hand",
    "test_calendar_by_hand": "by_hand",
    "test_decks_by_joist_spacing": "copied",
    "test_falls_worked_examples": "by_hand",
    "test_grout": "by_hand",
    "test_handbook_limits_under_tile": "quoted",
    "test_irc_2012_framing_chart": "quoted",
    "test_irc_r301_loads_and_limits": "copied",
    "test_irc_r502_3_1_2_floor_remembered": "memory",
    "test_irc_r502_3_1_2_floor_spf": "first_hand",
    "test_irc_r502_8_1_cuts": "quoted",
    "test_irc_r802_5_1_2_ceiling": "first_hand",
    "test_joist_worked_examples": "by_hand",
    "test_layer_masses": "by_hand",
    "test_nds_supplement_2018": "copied",
    "test_nhbc_9_1_7_tiles": "first_hand",
    "test_niosh_94_110_lifting": "quoted",
    "test_nsw_12_9_tiles": "first_hand",
    "test_ntca_panel_under_300_lb": "by_hand",
    "test_sealant_joint_rules": "by_hand",
    "test_sealant_volume": "by_hand",
    "test_steel_stud_tables": "quoted",
    "test_survey_worked_examples": "by_hand",
    "test_tcna_ej171": "quoted",
    "test_trowel_geometry": "by_hand",
    "test_uk_and_au_surfaces": "first_hand",
    "test_uk_au_movement_joints": "memory",
}
"""The kind of a file's tests, but for those below."""

OF_TEST = {
    "test_uk_spacing": "quoted",
    "test_uk_heated_or_wet_floor_keeps_area_and_side": "quoted",
    "test_the_closer_tolerance_begins_at_the_large_tile": "quoted",
    "test_fill_volume_of_a_grid": "by_hand",
    "test_a_sloping_plane_is_flat": "by_hand",
    "test_one_hump_is_seen_by_both_straightedges": "by_hand",
    "test_straightedge_readings": "by_hand",
    "test_the_narrowest_in_any_case": "copied",
    "test_usual_masses": "memory",
    "test_a_quarter_inch_square_notch_against_the_least_bed": "by_hand",
    "test_a_u_notch": "by_hand",
    "test_structural_panel": "copied",
    "test_year_of_the_greenboard_rule": "copied",
    "test_wood_moisture": "copied",
    "test_wet_friction": "copied",
    "test_moisture_of_studs": "copied",
    "test_two_unequal_spans": "by_hand",
    "test_one_span_is_the_simple_one": "by_hand",
    "test_load_where_it_does_most_is_never_less_than_load_everywhere": "by_hand",
    "test_gere_5_6_7_floor_joist": "first_hand",
    "test_uniform_load_over_a_part_of_the_span": "by_hand",
    "test_1800_by_900_mm_cannot_comply_in_australia": "quoted",
    "test_run_from_drain_to_doorway_that_gains_2_in": "quoted",
    "test_density_and_shares_of_the_trade": "copied",
    "test_a_panel_the_code_allows_may_be_too_limber_for_tile": "quoted",
    "test_southern_pine_has_the_printed_metric_values": "quoted",
    "test_section_of_a_2x10": "quoted",
    "test_narrowest_joints": "copied",
    "test_wall_joints_by_size": "memory",
    "test_example_1_of_the_manual_from_memory": "memory",
    "test_nothing_is_lifted_beyond_the_bounds": "by_hand",
    "test_a_turn_of_90_degrees_takes_off_29_percent": "memory",
    "test_published_floor": "first_hand",
    "test_one_layer_on_wide_joists_is_a_listed_cause_of_cracks": "first_hand",
    "test_uniform_load_is_no_worse_than_the_source_says": "first_hand",
    "test_panel_capacities_by_span_rating": "copied",
    "test_depth": "first_hand",
    "test_factor_and_bounds": "copied",
    "test_expansion_of_tile": "copied",
    "test_the_limit_behind_tile": "copied",
    "test_what_the_table_says_is_taken_as_it_is": "by_hand",
    "test_position_from_exact_distances": "first_hand",
    "test_area_by_coordinates": "first_hand",
    "test_they_are_required": "copied",
    "test_masses_that_backgrounds_carry": "copied",
    "test_plywood_walls_are_no_longer_tiled_directly": "quoted",
}


def kind_of(file: str, test: str) -> str:
    """The kind of a test by its file's name without suffix and its own; a file that is not listed is an error.

    Raises:
        KeyError: The file is not listed.
    """
    return OF_TEST.get(test, OF_FILE[file])


class _Collected:
    def __init__(self) -> None:
        self.counts: Counter[str] = Counter()
        self.names: set[str] = set()

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        for item in items:
            name = item.name.partition("[")[0]
            self.names.add(name)
            self.counts[kind_of(item.path.stem, name)] += 1


def collected() -> _Collected:
    """The cases that pytest collects here, by kind, and the names of their tests."""
    found = _Collected()
    with redirect_stdout(io.StringIO()), redirect_stderr(io.StringIO()):
        here = str(Path(__file__).parent)
        code = pytest.main(["--collect-only", "-q", "-p", "no:cacheprovider", here], plugins=[found])
    if code != 0:
        raise RuntimeError(f"pytest could not collect the cases: {code}")
    return found


def sentence(counts: Counter[str]) -> str:
    """What the README says of them."""
    published = sum(counts[kind] for kind in PUBLISHED)
    return (
        f"{published} published results hold: {counts['first_hand']} were read first-hand, "
        f"{counts['quoted']} as others quote them, {counts['memory']} are from memory. "
        f"Besides, {counts['by_hand']} cases were computed by hand, and {counts['copied']} hold a value of the "
        "rule book against the text it was copied from."
    )


if __name__ == "__main__":
    sys.stdout.write(sentence(collected().counts) + "\n")
