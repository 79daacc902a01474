"""The workbook called the parts of a sheet S1a and S1ba, the tickets on the bench called them 1 and 2."""

from example_plans import plan_of
from firstcourse.drawings.tickets import part_numbers
from firstcourse.papers.ticket_pages import tickets
from firstcourse.papers.workbook import tables


def test_every_cut_of_the_workbook_reads_as_on_its_ticket() -> None:
    plan = plan_of("tub-bathroom")
    (cuts,) = [table for table in tables(plan) if table.name == "Sheets and cuts"]
    rows = [dict(zip([column.heading for column in cuts.columns], row, strict=True)) for row in cuts.rows]
    told = [
        (row["sheet"], f"({row['cut']})", row["cut part"], [str(row[key]).partition(":")[0] for key in GIVES])
        for row in rows
        if row["cut"]
    ]
    printed = [
        (ticket["id"], number, what.partition(",")[0], sides.split(" | "))
        for ticket in tickets(plan)
        for number, what, sides in ticket["cuts"]
    ]
    assert len(told) > 10 and told == printed


GIVES = ("gives, at that edge", "gives, beyond the line")


def test_a_board_is_found_under_its_number_on_the_ticket() -> None:
    plan = plan_of("tub-bathroom")
    (boards,) = [table for table in tables(plan) if table.name == "Boards and pieces"]
    rows = [dict(zip([column.heading for column in boards.columns], row, strict=True)) for row in boards.rows]
    marks = {board.mark: board.piece for surface in plan.surfaces for board in surface.boards}
    places = {
        part.piece: f"{sheet.id}, part {part_numbers(sheet)[part.id]}"
        for sheet in plan.sheets
        for part in sheet.parts
        if part.piece
    }
    assert len(rows) == len(marks)
    assert all(row["cut from"] == places[marks[row["mark"]]] for row in rows)
