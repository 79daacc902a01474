"""One way in: a `Session` over a job document, ports for files and store, and results as frozen values."""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from firstcourse.app.as_json import json_value as json_value
    from firstcourse.app.building import Objection as Objection
    from firstcourse.app.building import building_papers as building_papers
    from firstcourse.app.building import open_building as open_building
    from firstcourse.app.building import planned_building as planned_building
    from firstcourse.app.building import prove_building as prove_building
    from firstcourse.app.compared import Compared as Compared
    from firstcourse.app.compared import alternatives as alternatives
    from firstcourse.app.compared import compared_lines as compared_lines
    from firstcourse.app.desk import Desk as Desk
    from firstcourse.app.desk import Shelf as Shelf
    from firstcourse.app.desk import Standing as Standing
    from firstcourse.app.desk_worker import Made as Made
    from firstcourse.app.desk_worker import Paper as Paper
    from firstcourse.app.desk_worker import Task as Task
    from firstcourse.app.documents import schema as schema
    from firstcourse.app.documents import write_starter as write_starter
    from firstcourse.app.examples import example_job as example_job
    from firstcourse.app.files import PRICE as PRICE
    from firstcourse.app.files import Disk as Disk
    from firstcourse.app.folder_swap import clear_leftovers as clear_leftovers
    from firstcourse.app.handing_over import HandoverFile as HandoverFile
    from firstcourse.app.handing_over import handover_text as handover_text
    from firstcourse.app.handing_over import make_handover as make_handover
    from firstcourse.app.handing_over import write_handover as write_handover
    from firstcourse.app.kept import PlanResult as PlanResult
    from firstcourse.app.kept import kept_plan as kept_plan
    from firstcourse.app.light_desk import LightDesk as LightDesk
    from firstcourse.app.new_jobs import demo_text as demo_text
    from firstcourse.app.new_jobs import new_job_text as new_job_text
    from firstcourse.app.papers import drawing as drawing
    from firstcourse.app.pricing import no_book as no_book
    from firstcourse.app.pricing import price_book as price_book
    from firstcourse.app.pricing import price_document as price_document
    from firstcourse.app.pricing import price_page as price_page
    from firstcourse.app.pricing import supply_order as supply_order
    from firstcourse.app.processes import end_with as end_with
    from firstcourse.app.proof import proof_summary as proof_summary
    from firstcourse.app.proof import prove as prove
    from firstcourse.app.proof import proven_plan as proven_plan
    from firstcourse.app.proposing import proposal_text as proposal_text
    from firstcourse.app.rule_facts import RuleFacts as RuleFacts
    from firstcourse.app.session import Session as Session
    from firstcourse.app.session import open_job as open_job
    from firstcourse.app.summaries import Explanation as Explanation
    from firstcourse.app.summaries import Outcome as Outcome
    from firstcourse.app.summaries import PlanSummary as PlanSummary
    from firstcourse.app.summaries import StockUse as StockUse
    from firstcourse.app.summaries import StockWhy as StockWhy
    from firstcourse.app.summaries import explanation_summary as explanation_summary
    from firstcourse.app.summaries import judgement_summary as judgement_summary
    from firstcourse.app.summaries import summarize as summarize
    from firstcourse.app.summaries import survey_summary as survey_summary
    from firstcourse.app.survey_lines import report_lines as report_lines
    from firstcourse.app.telling import ahead_text as ahead_text
    from firstcourse.app.telling import mass_text as mass_text
    from firstcourse.app.telling import remedy_tables as remedy_tables
    from firstcourse.app.telling import schedule_lines as schedule_lines
    from firstcourse.app.telling import shown_value as shown_value
    from firstcourse.app.together import Clash as Clash
    from firstcourse.app.together import Side as Side

_FROM = {
    "Compared": "compared",
    "PRICE": "files",
    "Clash": "together",
    "Desk": "desk",
    "Disk": "files",
    "Explanation": "summaries",
    "HandoverFile": "handing_over",
    "LightDesk": "light_desk",
    "Made": "desk_worker",
    "Objection": "building",
    "Outcome": "summaries",
    "Paper": "desk_worker",
    "PlanResult": "kept",
    "PlanSummary": "summaries",
    "RuleFacts": "rule_facts",
    "Session": "session",
    "Shelf": "desk",
    "Side": "together",
    "Standing": "desk",
    "StockUse": "summaries",
    "StockWhy": "summaries",
    "Task": "desk_worker",
    "ahead_text": "telling",
    "alternatives": "compared",
    "building_papers": "building",
    "clear_leftovers": "folder_swap",
    "compared_lines": "compared",
    "demo_text": "new_jobs",
    "drawing": "papers",
    "end_with": "processes",
    "example_job": "examples",
    "explanation_summary": "summaries",
    "handover_text": "handing_over",
    "json_value": "as_json",
    "judgement_summary": "summaries",
    "kept_plan": "kept",
    "make_handover": "handing_over",
    "mass_text": "telling",
    "new_job_text": "new_jobs",
    "no_book": "pricing",
    "open_building": "building",
    "open_job": "session",
    "planned_building": "building",
    "price_book": "pricing",
    "price_document": "pricing",
    "price_page": "pricing",
    "proof_summary": "proof",
    "prove": "proof",
    "proposal_text": "proposing",
    "prove_building": "building",
    "proven_plan": "proof",
    "remedy_tables": "telling",
    "report_lines": "survey_lines",
    "schedule_lines": "telling",
    "schema": "documents",
    "shown_value": "telling",
    "summarize": "summaries",
    "supply_order": "pricing",
    "survey_summary": "summaries",
    "write_handover": "handing_over",
    "write_starter": "documents",
}
__all__ = [
    "PRICE",
    "Clash",
    "Compared",
    "Desk",
    "Disk",
    "Explanation",
    "HandoverFile",
    "LightDesk",
    "Made",
    "Objection",
    "Outcome",
    "Paper",
    "PlanResult",
    "PlanSummary",
    "RuleFacts",
    "Session",
    "Shelf",
    "Side",
    "Standing",
    "StockUse",
    "StockWhy",
    "Task",
    "ahead_text",
    "alternatives",
    "building_papers",
    "clear_leftovers",
    "compared_lines",
    "demo_text",
    "drawing",
    "end_with",
    "example_job",
    "explanation_summary",
    "handover_text",
    "json_value",
    "judgement_summary",
    "kept_plan",
    "make_handover",
    "mass_text",
    "new_job_text",
    "no_book",
    "open_building",
    "open_job",
    "planned_building",
    "price_book",
    "price_document",
    "price_page",
    "proof_summary",
    "proposal_text",
    "prove",
    "prove_building",
    "proven_plan",
    "remedy_tables",
    "report_lines",
    "schedule_lines",
    "schema",
    "shown_value",
    "summarize",
    "supply_order",
    "survey_summary",
    "write_handover",
    "write_starter",
]


def __getattr__(name: str) -> Any:
    # Loaded when asked for: a command that prints its help should not wait for solvers.
    if name not in _FROM:
        raise AttributeError(f"module 'firstcourse.app' has no attribute '{name}'")
    from importlib import import_module

    return getattr(import_module(f"firstcourse.app.{_FROM[name]}"), name)
